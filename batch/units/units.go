// Package units answers one question: in which unit is this number? Every
// figure that crosses a package border carries one of these types, so that a
// millimetre cannot be handed over as a metre. The package imports nothing.
package units

// Lengths, areas and angles.
type (
	// MM is a length in millimetres.
	MM float64
	// MM2 is an area in square millimetres.
	MM2 float64
	// Metre is a length in metres.
	Metre float64
	// Degree is a plane angle in degrees.
	Degree float64
)

// Mass, density and linear mass.
type (
	// Kg is a mass in kilograms.
	Kg float64
	// KgM3 is a density in kilograms per cubic metre.
	KgM3 float64
	// GramM is a linear mass in grams per metre.
	GramM float64
	// KgH is a deposition rate in kilograms per hour of arc time.
	KgH float64
)

// Electrical figures and heat.
type (
	// Amp is a current in amperes.
	Amp float64
	// Volt is an arc voltage in volts.
	Volt float64
	// KJMM is heat or energy per length in kilojoules per millimetre.
	KJMM float64
	// KWh is energy in kilowatt-hours.
	KWh float64
	// Celsius is a temperature in degrees Celsius.
	Celsius float64
)

// Speeds, flows, time and money.
type (
	// MMin is a wire feed speed in metres per minute.
	MMin float64
	// MMMin is a travel speed in millimetres per minute.
	MMMin float64
	// LMin is a gas flow in litres per minute.
	LMin float64
	// Litre is a gas volume in litres at 15 °C and 1 bar.
	Litre float64
	// Minute is a time in minutes.
	Minute float64
	// Second is a time in seconds.
	Second float64
	// Money is an amount in the shop's currency.
	Money float64
)

// MMPerInch is exact by definition of the inch.
const MMPerInch = 25.4

// Inch returns the length in inches.
func (m MM) Inch() float64 { return float64(m) / MMPerInch }

// FromInch returns the millimetres of a length in inches.
func FromInch(in float64) MM { return MM(in * MMPerInch) }

// Metres returns the same length in metres.
func (m MM) Metres() Metre { return Metre(m / 1000) }
