// Package show writes figures the way the floor reads them: millimetres or inches,
// m/min or in/min, with no more digits than a dial has.
package show

import (
	"math"
	"strconv"
	"strings"

	"seamtally/batch/plan"
	"seamtally/batch/units"
)

// Figures chooses the units: millimetres, or inches where US is set; and the sign before
// the decimals: a point, or a comma.
type Figures struct{ US, Comma bool }

// Figure is a number with its unit, kept apart so that each can have its own size.
type Figure struct{ Num, Unit string }

// String returns number and unit with a space between.
func (f Figure) String() string {
	if f.Num == "" || f.Unit == "" {
		return f.Num
	}
	if strings.HasPrefix(f.Unit, "°") && len([]rune(f.Unit)) == 1 {
		return f.Num + f.Unit
	}
	return f.Num + " " + f.Unit
}

// Num prints a number with at most the given decimals, without trailing zeros.
// What is not a number is printed as nothing.
func (s Figures) Num(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return s.signed(text)
}

// Fixed prints a number with exactly the given decimals.
func (s Figures) Fixed(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strconv.FormatFloat(0, 'f', decimals, 64)
	}
	return s.signed(text)
}

// signed gives a number the sign before its decimals.
func (s Figures) signed(number string) string {
	if s.Comma {
		return strings.Replace(number, ".", ",", 1)
	}
	return number
}

// Nearest rounds to a multiple of step.
func Nearest(v, step float64) float64 { return math.Round(v/step) * step }

// Size prints a size of the drawing: a thickness, a leg, a gap.
func (s Figures) Size(v units.MM) Figure {
	if !s.US {
		return Figure{s.Num(math.Round(float64(v)*10+1e-6)/10, 1), "mm"} // a half rounds up: a size is a minimum
	}
	return Figure{s.inches(v.Inch()), "in"}
}

// inches prints a fraction to 1/16 where the length is one, else decimals: a
// size must never be rounded to a smaller one.
func (s Figures) inches(in float64) string {
	const slack = 0.1 / units.MMPerInch
	sixteenths := math.Round(in * 16)
	if math.Abs(in-sixteenths/16) > slack || sixteenths == 0 {
		return s.Num(in, 3)
	}
	return units.Sixteenths(int(sixteenths))
}

// Decimals prints a size beside which another has no fraction: both in decimals.
func (s Figures) Decimals(v units.MM) string {
	if s.US {
		return s.Num(v.Inch(), 3)
	}
	return s.Size(v).Num
}

// Length prints a seam length; one that is not known as a dash.
func (s Figures) Length(v units.MM) Figure {
	if v == 0 {
		return Figure{Num: "–"}
	}
	if s.US {
		return Figure{s.Num(v.Inch(), 1), "in"}
	}
	return Figure{s.Num(float64(v), 0), "mm"}
}

// Seam prints metres of seam, or feet.
func (s Figures) Seam(v units.Metre) Figure {
	if s.US {
		return Figure{s.Fixed(float64(v)*1000/units.MMPerInch/12, 1), "ft"}
	}
	return Figure{s.Fixed(float64(v), 2), "m"}
}

// Dia prints the diameter of a wire of a class, in inches under the name that it is sold
// by where it has one.
func (s Figures) Dia(v units.MM, filler string) string {
	if !s.US {
		return s.Fixed(float64(v), 1) + " mm"
	}
	metric := " (" + s.Num(float64(v), 2) + " mm)"
	if name := units.WireInches(v, filler); name != "" {
		return name + " in" + metric
	}
	return s.Fixed(v.Inch(), 3) + " in" + metric
}

// DiaShort is Dia without units, where there is little room.
func (s Figures) DiaShort(v units.MM, filler string) string {
	if name := units.WireInches(v, filler); s.US && name != "" {
		return name
	}
	return s.Fixed(float64(v), 1)
}

// Spread is a start value and its band in the unit shown.
type Spread struct {
	Start, Low, High string
	Unit             string
}

func (s Figures) spread(w plan.Window, factor float64, decimals int, unit string) Spread {
	if w.Start == 0 {
		return Spread{Unit: unit}
	}
	out := Spread{Start: s.Fixed(w.Start*factor, decimals), Unit: unit}
	if w.High > w.Low {
		out.Low, out.High = s.Fixed(w.Low*factor, decimals), s.Fixed(w.High*factor, decimals)
	}
	return out
}

const (
	inchPerMetre = 1000 / units.MMPerInch
	cfhPerLMin   = 60 / 28.316846592 // one cubic foot is 28.316846592 l by definition of the inch
	lbPerKg      = 1 / 0.45359237
)

// Feed prints a wire feed speed with its band.
func (s Figures) Feed(w plan.Window) Spread {
	if s.US {
		return s.spread(w, inchPerMetre, 0, "in/min")
	}
	return s.spread(w, 1, 1, "m/min")
}

// Volts prints an arc voltage with its band.
func (s Figures) Volts(w plan.Window) Spread { return s.spread(w, 1, 1, "V") }

// Amps prints a current with its band.
func (s Figures) Amps(w plan.Window) Spread { return s.spread(w, 1, 0, "A") }

// Flow prints a gas flow with its band.
func (s Figures) Flow(w plan.Window) Spread {
	if s.US {
		return s.spread(w, cfhPerLMin, 0, "ft³/h")
	}
	return s.spread(w, 1, 0, "l/min")
}

// Stickout prints a stick-out with its band.
func (s Figures) Stickout(w plan.Window) Spread {
	if s.US {
		return s.sixteenths(w)
	}
	return s.spread(w, 1, 0, "mm")
}

// sixteenths prints a stick-out to the nearest 1/16 in: nobody sets it finer.
func (s Figures) sixteenths(w plan.Window) Spread {
	at := func(v float64) string { return s.inches(Nearest(units.MM(v).Inch(), 1.0/16)) }
	out := Spread{Start: at(w.Start), Unit: "in"}
	if w.High > w.Low {
		out.Low, out.High = at(w.Low), at(w.High)
	}
	return out
}

// Travel prints a travel speed.
func (s Figures) Travel(v units.MMMin) Figure {
	if s.US {
		return Figure{s.Num(units.MM(v).Inch(), 1), "in/min"}
	}
	return Figure{s.Num(Nearest(float64(v), 5), 0), "mm/min"}
}

// Pace prints the seconds for 100 mm, or for 4 in, of seam.
func (s Figures) Pace(v units.MMMin) (seconds string, per Figure) {
	per = Figure{"100", "mm"}
	length := units.MM(100)
	if s.US {
		per, length = Figure{"4", "in"}, units.FromInch(4)
	}
	if v <= 0 {
		return "", per
	}
	return s.Num(float64(length)/float64(v)*60, 0), per
}

// Mass prints a mass; what is less than the figures show, but not nothing, says so.
func (s Figures) Mass(v units.Kg) Figure {
	n, unit := float64(v), "kg"
	if s.US {
		n, unit = n*lbPerKg, "lb"
	}
	if n > 0 && n < 0.005 {
		return Figure{"< " + s.Fixed(0.01, 2), unit}
	}
	return Figure{s.Fixed(n, 2), unit}
}

// Pack prints the size of a spool without idle zeros.
func (s Figures) Pack(v units.Kg) string {
	if s.US {
		return s.Num(float64(v)*lbPerKg, 1) + " lb"
	}
	return s.Num(float64(v), 2) + " kg"
}

// Gas prints a gas volume.
func (s Figures) Gas(v units.Litre) Figure {
	if s.US {
		feet, decimals := float64(v)/28.316846592, 0
		if feet > 0 && feet < 2 { // no need reads 0
			feet, decimals = max(feet, 0.1), 1
		}
		return Figure{s.Num(feet, decimals), "ft³"}
	}
	return Figure{s.Num(float64(v), 0), "l"}
}

// Heat prints a heat input.
func (s Figures) Heat(v units.KJMM) Figure {
	if s.US {
		return Figure{s.Num(float64(v)*units.MMPerInch, 1), "kJ/in"}
	}
	return Figure{s.Fixed(float64(v), 2), "kJ/mm"}
}

// Minutes prints a time: minutes below two hours, hours above.
func (s Figures) Minutes(v units.Minute) Figure {
	if v >= 120 {
		return Figure{s.Fixed(float64(v)/60, 1), "h"}
	}
	if v < 10 {
		return Figure{s.Fixed(float64(v), 1), "min"}
	}
	return Figure{s.Num(float64(v), 0), "min"}
}

// Load prints the mass of what is carried: to a tenth below a hundred.
func (s Figures) Load(v units.Kg) Figure {
	n, unit := float64(v), "kg"
	if s.US {
		n, unit = n*lbPerKg, "lb"
	}
	if n >= 100 {
		return Figure{s.Num(n, 0), unit}
	}
	return Figure{s.Fixed(n, 1), unit}
}

// Surface prints an area in m², or in square feet.
func (s Figures) Surface(v float64) Figure {
	if s.US {
		return Figure{s.Fixed(v*1e6/(units.MMPerInch*units.MMPerInch*144), 1), "ft²"}
	}
	return Figure{s.Fixed(v, 2), "m²"}
}
