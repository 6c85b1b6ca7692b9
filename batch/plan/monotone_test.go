package plan

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// told writes a joint and its plan for the message of a failed comparison.
func told(j *joint.Joint, p *Plan) string {
	runs := ""
	for _, r := range p.Runs {
		runs += fmt.Sprintf(" %.1f", float64(r.Area))
	}
	return fmt.Sprintf("%s %s %s t %v leg %v depth %v length %v x %d: cost %.6f, %s %v %s %s, %.0f A,%s mm²", j.Material, j.Kind, j.Position, j.T1, j.Size.A, j.Depth, j.Length, j.Qty,
		float64(p.Cost.Total), p.Filler, p.Dia, p.Gas, p.Transfer, p.Current.Start, runs)
}

// TestMoreIsNeverCheaperWhateverTheKind grows one of length, leg or depth, copies
// and sides of a joint of any ordinary kind; the parts stay as they are.
func TestMoreIsNeverCheaperWhateverTheKind(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		small := saneJoint(rt)
		small.Sides = 1
		large := small.Apart()
		by := rapid.Float64Range(1.01, 3).Draw(rt, "by")
		switch rapid.IntRange(0, 3).Draw(rt, "what") {
		case 0:
			large.Length = units.MM(float64(small.Length) * by)
		case 1:
			large.Qty = small.Qty + 1
		case 2: // a butt from both sides is another preparation, not more of the same
			if small.Size.Means != joint.Leg {
				rt.Skip("sides are for fillets and laps")
			}
			large.Sides = 2
		default:
			if small.Size.Means == joint.Leg {
				large.Size.A = units.MM(float64(small.Size.A) * by)
				break
			}
			if small.Kind != joint.SingleV && small.Kind != joint.SingleBevel {
				rt.Skip("neither leg nor depth")
			}
			share := rapid.Float64Range(0.2, 0.9).Draw(rt, "share")
			small.Depth = units.MM(float64(small.T1) * share)
			large.Depth = units.MM(float64(small.T1) * min(1, share*by))
			if large.Depth > large.T1*0.98 {
				large.Depth = large.T1 * 0.98
			}
			if large.Depth < small.Depth {
				rt.Skip("no deeper")
			}
		}
		a := Joints([]joint.Joint{small}, set, shop, Options{})[0]
		b := Joints([]joint.Joint{large}, set, shop, Options{})[0]
		if a.Settings && b.Settings && b.Cost.Total < a.Cost.Total*(1-1e-9) && opens(newCatalog(set, shop, Options{}), &small, &b) {
			rt.Fatalf("%s\n%s", told(&small, &a), told(&large, &b))
		}
	})
}

// opens tells whether a joint can be welded as called with the wire, gas and mode of a plan.
// Where it cannot, because its bead is smaller than that wire and mode lay, nature
// is not monotone: a small bead needs a thinner and dearer wire than a larger one.
// Of 7,200 random pairs of legs and depths 22 are such, by at most 7 %, all with legs below
// 3 mm or shallow grooves uphill; so is a bead that is laid a little larger than called.
func opens(c *catalog, j *joint.Joint, p *Plan) bool {
	t := c.newTask(j)
	for _, n := range c.waysOf(t) {
		if n.wire.Filler == p.Filler && n.wire.Dia == p.Dia && n.gas.Gas == p.Gas && n.mode == p.Transfer {
			if o := c.try(n, t); o.stands == 0 && o.called == 0 {
				return true
			}
		}
	}
	return false
}

// TestSplittingNeverSavesWhateverTheKind cuts a joint in two that go end to end.
func TestSplittingNeverSavesWhateverTheKind(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		whole := saneJoint(rt)
		share := rapid.Float64Range(0.05, 0.95).Draw(rt, "share")
		first, second := whole.Apart(), whole.Apart()
		first.Length = units.MM(float64(whole.Length) * share)
		second.Length = whole.Length - first.Length
		a := Joints([]joint.Joint{whole}, set, shop, Options{})[0]
		parts := Joints([]joint.Joint{first, second}, set, shop, Options{})
		if a.Settings && parts[0].Settings && parts[1].Settings {
			if sum := parts[0].Cost.Total + parts[1].Cost.Total; sum < a.Cost.Total*(1-1e-9) {
				rt.Fatalf("%s\n%s\n%s", told(&whole, &a), told(&first, &parts[0]), told(&second, &parts[1]))
			}
		}
	})
}
