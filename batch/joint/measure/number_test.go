package measure

import (
	"math"
	"testing"
)

const refused = math.MaxFloat64

// Every case is right or refused; none may be read as another number.
func TestParseIsRightOrRefuses(t *testing.T) {
	point, comma := Style{Mark: '.'}, Style{Mark: ','}
	grouped := Style{Mark: ',', Grouped: true}
	for _, c := range []struct {
		text  string
		style Style
		want  float64
		unit  Unit
	}{
		{"6", Style{}, 6, None}, {" 6 ", Style{}, 6, None}, {"6.0", Style{}, 6, None}, {"06", Style{}, 6, None},
		{"6.5", Style{}, 6.5, None}, {"6,5", Style{}, 6.5, None}, {".25", Style{}, .25, None}, {",25", Style{}, .25, None},
		{"0.25", Style{}, .25, None}, {"0,250", Style{}, .25, None}, {"0.250", Style{}, .25, None}, {"5.", Style{}, 5, None},
		{"1,234", Style{}, refused, None}, {"1.234", Style{}, refused, None}, {"12,345", Style{}, refused, None},
		{"1,234", point, refused, None}, {"1.234", comma, refused, None},
		{"1,234", comma, 1.234, None}, {"1.234", point, 1.234, None}, {"1.234", grouped, 1234, None},
		{"1.234,5", Style{}, 1234.5, None}, {"1,234.5", Style{}, 1234.5, None}, {"1,234,567", Style{}, 1234567, None},
		{"1.234.567", Style{}, 1234567, None}, {"1.2.3", Style{}, refused, None}, {"12.03.2026", Style{}, refused, None},
		{"1 250", Style{}, 1250, None}, {"1'250", Style{}, 1250, None}, {"1’250", Style{}, 1250, None}, {"1\u00a0250", Style{}, 1250, None},
		{"1\u202f250,5", Style{}, 1250.5, None}, {"1 25", Style{}, refused, None}, {"6 8", Style{}, refused, None}, {"1250 300", Style{}, refused, None},
		{"-5", Style{}, -5, None}, {"−5", Style{}, -5, None}, {"+5", Style{}, 5, None}, {"–5", Style{}, -5, None}, {"--5", Style{}, refused, None},
		{"１２", Style{}, 12, None}, {"٦", Style{}, 6, None}, {"1.5e3", Style{}, 1500, None}, {"1e400", Style{}, refused, None}, {"1e-400", Style{}, refused, None},
		{"NaN", Style{}, refused, None}, {"Inf", Style{}, refused, None}, {"0x10", Style{}, refused, None}, {"", Style{}, refused, None},
		{"abc", Style{}, refused, None}, {"12o0", Style{}, refused, None}, {"l2", Style{}, refused, None}, {"6?", Style{}, refused, None},
		{"50%", Style{}, refused, None}, {"TRUE", Style{}, refused, None}, {"#REF!", Style{}, refused, None}, {"1-Apr", Style{}, refused, None},
		{"6 mm", Style{}, 6, MM}, {"6mm", Style{}, 6, MM}, {"6 MM", Style{}, 6, MM}, {"6 мм", Style{}, 6, MM}, {"6,5 mm", Style{}, 6.5, MM},
		{"12 cm", Style{}, 12, CM}, {"1,25 m", Style{}, 1.25, M}, {"1.25m", Style{}, 1.25, M}, {"2 м", Style{}, 2, M}, {"12 kg", Style{}, refused, None},
		{"0.5 in", Style{}, .5, Inch}, {`0.5"`, Style{}, .5, Inch}, {"0.5”", Style{}, .5, Inch}, {"0.5''", Style{}, .5, Inch}, {"6 inch", Style{}, 6, Inch}, {"6 Zoll", Style{}, 6, Inch},
		{"1/4", Style{}, .25, None}, {`1/4"`, Style{}, .25, Inch}, {"1/4 in", Style{}, .25, Inch}, {"¼", Style{}, .25, None}, {"½\"", Style{}, .5, Inch},
		{"3/16", Style{}, .1875, None}, {"5/16\"", Style{}, .3125, Inch}, {"15/64", Style{}, 15. / 64, None}, {"1 1/2", Style{}, 1.5, None},
		{`1 1/2"`, Style{}, 1.5, Inch}, {`1-1/2"`, Style{}, 1.5, Inch}, {"1½", Style{}, 1.5, None}, {"1 ½ in", Style{}, 1.5, Inch}, {"1⁄4", Style{}, .25, None},
		{"6/8", Style{}, refused, None}, {"2/4", Style{}, refused, None}, {"1/3", Style{}, refused, None}, {"5/4", Style{}, refused, None}, {"1/0", Style{}, refused, None},
		{"1/4 mm", Style{}, refused, None}, {"1/4 m", Style{}, refused, None}, {"-1/4", Style{}, -.25, None},
		{"2'", Style{}, 24, Inch}, {"2' 6\"", Style{}, 30, Inch}, {"2'6", Style{}, 30, Inch}, {"2'-6\"", Style{}, 30, Inch}, {`4'-6 1/2"`, Style{}, 54.5, Inch},
		{`4' 6-1/2"`, Style{}, 54.5, Inch}, {"2 ft 6 in", Style{}, 30, Inch}, {"2 ft", Style{}, 24, Inch}, {"2.5 ft", Style{}, 30, Inch}, {"2′ 6″", Style{}, 30, Inch},
		{"2' 12\"", Style{}, refused, None}, {"2' 13", Style{}, refused, None}, {"2' x", Style{}, refused, None},
		{"60°", Style{}, 60, Deg}, {"60 deg", Style{}, 60, Deg}, {"60 Grad", Style{}, 60, Deg},
		{"6\u200b", Style{}, 6, None}, {"\ufeff6", Style{}, 6, None}, {"6 mm mm", Style{}, refused, None}, {"6/", Style{}, refused, None}, {"/6", Style{}, refused, None},
		{"9007199254740993", Style{}, 9007199254740992, None}, {"1..5", Style{}, refused, None}, {"1,,5", Style{}, refused, None}, {"1.,5", Style{}, refused, None},
		{"12 345 678", Style{}, 12345678, None}, {"1 234,5", comma, 1234.5, None}, {"0", Style{}, 0, None}, {"-0", Style{}, 0, None}, {"00", Style{}, 0, None},
		{"3 / 8", Style{}, .375, None}, {"3 /8\"", Style{}, .375, Inch}, {"1  1/2", Style{}, 1.5, None}, {"250 lf", Style{}, 250, Foot}, {"2 lfm", Style{}, 2, M},
		{"1,5,5", Style{}, refused, None}, {"1.5.5", Style{}, refused, None}, {"6±1", Style{}, refused, None}, {"~6", Style{}, refused, None}, {"ca. 6", Style{}, refused, None},
		{"1 234 567,89", Style{}, 1234567.89, None}, {"1.234.567,89", Style{}, 1234567.89, None}, {"1,234,567.89", Style{}, 1234567.89, None}, {"12'345.67", Style{}, 12345.67, None},
		{"1,23,456", Style{}, refused, None}, {"5 mm.", Style{}, 5, MM}, {"6 mm (nom)", Style{}, refused, None}, {"<6", Style{}, refused, None}, {"6+", Style{}, refused, None}, {"6 m m", Style{}, refused, None},
		{"1 - 1/2\"", Style{}, 1.5, Inch}, {"1.1/2", Style{}, refused, None}, {"3'-0\"", Style{}, 36, Inch}, {"3'1/2\"", Style{}, 36.5, Inch}, {"3ft 6", Style{}, 42, Inch}, {"3.5'", Style{}, 42, Inch},
		{"2'-6-3/8\"", Style{}, 30.375, Inch}, {"2 feet 6 inches", Style{}, 30, Inch}, {"1 1/2'", Style{}, 1.5, Foot}, {"6’5", Style{}, 77, Inch}, {"12'345", Style{}, 12345, None}, {"5 'mm'", Style{}, refused, None},
		{"２.５", Style{}, 2.5, None}, {"−½", Style{}, -.5, None}, {"⅛", Style{}, .125, None}, {"1⅛", Style{}, 1.125, None}, {"½½", Style{}, refused, None}, {"1/128", Style{}, refused, None}, {"1/2/3", Style{}, refused, None}, {"1 2/4", Style{}, refused, None},
		{"6·5", Style{}, refused, None}, {"1_000", Style{}, refused, None}, {"5e", Style{}, refused, None}, {"٣٫٥", Style{}, 3.5, None}, {"१२", Style{}, refused, None}, {"10²", Style{}, refused, None}, {"5 m²", Style{}, refused, None}, {"①", Style{}, refused, None},
		{"1,234 mm", Style{}, refused, None}, {"500,000", Style{}, refused, None}, {"10 0000", Style{}, refused, None}, {"1.000,000", Style{}, 1000, None}, {"6 mm6", Style{}, refused, None}, {"1 mm 2 mm", Style{}, refused, None}, {"1 m 20 cm", Style{}, refused, None}, {"5 µm", Style{}, refused, None},
		{"(5)", Style{}, refused, None}, {"5-", Style{}, refused, None}, {"- 5", Style{}, -5, None}, {"'5", Style{}, 5, None}, {"99999999999999999999", Style{}, refused, None}, {"1e18", Style{}, refused, None}, {"1e15", Style{}, 1e15, None},
		{"6-8", Style{}, refused, None}, {"6 - 8", Style{}, refused, None}, {"6..8", Style{}, refused, None}, {"M12", Style{}, refused, None}, {"=A1", Style{}, refused, None},
	} {
		got, bad := Parse(c.text, c.style)
		switch {
		case c.want == refused && bad == nil:
			t.Errorf("%q read as %v %s, should be refused", c.text, got.Num, got.Unit)
		case c.want != refused && bad != nil:
			t.Errorf("%q refused (%s), should be %v", c.text, bad.Text, c.want)
		case c.want != refused && (math.Abs(got.Num-c.want) > 1e-12*math.Max(1, math.Abs(c.want)) || got.Unit != c.unit):
			t.Errorf("%q read as %v %q, should be %v %q", c.text, got.Num, got.Unit, c.want, c.unit)
		}
	}
}

func TestHabitIsDecidedByAllNumbersTogether(t *testing.T) {
	seq := func(texts ...string) func(func(string) bool) {
		return func(yield func(string) bool) {
			for _, s := range texts {
				if !yield(s) {
					return
				}
			}
		}
	}
	for _, c := range []struct {
		texts []string
		want  Style
	}{
		{[]string{"4,120", "52,6"}, Style{Mark: ','}},
		{[]string{"4.120", "52,6", "1.234,5"}, Style{Mark: ',', Grouped: true}},
		{[]string{"1,234", "0.5"}, Style{Mark: '.'}},
		{[]string{"1,234"}, Style{}},
		{[]string{"1,5", "2.5"}, Style{}},
		{nil, Style{}},
	} {
		if got := Habit(seq(c.texts...)); got != c.want {
			t.Errorf("%q: %+v, want %+v", c.texts, got, c.want)
		}
	}
}

// An inch is 25.4 mm by definition, so both spellings of a length agree.
func TestMillimetresAndInchesAgree(t *testing.T) {
	for _, pair := range [][2]string{{"1/4\"", "6.35 mm"}, {"2' 6\"", "762 mm"}, {"1 1/2 in", "38.1 mm"}, {"1 ft", "30.48 cm"}, {"0.5 in", "0.0127 m"}} {
		a, badA := Parse(pair[0], Style{Mark: '.'})
		b, badB := Parse(pair[1], Style{Mark: '.'})
		if badA != nil || badB != nil || math.Abs(a.MM(MM)-b.MM(MM)) > 1e-9 {
			t.Errorf("%s = %v mm, %s = %v mm (%v, %v)", pair[0], a.MM(MM), pair[1], b.MM(MM), badA, badB)
		}
	}
}

func FuzzNumber(f *testing.F) {
	for _, s := range []string{"6", "1,5", "1.234,5", "1/4\"", "4'-6 1/2\"", "−5", "1 250 mm", "½", "60°", "1e5", "NaN"} {
		f.Add(s, byte('.'))
		f.Add(s, byte(','))
	}
	f.Fuzz(func(t *testing.T, s string, mark byte) {
		q, bad := Parse(s, Style{Mark: rune(mark)})
		if bad == nil && (math.IsNaN(q.MM(MM)) || math.IsInf(q.MM(MM), 0)) {
			t.Errorf("%q gave %v", s, q)
		}
		if bad != nil && bad.Text == "" {
			t.Errorf("%q refused without a word", s)
		}
	})
}
