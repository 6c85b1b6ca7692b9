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
