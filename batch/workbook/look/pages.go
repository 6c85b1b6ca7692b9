package look

// usualSize is the size of type, in points, that heights are given for.
const usualSize = 11

// Breaks returns the rows that begin a printed page, so that a block with a heading
// is not cut where it has room on the next page. Paper is what can be printed on, in
// points; the sheet is scaled to its width, never up.
func (g *Grid) Breaks(width, height float64) []int {
	if len(g.blocks) > 0 {
		return nil // the heights of rows that are filled later are not known
	}
	room := height / min(1, width/g.points()) * 0.97
	title := 0.0
	if g.Titles > 0 {
		title = g.height(g.Titles)
	}
	var breaks []int
	used, from := 0.0, 1
	for i := 0; i <= len(g.starts); i++ {
		to := len(g.rows)
		if i < len(g.starts) {
			to = g.starts[i] - 1
		}
		h := g.tall(from, to)
		if fits := title+h <= room; used > 0 && used+h > room && (fits || room-used < fewLines*g.height(0)) {
			breaks, used = append(breaks, from), title
		}
		for used += h; used > room; {
			used += title - room
		}
		from = to + 1
	}
	return breaks
}

// fewLines is how many lines of a block longer than a page are too few to begin with.
const fewLines = 10

// points is the width of the columns of the first page: a character of the usual font
// has seven pixels, each column five more.
func (g *Grid) points() float64 {
	widths := g.Widths
	if g.Split > 0 {
		widths = widths[:g.Split-1]
	}
	sum := 0.0
	for _, w := range widths {
		sum += (7*w + 5) * 0.75
	}
	return sum
}

// tall is the height of some rows together.
func (g *Grid) tall(from, to int) float64 {
	sum := 0.0
	for row := from; row <= to; row++ {
		sum += g.height(row)
	}
	return sum
}
