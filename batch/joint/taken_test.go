package joint

import (
	"slices"
	"strings"
	"testing"
)

// A blank among filled cells is filled in and said; a list without the column says
// nothing, and a part that is named brings its own thickness.
func TestBlanksThatAreFilledInAreSaid(t *testing.T) {
	set := loadTables(t)
	for text, want := range map[string]string{
		"Mark,Qty,Size,Length,t1,t2\nA,,z5,100,,8\n":              "qty=1 t1=as t2",
		"Mark,Qty,Size,Length,t1,t2\nA,2,z5,100,6,\n":             "t2=as t1",
		"Mark,Qty,Size,Length,t1,t2\nA,2,z5,100,6,8\n":            "",
		"Mark,Qty,Size,Length,t1,t2\nA,2,z5,100,,\n":              "",
		"Mark,Size,Length,t1\nA,z5,100,6\n":                       "",
		"Mark,Size,Length,t1,t2,Part1\nA,z5,100,,8,SHS 60x60x4\n": "",
	} {
		l, err := understand(t, set, text, Options{})
		if err != nil || len(l.Joints) != 1 {
			t.Fatal(text, err)
		}
		var said []string
		for _, a := range l.Joints[0].Assumed {
			if slices.Contains([]string{"qty", "t1", "t2"}, a.Key) {
				said = append(said, a.Key+"="+a.Value)
			}
		}
		if strings.Join(said, " ") != want {
			t.Errorf("%q: %q, want %q", text, said, want)
		}
	}
}
