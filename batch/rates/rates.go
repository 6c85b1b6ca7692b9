// Package rates holds what a shop knows about its own money and time, and turns
// quantities into cost. Cost is pure; reading a shop file happens at the edge.
package rates

import (
	"seamtally/batch/finding"
	"seamtally/batch/units"
)

// Value is one shop value with where it came from.
type Value struct {
	Key    string
	Text   string // as written: "0.30", "leg", "EUR"
	Num    float64
	IsNum  bool
	Unit   string
	Low    float64 // spread, same unit; Low == High == 0: none stated
	High   float64
	Basis  string // published, common-practice, derived, memory, shop
	Source string
	Note   string
	From   string // "built in", "shop file NAME", "--set", "workbook sheet Rates"
	Money  bool   // a default of this value moves money

	place finding.Place // where the shop stated it
}

// WirePrice is what one wire of the shop's stock costs and how it is packed.
type WirePrice struct {
	Filler   string   // standard class: "G3Si1"
	Dia      units.MM // 1.0
	PerKg    units.Money
	SpoolKg  units.Kg
	OnHandKg units.Kg
	From     string
}

// GasPrice is what one gas costs and how much one cylinder gives.
type GasPrice struct {
	Gas         string // ISO 14175 designation: "M21"
	PerCylinder units.Money
	Cylinder    units.Litre // gas in one cylinder at 15 °C, 1 bar
	OnHand      units.Litre
	From        string
}

// Shop is everything the shop states, or the built-in default for it.
type Shop struct {
	Values []Value // every value, in the order of tables/shop.csv
	Wires  []WirePrice
	Gases  []GasPrice
	// Machines names rows of tables/machines.csv that the shop has, MachinePrice
	// what one costs that it might buy.
	Machines     []string
	MachinePrice map[string]units.Money

	DefaultMaterial string // grade of rows that name none; "": they are asked for

	Overweld               units.MM // added to each fillet leg
	Convexity              float64  // cap height as a share of face width
	CapHeight, RootHeight  units.MM
	CapShare, RootShare    float64  // the most that cap and root are, as shares of the thinner part
	FitGap                 units.MM // fit-up gap of fillets and laps
	WastePct               float64
	Preflow, Postflow      units.Second
	SeamStartsPerM         float64
	OperatingFactor        float64
	JointMin               units.Minute // per joint
	FitupMinM, CleanMinM   float64      // minutes per metre of seam
	BetweenPassMin         units.Minute
	ChangeMin              units.Minute // one change of wire, gas or machine
	SiteFactor             float64
	ReworkPct              float64
	LabourRate             units.Money // per hour
	OverheadPct, MarginPct float64
	Currency               string
	PowerPrice             units.Money // per kWh
	SourceEfficiency       float64
	IdleW                  float64
	TipPrice               units.Money
	TipLifeH               float64            // arc hours of one contact tip
	SlagMinM               float64            // minutes of slag removal per metre of run, for wires that leave a slag
	SpatterMinM            map[string]float64 // by transfer ("short arc", "globular", "spray", "pulse"): minutes of spatter cleaning per metre; "short arc.C1" for one gas alone
	SizeMeans, MissingSize string
	Choose                 string // "list" or "joint"
	// PreheatMethod is "codes", "cet", "cet-sew", "combined", "category" or "none".
	PreheatMethod string
	// CET and CEV are carbon equivalents of mill certificates [%], by the grade or
	// material words that the shop wrote them for.
	CET, CEV map[string]float64
	// Hydrogen is the diffusible hydrogen [ml/100 g] on the labels of wires, by filler.
	Hydrogen map[string]float64

	// StockLengths are the lengths of bars that the shop buys, by kind of section:
	// hollow, beam, channel, angle, flat and bar. MaterialPrice is per kilogram, by
	// carbon_steel, stainless and aluminium.
	StockLengths     map[string][]units.MM
	SawKerf, EndLoss units.MM
	PlateWastePct    float64
	MaterialPrice    map[string]units.Money

	names *names // what the tables call wires, gases and machines; never changed
}

// Quantities are what a joint uses, all copies, sides and stitches together.
type Quantities struct {
	Qty         int
	Seam        units.Metre
	Seams       float64 // separate seams: qty x sides
	Passes      int     // of one seam
	Arc         units.Minute
	Site        bool
	DutyCap     float64 // largest arc-on share the machine bears, 0 or 1: no limit
	WireKg      units.Kg
	WirePerKg   units.Money
	Gas         units.Litre
	GasPerLitre units.Money
	ArcEnergy   units.KWh // from the mains while the arc burns: U I t / efficiency
	Transfer    string
	GasName     string      // designation; only for a spatter time of its own
	SlagRuns    units.Metre // of runs that leave a slag, all copies; zero: none
	Metal       string
}

// Labour is the labour of a joint by part, all in minutes, before the site factor.
type Labour struct {
	Joint, Fitup, Clean, BetweenPass, Arc, Idle, Rework units.Minute // Idle: the rest of arc/operating factor
	SiteFactor                                          float64
	Total                                               units.Minute // after the site factor
}

// Cost is the money of a joint.
type Cost struct {
	Labour                              Labour
	Energy                              units.KWh
	LabourCost, Wire, Gas, Power, Other units.Money
	Total                               units.Money // the sum of the five
	Price                               units.Money // Total / (1 - margin)
}
