// Package setup sorts the joints of a priced job for the floor: by assembly, by
// set-up (joints that are welded with the same picture and the same settings),
// and in an order that changes wire, gas and machine seldom.
package setup

import (
	"fmt"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/units"
)

// Setup is a group of joints that share one sheet. The first is the pattern.
type Setup struct {
	Number int // in the order of work of its assembly, from 1
	Plans  []*plan.Plan
}

// Pattern returns the plan that the sheet shows.
func (s Setup) Pattern() *plan.Plan { return s.Plans[0] }

// Marks returns the marks of all joints of the set-up.
func (s Setup) Marks() []string {
	out := make([]string, len(s.Plans))
	for i, p := range s.Plans {
		out[i] = p.Joint.Mark
	}
	return out
}

// Station is what stands at the machine: changing any of it costs time.
type Station struct {
	Filler  string
	Dia     units.MM
	Gas     string
	Machine string
}

// Stage is a stretch of work at one station.
type Stage struct {
	Station Station
	Process string
	Setups  []Setup
	Arc     units.Minute
	Labour  units.Minute
}

// Assembly is the work of one assembly.
type Assembly struct {
	Name           string
	Drawings, Revs []string
	Plans          []*plan.Plan // in the order of the list
	Stages         []Stage      // with settings, in the order of work
	Unset          []Setup      // without settings
	Changes        int          // changes of station in this order
	Saved          int          // fewer than in the order of the list
	Arc, Labour    units.Minute
	Seam           units.Metre
	WeldMetal      units.Kg
	Copies         int
	Wires, Gases   []Need
}

// Setups returns all set-ups in the order of work, those without settings last.
func (a *Assembly) Setups() []Setup {
	var out []Setup
	for _, s := range a.Stages {
		out = append(out, s.Setups...)
	}
	return append(out, a.Unset...)
}

// Need is how much of one wire or gas an assembly uses.
type Need struct {
	Name string
	Dia  units.MM // wires
	Kg   units.Kg
	M    units.Metre
	L    units.Litre
	Arc  units.Minute
	Pack float64 // kg of a spool or litres of a cylinder; 0 if not known
}

// Group returns the assemblies of a job in the order of the list.
func Group(job *price.Job) []Assembly {
	var out []Assembly
	at := map[string]int{}
	for i := range job.Plans {
		p := &job.Plans[i]
		if p.Joint == nil {
			continue
		}
		name := strings.TrimSpace(p.Joint.Assembly)
		k, ok := at[name]
		if !ok {
			k = len(out)
			at[name] = k
			out = append(out, Assembly{Name: name})
		}
		out[k].Plans = append(out[k].Plans, p)
	}
	for i := range out {
		out[i].sum(job)
		out[i].order()
	}
	return out
}

func (a *Assembly) sum(job *price.Job) {
	for _, p := range a.Plans {
		a.Drawings = once(a.Drawings, p.Joint.Drawing)
		a.Revs = once(a.Revs, p.Joint.Rev)
		a.Copies += p.Joint.Qty
		a.Seam += p.Seam
		a.WeldMetal += p.WeldMetal
		a.Arc += p.Arc
		a.Labour += p.Cost.Labour.Total
		a.need(p, job)
	}
}

func once(list []string, s string) []string {
	s = strings.TrimSpace(s)
	if s == "" {
		return list
	}
	for _, have := range list {
		if have == s {
			return list
		}
	}
	return append(list, s)
}

func (a *Assembly) need(p *plan.Plan, job *price.Job) {
	if !p.Settings {
		return
	}
	w := find(&a.Wires, p.Filler, p.Dia)
	w.Kg += p.WireKg
	w.M += p.WireM
	w.Arc += p.Arc
	for _, s := range job.Shop.Wires {
		if s.Filler == p.Filler && s.Dia == p.Dia {
			w.Pack = float64(s.SpoolKg)
		}
	}
	if p.Gas == "" {
		return
	}
	g := find(&a.Gases, p.Gas, 0)
	g.L += p.GasL
	for _, s := range job.Shop.Gases {
		if s.Gas == p.Gas {
			g.Pack = float64(s.Cylinder)
		}
	}
}

func find(list *[]Need, name string, dia units.MM) *Need {
	for i := range *list {
		if n := &(*list)[i]; n.Name == name && n.Dia == dia {
			return n
		}
	}
	*list = append(*list, Need{Name: name, Dia: dia})
	return &(*list)[len(*list)-1]
}

// key tells set-ups apart: everything that the sheet shows, except what belongs
// to one mark alone (its length, number and time).
func key(p *plan.Plan) string {
	j := p.Joint
	var temps [2]units.Celsius
	for i, t := range []*units.Celsius{p.Preheat, p.Interpass} {
		temps[i] = -1000
		if t != nil {
			temps[i] = *t
		}
	}
	stitch := ""
	if j.Stitch != nil {
		stitch = fmt.Sprint(*j.Stitch)
	}
	return fmt.Sprint(p.Prep, p.Area, p.MetalGroup, p.Settings, p.NoSettings, p.Process, p.Filler, p.Dia, p.Gas,
		p.Transfer, p.Machine, p.Runs, p.Current, p.Voltage, p.WireFeed, p.Travel, p.GasFlow, p.Stickout,
		p.Polarity, p.Torch, p.Trigger, p.Inductance, p.Technique, temps, p.CleanWidth, p.FilterShade, p.HeatRange, p.Limits, j.Gap, j.GapGiven,
		[]string{j.Material, j.Material2, j.Position, string(j.Where), j.WPS, j.Drawing, j.Rev, j.Quality, j.NDT},
		j.Sides, j.AllRound, j.Size.Means, stitch, p.Segments, fillets(j), p.Cautions)
}

// fillets keeps apart sizes that are the same metal but stated in another way.
func fillets(j *joint.Joint) string { return j.Size.Text }
