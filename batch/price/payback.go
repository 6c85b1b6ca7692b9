package price

import (
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// PayBack is what a machine that the shop has not would save on this job.
type PayBack struct {
	Machine string
	Saves   units.Money // of the job's cost, change-overs included; zero: nothing
	Hours   float64     // of welders' time
	Price   units.Money // of the machine, by the shop; zero: not stated
	Jobs    float64     // how many such jobs pay it back; zero: not known, or never
	Opens   int         // joints that only this machine welds; the saving is not reckoned then
}

// CostOfList returns what planned joints cost, change-overs included, and the
// hours that they take. It is the job's cost before rounding.
func CostOfList(plans []plan.Plan, shop *rates.Shop) (cost units.Money, hours float64) {
	changes := float64(rates.ChangeOvers(setups(plans))) * float64(shop.ChangeMin)
	minutes := changes
	for i := range plans {
		if p := &plans[i]; p.Settings {
			cost += p.Cost.Total
			minutes += float64(p.Cost.Labour.Total)
		}
	}
	return cost + units.Money(changes/60*float64(shop.LabourCostPerHour())), minutes / 60
}

// NewPayBack compares a job as planned with the same list planned with one more
// machine.
//
//	jobs = price of the machine / saving of the job   (PAYBACK-1)
//
// Only the saving in cost counts: no interest, no upkeep, no resale. Basis: derived.
func NewPayBack(machine string, job *Job, with []plan.Plan) PayBack {
	now, hours := CostOfList(job.Plans, &job.Shop)
	then, left := CostOfList(with, &job.Shop)
	p := PayBack{Machine: machine, Price: job.Shop.MachinePrice[machine]}
	const cent = 0.005 // less than half the smallest coin is nothing
	if now-then < cent {
		return p
	}
	p.Saves, p.Hours = now-then, hours-left
	if p.Price > 0 {
		p.Jobs = float64(p.Price / p.Saves)
	}
	return p
}
