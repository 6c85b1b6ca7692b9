package weld

import (
	"strings"
	"testing"

	"seamtally/batch/units"
)

// Wire metres per kilogram against printed ones, within 2 %. Copper and bronze
// wires are outside the tool.
func TestWireMetresPerKilogram(t *testing.T) {
	off := map[string]string{
		"aluminium 3/64": "printed 6408 in/lb is wire of 0.0455 in; 3/64 in is 0.0469 in",
	}
	densities := map[string]units.KgM3{"mild steel": 7850, "carbon steel": 7850, "stainless 3XX": 7930, "austenitic stainless": 7930, "aluminium": 2680, "aluminium 4043/5356": 2680}
	held := 0
	for _, row := range shared(t, "wire-length-per-mass") {
		density, covered := densities[row["material"]]
		if !covered {
			continue
		}
		d := row["dia_mm"]
		dia := units.MM(number(t, d))
		if row["dia_in"] != "" {
			dia = units.FromInch(number(t, row["dia_in"]))
		}
		q, err1 := LinearMass(dia, density)
		got, err2 := WireLength(1, q)
		if err := first(err1, err2); err != nil {
			t.Fatal(err)
		}
		name := strings.TrimSpace(row["material"] + " " + row["dia_in"])
		good := near(float64(got), row["m_per_kg"], number(t, row["m_per_kg"]), 0.02)
		if good != (off[name] == "") {
			t.Errorf("%s %s mm: got %.1f m/kg, printed %s, listed as off: %q", name, d, got, row["m_per_kg"], off[name])
		}
		if good {
			held++
		}
	}
	t.Logf("%d wire lengths held", held)
}
