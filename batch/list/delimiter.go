package list

import "strings"

const delimiters = ";\t,|"

// sniffDelimiter decides from the whole file. For each candidate it asks how
// many records have the commonest count of it, and how many columns that gives;
// a comma between two digits counts half, because it may be a decimal comma.
func sniffDelimiter(text string) rune {
	var counts [len(delimiters)]map[int]int
	for i := range counts {
		counts[i] = map[int]int{}
	}
	records := tallyDelimiters(text, func(row [len(delimiters)]int) {
		for i, n := range row {
			counts[i][n]++
		}
	})
	best, bestScore := ',', 0.0
	for i, d := range delimiters {
		if score := evenness(counts[i], records); score > bestScore {
			best, bestScore = d, score
		}
	}
	return best
}

// evenness is the share of records with the commonest count, weighed with the
// logarithm-like growth of the columns, plus a little for every record with any.
func evenness(count map[int]int, records int) float64 {
	if records == 0 {
		return 0
	}
	mode, most, any := 0, 0, 0
	for n, rows := range count {
		if n == 0 {
			continue
		}
		any += rows
		if rows > most || rows == most && n > mode {
			mode, most = n, rows
		}
	}
	if mode == 0 {
		return 0
	}
	width := 2 - 2/float64(mode+1) // two fields: 1; many: nearly 2
	return (float64(most) + 0.5*float64(any)) / float64(records) * width
}

// tallyDelimiters calls row for every record with the count of each delimiter
// outside quotes. Commas between digits are counted in pairs.
func tallyDelimiters(text string, row func([len(delimiters)]int)) (records int) {
	var now [len(delimiters)]int
	half, quoted, start, used := 0, false, true, false
	flush := func() {
		if used {
			now[2] += half / 2
			row(now)
			records++
		}
		now, half, start, used = [len(delimiters)]int{}, 0, true, false
	}
	for i := 0; i < len(text); i++ {
		c := text[i]
		if quoted {
			if c == '"' {
				if i+1 < len(text) && text[i+1] == '"' {
					i++
				} else {
					quoted = false
				}
			}
			continue
		}
		switch d := strings.IndexByte(delimiters, c); {
		case c == '\n' || c == '\r':
			flush()
		case c == '"' && start:
			quoted, start, used = true, false, true
		case d == 2 && betweenDigits(text, i):
			half++
			start = true
		case d >= 0:
			now[d]++
			start = true
		default:
			start = start && c == ' '
			used = used || c != ' '
		}
	}
	flush()
	return records
}

func betweenDigits(text string, i int) bool {
	return i > 0 && i+1 < len(text) && digit(text[i-1]) && digit(text[i+1])
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// writesDecimalComma decides once for the file: some cell is a number only if
// its comma is a decimal comma, and not more cells are so with a point.
func writesDecimalComma(rows []Row) bool {
	comma, point := 0, 0
	for _, r := range rows {
		for _, c := range r.Cells {
			switch DecimalMark(c.Text) {
			case ',':
				comma++
			case '.':
				point++
			}
		}
	}
	return comma > point
}

// DecimalMark tells which mark must be the decimal one if the text is a number:
// "2,5" and "1.234,5" need a comma, "2.5" and "1,234.5" a point. It returns 0
// where the text is no number or leaves the choice open, as "1,234" does.
func DecimalMark(s string) rune {
	s = strings.TrimLeft(s, "+-−azsAZS=ø△ ")
	end := 0
	for end < len(s) && (digit(s[end]) || s[end] == '.' || s[end] == ',') {
		end++
	}
	s = s[:end]
	last := strings.LastIndexAny(s, ".,")
	if last < 0 || end > 30 {
		return 0
	}
	mark := rune(s[last])
	whole, decimals := s[:last], s[last+1:]
	switch {
	case strings.ContainsRune(whole, mark):
		if strings.ContainsAny(whole, otherMark(mark)) {
			return 0
		}
		return 0
	case strings.Contains(whole, otherMark(mark)):
		return mark
	case len(decimals) == 0:
		return 0
	case len(decimals) != 3, whole == "0", whole == "", len(whole) > 3:
		return mark
	}
	return 0
}

func otherMark(mark rune) string {
	if mark == ',' {
		return "."
	}
	return ","
}
