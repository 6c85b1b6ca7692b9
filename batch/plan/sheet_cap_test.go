package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// sheetJoint is a joint of two thicknesses with a stated gap, so that no usual
// preparation of another thickness steps in.
func sheetJoint(kind joint.Kind, t1, t2, gap units.MM) joint.Joint {
	return joint.Joint{Mark: "S", Qty: 1, Length: 1000, Detail: &joint.Detail{Kind: kind, Sides: 1, T1: t1, T2: t2, Gap: gap, GapGiven: true}}
}

// TestSheetCaps reckons by hand the metal above what is drawn: no cap is higher than
// 1.5 and no root than 1 times the thinner part, each face of a weld from both sides
// by the whole thickness, a weld of part of the thickness by the part's.
func TestSheetCaps(t *testing.T) {
	set, shop := world(t)
	bead := func(width, high float64) float64 { return 2.0 / 3 * width * high }
	square := func(t1, t2, gap units.MM) joint.Joint { return sheetJoint(joint.SquareButt, t1, t2, gap) }
	with := func(j joint.Joint, change func(*joint.Joint)) joint.Joint { change(&j); return j }
	v := with(sheetJoint(joint.SingleV, 0.9, 0.9, 0.5), func(j *joint.Joint) { j.Angle, j.RootFace, j.RootFaceGiven = 60, 0.5, true })
	flare := sheetJoint(joint.FlareBevel, 0.8, 5, 0)
	flare.Radius = 2
	unknown := flare.Apart()
	unknown.T1, unknown.T2 = 0, 0
	for name, c := range map[string]struct {
		j    joint.Joint
		want float64 // mm² above the area drawn
	}{
		"closed":              {square(0.8, 0.8, 0), bead(2, 1.2) + bead(2, 0.8)},
		"on a thick part":     {square(0.8, 5, 0.2), bead(2.2, 1.2) + bead(2.2, 0.8)},
		"only one is known":   {square(0, 0.6, 0), bead(2, 0.9) + bead(2, 0.6)},
		"both sides":          {with(square(0.8, 0.8, 0), func(j *joint.Joint) { j.Sides = 2 }), 2 * bead(2, 1.2)},
		"on a bar":            {with(square(0.8, 0.8, 0), func(j *joint.Joint) { j.Backing = "bar" }), bead(2, 1.2)},
		"part of thickness":   {with(square(0.9, 0.9, 0.5), func(j *joint.Joint) { j.Depth = 0.4 }), bead(2.5, 1.35)},
		"part of a thick one": {with(square(8, 8, 0.5), func(j *joint.Joint) { j.Depth = 0.4 }), bead(2.5, 1.5)},
		"V":                   {v, bead(2.5+0.8*math.Tan(math.Pi/6), 1.35) + bead(2.5, 0.9)},
		"1 mm":                {square(1, 1, 0), bead(2, 1.5) + bead(2, 1)},
		"3 mm":                {square(3, 3, 1), bead(3, 1.5) + bead(3, 1)},
		"flare":               {flare, bead(4, 1.2)},
		"flare, no thickness": {unknown, bead(4, 1.5)},
	} {
		p := Joints([]joint.Joint{c.j}, set, shop, Options{})[0]
		if got := float64(p.Area - p.AreaDrawn); math.Abs(got-c.want) > 1e-9 || p.AreaDrawn < 0 {
			t.Errorf("%s: %.4f mm² above what is drawn, by hand %.4f", name, got, c.want)
		}
	}
}

// TestGougedSheetCap: the back's bead over a gouge is limited as the front's.
func TestGougedSheetCap(t *testing.T) {
	set, shop := world(t)
	j := sheetJoint(joint.SquareButt, 0.8, 0.8, 0)
	j.Backing = "gouge"
	high := Joints([]joint.Joint{j}, set, shop, Options{})[0].Area
	flat := *shop
	flat.CapShare = 10 // 8 mm on this sheet: the shop's height holds
	if was := Joints([]joint.Joint{j}, set, &flat, Options{})[0].Area; was <= high {
		t.Errorf("%.3f mm² with the limit, %.3f without", high, was)
	}
}

// TestWorkingShowsTheHeightUsed: what explain prints is what was reckoned with.
func TestWorkingShowsTheHeightUsed(t *testing.T) {
	set, shop := world(t)
	for thick, want := range map[units.MM]string{
		0.8: "cap 1.2 mm = 1.5 x 0.8, root 0.8 mm = 1 x 0.8",
		3:   "cap 1.5 mm, root 1 mm",
	} {
		found := false
		for _, s := range Explain([]joint.Joint{sheetJoint(joint.SquareButt, thick, thick, 0)}, 0, set, shop, Options{}).Steps {
			found = found || s.ID == "AREA-10" && s.Numbers == want
		}
		if !found {
			t.Errorf("%g mm: no step AREA-10 with %q", thick, want)
		}
	}
}

// TestSheetMetalNearsThePrinted compares the metal of closed butts below 1 mm with
// what the printed current and travel lay: the limit takes none of it away, and comes
// nearer to it than the shop's flat heights. Rows on a bar print as much as those
// without; on a bar no root is reckoned, so they are left out.
func TestSheetMetalNearsThePrinted(t *testing.T) {
	set, shop := world(t)
	flat := *shop
	flat.CapShare, flat.RootShare = 10, 10
	rows := append(append(append(parameterRows(t, false), procedureRows(t, false)...), passRows(t, false)...), unseenRows(t, false)...)
	seen := 0
	for _, p := range rows {
		if p.kind != joint.SquareButt || p.thick <= 0 || p.thick >= 1 || p.gap > 0 || p.backing != "" || p.current == nil || p.travel == nil {
			continue
		}
		area := func(s *rates.Shop) (made, printed float64, ok bool) {
			got := Joints([]joint.Joint{p.joint()}, set, s, Options{})[0]
			if !got.Settings {
				return 0, 0, false
			}
			r := got.Runs[0]
			deposit := float64(r.Deposit) * p.current.middle() / float64(r.Current)
			return float64(got.Area), deposit / 60 / (float64(got.Density) * 1e-9 * p.travel.middle()), true
		}
		now, printed, ok := area(shop)
		was, _, _ := area(&flat)
		if !ok {
			continue
		}
		seen++
		if now < printed*0.97 || now >= was { // the deposit is taken in proportion to the current
			t.Errorf("%s, %g mm: %.2f mm², %.2f without the limit, print lays %.2f", p.row, p.thick, now, was, printed)
		}
	}
	if seen < 4 {
		t.Errorf("only %d printed rows were compared", seen)
	}
}
