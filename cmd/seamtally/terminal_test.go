package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"

	"seamtally/batch"
)

// TestNothingSteersTheTerminal gives every command a list whose marks, kinds, sizes,
// remarks and file name hold sequences that steer a terminal or turn text round; none
// of them comes out.
func TestNothingSteersTheTerminal(t *testing.T) {
	const list = "Mark,Kind,Leg mm,t1 mm,t2 mm,Length mm,Qty,Material,Position,Wire,WPS\n" +
		"W\x1b[31m1,fillet,5,8,8,500,1,S235,PB,,\n" +
		"W2,fil\x1b]0;title\x07let,5,8,8,5\x1b[2J00,1,S235,PB,,\n" +
		"W3\u009b31m,fillet,5x\x1b[1m,8,8,500,1,S2\u202e35,PB,G\x1b[8m,\u2066P\x1b[5m\n" +
		"\"W\n4\x08\x08\",fillet,5,8,8,500,1,Unob\u009dtainium\x1b[0m,PB,,\n"
	dir := t.TempDir()
	name := "fr\x1b[41mame.csv"
	if err := os.WriteFile(filepath.Join(dir, name), []byte(list), 0o644); err != nil {
		t.Skipf("this disk takes no such name: %v", err)
	}
	path := filepath.Join(dir, name)
	for _, args := range [][]string{{"check", path}, {"run", path, "-o", filepath.Join(dir, "out")}, {"explain", path}, {"explain", path, "W1"}, {"explain", path, "--row", "2"},
		{"compare", path, path}, {"run", path + "x"}, {"check", "--csv", path}, {"run", path, "--dry-run", "--json"}, {"run", "--\x1b[1mno", path}} {
		var out, said strings.Builder
		p := program{in: strings.NewReader(""), out: &out, err: &said, now: time.Now}
		p.run(context.Background(), append([]string{"seamtally"}, args...))
		if out.Len()+said.Len() == 0 {
			t.Errorf("%q says nothing", args)
		}
		for _, r := range out.String() + said.String() {
			if unicode.IsControl(r) && r != '\n' && r != '\t' && r != '\r' || unicode.Is(unicode.Bidi_Control, r) {
				t.Errorf("%q prints %U in:\n%q", args[:1], r, out.String()+said.String())
				break
			}
		}
	}
}

// TestNoCellSteersOrBreaksALine: what stands in the cells of a cut list, and of joints
// that name its parts, neither steers the terminal nor begins a line of its own.
func TestNoCellSteersOrBreaksALine(t *testing.T) {
	dir := t.TempDir()
	list, cut := filepath.Join(dir, "frame.csv"), filepath.Join(dir, "cut.csv")
	for name, text := range map[string]string{
		list: "Mark,Leg mm,Length mm,t1,Kind,Stitch,Position,Material,Part 1,Part 2\n" +
			"\"W\x1b[31m1\nFAKE\",5,99999,6,fillet,,\"over\nhead\",S235,\"P\x1b[31m1\nFAKE\",Q\n" +
			"\"W2\nFAKE\",5,500,6,fillet,\"5x50\n(50)\",PB,S235,\"P\x1b[31m1\nFAKE\",\"NO\x1bPE\nFAKE\"\n",
		cut: "Mark,Section,Length,Qty\n\"P\x1b[31m1\nFAKE\",SHS 60x60x4,1000,3\n\"Q\x1b[1m\nFAKE\",FL 100x10,500,2\n\"R\x1b[1m\nFAKE\",SHS 40x40x4,500,2\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, args := range [][]string{{"check", list, "--parts", cut}, {"run", list, "--parts", cut, "-o", filepath.Join(dir, "out")}, {"explain", list, "--parts", cut}, {"explain", list, "W\x1b[31m1\nFAKE"}, {"explain", list, "W2\nFAKE", "--parts", cut}, {"compare", list, list}} {
		var out, said strings.Builder
		p := program{in: strings.NewReader(""), out: &out, err: &said, now: time.Now}
		p.run(context.Background(), append([]string{"seamtally"}, args...))
		all := out.String() + said.String()
		if all == "" {
			t.Errorf("%q says nothing", args)
		}
		for line := range strings.Lines(all) {
			if strings.HasPrefix(line, "FAKE") || strings.HasPrefix(line, "head\"") || strings.ContainsRune(line, '\x1b') {
				t.Errorf("%q prints a line of a cell, %q, in:\n%s", args, line, all)
				break
			}
		}
	}
}

// A list on which a library does not come back ends the program as a fault of ours
// that names the list.
func TestStuckNamesTheList(t *testing.T) {
	var said strings.Builder
	code := 0
	p := program{err: &said, exit: func(n int) { code = n }}
	p.stuck("frame.xlsx")
	if code != batch.OurBug || !strings.Contains(said.String(), `"frame.xlsx"`) {
		t.Errorf("exit code %d, said %q", code, said.String())
	}
}

// TestFullStandardOutput: where printing fails, the sentence is ours and so is the code.
func TestFullStandardOutput(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("no device that is always full here:", err)
	}
	defer full.Close()
	was := os.Stdout
	defer func() { os.Stdout = was }()
	os.Stdout = full
	var said strings.Builder
	p := program{in: strings.NewReader(""), out: full, err: &said, now: time.Now}
	code := p.run(t.Context(), []string{"seamtally", "tables"})
	if want := "seamtally: \"standard output\" cannot be written: the disk is full; print into a file where there is room, or to the screen\n"; code != batch.Unwritable || said.String() != want {
		t.Errorf("code %d, said %q", code, said.String())
	}
}
