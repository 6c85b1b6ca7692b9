package tables

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"
)

const (
	fitAll   = "fit over all diameters"
	fitShort = "fit of a over all diameters, b of the open arc"
	fitOwn   = "fit at this diameter"
	asRutile = "as rutile cored"
	scaled   = "by section from 1.2"
)

// constants are a and b of a wire of one millimetre: a falls with the section,
// b with its square.
type constants struct{ a, b float64 }

// terms are what a and b of one millimetre each add to the feed that is printed,
// as shares of it.
func terms(p MeltingPoint) (x, y float64) {
	d, i := float64(p.PrintedDia), float64(p.Current)
	x = 0.06 * i / (d * d) / float64(p.Feed)
	y = 0.06 * float64(p.Extension) * i * i / (d * d * d * d) / float64(p.Feed)
	return x, y
}

// miss is the share by which a fit misses a point.
func (c constants) miss(p MeltingPoint) float64 {
	x, y := terms(p)
	return c.a*x + c.b*y - 1
}

// trust is what a point counts: one that was recalled a quarter of one that was
// read in its source.
func trust(p MeltingPoint) float64 {
	if p.Basis == "published" {
		return 1
	}
	return 0.25
}

// fitBoth solves both constants by least squares of relative deviations; a wire
// that the points show no resistance of gets none.
func fitBoth(points []MeltingPoint) constants {
	var xx, xy, yy, sx, sy float64
	for _, p := range points {
		x, y := terms(p)
		w := trust(p)
		xx, xy, yy, sx, sy = xx+w*x*x, xy+w*x*y, yy+w*y*y, sx+w*x, sy+w*y
	}
	det := xx*yy - xy*xy
	c := constants{(sx*yy - sy*xy) / det, (xx*sy - xy*sx) / det}
	if !(c.b >= 0) || math.Abs(det) < 1e-9*xx*yy {
		return fitA(points, 0)
	}
	return c
}

// fitA solves a for a b that is known.
func fitA(points []MeltingPoint, b float64) constants {
	var xx, s float64
	for _, p := range points {
		x, y := terms(p)
		w := trust(p)
		xx, s = xx+w*x*x, s+w*x*(1-b*y)
	}
	return constants{s / xx, b}
}

// resistless are wires that conduct so well that the heat in their extension is
// below what the points could show.
var resistless = []string{"aluminium solid", "bronze solid"}

// fitModes fits a family: the open arc first, whose b the other modes take, since
// the wire is the same.
func fitModes(family string, points []MeltingPoint) map[string]constants {
	modes := byMode(points)
	open := fitBoth(modes[""])
	if slices.Contains(resistless, family) {
		open = fitA(modes[""], 0)
	}
	out := map[string]constants{"": open}
	for mode, own := range modes {
		if mode != "" {
			out[mode] = fitA(own, open.b)
		}
	}
	return out
}

func byMode(points []MeltingPoint) map[string][]MeltingPoint {
	out := map[string][]MeltingPoint{}
	for _, p := range points {
		out[p.Mode] = append(out[p.Mode], p)
	}
	return out
}

// origin names the source of a point: the parts of one document are one source.
func origin(p MeltingPoint) string {
	if strings.Contains(p.Source, "OM-") {
		return "owner manuals"
	}
	name, _, _ := strings.Cut(p.Source, " (proc")
	return name
}

// leftOut returns by mode how far each source is missed by a fit without it. A
// source without which a mode has no points cannot be judged.
func leftOut(family string, points []MeltingPoint) map[string][]float64 {
	out := map[string][]float64{}
	sources := map[string]bool{}
	for _, p := range points {
		sources[origin(p)] = true
	}
	for _, source := range slices.Sorted(maps.Keys(sources)) {
		rest := slices.DeleteFunc(slices.Clone(points), func(p MeltingPoint) bool { return origin(p) == source })
		if len(byMode(rest)) != len(byMode(points)) {
			continue
		}
		fits := fitModes(family, rest)
		for _, p := range points {
			if origin(p) == source {
				out[p.Mode] = append(out[p.Mode], fits[p.Mode].miss(p))
			}
		}
	}
	return out
}

func rms(shares []float64) float64 {
	if len(shares) == 0 {
		return 0
	}
	sum := 0.0
	for _, d := range shares {
		sum += d * d
	}
	return 100 * math.Sqrt(sum/float64(len(shares)))
}

func most(shares []float64) float64 {
	top := 0.0
	for _, d := range shares {
		top = max(top, 100*math.Abs(d))
	}
	return top
}

func pointsOf(set *Set, family string) (out []MeltingPoint) {
	for _, p := range set.MeltingPoints {
		if p.Family == family {
			out = append(out, p)
		}
	}
	return out
}

// near tells whether a stored figure is a worked one to four figures.
func near(stored, worked float64) bool {
	return math.Abs(stored-worked) <= 6e-4*math.Abs(worked)
}

func TestMeltingConstantsAreTheFitOfTheirPoints(t *testing.T) {
	set := load(t)
	for _, m := range set.Meltings {
		points := pointsOf(set, m.Family)
		d := float64(m.Dia)
		switch m.How {
		case fitAll, fitShort:
			own := byMode(points)[m.Mode]
			c := fitModes(m.Family, points)[m.Mode]
			checkConstants(t, m, c, d)
			checkResiduals(t, m, c, own)
			if out := leftOut(m.Family, points)[m.Mode]; len(out) == len(own) && math.Abs(rms(out)-m.LeftOut) > 0.06 {
				t.Errorf("%s %.1f %s: sources left out are missed by %.1f %%, stated %.1f", m.Family, d, m.Mode, rms(out), m.LeftOut)
			}
		case fitOwn:
			own := slices.DeleteFunc(points, func(p MeltingPoint) bool { return !sameDia(p.Dia, m.Dia) })
			c := fitBoth(own)
			checkConstants(t, m, c, d)
			checkResiduals(t, m, c, own)
		case asRutile:
			c := fitModes("steel rutile cored", pointsOf(set, "steel rutile cored"))[""]
			checkConstants(t, m, c, d)
		case scaled:
			from := rowOf(t, set, m.Family, 1.2, "")
			checkConstants(t, m, constants{from.A * 1.44, from.B * 1.44 * 1.44}, d)
		default:
			t.Errorf("%s %.1f: nobody can tell how %q gives its constants", m.Family, d, m.How)
		}
	}
}

func checkConstants(t *testing.T, m Melting, c constants, d float64) {
	t.Helper()
	if a, b := c.a/(d*d), c.b/(d*d*d*d); !near(m.A, a) || !near(m.B, b) {
		t.Errorf("%s %.1f %s: worked a %.5g b %.5g, stored %.5g %.5g", m.Family, m.Dia, m.Mode, a, b, m.A, m.B)
	}
}

func checkResiduals(t *testing.T, m Melting, c constants, points []MeltingPoint) {
	t.Helper()
	var shares []float64
	for _, p := range points {
		shares = append(shares, c.miss(p))
	}
	if len(points) != m.Points || math.Abs(rms(shares)-m.ResidualRMS) > 0.06 || math.Abs(most(shares)-m.ResidualMax) > 0.06 {
		t.Errorf("%s %.1f %s: %d points missed by %.1f %% rms, %.1f %% at most; stated %d, %.1f, %.1f", m.Family, m.Dia, m.Mode,
			len(points), rms(shares), most(shares), m.Points, m.ResidualRMS, m.ResidualMax)
	}
}

func rowOf(t *testing.T, set *Set, family string, dia float64, mode string) Melting {
	t.Helper()
	for _, m := range set.Meltings {
		if m.Family == family && math.Abs(float64(m.Dia)-dia) < 0.01 && m.Mode == mode {
			return m
		}
	}
	t.Fatalf("no row %s %.1f %q", family, dia, mode)
	return Melting{}
}

// A fit that holds only the sources it was made from says nothing of the next
// one: left out in turn, none may be missed by more than the uncertainty stated.
func TestASourceLeftOutIsMissedByNoMoreThanTheUncertainty(t *testing.T) {
	set := load(t)
	for _, m := range set.Meltings {
		if m.LeftOut > m.Uncertainty {
			t.Errorf("%s %.1f %s: sources left out are missed by %.1f %%, uncertainty stated %.0f", m.Family, m.Dia, m.Mode, m.LeftOut, m.Uncertainty)
		}
	}
	for _, family := range []string{"steel solid", "stainless solid"} {
		for mode, out := range leftOut(family, pointsOf(set, family)) {
			t.Logf("%s %q: %d points of sources left out missed by %.1f %% rms, %.1f %% at most", family, mode, len(out), rms(out), most(out))
		}
	}
}

// The heat that the current leaves in steel: b = 16 ρ / (π² H d⁴), with ρ 0.3 µΩ m
// (cold steel 0.15, red-hot 1.1) and H 10.2 J/mm³ to melt it. The fit finds b from
// currents alone, so the two are independent; half as much again is allowed.
func TestResistanceTermOfSteelIsThatOfItsResistivity(t *testing.T) {
	set := load(t)
	b := 16 * 0.3e-6 / (math.Pi * math.Pi * 10.2e9) * 1e12
	if got := rowOf(t, set, "steel solid", 1.0, "").B; got < b/1.5 || got > b*1.5 {
		t.Errorf("b of 1.0 mm steel is %.3g, its resistivity gives %.3g", got, b)
	}
}

// rising tells whether the feed of a row rises with every ampere of its range.
func rising(m Melting, extension float64) bool {
	return m.A > 0 && m.B >= 0 && m.CurrentHigh > m.CurrentLow && m.CurrentLow > 0 && extension > 0
}

func feedOf(m Melting, current, extension float64) float64 {
	return 0.06 * (m.A*current + m.B*extension*current*current)
}

func TestFeedRisesWithCurrentAndThinnerWireRunsFaster(t *testing.T) {
	set := load(t)
	for _, a := range set.Meltings {
		if !rising(a, 8) {
			t.Errorf("%s %.1f %s: feed does not rise from %.0f to %.0f A", a.Family, a.Dia, a.Mode, a.CurrentLow, a.CurrentHigh)
		}
		for _, b := range set.Meltings {
			if a.Family != b.Family || a.Mode != b.Mode || a.Dia >= b.Dia {
				continue
			}
			for i := float64(min(a.CurrentLow, b.CurrentLow)); i <= float64(max(a.CurrentHigh, b.CurrentHigh)); i += 5 {
				for _, l := range []float64{8, 12, 20} {
					if feedOf(a, i, l) <= feedOf(b, i, l) {
						t.Errorf("%s at %.0f A and %.0f mm: %.1f mm runs at %.2f, %.1f mm at %.2f m/min", a.Family, i, l, a.Dia, feedOf(a, i, l), b.Dia, feedOf(b, i, l))
					}
				}
			}
		}
	}
}

// At one current an arc that is out during its shorts melts less than one that
// burns on.
func TestShortArcMeltsLessThanTheOpenArc(t *testing.T) {
	set := load(t)
	for _, m := range set.Meltings {
		if m.Mode != "short arc" {
			continue
		}
		open := rowOf(t, set, m.Family, float64(m.Dia), "")
		for i := float64(m.CurrentLow); i <= float64(m.CurrentHigh); i += 10 {
			if own, other := feedOf(m, i, 11), feedOf(open, i, 11); own >= other {
				t.Errorf("%s %.1f at %.0f A: short arc %.2f m/min, open arc %.2f", m.Family, m.Dia, i, own, other)
			}
		}
	}
}

func TestAModeWithoutARowOfItsOwnTakesTheOpenArc(t *testing.T) {
	set := load(t)
	w := Wire{Melting: "steel solid", Dia: 1.2}
	open, _ := set.Melting(w)
	short, _ := set.MeltingIn(w, "short arc")
	globular, ok := set.MeltingIn(w, "globular")
	if !ok || open.Mode != "" || short.Mode != "short arc" || globular != open {
		t.Errorf("open %q, short %q, globular %q", open.Mode, short.Mode, globular.Mode)
	}
	if _, ok := set.MeltingIn(Wire{Melting: "none", Dia: 1.2}, "spray"); ok {
		t.Error("a family without rows has constants")
	}
}
