package traveller

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/templates"
)

// everySheet calls check for the pages of every sample and every kind of joint, in
// every language, in millimetres on A4 and in inches on Letter.
func everySheet(t *testing.T, check func(t *testing.T, job *price.Job, doc *page.Document)) {
	for _, lang := range templates.Languages() {
		a4, letter := metric, metric
		a4.Lang, letter.Lang = lang, lang
		letter.US, letter.Paper, letter.Symbols = true, "letter", "aws"
		for _, opts := range []price.Options{a4, letter} {
			jobs := map[string]*price.Job{"kinds": jobOf(t, everyKind(), opts)}
			for _, path := range samples {
				jobs[filepath.Base(path)] = sample(t, path, opts)
			}
			for name, job := range jobs {
				t.Run(lang+" "+opts.Paper+" "+name, func(t *testing.T) { check(t, job, faultless(t, job)) })
			}
		}
	}
}

func TestEverySheetInEveryLanguage(t *testing.T) {
	everySheet(t, func(t *testing.T, job *price.Job, doc *page.Document) {
		noWordIsCut(t, job, doc)
		bothSidesAreSignedFor(t, job, doc)
		onlySignOffGoesOn(t, job, doc)
	})
}

// onlySignOffGoesOn fails where anything but lines to be signed goes on to a second page,
// or where the first has none of them.
func onlySignOffGoesOn(t *testing.T, job *price.Job, doc *page.Document) {
	for _, s := range sheetsOf(t, job, doc) {
		signs := false
		for _, b := range doc.Pages[s.page].Boxes {
			signs = signs || b.Name == "sign-off row"
			if !s.first && (b.Name == "cautions" || b.Name == "check" || b.Name == "assumed" || b.Name == "picture row") {
				t.Errorf("page %d: %s has gone over to a second page", s.page+1, b.Name)
			}
		}
		if !signs {
			t.Errorf("page %d has no line to be signed", s.page+1)
		}
	}
}

// noWordIsCut fails where a word of ours is cut for want of room; a long list of marks
// may be, and ends in an ellipsis.
func noWordIsCut(t *testing.T, job *price.Job, doc *page.Document) {
	for i, p := range doc.Pages {
		for _, text := range p.Texts {
			if name := p.Boxes[text.Box].Name; strings.HasSuffix(text.S, "…") && name != "order row" && !cutMark(job, text.S) {
				t.Errorf("page %d, %s: %q is cut", i+1, name, text.S)
			}
		}
	}
}

// cutMark tells whether a text is the beginning of a mark of the list.
func cutMark(job *price.Job, text string) bool {
	return slices.ContainsFunc(job.List.Joints, func(j joint.Joint) bool {
		return strings.HasPrefix(j.Mark, strings.TrimSuffix(text, "…"))
	})
}
