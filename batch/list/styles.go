package list

import (
	"strconv"
	"strings"
)

// look is what a cell's number format means for reading it.
type look struct {
	date, percent  bool
	plain          bool   // General or text: show the number as it is
	before, after  string // fixed text around the digits: 0.0" mm"
	zeros          int    // digits at least shown before the point: 000
	minDec, maxDec int    // decimals shown
}

var general = look{plain: true}

// readStyles reads the number format of each cell style.
func (p *pkg) readStyles(part string) ([]look, error) {
	if part == "" || p.parts[partName(part)] == nil {
		return nil, nil
	}
	s, closer, err := p.scan(part)
	if err != nil {
		return nil, err
	}
	defer closer.Close()
	codes := map[int]string{}
	var looks []look
	inCellXfs := false
	for {
		tok, err := s.next()
		if err != nil {
			return nil, inPart(err, part)
		}
		if tok == tokEOF {
			return looks, nil
		}
		name := string(s.name)
		switch {
		case name == "cellXfs":
			inCellXfs = tok == tokStart
		case tok == tokStart && name == "numFmt":
			id, _ := strconv.Atoi(string(s.attr("numFmtId")))
			if codes[id], err = s.attrText("formatCode"); err != nil {
				return nil, inPart(err, part)
			}
		case tok == tokStart && name == "xf" && inCellXfs:
			id, _ := strconv.Atoi(string(s.attr("numFmtId")))
			looks = append(looks, lookOf(id, codes))
			if len(looks) > 1<<20 {
				return nil, refuse("save the list alone in a new workbook", "the workbook has more than %d cell styles", 1<<20)
			}
		}
	}
}

// lookOf knows the built-in formats by number and reads the others' codes.
func lookOf(id int, codes map[int]string) look {
	if code, own := codes[id]; own {
		return lookOfCode(code)
	}
	switch {
	case id >= 14 && id <= 22, id >= 27 && id <= 36, id >= 45 && id <= 47, id >= 50 && id <= 58:
		return look{date: true}
	case id == 9:
		return look{percent: true}
	case id == 10:
		return look{percent: true, minDec: 2, maxDec: 2}
	case id == 1:
		return look{zeros: 1}
	case id == 2:
		return look{zeros: 1, minDec: 2, maxDec: 2}
	}
	return general
}

// lookOfCode reads the first section of a custom number format. A code it cannot
// show is shown as a plain number; dates and percents are always recognised.
func lookOfCode(code string) look {
	l := look{}
	var digits strings.Builder
	letters := ""
	literal := func(text string) {
		if digits.Len() == 0 {
			l.before += text
		} else {
			l.after += text
		}
	}
	for i := 0; i < len(code); i++ {
		switch c := code[i]; c {
		case ';':
			i = len(code)
		case '"':
			end := strings.IndexByte(code[i+1:], '"')
			if end < 0 {
				end = len(code) - i - 1
			}
			literal(code[i+1 : i+1+end])
			i += end + 1
		case '\\':
			if i++; i < len(code) {
				literal(string(code[i]))
			}
		case '_', '*':
			i++
		case '[':
			end := strings.IndexByte(code[i:], ']')
			if end < 0 {
				return general
			}
			if inside := strings.ToLower(code[i+1 : i+end]); inside != "" && strings.Trim(inside, "hms") == "" {
				letters += "h"
			}
			i += end
		case '0', '#', '?', '.', ',':
			digits.WriteByte(c)
		case '%':
			l.percent = true
		case 'y', 'Y', 'd', 'D', 'h', 'H', 's', 'S', 'm', 'M', 'e', 'E', 'b', 'B', 'a', 'A', 'g', 'G', '/':
			letters += strings.ToLower(string(c))
		case ' ', '-', '+', '(', ')', '$':
			literal(string(c))
		default:
			letters += "x"
		}
	}
	return l.finish(digits.String(), letters)
}

func (l look) finish(digits, letters string) look {
	onlyMonth := strings.Trim(letters, "m") == "" && letters != ""
	switch {
	case strings.HasPrefix(letters, "ge") && !strings.ContainsAny(letters, "ydhs"): // General
		return general
	case strings.ContainsAny(letters, "ydhs"), onlyMonth && digits == "":
		return look{date: true}
	case onlyMonth:
		l.after += " " + letters
		letters = ""
	}
	if letters != "" || digits == "" || strings.Count(digits, ".") > 1 {
		return look{plain: true, percent: l.percent}
	}
	whole, decimals, _ := strings.Cut(strings.ReplaceAll(digits, ",", ""), ".")
	l.zeros = strings.Count(whole, "0")
	l.minDec, l.maxDec = strings.Count(decimals, "0"), len(decimals)
	return l
}

// show writes a number as the cell shows it, without grouping of thousands.
func (l look) show(value float64, raw []byte) string {
	if l.percent {
		return strconv.FormatFloat(value*100, 'f', l.maxDec, 64) + "%"
	}
	if l.plain || l.zeros == 0 && l.maxDec == 0 && l.before == "" && l.after == "" {
		return tidyNumber(value, raw)
	}
	digits := strconv.FormatFloat(value, 'f', l.maxDec, 64)
	sign := ""
	if strings.HasPrefix(digits, "-") {
		sign, digits = "-", digits[1:]
	}
	whole, decimals, _ := strings.Cut(digits, ".")
	for len(decimals) > l.minDec && decimals[len(decimals)-1] == '0' {
		decimals = decimals[:len(decimals)-1]
	}
	if missing := l.zeros - len(whole); missing > 0 {
		whole = strings.Repeat("0", missing) + whole
	}
	if decimals != "" {
		whole += "." + decimals
	}
	return l.before + sign + whole + l.after
}

// tidyNumber keeps short texts as stored and rounds the others to the 15 digits
// that a spreadsheet shows: 0.30000000000000004 is 0.3.
func tidyNumber(value float64, raw []byte) string {
	if len(raw) < 15 && !strings.ContainsAny(string(raw), "eE") {
		return string(raw)
	}
	short, err := strconv.ParseFloat(strconv.FormatFloat(value, 'g', 15, 64), 64)
	if err != nil {
		return string(raw)
	}
	if a := abs(short); a < 1e21 && a >= 1e-6 || a == 0 {
		return strconv.FormatFloat(short, 'f', -1, 64)
	}
	return strconv.FormatFloat(short, 'g', -1, 64)
}

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}
