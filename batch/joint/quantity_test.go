package joint

import (
	"testing"

	"seamtally/batch/list"
)

// Words for pieces are taken off a quantity; letters that may stand for a figure never.
func TestBareCount(t *testing.T) {
	for text, want := range map[string]string{
		"4": "4", "4x": "4", "x4": "4", "4 off": "4", "4 pcs.": "4", "4 Stk": "4", "4 Stück": "4", "4 шт.": "4", "4 ea": "4", "4 x": "4", "4 No.": "4", "4no": "4", "No 4": "no 4", "12 szt.": "12",
		"1O": "1o", "5k": "5k", "4s": "4s", "2 sets": "2", "2 set": "2", "2 pce": "2", "2 pces": "2", "2 Pce.": "2", "Set 2": "2", "l2": "l2", "3 pairs": "3 pairs", "O2": "o2", "": "", "x": "",
	} {
		if got := bareCount(text); got != want {
			t.Errorf("%q is counted as %q, want %q", text, got, want)
		}
	}
}

// TestQuantitiesWithTheirWord: pieces and sets are counted; a pair is two, so what a
// number of pairs means is asked.
func TestQuantitiesWithTheirWord(t *testing.T) {
	set := loadTables(t)
	for text, want := range map[string]int{"2 set": 2, "2 sets": 2, "2 pce": 2, "2 pces": 2, "2pcs": 2, "3 pairs": 0, "2s": 0} {
		src, _, err := list.Read("x.csv", []byte("Mark;Length;Size;t1;Qty\nW1;500;z5;8;"+text+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		l, err := Understand(src, Options{}, set)
		if err != nil {
			t.Fatal(err)
		}
		if bad := hasCode(l.Problems, "bad-quantity"); bad != (want == 0) || want > 0 && (len(l.Joints) != 1 || l.Joints[0].Qty != want) {
			t.Errorf("%q: bad %v, joints %d", text, bad, len(l.Joints))
		}
	}
}

// A plug or slot fills a hole: a stitch note behind one would be metal of a seam as deep
// as the stitches are long.
func TestAHoleHasNoStitches(t *testing.T) {
	set := loadTables(t)
	for kind, want := range map[string]bool{"plug": true, "slot": true, "fillet": false} {
		src, _, err := list.Read("x.csv", []byte("Mark;Kind;Length;Size;t1;Stitch\nW1;"+kind+";900;z20;8;5x50(100)\n"))
		if err != nil {
			t.Fatal(err)
		}
		l, err := Understand(src, Options{}, set)
		if err != nil {
			t.Fatal(err)
		}
		if got := hasCode(l.Problems, "bad-stitch"); got != want || len(l.Joints) == 1 == want {
			t.Errorf("%s with a stitch note: told %v, %d joints", kind, got, len(l.Joints))
		}
	}
}
