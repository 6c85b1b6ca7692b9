package workbook

import "strconv"

// unit is how a column is shown to people, in metric and in US units. Formulas
// and keys are metric: the shown figure is the metric one divided by per.
type unit struct {
	metric, us string
	per        float64 // metric units in one US unit; 0: the same for both
	usFormat   string  // number format in US units; empty: as metric
}

// The units of the columns. The factors are exact by the definitions of the inch
// and the pound.
var (
	none    = unit{}
	mm      = unit{"mm", "in", 25.4, "0.000"}
	mm2     = unit{"mm²", "in²", 645.16, "0.0000"}
	metre   = unit{"m", "ft", 0.3048, "0.00"}
	kilo    = unit{"kg", "lb", 0.45359237, "0.000"}
	kiloH   = unit{"kg/h", "lb/h", 0.45359237, "0.00"}
	feed    = unit{"m/min", "in/min", 0.0254, "0"}
	travel  = unit{"mm/min", "in/min", 25.4, "0.0"}
	flow    = unit{"l/min", "ft³/h", 28.316846592 / 60, "0"}
	litre   = unit{"l", "ft³", 28.316846592, "0.0"}
	heat    = unit{"kJ/mm", "kJ/in", 1 / 25.4, "0.0"}
	gramM   = unit{"g/m", "lb/ft", 453.59237 / 0.3048, "0.00000"}
	density = unit{"kg/m³", "lb/in³", 0.45359237 / (25.4 * 25.4 * 25.4) * 1e9, "0.0000"}
	celsius = unit{metric: "°C", us: "°F"} // values only: see degrees
	minute  = unit{metric: "min", us: "min"}
	amp     = unit{metric: "A", us: "A"}
	volt    = unit{metric: "V", us: "V"}
	degree  = unit{metric: "°", us: "°"}
	kilowH  = unit{metric: "kWh", us: "kWh"}
)

// name returns the unit as the header shows it.
func (u unit) name(us bool) string {
	if us {
		return u.us
	}
	return u.metric
}

// show returns the figure as the cell holds it.
func (u unit) show(v float64, us bool) float64 {
	switch {
	case !us:
		return v
	case u.us == "°F":
		return v*9/5 + 32
	case u.per != 0:
		return v / u.per
	}
	return v
}

// wrap turns a metric formula into one for the shown unit.
func (u unit) wrap(formula string, us bool) string {
	if !us || u.per == 0 {
		return formula
	}
	return "(" + formula + ")/" + exact(u.per)
}

// metricOf turns a cell into a term of a metric formula.
func (u unit) metricOf(cell string, us bool) string {
	if !us || u.per == 0 {
		return cell
	}
	return "(" + cell + "*" + exact(u.per) + ")"
}

// exact spells a constant so that every program reads the same number.
func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// formatOf returns the number format of a column.
func (c *columnBeside[R]) formatOf(us bool) string {
	if us && c.unit.usFormat != "" {
		return c.unit.usFormat
	}
	return c.format
}
