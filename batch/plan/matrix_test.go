package plan

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// changed returns a joint with a change.
func changed(j joint.Joint, change func(*joint.Joint)) joint.Joint {
	j = j.Apart()
	change(&j)
	return j
}

// row is one check with a joint that calls for it and one that does not.
type row struct {
	code, codes string // codes: "iso", "aws", or "" for both
	yes, no     joint.Joint
}

func matrix() []row {
	f := func(leg, t float64, change func(*joint.Joint)) joint.Joint {
		return changed(filletJoint(leg, t, "PB"), change)
	}
	same := func(*joint.Joint) {}
	good := filletJoint(6, 10, "PB")
	stitch := func(segment, gap, length float64) joint.Joint {
		return f(6, 10, func(j *joint.Joint) {
			j.Length, j.Stitch = units.MM(length), &joint.Stitch{Segment: units.MM(segment), Gap: units.MM(gap)}
		})
	}
	material := func(name string) joint.Joint { return f(6, 10, func(j *joint.Joint) { j.Material = name }) }
	gap := func(g float64) joint.Joint {
		return f(6, 10, func(j *joint.Joint) { j.Gap, j.GapGiven = units.MM(g), true })
	}
	lap := func(leg, t float64) joint.Joint { return f(leg, t, func(j *joint.Joint) { j.Kind = joint.Lap }) }
	bare := func(leg float64) joint.Joint {
		return f(leg, 10, func(j *joint.Joint) { j.Assumed = []joint.Assumption{{Key: "size", Value: "leg"}} })
	}
	asked := func(wire, gas, process string) joint.Joint {
		return f(6, 10, func(j *joint.Joint) { j.Wire, j.Gas, j.Process = wire, gas, process })
	}
	metals := func(one, other string) joint.Joint {
		return f(6, 10, func(j *joint.Joint) { j.Material, j.Material2 = one, other })
	}
	outside := func(name string) joint.Joint {
		return f(6, 10, func(j *joint.Joint) { j.Material, j.Where = name, joint.Site })
	}
	aluminium := func(t, gap float64) joint.Joint {
		return changed(buttJoint(joint.SquareButt, t, "PA"), func(j *joint.Joint) { j.Material, j.Gap, j.GapGiven = "5083", units.MM(gap), true })
	}
	sheet := func(t float64) joint.Joint {
		return f(t, t, func(j *joint.Joint) { j.Kind, j.Material, j.Position = joint.Corner, "304", "PA" })
	}
	flare := func(size, t float64, means joint.SizeKind) joint.Joint {
		return changed(buttJoint(joint.FlareBevel, t, "PA"), func(j *joint.Joint) { j.Size = joint.Size{Means: means, A: units.MM(size)} })
	}
	level := func(q string, g float64) joint.Joint {
		return f(6, 10, func(j *joint.Joint) { j.Quality, j.Gap, j.GapGiven = q, units.MM(g), true })
	}
	return []row{
		{"leg-min", "aws", f(4, 15, same), f(6, 15, same)},
		{"throat-min", "iso", f(4, 10, same), f(5, 10, same)},
		{"length-min", "", f(6, 10, func(j *joint.Joint) { j.Length = 20 }), good},
		{"leg-edge", "", lap(5, 4), lap(4, 4)},
		{"leg-edge", "aws", lap(8, 8), lap(6, 8)}, // from a quarter inch on 1/16 in stays free
		{"leg-large", "", f(8, 5, same), good},
		{"leg-unlikely", "", f(30, 10, same), good},
		{"leg-or-throat", "", bare(3.5), bare(6)},
		{"stitch-short", "", stitch(20, 100, 1000), stitch(50, 100, 1000)},
		{"stitch-gap", "iso", stitch(50, 190, 1000), stitch(50, 150, 1000)}, // 16 x 10 mm
		{"stitch-gap", "aws", stitch(50, 260, 1000), stitch(50, 190, 1000)}, // 24 x 10 mm
		{"stitch-none", "", stitch(50, 100, 30), stitch(50, 100, 1000)},
		{"stitch-outdoor", "", changed(stitch(50, 100, 1000), func(j *joint.Joint) { j.Where = joint.Site }), stitch(50, 100, 1000)},
		{"gap-wide", "", gap(3), gap(1)},
		{"gap-too-wide", "", gap(7), gap(3)},
		{"angle-fillet", "", f(6, 10, func(j *joint.Joint) { j.Angle = 45 }), f(6, 10, func(j *joint.Joint) { j.Angle = 75 })},
		{"several-passes", "", f(14, 20, same), good},
		{"root-corner", "", corner(8, joint.FullOpen, ""), corner(8, joint.HalfOpen, "")},
		{"double-saves", "", buttJoint(joint.SingleV, 25, "PA"), buttJoint(joint.SingleV, 12, "PA")},
		{"thin-sheet", "", f(2, 1, same), good},
		{"short-arc-thick", "", asked("G3Si1 1.0", "", "short arc"), good},
		{"short-arc-aws", "aws", asked("G3Si1 1.0", "", "short arc"), good},
		{"wire-metal", "", asked("ER308L 1.0", "", ""), asked("G3Si1 1.2", "", "")},
		{"wire-gas", "", asked("ER308L 1.0", "CO2", ""), asked("G3Si1 1.2", "CO2", "")},
		{"gas-aluminium", "", changed(material("5083"), func(j *joint.Joint) { j.Gas = "M21" }), changed(material("5083"), func(j *joint.Joint) { j.Gas = "I1" })},
		{"word-unknown", "", asked("G77Xx", "", ""), good},
		{"site-wind", "", f(6, 10, func(j *joint.Joint) { j.Where = joint.Site }), good},
		{"zinc", "", material("galvanised"), good},
		{"paint", "", f(6, 10, func(j *joint.Joint) { j.Note = "primed both sides" }), f(6, 10, func(j *joint.Joint) { j.Note = "unpainted" })},
		{"confined", "", f(6, 10, func(j *joint.Joint) { j.Note = "inside tank, confined space" }), good},
		{"not-weldable", "", material("7075"), good},
		{"dissimilar", "", f(6, 10, func(j *joint.Joint) { j.Material2 = "304L" }), metals("6082", "5083")},
		{"dissimilar", "", f(6, 10, func(j *joint.Joint) { j.Material2 = "304L" }), metals("316L", "304L")},
		{"alloys-differ", "", metals("6082", "5083"), f(6, 10, func(j *joint.Joint) { j.Material2 = "304L" })},
		{"alloys-differ", "", metals("316L", "304L"), good},
		{"site-wind-screens", "", outside("304L"), outside("S235")},
		{"site-wind-screens", "", outside("5083"), outside("S355")},
		{"site-wind", "", outside("S235"), outside("5083")},
		{"site-flow", "", outside("S235"), outside("5083")},
		{"site-flow-screens", "", outside("5083"), outside("S235")},
		{"no-filler", "", f(6, 10, func(j *joint.Joint) { j.Material2 = "5083" }), good},
		{"material-blank", "", material(""), good},
		{"material-unknown", "", material("wood"), good},
		{"thickness-blank", "", f(6, 0, same), good},
		{"size-blank", "", f(0, 10, same), good},
		{"length-blank", "", f(6, 10, func(j *joint.Joint) { j.Length = 0 }), good},
		{"position-unknown", "", filletJoint(6, 10, "??"), good},
		{"position-pipe", "", filletJoint(6, 10, "PH"), good},
		{"position-butt", "", buttJoint(joint.SquareButt, 3, "PB"), buttJoint(joint.SquareButt, 3, "PC")},
		{"position-butt", "", buttJoint(joint.SingleV, 12, "PD"), buttJoint(joint.SingleBevel, 12, "PB")},
		{"wps-governs", "", f(6, 10, func(j *joint.Joint) { j.WPS = "W-7" }), good},
		{"preheat", "", f(8, 50, func(j *joint.Joint) { j.Material = "S355" }), good},
		{"preheat-narrow", "iso", f(12, 25, func(j *joint.Joint) { j.Material = "S690" }), f(8, 50, func(j *joint.Joint) { j.Material = "S355" })},
		{"unit-thickness", "", f(6, 0.25, same), good},
		{"unit-length", "", f(6, 10, func(j *joint.Joint) { j.Length = 2 }), good},
		{"quality-level", "iso", level("C", 0), good},
		{"quality-gap", "iso", level("B", 1.4), level("D", 1.4)},
		{"wish-not-met", "", changed(f(2, 2, same), func(j *joint.Joint) { j.Material, j.Process = "5083", "short arc" }), material("5083")},
		{"al-short-arc", "", changed(material("5083"), func(j *joint.Joint) { j.Process = "short arc" }), changed(f(2, 2, same), func(j *joint.Joint) { j.Material, j.Process = "5083", "short arc" })},
		{"too-hot", "", changed(f(2, 0.8, same), func(j *joint.Joint) { j.Wire = "G3Si1 1.6" }), good},
		{"figure-unlikely", "", f(6, 10, func(j *joint.Joint) { j.Length, j.Qty = 90000, 200 }), good},
		{"backing-purge", "", changed(buttJoint(joint.SingleV, 8, "PA"), func(j *joint.Joint) { j.Material = "304L" }), buttJoint(joint.SingleV, 8, "PA")},
		{"flare-throat", "", flare(9, 6, joint.Throat), flare(7.5, 6, joint.Throat)}, // 5/8 of a radius of 12
		{"flare-low", "", flare(4, 6, joint.Leg), flare(5, 6, joint.Leg)},            // 3/8 of it lie below the throat
		{"flare-small", "", flare(3, 4, joint.Throat), flare(3, 5, joint.Throat)},
		{"butt-cold", "", aluminium(4, 0), aluminium(4, 1.5)},
		{"butt-cold", "", changed(buttJoint(joint.SquareButt, 6, "PA"), func(j *joint.Joint) { j.GapGiven = true }), buttJoint(joint.SquareButt, 4, "PA")},
		{"bead-through", "", aluminium(3, 0.4), aluminium(3, 3)},
		{"bead-larger", "", sheet(1.5), sheet(2)},
		{"al-cold", "", f(5, 12, func(j *joint.Joint) { j.Material, j.T2 = "6061", 20 }), f(5, 6, func(j *joint.Joint) { j.Material = "6061" })},
		{"root-open", "", changed(buttJoint(joint.SingleV, 10, "PF"), func(j *joint.Joint) { j.Wire = "T 46 2 P 1.2" }),
			changed(buttJoint(joint.SingleV, 10, "PF"), func(j *joint.Joint) { j.Wire, j.Backing = "T 46 2 P 1.2", "ceramic" })},
		{"hole-fill", "", f(20, 8, func(j *joint.Joint) { j.Kind = joint.Plug }), good},
		{"hole-small", "", f(10, 8, func(j *joint.Joint) { j.Kind = joint.Plug }), f(20, 8, func(j *joint.Joint) { j.Kind = joint.Plug })},
	}
}

// Every check has a joint that calls for it and one that does not; a rule of one
// family of codes is silent under the other.
func TestEveryCheckSpeaksAndIsSilent(t *testing.T) {
	set, shop := world(t)
	for _, r := range matrix() {
		for _, codes := range []string{"iso", "aws"} {
			opt := Options{Codes: codes}
			yes, no := Joints([]joint.Joint{r.yes}, set, shop, opt)[0], Joints([]joint.Joint{r.no}, set, shop, opt)[0]
			if r.codes != "" && r.codes != codes {
				continue
			}
			c, said := checkOf(&yes, r.code)
			if !said {
				t.Errorf("%s (%s) is silent on %+v: %s", r.code, codes, r.yes.Size, codesOf(&yes))
			} else if c.Rule == "" || c.Do == "" || c.Basis == "" || c.Basis != "common-practice" && c.Source == "" || c.Text == "" {
				t.Errorf("%s lacks rule, source, basis or what to do: %+v", r.code, c)
			}
			if c, said := checkOf(&no, r.code); said {
				t.Errorf("%s (%s) speaks where nothing is wrong: %s", r.code, codes, c.Text)
			}
		}
	}
}

func codesOf(p *Plan) string {
	var out []string
	for _, c := range p.Checks {
		out = append(out, c.Code)
	}
	return strings.Join(out, " ")
}

// The rules of AWS and AISC are silent under ISO codes, and the other way round.
func TestARuleOfOneFamilyIsSilentUnderTheOther(t *testing.T) {
	set, shop := world(t)
	only := map[string]string{}
	for _, r := range set.CheckRules {
		if before, ok := only[r.Code]; ok && before != r.Codes {
			only[r.Code] = "both"
			continue
		}
		only[r.Code] = r.Codes
	}
	other := map[string]string{"iso": "aws", "aws": "iso"}
	for _, r := range matrix() {
		if own := only[r.code]; own == "iso" || own == "aws" {
			p := Joints([]joint.Joint{r.yes}, set, shop, Options{Codes: other[own]})[0]
			if c, said := checkOf(&p, r.code); said {
				t.Errorf("%s is a rule of %s but speaks under %s: %s", r.code, own, other[own], c.Text)
			}
		}
	}
}

// No check approves anything.
func TestNoCheckApproves(t *testing.T) {
	set, _ := world(t)
	word := regexp.MustCompile(`(?i)\b(approved|is safe|is adequate|is sufficient|acceptable|strong enough|certified)\b`)
	for _, r := range set.CheckRules {
		if bad := word.FindString(r.Rule + " " + r.Do); bad != "" {
			t.Errorf("%s says %q", r.Code, bad)
		}
		if r.Do == "" {
			t.Errorf("%s does not say what to do", r.Code)
		}
	}
}

// A code in the program has its rule in the table, and a rule is used.
func TestCodesAndRulesMatch(t *testing.T) {
	set, _ := world(t)
	rules := map[string]bool{}
	for _, r := range set.CheckRules {
		rules[r.Code] = true
	}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	asks := regexp.MustCompile(`(?:sayf|sayFrom|book\.first|book\.at|say)\(\s*"([a-z0-9-]+)"|coded\{"([a-z0-9-]+)"|\badd\(\w+, "([a-z0-9-]+)"|return "([a-z]+(?:-[a-z]+)+)", finding`)
	text := ""
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		text += string(data)
	}
	for _, m := range asks.FindAllStringSubmatch(text, -1) {
		if code := m[1] + m[2] + m[3] + m[4]; !rules[code] {
			t.Errorf("the code %q has no rule in check_rules.csv", code)
		}
	}
	for code := range rules {
		if !ofParts[code] && !strings.Contains(text, `"`+code+`"`) {
			t.Errorf("the rule %q is used by nothing", code)
		}
	}
}

// The legal minimum of the filter shade is never undercut, whatever the current.
func TestShadeIsNeverBelowTheLegalMinimum(t *testing.T) {
	set, _ := world(t)
	legal := func(i float64) int { // 29 CFR 1910.133(a)(5)
		if i < 60 {
			return 7
		}
		return 10
	}
	for i := 5.0; i <= 500; i += 5 {
		s, ok := set.Shade("135", units.Amp(i))
		if !ok || max(s.Recommended, s.Minimum) < legal(i) {
			t.Errorf("%g A: shade %+v below %d", i, s, legal(i))
		}
	}
}

// checkOf returns a plan's check of a code.
func checkOf(p *Plan, code string) (finding.Check, bool) {
	for _, c := range p.Checks {
		if c.Code == code {
			return c, true
		}
	}
	return finding.Check{}, false
}
