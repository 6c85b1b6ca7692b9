package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
)

// said joins the words in the boxes of a name on a page, in the order written.
func said(p *page.Page, box string) string {
	var out []string
	for _, t := range p.Texts {
		if p.Boxes[t.Box].Name == box {
			out = append(out, t.S)
		}
	}
	return strings.Join(out, " ")
}

// sheetOnly is the last page of a job of one joint.
func sheetOnly(t *testing.T, j joint.Joint) *page.Page {
	t.Helper()
	doc := faultless(t, jobOf(t, []joint.Joint{j}, metric))
	return doc.Pages[len(doc.Pages)-1]
}

// A sheet that said nothing of preheat would leave it open: it says how much, or that
// there is none, in the same place.
func TestEverySheetSpeaksOfPreheat(t *testing.T) {
	cold, warm := leg("W-1", 5, 6, 6, 500, "PB"), leg("W-2", 12, 40, 40, 500, "PB")
	if got := said(sheetOnly(t, cold), "preheat"); !strings.Contains(got, "No preheat") {
		t.Errorf("thin parts: %q", got)
	}
	if got := said(sheetOnly(t, warm), "preheat"); !strings.Contains(got, "PREHEAT ≥ ") || !strings.Contains(got, "between runs ≤ ") {
		t.Errorf("thick parts: %q", got)
	}
}

// Between the two sides of a butt weld stands what is done to its root, before the
// first pass of the second side.
func TestBetweenTheSidesStandsWhatToDo(t *testing.T) {
	gouged := butt("B-1", joint.SingleV, 12, 500, "PA")
	gouged.Backing, gouged.RootFace, gouged.RootFaceGiven = "gouge", 1.5, true
	ground := butt("B-2", joint.DoubleV, 25, 500, "PC")
	for _, c := range []struct {
		j    joint.Joint
		want string
	}{
		{gouged, "Turn over: gouge the root 3.5 mm deep, about 8 mm wide"},
		{ground, "Other side: grind the root to sound metal"},
	} {
		got := said(sheetOnly(t, c.j), "passes")
		before, _, ok := strings.Cut(got, "side 2")
		if !ok || !strings.Contains(before, c.want) {
			t.Errorf("%s: %q does not stand before side 2 in %q", c.j.Mark, c.want, got)
		}
	}
	if got := said(sheetOnly(t, butt("B-3", joint.SingleV, 12, 500, "PA")), "passes"); strings.Contains(got, "Turn over") {
		t.Errorf("a seam of one side is turned: %q", got)
	}
}

// A butt weld has something to gauge: how deep, how high the cap, how far the root.
func TestButtsHaveASizeToGauge(t *testing.T) {
	v := butt("B-1", joint.SingleV, 12, 500, "PA")
	v.Quality, v.Gap, v.GapGiven = "C", 2, true
	if got := said(sheetOnly(t, v), "size"); !strings.Contains(got, "s 12 mm") || !strings.Contains(got, "full penetration") ||
		!strings.Contains(got, "cap ≤ ") || !strings.Contains(got, "root ≤ 2.2 mm") {
		t.Errorf("a V of level C: %q", got)
	}
	v.Quality = ""
	if got := said(sheetOnly(t, v), "size"); !strings.Contains(got, "cap ≈ 1.5 mm") || strings.Contains(got, "≤") {
		t.Errorf("a V without a level: %q", got)
	}
	for backing, want := range map[string]string{"bar": "fused to the backing", "ceramic": "root fused", "copper": "root fused"} {
		v.Backing = backing
		if got := said(sheetOnly(t, v), "size"); !strings.Contains(got, want) {
			t.Errorf("a V on %s: %q", backing, got)
		}
	}
}

func TestSplitRevision(t *testing.T) {
	for in, want := range map[string][2]string{
		"B": {"B", ""}, "B - stair turned": {"B", "stair turned"}, "C: as built": {"C", "as built"}, "C – as built": {"C", "as built"}, "Rev 2": {"Rev 2", ""},
		"as built": {"as built", ""}, "A-1": {"A-1", ""}, "issued for work": {"issued for work", ""}, "": {"", ""}, "2 –": {"2 –", ""},
	} {
		if letter, what := splitRevision(in); letter != want[0] || what != want[1] {
			t.Errorf("%q: %q, %q", in, letter, what)
		}
	}
}

// A sentence put together from what stands in the way speaks the language of the sheet,
// with its figures and the mode of its arc.
func TestReasonsSpeakTheLanguage(t *testing.T) {
	forced := leg("W-1", 5, 1.5, 1.5, 500, "PB")
	forced.Wire = "T 46 2 P 1.2"
	for lang, want := range map[string]string{"de": "beginnt bei", "pl": "zaczyna się od"} {
		opts := metric
		opts.Lang = lang
		doc := faultless(t, jobOf(t, []joint.Joint{forced}, opts))
		all := ""
		for _, p := range doc.Pages {
			all += " " + said(p, "check") + " " + said(p, "no settings")
		}
		if !strings.Contains(all, want) {
			t.Errorf("%s: %q is not in %q", lang, want, all)
		}
	}
}

// A filled hole is gauged by its width, and by how deep it is filled where that is not
// to the face.
func TestHolesHaveASizeToGauge(t *testing.T) {
	plug := butt("P-1", joint.Plug, 6, 0, "PA")
	plug.Size = joint.Size{A: 20, Means: joint.Leg}
	slot := butt("S-1", joint.Slot, 8, 60, "PA")
	slot.Size, slot.Depth = joint.Size{A: 16, Means: joint.Leg}, 5
	for _, c := range []struct {
		j    joint.Joint
		want string
	}{{plug, "ø 20 mm"}, {plug, "filled flush"}, {slot, "16 × 60 mm"}, {slot, "depth 5 mm"}} {
		if got := said(sheetOnly(t, c.j), "size"); !strings.Contains(got, c.want) {
			t.Errorf("%s: %q is not in %q", c.j.Mark, c.want, got)
		}
	}
}
