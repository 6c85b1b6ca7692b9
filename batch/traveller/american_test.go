package traveller

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/show"
	"seamtally/templates"
)

// british are words that an American shop writes or says otherwise.
var british = regexp.MustCompile(`(?i)\b(earth|labour|colour|grey|metres?|centre|aluminium|galvanis\w*|draught|bevelled|mitres?|torch|way round|(?:root|first|next|short|one|a|between) runs?|gas bottle|set-up|stores|downwards)\b`)

// cutting is where a torch is one: on the template for a cut by flame.
const cuttingTorch = "Point the torch at the tube"

// An English sheet in inches speaks American: every word of the wording, and every sentence
// of a check that an error or a warning says.
func TestSheetsInInchesSpeakAmerican(t *testing.T) {
	opts := metric
	opts.US, opts.Symbols, opts.Codes, opts.Paper = true, "aws", "aws", "letter"
	words, err := wordsOf(opts)
	must(t, err)
	english, err := templates.Wording("en")
	must(t, err)
	seen := 0
	look := func(what, text string) {
		t.Helper()
		if seen++; british.MatchString(text) && !strings.Contains(text, cuttingTorch) {
			t.Errorf("%s: %q in %q", what, british.FindString(text), text)
		}
	}
	for _, key := range english.Keys("") {
		look(key, words.Say(key))
	}
	f := &flow{builder: &builder{words: words, show: show.Figures{US: true}, remedies: imperialRemedies(words)}}
	sentences, _ := checkSentences(t)
	for _, s := range sentences {
		look("check", f.checkText(sampleCheck(s)))
	}
	set, err := builtIn()
	must(t, err)
	for _, r := range set.CheckRules {
		if !strings.HasPrefix(r.Code, "hint-") {
			c := sampleCheck("x")
			c.Do = r.Do
			look("do", f.remedy(c))
		}
	}
	jobs := []*price.Job{jobOf(t, everyKind(), opts)}
	for _, path := range samples {
		jobs = append(jobs, sample(t, path, opts))
	}
	for _, job := range jobs {
		for _, p := range faultless(t, job).Pages {
			for _, text := range p.Texts {
				if box := p.Boxes[text.Box].Name; box != "title" && box != "assumed" && box != "header" && !ofTheList(job, text) { // these print what the list says
					look(filepath.Base(job.List.File)+", "+box, text.S)
				}
			}
		}
	}
	if seen < 5000 {
		t.Errorf("only %d texts were looked at", seen)
	}
}

func ofTheList(job *price.Job, text page.Text) bool {
	for _, j := range job.List.Joints {
		if j.Note != "" && strings.Contains(j.Note, text.S) {
			return true
		}
	}
	return false
}

// Nothing American stands in a table that English lacks the sentence for, nor does a word
// that is the same in both.
func TestAmericanWordsReplaceEnglishOnes(t *testing.T) {
	opts := metric
	opts.US = true
	words, err := wordsOf(opts)
	must(t, err)
	english, err := templates.Wording("en")
	must(t, err)
	german, err := templates.Wording("de")
	must(t, err)
	set, err := builtIn()
	must(t, err)
	known := map[string]bool{}
	for _, r := range set.CheckRules {
		known["do."+r.Do] = true
	}
	other := 0
	for _, key := range words.Keys("") {
		if !english.Has(key) && !german.Has(key) && !known[key] {
			t.Errorf("American words for %q, which nothing says", key)
		}
		if words.Say(key) != english.Say(key) {
			other++
		}
	}
	if other < 40 {
		t.Errorf("only %d words differ", other)
	}
	if got := words.Say("total.labour"); got != "Labor" {
		t.Errorf("the heading is %q", got)
	}
	opts.US = false
	if words, err = wordsOf(opts); err != nil || words.Say("total.labour") != "Labour" {
		t.Errorf("in millimetres the heading is %q, %v", words.Say("total.labour"), err)
	}
	opts.US, opts.Lang = true, "es"
	if words, err = wordsOf(opts); err != nil || words.Say("total.labour") == "Labor" {
		t.Errorf("Spanish became American: %v", err)
	}
}
