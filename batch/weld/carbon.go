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

// SteelLimits are the highest contents that a product standard allows a steel,
// in per cent by mass. Zero is not limited.
type SteelLimits struct{ CEV, C, Cu, Mn, Mo, Ni, Cr float64 }

// HighestCET returns the highest CET that a steel can have within the limits of
// its standard, in per cent. Standards limit the CEV and the contents, hardly
// ever the CET; the two count the elements differently, so the highest CET is
// that of the analysis which spends the CEV on the elements that raise the CET
// most for it.
//
//	CET = Σ xi ci, ci <= ci,max, Σ wi ci <= CEV;  xi/wi: C 1, Cu 3/4, Mn 3/5, Mo 1/2, Ni 3/8, Cr 1/4, filled in this order        (CARBON-4)
//
// Symbols: ci content [%]; xi weight in the CET (CARBON-2) [-]; wi weight in the
// CEV (CARBON-1) [-]; CEV highest the standard allows [%].
// Valid: C limited; limits not negative and below what such steel can hold.
// Assumes: ladle analysis; where the standard limits no CEV, elements that it
// does not limit are absent; where it does, they may take what the CEV leaves.
// Source: linear programme of CARBON-1 and CARBON-2, solved by taking the best ratio first.
// Basis: derived.
// Accuracy: exact for the limits given; no steel within them has more.
// Errors: [ErrRange] for a carbon limit of zero or a limit outside what is valid.
func HighestCET(l SteelLimits) (float64, error) {
	c := Composition{C: l.C, Cu: l.Cu, Mn: l.Mn, Mo: l.Mo, Ni: l.Ni, Cr: l.Cr}
	if err := first(over("carbon limit", l.C, 2.1, "%"), within("CEV limit", l.CEV, 0, 5, "%"), c.check()); err != nil {
		return 0, err
	}
	if l.CEV == 0 {
		return c.CET()
	}
	room, cet := l.CEV, 0.0
	for _, e := range []struct{ limit, inCEV, inCET float64 }{
		{l.C, 1, 1}, {l.Cu, 1. / 15, 1. / 20}, {l.Mn, 1. / 6, 1. / 10}, {l.Mo, 1. / 5, 1. / 10}, {l.Ni, 1. / 15, 1. / 40}, {l.Cr, 1. / 5, 1. / 20},
	} {
		take := room / e.inCEV
		if e.limit > 0 {
			take = min(take, e.limit)
		}
		cet += take * e.inCET
		room = max(0, room-take*e.inCEV)
	}
	return cet, nil
}
