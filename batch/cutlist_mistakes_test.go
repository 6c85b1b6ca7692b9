package batch_test

import (
	"context"
	"strings"
	"testing"

	"seamtally/batch"
	"seamtally/batch/finding"
)

// pair is a list of joints and a cut list that agree, before a mistake is planted.
type pair struct{ joints, cut [][]any }

func agreeing() *pair {
	return &pair{
		[][]any{{"Mark", "Leg mm", "Part 1", "Part 2", "t1 mm", "t2 mm", "Length mm", "Qty"}, {"W1", 5, "A1", "B1", nil, nil, 150, 4}},
		[][]any{{"Part", "Section", "Grade", "Length mm", "Qty"}, {"A1", "SHS 80x80x5", "S355", 1200, 4}, {"B1", "FL 200x12", "S235", 200, 4}},
	}
}

// joint and part set cells of the joint, and of a part, by column.
func joint(values ...any) func(*pair) {
	return func(p *pair) {
		for i := 0; i < len(values); i += 2 {
			p.joints[1][values[i].(int)] = values[i+1]
		}
	}
}

func part(row int, values ...any) func(*pair) {
	return func(p *pair) {
		for i := 0; i < len(values); i += 2 {
			p.cut[row][values[i].(int)] = values[i+1]
		}
	}
}

func both(all ...func(*pair)) func(*pair) {
	return func(p *pair) {
		for _, f := range all {
			f(p)
		}
	}
}

// Mistakes as people make them beyond those of the hundred: other spellings, other
// columns, other units, other quantities.
var mistakes = map[string]func(*pair){
	// a part that is not there
	"mark with a figure too many": joint(2, "A11"),
	"zero for the letter":         both(part(1, 0, "AO1"), joint(2, "A01")),
	"mark of another part":        joint(3, "C7"),
	"both marks wrong":            joint(2, "X1", 3, "X2"),
	"a section nobody cuts":       joint(2, "SHS 80x80x6"),
	"two marks in one cell":       joint(3, "B1/B2"),
	"a plate nobody cuts":         joint(3, "PL 200x15"),
	"mark of the assembly":        joint(2, "FRAME-A"),

	// quantities
	"one piece short":           part(1, 4, 3),
	"half as many again":        part(1, 4, 6),
	"twelve cut for ten":        both(part(1, 4, 12), joint(7, 10)),
	"more cut than stood on":    part(2, 4, 12),
	"half a piece":              part(1, 4, "4.5"),
	"a quantity below zero":     part(1, 4, -4),
	"a quantity in words":       part(1, 4, "some"),
	"no piece at all":           part(1, 4, 0),
	"quantity left blank":       part(1, 4, nil),
	"the same mark in two rows": func(p *pair) { p.cut = append(p.cut, []any{"A1", "SHS 80x80x5", "S355", 1200, 3}) },

	// thickness and grade
	"wall of the next size":       joint(4, 6.3),
	"thickness in inches":         both(func(p *pair) { p.joints[0][4] = "t1 in" }, joint(4, 0.25)),
	"plate thinner than cut":      joint(5, 10),
	"width for the thickness":     joint(5, 200),
	"centimetres for millimetres": joint(4, 0.5),
	"neither web nor flange":      both(part(1, 1, "IPE 200"), joint(4, 7.1)),
	"another grade": func(p *pair) {
		p.joints[0] = append(p.joints[0], "Material")
		p.joints[1] = append(p.joints[1], "S235")
	},

	// designations
	"beam between two sizes":       part(1, 1, "HEA 210"),
	"channel between two sizes":    part(1, 1, "UPN 110"),
	"letter in the size":           part(1, 1, "HEB 16O"),
	"no such weight":               part(1, 1, "UB 203x133x27"),
	"no such American weight":      part(1, 1, "W10x27"),
	"a tube nobody makes":          part(1, 1, "CHS 49x3.2"),
	"a box nobody makes":           part(1, 1, "RHS 100x55x5"),
	"a flat without thickness":     part(2, 1, "FL 200"),
	"a wall thicker than the tube": part(1, 1, "SHS 80x80x50"),
	"a family nobody knows":        part(1, 1, "XYZ 200"),

	// units
	"length of a part in metres": part(1, 3, 1.2),
	"millimetres under metres":   both(func(p *pair) { p.cut[0][3] = "Length m" }, part(1, 3, 1200), part(2, 3, 0.2)),
	"seam in metres":             joint(6, 0.15),
	"seam longer than its parts": joint(6, 15000),
	"leg in centimetres":         joint(1, 0.5),
	"section in metres":          part(1, 1, "SHS 0.08x0.08x0.005"),
	"plate in metres":            part(2, 1, "FL 0.2x0.012"),
}

// Each is told with its row and what to do about it; the lists without a mistake are
// worked in peace.
func TestMistakesOfOtherSpellingsAreTold(t *testing.T) {
	if said := toldOf(t, agreeing()); len(said) > 0 {
		t.Errorf("told without a mistake: %q", said)
	}
	for name, plant := range mistakes {
		p := agreeing()
		plant(p)
		said := toldOf(t, p)
		if len(said) == 0 {
			t.Errorf("%s: not told", name)
		}
		t.Logf("%s: %s", name, strings.Join(said, " | "))
	}
	if len(mistakes) < 40 {
		t.Errorf("%d mistakes", len(mistakes))
	}
}

// toldOf returns the errors and warnings about a pair of lists that come of the parts,
// of a cell or of a row.
func toldOf(t *testing.T, p *pair) []string {
	t.Helper()
	var said []string
	job := batch.Job{Lists: []string{bookOf(t, "Welds", p.joints, "Cut list", p.cut)}, DryRun: true}
	job.Done = func(r batch.Result) {
		if r.Err != nil {
			t.Fatal(r.Err)
		}
		for i := range r.Job.Plans {
			for _, c := range r.Job.Plans[i].Checks {
				if c.Level != finding.Note && c.Code != "preheat" {
					if c.Do == "" {
						t.Errorf("%+v says not what to do", c)
					}
					said = append(said, c.Code+": "+c.Text)
				}
			}
		}
		for _, p := range r.Job.Problems {
			if p.Level == finding.Note {
				continue
			}
			if p.Place.Row == 0 || p.Hint == "" {
				t.Errorf("%s: no row, or not what to do", p.Line())
			}
			said = append(said, p.Code+": "+p.Text+" ["+p.Hint+"]")
		}
	}
	batch.Run(context.Background(), job)
	return said
}
