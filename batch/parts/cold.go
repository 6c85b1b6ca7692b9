package parts

import (
	"fmt"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/section"
)

// formed notes where a hollow section was taken as formed cold.
func (f *fields) formed(p *Part) {
	if s := &p.Section; s.Shape != section.Round && s.Shape != section.Box || !s.Cold || s.Family == "PIPE" {
		return
	}
	if all := strings.ToUpper(p.Written + " " + p.Standard); strings.Contains(all, "10219") || strings.Contains(all, "CF") || strings.Contains(all, "COLD") || strings.Contains(all, "HSS") {
		return
	}
	p.assume("standard", "EN 10219", "blank: a hollow section is taken as formed cold", "common-practice")
	f.cold = append(f.cold, strconv.Itoa(p.Place.Row))
}

// summary tells, once for the list, what was assumed for many rows.
func (f *fields) summary() []finding.Problem {
	if len(f.cold) == 0 {
		return nil
	}
	return []finding.Problem{{Place: finding.Place{File: f.list.File, Sheet: f.list.Sheet, Row: f.list.HeaderRows[1]}, Level: finding.Note, Code: "formed-cold",
		Text: fmt.Sprintf("hollow sections are taken as formed cold (EN 10219) in %s: neither designation nor standard says how", rowNumbers(f.cold)),
		Hint: "if that is right nothing need be done; for one finished hot write HF behind the section, or EN 10210 in the column standard"}}
}

// fewNamed is how many rows or joints a sentence names before it counts the rest.
const fewNamed = 6

// rowNumbers names the first rows of many.
func rowNumbers(rows []string) string {
	if len(rows) == 1 {
		return "row " + rows[0]
	}
	return "rows " + finding.Few(rows, fewNamed)
}
