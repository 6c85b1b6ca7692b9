package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/price"
	"seamtally/batch/units"
	"seamtally/batch/workbook/pack"
)

// shared is a folder beside the repository with files by strangers and a package
// checker; tests that need it skip where it is absent.
func shared(t testing.TB, name string) string {
	t.Helper()
	path, err := filepath.Abs(filepath.Join("..", "..", "..", "shared", name))
	must(t, err)
	if _, err := os.Stat(path); err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatalf("%s is absent", path)
		}
		t.Skipf("%s is absent", path)
	}
	return path
}

// anyList takes the first row of the first sheet for a header and the rows under
// it for joints, whatever stands there: the point is what happens to the file.
func anyList(src *list.Source) joint.List {
	l := joint.List{File: src.File, SHA256: src.SHA256, Sheet: src.Sheets[0].Name}
	for i, r := range src.Sheets[0].Rows {
		if i == 0 {
			l.HeaderRows = [2]int{r.Number, r.Number}
			continue
		}
		l.LastRow = r.Number
		if len(l.Joints) < 50 {
			l.Joints = append(l.Joints, joint.Joint{
				Place: finding.Place{Row: r.Number}, Mark: fmt.Sprintf("S%d", r.Number), Qty: 1, Length: 500,
				Detail: &joint.Detail{
					Sides: 1, Kind: joint.Fillet, Size: joint.Size{Means: joint.Leg, A: 5}, T1: 8, T2: units.MM(8), Material: "S235", Position: "PB",
				},
			})
		}
	}
	return l
}

func TestStrangersLoseNothing(t *testing.T) {
	t.Parallel()
	dir := shared(t, "strangers")
	var files []string
	for _, pattern := range []string{"xlsx/*.xls[xm]", "made/*.xls[xm]", "made/*/*.xls[xm]"} {
		found, err := filepath.Glob(filepath.Join(dir, pattern))
		must(t, err)
		files = append(files, found...)
	}
	got, outDir, outputs := map[string]string{}, t.TempDir(), map[string]string{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		must(t, err)
		start := time.Now()
		if os.Getenv("SEAMTALLY_LOOK") != "" {
			fmt.Println(filepath.Base(file), len(data))
		}
		src, _, err := list.Read(filepath.Base(file), data)
		if err != nil || src.Format == list.CSV || len(src.Sheets) == 0 {
			continue
		}
		job := priced(t, src, anyList(src), price.Options{})
		book, err := Prepare(src, job, Options{})
		if err != nil {
			t.Errorf("%s: %v", filepath.Base(file), err)
			continue
		}
		out, problems := bytesOf(t, book), book.Problems
		if isFresh(problems) {
			_, why, _ := strings.Cut(problems[len(problems)-1].Text, ": ")
			got[filepath.Base(file)] = "fresh\t" + why
		} else {
			got[filepath.Base(file)] = "annotated\t"
			sameParts(t, filepath.Base(file), data, out)
		}
		sameCells(t, filepath.Base(file), src, out, problems)
		path := filepath.Join(outDir, fmt.Sprintf("%d-%s.xlsx", len(outputs), strings.ReplaceAll(filepath.Base(file), " ", "_")))
		must(t, os.WriteFile(path, out, 0o644))
		if outputs[path] = file; isFresh(problems) {
			outputs[path] = "" // all of it is ours
		}
		if took := time.Since(start); took > 5*time.Second {
			t.Logf("slow: %s took %v", filepath.Base(file), took)
		}
	}
	asExpected(t, got)
	newlyBroken(t, outputs)
	sameToAnother(t, outputs, got)
}

// asExpected compares what became of each workbook with testdata/strangers.tsv. One
// that is annotated where a fresh one was expected fails like the other way round.
// UPDATE_STRANGERS=1 writes the expectations anew.
func asExpected(t *testing.T, got map[string]string) {
	t.Helper()
	const path = "testdata/strangers.tsv"
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(got)) {
		b.WriteString(name + "\t" + got[name] + "\n")
	}
	if os.Getenv("UPDATE_STRANGERS") != "" {
		must(t, os.WriteFile(path, []byte(b.String()), 0o644))
	}
	data, err := os.ReadFile(path)
	must(t, err)
	want := map[string]string{}
	for line := range strings.Lines(string(data)) {
		name, rest, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		want[name] = rest
		if _, ok := got[name]; !ok {
			t.Errorf("%s is expected and was not worked", name)
		}
	}
	annotated := 0
	for name, fate := range got {
		if want[name] != fate {
			t.Errorf("%s: %q, want %q", name, fate, want[name])
		}
		if strings.HasPrefix(fate, "annotated") {
			annotated++
		}
	}
	t.Logf("%d annotated, %d in a fresh workbook", annotated, len(got)-annotated)
}

// sameToAnother opens every output with another reader and compares the user's cells
// of those that were annotated.
func sameToAnother(t *testing.T, outputs, fates map[string]string) {
	t.Helper()
	if exec.Command("/usr/bin/python3", "-c", "import openpyxl").Run() != nil {
		return // TestSecondReader skips or fails for it
	}
	var pairs strings.Builder
	for out, in := range outputs {
		if strings.HasPrefix(fates[filepath.Base(in)], "fresh") {
			in = "-"
		}
		pairs.WriteString(in + "\t" + out + "\n")
	}
	cmd := exec.Command("/usr/bin/python3", filepath.Join("testdata", "same_values.py"))
	cmd.Stdin = strings.NewReader(pairs.String())
	var count strings.Builder
	cmd.Stderr = &count
	said, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v %s", err, count.String())
	}
	for line := range strings.Lines(string(said)) {
		out, what, _ := strings.Cut(line, "\t")
		t.Errorf("%s: to another reader: %s", filepath.Base(outputs[out]), what)
	}
	t.Logf("another reader opened and compared %s", strings.TrimSpace(count.String()))
}

func isFresh(problems []finding.Problem) bool {
	return slices.ContainsFunc(problems, func(p finding.Problem) bool { return p.Code == "not-annotated" })
}

// sameParts checks that every part of the user's is there, byte for byte unless
// it is one of those that take insertions, and that those are well formed.
func sameParts(t *testing.T, name string, before, after []byte) {
	t.Helper()
	old, now := partsOf(t, before), partsOf(t, after)
	changed := 0
	for part, body := range old {
		got, ok := now[part]
		switch {
		case !ok && strings.Contains(strings.ToLower(part), "calcchain"):
		case !ok:
			t.Errorf("%s: part %s is lost", name, part)
		case !bytes.Equal(body, got):
			changed++
			if err := wellFormed(got); err != nil {
				t.Errorf("%s: part %s: %v", name, part, err)
			}
		}
	}
	if changed > 7 {
		t.Errorf("%s: %d parts changed", name, changed)
	}
}

func partsOf(t testing.TB, data []byte) map[string][]byte {
	t.Helper()
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	must(t, err)
	out := map[string][]byte{}
	for _, f := range zr.File {
		r, err := f.Open()
		must(t, err)
		out[f.Name], err = io.ReadAll(r)
		must(t, err)
	}
	return out
}

func wellFormed(body []byte) error {
	dec := xml.NewDecoder(bytes.NewReader(body))
	for {
		if _, err := dec.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// sameCells reads the workbook again and compares every cell of the user's.
func sameCells(t *testing.T, name string, src *list.Source, out []byte, problems []finding.Problem) {
	t.Helper()
	again, _, err := list.Read("again.xlsx", out)
	if err != nil {
		t.Errorf("%s: the output cannot be read: %v", name, err)
		return
	}
	sheets := src.Sheets
	if isFresh(problems) {
		sheets = sheets[:1]
	}
	for i, sheet := range sheets {
		now := map[string]list.Cell{}
		for _, r := range again.Sheets[i].Rows {
			for _, c := range r.Cells {
				now[finding.Place{Row: r.Number, Col: c.Col}.Cell()] = c
			}
		}
		for _, r := range sheet.Rows {
			for _, c := range r.Cells {
				if isFresh(problems) && c.Col > mostCopied {
					break // said in a problem
				}
				place := finding.Place{Row: r.Number, Col: c.Col}.Cell()
				if got := now[place]; !sameCell(c, got) {
					t.Errorf("%s: %s!%s was %.60q, is %.60q", name, sheet.Name, place, c.Text, got.Text)
					return
				}
			}
		}
	}
}

// sameCell compares two cells; a fresh workbook keeps the figure of a number and
// not its format, and mends what is not a text at all.
func sameCell(a, b list.Cell) bool {
	if a.Kind == list.Number && b.Kind == list.Number {
		return a.Value == b.Value
	}
	if v, ok := plainNumber(a.Text, true); ok && b.Kind == list.Number {
		return v == b.Value
	}
	return strings.TrimSpace(pack.Plain(a.Text)) == strings.TrimSpace(pack.Plain(b.Text))
}

// newlyBroken runs the package checker over the outputs and their inputs: what is
// wrong in both is the user's own.
func newlyBroken(t *testing.T, outputs map[string]string) {
	t.Helper()
	need(t, "/usr/bin/python3")
	check := shared(t, "validate/pkgcheck.py")
	paths := slices.Sorted(maps.Keys(outputs))
	said, err := exec.Command("/usr/bin/python3", append([]string{check}, paths...)...).CombinedOutput()
	if len(said) == 0 && err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		var found strings.Builder
		for line := range strings.Lines(string(said)) {
			if strings.HasPrefix(line, path+" ") {
				found.WriteString(line)
			}
		}
		if cmd := []string{"/usr/bin/python3", check}; found.Len() > 0 && (outputs[path] == "" || !sayTheSame(cmd, outputs[path], path, []byte(found.String()))) {
			t.Errorf("%s is newly broken: %s", filepath.Base(path), found.String())
		}
	}
	newlyInvalidParts(t, outputs)
}
