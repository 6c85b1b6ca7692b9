package plan

import (
	"fmt"
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// Hints adds to the plans of a list where money could be saved: each by planning
// the joint again in the altered form, with the wires and gases that the list uses
// already. It is a pass of its own, so that planning stays as fast as it is. A
// saving is told on each joint where it is a notable share of the list's cost,
// and always on the joint where it is largest, with the sum over the list.
func Hints(plans []Plan, set *tables.Set, shop *rates.Shop, opt Options) {
	newCatalog(set, shop, opt).hints(plans)
}

func (c *catalog) hints(plans []Plan) {
	h := newHinter(plans, c)
	if h == nil {
		return
	}
	for i := range plans {
		if h.open(&plans[i]) {
			h.look(i, &plans[i])
		}
	}
	for _, code := range hintCodes {
		h.tell(plans, code)
	}
}

// The hints, in the order they are told.
const (
	hintTurn    = "hint-turn"
	hintDouble  = "hint-double"
	hintPrep    = "hint-prep"
	hintOneRun  = "hint-one-run"
	hintOneOver = "hint-one-over"
)

var hintCodes = []string{hintTurn, hintDouble, hintPrep, hintOneRun, hintOneOver}

// hinter looks for savings in a list that is planned.
type hinter struct {
	c      *catalog
	used   []bool // set-ups that the list uses
	list   float64
	found  map[string][]saving
	became int         // single runs that one size over would make several
	joint  joint.Joint // the altered one; its memory serves for all
	tried  []Hint      // of one joint, where they are asked for
	trace  bool
}

// saving is one joint's saving under one hint.
type saving struct {
	at    int
	money float64
	text  string
}

// newHinter returns nil for a list without cost: there is nothing to save.
func newHinter(plans []Plan, c *catalog) *hinter {
	h := &hinter{c: c, used: make([]bool, len(c.setups)), found: map[string][]saving{}}
	for i := range plans {
		p := &plans[i]
		h.list += float64(p.Cost.Total)
		for k, s := range c.setups {
			if s.wire.Filler == p.Filler && sameDia(s.wire.Dia, p.Dia) && s.gas.Gas == p.Gas {
				h.used[k] = true
			}
		}
	}
	if h.list <= 0 {
		return nil
	}
	return h
}

// open tells whether a hint may be given at all: a procedure that is named
// governs, and without cost there is nothing to compare.
func (h *hinter) open(p *Plan) bool {
	return p.Settings && p.Cost.Total > 0 && p.Joint.WPS == "" && p.Seam > 0
}

// look tries the altered forms that a joint allows. What cannot save is sorted
// out before anything is planned.
func (h *hinter) look(i int, p *Plan) {
	h.turn(i, p)
	h.double(i, p)
	h.angle(i, p)
	h.oneRun(i, p)
	h.oneOver(i, p)
}

// altered is a joint planned in another form.
type altered struct {
	cost, minutes, kg float64
	passes            int
	way               *way
}

// replan plans an altered joint with what the list uses already; false where
// nothing of it fits.
func (h *hinter) replan(j joint.Joint) (altered, bool) {
	h.joint = j
	t := h.c.newTask(&h.joint)
	of := h.c.offers(t)
	var best *candidate
	for k := range of.list {
		if x := &of.list[k]; h.used[x.way.setup] && (best == nil || x.cost < best.cost) {
			best = x
		}
	}
	if best == nil || of.forced {
		return altered{}, false
	}
	t = h.c.filledBy(best.way, t)
	o := h.c.tried(best.way, t)
	return altered{
		cost: float64(o.cost.Total), minutes: float64(o.cost.Labour.Total),
		kg: t.density * t.made * o.growth() * 1e-6 * t.seam, passes: o.passes, way: best.way,
	}, true
}

// gain takes a saving where it reaches the rule's share of the joint's cost.
func (h *hinter) gain(code string, i int, p *Plan, a altered, form, text string) {
	saved := float64(p.Cost.Total) - a.cost
	h.note(code, p, a, form, saved)
	if r := h.c.book.first(code); r != nil && saved >= r.Value*float64(p.Cost.Total) {
		h.found[code] = append(h.found[code], saving{i, saved, text})
	}
}

// turn compares a joint out of position with the same joint turned.
func (h *hinter) turn(i int, p *Plan) {
	from := p.Joint.Position
	switch from {
	case "PD", "PE", "PF", "PG", "PH", "PJ", "PK", "H-L045", "J-L045":
	case "PC":
		if p.Prep.LegA > 0 {
			return // a fillet there is no worse off than in PB
		}
	default:
		return
	}
	if p.Joint.Where == joint.Site {
		return
	}
	j := p.Joint.Apart()
	if j.Position = "PA"; p.Prep.LegA > 0 {
		j.Position = "PB"
	}
	if a, ok := h.replan(j); ok {
		h.gain(hintTurn, i, p, a, "position "+j.Position, fmt.Sprintf("turned from %s to %s it saves %s, handling not counted", from, j.Position, h.less(p, a)))
	}
}

// twoSided are the preparations from both sides that stand for those from one.
var twoSided = map[joint.Kind]joint.Kind{
	joint.SingleV: joint.DoubleV, joint.SingleBevel: joint.DoubleBevel, joint.SingleU: joint.DoubleU, joint.SingleJ: joint.DoubleJ,
}

// double compares a thick joint prepared from one side with both sides.
func (h *hinter) double(i int, p *Plan) {
	to, single := twoSided[p.Prep.Kind]
	r := h.c.book.first(hintDouble)
	if !single || r == nil || float64(thinOf(p)) <= r.Over || p.Prep.Backing != "" || p.Joint.Size.A > 0 || p.Joint.Depth > 0 {
		return
	}
	j := p.Joint.Apart()
	j.Kind, j.Sides, j.RootFaceGiven, j.RootFace = to, 1, false, 0
	if a, ok := h.replan(j); ok {
		h.gain(hintDouble, i, p, a, string(to), fmt.Sprintf("as a %s it saves %s, with about %s kg of weld metal instead of %s kg; turning and the second preparation not counted",
			to, h.less(p, a), about(a.kg), about(float64(p.WeldMetal))))
	}
}

// angle compares a groove wider than usual with the usual one.
func (h *hinter) angle(i int, p *Plan) {
	r := h.c.book.first(hintPrep)
	if r == nil || p.Joint.Angle <= 0 || p.Prep.Depth <= 0 {
		return
	}
	row, ok := h.c.set.Prep(string(p.Prep.Kind), "", p.MetalGroup, thinOf(p))
	if !ok || row.Angle <= 0 || float64(p.Joint.Angle-row.Angle) < r.Over {
		return
	}
	j := p.Joint.Apart()
	j.Angle = row.Angle
	if a, ok := h.replan(j); ok {
		h.gain(hintPrep, i, p, a, number(float64(row.Angle), 1)+"° instead of "+number(float64(p.Joint.Angle), 1)+"°", fmt.Sprintf("with the usual %s° instead of %s° it saves %s, with about %s kg of weld metal instead of %s kg",
			number(float64(row.Angle), 1), number(float64(p.Joint.Angle), 1), h.less(p, a), about(a.kg), about(float64(p.WeldMetal))))
	}
}

// thinOf is the thinner part of a plan; 0 where no thickness is known.
func thinOf(p *Plan) units.MM {
	if p.Prep.T1 <= 0 || p.Prep.T2 <= 0 {
		return max(p.Prep.T1, p.Prep.T2)
	}
	return min(p.Prep.T1, p.Prep.T2)
}

// oneRun names the leg that would be one run where the leg called is a little
// more than that, unless the smaller leg is below the least of the codes.
func (h *hinter) oneRun(i int, p *Plan) {
	leg, r := h.equalLeg(p), h.c.book.first(hintOneRun)
	if r == nil || leg <= 0 || p.Passes() < 2 {
		return
	}
	t := h.c.newTask(p.Joint)
	one := math.Floor(h.oneRunLeg(t, p) + 1e-9) // drawings call whole millimetres
	if one <= 0 || leg-one < 0.05 || leg-one > r.Over || h.tooSmall(p, one) {
		return
	}
	j := p.Joint.Apart()
	j.Size = joint.Size{Means: joint.Leg, A: units.MM(one)}
	if a, ok := h.replan(j); ok && a.passes == 1 {
		h.gain(hintOneRun, i, p, a, "leg "+mmText(one), fmt.Sprintf("leg %s takes %d runs; %s would be one, %s less", mmText(leg), p.Passes(), mmText(one), h.less(p, a)))
	}
}

// oneRunLeg is the largest leg that the plan's own way lays in one run.
func (h *hinter) oneRunLeg(t *task, p *Plan) float64 {
	if t.pos < 0 {
		return 0
	}
	for _, n := range h.c.all[t.pos] {
		if n.wire.Filler == p.Filler && sameDia(n.wire.Dia, p.Dia) && n.gas.Gas == p.Gas && n.mode == p.Transfer {
			return n.pass.MaxLeg
		}
	}
	return 0
}

// equalLeg is the leg of a fillet with equal legs whose size the list states.
func (h *hinter) equalLeg(p *Plan) float64 {
	if p.Prep.Kind != joint.Fillet || p.Joint.Size.A <= 0 || p.Prep.LegA != p.Prep.LegB {
		return 0
	}
	return float64(p.Prep.LegA)
}

// tooSmall tells whether a leg is below what the rules ask of the thickness.
func (h *hinter) tooSmall(p *Plan, leg float64) bool {
	thin := float64(thinOf(p))
	if r := h.c.book.at("leg-min", thin); r != nil && leg < r.Value {
		return true
	}
	throat := leg * float64(p.Prep.Throat/p.Prep.LegA)
	r := h.c.book.at("throat-min", thin)
	return r != nil && throat < r.Value
}

// sizeOver is the leg one size over another: so many millimetres more, or where people
// work in inches the next sixteenth, by which their gauges go.
func (h *hinter) sizeOver(leg, step float64) float64 {
	if !h.c.us {
		return leg + step
	}
	return (math.Floor(leg/sixteenth+nearSixteenth) + 1) * sixteenth
}

// sixteenth is the step in mm by which fillets are called and gauged in inches, common
// practice: 3/16, 1/4, 5/16.
const sixteenth = units.MMPerInch / 16

// nearSixteenth is the share of a sixteenth that a leg may lack of one and still be it:
// lists in millimetres write 6 or 6.4 for 1/4 in.
const nearSixteenth = 0.25

// oneOver says what it costs to weld a fillet one size larger than called.
func (h *hinter) oneOver(i int, p *Plan) {
	leg, r := h.equalLeg(p), h.c.book.first(hintOneOver)
	if r == nil || leg <= 0 {
		return
	}
	over := h.sizeOver(leg, r.Over)
	j := p.Joint.Apart()
	j.Size = joint.Size{Means: joint.Leg, A: units.MM(over)}
	a, ok := h.replan(j)
	more := a.cost - float64(p.Cost.Total)
	if ok {
		h.note(hintOneOver, p, a, "leg "+mmText(over), more)
	}
	if !ok || more < r.Value*float64(p.Cost.Total) {
		return
	}
	text := fmt.Sprintf("welded with leg %s instead of %s it would cost about %s more", mmText(over), mmText(leg), h.money(more))
	if a.passes > p.Passes() {
		text += fmt.Sprintf(" and take %d runs instead of %d", a.passes, p.Passes())
	}
	if a.passes > 1 && p.Passes() == 1 {
		h.became++
	}
	h.found[hintOneOver] = append(h.found[hintOneOver], saving{i, more, text})
}

// tell writes a hint onto the joints where it matters to the list, and the sum
// onto the one where it is largest. What costs more than called is told there
// only: it is no saving but a habit.
func (h *hinter) tell(plans []Plan, code string) {
	all, r := h.found[code], h.c.book.first(code)
	if len(all) == 0 {
		return
	}
	most, sum := 0, 0.0
	for k := range all {
		sum += all[k].money
		if all[k].money > all[most].money*(1+1e-9) {
			most = k
		}
	}
	least := h.c.planning("hint_share") * h.list
	for k, s := range all {
		text := s.text
		if k == most && len(all) > 1 {
			text += h.sum(code, len(all), sum)
		} else if k != most && (s.money < least || code == hintOneOver) {
			continue
		}
		p := &plans[s.at]
		if code == hintDouble { // says the same with figures
			p.Checks = without(p.Checks, "double-saves")
		}
		p.Checks = append(p.Checks, finding.Check{Code: code, Level: finding.Note, Text: text, Rule: r.Rule, Source: r.Source, Basis: r.Basis, Do: r.Do})
	}
}

// sum says what a hint comes to over the list.
func (h *hinter) sum(code string, joints int, money float64) string {
	if code == hintOneOver {
		text := fmt.Sprintf("; on all %d fillets of the list about %s", joints, h.money(money))
		if h.became > 0 {
			text += fmt.Sprintf(", %d of them in several runs instead of one", h.became)
		}
		return text
	}
	return fmt.Sprintf("; on %d joints of the list together about %s", joints, h.money(money))
}

// less says how much time and money an altered form takes less.
func (h *hinter) less(p *Plan, a altered) string {
	money := "about " + h.money(float64(p.Cost.Total)-a.cost)
	minutes := float64(p.Cost.Labour.Total) - a.minutes
	switch {
	case minutes >= 60:
		return "about " + about(minutes/60) + " h of labour and " + money
	case minutes >= 1:
		return "about " + about(minutes) + " min of labour and " + money
	}
	return money
}

// money writes an amount as it deserves, with the shop's currency.
func (h *hinter) money(v float64) string {
	if h.c.shop.Currency == "" {
		return about(v)
	}
	return about(v) + " " + h.c.shop.Currency
}

// about writes a figure to two places that count.
func about(v float64) string {
	if v <= 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return "0"
	}
	step := math.Pow10(int(math.Floor(math.Log10(v))) - 1)
	return number(math.Round(v/step)*step, max(0, -int(math.Floor(math.Log10(step)))))
}

// planning returns a figure of the planning table; 0 where it has none.
func (c *catalog) planning(key string) float64 {
	for _, r := range c.set.Planning {
		if r.Key == key {
			return r.Value
		}
	}
	return 0
}
