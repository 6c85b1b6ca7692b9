package joint

import (
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// told returns the problems of a code.
func told(l *List, code string) (out []finding.Problem) {
	for _, p := range l.Problems {
		if p.Code == code {
			out = append(out, p)
		}
	}
	return out
}

func fateOf(l *List, row int) RowFate {
	for _, o := range l.Others {
		if o.Row == row {
			return o.Fate
		}
	}
	return "joint"
}

func TestRowsWithoutAMarkAreTotalsOnlyIfTheyAddUp(t *testing.T) {
	set := loadTables(t)
	text := "Mark;Length;Leg;t1;Qty\nW1;500;5;6;2\nW2;300;5;6;1\n;800;;;3\nW3;200;5;6;1\n;200;;;\n;1500;;;\n;450;;;\n;1450;;;4\n"
	l, err := understand(t, set, text, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for row, want := range map[int]RowFate{4: TotalRow, 6: TotalRow, 7: TotalRow, 8: Rejected, 9: TotalRow} {
		if got := fateOf(l, row); got != want {
			t.Errorf("row %d is %q, want %q", row, got, want)
		}
	}
	if len(told(l, "no-mark")) != 1 {
		t.Errorf("the row without a mark must be told: %v", l.Problems)
	}
}

func TestABareMarkIsAJointThatLacksItsFigures(t *testing.T) {
	l, err := understand(t, loadTables(t), "Mark;Length;Leg;t1\nFrame A;;;\nW1;500;5;6\nW2;;;\nW3;500;5;6\n", Options{})
	if err != nil {
		t.Fatal(err)
	}
	if fateOf(l, 2) != GroupRow || fateOf(l, 4) != Rejected || l.Joints[1].Assembly != "Frame A" {
		t.Errorf("%v %+v", l.Others, l.Joints)
	}
}

func TestDoubtsAboutColumnsAreTold(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct{ name, text, code string }{
		{"a slip in a header", "Mark;Lenght;Leg;t1\nW1;500;5;6\n", "header-slip"},
		{"two quantities", "Mark;Length;Leg;t1;Qty;Quantity\nW1;500;5;6;2;4\n", "two-columns"},
		{"a total length with copies", "Mark;Total length;Leg;t1;Qty\nW1;500;5;6;2\n", "total-length"},
		{"inch fractions beside bare numbers", "Mark;Length;Leg;t1\nW1;24;1/4;3/8\n", "mixed-units"},
		{"another table", "Mark;Length;Leg;t1\nW1;500;5;6\nQty;Mark;Material;Length\n2;P1;S235;500\n", "second-table"},
	} {
		l, err := understand(t, set, c.text, Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(told(l, c.code)) != 1 {
			t.Errorf("%s: want %s once: %v", c.name, c.code, l.Problems)
		}
	}
	for _, text := range []string{"Mark;Leg;t1;Qty\nW1;5;6;2\nW2;5;6;2\n", "Leg;Length;t1\n5;600;8\n"} {
		_, err := understand(t, set, text, Options{})
		if err == nil || !strings.Contains(err.Error(), "there is no column for") {
			t.Errorf("%q: %v", text, err)
		}
	}
	l, err := understand(t, set, "Mark;Total length;Length;Leg;t1;Qty\nW1;1000;500;5;6;2\n", Options{})
	if err != nil || l.Joints[0].Length != 500 {
		t.Errorf("beside a total the length of one joint counts: %v %+v", err, l)
	}
}

func TestSizeCellsThatHoldMore(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct {
		text            string
		want            string // means, size, sides, segment, gap
		penetrationKind bool
	}{
		{"6 both sides", "leg 6 2 0 0", false},
		{"a4 beids.", "throat 4 2 0 0", false},
		{"z6 5x50(100)", "leg 6 1 50 100", false},
		{"△6-50/150", "leg 6 1 50 100", false},
		{"1/4″ 2-6", "leg 6.35 1 50.8 101.6", false},
		{"5/16 2-6", "leg 7.9375 1 50.8 101.6", false},
		{"1 1/4″", "leg 31.75 1 0 0", false},
		{"12(8)", "penetration 8 1 0 0", true},
	} {
		kind := "fillet"
		if c.penetrationKind {
			kind = "single bevel"
		}
		l, err := understand(t, set, "Mark;Length;Size;t1;Kind\nW1;900;"+c.text+";16;"+kind+"\n", Options{})
		if err != nil || len(l.Joints) != 1 {
			t.Errorf("%q: %v %+v", c.text, err, l)
			continue
		}
		j, st := l.Joints[0], Stitch{}
		if j.Stitch != nil {
			st = *j.Stitch
		}
		if got := fmt.Sprintf("%s %.6g %d %.6g %.6g", j.Size.Means, j.Size.A, j.Sides, st.Segment, st.Gap); got != c.want {
			t.Errorf("%q: %s, want %s", c.text, got, c.want)
		}
	}
	for _, c := range []string{"s8;fillet", "s8;", "(8);lap", "PJP 8;"} {
		l, err := understand(t, set, "Mark;Length;Size;Kind;t1\nW1;900;"+c+";16\n", Options{})
		if err != nil || len(l.Joints) != 0 {
			t.Errorf("%q: a penetration without a groove must be asked about: %v %+v", c, err, l.Joints)
		}
	}
}

func TestOneLetterIsReadByItsAlphabetAndItsHeader(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct{ header, value, position, where string }{
		{"Where", "F", "", "site"}, {"Shop/Field", "S", "", "shop"}, {"Fábrica/campo", "F", "", "shop"}, {"Fábrica/campo", "C", "", "site"},
		{"Officina/cantiere", "O", "", "shop"}, {"T/O", "O", "", "site"}, {"Field/shop", "F", "", "site"}, {"З/М", "М", "", "site"},
		{"Position", "H", "PC", ""}, {"Position", "Н", "PA", ""}, {"Position", "В", "PF", ""}, {"Position", "П", "PE", ""},
	} {
		l, err := understand(t, set, "Mark;Length;Kind;t1;"+c.header+"\nW1;900;single V;16;"+c.value+"\n", Options{})
		if err != nil || len(l.Joints) != 1 {
			t.Errorf("%v: %v %+v", c, err, l)
			continue
		}
		j := l.Joints[0]
		if c.position != "" && j.Position != c.position || c.where != "" && string(j.Where) != c.where {
			t.Errorf("%v: position %s, %s", c, j.Position, j.Where)
		}
	}
}

// sheetOf makes a workbook sheet of texts; a leading # makes a number.
func sheetOf(rows ...string) list.Sheet {
	var s list.Sheet
	for i, line := range rows {
		row := list.Row{Number: i + 1}
		for j, text := range strings.Split(line, "|") {
			if text == "" {
				continue
			}
			row.Cells = append(row.Cells, list.Cell{Col: j + 1, Kind: list.Text, Text: text})
		}
		s.Rows = append(s.Rows, row)
	}
	s.Name = "Sheet1"
	return s
}

func TestMergedAndHiddenRowsAreReadAndTold(t *testing.T) {
	set := loadTables(t)
	sheet := sheetOf("Mark|Assembly|Length|Leg|t1", "W1|Frame A|500|5|6", "W2||300|5|", "W3|Frame B|200|5|6", "W4|Frame B||5|6")
	sheet.Merges = []list.Merge{{FirstRow: 2, FirstCol: 2, LastRow: 3, LastCol: 2}, {FirstRow: 2, FirstCol: 5, LastRow: 3, LastCol: 5}, {FirstRow: 4, FirstCol: 3, LastRow: 5, LastCol: 3}}
	sheet.Rows[2].Hidden = true
	l, err := Understand(&list.Source{File: "x.xlsx", Format: list.XLSX, Sheets: []list.Sheet{sheet}}, Options{}, set)
	if err != nil || len(l.Joints) != 4 {
		t.Fatal(err, l)
	}
	if w2 := l.Joints[1]; w2.Assembly != "Frame A" || w2.T1 != 6 || l.Joints[3].Length != 200 {
		t.Errorf("merged values: %+v %+v", w2, l.Joints[3])
	}
	if len(told(l, "merged-figure")) != 1 || len(told(l, "hidden-rows")) != 1 {
		t.Errorf("%v", l.Problems)
	}
	if len(sheet.Rows[2].Cells) != 3 {
		t.Error("the source was modified")
	}
}

func TestTheCellsOwnUnitWins(t *testing.T) {
	set := loadTables(t)
	sheet := sheetOf("Mark|Length|Leg|t1", "W1||5|6")
	sheet.Rows[1].Cells = append(sheet.Rows[1].Cells[:1:1], append([]list.Cell{{Col: 2, Kind: list.Number, Value: 24, Text: `24"`}}, sheet.Rows[1].Cells[1:]...)...)
	l, err := Understand(&list.Source{File: "x.xlsx", Format: list.XLSX, Sheets: []list.Sheet{sheet}}, Options{}, set)
	if err != nil || len(l.Joints) != 1 || fmt.Sprintf("%.4f", l.Joints[0].Length) != "609.6000" {
		t.Fatal(err, l)
	}
}

func TestADateIsNoMark(t *testing.T) {
	set := loadTables(t)
	sheet := sheetOf("Mark|Length|Leg|t1", "2026-01-02|500|5|6", "W2|500|5|6")
	sheet.Rows[1].Cells[0].Kind = list.Date
	l, err := Understand(&list.Source{File: "x.xlsx", Format: list.XLSX, Sheets: []list.Sheet{sheet}}, Options{}, set)
	if err != nil || len(l.Joints) != 1 || len(told(l, "date")) != 1 {
		t.Fatal(err, l)
	}
}

// A seam that goes all round has no length before its section is known: it is none that
// another is so many times as long as.
func TestALongSeamIsComparedWithSeamsOfAKnownLength(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct{ lengths, want string }{
		{"6000 all-round all-round all-round all-round all-round all-round all-round all-round", ""},
		{"6000 500 all-round all-round all-round all-round all-round all-round all-round", "6.0 m is 12 times the next longest seam of the list, 0.5 m"},
		{"6000 500 500 500 500 500 500 400 all-round", "6.0 m is 12 times the next longest seam of the list, 0.5 m"},
		{"all-round all-round all-round all-round all-round all-round all-round all-round", ""},
	} {
		text := "Mark;Length;Leg;t1;Part 1\n"
		for i, l := range strings.Fields(c.lengths) {
			text += fmt.Sprintf("W%d;%s;5;6;SHS 60x60x4\n", i+1, l)
		}
		l, err := understand(t, set, text, Options{})
		if err != nil || len(l.Joints) < 8 {
			t.Fatal(err, l)
		}
		got := ""
		for _, p := range told(l, "length-stands-out") {
			got += p.Text
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.lengths, got, c.want)
		}
	}
}

// A header may give a unit that no length has: its numbers are not millimetres in
// silence. Letters that are signs of a size are no such unit.
func TestHeaderWithAForeignUnit(t *testing.T) {
	set := loadTables(t)
	for header, want := range map[string]int{"Length (kg)": 1, "Length [lbs]": 1, "Length (L)": 0, "Length (mm)": 0, "Length": 0} {
		l, err := understand(t, set, "Mark;"+header+";Throat (a);Thickness (t)\nW1;500;5;8\n", Options{})
		if err != nil {
			t.Fatal(err)
		}
		if p := told(l, "header-unit"); len(p) != want {
			t.Errorf("%q: told %d times, want %d: %v", header, len(p), want, l.Problems)
		}
	}
}

// What hides the list is named: a sheet that is hidden, not one that has no list.
func TestOnlyListOnAHiddenSheet(t *testing.T) {
	cover, welds := sheetOf("Cover page"), sheetOf("Mark|Length|Size|t1", "W1|500|z5|8")
	cover.Name, welds.Name, welds.Hidden = "Cover", "Welds", true
	_, err := Understand(&list.Source{File: "x.xlsx", Format: list.XLSX, Sheets: []list.Sheet{cover, welds}}, Options{}, loadTables(t))
	if err == nil || !strings.Contains(err.Error(), `hidden sheet "Welds"`) {
		t.Errorf("got %v", err)
	}
}

// The x of a rough figure parts no legs.
func TestRoughSize(t *testing.T) {
	for text, want := range map[string]string{"approx 5": "a rough figure", "max 6": "a limit", "a4x6": "two sizes are read only"} {
		_, _, bad := sizeOf(text, "", measure.MM, measure.Style{})
		if bad == nil || !strings.Contains(bad.Text, want) {
			t.Errorf("%q: %v, want %q", text, bad, want)
		}
	}
	if s, _, bad := sizeOf("6x8", "", measure.MM, measure.Style{}); bad != nil || s.A != 6 || s.B != 8 {
		t.Errorf("6x8: %v %v", s, bad)
	}
}

// A header that is a unit and no more gives its column that unit, alone and beside another;
// a unit that no length has is told by itself.
func TestAHeaderThatIsAUnitAlone(t *testing.T) {
	set := loadTables(t)
	for text, want := range map[string]float64{
		"Mark;Feet;Size (mm);t1 (mm)\nA;4;z5;8\n":             1219.2,
		"Mark;Feet;Inches;Size (mm);t1 (mm)\nA;4;6;z5;8\n":    1371.6,
		"Mark;Inches;Size (mm);t1 (mm)\nA;40;z5;8\n":          1016,
		"Mark;Metros;Size (mm);t1 (mm)\nA;4;z5;8\n":           4000,
		"Mark;Length (kg);Size (mm);t1 (mm)\nA;400;z5;8\n":    400,
		"Mark;Length in feet;Size (mm);t1 (mm)\nA;4;z5;8\n":   1219.2,
		"Mark;Length;Size (mm);t1 (mm)\nA;4 ft;z5;8\n":        1219.2,
		"Mark;Weld length (ft);Size (mm);t1 (mm)\nA;4;z5;8\n": 1219.2,
	} {
		l, err := understand(t, set, text, Options{})
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got := float64(l.Joints[0].Length); got < want-1e-6 || got > want+1e-6 {
			t.Errorf("%q: %v mm, want %v", text, got, want)
		}
		if bare := told(l, "list-units"); len(bare) > 0 {
			t.Errorf("%q: its unit is said: %s", text, bare[0].Line())
		}
		if foreign := told(l, "header-unit"); strings.Contains(text, "kg") != (len(foreign) == 1 && strings.Contains(foreign[0].Hint, "such as Length (mm) or Length (in)")) {
			t.Errorf("%q: %+v", text, foreign)
		}
	}
}
