package plan

import "math"

// The functions of this file are the planner's hot path: the arc of one way at
// one current, in plain numbers. Package weld states the same formulas with
// their sources; a test holds the two together.

// feed returns the wire feed in m/min at a current in A (MELT-1).
func (n *way) feed(current float64) float64 {
	return (n.a*current + n.b*n.ext*current*current) * 0.06
}

// currentAt returns the current in A that melts a wire feed in m/min: MELT-1
// solved for the current.
func (n *way) currentAt(feed float64) float64 {
	w := feed / 0.06
	if c := n.b * n.ext; c > 0 {
		return (math.Sqrt(n.a*n.a+4*c*w) - n.a) / (2 * c)
	}
	return w / n.a
}

// deposit returns the deposition rate in kg/h at a wire feed in m/min (DEPO-1).
func (n *way) deposit(feed float64) float64 { return feed * 60 * n.q / 1000 * n.eff }

// feedFor returns the wire feed in m/min that deposits a rate in kg/h.
func (n *way) feedFor(deposit float64) float64 { return deposit * 1000 / 60 / n.q / n.eff }

// voltage returns the arc voltage at a current: the table's line, to a tenth.
func (n *way) voltage(current float64) float64 {
	v := n.volts
	u := v.Volt1 + (current-v.Amp1)*(v.Volt2-v.Volt1)/(v.Amp2-v.Amp1)
	return n.within(math.Round(u*10) / 10)
}

// travelAt returns the travel speed in mm/min of a pass of an area in mm² at a
// deposition rate in kg/h, density in kg/m³ (TRAVEL-1).
func travelAt(deposit, area, density float64) float64 {
	return deposit / 60 / (density * 1e-9 * area)
}

// depositFor returns the deposition rate in kg/h of a pass of an area in mm² laid
// at a travel speed in mm/min: TRAVEL-1 solved for the rate.
func depositFor(travel, area, density float64) float64 {
	return travel * density * 1e-9 * area * 60
}
