package price

import (
	"cmp"
	"slices"
)

// BuyTogether adds up the buy lists of several jobs and rounds each line up once
// for all of them: three jobs that take a third of a spool each buy one. What is
// on hand is the shop's and counts once, the largest that any job states; so is
// the pack. Wires come first, then gases, then tips, each by name.
func BuyTogether(lists [][]BuyLine) []BuyLine {
	type key struct{ what, name string }
	at := map[key]int{}
	var all []BuyLine
	for _, list := range lists {
		for _, b := range list {
			k := key{b.What, b.Name}
			i, known := at[k]
			if !known {
				at[k] = len(all)
				all = append(all, b)
				continue
			}
			sum := &all[i]
			sum.Need += b.Need
			sum.UsedCost += b.UsedCost
			sum.OnHand, sum.Pack = max(sum.OnHand, b.OnHand), max(sum.Pack, b.Pack)
			sum.PackPrice = max(sum.PackPrice, b.PackPrice)
		}
	}
	decimals := map[string]int{BuyWire: KgDecimals, BuyGas: LitreDecimals, BuyTip: tipDecimals}
	for i := range all {
		all[i].Packs = 0
		all[i] = all[i].packed(decimals[all[i].What])
	}
	order := map[string]int{BuyWire: 0, BuyGas: 1, BuyTip: 2}
	slices.SortStableFunc(all, func(a, b BuyLine) int {
		return cmp.Or(cmp.Compare(order[a.What], order[b.What]), cmp.Compare(a.Name, b.Name))
	})
	return all
}
