package tables

import "seamtally/batch/units"

// What a preparation can be meant for besides the plain joint.
const (
	PrepBar     = "bar"     // a backing bar or ceramic behind the root
	PrepGouge   = "gouge"   // gouged from the back and welded there
	PrepPartial = "partial" // prepared to a part of the thickness only
)

// Prep is a usual joint preparation for a kind of joint and a range of thickness.
// A To of zero means without upper limit.
type Prep struct {
	Kind       string       `csv:"kind"`  // as package joint names it
	With       string       `csv:"with"`  // "", or one of the constants above
	Metal      string       `csv:"metal"` // weld metal's group; "" for any
	Over       units.MM     `csv:"over_mm"`
	To         units.MM     `csv:"to_mm"`
	Angle      units.Degree `csv:"angle_deg"` // included angle of V and U, bevel angle of bevel and J
	Gap        units.MM     `csv:"gap_mm"`
	RootFace   units.MM     `csv:"root_face_mm"`
	Radius     units.MM     `csv:"radius_mm"`
	RadiusT    float64      `csv:"radius_t"`    // of a flare: radius over wall
	DepthShare float64      `csv:"depth_share"` // of a double groove: side 1's share of thickness less root face
	Note       string       `csv:"note"`
	Origin
}

// HeatK is the thermal efficiency of a process, ISO 4063 number.
type HeatK struct {
	Process string  `csv:"process"`
	K       float64 `csv:"k"`
	Note    string  `csv:"note"`
	Origin
}

// Prep returns the usual preparation of a kind of joint at a thickness: the row
// that is meant for the backing or partial depth and for the metal, else for the
// one, else for the other, else the plain one.
func (f *Facts) Prep(kind, with, metal string, t units.MM) (Prep, bool) {
	for _, want := range [][2]string{{with, metal}, {with, ""}, {"", metal}, {"", ""}} {
		for i := range f.Preps {
			p := &f.Preps[i]
			if p.Kind == kind && p.With == want[0] && p.Metal == want[1] && t > p.Over && (p.To == 0 || t <= p.To) {
				return *p, true
			}
		}
	}
	return Prep{}, false
}

// HeatK returns the thermal efficiency of a process.
func (f *Facts) HeatK(process string) (HeatK, bool) {
	for _, k := range f.HeatKs {
		if k.Process == process {
			return k, true
		}
	}
	return HeatK{}, false
}
