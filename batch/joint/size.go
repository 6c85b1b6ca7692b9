package joint

import (
	"regexp"
	"strings"

	"seamtally/batch/joint/measure"
	"seamtally/batch/units"
)

var (
	reSizePrefix = regexp.MustCompile(`^(?i)(cfw|fw|fillet|pjp|leg|throat|z|a|s|k|к|△|◺|⊿)\s*[=:]?\s*(.+)$`)
	reTwoSizes   = regexp.MustCompile(`(?i)(?:^|\P{L})[azsk] ?\d.*\P{L}[azsk] ?\d`)
	reSizeSuffix = regexp.MustCompile(`^(?i)(.+?)\s*(a|z|fw|cfw|fillet|leg|throat)$`)
	reUnequal    = regexp.MustCompile(`^(?i)([^x*]*[\d½¼¾⅛⅜⅝⅞][^x*]*?)\s*[x*]\s*(.+)$`) // the x of "approx 5" stands behind no figure
	reBracket    = regexp.MustCompile(`^\((.+)\)$`)
)

// sizeMeaning says what the letters about a size mean.
func sizeMeaning(letters string) SizeKind {
	switch strings.ToLower(letters) {
	case "a", "throat":
		return Throat
	case "s", "pjp":
		return Penetration
	}
	return Leg
}

// sizeOf reads a weld size. bare is the unit of a bare number, header what the
// column says a bare number is. Told is false where the meaning is neither in the
// cell nor in the header.
func sizeOf(text string, header string, bare measure.Unit, style measure.Style) (size Size, told bool, bad *measure.Fault) {
	size.Text = text
	t := measure.Plain(text)
	means, stated := SizeKind(""), false
	switch {
	case reBracket.MatchString(t):
		means, stated, t = Penetration, true, reBracket.FindStringSubmatch(t)[1]
	case reSizePrefix.MatchString(t):
		m := reSizePrefix.FindStringSubmatch(t)
		means, stated, t = sizeMeaning(m[1]), true, m[2]
	case reSizeSuffix.MatchString(t):
		m := reSizeSuffix.FindStringSubmatch(t)
		means, stated, t = sizeMeaning(m[2]), true, m[1]
	}
	first, second := t, ""
	if m := reUnequal.FindStringSubmatch(t); m != nil {
		first, second = m[1], m[2]
		if !stated {
			means, stated = Leg, true
		}
		if means != Leg {
			return size, false, &measure.Fault{Text: "two sizes are read only for the legs of an unequal fillet", Hint: "write the legs as 6x8, or one throat"}
		}
		if p := reSizePrefix.FindStringSubmatch(second); p != nil {
			second = p[2]
		}
	}
	a, bad := millimetres(first, bare, style)
	if bad != nil && stated {
		if vague := measure.Vague(text); vague != nil {
			bad = vague // the a of "approx 5" is no throat
		}
	}
	if bad != nil && reTwoSizes.MatchString(text) {
		bad = &measure.Fault{Text: "it names more than one size", Hint: "write the one that counts: a leg such as z6, or a throat such as a4"}
	}
	if bad != nil {
		return size, false, bad
	}
	size.A = units.MM(a)
	if second != "" {
		b, bad := millimetres(second, bare, style)
		if bad != nil {
			return size, false, bad
		}
		if b != a {
			size.B = units.MM(b)
		}
	}
	if !stated && (header == string(Leg) || header == string(Throat) || header == string(Penetration)) {
		means, stated = SizeKind(header), true
	}
	size.Means = means
	return size, stated, nil
}

// ownName is what a cell says of its column once more: "t = 10", "PL10", "10 thk",
// "L=500".
var ownName = map[string][]*regexp.Regexp{
	"t1":     {reOwnThick, reThick},
	"t2":     {reOwnThick, reThick},
	"length": {regexp.MustCompile(`^(?i)(?:l|lg|len|length)\.? ?[=:] ?(.+)$`)},
}

var (
	reOwnThick = regexp.MustCompile(`^(?i)(?:t[12] ?[=:]|t ?[=:]?|thk\.? ?[=:]?|pl\.?) ?(\d.*)$`)
	reThick    = regexp.MustCompile(`^(?i)(.*\d(?: ?[a-z]{1,2}| ?")?) ?(?:thk|thick|plate|pl)\.?$`)
)

func withoutOwnName(key, text string) string {
	for _, re := range ownName[key] {
		if m := re.FindStringSubmatch(measure.Plain(text)); m != nil {
			return m[1]
		}
	}
	return text
}

// millimetres reads one length. An inch fraction without a unit is in inches
// unless the column says millimetres.
func millimetres(text string, bare measure.Unit, style measure.Style) (float64, *measure.Fault) {
	q, bad := measure.Parse(text, style)
	if bad != nil {
		return 0, bad
	}
	if q.Unit == measure.Deg {
		return 0, &measure.Fault{Text: "it is an angle, not a length"}
	}
	if q.Fraction && q.Unit == measure.None {
		if bare == measure.MM || bare == measure.CM || bare == measure.M {
			return 0, &measure.Fault{Text: "an inch fraction stands in a column of " + string(bare), Hint: `write the inch mark (1/4") or millimetres`}
		}
		bare = measure.Inch
	}
	if bare == measure.None {
		bare = measure.MM
	}
	return q.MM(bare), nil
}
