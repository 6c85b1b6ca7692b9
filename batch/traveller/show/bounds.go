package show

import (
	"math"

	"seamtally/batch/units"
)

// AtLeast prints a width that may be more but not less: whole millimetres, or sixteenths of
// an inch, of a broad one quarters, rounded up.
func (s Figures) AtLeast(v units.MM) Figure {
	if !s.US {
		return Figure{s.Num(math.Ceil(float64(v)-1e-9), 0), "mm"}
	}
	parts := 16.0
	if v.Inch() > 2 {
		parts = 4
	}
	return Figure{s.inches(math.Ceil(v.Inch()*parts-1e-9) / parts), "in"}
}

// Stock prints the length of a bar as it is bought: whole millimetres, or feet
// where they come out whole.
func (s Figures) Stock(v units.MM) Figure {
	if !s.US {
		return Figure{s.Num(float64(v), 0), "mm"}
	}
	if feet := v.Inch() / 12; math.Abs(feet-math.Round(feet)) < 1e-3 {
		return Figure{s.Num(feet, 0), "ft"}
	}
	return Figure{s.inches(v.Inch()), "in"}
}

// AtMost prints a length that may be less but not more: whole millimetres, or
// sixteenths of an inch, rounded down.
func (s Figures) AtMost(v units.MM) Figure {
	if !s.US {
		return Figure{s.Num(math.Floor(float64(v)+1e-9), 0), "mm"}
	}
	return Figure{s.inches(math.Floor(v.Inch()*16+1e-9) / 16), "in"}
}

// Limit prints a small length that must not be passed: tenths of a millimetre, or
// hundredths of an inch, rounded down.
func (s Figures) Limit(v units.MM) Figure {
	if s.US {
		return Figure{s.Num(math.Floor(v.Inch()*100+1e-9)/100, 2), "in"}
	}
	return Figure{s.Num(math.Floor(float64(v)*10+1e-9)/10, 1), "mm"}
}

// tens is what degrees Fahrenheit are rounded to: 482 °F, which is 250 °C, reads as if
// somebody had measured it.
const tens = 10

// Warm prints a temperature that must be reached, rounded up: whole degrees Celsius, tens
// of degrees Fahrenheit, or whole ones where a limit to be kept below would fall short.
func (s Figures) Warm(v units.Celsius, below *units.Celsius) Figure {
	if !s.US {
		return Figure{s.Num(math.Ceil(float64(v)-1e-9), 0), "°C"}
	}
	return Figure{s.Num(roundedUp(fahrenheit(v), s.step(&v, below)), 0), "°F"}
}

// Cool prints a temperature that must not be passed, rounded down alike.
func (s Figures) Cool(v units.Celsius, above *units.Celsius) Figure {
	if !s.US {
		return Figure{s.Num(math.Floor(float64(v)+1e-9), 0), "°C"}
	}
	return Figure{s.Num(roundedDown(fahrenheit(v), s.step(above, &v)), 0), "°F"}
}

func fahrenheit(v units.Celsius) float64 { return float64(v)*1.8 + 32 }

// step is what both temperatures are rounded to.
func (s Figures) step(least, most *units.Celsius) float64 {
	if least != nil && most != nil && roundedUp(fahrenheit(*least), tens) > roundedDown(fahrenheit(*most), tens) {
		return 1
	}
	return tens
}

func roundedUp(v, step float64) float64   { return math.Ceil(v/step-1e-9) * step }
func roundedDown(v, step float64) float64 { return math.Floor(v/step+1e-9) * step }
