package tables

import "seamtally/batch/units"

// CombinedRow is the greatest combined thickness that needs no preheat at a
// carbon equivalent, over a range of hydrogen, at two heat inputs.
type CombinedRow struct {
	HDOver float64  `csv:"hd_over_ml_100g"`
	HDTo   float64  `csv:"hd_to_ml_100g"` // 0: without upper limit
	CE     float64  `csv:"ce"`
	At1    units.MM `csv:"thick_at_1_kj_mm"`
	At2    units.MM `csv:"thick_at_2_kj_mm"`
	Origin
}

// CombinedThickness returns the greatest combined thickness that needs no
// preheat: between the rows of lower and higher carbon equivalent and between the
// two heats on straight lines. Leaner steel than the lowest row and more heat
// than the higher are taken at them; richer steel and less heat are outside.
func (f *Facts) CombinedThickness(ce, hd float64, q units.KJMM) (units.MM, CombinedRow, bool) {
	var lean, rich *CombinedRow
	for i := range f.Combined {
		r := &f.Combined[i]
		if !inside(hd, r.HDOver, r.HDTo) {
			continue
		}
		if r.CE <= ce+1e-9 && (lean == nil || r.CE > lean.CE) {
			lean = r
		}
		if r.CE >= ce-1e-9 && (rich == nil || r.CE < rich.CE) {
			rich = r
		}
	}
	if rich == nil || q < 1-1e-9 || ce <= 0 {
		return 0, CombinedRow{}, false
	}
	if lean == nil || lean == rich {
		return rich.at(q), *rich, true
	}
	share := units.MM((ce - lean.CE) / (rich.CE - lean.CE))
	return lean.at(q) + (rich.at(q)-lean.at(q))*share, *rich, true
}

func (r *CombinedRow) at(q units.KJMM) units.MM {
	return r.At1 + (r.At2-r.At1)*units.MM(min(q, 2)-1)
}
