package traveller

import (
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
)

// index lists the assemblies of a job with their pages, and what else there is.
func (b *builder) index(all []setup.Assembly, templates int) {
	f := b.flow(head{sheet: b.say("head.index")})
	f.p.Mark(0, b.say("head.index"))
	r, box := f.take("index title", 14)
	f.p.Write(box, r.X, r.Y+9, r.W, page.Left, page.Style{Face: page.Bold, Size: 26}, b.name)
	t := table{name: "index", height: 9, columns: []column{
		{"index.assembly", 52, page.Left}, {"index.drawing", 48, page.Left}, {"index.joints", 15, page.Right},
		{"index.seam", 22, page.Right}, {"index.labour", 20, page.Right}, {"index.sheets", 14, page.Right}, {"index.page", 14, page.Right},
	}}
	rows := [][]cell{}
	if sheets := b.sawSheets(); sheets > 0 {
		rows = append(rows, []cell{{text: b.say("saw.title"), bold: true}, {}, {}, {}, {}, {text: strconv.Itoa(sheets)}})
	}
	for i := range all {
		a := &all[i]
		rows = append(rows, []cell{
			{text: b.assemblyName(a), bold: true}, {text: dash(strings.Join(a.Drawings, ", "))},
			{text: strconv.Itoa(len(a.Plans))}, {text: b.show.Seam(a.Seam).String()}, {text: b.hours(a.Labour)},
			{text: strconv.Itoa(len(a.Setups()))},
		})
	}
	if templates > 0 {
		rows = append(rows, []cell{{text: b.say("wrap.title"), bold: true}, {}, {}, {}, {}, {text: strconv.Itoa(templates)}})
	}
	b.refs.index = f.rows(t, rows)
}

// refs is what names the page of something, to be filled in when all pages stand.
type refs struct {
	index []placed // rows: the cutting pages, one for each assembly, the templates
	next  int      // row of the index that is not referred yet
	all   []ref
	cuts  map[*page.Page]bool // pages that come from the cut list
}

// ref is a cell that takes the number of a page.
type ref struct {
	row  placed
	cell int
	to   *page.Page
}

func newRefs() *refs { return &refs{cuts: map[*page.Page]bool{}} }

func (r *refs) add(row placed, cell int, to *page.Page) { r.all = append(r.all, ref{row, cell, to}) }

// entry takes the next row of the index for what begins with a page.
func (r *refs) entry(pages []*page.Page) {
	if len(pages) == 0 || r.next >= len(r.index) {
		return
	}
	row := r.index[r.next]
	r.next++
	r.add(row, len(row.cells)-1, pages[0])
}

// fill writes the numbers of the pages.
func (r *refs) fill(pages []*page.Page) {
	for _, x := range r.all {
		c := x.row.cells[x.cell]
		n := slices.Index(pages, x.to) + 1
		x.row.p.Write(x.row.box, c.X+0.8, c.Y+c.H/2+strong.Ascent()/2-0.3, c.W-1.6, page.Right, strong, strconv.Itoa(n))
	}
}
