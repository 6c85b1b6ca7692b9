package plan

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"seamtally/tables"
)

// overlapMisses are the printed ranges that our window or voltage line does not
// cover by half of the narrower, with the reason. An entry that begins to match
// fails the test, so that the list stays true.
var overlapMisses = map[string]string{}

// printedRange is one printed range of current and voltage for a wire in a mode.
type printedRange struct {
	row, metal, construction, transfer string
	pos                                string
	dia                                float64
	current, volts                     *span
}

var diaText = regexp.MustCompile(`^\d\.\d+`)

// printedRanges are the rows of parameters.csv that hold for any joint.
func printedRanges(t *testing.T) []printedRange {
	nominal := map[string]float64{"0.76": 0.8, "0.89": 0.9, "1.14": 1.2, "0.6": 0.6, "0.8": 0.8, "0.9": 0.9, "1.0": 1, "1.2": 1.2, "1.4": 1.4, "1.6": 1.6}
	metals := map[string]string{"carbon steel": "carbon steel", "carbon/low-alloy steel": "carbon steel", "stainless 300 series": "stainless", "aluminium": "aluminium"}
	var out []printedRange
	for _, r := range readFigures(t, "parameters.csv") {
		p := printedRange{row: "parameters " + r[""], pos: "PA", metal: metals[r["material"]], construction: "solid", dia: nominal[diaText.FindString(r["wire_mm"])],
			current: optional(r["current_A"], 1), volts: optional(r["voltage_V"], 1)}
		mode := r["process_mode"]
		switch {
		case strings.HasPrefix(mode, "FCAW gas"):
			p.construction, p.transfer = "rutile cored", string(Spray)
		case strings.Contains(mode, "short circuit"):
			p.transfer = string(ShortArc)
		case strings.Contains(mode, "spray"), mode == "GMA":
			p.transfer = string(Spray)
		}
		if r["joint"] == "any" && p.metal != "" && p.dia > 0 && p.transfer != "" && p.current != nil && p.current.high > p.current.low {
			out = append(out, p)
		}
	}
	for _, r := range readFigures(t, "procedures.csv") {
		p := printedRange{row: "procedures " + r[""], pos: r["position"], metal: "carbon steel", construction: "solid", transfer: string(ShortArc),
			dia: nominal[diaText.FindString(r["wire_mm"])], current: optional(r["current_A"], 1), volts: optional(r["voltage_V"], 1)}
		if r["process"] == "136" {
			p.construction, p.transfer = "rutile cored", string(Spray)
		}
		if s, ok := readSpan(r["thickness_mm"]); ok && s.high > 2*s.low && p.dia > 0 { // a window, not the setting of one joint
			out = append(out, p)
		}
	}
	return out
}

// Stick-outs and gas flows printed as ranges. In short arc the wire beyond the tip
// is compared. The open-arc and cored extensions are compared with the distance
// from tip to work: taken as wire alone they would ask for 17 to 29 mm from tip to
// work with thin wire too, which no printed setting has. The flow of industrial
// practice is for wire of 1 mm and more.
func TestStickoutsAndFlowsOverlapPrintedRanges(t *testing.T) {
	set, shop := world(t)
	printed := func(file, item, column string, from *regexp.Regexp) span {
		for _, r := range readFigures(t, file) {
			if r["item"] != item && r["quantity"] != item && r["what"] != item {
				continue
			}
			if m := from.FindStringSubmatch(r[column]); m != nil {
				if s, ok := readSpan(m[1]); ok {
					return s
				}
			}
		}
		t.Fatalf("%s has no %q", file, item)
		return span{}
	}
	short := printed("technique.csv", "electrode extension by mode", "figure", regexp.MustCompile(`short circuit (\S+) mm`))
	shortShop := printed("technique.csv", "stick-out short circuit", "figure", regexp.MustCompile(`^(\S+) mm`))
	open := printed("technique.csv", "electrode extension by mode", "figure", regexp.MustCompile(`other (\S+) mm`))
	cored := printed("technique.csv", "FCAW extension", "figure", regexp.MustCompile(`gas-shielded (\S+) mm`))
	c := newCatalog(set, shop, Options{})
	for _, n := range c.all[0] {
		if n.wire.Metal != "carbon steel" || !n.wireStock {
			continue
		}
		wire, tip := span{n.stick.Low - n.stick.Arc, n.stick.High - n.stick.Arc}, span{n.stick.Low, n.stick.High}
		for want, got := range map[span]span{short: wire, shortShop: wire, open: tip, cored: tip} {
			belongs := n.wire.Construction == "solid" && n.mode == ShortArc && (want == short || want == shortShop) ||
				n.wire.Construction == "solid" && n.mode == Spray && want == open ||
				n.wire.Construction == "rutile cored" && want == cored
			if belongs && overlap(want, got) < 0.5 {
				t.Errorf("%s %v mm %s: %v to %v mm, printed %v to %v", n.wire.Filler, n.dia, n.mode, got.low, got.high, want.low, want.high)
			}
		}
		if practice := (span{15, 20}); n.mode == Spray && n.dia > 0.95 && overlap(span{n.flow.Low, n.flow.High}, practice) < 0.5 { // Beyer et al. 2013
			t.Errorf("%s %v mm %s: %v to %v l/min, printed 15 to 20", n.wire.Filler, n.dia, n.mode, n.flow.Low, n.flow.High)
		}
	}
}

// TestWindowsOverlapPrintedRanges asks that our window, and the voltage over it,
// overlap the printed range by at least half of the narrower, in the gas of ours
// that fits best: the printed rows name theirs loosely or not at all.
func TestWindowsOverlapPrintedRanges(t *testing.T) {
	set, _ := world(t)
	rows, held := printedRanges(t), 0
	if len(rows) < 15 {
		t.Fatalf("only %d ranges were read", len(rows))
	}
	for _, p := range rows {
		amps, volts, ours := bestOverlap(set, p)
		for what, share := range map[string]float64{"A": amps, "V": volts} {
			if what == "V" && p.volts == nil {
				continue
			}
			key := p.row + " " + what
			reason, listed := overlapMisses[key]
			switch {
			case share >= 0.5 && listed:
				t.Errorf("%s overlaps now; take it off the list (%s)", key, reason)
			case share < 0.5 && !listed:
				t.Errorf("%s (%s %s %v mm %s): %.0f %% of the narrower, ours %s", key, p.metal, p.construction, p.dia, p.transfer, 100*share, ours)
			case share >= 0.5:
				held++
			}
		}
	}
	t.Logf("%d ranges overlap by half or more, %d do not", held, len(overlapMisses))
}

// bestOverlap returns the overlap of current and of voltage, as shares of the
// narrower range, of the window of ours that fits best.
func bestOverlap(set *tables.Set, p printedRange) (amps, volts float64, ours string) {
	for _, w := range set.Windows {
		if w.Metal != p.metal || w.Construction != p.construction || w.Dia != p.dia || w.Transfer != p.transfer || !hasWord(w.Positions, p.pos) {
			continue
		}
		a := overlap(span{w.Low, w.High}, *p.current)
		if a < amps {
			continue
		}
		for _, v := range set.Voltages {
			if v.Metal != w.Metal || v.Construction != w.Construction || v.Transfer != w.Transfer || !within(v.DiaFrom, w.Dia, v.DiaTo) || !hasWord(v.Gas, strings.Fields(w.Gas)[0]) {
				continue
			}
			at := func(i float64) float64 { return v.Volt1 + (i-v.Amp1)*(v.Volt2-v.Volt1)/(v.Amp2-v.Amp1) }
			line := span{at(w.Low) - v.Band, at(w.High) + v.Band}
			b := 1.0
			if p.volts != nil {
				b = overlap(line, *p.volts)
			}
			if a > amps || b > volts {
				amps, volts = a, b
				ours = fmt.Sprintf("%.0f to %.0f A, %.1f to %.1f V", w.Low, w.High, line.low, line.high)
			}
		}
	}
	return amps, volts, ours
}

// overlap returns what two ranges share, as a share of the narrower.
func overlap(a, b span) float64 {
	narrower := min(a.high-a.low, b.high-b.low)
	if narrower <= 0 {
		return 0
	}
	return max(0, min(a.high, b.high)-max(a.low, b.low)) / narrower
}
