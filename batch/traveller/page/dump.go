package page

import (
	"fmt"
	"math"
	"strings"
)

// Dump returns the document as text, one line an element, with millimetres to
// one decimal: what a golden test compares.
func (d *Document) Dump() string {
	var b strings.Builder
	fmt.Fprintf(&b, "document %q %q %s\n", d.Title, d.Subject, d.Date)
	for i, p := range d.Pages {
		p.dump(&b, i+1)
	}
	return b.String()
}

func (p *Page) dump(b *strings.Builder, number int) {
	fmt.Fprintf(b, "p%d %sx%s\n", number, mm(p.W), mm(p.H))
	for _, m := range p.Marks {
		fmt.Fprintf(b, "p%d mark %d %q\n", number, m.Level, m.Title)
	}
	for id, box := range p.Boxes {
		fmt.Fprintf(b, "p%d box %s %s,%s %sx%s\n", number, box.Name, mm(box.X), mm(box.Y), mm(box.W), mm(box.H))
		for _, s := range p.Shapes {
			if s.Box == BoxID(id) && s.Name != "" {
				fmt.Fprintf(b, "p%d   shape %s%s\n", number, s.Name, points(s.Points))
			}
		}
		for _, t := range p.Texts {
			if t.Box == BoxID(id) {
				fmt.Fprintf(b, "p%d   text %s,%s w%s %s %.3gpt %q\n", number, mm(t.X), mm(t.Y), mm(t.W), t.Face, t.Size, t.S)
			}
		}
	}
}

func points(ps []Point) string {
	var b strings.Builder
	for _, p := range ps {
		fmt.Fprintf(&b, " %s,%s", mm(p.X), mm(p.Y))
	}
	return b.String()
}

// mm prints a length to a tenth of a millimetre, never as minus zero.
func mm(v float64) string {
	v = math.Round(v*10) / 10
	if v == 0 {
		v = 0
	}
	return fmt.Sprintf("%.1f", v)
}
