package plan

import "seamtally/tables"

// The functions of this file find the row of a setting table that fits a way of
// welding. A blank cell of a row fits everything; the first row that fits counts.

func fits(cell, value string) bool { return cell == "" || cell == value }

// takesGas tells whether a row's list of gases has the gas; a blank list is that
// of a wire that needs none.
func takesGas(list string, gas *tables.Gas) bool {
	if gas.Gasless() {
		return list == ""
	}
	return hasWord(list, gas.Gas)
}

// windowsOf returns the windows of a wire under a gas.
func (c *catalog) windowsOf(w *tables.Wire, gas *tables.Gas) []*tables.Window {
	var out []*tables.Window
	for i := range c.set.Windows {
		r := &c.set.Windows[i]
		if r.Metal == w.Metal && r.Construction == w.Construction && within(r.Dia, float64(w.Dia), r.Dia) && takesGas(r.Gas, gas) {
			out = append(out, r)
		}
	}
	return out
}

// windowOf returns the window of a mode and a position; nil if there is none.
func windowOf(windows []*tables.Window, mode Transfer, pos int) *tables.Window {
	for _, r := range windows {
		if r.Transfer == string(mode) && hasWord(r.Positions, positions[pos]) {
			return r
		}
	}
	return nil
}

// within tells whether the value lies between the limits, give or take the
// rounding of a diameter.
func within(from, value, to float64) bool { return value > from-0.005 && value < to+0.005 }

func (c *catalog) voltLine(n *way) *tables.VoltLine {
	for i := range c.set.Voltages {
		r := &c.set.Voltages[i]
		if r.Metal == n.wire.Metal && r.Construction == n.wire.Construction && r.Transfer == string(n.mode) &&
			takesGas(r.Gas, n.gas) && within(r.DiaFrom, n.dia, r.DiaTo) {
			return r
		}
	}
	return nil
}

func (c *catalog) singlePass(n *way) *tables.SinglePass {
	for i := range c.set.SinglePass {
		r := &c.set.SinglePass[i]
		if fits(r.Metal, n.wire.Metal) && r.Construction == n.wire.Construction && r.Transfer == string(n.mode) &&
			hasWord(r.Positions, positions[n.pos]) && within(r.DiaFrom, n.dia, r.DiaTo) {
			return r
		}
	}
	return nil
}

// travels returns the travel ranges of a way, one for each technique.
func (c *catalog) travels(n *way) []*tables.Travel {
	var out []*tables.Travel
	seen := ""
	for i := range c.set.Travel {
		r := &c.set.Travel[i]
		if fits(r.Metal, n.wire.Metal) && r.Construction == n.wire.Construction && r.Transfer == string(n.mode) &&
			hasWord(r.Positions, positions[n.pos]) && within(r.DiaFrom, n.dia, r.DiaTo) && !hasWord(seen, r.Technique) {
			out = append(out, r)
			seen += " " + r.Technique
		}
	}
	return out
}

func (c *catalog) flow(n *way) *tables.Flow {
	for i := range c.set.Flows {
		r := &c.set.Flows[i]
		if fits(r.Metal, n.wire.Metal) && r.Construction == n.wire.Construction && fits(r.Gas, n.gas.Gas) &&
			fits(r.Transfer, string(n.mode)) && within(r.DiaFrom, n.dia, r.DiaTo) {
			return r
		}
	}
	return nil
}

func (c *catalog) stickout(n *way) *tables.Stickout {
	for i := range c.set.Stickouts {
		r := &c.set.Stickouts[i]
		if fits(r.Metal, n.wire.Metal) && r.Construction == n.wire.Construction &&
			fits(r.Transfer, string(n.mode)) && within(r.DiaFrom, n.dia, r.DiaTo) {
			return r
		}
	}
	return nil
}

// words returns the sentence of an item for a way, welded in a mode, under a condition.
func (c *catalog) words(item string, n *way, mode Transfer, when string) string {
	for i := range c.set.Technique {
		r := &c.set.Technique[i]
		if r.Item == item && fits(r.Metal, n.wire.Metal) && fits(r.Construction, n.wire.Construction) &&
			fits(r.Transfer, string(mode)) && fits(r.When, when) &&
			(r.Positions == "" || hasWord(r.Positions, positions[n.pos])) {
			return r.Text
		}
	}
	return ""
}

// rules are the planner's own numbers, from the planning table.
type rules struct {
	innerLow, innerHigh, band, travelBand, gapShare, thinShare, hotShare, sink, procedureVolts float64
	shortArcThick, alShortArc, latchMM, thinInductance, rootT                                  float64
	openGap, closedFace, rootShare, ceramicT, openSquare                                       float64
	gougeRadius, gougeBelow, holeLayer, holeRoom                                               float64
	thinPlate, weakShare, weakStep, weakFrom                                                   float64
	beadGrowth, asCalled, buttGrowth, upShare, wideGap                                         float64
	flareBevel, flareV                                                                         flareShares
}

// flareShares are throats of a flare filled flush over its radius, with wire that is
// shielded by gas and that shields itself.
type flareShares struct{ gas, self float64 }

func readRules(set *tables.Set) rules {
	at := func(key string) float64 {
		for _, r := range set.Planning {
			if r.Key == key {
				return r.Value
			}
		}
		return 0
	}
	return rules{
		innerLow: at("inner_low"), innerHigh: at("inner_high"), band: at("band"), travelBand: at("travel_band"),
		gapShare: at("gap_share"), thinShare: at("thin_share"), hotShare: at("hot_share"), sink: at("sink_factor"), procedureVolts: at("procedure_volts"),
		shortArcThick: at("short_arc_thick_mm"), alShortArc: at("al_short_arc_mm"),
		latchMM: at("trigger_long_mm"), thinInductance: at("inductance_thin_mm"), rootT: at("root_thickness_mm"),
		rootShare: at("root_share"), ceramicT: at("ceramic_thickness_mm"), openSquare: at("open_square_share"),
		gougeRadius: at("gouge_radius_mm"), gougeBelow: at("gouge_below_mm"), holeLayer: max(1, at("hole_layer_mm")), holeRoom: max(1, at("hole_room")),
		openGap: at("open_root_gap_mm"), closedFace: at("closed_root_face_mm"), thinPlate: at("thin_plate_mm"), weakShare: at("weak_share"), weakStep: at("weak_step"), weakFrom: at("weak_from_mm"),
		wideGap:    at("wide_gap_mm"),
		beadGrowth: at("bead_growth"), asCalled: at("bead_as_called"), buttGrowth: at("butt_growth"),
		upShare:    at("up_share"),
		flareBevel: flareShares{at("flare_bevel_throat"), at("flare_bevel_throat_self")},
		flareV:     flareShares{at("flare_v_throat"), at("flare_v_throat_self")},
	}
}
