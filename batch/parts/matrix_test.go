package parts

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// scene is a rule of two lists with lists that break it and lists that do not.
type scene struct {
	code, says string // says stands in the text
	cut        string // rows of the cut list; "": two plates
	yes, no    []joint.Joint
	noCut      string // cut list of no; "": the same
	onJoint    bool   // told with the joint, else with the part
}

const twoPlates = "A,PL 10x200,S235,500,4\nB,PL 12x150,S235,500,4\n"

func scenes() []scene {
	both, round := []joint.Joint{fillet("W1", "A", "B", 4, 400)}, []joint.Joint{allRound()}
	return []scene{
		{code: "part-missing", says: "nearest mark is A1", cut: "A1,PL 10x200,S235,500,4\nB,PL 12x150,S235,500,4\n", yes: []joint.Joint{fillet("W1", "A1x", "B", 4, 400), fillet("W2", "A1", "B", 4, 400)}, no: []joint.Joint{fillet("W1", "a1", "B", 4, 400)}, onJoint: true},
		{code: "part-missing", says: "and no part in the cut list is of that section", yes: []joint.Joint{fillet("W1", "IPE 200", "B", 4, 400), fillet("W2", "A", "B", 4, 400)}, no: both, onJoint: true},
		{code: "part-quantity", says: "the joint has a quantity of 5, but the cut list has 4 pieces of A", yes: []joint.Joint{fillet("W1", "A", "B", 5, 400)}, no: both, onJoint: true},
		{code: "part-quantity", says: "has 4 pieces of A, but the joints with A in part1 have a quantity of 5 in all, which does not share out evenly (W1)", yes: []joint.Joint{fillet("W1", "A", "B", 5, 400)}, no: []joint.Joint{fillet("W1", "A", "B", 8, 400)}},
		{code: "part-quantity", says: "has 12 pieces of B, but the joints that name it have a quantity of 4 in all", cut: "A,PL 10x200,S235,500,4\nB,PL 12x150,S235,500,12\n", yes: both, no: both, noCut: twoPlates},
		{code: "part-quantity", says: "in part1 have a quantity of 6 in all", yes: []joint.Joint{fillet("W1", "A", "A", 3, 400), fillet("W2", "B", "A", 4, 400)}, no: []joint.Joint{fillet("W1", "A", "A", 2, 400), fillet("W2", "B", "A", 4, 400)}},
		{code: "part-unused", says: "touches C (L 50x50x5)", cut: twoPlates + "C,L 50x50x5,S235,700,2\n", yes: both, no: both, noCut: twoPlates},
		{code: "part-ambiguous", says: "which 2 parts of the cut list have", cut: twoPlates + "C,L 50x50x5,S235,700,2\nD,L 50x50x5,S235,900,2\n", yes: append([]joint.Joint{fillet("W2", "L 50x50x5", "B", 2, 50)}, both...),
			no: append([]joint.Joint{fillet("W2", "C", "B", 2, 50), fillet("W3", "D", "B", 2, 50)}, both...), onJoint: true},
		{code: "part-seam", says: "more than all edges of A (flat 200x10, 500 mm long)", yes: []joint.Joint{fillet("W1", "A", "B", 4, 4000)}, no: []joint.Joint{fillet("W1", "A", "B", 4, 1400)}, onJoint: true},
		{code: "part-too-long", says: "that the shop buys has 6000 mm", cut: twoPlates + "C,L 50x50x5,S235,6500,4\n", yes: []joint.Joint{fillet("W1", "A", "B", 4, 400), fillet("W2", "A", "C", 4, 50)},
			no: []joint.Joint{fillet("W1", "A", "B", 4, 400), fillet("W2", "A", "C", 4, 50)}, noCut: twoPlates + "C,L 50x50x5,S235,5500,4\n"},
		{code: "part-refused", says: `part1 is "A", row 2 of the cut list`, cut: "A,PL 10x200,S235,500,4.5\nB,PL 12x150,S235,500,4\n", yes: both, no: both, noCut: twoPlates, onJoint: true},
		{code: "part-alone", says: "joins A to itself", cut: onePlate, yes: []joint.Joint{fillet("W1", "A", "A", 1, 400)}, no: []joint.Joint{fillet("W1", "A", "A", 1, 400)}, noCut: "A,PL 10x200,S235,500,2\n"},
		{code: "part-small", says: "round A (SHS 100x100x5), which is larger than B (flat 70x8, 200 mm long)", cut: tubeOn + "B,FL 70x8,S235,200,4\n", yes: round, no: round, noCut: tubeOn + "B,FL 90x8,S235,200,4\n", onJoint: true},
		{code: "part-small", says: "flat 22x1.5, 22 mm long", cut: tubeOn + "B,PL 1.5x22,S235,22,4\n", yes: round, no: round, noCut: tubeOn + "B,PL 8x89,S235,89,4\n", onJoint: true}, // a cap inside the tube
		{code: "part-small", says: "SHS 60x60x4", cut: tubeOn + "B,SHS 60x60x4,S235,2000,4\n", yes: round, no: round, noCut: tubeOn + "B,SHS 90x90x4,S235,2000,4\n", onJoint: true},   // a sleeve
		{code: "part-small", says: "CHS 60.3x4", cut: tubeOn + "B,CHS 60.3x4,S235,2000,4\n", yes: round, no: round, noCut: tubeOn + "B,CHS 139.7x4,S235,2000,4\n", onJoint: true},
		{code: "part-thin", says: "12 x 400 x 200 mm if it was meant in centimetres", cut: thick + "D,PL 1.2x40,S235,20,4\n", yes: both, no: both, noCut: thick + "D,PL 1.2x1000,S235,2000,4\n"},                     // a cover is large
		{code: "part-thin", says: "12.7 x 1219.2 x 2438.4 mm if it was meant in inches", cut: thick + "D,PL 0.5x48,S235,96,4\n", yes: both, no: both, noCut: thick + "D,PL 2x100,S235,200,4\nE,PL 2x80,S235,90,4\n"}, // some sheet among plates
		{code: "part-thin", says: "12.7 x 1219.2 x 2438.4 mm if it was meant in inches", cut: thick + "D,PL 0.5x48,S235,96,4\n", yes: both, no: both, noCut: "A,PL 10x200,S235,500,4\nB,PL 2x150,S235,300,4\nD,PL 0.5x48,S235,96,4\n"},
	}
}

// Lists in which one part, a tube, or thick plates stand.
const (
	onePlate = "A,PL 10x200,S235,500,1\n"
	tubeOn   = "A,SHS 100x100x5,S235,900,4\n"
	thick    = twoPlates + "C,PL 15x150,S235,300,4\n"
)

// allRound is a fillet that goes all round its first part.
func allRound() joint.Joint {
	j := fillet("W1", "A", "B", 4, 0)
	j.AllRound = true
	return j
}

// spoken returns the checks of a code about the joints, or about the parts.
func spoken(t *testing.T, s *scene, cut string, joints []joint.Joint) []finding.Check {
	t.Helper()
	if cut == "" {
		cut = twoPlates
	}
	b, plans, problems := worked(t, "part,section,material,length,qty\n"+cut, append([]joint.Joint(nil), joints...)...)
	var out []finding.Check
	if s.onJoint {
		for _, p := range plans {
			out = append(out, ofCode(p, s.code)...)
		}
		return out
	}
	for i := range b.Results {
		for _, c := range b.Results[i].Checks {
			if c.Code == s.code {
				out = append(out, c)
				told(t, problems, c, b.List.Parts[i].Place.Row)
			}
		}
	}
	return out
}

func ofCode(p plan.Plan, code string) []finding.Check {
	var out []finding.Check
	for _, c := range p.Checks {
		if c.Code == code {
			out = append(out, c)
		}
	}
	return out
}

// told makes sure that a check about a part stands among the problems with its place.
func told(t *testing.T, problems []finding.Problem, c finding.Check, row int) {
	t.Helper()
	for _, p := range problems {
		if p.Code == c.Code && p.Place.Row == row && p.Place.Col > 0 && p.Place.File != "" && p.Hint != "" && p.Text == c.Text {
			return
		}
	}
	t.Errorf("%s of row %d is not among the problems: %+v", c.Code, row, problems)
}

// Every rule that compares the two lists speaks where it is broken, with what to do
// and what it rests on, and is silent where it is kept.
func TestEveryRuleOfTwoLists(t *testing.T) {
	for _, s := range scenes() {
		found := false
		for _, c := range spoken(t, &s, s.cut, s.yes) {
			if c.Rule == "" || c.Do == "" || c.Basis == "" {
				t.Errorf("%s lacks rule, basis or what to do: %+v", s.code, c)
			}
			found = found || strings.Contains(c.Text, s.says)
		}
		if !found {
			t.Errorf("%s does not say %q: %+v", s.code, s.says, spoken(t, &s, s.cut, s.yes))
		}
		cut := s.noCut
		if cut == "" {
			cut = s.cut
		}
		if still := spoken(t, &s, cut, s.no); len(still) != 0 {
			t.Errorf("%s speaks where nothing is wrong: %+v", s.code, still)
		}
	}
}

// The rules of the table that speak of parts all stand above; those of thickness and
// grade are the planner's.
func TestEveryPartRuleHasAScene(t *testing.T) {
	set, _ := world(t)
	shown := map[string]bool{"part-thickness": true, "part-grade": true}
	for _, s := range scenes() {
		shown[s.code] = true
	}
	for _, r := range set.CheckRules {
		if strings.HasPrefix(r.Code, "part-") && !shown[r.Code] {
			t.Errorf("%s has no scene", r.Code)
		}
	}
}
