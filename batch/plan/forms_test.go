package plan

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// A list in which joints are alike but for their length is planned as if each
// joint were read by itself.
func TestFormsChangeNothing(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		var joints []joint.Joint
		for range rapid.IntRange(1, 4).Draw(rt, "forms") {
			j := anyJoint(rt)
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
