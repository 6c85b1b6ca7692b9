package cutting

import (
	"math"
	"slices"

	"seamtally/batch/parts"
	"seamtally/batch/units"
)

// Of returns what the cutting pages of a worked cut list show: a section for each
// of its groups of bars, and its plates.
func Of(book *parts.Book) ([]Section, []Plate) {
	if book == nil {
		return nil, nil
	}
	ends := make([][][2]End, len(book.List.Parts))
	for i := range book.List.Parts {
		ends[i] = endsOf(book.List.Parts[i].Qty, resultOf(book, i).Ends)
	}
	sections := make([]Section, len(book.Groups))
	for g := range book.Groups {
		sections[g] = sectionOf(book, g)
	}
	used := make([]int, len(book.List.Parts)) // pieces of each part that are dealt out
	for _, b := range book.Bars {
		sections[b.Group].add(book, b, ends, used)
	}
	groupOf := make([]int, len(book.List.Parts)) // one more than the group that holds a part
	for _, b := range book.Bars {
		for _, p := range b.Pieces {
			groupOf[p.Part] = b.Group + 1
		}
	}
	for i, g := range groupOf {
		if g > 0 {
			sections[g-1].Rows = append(sections[g-1].Rows, rowOf(book, i, used[i], ends[i]))
		}
	}
	return sections, platesOf(book)
}

// resultOf returns what follows for a part; nothing where the book has none.
func resultOf(book *parts.Book, i int) *parts.Result {
	if i < len(book.Results) {
		return &book.Results[i]
	}
	return &parts.Result{}
}

func sectionOf(book *parts.Book, g int) Section {
	group := &book.Groups[g]
	s := Section{Name: group.Section, Material: group.Material, Kerf: sane(group.Kerf), EndLoss: sane(group.EndLoss), LeastBars: group.LowerBound, BoughtKg: group.BoughtKg}
	told := map[int]bool{}
	for _, i := range group.TooLong {
		if !told[i] {
			told[i] = true
			p := &book.List.Parts[i]
			s.TooLong = append(s.TooLong, rowOf(book, i, p.Qty, endsOf(p.Qty, resultOf(book, i).Ends)))
		}
	}
	return s
}

// add takes a bar in. The pieces of a part are dealt out in order, each with its
// own ends.
func (s *Section) add(book *parts.Book, b parts.Bar, ends [][][2]End, used []int) {
	bar := Bar{Stock: b.Stock}
	for _, p := range b.Pieces {
		piece := Piece{Mark: book.List.Parts[p.Part].Name(), Length: p.Length, Ends: squareEnds}
		if k := used[p.Part]; k < len(ends[p.Part]) {
			piece.Ends = ends[p.Part][k]
		}
		used[p.Part]++
		bar.Pieces = append(bar.Pieces, len(s.Pieces))
		s.Pieces = append(s.Pieces, piece)
	}
	s.Bars = append(s.Bars, bar)
	s.Kerf = min(s.Kerf, s.widest(bar))
}

// widest returns the widest kerf with which a bar still holds its pieces: what is
// drawn stays within the bar whatever a book says.
func (s *Section) widest(b Bar) units.MM {
	free := b.Stock
	for _, k := range b.Pieces {
		free -= s.Pieces[k].Length
	}
	return max(0, free) / units.MM(max(1, len(b.Pieces)-1))
}

// sane returns a length as it is, and nothing for what is no length.
func sane(v units.MM) units.MM {
	if f := float64(v); math.IsNaN(f) || math.IsInf(f, 0) || f < 0 {
		return 0
	}
	return v
}

func rowOf(book *parts.Book, i, count int, ends [][2]End) Row {
	p, r := &book.List.Parts[i], resultOf(book, i)
	row := Row{Mark: p.Name(), Assembly: p.Assembly, Note: p.Note, Width: p.Width, Length: p.Length, Count: count, Ends: squareEnds, Shrink: r.Shrink, Edges: alike(r.Edges)}
	if row.Assembly == "" {
		row.Assembly = r.Earliest
	}
	if len(ends) > 0 {
		row.Ends = ends[0]
	}
	if r.Mass > 0 && p.Qty > 0 {
		row.Each = r.Mass / units.Kg(p.Qty)
	}
	return row
}

// alike puts edges that are bevelled alike together: the saw and the torch do not
// ask for which joint.
func alike(edges []parts.Edge) []parts.Edge {
	var out []parts.Edge
	for _, e := range edges {
		k := slices.IndexFunc(out, func(o parts.Edge) bool {
			return o.Groove == e.Groove && o.Angle == e.Angle && o.RootFace == e.RootFace && o.Depth == e.Depth && o.Both == e.Both
		})
		if k < 0 {
			out = append(out, e)
			continue
		}
		out[k].Metres += e.Metres
	}
	return out
}

func platesOf(book *parts.Book) []Plate {
	out := make([]Plate, len(book.Plates))
	for i, plate := range book.Plates {
		out[i] = Plate{Thickness: plate.Thickness, Material: plate.Material, Area: plate.Area, Mass: plate.Mass, BoughtKg: plate.BoughtKg}
		for _, k := range plate.Parts {
			qty := book.List.Parts[k].Qty
			out[i].Rows = append(out[i].Rows, rowOf(book, k, qty, nil))
			out[i].Pieces += qty
		}
	}
	return out
}

var squareEnds = [2]End{{Kind: Square}, {Kind: Square}}

// endsOf returns the ends of each of a part's pieces. Ends that are as many as the
// pieces, or twice as many, are one or both of each. With any other number nobody
// can tell which piece has them: all are left to the drawing.
func endsOf(qty int, all []parts.End) [][2]End {
	if qty < 1 {
		return nil
	}
	var each []End
	for _, e := range all {
		end := endOf(e)
		if end.Kind == Square || e.Count == 0 {
			continue
		}
		if e.Count%qty != 0 {
			each = []End{{Kind: Other}, {Kind: Other}}
			break
		}
		for range min(e.Count/qty, 3) {
			each = append(each, end)
		}
	}
	one := squareEnds
	if len(each) > 2 {
		one = [2]End{{Kind: Other}, {Kind: Other}}
	} else {
		copy(one[:], each)
	}
	out := make([][2]End, qty)
	for i := range out {
		out[i] = one
	}
	return out
}

// endOf returns an end as the saw sees it.
func endOf(e parts.End) End {
	off := units.Degree(math.Abs(90 - float64(e.Angle)))
	switch {
	case e.Copes:
		return End{Saddle, e.Angle, e.On, e.Template}
	case e.Angle == 0:
		return End{Kind: Other}
	case off < 0.05:
		return End{Kind: Square}
	}
	return End{Kind: Mitre, Angle: off, Template: e.Template}
}
