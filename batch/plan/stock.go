package plan

import (
	"math"

	"seamtally/tables"
)

// wireLeft returns the money in what remains of the last spool opened for the list.
func (c *catalog) wireLeft(w *tables.Wire, kg float64) float64 {
	for _, p := range c.shop.Wires {
		if p.Filler == w.Filler && sameDia(p.Dia, w.Dia) {
			return leftover(kg-float64(p.OnHandKg), float64(p.SpoolKg)) * float64(p.PerKg)
		}
	}
	return 0
}

// gasLeft returns the money in what remains of the last cylinder opened for the list.
func (c *catalog) gasLeft(g *tables.Gas, litres float64) float64 {
	for _, p := range c.shop.Gases {
		if p.Gas == g.Gas && p.Cylinder > 0 {
			return leftover(litres-float64(p.OnHand), float64(p.Cylinder)) * float64(p.PerCylinder) / float64(p.Cylinder)
		}
	}
	return 0
}

// leftover returns what is over when a need is bought in whole packs; nothing
// where the shop's own stock covers it.
func leftover(need, pack float64) float64 {
	if need <= 0 || pack <= 0 {
		return 0
	}
	return math.Ceil(need/pack-1e-9)*pack - need
}
