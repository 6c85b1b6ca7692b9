// Package settle compares what was planned with what the floor wrote down, and
// draws the shop's own values from it: how much of the welder's time the arc
// burns, how much larger than asked the fillets are made, and how much wire is
// lost. It is pure: records and plans in, figures out.
//
// Read compare.go first (one joint), then fit.go and interval.go (the shop's values).
package settle

import (
	"seamtally/batch/joint"
	"seamtally/batch/plan"
)

// Least is the fewest records that a value is fitted from. Fewer say too little:
// at ten the interval of a typical scatter is still a sixth of the value.
const Least = 10

// Settled is what the records of a list say.
type Settled struct {
	Joints  []Joint  // those with a record, in the order of the list
	Left    []Odd    // records left out of the fits, with the reason
	Factors []Factor // each with its fit, or the sentence why there is none
}

// Joint is one joint, planned and actual, for the copies that were done.
type Joint struct {
	Mark   string
	Record joint.Floor
	Plan   *plan.Plan
	Done   float64 // share of the joint's copies that the record covers
}

// Odd is a record that no fit uses.
type Odd struct {
	Mark string
	Row  int
	Why  string
}

// Factor is one of the shop's values as the records show it.
type Factor struct {
	Key      string // shop value: "operating_factor"
	Name     string // for people
	Unit     string
	Planned  float64 // what the plan reckoned with
	Value    float64
	Low      float64 // 95 % interval
	High     float64
	Records  int
	Fitted   bool
	Sentence string // what it means, or why there is no fit
}

// Of settles the records of a planned list. Records and plans belong together by
// row; a record of a joint without settings is told.
func Of(plans []plan.Plan, records map[int]joint.Floor, shop Shop) Settled {
	var out Settled
	for i := range plans {
		p := &plans[i]
		r, ok := records[p.Joint.Place.Row]
		if !ok || r.Empty() {
			continue
		}
		j := Joint{Mark: p.Joint.Mark, Record: r, Plan: p, Done: share(r.Qty, p.Joint.Qty)}
		out.Joints = append(out.Joints, j)
		if !p.Settings {
			out.Left = append(out.Left, Odd{j.Mark, r.Row, "the joint has no settings, so nothing was planned to compare with"})
		}
	}
	out.Factors = []Factor{out.operating(shop), out.wire(shop), out.overweld(shop), out.loss(shop)}
	return out
}

// Shop are the shop values that the plans were made with.
type Shop struct {
	OperatingFactor, Overweld, Convexity, WastePct, ReworkPct float64
}
