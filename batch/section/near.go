package section

import (
	"math"
	"slices"
	"sort"
	"strings"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// wholeSizes are the sizes as the tables have them: both legs of an equal angle.
func (w *written) wholeSizes() []float64 {
	if w.family == "L" && len(w.sizes) == 2 {
		return []float64{w.sizes[0], w.sizes[0], w.sizes[1]}
	}
	return w.sizes
}

// fromTable finds a rolled section.
func (w *written) fromTable(set *tables.Set) (Section, string) {
	sizes := w.wholeSizes()
	for i := range set.Sections {
		row := &set.Sections[i]
		if row.Family != w.family {
			continue
		}
		own := ownSizes(row.Designation)
		switch {
		case slices.Equal(own, sizes), row.Family == "L" && len(sizes) == 3 && slices.Equal(own, []float64{sizes[1], sizes[0], sizes[2]}):
			if w.inches && strings.HasPrefix(row.Designation, "L ") {
				continue // the table's own is in millimetres
			}
			return rolled(row), ""
		case row.Family == "PFC" && len(sizes) == 2 && slices.Equal(own[:2], sizes):
			return rolled(row), ""
		}
	}
	return Section{}, "its standard's table holds no such size"
}

// ownSizes returns the sizes in a designation of the table.
func ownSizes(designation string) []float64 {
	var out []float64
	for part := range strings.SplitSeq(strings.TrimLeft(strings.ToUpper(designation), "ABCDEFGHIJKLMNOPQRSTUVW "), "X") {
		v, _ := sizeOf(strings.TrimSpace(part))
		out = append(out, v)
	}
	return out
}

// mostNear is how many near designations an error names.
const mostNear = 3

// near returns the published designations of the same family with the nearest sizes.
func (w *written) near(set *tables.Set) []string {
	type candidate struct {
		name string
		off  float64
	}
	if whole, half := strings.CutSuffix(w.family, "T"); half && whole != "" && len(w.sizes) == 2 {
		return w.nearTees(whole, set)
	}
	var list []candidate
	sizes := w.wholeSizes()
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

// nearTees names the halves of the I sections that are nearest to twice the sizes.
func (w *written) nearTees(whole string, set *tables.Set) []string {
	twice := written{family: whole, sizes: []float64{2 * w.sizes[0], 2 * w.sizes[1]}}
	out := twice.near(set)
	for i, name := range out {
		if own := ownSizes(name); len(own) == 2 {
			out[i] = w.family + plainSize(own[0]/2) + "X" + plainSize(own[1]/2)
		}
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
