package plan

import (
	"math"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// shapeKey names the joint in the table of shape factors.
func shapeKey(kind joint.Kind) string {
	switch kind {
	case joint.Fillet:
		return "tee"
	case joint.Lap:
		return "lap"
	case joint.Corner:
		return "corner"
	}
	return "butt"
}

// passCooling is the time from 800 to 500 °C of one pass: a pair where the shape
// factor is a range.
type passCooling struct {
	from       units.Celsius
	fast, slow units.Second
	thin       bool // heat flows in two directions at the slow end
}

// coolingOf works out one pass in the thinner part. The first pass starts at the
// preheat or in the warmth of the shop; a later one starts at the interpass
// limit, the warmest that it may.
func coolingOf(t *task, p *Plan, r *Run, shape *tables.ShapeFactor) (passCooling, bool) {
	out := passCooling{from: startOf(p, r.Number > 1)}
	d := units.MM(t.thin)
	fast, _, err1 := weld.Cooling(out.from, r.Heat, d, shape.F2Low, shape.F3)
	slow, thin, err2 := weld.Cooling(out.from, r.Heat, d, shape.F2High, shape.F3)
	out.fast, out.slow, out.thin = fast, slow, thin
	return out, err1 == nil && err2 == nil
}

// startOf returns the temperature that a pass starts from.
func startOf(p *Plan, later bool) units.Celsius {
	from := units.Celsius(ambient)
	if p.Preheat != nil {
		from = max(from, *p.Preheat)
	}
	if later && p.Interpass != nil {
		from = max(from, *p.Interpass)
	}
	return from
}

// cooling fills in the shortest and the longest time that shape factors and
// passes give, and compares them with what the steel likes.
func (k *checker) cooling(t *task, p *Plan) {
	shape, ok := k.c.set.ShapeFactor(shapeKey(t.prep.Kind))
	if !ok || t.thin <= 0 {
		return
	}
	low, high := math.Inf(1), 0.0
	for i := range p.Runs {
		pass, ok := coolingOf(t, p, &p.Runs[i], &shape)
		if !ok {
			return
		}
		low, high = min(low, float64(pass.fast)), max(high, float64(pass.slow))
	}
	p.T85 = &[2]units.Second{units.Second(low), units.Second(high)}
	m := k.c.richest(t, max(float64(t.prep.T1), float64(t.prep.T2))).row
	limit, ok := k.c.set.HeatLimit(m.Family)
	if !ok || limit.T85High == 0 {
		return
	}
	hard := m.Family == hardened
	tell := func(code string, level finding.Level) {
		format, args := "the weld cools from 800 to 500 °C in %s (t8/5), and %s wants %g to %g s", []any{strings.Replace(secondsText(p.T85[0], p.T85[1]), " to ", "–", 1), m.Grade, float64(limit.T85Low), float64(limit.T85High)}
		if window := heatWindow(t, p, &shape, &limit); window != nil {
			format, args = format+": begun at %s °C in %s that takes %s to %s kJ/mm", append(args, window...)
		}
		k.sayFrom(code, level, limit.Source, limit.Basis, format, args...)
	}
	switch {
	case high < float64(limit.T85Low) || hard && low < float64(limit.T85Low):
		tell("cooling-fast", levelOf(hard))
	case low > float64(limit.T85High) || hard && high > float64(limit.T85High):
		tell("cooling-slow", finding.Warning)
	}
}

func levelOf(loud bool) finding.Level {
	if loud {
		return finding.Warning
	}
	return finding.Note
}

// heatWindow turns a window of cooling times into heat inputs of a first pass
// that lie in it whichever end of the shape factor is right: start, thickness, least
// and most heat as texts; nil where there is no such window.
func heatWindow(t *task, p *Plan, shape *tables.ShapeFactor, limit *tables.HeatLimit) []any {
	from, d := startOf(p, false), units.MM(t.thin)
	low, err1 := weld.HeatForCooling(from, limit.T85Low, d, shape.F2Low, shape.F3)
	high, err2 := weld.HeatForCooling(from, limit.T85High, d, shape.F2High, shape.F3)
	if err1 != nil || err2 != nil || low >= high {
		return nil
	}
	return []any{number(float64(from), 0), mmText(t.thin), number(float64(low), 2), number(float64(high), 2)}
}

// interpass fills in how warm the joint may be before the next pass: by the
// parent metal that bears least. A preheat above it wins, and is told, as is one that
// comes too close to it to be held.
func (k *checker) interpass(t *task, p *Plan) {
	var limit tables.HeatLimit
	found := false
	for _, m := range []*tables.Material{t.mat, t.mat2} {
		if m == nil {
			continue
		}
		if l, ok := k.c.set.HeatLimit(m.Family); ok && l.Interpass > 0 && (!found || l.Interpass < limit.Interpass) {
			limit, found = l, true
		}
	}
	if !found || p.Preheat == nil && len(p.Runs) < 2 {
		return
	}
	top := limit.Interpass
	if p.Preheat != nil && *p.Preheat > top {
		k.sayFrom("preheat-unknown", finding.Warning, limit.Source, limit.Basis, "preheat %.0f °C is above the interpass limit of %.0f °C: it takes a filler with less hydrogen, or more heat per pass", float64(*p.Preheat), float64(top))
		top = *p.Preheat
	} else if r := k.c.book.first("preheat-narrow"); r != nil && p.Preheat != nil && float64(top-*p.Preheat) < r.Value {
		k.say(r, finding.Warning, "preheat %.0f °C leaves %.0f °C to the interpass limit of %.0f °C", float64(*p.Preheat), float64(top-*p.Preheat), float64(top))
	}
	p.Interpass = &top
}

// heatLimits compares the heat of the passes with what the parent metals bear.
func (k *checker) heatLimits(t *task, p *Plan) {
	for i, m := range []*tables.Material{t.mat, t.mat2} {
		if m == nil || i == 1 && t.mat.Family == m.Family {
			continue
		}
		limit, ok := k.c.set.HeatLimit(m.Family)
		if !ok {
			continue
		}
		least := coolest(p)
		if most := float64(p.HeatMax); limit.HeatMax > 0 && most > float64(limit.HeatMax) {
			k.sayFrom("heat-high", finding.Warning, limit.Source, limit.Basis, "heat input of %s kJ/mm; %s bears %g kJ/mm", number(most, 2), m.Grade, float64(limit.HeatMax))
		}
		if limit.HeatMin > 0 && least > 0 && least < float64(limit.HeatMin) {
			k.sayFrom("heat-low", finding.Warning, limit.Source, limit.Basis, "heat input of %s kJ/mm; %s wants at least %g kJ/mm", number(least, 2), m.Grade, float64(limit.HeatMin))
		}
	}
}
