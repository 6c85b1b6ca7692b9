package main

import (
	"strings"

	"seamtally/batch"
)

// behind says, for the options that take any text, what stands behind them, and gives an
// example. Those that take one of a few words name these: see choices.
var behind = map[string][2]string{
	"out":      {"the name of a folder", "worked"},
	"sheet":    {"the name of a sheet", "Joints"},
	"parts":    {"the cut list, a sheet of the list or a file,", "cuts.xlsx"},
	"shop":     {"the name of a shop file", "shop.csv"},
	"new-shop": {"the name of the shop file to write", "shop-new.csv"},
	"set":      {"a shop value", "labour_rate=45"},
	"tables":   {"the name of a folder with tables", "tables"},
	"job":      {"the name of the job", `"Gate 12"`},
	"date":     {"a date", "2026-03-31"},
}

// needsValue says what has to stand behind an option that was typed without its value.
func needsValue(typed string) error {
	what, example := valueOf(typed)
	return batch.Usagef("%s needs %s behind it, as in %s %s; write it there, or leave %s out", typed, what, typed, example, typed)
}

// valueOf returns what an option takes, in words, and an example of it.
func valueOf(typed string) (what, example string) {
	for _, c := range commands() {
		f := flag(c, typed)
		if f == nil {
			continue
		}
		name := f.Names()[0]
		if words := choices[name]; len(words) > 0 {
			last := len(words) - 1
			return strings.Join(words[:last], ", ") + " or " + words[last], words[0]
		}
		return behind[name][0], behind[name][1]
	}
	return "", ""
}
