package plan

import (
	"math"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// hinted plans a list with its hints.
func hinted(t *testing.T, opt Options, joints ...joint.Joint) []Plan {
	t.Helper()
	set, shop := world(t)
	plans := Joints(joints, set, shop, opt)
	Hints(plans, set, shop, opt)
	return plans
}

// textOf returns the sentence of a check on a plan; empty where it has none.
func textOf(p *Plan, code string) string {
	for _, c := range p.Checks {
		if c.Code == code {
			return c.Text
		}
	}
	return ""
}

func TestHintsThatSaveMoney(t *testing.T) {
	with := func(j joint.Joint, change func(*joint.Joint)) joint.Joint { j = j.Apart(); change(&j); return j }
	up := filletJoint(8, 12, "PF")
	wide := with(buttJoint(joint.SingleV, 15, "PA"), func(j *joint.Joint) { j.Angle = 80 })
	for name, c := range map[string]struct {
		code  string
		joint joint.Joint
		want  bool
	}{
		"a fillet upwards":                     {hintTurn, up, true},
		"a fillet upwards on site":             {hintTurn, with(up, func(j *joint.Joint) { j.Where = joint.Site }), false},
		"a fillet in PB":                       {hintTurn, filletJoint(8, 12, "PB"), false},
		"a fillet upwards to a procedure":      {hintTurn, with(up, func(j *joint.Joint) { j.WPS = "W-7" }), false},
		"a fillet upwards without a length":    {hintTurn, with(up, func(j *joint.Joint) { j.Length = 0 }), false},
		"a single V in 25 mm":                  {hintDouble, buttJoint(joint.SingleV, 25, "PA"), true},
		"a single V in 25 mm on a bar":         {hintDouble, with(buttJoint(joint.SingleV, 25, "PA"), func(j *joint.Joint) { j.Backing = "bar" }), false},
		"a single V in 8 mm":                   {hintDouble, buttJoint(joint.SingleV, 8, "PA"), false},
		"a double V in 25 mm":                  {hintDouble, buttJoint(joint.DoubleV, 25, "PA"), false},
		"a V of 80 degrees":                    {hintPrep, wide, true},
		"a V as usual":                         {hintPrep, buttJoint(joint.SingleV, 15, "PA"), false},
		"a leg just above one run":             {hintOneRun, filletJoint(10, 20, "PB"), true},
		"a leg far above one run":              {hintOneRun, filletJoint(16, 20, "PB"), false},
		"a leg of one run":                     {hintOneRun, filletJoint(6, 20, "PB"), false},
		"what one size over costs":             {hintOneOver, filletJoint(6, 12, "PB"), true},
		"one size over an unequal fillet":      {hintOneOver, with(filletJoint(6, 12, "PB"), func(j *joint.Joint) { j.Size.B = 9 }), false},
		"one size over a butt: it has no legs": {hintOneOver, buttJoint(joint.SingleV, 12, "PA"), false},
	} {
		text := textOf(&hinted(t, Options{}, c.joint)[0], c.code)
		if (text != "") != c.want {
			t.Errorf("%s: %s says %q, want it said: %v", name, c.code, text, c.want)
		}
		if text != "" && !strings.Contains(text, "about ") {
			t.Errorf("%s: %q promises a figure", name, text)
		}
	}
}

// What a hint says a change saves is what planning the changed joint in its place saves.
func TestAHintSavesWhatItSays(t *testing.T) {
	before := hinted(t, Options{}, filletJoint(8, 12, "PF"))[0]
	after := hinted(t, Options{}, filletJoint(8, 12, "PB"))[0]
	_, shop := world(t)
	h := hinter{c: &catalog{shop: shop}}
	want := "about " + h.money(float64(before.Cost.Total-after.Cost.Total))
	if text := textOf(&before, hintTurn); !strings.Contains(text, want) {
		t.Errorf("%q, want %s", text, want)
	}
}

func TestAHintIsTheQuietestOfFindings(t *testing.T) {
	for _, p := range hinted(t, Options{}, filletJoint(9, 20, "PF"), buttJoint(joint.SingleV, 30, "PF"), filletJoint(5, 8, "PB")) {
		for _, c := range p.Checks {
			if strings.HasPrefix(c.Code, "hint-") && (c.Level != finding.Note || c.Do == "" || c.Rule == "" || c.Basis == "") {
				t.Errorf("%+v", c)
			}
		}
	}
}

// A leg below the least of the codes is never suggested.
func TestNoHintBelowTheLeastLeg(t *testing.T) {
	for _, opt := range []Options{{}, {Codes: "aws"}} {
		set, shop := world(t)
		h := hinter{c: newCatalog(set, shop, opt)}
		p := hinted(t, opt, filletJoint(9, 25, "PB"))[0]
		if !h.tooSmall(&p, 3.9) {
			t.Errorf("%+v: a leg of 3.9 mm on 25 mm is let through", opt)
		}
		if h.tooSmall(&p, 8.4) {
			t.Errorf("%+v: a leg of 8.4 mm on 25 mm is called too small", opt)
		}
	}
}

func TestAboutKeepsTwoPlacesThatCount(t *testing.T) {
	for v, want := range map[float64]string{0: "0", 0.0347: "0.035", 1.26: "1.3", 9.96: "10", 47.4: "47", 123: "120", 98765: "99000", -3: "0"} {
		if got := about(v); got != want {
			t.Errorf("%g is about %s, want %s", v, got, want)
		}
	}
}

// BenchmarkHints looks for savings in lists of a thousand distinct joints.
func BenchmarkHints(b *testing.B) {
	set, shop := world(b)
	plans := Joints(manyJoints(1000), set, shop, Options{})
	b.ReportAllocs()
	for b.Loop() {
		for i := range plans {
			plans[i].Checks = nil
		}
		Hints(plans, set, shop, Options{})
	}
	b.ReportMetric(float64(b.N)*1000/b.Elapsed().Seconds(), "joints/s")
}

// Where people work in inches, one size over is the next sixteenth, and that is what is
// priced: no gauge is for a leg of 0.291 in.
func TestOneSizeOverInInches(t *testing.T) {
	for leg, want := range map[float64]string{6.35: "leg 7.9 mm instead of", 4.7625: "leg 6.4 mm instead of", 6: "leg 7.9 mm instead of"} {
		fillet := func(leg float64) joint.Joint { // both ways with the wire that is asked for
			j := filletJoint(leg, 12.7, "PB")
			j.Wire, j.Gas = "G3Si1 1.2", "M21"
			return j
		}
		p := hinted(t, Options{US: true}, fillet(leg))
		text := textOf(&p[0], hintOneOver)
		if !strings.Contains(text, want) {
			t.Errorf("%g mm: %q, not %q", leg, text, want)
		}
		Imperial(p)
		if text = textOf(&p[0], hintOneOver); strings.Contains(text, "leg 0.") {
			t.Errorf("%g mm: %q is no size of the trade", leg, text)
		}
		at := fillet(math.Round((leg+1.5)/25.4*16) * 25.4 / 16)
		own, over := fillet(leg), 0.0
		for i, q := range [][]Plan{hinted(t, Options{US: true}, own), hinted(t, Options{US: true}, at)} {
			over += float64(q[0].Cost.Total) * float64(2*i-1)
		}
		if !strings.Contains(text, "about "+about(over)) {
			t.Errorf("%g mm: %q, but planned so it costs %.2f more", leg, text, over)
		}
	}
}
