package batch

import (
	"context"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/compare"
	"seamtally/batch/price"
)

// listOf writes a list of joints and returns its path.
func listOf(t *testing.T, dir, name string, rows []string) string {
	t.Helper()
	path := filepath.Join(dir, name)
	text := "Mark,Assembly,Qty,Kind,Length mm,Leg mm,t1 mm,t2 mm,Material,Position\n" + strings.Join(rows, "\n") + "\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func compareLists(t *testing.T, old, new []string) Comparison {
	t.Helper()
	dir := t.TempDir()
	c, err := Compare(context.Background(), Job{Lists: []string{listOf(t, dir, "old.csv", old), listOf(t, dir, "new.csv", new)}, DryRun: true,
		Looks: price.Options{Date: "2026-03-01", Codes: "iso"}})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestCompareTells holds what each kind of change is called.
func TestCompareTells(t *testing.T) {
	old := []string{
		"J1,A,1,fillet,1000,5,8,8,S235,PB", "J2,A,2,fillet,1000,5,8,8,S235,PB", "J2,B,1,fillet,300,5,8,8,S235,PB",
		"J3,A,1,fillet,1000,5,8,8,S235,PB", "J5,A,1,fillet,254,5,8,8,S235,PB",
	}
	now := []string{
		"J2,B,1,fillet,300,5,8,8,S235,PB", "J2,A,3,fillet,1000,6,8,8,S235,PB", "J3,C,1,fillet,1000,5,8,8,S235,PB",
		"J4,A,1,fillet,1000,5,8,8,S235,PB", `J5,A,1,fillet,10 in,5,8,8,S235,PB`,
	}
	c := compareLists(t, old, now)
	words := func(list []compare.Line) string {
		var out []string
		for _, l := range list {
			text := l.Mark
			for _, f := range l.Fields {
				text += " " + f.Words()
			}
			out = append(out, text)
		}
		return strings.Join(out, "; ")
	}
	for _, want := range []struct{ what, got, want string }{
		{"added", words(c.Added), "J4"}, {"removed", words(c.Removed), "J1"},
		{"changed", words(c.Changed), "J2 qty: 2, now 3 size: z5, now z6; J3 assembly: A, now C"},
	} {
		if want.got != want.want {
			t.Errorf("%s: got %q, want %q", want.what, want.got, want.want)
		}
	}
	if n := c.Same + len(c.Replanned); n != 2 {
		t.Errorf("J2 of B and J5 say the same in both lists; %d joints do", n)
	}
}

// TestCompareAddsUp checks over random revisions that the differences of the
// joints and of the change-overs make the difference of the totals.
func TestCompareAddsUp(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	row := func(i int) string {
		return fmt.Sprintf("J%d,%c,%d,fillet,%d,%d,8,10,S235,%s", i, 'A'+rune(r.Intn(3)), 1+r.Intn(4), 100+r.Intn(2000), 3+r.Intn(5), []string{"PB", "PF", "PD"}[r.Intn(3)])
	}
	for range 25 {
		var old, now []string
		for i := range 12 {
			line := row(i)
			switch r.Intn(5) {
			case 0:
				old = append(old, line)
			case 1:
				now = append(now, line)
			case 2:
				old, now = append(old, line), append(now, row(i))
			default:
				old, now = append(old, line), append(now, line)
			}
		}
		if len(old) == 0 || len(now) == 0 {
			continue
		}
		c := compareLists(t, old, now)
		by := c.New.All.Less(c.Old.All)
		money := float64(c.New.ChangeOvers.Price - c.Old.ChangeOvers.Price)
		hours := float64(c.New.ChangeOvers.Labour - c.Old.ChangeOvers.Labour)
		metres, kg := 0.0, 0.0
		for _, list := range [][]compare.Line{c.Added, c.Removed, c.Changed, c.Replanned} {
			for i := range list {
				l := list[i].By()
				metres, kg = metres+float64(l.Seam), kg+float64(l.WeldMetal)
				hours, money = hours+float64(l.Labour), money+float64(l.Price)
			}
		}
		for _, s := range []struct {
			what      string
			sum, want float64
		}{{"metres", metres, float64(by.Seam)}, {"kilograms", kg, float64(by.WeldMetal)}, {"minutes", hours, float64(by.Labour)}, {"money", money, float64(by.Price)}} {
			if math.Abs(s.sum-s.want) > 1e-3 {
				t.Errorf("%s: the joints make %g, the totals %g\nold %q\nnew %q", s.what, s.sum, s.want, old, now)
			}
		}
	}
}
