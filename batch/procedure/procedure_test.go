package procedure

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/tables"
)

func world(t testing.TB) *tables.Set {
	t.Helper()
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func readText(t testing.TB, set *Reader, text string, opt Options) ([]Row, []finding.Problem) {
	t.Helper()
	src, _, err := list.Read("shop.csv", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	rows, _, problems := set.Read(src, opt)
	return rows, problems
}

const head = "WPS No,Process,Wire,Gas,Positions,Thickness (mm),Current (A),Voltage (V),Travel (mm/min),Heat input (kJ/mm),Preheat (°C)\n"

// TestOneSheetInManyWritings: the same procedure however it is written.
func TestOneSheetInManyWritings(t *testing.T) {
	set := NewReader(world(t))
	want := tables.Procedure{Number: "SP-7", Process: "135", Filler: "G3Si1", Dia: 1.2, Gas: "M21", Positions: "PA PB", TLow: 6, THigh: 20,
		CurrentLow: 220, CurrentHigh: 260, VoltageLow: 26, VoltageHigh: 29, TravelLow: 300, TravelHigh: 600, HeatHigh: 1.8, Preheat: 80}
	for name, text := range map[string]string{
		"ranges in one column": head + `SP-7,135,G3Si1 1.2,M21,"PA, PB",6-20,220-260,26-29,300-600,up to 1.8,80`,
		"words and signs":      head + `SP-7,135,ER70S-6 0.045",80/20,1F; 2F,6 to 20,220 … 260,26 – 29,30-60 cm/min,≤ 18 kJ/cm,176 °F`,
		"spread":               head + `SP-7,135,SG2 1.2,M21,PA/PB,6..20,240 ± 20 A,27.5 ± 1.5,450±150,max. 1.8,min. 80` + "\n",
		"two columns": "Number,Process,Wire,Wire dia. (mm),Shielding gas,Pos.,t min,t max,A min,A max,V min,V max,Speed min (mm/min),Speed max (mm/min),Heat input max (kJ/mm),Preheat min\n" +
			"SP-7,135,G3Si1,1.2,M21,PA PB,6,20,220,260,26,29,300,600,1.8,80",
		"title, two header lines, units": "Invented shop\n\nWPS,Process,Wire,Wire size,Gas,Position,Thickness,,Current,,Voltage,,Travel speed,,Heat input,Preheat\n" +
			",,,,,,from,to,from,to,from,to,from,to,max,\n,,,mm,,,mm,mm,A,A,V,V,cm/min,cm/min,kJ/mm,°C\n" +
			"# SP-6,135,G3Si1,1.2,M21,PA,1,2,1,2,1,2,1,2,1,\n" +
			"SP-7,135,G3Si1,1.2,M21,PA + PB,6,20,220,260,26,29,30,60,1.8,80",
		"decimal comma": "WPS;Prozess;Draht;Durchmesser;Schutzgas;Position;Dicke;Strom;Spannung;Vorschub (cm/min);Wärmeeinbringung;Vorwärmen\n" +
			"SP-7;135;G3Si1;1,2;M21;PA, PB;6-20;220-260;26-29;30-60;bis 1,8;80",
		"inches": "WPS,Process,Wire,Wire size (in),Gas,Position,Thickness (in),Amps,Volts,Travel (in/min),Heat input (kJ/in),Preheat (°F)\n" +
			"SP-7,135,ER70S-6,0.045,M21,1F 2F,0.23622-0.7874,220-260,26-29,11.81103-23.62205,up to 45.72,176",
	} {
		rows, problems := readText(t, set, text, Options{From: "x"})
		if len(problems) > 0 || len(rows) != 1 {
			t.Errorf("%s: %d rows, %+v", name, len(rows), problems)
			continue
		}
		got := rows[0].Procedure
		if got.Basis != "shop" || !strings.HasPrefix(got.Source, "x, line ") {
			t.Errorf("%s: basis %q, source %q", name, got.Basis, got.Source)
		}
		got.Origin = tables.Origin{}
		got.TLow, got.THigh = rounded(got.TLow), rounded(got.THigh)
		got.TravelLow, got.TravelHigh = rounded(got.TravelLow), rounded(got.TravelHigh)
		got.HeatHigh, got.Preheat = rounded(got.HeatHigh), rounded(got.Preheat)
		if got != want {
			t.Errorf("%s:\n got %+v\nwant %+v", name, got, want)
		}
	}
}

func rounded[T ~float64](v T) T { return T(float64(int(float64(v)*1000+0.5)) / 1000) }

// TestMistakesAreToldWithTheirCell: each with the column it stands in, and all of
// a sheet in one pass.
func TestMistakesAreToldWithTheirCell(t *testing.T) {
	set := NewReader(world(t))
	good := []string{"SP-7", "135", "G3Si1 1.2", "M21", "PA", "6-20", "220-260", "26-29", "300-600", "up to 1.8", "80"}
	cases := []struct {
		at               int
		text, code, says string
	}{
		{0, "", "procedure-number", "no number"},
		{1, "999", "procedure-process", "not understood"},
		{1, "111", "procedure-process", "not a wire process"},
		{1, "131", "procedure-process", "is not process 131"},
		{2, "G3Si9 1.2", "procedure-wire", "not in the table of wires"},
		{3, "M99", "procedure-gas", "not in the table of gases"},
		{3, "I1", "procedure-gas", "not welded under I1"},
		{4, "PX", "procedure-position", "not known"},
		{4, `"PA, QQ"`, "procedure-position", `"QQ"`},
		{5, "20-6", "procedure-range", "runs from 20 to 6"},
		{6, "260-220", "procedure-range", "runs from 260 to 220"},
		{6, "240", "procedure-figure", "one figure and no range"},
		{6, "many", "procedure-figure", "not a number"},
		{6, "220-260 V", "procedure-unit", "does not fit current"},
		{7, "2.6-2.9", "procedure-figure", "is not usual"},
		{8, "30-60 kg", "procedure-unit", "does not fit travel speed"},
		{9, "up to 0", "procedure-figure", "is not usual"},
		{9, "2-1", "procedure-range", "runs from 2 to 1"},
		{10, "warm", "procedure-figure", "not a number"},
	}
	sheet := head
	for i, c := range cases {
		row := append([]string(nil), good...)
		row[0] += strings.Repeat("i", i)
		row[c.at] = c.text
		line := strings.Join(row, ",") + "\n"
		sheet += line
		_, problems := readText(t, set, head+line, Options{})
		if len(problems) != 1 {
			t.Errorf("%q: %d problems %+v", c.text, len(problems), problems)
			continue
		}
		p := problems[0]
		if p.Code != c.code || !strings.Contains(p.Text, c.says) || p.Place.Row != 2 || p.Place.Col != c.at+1 || p.Place.Header == "" || p.Hint == "" || p.Level != finding.Error {
			t.Errorf("%q: %+v", c.text, p)
		}
	}
	if rows, problems := readText(t, set, sheet+"Z-"+strings.Join(good, ",")+"\n", Options{}); len(problems) != len(cases) || len(rows) != len(cases)+1 {
		t.Errorf("together: %d problems of %d, %d rows", len(problems), len(cases), len(rows))
		for _, p := range problems {
			t.Log(p.Line())
		}
	}
}

func TestPositions(t *testing.T) {
	set := NewReader(world(t))
	for text, want := range map[string]string{
		"PA": "PA", `"PA, PB"`: "PA PB", "PA;PB": "PA PB", "PA PB": "PA PB", "1F/2F/3F": "PA PB PF", "1G and 2G": "PA PC", "4F": "PD", "4G": "PE",
		"all": "", "": "", "All positions": "", "flat": "PA", "vertical up": "PF", "horizontal": "PB PC", `"flat, vertical down"`: "PA PG",
		"all except PG": "PA PB PC PD PE PF PH PJ PK", "3G down": "PG",
	} {
		rows, problems := readText(t, set, head+"S,135,G3Si1 1.2,M21,"+text+",,220-260,,,,\n", Options{})
		if len(problems) > 0 || len(rows) != 1 || rows[0].Positions != want {
			t.Errorf("%q: %+v %+v, want %q", text, rows, problems, want)
		}
	}
}

// TestTwice: both places are told, whatever the source.
func TestTwice(t *testing.T) {
	set := NewReader(world(t))
	a, _ := readText(t, set, head+"S-1,135,,,,,220-260,,,,\nS-2,135,,,,,220-260,,,,\n", Options{})
	b, _ := readText(t, set, "Invented\n"+head+"s- 2,135,,,,,220-260,,,,\n", Options{})
	if c, _ := readText(t, set, head+"S-1.1,135,,,,,220-260,,,,\nS-11,135,,,,,220-260,,,,\n", Options{}); len(c) == 2 {
		if out, problems := Join(c); len(out) != 2 || len(problems) > 0 {
			t.Errorf("S-1.1 and S-11 are two: %+v %+v", out, problems)
		}
	}
	out, problems := Join(a, b)
	if len(out) != 2 || len(problems) != 1 || !strings.Contains(problems[0].Line(), "A3 (WPS No)") {
		t.Errorf("%+v %+v", out, problems)
	}
}

// TestOtherSheetsAreLeftAlone: neither a joint list nor shop values are procedures.
func TestOtherSheetsAreLeftAlone(t *testing.T) {
	set := NewReader(world(t))
	for _, text := range []string{
		"key,value,unit\nlabour_rate,40,EUR/h\n",
		"Mark,WPS,Length mm,Leg mm,Process,Wire,Gas,Position,Current\nW1,S,100,5,135,G3Si1,M21,PA,200\n",
	} {
		if rows, problems := readText(t, set, text, Options{}); rows != nil || problems != nil {
			t.Errorf("%q: %+v %+v", text, rows, problems)
		}
	}
}

// FuzzRead: whatever stands in a sheet, every procedure that is taken can be
// planned in, and nothing panics.
func FuzzRead(f *testing.F) {
	set := NewReader(world(f))
	for _, s := range []string{head + `SP-7,135,G3Si1 1.2,M21,"PA, PB",6-20,220-260,26-29,300-600,up to 1.8,80`,
		"WPS;A min;A max;V\n;;mm\nx;1/2-3;±;<\n", "no,a,v\n1,1 1/2-2,220±10%\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		src, _, err := list.Read("shop.csv", data)
		if err != nil {
			return
		}
		rows, _, problems := set.Read(src, Options{Always: true})
		for _, p := range problems {
			if p.Text == "" || p.Hint == "" {
				t.Errorf("says nothing: %+v", p)
			}
		}
		for _, r := range rows {
			if r.Wrong {
				continue
			}
			for _, v := range [][2]float64{{float64(r.TLow), float64(r.THigh)}, {float64(r.CurrentLow), float64(r.CurrentHigh)},
				{float64(r.VoltageLow), float64(r.VoltageHigh)}, {float64(r.TravelLow), float64(r.TravelHigh)}, {float64(r.HeatLow), float64(r.HeatHigh)}} {
				if !(v[0] >= 0 && v[1] >= 0 && (v[1] == 0 || v[0] <= v[1]*(1+1e-9)) && v[1] < 1e6) {
					t.Errorf("range %v of %+v", v, r.Procedure)
				}
			}
		}
	})
}

// TestArcEnergyIsNoHeatInput: figures without the thermal efficiency are put to it:
// 2 kJ/mm of arc energy are 1.6 kJ/mm of heat with the k of 0.8 of EN 1011-1.
func TestArcEnergyIsNoHeatInput(t *testing.T) {
	set := NewReader(world(t))
	for _, c := range []struct {
		header string
		opt    Options
		want   float64
		notes  int
	}{
		{"Heat input (kJ/mm)", Options{}, 2, 0},
		{"Heat input (kJ/mm)", Options{ArcEnergy: true}, 1.6, 1},
		{"Arc energy (kJ/mm)", Options{}, 1.6, 1},
		{"Arc energy max (kJ/mm)", Options{ArcEnergy: true}, 1.6, 1},
	} {
		cell := "up to 2"
		if strings.Contains(c.header, "max") {
			cell = "2"
		}
		rows, problems := readText(t, set, "WPS,Process,Wire,Amps,"+c.header+"\nS,135,G3Si1 1.2,200-240,"+cell+"\n", c.opt)
		if len(rows) != 1 || rows[0].Wrong || len(problems) != c.notes || float64(rows[0].HeatHigh) < c.want-1e-9 || float64(rows[0].HeatHigh) > c.want+1e-9 {
			t.Errorf("%s %+v: %+v %+v", c.header, c.opt, rows, problems)
		}
	}
	_, problems := readText(t, set, "WPS,Process,Wire,Amps,Heat input,Arc energy\nS,135,G3Si1 1.2,200-240,up to 1,up to 2\n", Options{})
	if len(problems) == 0 || problems[0].Code != "procedure-range-twice" {
		t.Errorf("%+v", problems)
	}
}

// TestUnknownColumnsAreTold: a limit under a heading that is not understood is a
// warning, another column of figures a note, one of words nothing.
func TestUnknownColumnsAreTold(t *testing.T) {
	set := NewReader(world(t))
	rows, problems := readText(t, set, "WPS,Process,Wire,Amps,IPM min,IPM max,Feed max,Interval,Welder\nS,135,G3Si1 1.2,200-240,10,20,9,12,X. Y.\n", Options{})
	if len(rows) != 1 || rows[0].TravelLow != 254 || rows[0].TravelHigh != 508 {
		t.Errorf("%+v", rows)
	}
	if len(problems) != 2 || problems[0].Level != finding.Warning || problems[0].Place.Cell() != "G1" || problems[1].Level != finding.Note || problems[1].Place.Cell() != "H1" {
		t.Errorf("%+v", problems)
	}
}

// TestCellsThatASpreadsheetChanged: what was typed as a range and became a date, a
// percentage or an error is refused with its cell; typed figures are taken whole,
// and a header merged over two columns stands above both.
func TestCellsThatASpreadsheetChanged(t *testing.T) {
	set := NewReader(world(t))
	text := func(col int, s string) list.Cell { return list.Cell{Col: col, Kind: list.Text, Text: s} }
	src := &list.Source{File: "shop.xlsx", Format: list.XLSX, Sheets: []list.Sheet{
		{Name: "Shop", Rows: []list.Row{{Number: 1, Cells: []list.Cell{text(1, "key"), text(2, "value")}}}},
		{Name: "PROCEDURES ", Merges: []list.Merge{{FirstRow: 3, FirstCol: 5, LastRow: 3, LastCol: 6}}, Rows: []list.Row{
			{Number: 1, Cells: []list.Cell{text(1, "Invented shop, 2026")}},
			{Number: 3, Cells: []list.Cell{text(1, "WPS"), text(2, "Wire"), text(3, "Thickness mm"), text(4, "Volts"), text(5, "Current (A)")}},
			{Number: 4, Cells: []list.Cell{text(5, "min"), text(6, "max")}},
			{Number: 6, Cells: []list.Cell{{Col: 1, Kind: list.Number, Text: "7", Value: 7}, text(2, "G3Si1"), {Col: 3, Kind: list.Date, Text: "8 Dec"}, {Col: 4, Kind: list.CellError, Text: "#REF!"},
				{Col: 5, Kind: list.Number, Text: "2", Value: 2.2, Percent: true}, {Col: 6, Kind: list.NoValue}}},
			{Number: 7, Cells: []list.Cell{text(1, "P-8"), {Col: 5, Kind: list.Number, Text: "220", Value: 220.4}, {Col: 6, Kind: list.Number, Text: "260", Value: 260.4, Formula: true}}},
		}}}}
	rows, found, problems := set.Read(src, Options{From: "shop file shop.xlsx"})
	if !found || len(rows) != 2 || !rows[0].Wrong || rows[0].Number != "7" || rows[1].CurrentLow != 220.4 || rows[1].CurrentHigh != 260.4 || rows[1].Source != "shop file shop.xlsx, sheet PROCEDURES , row 7" {
		t.Fatalf("%v %+v %+v", found, rows, problems)
	}
	var cells []string
	for _, p := range problems {
		cells = append(cells, p.Place.Cell())
	}
	if got := strings.Join(cells, " "); got != "C6 E6 F6 D6" {
		t.Errorf("problems in %s: %+v", got, problems)
	}
}

// What is wrong with a figure of a range is answered with a range, and ends that are
// swapped are told even where the figures themselves are unusual.
func TestHintsOfARange(t *testing.T) {
	if got := bothEnds("write 1234 if thousands were meant", "thickness"); !strings.Contains(got, "such as 3-12") || strings.Contains(got, "1234") {
		t.Error(got)
	}
	_, problems := readText(t, NewReader(world(t)), head+"SP-7,135,G3Si1 1.2,M21,PA,6-20,220-260,26-29,9-1,up to 1.8,80\n", Options{})
	if len(problems) != 2 || !strings.Contains(problems[0].Text+problems[1].Text, "runs from 9 to 1") {
		t.Errorf("%+v", problems)
	}
}
