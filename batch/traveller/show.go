package traveller

import (
	"math"
	"strconv"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// show writes figures the way the floor reads them: millimetres or inches, m/min
// or in/min, with no more digits than a dial has.
type show struct{ us bool }

// figure is a number with its unit, kept apart so that each can have its own size.
type figure struct{ Num, Unit string }

// String returns number and unit with a space between.
func (f figure) String() string {
	if f.Num == "" || f.Unit == "" {
		return f.Num
	}
	if strings.HasPrefix(f.Unit, "°") && len([]rune(f.Unit)) == 1 {
		return f.Num + f.Unit
	}
	return f.Num + " " + f.Unit
}

// num prints a number with at most the given decimals, without trailing zeros.
// What is not a number is printed as nothing.
func num(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// fixed prints a number with exactly the given decimals.
func fixed(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	if s := strconv.FormatFloat(v, 'f', decimals, 64); strings.Trim(s, "-0.") != "" {
		return s
	}
	return strconv.FormatFloat(0, 'f', decimals, 64)
}

// nearest rounds to a multiple of step.
func nearest(v, step float64) float64 { return math.Round(v/step) * step }

// size prints a size of the drawing: a thickness, a leg, a gap.
func (s show) size(v units.MM) figure {
	if !s.us {
		return figure{num(float64(v), 1), "mm"}
	}
	return figure{inches(v.Inch()), "in"}
}

// inches prints a fraction to 1/16 where the length is one, else decimals: a
// size must never be rounded to a smaller one.
func inches(in float64) string {
	const slack = 0.1 / units.MMPerInch
	sixteenths := math.Round(in * 16)
	if math.Abs(in-sixteenths/16) > slack || sixteenths == 0 {
		return num(in, 3)
	}
	whole, part := int(sixteenths)/16, int(sixteenths)%16
	if part == 0 {
		return strconv.Itoa(whole)
	}
	under := 16
	for part%2 == 0 {
		part, under = part/2, under/2
	}
	text := strconv.Itoa(part) + "/" + strconv.Itoa(under)
	if whole > 0 {
		text = strconv.Itoa(whole) + " " + text
	}
	return text
}

// atLeast prints a width that may be more but not less: whole millimetres, or
// sixteenths of an inch, rounded up.
func (s show) atLeast(v units.MM) figure {
	if !s.us {
		return figure{num(math.Ceil(float64(v)-1e-9), 0), "mm"}
	}
	return figure{inches(math.Ceil(v.Inch()*16-1e-9) / 16), "in"}
}

// length prints a seam length.
func (s show) length(v units.MM) figure {
	if s.us {
		return figure{num(v.Inch(), 1), "in"}
	}
	return figure{num(float64(v), 0), "mm"}
}

// seam prints metres of seam, or feet.
func (s show) seam(v units.Metre) figure {
	if s.us {
		return figure{fixed(float64(v)*1000/units.MMPerInch/12, 1), "ft"}
	}
	return figure{fixed(float64(v), 2), "m"}
}

// dia prints a wire diameter.
func (s show) dia(v units.MM) string {
	if s.us {
		return fixed(v.Inch(), 3) + " in (" + num(float64(v), 2) + " mm)"
	}
	return fixed(float64(v), 1) + " mm"
}

// range of a value in the unit shown.
type spread struct {
	start, low, high string
	unit             string
}

func (s show) spread(w plan.Window, factor float64, decimals int, unit string) spread {
	if w.Start == 0 {
		return spread{unit: unit}
	}
	out := spread{start: fixed(w.Start*factor, decimals), unit: unit}
	if w.High > w.Low {
		out.low, out.high = fixed(w.Low*factor, decimals), fixed(w.High*factor, decimals)
	}
	return out
}

const (
	inchPerMetre = 1000 / units.MMPerInch
	cfhPerLMin   = 60 / 28.316846592 // one cubic foot is 28.316846592 l by definition of the inch
	lbPerKg      = 1 / 0.45359237
)

func (s show) feed(w plan.Window) spread {
	if s.us {
		return s.spread(w, inchPerMetre, 0, "in/min")
	}
	return s.spread(w, 1, 1, "m/min")
}

func (s show) volts(w plan.Window) spread { return s.spread(w, 1, 1, "V") }
func (s show) amps(w plan.Window) spread  { return s.spread(w, 1, 0, "A") }

func (s show) flow(w plan.Window) spread {
	if s.us {
		return s.spread(w, cfhPerLMin, 0, "ft³/h")
	}
	return s.spread(w, 1, 0, "l/min")
}

func (s show) stickout(w plan.Window) spread {
	if s.us {
		return s.sixteenths(w)
	}
	return s.spread(w, 1, 0, "mm")
}

// sixteenths prints a stick-out to the nearest 1/16 in: nobody sets it finer.
func (s show) sixteenths(w plan.Window) spread {
	at := func(v float64) string { return inches(nearest(units.MM(v).Inch(), 1.0/16)) }
	out := spread{start: at(w.Start), unit: "in"}
	if w.High > w.Low {
		out.low, out.high = at(w.Low), at(w.High)
	}
	return out
}

// travel prints a travel speed.
func (s show) travel(v units.MMMin) figure {
	if s.us {
		return figure{num(units.MM(v).Inch(), 1), "in/min"}
	}
	return figure{num(nearest(float64(v), 5), 0), "mm/min"}
}

// pace prints the seconds for 100 mm, or for 4 in, of seam.
func (s show) pace(v units.MMMin) (seconds string, per figure) {
	per = figure{"100", "mm"}
	length := units.MM(100)
	if s.us {
		per, length = figure{"4", "in"}, units.FromInch(4)
	}
	if v <= 0 {
		return "", per
	}
	return num(float64(length)/float64(v)*60, 0), per
}

func (s show) temp(v units.Celsius) figure {
	if s.us {
		return figure{num(float64(v)*1.8+32, 0), "°F"}
	}
	return figure{num(float64(v), 0), "°C"}
}

func (s show) mass(v units.Kg) figure {
	if s.us {
		return figure{fixed(float64(v)*lbPerKg, 2), "lb"}
	}
	return figure{fixed(float64(v), 2), "kg"}
}

// pack prints the size of a spool without idle zeros.
func (s show) pack(v units.Kg) string {
	if s.us {
		return num(float64(v)*lbPerKg, 1) + " lb"
	}
	return num(float64(v), 2) + " kg"
}

func (s show) gas(v units.Litre) figure {
	if s.us {
		return figure{num(float64(v)/28.316846592, 0), "ft³"}
	}
	return figure{num(float64(v), 0), "l"}
}

func (s show) heat(v units.KJMM) figure {
	if s.us {
		return figure{num(float64(v)*units.MMPerInch, 1), "kJ/in"}
	}
	return figure{fixed(float64(v), 2), "kJ/mm"}
}

// minutes prints a time: minutes below two hours, hours above.
func minutes(v units.Minute) figure {
	if v >= 120 {
		return figure{fixed(float64(v)/60, 1), "h"}
	}
	if v < 10 {
		return figure{fixed(float64(v), 1), "min"}
	}
	return figure{num(float64(v), 0), "min"}
}
