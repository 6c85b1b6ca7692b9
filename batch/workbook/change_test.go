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
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/batch/weld"
	"seamtally/tables"
)

// changed is a row of a sample in which a person changes one cell, and what the
// tool itself makes of it with the plan held.
type changed struct {
	row  int
	cell string
	now  float64 // what is written into the cell
	want map[string]float64
	fits string
}

// TestAChangeMovesThePrice changes a rate, a length and a leg in the workbooks of all
// samples, lets another program work them out, and compares with the tool's own
// physics and prices for the changed rows, the plan held.
func TestAChangeMovesThePrice(t *testing.T) {
	t.Parallel()
	var books [][]byte
	var changes [][]changed
	var jobs []*price.Job
	for _, s := range append(samples[:4:4], inInches, plainFrame) {
		src, job := sampleJob(t, s.path, s.opts)
		out := build(t, src, job, Options{US: s.opts.US})
		sheet := opened(t, out).GetSheetList()[0]
		edits := map[string]float64{"Rates!" + rateCell(job, "labour_rate"): 45}
		job.Shop.LabourRate = 45
		these := changesOf(t, src, job, opened(t, out), sheet)
		for _, c := range these {
			edits[sheet+"!"+c.cell] = c.now
		}
		books, changes, jobs = append(books, withNumbers(t, out, edits)), append(changes, these), append(jobs, job)
	}
	asNumber, asText := 0, 0
	for i, theirs := range recalculated(t, books...) {
		now := opened(t, theirs)
		sheet, us := now.GetSheetList()[0], jobs[i].Opts.US
		for _, c := range changes[i] {
			for key, v := range c.want {
				col := columnKeyed(t, jobs[i], key)
				text, err := now.GetCellValue(sheet, cellOf(t, ours(t, now, sheet, col, us), c.row))
				must(t, err)
				got, err := strconv.ParseFloat(text, 64)
				if per := col.unit.per; us && per != 0 {
					got *= per
				}
				if err != nil || math.Abs(got-v) > 2.5e-4+1e-9*math.Abs(v) { // the cost is a sum of five parts rounded to four decimals
					t.Errorf("%s row %d %s: %s, want %v", jobs[i].List.File, c.row, key, text, v)
				}
			}
			fits := columnKeyed(t, jobs[i], "fits")
			if text, _ := now.GetCellValue(sheet, cellOf(t, ours(t, now, sheet, fits, us), c.row)); text != c.fits {
				t.Errorf("%s row %d: plan %q, want %q", jobs[i].List.File, c.row, text, c.fits)
			}
			if c.fits != "fits" && strings.HasPrefix(cellHead(t, now, sheet, c.cell), "Leg A") {
				asText++
			} else if c.fits != "fits" {
				asNumber++
			}
		}
	}
	if asNumber == 0 || asText == 0 {
		t.Errorf("%d legs were changed as numbers in the list, %d in our own column beside a text; some of each are wanted", asNumber, asText)
	}
}

// inInches is the mezzanine shown in inches; plainFrame has its legs as bare numbers.
var (
	inInches   = sample{"mezzanine/mezzanine.xlsx", price.Options{US: true}}
	plainFrame = sample{"trestle/trestle.csv", price.Options{}}
)

// changesOf doubles the length of one fillet of a list and makes the legs of two
// others 2 mm longer: where the list has a number in the list, else in our column.
func changesOf(t *testing.T, src *list.Source, job *price.Job, f *excelize.File, sheet string) []changed {
	t.Helper()
	l := newLayout(job, Options{US: job.Opts.US}, &src.Sheets[0], sheet)
	l.textNumbers, l.decimalComma = src.Format == list.CSV, src.DecimalComma
	var out []changed
	var long, inList, inOurs bool
	for i := range job.List.Joints {
		r := l.row(i)
		if r.j.Kind != joint.Fillet || !r.p.Settings || r.j.Stitch != nil || r.p.Prep.LegA != r.p.Prep.LegB {
			continue
		}
		if v, col, ok := r.cell("length"); ok && !long && r.j.Length > 100 {
			long = true
			out = append(out, changed{r.j.Place.Row, cellOf(t, col.Col, r.j.Place.Row), 2 * v, held(t, job, i, 2, 0), "fits"})
			continue
		}
		extra, cell, now := units.MM(2), "", 0.0
		if v, col, ok := legCell(r); ok && !inList {
			inList, cell = true, cellOf(t, col, r.j.Place.Row)
			now = v * float64(r.p.Prep.LegA+extra) / float64(r.p.Prep.LegA)
		} else if !ok && !inOurs {
			inOurs, cell = true, cellOf(t, ours(t, f, sheet, columnKeyed(t, job, "leg_a_mm"), job.Opts.US), r.j.Place.Row)
			now = mm.show(float64(r.p.Prep.LegA+extra), job.Opts.US)
		}
		if cell != "" {
			out = append(out, changed{r.j.Place.Row, cell, now, held(t, job, i, 1, extra), "run again"})
		}
	}
	return out
}

// legCell is the number in the list that the leg is read from, if it is one.
func legCell(r *row) (float64, int, bool) {
	for _, key := range []string{"leg", "size", "throat"} {
		if v, col, ok := r.cell(key); ok {
			return v, col.Col, true
		}
	}
	return 0, 0, false
}

func columnKeyed(t *testing.T, job *price.Job, key string) column {
	t.Helper()
	for _, c := range columnsOf(newLayout(job, Options{}, nil, "")) {
		if c.key == key {
			return c
		}
	}
	t.Fatalf("no column %s", key)
	return column{}
}

// ours is where one of our columns stands.
func ours(t *testing.T, f *excelize.File, sheet string, c column, us bool) int {
	t.Helper()
	head := strings.TrimSpace(c.head + " " + c.unit.name(us))
	at := headsOf(t, f, sheet)[head]
	if at == 0 {
		t.Fatalf("no column %q", head)
	}
	return at
}

// cellHead is the header over a cell.
func cellHead(t *testing.T, f *excelize.File, sheet, cell string) string {
	t.Helper()
	col, _, err := excelize.CellNameToCoordinates(cell)
	must(t, err)
	for head, at := range headsOf(t, f, sheet) {
		if at == col && strings.HasPrefix(head, "Leg A") {
			return head
		}
	}
	return ""
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
	return map[string]float64{"seam_m": seam, "area_mm2": area, "weld_kg": metal, "arc_min": arc, "wire_kg": wireKg,
		"labour_min": float64(cost.Labour.Total), "cost_labour": float64(cost.LabourCost), "cost_other": float64(cost.Other),
		"cost": float64(cost.Total), "energy_kwh": float64(cost.Energy)}
}

// weldGas is the gas of an arc time and a number of starts.
func weldGas(flow, arc, starts float64, s *rates.Shop) (float64, error) {
	if flow <= 0 {
		return 0, fmt.Errorf("no flow")
	}
	return flow * (arc + starts*float64(s.Preflow+s.Postflow)/60), nil
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

// zipped puts parts together in the order of another package.
func zipped(t testing.TB, like []byte, bodies map[string][]byte) []byte {
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
	t.Parallel()
	var books [][]byte
	var jobs []*price.Job
	for _, s := range samples {
		src, job := sampleJob(t, s.path, s.opts)
		if job.Totals.Price == 0 {
			t.Logf("%s: no row names a material, so there is no price to move", s.path)
			continue
		}
		out := build(t, src, job, Options{US: s.opts.US})
		jobs = append(jobs, job)
		books = append(books, withNumbers(t, out, map[string]float64{"Rates!" + rateCell(job, "margin_pct"): 25}))
	}
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	for i, theirs := range recalculated(t, books...) {
		job := jobs[i]
		was := job.Totals.Price
		job.Shop.MarginPct = 25
		fresh := price.Price(job.List, plan.Joints(job.List.Joints, set, &job.Shop, plan.Options{}), job.Shop, nil, job.Opts)
		got := onTotals(t, opened(t, theirs), "Price")
		if math.Abs(got-float64(fresh.Totals.Price)) > 0.005 || math.Abs(got-float64(was)) < 0.01 {
			t.Errorf("%s: Totals say %v, a run says %v; it was %v", job.List.File, got, fresh.Totals.Price, was)
		}
	}
}

// onTotals is the first figure in the row of a name on the sheet Totals.
func onTotals(t *testing.T, f *excelize.File, name string) float64 {
	t.Helper()
	rows, err := f.GetRows("Totals")
	must(t, err)
	for _, row := range rows {
		for i := 1; i < len(row) && row[0] == name; i++ {
			if got, err := strconv.ParseFloat(row[i], 64); err == nil {
				return got
			}
		}
	}
	t.Fatalf("the Totals have no figure for %s", name)
	return 0
}
