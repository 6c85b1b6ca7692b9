// Package price puts the plans of a list together: hours and money, totals by
// assembly, wire, gas, process and position, and what to buy.
package price

import (
	"iter"
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/parts"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// Job is one list, planned and priced: all that the outputs need.
type Job struct {
	List                   joint.List
	Shop                   rates.Shop
	Plans                  []plan.Plan // one for each of List.Joints, same order
	Totals                 Totals
	Buy                    []BuyLine
	Problems               []finding.Problem // of the list and of the shop file
	Opts                   Options
	Parts                  *parts.Book         // the cut list worked out; nil: none was given
	Floor                  map[int]joint.Floor // what the floor wrote down, by row; nil: no column for it
	Version, TablesEdition string
}

// Options are what the user asked for about the looks of the outputs.
type Options struct {
	Job        string // name of the job; "": that of the list's file
	Date       string // YYYY-MM-DD, printed
	US         bool   // --units us
	Codes      string // iso or aws
	Symbols    string // iso or aws
	Paper      string // a4 or letter
	Lang       string
	ValuesOnly bool
}

// Sum is a total over some joints.
type Sum struct {
	Name      string // the assembly, wire, gas, process or position
	Joints    int    // rows
	Copies    int    // rows x qty
	Seam      units.Metre
	WeldMetal units.Kg
	WireKg    units.Kg
	GasL      units.Litre
	Arc       units.Minute
	Labour    units.Minute
	Energy    units.KWh
	Cost      units.Money
	Price     units.Money
}

// Assumed goes through all that was taken for what the list left out, with the number
// of the joint.
func (j *Job) Assumed() iter.Seq2[int, joint.Assumption] {
	return func(yield func(int, joint.Assumption) bool) {
		for i := range j.Plans {
			p := &j.Plans[i]
			for _, all := range [...][]joint.Assumption{p.Joint.Assumed, p.Assumed} {
				for _, a := range all {
					if !yield(i, a) {
						return
					}
				}
			}
		}
	}
}

// Totals of a job. The joints' prices and the change-overs add up to Price.
type Totals struct {
	All                                              Sum
	Labour                                           rates.Labour // the parts summed, each already with its site factor
	LabourCost, Wire, Gas, Power, Other              units.Money
	ChangeOvers                                      int
	ChangeOverMin                                    units.Minute
	ChangeOverCost, ChangeOverPrice                  units.Money
	Cost, Price                                      units.Money // change-overs included
	Needs                                            *Needs      // of a machine; nil: no joint has settings
	PayBack                                          []PayBack   // of the machines that the shop has not; nil: not tried
	Spread                                           Spread      // of Price
	DrawnKg                                          units.Kg    // weld metal of the drawn geometry alone
	OverweldKg, OverweldCost                         float64     // what allowances add: kg and money of cost, margin apart
	ByAssembly, ByWire, ByGas, ByProcess, ByPosition []Sum
	NotYours                                         []rates.Value // defaults that move money and are not the shop's own
	Unpriced                                         []string      // marks of joints that have metal but no settings, so no price
	Exclusions                                       []string
	Errors, Warnings, Notes                          int
}

// BuyLine is one thing to buy for the whole job.
type BuyLine struct {
	What      string // "wire", "gas" or "tip"
	Name      string // "G3Si1 1.0 mm", "M21", "contact tip 1.0 mm"
	Need      float64
	Unit      string // "kg", "l", "pcs"
	OnHand    float64
	Pack      float64 // kg of a spool, litres of a cylinder
	Packs     int     // whole packs to buy
	Remains   float64 // left over when the job is done
	PackPrice units.Money
	Cost      units.Money // packs x price: what is paid
	UsedCost  units.Money // what the job's price carries
}
