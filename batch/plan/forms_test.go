package plan

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// nearly returns a joint like another but for one detail that no key of a form has.
func nearly(rt *rapid.T, like *joint.Joint) joint.Joint {
	j := like.Apart()
	switch rapid.IntRange(0, 5).Draw(rt, "detail") {
	case 0:
		j.Gap, j.GapGiven = j.Gap+1, true
	case 1:
		j.Where = joint.Site
	case 2:
		j.Sides = 3 - max(j.Sides, 1)
	case 3:
		j.Stitch = &joint.Stitch{Segment: 50, Gap: 50, Pitch: 100}
	case 4:
		j.Backing, j.RootFaceGiven = "bar", true
	default:
		j.Note = "painted"
	}
	return j
}

// A list in which joints are alike but for their length is planned as if each
// joint were read by itself.
func TestFormsChangeNothing(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		var joints []joint.Joint
		for range rapid.IntRange(1, 4).Draw(rt, "forms") {
			j := anyJoint(rt)
			if len(joints) > 0 && rapid.Bool().Draw(rt, "nearly the last") {
				j = nearly(rt, &joints[len(joints)-1])
			}
			for range rapid.IntRange(1, 4).Draw(rt, "of the form") {
				j.Length = units.MM(rapid.Float64Range(5, 4000).Draw(rt, "length"))
				j.Qty = rapid.IntRange(1, 9).Draw(rt, "qty")
				joints = append(joints, j)
			}
		}
		own := newCatalog(set, shop, Options{})
		own.forms = nil
		kept := newCatalog(set, shop, Options{})
		want, got := own.ready(joints).plans(), kept.ready(joints).plans()
		for i := range want {
			if !reflect.DeepEqual(want[i], got[i]) {
				rt.Fatalf("joint %d: read by itself\n%+v\nas one of its form\n%+v", i, want[i], got[i])
			}
		}
	})
}

// A hint plans one altered joint after another in the same memory. Each is planned as
// if it were the only one, though it may be like the one before but for a detail.
func TestHintsPlanEachJointByItself(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		joints := []joint.Joint{anyJoint(rt)}
		for range rapid.IntRange(1, 3).Draw(rt, "more") {
			joints = append(joints, nearly(rt, &joints[len(joints)-1]))
		}
		all := newCatalog(set, shop, Options{})
		h := hinter{c: all, used: make([]bool, len(all.setups))}
		for k := range h.used {
			h.used[k] = true
		}
		for i := range joints {
			alone := newCatalog(set, shop, Options{})
			alone.forms = nil
			want, fits := (&hinter{c: alone, used: h.used}).replan(joints[i].Apart())
			got, also := h.replan(joints[i].Apart())
			want.way, got.way = nil, nil // of another catalog
			if want != got || fits != also {
				rt.Fatalf("joint %d: by itself %+v (%v), after the others %+v (%v)", i, want, fits, got, also)
			}
		}
	})
}
