package plan

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// ledger counts how the rows of a file of published figures fare. off names the
// rows, by a part of their words, that are known to differ, and why.
type ledger struct {
	t           *testing.T
	file        string
	used, agree int
	off         map[string]string
	differed    map[string]int
	want        int
}

// check counts a comparison; one that fails must be among those known to differ.
func (c *ledger) check(row string, ok bool, format string, args ...any) {
	c.t.Helper()
	c.used++
	if ok {
		c.agree++
		return
	}
	for words := range c.off {
		if strings.Contains(row, words) {
			if c.differed == nil {
				c.differed = map[string]int{}
			}
			c.differed[words]++
			return
		}
	}
	c.t.Errorf("%s, %s: %s", c.file, row, fmt.Sprintf(format, args...))
}

// end fails where fewer rows were compared than are known to be there, or where a
// row that was known to differ agrees now.
func (c *ledger) end() {
	c.t.Helper()
	if c.used != c.want {
		c.t.Errorf("%s: %d comparisons, %d are known", c.file, c.used, c.want)
	}
	for words, why := range c.off {
		if c.differed[words] != 1 {
			c.t.Errorf("%s: %d rows of %q differ, one is known to (%s)", c.file, c.differed[words], words, why)
		}
	}
	c.t.Logf("%s: %d compared, %d agree, %d differ as named", c.file, c.used, c.agree, c.used-c.agree)
}

// numbers returns the numbers of a text in their order.
func numbers(text string) []float64 {
	var out []float64
	for _, s := range regexp.MustCompile(`\d+(?:\.\d+)?`).FindAllString(text, -1) {
		v, _ := strconv.ParseFloat(s, 64)
		out = append(out, v)
	}
	return out
}

func TestDensitiesAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "density.csv", want: 9, off: map[string]string{
		"AISI 304 class": "printed with two digits; the standard's 7900 is taken",
		"Mo 1.4401":      "one density for all austenitic grades: 1.3 % less metal than with 8000",
		"duplex":         "one density for all stainless grades: 1.3 % more metal than with 7800",
		"5083":           "one density for all aluminium: 1.5 % more metal than with 2660",
	}}
	for _, r := range readFigures(t, "density.csv") {
		metal := "carbon steel"
		if strings.Contains(r["material"], "alumin") {
			metal = "aluminium"
		} else if strings.Contains(r["material"], "stainless") || strings.Contains(r["material"], "duplex") {
			metal = "stainless"
		}
		d, ok := set.Density(metal, "base and weld metal")
		printed := numbers(r["kg_per_m3"])[0]
		c.check(r["material"], ok && float64(d.Value) == printed, "%v, printed %v", d.Value, printed)
	}
	c.end()
}

func TestCarbonEquivalentsAgainstWorkedOnes(t *testing.T) {
	c := ledger{t: t, file: "carbon-equivalents.csv", want: 6}
	element := regexp.MustCompile(`(C|Mn|Si|Cr|Mo|V|Ni|Cu) (\d*\.\d+)`)
	for _, r := range readFigures(t, "carbon-equivalents.csv") {
		if !strings.HasPrefix(r["item"], "worked:") {
			continue
		}
		var x weld.Composition
		into := map[string]*float64{"C": &x.C, "Mn": &x.Mn, "Si": &x.Si, "Cr": &x.Cr, "Mo": &x.Mo, "V": &x.V, "Ni": &x.Ni, "Cu": &x.Cu}
		for _, m := range element.FindAllStringSubmatch(r["item"], -1) {
			*into[m[1]], _ = strconv.ParseFloat(m[2], 64)
		}
		for k, f := range []func() (float64, error){x.CEV, x.CET, x.Pcm} {
			got, err := f()
			printed := numbers(r["value"])[k]
			c.check(r["item"], err == nil && math.Abs(got-printed) <= 0.00005001, "%v, worked %v", got, printed)
		}
	}
	c.end()
}

func TestSprayBeginsWhereItIsPrinted(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "spray-transition.csv and limits-and-more.csv", want: 27}
	low := func(metal, gas string, dia float64) float64 {
		best := 0.0
		for _, w := range set.Windows {
			if w.Metal == metal && w.Construction == "solid" && w.Transfer == "spray" && strings.Contains(" "+w.Gas+" ", " "+gas+" ") &&
				strings.Contains(w.Positions, "PA") && math.Abs(w.Dia-dia) < 0.06 && (best == 0 || math.Abs(w.Dia-dia) < 0.01) {
				best = w.Low
			}
		}
		return best
	}
	compare := func(row, metal, gas string, dia, printed float64) {
		if gas == "" {
			gas = map[string]string{"carbon steel": "M13", "stainless": "M13", "aluminium": "I1"}[metal]
		}
		got := low(metal, gas, dia)
		c.check(row, got > 0 && math.Abs(got/printed-1) <= 0.15, "spray from %v A, printed %v", got, printed)
	}
	for _, r := range readFigures(t, "spray-transition.csv") {
		metal := map[string]string{"mild steel": "carbon steel", "stainless steel": "stainless", "aluminium": "aluminium"}[r["material"]]
		if metal == "" || r["dia_mm"] == "" || r["current_A"] == "" || r["dia_mm"] == "1.3" {
			continue // copper, bronze (brazed in short arc and pulse only), sentences, and a wire that is not drawn here
		}
		compare(r["material"]+" "+r["gas"]+" "+r["dia_mm"], metal, "", inchDia(numbers(r["dia_mm"])[0]), numbers(r["current_A"])[0])
	}
	for _, r := range readFigures(t, "limits-and-more.csv") {
		item, ok := strings.CutPrefix(r["item"], "spray transition current, ")
		if !ok {
			continue
		}
		n := numbers(item)
		metal, gas := "carbon steel", "M13"
		switch {
		case strings.HasPrefix(item, "stainless"):
			metal = "stainless"
		case strings.HasPrefix(item, "aluminium"):
			metal, gas = "aluminium", "I1"
		case strings.Contains(item, "80Ar-20CO2"):
			gas = "M21"
		case strings.Contains(item, "95Ar-5CO2"):
			gas = "M12"
		}
		compare(item, metal, gas, n[len(n)-1], numbers(r["value"])[0])
	}
	c.end()
}

// inchDia returns the metric wire that stands for an inch one.
func inchDia(mm float64) float64 {
	for _, m := range []float64{0.8, 0.9, 1.2, 1.6} {
		if math.Abs(mm-m) < 0.11 {
			return m
		}
	}
	return mm
}

func TestShapeFactorsAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "t85-formulas.csv", want: 9}
	joints := map[string]string{"run on plate": "plate", "butt welds": "butt", "corner joint": "corner", "T-joint": "tee", "lap joint": "lap"}
	for _, r := range readFigures(t, "t85-formulas.csv") {
		for words, name := range joints {
			if !strings.HasPrefix(r["item"], "F") || !strings.Contains(r["item"], words) {
				continue
			}
			s, ok := set.ShapeFactor(name)
			n := numbers(r["expression"])
			switch {
			case strings.HasPrefix(r["item"], "F2/F3"):
				ok = ok && s.F2Low == n[0] && s.F2High == n[0] && s.F3 == n[1]
			case strings.HasPrefix(r["item"], "F3"):
				ok = ok && s.F3 == n[0]
			default:
				ok = ok && s.F2Low == slices.Min(n) && s.F2High == slices.Max(n)
			}
			c.check(r["item"], ok, "%+v, printed %s", s, r["expression"])
		}
	}
	c.end()
}

func TestWireLengthsAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "limits-and-more.csv, metres per kg and g/m", want: 7, off: map[string]string{
		"per kg, 0.8 mm": "816 m/kg is the wire of 0.030 in, 0.762 mm",
	}}
	for _, r := range readFigures(t, "limits-and-more.csv") {
		n := numbers(r["item"])
		printed := numbers(r["value"])
		switch {
		case strings.HasPrefix(r["item"], "aluminium wire length per kg"):
			w, ok := set.Wire("S Al 5356", units.MM(n[0]))
			if !ok {
				continue // thicker than the wires of the table
			}
			c.check(r["item"], math.Abs(1000/float64(w.LinearMass)/printed[0]-1) <= 0.07, "%.0f m/kg, printed %v", 1000/float64(w.LinearMass), printed[0])
		case strings.HasPrefix(r["item"], "metal-cored linear mass"):
			dia := n[0]
			if dia == 1.1 { // 0.045 in: by the section from 1.2 mm
				w, _ := set.Wire("T 46 4 M", 1.2)
				got := float64(w.LinearMass) * 1.143 * 1.143 / 1.2 / 1.2
				c.check(r["item"], math.Abs(got/printed[0]-1) <= 0.01, "%.2f g/m, printed %v", got, printed[0])
				continue
			}
			w, ok := set.Wire("T 46 4 M", units.MM(dia))
			c.check(r["item"], ok && math.Abs(float64(w.LinearMass)/printed[0]-1) <= 0.01, "%v g/m, printed %v", w.LinearMass, printed[0])
		}
	}
	c.end()
}

func TestSinglePassLegsStayBelowThePrequalifiedOnes(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "limits-and-more.csv, largest single pass", want: 4}
	for _, r := range readFigures(t, "limits-and-more.csv") {
		where, ok := strings.CutPrefix(r["item"], "max single-pass fillet leg, prequalified, GMAW/FCAW, ")
		if !ok {
			continue
		}
		position := map[string]string{"flat": "PA", "horizontal": "PB", "vertical": "PF", "overhead": "PD"}[where]
		most := 0.0
		for _, s := range set.SinglePass {
			if hasWord(s.Positions, position) {
				most = max(most, s.MaxLeg)
			}
		}
		printed := numbers(r["value"])[0]
		c.check(r["item"], most > 0 && most <= printed, "up to %v mm in one pass, the code allows %v", most, printed)
	}
	c.end()
}

func TestPositionsProcessesAndStitchesAgainstTheStandards(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "positions-processes-symbols.csv", want: 27}
	terms := joint.NewTerms(set)
	for _, r := range readFigures(t, "positions-processes-symbols.csv") {
		switch r["kind"] {
		case "position":
			code := map[string]string{"H-L045": "", "J-L045": ""}
			if _, inclined := code[r["code"]]; inclined || r["equivalent"] == "orbital" {
				continue // pipes inclined or orbital are told as they stand
			}
			way := ""
			for _, w := range []string{" up", " down"} {
				if strings.HasSuffix(r["equivalent"], w) {
					way = w
				}
			}
			for spelling := range strings.SplitSeq(strings.TrimSuffix(r["equivalent"], way), " / ") {
				spelling += way
				c.check(r["code"]+" "+spelling, slices.Contains(terms.Positions(spelling), r["code"]), "%q reads as %v", spelling, terms.Positions(spelling))
			}
		case "process":
			if word, ok := set.FindProcess(r["equivalent"]); ok && slices.Contains([]string{"114", "131", "135", "136", "138"}, r["code"]) {
				c.check("process "+r["code"], hasWord(word.Processes, r["code"]), "%s is taken for %s", r["equivalent"], word.Processes)
				c.check("letters of "+r["code"], set.AWSProcess(r["code"]) == r["equivalent"], "%s has the letters %q", r["code"], set.AWSProcess(r["code"]))
			}
		case "symbol check":
			c.check(r["code"], stitchAgrees(r["code"], r["description"]), "printed %s", r["description"])
		}
	}
	c.end()
}

// stitchAgrees works a printed stitch note out by weld.Stitch.
func stitchAgrees(note, printed string) bool {
	n, want := numbers(note), numbers(printed)
	if strings.HasPrefix(note, "ISO") { // count x length (clear) in length
		got, err := weld.Stitch(units.MM(n[3]), units.MM(n[1]), units.MM(n[1]+n[2]), 0)
		return err == nil && math.Abs(float64(got.Occupied)-want[0]) < 0.5 && math.Abs(float64(got.Welded)*1000-want[1]) < 0.5
	}
	got, err := weld.Stitch(units.MM(n[2]*25.4), units.MM(n[0]*25.4), units.MM(n[1]*25.4), 0)
	return err == nil && got.Count == int(want[0]) && math.Abs(float64(got.Welded)/0.0254-want[1]) < 0.01
}

func TestFillersAndSpoolsAgainstTheStandards(t *testing.T) {
	set, shop := world(t)
	c := ledger{t: t, file: "spools-and-fillers.csv", want: 15}
	pair := regexp.MustCompile(`((?:G|S Al|T) ?[0-9A-Za-z ]+?)(?: P C/M 1| B C/M| M M 1/3 H5| \(AlSi5\)| \(AlMg5Cr\)| L \(Si\))? <-> (?:AWS A5\.\d+ )?(ER\w+|E\d+\w-?\w+)`)
	var usual [][]float64 // kilograms of steel spools, and of aluminium
	for _, r := range readFigures(t, "spools-and-fillers.csv") {
		if n := numbers(strings.Split(r["use_or_mass"], "(")[0]); r["kind"] == "spool" && strings.Contains(r["use_or_mass"], "kg") && len(n) > 0 {
			usual = append(usual, []float64{slices.Min(n), slices.Max(n)})
		}
		if r["kind"] != "filler" {
			continue
		}
		for _, m := range pair.FindAllStringSubmatch(r["value"], -1) {
			aws := strings.TrimSuffix(m[2], "Si")
			ws := set.FindWires(aws)
			if len(ws) == 0 {
				continue // a class that the table does not hold
			}
			c.check(r["value"], strings.Contains(strings.ReplaceAll(r["value"], "(Si)", "Si"), ws[0].Filler), "%s finds %s", aws, ws[0].Filler)
		}
	}
	for _, w := range shop.Wires {
		if kg := float64(w.SpoolKg); w.Dia == 1.0 {
			known := slices.ContainsFunc(usual, func(u []float64) bool { return kg >= u[0] && kg <= u[1] })
			c.check("spool of "+w.Filler, known, "%v kg, printed %v", kg, usual)
		}
	}
	c.end()
}

func TestEfficienciesAgainstPrintedOnes(t *testing.T) {
	set, _ := world(t)
	c := ledger{t: t, file: "deposition-efficiency.csv", want: 16, off: map[string]string{
		"FCAW (tubular)": "80 % for tubular wire of all kinds; five other sources print 83 to 90 for gas-shielded",
		"metal-cored 95": "a hardfacing note; the wire's own sheet prints 88 to 92, the handbook 93",
		"FCAW 90":        "a hardfacing note; the handbook prints 86",
	}}
	for _, r := range readFigures(t, "deposition-efficiency.csv") {
		printed := numbers(r["value"])
		if r["basis"] == "memory" || len(printed) == 0 || r["unit"] != "%" {
			continue
		}
		var filler, gas, mode string
		switch p := r["process"]; {
		case p == "GMAW solid, 98Ar-2O2":
			filler, gas, mode = "G3Si1", "M20", "spray"
		case p == "GMAW solid, 75Ar-25CO2":
			filler, gas, mode = "G3Si1", "M21", "spray"
		case p == "GMAW solid, 100% CO2":
			filler, gas, mode = "G3Si1", "C1", "short arc"
		case p == "GMAW solid":
			filler, gas, mode = "G3Si1", "C1", "globular"
		case p == "metal-cored wire", p == "metal-cored":
			filler, gas, mode = "T 46 4 M", "M21", "spray"
		case strings.HasPrefix(p, "FCAW gas-shielded basic") && strings.Contains(p, "75Ar"):
			filler, gas, mode = "T 42 4 B", "M21", "globular"
		case strings.HasPrefix(p, "FCAW gas-shielded"), strings.HasPrefix(p, "FCAW E71T-1"), p == "FCAW (tubular)", p == "FCAW", strings.HasPrefix(p, "FCAW cored wire"):
			filler, gas, mode = "T 46 2 P", "C1", "spray"
		case strings.HasPrefix(p, "FCAW self-shielded"):
			filler, mode = "T 42 Z W N", "spray"
		default:
			continue
		}
		w, _ := set.Wire(filler, 1.2)
		e, ok := set.Efficiency(w, gas, mode)
		low, high := slices.Min(printed), slices.Max(printed)
		if strings.HasPrefix(r["value"], "up to") {
			low = 0
		}
		// Sources differ by some per cent among themselves: three either side.
		got := 100 * e.Value
		c.check(r["process"]+" "+r["value"], ok && got >= low-3.001 && got <= high+3.001, "%.0f %%, printed %s", got, r["value"])
	}
	c.end()
}

func TestDepositionRateAgainstThePrintedWorksheet(t *testing.T) {
	set, shop := world(t)
	c := ledger{t: t, file: "deposition-rate.csv", want: 1}
	for _, r := range readFigures(t, "deposition-rate.csv") {
		if !strings.Contains(r["item"], "E71T-1") {
			continue // stick electrodes, and an example without a current
		}
		catalog := newCatalog(set, shop, Options{})
		for _, n := range catalog.all[0] {
			if n.wire.Filler == "T 46 2 P" && n.dia == 1.6 && n.gas.Gas == "C1" && n.mode == Spray {
				got := n.deposit(n.feed(300))
				kgH := numbers(r["value"])[1] // "10.2 (4.63 kg/h)"
				c.check(r["item"], math.Abs(got/kgH-1) <= 0.15, "%.2f kg/h at 300 A, printed %s", got, r["value"])
			}
		}
	}
	c.end()
}

func TestGasFlowsAgainstPrintedOnes(t *testing.T) {
	set, shop := world(t)
	c := ledger{t: t, file: "gas-flow-and-cylinders.csv", want: 6, off: map[string]string{
		"CO2 thick grooved": "20 to 25 l/min for plates of 16 to 25 mm in one manual; the handbook prints 11.8 to 14.2 for solid wire, ours is 15 to 22",
		"Al MIG":            "20 to 25 l/min in one manual; a textbook prints 12 to 19 for 1.6 to 9.6 mm, ours is 16 to 20",
	}}
	catalog := newCatalog(set, shop, Options{})
	flow := func(filler, gas string, dia float64, mode Transfer) (low, high float64) {
		for _, n := range catalog.all[0] {
			if n.wire.Filler == filler && n.gas.Gas == gas && n.dia == dia && n.mode == mode {
				return n.flow.Low, n.flow.High
			}
		}
		return 0, 0
	}
	for _, r := range readFigures(t, "gas-flow-and-cylinders.csv") {
		value := r["value"]
		if _, in, ok := strings.Cut(value, "("); ok { // "25-30 (11.8-14.2 L/min)"
			value = in
		}
		var low, high float64
		switch item := r["item"]; {
		case item == "flow, GMAW solid wire":
			low, high = flow("G3Si1", "M21", 1.2, ShortArc)
		case strings.HasPrefix(item, "flow, FCAW <="):
			low, high = flow("T 46 2 P", "C1", 1.2, Spray)
		case item == "flow, MAG thin sheet":
			low, high = flow("G3Si1", "M21", 0.8, ShortArc)
		case strings.HasPrefix(item, "flow, CO2 lap fillet"):
			low, high = flow("G3Si1", "C1", 1.2, ShortArc)
		case strings.HasPrefix(item, "flow, CO2 thick grooved"):
			low, high = flow("G3Si1", "C1", 1.6, Globular)
		case strings.HasPrefix(item, "flow, Al MIG"):
			low, high = flow("S Al 5356", "I1", 1.2, Spray)
		default:
			continue
		}
		printed := numbers(value)
		c.check(r["item"], overlaps(low, high, slices.Min(printed), slices.Max(printed)), "%v to %v l/min, printed %s", low, high, r["value"])
	}
	c.end()
}

// overlaps tells whether two ranges share at least half of the narrower; a single
// value must lie inside.
func overlaps(low, high, printedLow, printedHigh float64) bool {
	shared := min(high, printedHigh) - max(low, printedLow)
	return high > 0 && shared >= min(high-low, printedHigh-printedLow)/2-1e-9
}

func TestStickOutsAgainstPrintedOnes(t *testing.T) {
	set, shop := world(t)
	c := ledger{t: t, file: "technique.csv", want: 6, off: map[string]string{
		"FCAW extension": "recalled for wires up to 4 mm; 20 mm tip to work is printed for small ones, which is taken",
	}}
	catalog := newCatalog(set, shop, Options{})
	stick := func(filler string, dia float64, mode Transfer) *tables.Stickout {
		for _, n := range catalog.all[0] {
			if n.wire.Filler == filler && n.dia == dia && n.mode == mode {
				return n.stick
			}
		}
		return &tables.Stickout{}
	}
	for _, r := range readFigures(t, "technique.csv") {
		var s *tables.Stickout
		figure, arc := r["figure"], 0.0 // of a printed wire extension the arc is left out
		switch r["item"] {
		case "tip-to-work": // "10 mm (<=1.6 mm plate), 15 mm (3.2-4 mm)"
			s = stick("G3Si1", 0.8, ShortArc)
			figure, _, _ = strings.Cut(figure, " (") // of the thin wire; 15 mm is for thicker plate
		case "wire extension, aluminium": // "15 / 15-18 / 17-20 mm for 3 / 4 / 6 mm"
			s = stick("S Al 5356", 1.2, Spray)
			figure, _, _ = strings.Cut(figure, " for ")
		case "stick-out short circuit": // "6-10 mm (1/4-3/8 in)"
			s = stick("G3Si1", 0.8, ShortArc)
			figure, _, _ = strings.Cut(figure, "(")
			arc = s.Arc
		case "electrode extension by mode": // "short circuit 6-13 mm; spray/other 13-25 mm"
			s = stick("G3Si1", 1.2, Spray)
			_, figure, _ = strings.Cut(figure, "spray")
			arc = s.Arc
		case "FCAW extension": // "gas-shielded 19-38 mm; self-shielded 19-95 mm"
			s = stick("T 46 2 P", 1.2, Spray)
			figure, _, _ = strings.Cut(figure, ";")
			arc = s.Arc
		case "stick-out solid wire": // "about 10 mm; gasless 15-20 mm"
			s = stick("G3Si1", 1.0, ShortArc)
			figure, _, _ = strings.Cut(figure, ";")
		default:
			continue
		}
		n := numbers(figure)
		low, high := slices.Min(n), slices.Max(n)
		c.check(r["item"], overlaps(s.Low-arc, s.High-arc, low, high), "%v to %v mm, printed %s", s.Low-arc, s.High-arc, r["figure"])
	}
	c.end()
}
