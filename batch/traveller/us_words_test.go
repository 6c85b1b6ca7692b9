package traveller

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/traveller/show"
	"seamtally/batch/units"
	"seamtally/templates"
)

// metricUnit is a figure with a unit that no sheet in inches has, in either alphabet.
var metricUnit = regexp.MustCompile(`\d ?(?:mm|mm²|cm|m|°C|kg|kJ/mm|m/min|mm/min|l/min|мм|см|м|°С|кг|л/хв|м/хв|кДж/мм)(?:[^\pL\d²³/]|$)`)

// anyNumber is a figure as it is written, in thousandths or as a fraction.
var anyNumber = regexp.MustCompile(`\d+(?:[./]\d+)*`)

// In inches and degrees Fahrenheit a sentence of any language names the figures that the
// English one names: rounding and ranges hang on no word of a language.
func TestUSFiguresAreThoseOfTheEnglishSentence(t *testing.T) {
	sentences, _ := checkSentences(t)
	english, err := templates.Wording("en")
	must(t, err)
	for _, lang := range templates.Languages() {
		if lang == "en" {
			continue
		}
		words, err := templates.Wording(lang)
		must(t, err)
		f := &flow{builder: &builder{words: words, show: show.Figures{US: true}, remedies: imperialRemedies(words)}}
		compared := 0
		compare := func(said, meant string) {
			t.Helper()
			compared++
			if at := metricUnit.FindString(said); at != "" {
				t.Errorf("%s: %q is metric in %q", lang, at, said)
			}
			have := anyNumber.FindAllString(meant, -1)
			for _, n := range anyNumber.FindAllString(said, -1) {
				if !slices.Contains(have, n) {
					t.Errorf("%s: %s of %q is not in %q", lang, n, said, meant)
				}
			}
		}
		for _, s := range sentences {
			c := sampleCheck(s)
			compare(f.checkText(c), units.Imperial(c.Text))
		}
		for _, key := range words.Keys("do.") {
			do := units.Imperial(strings.TrimPrefix(key, "do."))
			compare(f.remedy(finding.Check{Do: do}), do)
		}
		for _, key := range english.Keys("caution.") {
			compare(f.inUnits(f.say(key)), units.Imperial(english.Say(key)))
		}
		if compared < 150 {
			t.Errorf("%s: only %d sentences were compared", lang, compared)
		}
	}
}

// aVerb is where a figure goes in a sentence, and whether a number stands before it, whose
// unit it then is.
var aVerb = regexp.MustCompile(`(g )?%[-+ #0]*[0-9.]*([a-zA-Z])`)

// sampleCheck fills a sentence with figures that differ.
func sampleCheck(sentence string) finding.Check {
	var args []any
	for i, v := range aVerb.FindAllStringSubmatch(sentence, -1) {
		figure := 57 + 13*i
		switch {
		case v[2] == "d":
			args = append(args, figure)
		case v[1] != "":
			args = append(args, "mm")
		case v[2] == "s" || v[2] == "q":
			args = append(args, strconv.Itoa(figure))
		default:
			args = append(args, float64(figure))
		}
	}
	var c finding.Check
	c.Say(sentence, args...)
	return c
}
