package rates

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"
)

// Why a number could not be read, as said to the user.
var (
	errNotNumber = errors.New("is not a number")
	errThousands = errors.New("may be a thousand times larger or smaller than meant")
	errTwoMarks  = errors.New("has both a comma and a point")
)

// readNumber takes the number at the start of a text, with an optional currency
// sign or word before it, and returns what stands around it as the unit.
// A comma is a decimal sign; where it could as well part thousands ("1,500") the
// number is refused, unless the file is known to write decimal commas. In such a
// file the same holds for a point.
func readNumber(text string, decimalComma bool) (num float64, unit string, err error) {
	text = strings.TrimSpace(text)
	start := strings.IndexFunc(text, func(r rune) bool { return unicode.IsDigit(r) || strings.ContainsRune("+-.,", r) })
	if start < 0 {
		return 0, "", errNotNumber
	}
	before, rest := strings.TrimSpace(text[:start]), text[start:]
	if strings.IndexFunc(before, unicode.IsSpace) >= 0 {
		return 0, "", errNotNumber
	}
	end := strings.IndexFunc(rest, func(r rune) bool { return !(r >= '0' && r <= '9' || strings.ContainsRune("+-.,", r)) })
	if end < 0 {
		end = len(rest)
	}
	num, err = plainNumber(rest[:end], decimalComma)
	if err != nil {
		return 0, "", err
	}
	after := strings.TrimSpace(rest[end:])
	if holdsFigures(before) || holdsFigures(after) || unitNames[strings.ToLower(before)] != "" {
		return 0, "", errNotNumber // "1 500", "1/2", "6 m, 12 m", "M21": no one number is said
	}
	return num, joinUnit(before, after), nil
}

// holdsFigures tells whether what stands about a number has digits of its own that belong
// to no unit: "m3" and "ml/100 g" have some that do.
func holdsFigures(text string) bool {
	text = unitDigits.ReplaceAllString(text, "")
	return strings.IndexFunc(text, unicode.IsDigit) >= 0
}

var unitDigits = regexp.MustCompile(`(?i)\b(?:m|ft|mm|in)[23]\b|/ ?100 ?g\b`)

// joinUnit puts a currency that stands before the number in front of what
// stands behind it: "€ 30 /h" is 30 €/h.
func joinUnit(before, after string) string {
	if before != "" && after != "" && !strings.HasPrefix(after, "/") {
		return before + " " + after
	}
	return before + after
}

func plainNumber(digits string, decimalComma bool) (float64, error) {
	sign, mark := ",", "."
	if decimalComma {
		sign, mark = ".", ","
	}
	if strings.Contains(digits, sign) && strings.Contains(digits, mark) {
		return 0, errTwoMarks
	}
	if whole, part, found := strings.Cut(digits, sign); found && len(part) == 3 && strings.Trim(whole, "+-0") != "" {
		return 0, errThousands
	}
	num, err := strconv.ParseFloat(strings.Replace(digits, ",", ".", 1), 64)
	if err != nil || math.IsInf(num, 0) || math.IsNaN(num) {
		return 0, errNotNumber
	}
	return num, nil
}

// numberText writes a number in the shortest way that reads back the same.
func numberText(num float64) string {
	if num == 0 {
		return "0" // never "-0"
	}
	return strconv.FormatFloat(num, 'f', -1, 64)
}
