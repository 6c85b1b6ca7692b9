package parts

import (
	"sync"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
)

// builtIn are the built-in tables and the shop that states nothing, loaded once.
var builtIn = sync.OnceValues(func() (*tables.Set, *rates.Shop) {
	files, err := tables.Open("")
	if err != nil {
		panic(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		panic(err)
	}
	shop, err := rates.Default(set)
	if err != nil {
		panic(err)
	}
	return set, &shop
})

// world returns tables and a shop of the test's own.
func world(t testing.TB) (*tables.Set, *rates.Shop) {
	t.Helper()
	set, shop := builtIn()
	own := *set
	mine := shop.Clone()
	return &own, &mine
}

// understood reads a cut list from the text of a CSV.
func understood(t testing.TB, set *tables.Set, text string, opt Options) *List {
	t.Helper()
	src, _, err := list.Read("cut.csv", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	l, err := NewReader(set).Understand(src, opt)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// worked reads a cut list and works it with joints.
func worked(t testing.TB, text string, joints ...joint.Joint) (*Book, []plan.Plan, []finding.Problem) {
	t.Helper()
	set, shop := world(t)
	l := understood(t, set, text, Options{})
	for i := range joints {
		joints[i].Place.Row = i + 2
	}
	plans := plan.Joints(NewIndex(l).Lend(joints), set, shop, plan.Options{})
	b, problems := Work(l, plans, set, shop)
	return b, plans, problems
}

// fillet is a fillet of leg 5 on two parts, so many times, each so long.
func fillet(mark, part1, part2 string, qty int, length units.MM) joint.Joint {
	return joint.Joint{
		Mark: mark, Qty: qty, Length: length, Part1: part1, Part2: part2,
		Detail: &joint.Detail{
			Sides: 1, Kind: joint.Fillet, Position: "PB", Material: "S235", Size: joint.Size{Means: joint.Leg, A: 5},
		},
	}
}

// butt is a butt weld of a kind between two parts.
func butt(kind joint.Kind, part1, part2 string, qty int, length units.MM) joint.Joint {
	return joint.Joint{Mark: "B", Qty: qty, Length: length, Part1: part1, Part2: part2, Detail: &joint.Detail{Sides: 1, Kind: kind, Position: "PA", Material: "S235"}}
}
