package plan

import "seamtally/tables"

// grade is a material as looked up once for each way it is written.
type grade struct{ row *tables.Material }

// material returns the table's row for a person's words; nil if it has none.
func (c *catalog) material(text string) *tables.Material {
	if g, known := c.materials[text]; known {
		return g.row
	}
	var g grade
	if found, ok := c.set.Material(text); ok {
		g.row = &found
	}
	c.materials[text] = g
	return g.row
}

// readMetal finds the parts' materials, the fillers that the pair takes and the
// metal of the weld. A second material that is blank is the first.
func (c *catalog) readMetal(t *task) {
	first, second := t.j.Material, t.j.Material2
	if first == "" {
		first, second = second, ""
	}
	t.metal, t.density = "", 0
	if first == "" {
		t.density = c.density["carbon steel"]
		t.assume("material", "carbon steel", "blank: the weld metal is weighed as steel", "common-practice")
		return
	}
	t.mat = c.material(first)
	other := t.mat
	if second != "" {
		t.mat2 = c.material(second)
		other = t.mat2
	}
	if t.mat == nil || other == nil {
		t.density = c.density["carbon steel"]
		t.assume("material", "carbon steel", "not understood: the weld metal is weighed as steel", "common-practice")
		return
	}
	t.metal, t.density = t.mat.Group, c.density[t.mat.Group]
	if t.density == 0 {
		t.density = c.density["carbon steel"]
	}
	t.pair = c.pairOf(t.mat.Family, other.Family)
	for _, f := range t.pair {
		if bit, ok := c.fillers[f.Filler]; ok && bit < 64 {
			t.fillerMask |= 1 << bit
		}
		if w := c.anyWire(f.Filler); w != nil && f.Rank == 1 {
			t.metal, t.density = w.Metal, c.density[w.Metal]
		}
	}
}

// pairOf returns the filler choices of two material families.
func (c *catalog) pairOf(a, b string) []tables.FillerChoice {
	key := [2]string{a, b}
	if p, known := c.pairs[key]; known {
		return p
	}
	p := c.set.Fillers(a, b)
	c.pairs[key] = p
	return p
}

func (c *catalog) anyWire(filler string) *tables.Wire {
	for i := range c.set.Wires {
		if c.set.Wires[i].Filler == filler {
			return &c.set.Wires[i]
		}
	}
	return nil
}

// suits tells whether the pair of materials takes the way's filler.
func (t *task) suits(n *way) bool { return t.fillerMask&(1<<n.fillerBit) != 0 }

// bronze is the metal of brazing wire: it joins steel without melting it.
const bronze = "silicon bronze"

// brazed tells whether the list asks for brazing and nothing else.
func (t *task) brazed() bool {
	for _, w := range t.wish.wires {
		if w.Metal != bronze {
			return false
		}
	}
	return len(t.wish.wires) > 0
}

// rank returns a demerit of one for a filler that the table names second among
// wires of the same build: a cored wire beside a solid one is no second choice.
// A wire that shields itself, with more fume and spatter, is one on site only.
func (t *task) rank(c *catalog, n *way) int {
	if n.gas.Gasless() && !t.site {
		return 1
	}
	for _, f := range t.pair {
		if f.Filler == n.wire.Filler && f.Rank > 1 && n.wire.Construction == "solid" {
			return 1
		}
	}
	return 0
}
