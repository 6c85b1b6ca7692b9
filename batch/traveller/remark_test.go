package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
)

// What the list remarks on a joint stands on its sheet: beside the mark where it is one
// remark that fits, else below, with the mark where joints of a sheet differ in it.
func TestASheetSaysWhatTheListRemarks(t *testing.T) {
	of := func(mark, note string) joint.Joint {
		j := leg(mark, 5, 6, 6, 500, "PB")
		j.Note = note
		return j
	}
	long := strings.TrimSpace(strings.Repeat("stiffener to lower flange near the splice ", 4))
	for _, c := range []struct {
		joints       []joint.Joint
		title, below string
	}{
		{[]joint.Joint{of("W-1", "Fin plate to flange")}, "W-1 Fin plate to flange", ""},
		{[]joint.Joint{of("W-1", "Fin plate"), of("W-2", "Fin plate")}, "W-1, W-2 Fin plate", ""},
		{[]joint.Joint{of("W-1", "Fin plate"), of("W-2", "Cleat")}, "W-1, W-2 ", "From the list: W-1: Fin plate; W-2: Cleat"},
		{[]joint.Joint{of("W-1", ""), of("W-2", "Cleat")}, "W-1, W-2 W-2: Cleat", ""},
		{[]joint.Joint{of("W-1", long)}, "W-1 ", "From the list: stiffener to lower flange"},
		{[]joint.Joint{of("W-1", "")}, "W-1 ", ""},
	} {
		for _, look := range []price.Options{metric, {Paper: "letter", Lang: "de", Codes: "aws", Symbols: "aws", US: true, Date: "2026-03-01"}} {
			doc := faultless(t, jobOf(t, c.joints, look))
			sheet := doc.Pages[len(doc.Pages)-1]
			if got := said(sheet, "title"); !strings.HasPrefix(got, c.title) {
				t.Errorf("%+v: over the sheet %q, want %q", c.joints[0].Mark, got, c.title)
			}
			below := strings.Replace(said(sheet, "assumed"), "Aus der Liste", "From the list", 1)
			if !strings.HasPrefix(below, c.below) || c.below == "" && strings.Contains(below, "From the list") {
				t.Errorf("below %q, want %q", below, c.below)
			}
		}
	}
}
