package measure

import (
	"strconv"
	"strings"
)

// Style is how a list writes its numbers, decided once for the whole list.
type Style struct {
	// Mark is the decimal mark, '.' or ','; 0 if the list does not tell.
	Mark rune
	// Grouped: the list surely groups thousands with the other mark ("1.234,5").
	Grouped bool
}

// Fault says why a text is not the quantity it should be.
type Fault struct {
	Text string // what is wrong
	Hint string // what to do; may be empty
}

// Error returns what is wrong.
func (f *Fault) Error() string { return f.Text }

func fault(text, hint string) *Fault { return &Fault{Text: text, Hint: hint} }

const notANumber = "it is not a number"

// largest is beyond anything that is measured, and far from what no longer fits a
// number once it is turned into another unit.
const largest = 1e18

// Number reads a bare number.
func Number(s string, style Style) (float64, *Fault) {
	s = Plain(s)
	if v, ok := simple(s); ok {
		return v, nil
	}
	sign := 1.0
	switch {
	case strings.HasPrefix(s, "-"):
		sign, s = -1, strings.TrimSpace(s[1:])
	case strings.HasPrefix(s, "+"):
		s = strings.TrimSpace(s[1:])
	}
	if s == "" || strings.Trim(s, "0123456789.,' eE+-") != "" || !strings.ContainsAny(s, "0123456789") {
		return 0, fault(notANumber, "")
	}
	s, bad := ungroup(s)
	if bad != nil {
		return 0, bad
	}
	mantissa, power, scientific := strings.Cut(strings.ToLower(s), "e")
	mantissa, bad = pointed(mantissa, style)
	if bad != nil {
		return 0, bad
	}
	if scientific {
		if p, err := strconv.Atoi(power); err != nil || p < -15 || p > 15 {
			return 0, fault("it is written with a power of ten that is out of range", "write the number in full")
		}
		mantissa += "e" + power
	}
	v, err := strconv.ParseFloat(mantissa, 64)
	if err != nil {
		return 0, fault(notANumber, "")
	}
	if v > largest {
		return 0, fault("it has more digits than any measure", "write the number that is meant")
	}
	return sign * v, nil
}

// simple reads whole numbers, the commonest case, without any doubt.
func simple(s string) (float64, bool) {
	if s == "" || len(s) > 15 {
		return 0, false
	}
	n := 0
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return float64(n), true
}

// ungroup drops spaces and apostrophes that group thousands: 1 250, 1'250.
func ungroup(s string) (string, *Fault) {
	if !strings.ContainsAny(s, " '") {
		return s, nil
	}
	whole, rest := s, ""
	if i := strings.IndexAny(s, ".,"); i >= 0 {
		whole, rest = s[:i], s[i:]
	}
	parts := strings.FieldsFunc(whole, func(r rune) bool { return r == ' ' || r == '\'' })
	if strings.ContainsAny(rest, " '") || !groups(parts) {
		return "", fault("it looks like more than one number", "write one number in the cell")
	}
	return strings.Join(parts, "") + rest, nil
}

// groups tells whether parts are the groups of one number: 1 to 3 digits, then 3 each.
func groups(parts []string) bool {
	for i, p := range parts {
		if len(p) == 0 || len(p) > 3 || i > 0 && len(p) != 3 || strings.Trim(p, "0123456789") != "" {
			return false
		}
	}
	return len(parts) > 1
}

// pointed rewrites a number with its decimal mark as a point.
func pointed(s string, style Style) (string, *Fault) {
	last := strings.LastIndexAny(s, ".,")
	if last < 0 {
		return s, nil
	}
	mark, other := s[last:last+1], "."
	if mark == "." {
		other = ","
	}
	whole, decimals := s[:last], s[last+1:]
	switch {
	case strings.Contains(whole, other): // both marks: the last is the decimal one
		parts := strings.Split(whole, other)
		if strings.Contains(whole, mark) || !groups(parts) {
			return "", fault("its points and commas fit no number", "write it with one decimal mark and no thousands")
		}
		return strings.Join(parts, "") + "." + decimals, nil
	case strings.Contains(whole, mark): // one mark several times: thousands
		parts := strings.Split(s, mark)
		if !groups(parts) {
			return "", fault("it looks like a date or an outline number", "write one plain number in the cell")
		}
		return strings.Join(parts, ""), nil
	case decimals == "" && whole == "":
		return "", fault(notANumber, "")
	case len(decimals) != 3 || whole == "" || strings.HasPrefix(whole, "0") || len(whole) > 3:
		return whole + "." + decimals, nil
	}
	return threeDigits(whole, mark, decimals, style)
}

// threeDigits rules on 1,234 and 1.234: a decimal or a thousand. Only the list's
// own habit decides; without one the number is refused.
func threeDigits(whole, mark, decimals string, style Style) (string, *Fault) {
	switch {
	case style.Mark == rune(mark[0]):
		return whole + "." + decimals, nil
	case style.Mark != 0 && style.Grouped:
		return whole + decimals, nil
	}
	name := "point"
	if mark == "," {
		name = "comma"
	}
	return "", fault("the "+name+" can part thousands ("+whole+decimals+") or decimals ("+whole+"."+decimals+")",
		"write "+whole+decimals+" if thousands were meant; if decimals were meant, write four of them, such as "+whole+"."+decimals+"0")
}

// Habit looks at texts and tells how their writer writes numbers.
func Habit(texts func(yield func(string) bool)) Style {
	point, comma := 0, 0
	grouped := map[rune]bool{}
	for s := range texts {
		s = Plain(s)
		for i := 0; i < len(s); {
			start := i
			for i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.' || s[i] == ',') {
				i++
			}
			switch mark, group := evidence(strings.Trim(s[start:i], ".,")); {
			case mark == '.':
				point++
				grouped['.'] = grouped['.'] || group
			case mark == ',':
				comma++
				grouped[','] = grouped[','] || group
			}
			if i == start {
				i++
			}
		}
	}
	switch {
	case comma > point:
		return Style{Mark: ',', Grouped: grouped[',']}
	case point > comma:
		return Style{Mark: '.', Grouped: grouped['.']}
	}
	return Style{}
}

// evidence tells which decimal mark a number proves, and whether it groups
// thousands; 0 where it proves none.
func evidence(s string) (mark rune, grouped bool) {
	last := strings.LastIndexAny(s, ".,")
	if last < 0 || len(s) > 24 {
		return 0, false
	}
	own, other := s[last:last+1], "."
	if own == "." {
		other = ","
	}
	whole, decimals := s[:last], s[last+1:]
	switch {
	case strings.Contains(whole, own):
		if groups(strings.Split(s, own)) { // 1.234.567: the other mark is the decimal one
			return rune(other[0]), true
		}
		return 0, false
	case strings.Contains(whole, other):
		if groups(strings.Split(whole, other)) {
			return rune(own[0]), true
		}
		return 0, false
	case len(decimals) != 3 || whole == "" || strings.HasPrefix(whole, "0") || len(whole) > 3:
		return rune(own[0]), false
	}
	return 0, false
}
