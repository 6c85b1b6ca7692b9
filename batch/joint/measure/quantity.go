package measure

import (
	"regexp"
	"strconv"
	"strings"
)

// Quantity is a number with the unit that stood with it.
type Quantity struct {
	Num      float64
	Unit     Unit
	Fraction bool // written as an inch fraction: 1/4, 1 1/2
}

// MM returns the quantity in millimetres; bare is the unit of a bare number.
func (q Quantity) MM(bare Unit) float64 {
	u := q.Unit
	if u == None {
		u = bare
	}
	return q.Num * u.Millimetres()
}

const frac = `(?:(\d{1,4})(?: +| ?- ?))?(\d{1,3}) ?/ ?(\d{1,3})`

var (
	reFraction = regexp.MustCompile(`^([+-]?) ?` + frac + ` ?([^\d\s].*)?$`)
	reFeet     = regexp.MustCompile(`^([+-]?) ?([\d.,]+) ?(?:'|ft\.?|feet|foot) ?(.*)$`)
	reInches   = regexp.MustCompile(`^-? ?(?:([\d.,]+)|` + frac + `) ?(?:"|''|in\.?|inch|inches)?$`)
	reGrouped  = regexp.MustCompile(`^[+-]? ?\d{1,3}('\d{3})+([.,]\d+)?( ?[^\d\s'"].*)?$`) // 1'250: thousands, not feet
	reNumber   = regexp.MustCompile(`^([+-]? ?[\d., ']*\d[.,]?(?:[eE][+-]?\d+)?) ?([^\d\s].*)?$`)
)

// Parse reads a number with or without a unit: "6", "6 mm", "1/4\"", "1 1/2 in",
// "2' 6\"", "4'-6 1/2\"", "1,25 m".
func Parse(s string, style Style) (Quantity, *Fault) {
	s = Plain(s)
	if v, ok := simple(s); ok {
		return Quantity{Num: v}, nil
	}
	low := strings.ToLower(s)
	switch {
	case s == "":
		return Quantity{}, fault("it is empty", "")
	case strings.HasSuffix(s, "%"):
		return Quantity{}, fault("it is a percentage", "write the figure that the percentage stands for, with its unit")
	}
	if m := reFeet.FindStringSubmatch(low); m != nil && !reGrouped.MatchString(low) {
		return feet(m, style)
	}
	if m := reFraction.FindStringSubmatch(low); m != nil {
		return fraction(m)
	}
	m := reNumber.FindStringSubmatch(s)
	if m == nil {
		return Quantity{}, doubtOf(s, notANumber, "")
	}
	num, bad := Number(m[1], style)
	if bad != nil {
		return Quantity{}, bad
	}
	if m[2] == "" {
		return Quantity{Num: num}, nil
	}
	unit, ok := UnitOf(m[2])
	if !ok {
		no := noUnit(m[2])
		return Quantity{}, doubtOf(s, no.Text, no.Hint)
	}
	return Quantity{Num: num, Unit: unit}, nil
}

// noUnit says what is wrong with the word behind a number: a letter o typed for a
// nought is the commonest.
func noUnit(word string) *Fault {
	if o := "oO\u043e\u041e"; strings.ContainsAny(word, o) && strings.Trim(word, o+"0123456789") == "" { // Latin or Cyrillic
		return fault("the letter o stands among the digits", "write a nought (0) if that was meant")
	}
	if strings.ContainsAny(word, "0123456789") {
		return fault("it looks like more than one number", "write one number in the cell")
	}
	return fault("\""+word+"\" behind the number is no unit of length that is known", "write the right figure with mm, cm, m, in or ft behind it; a weight or a number of pieces belongs in another column")
}

// fraction reads sign, whole, numerator, denominator, unit.
func fraction(m []string) (Quantity, *Fault) {
	v, bad := ratio(m[2], m[3], m[4])
	if bad != nil {
		return Quantity{}, bad
	}
	if m[1] == "-" {
		v = -v
	}
	unit := None
	if m[5] != "" {
		var ok bool
		if unit, ok = UnitOf(m[5]); !ok {
			return Quantity{}, noUnit(m[5])
		}
		if unit != Inch && unit != Foot {
			return Quantity{}, fault("a fraction with a metric unit is not read", "write a decimal number")
		}
	}
	return Quantity{Num: v, Unit: unit, Fraction: true}, nil
}

// ratio reads an inch fraction in its lowest terms, down to 64ths. Others, such as
// 6/8, more likely mean two numbers.
func ratio(whole, top, bottom string) (float64, *Fault) {
	n, _ := strconv.Atoi(top)
	d, _ := strconv.Atoi(bottom)
	if d != 2 && d != 4 && d != 8 && d != 16 && d != 32 && d != 64 || n >= d || n%2 == 0 {
		return 0, fault(top+"/"+bottom+" is no inch fraction in its lowest terms; it may mean two numbers", "write one decimal number")
	}
	v := float64(n) / float64(d)
	if whole != "" {
		w, _ := strconv.Atoi(whole)
		v += float64(w)
	}
	return v, nil
}

// feet reads feet with or without inches behind them; the result is in inches.
func feet(m []string, style Style) (Quantity, *Fault) {
	ft, bad := Number(m[2], style)
	if bad != nil {
		return Quantity{}, bad
	}
	inches, rest := 0.0, strings.TrimSpace(m[3])
	if rest != "" {
		in := reInches.FindStringSubmatch(rest)
		if in == nil {
			return Quantity{}, fault("what follows the feet is no number of inches", `write feet and inches as 4'-6 1/2"`)
		}
		if in[1] != "" {
			inches, bad = Number(in[1], style)
		} else {
			inches, bad = ratio(in[2], in[3], in[4])
		}
		if bad != nil {
			return Quantity{}, bad
		}
		if inches >= 12 {
			return Quantity{}, fault("it has 12 inches or more behind the feet", `write feet and inches as 4'-6 1/2"`)
		}
	}
	v := ft*12 + inches
	if m[1] == "-" {
		v = -v
	}
	return Quantity{Num: v, Unit: Inch}, nil
}
