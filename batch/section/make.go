package section

import (
	"math"

	"seamtally/batch/units"
	"seamtally/tables"
)

// make works the section out, or says why it is none.
func (w *written) make(set *tables.Set) (Section, string) {
	n := w.sizes
	mm := func(v float64) float64 {
		if w.inches {
			return v * 25.4
		}
		return v
	}
	switch w.family {
	case "IPE", "IPEA", "IPEAA", "IPEO", "IPEV", "HEA", "HEB", "HEC", "HEM", "HEAA", "UB", "UC", "UBP", "UPN", "UPE", "PFC", "INP":
		return w.fromTable(set)
	case "L":
		return w.angle(set)
	case "T":
		return w.rolledTee(set)
	case "W", "M", "S", "HP", "C", "MC":
		return w.american(set)
	case "WT", "MT", "ST":
		return w.tee(set)
	case "PIPE", "GOSTП", "GOSTУ", "GOSTI":
		return w.byName(set)
	case "HSS":
		return w.hss(set)
	case "box":
		if len(n) == 2 {
			n = []float64{n[0], n[0], n[1]}
		}
		w.sizes = n
		return w.three(func(a, b, c float64) (Section, error) { return box(mm(a), mm(b), mm(c), !w.hot) })
	case "tube", "round", "pipe":
		switch {
		case len(n) == 3 && w.family == "tube":
			return w.three(func(a, b, c float64) (Section, error) { return box(mm(a), mm(b), mm(c), !w.hot) })
		case len(n) == 2:
			return said(round(mm(n[0]), mm(n[1]), !w.hot))
		case len(n) == 1 && w.family == "round":
			return said(bar(mm(n[0]), false))
		}
		return Section{}, "a tube takes its diameter and wall, or height, width and wall"
	case "rod", "square":
		if len(n) == 1 {
			return said(bar(mm(n[0]), w.family == "square"))
		}
		return Section{}, "a bar takes one size; write SHS, RHS, CHS or FL where it has more"
	case "flat":
		if len(n) == 2 {
			return said(flat(mm(n[0]), mm(n[1])))
		}
		return Section{}, "a flat takes its width and thickness"
	case "channel":
		return Section{}, "a channel has several standards; write C, MC, UPN, UPE or PFC before its sizes, such as C8x11.5 or UPN 200"
	case "plate":
		return w.plate(mm)
	}
	return w.bare(mm)
}

// hss reads an American hollow section, in inches: of the table, else by geometry.
func (w *written) hss(set *tables.Set) (Section, string) {
	w.inchesOfMetric()
	w.fractions()
	if s, why := w.fromTable(set); why == "" {
		return s, ""
	}
	const in = units.MMPerInch
	var s Section
	var why string
	if len(w.sizes) == 2 {
		s, why = said(round(w.sizes[0]*in, w.sizes[1]*in, true))
		s.Source = "geometry on the nominal wall"
	} else {
		s, why = w.three(func(a, b, c float64) (Section, error) { return hss(a*in, b*in, c*in) })
	}
	s.Designation, s.Family = "HSS"+w.raw, "HSS"
	return s, why
}

// plate reads a plate: its thickness alone, or with its width.
func (w *written) plate(mm func(float64) float64) (Section, string) {
	if len(w.sizes) > 2 {
		return Section{}, "a plate takes its thickness and width; its length is no part of the section"
	}
	if len(w.sizes) > 1 {
		s, why := said(flat(mm(w.sizes[0]), mm(w.sizes[1])))
		s.Plate = true
		return s, why
	}
	s, why := said(flat(1000, mm(w.sizes[0])))
	s.Plate = true
	s.Designation, s.Family, s.B, s.Perimeter, s.Area, s.KgM = "plate "+sizeText(mm(w.sizes[0])), "plate", 0, 0, 0, 0
	return s, why
}

// bare reads sizes without a word: two are a flat, or a round tube where the first
// has decimals as the diameters of tubes have.
func (w *written) bare(mm func(float64) float64) (Section, string) {
	switch n := w.sizes; {
	case len(n) == 2 && n[0] != math.Trunc(n[0]) && !w.inches:
		return said(round(n[0], n[1], !w.hot))
	case len(n) == 2:
		return said(flat(mm(n[0]), mm(n[1])))
	case len(n) == 3 && (w.hot || w.cold):
		return said(box(mm(n[0]), mm(n[1]), mm(n[2]), !w.hot))
	case len(n) == 3:
		return Section{}, "three sizes may be a hollow section or an angle; write SHS, RHS or L before them"
	}
	return Section{}, "the kind of section is missing; write SHS, RHS, CHS, L, IPE, HEA, UPN, FL or PL before the size"
}

func (w *written) three(make func(a, b, c float64) (Section, error)) (Section, string) {
	if len(w.sizes) != 3 {
		return Section{}, "it takes height, width and wall"
	}
	return said(make(w.sizes[0], w.sizes[1], w.sizes[2]))
}

func said(s Section, err error) (Section, string) {
	if err != nil {
		return Section{}, err.Error()
	}
	return s, ""
}
