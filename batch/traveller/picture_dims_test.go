package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/templates"
)

// A dimension that is drawn has its figure: none is left out because the picture fills
// its frame, in any language.
func TestDoubleGroovesShowBothDepths(t *testing.T) {
	seen := 0
	for _, lang := range templates.Languages() {
		words, err := templates.Wording(lang)
		must(t, err)
		word := words.Say("dim.depth")
		for _, paper := range []string{"a4", "letter"} {
			for _, kind := range []joint.Kind{joint.DoubleV, joint.DoubleBevel} {
				for _, thick := range []units.MM{12, 16, 20, 25, 30, 40} {
					for _, position := range []string{"PA", "PF"} {
						look := metric
						look.Lang, look.Paper = lang, paper
						doc := faultless(t, jobOf(t, []joint.Joint{butt("V", kind, thick, 600, position)}, look))
						for _, p := range doc.Pages {
							text := said(p, "picture")
							if text == "" {
								continue
							}
							seen++
							if n := strings.Count(text, word); n != 2 {
								t.Errorf("%s, %s, %s of %g in %s: %d of 2 depths in %q", lang, paper, kind, float64(thick), position, n, text)
							}
						}
					}
				}
			}
		}
	}
	if seen < 200 {
		t.Errorf("only %d pictures were looked at", seen)
	}
}
