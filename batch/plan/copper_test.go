package plan

import (
	"math"
	"testing"

	"seamtally/batch/joint"
	"seamtally/tables"
)

// copperRows are the printed square butts on a copper bar: thin sheet to 6 mm.
func copperRows(t *testing.T) []practice {
	rows := append(procedureRows(t, false), passRows(t, false)...)
	for _, r := range readUnseen(t, "fresh-conditions.csv") {
		p, _ := freshJoint(t, r, false)
		p.current, p.travel = optional(r["current_a"], 1), optional(r["travel_cm_min"], 10)
		rows = append(rows, p)
	}
	var out []practice
	for _, p := range rows {
		if p.backing == "copper" {
			out = append(out, p)
		}
	}
	return out
}

// laidAt returns the area in mm² that a printed current lays at the printed travel.
func (c *catalog) laidAt(t *testing.T, p practice, made *Plan) float64 {
	t.Helper()
	f := feedRow{wire: tables.Wire{Metal: "carbon steel", Construction: "solid", Melting: "steel solid", Dia: made.Dia}, mode: made.Transfer, gas: made.Gas}
	n, ok := c.curve(f)
	if !ok {
		t.Fatalf("%s: no way of welding", p.row)
	}
	return n.deposit(n.feed(p.current.middle())) / 60 / (float64(made.Density) * 1e-9 * p.travel.middle())
}

// A copper bar has a groove of 1 to 2 mm, which a manual prints with its conditions, and
// the root stands out into it. So what the printed currents and travels lay is on average
// what is planned; on a flat bar a third would be missing.
func TestBeadsOnCopperHoldTheMetalThatIsPrinted(t *testing.T) {
	set, shop := world(t)
	c := newCatalog(set, shop, Options{})
	mean := func(backing string) float64 {
		sum, rows := 0.0, copperRows(t)
		if len(rows) < 13 {
			t.Fatalf("only %d printed rows on copper", len(rows))
		}
		for _, p := range rows {
			p.backing = backing
			got := Joints([]joint.Joint{p.joint()}, set, shop, Options{})[0]
			if !got.Settings {
				t.Fatalf("%s: %s", p.row, got.NoSettings)
			}
			share := c.laidAt(t, p, &got) / float64(got.Area)
			t.Logf("%s on %s: %.2f of what is planned", p.row, backing, share)
			sum += math.Log(share) / float64(len(rows))
		}
		return math.Exp(sum)
	}
	if got := mean("copper"); got < 0.85 || got > 1.15 {
		t.Errorf("printed beads on copper lay %.2f times the planned metal", got)
	}
	if got := mean("bar"); got < 1.3 {
		t.Errorf("printed beads would lay %.2f times the metal on a flat bar: the groove is not needed", got)
	}
}
