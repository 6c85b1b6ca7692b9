package main

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
)

// manyRows is how often the same words may stand under each other before they
// are said once for all their rows.
const manyRows = 4

// problemLines words the problems of a level, one line each. What is wrong in the
// same words in many rows of a column is said once, with the rows it is wrong in.
func problemLines(list []finding.Problem, level finding.Level) []string {
	rows, order := map[finding.Problem][]int{}, []finding.Problem{}
	for _, p := range list {
		if p.Level != level {
			continue
		}
		key := p
		key.Place.Row = 0
		if rows[key] == nil {
			order = append(order, key)
		}
		rows[key] = append(rows[key], p.Place.Row)
	}
	var lines []string
	for _, key := range order {
		if len(rows[key]) >= manyRows {
			lines = append(lines, fmt.Sprintf("%s [%s]", key.Line(), rowsText(rows[key])))
			continue
		}
		for _, row := range rows[key] {
			p := key
			p.Place.Row = row
			lines = append(lines, p.Line())
		}
	}
	return lines
}

// rowsText names rows as runs, the first few of them: "9 rows: 3-5, 7, 9-11 and 2 more".
func rowsText(rows []int) string {
	const mostRuns = 8
	var runs []string
	named := 0
	for i := 0; i < len(rows) && len(runs) < mostRuns; {
		end := i
		for end+1 < len(rows) && rows[end+1] == rows[end]+1 {
			end++
		}
		if end > i {
			runs = append(runs, fmt.Sprintf("%d-%d", rows[i], rows[end]))
		} else {
			runs = append(runs, fmt.Sprint(rows[i]))
		}
		named += end - i + 1
		i = end + 1
	}
	return finding.AndMore(fmt.Sprintf("%d rows: %s", len(rows), strings.Join(runs, ", ")), len(rows)-named)
}

// about names the joints that a check says the same of: all of a few, some of many.
func about(joints []string) string {
	const most = 12
	if len(joints) <= most {
		return strings.Join(joints, ", ")
	}
	return fmt.Sprintf("%d joints: %s (all of them with --json and on the sheet Checks)", len(joints), finding.Few(joints, most/2))
}

// longMark is how many letters of a mark are shown: more hide the sentence behind it.
const longMark = 60

func shownMark(mark string) string {
	if letters := []rune(mark); len(letters) > longMark {
		return string(letters[:longMark-1]) + "…"
	}
	return mark
}
