package workbook

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"archive/zip"
	"bytes"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// TestAChangeMovesThePrice changes a rate, a length and a leg in the workbook,
// lets another program work it out, and compares with the tool's own physics and
// prices for the changed row, the plan held.
func TestAChangeMovesThePrice(t *testing.T) {
	src, job := sampleJob(t, "mezzanine/mezzanine.xlsx", price.Options{})
	longer, thicker := pick(t, job, func(j *joint.Joint) bool { return j.Stitch == nil && j.Length > 100 }), -1
	thicker = pick(t, job, func(j *joint.Joint) bool {
		return j.Stitch == nil && j.Size.Text != "" && j.Place.Row > job.List.Joints[longer].Place.Row
	})
	f := opened(t, build(t, src, job, Options{}))
	sheet := job.List.Sheet
	heads := headsOf(t, f, sheet)
	lengthCell := cellOf(t, columnOf(t, job, "length"), job.List.Joints[longer].Place.Row)
	legCell := cellOf(t, heads["Leg A mm"], job.List.Joints[thicker].Place.Row)
	changed := withNumbers(t, build(t, src, job, Options{}), map[string]float64{
		sheet + "!" + lengthCell:                float64(job.List.Joints[longer].Length) * 2,
		sheet + "!" + legCell:                   float64(job.Plans[thicker].Prep.LegA) + 2,
		"Rates!" + rateCell(job, "labour_rate"): 45,
	})
	now := opened(t, recalculated(t, changed))
	job.Shop.LabourRate = 45
	for _, c := range []struct {
		index         int
		length, extra float64
		fits          string
	}{{longer, 2, 0, "fits"}, {thicker, 1, 2, "run again"}} {
		want := held(t, job, c.index, c.length, units.MM(c.extra))
		row := job.List.Joints[c.index].Place.Row
		for head, v := range want {
			cell := cellOf(t, heads[head], row)
			text, err := now.GetCellValue(sheet, cell)
			must(t, err)
			got, err := strconv.ParseFloat(text, 64)
			if err != nil || math.Abs(got-v) > 1e-4+1e-9*math.Abs(v) { // prices are rounded to four decimals
				t.Errorf("row %d %s: %s, want %v", row, head, text, v)
			}
		}
		if fits, _ := now.GetCellValue(sheet, cellOf(t, heads["Plan fits?"], row)); fits != c.fits {
			t.Errorf("row %d: plan %q, want %q", row, fits, c.fits)
		}
	}
}

// held works a joint out anew with its plan held: longer, or with thicker legs.
func held(t *testing.T, job *price.Job, i int, times float64, extra units.MM) map[string]float64 {
	t.Helper()
	r := (&layout{job: job}).row(i)
	s, p := &job.Shop, r.p
	area := float64(p.Area)
	if extra > 0 {
		made, err := (weld.Fillet{LegA: p.Prep.LegA + extra, LegB: p.Prep.LegB + extra, Angle: p.Prep.Angle}).Made(
			weld.Allowances{Overweld: s.Overweld, FitGap: s.FitGap, Convexity: s.Convexity})
		must(t, err)
		area = float64(made)
	}
	seam := seamRaw(r) * times
	metal := area * seam * densityOf(r) / 1e6
	arc := metal / depositOf(r) * 60
	starts := seamsOf(r) * max(1, s.SeamStartsPerM*float64(r.j.Length)*times/1000) * float64(p.Passes())
	gas, err := weldGas(p.GasFlow.Start, arc, starts, s)
	must(t, err)
	kwh := 0.0
	for _, run := range p.Runs {
		kwh += float64(run.Voltage) * float64(run.Current) * float64(run.Arc) * seam * area / float64(p.Area) / 60 / 1000 / s.SourceEfficiency
	}
	wire, _ := s.Wire(p.Filler, p.Dia)
	cylinder, _ := s.Gas(p.Gas)
	wireKg := metal / meanEfficiency(r) * (1 + s.WastePct/100)
	slag := units.Metre(0)
	if p.Slag {
		slag = units.Metre(seam * float64(p.Passes()))
	}
	cost := rates.CostOf(rates.Quantities{Qty: r.j.Qty, Seam: units.Metre(seam), Seams: seamsOf(r), Passes: p.Passes(), Arc: units.Minute(arc),
		Site: r.j.Where == joint.Site, DutyCap: p.Duty, WireKg: units.Kg(wireKg), WirePerKg: wire.PerKg, Gas: units.Litre(gas),
		GasPerLitre: cylinder.PerLitre(), ArcEnergy: units.KWh(kwh), Transfer: string(p.Transfer), GasName: p.Gas, SlagRuns: slag, Metal: p.MetalGroup}, s)
	return map[string]float64{"Seam m": seam, "Area made mm²": area, "Weld metal kg": metal, "Arc time min": arc, "Wire to buy kg": wireKg,
		"Labour min": float64(cost.Labour.Total), "Labour cost EUR": float64(cost.LabourCost), "Other cost EUR": float64(cost.Other),
		"Cost EUR": float64(cost.Total), "Energy kWh": float64(cost.Energy)}
}

// weldGas is the gas of an arc time and a number of starts.
func weldGas(flow, arc, starts float64, s *rates.Shop) (float64, error) {
	if flow <= 0 {
		return 0, fmt.Errorf("no flow")
	}
	return flow * (arc + starts*float64(s.Preflow+s.Postflow)/60), nil
}

func pick(t *testing.T, job *price.Job, want func(*joint.Joint) bool) int {
	t.Helper()
	for i := range job.List.Joints {
		if j := &job.List.Joints[i]; j.Kind == joint.Fillet && job.Plans[i].Settings && want(j) {
			return i
		}
	}
	t.Fatal("the sample has no such joint")
	return -1
}

func headsOf(t *testing.T, f *excelize.File, sheet string) map[string]int {
	t.Helper()
	rows, err := f.GetRows(sheet)
	must(t, err)
	heads := map[string]int{}
	for _, row := range rows {
		for c, text := range row {
			if _, seen := heads[text]; !seen {
				heads[text] = c + 1
			}
		}
	}
	return heads
}

func columnOf(t *testing.T, job *price.Job, key string) int {
	t.Helper()
	for _, c := range job.List.Columns {
		if c.Key == key {
			return c.Col
		}
	}
	t.Fatalf("the sample has no column %s", key)
	return 0
}

func cellOf(t *testing.T, col, row int) string {
	t.Helper()
	cell, err := excelize.CoordinatesToCellName(col, row)
	must(t, err)
	return cell
}

func rateCell(job *price.Job, key string) string {
	for i, v := range job.Shop.Values {
		if v.Key == key {
			return "B" + itoa(firstRate+i)
		}
	}
	return ""
}

// withNumbers changes numbers in cells, as a person would.
func withNumbers(t *testing.T, data []byte, change map[string]float64) []byte {
	t.Helper()
	u := opened(t, data)
	files := map[string]string{}
	for i, name := range u.GetSheetList() {
		files[name] = strings.TrimPrefix(sheetPart(t, data, i), "/")
	}
	out := partsOf(t, data)
	for where, v := range change {
		i := strings.LastIndex(where, "!")
		part, cell := files[where[:i]], where[i+1:]
		mark := regexp.MustCompile(`(<c r="` + cell + `"[^>]*>)<v>[^<]*</v>`)
		if !mark.Match(out[part]) {
			t.Fatalf("%s is not a number in %s", where, part)
		}
		out[part] = mark.ReplaceAll(out[part], fmt.Appendf(nil, "${1}<v>%v</v>", v))
	}
	return zipped(t, data, out)
}

// sheetPart returns the part of the n-th sheet.
func sheetPart(t *testing.T, data []byte, n int) string {
	t.Helper()
	all := partsOf(t, data)
	ids := regexp.MustCompile(`<sheet [^>]*:id="([^"]*)"`).FindAllSubmatch(all["xl/workbook.xml"], -1)
	rel := regexp.MustCompile(`<Relationship [^>]*>`)
	for _, r := range rel.FindAll(all["xl/_rels/workbook.xml.rels"], -1) {
		if bytes.Contains(r, []byte(`Id="`+string(ids[n][1])+`"`)) {
			target := string(regexp.MustCompile(`Target="([^"]*)"`).FindSubmatch(r)[1])
			if strings.HasPrefix(target, "/") {
				return target
			}
			return "xl/" + target
		}
	}
	t.Fatalf("sheet %d has no part", n)
	return ""
}

func zipped(t *testing.T, like []byte, bodies map[string][]byte) []byte {
	t.Helper()
	zr, err := zip.NewReader(bytes.NewReader(like), int64(len(like)))
	must(t, err)
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	for _, f := range zr.File {
		w, err := zw.Create(f.Name)
		must(t, err)
		_, err = w.Write(bodies[f.Name])
		must(t, err)
	}
	must(t, zw.Close())
	return out.Bytes()
}

// TestAChangedRateMovesTheTotals changes a rate in the workbooks of all samples;
// the price on the Totals sheet becomes, to a cent, that of a run with the rate
// stated.
func TestAChangedRateMovesTheTotals(t *testing.T) {
	for _, s := range samples {
		src, job := sampleJob(t, s.path, s.opts)
		was := job.Totals.Price
		if was == 0 {
			t.Logf("%s: no row names a material, so there is no price to move", s.path)
			continue
		}
		out := build(t, src, job, Options{US: s.opts.US})
		changed := withNumbers(t, out, map[string]float64{"Rates!" + rateCell(job, "margin_pct"): 25})
		now := opened(t, recalculated(t, changed))
		job.Shop.MarginPct = 25
		files, err := tables.Open("")
		must(t, err)
		set, err := tables.Load(files)
		must(t, err)
		fresh := price.Price(job.List, plan.Joints(job.List.Joints, set, &job.Shop, plan.Options{}), job.Shop, nil, s.opts)
		rows, err := now.GetRows("Totals")
		must(t, err)
		found := false
		for _, row := range rows {
			if len(row) > 2 && row[0] == "Price" && row[2] != "" && !found {
				got, err := strconv.ParseFloat(row[2], 64)
				if found = err == nil; found && (math.Abs(got-float64(fresh.Totals.Price)) > 0.005 || math.Abs(got-float64(was)) < 0.01) {
					t.Errorf("%s: Totals say %v, a run says %v; it was %v", s.path, got, fresh.Totals.Price, was)
				}
			}
		}
		if !found {
			t.Errorf("%s: no price on the Totals", s.path)
		}
	}
}
