package parts

import (
	"fmt"
	"math"
	"slices"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// welds lays the joints on the parts that they name. Rows of the same part share
// what stands on it by their pieces.
func (w *worker) welds() {
	for i := range w.touches {
		if len(w.touches[i]) == 0 {
			continue
		}
		rows := w.index.alike(i)
		pieces := w.pieces(i)
		all := w.onPart(i, pieces)
		for _, k := range rows {
			w.book.Results[k].Pieces = pieces
			w.share(k, &all, float64(w.book.List.Parts[k].Qty)/float64(pieces))
		}
	}
}

// onPart works out what the joints ask of a part, all its pieces together.
func (w *worker) onPart(i, pieces int) Result {
	var r Result
	low, high := 0.0, 0.0
	for _, t := range w.touches[i] {
		p := &w.plans[t.joint]
		r.Seam += round(p.Seam, metreDecimals) // as the joints' own column shows it
		r.WeldMetal += round(p.WeldMetal, weldDecimals)
		r.Edges = append(r.Edges, edgesOf(p, t)...)
		for _, e := range w.endsOf(i, p, t) {
			e.Template = w.templates[t.joint]
			r.Ends = append(r.Ends, e)
		}
		if s := shrinkOf(p, &w.book.List.Parts[i], t, pieces); s != nil {
			least, most := s.Range(p)
			low, high = low+least, high+most
			r.Shrinks = append(r.Shrinks, *s)
		}
	}
	for _, e := range r.Edges {
		r.Bevel += e.Metres
	}
	if high > 0 {
		r.Shrink, r.ShrinkWords = &[2]units.MM{units.MM(low), units.MM(high)}, shrinkWords(r.Shrinks)
	}
	r.Strip = w.strip(i)
	return r
}

// share gives a row its share of what stands on the part.
func (w *worker) share(row int, all *Result, share float64) {
	r := &w.book.Results[row]
	r.Seam = round(all.Seam*units.Metre(share), metreDecimals)
	r.WeldMetal = round(all.WeldMetal*units.Kg(share), weldDecimals)
	r.Bevel = round(all.Bevel*units.Metre(share), metreDecimals)
	r.ShrinkWords, r.Shrinks, r.Strip = all.ShrinkWords, all.Shrinks, all.Strip
	if all.Shrink != nil {
		r.Shrink = &[2]units.MM{round(all.Shrink[0], sizeDecimals), round(all.Shrink[1], sizeDecimals)}
	}
	for _, e := range all.Edges {
		e.Metres = round(e.Metres*units.Metre(share), metreDecimals)
		r.Edges = append(r.Edges, e)
	}
	for _, e := range all.Ends {
		e.Count = int(math.Round(float64(e.Count) * share))
		r.Ends = append(r.Ends, e)
	}
	for _, t := range w.touches[w.index.alike(row)[0]] {
		if !slices.Contains(r.Joints, t.joint) {
			r.Joints = append(r.Joints, t.joint)
		}
		if r.Earliest == "" {
			r.Earliest = w.plans[t.joint].Joint.Assembly
		}
	}
}

// prepared says how a groove asks the edges of its two parts to be cut.
type prepared struct {
	share         float64 // of the included angle on each bevelled edge
	first, second bool    // which part has a bevelled edge
	both          bool    // from both faces
}

var preparations = map[joint.Kind]prepared{
	joint.SingleV:     {0.5, true, true, false},
	joint.DoubleV:     {0.5, true, true, true},
	joint.SingleU:     {0.5, true, true, false},
	joint.DoubleU:     {0.5, true, true, true},
	joint.SingleBevel: {1, true, false, false},
	joint.DoubleBevel: {1, true, false, true},
	joint.SingleJ:     {1, true, false, false},
	joint.DoubleJ:     {1, true, false, true},
}

// edgesOf returns the edges of a part that a joint asks to be bevelled. The first
// part is the one whose edge meets: a bevel or a J is cut on it alone.
//
//	edge angle = α / 2 of a V or U, α of a bevel or J        (PARTS-8)
//	metres = n l / 1000        (PARTS-9)
//
// Symbols: α included angle of the groove [°]; n joints [-]; l length of one seam
// [mm].
// Valid: groove welds with a length.
// Assumes: a V opens alike on both parts; an edge cut from both faces counts once.
// Source: the preparation of the joint.
// Basis: derived.
// Errors: none.
func edgesOf(p *plan.Plan, t touch) []Edge {
	how, ok := preparations[p.Prep.Kind]
	if !ok || p.Joint.Length <= 0 {
		return nil
	}
	edge := Edge{Joint: p.Joint.Mark, Row: p.Joint.Place.Row, Groove: string(p.Prep.Kind), Angle: p.Prep.Angle * units.Degree(how.share),
		RootFace: p.Prep.RootFace, Depth: partDepth(&p.Prep), Both: how.both, Metres: units.Metre(float64(max(p.Joint.Qty, 1)) * float64(p.Joint.Length) / 1000)}
	var out []Edge
	if t.first && how.first {
		out = append(out, edge)
	}
	if t.second && how.second {
		out = append(out, edge)
	}
	return out
}

// partDepth returns the depth to which an edge is bevelled; zero where it goes
// through the thickness but for the root face.
func partDepth(p *plan.Prep) units.MM {
	thick := p.T1
	if thick <= 0 || p.T2 > 0 && p.T2 < thick {
		thick = p.T2
	}
	if p.Depth <= 0 || thick > 0 && math.Abs(float64(p.Depth+p.Depth2+p.RootFace-thick)) < 0.05 {
		return 0
	}
	return p.Depth
}

// endsOf returns the ends of a part that a joint asks to be cut otherwise than
// square: a round branch on a round chord to the curve in which they meet, anything
// that stands aslant on a face, and both of two tubes that are mitred, as a mitre.
func (w *worker) endsOf(i int, p *plan.Plan, t touch) []End {
	e := End{Joint: p.Joint.Mark, Row: p.Joint.Place.Row, Count: max(p.Joint.Qty, 1)}
	if p.Joint.Mitre > 0 {
		if t.first && t.second { // two pieces of one part meet
			e.Count *= 2
		}
		e.Angle, e.Wall = 90-p.Joint.Mitre, w.book.List.Parts[i].Section.Web
		return []End{e}
	}
	if !t.first {
		return nil
	}
	if b := p.Branch; b != nil {
		e.Copes, e.On, e.Angle, e.Wall = b.Chord > 0, b.Chord, b.Angle, b.Wall
		return []End{e}
	}
	s := &w.book.List.Parts[i].Section
	lean := p.Joint.Angle
	if s.Shape != section.Box || !p.Joint.AllRound || p.Prep.Kind != joint.Fillet || lean <= 0 || lean == 90 {
		return nil
	}
	e.Angle, e.Wall = min(lean, 180-lean), s.Web
	return []End{e}
}

// strip says which coating is taken off a part before it is welded. Brazing leaves
// zinc on.
func (w *worker) strip(i int) string {
	part := &w.book.List.Parts[i]
	zinc, paint, seam := false, false, units.Metre(0)
	for _, t := range w.touches[i] {
		p := &w.plans[t.joint]
		if slices.Contains(p.Cautions, "braze") {
			continue
		}
		zinc = zinc || w.metal(part.Material).zinc || part.Material == "" && slices.Contains(p.Cautions, "zinc")
		paint = paint || slices.Contains(p.Cautions, "paint")
		seam += p.Seam
	}
	what, key := "zinc", "coated:zinc"
	switch {
	case !zinc && !paint:
		return ""
	case !zinc:
		what, key = "paint or primer", "coated:paint"
	case paint:
		what = "zinc and paint"
	}
	return fmt.Sprintf("%s off, %s mm each side of the seam", what, number(float64(w.set.CleanWidth(key))))
}
