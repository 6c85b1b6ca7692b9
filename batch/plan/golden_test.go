package plan

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
)

var update = flag.Bool("update", false, "rewrite the golden text")

// text writes a plan as a person would check it by hand.
func text(p *Plan) string {
	var b strings.Builder
	j := p.Joint
	fmt.Fprintf(&b, "%s, t %s mm, %s, %s\n", j.Kind, number(float64(j.T1), 2), j.Position, j.Material)
	fmt.Fprintf(&b, "  area drawn %.2f, with allowances %.2f mm²; seam %.3f m; metal %.4f kg\n", p.AreaDrawn, p.Area, p.Seam, p.WeldMetal)
	if !p.Settings {
		fmt.Fprintf(&b, "  %s\n", p.NoSettings)
	} else {
		fmt.Fprintf(&b, "  %s %s %s mm, %s, %s, %s\n", p.Process, p.Filler, number(float64(p.Dia), 1), p.Gas, p.Transfer, p.Machine)
		fmt.Fprintf(&b, "  wire %.4f kg, gas %.1f l, arc %.3f min, heat %.2f kJ/mm with k\n", p.WireKg, p.GasL, p.Arc, p.HeatMax)
	}
	for _, r := range p.Runs {
		fmt.Fprintf(&b, "  pass %d layer %d bead %d side %d %s %s: %.2f mm², %.0f A, %.1f V, %.2f m/min, %.0f mm/min, %s\n",
			r.Number, r.Layer, r.Bead, r.Side, r.Kind, r.Transfer, r.Area, r.Current, r.Voltage, r.WireFeed, r.Travel, r.Technique)
	}
	for _, c := range p.Checks {
		fmt.Fprintf(&b, "  %s %s: %s\n", c.Level, c.Code, c.Text)
	}
	return b.String()
}

func handPicked() []joint.Joint {
	stainless := filletJoint(2, 2, "PB")
	stainless.Kind, stainless.Material = joint.Lap, "304L"
	aluminium := buttJoint(joint.SingleV, 6, "PA")
	aluminium.Material = "5083"
	stitched := filletJoint(6, 10, "PF")
	stitched.Stitch = &joint.Stitch{Count: 5, Segment: 50, Gap: 100, Pitch: 150, Text: "5x50(100)"}
	unknown := filletJoint(5, 6, "PB")
	unknown.Material = "Unobtainium 7"
	bare := filletJoint(5, 0, "PB")
	return []joint.Joint{filletJoint(4, 3.2, "PB"), filletJoint(8, 12, "PB"), buttJoint(joint.SingleV, 12, "PF"), stainless, aluminium, stitched, unknown, bare}
}

// The golden text is no proof of the figures; it shows a reviewer what a change
// of a table or of the planner does to ordinary joints.
func TestHandPickedJointsReadAsBefore(t *testing.T) {
	set, shop := world(t)
	var b strings.Builder
	for _, j := range handPicked() {
		p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
		b.WriteString(text(&p))
	}
	path := filepath.Join("testdata", "joints.txt")
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("the plans differ from %s; read the difference, then -update:\n%s", path, b.String())
	}
}

// Thin sheet with 0.8 mm wire is welded at 60 to 120 A: common practice, no source.
func TestThinSheetWithThinWire(t *testing.T) {
	set, shop := world(t)
	for _, thick := range []float64{2, 2.5, 3} {
		lap := filletJoint(thick, thick, "PB")
		lap.Kind = joint.Lap
		for _, j := range []joint.Joint{buttJoint(joint.SquareButt, thick, "PA"), lap} {
			j.Wire = "G3Si1 0.8"
			p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
			if p.Settings && (p.Filler != "G3Si1" || p.Dia != 0.8 || p.Transfer != ShortArc) {
				t.Errorf("%s of %v mm: %s %v in %s", j.Kind, thick, p.Filler, p.Dia, p.Transfer)
			}
			if !p.Settings || p.Current.Start < 60 || p.Current.Start > 120 {
				t.Errorf("%s of %v mm: %.0f A %s", j.Kind, thick, p.Current.Start, p.NoSettings)
			}
		}
	}
}

// A closed square edge without reinforcement has nothing to fill: no travel, no
// time, a sentence, and nothing infinite.
func TestClosedSquareButtWithoutAllowances(t *testing.T) {
	set, shop := world(t)
	bare := *shop
	bare.Overweld, bare.Convexity, bare.CapHeight, bare.RootHeight, bare.FitGap, bare.WastePct = 0, 0, 0, 0, 0, 0
	j := buttJoint(joint.SquareButt, 3, "PA")
	j.GapGiven = true
	p := Joints([]joint.Joint{j}, set, &bare, Options{})[0]
	if p.Settings || p.NoSettings == "" || p.Area != 0 || p.WeldMetal != 0 || p.Travel.Start != 0 || p.Arc != 0 {
		t.Errorf("%+v", p)
	}
	finite(t, "Plan", reflect.ValueOf(p))
}

// The hot path's plain formulas are those of package weld.
func TestHotPathIsPackageWeld(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	rapid.Check(t, func(rt *rapid.T) {
		pos := rapid.IntRange(0, len(positions)-1).Draw(rt, "position")
		n := rapid.SampledFrom(c.all[pos]).Draw(rt, "way")
		current := rapid.Float64Range(n.low, n.high).Draw(rt, "current")
		area := rapid.Float64Range(2, 60).Draw(rt, "area")
		density := rapid.SampledFrom([]float64{7850, 7930, 2660}).Draw(rt, "density")
		feed := n.feed(current)
		want, err := weld.Melting{A: n.a, B: n.b}.Feed(units.Amp(current), units.MM(n.ext))
		if err != nil || !near(feed, float64(want), 1e-9) {
			rt.Fatalf("feed %v, weld %v (%v)", feed, want, err)
		}
		if back := n.currentAt(feed); !near(back, current, 1e-9) {
			rt.Fatalf("the current of %v m/min is %v, was %v", feed, back, current)
		}
		rate, err := weld.Deposition(units.MMin(feed), units.GramM(n.q), n.eff)
		if err != nil || !near(n.deposit(feed), float64(rate), 1e-9) {
			rt.Fatalf("deposit %v, weld %v (%v)", n.deposit(feed), rate, err)
		}
		v, err := weld.Travel(rate, units.MM2(area), units.KgM3(density))
		if err != nil || !near(travelAt(float64(rate), area, density), float64(v), 1e-9) {
			rt.Fatalf("travel %v, weld %v (%v)", travelAt(float64(rate), area, density), v, err)
		}
		if back := depositFor(float64(v), area, density); !near(back, float64(rate), 1e-9) {
			rt.Fatalf("%v mm/min needs %v kg/h, was %v", v, back, rate)
		}
		if back := n.feedFor(float64(rate)); !near(back, feed, 1e-9) {
			rt.Fatalf("%v kg/h needs %v m/min, was %v", rate, back, feed)
		}
	})
}

// A joint split in two of half its length costs no less than the whole.
func TestSplittingNeverSaves(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		j := filletJoint(rapid.Float64Range(3, 12).Draw(rt, "leg"), rapid.Float64Range(4, 20).Draw(rt, "thick"), "PB")
		j.Length, j.Wire, j.Gas, j.Process = units.MM(rapid.Float64Range(40, 8000).Draw(rt, "length")), "G3Si1 1.2", "M21", "135"
		half := j.Apart()
		half.Length /= 2
		one, two := Joints([]joint.Joint{j}, set, shop, Options{}), Joints([]joint.Joint{half, half}, set, shop, Options{})
		for _, p := range append(one, two...) {
			if !p.Settings || p.Cost.Total <= 0 {
				rt.Fatalf("no settings: %s", p.NoSettings)
			}
		}
		whole, parts := cost(one), cost(two)
		if parts < whole*(1-1e-9) {
			rt.Fatalf("%v mm: whole %v, two halves %v", j.Length, whole, parts)
		}
	})
}

func cost(plans []Plan) float64 {
	sum := units.Money(0)
	for i := range plans {
		sum += plans[i].Cost.Total
	}
	return float64(sum)
}

// A thicker single V in the same wire never costs less: there is more to fill.
func TestThickerGrooveIsNeverCheaper(t *testing.T) {
	set, shop := world(t)
	rapid.Check(t, func(rt *rapid.T) {
		thin := rapid.Float64Range(6, 25).Draw(rt, "thin")
		by := rapid.Float64Range(1.02, 1.6).Draw(rt, "by")
		var costs [2]float64
		for i, thick := range []float64{thin, thin * by} {
			j := buttJoint(joint.SingleV, thick, "PA")
			j.Wire, j.Gas, j.Process = "G3Si1 1.2", "M21", "135"
			j.Angle, j.Gap, j.RootFace, j.GapGiven, j.RootFaceGiven = 60, 2, 2, true, true
			plans := Joints([]joint.Joint{j}, set, shop, Options{})
			if !plans[0].Settings {
				rt.Fatalf("%v mm: %s", thick, plans[0].NoSettings)
			}
			costs[i] = cost(plans)
		}
		if costs[1] < costs[0]*(1-1e-9) {
			rt.Fatalf("%v mm costs %v, %v mm costs %v", thin, costs[0], thin*by, costs[1])
		}
	})
}
