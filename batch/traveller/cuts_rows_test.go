package traveller

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/parts"
	"seamtally/batch/section"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// What is told of one piece in more than two lines stands in one field: no line parts it,
// and no page.
func TestRowsOfOnePieceStayTogether(t *testing.T) {
	for _, first := range []int{0, 1, 2, 3} { // in what the rows before a page's end begin
		var list []parts.Part
		for i := range 70 {
			p := part(t, "G"+strconv.Itoa(i), "L 50x50x5", 0, units.MM(300+7*i), 2)
			if i >= first {
				p.Note = strings.Repeat("mark both ends before it is sawn ", 4)
			}
			list = append(list, p)
		}
		book := bookOf(list, sixMetres)
		doc := faultless(t, cutJob(t, nil, book, metric))
		found := 0
		for _, p := range doc.Pages {
			for id, box := range p.Boxes {
				if box.Name != "pieces row" && box.Name != "plates row" || marked(p, page.BoxID(id)) {
					continue
				}
				found++
				if above := p.Boxes[id-1]; above.Name != box.Name {
					t.Errorf("first %d: the rest of a row stands below %q", first, above.Name)
				} else if ruled(p, page.BoxID(id-1)) {
					t.Errorf("first %d: a line parts the rows of one piece", first)
				}
			}
		}
		if found == 0 {
			t.Errorf("first %d: no row belongs to another", first)
		}
	}
}

// marked tells whether a row begins with the mark of a piece.
func marked(p *page.Page, box page.BoxID) bool {
	for _, text := range p.Texts {
		if text.Box == box && text.X < p.Boxes[box].X+2 {
			return true
		}
	}
	return false
}

// ruled tells whether a line closes a row.
func ruled(p *page.Page, box page.BoxID) bool {
	r := p.Boxes[box].Rect
	for _, s := range p.Shapes {
		if s.Box == box && len(s.Points) == 2 && s.Points[0].Y == s.Points[1].Y && math.Abs(s.Points[0].Y-r.Bottom()) < 0.01 {
			return true
		}
	}
	return false
}

// What the yard is asked for is one amount: the area of a plate in the list of what to
// buy weighs what stands beside it, and the waste is its share of that.
func TestPlatesAreBoughtByOneAmount(t *testing.T) {
	book := everyCut(t)
	doc := faultless(t, cutJob(t, nil, book, metric))
	rows := map[string][]string{}
	for i, p := range doc.Pages {
		for _, text := range p.Texts {
			if p.Boxes[text.Box].Name == "buy row" {
				k := fmt.Sprint(i, " ", text.Box)
				rows[k] = append(rows[k], text.S)
			}
		}
	}
	seen := 0
	for _, row := range rows {
		var thick, area, mass, waste float64
		if n, _ := fmt.Sscanf(row[0], "Plate %f", &thick); n == 0 {
			continue
		}
		for _, cell := range row[1:] {
			if v, unit, ok := strings.Cut(cell, " "); ok {
				f, _ := strconv.ParseFloat(v, 64)
				switch unit {
				case "m²":
					area = f
				case "kg":
					mass = f
				case "%":
					waste = f
				}
			}
		}
		seen++
		if weighs := area * thick * section.Density / 1000; math.Abs(weighs-mass) > 0.015*mass {
			t.Errorf("%q: that area weighs %.1f kg", row, weighs)
		}
		if want := 100 * (1 - 1/1.15); math.Abs(waste-want) > 0.06 {
			t.Errorf("%q: the waste is %.1f %%", row, want)
		}
	}
	if seen != len(book.Plates) || seen == 0 {
		t.Errorf("%d of %d plates in the list of what to buy", seen, len(book.Plates))
	}
}
