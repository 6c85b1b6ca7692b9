package workbook

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/tables"
)

// sampleJob reads and prices one of the project's samples as a run does.
func sampleJob(t testing.TB, path string, opts price.Options) (*list.Source, *price.Job) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "samples", path))
	must(t, err)
	src, _, err := list.Read(filepath.Base(path), data)
	must(t, err)
	return src, understoodJob(t, src, opts)
}

func understoodJob(t testing.TB, src *list.Source, opts price.Options) *price.Job {
	t.Helper()
	files, err := tables.Open("")
	must(t, err)
	set, err := tables.Load(files)
	must(t, err)
	l, err := joint.Understand(src, joint.Options{Inches: opts.US}, set)
	must(t, err)
	cut := cutOf(t, src, set)
	if cut != nil {
		l.Joints = parts.NewIndex(cut).Lend(l.Joints)
	}
	job := priced(t, src, *l, opts)
	if cut != nil {
		job.Parts, _ = parts.Work(cut, job.Plans, set, &job.Shop)
	}
	return job
}

// cutOf is the cut list of a sample; nil where it has none.
func cutOf(t testing.TB, src *list.Source, set *tables.Set) *parts.List {
	t.Helper()
	for i := range src.Sheets {
		if src.Sheets[i].Name == "Cut list" {
			cut, err := parts.NewReader(set).Understand(src, parts.Options{Sheet: "Cut list"})
			must(t, err)
			return cut
		}
	}
	return nil
}

// sample is one of the project's samples and the units it is shown in.
type sample struct {
	path string
	opts price.Options
}

var samples = []sample{
	{"mezzanine/mezzanine.xlsx", price.Options{}},
	{"wash-table/wash-table.csv", price.Options{}},
	{"gangway/gangway.csv", price.Options{US: true, Paper: "letter"}},
	{"four-columns/four-columns.csv", price.Options{}},
	{"mistakes/mistakes.csv", price.Options{}},
	{"mezzanine/mezzanine.xlsx", price.Options{US: true, Codes: "aws", Paper: "letter"}},
}

func TestSamplesAgreeWithAnotherProgram(t *testing.T) {
	t.Parallel()
	var books [][]byte
	for _, s := range samples {
		src, job := sampleJob(t, s.path, s.opts)
		out := build(t, src, job, Options{US: s.opts.US})
		if dir := os.Getenv("SEAMTALLY_LOOK"); dir != "" {
			must(t, os.WriteFile(filepath.Join(dir, filepath.Base(s.path)+s.opts.Codes+".worked.xlsx"), out, 0o644))
		}
		books = append(books, out)
		if src.Format != list.CSV {
			sameParts(t, s.path, src.Data, out)
		}
		sameCells(t, s.path, src, out, nil)
	}
	for i, n := range sameFigures(t, books...) {
		t.Logf("%s: %d formulas agree", samples[i].path, n)
	}
}

func TestSamplesAreValidPackages(t *testing.T) {
	t.Parallel()
	outputs, dir := map[string]string{}, t.TempDir()
	for i, s := range samples {
		src, job := sampleJob(t, s.path, s.opts)
		out := filepath.Join(dir, itoa(i)+"-"+filepath.Base(s.path)+".xlsx")
		must(t, os.WriteFile(out, build(t, src, job, Options{US: s.opts.US}), 0o644))
		if outputs[out] = filepath.Join("..", "..", "samples", s.path); src.Format == list.CSV {
			outputs[out] = "" // all of it is ours
		}
	}
	newlyBroken(t, outputs)
}

// sayTheSame tells whether a checker finds in the user's own file what it found
// in ours: nothing of ours is at fault then.
func sayTheSame(cmd []string, input, output string, said []byte) bool {
	before, _ := exec.Command(cmd[0], cmd[1], input).CombinedOutput()
	for line := range strings.Lines(strings.ReplaceAll(string(said), output, input)) {
		if !strings.Contains(line, "parts=") && !strings.Contains(string(before), line) {
			return false
		}
	}
	return true
}

// TestLongListAgreesWithAnotherProgram has another program work out a generated
// list of two thousand joints.
func TestLongListAgreesWithAnotherProgram(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("long")
	}
	src, _, err := list.Read("long.xlsx", longList(t, 2000))
	must(t, err)
	n := sameFigures(t, build(t, src, understoodJob(t, src, price.Options{}), Options{}))[0]
	if n < 2000*40 {
		t.Errorf("only %d formulas", n)
	}
	t.Logf("%d formulas agree to 1e-9", n)
}
