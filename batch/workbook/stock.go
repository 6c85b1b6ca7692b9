package workbook

import (
	"math"
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
// rates. Typed is what differs from the stock that the list was last worked with. The
// problems tell what no shop value can say.
func StockTyped(src *list.Source, set *tables.Set) ([]rates.Stated, []finding.Problem) {
	if src.Format == list.CSV {
		return nil, nil
	}
	ours, ok := pack.FindOurs(src.Data, marks...)
	if !ok {
		return nil, nil
	}
	stock := stockTyping{set: set, asRun: asRunOf(src)}
	for i := range src.Sheets {
		if s := &src.Sheets[i]; ours.Sheets[s.Name] {
			stock.sheet(src.File, s)
		}
	}
	return stock.stated, stock.problems
}

type stockTyping struct {
	set      *tables.Set
	asRun    map[string]float64 // stock by key
	stated   []rates.Stated
	problems []finding.Problem
}

func (t *stockTyping) sheet(file string, s *list.Sheet) {
	onHand := 0
	for _, r := range s.Rows {
		if onHand == 0 {
			onHand = onHandColumn(r)
			continue
		}
		if cell := r.At(onHand); !cell.Formula {
			t.line(r, cell, finding.Place{File: file, Sheet: s.Name, Row: r.Number, Col: onHand, Header: buyHeads[4]})
		}
	}
}

// onHandColumn finds the column in the header of a buy list; 0 in any other row.
func onHandColumn(r list.Row) int {
	if r.At(1).Text != buyHeads[0] || r.At(2).Text != buyHeads[1] || r.At(5).Text != buyHeads[4] {
		return 0
	}
	return 5
}

// line reads what is on hand on one line.
func (t *stockTyping) line(r list.Row, cell list.Cell, place finding.Place) {
	number := cell.Kind == list.Number && !cell.Percent && finiteCell(cell.Value)
	key, unit := t.stockKey(r)
	stated := rates.Stated{Key: key, From: "workbook sheet " + place.Sheet, Place: place}
	switch {
	case cell.Kind == list.Blank && t.asRun[key] <= 0:
		return // as it was
	case cell.Kind == list.Blank:
		stated.Emptied = true // nothing is left of it
	case key == "" && r.At(1).Text == price.BuyTip && !(number && cell.Value == 0):
		t.problems = append(t.problems, finding.Problem{Place: place, Level: finding.Warning, Code: ChangedBeside, Read: cell.Text,
			Text: "what is on hand of contact tips is not taken: no shop value holds it", Want: "stock of wire and gas", Hint: "take it off what you order"})
		return
	case key == "":
		return
	case !number:
		stated.Text, stated.Unit = cell.Text, r.At(4).Text
	default:
		stated.Value = cell.Value
		if r.At(4).Text == unit.us {
			stated.Value *= unit.per
		}
		stated.Value = round6(stated.Value)
		if math.Abs(stated.Value-t.asRun[key]) <= 1e-6*math.Max(1, math.Abs(stated.Value)) {
			return
		}
	}
	t.stated = append(t.stated, stated)
}

// stockKey is the shop value that says how much of a line is on hand, and the unit of the
// line; "" where none does.
func (t *stockTyping) stockKey(r list.Row) (key string, u unit) {
	name := r.At(2).Text
	switch r.At(1).Text {
	case price.BuyWire:
		class := strings.TrimSuffix(name, " mm")
		if at := strings.LastIndexByte(class, ' '); at >= 0 {
			class = fillerNamed(t.set, class[:at]) + "." + class[at+1:]
		}
		return "on_hand_kg." + class, kilo
	case price.BuyGas:
		return "on_hand_l." + name, litre
	}
	return "", none
}

// asRunOf reads the sheet of rates for the values that the list was last worked with.
func asRunOf(src *list.Source) map[string]float64 {
	out, name := map[string]float64{}, RatesSheet(src)
	for i := range src.Sheets {
		if s := &src.Sheets[i]; s.Name == name {
			key, value := 0, 0
			for _, r := range s.Rows {
				if key == 0 || value == 0 {
					key, value = columnHeaded(r, rateHeads[0]), columnHeaded(r, rateHeads[6])
				} else if c := r.At(value); c.Kind == list.Number {
					out[r.At(key).Text] = c.Value
				}
			}
		}
	}
	return out
}

// columnHeaded finds a head in a row; 0 where it is not there.
func columnHeaded(r list.Row, head string) int {
	for _, c := range r.Cells {
		if c.Text == head {
			return c.Col
		}
	}
	return 0
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
