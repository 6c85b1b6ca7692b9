package traveller

import (
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/templates"
)

// What was taken for a blank cell is told in full; what has no room is counted, never cut.
func TestWhatIsTakenIsToldOrCounted(t *testing.T) {
	of := func(n int) []joint.Joint {
		var out []joint.Joint
		for i := range n {
			j := leg(fmt.Sprintf("W-%02d", i+1), 5, 6, 6, 500, "PB")
			j = j.Apart()
			j.Assumed = []joint.Assumption{{Key: "length", Value: fmt.Sprintf("%d.25 mm", 301+i)}}
			if i == 0 {
				j.Assumed = append(j.Assumed, joint.Assumption{Key: "material", Value: "S355J2H"}, joint.Assumption{Key: "material2", Value: "S235"},
					joint.Assumption{Key: "t1", Value: "6 mm"}, joint.Assumption{Key: "t2", Value: "6 mm"}, joint.Assumption{Key: "kind", Value: "fillet"},
					joint.Assumption{Key: "position", Value: "PB"}, joint.Assumption{Key: "gap", Value: "0.5 mm"})
			}
			out = append(out, j)
		}
		return out
	}
	for _, lang := range templates.Languages() {
		words, err := templates.Wording(lang)
		must(t, err)
		look := metric
		look.Lang = lang
		for n, whole := range map[int]bool{1: true, 5: true, 60: false} {
			doc := faultless(t, jobOf(t, of(n), look))
			got := ""
			for _, p := range doc.Pages {
				if got == "" {
					got = said(p, "assumed")
				}
			}
			told := strings.Count(got, ".25 mm") + strings.Count(got, ",25 mm")
			rest := words.Say("taken.more", fmt.Sprint(n-told))
			switch {
			case strings.Contains(got, "…"):
				t.Errorf("%s: %q is cut", lang, got)
			case whole && told != n:
				t.Errorf("%s: %d of %d are told in %q", lang, told, n, got)
			case !whole && (told == n || !strings.Contains(got, rest)):
				t.Errorf("%s: %q does not say %q", lang, got, rest)
			}
		}
	}
}

// A position that was taken has the name that the sheet has for it.
func TestTakenPositionIsNamedAsOnTheSheet(t *testing.T) {
	for codes, want := range map[string]string{"iso": "position PB", "aws": "position 2F"} {
		j := leg("W-1", 5, 6, 6, 500, "PB")
		j = j.Apart()
		j.Assumed = []joint.Assumption{{Key: "position", Value: "PB"}}
		look := metric
		look.Codes = codes
		doc := faultless(t, jobOf(t, []joint.Joint{j}, look))
		if got := said(doc.Pages[len(doc.Pages)-1], "assumed"); !strings.Contains(got, want) {
			t.Errorf("%s: %q does not say %q", codes, got, want)
		}
	}
}

// A sheet that asks for the material does not say in the next line that it was taken as
// steel: that is only how the weld metal is weighed.
func TestUnknownMaterialIsNotTakenAsSteel(t *testing.T) {
	for _, material := range []string{"", "Unobtainium 7"} {
		j := leg("W-1", 5, 6, 6, 500, "PB")
		j = j.Apart()
		j.Material = material
		job := jobOf(t, []joint.Joint{j}, metric)
		if len(job.Plans[0].Assumed) == 0 {
			t.Fatal("nothing is taken: no fixture")
		}
		doc := faultless(t, job)
		if got := said(doc.Pages[len(doc.Pages)-1], "assumed"); strings.Contains(got, "steel") {
			t.Errorf("material %q: %q", material, got)
		}
	}
}
