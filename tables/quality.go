package tables

import "seamtally/batch/units"

// QualityLimit is the largest imperfection of a quality level of ISO 5817: an
// addend and a share of a size of the weld, never more than Most.
type QualityLimit struct {
	Level        string   `csv:"level"` // B, C or D
	Imperfection string   `csv:"imperfection"`
	Number       string   `csv:"number"` // ISO 6520-1
	Joint        string   `csv:"joint"`  // fillet, butt or any
	Over         units.MM `csv:"over_mm"`
	Add          units.MM `csv:"add_mm"`
	Times        float64  `csv:"times"`
	Of           string   `csv:"of"` // a: throat, b: width of face or cap, g: gap, t: thickness
	Most         units.MM `csv:"most_mm"`
	Note         string   `csv:"note"`
	Origin
}

// Limit returns the limit for a size in millimetres.
func (q QualityLimit) Limit(size units.MM) units.MM {
	return min(q.Most, q.Add+units.MM(q.Times)*size)
}

// QualityLimits returns the limits of a level for a kind of joint in a thickness.
func (f *Facts) QualityLimits(level, joint string, t units.MM) []QualityLimit {
	var out []QualityLimit
	for _, q := range f.Qualities {
		if q.Level == level && (q.Joint == joint || q.Joint == "any") && t > q.Over {
			out = append(out, q)
		}
	}
	return out
}
