package report

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strings"

	"github.com/gocarina/gocsv"

	"seamtally/batch/parts"
	"seamtally/batch/price"
)

// part is one row of the cut list under the result keys: all its pieces together
// unless the key is of a size.
type part struct {
	Part      string `csv:"part" json:"part"`
	Row       number `csv:"row" json:"row"`
	Assembly  string `csv:"assembly" json:"assembly"`
	Section   string `csv:"section" json:"section"`
	Material  string `csv:"material" json:"material"`
	Length    number `csv:"length_mm" json:"length_mm"`
	Width     number `csv:"width_mm" json:"width_mm"`
	Qty       number `csv:"qty" json:"qty"`
	KgM       number `csv:"kg_m" json:"kg_m"`
	Mass      number `csv:"mass_kg" json:"mass_kg"`
	Perimeter number `csv:"perimeter_mm" json:"perimeter_mm"`
	Paint     number `csv:"paint_m2" json:"paint_m2"`
	SeamM     number `csv:"seam_m" json:"seam_m"`
	WeldKg    number `csv:"weld_kg" json:"weld_kg"`
	ShrinkLow number `csv:"shrink_low_mm" json:"shrink_low_mm"`
	ShrinkTop number `csv:"shrink_high_mm" json:"shrink_high_mm"`
	Bevel     number `csv:"bevel_m" json:"bevel_m"`
	Edges     edges  `csv:"edges" json:"edges"`
	Ends      ends   `csv:"ends" json:"ends"`
	Strip     string `csv:"strip" json:"strip"`
	Earliest  string `csv:"earliest_assembly" json:"earliest_assembly"`
	Source    string `csv:"source" json:"source"`
	Basis     string `csv:"basis" json:"basis"`
	Checks    checks `csv:"checks" json:"checks"`
}

func newPart(book *parts.Book, i int) part {
	p, r := &book.List.Parts[i], &book.Results[i]
	out := part{
		Part: p.Mark, Row: count(p.Place.Row), Assembly: p.Assembly, Section: p.Section.Designation, Material: p.Material,
		Length: positive(p.Length, sizeDecimals), Width: positive(p.Width, sizeDecimals), Qty: count(p.Qty),
		KgM: positive(r.KgM, price.KgDecimals), Mass: positive(r.Mass, price.KgDecimals), Perimeter: positive(r.Perimeter, sizeDecimals),
		Paint: positive(r.Paint, price.MetreDecimals), SeamM: positive(r.Seam, price.MetreDecimals), WeldKg: positive(r.WeldMetal, price.KgDecimals),
		Bevel: positive(r.Bevel, price.MetreDecimals), Edges: newEdges(r.Edges), Ends: newEnds(r.Ends), Strip: r.Strip, Earliest: r.Earliest,
		Source: p.Section.Source, Basis: p.Section.Basis, Checks: newChecks(r.Checks),
	}
	if r.Shrink != nil {
		out.ShrinkLow, out.ShrinkTop = of(r.Shrink[0], sizeDecimals), of(r.Shrink[1], sizeDecimals)
	}
	return out
}

// PartsCSV returns the results of the cut list: one row for each part, in the order
// of the list, in UTF-8 with a point as decimal mark.
func PartsCSV(job *price.Job) ([]byte, error) {
	rows := []part{}
	for i := range job.Parts.List.Parts {
		r := newPart(job.Parts, i)
		for _, text := range []*string{&r.Part, &r.Assembly, &r.Section, &r.Material, &r.Strip, &r.Earliest} {
			*text = Guard(*text)
		}
		rows = append(rows, r)
	}
	var out bytes.Buffer
	if err := gocsv.MarshalCSV(rows, gocsv.NewSafeCSVWriter(csv.NewWriter(&out))); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// edge is an edge to be bevelled.
type edge struct {
	Joint    string `json:"joint"`
	Row      number `json:"row"`
	Groove   string `json:"groove"`
	Angle    number `json:"angle_deg"`
	RootFace number `json:"root_face_mm"`
	Depth    number `json:"depth_mm"`
	Both     bool   `json:"both_faces"`
	Metres   number `json:"bevel_m"`
}

type edges []edge

func newEdges(list []parts.Edge) edges {
	out := edges{}
	for _, e := range list {
		out = append(out, edge{e.Joint, count(e.Row), e.Groove, of(e.Angle, 1), of(e.RootFace, sizeDecimals), positive(e.Depth, sizeDecimals), e.Both, of(e.Metres, price.MetreDecimals)})
	}
	return out
}

// MarshalCSV names the joints that ask for the edges.
func (list edges) MarshalCSV() (string, error) {
	return marksOf(list, func(e edge) string { return e.Joint }), nil
}

// end is an end of a piece that is not cut square.
type end struct {
	Joint  string `json:"joint"`
	Row    number `json:"row"`
	Saddle bool   `json:"saddle"`
	On     number `json:"on_mm"`
	Angle  number `json:"angle_deg"`
	Wall   number `json:"wall_mm"`
	Count  int    `json:"count"`
	// Template is the number of the paper that marks the cut.
	Template number `json:"template"`
}

type ends []end

func newEnds(list []parts.End) ends {
	out := ends{}
	for _, e := range list {
		out = append(out, end{e.Joint, count(e.Row), e.Copes, positive(e.On, sizeDecimals), of(e.Angle, 1), positive(e.Wall, sizeDecimals), e.Count, positive(float64(e.Template), 0)})
	}
	return out
}

// MarshalCSV names the joints that ask for the ends.
func (list ends) MarshalCSV() (string, error) {
	return marksOf(list, func(e end) string { return e.Joint }), nil
}

// marksOf are the marks of joints in one cell, each once.
func marksOf[T any](list []T, mark func(T) string) string {
	var marks []string
	for _, e := range list {
		if m := mark(e); m != "" && !slices.Contains(marks, m) {
			marks = append(marks, m)
		}
	}
	return Guard(strings.Join(marks, "; "))
}

// bar is one bar as bought and what is cut from it.
type bar struct {
	Section  string  `json:"section"`
	Material string  `json:"material"`
	Stock    number  `json:"stock_mm"`
	Pieces   []piece `json:"pieces"`
	Waste    number  `json:"waste_mm"`
}

type piece struct {
	Part   string `json:"part"`
	Length number `json:"length_mm"`
}

// plate is the plates of one thickness and material.
type plate struct {
	Thickness number `json:"thickness_mm"`
	Material  string `json:"material"`
	Area      number `json:"area_m2"`
	Mass      number `json:"mass_kg"`
	Bought    number `json:"bought_kg"`
	Cost      number `json:"cost"`
}

// group is the bars of one section and material.
type group struct {
	Section  string `json:"section"`
	Material string `json:"material"`
	Bars     int    `json:"bars"`
	Bound    int    `json:"bars_lower_bound"`
	Bought   number `json:"bought_mm"`
	Waste    number `json:"waste_mm"`
	BoughtKg number `json:"bought_kg"`
	Cost     number `json:"cost"`
}

// partTotals are the totals of a cut list.
type partTotals struct {
	Parts        int    `json:"parts"`
	Pieces       int    `json:"pieces"`
	Mass         number `json:"mass_kg"`
	Paint        number `json:"paint_m2"`
	WeldPerTonne number `json:"weld_kg_per_t"`
	Bars         int    `json:"bars"`
	Bound        int    `json:"bars_lower_bound"`
	BoughtKg     number `json:"material_bought_kg"`
	Cost         number `json:"material_cost"` // apart from the welding price
}

// cuts is what a document says of a cut list.
type cuts struct {
	List   source  `json:"cut_list"`
	Parts  []part  `json:"parts"`
	Bars   []bar   `json:"bars"`
	Groups []group `json:"bar_groups"`
	Plates []plate `json:"plates"`
	Found  checks  `json:"part_checks"`
}

// newCuts returns nil where there is no cut list.
func newCuts(b *parts.Book) *cuts {
	if b == nil {
		return nil
	}
	c := &cuts{List: source{b.List.File, b.List.Sheet, b.List.SHA256}, Parts: []part{}, Bars: []bar{}, Groups: []group{}, Plates: []plate{}, Found: newChecks(b.Checks)}
	for i := range b.List.Parts {
		c.Parts = append(c.Parts, newPart(b, i))
	}
	for _, x := range b.Bars {
		g := &b.Groups[x.Group]
		one := bar{Section: g.Section, Material: g.Material, Stock: of(x.Stock, sizeDecimals), Pieces: []piece{}, Waste: of(x.Waste, sizeDecimals)}
		for _, p := range x.Pieces {
			one.Pieces = append(one.Pieces, piece{b.List.Parts[p.Part].Name(), of(p.Length, sizeDecimals)})
		}
		c.Bars = append(c.Bars, one)
	}
	for _, g := range b.Groups {
		c.Groups = append(c.Groups, group{g.Section, g.Material, g.Bars, g.LowerBound, of(g.Bought, sizeDecimals), of(g.Waste, sizeDecimals), of(g.BoughtKg, price.KgDecimals), positive(g.Cost, price.MoneyDecimals)})
	}
	for _, p := range b.Plates {
		c.Plates = append(c.Plates, plate{of(p.Thickness, sizeDecimals), p.Material, of(p.Area, price.MetreDecimals), of(p.Mass, price.KgDecimals), of(p.BoughtKg, price.KgDecimals), positive(p.Cost, price.MoneyDecimals)})
	}
	return c
}

func newPartTotals(b *parts.Book) *partTotals {
	if b == nil {
		return nil
	}
	t := &b.Totals
	return &partTotals{Parts: t.Rows, Pieces: t.Pieces, Mass: of(t.Mass, price.KgDecimals), Paint: of(t.Paint, price.MetreDecimals), WeldPerTonne: positive(t.WeldPerTonne, price.KgDecimals),
		Bars: t.Bars, Bound: t.LowerBound, BoughtKg: of(t.BoughtKg, price.KgDecimals), Cost: positive(t.Cost, price.MoneyDecimals)}
}
