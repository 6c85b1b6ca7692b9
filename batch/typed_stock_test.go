package batch

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/finding"
	"seamtally/batch/price"
)

// TestWhatIsOnHandIsKept types stock into the buy list: the next run buys less, has it on
// the sheet of rates, and so does the run after it.
func TestWhatIsOnHandIsKept(t *testing.T) {
	for _, us := range []bool{false, true} {
		looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso", US: us}
		if us {
			looks.Codes = "aws"
		}
		plain, book := oneList(t, listIn(t, "Mark,Length,Size,t1,t2,Qty,Material\nW1,1 m,z8,12 mm,12 mm,60,S355\n"), t.TempDir(), looks)
		line := 0
		for i, b := range plain.Buy {
			if b.What == price.BuyWire {
				line = i
			}
		}
		value, want := 4.0, 4.0
		if us {
			want = 4 * 0.45359237
		}
		f, err := excelize.OpenFile(book)
		if err != nil {
			t.Fatal(err)
		}
		cell, _ := excelize.CoordinatesToCellName(5, 5+line)
		if err := f.SetCellValue("Buy list", cell, value); err != nil {
			t.Fatal(err)
		}
		name := filepath.Join(t.TempDir(), "changed.xlsx")
		if err := f.SaveAs(name); err != nil {
			t.Fatal(err)
		}
		_ = f.Close()
		again, second := oneList(t, name, t.TempDir(), looks)
		third, _ := oneList(t, second, t.TempDir(), looks)
		for i, job := range []*price.Job{again, third} {
			if got := job.Buy[line].OnHand; !near(got, want) {
				t.Errorf("inches %v, run %d: %v on hand, want %v", us, i+2, got, want)
			}
		}
		if len(problemsOf(again, "shop-typed")) != 1 || len(problemsOf(third, "shop-typed")) != 0 {
			t.Errorf("told %v, then %v", problemsOf(again, "shop-typed"), problemsOf(third, "shop-typed"))
		}
	}
}

// onHand works a list of sixty metres, types something on a line of its buy list, and on
// the sheet of rates where a value is given for it.
func onHand(t *testing.T, looks price.Options, set []string, what string, typed any, rates map[string]any) (Result, *price.Job) {
	t.Helper()
	job := Job{Version: "test", Lists: []string{listIn(t, "Mark,Length,Size,t1,t2,Qty,Material\nW1,1 m,z8,12 mm,12 mm,60,S355\n")},
		Out: t.TempDir(), Only: []Output{Workbook}, Looks: looks, Set: set}
	first := ran(t, job)
	f, err := excelize.OpenFile(first.Written[0])
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for i, b := range first.Job.Buy {
		if b.What == what && typed != nil {
			cell, _ := excelize.CoordinatesToCellName(5, 5+i)
			if err := f.SetCellValue("Buy list", cell, typed); err != nil {
				t.Fatal(err)
			}
		}
	}
	lines, err := f.GetRows("Rates")
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range lines {
		if value, ok := rates[strings.Join(line[:min(1, len(line))], "")]; ok {
			cell, _ := excelize.CoordinatesToCellName(2, i+1)
			if err := f.SetCellValue("Rates", cell, value); err != nil {
				t.Fatal(err)
			}
		}
	}
	name := filepath.Join(t.TempDir(), "changed.xlsx")
	if err := f.SaveAs(name); err != nil {
		t.Fatal(err)
	}
	job.Lists, job.Out, job.Set = []string{name}, t.TempDir(), nil
	return ran(t, job), first.Job
}

// wireOnHand is what is on hand of the wire of a job.
func wireOnHand(t *testing.T, job *price.Job) float64 {
	t.Helper()
	for _, b := range job.Buy {
		if b.What == price.BuyWire {
			return b.OnHand
		}
	}
	t.Fatal("no wire is bought")
	return 0
}

// TestOnHandIsTakenWhereItDiffers: nothing left is typed as nought over what stood there;
// nought where nothing stood says nothing. In a workbook of values the same figure as in
// the last run gives way to a change on the sheet of rates.
func TestOnHandIsTakenWhereItDiffers(t *testing.T) {
	looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}
	values := looks
	values.ValuesOnly = true
	key := wireKey(t, looks)
	for _, c := range []struct {
		name  string
		looks price.Options
		set   []string
		typed any
		rates map[string]any
		want  float64
		told  int
	}{
		{"nought where nothing stood", looks, nil, 0, nil, 0, 0},
		{"nought over four", looks, []string{key + "=4"}, 0, nil, 0, 1},
		{"three over four", looks, []string{key + "=4"}, 3, nil, 3, 1},
		{"a text that is a number of the unit", looks, nil, "3 kg", nil, 3, 1},
		{"nought over four, values", values, []string{key + "=4"}, 0, nil, 0, 1},
		{"nothing typed, values", values, []string{key + "=4"}, nil, nil, 4, 0},
		{"emptied over four", looks, []string{key + "=4"}, "", nil, 0, 1},
		{"emptied over four, values", values, []string{key + "=4"}, "", nil, 0, 1},
		{"emptied where nothing stood", looks, nil, "", nil, 0, 0},
		{"rates changed, values", values, []string{key + "=4"}, nil, map[string]any{key: 6}, 6, 0},
		{"rates changed, live", looks, []string{key + "=4"}, nil, map[string]any{key: 6}, 6, 0},
	} {
		r, _ := onHand(t, c.looks, c.set, price.BuyWire, c.typed, c.rates)
		if r.Err != nil {
			t.Errorf("%s: %v", c.name, r.Err)
			continue
		}
		if got, told := wireOnHand(t, r.Job), problemsOf(r.Job, "shop-typed"); !near(got, c.want) || len(told) != c.told {
			t.Errorf("%s: %v on hand, want %v; told %+v", c.name, got, c.want, told)
		}
	}
}

// TestWordsUnderOnHandAreRefused: a stock that cannot be read would be a wrong order, so
// the list is refused, with the cell. Of tips nothing is on hand that a value could say.
func TestWordsUnderOnHandAreRefused(t *testing.T) {
	looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}
	for _, typed := range []any{"a few", -2} {
		r, first := onHand(t, looks, nil, price.BuyWire, typed, nil)
		line := 0
		for i, b := range first.Buy {
			if b.What == price.BuyWire {
				line = i
			}
		}
		cell, _ := excelize.CoordinatesToCellName(5, 5+line)
		if r.Err == nil || !strings.Contains(r.Err.Error(), cell) || !strings.Contains(r.Err.Error(), "Buy list") || !strings.Contains(r.Err.Error(), "expected") {
			t.Errorf("%v: %v", typed, r.Err)
		}
	}
	r, _ := onHand(t, looks, nil, price.BuyTip, 5, nil)
	if r.Err != nil {
		t.Fatal(r.Err)
	}
	told := problemsOf(r.Job, "changed-in-our-column")
	if len(told) != 1 || told[0].Level != finding.Warning || told[0].Place.Sheet != "Buy list" || told[0].Place.Cell() == "" {
		t.Errorf("five tips: told %+v", told)
	}
}

// TestAnEmptiedStockIsTold: a cell that somebody emptied says that nothing is left, so the
// whole need is bought, and the note says what was done. The same of tips says nothing.
func TestAnEmptiedStockIsTold(t *testing.T) {
	looks := price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}
	r, first := onHand(t, looks, []string{wireKey(t, looks) + "=1000"}, price.BuyWire, "", nil)
	if r.Err != nil {
		t.Fatal(r.Err)
	}
	packs := func(job *price.Job) int {
		for _, b := range job.Buy {
			if b.What == price.BuyWire {
				return b.Packs
			}
		}
		return -1
	}
	if packs(first) != 0 || packs(r.Job) == 0 {
		t.Errorf("%d packs with a tonne on hand, %d with nothing", packs(first), packs(r.Job))
	}
	told := problemsOf(r.Job, "shop-typed")
	if len(told) != 1 || !strings.Contains(told[0].Text, "is taken as 0: its cell in the buy list was emptied") {
		t.Errorf("told %+v", told)
	}
	if r, _ = onHand(t, looks, nil, price.BuyTip, "", nil); r.Err != nil || len(problemsOf(r.Job, "changed-in-our-column")) != 0 {
		t.Errorf("no tips: %v, told %+v", r.Err, problemsOf(r.Job, "changed-in-our-column"))
	}
}

// wireKey is the shop value for what is on hand of the wire that is bought.
func wireKey(t *testing.T, looks price.Options) string {
	t.Helper()
	plain, _ := onHand(t, looks, nil, price.BuyWire, nil, nil)
	for _, b := range plain.Job.Buy {
		if b.What == price.BuyWire {
			name := strings.TrimSuffix(b.Name, " mm")
			at := strings.LastIndexByte(name, ' ')
			return "on_hand_kg." + name[:at] + "." + name[at+1:]
		}
	}
	t.Fatal("no wire is bought")
	return ""
}
