package batch

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// TestTooLongForTheMemory: a list that the memory cannot hold ends before its work with
// a sentence of ours, whether its lines, its joints or the sheets of its traveller are
// too many; one that fits is worked, and so is every one where nobody knows the memory.
func TestTooLongForTheMemory(t *testing.T) {
	var text strings.Builder
	text.WriteString("mark,length,size,thickness,material\n")
	for i := range 600 {
		fmt.Fprintf(&text, "W%d,%d,z%d,%d,S235\n", i, 100+i, 4+i%3, 6+i%30)
	}
	dir := t.TempDir()
	name := filepath.Join(dir, "frame.csv")
	if err := os.WriteFile(name, []byte(text.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	lines := baseBytes + 601*jointBytes
	kinds := lines + 30*kindBytes // as many sizes on as many thicknesses
	for _, c := range []struct {
		memory uint64
		only   []Output
		says   string // empty: worked
	}{
		{0, []Output{Results}, ""},
		{uint64(kinds), []Output{Results}, ""},
		{uint64(lines), []Output{Results}, "600 joints, 30 of them unlike each other, would take about 51 MB of memory"},
		{uint64(lines) - 1, []Output{Results}, "601 lines would take about 51 MB of memory, and there are 51 MB"},
		{uint64(kinds), nil, "a traveller of "},
		{uint64(lines) + 600*(sheetBytes+namedBytes), nil, ""},
		{1, []Output{Results}, "have the limit raised"},
	} {
		out := t.TempDir()
		outcome, err := Run(context.Background(), Job{Lists: []string{name}, Out: out, Only: c.only, Memory: c.memory})
		if err != nil {
			t.Fatal(err)
		}
		r := outcome.Lists[0]
		var crowded *Crowded
		switch {
		case c.says == "" && (r.Err != nil || len(r.Written) == 0):
			t.Errorf("%d bytes: %v", c.memory, r.Err)
		case c.says != "" && (!errors.As(r.Err, &crowded) || !strings.Contains(r.Err.Error(), c.says) || outcome.Code != Unreadable):
			t.Errorf("%d bytes: exit %d, %v; want %q", c.memory, outcome.Code, r.Err, c.says)
		}
		if entries, _ := os.ReadDir(out); c.says != "" && len(entries) > 0 {
			t.Errorf("%d bytes: refused, and %d files are written", c.memory, len(entries))
		}
	}
}

// TestMemoryIsShared: lists that are worked side by side share what there is beside what
// the program takes once.
func TestMemoryIsShared(t *testing.T) {
	one := Job{Lists: []string{"a"}, Memory: 1 << 30}
	if one.share() != 1<<30-baseBytes {
		t.Errorf("one list has %d", one.share())
	}
	many := Job{Lists: make([]string, 1000), Memory: 1 << 30}
	n := uint64(runtime.GOMAXPROCS(0))
	if many.share()*n > 1<<30-baseBytes || many.share() < (1<<30-baseBytes)/n {
		t.Errorf("each of %d has %d", n, many.share())
	}
	many.alone = true
	if many.share() != one.share() {
		t.Errorf("one of many by itself has %d", many.share())
	}
}

// TestManyShortLists: forty short lists on a machine with thirty-two cores and 1500 MB are
// all worked, and so is a long one among them that needs nearly all of the memory. One that
// no memory holds is refused and named, with what sets the limit; the others are worked.
func TestManyShortLists(t *testing.T) {
	old := runtime.GOMAXPROCS(32)
	defer runtime.GOMAXPROCS(old)
	dir := t.TempDir()
	list := func(name string, joints int) string {
		var text strings.Builder
		text.WriteString("mark,length,size,thickness,material\n")
		for i := range joints {
			fmt.Fprintf(&text, "W%d,100,z5,8,S235\n", i)
		}
		file := filepath.Join(dir, name)
		if err := os.WriteFile(file, []byte(text.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return file
	}
	var lists []string
	for i := range 40 {
		lists = append(lists, list(fmt.Sprintf("short%d.csv", i), 3))
	}
	long := list("long.csv", 900)
	for _, c := range []struct {
		name    string
		memory  uint64
		lists   []string
		refused bool
	}{
		{"1500 MB", 1500 << 20, lists, false},
		{"room for the long one by itself", baseBytes + 900*jointBytes + kindBytes, append(slices.Clone(lists), long), false},
		{"a line too long", baseBytes + 901*jointBytes - 1, append(slices.Clone(lists), long), true},
	} {
		outcome, err := Judge(context.Background(), Job{Lists: c.lists, Memory: c.memory, Limit: "the limit of this test"})
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range outcome.Lists {
			switch bad := c.refused && c.lists[i] == long; {
			case !bad && r.Err != nil:
				t.Errorf("%s: %s: %v", c.name, r.List, r.Err)
			case bad && (r.Err == nil || !strings.Contains(r.Err.Error(), "901 lines") || !strings.Contains(r.Err.Error(), "(the limit of this test)")):
				t.Errorf("%s: %v", c.name, r.Err)
			}
		}
	}
}

// TestStandardInputHasItsTurn: what came in once is read again when the list is worked by
// itself.
func TestStandardInputHasItsTurn(t *testing.T) {
	old := runtime.GOMAXPROCS(2)
	defer runtime.GOMAXPROCS(old)
	text := "mark,length,size,thickness,material\nW1,100,z5,8,S235\n"
	name := filepath.Join(t.TempDir(), "a.csv")
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	outcome, err := Judge(context.Background(), Job{Lists: []string{"-", name}, Stdin: strings.NewReader(text), Memory: baseBytes + 2*jointBytes + kindBytes})
	if err != nil || outcome.Code != Worked {
		t.Errorf("exit %d, %v, %v", outcome.Code, err, outcome.Lists[0].Err)
	}
}

// TestBlankLinesTakeNoRoom: lines in which nothing stands are no joints, in whatever way a
// program writes them.
func TestBlankLinesTakeNoRoom(t *testing.T) {
	wide := func(text string) string {
		var out []byte
		for _, c := range []byte(text) {
			out = append(out, c, 0)
		}
		return string(out)
	}
	for text, want := range map[string]int{
		"":                            0,
		"a,b\n1,2":                    2,
		"a,b\r\n1,2\r\n":              2,
		"a;b\r1;2\r;\r":               2,
		"a\tb\n\t\n \t \n\"\",\"\"\n": 1,
		"a,b\n\u00a0,\u00a0\n,,,,\n":  1,
		wide("a,b\r\n,\r\n1,2\r\n,,"): 2,
	} {
		if got := filledLines([]byte(text)); got != want {
			t.Errorf("%q: %d lines, want %d", text, got, want)
		}
	}
}
