package section

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"seamtally/tables"
)

// families are the words that stand before or behind the sizes, with the
// family that each means.
var families = map[string]string{
	"SHS": "box", "RHS": "box", "QHP": "box", "QRO": "box", "RRO": "box", "HSQ": "box", "BOX": "box", "PROFIL": "box", "ПРОФИЛЬ": "box", "ПРОФІЛЬ": "box",
	"CHS": "pipe", "PIPE": "pipe", "KHP": "pipe", "D": "round", "DIA": "round", "OD": "round",
	"TUBE": "tube", "ROHR": "tube", "TUBO": "tube", "RURA": "tube", "ТРУБА": "tube", "TRUBKA": "tube", "TRUBA": "tube", "HOLLOW": "tube", "VIERKANTROHR": "box", "QUADRATROHR": "box", "RECHTECKROHR": "box", "RUNDROHR": "pipe", "ROR": "tube", "RÖR": "tube", "BUIS": "tube", "KOKER": "tube",
	"L": "L", "EA": "L", "∟": "L", "RSA": "L", "UA": "L", "LNP": "L", "ANGLE": "L", "WINKEL": "L", "WINKELSTAHL": "L", "УГОЛОК": "L", "КУТНИК": "L", "KĄTOWNIK": "L", "ANGULAR": "L", "∠": "L",
	"IPE": "IPE", "HEA": "HEA", "HEB": "HEB", "HEM": "HEM", "HEAA": "HEAA", "UB": "UB", "UKB": "UB", "UC": "UC", "UKC": "UC", "IPBL": "HEA", "IPB": "HEB", "IPBV": "HEM",
	"UBP": "UBP", "UKBP": "UBP", "IPEA": "IPEA", "IPEAA": "IPEAA", "IPEO": "IPEO", "IPEV": "IPEV", "HEC": "HEC",
	"UPN": "UPN", "UNP": "UPN", "U": "UPN", "UPE": "UPE", "PFC": "PFC", "INP": "INP", "IPN": "INP",
	"FL": "flat", "FLT": "flat", "FLAT": "flat", "FLACH": "flat", "FLACHSTAHL": "flat", "FB": "flat", "PLETINA": "flat", "PŁASKOWNIK": "flat", "ПОЛОСА": "flat", "ШТАБА": "flat", "BAR": "flat",
	"PL": "plate", "PLT": "plate", "PLATE": "plate", "BL": "plate", "BLECH": "plate", "CHAPA": "plate", "BLACHA": "plate", "ЛИСТ": "plate",
	"RD": "rod", "ROUND": "rod", "ROD": "rod", "RUNDSTAHL": "rod", "VIERKANTSTAHL": "square", "CHANNEL": "channel", "КРУГ": "rod", "R": "rod",
	"SQ": "square", "SQUARE": "square", "VK": "square", "КВАДРАТ": "square", "□": "square",
	"HSS": "HSS", "W": "W", "C": "C", "MC": "MC", "M": "M", "S": "S", "HP": "HP", "WT": "WT", "MT": "MT", "ST": "ST", "T": "T", "TEE": "T",
}

// oneSize is a size as it stands in a designation: "100", "4.5", "3/8", "1-1/2".
const oneSize = `\d+(?:\.\d+)?(?:[- ]\d+/\d+|/\d+)?`

var (
	reStandard = regexp.MustCompile(`\b(?:BS|DIN|PN|UNE|NF|ДСТУ)?[ -]*EN[ -]*(10\d{3})(?:-\d)?(?::\d{4})?`)
	reSizes    = regexp.MustCompile(oneSize + `(?:(?: ?MM| ?(?:INCHES|INCH|IN)\.?)? *X *` + oneSize + `)*(?: ?MM)?`)
	reHE       = regexp.MustCompile(`\bHE ?(AA|[ABCM])? ?(\d+) ?(AA|[ABCM])?\b`)
	reIPE      = regexp.MustCompile(`\bIPE[- ]?(AA|[AOV])?[- ]?(\d+)[- ]?(AA|[AOV])?(?:$| )`)
	reOther    = regexp.MustCompile(`\bDIN[- ]*(?:EN[- ]*)?\d{3,5}(?:-\d)?|(?:ГОСТ|ДСТУ|GOST|DSTU)(?: ?Р)?[- ]*\d{4,5}(?:-\d+)?`)
	reDash     = regexp.MustCompile(`^[-–—−] ?(\d)`)
	reWords    = regexp.MustCompile(`[\p{L}∠∟□]+`)
	reGrade    = regexp.MustCompile(`\b(?:S ?(?:185|235|275|355|420|450|460|500|690|700)|A36|A500|A992|A572)(?:[ -]?(?:JR|J0|J2|J2H|J0H|JRH|K2|NH|NLH|MH|N|M|G\d)\b)*(?:\+[A-Z]+)?\b`)
	reTape     = regexp.MustCompile(`\bHE[- ]?(AA|[ABCM])[- ]?(\d)`)
	reFormed   = regexp.MustCompile(`\b(HF|CF)([RSC]HS)`)
	reComma    = regexp.MustCompile(`(\d)[,_](\d)`)
	rePoint    = regexp.MustCompile(`(^|[^\d.])\.(\d)`)
	reShort    = regexp.MustCompile(`(\pL+)\.(\d)`)
	reInches   = regexp.MustCompile(`["″”]|''|\d ?(?:INCHES|INCH|IN)\b|\b(?:INCHES|INCH|IN)$|\d/(?:2|4|8|16|32|64)\b`)
	reZero     = regexp.MustCompile(`(\d)\.0+(\D|$)`)
	reFeet     = regexp.MustCompile(`\d ?['′’](?:[^'′’]|$)`)
	reMetric   = regexp.MustCompile(`\d ?MM\b`)
	reLeading  = regexp.MustCompile(`(?:^|[^\d,.])\.\d`)
	reOneMark  = regexp.MustCompile(`\d ?(?:["″”]|''|(?:INCHES|INCH|IN)\b)|\d/\d`)
	reRest     = regexp.MustCompile(`\d`)
)

var plain = strings.NewReplacer("×", "X", "✕", "X", "*", "X", "Х", "X", "Ø", " D ", "⌀", " D ", "∅", " D ", "Φ", " D ", "''", " ", "\"", " ", "″", " ", "”", " ", "\u00a0", " ", "\u202f", " ", ";", " ", "\t", " ")

// written is a designation taken apart.
type written struct {
	text    string
	family  string
	sizes   []float64 // mm, or inches where a fraction or an inch family stands
	raw     string    // the sizes as written, without blanks
	inches  bool
	hot     bool
	cold    bool
	rest    bool   // figures beside the sizes, which nobody may drop
	mixed   bool   // sizes in inches and in millimetres
	strange string // a word that is not known
	name    string // of a section that is called by a name and not by sizes
}

// Parse reads a designation in one of its usual spellings. A hollow section is
// formed cold unless the text says HF or EN 10210. Errors: [Error], with the
// nearest published designations where there are some.
func Parse(text string, set *tables.Set) (Section, error) {
	w := takeApart(text)
	if len(w.sizes) == 0 {
		return Section{}, &Error{Text: text, Why: "it names no size", Near: likeWords(text, set)}
	}
	if w.rest {
		return Section{}, &Error{Text: text, Why: "it holds figures beside its sizes; write one section alone, and how many under quantity"}
	}
	if w.mixed {
		return Section{}, &Error{Text: text, Why: "it has sizes in inches and in millimetres; write all of them in one", Near: w.near(set)}
	}
	if reFeet.MatchString(text) {
		return Section{}, &Error{Text: text, Why: "it has a size in feet; write all of them in inches or in millimetres", Near: w.near(set)}
	}
	if w.strange != "" {
		return Section{}, &Error{Text: text, Why: "the word " + w.strange + " is not known; write SHS, RHS, CHS, L, IPE, HEA, UPN, FL or PL before the size, and nothing else", Near: w.near(set)}
	}
	s, why := w.make(set)
	if why != "" {
		return Section{}, &Error{Text: text, Why: why, Near: w.near(set)}
	}
	return s, nil
}

// Grade returns the grade of steel that stands in a designation; empty where none does.
func Grade(text string) string {
	return strings.TrimSpace(reGrade.FindString(plain.Replace(strings.ToUpper(text))))
}

// NamesShape tells whether a text without sizes names a shape of which width and thickness
// do not say enough, such as "SHS" or "angle cleat". A plate may be a square plate.
func NamesShape(text string) bool {
	names := false
	for _, word := range reWords.FindAllString(plain.Replace(strings.ToUpper(text)), -1) {
		switch f := families[word]; {
		case f == "plate" || f == "flat":
			return false
		case f != "" && (utf8.RuneCountInString(word) > 1 || f == "L" || f == "UPN"):
			names = true // the other letters may as well be a code
		}
	}
	return names
}

// Ungraded returns a designation without the grade of steel that stands in it.
func Ungraded(text string) string {
	grade := Grade(text)
	at := strings.Index(strings.ToUpper(text), grade)
	if grade == "" || at < 0 || at+len(grade) > len(text) {
		return text
	}
	return strings.TrimSpace(text[:at] + " " + text[at+len(grade):])
}

// wholeWords parts a word from its figure where a point shortens it: FL.80X8. Inches begin
// with a point as well, PL.375X8, and so does a size behind another, 6X.25.
func wholeWords(t, text string) string {
	if reInches.MatchString(strings.ToUpper(text)) {
		return t
	}
	return reShort.ReplaceAllStringFunc(t, func(at string) string {
		if strings.HasPrefix(at, "X.") {
			return at
		}
		return strings.Replace(at, ".", " ", 1)
	})
}

func takeApart(text string) written {
	t := plain.Replace(strings.ToUpper(strings.TrimSpace(text)))
	w := written{text: text}
	if m := reStandard.FindStringSubmatch(t); m != nil {
		w.hot, w.cold = m[1] == "10210", m[1] == "10219"
		t = reStandard.ReplaceAllString(t, " ")
	}
	t = reOther.ReplaceAllString(reGrade.ReplaceAllString(t, " "), " ")
	t = rePoint.ReplaceAllString(wholeWords(reComma.ReplaceAllString(t, "$1.$2"), text), "${1}0.$2")
	if w.named(t) {
		return w
	}
	t = slashed(dashed(t))
	t = reFormed.ReplaceAllString(t, "$1 $2")
	t = reTape.ReplaceAllString(t, "HE$1 $2")
	for _, h := range []struct {
		re     *regexp.Regexp
		family string
	}{{reHE, "HE"}, {reIPE, "IPE"}} {
		if m := h.re.FindStringSubmatch(t); m != nil && (m[1] == "") != (m[3] == "") {
			w.family = h.family + m[1] + m[3]
			w.addSizes(m[2])
			w.rest = reRest.MatchString(strings.Replace(t, m[0], " ", 1))
			return w
		}
	}
	at := reSizes.FindString(t)
	if at == "" {
		return w
	}
	others := strings.Replace(t, at, " ", 1)
	w.rest = reRest.MatchString(others)
	w.readWords(others)
	w.inches = w.inches || strings.ContainsAny(text, `"″”`) || strings.Contains(text, "''")
	w.addSizes(at)
	return w
}

// dashed reads the dash that drawings put before the sizes of a flat or plate.
func dashed(t string) string {
	sizes := strings.TrimSpace(t)
	switch {
	case !reDash.MatchString(sizes):
		return t
	case strings.Contains(sizes, "X"):
		return reDash.ReplaceAllString(sizes, "FL $1")
	}
	return reDash.ReplaceAllString(sizes, "PL $1")
}

// readWords takes in the words beside the sizes. One that is not known might say
// anything, so the section is refused rather than taken without it.
func (w *written) readWords(text string) {
	for _, word := range reWords.FindAllString(text, -1) {
		f, known := families[word]
		switch {
		case slices.Contains([]string{"HF", "HFS", "HOT"}, word):
			w.hot = true
		case slices.Contains([]string{"CF", "CFS", "COLD"}, word):
			w.cold = true
		case slices.Contains([]string{"IN", "INCH", "INCHES"}, word):
			w.inches = true
		case known:
			w.join(f, word)
		case !slices.Contains(harmless, word) && w.strange == "":
			w.strange = word
		}
	}
}

// together are families that two words say: a square tube is a box, a round bar a rod.
var together = map[[2]string]string{
	{"square", "tube"}: "box", {"square", "box"}: "box", {"tube", "box"}: "box",
	{"rod", "tube"}: "pipe", {"rod", "pipe"}: "pipe", {"round", "pipe"}: "pipe", {"round", "tube"}: "pipe", {"tube", "pipe"}: "pipe",
	{"rod", "flat"}: "rod", {"round", "flat"}: "rod", {"square", "flat"}: "square", {"round", "rod"}: "rod", {"flat", "plate"}: "flat",
	{"channel", "C"}: "C", {"channel", "MC"}: "MC", {"channel", "UPN"}: "UPN", {"channel", "UPE"}: "UPE", {"channel", "PFC"}: "PFC",
}

// join takes in a word that says a family beside one that is known. Two that say
// different things make the word strange.
func (w *written) join(family, word string) {
	if w.family == "" || w.family == family {
		w.family = family
		return
	}
	both, ok := together[[2]string{w.family, family}]
	if !ok {
		both, ok = together[[2]string{family, w.family}]
	}
	if ok {
		w.family = both
	} else if w.strange == "" {
		w.strange = word
	}
}

// harmless are words that say nothing which the sizes do not.
var harmless = []string{"MM", "SECTION", "SECTIONS", "STEEL", "X", "CIRCULAR", "RECTANGULAR", "FORMED", "FINISHED", "EQUAL", "UNEQUAL", "UNI", "GOST", "ГОСТ", "РАВНОПОЛОЧНЫЙ", "НЕРАВНОПОЛОЧНЫЙ", "ПРОФИЛЬНАЯ", "СТАЛЬНОЙ", "СТАЛЬНАЯ"}
