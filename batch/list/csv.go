package list

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
)

// Limits of what is read. They are a spreadsheet's own, or far above any list.
const (
	maxRows  = 1048576
	maxCols  = 16384
	maxCells = 6000000
)

// readCSV reads a delimited text file. A file that ends inside a quoted field is
// refused, because nobody can say where that field should have ended.
func readCSV(src *Source) ([]finding.Problem, error) {
	text, encoding, guessed := decode(src.Data)
	src.Format, src.Encoding = CSV, encoding
	var problems []finding.Problem
	if guessed {
		problems = append(problems, finding.Problem{Level: finding.Note, Code: "encoding-guessed",
			Text: fmt.Sprintf("the file does not say how its letters are stored; it was read as %s", encoding),
			Hint: "if letters look wrong, save the list as CSV UTF-8"})
	}
	if at := strings.IndexByte(text, 0); at >= 0 {
		return nil, refuse("open the list where it was made and save it again as CSV or .xlsx", "line %d holds what no text file holds (for whoever mends it: a NUL character): the file is damaged or no list at all", lineOf(text, at))
	}
	if notText(text) {
		return nil, refuse("give the list as .xlsx or CSV", "the file is not a text file or a workbook")
	}
	if strings.TrimSpace(text) == "" {
		return nil, nothing()
	}
	line := 1
	var told bool
	if src.Delimiter, text, told = sepLine(text); told {
		line = 2
	} else {
		src.Delimiter = sniffDelimiter(text)
	}
	sheet, more, err := parseCSV(text, src.Delimiter, line)
	if err != nil {
		return nil, err
	}
	problems = append(problems, more...)
	src.Sheets = []Sheet{sheet}
	src.DecimalComma = src.Delimiter != ',' && writesDecimalComma(sheet.Rows)
	if src.DecimalComma {
		problems = append(problems, finding.Problem{Level: finding.Note, Code: "decimal-comma",
			Text: "the file writes numbers with a decimal comma (2,5 for two and a half) and was read so", Hint: "if that is right nothing need be done; if the commas part thousands, save the list again without them"})
	}
	return problems, nil
}

func lineOf(text string, at int) int {
	head := text[:at]
	return 1 + strings.Count(head, "\n") + strings.Count(head, "\r") - strings.Count(head, "\r\n")
}

// sepLine reads the line "sep=;" with which some programs announce the delimiter.
func sepLine(text string) (delimiter rune, rest string, told bool) {
	end := strings.IndexAny(text, "\r\n")
	if end < 0 {
		end = len(text)
	}
	first := strings.Trim(text[:end], `"`)
	if len(first) < 5 || len(first) > 5 || !strings.EqualFold(first[:4], "sep=") {
		return 0, text, false
	}
	rest = text[end:]
	if strings.HasPrefix(rest, "\r\n") {
		rest = rest[2:]
	} else if rest != "" {
		rest = rest[1:]
	}
	return rune(first[4]), rest, true
}

// csvReader walks over the text once. Quotes count only at the start of a field,
// so that 1/4" stays what it is.
type csvReader struct {
	text      string
	pos, line int
	delimiter byte
	problems  []finding.Problem
}

func parseCSV(text string, delimiter rune, line int) (Sheet, []finding.Problem, error) {
	r := csvReader{text: text, line: line, delimiter: byte(delimiter)}
	var sheet Sheet
	cells := 0
	for r.pos < len(r.text) {
		row, err := r.record()
		if err != nil {
			return sheet, nil, err
		}
		if len(row.Cells) == 0 {
			continue
		}
		sheet.Rows = append(sheet.Rows, row)
		cells += len(row.Cells)
		if len(sheet.Rows) > maxRows {
			return sheet, nil, refuse("split the list", "the file has more than %d rows", maxRows)
		}
		if cells > maxCells {
			return sheet, nil, refuse("split the list", "the file has more than %d filled cells", maxCells)
		}
	}
	return sheet, r.problems, nil
}

// record reads one record. Its number is the line on which it starts.
func (r *csvReader) record() (Row, error) {
	row := Row{Number: r.line}
	for col := 1; ; col++ {
		if col > maxCols {
			return row, refuse("open the list in your spreadsheet program, delete what is not the list's, and save it again as CSV", "line %d has more than %d columns, the most that a spreadsheet has", row.Number, maxCols)
		}
		field, err := r.field(row.Number, col)
		if err != nil {
			return row, err
		}
		if field = tidy(field); field != "" {
			row.Cells = append(row.Cells, Cell{Col: col, Kind: Text, Text: field})
		}
		if r.pos >= len(r.text) {
			return row, nil
		}
		c := r.text[r.pos]
		r.pos++
		if c == r.delimiter {
			continue
		}
		if c == '\r' && r.pos < len(r.text) && r.text[r.pos] == '\n' {
			r.pos++
		}
		r.line++
		return row, nil
	}
}

// field reads up to, not including, the delimiter or line end.
func (r *csvReader) field(line, col int) (string, error) {
	if r.pos < len(r.text) && r.text[r.pos] == '"' {
		return r.quoted(line, col)
	}
	return r.bare(), nil
}

func (r *csvReader) bare() string {
	start := r.pos
	for r.pos < len(r.text) {
		c := r.text[r.pos]
		if c == r.delimiter || c == '\n' || c == '\r' {
			break
		}
		r.pos++
	}
	return r.text[start:r.pos]
}

func (r *csvReader) quoted(line, col int) (string, error) {
	startLine := r.line
	r.pos++
	var out strings.Builder
	for {
		next := strings.IndexByte(r.text[r.pos:], '"')
		if next < 0 {
			return "", refuse("delete the mark, or set a second one behind the text (an inch mark at the beginning of a cell is taken for one); or save the list again from your spreadsheet program",
				"line %d: the quotation mark at the beginning of column %d has no second one at the end of its text", startLine, col)
		}
		piece := r.text[r.pos : r.pos+next]
		out.WriteString(piece)
		r.line += lineOf(piece, len(piece)) - 1
		r.pos += next + 1
		if r.pos < len(r.text) && r.text[r.pos] == '"' {
			out.WriteByte('"')
			r.pos++
			continue
		}
		rest := r.bare()
		if strings.TrimSpace(rest) != "" {
			r.problems = append(r.problems, finding.Problem{
				Place: finding.Place{Row: line, Col: col}, Level: finding.Warning, Code: "stray-quote",
				Text: "a quote stands in the middle of a cell", Read: out.String() + `"` + rest,
				Want: `a quote inside a quoted cell written twice ("")`, Hint: "check that this cell was read as it was meant"})
			out.WriteByte('"')
			out.WriteString(rest)
		}
		return out.String(), nil
	}
}

// tidy drops the spaces around a cell, the invisible ones too.
func tidy(s string) string {
	return strings.Trim(s, " \t\r\n\v\f\u00a0\u200b\u200c\u200d\u2060\ufeff\u2007\u202f")
}
