package list

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
)

func TestThinKeepsWhatIsAskedFor(t *testing.T) {
	var b strings.Builder
	b.WriteString("Mark,Qty,Leg,Material,Remark\n")
	for i := range 3000 {
		fmt.Fprintf(&b, "W%d,%d,%d,S%d,remark %d\n", i, i, i%7, i%3, i)
	}
	read := func() *Sheet {
		src, _, err := Read("x.csv", []byte(b.String()))
		if err != nil {
			t.Fatal(err)
		}
		s := &src.Sheets[0]
		for i := range s.Rows {
			if c := s.Rows[i].Cells; len(c) > 2 {
				c[2].Kind, c[2].Value = Number, float64(i%7)
			}
		}
		return s
	}
	whole, thin := read(), read()
	thin.Thin(map[int]bool{3: true, 4: true}, map[int]bool{2: true})
	sets := map[*Cell]bool{}
	for i := range whole.Rows {
		for col := 1; col <= 5; col++ {
			want, got := whole.Rows[i].At(col), thin.Rows[i].At(col)
			if want.Kind == Number {
				want.Text = ""
			}
			if col == 1 || col == 5 {
				want = Cell{Col: col}
			}
			if !reflect.DeepEqual(want, got) {
				t.Fatalf("row %d, column %d: %+v instead of %+v", i, col, got, want)
			}
		}
		sets[&thin.Rows[i].same[0]] = true
	}
	if !thin.Thinned || len(sets) > 30 {
		t.Errorf("%d sets of cells are kept for 3000 rows of 21 kinds", len(sets))
	}
}
