package main

import (
	"encoding/csv"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/xuri/excelize/v2"
)

// makeWorkbook writes a workbook from CSV texts, figures as numbers:
// "workbook shop.xlsx Shop=values.csv Procedures=procedures.csv".
func makeWorkbook(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: workbook FILE SHEET=TEXT...")
	}
	f := excelize.NewFile()
	defer f.Close()
	for i, arg := range args[1:] {
		name, text, _ := strings.Cut(arg, "=")
		if i == 0 {
			ts.Check(f.SetSheetName("Sheet1", name))
		} else {
			_, err := f.NewSheet(name)
			ts.Check(err)
		}
		r := csv.NewReader(strings.NewReader(ts.ReadFile(text)))
		r.FieldsPerRecord = -1
		records, err := r.ReadAll()
		ts.Check(err)
		for row, record := range records {
			for col, value := range record {
				cell, err := excelize.CoordinatesToCellName(col+1, row+1)
				ts.Check(err)
				if v, err := strconv.ParseFloat(value, 64); err == nil {
					ts.Check(f.SetCellValue(name, cell, v))
				} else if value != "" {
					ts.Check(f.SetCellValue(name, cell, value))
				}
			}
		}
	}
	ts.Check(f.SaveAs(ts.MkAbs(args[0])))
}

// cellOf wants a text in a cell: "cellof a.xlsx Rates B2 30".
func cellOf(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 4 {
		ts.Fatalf("usage: cellof FILE SHEET CELL TEXT")
	}
	f, err := excelize.OpenFile(ts.MkAbs(args[0]))
	ts.Check(err)
	defer f.Close()
	text, err := f.GetCellValue(args[1], args[2])
	ts.Check(err)
	if (text == args[3]) == neg {
		ts.Fatalf("%s!%s is %q", args[1], args[2], text)
	}
}

// changeRate writes a number beside a key, as a person would, and saves with
// another program: "rate a.xlsx Rates labour_rate 60".
func changeRate(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: rate FILE SHEET KEY NUMBER")
	}
	f, err := excelize.OpenFile(ts.MkAbs(args[0]))
	ts.Check(err)
	defer f.Close()
	rows, err := f.GetRows(args[1])
	ts.Check(err)
	v, err := strconv.ParseFloat(args[3], 64)
	ts.Check(err)
	for i, row := range rows {
		if len(row) > 0 && row[0] == args[2] {
			ts.Check(f.SetCellValue(args[1], "B"+strconv.Itoa(i+1), v))
			ts.Check(f.Save())
			return
		}
	}
	ts.Fatalf("%s has no %s", args[1], args[2])
}

// samePrices wants the same prices in two results files, and some at all.
func samePrices(ts *testscript.TestScript, neg bool, args []string) {
	a, b := prices(ts, args[0]), prices(ts, args[1])
	if a == "" || (a == b) == neg {
		ts.Fatalf("prices of %s: %s; of %s: %s", args[0], a, args[1], b)
	}
}

func prices(ts *testscript.TestScript, file string) (all string) {
	records, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(ts.ReadFile(file), "\ufeff"))).ReadAll()
	ts.Check(err)
	for col, head := range records[0] {
		for _, record := range records[1:] {
			if head == "price" && record[col] != "" {
				all += record[col] + ";"
			}
		}
	}
	return all
}
