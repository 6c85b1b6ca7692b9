package price

import (
	"math"
	"sort"

	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
)

// What a line of the buy list is.
const (
	BuyWire = "wire"
	BuyGas  = "gas"
	BuyTip  = "tip"
)

// buyList says what the whole job needs, rounded up to whole spools, cylinders
// and tips once for the job and not joint by joint, less what is on hand.
func buyList(plans []plan.Plan, shop *rates.Shop) []BuyLine {
	wires, gases, tips := map[rates.Setup]*BuyLine{}, map[string]*BuyLine{}, map[units.MM]*BuyLine{}
	for i := range plans {
		p := &plans[i]
		if !p.Settings {
			continue
		}
		w := lineOf(wires, rates.Setup{Filler: p.Filler, Dia: p.Dia})
		w.Need += float64(p.WireKg)
		w.UsedCost += p.Cost.Wire
		if p.Gas != "" {
			g := lineOf(gases, p.Gas)
			g.Need += float64(p.GasL)
			g.UsedCost += p.Cost.Gas
		}
		t := lineOf(tips, p.Dia)
		t.Need += shop.Tips(p.Arc)
		t.UsedCost += shop.TipCost(p.Cost.Labour.Arc) // not rounded, as it stands in the joint's cost
	}
	lines := append(wireLines(wires, shop), gasLines(gases, shop)...)
	return append(lines, tipLines(tips, shop)...)
}

func lineOf[K comparable](lines map[K]*BuyLine, key K) *BuyLine {
	if lines[key] == nil {
		lines[key] = &BuyLine{}
	}
	return lines[key]
}

func wireLines(wires map[rates.Setup]*BuyLine, shop *rates.Shop) []BuyLine {
	var out []BuyLine
	for key, line := range wires {
		w, _ := shop.Wire(key.Filler, key.Dia)
		line.What, line.Unit, line.Name = BuyWire, "kg", rates.WireName(key.Filler, key.Dia)+" mm"
		line.OnHand, line.Pack = float64(w.OnHandKg), float64(w.SpoolKg)
		line.PackPrice = units.Money(float64(w.PerKg) * float64(w.SpoolKg))
		out = append(out, line.packed(KgDecimals))
	}
	return byName(out)
}

func gasLines(gases map[string]*BuyLine, shop *rates.Shop) []BuyLine {
	var out []BuyLine
	for name, line := range gases {
		g, _ := shop.Gas(name)
		line.What, line.Unit, line.Name = BuyGas, "l", name
		line.OnHand, line.Pack, line.PackPrice = float64(g.OnHand), float64(g.Cylinder), g.PerCylinder
		out = append(out, line.packed(LitreDecimals))
	}
	return byName(out)
}

func tipLines(tips map[units.MM]*BuyLine, shop *rates.Shop) []BuyLine {
	var out []BuyLine
	for dia, line := range tips {
		line.What, line.Unit, line.Name = BuyTip, "pcs", "contact tip "+rates.WireName("", dia)[1:]+" mm"
		line.Pack, line.PackPrice = 1, shop.TipPrice
		out = append(out, line.packed(tipDecimals))
	}
	return byName(out)
}

func byName(lines []BuyLine) []BuyLine {
	sort.Slice(lines, func(a, b int) bool { return lines[a].Name < lines[b].Name })
	return lines
}

// tipDecimals are fine enough that the tip of a minute's arc is not rounded away.
const tipDecimals = 6

// mostPacks bounds a number of packs that no shop would buy.
const mostPacks = 1e9

// packed returns the line with whole packs bought and what is left over.
func (b BuyLine) packed(decimals int) BuyLine {
	if need := Round(b.Need, decimals); need > 0 {
		b.Need = need // what is needed at all stays more than nothing
	}
	b.UsedCost, b.PackPrice = Round(b.UsedCost, MoneyDecimals), Round(b.PackPrice, MoneyDecimals)
	if b.Pack <= 0 {
		return b
	}
	if short := b.Need - b.OnHand; short > 0 {
		// A need of exactly one pack is one pack, whatever binary fractions say.
		b.Packs = int(math.Min(math.Ceil(short/b.Pack-1e-9), mostPacks))
	}
	b.Remains = max(Round(b.OnHand+float64(b.Packs)*b.Pack-b.Need, decimals), 0)
	b.Cost = Round(units.Money(float64(b.Packs)*float64(b.PackPrice)), MoneyDecimals)
	return b
}
