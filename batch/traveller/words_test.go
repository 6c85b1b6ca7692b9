package traveller

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

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
	}
}
