package plan

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/tables"
)

// asked is a fillet with the list's own words for process, wire and gas.
func asked(material, position, process, wire, gas string, leg, thick float64) joint.Joint {
	j := filletJoint(leg, thick, position)
	j.Material, j.Process, j.Wire, j.Gas = material, process, wire, gas
	return j
}

func plannedAs(t *testing.T, j joint.Joint) Plan {
	t.Helper()
	set, shop := world(t)
	return Explain([]joint.Joint{j}, 0, set, shop, Options{})
}

// ruleTold returns the check of a plan under a code.
func ruleTold(p *Plan, code string) (finding.Check, bool) {
	for _, c := range p.Checks {
		if c.Code == code {
			return c, true
		}
	}
	return finding.Check{}, false
}

// Polarity and shielding: AWS A5.18 and A5.20 (E70C-6M, E71T-5, E71T-1 on DCEP;
// E71T-8, E71T-11 and E71T-GS on DCEN without gas), recalled in the figures file
// technique; process numbers: ISO 4063.
func TestEveryConstructionIsPlannedEndToEnd(t *testing.T) {
	for _, k := range []struct {
		material, position, process, wire string
		leg, thick                        float64
		wantProcess, filler, gas, pole    string
	}{
		{"S355", "PB", "138", "", 6, 8, "138", "T 46 4 M", "M21", "DC+"},
		{"S355", "PF", "", "metal cored 1.2", 6, 8, "138", "T 46 4 M", "M21", "DC+"},
		{"S355", "PA", "", "E70C-6M 1.6", 8, 12, "138", "T 46 4 M", "M21", "DC+"},
		{"S355", "PE", "138", "", 6, 8, "138", "T 46 4 M", "M21", "DC+"},
		{"S355", "PB", "", "E71T-5 1.2", 8, 15, "136", "T 42 4 B", "M21", "DC+"},
		{"S355", "PF", "136", "71T-5", 8, 15, "136", "T 42 4 B", "M21", "DC+"},
		{"S235", "PB", "114", "", 5, 6, "114", "", "", "DC-"},
		{"S235", "PF", "", "E71T-11", 5, 6, "114", "T 42 Z W N", "", "DC-"},
		{"S235", "PG", "", "E71T-11 0.9", 3, 3, "114", "T 42 Z W N", "", "DC-"},
		{"S235", "PB", "", "0.9 flux core", 3, 3, "114", "T 42 Z W N", "", "DC-"},
		{"S235", "PB", "", "1.2 flux core", 6, 8, "136", "T 46 2 P", "M21", "DC+"},
		{"S235", "PC", "", "E71T-8", 6, 10, "114", "T 42 3 Y N", "", "DC-"},
		{"S235", "PB", "", "E71T-GS .035", 3, 2, "114", "T 3T Z V N", "", "DC-"},
		{"galvanised", "PB", "973", "", 2, 1, "973", "S Cu 6560", "I1", "DC+"},
		{"DX51D+Z", "PF", "", "CuSi3 1.0", 2, 1.5, "973", "S Cu 6560", "I1", "DC+"},
	} {
		p := plannedAs(t, asked(k.material, k.position, k.process, k.wire, "", k.leg, k.thick))
		name := strings.Join([]string{k.material, k.position, k.process, k.wire}, " ")
		if !p.Settings {
			t.Errorf("%s: %s", name, p.NoSettings)
			continue
		}
		if p.Process != k.wantProcess || k.filler != "" && p.Filler != k.filler || p.Gas != k.gas || !strings.Contains(p.Polarity, k.pole) {
			t.Errorf("%s: process %s, %s in %q on %q; want %s, %s in %q on %s", name, p.Process, p.Filler, p.Gas, p.Polarity, k.wantProcess, k.filler, k.gas, k.pole)
		}
		if p.Torch == "" || p.Technique == "" || p.Stickout.Start <= 0 {
			t.Errorf("%s: torch %q, technique %q, stick-out %v", name, p.Torch, p.Technique, p.Stickout)
		}
		gasless := k.gas == ""
		if gasless != (p.GasL == 0) || gasless != (p.GasFlow.Start == 0) || gasless != (p.Cost.Gas == 0) {
			t.Errorf("%s: gas %v l, flow %v, cost %v", name, p.GasL, p.GasFlow.Start, p.Cost.Gas)
		}
		if p.Cost.Wire <= 0 {
			t.Errorf("%s: the wire costs nothing", name)
		}
		if !hasStep(&p, "GAS-3") {
			t.Errorf("%s: the working does not say why this gas", name)
		}
	}
}

func hasStep(p *Plan, id string) bool {
	for _, s := range p.Steps {
		if s.ID == id && s.Numbers != "" && s.Source != "" {
			return true
		}
	}
	return false
}

// The rules behind: figures gas-flow-and-cylinders (gas choice), spools-and-fillers,
// and the materials table (alloys not to be arc welded).
func TestWishesAreObeyedAndChecked(t *testing.T) {
	for _, k := range []struct {
		name                          string
		j                             joint.Joint
		code                          string
		level                         finding.Level
		settings                      bool
		process, filler, gas, absence string
	}{
		{name: "4043 on 5083", j: asked("5083", "PB", "", "4043 1.2", "", 6, 8), code: "filler-never", level: finding.Error, settings: true},
		{name: "4043 on 5754", j: asked("5754", "PB", "", "4043 1.2", "", 6, 8), code: "filler-never", level: finding.Error, settings: true},
		{name: "4043 on 5052", j: asked("5052", "PB", "", "4043 1.2", "", 6, 8), code: "wire-metal", level: finding.Warning, settings: true, absence: "filler-never"},
		{name: "5356 on 5083", j: asked("5083", "PB", "", "5356 1.2", "", 6, 8), settings: true, absence: "filler-never"},
		{name: "steel wire on stainless", j: asked("304L", "PB", "", "G3Si1 1.0", "", 4, 4), code: "filler-never", level: finding.Error, settings: true},
		{name: "M21 on aluminium", j: asked("6082", "PB", "", "", "M21", 6, 8), code: "gas-aluminium", level: finding.Error},
		{name: "M21 on stainless", j: asked("304L", "PB", "", "", "82/18", 4, 4), code: "gas-stainless", level: finding.Error},
		{name: "CO2 on stainless wire", j: asked("304L", "PB", "", "308LSi 1.0", "CO2", 4, 4), code: "gas-stainless", level: finding.Error},
		{name: "metal cored in CO2", j: asked("S355", "PB", "", "E70C-6M 1.2", "CO2", 6, 8), code: "gas-cored", level: finding.Error},
		{name: "spray in CO2", j: asked("S355", "PB", "spray", "", "CO2", 6, 8), code: "gas-transfer", level: finding.Error},
		{name: "pulse in CO2", j: asked("S355", "PB", "pulse", "", "CO2", 6, 8), code: "gas-transfer", level: finding.Error},
		{name: "solid in CO2", j: asked("S355", "PB", "135", "", "CO2", 6, 8), settings: true, process: "135", gas: "C1"},
		{name: "gas with a gasless wire", j: asked("S355", "PB", "", "E71T-11 1.2", "M21", 6, 8), code: "gas-not-needed", level: finding.Warning, settings: true, process: "114"},
		{name: "no gas with a solid wire", j: asked("S355", "PB", "", "G3Si1 1.0", "none", 6, 8), code: "wire-gas", level: finding.Error},
		{name: "single-run wire in several runs", j: asked("S235", "PB", "", "E71T-GS 0.9", "", 8, 8), code: "wire-single-run", level: finding.Error, settings: true},
		{name: "process and diameter", j: asked("S355", "PD", "138", "1.2", "", 6, 8), settings: true, process: "138", filler: "T 46 4 M"},
		{name: "process and wire apart", j: asked("S355", "PB", "FCAW-S", "71T-1", "", 6, 8), code: "wish-not-met", level: finding.Error},
		{name: "a diameter that only others are drawn in", j: asked("S235", "PB", "", "0.9", "", 3, 3), settings: true, process: "135", filler: "G3Si1"},
		{name: "a class in the shop's diameters", j: asked("S355", "PB", "", "E71T-1", "", 6, 8), settings: true, process: "136", absence: "not-in-stock"},
		{name: "brazing", j: asked("galvanised", "PB", "973", "", "", 2, 1), code: "braze", level: finding.Warning, settings: true, absence: "braze-uncoated"},
		{name: "brazing without zinc", j: asked("S235", "PB", "973", "", "", 2, 1), code: "braze-uncoated", level: finding.Note, settings: true},
		{name: "11SMn30", j: asked("11SMn30", "PB", "", "", "", 6, 8), code: "not-weldable", level: finding.Error},
		{name: "2024", j: asked("2024", "PB", "", "", "", 6, 8), code: "not-weldable", level: finding.Error},
		{name: "7075", j: asked("7075-T6", "PB", "", "", "", 6, 8), code: "not-weldable", level: finding.Error},
		{name: "galvanised without a wish", j: asked("galvanised", "PB", "", "", "", 3, 3), settings: true, process: "135", absence: "braze"},
	} {
		p := plannedAs(t, k.j)
		if p.Settings != k.settings || p.WeldMetal <= 0 || p.Seam <= 0 {
			t.Errorf("%s: settings %v (%s), %v kg, %v m", k.name, p.Settings, p.NoSettings, p.WeldMetal, p.Seam)
		}
		if k.code != "" {
			if c, ok := ruleTold(&p, k.code); !ok || c.Level != k.level || c.Rule == "" || c.Basis == "" || c.Do == "" {
				t.Errorf("%s: check %s is %v %+v", k.name, k.code, ok, c)
			}
		}
		if k.absence != "" {
			if c, ok := ruleTold(&p, k.absence); ok {
				t.Errorf("%s: unexpected check %+v", k.name, c)
			}
		}
		if k.process != "" && p.Process != k.process || k.filler != "" && p.Filler != k.filler || k.gas != "" && p.Gas != k.gas {
			t.Errorf("%s: process %s, %s in %s", k.name, p.Process, p.Filler, p.Gas)
		}
	}
}

// 309L joins stainless to carbon steel: figures spools-and-fillers.
func TestDissimilarSteelTakes309L(t *testing.T) {
	for _, pair := range [][2]string{{"304L", "S235"}, {"S355", "316L"}, {"A36", "430"}, {"S460", "304"}} {
		j := asked(pair[0], "PB", "", "", "", 4, 5)
		j.Material2 = pair[1]
		if p := plannedAs(t, j); p.Filler != "G 23 12 L Si" {
			t.Errorf("%v takes %q (%s)", pair, p.Filler, p.NoSettings)
		}
	}
}

// On site a gas-shielded joint is told of the wind and of its nozzle; a wire that
// shields itself is not.
func TestSiteAsksForScreensUnlessTheWireShieldsItself(t *testing.T) {
	gas := asked("S235", "PB", "135", "", "", 5, 6)
	gas.Where = joint.Site
	p := plannedAs(t, gas)
	c, ok := ruleTold(&p, "site-flow")
	if _, wind := ruleTold(&p, "site-wind"); !wind || !ok || !strings.Contains(c.Text, "nozzle") {
		t.Errorf("gas-shielded on site: %+v", p.Checks)
	}
	own := asked("S235", "PB", "114", "", "", 5, 6)
	own.Where = joint.Site
	p = plannedAs(t, own)
	for _, code := range []string{"site-wind", "site-flow"} {
		if c, ok := ruleTold(&p, code); ok {
			t.Errorf("self-shielded on site: %+v", c)
		}
	}
}

// No way has more gas than its nozzle bears, and every gas-shielded way has one;
// every way says why its gas. The most a nozzle bears is the laminar limit:
// Q = 2300 π d ν / 4 with ν = 13.4 mm²/s for argon.
func TestNoFlowIsMoreThanTheNozzleBears(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	for _, z := range set.Nozzles {
		litres := 2300 * 3.14159 * float64(z.Bore) * 13.4 / 4 * 60 / 1e6 // mm³/s to l/min
		if z.Most > litres*1.03 || z.Most < litres*0.93 {
			t.Errorf("nozzle %v mm: %v l/min, the laminar limit is %.1f", z.Bore, z.Most, litres)
		}
	}
	for pos := range c.all {
		for _, n := range c.all[pos] {
			if _, ok := set.GasReason(n.wire, n.gas.Gas, string(n.mode)); !ok {
				t.Errorf("%s in %q, %s: no reason for the gas", n.wire.Filler, n.gas.Gas, n.mode)
			}
			z, ok := set.Nozzle(n.wire, n.gas)
			if ok == n.gas.Gasless() || ok && (n.flow.High > z.Most || n.flow.Start <= 0) {
				t.Errorf("%s %.1f in %q, %s: flow %v to %v, nozzle %v bears %v", n.wire.Filler, n.dia, n.gas.Gas, n.mode, n.flow.Low, n.flow.High, z.Bore, z.Most)
			}
		}
	}
}

// Every wire of the table is used in at least one position, a wire that shields
// itself only by process 114, and no list gets bronze unasked.
func TestEveryWireOfTheTableCanBeUsed(t *testing.T) {
	set, shop := world(t)
	shop.Wires = nil
	c := newCatalog(set, shop, Options{})
	ways := map[*tables.Wire]int{}
	for pos := range c.all {
		for _, n := range c.all[pos] {
			ways[n.wire]++
			if n.gas.Gasless() != (n.process == "114") {
				t.Errorf("%s in %q is process %s", n.wire.Filler, n.gas.Gas, n.process)
			}
			if n.mode != ShortArc && n.mode != Globular && n.gas.CO2 > 20 && n.wire.Construction == "solid" {
				t.Errorf("%s in %s by %s", n.wire.Filler, n.gas.Gas, n.mode)
			}
		}
	}
	for i := range set.Wires {
		if w := &set.Wires[i]; ways[w] == 0 {
			t.Errorf("%s %v mm has no way of welding", w.Filler, w.Dia)
		}
	}
}

// A shop that stocks self-shielded wire uses it on site and not under a roof
// where another wire does the joint.
func TestAStockedWireIsChosen(t *testing.T) {
	set, shop := world(t)
	for _, item := range []struct {
		filler string
		dia    units.MM
	}{{"T 46 4 M", 1.2}, {"T 42 Z W N", 1.2}, {"S Cu 6560", 1.0}} {
		w, ok := shop.Wire(item.filler, item.dia)
		if !ok {
			t.Fatalf("%s has no price", item.filler)
		}
		shop.Wires = append(shop.Wires, w)
	}
	list := []joint.Joint{filletJoint(6, 8, "PB"), asked("galvanised", "PB", "", "", "", 2, 1)}
	p := []Plan{Explain(list, 0, set, shop, Options{}), Explain(list, 1, set, shop, Options{})}
	seen := false
	for _, o := range p[0].Options {
		seen = seen || o.Filler == "T 46 4 M"
	}
	if !seen || p[0].Gas == "" {
		t.Errorf("metal-cored considered: %v; chosen %s in %q", seen, p[0].Filler, p[0].Gas)
	}
	if p[1].Filler == "S Cu 6560" {
		t.Error("bronze is chosen unasked")
	}
}
