package weld

// Composition is a steel's analysis in per cent by mass.
type Composition struct{ C, Si, Mn, Cr, Mo, V, Ni, Cu, B float64 }

func (c Composition) check() error {
	return first(
		within("carbon", c.C, 0, 2.1, "%"), within("silicon", c.Si, 0, 5, "%"), within("manganese", c.Mn, 0, 20, "%"),
		within("chromium", c.Cr, 0, 12, "%"), within("molybdenum", c.Mo, 0, 5, "%"), within("vanadium", c.V, 0, 2, "%"),
		within("nickel", c.Ni, 0, 12, "%"), within("copper", c.Cu, 0, 5, "%"), within("boron", c.B, 0, 0.1, "%"),
	)
}

// CEV returns the carbon equivalent of the IIW in per cent.
//
//	CEV = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15        (CARBON-1)
//
// Symbols: C, Mn, Cr, Mo, V, Ni, Cu contents by mass [%], from the certificate.
// Valid: ferritic steel; contents not negative and below what such steel can hold.
// Assumes: ladle analysis.
// Source: steel-plate maker data page (CEV/CET/Pcm); EN 10025 uses the same.
// Basis: published.
// Accuracy: exact arithmetic; as an index of hardening good to about 0.02.
// Errors: [ErrRange] for a content outside the limits.
func (c Composition) CEV() (float64, error) {
	return c.C + c.Mn/6 + (c.Cr+c.Mo+c.V)/5 + (c.Ni+c.Cu)/15, c.check()
}

// CET returns the carbon equivalent that the preheat formula takes, in per cent.
//
//	CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40        (CARBON-2)
//
// Symbols: C, Mn, Mo, Cr, Cu, Ni contents by mass [%], from the certificate.
// Valid: as [Composition.CEV].
// Assumes: ladle analysis.
// Source: steel-plate maker data page (CEV/CET/Pcm); EN 1011-2 Annex C.3, recalled.
// Basis: published.
// Accuracy: exact arithmetic.
// Errors: [ErrRange] for a content outside the limits.
func (c Composition) CET() (float64, error) {
	return c.C + (c.Mn+c.Mo)/10 + (c.Cr+c.Cu)/20 + c.Ni/40, c.check()
}

// Pcm returns the cracking parameter of low-carbon steel in per cent.
//
//	Pcm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B        (CARBON-3)
//
// Symbols: C, Si, Mn, Cu, Cr, Ni, Mo, V, B contents by mass [%], from the certificate.
// Valid: as [Composition.CEV]; meant for carbon below about 0.16 %.
// Assumes: ladle analysis.
// Source: steel-plate maker data page (CEV/CET/Pcm).
// Basis: published.
// Accuracy: exact arithmetic.
// Errors: [ErrRange] for a content outside the limits.
func (c Composition) Pcm() (float64, error) {
	return c.C + c.Si/30 + (c.Mn+c.Cu+c.Cr)/20 + c.Ni/60 + c.Mo/15 + c.V/10 + 5*c.B, c.check()
}
