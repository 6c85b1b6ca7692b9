package tables

import (
	"strings"

	"seamtally/batch/units"
)

// PreheatRow is the least preheat of a category of steel over a range of
// thickness. A To of zero means without upper limit.
type PreheatRow struct {
	Category string        `csv:"category"`
	Steels   string        `csv:"steels"`
	Over     units.MM      `csv:"over_mm"`
	To       units.MM      `csv:"to_mm"`
	Min      units.Celsius `csv:"min_c"`
	Origin
}

// ShapeFactor is how the shape of a joint shortens its cooling.
type ShapeFactor struct {
	Joint  string  `csv:"joint"` // plate, butt, corner, tee, lap
	F2Low  float64 `csv:"f2_low"`
	F2High float64 `csv:"f2_high"`
	F3     float64 `csv:"f3"`
	Note   string  `csv:"note"`
	Origin
}

// Hydrogen is the diffusible hydrogen that a filler is reckoned with.
type Hydrogen struct {
	Construction string  `csv:"construction"`
	Metal        string  `csv:"metal"`
	HD           float64 `csv:"hd_ml_100g"`
	Note         string  `csv:"note"`
	Origin
}

// HeatLimit is the window of heat that a family of materials likes. Zero means no limit.
type HeatLimit struct {
	Family    string        `csv:"family"`
	T85Low    units.Second  `csv:"t85_low_s"`
	T85High   units.Second  `csv:"t85_high_s"`
	HeatMin   units.KJMM    `csv:"heat_min_kj_mm"`
	HeatMax   units.KJMM    `csv:"heat_max_kj_mm"`
	Interpass units.Celsius `csv:"interpass_max_c"`
	Note      string        `csv:"note"`
	Origin
}

// Preheat returns the least preheat of a category at a thickness.
func (f *Facts) Preheat(category string, t units.MM) (PreheatRow, bool) {
	for _, r := range f.Preheats {
		if r.Category == category && inside(t, r.Over, r.To) {
			return r, true
		}
	}
	return PreheatRow{}, false
}

// ShapeFactor returns the shape factors of a joint.
func (f *Facts) ShapeFactor(joint string) (ShapeFactor, bool) {
	for _, s := range f.ShapeFactors {
		if s.Joint == joint {
			return s, true
		}
	}
	return ShapeFactor{}, false
}

// HydrogenOf returns the diffusible hydrogen that a wire is reckoned with: by the
// hydrogen class in its designation where there is one, else by its construction,
// else by the row of the metal that stands for what is not known.
func (f *Facts) HydrogenOf(w Wire) (Hydrogen, bool) {
	for _, construction := range []string{hydrogenClass(w.ISO), w.Construction, "unknown"} {
		for _, h := range f.Hydrogens {
			if h.Construction == construction && h.Metal == w.Metal {
				return h, true
			}
		}
	}
	return Hydrogen{}, false
}

// hydrogenClass returns the hydrogen class of a designation such as
// "ISO 17632-A T 46 2 P M 1 H5"; empty if it names none.
func hydrogenClass(designation string) string {
	for word := range strings.FieldsSeq(designation) {
		switch word {
		case "H2", "H4", "H5", "H8", "H10", "H15", "H16":
			return word
		}
	}
	return ""
}

// HeatLimit returns the window of heat of a material family.
func (f *Facts) HeatLimit(family string) (HeatLimit, bool) {
	for _, h := range f.HeatLimits {
		if h.Family == family {
			return h, true
		}
	}
	return HeatLimit{}, false
}

// inside tells whether over < v <= to; a to of zero is no limit.
func inside[T ~float64](v, over, to T) bool { return v > over && (to == 0 || v <= to) }

// hasWord tells whether a blank-joined list holds a word.
func hasWord(list, word string) bool {
	for w := range strings.FieldsSeq(list) {
		if w == word {
			return true
		}
	}
	return false
}
