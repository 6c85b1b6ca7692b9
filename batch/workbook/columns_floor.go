package workbook

import (
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/workbook/look"
)

// floorColumns are empty for the floor to fill in, and hold what it wrote when
// the workbook is worked again. `settle` reads them.
func floorColumns() []column {
	const g = "floor"
	fill := func(head string, u unit, format string, get func(joint.Floor) float64, about string) column {
		return column{key: floorKey(head), head: head, unit: u, group: g, width: 9, format: format, role: look.Edit, fold: true, about: about,
			number: func(r *row) (float64, bool) {
				v := get(r.l.job.Floor[r.j.Place.Row])
				return v, v != 0
			}}
	}
	cols := []column{
		fill(joint.FloorQty, none, "0", func(f joint.Floor) float64 { return float64(f.Qty) }, "copies that the record covers; blank: all"),
		fill(joint.FloorArc, minute, "0.0", func(f joint.Floor) float64 { return float64(f.Arc) }, "arc time of these copies, from the machine or a watch"),
		fill(joint.FloorLabour, minute, "0", func(f joint.Floor) float64 { return float64(f.Labour) }, "welder's time of these copies, fit-up included"),
		fill(joint.FloorWire, kilo, "0.000", func(f joint.Floor) float64 { return float64(f.Wire) }, "wire off the spool, by the scales"),
		fill(joint.FloorFeed, feed, "0.0", func(f joint.Floor) float64 { return float64(f.Feed) }, "wire feed really set"),
		{key: floorKey(joint.FloorNote), head: joint.FloorNote, group: g, width: 20, role: look.Edit, fold: true, about: "whatever should be remembered",
			words: func(r *row) string { return r.l.job.Floor[r.j.Place.Row].Note }},
	}
	// The heading of a group's first column begins with the name of the group.
	cols[0].head = strings.TrimPrefix(joint.FloorQty, groupName(g)+": ")
	return cols
}

// floorKeys name the columns; they are no result keys.
var floorKeys = map[string]string{
	joint.FloorQty: "floor_qty", joint.FloorArc: "floor_arc_min", joint.FloorLabour: "floor_labour_min",
	joint.FloorWire: "floor_wire_kg", joint.FloorFeed: "floor_feed_m_min", joint.FloorNote: "floor_note",
}

func floorKey(head string) string { return floorKeys[head] }
