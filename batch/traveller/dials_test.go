package traveller

import (
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// Two passes share their dials up to 4 % of the wire feed and 1.5 % of the volts, and never
// where one lies outside the band that is printed for the other.
func TestSameDialsAtTheLimit(t *testing.T) {
	run := func(feed, volts float64, w plan.Window) plan.Run {
		return plan.Run{WireFeed: units.MMin(feed), Voltage: units.Volt(volts), Transfer: plan.Spray, Feed: w, Volts: plan.Window{Start: volts, Low: volts - 1, High: volts + 1}}
	}
	wide := func(feed float64) plan.Window { return plan.Window{Start: feed, Low: 0.92 * feed, High: 1.08 * feed} }
	lead := run(10, 30, wide(10))
	for _, c := range []struct {
		what        string
		feed, volts float64
		same        bool
	}{
		{"the same", 10, 30, true},
		{"4 % less feed", 9.6, 30, true},
		{"a little more than that", 9.59, 30, false},
		{"0.45 V less", 10, 29.55, true},
		{"a little more than that", 10, 29.54, false},
	} {
		other := run(c.feed, c.volts, wide(c.feed))
		if sameDials(lead, other) != c.same || sameDials(other, lead) != c.same {
			t.Errorf("%s: not %v", c.what, c.same)
		}
	}
	cut := run(10, 30, plan.Window{Start: 10, Low: 9.9, High: 10.8}) // the window of the wire ends there
	if other := run(9.8, 30, wide(9.8)); sameDials(cut, other) || sameDials(other, cut) {
		t.Error("a pass of 9.8 m/min is set by a band that begins at 9.9")
	}
	short := lead
	short.Transfer = plan.ShortArc
	if sameDials(lead, short) {
		t.Error("two modes share their dials")
	}
}

// Every pass lies within the bands printed for the set of dials that names it.
func TestEveryPassLiesInItsBand(t *testing.T) {
	list := everyKind()
	for _, thick := range []units.MM{6, 10, 16, 20, 30, 40} {
		for _, k := range []joint.Kind{joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.DoubleU} {
			for _, position := range []string{"PA", "PF"} {
				list = append(list, butt("T", k, thick, 600, position))
			}
		}
	}
	several := 0
	for _, p := range jobOf(t, list, metric).Plans {
		if !p.Settings {
			continue
		}
		seen := 0
		rows := settings(&p)
		for _, s := range rows {
			seen += len(s.runs)
			for _, r := range s.runs {
				in := func(v float64, w plan.Window) bool { return v >= w.Low-1e-9 && v <= w.High+1e-9 }
				if !in(float64(r.WireFeed), s.feed) || !in(float64(r.Voltage), s.volts) {
					t.Errorf("%s %s t %g: pass %d of %.2f m/min and %.1f V stands under %v and %v", p.Joint.Mark, p.Prep.Kind, float64(p.Prep.T1), r.Number, r.WireFeed, r.Voltage, s.feed, s.volts)
				}
			}
		}
		if seen != len(p.Runs) {
			t.Errorf("%s: %d passes of %d have dials", p.Joint.Mark, seen, len(p.Runs))
		}
		if len(rows) > 1 {
			several++
		}
	}
	if several < 10 {
		t.Errorf("only %d joints with several sets of dials: too few to tell", several)
	}
}
