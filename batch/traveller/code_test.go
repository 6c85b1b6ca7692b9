package traveller

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
)

// Every sheet's code, printed and read back by another program, names the list,
// the row and the mark.
func TestCodesAreReadBack(t *testing.T) {
	need(t, "pdftoppm", "zbarimg")
	joints := []joint.Joint{leg("W-001", 6, 8, 10, 500, "PB"), leg("Стык-7 ø≤°", 5, 8, 10, 500, "PF"), butt("B/2 x", joint.SingleV, 12, 500, "PA")}
	joints[2].Assembly = joints[0].Assembly
	job := jobOf(t, joints, metric)
	pdf, err := Build(job, Options{})
	must(t, err)
	dir := t.TempDir()
	file := filepath.Join(dir, "t.pdf")
	must(t, os.WriteFile(file, pdf, 0o644))
	must(t, exec.Command("pdftoppm", "-r", "200", "-gray", file, filepath.Join(dir, "p")).Run())
	pictures, _ := filepath.Glob(filepath.Join(dir, "p*.pgm"))
	out, _ := exec.Command("zbarimg", append([]string{"-q", "--raw"}, pictures...)...).Output()
	for _, j := range joints {
		want := fmt.Sprintf("%s/%d/%s", job.List.SHA256[:10], j.Place.Row, j.Mark)
		if !strings.Contains(string(out), want+"\n") {
			t.Errorf("code %q was not read; read were:\n%s", want, out)
		}
	}
}

// The symbol is drawn by the standard asked for: sizes with a letter and a dashed
// line by ISO, the leg alone by AWS.
func TestSymbolFollowsTheStandard(t *testing.T) {
	symbol := func(symbols string, change func(*joint.Joint)) *page.Page {
		j := leg("W-1", 6, 8, 10, 500, "PB")
		change(&j)
		opts := metric
		opts.Symbols = symbols
		doc := faultless(t, jobOf(t, []joint.Joint{j}, opts))
		return doc.Pages[len(doc.Pages)-1]
	}
	same := func(*joint.Joint) {}
	if !has(symbol("iso", same), "z6") || has(symbol("aws", same), "z6") || !has(symbol("aws", same), "6") {
		t.Error("the leg stands as z6 by ISO and as 6 by AWS")
	}
	stitch := func(j *joint.Joint) {
		j.Length = 2000
		j.Stitch = &joint.Stitch{Count: 14, Segment: 50, Gap: 100, Pitch: 150}
	}
	if !has(symbol("iso", stitch), "14×50 (100)") || !has(symbol("aws", stitch), "50-150") {
		t.Error("a stitch is number × length (gap) by ISO and length-pitch by AWS")
	}
	named := func(j *joint.Joint) { j.WPS = "P-12" }
	if n := countOn(symbol("iso", named), "P-12"); n != 2 {
		t.Errorf("the procedure stands in its box and in the tail: found %d times", n)
	}
}

func countOn(p *page.Page, text string) int {
	n := 0
	for _, t := range p.Texts {
		if t.S == text {
			n++
		}
	}
	return n
}
