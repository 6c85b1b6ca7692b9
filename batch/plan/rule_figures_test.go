package plan

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// asPrinted fails where a figure is further from the printed one than its rounding.
func asPrinted(t *testing.T, what string, got, printed, rounding float64) {
	t.Helper()
	if math.Abs(got-printed) > rounding {
		t.Errorf("%s: %.5g, printed %.5g", what, got, printed)
	}
}

// The limits of the quality levels give the worked figures of iso5817-limits.csv.
func TestQualityLimitsAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	size := regexp.MustCompile(`^[ab]=([0-9.]+)$`)
	worked := 0
	for _, r := range readFigures(t, "iso5817-limits.csv") {
		m, printed := size.FindStringSubmatch(r["condition"]), strings.Split(strings.TrimSuffix(r["limit_mm"], " mm"), " / ")
		if m == nil || r["level"] != "D/C/B" || len(printed) != 3 {
			continue
		}
		at, _ := strconv.ParseFloat(m[1], 64)
		for k, level := range []string{"D", "C", "B"} {
			want, _ := strconv.ParseFloat(printed[k], 64)
			for _, q := range set.Qualities {
				if q.Level == level && q.Number == r["imperfection_no"] {
					asPrinted(t, r["imperfection"]+" level "+level+" row "+r[""], float64(q.Limit(units.MM(at))), want, 0.0501)
					worked++
				}
			}
		}
	}
	if worked < 50 {
		t.Errorf("only %d worked limits were compared", worked)
	}
}

// The least and largest sizes of check_rules.csv are those printed in fillet-rules.csv.
func TestFilletRulesAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	aws, iso, plan := readRuleBook(set, true), readRuleBook(set, false), readRules(set)
	seen := 0
	for _, r := range readFigures(t, "fillet-rules.csv") {
		seen++
		what := r["standard"] + " " + r["rule"] + " row " + r[""]
		switch {
		case strings.HasPrefix(r["rule"], "J2.4 minimum"): // printed to whole millimetres; the inch figures are used
			from, _ := strconv.ParseFloat(r["from"], 64)
			want, _ := strconv.ParseFloat(r["value"], 64)
			asPrinted(t, what, aws.at("leg-min", from+0.5).Value, want, 0.25)
		case strings.HasPrefix(r["rule"], "J2.2b intermittent"):
			asPrinted(t, what, aws.first("stitch-short").Value, 38, 0)
		case strings.HasPrefix(r["rule"], "4.5.2(2)"):
			asPrinted(t, what, iso.at("throat-min", 10).Value, 3, 0)
		case strings.HasPrefix(r["rule"], "4.5.1(2)"):
			asPrinted(t, what, iso.first("length-min").Value, 30, 0)
		case r["standard"] == "AISC 360" && strings.HasPrefix(r["rule"], "J2.2 flare groove"):
			share, known := map[string]float64{
				"GMAW, FCAW-G, flare bevel": plan.flareBevel.gas, "SMAW, FCAW-S, flare bevel": plan.flareBevel.self,
				"GMAW, FCAW-G, flare V": plan.flareV.gas, "SMAW, FCAW-S, flare V": plan.flareV.self,
			}[r["condition"]]
			if !known { // submerged arc
				seen--
				continue
			}
			above, below, _ := strings.Cut(strings.TrimSuffix(r["value"], " R"), "/")
			over, _ := strconv.ParseFloat(above, 64)
			under, _ := strconv.ParseFloat(below, 64)
			asPrinted(t, what, share, over/under, 1e-9)
		case r["rule"] == "flare bevel R < 10 mm (3/8 in)":
			asPrinted(t, what, aws.first("flare-small").To, 3.0/8*units.MMPerInch, 0.05)
		case r["rule"] == "largest root gap for fillets":
			asPrinted(t, what, aws.first("gap-too-wide").Over, 5, 0)
		case strings.HasSuffix(r["rule"], "fusion-face angle"):
			asPrinted(t, what, iso.first("angle-fillet").Over, 60, 0)
			asPrinted(t, what, iso.first("angle-fillet").To, 120, 0)
		default:
			seen--
		}
	}
	if seen != 15 {
		t.Errorf("%d rules were compared, want 15", seen)
	}
}

// The filter shades are never below the legal minimum printed in safety.csv.
func TestShadesAgainstTheLegalMinimum(t *testing.T) {
	set, _ := world(t)
	amps := regexp.MustCompile(`GMAW/FCAW (?:< )?(\d+)(?:-(\d+))? A`)
	seen := 0
	for _, r := range readFigures(t, "safety.csv") {
		m := amps.FindStringSubmatch(r["condition"])
		if m == nil || r["kind"] != "minimum shade OSHA" {
			continue
		}
		seen++
		low, _ := strconv.ParseFloat(m[1], 64)
		at := low - 1
		if m[2] != "" {
			high, _ := strconv.ParseFloat(m[2], 64)
			at = (low + high) / 2
		}
		want, _ := strconv.Atoi(r["value"])
		if s, ok := set.Shade("135", units.Amp(at)); !ok || s.Minimum < want || s.Recommended < want {
			t.Errorf("%s: %+v, the law asks for %d", r["condition"], s, want)
		}
	}
	if seen != 4 {
		t.Errorf("%d rows of the legal minimum, want 4", seen)
	}
}

// The thermal efficiencies are those printed in heat-input-k.csv.
func TestHeatKAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	for _, r := range readFigures(t, "heat-input-k.csv") {
		want, _ := strconv.ParseFloat(r["k"], 64)
		for process := range strings.SplitSeq(r["process_iso4063"], "/") {
			if k, ok := set.HeatK(process); ok {
				asPrinted(t, "k of "+process, k.K, want, 0)
			}
		}
	}
}

// The load line and the square law give the figures of load-voltage-and-duty.csv.
func TestLoadVoltageAndDutyAgainstPrintedOnes(t *testing.T) {
	pair := regexp.MustCompile(`(\d+) A ([0-9.]+) V`)
	seen := 0
	for _, r := range readFigures(t, "load-voltage-and-duty.csv") {
		if r["item"] != "load voltage check" {
			continue
		}
		for _, m := range pair.FindAllStringSubmatch(r["value"], -1) {
			amps, _ := strconv.ParseFloat(m[1], 64)
			want, _ := strconv.ParseFloat(m[2], 64)
			got, err := weld.LoadVoltage(units.Amp(amps))
			if err != nil {
				t.Fatal(err)
			}
			asPrinted(t, m[0], float64(got), want, 0.05)
			seen++
		}
	}
	if seen != 6 {
		t.Errorf("%d load voltages, want 6", seen)
	}
	got, err := weld.DutyCurrent(400, 0.25, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	asPrinted(t, "400 A at 25 % turned to 50 %", float64(got), 282.8, 0.05)
}

// The worked examples of worked-examples.csv, by their number.
func TestWorkedExamples(t *testing.T) {
	const inch, pound = 25.4, 0.45359237
	steel := units.KgM3(0.283 * pound / math.Pow(inch/1000, 3))
	mass := func(leg, length float64) float64 {
		kg, err := weld.Mass(units.MM2(leg*leg*inch*inch/2), units.Metre(length*inch/1000), steel)
		if err != nil {
			t.Fatal(err)
		}
		return float64(kg) / pound
	}
	worksheet := func(rate, factor, wire, eff, gas float64) float64 { // money of one pound deposited
		q := rates.Quantities{Qty: 1, Seam: 1, Seams: 1, Passes: 1, Arc: units.Minute(60 / rate), WireKg: units.Kg(1 / eff), WirePerKg: units.Money(wire),
			Gas: units.Litre(1), GasPerLitre: units.Money(gas)}
		return float64(rates.CostOf(q, &rates.Shop{LabourRate: 45, OperatingFactor: factor, SiteFactor: 1}).Total)
	}
	done := map[string]bool{}
	for _, r := range readFigures(t, "worked-examples.csv") {
		done[r["id"]] = true
		switch r["id"] {
		case "E1":
			asPrinted(t, "E1", mass(0.5, 12), 0.424, 0.0006)
		case "E2a":
			asPrinted(t, "E2a", worksheet(10.2, 0.45, 1.78, 0.87, 40*0.02/10.2), 11.93, 0.006)
		case "E2b":
			asPrinted(t, "E2b", worksheet(5.4, 0.30, 0.85, 0.64, 0), 29.11, 0.006)
		case "E5":
			asPrinted(t, "E5", mass(0.275, 76.5), 0.819, 0.0006)
		case "E10":
			got, err := weld.DutyCurrent(400, 0.25, 0.5)
			if err != nil {
				t.Fatal(err)
			}
			asPrinted(t, "E10", float64(got), 282.8, 0.05)
		case "E15":
			heat, err := weld.ArcEnergy(29, 270, 450)
			if err != nil {
				t.Fatal(err)
			}
			asPrinted(t, "E15", float64(heat), 1.04, 0.005)
		default:
			delete(done, r["id"])
		}
	}
	if len(done) != 6 {
		t.Errorf("%d examples were worked, want 6", len(done))
	}
}

// The wire of the job in cost-examples.csv by mass, efficiency and price.
func TestCostExamples(t *testing.T) {
	inputs := map[string]struct{ metal, eff, waste, price float64 }{
		"C1": {1, 1, 10, 172.8}, "C3.8": {36.95, 0.95, 0, 21000}, "C3.9": {36.95, 0.85, 0, 25000},
	}
	seen := 0
	for _, r := range readFigures(t, "cost-examples.csv") {
		c, ok := inputs[r["id"]]
		if !ok {
			continue
		}
		seen++
		want, err := strconv.ParseFloat(r["recalc_result"], 64)
		if err != nil {
			t.Fatal(err)
		}
		kg, err := weld.WireBought(units.Kg(c.metal), c.eff, c.waste)
		if err != nil {
			t.Fatal(err)
		}
		asPrinted(t, r["id"], float64(kg)*c.price, want, 0.0005*want)
	}
	if seen != len(inputs) {
		t.Errorf("%d of %d examples found", seen, len(inputs))
	}
}

// The operating factor that a shop gets which states none is a usual one for
// semi-automatic welding in operating-factor.csv.
func TestOperatingFactorIsAUsualOne(t *testing.T) {
	_, shop := world(t)
	for _, r := range readFigures(t, "operating-factor.csv") {
		s, ok := readSpan(r["value"])
		if ok && r["process_or_item"] == "semi-automatic" && (100*shop.OperatingFactor < s.low || 100*shop.OperatingFactor > s.high) {
			t.Errorf("operating factor %g, printed %s %%", shop.OperatingFactor, r["value"])
		}
	}
}

// The energy per arc hour of power.csv, from volts, amps and efficiency.
func TestPowerAgainstPrintedOnes(t *testing.T) {
	row := regexp.MustCompile(`^energy per arc hour ([0-9.]+) V x ([0-9.]+) A / ([0-9.]+)$`)
	seen := 0
	for _, r := range readFigures(t, "power.csv") {
		m := row.FindStringSubmatch(r["item"])
		if m == nil {
			continue
		}
		var x [4]float64
		for k := 1; k < 4; k++ {
			x[k], _ = strconv.ParseFloat(m[k], 64)
		}
		want, _ := strconv.ParseFloat(r["value"], 64)
		got, err := weld.ArcPower(units.Volt(x[1]), units.Amp(x[2]), 60, x[3])
		if err != nil {
			t.Fatal(err)
		}
		asPrinted(t, r["item"], float64(got), want, 0.0006)
		seen++
	}
	if seen != 7 {
		t.Errorf("%d energies, want 7", seen)
	}
}

// A planning figure stands in its table only: no named number of the planner has
// the value of a planning row and a word of its key.
func TestNoPlanningFigureStandsInTheProgramToo(t *testing.T) {
	set, _ := world(t)
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok {
				return true
			}
			for i, value := range spec.Values {
				lit, ok := value.(*ast.BasicLit)
				if !ok || lit.Kind != token.INT && lit.Kind != token.FLOAT {
					continue
				}
				v, _ := strconv.ParseFloat(lit.Value, 64)
				if key := sameFigure(set, spec.Names[i].Name, v); key != "" {
					t.Errorf("%s: %s = %s is %s of the planning table", name, spec.Names[i].Name, lit.Value, key)
				}
			}
			return true
		})
	}
}

// sameFigure returns the key of a planning row with a value and a word of a name.
func sameFigure(set *tables.Set, name string, value float64) string {
	for _, r := range set.Planning {
		if r.Value != value {
			continue
		}
		for word := range strings.SplitSeq(r.Key, "_") {
			if len(word) > 3 && strings.Contains(strings.ToLower(name), word) {
				return r.Key
			}
		}
	}
	return ""
}
