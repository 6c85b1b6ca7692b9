package joint

import "testing"

// Words for pieces are taken off a quantity; letters that may stand for a figure never.
func TestBareCount(t *testing.T) {
	for text, want := range map[string]string{
		"4": "4", "4x": "4", "x4": "4", "4 off": "4", "4 pcs.": "4", "4 Stk": "4", "4 Stück": "4", "4 шт.": "4", "4 ea": "4", "4 x": "4", "12 szt.": "12",
		"1O": "1o", "5k": "5k", "4s": "4s", "2 sets": "2 sets", "l2": "l2", "3 pairs": "3 pairs", "O2": "o2", "": "", "x": "",
	} {
		if got := bareCount(text); got != want {
			t.Errorf("%q is counted as %q, want %q", text, got, want)
		}
	}
}
