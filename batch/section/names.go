package section

import (
	"regexp"
	"slices"
	"strings"

	"seamtally/tables"
)

// Some sections are called by a number that is no size: American pipes by a nominal
// size and a weight class, channels and beams of GOST by a number and a letter.

var (
	reClass  = regexp.MustCompile(`(XXS|XS|STD|SCH(?:ED(?:ULE)?)?\.? ?(?:40|80))(?:$|[ "])`)
	reNumber = regexp.MustCompile(`(ШВЕЛЛЕР|ШВЕЛЕР|ДВУТАВР|ДВОТАВР|GOST) ?(I)?[ №N]*(\d+(?:\.\d+)?) ?([АAПPУYU]{0,2})(?:$|[^\p{L}\d])`)
	latin    = strings.NewReplacer("A", "А", "P", "П", "Y", "У", "U", "У")
)

// named tells whether the text calls a section by a name, and takes it in.
func (w *written) named(t string) bool {
	if m := reNumber.FindStringSubmatch(t); m != nil {
		return w.gost(m, strings.Replace(t, m[0], " ", 1))
	}
	m := reClass.FindStringSubmatch(t)
	if m == nil {
		return false
	}
	rest := strings.Replace(t, m[1], " ", 1)
	size := reSizes.FindString(rest)
	words := reWords.FindAllString(strings.Replace(rest, size, " ", 1), -1)
	if size == "" || strings.Contains(size, "X") || slices.ContainsFunc(words, func(s string) bool { return !slices.Contains(pipeWords, s) }) {
		return false
	}
	w.family, w.inches = "PIPE", true
	w.addSizes(size)
	w.name = strings.ReplaceAll(strings.TrimSpace(size), " ", "-") + classOf(m[1], w.sizes[0])
	w.rest = reRest.MatchString(strings.Replace(rest, size, " ", 1))
	return true
}

// pipeWords may stand beside a nominal size and a class.
var pipeWords = []string{"PIPE", "NPS", "TUBE", "IN", "INCH", "STEEL", "ROUND"}

// classOf brings schedules to the weight class of the same wall: schedule 40 is the
// standard wall to 10 inches, schedule 80 the extra strong one to 8. Source: American
// pipe tables. Basis: memory.
func classOf(class string, size float64) string {
	switch {
	case strings.HasSuffix(class, "40") && size <= 10:
		return "STD"
	case strings.HasSuffix(class, "80") && size <= 8:
		return "XS"
	}
	return class
}

// gost takes in a channel or beam by its number. A channel without its letter is the
// one with tapered flanges; both weigh the same.
func (w *written) gost(m []string, rest string) bool {
	letters := latin.Replace(m[4])
	w.addSizes(m[3])
	w.rest = reRest.MatchString(rest)
	switch {
	case m[2] == "I" || strings.HasPrefix(m[1], "ДВ"):
		w.family, w.name = "GOSTI", "I"+m[3]+letters
	case strings.HasSuffix(letters, "П"):
		w.family, w.name = "GOSTП", m[3]+letters
	default:
		w.family, w.name = "GOSTУ", m[3]+strings.TrimSuffix(letters, "У")+"У"
	}
	return true
}

// byName finds a section of the table by its name.
func (w *written) byName(set *tables.Set) (Section, string) {
	want := "GOST " + w.name
	if w.family == "PIPE" {
		want = "Pipe" + w.name
	}
	for i := range set.Sections {
		if row := &set.Sections[i]; row.Family == w.family && strings.EqualFold(row.Designation, want) {
			return rolled(row), ""
		}
	}
	return Section{}, "its standard's table holds no such size"
}
