package traveller

import (
	"slices"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
	"seamtally/templates"
)

// mixedV is a V whose open root is laid in short arc and whose other passes are not.
func mixedV() joint.Joint {
	v := butt("V", joint.SingleV, 12, 600, "PA")
	v.Gap, v.GapGiven, v.RootFace, v.RootFaceGiven = 3, true, 1.5, true
	return v
}

// Where the passes of a seam run in two modes, the sheet says of each how its torch is
// held and how its bead looks and sounds: what holds for the cap would mislead in the root.
func TestSheetSpeaksOfEachMode(t *testing.T) {
	job := jobOf(t, []joint.Joint{mixedV()}, metric)
	p := &job.Plans[0]
	if p.Runs[0].Transfer != plan.ShortArc || p.Transfer != plan.Spray {
		t.Fatalf("root in %s, the rest in %s: no fixture", p.Runs[0].Transfer, p.Transfer)
	}
	doc := faultless(t, job)
	sheet := doc.Pages[len(doc.Pages)-1]
	torch := said(sheet, "torch")
	for _, want := range []string{"root PUSH push 5-15° (flatter, wider); drag: deeper, narrower bead", "fill, cap PUSH push 10-15°"} {
		if !strings.Contains(torch, want) {
			t.Errorf("%q is not in %q", want, torch)
		}
	}
	nozzles := 0
	for _, s := range sheet.Shapes {
		if sheet.Boxes[s.Box].Name == "torch" && s.Dash > 0 {
			nozzles++
		}
	}
	if nozzles != 2 {
		t.Errorf("%d torches are drawn", nozzles)
	}
	if good := said(sheet, "test bead"); !strings.Contains(good, "root – steady crackle") || !strings.Contains(good, "fill, cap – steady hiss") {
		t.Errorf("a good test bead: %q", good)
	}
}

// One mode needs no names of passes; nor do two in which the torch is held alike.
func TestSheetOfOneModeNamesNoPasses(t *testing.T) {
	alike := mixedV()
	alike.Position = "PF" // upwards the torch is held so in every mode
	for _, j := range []joint.Joint{leg("W", 6, 8, 10, 500, "PB"), alike} {
		doc := faultless(t, jobOf(t, []joint.Joint{j}, metric))
		if torch := said(doc.Pages[len(doc.Pages)-1], "torch"); strings.Contains(torch, "root") || strings.Contains(torch, "cap") {
			t.Errorf("%s in %s: %q", j.Kind, j.Position, torch)
		}
	}
}

// In every language and on both papers the sheet of two modes is one page without a fault
// that names both.
func TestSheetOfTwoModesInEveryLanguage(t *testing.T) {
	for _, lang := range templates.Languages() {
		words, err := templates.Wording(lang)
		must(t, err)
		for _, look := range looks() {
			look.Lang = lang
			doc := faultless(t, jobOf(t, []joint.Joint{mixedV()}, look))
			sheet := doc.Pages[len(doc.Pages)-1]
			noWordIsCut(t, jobOf(t, []joint.Joint{mixedV()}, look), doc)
			torch, good := said(sheet, "torch"), said(sheet, "test bead")
			for _, key := range []string{"run.root", "run.fill"} {
				if word := words.Say(key); !strings.Contains(torch, word) || !strings.Contains(good, word) {
					t.Errorf("%s %s: %q is not in %q and %q", lang, look.Paper, word, torch, good)
				}
			}
			if !slices.ContainsFunc(sheet.Boxes, func(b page.Box) bool { return b.Name == "sign-off row" }) {
				t.Errorf("%s %s: the sheet goes on", lang, look.Paper)
			}
		}
	}
}
