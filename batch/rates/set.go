package rates

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
)

// Set puts KEY=VALUE settings of the command line into the shop; they beat
// everything stated before. Every fault is reported, each with the setting as it
// was written; the good ones are taken.
func (s *Shop) Set(settings []string) []finding.Problem {
	entries := make([]entry, 0, len(settings))
	var problems []finding.Problem
	for _, text := range settings {
		key, value, found := strings.Cut(text, "=")
		e := entry{key: key, text: value, from: "--set", place: finding.Place{File: "--set " + text}}
		switch {
		case !found:
			problems = append(problems, e.problem("shop-set", fmt.Sprintf("the setting %q has no equals sign", text), "a name, an equals sign and a value", "write the value behind it, as in --set "+strings.TrimSpace(text)+"=VALUE")...)
		case strings.TrimSpace(key) == "":
			problems = append(problems, e.problem("shop-key", "the setting has no name before its equals sign", "a name, an equals sign and a value", "write the name of a shop value, as in --set labour_rate=30")...)
		case strings.TrimSpace(value) == "":
			problems = append(problems, e.problem("shop-set", "the setting gives no value", "a name, an equals sign and a value", "write the value behind the equals sign")...)
		default:
			entries = append(entries, e)
		}
	}
	return append(problems, s.takeAll(entries)...)
}

// takeAll puts entries into the shop, the currency first because every price is
// read in it, and settles the stock.
func (s *Shop) takeAll(entries []entry) []finding.Problem {
	problems := s.repeated(entries)
	for _, currencyFirst := range []bool{true, false} {
		for _, e := range entries {
			if strings.EqualFold(strings.TrimSpace(e.key), "currency") == currencyFirst {
				problems = append(problems, s.take(e)...)
			}
		}
		s.Currency = s.word("currency")
	}
	return append(problems, s.settle()...)
}

// repeated warns of a key given twice; the later one is taken.
func (s *Shop) repeated(entries []entry) (problems []finding.Problem) {
	seen := map[string]entry{}
	for _, e := range entries {
		key, problem := s.resolve(e)
		if problem != nil {
			continue
		}
		if first, twice := seen[key]; twice && first.text != e.text {
			problems = append(problems, finding.Problem{Place: e.place, Level: finding.Warning, Code: "shop-twice", Read: e.text,
				Text: fmt.Sprintf("%s was given before as %s; the later value is taken", key, first.text), Hint: "keep one of the two"})
		}
		seen[key] = e
	}
	return problems
}
