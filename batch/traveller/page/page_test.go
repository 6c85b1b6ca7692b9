package page

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestCleanMakesAnyTextPrintable(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"", ""},
		{"W-014", "W-014"},
		{"Лестница №3", "Лестница №3"},
		{"Łuk ≤ 3 mm, ø12, 60°, m²", "Łuk ≤ 3 mm, ø12, 60°, m²"},
		{"e\u0301", "é"},
		{"a\tb\r\nc", "a b c"},
		{"  padded  ", "padded"},
		{"bell\x07", "bell"},
		{"weld 🔥", "weld □"},
		{"\u202eabc\u202c", "abc"},
		{"שלום", "□□□□"},
		{"bad \xff byte", "bad □ byte"},
		{"zero\u200bwidth", "zerowidth"},
	} {
		if got := Clean(c.in); got != c.want {
			t.Errorf("Clean(%q) = %q, want %q", c.in, got, c.want)
		}
	}
	long := Clean(strings.Repeat("Ж", 10000))
	if n := utf8.RuneCountInString(long); n != Longest+1 || !strings.HasSuffix(long, "…") {
		t.Errorf("10,000 letters become %d, ending %q", n, long[len(long)-3:])
	}
}

func FuzzClean(f *testing.F) {
	f.Add("W-014")
	f.Add("\xff\xfe🔥\u202e")
	f.Fuzz(func(t *testing.T, s string) {
		c := Clean(s)
		if !utf8.ValidString(c) || utf8.RuneCountInString(c) > Longest+1 {
			t.Fatalf("Clean(%q) = %q", s, c)
		}
		for _, r := range c {
			if !Regular.Has(r) || !Bold.Has(r) || !Mono.Has(r) {
				t.Fatalf("Clean(%q) kept %U", s, r)
			}
		}
		if again := Clean(c); again != c {
			t.Fatalf("Clean is not settled: %q, then %q", c, again)
		}
		if _, out := Fit(Style{Bold, 30, 0}, s, 20); (Style{Bold, MinSize, 0}).Width(out) > 20 {
			t.Fatalf("Fit(%q) = %q is too wide", s, out)
		}
		for _, l := range Wrap(Style{Regular, 9, 0}, s, 30, 3) {
			if (Style{Regular, 9, 0}).Width(l) > 30 {
				t.Fatalf("a line of Wrap(%q) is too wide: %q", s, l)
			}
		}
	})
}

func TestFitShrinksThenShortens(t *testing.T) {
	big := Style{Bold, 24, 0}
	if s, text := Fit(big, "W-1", 40); s.Size != 24 || text != "W-1" {
		t.Errorf("a text that fits was changed: %v %q", s, text)
	}
	s, text := Fit(big, "COLUMN-BASE-17", 40)
	if s.Size >= 24 || s.Size < MinSize || text != "COLUMN-BASE-17" || s.Width(text) > 40 {
		t.Errorf("a wide text was not set smaller: %v %q", s, text)
	}
	s, text = Fit(big, strings.Repeat("COLUMN-BASE-17 ", 20), 40)
	if s.Size != MinSize || !strings.HasSuffix(text, "…") || s.Width(text) > 40 {
		t.Errorf("an endless text was not shortened: %v %q", s, text)
	}
}

func TestWrapLosesNothingUnlessTold(t *testing.T) {
	s := Style{Regular, 9, 0}
	text := "clean metal, no draught, averyveryverylongwordthatfitsnowhere, check the flow"
	if got := strings.Join(Wrap(s, text, 30, 0), ""); strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(text, " ", "") {
		t.Errorf("wrapping lost something: %q", got)
	}
	if got := Wrap(s, text, 30, 2); len(got) != 2 || !strings.HasSuffix(got[1], "…") {
		t.Errorf("two lines: %q", got)
	}
}

// The point that parts two facts ends a line and begins none.
func TestWrapBeginsNoLineWithThePoint(t *testing.T) {
	s := Style{Face: Regular, Size: 8}
	const text = "внапусток · переривчастий 15×50 (150) mm · 6 mm завтовшки · S235JR · на монтажі · рівень C · VT"
	for w := 20.0; w < 140; w++ {
		lines := Wrap(s, text, w, 0)
		for _, line := range lines {
			if strings.HasPrefix(line, "·") {
				t.Errorf("%g mm wide: %q begins with the point", w, line)
			}
		}
		if got := strings.Join(lines, " "); got != text {
			t.Errorf("%g mm wide: %q", w, got)
		}
	}
}

// A figure stays with its unit, unless both are wider than the line.
func TestWrapKeepsFigureAndUnitTogether(t *testing.T) {
	s := Style{Regular, 9, 0}
	text := "thickness 15 mm, gap 0.043 in, preheat 120 °C. Filler shade 12 in a hood, 3 runs (2 m)"
	for w := 20.0; w < 100; w++ {
		lines := Wrap(s, text, w, 0)
		if got := strings.Join(lines, " "); got != text {
			t.Fatalf("in %g mm: %q", w, got)
		}
		for i, line := range lines[1:] {
			if first, _, _ := strings.Cut(line, " "); unit.MatchString(first) && endsInFigure(lines[i]) {
				t.Errorf("in %g mm: %q is parted from %q", w, first, lines[i])
			}
		}
	}
	if got := strings.Join(Wrap(s, "1234567 mm/min", 15, 0), "|"); got != "1234567|mm/min" {
		t.Errorf("in a narrow column: %q", got)
	}
}

func TestFaultsAreFound(t *testing.T) {
	good := func() (*Page, BoxID) {
		p := (&Document{}).Add(210, 297)
		return p, p.Box("b", Rect{20, 20, 50, 20})
	}
	body := Style{Regular, 10, 0}
	for name, spoil := range map[string]func(p *Page, b BoxID){
		"text outside": func(p *Page, b BoxID) { p.Write(b, 60, 30, 30, Left, body, "sticks out of its box") },
		"text overlap": func(p *Page, b BoxID) {
			p.Write(b, 21, 30, 40, Left, body, "one")
			p.Write(b, 22, 30, 40, Left, body, "two")
		},
		"small type":    func(p *Page, b BoxID) { p.Write(b, 21, 30, 40, Left, Style{Regular, 6, 0}, "one") },
		"shape outside": func(p *Page, b BoxID) { p.Line(b, 30, 30, 90, 30, 0.2, 0) },
		"box outside":   func(p *Page, _ BoxID) { p.Box("c", Rect{200, 20, 50, 20}) },
		"no glyph":      func(p *Page, b BoxID) { p.Texts = append(p.Texts, Text{b, 21, 30, 3, body, "☑"}) },
	} {
		p, b := good()
		p.Write(b, 21, 38, 40, Left, body, "fine")
		if faults := p.Faults(); len(faults) != 0 {
			t.Fatalf("a good page has faults: %v", faults)
		}
		spoil(p, b)
		if len(p.Faults()) == 0 {
			t.Errorf("%s was not found", name)
		}
	}
}

func TestColumnsFillTheWidth(t *testing.T) {
	cols := Rect{10, 5, 100, 20}.Columns(4, 1, 2, 1)
	if cols[0].X != 10 || cols[2].Right() != 110 || cols[1].W != 46 {
		t.Errorf("columns: %v", cols)
	}
}

// A long text of short words is cut to the same length as one of letters, whatever
// stands at the end.
func TestLongTextsOfWords(t *testing.T) {
	for lead := range 4 {
		got := Clean(strings.Repeat("x", lead) + strings.Repeat("Ж ", Longest))
		if n := utf8.RuneCountInString(got); n > Longest+1 || Clean(got) != got {
			t.Errorf("behind %d letters %d are left, and then %d", lead, n, utf8.RuneCountInString(Clean(got)))
		}
	}
}
