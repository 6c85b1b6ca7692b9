package tables

import (
	"testing"

	"seamtally/batch/units"
)

var grooveKinds = []string{"square butt", "single V", "single bevel", "double V", "double bevel", "single U", "single J", "double U", "double J"}

// Every kind, backing and metal has a preparation at every thickness that a list
// can hold, in steps of a tenth of a millimetre.
func TestEveryKindHasAPreparationAtEveryThickness(t *testing.T) {
	set := load(t)
	walked := 0
	for _, kind := range append([]string{"flare bevel", "flare V"}, grooveKinds...) {
		for _, with := range []string{"", PrepBar, PrepGouge, PrepPartial} {
			for _, metal := range []string{"carbon steel", "stainless", "aluminium", ""} {
				for tenth := 1; tenth <= 2000; tenth++ {
					mm := units.MM(tenth) / 10
					p, ok := set.Prep(kind, with, metal, mm)
					walked++
					if !ok {
						t.Fatalf("%s %s in %s has no preparation at %g mm", kind, with, metal, float64(mm))
					}
					soundPrep(t, p, mm)
				}
			}
		}
	}
	t.Logf("%d preparations looked up", walked)
}

// soundPrep holds a preparation to what can be cut and welded.
func soundPrep(t *testing.T, p Prep, mm units.MM) {
	t.Helper()
	bevelled := p.Kind != "square butt" && p.Kind != "flare bevel" && p.Kind != "flare V"
	if bevelled != (p.Angle > 0) || p.Angle < 0 || p.Angle > 90 || p.Gap < 0 || p.Gap > 10 || p.RootFace < 0 || p.RootFace > 5 {
		t.Errorf("%s %s over %g: angle %g, gap %g, face %g", p.Kind, p.With, float64(p.Over), float64(p.Angle), float64(p.Gap), float64(p.RootFace))
	}
	round := p.Kind[len(p.Kind)-1] == 'U' || p.Kind[len(p.Kind)-1] == 'J'
	if round != (p.Radius > 0) || (p.Kind[:5] == "flare") != (p.RadiusT > 0) || (p.Kind[:6] == "double") != (p.DepthShare > 0) {
		t.Errorf("%s %s over %g: radius %g, radius over wall %g, share %g", p.Kind, p.With, float64(p.Over), float64(p.Radius), p.RadiusT, p.DepthShare)
	}
	if p.With == PrepBar && (p.RootFace != 0 || p.Gap < 1) {
		t.Errorf("%s with a bar over %g: face %g, gap %g", p.Kind, float64(p.Over), float64(p.RootFace), float64(p.Gap))
	}
	_ = mm
}

// The rows of one kind, backing and metal follow each other without a hole or an
// overlap, from nothing to no limit or to where the plain row takes over.
func TestPreparationsNeitherOverlapNorLeaveHoles(t *testing.T) {
	type key struct{ kind, with, metal string }
	last := map[key]units.MM{}
	open := map[key]bool{}
	for _, p := range load(t).Preps {
		k := key{p.Kind, p.With, p.Metal}
		if to, seen := last[k]; seen && (p.Over != to || open[k]) {
			t.Errorf("%v: a row begins over %g, the one before ends at %g", k, float64(p.Over), float64(to))
		}
		last[k], open[k] = p.To, p.To == 0
	}
	for k := range last {
		if !open[k] {
			t.Errorf("%v ends at %g mm", k, float64(last[k]))
		}
	}
}
