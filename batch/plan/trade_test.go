package plan

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// The facts of this file are common practice, without a source: what any welding
// foreman expects of a setting, held as bands.

// Sheet of 2 to 3 mm with 0.8 mm wire is welded at 60 to 120 A, fillets as well as
// laps and butts, in any position.
func TestSheetWithThinWireKeepsItsBand(t *testing.T) {
	set, shop := world(t)
	for _, thick := range []float64{2, 2.5, 3} {
		for _, pos := range []string{"PA", "PB", "PC", "PG"} {
			j := filletJoint(3, thick, pos)
			j.Wire = "G3Si1 0.8"
			p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
			if !p.Settings || p.Current.Start < 60 || p.Current.Start > 120 {
				t.Errorf("%v mm in %s: %.0f A %s", thick, pos, p.Current.Start, p.NoSettings)
			}
		}
	}
}

// In short arc 5 to 10 mm of wire stand beyond the tip.
func TestWireBeyondTheTipInShortArc(t *testing.T) {
	set, shop := world(t)
	seen := 0
	c := newCatalog(set, shop, Options{})
	for _, ways := range c.all {
		for _, n := range ways {
			if n.mode != ShortArc || n.wire.Construction != "solid" {
				continue
			}
			seen++
			if n.ext < 5 || n.ext > 10 {
				t.Errorf("%s %v mm: %v mm of wire", n.wire.Filler, n.dia, n.ext)
			}
		}
	}
	if seen == 0 {
		t.Error("no short arc at all")
	}
}

// 20 to 25 mm are cleaned on each side of the joint.
func TestWidthToClean(t *testing.T) {
	set, _ := world(t)
	found := false
	for _, r := range set.Cleanings {
		if r.When != "always" { // a coating is taken off wider
			continue
		}
		found = true
		if r.Width < 20 || r.Width > 25 {
			t.Errorf("%+v", r)
		}
	}
	if !found {
		t.Error("the table says no width for a clean joint")
	}
}

// Solid wire runs on electrode positive and leaves no slag; slag belongs to the
// cored wires that form it.
func TestSolidWireOnPositive(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	for i := range set.Wires {
		if w := &set.Wires[i]; w.Construction == "solid" && w.Polarity != "DC+" {
			t.Errorf("%s %v mm on %s", w.Filler, w.Dia, w.Polarity)
		}
	}
	for _, ways := range c.all {
		for _, n := range ways {
			if n.wire.Construction != "solid" {
				continue
			}
			if text := c.words("polarity", n, n.mode, ""); !strings.Contains(text, "positive") {
				t.Errorf("%s: polarity %q", n.wire.Filler, text)
			}
			if text := c.words("torch", n, n.mode, ""); strings.Contains(text, "slag") {
				t.Errorf("%s is solid and leaves no slag: %q", n.wire.Filler, text)
			}
		}
	}
}

// Inductance grows with the current, and a higher one widens the bead; outside
// short arc it has no effect.
func TestInductanceGrowsWithCurrent(t *testing.T) {
	set, shop := world(t)
	at := func(thick float64) Plan {
		j := filletJoint(3, thick, "PB")
		j.Wire, j.Process = "G3Si1 1.0", "short arc"
		return Joints([]joint.Joint{j}, set, shop, Options{})[0]
	}
	thin, thick := at(1.5), at(4)
	if thin.Current.Start >= thick.Current.Start || !strings.HasPrefix(thin.Inductance, "low") || !strings.HasPrefix(thick.Inductance, "middle to high") {
		t.Errorf("%.0f A %q, %.0f A %q", thin.Current.Start, thin.Inductance, thick.Current.Start, thick.Inductance)
	}
	if !strings.Contains(thick.Inductance, "wider") {
		t.Errorf("nothing says that it widens the bead: %q", thick.Inductance)
	}
}

// Drag deepens and narrows, push flattens and widens; slag-forming wire is
// dragged, aluminium is pushed.
func TestDragDeepensPushFlattens(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	for _, n := range c.all[0] {
		text := c.words("torch", n, n.mode, "")
		switch {
		case n.wire.Metal == "aluminium":
			if !strings.HasPrefix(text, "push") {
				t.Errorf("aluminium: %q", text)
			}
		case strings.Contains(n.wire.Construction, "rutile"):
			if !strings.HasPrefix(text, "drag") {
				t.Errorf("rutile cored: %q", text)
			}
		case n.wire.Construction == "solid" && n.mode == ShortArc:
			for _, word := range []string{"drag", "deeper", "narrower", "push", "flatter", "wider"} {
				if !strings.Contains(text, word) {
					t.Errorf("%s short arc: %q does not say %q", n.wire.Filler, text, word)
				}
			}
		}
	}
}

// The trigger is held for short seams and latched for long ones.
func TestTriggerByLength(t *testing.T) {
	set, shop := world(t)
	for length, want := range map[float64]string{40: "hold", 200: "hold", 600: "latch", 3000: "latch"} {
		j := filletJoint(5, 6, "PB")
		j.Length = units.MM(length)
		if p := Joints([]joint.Joint{j}, set, shop, Options{})[0]; !strings.HasPrefix(p.Trigger, want) {
			t.Errorf("%v mm: %q", length, p.Trigger)
		}
	}
}

// Too little gas gives pores, too much disturbs the arc: every flow has a lower
// and an upper end around its start, neither below what shields in a shop (8
// l/min) nor above what a nozzle bears (30 l/min).
func TestFlowHasTwoEnds(t *testing.T) {
	set, _ := world(t)
	for _, r := range set.Flows {
		if r.High == 0 { // self-shielded wire
			continue
		}
		if r.Low < 8 || r.Low >= r.Start || r.Start >= r.High || r.High > 30 {
			t.Errorf("%s %s %s: %v, %v, %v l/min", r.Metal, r.Construction, r.Transfer, r.Low, r.Start, r.High)
		}
	}
	said := ""
	for _, r := range set.Technique {
		if r.Item == "gas" {
			said += r.Text
		}
	}
	if !strings.Contains(said, "pores") || !strings.Contains(said, "disturbs") {
		t.Errorf("the texts say of the gas %q", said)
	}
}

// A bead grows with its current and never wants a faster hand: as it gets larger
// the travel only falls, for every wire that the table of beads is for.
func TestLargerBeadsAreLaidSlower(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	for pos, ways := range c.all {
		for _, n := range ways {
			if len(n.beads) == 0 || !n.wireStock {
				continue
			}
			before, current := math.Inf(1), 0.0
			for area := 5.0; area < 90; area += 0.5 {
				now := n.clamp(n.bears(area))
				travel := travelAt(n.deposit(n.feed(now)), area, 7850)
				if now < current || travel > before*1.02 {
					t.Errorf("%s %s %v %s at %v mm²: %.0f A %.0f mm/min after %.0f A %.0f mm/min", positions[pos], n.wire.Filler, n.dia, n.mode, area, now, travel, current, before)
					break
				}
				before, current = travel, now
			}
		}
	}
}

// Every figure of a joint as a shop would list it lies inside the table of
// plausible ranges.
func TestEveryFigureIsPlausible(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		j := saneJoint(rt)
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		if !p.Settings {
			return
		}
		inside := func(key string, v float64) {
			if r, ok := set.PlausibleRange(key); !ok || v < r.Low*(1-1e-9) || v > r.High*(1+1e-9) {
				rt.Fatalf("%s is %v, plausible are %v to %v: %+v", key, v, r.Low, r.High, j)
			}
		}
		inside("seam_m", float64(p.Seam))
		inside("area_mm2", float64(p.Area))
		inside("weld_kg", float64(p.WeldMetal))
		inside("deposit_kg_h", float64(p.Deposit))
		inside("gas_l_min", p.GasFlow.Start)
		inside("stickout_mm", p.Stickout.Start)
		inside("passes", float64(len(p.Runs)))
		inside("arc_min_kg", float64(p.Arc)/float64(p.WeldMetal))
		inside("gas_l_kg", float64(p.GasL)/float64(p.WeldMetal))
		inside("wire_ratio", float64(p.WireKg)/float64(p.WeldMetal))
		inside("arc_share", float64(p.Arc)/float64(p.Cost.Labour.Total))
		inside("labour_share", float64(p.Cost.LabourCost)/float64(p.Cost.Total))
		inside("price_ratio", float64(p.Cost.Price)/float64(p.Cost.Total))
		for _, r := range p.Runs {
			inside("current_a", float64(r.Current))
			inside("voltage_v", float64(r.Voltage))
			inside("wfs_m_min", float64(r.WireFeed))
			inside("travel_mm_min", float64(r.Travel))
			inside("heat_kj_mm", float64(r.Heat))
			inside("arc_energy_kj_mm", float64(r.ArcEnergy))
		}
	})
}

// Upwards no torch is dragged, whatever the wire: it stands square or points up.
func TestNobodyDragsUpwards(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	up := slices.Index(positions[:], "PF")
	builds := map[string]bool{}
	for _, n := range c.all[up] {
		builds[n.wire.Construction] = true
		if text := c.words("torch", n, n.mode, ""); strings.HasPrefix(text, "drag") {
			t.Errorf("%s upwards: %q", n.wire.Filler, text)
		}
	}
	if len(builds) < 4 {
		t.Errorf("only %v were looked at", builds)
	}
}
