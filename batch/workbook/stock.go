package workbook

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/workbook/pack"
	"seamtally/tables"
)

// StockTyped returns what somebody typed under On hand into the buy list of a workbook
// of ours, as shop values: the next run reckons with it, and keeps it on the sheet of
// rates.
func StockTyped(src *list.Source, set *tables.Set) []rates.Stated {
	if src.Format == list.CSV {
		return nil
	}
	ours, ok := pack.FindOurs(src.Data, marks...)
	if !ok {
		return nil
	}
	var out []rates.Stated
	for i := range src.Sheets {
		s := &src.Sheets[i]
		if !ours.Sheets[s.Name] {
			continue
		}
		onHand := 0
		for _, r := range s.Rows {
			switch {
			case onHand == 0:
				onHand = onHandColumn(r)
			default:
				if stated, ok := stockLine(set, r, onHand); ok {
					stated.From = "workbook sheet " + s.Name
					stated.Place = finding.Place{File: src.File, Sheet: s.Name, Row: r.Number, Col: onHand, Header: buyHeads[4]}
					out = append(out, stated)
				}
			}
		}
	}
	return out
}

// onHandColumn finds the column in the header of a buy list; 0 in any other row.
func onHandColumn(r list.Row) int {
	if r.At(1).Text != buyHeads[0] || r.At(2).Text != buyHeads[1] || r.At(5).Text != buyHeads[4] {
		return 0
	}
	return 5
}

// stockLine reads what is on hand on one line; false where nothing was typed.
func stockLine(set *tables.Set, r list.Row, onHand int) (rates.Stated, bool) {
	cell := r.At(onHand)
	if cell.Formula || cell.Kind != list.Number || !(cell.Value > 0) || !finiteCell(cell.Value) {
		return rates.Stated{}, false
	}
	name, unit, value := r.At(2).Text, r.At(4).Text, cell.Value
	switch r.At(1).Text {
	case price.BuyWire:
		if unit == kilo.us {
			value *= kilo.per
		}
		class := strings.TrimSuffix(name, " mm")
		at := strings.LastIndexByte(class, ' ')
		if at < 0 {
			return rates.Stated{}, false
		}
		return rates.Stated{Key: "on_hand_kg." + fillerNamed(set, class[:at]) + "." + class[at+1:], Value: round6(value)}, true
	case price.BuyGas:
		if unit == litre.us {
			value *= litre.per
		}
		return rates.Stated{Key: "on_hand_l." + name, Value: round6(value)}, true
	}
	return rates.Stated{}, false
}

// fillerNamed returns the name that the shop values know a wire by, whichever of its
// names is shown.
func fillerNamed(set *tables.Set, shown string) string {
	for i := range set.Wires {
		if set.Wires[i].AWS == shown {
			return set.Wires[i].Filler
		}
	}
	return shown
}
