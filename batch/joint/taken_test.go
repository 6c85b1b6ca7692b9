package joint

import (
	"fmt"
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

// A value that was assumed for two reasons is told with each of them.
func TestWhatWasTakenAlikeForTwoReasonsIsToldWithEach(t *testing.T) {
	all := []Assumption{
		{Key: "position", Value: "PB", Why: "blank", Basis: "common-practice"},
		{Key: "position", Value: "PB", Why: "of its kind", Basis: "common-practice"},
		{Key: "t2", Value: "8 mm", Why: "of W1", Basis: "derived", Kin: "of the other part"},
		{Key: "t2", Value: "8 mm", Why: "of W2", Basis: "derived", Kin: "of the other part"},
		{Key: "t2", Value: "8 mm", Why: "of the shop", Basis: "shop value", Kin: "of the other part"},
	}
	var got []string
	for _, t := range TakenAlike(slices.All(all)) {
		got = append(got, fmt.Sprintf("%s=%s (%s; %s) %v", t.Key, t.Value, t.Why, t.Basis, t.Joints))
	}
	want := []string{"position=PB (blank; common-practice) [0]", "position=PB (of its kind; common-practice) [1]", "t2=8 mm (of the other part; derived) [2 3]", "t2=8 mm (of the shop; shop value) [4]"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
