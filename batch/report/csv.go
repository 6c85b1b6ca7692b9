package report

import (
	"bytes"
	"encoding/csv"
	"strings"

	"github.com/gocarina/gocsv"

	"seamtally/batch/finding"
	"seamtally/batch/price"
)

// CSV returns the results file: one row for each joint, in the order of the
// list, in UTF-8 with a point as decimal mark.
func CSV(job *price.Job) ([]byte, error) {
	var out bytes.Buffer
	out.Grow(usualRow * (len(job.Plans) + 3))
	to := gocsv.NewSafeCSVWriter(csv.NewWriter(&out))
	rows := make([]row, 0, min(len(job.Plans), atOnce))
	if err := gocsv.MarshalCSV(rows, to); err != nil { // the header
		return nil, err
	}
	for from := 0; from < len(job.Plans); from += atOnce {
		rows = rows[:0]
		for i := from; i < min(from+atOnce, len(job.Plans)); i++ {
			rows = append(rows, newRow(&job.Plans[i]))
			rows[i-from].guard()
		}
		if err := gocsv.MarshalCSVWithoutHeaders(rows, to); err != nil {
			return nil, err
		}
	}
	return out.Bytes(), nil
}

// atOnce is how many rows are made ready together: those of a long list need not
// all stand in memory.
const atOnce = 1000

// usualRow is what a row takes, in bytes.
const usualRow = 450

// guard keeps a spreadsheet program from running text of the list as a formula.
// Only words are guarded; numbers have types of their own.
func (r *row) guard() {
	for _, text := range []*string{&r.Mark, &r.Assembly, &r.Kind, &r.Process, &r.Filler, &r.Gas, &r.Transfer,
		&r.Polarity, &r.Torch, &r.Trigger, &r.Inductance, &r.Machine} {
		*text = Guard(*text)
	}
}

// Guard puts an apostrophe before a text that a spreadsheet program would take
// for a formula. A text that is a number as a whole, such as the mark -3, stays.
func Guard(text string) string {
	if text == "" || text[0]|0x20 >= 'a' && text[0]|0x20 <= 'z' {
		return text
	}
	start := strings.TrimLeft(text, " \u00a0\u200b\ufeff\x00")
	if start == "" || isNumber(text) {
		return text
	}
	switch first := []rune(start)[0]; first {
	case '=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠':
		return "'" + text
	}
	return text
}

// isNumber accepts a sign, digits and one decimal point, and nothing else.
func isNumber(text string) bool {
	digits := strings.TrimLeft(text, "+-")
	if len(text)-len(digits) > 1 || digits == "" {
		return false
	}
	return strings.Trim(digits, "0123456789") == "" || strings.Count(digits, ".") == 1 && len(digits) > 1 && strings.Trim(digits, "0123456789.") == ""
}

// check is one judgement about a joint.
type check struct {
	Code   string        `json:"code"`
	Level  finding.Level `json:"level"`
	Text   string        `json:"text"`
	More   string        `json:"more,omitempty"` // the figures behind it
	Do     string        `json:"do"`
	Rule   string        `json:"rule"`
	Basis  string        `json:"basis"`
	Source string        `json:"source"`
}

type checks []check

func newChecks(list []finding.Check) checks {
	out := checks{}
	for _, c := range list {
		out = append(out, check{c.Code, c.Level, c.Text, c.More, c.Do, c.Rule, c.Basis, c.Source})
	}
	return out
}

// MarshalCSV writes "code:level" joined by semicolons.
func (c checks) MarshalCSV() (string, error) {
	parts := make([]string, len(c))
	for i, one := range c {
		parts[i] = one.Code + ":" + string(one.Level)
	}
	return strings.Join(parts, ";"), nil
}
