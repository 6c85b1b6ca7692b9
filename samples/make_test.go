package samples

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

var update = flag.Bool("update", false, "write the sample workbook anew")

const (
	mezzanineFile = "mezzanine/mezzanine.xlsx"
	jointSheet    = "Weld list"
	paintSheet    = "Paint areas"
	firstRow      = 9 // first row under the units row
)

// TestMakeMezzanine holds the committed workbook to the rows in this package,
// part by part: the packing may change with the compiler, the content may not.
func TestMakeMezzanine(t *testing.T) {
	made := makeMezzanine(t)
	if again := makeMezzanine(t); !bytes.Equal(made, again) {
		t.Fatal("making the workbook twice gave different bytes")
	}
	if *update {
		if err := os.WriteFile(mezzanineFile, made, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	committed, err := os.ReadFile(mezzanineFile)
	if err != nil {
		t.Fatal(err)
	}
	want, got := unpack(t, made), unpack(t, committed)
	for _, name := range sortedKeys(want) {
		if !bytes.Equal(want[name], got[name]) {
			t.Errorf("%s: part %s differs from what the rows give; run go test ./samples -run Make -update", mezzanineFile, name)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%s has %d parts, the rows give %d", mezzanineFile, len(got), len(want))
	}
}

func makeMezzanine(t *testing.T) []byte {
	t.Helper()
	b := &book{File: excelize.NewFile(), t: t, results: map[string]map[string]float64{}}
	defer b.Close()
	b.must(b.SetSheetName("Sheet1", jointSheet))
	_, err := b.NewSheet(paintSheet)
	b.must(err)
	b.must(b.SetDocProps(&excelize.DocProperties{
		Title: "Invented example: mezzanine weld list", Creator: "seamtally samples",
		LastModifiedBy: "seamtally samples", Language: "en-GB",
		Created: "2026-11-12T08:00:00Z", Modified: "2026-11-12T08:00:00Z",
	}))
	s := newStyles(b)
	titleBlock(b, s)
	header(b, s)
	last := jointRows(b, s)
	footer(b, s, last)
	looks(b, last)
	comment(b)
	paintAreas(b, s)
	_, err = b.NewSheet(cutSheet)
	b.must(err)
	cutList(b, s)
	return b.bytes()
}

type column struct {
	name, unit string
	width      float64
}

// columns of the joint sheet, A to Y, in the order a drawing office uses them.
var columns = []column{
	{"Mark", "", 10}, {"Assembly", "", 10}, {"Drawing", "", 9}, {"Qty", "pcs", 6}, {"Joint type", "", 13},
	{"Length", "mm", 8.5}, {"Sides", "", 6.5}, {"Stitch", "mm", 22}, {"Weld size", "mm", 8}, {"t1", "mm", 6.5}, {"t2", "mm", 6.5},
	{"Angle", "°", 7}, {"Gap", "mm", 6.5}, {"Root face", "mm", 7}, {"Backing", "", 9}, {"Material", "", 19},
	{"Position", "", 9}, {"Shop/Site", "", 9}, {"Level", "", 6.5}, {"WPS", "", 8}, {"NDT", "", 8.5},
	{"Line total", "m", 9}, {"Part 1", "", 7}, {"Part 2", "", 7}, {"Remarks", "", 52},
}

func cell(col, row int) string {
	name, err := excelize.CoordinatesToCellName(col, row)
	if err != nil {
		panic(err)
	}
	return name
}

func titleBlock(b *book, s styles) {
	b.set(jointSheet, "A1", "Invented example: storage mezzanine M1 - weld list")
	b.must(b.MergeCell(jointSheet, "A1", "K1"))
	b.must(b.SetCellStyle(jointSheet, "A1", "K1", s.title))
	b.must(b.SetRowHeight(jointSheet, 1, 26))
	pairs := [][2]string{
		{"Project", "Storage mezzanine M1, 12 x 6 m, floor at +3.000, one stair, handrail, machine plinth (no real structure)"},
		{"Drawing", "MZ-10 (general arrangement), details MZ-11 to MZ-41"},
		{"Revision", "B - stair turned, plinth EQ1 added"},
		{"Date", ""},
	}
	for i, p := range pairs {
		b.set(jointSheet, cell(1, 2+i), p[0])
		b.set(jointSheet, cell(2, 2+i), p[1])
		b.must(b.SetCellStyle(jointSheet, cell(1, 2+i), cell(1, 2+i), s.label))
	}
	b.set(jointSheet, "B5", 46338) // 2026-11-12 as a date serial
	b.must(b.SetCellStyle(jointSheet, "B5", "B5", s.date))
}

func header(b *book, s styles) {
	for i, c := range columns {
		b.set(jointSheet, cell(i+1, 7), c.name)
		if c.unit != "" {
			b.set(jointSheet, cell(i+1, 8), c.unit)
		}
	}
	end := len(columns)
	b.must(b.SetCellStyle(jointSheet, "A7", cell(end, 7), s.header))
	b.must(b.SetCellStyle(jointSheet, "A8", cell(end, 8), s.units))
	b.must(b.SetRowHeight(jointSheet, 7, 30))
}

// jointRows writes group, joint, subtotal and total rows and returns the row of
// the total.
func jointRows(b *book, s styles) int {
	at := firstRow
	var subtotals []string
	var total float64
	for _, g := range mezzanine {
		b.set(jointSheet, cell(1, at), g.code+"  "+g.title)
		b.must(b.SetCellStyle(jointSheet, cell(1, at), cell(len(columns), at), s.group))
		first := at + 1
		var sum float64
		for i, r := range g.rows {
			sum += jointRow(b, s, g, r, first+i)
		}
		at = first + len(g.rows)
		subtotalRow(b, s, at, "Subtotal "+g.code, fmt.Sprintf("SUM(V%d:V%d)", first, at-1), sum)
		subtotals = append(subtotals, fmt.Sprintf("V%d", at))
		total += sum
		at += 2
	}
	subtotalRow(b, s, at, "Total", strings.Join(subtotals, "+"), total)
	return at
}

func subtotalRow(b *book, s styles, at int, label, formula string, sum float64) {
	b.set(jointSheet, cell(1, at), label)
	b.formula(1, jointSheet, cell(22, at), formula, sum)
	b.must(b.SetCellStyle(jointSheet, cell(1, at), cell(len(columns), at), s.subtotal))
	b.must(b.SetCellStyle(jointSheet, cell(22, at), cell(22, at), s.subtotalNumber))
}

func jointRow(b *book, s styles, g group, r row, at int) float64 {
	texts := map[int]string{
		1: r.mark, 2: g.code, 3: g.drawing, 5: r.kind, 8: r.stitch, 9: r.size, 15: r.prep.backing,
		16: r.mat, 17: r.pos, 18: r.where, 19: "C", 20: r.wps, 21: r.ndt, 23: joined[r.mark][0], 24: joined[r.mark][1], 25: r.note,
	}
	for col := range columns {
		if text := texts[col+1]; text != "" {
			b.set(jointSheet, cell(col+1, at), text)
		}
	}
	numbers := map[int]float64{10: r.t1, 11: r.t2, 12: r.prep.angle, 13: r.prep.gap, 14: r.prep.face}
	for col, n := range numbers {
		if n != 0 || (r.prep != none && r.prep.angle != 0 && col > 12) {
			b.set(jointSheet, cell(col, at), n)
		}
	}
	b.set(jointSheet, cell(4, at), r.qty)
	b.set(jointSheet, cell(7, at), r.sides)
	length := r.mm()
	if tube, ok := r.length.(ring); ok {
		b.formula(1, jointSheet, cell(6, at), tube.formula(), length)
	} else {
		b.set(jointSheet, cell(6, at), r.length)
	}
	line := float64(r.qty) * length * float64(r.sides) / 1000
	b.formula(1, jointSheet, cell(22, at), fmt.Sprintf("D%d*F%d*G%d/1000", at, at, at), line)
	b.must(b.SetCellStyle(jointSheet, cell(1, at), cell(len(columns), at), s.text))
	b.must(b.SetCellStyle(jointSheet, cell(4, at), cell(4, at), s.number))
	b.must(b.SetCellStyle(jointSheet, cell(6, at), cell(7, at), s.number))
	b.must(b.SetCellStyle(jointSheet, cell(10, at), cell(14, at), s.number))
	b.must(b.SetCellStyle(jointSheet, cell(17, at), cell(19, at), s.centre))
	b.must(b.SetCellStyle(jointSheet, cell(22, at), cell(22, at), s.metres))
	return line
}

// mm is the length of one joint, one side, rounded to whole millimetres as the
// list's own formula rounds it.
func (r row) mm() float64 {
	switch l := r.length.(type) {
	case ring:
		return math.Round(math.Pi * l.dia * l.factor)
	case int:
		return float64(l)
	}
	panic("a length is a number or a ring")
}

func (r ring) formula() string {
	if r.factor == 1 {
		return fmt.Sprintf("ROUND(PI()*%g,0)", r.dia)
	}
	return fmt.Sprintf("ROUND(PI()*%g*%g,0)", r.dia, r.factor)
}

func footer(b *book, s styles, total int) {
	notes := []string{
		"Notes",
		"1. Length is one line on one side; sides and stitches as marked. Line total is qty x length x sides, stitches not taken off.",
		"2. Fillet sizes: z is the leg, a is the throat. Butts full penetration unless s is given.",
		"3. Quality ISO 5817 level C unless marked. Handrail HR1 galvanised after welding; HR1-07 and HR1-08 are closed on site.",
		"4. This list is an invented example. Nothing in it has been designed, checked or built.",
	}
	for i, text := range notes {
		at := cell(1, total+2+i)
		b.set(jointSheet, at, text)
		style := s.note
		if i == 0 {
			style = s.label
		}
		b.must(b.SetCellStyle(jointSheet, at, at, style))
	}
	b.set(jointSheet, cell(1, total+8), "Drawn: ____________________     Checked: ____________________     Released: ____________________")
}
