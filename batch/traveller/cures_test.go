package traveller

import (
	"slices"
	"testing"

	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
	"seamtally/templates"
)

// Which knob cures what stands on every sheet, on the cover of its assembly, or on a page to
// hang up at the machine; there is no such page where none is wanting.
func TestCuresAreAtHand(t *testing.T) {
	hung, not := 0, 0
	for _, lang := range templates.Languages() {
		a4, letter := metric, metric
		a4.Lang, letter.Lang = lang, lang
		letter.US, letter.Paper, letter.Symbols = true, "letter", "aws"
		for _, opts := range []price.Options{a4, letter} {
			for _, path := range samples {
				job := sample(t, path, opts)
				doc, err := Model(job, Options{})
				must(t, err)
				pages := slices.DeleteFunc(slices.Clone(doc.Pages), func(p *page.Page) bool { return !boxed(p, "knobs title") })
				if wants := wanting(t, job); len(pages) > 1 || wants != (len(pages) == 1) {
					t.Errorf("%s, %s, %s: %d pages for the machine, wanted %v", path, lang, opts.Paper, len(pages), wants)
				} else if wants {
					hung++
				} else {
					not++
				}
			}
		}
	}
	if hung == 0 || not == 0 {
		t.Errorf("%d with a page for the machine, %d without: one of them was not looked at", hung, not)
	}
}

// wanting tells whether a sheet of the job says nowhere which knob cures what, counted
// sheet by sheet.
func wanting(t *testing.T, job *price.Job) bool {
	words, err := wordsOf(job.Opts)
	must(t, err)
	for _, a := range setup.Group(job) {
		b := newBuilder(job, Options{}, words)
		b.cover(&a)
		if slices.ContainsFunc(b.doc.Pages, func(p *page.Page) bool { return boxed(p, "knobs") }) {
			continue
		}
		b.doc.Pages = nil
		b.sheets(&a)
		var sheet []*page.Page
		for i, p := range b.doc.Pages {
			sheet = append(sheet, p)
			if i+1 < len(b.doc.Pages) && !boxed(b.doc.Pages[i+1], "title") {
				continue // it goes on
			}
			settings := boxed(sheet[0], "dials")
			if settings && !slices.ContainsFunc(sheet, func(p *page.Page) bool { return boxed(p, "knobs") }) {
				return true
			}
			sheet = nil
		}
	}
	return false
}

func boxed(p *page.Page, name string) bool {
	return slices.ContainsFunc(p.Boxes, func(b page.Box) bool { return b.Name == name })
}
