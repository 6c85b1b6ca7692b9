package joint

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// TestKindsSayMoreThanTheKind: what stands beside the kind in its cell counts as it would
// in a column of its own, or the cell is refused; nothing of it is dropped.
func TestKindsSayMoreThanTheKind(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct{ text, want string }{
		{"fillet", "fillet 1"},
		{"fillet 2 sides", "fillet 2"}, {"fillet, 2 sides", "fillet 2"}, {"fillet (2 sides)", "fillet 2"}, {"fillet 2-sided", "fillet 2"}, {"fillet 2S", "fillet 2"}, {"fillet both sides", "fillet 2"},
		{"Kehlnaht 2 seitig", "fillet 2"}, {"Kehlnaht 2-seitig", "fillet 2"}, {"Kehlnaht (2-seitig)", "fillet 2"}, {"Kehlnaht 2 Seiten", "fillet 2"}, {"Kehlnaht beidseitig", "fillet 2"},
		{"cordon d'angle 2 côtés", "fillet 2"}, {"cordon d'angle des 2 côtés", "fillet 2"}, {"cordón de ángulo 2 lados", "fillet 2"}, {"cordone d'angolo 2 lati", "fillet 2"}, {"solda de ângulo 2 lados", "fillet 2"},
		{"spoina pachwinowa 2-str.", "fillet 2"}, {"spoina pachwinowa 2-stronna", "fillet 2"}, {"угловой шов 2-стор.", "fillet 2"}, {"угловой шов с 2-х сторон", "fillet 2"}, {"кутовий шов з 2 сторін", "fillet 2"},
		{"lap 2 sides", "lap 2"}, {"double fillet", "fillet 2"}, {"fillet double", "fillet 2"}, {"fillet one side", "fillet 1"}, {"fillet 1 side", "fillet 1"}, {"Kehlnaht 1-seitig", "fillet 1"}, {"double fillet one side", "refused"},
		{"V both sides", "single V 2"}, {"V 2 sides", "single V 2"}, {"V-Naht beidseitig", "single V 2"}, {"V double", "refused"}, {"V doppelt", "refused"}, {"V x2", "refused"}, {"V BS", "single V 2"}, {"V both", "single V 2"}, {"V one side", "single V 1"}, {"double V both sides", "double V 1"}, {"double V one side", "refused"},
		{"fillet not both sides", "refused"}, {"fillet no both sides", "refused"}, {"Kehlnaht nicht beidseitig", "refused"}, {"fillet (not both sides)", "refused"}, {"fillet both sides (one side)", "refused"},
		{"fillet all round", "fillet 1 round"}, {"fillet (all round)", "fillet 1 round"}, {"all round fillet", "fillet 1 round"}, {"fillet, all around", "fillet 1 round"}, {"fillet AR", "fillet 1 round"}, {"fillet both sides all round", "fillet 2 round"}, {"fillet all round both sides", "fillet 2 round"},
		{"Kehlnaht umlaufend", "fillet 1 round"}, {"Kehlnaht ringsum", "fillet 1 round"}, {"Kehlnaht umlaufend 2-seitig", "fillet 2 round"}, {"V-Naht umlaufend", "single V 1 round"},
		{"spoina pachwinowa dookoła", "fillet 1 round"}, {"spoina pachwinowa po obwodzie", "fillet 1 round"}, {"угловой шов по периметру", "fillet 1 round"}, {"угловой шов по замкнутой линии", "fillet 1 round"}, {"кутовий шов по контуру", "fillet 1 round"}, {"кутовий шов по всьому периметру", "fillet 1 round"},
		{"filete perimetral", "fillet 1 round"}, {"cordón de ángulo todo alrededor", "fillet 1 round"}, {"cordone d'angolo tutto intorno", "fillet 1 round"}, {"soudure d'angle tout autour", "fillet 1 round"}, {"soudure d'angle sur tout le pourtour", "fillet 1 round"}, {"solda de ângulo em toda volta", "fillet 1 round"},
		{"fillet not all round", "refused"}, {"fillet no all round", "refused"}, {"Kehlnaht nicht umlaufend", "refused"}, {"fillet full", "refused"}, {"all round", "refused"},
		{"plug round", "plug 1"},
	} {
		text := fmt.Sprintf("Mark;Kind;Length (mm);Leg (mm);Thickness (mm)\nW1;%q;500;5;12\n", c.text)
		if got := saidOf(t, understandAll(t, set, text)); got != c.want {
			t.Errorf("%q is read as %s, want %s", c.text, got, c.want)
		}
	}
}

// saidOf writes what the one joint of a list says of kind, sides and going round.
func saidOf(t *testing.T, l *List) string {
	t.Helper()
	if len(l.Joints) != 1 {
		return "refused"
	}
	j := &l.Joints[0]
	text := fmt.Sprintf("%s %d", j.Kind, j.Sides)
	if j.AllRound {
		text += " round"
	}
	return text
}

// TestAllRoundInTheKindNeedsALengthOrASection: as under the length, and a length that is
// given counts.
func TestAllRoundInTheKindNeedsALengthOrASection(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct {
		length, part string
		want         float64 // the joint's length; below 0: refused
	}{
		{"500", "", 500}, {"500", "SHS 60x60x4", 500}, {"", "SHS 60x60x4", 0}, {"all round", "SHS 60x60x4", 0}, {"", "", -1}, {"200000", "", -1}, {"0", "SHS 60x60x4", -1},
	} {
		l := understandAll(t, set, fmt.Sprintf("Mark;Kind;Length (mm);Leg (mm);t1 (mm);Part 1\nW1;Kehlnaht umlaufend;%s;5;6;%s\n", c.length, c.part))
		switch {
		case c.want < 0 && len(l.Joints) > 0:
			t.Errorf("length %q, part %q: worked as %+v", c.length, c.part, l.Joints[0])
		case c.want < 0:
		case (c.length == "") != slices.ContainsFunc(l.Joints[0].Assumed, func(a Assumption) bool { return a.Key == "length" }):
			t.Errorf("length %q: %+v", c.length, l.Joints[0].Assumed)
		case len(l.Joints) != 1 || !l.Joints[0].AllRound || float64(l.Joints[0].Length) != c.want:
			t.Errorf("length %q, part %q: %+v, %v", c.length, c.part, l.Joints, l.Problems)
		}
	}
	l := understandAll(t, set, "Mark;Kind;Leg (mm);t1 (mm);Part 1\nW1;fillet all round;5;6;SHS 60x60x4\n")
	if got := saidOf(t, l); got != "fillet 1 round" {
		t.Errorf("without a column of lengths: %s, %v", got, l.Problems)
	}
}

// TestKindAndColumnThatDisagreeAreTold: the column counts, and nothing is listed as taken
// that was not.
func TestKindAndColumnThatDisagreeAreTold(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct {
		kind, sides string
		want        int
		told        bool
	}{
		{"fillet both sides", "1", 1, true}, {"fillet both sides", "2", 2, false}, {"fillet both sides", "", 2, false},
		{"fillet one side", "2", 2, true}, {"fillet one side", "", 1, false}, {"fillet", "2", 2, false},
	} {
		l := understandAll(t, set, fmt.Sprintf("Mark;Kind;Sides;Length (mm);Leg (mm);t1 (mm)\nW1;%s;%s;500;5;6\n", c.kind, c.sides))
		if len(l.Joints) != 1 || l.Joints[0].Sides != c.want || (len(told(l, "two-sides")) > 0) != c.told {
			t.Fatalf("%s beside %q: %+v %v", c.kind, c.sides, l.Joints, l.Problems)
		}
		for _, a := range l.Joints[0].Assumed {
			if a.Key == "sides" && a.Value != fmt.Sprint(c.want) {
				t.Errorf("%s beside %q: %+v is listed as taken", c.kind, c.sides, a)
			}
		}
	}
}

// TestRefusalsAreNeverTurnedRound: a cell that says no is not read as the yes it denies,
// and a bracket that contradicts the words before it is not dropped.
func TestRefusalsAreNeverTurnedRound(t *testing.T) {
	s := newSpellings(loadTables(t))
	for _, c := range [][3]string{
		{"allround", "no all round", ""}, {"allround", "not all round", ""}, {"allround", "all round (no)", ""}, {"allround", "nicht umlaufend", ""}, {"allround", "non tutto intorno", ""},
		{"sides", "no both sides", ""}, {"sides", "both (no)", ""}, {"sides", "both sides (one side)", ""}, {"sides", "one side (both)", ""}, {"sides", "both sides (not the far side)", ""}, {"sides", "both sides (web)", "2"}, {"sides", "both (2)", "2"}, {"sides", "z obu stron", "2"},
		{"where", "no site", ""}, {"where", "not site", ""}, {"where", "shop (site)", ""}, {"where", "shop (bay 3)", "shop"}, {"where", "site (not shop)", ""},
		{"position", "no flat", ""}, {"position", "vertical up (PG)", ""}, {"position", "Vertical-up (3F)", "PF"}, {"position", "PA (PF)", ""}, {"position", "PB (2F)", "PB"}, {"position", "flat (not overhead)", ""},
		{"position", "horizontal (PC)", "PC"}, {"position", "horizontal (2F)", "PB"}, {"position", "overhead (PA)", ""}, {"position", "PC (horizontal)", "PC"},
		{"backing", "no backing", "none"}, {"backing", "without backing", "none"}, {"backing", "no", "none"}, {"backing", "not backing bar", ""}, {"backing", "no ceramic", ""}, {"backing", "backing bar", "bar"}, {"backing", "copper bar", "copper"}, {"backing", "Kupferschiene", "copper"}, {"backing", "ohne Badsicherung", "none"},
	} {
		got, ok := s.word(c[0], c[1])
		if ok && got == "" {
			got = "none"
		}
		if got != c[2] {
			t.Errorf("%s %q is read as %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

// TestHeadersThatContradictThemselvesAreTold: a bracket that names another column than
// the words before it leaves the column aside, and says so.
func TestHeadersThatContradictThemselvesAreTold(t *testing.T) {
	set := loadTables(t)
	s := newSpellings(set)
	for header, want := range map[string]string{
		"Leg (throat)": "", "Throat (leg)": "", "Leg (a)": "", "Schenkel (a)": "", "a (z)": "", "t1 (t2)": "", "Length (qty)": "", "Länge (Stk)": "", "Gap (angle)": "", "Angle (gap)": "",
		"Throat (a)": "size", "Leg (z)": "size", "Leg length (z)": "size", "Size (throat)": "size", "Weld size (leg)": "size", "Thickness (t2)": "t2", "Qty (No.)": "qty", "Weld (length)": "length", "Length (mm)": "length", "t1 (web)": "t1", "Stk. (qty)": "qty", "Length (each)": "length",
	} {
		got := ""
		if all := s.header(header); len(all) > 0 {
			got = all[0].key
		}
		if got != want {
			t.Errorf("header %q is read as %q, want %q", header, got, want)
		}
	}
	l := understandAll(t, set, "Mark;Length (mm);Leg (mm);t1 (mm);Gap (angle)\nW1;500;5;6;2\n")
	if p := told(l, "header-contradicts"); len(p) != 1 || p[0].Level != finding.Warning || !strings.Contains(p[0].Text, `"Gap (angle)"`) || l.Joints[0].Gap != 0 {
		t.Errorf("%v", l.Problems)
	}
}

// TestALengthSaidOutrightWins: a weld with a unit is a length only where no column says
// length.
func TestALengthSaidOutrightWins(t *testing.T) {
	set := loadTables(t)
	for _, text := range []string{
		"Nr;Naht (mm);Länge (mm);z (mm);t1 (mm)\nW1;5;500;5;6\n",
		"Nr;Länge (mm);Naht (mm);z (mm);t1 (mm)\nW1;500;5;5;6\n",
		"Mark;Seam (in);Length (ft);Leg (mm);t1 (mm)\nW1;5;2;5;6\n",
	} {
		l := understandAll(t, set, text)
		p := told(l, "two-columns")
		if want := 500.0; len(l.Joints) != 1 || float64(l.Joints[0].Length) != want && float64(l.Joints[0].Length) != 609.6 {
			t.Errorf("%q: %+v %v", text, l.Joints, l.Problems)
		}
		if len(p) != 1 || !strings.Contains(p[0].Text, "is not understood") {
			t.Errorf("%q: %v", text, p)
		}
	}
	l := understandAll(t, set, "Mark;Seam (ft);Seam (in);Leg (mm);t1 (mm)\nW1;2;6;5;6\n")
	if len(l.Joints) != 1 || float64(l.Joints[0].Length) != 762 {
		t.Errorf("%+v %v", l.Joints, l.Problems)
	}
}

// understandAll reads a list of which some rows may be refused.
func understandAll(t *testing.T, set *tables.Set, text string) *List {
	t.Helper()
	l, err := understand(t, set, text, Options{})
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return l
}
