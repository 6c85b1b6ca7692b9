package weld

import "seamtally/batch/units"

// ShrinkButt returns how much a butt weld draws two plates together across the
// seam, in millimetres.
//
//	S = 0.2 A/t + 0.05 g        (SHRINK-1)
//
// Symbols: A area of the weld [mm²], as made; t thickness [mm]; g gap [mm].
// Valid: 0 < A <= 10⁵ mm², 0 < t <= 1000 mm, 0 <= g <= 100 mm.
// Assumes: free plates of steel; [ShrinkButtLow] is the other published form.
// Source: a chart crediting Spraragen and Ettinger; older AWS Welding Handbook has 0.18 for 0.2.
// Basis: memory.
// Accuracy: estimating only: the upper end of a range.
// Errors: [ErrRange] for a value outside the limits.
func ShrinkButt(area units.MM2, t, gap units.MM) (units.MM, error) {
	err := first(
		over("area", area, 1e5, "mm²"),
		over("thickness", t, maxThickness, "mm"),
		within("gap", gap, 0, 100, "mm"),
	)
	if err != nil {
		return 0, err
	}
	return units.MM(0.2*float64(area)/float64(t) + 0.05*float64(gap)), nil
}

// ShrinkButtLow returns the lower estimate of how much a butt weld draws two
// plates together across the seam, in millimetres.
//
//	S = 0.1 A/t        (SHRINK-4)
//
// Symbols: A area of the weld [mm²], as made; t thickness [mm].
// Valid: 0 < A <= 10⁵ mm², 0 < t <= 1000 mm.
// Assumes: free plates of steel.
// Source: project method statement citing AWS D1.1:2020 and Blodgett (extract), formula and tables 1 and 2.
// Basis: published.
// Accuracy: estimating only: the lower end of a range.
// Errors: [ErrRange] for a value outside the limits.
func ShrinkButtLow(area units.MM2, t units.MM) (units.MM, error) {
	if err := first(over("area", area, 1e5, "mm²"), over("thickness", t, maxThickness, "mm")); err != nil {
		return 0, err
	}
	return units.MM(0.1 * float64(area) / float64(t)), nil
}

// ShrinkTee returns how much two continuous fillets shorten the plate that they
// stand on, across the seam, in millimetres.
//
//	S = 1.02 z/t        (SHRINK-2)
//
// Symbols: z leg of each fillet [mm]; t thickness of the through plate [mm].
// Valid: 0 < z <= 200 mm, 0 < t <= 1000 mm. Stitches: times welded length over length.
// Assumes: fillets on both sides, free plates of steel.
// Source: AWS Welding Handbook (0.04 in constant).
// Basis: memory.
// Accuracy: estimating only.
// Errors: [ErrRange] for a value outside the limits.
func ShrinkTee(leg, t units.MM) (units.MM, error) {
	if err := first(over("leg", leg, maxLeg, "mm"), over("thickness", t, maxThickness, "mm")); err != nil {
		return 0, err
	}
	return units.MM(1.02 * float64(leg) / float64(t)), nil
}

// ShrinkLap returns how much two continuous fillets of a lap joint draw the
// plates together across the seam, in millimetres.
//
//	S = 1.52 z/t        (SHRINK-5)
//
// Symbols: z leg of each fillet [mm]; t thickness of the plates [mm].
// Valid: 0 < z <= 200 mm, 0 < t <= 1000 mm. Stitches: times welded length over length.
// Assumes: a fillet at both edges, free plates of steel.
// Source: AWS Welding Handbook (0.06 in constant); a calculator page has the constant 1.52.
// Basis: memory.
// Accuracy: estimating only.
// Errors: [ErrRange] for a value outside the limits.
func ShrinkLap(leg, t units.MM) (units.MM, error) {
	if err := first(over("leg", leg, maxLeg, "mm"), over("thickness", t, maxThickness, "mm")); err != nil {
		return 0, err
	}
	return units.MM(1.52 * float64(leg) / float64(t)), nil
}

// ShrinkFilletRule returns the allowance for what fillets draw a part together
// across the seam, in millimetres: a rule of thumb beside [ShrinkTee].
//
//	S = 0.8 n        (SHRINK-6)
//
// Symbols: n fillets on the part [-]; z leg [mm]; t plate thickness [mm].
// Valid: 1 <= n <= 100, z <= 0.75 t.
// Assumes: continuous fillets on steel.
// Source: TWI FAQ weld shrinkage allowance.
// Basis: published.
// Accuracy: a rule of thumb, meant as an allowance when parts are cut.
// Errors: [ErrRange] for a leg above three quarters of the plate.
func ShrinkFilletRule(n int, leg, t units.MM) (units.MM, error) {
	err := first(within("fillets", float64(n), 1, 100, ""), over("thickness", t, maxThickness, "mm"), over("leg", leg, 0.75*float64(t), "mm"))
	if err != nil {
		return 0, err
	}
	return units.MM(0.8 * float64(n)), nil
}

// ShrinkLong returns how much a seam shortens a part along itself, in
// millimetres per metre.
//
//	δ = 25 A/Ap        (SHRINK-3)
//
// Symbols: A area of the weld [mm²], as made; Ap section of the part that is drawn together [mm²].
// Valid: 0 < A, Ap > 20 A.
// Assumes: a straight part, the seam near its centre of gravity.
// Source: Guyot, Masubuchi.
// Basis: memory.
// Accuracy: estimating only.
// Errors: [ErrRange] for a part that is small against its weld, or an area that is not positive.
func ShrinkLong(area, part units.MM2) (float64, error) {
	if err := first(over("area", area, 1e5, "mm²"), within("section of the part", part, 20*float64(area), 1e9, "mm²")); err != nil {
		return 0, err
	}
	return 25 * float64(area) / float64(part), nil
}
