package workbook

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/price"
)

// kindsOfMany is a list in which joints of many kinds stand several times each,
// with other marks, lengths and quantities, and with numbers as text between them.
func kindsOfMany() string {
	kinds := []string{
		"fillet,z6,10,12,S355J2,PB,1,,shop,90,,", "fillet,a4,8,8,S235,PF,2,,site,90,,", "fillet,z8,20,12,S355J2,PB,2,,shop,70,2,", "lap,z3,3,3,S235,PB,1,,shop,,,",
		"single V,,12,12,S355J2,PA,1,,shop,60,2,2", "double V,,25,25,S355J2,PA,1,,shop,60,3,2", "single bevel,,10,10,S355J2,PC,1,,site,45,2,1", "square butt,,3,3,S235,PA,1,,shop,,1,",
		"corner,z4,4,4,S235,PB,1,,shop,90,,", "corner,z1.5,1.5,1.5,304,PA,1,,shop,90,,", "edge,a2,2,2,S235,PA,1,,shop,,,", "flare bevel,,5,10,S235,PA,1,,shop,,,", "flare bevel,a5,6,10,S235,PA,1,,shop,,1,", "flare V,z4,5,5,S235,PA,1,,shop,,,", "single U,,20,20,S355J2,PA,1,,shop,,,",
		"fillet,z5,8,8,1.4301,PB,1,,shop,90,,", "fillet,z5,6,6,AlMg3,PB,1,,shop,90,,", "fillet,z6,10,10,unknown,PB,1,,shop,90,,", "fillet,z4,6,6,S235,PB,1,50-150,shop,90,,",
	}
	var b strings.Builder
	b.WriteString("Mark,Kind,Size mm,t1 mm,t2 mm,Material,Position,Sides,Stitch,Where,Angle,Gap mm,Root face mm,Length mm,Qty,Assembly\n")
	for n := range 5 {
		for i, k := range kinds {
			length := fmt.Sprint(700 + 310*n + i)
			if n == 3 {
				length += " mm"
			}
			fmt.Fprintf(&b, "W%d-%d,%s,%s,%d,A%d\n", i, n, k, length, 1+(n+i)%3, n%2)
		}
	}
	return b.String()
}

// TestKeptCellsAreThoseDrawn compares the workbook of a list whose joints share
// their manners with that of the same list where each has a manner of its own, so
// that every cell is drawn anew.
func TestKeptCellsAreThoseDrawn(t *testing.T) {
	for _, opt := range []Options{{}, {US: true}, {ValuesOnly: true}} {
		src, _, err := list.Read("many.csv", []byte(kindsOfMany()))
		must(t, err)
		job := understoodJob(t, src, price.Options{US: opt.US, ValuesOnly: opt.ValuesOnly})
		manners := map[*plan.Manner]int{}
		for i := range job.Plans {
			manners[job.Plans[i].Manner]++
		}
		if len(job.Plans) < 70 || len(manners) > len(job.Plans)/3 {
			t.Fatalf("%d joints of %d manners: nothing is shared", len(job.Plans), len(manners))
		}
		shared := build(t, src, job, opt)
		for i := range job.Plans {
			own := *job.Plans[i].Manner
			job.Plans[i].Manner = &own
		}
		if !bytes.Equal(shared, build(t, src, job, opt)) {
			t.Errorf("%+v: a cell that was kept is another than the one drawn", opt)
		}
	}
}
