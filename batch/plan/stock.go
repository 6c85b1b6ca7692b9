package plan

import (
	"math"

	"seamtally/tables"
)

// stockOf takes wire and gas prices from the shop. What is not in its stock has
// the price that the shop or the built-in list states for it, told in a check;
// without one it costs nothing here.
func (c *catalog) stockOf(w *tables.Wire, gas *tables.Gas) (s stock) {
	if p, ok := c.shop.Wire(w.Filler, w.Dia); ok {
		s.perKg, s.spool = float64(p.PerKg), float64(p.SpoolKg)
	}
	if p, ok := c.shop.Gas(gas.Gas); ok && p.Cylinder > 0 {
		s.perLitre = float64(p.PerCylinder) / float64(p.Cylinder)
	}
	s.gasStock = gas.Gasless()
	for _, p := range c.shop.Wires {
		if p.Filler == w.Filler && sameDia(p.Dia, w.Dia) {
			s.wireStock, s.perKg, s.spool, s.onHand = true, float64(p.PerKg), float64(p.SpoolKg), float64(p.OnHandKg)
			break
		}
	}
	for _, p := range c.shop.Gases {
		if p.Gas == gas.Gas && p.Cylinder > 0 {
			s.gasStock, s.perLitre = true, float64(p.PerCylinder)/float64(p.Cylinder)
			break
		}
	}
	return s
}

// pack is how a wire or a gas is bought: what lies in the shop, what one pack holds, both
// in kilograms or litres, and what the pack costs.
type pack struct{ have, size, price float64 }

// left returns the money in what remains of the last pack opened for a need.
func (p pack) left(need float64) float64 {
	if p.size <= 0 {
		return 0
	}
	return leftover(need-p.have, p.size) * p.price / p.size
}

// wirePack returns the spool of a wire; the zero pack where the shop has none.
func (c *catalog) wirePack(w *tables.Wire) pack {
	for _, p := range c.shop.Wires {
		if p.Filler == w.Filler && sameDia(p.Dia, w.Dia) {
			return pack{float64(p.OnHandKg), float64(p.SpoolKg), float64(p.PerKg) * float64(p.SpoolKg)}
		}
	}
	return pack{}
}

// gasPack returns the cylinder of a gas; the zero pack where the shop has none.
func (c *catalog) gasPack(g *tables.Gas) pack {
	for _, p := range c.shop.Gases {
		if p.Gas == g.Gas && p.Cylinder > 0 {
			return pack{float64(p.OnHand), float64(p.Cylinder), float64(p.PerCylinder)}
		}
	}
	return pack{}
}

// leftover returns what is over when a need is bought in whole packs; nothing
// where the shop's own stock covers it.
func leftover(need, pack float64) float64 {
	if need <= 0 || pack <= 0 {
		return 0
	}
	return math.Ceil(need/pack-1e-9)*pack - need
}
