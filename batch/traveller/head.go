package traveller

import (
	"strings"
	"unicode/utf8"

	"seamtally/batch/traveller/page"
)

// head is what the header of a page says beside the job.
type head struct {
	assembly, drawing, rev string
	sheet                  string // "set-up 3 of 8"
	code                   string // what a scanner reads; blank: no code
}

// newPage starts a page with its header; the footer follows when all pages are
// known.
func (b *builder) newPage(h head) *page.Page {
	p := b.doc.Add(b.w, b.h)
	r := page.Rect{X: b.left, Y: marginEdge, W: b.width, H: headHeight}
	box := p.Box("header", r)
	cells := page.Rect{X: r.X, Y: r.Y, W: r.W - codeSize - 2, H: r.H}.Columns(3, 30, 30, 30, 31, 20, 27)
	b.code(p, page.Rect{X: r.Right() - codeSize, Y: r.Y - 1, W: codeSize, H: codeSize}, h.code)
	entries := [][2]string{
		{"head.job", b.name}, {"head.assembly", dash(h.assembly)}, {"head.drawing", dash(h.drawing)},
		{"head.rev", dash(h.rev)}, {"head.date", dash(b.job.Opts.Date)}, {"head.sheet", h.sheet},
	}
	for i, e := range entries {
		c := cells[i]
		p.Write(box, c.X, c.Y+3, c.W, page.Left, label, b.say(e[0]))
		if e[0] == "head.rev" {
			b.revision(p, box, c, e[1])
		} else {
			b.headValue(p, box, c, e[1])
		}
		if i > 0 {
			p.Line(box, c.X-1.5, c.Y, c.X-1.5, c.Bottom()-2.5, 0.15, 0.4)
		}
	}
	p.Line(box, r.X, r.Bottom(), r.Right(), r.Bottom(), 0.9, 0)
	return p
}

var headStyle = page.Style{Face: page.Bold, Size: 11}

// headValue writes a value of the header in one line, or in two smaller ones.
func (b *builder) headValue(p *page.Page, box page.BoxID, c page.Rect, text string) {
	if got, _ := page.Fit(headStyle, text, c.W); got.Size >= 9 {
		p.Write(box, c.X, c.Y+10, c.W, page.Left, headStyle, text)
		return
	}
	s := page.Style{Face: page.Bold, Size: 8}
	p.Lines(box, c.X, c.Y+7.4, c.W, s, page.Wrap(s, text, c.W, 2))
}

// revision writes the letter or number of a revision large, and beside it what the
// list says of the change: an old sheet is told by the letter.
func (b *builder) revision(p *page.Page, box page.BoxID, c page.Rect, text string) {
	big := page.Style{Face: page.Bold, Size: 15}
	letter, what := splitRevision(page.Clean(text))
	if what == "" {
		if got, _ := page.Fit(big, text, c.W); got.Size < 9 {
			b.headValue(p, box, c, text)
			return
		}
		p.Write(box, c.X, c.Y+10, c.W, page.Left, big, text)
		return
	}
	p.Write(box, c.X, c.Y+10, 9, page.Left, big, letter)
	x := min(big.Width(letter), 9) + 1.5
	p.Lines(box, c.X+x, c.Y+7.4, c.W-x, small, page.Wrap(small, what, c.W-x, 2))
}

// splitRevision parts "B - stair turned" into the letter and what follows; a text that
// does not begin so stays whole.
func splitRevision(text string) (letter, what string) {
	const marks = "-–—:,"
	at := strings.IndexAny(text, marks+" ")
	if at <= 0 || utf8.RuneCountInString(text[:at]) > 3 {
		return text, ""
	}
	rest := strings.TrimLeft(text[at:], " ")
	what = strings.TrimLeft(rest, marks+" ")
	if what == "" || !strings.Contains(rest, " ") || !strings.ContainsAny(rest[:1], marks) && !strings.HasPrefix(rest, "–") && !strings.HasPrefix(rest, "—") {
		return text, ""
	}
	return text[:at], what
}

// dash stands for what the list does not say.
func dash(s string) string {
	if strings.TrimSpace(s) == "" {
		return "–"
	}
	return s
}
