package workbook

import (
	"fmt"
	"os"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// longList is a user's workbook of n joints in fifteen columns.
func longList(t testing.TB, n int) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	w, err := f.NewStreamWriter("Sheet1")
	must(t, err)
	header := []any{"Mark", "Assembly", "Drawing", "Rev", "Kind", "Qty", "Length mm", "Sides", "Leg mm", "t1 mm", "t2 mm", "Material", "Position", "Remarks", "Heat no."}
	must(t, w.SetRow("A1", header))
	for i := range n {
		row := []any{fmt.Sprintf("W-%05d", i+1), fmt.Sprintf("A%02d", i%40), "D-1", "B", "fillet", 1 + i%4, 200 + i%1500, 1 + i%2, 3 + i%6,
			6 + i%8, 8 + i%8, "S355J2", "PB", "no remark", "H123"}
		must(t, w.SetRow(fmt.Sprintf("A%d", i+2), row))
	}
	must(t, w.Flush())
	return written(t, f)
}

// BenchmarkAnnotate measures writing alone: the plans are made before.
func BenchmarkAnnotate(b *testing.B) {
	for _, n := range []int{1000, 10000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			src, _, err := list.Read("long.xlsx", longList(b, n))
			must(b, err)
			job := understoodJob(b, src, price.Options{})
			b.ReportAllocs()
			for b.Loop() {
				out := build(b, src, job, Options{})
				b.SetBytes(int64(len(out)))
			}
		})
	}
}

// TestWriteLongList writes a long list for timing the whole program.
func TestWriteLongList(t *testing.T) {
	path := os.Getenv("SEAMTALLY_LONG")
	if path == "" {
		t.Skip("set SEAMTALLY_LONG to a path to have a long list written")
	}
	must(t, os.WriteFile(path+"-10000.xlsx", longList(t, 10000), 0o644))
	must(t, os.WriteFile(path+"-100000.xlsx", longList(t, 100000), 0o644))
}
