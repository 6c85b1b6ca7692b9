package traveller

import (
	"slices"
	"strconv"
	"strings"

	"seamtally/batch/traveller/cutting"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
)

// cuts are the cutting pages of a job being laid out.
type cuts struct {
	*builder
	level int // of the bookmark that holds them all
}

// cuts lays out the cutting pages in a document of their own: what to buy, then the
// sections and the plates, as many on a sheet as have room.
func (b *builder) cuts(level int) []*page.Page {
	own := *b
	own.doc = &page.Document{}
	c := &cuts{builder: &own, level: level}
	if b.sawSheets() == 0 {
		return nil
	}
	var rows []placed
	if len(b.saw.blocks) > 1 {
		rows = c.overview()
	}
	var firsts []*page.Page // of each section and of the plates
	for i := range b.saw.sheets {
		firsts = append(firsts, c.sheet(i)...)
	}
	for i, row := range rows {
		b.refs.add(row, 5, firsts[min(i, len(firsts)-1)])
	}
	for _, p := range own.doc.Pages {
		b.refs.cuts[p] = true
	}
	return own.doc.Pages
}

// sheet lays out a cutting sheet and returns on which page each of its blocks begins.
func (c *cuts) sheet(number int) (firsts []*page.Page) {
	blocks := c.saw.sheets[number]
	var names []string
	for _, k := range blocks {
		for _, name := range k.assemblies() {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	f := c.flow(head{assembly: strings.Join(names, ", "), sheet: c.say("saw.head", strconv.Itoa(number+1), strconv.Itoa(len(c.saw.sheets)))})
	if len(c.saw.blocks) == 1 {
		f.p.Mark(c.level, c.say("saw.title"))
	}
	for i, k := range blocks {
		if i > 0 {
			f.gap(blockGap)
		}
		firsts = append(firsts, f.p)
		f.p.Mark(c.level+1, f.blockName(k))
		f.block(k)
	}
	return firsts
}

// overview lists what to buy, with the sheet on which it is cut.
func (c *cuts) overview() []placed {
	f := c.flow(head{sheet: c.say("saw.title")})
	f.p.Mark(c.level, c.say("saw.title"))
	f.heading(c.say("saw.overview"), "")
	t := table{name: "buy", height: 9, columns: []column{
		{"saw.what", 46, page.Left}, {"saw.material", 22, page.Left}, {"saw.buy", 46, page.Left}, {"saw.mass", 20, page.Right},
		{"saw.waste", 19, page.Right}, {"index.page", 15, page.Right}, {"col.heat", 22, page.Left},
	}}
	var rows [][]cell
	var mass units.Kg
	for i := range c.saw.sections {
		s := &c.saw.sections[i]
		mass += s.BoughtKg
		rows = append(rows, []cell{{text: c.sectionName(s.Name), bold: true}, {text: dash(s.Material)}, {text: c.stocks(s)}, {text: c.load(s.BoughtKg)}, {text: c.waste(s.Sums())}})
	}
	for i := range c.saw.plates {
		p := &c.saw.plates[i]
		mass += p.BoughtKg
		area, waste, ok := p.Bought()
		share := ""
		if ok {
			share = c.show.Fixed(100*waste, 1) + " %"
		}
		rows = append(rows, []cell{{text: c.say("saw.plate", c.show.Size(p.Thickness).String()), bold: true}, {text: dash(p.Material)}, {text: c.show.Surface(area).String()}, {text: c.load(p.BoughtKg)}, {text: share}})
	}
	rows = append(rows, []cell{{text: c.say("saw.total"), bold: true}, {}, {}, {text: c.load(mass), bold: true}})
	return f.rows(t, rows)[:len(rows)-1]
}

// heading is the large title of a sheet, with words at its right end.
func (f *flow) heading(text, beside string) {
	r, box := f.take("cutting title", 13)
	f.p.Write(box, r.X, r.Y+9, r.W*0.66, page.Left, page.Style{Face: page.Bold, Size: 22}, text)
	f.p.Write(box, r.X+r.W*0.68, r.Y+9, r.W*0.32, page.Right, title, beside)
}

// plainNames are the words for sections that are no names of a standard.
var plainNames = map[string]string{"flat": "saw.flat", "round": "saw.round", "square": "saw.square"}

// sectionName returns a designation in the language of the sheet.
func (b *builder) sectionName(designation string) string {
	word, size, ok := strings.Cut(designation, " ")
	if key, plain := plainNames[word]; ok && plain {
		return b.say(key, size)
	}
	return designation
}

// stocks says how many bars of which length: "4 × 6000 mm, 1 × 12000 mm".
func (b *builder) stocks(s *cutting.Section) string {
	var out []string
	for _, k := range s.Stocks() {
		out = append(out, strconv.Itoa(k.Count)+" × "+b.show.Stock(k.Length).String())
	}
	return dash(strings.Join(out, ", "))
}

// load prints a mass, or a dash where it is not known.
func (b *builder) load(v units.Kg) string {
	if v <= 0 {
		return "–"
	}
	return b.show.Load(v).String()
}

func (b *builder) waste(s cutting.Sums) string {
	if s.Bought <= 0 {
		return "–"
	}
	return b.show.Fixed(100*float64(s.Waste/s.Bought), 1) + " %"
}

// sawFacts is one line of large figures.
func (f *flow) sawFacts(s *cutting.Section) {
	sums := s.Sums()
	least := "–"
	if s.LeastBars > 0 {
		least = strconv.Itoa(s.LeastBars)
	}
	bought := f.show.Seam(units.Metre(sums.Bought / 1000)).String()
	f.figures("saw facts", [][2]string{
		{"saw.bars", strconv.Itoa(sums.Bars)}, {"saw.least", least}, {"saw.pieces", strconv.Itoa(sums.Pieces)},
		{"saw.bought", bought}, {"saw.mass", f.load(s.BoughtKg)}, {"saw.waste", f.waste(sums)},
		{"saw.kerf", f.show.List(f.show.Size(s.Kerf).Num, f.show.Size(s.EndLoss).String())},
	})
}
