package report

import (
	"bytes"
	"encoding/csv"

	"github.com/gocarina/gocsv"

	"seamtally/batch/finding"
	"seamtally/batch/price"
)

// found is one line of the findings CSV: where, how serious, what, what to do.
type found struct {
	File   string        `csv:"file"`
	Sheet  string        `csv:"sheet"`
	Row    number        `csv:"row"`
	Column string        `csv:"column"`
	Header string        `csv:"header"`
	Mark   string        `csv:"mark"`
	Level  finding.Level `csv:"level"`
	Code   string        `csv:"code"`
	Text   string        `csv:"text"`
	Read   string        `csv:"read"`
	Want   string        `csv:"expected"`
	Do     string        `csv:"do"`
	Basis  string        `csv:"basis"`
	Source string        `csv:"source"`
}

// Findings returns everything found in a list as CSV, one line each: first what is
// wrong with the list, then the checks of its joints, both in the list's order.
// Words are guarded against being run as formulas.
func Findings(job *price.Job) ([]byte, error) {
	var lines []found
	for _, p := range job.Problems {
		lines = append(lines, foundAt(p.Place, found{Level: p.Level, Code: p.Code, Text: p.Text, Read: p.Read, Want: p.Want, Do: p.Hint}))
	}
	for i := range job.Plans {
		plan := &job.Plans[i]
		for _, c := range plan.Checks {
			lines = append(lines, foundAt(plan.Joint.Place, found{Mark: plan.Joint.Mark, Level: c.Level, Code: c.Code, Text: c.Text, Do: c.Do, Basis: c.Basis, Source: c.Source}))
		}
	}
	var out bytes.Buffer
	if len(lines) == 0 {
		return nil, nil
	}
	if err := gocsv.MarshalCSV(lines, gocsv.NewSafeCSVWriter(csv.NewWriter(&out))); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// foundAt fills in the place and guards the words.
func foundAt(place finding.Place, f found) found {
	f.File, f.Sheet, f.Header = place.File, place.Sheet, place.Header
	f.Row = when(place.Row > 0, count(place.Row))
	if place.Col > 0 {
		f.Column = finding.ColumnName(place.Col)
	}
	for _, text := range []*string{&f.File, &f.Sheet, &f.Header, &f.Mark, &f.Text, &f.Read, &f.Want, &f.Do, &f.Source} {
		*text = Guard(*text)
	}
	return f
}
