package templates

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"seamtally/tables"
)

// shopSections are the headings of the shop file, each before the key it names.
var shopSections = []struct{ before, title string }{
	{"overweld_mm", "How welds really come out"},
	{"waste_pct", "Wire and gas lost"},
	{"operating_factor", "Time: measure a few jobs of your own, these move the price most"},
	{"labour_rate", "Money"},
	{"size_means", "How a list is read and how wire and gas are chosen"},
	{"stock_wires", "What the shop has"},
	{"wire_price", "Wires: price and spool; class alone for all diameters, class and diameter for one"},
	{"cylinder_price", "Gases: price of one filling and what comes out of it"},
	{"stock_hollow", "Cut lists: bars and plates, how they are bought and sawn"},
}

// shopHead tells how to use the file. Lines beginning with # are not read.
var shopHead = []string{
	"# Shop file: what the tool takes for your shop until you say otherwise.",
	"# Change the column value. A line left as it is stays the tool's assumption and is listed as not yours in every result.",
	"# The unit money stands for the currency named below. Lines beginning with # are not read.",
	"# low and high show how far the value spreads in practice; basis and source say where it comes from.",
}

// ShopFile returns a shop file to fill in, as CSV: every shop value of the tables
// with its unit, spread, basis, source and what it means. Read back unchanged it
// states nothing of its own. With us it suggests, as remarks, the currency and
// the wire diameters of a shop that works in inches.
func ShopFile(set *tables.Set, us bool) ([]byte, error) {
	if set == nil || len(set.Shop) == 0 {
		return nil, fmt.Errorf("the shop file needs the table shop, which has no rows")
	}
	var out bytes.Buffer
	out.WriteString("\ufeff") // spreadsheets take a CSV without it for another alphabet
	w := csv.NewWriter(&out)
	for _, line := range shopHead {
		w.Write([]string{line})
	}
	w.Write([]string{"key", "value", "unit", "low", "high", "basis", "source", "note"})
	section := 0
	for _, v := range set.Shop {
		if section < len(shopSections) && startsSection(v.Key, shopSections[section].before) {
			w.Write([]string{"# " + shopSections[section].title})
			section++
		}
		low, high := spreadText(v)
		w.Write([]string{v.Key, v.Value, v.Unit, low, high, v.Basis, v.Source, v.Note})
		for _, line := range shopRemarks(set, v, us) {
			w.Write(line)
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}

func startsSection(key, before string) bool {
	return key == before || strings.HasPrefix(key, before+".")
}

func spreadText(v tables.ShopValue) (low, high string) {
	if v.Low == 0 && v.High == 0 {
		return "", ""
	}
	return strconv.FormatFloat(v.Low, 'f', -1, 64), strconv.FormatFloat(v.High, 'f', -1, 64)
}

// shopRemarks returns lines that show keys which have no built-in value, or
// another usual value, without stating them.
func shopRemarks(set *tables.Set, v tables.ShopValue, us bool) [][]string {
	switch {
	case v.Key == "machines":
		var names []string
		for _, m := range set.Machines {
			names = append(names, m.Name)
		}
		return [][]string{
			{"# machines to name", strings.Join(names, "; "), "", "", "", "", "", "the classes of machine that the tables know"},
			{"# on_hand_kg.G3Si1.1.0", "7.5", "kg", "", "", "", "", "wire in the store, taken off what is to be bought: take the # away and write your own"},
			{"# on_hand_l.M21", "8000", "l", "", "", "", "", "gas in the store, likewise"},
		}
	case us && v.Key == "currency":
		return [][]string{{"# currency", "USD", "", "", "", "", "", "take the # away here and delete the line above"}}
	case us && v.Key == "stock_wires":
		return [][]string{{"# stock_wires", usStock(set, v.Value), "", "", "", "", "", "inch sizes (0.9 mm is .035 in): take the # away here and delete the line above"}}
	}
	return nil
}

// usStock names the built-in stock by AWS class, with 0.9 mm (.035 in) in place
// of 1.0 mm where the tables have that wire.
func usStock(set *tables.Set, stock string) string {
	var names []string
	for _, item := range strings.Split(stock, ";") {
		name := usWire(set, strings.TrimSpace(item))
		if name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return strings.Join(names, "; ")
}

func usWire(set *tables.Set, item string) string {
	at := strings.LastIndexByte(item, ' ')
	if at < 0 {
		return item
	}
	filler, dia := item[:at], item[at+1:]
	name := item
	for _, w := range set.Wires {
		if w.Filler != filler {
			continue
		}
		if name == item {
			name = w.AWS + " " + dia
		}
		if dia == "1.0" && w.Dia == 0.9 {
			return w.AWS + " 0.9"
		}
	}
	return name
}
