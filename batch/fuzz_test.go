package batch

import (
	"bytes"
	"context"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/report"
)

// FuzzList takes any text for a list and works it whole, to the results file and the
// document: it is refused in a sentence, or every row is a joint or has a fate, no
// figure is infinite, and no text of the list has become a formula.
func FuzzList(f *testing.F) {
	for _, s := range []string{goodList,
		"Mark;Kind;Length;Size;t1;t2;Position;Qty\nA;single V;1,25 m;;12;12;PA;2\nB;fillet;4'-6\";1/4\";1/4;3/8;3F;1\n",
		"№ шва;Длина;Катет;Толщина;Сталь\n1;500;6;8;09Г2С\n2;0,5 м;К5;6;\n",
		"Mark,Length,Stitch,Leg,t1,Material,Process\n=1+2,1e308,50-150,z6,8,304L,136\n007,∞,5x50(100),a4,0.5,6061,spray\n",
		"Mark\tPart1\tLength\tSize\tt1\n+x\tSHS 60x60x4\tall round\ta3\t\nTotal\t\t500\t\t\n",
	} {
		f.Add(s)
	}
	job := Job{Version: "test", Looks: price.Options{Date: "2026-03-01", Paper: "a4", Lang: "en", Codes: "iso", Symbols: "iso"}}
	tools, err := job.tools()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1000 || strings.Count(text, "\n") > 12 {
			return // a list of a few rows is worked a thousand times sooner
		}
		src, problems, err := list.Read("list.csv", []byte(text))
		if err != nil {
			return // package list has its own
		}
		shop, shopProblems, err := tools.shopOf(src, &job)
		if err != nil {
			return
		}
		worked, err := job.plan(context.Background(), tools, "list.csv", src, shop, said{file: problems, shop: shopProblems})
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\x1b") {
				t.Errorf("no sentence: %q", err)
			}
			return
		}
		done := worked.job
		if done.List.RowsRead != len(done.List.Joints)+len(done.List.Others) {
			t.Errorf("%d rows, %d joints, %d others", done.List.RowsRead, len(done.List.Joints), len(done.List.Others))
		}
		for _, p := range done.Plans {
			if v := float64(p.Arc); math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("arc time %v", v)
			}
		}
		if _, err := report.JSON(done); err != nil { // fails on figures that are none
			t.Error(err)
		}
		table, err := report.CSV(done)
		if err != nil {
			t.Fatal(err)
		}
		harmless(t, table)
	})
}

// harmless fails where a cell of a results file is a formula to a spreadsheet.
func harmless(t *testing.T, table []byte) {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(table, []byte("\ufeff")))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		for _, cell := range row {
			if cell != report.Guard(strings.TrimPrefix(cell, "'")) && cell != report.Guard(cell) {
				t.Errorf("the cell %q is live", cell)
			}
		}
	}
}
