package traveller

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/templates"
)

// deskWork is what nobody can do at a joint: run the tool, write into a list, a table or
// the shop file.
var deskWork = regexp.MustCompile("`|seamtally|(^|\\s)--[a-z]|shop file|shop value|cut list|the row|this tool|table of|column|cell|[a-z]_[a-z]|\\bwrite\\b|\\bstate\\b")

// deskOrder is desk work as an order or a name; that something is not in a table is a reason.
var deskOrder = regexp.MustCompile("`|seamtally|(^|\\s)--[a-z]|shop file|shop value|this tool|[a-z]_[a-z]|\\bwrite\\b|\\bstate\\b")

// No remedy on a sheet asks the welder for what only somebody at a desk can do: such a one
// says whom to ask, in every language.
func TestRemediesAreForTheWelder(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	for _, lang := range templates.Languages() {
		words, err := templates.Wording(lang)
		must(t, err)
		f := &flow{builder: &builder{words: words}}
		asked := 0
		for _, r := range set.CheckRules {
			if r.Do == "" || slices.Contains(quiet, r.Code) || strings.HasPrefix(r.Code, "hint-") {
				continue
			}
			for _, level := range []finding.Level{finding.Error, finding.Warning} {
				c := finding.Check{Code: r.Code, Level: level, Do: r.Do}
				said := f.toDo(told{check: c})
				if said == "" || deskWork.MatchString(said) {
					t.Errorf("%s: the sheet says of %s: %q", lang, r.Code, said)
				}
				if deskWork.MatchString(r.Do) && said == f.remedy(c) {
					t.Errorf("%s: of %s the welder is told %q", lang, r.Code, said)
				}
				if said == words.Say("ask.stop") {
					asked++
				}
			}
		}
		if asked < 20 {
			t.Errorf("%s: only %d remedies ask somebody", lang, asked)
		}
	}
}

// The codes that are asked about are rules of the table.
func TestOfficeCodesAreRules(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	known := map[string]bool{}
	for _, r := range set.CheckRules {
		known[r.Code] = true
	}
	for _, code := range slices.Concat(office, untilThen) {
		if !known[code] {
			t.Errorf("no rule has the code %s", code)
		}
	}
}

// A sheet without settings gives the reason and says not to weld, and no sheet names a
// command, an option or a table of ours.
func TestSheetsNameNoCommand(t *testing.T) {
	unknown, strange, bare := leg("W-1", 5, 8, 8, 500, "PB"), leg("W-2", 5, 8, 8, 500, "PB"), leg("W-3", 5, 0, 0, 500, "PB")
	unknown.Wire, strange.Material = "T 99 9 M", "unobtainium"
	pair := leg("W-4", 5, 8, 8, 500, "PB")
	pair.Material, pair.Wire = "6061", "G3Si1 1.2"
	for _, lang := range templates.Languages() {
		opts := metric
		opts.Lang = lang
		words, err := templates.Wording(lang)
		must(t, err)
		jobs := []*price.Job{jobOf(t, []joint.Joint{unknown, strange, bare, pair}, opts), sample(t, "mistakes/mistakes.csv", opts)}
		stops := 0
		for _, job := range jobs {
			for i, p := range faultless(t, job).Pages {
				for _, box := range []string{"check", "no settings"} {
					text := said(p, box)
					if strings.Contains(text, "`") || strings.Contains(text, "seamtally") || lang == "en" && deskOrder.MatchString(text) {
						t.Errorf("%s, %s, page %d: %q", lang, job.List.File, i+1, text)
					}
				}
				if text := said(p, "no settings"); text != "" {
					stops++
					if want := page.Clean(words.Say("ask.stop")); !strings.Contains(strings.ToLower(text), strings.ToLower(want)) && !strings.Contains(said(p, "title"), words.Say("wps.governs")) {
						t.Errorf("%s, page %d: %q does not say %q", lang, i+1, text, want)
					}
				}
			}
		}
		if stops < 2 {
			t.Errorf("%s: only %d sheets without settings", lang, stops)
		}
	}
}

// No procedure makes free-cutting steel weldable: its sheet says not to weld, also where one
// is named. What a procedure settles by itself is left to it.
func TestProceduresWeldNoFreeCuttingSteel(t *testing.T) {
	cracks, tig := leg("W-1", 5, 8, 8, 500, "PB"), leg("W-2", 5, 8, 8, 500, "PB")
	cracks.Material, cracks.WPS, tig.Process, tig.WPS = "11SMn30", "WPS-7", "TIG", "WPS-8"
	for _, lang := range templates.Languages() {
		opts := metric
		opts.Lang = lang
		words, err := templates.Wording(lang)
		must(t, err)
		stop := strings.ToLower(page.Clean(words.Say("ask.stop")))
		for _, p := range faultless(t, jobOf(t, []joint.Joint{cracks, tig}, opts)).Pages {
			text, title := strings.ToLower(said(p, "no settings")), said(p, "title")
			if text == "" {
				continue
			}
			if got, want := strings.Contains(text, stop), strings.Contains(title, "W-1"); got != want {
				t.Errorf("%s, %q: says not to weld %v, want %v: %q", lang, title, got, want, text)
			}
		}
	}
}
