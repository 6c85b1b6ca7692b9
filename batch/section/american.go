package section

import (
	"math"
	"strconv"
	"strings"

	"seamtally/batch/units"
	"seamtally/tables"
)

// poundsPerFoot is one pound a foot in kg/m.
const poundsPerFoot = 0.45359237 / 0.3048

// american returns a rolled section by its American name, in inches and pounds or, as
// drawings in millimetres have it, in nominal millimetres and kilograms.
func (w *written) american(set *tables.Set) (Section, string) {
	s, why := w.fromTable(set)
	if why == "" || len(w.sizes) != 2 || w.sizes[0] < leastMetric {
		return s, why
	}
	if row := w.metric(set); row != nil {
		return rolled(row), ""
	}
	return s, why
}

// leastMetric is the depth from which a name is in millimetres: no section is as many
// inches deep.
const leastMetric = 70

// metric finds the row whose nominal depth in inches, rounded to 10 mm, and whose
// mass in kg/m are the two sizes. Nil where none or several fit.
func (w *written) metric(set *tables.Set) *tables.Section {
	var found *tables.Section
	best := 0.6
	for i := range set.Sections {
		row := &set.Sections[i]
		own := ownSizes(row.Designation)
		if row.Family != w.family || len(own) != 2 || math.Abs(own[0]*units.MMPerInch-w.sizes[0]) > deepest(own[0]) {
			continue
		}
		if off := math.Abs(own[1]*poundsPerFoot - w.sizes[1]); off < best {
			found, best = row, off
		}
	}
	return found
}

// deepest is by how much the nominal depth in millimetres may differ from that in
// inches: W14 is W360, W40 W1000, W44 W1100.
func deepest(inches float64) float64 {
	if inches > 30 {
		return 18
	}
	return 5.5
}

// tee returns the half of a rolled I section that is split along its web.
//
//	A = A_I / 2,  P = P_I / 2 + tw   (SECTION-15)
//
// A_I, P_I: area and outline of the whole section, mm², mm; tw: web, mm. The kerf of
// the cut is left out. Source: the American tables name tees so. Basis: derived.
func (w *written) tee(set *tables.Set) (Section, string) {
	if len(w.sizes) != 2 {
		return Section{}, "a tee takes its depth and its weight"
	}
	whole := written{family: strings.TrimSuffix(w.family, "T"), sizes: []float64{2 * w.sizes[0], 2 * w.sizes[1]}, inches: true}
	s, why := whole.fromTable(set)
	if why != "" {
		return Section{}, why
	}
	s.Source, s.Basis = "half of "+s.Designation+": "+s.Source, "derived"
	s.SurfaceSource, s.SurfaceBasis = s.Source, "derived"
	s.Designation = w.family + plainSize(w.sizes[0]) + "X" + plainSize(w.sizes[1])
	s.Shape, s.Family = Tee, w.family
	s.H, s.Area, s.KgM, s.Perimeter = s.H/2, s.Area/2, s.KgM/2, s.Perimeter/2+s.Web
	return s, ""
}

func plainSize(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// inchesOfMetric turns the nominal millimetres of an American hollow section into its
// inches: outside to an eighth, wall to a sixteenth. No wall is thicker than an inch.
func (w *written) inchesOfMetric() {
	n := len(w.sizes)
	if n == 0 || w.sizes[n-1] <= 1.1 {
		return
	}
	var names []string
	for i, v := range w.sizes {
		step, slack := 8.0, 0.6
		if i == n-1 {
			step, slack = 16, 0.08
		}
		w.sizes[i] = v / units.MMPerInch
		if near := math.Round(w.sizes[i]*step) / step; math.Abs(near-w.sizes[i])*units.MMPerInch < slack {
			w.sizes[i] = near
		}
		names = append(names, inchName(w.sizes[i]))
	}
	w.raw = strings.Join(names, "X")
}

// fractions names the sizes of a square or rectangular hollow section as its tables do,
// in sixteenths, where a list has them in decimals: 6x6x.250, 4x4x.188. A size that is no
// sixteenth stays; round ones are called by decimals.
func (w *written) fractions() {
	if len(w.sizes) != 3 || !strings.Contains(w.raw, ".") {
		return
	}
	var names []string
	for i, v := range w.sizes {
		if near := math.Round(v*16) / 16; near > 0 && math.Abs(near-v) < 0.00051 {
			w.sizes[i] = near
		}
		names = append(names, inchName(w.sizes[i]))
	}
	w.raw = strings.Join(names, "X")
}

// inchName writes inches as designations have them: "4", "1/4", "3-1/2", "4.724".
func inchName(v float64) string {
	whole, parts := math.Trunc(v), math.Round((v-math.Trunc(v))*16)
	switch {
	case math.Abs(whole+parts/16-v) > 1e-9:
		return sizeText(v)
	case parts == 0:
		return plainSize(whole)
	}
	bottom := 16
	top := int(parts)
	for top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	name := strconv.Itoa(top) + "/" + strconv.Itoa(bottom)
	if whole > 0 {
		name = plainSize(whole) + "-" + name
	}
	return name
}

// angle returns an angle of the table; one in millimetres that is none of the
// European sizes may be an American one.
func (w *written) angle(set *tables.Set) (Section, string) {
	s, why := w.fromTable(set)
	sizes := w.wholeSizes()
	if why == "" || w.inches || len(sizes) != 3 {
		return s, why
	}
	for i := range set.Sections {
		row := &set.Sections[i]
		if row.Family == "L" && !strings.HasPrefix(row.Designation, "L ") && isNear(sizes, []float64{float64(row.H), float64(row.B), float64(row.Web)}) {
			return rolled(row), ""
		}
	}
	return s, why
}

// isNear tells whether legs and thickness are those of an American angle as drawings
// in millimetres round them, the longer leg first or last.
func isNear(sizes, row []float64) bool {
	legs := func(a, b float64) bool { return math.Abs(a-row[0]) < 0.6 && math.Abs(b-row[1]) < 0.6 }
	return math.Abs(sizes[2]-row[2]) < 0.08 && (legs(sizes[0], sizes[1]) || legs(sizes[1], sizes[0]))
}

// rolledTee returns a hot-rolled tee by its height, or by height, width and thickness
// which must then be its own.
func (w *written) rolledTee(set *tables.Set) (Section, string) {
	for i := range set.Sections {
		row := &set.Sections[i]
		last := w.sizes[len(w.sizes)-1]
		if row.Family != "T" || w.sizes[0] != float64(row.H) {
			continue
		}
		if len(w.sizes) == 1 || last == float64(row.Web) && (len(w.sizes) == 2 || w.sizes[1] == float64(row.B)) {
			return rolled(row), ""
		}
	}
	return Section{}, "its standard's table holds no such size"
}
