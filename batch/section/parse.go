package section

import (
	"math"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// families are the words that stand before or behind the sizes, with the
// family that each means.
var families = map[string]string{
	"SHS": "box", "RHS": "box", "QHP": "box", "QRO": "box", "RRO": "box", "HSQ": "box", "BOX": "box", "PROFIL": "box", "ПРОФИЛЬ": "box", "ПРОФІЛЬ": "box",
	"CHS": "round", "PIPE": "round", "D": "round", "DIA": "round", "OD": "round", "KHP": "round",
	"TUBE": "tube", "ROHR": "tube", "TUBO": "tube", "RURA": "tube", "ТРУБА": "tube", "TRUBKA": "tube", "TRUBA": "tube", "HOLLOW": "tube",
	"L": "L", "EA": "L", "UA": "L", "LNP": "L", "ANGLE": "L", "WINKEL": "L", "УГОЛОК": "L", "КУТНИК": "L", "KĄTOWNIK": "L", "ANGULAR": "L", "∠": "L",
	"IPE": "IPE", "HEA": "HEA", "HEB": "HEB", "HEM": "HEM", "IPBL": "HEA", "IPB": "HEB", "IPBV": "HEM",
	"UPN": "UPN", "UNP": "UPN", "U": "UPN", "UPE": "UPE", "PFC": "PFC", "INP": "INP", "IPN": "INP",
	"FL": "flat", "FLT": "flat", "FLAT": "flat", "FLACH": "flat", "PLETINA": "flat", "PŁASKOWNIK": "flat", "ПОЛОСА": "flat", "ШТАБА": "flat", "BAR": "flat",
	"PL": "plate", "PLT": "plate", "PLATE": "plate", "BL": "plate", "BLECH": "plate", "CHAPA": "plate", "BLACHA": "plate", "ЛИСТ": "plate",
	"RD": "rod", "ROUND": "rod", "ROD": "rod", "КРУГ": "rod", "R": "rod",
	"SQ": "square", "SQUARE": "square", "VK": "square", "КВАДРАТ": "square", "□": "square",
	"HSS": "HSS", "W": "W", "C": "C",
}

var (
	reStandard = regexp.MustCompile(`\b(?:BS|DIN|PN|UNE|NF|ДСТУ)?[ -]*EN[ -]*(10\d{3})(?:-\d)?(?::\d{4})?`)
	reSizes    = regexp.MustCompile(`\d+(?:\.\d+)?(?:[- ]\d+/\d+|/\d+)?(?: ?MM)?(?: ?X ?\d+(?:\.\d+)?(?:[- ]\d+/\d+|/\d+)?(?: ?MM)?)*`)
	reHE       = regexp.MustCompile(`\bHE ?([ABM])? ?(\d+) ?([ABM])?\b`)
	reWords    = regexp.MustCompile(`[\p{L}∠□]+`)
	reGrade    = regexp.MustCompile(`\b(?:S ?(?:185|235|275|355|420|450|460|500|690|700)|A36|A500|A992|A572)(?:[ -]?(?:JR|J0|J2|J2H|J0H|JRH|K2|NH|NLH|MH|N|M|G\d)\b)*(?:\+[A-Z]+)?\b`)
	reTape     = regexp.MustCompile(`\bHE[- ]?([ABM])[- ]?(\d)`)
	reFormed   = regexp.MustCompile(`\b(HF|CF)([RSC]HS)`)
	reComma    = regexp.MustCompile(`(\d)[,_](\d)`)
	reZero     = regexp.MustCompile(`(\d)\.0+(\D|$)`)
	reRest     = regexp.MustCompile(`\d`)
)

var plain = strings.NewReplacer("×", "X", "✕", "X", "*", "X", "Х", "X", "Ø", " D ", "⌀", " D ", "∅", " D ", "Φ", " D ", "\u00a0", " ", "\u202f", " ", ";", " ", "\t", " ")

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
	strange string // a word that is not known
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
		return Section{}, &Error{Text: text, Why: "it holds figures beside its sizes", Near: w.near(set)}
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

func takeApart(text string) written {
	t := plain.Replace(strings.ToUpper(strings.TrimSpace(text)))
	w := written{text: text}
	if m := reStandard.FindStringSubmatch(t); m != nil {
		w.hot, w.cold = m[1] == "10210", m[1] == "10219"
		t = reStandard.ReplaceAllString(t, " ")
	}
	t = reGrade.ReplaceAllString(t, " ")
	t = reComma.ReplaceAllString(t, "$1.$2")
	t = reFormed.ReplaceAllString(t, "$1 $2")
	t = reTape.ReplaceAllString(t, "HE$1 $2")
	if m := reHE.FindStringSubmatch(t); m != nil && (m[1] == "") != (m[3] == "") {
		w.family = "HE" + m[1] + m[3]
		w.addSizes(m[2])
		w.rest = reRest.MatchString(strings.Replace(t, m[0], " ", 1))
		return w
	}
	at := reSizes.FindString(t)
	if at == "" {
		return w
	}
	others := strings.Replace(t, at, " ", 1)
	w.rest = reRest.MatchString(others)
	w.readWords(others)
	w.inches = w.inches || strings.Contains(text, `"`)
	w.addSizes(at)
	return w
}

// readWords takes in the words beside the sizes. One that is not known might say
// anything, so the section is refused rather than taken without it.
func (w *written) readWords(text string) {
	words := reWords.FindAllString(text, -1)
	for _, word := range words {
		f, known := families[word]
		switch {
		case slices.Contains([]string{"HF", "HFS", "HOT"}, word):
			w.hot = true
		case slices.Contains([]string{"CF", "CFS", "COLD"}, word):
			w.cold = true
		case slices.Contains([]string{"IN", "INCH", "INCHES"}, word):
			w.inches = true
		case known && w.family == "":
			w.family = f
		case !known && !slices.Contains(harmless, word) && w.strange == "":
			w.strange = word
		}
	}
	if slices.Contains(words, "HOLLOW") {
		w.family = "tube"
		if slices.Contains(words, "SQUARE") {
			w.family = "box"
		}
	}
}

// harmless are words that say nothing which the sizes do not.
var harmless = []string{"MM", "SECTION", "SECTIONS", "STEEL", "X", "CIRCULAR", "RECTANGULAR", "FORMED", "FINISHED", "EQUAL", "UNEQUAL", "UNI", "GOST", "ГОСТ"}

// addSizes reads "100X50X4" or "4X4X1/4".
func (w *written) addSizes(at string) {
	at = strings.ReplaceAll(at, "MM", "")
	at = reZero.ReplaceAllString(at, "$1$2")
	w.raw = strings.ReplaceAll(at, " ", "")
	for part := range strings.SplitSeq(at, "X") {
		v, fraction := sizeOf(strings.TrimSpace(part))
		w.inches = w.inches || fraction
		w.sizes = append(w.sizes, v)
	}
	w.inches = w.inches || slices.Contains([]string{"HSS", "W", "C"}, w.family)
}

// sizeOf reads "4", "2.5", "3/8", "1-1/2" or "1 1/2".
func sizeOf(text string) (v float64, fraction bool) {
	whole := 0.0
	if head, tail, mixed := strings.Cut(strings.ReplaceAll(text, "-", " "), " "); mixed {
		whole, _ = strconv.ParseFloat(head, 64)
		text = tail
	}
	if top, bottom, ok := strings.Cut(text, "/"); ok {
		a, _ := strconv.ParseFloat(top, 64)
		b, _ := strconv.ParseFloat(bottom, 64)
		if b == 0 {
			return 0, true
		}
		return whole + a/b, true
	}
	v, _ = strconv.ParseFloat(text, 64)
	return whole + v, false
}

// make works the section out, or says why it is none.
func (w *written) make(set *tables.Set) (Section, string) {
	n := w.sizes
	mm := func(v float64) float64 {
		if w.inches {
			return v * 25.4
		}
		return v
	}
	switch w.family {
	case "IPE", "HEA", "HEB", "HEM", "UPN", "UPE", "PFC", "L", "W", "C", "INP":
		return w.fromTable(set)
	case "HSS":
		if s, why := w.fromTable(set); why == "" {
			return s, ""
		}
		s, why := said(round(mm(n[0]), mm(at(n, 1)), true))
		if len(n) != 2 {
			s, why = w.three(func(a, b, c float64) (Section, error) { return box(mm(a), mm(b), mm(c), true) })
		}
		s.Designation, s.Family, s.Source = "HSS"+w.raw, "HSS", "geometry on the nominal wall, corner radii of EN 10219-2"
		return s, why
	case "box":
		if len(n) == 2 {
			n = []float64{n[0], n[0], n[1]}
		}
		w.sizes = n
		return w.three(func(a, b, c float64) (Section, error) { return box(mm(a), mm(b), mm(c), !w.hot) })
	case "tube", "round":
		switch {
		case len(n) == 3 && w.family == "tube":
			return w.three(func(a, b, c float64) (Section, error) { return box(mm(a), mm(b), mm(c), !w.hot) })
		case len(n) == 2:
			return said(round(mm(n[0]), mm(n[1]), !w.hot))
		case len(n) == 1 && w.family == "round":
			return said(bar(mm(n[0]), false))
		}
		return Section{}, "a tube takes its diameter and wall, or height, width and wall"
	case "rod":
		return said(bar(mm(n[0]), false))
	case "square":
		return said(bar(mm(n[0]), true))
	case "flat":
		if len(n) == 2 {
			return said(flat(mm(n[0]), mm(n[1])))
		}
		return Section{}, "a flat takes its width and thickness"
	case "plate":
		return w.plate(mm)
	}
	return w.bare(mm)
}

// plate reads a plate: its thickness alone, or with its width.
func (w *written) plate(mm func(float64) float64) (Section, string) {
	if len(w.sizes) > 2 {
		return Section{}, "a plate takes its thickness and width; its length is no part of the section"
	}
	if len(w.sizes) > 1 {
		s, why := said(flat(mm(w.sizes[0]), mm(w.sizes[1])))
		s.Plate = true
		return s, why
	}
	s, why := said(flat(1000, mm(w.sizes[0])))
	s.Plate = true
	s.Designation, s.Family, s.B, s.Perimeter, s.Area, s.KgM = "plate "+sizeText(mm(w.sizes[0])), "plate", 0, 0, 0, 0
	return s, why
}

// bare reads sizes without a word: two are a flat, or a round tube where the first
// has decimals as the diameters of tubes have.
func (w *written) bare(mm func(float64) float64) (Section, string) {
	switch n := w.sizes; {
	case len(n) == 2 && n[0] != math.Trunc(n[0]) && !w.inches:
		return said(round(n[0], n[1], !w.hot))
	case len(n) == 2:
		return said(flat(mm(n[0]), mm(n[1])))
	case len(n) == 3 && (w.hot || w.cold):
		return said(box(mm(n[0]), mm(n[1]), mm(n[2]), !w.hot))
	case len(n) == 3:
		return Section{}, "three sizes may be a hollow section or an angle; write SHS, RHS or L before them"
	}
	return Section{}, "the kind of section is missing; write SHS, RHS, CHS, L, IPE, HEA, UPN, FL or PL before the size"
}

func (w *written) three(make func(a, b, c float64) (Section, error)) (Section, string) {
	if len(w.sizes) != 3 {
		return Section{}, "it takes height, width and wall"
	}
	return said(make(w.sizes[0], w.sizes[1], w.sizes[2]))
}

func said(s Section, err error) (Section, string) {
	if err != nil {
		return Section{}, err.Error()
	}
	return s, ""
}

// fromTable finds a rolled section.
func (w *written) fromTable(set *tables.Set) (Section, string) {
	raw := w.raw
	if w.family == "L" && len(w.sizes) == 2 {
		head, tail, _ := strings.Cut(raw, "X")
		raw = head + "X" + head + "X" + tail
	}
	for i := range set.Sections {
		row := &set.Sections[i]
		if row.Family != w.family {
			continue
		}
		own := squeezed(row.Designation)
		if own == w.family+raw || row.Family == "L" && own == "L"+turned(raw) || row.Family == "PFC" && strings.HasPrefix(own, w.family+raw+"X") {
			return rolled(row), ""
		}
	}
	return Section{}, "its standard's table holds no such size"
}

// turned swaps the first two sizes: 75x100x10 is 100x75x10.
func turned(raw string) string {
	parts := strings.Split(raw, "X")
	if len(parts) == 3 {
		parts[0], parts[1] = parts[1], parts[0]
	}
	return strings.Join(parts, "X")
}

func squeezed(designation string) string {
	return strings.ToUpper(strings.ReplaceAll(designation, " ", ""))
}

// mostNear is how many near designations an error names.
const mostNear = 3

// near returns the published designations of the same family with the nearest sizes.
func (w *written) near(set *tables.Set) []string {
	type candidate struct {
		name string
		off  float64
	}
	var list []candidate
	sizes := w.sizes
	if w.family == "L" && len(sizes) == 2 {
		sizes = []float64{sizes[0], sizes[0], sizes[1]}
	}
	for i := range set.Sections {
		row := &set.Sections[i]
		if row.Family != w.family {
			continue
		}
		other := takeApart(row.Designation)
		off := 0.0
		for k := range max(len(sizes), len(other.sizes)) {
			a, b := at(sizes, k), at(other.sizes, k)
			off += math.Abs(a-b) / math.Max(math.Max(a, b), 1e-9)
		}
		list = append(list, candidate{row.Designation, off})
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].off < list[j].off })
	var out []string
	for _, c := range list[:min(len(list), mostNear)] {
		out = append(out, c.name)
	}
	return out
}

// at returns a size, the first where it is not given.
func at(sizes []float64, k int) float64 {
	if k < len(sizes) {
		return sizes[k]
	}
	if len(sizes) == 0 {
		return 0
	}
	return sizes[0]
}

// likeWords returns the designation that a text without sizes is most like.
func likeWords(text string, set *tables.Set) []string {
	var all []string
	for i := range set.Sections {
		all = append(all, set.Sections[i].Designation)
	}
	if near := finding.Nearest(text, all); near != "" {
		return []string{near}
	}
	return nil
}

func join(list []string) string { return strings.Join(list, ", ") }
