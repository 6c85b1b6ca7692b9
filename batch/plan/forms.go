package plan

import (
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// form is what the joints of a list have in common that differ in nothing but their
// names, their length and how many there are: a long list has few of them.
type form struct {
	like   joint.Joint // the first joint of the form, kept: a hint's is written over by the next
	task   *task       // of that joint
	again  bool        // more than one joint has the form: worth keeping what follows
	open   []outcome   // the ways open to it, laid and with their machines
	tried  bool        // open is known
	ways   []formWay   // those chosen so far
	others *form       // with the same key
}

// formKey is what of a joint tells most forms apart; those with the same key are
// compared one by one.
type formKey struct {
	kind               joint.Kind
	t1, t2, a, b       units.MM
	material, position string
}

// mostForms is how many forms are kept: a list of which every joint is another kind
// gains nothing by them.
const mostForms = 2048

// keyOf returns the key of a joint's form; false where more than its seam follows from
// its length or from its parts.
func keyOf(j *joint.Joint) (formKey, bool) {
	if j.Part1 != "" || j.Part2 != "" || j.Kind == joint.Plug || j.Kind == joint.Slot {
		return formKey{}, false
	}
	return formKey{kind: j.Kind, t1: j.T1, t2: j.T2, a: j.Size.A, b: j.Size.B, material: j.Material, position: j.Position}, true
}

// sameForm tells whether two joints differ in nothing but names, length and quantity.
func sameForm(a, b *joint.Joint) bool {
	if a.Note != b.Note {
		return false
	}
	if a.Detail == b.Detail {
		return true
	}
	if (a.Stitch == nil) != (b.Stitch == nil) || a.Stitch != nil && *a.Stitch != *b.Stitch {
		return false
	}
	one, other := *a.Detail, *b.Detail
	one.Stitch, other.Stitch = nil, nil
	return one == other
}

// newTask reads one joint, or takes what another of its form has in common with it.
func (c *catalog) newTask(j *joint.Joint) *task {
	key, ok := keyOf(j)
	if !ok || c.forms == nil {
		return c.readTask(j)
	}
	first := c.forms[key]
	for f := first; f != nil; f = f.others {
		if sameForm(&f.like, j) {
			return f.next(c, j)
		}
	}
	t := c.readTask(j)
	if c.formCount < mostForms {
		c.formCount++
		t.form = &form{like: *j, task: t, others: first}
		c.forms[key] = t.form
	}
	return t
}

// next returns the task of another joint of the form. It holds until the next one
// is asked for: a long list would make three of every joint, each larger than its
// plan.
func (f *form) next(c *catalog, j *joint.Joint) *task {
	f.again = true
	t := &c.next
	*t = *f.task
	t.j, t.kept, t.twin, t.gasless = j, nil, 0, false
	t.seams = float64(max(j.Qty, 1))
	t.seam, t.segments, t.startsPerPass, t.stitch, t.stitchMissing = 0, 0, 0, stitched{}, ""
	c.readSeam(t)
	return t
}

// repeats tells whether more than one joint has the form.
func (f *form) repeats() bool { return f != nil && f.again }

// found returns the outcome of a way on the form before its amounts; nil if nobody
// tried it or it is not open.
func (f *form) found(n *way) *outcome {
	if f == nil {
		return nil
	}
	for i := range f.open {
		if f.open[i].way == n {
			return &f.open[i]
		}
	}
	return nil
}

// formWay is what is known of a form that is welded in one way.
type formWay struct {
	way    *way
	runs   []Run
	warmed *warmed
	checks []finding.Check // of the joint of the form that was judged last
	made   []made
}

// made is a manner that joints of a form are welded in, with what it hangs on
// beside form and way.
type made struct {
	machine *machine
	trigger string
	manner  *Manner
}

// manner returns the manner that another joint of the form is welded in with the
// same way, machine and trigger; nil if none is.
func (f *form) manner(o *outcome, trigger string) *Manner {
	if !f.repeats() {
		return nil
	}
	for _, m := range f.at(o.way).made {
		if m.machine == o.machine && m.trigger == trigger {
			return m.manner
		}
	}
	return nil
}

// share lets other joints of the form be welded in the same manner. Stitches are welded
// each by itself: how much they draw together follows from the share of the length
// that they take.
func (f *form) share(o *outcome, trigger string, m *Manner) {
	if f.repeats() && f.task.j.Stitch == nil {
		w := f.at(o.way)
		w.made = append(w.made, made{o.machine, trigger, m})
	}
}

// at returns what is known of a way, to be read and added to.
func (f *form) at(n *way) *formWay {
	for i := range f.ways {
		if f.ways[i].way == n {
			return &f.ways[i]
		}
	}
	f.ways = append(f.ways, formWay{way: n})
	return &f.ways[len(f.ways)-1]
}

// runsOf returns the passes of an outcome, one list for all joints of a form.
func (o *outcome) runsOf(t *task, band float64) []Run {
	if !t.form.repeats() {
		return o.runs(t, band)
	}
	w := t.form.at(o.way)
	if w.runs == nil {
		w.runs = o.runs(t, band)
	}
	return w.runs
}

// shared returns a list of the checks that holds; checks that say the same as those
// of the form's last joint as the same list: a long list says the same of most of
// its joints.
func (f *form) shared(n *way, checks []finding.Check) []finding.Check {
	if len(checks) == 0 {
		return nil
	}
	if !f.repeats() {
		return slices.Clip(slices.Clone(checks))
	}
	w := f.at(n)
	if !slices.Equal(w.checks, checks) {
		w.checks = slices.Clip(slices.Clone(checks))
	}
	return w.checks
}

// warmed is what a way's passes ask of a form's heat.
type warmed struct {
	checks    []finding.Check
	words     string
	preheat   *units.Celsius
	interpass *units.Celsius
	cooling   *[2]units.Second
	limits    [2]units.KJMM
}

// warmth judges preheat, interpass, heat and cooling, once for a form and a way.
func (k *checker) warmth(t *task, n *way, p *Plan) {
	if !t.form.repeats() {
		k.judgeWarmth(t, n, p)
		return
	}
	f := t.form.at(n)
	if w := f.warmed; w != nil {
		k.out = append(k.out, w.checks...)
		p.PreheatWords, p.Preheat, p.Interpass, p.T85, p.HeatRange = w.words, w.preheat, w.interpass, w.cooling, w.limits
		return
	}
	before := len(k.out)
	k.judgeWarmth(t, n, p)
	f.warmed = &warmed{slices.Clone(k.out[before:]), p.PreheatWords, p.Preheat, p.Interpass, p.T85, p.HeatRange}
}
