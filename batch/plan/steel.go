package plan

import (
	"fmt"

	"seamtally/batch/joint"
	"seamtally/batch/section"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// steel is a parent metal with the carbon equivalent that preheat is reckoned
// with: the certificate's where the shop states it, else the highest that the
// product standard allows. A typical value never enters a preheat.
type steel struct {
	row         *tables.Material
	cet         float64 // %; 0: not known
	cev         float64 // the highest CEV, by the same rule; 0: not known
	from        string  // "the highest that EN 10025-2 allows S355J2"
	formula     string  // how the CET came about, for explain
	certificate bool
	basis       string
	source      string
}

// steelFacts are what is looked up once for each way a steel is written.
type steelFacts struct {
	limits   []steelLimit
	cet, cev float64 // of the certificate; 0: none stated
	key      string  // under which the shop stated it
}

// steelLimit is one row of a standard with the highest CET within it.
type steelLimit struct {
	row  tables.SteelLimit
	cet  float64
	cev  float64
	text string // the analysis, for explain
	from string // "the highest that EN 10025-2 allows S355J2"
}

// steelFacts returns the limits and certificate values of a steel. A bare grade of what
// is no hollow section is not judged by the standards of hollow sections.
func (c *catalog) steelFacts(words string, m *tables.Material, hollow bool) *steelFacts {
	key := words
	if hollow {
		key += "\x00hollow"
	}
	if known := c.steels[key]; known != nil {
		return known
	}
	f := &steelFacts{}
	f.cet, f.key = c.certificate(c.shop.CET, words, m)
	if f.cet == 0 {
		f.cev, f.key = c.certificate(c.shop.CEV, words, m)
	}
	for _, l := range c.set.SteelLimits(m.Grade, words) {
		if !hollow && l.Hollow() && !l.Named(words) {
			continue
		}
		limits := weld.SteelLimits{CEV: l.CEV, C: l.C, Cu: l.Cu, Mn: l.Mn, Mo: l.Mo, Ni: l.Ni, Cr: l.Cr}
		if f.cev > 0 {
			limits.CEV = f.cev
		}
		if cet, err := weld.HighestCET(limits); err == nil {
			f.limits = append(f.limits, steelLimit{l, cet, highestCEV(limits), limitsText(limits), "the highest that " + l.Standard + " allows " + l.Name()})
		}
	}
	c.steels[key] = f
	return f
}

// certificate returns the value that the shop states for a steel: the longest
// key that the words of the list have in them, of the same grade.
func (c *catalog) certificate(stated map[string]float64, words string, m *tables.Material) (float64, string) {
	best := ""
	for key := range stated {
		of := c.material(key)
		if of == nil || of.Grade != m.Grade || key != m.Grade && !tables.Says(words, key) {
			continue
		}
		if len(key) > len(best) || len(key) == len(best) && key < best {
			best = key
		}
	}
	return stated[best], best
}

// steelOf returns a parent metal at a thickness in mm.
func (c *catalog) steelOf(words string, m *tables.Material, thick float64, hollow bool) steel {
	f := c.steelFacts(words, m, hollow)
	s := steel{row: m, cev: cevAt(f.limits, thick)}
	if s.cev == 0 {
		s.cev = m.CEVMax
	}
	if f.cev > 0 {
		s.cev = f.cev
	}
	if f.cet > 0 {
		s.cet, s.certificate, s.basis, s.source = f.cet, true, "shop", "shop value cet."+f.key
		s.from, s.formula = "the certificate's CET (cet."+f.key+")", "as stated"
		return s
	}
	best := highest(f.limits, thick)
	switch {
	case best != nil:
		s.cet, s.formula = best.cet, best.text
		s.from, s.basis, s.source = best.from, "derived", best.row.Source
	case f.cev == 0:
		s.cet, s.from, s.formula = m.CETMax, "the highest on record for this grade", "table of materials"
		s.basis, s.source = m.Basis, m.Source
	}
	if f.cev > 0 {
		if best == nil {
			s.cet, s.formula = f.cev, "no CET is above its CEV"
		}
		s.certificate, s.basis, s.source = true, "derived", "shop value cev."+f.key
		s.from = fmt.Sprintf("the highest that the certificate's CEV of %s %% leaves (cev.%s)", number(f.cev, 3), f.key)
	}
	return s
}

// highest returns the limit with the highest CET of those that hold at a
// thickness, or of all where none does.
func highest(limits []steelLimit, thick float64) *steelLimit {
	var best, any *steelLimit
	for i := range limits {
		l := &limits[i]
		if any == nil || l.cet > any.cet {
			any = l
		}
		if l.row.At(units.MM(thick)) && (best == nil || l.cet > best.cet) {
			best = l
		}
	}
	if best == nil {
		return any
	}
	return best
}

// highestCEV returns the CEV limit, or what the limits of the contents add up to
// where the standard has none.
func highestCEV(l weld.SteelLimits) float64 {
	if l.CEV > 0 {
		return l.CEV
	}
	cev, err := weld.Composition{C: l.C, Cu: l.Cu, Mn: l.Mn, Mo: l.Mo, Ni: l.Ni, Cr: l.Cr}.CEV()
	if err != nil {
		return 0
	}
	return cev
}

// cevAt returns the highest CEV of the limits that hold at a thickness.
func cevAt(limits []steelLimit, thick float64) float64 {
	most := 0.0
	for i := range limits {
		if limits[i].row.At(units.MM(thick)) {
			most = max(most, limits[i].cev)
		}
	}
	return most
}

// limitsText writes limits out: "CEV <= 0.45, C 0.2, Cu 0.55, Mn 1.6".
func limitsText(l weld.SteelLimits) string {
	text := "no CEV limit"
	if l.CEV > 0 {
		text = "CEV <= " + number(l.CEV, 3)
	}
	for _, e := range []struct {
		name  string
		limit float64
	}{{"C", l.C}, {"Cu", l.Cu}, {"Mn", l.Mn}, {"Mo", l.Mo}, {"Ni", l.Ni}, {"Cr", l.Cr}} {
		if e.limit > 0 {
			text += ", " + e.name + " " + number(e.limit, 3)
		}
	}
	return text
}

// richest returns the parent metal with the higher carbon equivalent.
func (c *catalog) richest(t *task, thick float64) steel {
	first, second := t.j.Material, t.j.Material2
	if first == "" {
		first, second = second, ""
	}
	hollow := c.anyHollow(t)
	s := c.steelOf(first, t.mat, thick, hollow)
	if t.mat2 != nil && t.mat2.Group == "carbon steel" {
		if other := c.steelOf(second, t.mat2, thick, hollow); other.cet > s.cet {
			return other
		}
	}
	return s
}

// anyHollow tells whether a part of the joint is a hollow section: one that is named so,
// or the round side of a flare.
func (c *catalog) anyHollow(t *task) bool {
	if t.prep.Kind == joint.FlareBevel || t.prep.Kind == joint.FlareV {
		return true
	}
	for _, part := range []struct {
		words string
		lent  *joint.Lent
	}{{t.j.Part1, t.j.Lent1}, {t.j.Part2, t.j.Lent2}} {
		if partText(part.words, part.lent) == "" {
			continue
		}
		if s := c.sectionOf(part.words, part.lent, t.j.PartsInch); s.err == nil && (s.Shape == section.Round || s.Shape == section.Box) {
			return true
		}
	}
	return false
}
