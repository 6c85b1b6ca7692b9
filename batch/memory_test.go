package batch

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
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
	for _, c := range []struct {
		memory uint64
		only   []Output
		says   string // empty: worked
	}{
		{0, []Output{Results}, ""},
		{uint64(lines), []Output{Results}, ""},
		{uint64(lines) - 1, []Output{Results}, "601 lines would take about 51 MB of memory, and there are 51 MB"},
		{uint64(lines), nil, "a traveller of "},
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

// TestMemoryIsShared: lists that are worked side by side share what there is.
func TestMemoryIsShared(t *testing.T) {
	one := Job{Lists: []string{"a"}, Memory: 1 << 30}
	if one.share() != 1<<30 {
		t.Errorf("one list has %d", one.share())
	}
	many := Job{Lists: make([]string, 1000), Memory: 1 << 30}
	if many.share() > 1<<30 || many.share() == 0 {
		t.Errorf("each of many has %d", many.share())
	}
}
