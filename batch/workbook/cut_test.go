package workbook

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/tables"
)

// besideCut returns what stands beside the part in the i-th row of the parts, by the
// keys of our columns: values and formulas.
func besideCut(t *testing.T, f *excelize.File, sheet string, header, row int, us bool) (values, formulas map[string]string) {
	t.Helper()
	values, formulas = map[string]string{}, map[string]string{}
	keys := map[string]string{}
	for _, c := range cutColumns(true) {
		keys[c.title(us)] = c.key
	}
	rows, err := f.GetRows(sheet)
	must(t, err)
	for c, head := range rows[header-1] {
		key := keys[head]
		if key == "" || c < 6 { // the user's own columns
			continue
		}
		cell := cellOf(t, c+1, row)
		values[key], err = f.GetCellValue(sheet, cell)
		must(t, err)
		formulas[key], err = f.GetCellFormula(sheet, cell)
		must(t, err)
	}
	return values, formulas
}

// What follows for a part stands beside its row, live where it follows from cells.
func TestBesideTheRowsOfTheCutList(t *testing.T) {
	for _, opts := range []price.Options{{}, {US: true}, {ValuesOnly: true}} {
		src, job := cutJob(t, twoLists(t), opts)
		data := build(t, src, job, Options{US: opts.US, ValuesOnly: opts.ValuesOnly})
		sameParts(t, "two lists", src.Data, data)
		sameCells(t, "two lists", src, data, nil)
		f := opened(t, data)
		for i := range job.Parts.List.Parts {
			p, r := &job.Parts.List.Parts[i], &job.Parts.Results[i]
			got, live := besideCut(t, f, "Cut list", 2, p.Place.Row, opts.US)
			shrink := [2]float64{}
			if r.Shrink != nil {
				shrink = [2]float64{float64(r.Shrink[0]), float64(r.Shrink[1])}
			}
			for key, want := range map[string]float64{"length_mm": mm.show(float64(p.Length), opts.US), "qty": float64(p.Qty),
				"mass_kg": kilo.show(float64(r.Mass), opts.US), "mass_each_kg": kilo.show(r.KgM*float64(p.Length)/1000, opts.US), "kg_m": kiloM.show(r.KgM, opts.US),
				"paint_m2": square.show(r.Paint, opts.US), "seam_m": metre.show(float64(r.Seam), opts.US), "weld_kg": kilo.show(float64(r.WeldMetal), opts.US),
				"bevel_m": metre.show(float64(r.Bevel), opts.US), "shrink_low_mm": mm.show(shrink[0], opts.US), "shrink_high_mm": mm.show(shrink[1], opts.US)} {
				if n, _ := strconv.ParseFloat(got[key], 64); math.Abs(n-want) > 1e-9*want {
					t.Errorf("%s: %s is %q, want %v", p.Mark, key, got[key], want)
				}
				typed := key == "kg_m" || key == "length_mm" && p.Mark == "P3" // "480 mm" is a text
				known := want > 0 || r.Shrink != nil && strings.HasPrefix(key, "shrink")
				if formula := live[key] != ""; formula != (known && !typed && !opts.ValuesOnly) {
					t.Errorf("%s: the formula of %s is %q", p.Mark, key, live[key])
				}
			}
			for key, want := range map[string]string{"part": p.Mark, "section": p.Section.Designation, "fits": "fits", "earliest_assembly": r.Earliest, "strip": r.Strip} {
				if got[key] != want {
					t.Errorf("%s: %s is %q, want %q", p.Mark, key, got[key], want)
				}
			}
		}
		if got, _ := besideCut(t, f, "Cut list", 2, 7, false); got["bevels"] != "30°, face 2 mm" && !opts.US {
			t.Errorf("P4 is to be bevelled to %q", got["bevels"])
		}
	}
}

// A longer or shorter seam, a larger leg and another quantity move the shrinkage beside
// the parts to what the tool says of the changed list, without another run.
func TestShrinkageFollowsTheJoints(t *testing.T) {
	t.Parallel()
	changes := []map[string]float64{{"Joints!F2": 90}, {"Joints!F2": 900}, {"Joints!C2": 7}, {"Joints!G2": 3}, {"Joints!F3": 200}}
	var books [][]byte
	for _, change := range changes {
		src, job := cutJob(t, twoLists(t), price.Options{})
		books = append(books, withNumbers(t, build(t, src, job, Options{}), change))
	}
	for b, theirs := range recalculated(t, books...) {
		f := opened(t, theirs)
		_, want := cutJob(t, withNumbers(t, twoLists(t), changes[b]), price.Options{})
		for i := range want.Parts.List.Parts {
			got, _ := besideCut(t, f, "Cut list", 2, want.Parts.List.Parts[i].Place.Row, false)
			for k, key := range []string{"shrink_low_mm", "shrink_high_mm"} {
				r := &want.Parts.Results[i]
				n, _ := strconv.ParseFloat(got[key], 64)
				if r.Shrink == nil != (got[key] == "") || r.Shrink != nil && math.Abs(n-float64(r.Shrink[k])) > 0.0101 {
					t.Errorf("%v, %s: %s is %q, the tool says %v", changes[b], want.Parts.List.Parts[i].Mark, key, got[key], r.Shrink)
				}
			}
		}
	}
}

// Every cell, format, width and name of the user's is as before on both sheets.
func TestTheUsersTwoSheetsAreKept(t *testing.T) {
	f := opened(t, twoLists(t))
	style, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true, Family: "Arial", Size: 9}, NumFmt: 2})
	must(t, err)
	landscape, fit := "portrait", 1
	for sheet, area := range map[string]string{"Joints": "$A$1:$F$4", "Cut list": "$A$2:$E$8"} {
		must(t, f.SetCellStyle(sheet, "A2", "D5", style))
		must(t, f.SetColWidth(sheet, "A", "XFD", 10))
		must(t, f.AddComment(sheet, excelize.Comment{Cell: "B3", Author: "invented", Text: "look here"}))
		must(t, f.SetPanes(sheet, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}))
		must(t, f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &fit}))
		must(t, f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: sheet, RefersTo: "'" + sheet + "'!" + area}))
		rule, err := f.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Color: "112233"}})
		must(t, err)
		must(t, f.SetConditionalFormat(sheet, "B3:B6", []excelize.ConditionalFormatOptions{{Type: "cell", Criteria: ">", Value: "7", Format: &rule}}))
	}
	must(t, f.SetCellFormula("Cut list", "H3", "SUM('Cut list'!E4:E8)"))
	src, job := cutJob(t, written(t, f), price.Options{})
	in, out := filepath.Join(t.TempDir(), "in.xlsx"), filepath.Join(t.TempDir(), "out.xlsx")
	must(t, os.WriteFile(in, src.Data, 0o644))
	must(t, os.WriteFile(out, build(t, src, job, Options{}), 0o644))
	sameByAnotherProgram(t, in, out)
	newlyInvalid(t, in, out)
}

// What this tool wrote beside two lists is taken away and made anew: nothing grows,
// nothing is lost.
func TestTwoListsRunAgain(t *testing.T) {
	src, job := cutJob(t, twoLists(t), price.Options{})
	out := build(t, src, job, Options{})
	marked := names(t, out)
	var second []byte
	for run := 2; run <= 4; run++ {
		again, _, err := list.Read("frame.xlsx", out)
		must(t, err)
		bare, problems := Undress(again)
		if len(problems) > 0 {
			t.Fatalf("run %d: %+v", run, problems)
		}
		sameCells(t, "undressed", src, bare.Data, nil)
		for i := range src.Sheets {
			if a, b := fmt.Sprint(src.Sheets[i].Rows), fmt.Sprint(bare.Sheets[i].Rows); a != b {
				t.Errorf("run %d: the rows of %s were\n%s\nare\n%s", run, src.Sheets[i].Name, a, b)
			}
		}
		_, anew := cutJob(t, bare.Data, price.Options{})
		anew.List.SHA256, anew.Parts.List.SHA256, bare.SHA256 = src.SHA256, src.SHA256, src.SHA256 // it stands on two sheets
		out = build(t, bare, anew, Options{})
		sameCells(t, "run again", src, out, nil)
		if got := names(t, out); got != marked {
			t.Errorf("run %d: sheets and names were\n%s\nare\n%s", run, marked, got)
		}
		if second == nil {
			second = out
		} else if !bytes.Equal(out, second) {
			t.Errorf("run %d differs from run 2 in %v", run, differing(t, second, out))
		}
	}
}

// A yellow cell beside a part that a person changed is taken, and told.
func TestATypedLengthBesideAPartIsTaken(t *testing.T) {
	src, job := cutJob(t, twoLists(t), price.Options{})
	f := opened(t, build(t, src, job, Options{}))
	row, cell := job.Parts.List.Parts[2].Place.Row, ""
	rows, err := f.GetRows("Cut list")
	must(t, err)
	for c, head := range rows[1] {
		if head == "Length mm" {
			cell = cellOf(t, c+1, row)
		}
	}
	must(t, f.SetCellValue("Cut list", cell, 500))
	again, _, err := list.Read("frame.xlsx", written(t, f))
	must(t, err)
	if _, problems := Undress(again); len(problems) != 0 {
		t.Errorf("undressing has to say %+v", problems)
	}
	told := TakeTypedParts(again, &job.Parts.List)
	if len(told) != 1 || told[0].Place.Cell() != cell || told[0].Place.Sheet != "Cut list" || told[0].Code != TypedBeside || job.Parts.List.Parts[2].Length != 500 {
		t.Errorf("told %+v; the part is %v long", told, job.Parts.List.Parts[2].Length)
	}
}

// withPart changes one part of a package.
func withPart(t *testing.T, data []byte, part string, change func([]byte) []byte) []byte {
	t.Helper()
	bodies := partsOf(t, data)
	bodies[part] = change(bodies[part])
	return zipped(t, data, bodies)
}

func testTables(t *testing.T) *tables.Set {
	t.Helper()
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	return set
}

// A sheet of parts that cannot be added to is left alone, and that is told; the
// joints are annotated, and the parts stand on our own sheet.
func TestAStrangeCutListIsLeftAlone(t *testing.T) {
	data := withPart(t, twoLists(t), "xl/worksheets/sheet2.xml", func(body []byte) []byte {
		return bytes.Replace(body, []byte("<sheetData>"), []byte(`<sheetData><!-- --><x/>`), 1)
	})
	src, job := cutJob(t, twoLists(t), price.Options{})
	src.Data = data
	book, err := Prepare(src, job, Options{})
	must(t, err)
	if len(book.Problems) != 1 || book.Problems[0].Code != "cut-list-not-annotated" || book.Problems[0].Place.Sheet != "Cut list" || !book.Annotated {
		t.Fatalf("annotated %v, problems %+v", book.Annotated, book.Problems)
	}
	out := bytesOf(t, book)
	if before, now := partsOf(t, data)["xl/worksheets/sheet2.xml"], partsOf(t, out)["xl/worksheets/sheet2.xml"]; !bytes.Equal(before, now) {
		t.Error("the sheet of parts was changed")
	}
	if all := names(t, out); !strings.Contains(all, "seamtally_columns") || strings.Contains(all, "seamtally_cut_columns") || !strings.Contains(all, "Parts") {
		t.Errorf("names: %s", all)
	}
}

// A cut list from another file has no rows to stand beside.
func TestACutListOfAnotherFile(t *testing.T) {
	src, job := cutJob(t, twoLists(t), price.Options{})
	csv, _, err := list.Read("cut.csv", []byte("Part,Section,Length mm,Qty\nP1,SHS 80x80x5,1200,4\nP2,FL 100x10,250,4\n"))
	must(t, err)
	cut, err := parts.NewReader(testTables(t)).Understand(csv, parts.Options{})
	must(t, err)
	job.Parts, _ = parts.Work(cut, job.Plans, testTables(t), &job.Shop)
	f := opened(t, build(t, src, job, Options{}))
	if mass, _ := f.GetCellFormula("Parts", "H5"); !strings.HasPrefix(mass, "ROUND(G5*") {
		t.Errorf("the mass is %q", mass)
	}
	if rows, _ := f.GetRows("Cut list"); len(rows[1]) != 5 {
		t.Errorf("beside the sheet that is not the cut list stands %v", rows[1])
	}
}

// A cut list in a workbook of its own is given back beside its own rows, with the
// welds of the joints that stand elsewhere as values.
func TestAWorkbookOfPartsAlone(t *testing.T) {
	t.Parallel()
	src, job := cutJob(t, twoLists(t), price.Options{})
	f := opened(t, src.Data)
	must(t, f.DeleteSheet("Joints"))
	other, _, err := list.Read("parts.xlsx", written(t, f))
	must(t, err)
	cut, err := parts.NewReader(testTables(t)).Understand(other, parts.Options{})
	must(t, err)
	job.Parts, _ = parts.Work(cut, job.Plans, testTables(t), &job.Shop)
	book, problem, err := PrepareCut(other, job, Options{})
	must(t, err)
	if problem != nil {
		t.Fatalf("%+v", problem)
	}
	data := bytesOf(t, book)
	sameFigures(t, data)
	sameCells(t, "parts", other, data, nil)
	out := opened(t, data)
	if got, want := fmt.Sprint(out.GetSheetList()), "[Cut list Parts Bars Checks Rates Basis]"; got != want {
		t.Errorf("sheets %s, want %s", got, want)
	}
	for i := range job.Parts.List.Parts {
		p, r := &job.Parts.List.Parts[i], &job.Parts.Results[i]
		got, live := besideCut(t, out, "Cut list", 2, p.Place.Row, false)
		if n, _ := strconv.ParseFloat(got["weld_kg"], 64); n != float64(r.WeldMetal) || live["weld_kg"] != "" {
			t.Errorf("%s: %s kg of weld metal by %q, want %v", p.Mark, got["weld_kg"], live["weld_kg"], r.WeldMetal)
		}
		if got["joints"] == "" != (len(r.Joints) == 0) {
			t.Errorf("%s: joints %q of %v", p.Mark, got["joints"], r.Joints)
		}
	}
	if ours, unchanged := Stamped(data); !ours || !unchanged {
		t.Error("it is not stamped")
	}
}
