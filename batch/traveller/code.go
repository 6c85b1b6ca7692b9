package traveller

import (
	"strconv"
	"unicode/utf8"

	"rsc.io/qr"

	"seamtally/batch/plan"
	"seamtally/batch/traveller/page"
)

// codeSize is the side of the square that a code takes in the header, its quiet
// zone included; codeMark is how much of a mark it carries.
const (
	codeSize  = 16.0
	codeQuiet = 4 // modules of white around it
	codeMark  = 40
)

// codeText is what the code of a sheet says: which list, which row of it, and the
// mark that stands there.
func (b *builder) codeText(p *plan.Plan) string {
	mark := p.Joint.Mark
	if utf8.RuneCountInString(mark) > codeMark {
		mark = string([]rune(mark)[:codeMark])
	}
	return hashPrefix(b.job.List.SHA256) + "/" + strconv.Itoa(p.Joint.Place.Row) + "/" + page.Clean(mark)
}

// hashPrefix is the part of a list's hash that is printed.
func hashPrefix(hash string) string {
	if len(hash) > 10 {
		return hash[:10]
	}
	return hash
}

// asUnicode marks a text that is not plain ASCII as UTF-8: readers guess another
// encoding otherwise.
func asUnicode(text string) string {
	for _, r := range text {
		if r >= utf8.RuneSelf {
			return "\ufeff" + text
		}
	}
	return text
}

// code draws a text as a scannable square, a bar for each stretch of dark modules
// in a row. A text that no code can hold is left out: the sheet says the same in
// words.
func (b *builder) code(p *page.Page, r page.Rect, text string) {
	if text == "" {
		return
	}
	made, err := qr.Encode(asUnicode(text), qr.M)
	if err != nil {
		return
	}
	box := p.Box("code", r)
	n := made.Size
	module := r.W / float64(n+2*codeQuiet)
	for y := range n {
		for x := 0; x < n; {
			end := x
			for end < n && made.Black(end, y) {
				end++
			}
			if end > x {
				at := page.Point{X: r.X + float64(x+codeQuiet)*module, Y: r.Y + float64(y+codeQuiet)*module}
				p.Frame(box, page.Rect{X: at.X, Y: at.Y, W: float64(end-x) * module, H: module}, 0, 0)
			}
			x = max(end, x+1)
		}
	}
}
