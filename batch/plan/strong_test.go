package plan

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// saidOf returns the level and the words of the first check of a code, with what to do.
func saidOf(p *Plan, code string) (finding.Level, string) {
	for _, c := range p.Checks {
		if c.Code == code {
			return c.Level, c.Text + "; " + c.Do
		}
	}
	return "", ""
}

func planned(t *testing.T, j joint.Joint) *Plan {
	t.Helper()
	set, shop := world(t)
	return &Joints([]joint.Joint{j}, set, shop, Options{})[0]
}

// Duplex has its wire, which a shop seldom holds: until the list or the stock names it
// there is metal and no setting, and the words say what to write.
func TestDuplexAsksForItsWire(t *testing.T) {
	j := filletJoint(5, 8, "PB")
	j.Material = "1.4462"
	p := planned(t, j)
	level, text := saidOf(p, "wire-to-buy")
	if p.Settings || p.WeldMetal <= 0 || level != finding.Error || !strings.Contains(text, "the materials take G 22 9 3 N L") || !strings.Contains(text, "column wire") {
		t.Errorf("without its wire: settings %v, %v kg, %s %q", p.Settings, p.WeldMetal, level, text)
	}
	v := buttJoint(joint.SingleV, 12, "PA")
	v.Material, v.Wire = "1.4462", "ER2209 1.0"
	p = planned(t, v)
	if !p.Settings || p.Filler != "G 22 9 3 N L" || p.Gas != "M12" && p.Gas != "M13" || p.Interpass == nil || *p.Interpass != 150 || p.Preheat != nil {
		t.Errorf("with its wire: %+v", p.Manner)
	}
	if p.HeatRange[1] != 2.5 || p.HeatRange[0] < 0.5 {
		t.Errorf("heat is held between %v", p.HeatRange)
	}
	for _, code := range []string{"weld-care", "not-in-stock"} {
		if level, _ := saidOf(p, code); level != finding.Warning {
			t.Errorf("%s is not said", code)
		}
	}
}

// A wire for 22 % chromium is not one for 25 %: super duplex gets metal and metres only,
// and is told why.
func TestSuperDuplexIsRefusedInPlainWords(t *testing.T) {
	j := filletJoint(5, 8, "PB")
	j.Material = "2507"
	p := planned(t, j)
	level, text := saidOf(p, "no-filler")
	_, care := saidOf(p, "weld-care")
	if p.Settings || p.WeldMetal <= 0 || p.Seam <= 0 || level != finding.Error || !strings.Contains(text, "none for this pair of materials") || !strings.Contains(care, "25 9 4 N L") {
		t.Errorf("settings %v, %v kg, %v m, %s %q, %q", p.Settings, p.WeldMetal, p.Seam, level, text, care)
	}
}

// A butt of S690 laid with the wire of mild steel is softer than the plate and is told so;
// a fillet, whose throat the engineer sizes by the wire, is not.
func TestS690SaysWhereItsWireIsSofter(t *testing.T) {
	v := buttJoint(joint.SingleV, 12, "PA")
	v.Material = "S690QL"
	p := planned(t, v)
	level, text := saidOf(p, "wire-softer")
	if p.Filler != "G3Si1" || level != finding.Warning || !strings.Contains(text, "about 500 MPa") || !strings.Contains(text, "G Mn3Ni1CrMo") {
		t.Errorf("%s: %s %q", p.Filler, level, text)
	}
	v.Wire = "ER110S-G 1.2"
	if p = planned(t, v); p.Filler != "G Mn3Ni1CrMo" || !p.Settings {
		t.Errorf("the matching wire is not taken: %s, %s", p.Filler, p.NoSettings)
	}
	if _, text = saidOf(p, "wire-softer"); text != "" {
		t.Errorf("the matching wire is told soft: %q", text)
	}
	f := filletJoint(6, 12, "PB")
	f.Material = "S690QL"
	if _, text = saidOf(planned(t, f), "wire-softer"); text != "" {
		t.Errorf("a fillet: %q", text)
	}
}
