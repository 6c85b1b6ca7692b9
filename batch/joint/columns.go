package joint

import (
	"fmt"
	"sort"
	"strings"

	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
)

// column is a column of the list as it will be read.
type column struct {
	Column
	means string // sizes
	unit  measure.Unit
	near  string // the spelling meant, where the header has a slip of the pen
	rival string // the key that another column already gives
	total bool   // a length that its header calls a total
	guess bool   // a length by its unit alone
	blank bool   // no row below has anything in it
	named bool   // its values name the joints, whatever its header says
	torn  bool   // its brackets contradict its words
}

// assign rules what every column is, from its header, its neighbours and its values.
func (s *spellings) assign(spot headerSpot, body []list.Row) []column {
	var cols []column
	order := make([]int, 0, len(spot.texts))
	for col := range spot.texts {
		order = append(order, col)
	}
	sort.Ints(order)
	for _, col := range order {
		text := spot.texts[col]
		c := column{Column: Column{Col: col, Header: text}}
		if bare, unit := splitUnit(text); unit != "" && bare != "" {
			c.unit, c.Unit = unit, string(unit)
		}
		all := s.header(text)
		if near := s.near(text); all == nil && near != "" {
			all, c.near = s.headers[near], near
		}
		texts := values(body, col)
		c.blank = len(texts) == 0
		c.choose(s, all, texts)
		c.nothingButUnit(text)
		c.guess = c.Key == "length" && s.byUnitAlone(text)
		if c.torn = c.Key == "" && s.torn(text); c.torn {
			c.Why = "not understood: its brackets name another column than its words"
		}
		cols = append(cols, c)
	}
	s.neighbours(cols)
	s.contest(cols, body)
	for i := range cols {
		cols[i].total = cols[i].Key == "length" && s.totalWord(cols[i].Header)
	}
	settle(cols, s.dialect.name)
	s.nameless(cols, body)
	return cols
}

// nothingButUnit takes the unit of a column of lengths whose header is the unit and no
// more: "Feet", "Metros". The values have it as well as those under "Length (ft)".
func (c *column) nothingButUnit(header string) {
	if u, ok := measure.UnitOf(strings.TrimSpace(header)); ok && c.unit == measure.None && isLength[c.Key] && u != measure.Deg {
		c.unit, c.Unit = u, string(u)
	}
}

// neighbours rules on a bare s: beside another column of sizes it is a thickness.
func (s *spellings) neighbours(cols []column) {
	sizes := 0
	for i := range cols {
		if cols[i].Key == "size" {
			sizes++
		}
	}
	for i := range cols {
		c := &cols[i]
		if bare, _ := splitUnit(c.Header); c.Key == "size" && sizes > 1 && fold(bare) == "s" && !hasKey(cols, "t1") {
			c.Key, c.means, c.Why = "t1", "", "beside another column of sizes, s is the thickness"
			sizes--
		}
	}
}

// contest settles, for a kind of list that can tell its own values, which of several
// columns gives a key: the one whose values fit it best.
func (s *spellings) contest(cols []column, body []list.Row) {
	if s.dialect.fits == nil {
		return
	}
	best, fit := map[string]int{}, map[string]float64{}
	for i := range cols {
		key := cols[i].Key
		if _, own := s.dialect.fits(key, ""); !own {
			continue
		}
		f := s.fits(key, values(body, cols[i].Col))
		if j, taken := best[key]; taken && f > fit[key] {
			cols[j].Key, cols[j].Why = "", fmt.Sprintf("column %q fits %q better: passed through", cols[i].Header, key)
			best[key], fit[key] = i, f
		} else if !taken {
			best[key], fit[key] = i, f
		}
	}
}

// values returns up to 200 texts of a column.
func values(body []list.Row, col int) []string {
	var out []string
	for _, row := range body {
		if len(out) == 200 {
			break
		}
		if c := row.At(col); c.Kind != list.Blank {
			out = append(out, strings.TrimSpace(c.Text))
		}
	}
	return out
}

// choose takes the only meaning, or of several the one that the values fit best.
func (c *column) choose(s *spellings, all []meaning, texts []string) {
	switch len(all) {
	case 0:
		c.Why = "not known: passed through"
		return
	case 1:
		c.take(all[0], s.knownAs(c.Header))
		return
	}
	best, fit := all[0], -1.0
	for _, m := range all {
		if f := s.fits(m.key, texts); f > fit {
			best, fit = m, f
		}
	}
	for _, m := range all { // the same key with two meanings of a size: either
		if m.key == best.key && m.means != best.means {
			best.means = "either"
		}
	}
	c.take(best, fmt.Sprintf("several meanings; the values fit %q", best.key))
}

// knownAs says whether the table has a header, or the words of it were put together.
func (s *spellings) knownAs(header string) string {
	bare, _ := splitUnit(header)
	if s.headers[fold(header)] != nil || s.headers[fold(bare)] != nil {
		return "known header"
	}
	return "understood from its words"
}

func (c *column) take(m meaning, why string) {
	if c.near != "" {
		why = "read as \"" + c.near + "\", one slip away"
	}
	c.Key, c.means, c.Why = m.key, m.means, why
	if c.Key == "size" && c.means != "" && c.means != "either" {
		c.Why += "; " + c.means
	}
}

// fits returns the share of a column's values that could be values of a key.
func (s *spellings) fits(key string, texts []string) float64 {
	if len(texts) == 0 {
		return 0
	}
	seen := map[string]bool{}
	fit := 0.0
	for _, t := range texts {
		v, bad := measure.Parse(t, measure.Style{})
		number := bad == nil
		ok := false
		switch key {
		case "position", "kind", "where", "sides":
			_, ok = s.word(key, t)
		case "quality":
			ok = qualityOf(t) != ""
		case "gap", "root_face":
			ok = number && v.Num < 8
		case "size":
			ok = number && v.Num > 2 && v.Num < 40 || strings.ContainsAny(t, "azk") && strings.ContainsAny(t, "0123456789")
		case "t1", "t2", "angle", "depth", "radius", "length":
			ok = number
		case "qty":
			ok = number && v.Num == float64(int(v.Num))
		case "stitch":
			ok = !number && strings.ContainsAny(t, "-(@/xX×")
		case "mark":
			ok = !seen[t]
			seen[t] = true
		default:
			ok = !number
			if s.dialect.fits != nil {
				if own, known := s.dialect.fits(key, t); known {
					ok = own
				}
			}
		}
		if ok {
			fit++
		}
	}
	share := fit / float64(len(texts))
	if key == "mark" || key == "note" || key == "assembly" || key == "drawing" {
		share *= 0.9 // nearly everything fits these: a closer meaning wins
	}
	return share
}

// settle rules on keys that several columns claim: feet and inches are added, a
// leg and a throat column live side by side, a row counter gives way to a mark.
func settle(cols []column, name string) {
	first := map[string]int{}
	for i := range cols {
		c := &cols[i]
		if c.Key == "" {
			continue
		}
		j, taken := first[c.Key]
		switch {
		case !taken:
			first[c.Key] = i
		case cols[j].blank && !c.blank:
			cols[j].Key, cols[j].Why = "", fmt.Sprintf("nothing stands in it; column %q gives this", c.Header)
			first[c.Key] = i
		case c.Key == "size" && cols[j].means != c.means:
		case c.Key == "length" && cols[j].guess && !c.guess:
			cols[j].rival, cols[j].Key, cols[j].Why = "length", "", fmt.Sprintf("not understood: column %q says the length", c.Header)
			first["length"] = i
		case c.Key == "length" && c.guess && !cols[j].guess:
			c.rival, c.Key, c.Why = "length", "", fmt.Sprintf("not understood: column %q says the length", cols[j].Header)
		case c.Key == "length" && cols[j].unit != c.unit && isFeetInches(cols[j].unit) && isFeetInches(c.unit):
			c.Why += "; added to column " + cols[j].Header
		case c.Key == name && counter(cols[j].Header) && !counter(c.Header):
			cols[j].Key, cols[j].Why = "", "a row counter: another column has the "+name
			first[name] = i
		case c.Key == "t1" && first["t2"] == 0 && !hasKey(cols, "t2"):
			c.Key, c.Why = "t2", "a second thickness column"
			first["t2"] = i
		case c.Key == "length" && cols[j].total && !c.total:
			cols[j].rival, cols[j].Key, cols[j].Why = "length", "", fmt.Sprintf("a total; column %q gives the length of one joint", c.Header)
			first["length"] = i
		default:
			c.rival = c.Key
			c.Key, c.Why = "", fmt.Sprintf("column %q already gives this: passed through", cols[j].Header)
		}
	}
}

func hasKey(cols []column, key string) bool {
	for i := range cols {
		if cols[i].Key == key {
			return true
		}
	}
	return false
}

func isFeetInches(u measure.Unit) bool { return u == measure.Foot || u == measure.Inch }

// counter tells whether a header is one that lists use for plain row numbers.
func counter(header string) bool {
	switch fold(header) {
	case "no", "nr", "#", "", "s nr", "lp", "l p", "n", "pos", "item", "sl no", "lfd nr", "п п", "n п п", "№":
		return true
	}
	return false
}

// totalWord tells whether a header has a word for a total among its words.
func (s *spellings) totalWord(header string) bool {
	for _, w := range strings.Fields(fold(header)) {
		if _, ok := s.words["total"][w]; ok || w == "ges" || w == "gesamtlange" || w == "gesamtnahtlange" {
			return true
		}
	}
	return false
}
