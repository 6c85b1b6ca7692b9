package traveller

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/templates"
)

// Every word that the sheets say by a fixed key is in the English wording, and
// every rune of the wording is in the fonts.
func TestWordsAreThere(t *testing.T) {
	words := mustWords(t)
	files, err := filepath.Glob("*.go")
	must(t, err)
	pictures, err := filepath.Glob("picture/*.go")
	must(t, err)
	files = append(files, pictures...)
	said := regexp.MustCompile(`"([a-z]+(?:\.[a-z0-9]+)+)"`)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		code, err := os.ReadFile(file)
		must(t, err)
		for _, m := range said.FindAllStringSubmatch(string(code), -1) {
			if !words.Has(m[1]) {
				t.Errorf("%s says %q, which the wording lacks", file, m[1])
			}
		}
	}
	for _, lang := range templates.Languages() {
		w, err := templates.Wording(lang)
		must(t, err)
		for _, text := range w.All() {
			for _, r := range text {
				if !page.Regular.Has(r) || !page.Bold.Has(r) {
					t.Errorf("%s: %q has %U, which the fonts lack", lang, text, r)
				}
			}
		}
	}
}

// A caution of the table without words on the sheet would print as its key.
func TestEveryCautionHasWords(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	words := mustWords(t)
	for _, c := range set.Cautions {
		if got := words.Say("caution." + c.Key); got != c.Text {
			t.Errorf("caution %s: the sheet says %q, the table %q", c.Key, got, c.Text)
		}
	}
}

func TestUnknownLanguageIsAnError(t *testing.T) {
	opts := metric
	opts.Lang = "xx"
	if _, err := Model(jobOf(t, nil, opts), Options{}); err == nil || !strings.Contains(err.Error(), "en") {
		t.Errorf("language xx: %v", err)
	}
}

// Every sentence of the table of technique that a sheet prints is in every
// wording, and no language lacks a word of English.
func TestLanguagesAreComplete(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	for _, lang := range templates.Languages() {
		w, err := templates.Wording(lang)
		must(t, err)
		if missing := w.Missing(); len(missing) > 0 {
			t.Errorf("%s lacks %q", lang, missing)
		}
		for _, r := range set.Technique {
			if r.Item != "gas" && !w.Has("say."+r.Text) {
				t.Errorf("%s has no words for %q", lang, r.Text)
			}
		}
		for _, m := range set.Machines {
			if !w.Has("say." + m.Name) {
				t.Errorf("%s has no words for the machine %q", lang, m.Name)
			}
		}
	}
}

// A machine of the table has the name that the language has for its kind, on the sheet, on
// the cover and in a check; a name of the shop's own stays as it is.
func TestMachinesSpeakTheLanguage(t *testing.T) {
	look := metric
	look.Lang = "es"
	for name, want := range map[string]string{"MIG 250 three-phase": "MIG 250 trifásica", "MIG 350 pulse": "MIG 350 pulsada", "Bay 3 pulse box": "Bay 3 pulse box"} {
		job := jobOf(t, []joint.Joint{leg("W-1", 5, 6, 6, 500, "PB")}, look)
		m := *job.Plans[0].Manner
		m.Machine, job.Plans[0].Manner = name, &m
		doc := faultless(t, job)
		if got := said(doc.Pages[len(doc.Pages)-1], "station"); !strings.Contains(got, want) {
			t.Errorf("%s: the sheet says %q", name, got)
		}
		cover := ""
		for _, x := range doc.Pages[0].Texts {
			cover += x.S + "\n"
		}
		if !strings.Contains(cover, want) {
			t.Errorf("%s: the cover says %q", name, cover)
		}
	}
	words, err := templates.Wording("es")
	must(t, err)
	f := &flow{builder: &builder{words: words}}
	if got := f.figuresIn([]string{"MIG 250 three-phase", "MIG 350 pulse", "G3Si1 pulse"}); got[0] != "MIG 250 trifásica" || got[1] != "MIG 350 pulsada" || got[2] != "G3Si1 pulsado" {
		t.Errorf("in a check: %q", got)
	}
}
