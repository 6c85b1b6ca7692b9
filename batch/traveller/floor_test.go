package traveller

import (
	"regexp"
	"strings"
	"testing"

	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
)

var moneyWords = regexp.MustCompile(`(?i)\b(eur|usd|price|margin|cost)\b|[€$£]`)

// What the job costs is nobody's business on the floor; every page says which list,
// which revision and which page it is, and every sheet and cover has its bookmark.
func TestPapersOfTheFloor(t *testing.T) {
	for _, path := range samples {
		job := sample(t, path, metric)
		doc := faultless(t, job)
		papersHold(t, job, doc)
	}
}

func papersHold(t *testing.T, job *price.Job, doc *page.Document) {
	t.Helper()
	covers, sheets := 0, 0
	for i, p := range doc.Pages {
		said := map[string]string{}
		for _, text := range p.Texts {
			said[p.Boxes[text.Box].Name] += " " + text.S
			if moneyWords.MatchString(text.S) {
				t.Errorf("%s, page %d speaks of money: %q", job.List.File, i+1, text.S)
			}
		}
		if !strings.Contains(said["footer"], hashPrefix(job.List.SHA256)) || !strings.Contains(said["header"], "Revision") {
			t.Errorf("%s, page %d does not say list and revision", job.List.File, i+1)
		}
		if said["title"] != "" {
			sheets++
		}
		if said["cover title"] != "" {
			covers++
		}
		if (said["title"] != "" || said["cover title"] != "") && len(p.Marks) == 0 {
			t.Errorf("%s, page %d has no bookmark", job.List.File, i+1)
		}
	}
	if covers == 0 || sheets == 0 {
		t.Errorf("%s: %d covers, %d sheets", job.List.File, covers, sheets)
	}
}
