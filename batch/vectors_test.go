package batch

import (
	"archive/zip"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"seamtally/batch/list"
)

// vectors are texts that a spreadsheet may bring to life when it opens a file. Each
// carries a word that is found again in whatever became of it.
var vectors = []string{
	"=ZQX+1", "+ZQX", "-ZQX", "@ZQX", "\t=ZQX", "\r=ZQX", "\n=ZQX", " =ZQX", "\u00a0=ZQX", "\u200b=ZQX", "\ufeff=ZQX", "＝ZQX", "＋ZQX", "－ZQX", "＠ZQX",
	"=cmd|' /C ZQX'!A0", "=DDE(\"ZQX\";\"x\";\"y\")", `=HYPERLINK("http://ZQX","open")`, `=WEBSERVICE("http://ZQX")`, `=IMPORTXML("http://ZQX","//a")`,
	"=-ZQX", "=+ZQX", "-2+3+cmd|' /C ZQX'!A0", "@SUM(ZQX)", "+1+ZQX", `"=ZQX"`, `";=ZQX`, `",=ZQX`, "x\n=ZQX", "x\r\n=ZQX", "'=ZQX", "=\u0009ZQX", "%0A=ZQX", "{=ZQX}", "=ZQX\"&\"x", "<f>ZQX</f>", "</is></c><c><f>ZQX</f></c>", "]]><f>ZQX", "_x003D_ZQX", "−ZQX",
}

// TestNoTextOfAListIsLive puts every vector into every text column of a list and into
// a header of its own, and looks at all that is written: no formula of the workbook
// carries it, and no cell of the results file begins like one.
func TestNoTextOfAListIsLive(t *testing.T) {
	keys := []string{"Mark", "Assembly", "Drawing", "Rev", "Note", "WPS", "NDT"}
	for i, v := range vectors {
		cell := `"` + strings.ReplaceAll(v, `"`, `""`) + `"`
		row, head := "", ""
		for _, key := range keys {
			head += key + ","
			row += cell + ","
		}
		name := fmt.Sprintf("v%d.csv", i)
		job, dir := jobIn(t, map[string]string{name: head + "Length (mm),Leg (mm),Thickness (mm)," + cell + "\n" + row + "1000,5,6," + cell + "\n" + row + "500,4,5," + cell + "\n"}, name)
		job.Out = filepath.Join(dir, "out")
		o, err := Run(context.Background(), job)
		if err != nil || len(o.Lists) != 1 || len(o.Lists[0].Written) != 3 {
			t.Errorf("%q: %v %+v", v, err, o.Lists)
			continue
		}
		for _, path := range o.Lists[0].Written {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			switch filepath.Ext(path) {
			case ".csv":
				harmless(t, data)
			case ".xlsx":
				noFormulaOf(t, v, path)
				asItStood(t, v, data)
			}
		}
	}
	t.Logf("%d vectors in %d columns and a header", len(vectors), len(keys))
}

var formula = regexp.MustCompile(`(?s)<f[ >].*?</f>`)

func noFormulaOf(t *testing.T, vector, path string) {
	t.Helper()
	book, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	formulas := 0
	for _, f := range book.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(r)
		_ = r.Close()
		for _, found := range formula.FindAll(text, -1) {
			formulas++
			if strings.Contains(string(found), "ZQX") {
				t.Errorf("%q stands in a formula of %s: %.80s", vector, f.Name, found)
			}
		}
		if strings.Contains(f.Name, "rels") && strings.Contains(string(text), "ZQX") {
			t.Errorf("%q stands in %s", vector, f.Name)
		}
	}
	if formulas == 0 {
		t.Error("no formula was looked at")
	}
}

// asItStood wants the text in the first cell of the rows, unchanged but for the
// blanks around it.
func asItStood(t *testing.T, vector string, data []byte) {
	t.Helper()
	src, _, err := list.Read("out.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Join(strings.Fields(strings.Trim(vector, "\ufeff\u200b\u00a0 ")), " ")
	for _, row := range src.Sheets[0].Rows {
		for _, c := range row.Cells {
			if strings.Join(strings.Fields(c.Text), " ") == want && !c.Formula {
				return
			}
		}
	}
	t.Errorf("%q is not found again as it stood", vector)
}
