package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// keys are the result keys that scripts rely on, in their order.
var keys = strings.Fields(`mark row assembly qty kind seam_m area_drawn_mm2 area_mm2 weld_kg
	process filler wire_mm gas transfer passes current_a current_low_a current_high_a voltage_v wfs_m_min travel_mm_min gas_l_min
	stickout_mm polarity torch trigger inductance deposit_kg_h wire_kg wire_m gas_l arc_min labour_min energy_kwh
	heat_kj_mm arc_energy_kj_mm preheat_c interpass_c t85_s machine
	cost_labour cost_wire cost_gas cost_power cost_other cost price checks`)

// sample works one of the project's samples.
func sample(t *testing.T, path string) *price.Job {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "samples", path))
	must(t, err)
	return work(t, filepath.Base(path), data)
}

func work(t *testing.T, name string, data []byte) *price.Job {
	t.Helper()
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	shop, err := rates.Default(set)
	must(t, err)
	src, _, err := list.Read(name, data)
	must(t, err)
	l, err := joint.Understand(src, joint.Options{}, set)
	must(t, err)
	job := price.Price(*l, plan.Joints(l.Joints, set, &shop, plan.Options{}), shop, nil, price.Options{Date: "2026-03-01"})
	return &job
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func table(t *testing.T, job *price.Job) [][]string {
	t.Helper()
	text, err := CSV(job)
	must(t, err)
	records, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	must(t, err)
	return records
}

// parsed is the result document as a script reads it.
type parsed struct {
	Shop   map[string]struct{ Value any }
	Joints []map[string]any
	Totals map[string]any
}

func read(t *testing.T, job *price.Job) parsed {
	t.Helper()
	text, err := JSON(job)
	must(t, err)
	if bytes.Count(text, []byte("\n")) != 1 {
		t.Error("the document takes more than one line")
	}
	var doc parsed
	must(t, json.Unmarshal(text, &doc))
	return doc
}

func TestKeys(t *testing.T) {
	job := sample(t, "mezzanine/mezzanine.xlsx")
	if got := table(t, job)[0]; !reflect.DeepEqual(got, keys) {
		t.Errorf("columns are\n%v, want\n%v", got, keys)
	}
	text, err := JSON(job)
	must(t, err)
	at := bytes.Index(text, []byte(`"joints":[`))
	for _, key := range keys {
		next := bytes.Index(text[at:], []byte(`"`+key+`":`))
		if next < 0 {
			t.Fatalf("the first joint has no field %s behind the one before", key)
		}
		at += next
	}
}

// TestTableAndDocumentAgree compares every cell with the field of the same name.
func TestTableAndDocumentAgree(t *testing.T) {
	for _, path := range []string{"mezzanine/mezzanine.xlsx", "four-columns/four-columns.csv", "mistakes/mistakes.csv"} {
		job := sample(t, path)
		records, doc := table(t, job), read(t, job)
		if len(records)-1 != len(doc.Joints) || len(doc.Joints) != len(job.List.Joints) {
			t.Fatalf("%s: %d rows, %d joints of %d", path, len(records)-1, len(doc.Joints), len(job.List.Joints))
		}
		for i, record := range records[1:] {
			for k, key := range keys {
				switch value := doc.Joints[i][key].(type) {
				case nil:
					if record[k] != "" {
						t.Errorf("%s row %d: %s is %q and null", path, i, key, record[k])
					}
				case float64:
					if got, err := strconv.ParseFloat(record[k], 64); err != nil || got != value {
						t.Errorf("%s row %d: %s is %q and %v", path, i, key, record[k], value)
					}
				case string:
					if record[k] != Guard(value) {
						t.Errorf("%s row %d: %s is %q and %q", path, i, key, record[k], value)
					}
				}
			}
		}
	}
}

// TestColumnsAddUp adds the printed figures of the joints and wants the printed totals.
func TestColumnsAddUp(t *testing.T) {
	for _, path := range []string{"mezzanine/mezzanine.xlsx", "wash-table/wash-table.csv", "mistakes/mistakes.csv"} {
		doc := read(t, sample(t, path))
		for key, decimals := range map[string]int{"seam_m": price.MetreDecimals, "weld_kg": price.KgDecimals, "wire_kg": price.KgDecimals, "gas_l": price.LitreDecimals,
			"arc_min": price.MinuteDecimals, "labour_min": price.MinuteDecimals, "cost_labour": price.MoneyDecimals, "cost": price.MoneyDecimals, "price": price.MoneyDecimals} {
			total := 0.0
			for _, j := range doc.Joints {
				if v, ok := j[key].(float64); ok {
					total += v
				}
			}
			if want, _ := doc.Totals[key].(float64); math.Abs(total-want) > math.Pow(10, -float64(decimals))/2 {
				t.Errorf("%s: the joints' %s add up to %v, the total says %v", path, key, total, want)
			}
		}
	}
}

// TestUnknownIsEmpty works a list without material: there is metal, and no
// setting, time or money. Not one of them may read as zero.
func TestUnknownIsEmpty(t *testing.T) {
	records := table(t, work(t, "x.csv", []byte("Mark,Length (mm),Leg (mm)\nW1,1000,5\n")))
	for k, key := range keys {
		known := strings.Contains(" mark row qty kind seam_m area_drawn_mm2 area_mm2 weld_kg checks ", " "+key+" ")
		if cell := records[1][k]; !known && cell != "" || known && cell == "" && key != "checks" && key != "weld_kg" {
			t.Errorf("%s is %q", key, cell)
		}
	}
}

// TestNoFigureIsInfinite fills a plan with what must never be printed.
func TestNoFigureIsInfinite(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	warm := units.Celsius(nan)
	p := plan.Plan{Manner: &plan.Manner{Settings: true,
		Current: plan.Window{Start: nan, Low: -inf, High: inf}, Preheat: &warm, T85: &[2]units.Second{units.Second(nan), units.Second(inf)},
		Runs: []plan.Run{{Area: units.MM2(inf), Heat: units.KJMM(nan)}}}, Joint: &joint.Joint{Mark: "W1", Qty: 1, Detail: &joint.Detail{}}, Seam: units.Metre(inf), WeldMetal: units.Kg(nan), Cost: rates.Cost{Total: 1, Price: units.Money(inf)},
	}
	job := &price.Job{Plans: []plan.Plan{p}}
	job.Totals.Cost = units.Money(nan)
	text, err := JSON(job)
	must(t, err)
	if !json.Valid(text) {
		t.Errorf("no JSON: %s", text)
	}
	for _, record := range table(t, job)[1:] {
		for k, cell := range record {
			if strings.Contains(cell, "Inf") || strings.Contains(cell, "NaN") {
				t.Errorf("%s is %s", keys[k], cell)
			}
		}
	}
}

func TestGuard(t *testing.T) {
	for _, text := range []string{"=1+2", "+cmd", "-W1", "@x", "\t=1", "\r=1", "\n=1", " =1", "\u00a0=1", "\u200b=1", "＝1", "＋1", "－1", "＠1",
		"=cmd|' /C calc'!A0", `=HYPERLINK("x")`, "=WEBSERVICE(1)", "-1.5.2", "--1", "-", "+", "-1e3"} {
		if got := Guard(text); got != "'"+text {
			t.Errorf("%q stays %q", text, got)
		}
	}
	for _, text := range []string{"", "W1", "007", "-3", "-1.5", "+3.000", "3-4", "a=b", "1/2", "Ø60", "'=1"} {
		if got := Guard(text); got != text {
			t.Errorf("%q becomes %q", text, got)
		}
	}
}

// TestHostileTextStaysText puts formulas into every text column of a list.
func TestHostileTextStaysText(t *testing.T) {
	for _, vector := range []string{"=1+2", "@SUM(1)", "+cmd|x", "＝1"} {
		job := work(t, "x.csv", []byte("Mark,Assembly,Length (mm),Leg (mm)\n\""+vector+"\",\""+vector+"\",1000,5\n"))
		for _, cell := range table(t, job)[1] {
			if cell != "" && strings.ContainsAny(cell[:1], "=@") || strings.HasPrefix(cell, "+cmd") || strings.HasPrefix(cell, "＝") {
				t.Errorf("a cell begins %q", cell)
			}
		}
	}
}

func TestSameBytes(t *testing.T) {
	a, err := JSON(sample(t, "mezzanine/mezzanine.xlsx"))
	must(t, err)
	b, err := JSON(sample(t, "mezzanine/mezzanine.xlsx"))
	must(t, err)
	if !bytes.Equal(a, b) {
		t.Error("two documents of the same list differ")
	}
}

func TestProblemsHaveTheirPlace(t *testing.T) {
	got := newProblems([]finding.Problem{{Place: finding.Place{File: "f", Sheet: "s", Row: 3, Col: 28}, Level: finding.Error}, {}})
	if got[0].Column != "AB" || got[0].Row != count(3) || got[1].Row.known || got[1].Column != "" {
		t.Errorf("got %+v", got)
	}
}

// The transfer of a joint is that of the run whose current and voltage stand beside it: a
// butt of 4.5 mm is all open root, laid in short arc by whichever way it was chosen.
func TestTransferBelongsToTheSettings(t *testing.T) {
	job := work(t, "roots.csv", []byte("Mark;Kind;Length mm;t1;Material;Position\nT;square butt;1000;4.5;S235;PA\nV;single V;1000;8;S235;PA\nW;single V;1000;12;S235;PF\n"))
	mixed := 0
	for i := range job.Plans {
		p, r := &job.Plans[i], newRow(&job.Plans[i])
		for _, run := range p.Runs {
			if run.Transfer != p.Transfer {
				mixed++
			}
		}
		if want := string(p.Runs[p.Governing].Transfer); r.Transfer != want || float64(p.Runs[p.Governing].Voltage) != p.Voltage.Start {
			t.Errorf("%s: transfer %q beside %v V, the run that governs is %q at %v V", p.Joint.Mark, r.Transfer, p.Voltage.Start, want, float64(p.Runs[p.Governing].Voltage))
		}
	}
	if mixed == 0 {
		t.Error("no joint has a run in another transfer")
	}
}
