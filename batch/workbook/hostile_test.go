package workbook

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/workbook/pack"
)

// hostile are texts that spreadsheets like to bring to life, or that break what
// carries them.
var hostile = []string{
	"=1+2", "+cmd|' /C calc'!A0", "-3+4", "@SUM(A1)", "\tlead", "007", "3-4", "1e5", "TRUE", "#REF!",
	`"quoted" & <b>bold</b> ]]> &amp; 'x'`, strings.Repeat("long ", 60), "emoji 🔧 and ø ≤ ²", "nul\x00bell\a", "_x0041_", "line\nfeed", " blanks ",
	`=HYPERLINK("http://x","y")`, "§ and [seam_m] and {waste_pct}", "\xff\xfe broken", strings.Repeat("я", 40000),
}

// TestTextStaysText puts hostile texts where texts of the user's can go, and
// looks for them in the workbook: there, whole, as text, and without a formula.
func TestTextStaysText(t *testing.T) {
	for i, evil := range hostile {
		src, job := handMade()
		row := &src.Sheets[0].Rows[1]
		row.Cells[0].Text = evil
		job.List.Joints[0].Mark, job.List.Joints[0].Assembly, job.List.Joints[0].Material = evil, evil, evil
		job.Plans[0].Checks[0].Text, job.Plans[0].Filler = evil, evil
		job.List.Problems[0].Read, job.List.File = evil, evil
		job = repriced(job)
		out := build(t, src, job, Options{})
		again, _, err := list.Read("again.xlsx", out)
		must(t, err)
		cell := again.Sheets[0].Rows[1].At(1)
		if cell.Formula || cell.Text != pack.Plain(evil) && cell.Text != strings.TrimSpace(pack.Plain(evil)) {
			t.Errorf("text %d: %.40q came back as %.40q, formula %v", i, evil, cell.Text, cell.Formula)
		}
		for _, sheet := range again.Sheets {
			for _, r := range sheet.Rows {
				for _, c := range r.Cells {
					if c.Text == evil && c.Formula && evil[0] == '=' {
						t.Errorf("text %d became a formula in %s", i, sheet.Name)
					}
				}
			}
		}
		for name, body := range partsOf(t, out) {
			if strings.HasSuffix(name, ".xml") {
				if err := wellFormed(body); err != nil {
					t.Errorf("text %d: %s: %v", i, name, err)
				}
			}
		}
	}
}

func repriced(job *price.Job) *price.Job {
	again := price.Price(job.List, job.Plans, job.Shop, nil, job.Opts)
	return &again
}

// TestSheetNamesStayApart gives the user's sheet every name that we would like,
// and characters that a formula must quote.
func TestSheetNamesStayApart(t *testing.T) {
	for _, name := range []string{"totals (weld)", "rates", `It's "so"`, "Лист 1 & 2", "R1C1", "A1"} {
		f := opened(t, fixtureXLSX(t))
		must(t, f.SetSheetName(fixtureSheet, name))
		src, job := fixtureJob(t, "list.xlsx", written(t, f), price.Options{})
		out := build(t, src, job, Options{})
		seen := map[string]bool{}
		for _, sheet := range opened(t, out).GetSheetList() {
			if fold := strings.ToLower(sheet); seen[fold] {
				t.Errorf("%s: two sheets are named %s", name, sheet)
			} else {
				seen[fold] = true
			}
		}
		sameCells(t, name, src, out, nil)
	}
}

// TestSecondReader opens input and output with another library and compares every
// cell of the user's, formulas and formats included.
func TestSecondReader(t *testing.T) {
	need(t, "/usr/bin/python3")
	if err := exec.Command("/usr/bin/python3", "-c", "import openpyxl").Run(); err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") != "" {
			t.Fatal("python3-openpyxl is not installed")
		}
		t.Skip("python3-openpyxl is not installed")
	}
	src, job := sampleJob(t, "mezzanine/mezzanine.xlsx", price.Options{})
	dir := t.TempDir()
	out := filepath.Join(dir, "out.xlsx")
	must(t, os.WriteFile(out, build(t, src, job, Options{}), 0o644))
	said, err := exec.Command("/usr/bin/python3", filepath.Join("testdata", "same_cells.py"), filepath.Join("..", "..", "samples", "mezzanine", "mezzanine.xlsx"), out).CombinedOutput()
	if err != nil {
		t.Errorf("%v: %s", err, said)
	}
	t.Logf("%s", said)
}
