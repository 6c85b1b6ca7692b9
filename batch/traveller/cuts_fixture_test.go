package traveller

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"seamtally/batch/bars"
	"seamtally/batch/joint"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// part is a row of a cut list by hand: a bar, or a plate with its width.
func part(t testing.TB, mark, designation string, width, length units.MM, qty int) parts.Part {
	t.Helper()
	set, err := builtIn()
	must(t, err)
	s, err := section.Parse(designation, set)
	must(t, err)
	return parts.Part{Mark: mark, Written: designation, Section: s, Plate: width > 0, Width: width, Length: length, Qty: qty, Material: "S355", Assembly: "Frame A"}
}

// bookOf works parts out as far as paper needs it: bars by section, plates by
// thickness.
func bookOf(list []parts.Part, stock bars.Stock) *parts.Book {
	book := &parts.Book{List: parts.List{File: "cut.csv", SHA256: "77aa01c20b7e45ff", Parts: list}, Results: make([]parts.Result, len(list))}
	groups, plates := map[string]int{}, map[units.MM]int{}
	members := [][]int{}
	for i, p := range list {
		book.Results[i] = parts.Result{KgM: p.Section.KgM, Mass: units.Kg(p.Section.KgM * float64(p.Length) / 1000 * float64(p.Qty))}
		if p.Plate {
			k, ok := plates[p.Section.Web]
			if !ok {
				k = len(book.Plates)
				plates[p.Section.Web] = k
				book.Plates = append(book.Plates, parts.Plate{Thickness: p.Section.Web, Material: p.Material})
			}
			area := float64(p.Width*p.Length) / 1e6 * float64(p.Qty)
			mass := units.Kg(area * float64(p.Section.Web) * section.Density / 1000)
			book.Results[i].Mass = mass
			plate := &book.Plates[k]
			plate.Parts, plate.Area, plate.Mass, plate.BoughtKg = append(plate.Parts, i), plate.Area+area, plate.Mass+mass, plate.BoughtKg+mass*1.15
			continue
		}
		key := p.Section.Designation + p.Material
		k, ok := groups[key]
		if !ok {
			k = len(book.Groups)
			groups[key] = k
			book.Groups = append(book.Groups, parts.Group{Section: p.Section.Designation, Material: p.Material, KgM: p.Section.KgM, Stocks: stock.Lengths, Kerf: stock.Kerf, EndLoss: stock.EndLoss})
			members = append(members, nil)
		}
		members[k] = append(members[k], i)
	}
	for g := range book.Groups {
		cutGroup(book, g, members[g], stock)
	}
	return book
}

func cutGroup(book *parts.Book, g int, members []int, stock bars.Stock) {
	var lengths []units.MM
	var of []int
	for _, i := range members {
		for range book.List.Parts[i].Qty {
			lengths, of = append(lengths, book.List.Parts[i].Length), append(of, i)
		}
	}
	plan, group := bars.Cut(lengths, stock), &book.Groups[g]
	group.Bars, group.LowerBound, group.Bought, group.Waste = len(plan.Bars), plan.LeastBars, plan.Bought, plan.Waste
	group.BoughtKg = units.Kg(group.KgM * float64(plan.Bought) / 1000)
	for _, k := range plan.TooLong {
		group.TooLong = append(group.TooLong, of[k])
	}
	for _, b := range plan.Bars {
		bar := parts.Bar{Group: g, Stock: b.Stock, Waste: b.Waste}
		for _, k := range b.Pieces {
			bar.Pieces = append(bar.Pieces, parts.Piece{Part: of[k], Length: lengths[k]})
		}
		book.Bars = append(book.Bars, bar)
	}
}

var sixMetres = bars.Stock{Lengths: []units.MM{6000}, Kerf: 3, EndLoss: 20}

// everyCut is a cut list with all that changes a cutting page: many alike, short
// and long pieces, ends of all kinds, plates, a piece that no bar holds.
func everyCut(t testing.TB) *parts.Book {
	list := []parts.Part{
		part(t, "C1", "SHS 100x100x5", 0, 2890, 12), part(t, "C2", "SHS 100x100x5", 0, 2640, 2), part(t, "C3", "SHS 100x100x5", 0, 320, 7),
		part(t, "B1", "IPE 200", 0, 5980, 6), part(t, "B2", "IPE 200", 0, 3610, 4), part(t, "B3", "IPE 200", 0, 1245.5, 9), part(t, "B9", "IPE 200", 0, 9400, 2),
		part(t, "D1", "CHS 60.3x3.2", 0, 1184, 8), part(t, "D2", "CHS 60.3x3.2", 0, 980, 4), part(t, "D3", "CHS 60.3x3.2", 0, 640, 4), part(t, "D4", "CHS 60.3x3.2", 0, 95, 30),
		part(t, "G1", "L 50x50x5", 0, 45, 180), part(t, "G2", "L 50x50x5", 0, 1200, 44),
		part(t, "F1", "FL 100x10", 0, 210, 24), part(t, "H1", "Ø20", 0, 2980, 160),
		part(t, "P1", "PL 12", 220, 220, 12), part(t, "P2", "PL 12", 140, 180.5, 24), part(t, "P3", "PL 8", 90, 160, 36),
	}
	list[4].Assembly, list[8].Assembly = "Frame B", "Stair 2"
	list[5].Note = "holes 2 x 14 at both ends"
	book := bookOf(list, sixMetres)
	r := book.Results
	r[7].Ends = []parts.End{{Joint: "K1", Copes: true, On: 114.3, Angle: 60, Wall: 3.2, Count: 8}, {Joint: "K2", Copes: true, On: 168.3, Angle: 90, Wall: 3.2, Count: 8}}
	r[8].Ends = []parts.End{{Joint: "K3", Angle: 45, Wall: 3.2, Count: 8}}
	r[9].Ends = []parts.End{{Joint: "K4", Copes: true, On: 114.3, Angle: 60, Wall: 3.2, Count: 3}}
	r[1].Ends = []parts.End{{Joint: "K5", Angle: 67.5, Count: 2}}
	r[0].Shrink = &[2]units.MM{0.4, 1.1}
	r[4].Shrink = &[2]units.MM{0.5, 0.5}
	r[15].Edges = []parts.Edge{{Joint: "B7", Groove: "single bevel", Angle: 45, RootFace: 2, Metres: 2.64},
		{Joint: "B8", Groove: "double J", Angle: 20, Depth: 7.5, RootFace: 2, Both: true, Metres: 12.64}}
	return book
}

// cutJob is a job with a cut list, with or without joints.
func cutJob(t testing.TB, joints []joint.Joint, book *parts.Book, opts price.Options) *price.Job {
	t.Helper()
	job := jobOf(t, joints, opts)
	job.Parts = book
	if len(joints) == 0 {
		job.List = joint.List{}
	}
	return job
}

// manyPieces is a long list of pieces of all lengths and few sections.
func manyPieces(t testing.TB, n int) []parts.Part {
	r := rand.New(rand.NewPCG(3, 5))
	out := make([]parts.Part, 0, n)
	names := []string{"SHS 100x100x5", "IPE 200", "CHS 60.3x3.2", "L 50x50x5"}
	for i := range n {
		out = append(out, part(t, fmt.Sprintf("P%04d", i), names[i%len(names)], 0, units.MM(40+r.IntN(4000)), 1))
	}
	return out
}
