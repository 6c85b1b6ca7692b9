package rates

import (
	"math"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/list"
)

// csvSource makes the source that the list reader would make of a CSV text.
func csvSource(decimalComma bool, lines ...string) *list.Source {
	delimiter := ","
	if decimalComma {
		delimiter = ";"
	}
	sheet := list.Sheet{}
	for i, line := range lines {
		row := list.Row{Number: i + 1}
		for j, text := range strings.Split(line, delimiter) {
			if text != "" {
				row.Cells = append(row.Cells, list.Cell{Col: j + 1, Kind: list.Text, Text: text})
			}
		}
		if len(row.Cells) > 0 {
			sheet.Rows = append(sheet.Rows, row)
		}
	}
	return &list.Source{File: "shop.csv", Format: list.CSV, DecimalComma: decimalComma, Sheets: []list.Sheet{sheet}}
}

func TestReadFile(t *testing.T) {
	s := defaultShop(t)
	problems := s.ReadFile(csvSource(true,
		"Our rates 2026", "key;value;unit;basis;note",
		"operating_factor;0,25", "labour_rate;34,50;EUR/h", "Margin pct;12", "overweld_mm;0,02;in",
		"wire_price.ER70S-6.0.8;1,36;EUR/lb", "wire_price.g3si1;2", "cylinder_l.m21;11,5;m3",
		"convexity;5 %", "spatter_min_m.short arc;45;s/m", "stock_wires;G3Si1 1,0 mm", "on_hand_kg.G3Si1.1.0;4,5",
		"# a remark;whatever", "overhead_pct;60;%;common-practice"), "")
	if len(problems) > 0 {
		t.Fatalf("problems: %+v", problems)
	}
	near(t, "operating factor", s.OperatingFactor, 0.25, 0)
	near(t, "labour rate", float64(s.LabourRate), 34.5, 0)
	near(t, "margin", s.MarginPct, 12, 0)
	near(t, "overweld", float64(s.Overweld), 0.508, 1e-12)      // 0.02 x 25.4
	near(t, "convexity", s.Convexity, 0.05, 1e-12)              // 5 % as a share
	near(t, "spatter", s.SpatterMinM["short arc"], 0.75, 1e-12) // 45 s
	w, _ := s.Wire("G3Si1", 0.8)
	near(t, "price from pounds", float64(w.PerKg), 2.9983, 0.0001) // 1.36 / 0.45359237
	w, _ = s.Wire("G3Si1", 0.6)
	near(t, "own class price beats the built-in thin wire", float64(w.PerKg), 2, 0)
	g, _ := s.Gas("M21")
	near(t, "cylinder", float64(g.Cylinder), 11500, 1e-9)
	if len(s.Wires) != 1 || s.Wires[0].OnHandKg != 4.5 {
		t.Errorf("stock: %+v", s.Wires)
	}
	if _, still := s.SpatterMinM["short arc.C1"]; still {
		t.Error("the built-in minutes under carbon dioxide outlive the shop's own for the mode")
	}
	v, _ := s.Value("operating_factor")
	if v.From != "shop file shop.csv" || !v.Own() {
		t.Errorf("provenance: %+v", v)
	}
	if v, _ = s.Value("overhead_pct"); v.Own() || v.From != "shop file shop.csv, as built in" {
		t.Errorf("an untouched starter line counts as the shop's own: %+v", v)
	}
}

// TestFaultsOfAShopFile: every fault is placed, with what was read and what to do.
func TestFaultsOfAShopFile(t *testing.T) {
	tests := []struct {
		line, code, hint string
		comma            bool
	}{
		{"labor_rate,30", "shop-key", "labour_rate", false},
		{"wire_price.G3S1,2", "shop-name", "G3Si1", false},
		{"cylinder_l.M99,11000", "shop-name", "M21", false},
		{"stock_wires,G3Si1 3.7", "shop-name", "0.8", false},
		{"stock_wires,G3Si1", "shop-name", "0.8", false},
		{"machines,welder in the corner", "shop-name", "write one of these", false},
		{"operating_factor,30", "shop-range", "0.3", false},
		{"margin_pct,100", "shop-range", "correct", false},
		{"labour_rate,-1", "shop-range", "correct", false},
		{"labour_rate,thirty", "shop-number", "digits", false},
		{"labour_rate;1.500", "shop-number", "1234", true},
		{"labour_rate;1.500,00", "shop-number", "one decimal sign", true},
		{"labour_rate,1 500", "shop-number", "digits", false},
		{"labour_rate,NaN", "shop-number", "digits", false},
		{"labour_rate,#REF!", "shop-number", "digits", false},
		{"overweld_mm,0.5,kg", "shop-unit", "mm", false},
		{"labour_rate,30,PLN/h", "shop-currency", "one currency", false},
		{"labour_rate,4O,", "shop-number", "the digit 0", false},
		{"labour_rate,30,mm/h", "shop-unit", "EUR/h", false},
		{"wire_price.G3Si1,2.2,EUR/m", "shop-unit", "EUR/kg", false},
		{"size_means,diagonal", "shop-word", "leg or throat", false},
		{"missing_size,whatever", "shop-word", "ask or a rule", false},
		{"currency,12", "shop-word", "letters", false},
	}
	for _, tt := range tests {
		s := defaultShop(t)
		header := "key,value,unit"
		if tt.comma {
			header = "key;value;unit"
		}
		problems := s.ReadFile(csvSource(tt.comma, header, tt.line), "")
		if len(problems) != 1 {
			t.Errorf("%s: %d problems %+v", tt.line, len(problems), problems)
			continue
		}
		p := problems[0]
		cell := "B2"
		if key, _, _ := strings.Cut(tt.line, ","); p.Code == "shop-key" || p.Code == "shop-name" && strings.Contains(key, ".") {
			cell = "A2" // the key is wrong, not its value
		}
		if p.Code != tt.code || p.Level != finding.Error || p.Place.Cell() != cell || !strings.Contains(p.Hint, tt.hint) {
			t.Errorf("%s: got %+v, want %s with a hint %q at %s", tt.line, p, tt.code, tt.hint, cell)
		}
	}
}

// TestGoodLinesAreTaken: a fault on one line does not lose the others.
func TestGoodLinesAreTaken(t *testing.T) {
	s := defaultShop(t)
	problems := s.ReadFile(csvSource(false, "key,value", "nonsense,1", "labour_rate,41", "idle_w,x", "margin_pct,0.15", "labour_rate,42"), "")
	codes := ""
	for _, p := range problems {
		codes += p.Code + " "
	}
	if codes != "shop-twice shop-key shop-number shop-share " || s.LabourRate != 42 {
		t.Errorf("codes %q, rate %v", codes, s.LabourRate)
	}
}

func TestSet(t *testing.T) {
	s := defaultShop(t)
	if p := s.Set([]string{"currency=USD", "labour_rate=$55", "wire_price.G 19 9 L Si.1.0=11,5", "missing_size=0,7 t_min", "operating_factor=25 %"}); len(p) > 0 {
		t.Fatalf("problems: %+v", p)
	}
	w, _ := s.Wire("G 19 9 L Si", 1.0)
	if s.LabourRate != 55 || s.Currency != "USD" || w.PerKg != 11.5 || w.From != "--set" || s.MissingSize != "0.7 t_min" || s.OperatingFactor != 0.25 {
		t.Errorf("got %v %v %+v %v %v", s.LabourRate, s.Currency, w, s.MissingSize, s.OperatingFactor)
	}
	for text, code := range map[string]string{"labour_rate": "shop-set", "labour_rate=": "shop-set", "=5": "shop-key", "labour_rate=1,500": "shop-number"} {
		if p := s.Set([]string{text}); len(p) != 1 || p[0].Code != code {
			t.Errorf("%q: %+v, want %s", text, p, code)
		}
	}
}

// TestStockWithoutPrice: a wire that the shop has but nothing prices is a fault.
func TestStockWithoutPrice(t *testing.T) {
	s := defaultShop(t)
	for i, v := range s.Values {
		if v.Key == "wire_price.G3Si1" {
			s.Values = append(s.Values[:i:i], s.Values[i+1:]...)
		}
	}
	if p := s.Set([]string{"stock_wires=G3Si1 1.2"}); len(p) != 1 || p[0].Code != "shop-no-price" || !strings.Contains(p[0].Hint, "wire_price.G3Si1") {
		t.Errorf("got %+v", p)
	}
}

func TestReadSheet(t *testing.T) {
	s := defaultShop(t)
	sheet := func(name string, cells ...list.Cell) list.Sheet {
		return list.Sheet{Name: name, Rows: []list.Row{
			{Number: 3, Cells: []list.Cell{{Col: 2, Kind: list.Text, Text: "Key"}, {Col: 3, Kind: list.Text, Text: "Value"}}},
			{Number: 4, Cells: cells}}}
	}
	src := &list.Source{File: "frame.xlsx", Format: list.XLSX, Sheets: []list.Sheet{
		sheet("Joints", list.Cell{Col: 2, Kind: list.Text, Text: "idle_w"}, list.Cell{Col: 3, Kind: list.Number, Value: 99}),
		sheet("rates", list.Cell{Col: 2, Kind: list.Text, Text: "waste_pct"}, list.Cell{Col: 3, Kind: list.Number, Value: 0.04, Percent: true, Text: "4%"})}}
	if p := s.ReadSheet(src, ""); len(p) > 0 {
		t.Fatalf("problems %+v", p)
	}
	if v, _ := s.Value("waste_pct"); math.Abs(s.WastePct-4) > 1e-12 || v.From != "workbook sheet rates" || s.IdleW == 99 {
		t.Errorf("got %+v", v)
	}
	src.Sheets[1].Rows = src.Sheets[1].Rows[1:]
	src.Sheets[1].Rows[0].Cells[0].Text = "Smith"
	if p := s.ReadSheet(src, ""); len(p) != 1 || p[0].Level != finding.Note {
		t.Errorf("a foreign sheet named rates: %+v", p)
	}
}

// TestCloneIsApart: lists worked side by side never share a shop.
func TestCloneIsApart(t *testing.T) {
	a := defaultShop(t)
	b := a.Clone()
	b.Set([]string{"labour_rate=99", "spatter_min_m.pulse=3"})
	if v, _ := a.Value("labour_rate"); v.Own() || a.LabourRate == 99 || a.SpatterMinM["pulse"] == 3 {
		t.Error("a clone writes into its origin")
	}
	if len(a.NotYours()) != len(b.NotYours())+2 {
		t.Errorf("not yours: %d and %d", len(a.NotYours()), len(b.NotYours()))
	}
}

// FuzzNumber: no text becomes a figure that is not finite, and none panics.
func FuzzNumber(f *testing.F) {
	for _, seed := range []string{"0,30", "1,500", "1.500,00", "€30/h", "30 %", "-", "1e400", "+-3", "١", " 5 EUR / kg"} {
		f.Add(seed, true)
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, text string, comma bool) {
		num, _, err := readNumber(text, comma)
		if err == nil && (math.IsNaN(num) || math.IsInf(num, 0)) {
			t.Errorf("%q reads as %v", text, num)
		}
	})
}

// FuzzSet: whatever stands behind --set, the shop stays able to price.
func FuzzSet(f *testing.F) {
	for _, seed := range []string{"labour_rate=3", "operating_factor=0", "stock_wires=;", "wire_price.=1", "spatter_min_m..=1", "on_hand_kg.G3Si1.1.0=1"} {
		f.Add(seed)
	}
	base := defaultShop(f)
	f.Fuzz(func(t *testing.T, text string) {
		s := base.Clone()
		s.Set([]string{text})
		got := CostOf(Quantities{Qty: 1, Seam: 1, Seams: 1, Passes: 1, Arc: 1, WireKg: 1, WirePerKg: 1, Gas: 1, GasPerLitre: 1, ArcEnergy: 1, Transfer: "spray"}, &s)
		if got.Labour.Total <= 0 || bad(float64(got.Price)) {
			t.Errorf("%q leaves a shop that cannot price: %+v", text, got)
		}
	})
}

// What is no one number is told as that, not as a unit that does not fit: a fraction, two
// lengths, the name of a gas. Units with figures of their own stay units.
func TestNoOneNumber(t *testing.T) {
	for _, text := range []string{"1/2", "6 m, 12 m", "M21", "G3Si1", "1e99"} {
		if num, unit, err := readNumber(text, false); err == nil {
			t.Errorf("%q: %v %q", text, num, unit)
		}
	}
	for text, want := range map[string]string{"5 ml/100 g": "ml/100 g", "8 EUR/m3": "EUR/m3", "3 ft3": "ft3", "EUR 30": "EUR", "€ 30 /h": "€/h"} {
		if _, unit, err := readNumber(text, false); err != nil || unit != want {
			t.Errorf("%q: %q %v, want %q", text, unit, err, want)
		}
	}
}

// The words of a value out of range read on: a share is a bare figure, and a unit is
// asked for once.
func TestWordsOfAValue(t *testing.T) {
	s := defaultShop(t)
	for setting, want := range map[string]string{
		"operating_factor=30":        "30 is outside what operating_factor can be; expected: 0.02 to 1;",
		"site_factor=yes":            "expected: a plain number;",
		"labour_rate=abc":            "expected: a number in EUR/h;",
		"stock_wires=G3Si1":          "is written without its diameter",
		"stock_wires=G3Si1 3.3":      "is not in the tables with that diameter",
		"wire_price.G3Si1=30 lbs/kg": "write the value in EUR/kg",
		"hydrogen.G3Si1=99":          "expected: 1 to 20 ml/100 g;",
		"missing_size=half":          `--set "missing_size=0.7 t_min"`,
		"labour=3":                   "a name from the first column",
	} {
		problems := s.Set([]string{setting})
		if len(problems) != 1 || !strings.Contains(problems[0].Line(), want) {
			t.Errorf("%s: %v, want %q", setting, problems, want)
		}
	}
}
