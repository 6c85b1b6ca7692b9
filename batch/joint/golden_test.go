package joint

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/list"
)

var update = flag.Bool("update", false, "write the golden files anew")

// dump writes all that was understood of a list as text.
func dump(l *List) string {
	var b strings.Builder
	fmt.Fprintf(&b, "header rows %v, units row %d, last row %d, %d rows = %d joints + %d others\n\n", l.HeaderRows, l.UnitsRow, l.LastRow, l.RowsRead, len(l.Joints), len(l.Others))
	for _, c := range l.Columns {
		fmt.Fprintf(&b, "column %d | %s | %s | %s | %s\n", c.Col, c.Header, c.Key, c.Unit, c.Why)
	}
	for _, j := range l.Joints {
		fmt.Fprintf(&b, "\njoint row %d | %s | %s | %s %s | qty %d | %s | %.4g mm", j.Place.Row, j.Mark, j.Assembly, j.Drawing, j.Rev, j.Qty, j.Kind, j.Length)
		fmt.Fprintf(&b, " | sides %d | %s %.4g %.4g (%s) | t %.4g %.4g | depth %.4g | %s %s\n", j.Sides, j.Size.Means, j.Size.A, j.Size.B, j.Size.Text, j.T1, j.T2, j.Depth, j.Position, j.Where)
		if s := j.Stitch; s != nil {
			fmt.Fprintf(&b, "  stitch %d x %.4g, gap %.4g, pitch %.4g\n", s.Count, s.Segment, s.Gap, s.Pitch)
		}
		for _, a := range j.Assumed {
			fmt.Fprintf(&b, "  assumed %s = %s: %s (%s)\n", a.Key, a.Value, a.Why, a.Basis)
		}
	}
	b.WriteString("\n")
	for _, o := range l.Others {
		fmt.Fprintf(&b, "row %d | %s | %s\n", o.Row, o.Fate, o.Text)
	}
	b.WriteString("\n")
	for _, p := range l.Problems {
		fmt.Fprintf(&b, "%s | %d %s | %s | %s | read %q | want %s | do %s\n", p.Level, p.Place.Row, p.Place.Cell(), p.Code, p.Text, p.Read, p.Want, p.Hint)
	}
	return b.String()
}

func TestAMessyListIsUnderstoodAsBefore(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("testdata", "messy.csv"))
	if err != nil {
		t.Fatal(err)
	}
	src, _, err := list.Read("messy.csv", data)
	if err != nil {
		t.Fatal(err)
	}
	l, err := Understand(src, Options{}, loadTables(t))
	if err != nil {
		t.Fatal(err)
	}
	golden := filepath.Join("testdata", "messy.golden")
	got := dump(l)
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the list is understood otherwise; look at the difference, then run with -update\n%s", got)
	}
}

// Files by strangers are no joint lists. Whatever they hold, each is refused in a
// sentence or read with every row accounted for.
func TestStrangersAreRefusedOrAccountedFor(t *testing.T) {
	dir := filepath.Join("..", "..", "..", "shared", "strangers")
	files, _ := filepath.Glob(filepath.Join(dir, "*", "*.*"))
	if len(files) == 0 {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatal("the folder with strangers' files is needed and absent")
		}
		t.Skip("the folder with strangers' files is absent")
	}
	words := newSpellings(loadTables(t))
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		src, _, err := list.Read(filepath.Base(path), data)
		if err != nil {
			continue // the list reader's own test
		}
		l, err := words.understand(src, Options{})
		if err != nil {
			if len(err.Error()) < 20 || strings.Contains(err.Error(), "\n") {
				t.Errorf("%s: %q is no sentence", path, err)
			}
			continue
		}
		t.Logf("%s: read as a list with %d joints and %d problems", filepath.Base(path), len(l.Joints), len(l.Problems))
		if len(l.Joints)+len(l.Others) != l.RowsRead {
			t.Errorf("%s: %d joints and %d others are not %d rows", path, len(l.Joints), len(l.Others), l.RowsRead)
		}
	}
}
