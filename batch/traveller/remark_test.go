package traveller

import (
	"fmt"
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

// Remarks of many joints on one sheet are told by remark, each with its marks; nothing is
// lost silently: what has no room is counted, with where it stands.
func TestManyRemarksAreToldOrCounted(t *testing.T) {
	of := func(n int, note func(i int) string) []joint.Joint {
		var out []joint.Joint
		for i := range n {
			j := leg(fmt.Sprintf("W-%02d", i+1), 5, 6, 6, 500, "PB")
			j.Note = note(i)
			out = append(out, j)
		}
		return out
	}
	below := func(joints []joint.Joint) string {
		doc := faultless(t, jobOf(t, joints, metric))
		var out []string
		for _, p := range doc.Pages {
			out = append(out, said(p, "assumed"))
		}
		return strings.TrimSpace(strings.Join(out, " "))
	}
	two := below(of(8, func(i int) string { return []string{"Fin plate", "Cleat"}[i%2] }))
	if want := "From the list: W-01, W-03, W-05, W-07: Fin plate; W-02, W-04, W-06, W-08: Cleat"; !strings.HasPrefix(two, want) {
		t.Errorf("%q, want %q", two, want)
	}
	for _, n := range []int{3, 6, 9, 20, 40} {
		text := below(of(n, func(i int) string {
			return fmt.Sprintf("remark %d: the plate beside stiffener %d of the lower flange", i+1, i+1)
		}))
		told := 0
		for i := range n {
			if strings.Contains(text, fmt.Sprintf("W-%02d: remark %d: the plate beside stiffener %d of the lower flange", i+1, i+1, i+1)) {
				told++
			}
		}
		if more := fmt.Sprintf("%d more in frame.csv", n-told); told < min(n, 3) || told < n && !strings.Contains(text, more) || told == n && strings.Contains(text, "more in") {
			t.Errorf("%d of %d remarks stand in %q", told, n, text)
		}
	}
	long := strings.TrimSpace(strings.Repeat("stiffener to lower flange near the splice ", 30))
	if text := below(of(2, func(i int) string { return long[i:] })); !strings.Contains(text, "… the rest in frame.csv; 1 more in frame.csv") {
		t.Errorf("the long remark is cut without a word: %q", text)
	}
}
