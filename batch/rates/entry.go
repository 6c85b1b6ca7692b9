package rates

import (
	"errors"
	"fmt"
	"strings"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// BuiltIn is the From of a value that nobody has stated.
const BuiltIn = "built in"

// OwnBasis is the basis of a value that the shop has stated itself.
const OwnBasis = "shop"

// entry is one line of a shop file, or one --set.
type entry struct {
	place        finding.Place // of the value
	keyCol       int           // column of the key; 0: no cell holds it
	from         string
	key, text    string
	unit, basis  string
	low, high    string
	source, note string
	decimalComma bool
	changed      bool   // on our own sheet, since the list was last worked
	percent      bool   // a spreadsheet cell shown as a percentage; text is the share
	holds, cure  string // what a cell holds instead of a value, and what helps
}

// keyPlace is where the key stands.
func (e *entry) keyPlace() finding.Place {
	p := e.place
	if e.keyCol > 0 {
		p.Col, p.Header = e.keyCol, "key"
	}
	return p
}

// take puts one entry into the shop, or says why it cannot. A line that shows a
// procedure in a sheet of results is no value: procedures have a sheet of their own.
func (s *Shop) take(e entry) []finding.Problem {
	if strings.HasPrefix(e.key, tables.ProcedureValue) {
		return nil
	}
	key, problem := s.resolve(e)
	if problem != nil {
		return []finding.Problem{*problem}
	}
	if strings.TrimSpace(e.text) == "" {
		return s.takeBlank(e, key)
	}
	if e.holds != "" {
		return e.unread(key, s.wantFor(key))
	}
	if isWord(key) {
		return s.takeWord(e, key)
	}
	return s.takeNumber(e, key)
}

// takeBlank leaves the value as it is, and says so where something else might
// be thought. A blank list of machines means that the shop names none.
func (s *Shop) takeBlank(e entry, key string) []finding.Problem {
	v, ok := s.Value(key)
	if !ok || v.Text == "" {
		return nil
	}
	return []finding.Problem{{Place: e.place, Level: finding.Note, Code: "shop-blank",
		Text: fmt.Sprintf("%s is left blank; %s (%s) is used", key, withUnit(v.Text, s.unitText(v.Unit)), v.From),
		Hint: "write the shop's own value, or take the row out"}}
}

// takeNumber reads a number in any unit that fits the key.
func (s *Shop) takeNumber(e entry, key string) []finding.Problem {
	low, high, unit := s.bounds(key)
	text := e.text
	if e.percent {
		text += " share"
	}
	num, given, err := readNumber(text, e.decimalComma)
	if err != nil {
		return e.problem("shop-number", fmt.Sprintf("the value of %s %s", key, err), s.wantOf(unit), numberHint(err))
	}
	if strings.EqualFold(given, "o") || strings.EqualFold(given, "l") && unit != "l" {
		return e.problem("shop-number", fmt.Sprintf("the value of %s ends in the letter %s", key, given), s.wantOf(unit), "write the digit 0 or 1 if that was meant")
	}
	if given == "" {
		given = e.unit
	}
	factor, fault := convert(given, unit, s.Currency)
	switch fault {
	case unitWrong:
		return e.problem("shop-unit", fmt.Sprintf("the unit %q does not fit %s", given, key), s.wantOf(unit), e.unitHint(given, s.wantOf(unit)))
	case moneyWrong:
		return e.problem("shop-currency", fmt.Sprintf("the unit %q is not in the shop's currency %s", given, s.Currency), s.wantOf(unit),
			"give every price in one currency, and name that under the key currency")
	}
	num *= factor
	if !(num >= low && num <= high) {
		return e.problem("shop-range", fmt.Sprintf("%s is outside what %s can be", s.amount(num, unit), key),
			fmt.Sprintf("%s to %s", numberText(low), s.amount(high, unit)), rangeHint(key, num, unit))
	}
	s.put(e, Value{Key: key, Text: numberText(num), Num: num, IsNum: true, Unit: unit})
	return e.looksLikeShare(key, num, unit)
}

// looksLikeShare warns of 0.15 where 15 % was most likely meant.
func (e entry) looksLikeShare(key string, num float64, unit string) []finding.Problem {
	if unit != "%" || num <= 0 || num >= 1 || strings.Contains(e.text+e.unit, "%") {
		return nil
	}
	return []finding.Problem{{Place: e.place, Level: finding.Warning, Code: "shop-share", Read: e.text, Want: "per cent",
		Text: fmt.Sprintf("%s is taken as %s %%, less than one per cent", key, numberText(num)),
		Hint: fmt.Sprintf("write %s if a share was meant, or %s %% if it is right", numberText(num*100), numberText(num))}}
}

// put stores an accepted value. A line that repeats the built-in value and still
// bears the built-in basis is a line of the starter file that nobody touched:
// it stays the tool's own value and is not taken for the shop's.
func (s *Shop) put(e entry, v Value) {
	old, known := s.Value(v.Key)
	untouched := known && old.Text == v.Text && e.basis != "" && e.basis != OwnBasis && e.basis == old.Basis
	v.Money = old.Money || !known
	v.From, v.Basis, v.Source, v.Note, v.place = e.from, OwnBasis, e.source, e.note, e.place
	if untouched {
		v = old
		v.From, v.place = e.from+", as built in", e.place
	} else {
		v.Low, v.High = e.spread(v.Unit, s.Currency)
		v.Source = e.sourceOfValue()
	}
	if known {
		*s.find(v.Key) = v
		return
	}
	s.Values = append(s.Values, v)
}

// sourceOfValue is where the value comes from; what stood behind the value before
// it says nothing about one that was changed on our sheet.
func (e entry) sourceOfValue() string {
	if e.changed && e.basis != OwnBasis {
		return ""
	}
	return e.source
}

// spread reads the low and high of a line; both zero where either is missing or
// no number, because a spread only informs.
func (e entry) spread(unit, currency string) (low, high float64) {
	low, _, errLow := readNumber(e.low, e.decimalComma)
	high, _, errHigh := readNumber(e.high, e.decimalComma)
	factor, fault := convert(e.unit, unit, currency)
	if errLow != nil || errHigh != nil || fault != unitFits || high < low {
		return 0, 0
	}
	return low * factor, high * factor
}

func (e entry) problem(code, text, want, hint string) []finding.Problem {
	return []finding.Problem{{Place: e.place, Level: finding.Error, Code: code, Text: text, Read: e.text, Want: want, Hint: hint}}
}

// unread refuses a cell that holds no value: what stands in its place is ours to say and
// nothing that the cell shows, so it is not quoted.
func (e entry) unread(key, want string) []finding.Problem {
	p := e.problem("shop-number", fmt.Sprintf("the value of %s cannot be read: the cell holds %s", key, e.holds), want, e.cure)
	p[0].Read = ""
	return p
}

// wantFor is what a key takes, in words; "" for a key whose values are words.
func (s *Shop) wantFor(key string) string {
	if isWord(key) {
		return ""
	}
	_, _, unit := s.bounds(key)
	return s.wantOf(unit)
}

func numberHint(err error) string {
	switch {
	case errors.Is(err, errThousands):
		return "write 1234 or 1.2 without a sign between thousands"
	case errors.Is(err, errTwoMarks):
		return "write the number with one decimal sign and none between thousands"
	}
	return "write digits with one decimal sign, such as 2.5"
}

// rangeHint names the slip that a figure out of range most likely is.
func rangeHint(key string, num float64, unit string) string {
	if strings.HasPrefix(unit, "share") && num > 1 && num <= 100 {
		return fmt.Sprintf("write %s, or %s %%, if %s per cent is meant", numberText(num/100), numberText(num), numberText(num))
	}
	return "correct the value of " + key
}

// unitText shows a unit with the shop's currency in place of "money".
func (s *Shop) unitText(unit string) string {
	if unit == "" || unit == "x" {
		return "a plain number"
	}
	return strings.Replace(unit, "money", s.Currency, 1)
}

// wantOf says what a value has to be: "a number in EUR/h", "a plain number", "a share of
// the welding time".
func (s *Shop) wantOf(unit string) string {
	switch text := s.unitText(unit); {
	case text == "a plain number":
		return text
	case strings.HasPrefix(text, "share"):
		return "a " + text + ", such as 0.3 or 30 %"
	default:
		return "a number in " + text
	}
}

// unitHint says how to write a value whose unit does not fit: the unit stands behind the
// number, or in the column of units.
func (e entry) unitHint(given, want string) string {
	how := "as " + want
	if unit, found := strings.CutPrefix(want, "a number in "); found {
		how = "in " + unit
	}
	if given == e.unit {
		switch unit := strings.TrimPrefix(want, "a number in "); {
		case unit != want:
			return "clear the unit cell beside the value, or write " + unit + " in it"
		case strings.HasPrefix(want, "a share"):
			return "clear the unit cell beside the value, or write % in it where the value is one of per cent"
		}
		return "clear the unit cell beside the value: " + e.key + " has no unit"
	}
	return "write the value " + how
}

// amount is a figure with its unit; a share is a bare figure.
func (s *Shop) amount(num float64, unit string) string {
	if strings.HasPrefix(unit, "share") {
		return numberText(num)
	}
	return withUnit(numberText(num), s.unitText(unit))
}

func withUnit(text, unit string) string {
	if unit == "" || unit == "a plain number" {
		return text
	}
	return text + " " + unit
}
