package settle

import (
	"fmt"
	"math"
	"sort"
)

// farOff is how far a record may lie from the middle one before it is taken for a
// slip: a factor of four, which hours for minutes and grams for kilograms exceed.
// Common practice.
const farOff = 4

// wide is the half-width of an interval, as a share of the value, above which the
// records scatter too much for a value to be taken from them. Common practice.
const wide = 0.5

// Below these a record's own rounding outweighs its scatter: minutes are written
// whole, kilograms to some grams. Common practice.
const (
	wholeMinute = 1.0
	someGrams   = 0.02
)

// operating fits the operating factor from arc time and labour.
//
//	f = Σ u site (1 + rework) T_arc / Σ u (T_labour − T_apart)   (SETTLE-4)
//
// T in min; u: see ratio. Only records with both, and joints whose machine bears
// more arc time than that. Basis: derived, COST-1 solved for the factor.
func (s *Settled) operating(shop Shop) Factor {
	f := Factor{Key: "operating_factor", Name: "operating factor", Unit: "share of the welding time", Planned: shop.OperatingFactor}
	var arc, rest, u []float64
	for _, j := range s.usable(func(j *Joint) float64 { return ratioOf(j.atWeld(shop.ReworkPct)) }, "operating factor") {
		if j.Plan.Duty < shop.OperatingFactor {
			continue
		}
		a, b := j.atWeld(shop.ReworkPct)
		planned, _, _ := j.Planned()
		arc, rest, u = append(arc, a), append(rest, b), append(u, 1/(planned+wholeMinute))
	}
	if !f.enough(len(arc), "arc time and welder's time in the same row") {
		return f
	}
	return f.take(ratio(arc, rest, u), 0.01, 1)
}

// wire fits what wire really goes through against the plan, losses and overweld
// together: the spool on the scales is the surest of all records.
//
//	g = Σ u wire / Σ u planned wire   (SETTLE-5)
//
// Basis: derived, definition.
func (s *Settled) wire(shop Shop) Factor {
	f := Factor{Key: "", Name: "wire used over wire planned", Unit: "ratio", Planned: 1}
	var used, planned, u []float64
	for _, j := range s.usable(func(j *Joint) float64 { _, _, w := j.Planned(); return ratioOf(float64(j.Record.Wire), w) }, "wire") {
		_, _, w := j.Planned()
		used, planned, u = append(used, float64(j.Record.Wire)), append(planned, w), append(u, 1/(w+someGrams))
	}
	if !f.enough(len(used), "wire used") {
		return f
	}
	f = f.take(ratio(used, planned, u), 0.05, 20)
	if f.Fitted {
		f.Sentence = "losses and oversize together; the next two lines tell them apart where arc time was recorded too"
	}
	return f
}

// overweld fits the oversize of fillets from the metal that the arc laid.
//
//	Σ u made(x) = Σ u metal, solved for x   (SETTLE-6)
//
// x in mm; made by SETTLE-2, metal by SETTLE-1 times the deposition efficiency.
// Basis: derived, the balance of metal.
func (s *Settled) overweld(shop Shop) Factor {
	f := Factor{Key: "overweld_mm", Name: "oversize of fillets", Unit: "mm", Planned: shop.Overweld}
	var joints []Joint
	var u, weights []float64
	for _, j := range s.usable(func(j *Joint) float64 {
		if !j.isFillet() || j.Record.Arc == 0 {
			return 0
		}
		return ratioOf(j.metal(), j.made(shop.Overweld, shop.Overweld))
	}, "oversize") {
		_, _, w := j.Planned()
		joints, u, weights = append(joints, j), append(u, 1/(w+someGrams)), append(weights, j.metal()/(w+someGrams))
	}
	if !f.enough(len(joints), "arc time of fillets and laps") {
		return f
	}
	f = f.take(jackknife(len(joints), weights, func(skip int) float64 { return solveOverweld(joints, u, shop.Overweld, skip) }), -10, 20)
	if f.Fitted {
		f.Sentence = "by arc time and wire feed" + planFeed(joints)
	}
	return f
}

// loss fits the wire that never reached the arc.
//
//	p = 100 (Σ u wire / Σ u melted − 1)   (SETTLE-7)
//
// p in % of the wire melted. Basis: derived, definition.
func (s *Settled) loss(shop Shop) Factor {
	f := Factor{Key: "waste_pct", Name: "wire lost", Unit: "%", Planned: shop.WastePct}
	var used, melted, u []float64
	var joints []Joint
	for _, j := range s.usable(func(j *Joint) float64 {
		if j.Record.Arc == 0 {
			return 0
		}
		return ratioOf(float64(j.Record.Wire), j.melted())
	}, "wire lost") {
		joints = append(joints, j)
		_, _, w := j.Planned()
		used, melted, u = append(used, float64(j.Record.Wire)), append(melted, j.melted()), append(u, 1/(w+someGrams))
	}
	if !f.enough(len(used), "wire and arc time in the same row") {
		f.Sentence += "; without both, oversize and loss cannot be told apart"
		return f
	}
	e := ratio(used, melted, u)
	f = f.take(estimate{100 * (e.value - 1), 100 * (e.low - 1), 100 * (e.high - 1)}, -1000, 1000)
	if !f.Fitted {
		return f
	}
	f.Sentence = "by the scales against arc time and wire feed" + planFeed(joints)
	if f.High < 0 {
		f.Fitted, f.Sentence = false, fmt.Sprintf("the records say that %.0f %% less wire was used than ran through the feeder: look at arc time and wire feed, or at the scales", -f.Value)
	}
	return f
}

// planFeed says where the plan's wire feed stood in for a recorded one.
func planFeed(joints []Joint) string {
	n := 0
	for _, j := range joints {
		if j.Record.Feed == 0 {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("; %d of %d rows without a wire feed are taken at the plan's", n, len(joints))
}

// ratioOf returns a / b, 0 where one of them is missing.
func ratioOf(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 0
	}
	return a / b
}

// usable returns the joints for which a ratio can be formed and is no slip; those
// that are one are told. The middle ratio is the yardstick.
func (s *Settled) usable(of func(*Joint) float64, what string) []Joint {
	var ratios []float64
	for i := range s.Joints {
		if j := &s.Joints[i]; j.Plan.Settings {
			if r := of(j); r > 0 {
				ratios = append(ratios, r)
			}
		}
	}
	if len(ratios) == 0 {
		return nil
	}
	sort.Float64s(ratios)
	middle := ratios[len(ratios)/2]
	var out []Joint
	for i := range s.Joints {
		j := &s.Joints[i]
		if !j.Plan.Settings {
			continue
		}
		switch r := of(j); {
		case r <= 0:
		case r > middle*farOff || r < middle/farOff:
			s.Left = append(s.Left, Odd{j.Mark, j.Record.Row, fmt.Sprintf("by what the floor wrote, %s would be %s what the other joints usually take; look for a slip of unit or decimal sign in the Floor columns of this row", what, timesOf(r/middle))})
		default:
			out = append(out, *j)
		}
	}
	return out
}

// timesOf says a ratio far from one in words: "79 times", "1/79 of".
func timesOf(ratio float64) string {
	if ratio < 1 {
		return fmt.Sprintf("1/%.0f of", 1/ratio)
	}
	return fmt.Sprintf("%.0f times", ratio)
}

// enough tells whether there are records to fit from; else it writes the sentence.
func (f *Factor) enough(n int, need string) bool {
	f.Records = n
	if n >= Least {
		return true
	}
	f.Sentence = fmt.Sprintf("not worked out: %s %s, at least %d are needed; write more records into the Floor columns", rowsHave(n), need, Least)
	return false
}

// take keeps an estimate that lies within what the value can be and is not too
// wide to be of use.
func (f Factor) take(e estimate, low, high float64) Factor {
	f.Value, f.Low, f.High = e.value, e.low, e.high
	size := math.Max(math.Abs(e.value), f.scale())
	switch half := (e.high - e.low) / 2; {
	case math.IsNaN(e.value) || math.IsInf(e.value, 0) || e.value < low || e.value > high:
		f.Sentence = "not worked out: the records give no possible value; look at the odd ones and correct them"
	case half > wide*size:
		f.Sentence = fmt.Sprintf("not worked out: the records scatter too much, %.3g give or take %.3g; write more records, or correct those that are wrong", e.value, half)
	default:
		f.Fitted = true
	}
	return f
}

// scale is the size against which the interval of a value near zero is judged.
func (f Factor) scale() float64 {
	switch f.Unit {
	case "mm":
		return 2
	case "%":
		return 20
	}
	return 0
}

// solveOverweld finds the overweld in mm at which the joints hold as much metal
// as was laid, by halving: the metal grows with it.
func solveOverweld(joints []Joint, u []float64, planned float64, skip int) float64 {
	laid := 0.0
	for i := range joints {
		if i != skip {
			laid += u[i] * joints[i].metal()
		}
	}
	low, high := -10.0, 20.0
	for range 60 {
		x := (low + high) / 2
		made := 0.0
		for i := range joints {
			if i != skip {
				made += u[i] * joints[i].made(x, planned)
			}
		}
		if made < laid {
			low = x
		} else {
			high = x
		}
	}
	return (low + high) / 2
}

// rowsHave counts rows in front of what they have: "1 row has".
func rowsHave(n int) string {
	if n == 1 {
		return "1 row has"
	}
	return fmt.Sprintf("%d rows have", n)
}
