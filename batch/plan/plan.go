// Package plan chooses, for every joint of a list, the wire, gas, machine,
// passes and settings, works out metal, time, heat and gas, and says what to
// check. It holds no figures of its own: they come from the tables and the shop.
package plan

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// Transfer is the way metal crosses the arc.
type Transfer string

// The transfer modes.
const (
	ShortArc Transfer = "short arc"
	Globular Transfer = "globular"
	Spray    Transfer = "spray"
	Pulse    Transfer = "pulse"
)

// RunKind says where a pass lies.
type RunKind string

// The kinds of pass.
const (
	Single RunKind = "single"
	Root   RunKind = "root"
	Fill   RunKind = "fill"
	Cap    RunKind = "cap"
	Back   RunKind = "back"
)

// Run is one pass of one seam.
type Run struct {
	Number          int
	Layer           int
	Bead            int // in its layer, from 1
	Side            int // 1, or 2 for the second side of a double groove
	Kind            RunKind
	Area            units.MM2
	Current         units.Amp
	Voltage         units.Volt
	WireFeed        units.MMin
	Travel          units.MMMin
	ArcEnergy, Heat units.KJMM // without and with k
	Deposit         units.KgH
	Arc             units.Minute // per metre of seam
	Technique       string       // "stringer" or "weave"
	Transfer        Transfer     // an open root may run in another mode than the rest
	// Feed, Stickout, GasFlow and Volts are the pass's own: a root in another mode needs others.
	Feed, Stickout, GasFlow, Volts Window
	Torch                          string // how the torch is held in it
}

// Window is a start value with its working band.
type Window struct{ Start, Low, High float64 }

// Step is one line of the working, for explain.
type Step struct {
	ID      string // formula id, "AREA-1"
	What    string // "area as drawn"
	Formula string // "A = z²/2"
	Numbers string // "6²/2"
	Result  string // "18.0 mm²"
	Source  string
	Basis   string
}

// Option is a way of welding the joint that was considered.
type Option struct {
	Process, Filler string
	Dia             units.MM
	Gas             string
	Transfer        Transfer
	Machine         string
	Current         units.Amp
	Passes          int
	Arc             units.Minute
	Cost            units.Money
	Feasible        bool
	Chosen          bool
	Why             string // why it won or lost
}

// Prep is the joint's geometry that the plan used, assumed where the list is silent.
type Prep struct {
	Kind               joint.Kind
	LegA, LegB         units.MM // fillets: as drawn, LegA along t1's side
	Throat             units.MM // as drawn
	T1, T2             units.MM // 0: not known
	Angle              units.Degree
	Gap, RootFace      units.MM
	Depth, Depth2      units.MM // preparation depth of side 1 and 2
	Radius             units.MM
	ThroatShare        float64 // of a flare: throat when filled flush, as a share of the radius; 0: its size is the depth filled
	Backing            string
	WeldLegA, WeldLegB units.MM // with allowances, as it will be made
	Gouge              Gouge    // what is taken out at the back before side 2 is welded; zero: nothing
}

// Under tells whether something lies under the root that both parts lie on.
func (p *Prep) Under() bool {
	return p.Backing == "bar" || p.FormsRoot()
}

// FormsRoot tells whether the root stands out into a groove of what lies under it: a
// copper bar has one of 1 to 2 mm (printed), a ceramic strip one too (common practice), a
// bar of steel lies flat and is fused in.
func (p *Prep) FormsRoot() bool { return p.Backing == "copper" || p.Backing == "ceramic" }

// Gouge is the groove that is gouged at the root from the back, to sound metal: its
// depth from the edge of what is prepared there, and how wide it opens.
type Gouge struct{ Depth, Width units.MM }

// Limit is the largest imperfection of a kind, by its number in ISO 6520-1, that the
// quality level bears in this joint.
type Limit struct {
	Number string
	Most   units.MM
}

// The numbers of ISO 6520-1 of the limits that a gauge finds.
const (
	CapHeight  = "502"
	RootHeight = "504"
	FitGap     = "617"
)

// Plan is everything worked out for one joint. Per joint means all copies, sides
// and stitches together, unless the field says one seam. Where Settings is false
// only geometry, metal and metres are known and NoSettings says why.
type Plan struct {
	*Manner // never nil in a plan of this package; many joints may have the same one

	Joint     *joint.Joint
	Seam      units.Metre
	Segments  int // stitches of one side of one copy; 0 for a continuous seam
	WeldMetal units.Kg

	WireKg units.Kg
	WireM  units.Metre
	GasL   units.Litre
	Starts float64
	Arc    units.Minute

	Cost   rates.Cost
	Checks []finding.Check
}

// Manner is how a joint is welded, as far as it does not follow from its length
// and quantity. Of a long list, joints that differ in nothing else share one.
type Manner struct {
	Branch  *Branch // how a round first part is cut to sit on the second; nil: it is not, or nobody says
	Prep    Prep
	Assumed []joint.Assumption // what the plan had to assume beyond the reader's

	MetalGroup string     // table's material group: "carbon steel", "stainless", "aluminium"; "" if unknown
	AreaDrawn  units.MM2  // one seam
	Area       units.MM2  // one seam, with allowances
	AreaCalled units.MM2  // what Area would be if the wire laid so small a bead; 0: the same
	Density    units.KgM3 // of the weld metal

	PositionAWS string // American name of the position; "" where there is none

	Settings   bool
	NoSettings string

	Process    string // ISO 4063
	ProcessAWS string // its American letters; "" where there are none
	Filler     string
	FillerAWS  string
	Dia        units.MM
	Gas        string // ISO 14175; "" for self-shielded
	GasMix     string // "Ar + 18 % CO2"
	Transfer   Transfer
	Machine    string
	Source     *tables.Machine // the row of the machine; nil: none
	Slag       bool            // every run leaves a slag to take off
	Gun        string          // the gun that the wire asks for; "" for a plain one

	Runs      []Run
	Governing int // index into Runs

	Current, Voltage, WireFeed, Travel, GasFlow Window
	Stickout                                    Window // mm, contact tip to work
	Polarity, Torch, Trigger, Inductance        string
	Technique                                   string

	Deposit    units.KgH // mean over the passes by time
	Efficiency float64   // deposition efficiency used, 0..1
	LinearMass units.GramM
	Duty       float64 // arc-on share the machine bears at this setting; 1: no limit

	HeatMax, ArcEnergyMax units.KJMM
	Limits                []Limit       // what the quality level bears; empty: no level, or none by ISO 5817
	HeatRange             [2]units.KJMM // of HeatMax, within which metals and procedure allow it; 0: no limit
	Preheat               *units.Celsius
	PreheatWords          string // how the preheat was found, or why there is none; "" where none is asked for
	Interpass             *units.Celsius
	T85                   *[2]units.Second
	Shrink                *[2]units.MM // across one seam, lowest and highest estimate

	CleanWidth  units.MM // each side of the joint
	FilterShade int

	Cautions []string // keys of tables/cautions.csv that apply
	Options  []Option // only when tracing
	Steps    []Step   // only when tracing
	Hints    []Hint   `json:",omitempty"` // only when explained
}

// Most returns the largest imperfection of a number that the quality level bears;
// false where it names none.
func (m *Manner) Most(number string) (units.MM, bool) {
	for _, l := range m.Limits {
		if l.Number == number {
			return l.Most, true
		}
	}
	return 0, false
}

// Passes returns the number of passes of one seam.
func (p *Plan) Passes() int { return len(p.Runs) }

// Mode returns how metal crosses the arc in the run that governs, to which current, voltage
// and wire feed of the joint belong: an open root runs in short arc whatever the passes
// over it, which Transfer is of, and some joints are nothing but such a root.
func (p *Plan) Mode() Transfer {
	if p.Governing < len(p.Runs) && p.Runs[p.Governing].Transfer != "" {
		return p.Runs[p.Governing].Transfer
	}
	return p.Transfer
}
