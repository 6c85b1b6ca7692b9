package traveller

import (
	"testing"

	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/templates"
)

// scant is the share of a page's body below which nobody turns a page for it.
const scant = 0.15

// No page that carries on holds next to nothing: where a sheet lacks a little room it is
// set closer, and where it lacks more its lines are shared out. The cures that fill a page
// up do not count on a sheet.
func TestNoPageHoldsNextToNothing(t *testing.T) {
	seen := 0
	for _, lang := range templates.Languages() {
		a4, letter := metric, metric
		a4.Lang, letter.Lang = lang, lang
		letter.US, letter.Paper, letter.Symbols = true, "letter", "aws"
		for _, opts := range []price.Options{a4, letter} {
			jobs := []*price.Job{jobOf(t, everyKind(), opts)}
			for _, path := range samples {
				jobs = append(jobs, sample(t, path, opts))
			}
			for _, job := range jobs {
				doc, err := Model(job, Options{})
				must(t, err)
				for i, p := range doc.Pages {
					share, goesOn := filled(p)
					if !goesOn {
						continue
					}
					if seen++; share < scant {
						t.Errorf("%s, %s, %s, page %d of %d holds %.0f %%", job.List.File, lang, opts.Paper, i+1, len(doc.Pages), 100*share)
					}
				}
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d pages that carry on were looked at", seen)
	}
}

// filled returns how much of its body a page holds, and whether it carries on what the one
// before began.
func filled(p *page.Page) (share float64, goesOn bool) {
	top, bottom := marginEdge+headHeight+3.0, p.H-marginEdge-footHeight-1
	low, signs := top, false
	for _, b := range p.Boxes {
		switch b.Name {
		case "title", "cover title", "index title", "nothing":
			return 0, false
		case "sign-off row":
			signs, goesOn = true, true
		case "joints row":
			goesOn = true
		case "page", "header", "footer", "code":
			continue
		}
		if !(signs && (b.Name == "cures" || b.Name == "knobs")) {
			low = max(low, b.Bottom())
		}
	}
	return (low - top) / (bottom - top), goesOn
}
