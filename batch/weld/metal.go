package weld

import (
	"math"

	"seamtally/batch/units"
)

// Mass returns the weld metal of a seam in kilograms.
//
//	m = A L ρ / 10⁶        (METAL-1)
//
// Symbols: A area of the seam [mm²], as made; L welded length [m]; ρ density of
// the weld metal [kg/m³].
// Valid: 0 <= A <= 10⁶ mm², 0 <= L <= 10⁶ m, 500 <= ρ <= 20000 kg/m³. An area or a length of zero gives zero.
// Assumes: the same area along the whole seam.
// Source: definition of density.
// Basis: derived.
// Accuracy: as good as the area.
// Errors: [ErrRange] for a negative or absurd value.
func Mass(area units.MM2, length units.Metre, density units.KgM3) (units.Kg, error) {
	err := first(
		within("area", area, 0, 1e6, "mm²"),
		within("length", length, 0, 1e6, "m"),
		checkDensity(density),
	)
	if err != nil {
		return 0, err
	}
	return units.Kg(float64(area) * float64(length) * float64(density) / 1e6), nil
}

func checkDensity(d units.KgM3) error { return within("density", d, 500, 20000, "kg/m³") }

// WireBought returns the wire to buy in kilograms for some weld metal.
//
//	m_wire = m / η (1 + p/100)        (METAL-2)
//
// Symbols: m weld metal [kg]; η deposition efficiency, weld metal per wire melted
// [0..1]; p waste: ends, change-overs, what is left on the spool [%].
// Valid: m >= 0, 0.3 <= η <= 1, 0 <= p <= 100 %.
// Assumes: waste is a share of the wire melted.
// Source: definition; Filler Metal Data Handbook sec. 8 divides by the efficiency the same way.
// Basis: derived.
// Accuracy: as good as the efficiency, about ±3 % for solid wire.
// Errors: [ErrRange] for a value outside the limits.
func WireBought(metal units.Kg, efficiency, wastePct float64) (units.Kg, error) {
	err := first(
		within("weld metal", metal, 0, 1e9, "kg"),
		within("deposition efficiency", efficiency, 0.3, 1, ""),
		within("waste", wastePct, 0, 100, "%"),
	)
	if err != nil {
		return 0, err
	}
	return units.Kg(float64(metal) / efficiency * (1 + wastePct/100)), nil
}

// LinearMass returns the mass of a metre of solid wire in grams.
//
//	q = π d² / 4 ρ / 1000        (METAL-3)
//
// Symbols: d diameter [mm], nominal; ρ density of the wire [kg/m³].
// Valid: 0.3 <= d <= 10 mm, 500 <= ρ <= 20000 kg/m³.
// Assumes: solid wire of nominal diameter. Cored wire is lighter: use its table value.
// Source: geometry.
// Basis: derived.
// Accuracy: wire of nominal 1.2 mm sold as 0.045 in is 1.14 mm and 10 % lighter.
// Errors: [ErrRange] for a value outside the limits.
func LinearMass(d units.MM, density units.KgM3) (units.GramM, error) {
	err := first(within("wire diameter", d, 0.3, 10, "mm"), checkDensity(density))
	if err != nil {
		return 0, err
	}
	return units.GramM(math.Pi * float64(d) * float64(d) / 4 * float64(density) / 1000), nil
}

// WireLength returns the metres of wire in some kilograms.
//
//	L = 1000 m / q        (METAL-4)
//
// Symbols: m mass of wire [kg]; q linear mass [g/m].
// Valid: m >= 0, 0.1 <= q <= 1000 g/m.
// Assumes: the same wire throughout.
// Source: definition of linear mass.
// Basis: derived.
// Accuracy: as good as the linear mass.
// Errors: [ErrRange] for a value outside the limits.
func WireLength(mass units.Kg, q units.GramM) (units.Metre, error) {
	err := first(within("mass of wire", mass, 0, 1e9, "kg"), checkLinear(q))
	if err != nil {
		return 0, err
	}
	return units.Metre(1000 * float64(mass) / float64(q)), nil
}

func checkLinear(q units.GramM) error { return within("linear mass", q, 0.1, 1000, "g/m") }
