package batch_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"seamtally/batch"
	"seamtally/batch/finding"
)

// frame is a pair of lists that agree: tubes on plates, a brace on a chord, cleats,
// stiffeners and a plate seam.
func frame() *pair {
	return &pair{
		[][]any{
			{"Mark", "Assembly", "Kind", "Leg mm", "Part 1", "Part 2", "Length mm", "Qty", "Position", "Angle", "Stitch", "t1 mm", "Material"},
			{"J1", "A", "fillet", 5, "P1", "P2", "all round", 4, "PB", nil, nil, nil, nil},
			{"J2", "A", "fillet", 5, "P3", "P1", "all round", 8, "PB", nil, nil, nil, nil},
			{"J3", "A", "fillet", 5, "P4", "P5", "all round", 4, "PF", nil, nil, nil, nil},
			{"J4", "B", "fillet", 5, "P6", "P7", 120, 6, "PB", nil, nil, nil, nil},
			{"J5", "B", "fillet", 5, "P8", "P7", 90, 4, "PF", nil, nil, nil, nil},
			{"J6", "B", "single V", nil, "P9", "P9", 1500, 1, "PA", nil, nil, nil, nil},
		},
		[][]any{
			{"Part", "Assembly", "Section", "Grade", "Length mm", "Qty"},
			{"P1", "A", "SHS 100x100x5", "S355J2H", 2400, 4},
			{"P2", "A", "PL 15x220", "S355J2", 220, 4},
			{"P3", "A", "SHS 60x60x5", "S355J2H", 900, 8},
			{"P4", "A", "CHS 60.3x5", "S355J2H", 1100, 4},
			{"P5", "A", "CHS 168.3x6.3", "S355J2H", 3200, 2},
			{"P6", "B", "L 60x60x6", "S235JR", 150, 6},
			{"P7", "B", "UPN 140", "S235JR", 2400, 2},
			{"P8", "B", "FL 60x8", "S235JR", 110, 4},
			{"P9", "B", "PL 10x500", "S235JR", 1500, 2},
			{"P10", "B", "PL 12x300", "S235JR", 400, 1},
		},
	}
}

// cell plants a value into a row of the joints, or of the parts.
func weld(row, col int, v any) func(*pair) { return func(p *pair) { p.joints[row][col] = v } }
func cut(row, col int, v any) func(*pair)  { return func(p *pair) { p.cut[row][col] = v } }

// Mistakes of a frame, each with the code by which it must be told: thought of before
// the tests beside this one were read.
var frameMistakes = map[string]struct {
	code  string
	plant func(*pair)
}{
	"a part is not in the list":                     {"part-missing", func(p *pair) { p.cut = append(p.cut[:1:1], p.cut[2:]...) }},
	"the letter O in a mark":                        {"part-missing", weld(1, 4, "PO1")},
	"a part whose row cannot be read":               {"part-refused", cut(4, 5, "2.5")},
	"the letter O in a quantity":                    {"bad-quantity", cut(4, 5, "1O")},
	"a joint quantity with the letter O":            {"bad-quantity", weld(3, 7, "1O")},
	"seven rails for eight joints":                  {"part-quantity", cut(3, 5, 7)},
	"forty posts for four":                          {"part-quantity", cut(1, 5, 40)},
	"no brace at all":                               {"bad-quantity", cut(4, 5, 0)},
	"minus two braces":                              {"bad-quantity", cut(4, 5, -2)},
	"one half where two are welded":                 {"part-alone", cut(9, 5, 1)},
	"a wall of half a millimetre":                   {"unusual-size", cut(1, 2, "SHS 105x105x0.5")},
	"a wall that fills the tube":                    {"unknown-section", cut(1, 2, "SHS 100x100x50")},
	"a wall in the row, another in the cut":         {"part-thickness", weld(1, 11, 8)},
	"a grade that nobody makes":                     {"material-price", cut(1, 3, "S335J2H")},
	"aluminium against steel":                       {"no-filler", cut(6, 3, "6061")},
	"a grade in the row, another in the cut":        {"part-grade", weld(1, 12, "304L")},
	"a grade in the section, another in its column": {"two-grades", cut(1, 2, "SHS 100x100x5 S235JRH")},
	"a channel between two sizes":                   {"unknown-section", cut(7, 2, "UPN 145")},
	"an angle that is too thick":                    {"unknown-section", cut(6, 2, "L 60x60x16")},
	"a section that is a number":                    {"unknown-section", cut(1, 2, 100)},
	"inches and millimetres in one section":         {"unknown-section", cut(2, 2, `PL 1/2"x250mm`)},
	"a post in centimetres":                         {"short-piece", cut(1, 4, 24)},
	"a post in metres":                              {"implausible", cut(1, 4, 2.4)},
	"a post longer than any bar":                    {"part-too-long", cut(1, 4, 24000)},
	"a comma that may part thousands":               {"bad-length", cut(1, 4, "2,400")},
	"metres over millimetres":                       {"implausible", cut(0, 4, "Length m")},
	"the width of a plate in metres":                {"part-small", cut(2, 2, "PL 15x2.2")},
	"a base plate in centimetres":                   {"part-small", func(p *pair) { p.cut[2][2], p.cut[2][4] = "PL 1.5x22", 22 }},
	"a loose plate in centimetres":                  {"part-thin", func(p *pair) { p.cut[10][2], p.cut[10][4] = "PL 1.2x30", 40 }},
	"a loose plate in inches":                       {"part-thin", func(p *pair) { p.cut[10][2], p.cut[10][4] = "PL 0.5x48", 96 }},
	"a plate ten times too thick":                   {"unit-thickness", cut(2, 2, "PL 1500x220")},
	"the same part in two rows":                     {"part-quantity", func(p *pair) { p.cut = append(p.cut, p.cut[3]) }},
	"one mark for two sections":                     {"mark-twice", func(p *pair) { p.cut = append(p.cut, []any{"P3", "A", "SHS 80x80x5", "S355J2H", 900, 8}) }},
	"stitches longer than the seam":                 {"stitch-too-long", weld(4, 10, "5x50(50)")},
	"stitches that leave a length over":             {"stitch-count", weld(1, 10, "3x40(60)")},
	"all round a plate without its width":           {"length-blank", func(p *pair) { p.cut[8][2] = "PL 8"; p.joints[5][6] = "all round" }},
	"a branch wider than its chord":                 {"length-blank", cut(4, 2, "CHS 219.1x6.3")},
	"branch and chord exchanged":                    {"length-blank", func(p *pair) { p.joints[3][4], p.joints[3][5] = "P5", "P4" }},
	"a post on a smaller post":                      {"part-small", cut(3, 2, "SHS 150x150x5")},
	"an angle of 200 degrees":                       {"bad-angle", weld(3, 9, 200)},
	"an angle in radians":                           {"bad-angle", weld(3, 9, 0.785)},
	"a branch that hardly leaves its chord":         {"size-bad", weld(3, 9, 6)},
	"a mitre that no saw cuts":                      {"bad-mitre", weld(2, 6, "all round mitre 75")},
	"a mitre of two unlike tubes":                   {"length-blank", weld(2, 6, "all round mitre 45")},
	"a beam that leans all round":                   {"length-blank", func(p *pair) { p.joints[4][4], p.joints[4][6], p.joints[4][9] = "P7", "all round", 60 }},
	"a seam longer than its stiffener":              {"part-seam", weld(5, 6, 900)},
	"a leg four times the wall":                     {"leg-unlikely", weld(2, 3, 22)},
	"the second part alone":                         {"part-unused", weld(4, 4, nil)},
	"a joint on the wrong part":                     {"part-quantity", weld(4, 4, "P1")},
	"zinc that only the cut list names":             {"zinc", cut(1, 3, "S355J2H galvanised")},
}

// Each is told by its code, with a place and with what to do about it; the lists as
// they agree say nothing of the kind.
func TestMistakesOfAFrameAreTold(t *testing.T) {
	sound := told(t, frame())
	for name, m := range frameMistakes {
		if _, ok := sound[m.code]; ok && m.code != "part-unused" {
			t.Errorf("%s: %s is told without a mistake", name, m.code)
		}
		p := frame()
		m.plant(p)
		all := told(t, p)
		if len(all[m.code]) <= len(sound[m.code]) {
			t.Errorf("%s: not told as %s, but %q", name, m.code, slices.Sorted(keysOf(all)))
		}
		t.Logf("%s: %s", name, strings.Join(all[m.code], " | "))
	}
	if len(frameMistakes) < 40 {
		t.Errorf("%d mistakes", len(frameMistakes))
	}
}

func keysOf(m map[string][]string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// told returns everything that is said about a pair of lists, by its code.
func told(t *testing.T, p *pair) map[string][]string {
	t.Helper()
	said := map[string][]string{}
	job := batch.Job{Lists: []string{bookOf(t, "Welds", p.joints, "Cut list", p.cut)}, DryRun: true}
	job.Done = func(r batch.Result) {
		if r.Err != nil {
			t.Fatal(r.Err)
		}
		for i := range r.Job.Plans {
			for _, c := range r.Job.Plans[i].Checks {
				if c.Do == "" && c.Level != finding.Note {
					t.Errorf("%+v says not what to do", c)
				}
				said[c.Code] = append(said[c.Code], c.Text+" ["+c.Do+"]")
			}
		}
		for _, p := range r.Job.Problems {
			if p.Level != finding.Note && (p.Place.Row == 0 || p.Hint == "") {
				t.Errorf("%s: no row, or not what to do", p.Line())
			}
			said[p.Code] = append(said[p.Code], p.Text+" ["+p.Hint+"]")
		}
	}
	batch.Run(context.Background(), job)
	return said
}
