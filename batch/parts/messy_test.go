package parts

import (
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/list"
)

// Titles, a units row, decimal commas, totals and headers in another language are
// read as what they are, and every row has its fate.
func TestMessyCutLists(t *testing.T) {
	set, _ := world(t)
	for name, c := range map[string]struct {
		text   string
		parts  int
		length float64 // of the first part, mm
	}{
		"title and total": {"Cut list of a frame\n\npart,section,material,length,qty\nA,IPE 200,S235,2500,4\nB,L 50x50x5,S235,700,2\nTotal,,,,6\n", 2, 2500},
		"units row":       {"part,section,length,qty\n,,m,pcs\nA,IPE 200,2.5,4\n", 1, 2500},
		"decimal comma":   {"part;section;length (mm);qty\nA;IPE 200;1250,5;4\nB;SHS 60x60x4;700,25;2\n", 2, 1250.5},
		"Cyrillic":        {"Деталь;Профиль;Марка стали;Длина, мм;Кол-во\nП1;L 50x50x5;S235;700;2\nП2;ТРУБА 60x60x4;S235;900;1\n", 2, 700},
		"repeated header": {"part,section,length,qty\nA,IPE 200,2500,4\npart,section,length,qty\nB,IPE 200,900,1\n", 2, 2500},
	} {
		l := understood(t, set, c.text, Options{})
		if len(l.Parts) != c.parts || float64(l.Parts[0].Length) != c.length {
			t.Errorf("%s: %+v %+v", name, l.Parts, l.Problems)
		}
		if l.RowsRead != len(l.Parts)+len(l.Others) {
			t.Errorf("%s: %d rows read, %d parts and %d others", name, l.RowsRead, len(l.Parts), len(l.Others))
		}
	}
}

// A designation that nobody publishes is an error with its cell and the nearest.
func TestUnknownDesignationHasItsPlace(t *testing.T) {
	set, _ := world(t)
	l := understood(t, set, "part,section,length,qty\nA,IPE 205,2500,4\nB,IPE 200,900,1\n", Options{})
	if len(l.Parts) != 1 {
		t.Fatalf("%+v", l.Parts)
	}
	for _, p := range l.Problems {
		if p.Level == finding.Error && p.Place.File == "cut.csv" && p.Place.Row == 2 && p.Place.Col == 2 && p.Read == "IPE 205" && strings.Contains(p.Hint, "IPE 200") {
			return
		}
	}
	t.Errorf("%+v", l.Problems)
}

// FuzzCutList reads whole lists: it never fails, loses no row, and what follows
// from the parts holds no figure that is none.
func FuzzCutList(f *testing.F) {
	for _, text := range []string{"part,section,length,qty\nA,IPE 200,2500,4\n", "Деталь;Профиль;Длина;Кол-во\nП1;L 50x50x5;700,5;2\n",
		"part,width,thickness,length,qty\nA,200,10,300,2\n", "mark,section,length\n,,in\nA,HSS 4x4x1/4,24 1/2,\n"} {
		f.Add(text)
	}
	set, shop := builtIn()
	reader := NewReader(set) // shared: it only remembers designations
	f.Fuzz(func(t *testing.T, text string) {
		src, _, err := list.Read("cut.csv", []byte(text))
		if err != nil {
			return
		}
		l, err := reader.Understand(src, Options{})
		if err != nil {
			return
		}
		if l.RowsRead != len(l.Parts)+len(l.Others) {
			t.Fatalf("%d rows read, %d parts and %d others", l.RowsRead, len(l.Parts), len(l.Others))
		}
		pieces := 0
		for i := range l.Parts {
			pieces += l.Parts[i].Qty
		}
		if pieces > 500 {
			return
		}
		b, _ := Work(l, nil, set, shop)
		nothingLost(t, b)
		for _, r := range b.Results {
			if text := fmt.Sprint(r.Mass, r.Paint, r.KgM); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
				t.Fatalf("%+v", r)
			}
		}
	})
}
