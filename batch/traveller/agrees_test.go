package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

func loneSheet(t *testing.T, j joint.Joint) (*page.Page, *plan.Plan) {
	t.Helper()
	job := jobOf(t, []joint.Joint{j}, metric)
	return lastOf(faultless(t, job)), &job.Plans[0]
}

func hasCode(p *plan.Plan, code string) bool {
	for _, c := range p.Checks {
		if c.Code == code {
			return true
		}
	}
	return false
}

// A sheet that tells to warm thick aluminium does not say above that it is not heated.
func TestNoPreheatIsNotSaidWhereACheckWarms(t *testing.T) {
	j := leg("W", 6, 13, 13, 400, "PB")
	j.Material = "5083"
	sheet, p := loneSheet(t, j)
	if !hasCode(p, "al-cold") {
		t.Fatalf("%v: no fixture", p.Checks)
	}
	if box := said(sheet, "preheat"); !strings.Contains(box, "Warm the parts as CHECK says") {
		t.Errorf("preheat box: %q", box)
	}
	if check := said(sheet, "check"); !strings.Contains(check, "100 °C at most") || strings.Contains(check, "I3") {
		t.Errorf("check: %q", check)
	}
}

// What a check bids the welder can be done at the joint: screens, not another wire; and what
// the drawing says is not his to alter.
func TestChecksBidWhatAWelderCanDo(t *testing.T) {
	site := leg("W", 6, 8, 8, 400, "PB")
	site.Where = joint.Site
	small := leg("W", 3, 8, 8, 400, "PB")
	for _, c := range []struct {
		code      string
		j         joint.Joint
		want, not string
	}{
		{"site-wind", site, "screens", "self-shielded"},
		{"throat-min", small, "Ask the foreman before you start", "larger"},
	} {
		sheet, p := loneSheet(t, c.j)
		if !hasCode(p, c.code) {
			t.Fatalf("%s: no fixture", c.code)
		}
		if text := said(sheet, "check"); !strings.Contains(text, c.want) || strings.Contains(text, c.not) {
			t.Errorf("%s: %q", c.code, text)
		}
	}
}

// A stainless root without gas behind it burns: whoever welds has to know, not the desk alone.
func TestOpenStainlessRootTellsOfItsBack(t *testing.T) {
	j := butt("V", joint.SingleV, 8, 600, "PA")
	j.Material = "304L"
	sheet, p := loneSheet(t, j)
	if !hasCode(p, "backing-purge") {
		t.Fatal("no fixture")
	}
	if text := said(sheet, "check"); !strings.Contains(text, "Purge the back") {
		t.Errorf("checks: %q", text)
	}
}

// A metal that was taken only to reckon a mass is none to weld by: the sheet that says that
// the material is blank names no other.
func TestSheetWithoutSettingsTakesNoMaterial(t *testing.T) {
	j := leg("W", 5, 6, 6, 400, "PB")
	j.Material = ""
	sheet, p := loneSheet(t, j)
	if p.Settings {
		t.Fatal("it has settings: no fixture")
	}
	if text := said(sheet, "assumed"); strings.Contains(text, "carbon steel") {
		t.Errorf("taken: %q", text)
	}
}
