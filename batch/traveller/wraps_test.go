package traveller

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
	"seamtally/templates"
)

// branch is a round tube on what it sits on, welded all round.
func branch(mark, part1, part2 string, angle units.Degree) joint.Joint {
	j := leg(mark, 5, 0, 0, 0, "PB")
	j.AllRound, j.Part1, j.Part2, j.Angle, j.Qty = true, part1, part2, angle, 2
	return j
}

// branches are cuts of all sizes: on one page, on a sheet of its own, on several,
// and too large for paper.
func branches() []joint.Joint {
	return []joint.Joint{
		branch("B-01", "CHS 60.3x3.2", "CHS 168.3x6", 60), branch("B-02", "CHS 48.3x3.2", "CHS 114.3x5", 0),
		branch("B-03", "CHS 60.3x3.2", "CHS 60.3x3.2", 90), branch("B-04", "CHS 88.9x4", "FL 150x12", 45),
		branch("B-05", "CHS 168.3x6.3", "CHS 219.1x8", 45), branch("B-06", "CHS 21.3x2.6", "CHS 48.3x3.2", 30),
		branch("B-07", "CHS 60.3x3.2", "CHS 168.3x8", 120), branch("B-08", "CHS 711x12", "CHS 1016x16", 40),
		branch("B-09", "CHS 76.1x3.2", "CHS 76.1x3.2", 45),
	}
}

func TestTemplatesAreFaultless(t *testing.T) {
	for name, opts := range looks() {
		for _, lang := range []string{"en", "de", "es", "pl", "uk"} {
			opts.Lang = lang
			t.Run(name+" "+lang, func(t *testing.T) { faultless(t, jobOf(t, branches(), opts)) })
		}
	}
}

// TestLookAtTemplates writes templates into the folder named by SEAMTALLY_LOOK.
func TestLookAtTemplates(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the templates")
	}
	us := metric
	us.US, us.Paper = true, "letter"
	german := metric
	german.Lang = "de"
	for name, opts := range map[string]price.Options{"wrap": metric, "wrap-us": us, "wrap-de": german} {
		pdf, err := Build(jobOf(t, branches(), opts), Options{})
		must(t, err)
		must(t, os.WriteFile(filepath.Join(dir, name+".pdf"), pdf, 0o644))
	}
}

var _ = page.None

// No word of a template is cut short, in any language and on either paper, and in inches no
// step is told in millimetres.
func TestTemplatesCutNoWord(t *testing.T) {
	for _, lang := range templates.Languages() {
		for _, paper := range []string{"a4", "letter"} {
			opts := metric
			opts.Lang, opts.Paper, opts.US = lang, paper, paper == "letter"
			doc := faultless(t, jobOf(t, branches(), opts))
			seen := 0
			for _, p := range doc.Pages {
				for _, text := range p.Texts {
					if name := p.Boxes[text.Box].Name; name == "stations" || name == "steps" || name == "figure" {
						seen++
						if strings.HasSuffix(text.S, "…") {
							t.Errorf("%s, %s: %q in the %s", lang, paper, text.S, name)
						}
						if opts.US && metricUnit.MatchString(text.S) {
							t.Errorf("%s: %q on a sheet in inches", lang, text.S)
						}
					}
				}
			}
			if seen < 50 {
				t.Errorf("%s, %s: only %d words were seen", lang, paper, seen)
			}
		}
	}
}
