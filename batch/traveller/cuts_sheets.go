package traveller

import (
	"slices"

	"seamtally/batch/parts"
	"seamtally/batch/traveller/cutting"
	"seamtally/batch/traveller/page"
)

// saw is what is cut, dealt out to sheets.
type saw struct {
	sections []cutting.Section
	plates   []cutting.Plate
	blocks   []sawBlock
	sheets   [][]sawBlock
}

// sawBlock is a section, or all plates: what is never parted by another sheet's end if
// it has room on one.
type sawBlock struct {
	section *cutting.Section // nil: the plates
	plates  []cutting.Plate
}

// blockGap is the white between two blocks of a sheet.
const blockGap = 8

// dealSaw deals sections and plates out to sheets in their order: the next one stands on
// the same sheet where it has room there whole.
func (b *builder) dealSaw() saw {
	if b.job.Parts == nil {
		return saw{}
	}
	var s saw
	s.sections, s.plates = cutting.Of(b.job.Parts)
	for i := range s.sections {
		s.sections[i].Name = parts.Called(s.sections[i].Name, b.show.US)
		s.blocks = append(s.blocks, sawBlock{section: &s.sections[i]})
	}
	if len(s.plates) > 0 {
		s.blocks = append(s.blocks, sawBlock{plates: s.plates})
	}
	left := 0.0
	for _, k := range s.blocks {
		high, whole := b.blockHeight(k)
		if n := len(s.sheets); n > 0 && whole && high+blockGap <= left {
			s.sheets[n-1] = append(s.sheets[n-1], k)
			left -= high + blockGap
			continue
		}
		s.sheets = append(s.sheets, []sawBlock{k})
		left = b.foot - b.top - high
		if !whole {
			left = 0 // what goes on over pages keeps its own
		}
	}
	return s
}

// blockHeight is the height of a block laid out by itself, and whether one page holds it.
func (b *builder) blockHeight(k sawBlock) (high float64, whole bool) {
	own := *b
	own.doc = &page.Document{}
	f := own.flow(head{})
	f.block(k)
	return f.y - f.top, len(own.doc.Pages) == 1
}

// sawSheets returns how many cutting sheets there are.
func (b *builder) sawSheets() int { return len(b.saw.sheets) }

func (k sawBlock) rows() []cutting.Row {
	var out []cutting.Row
	if k.section != nil {
		return append(slices.Clone(k.section.Rows), k.section.TooLong...)
	}
	for i := range k.plates {
		out = append(out, k.plates[i].Rows...)
	}
	return out
}

// assemblies names what the pieces of a block belong to.
func (k sawBlock) assemblies() []string {
	var names []string
	for _, r := range k.rows() {
		if r.Assembly != "" && !slices.Contains(names, r.Assembly) {
			names = append(names, r.Assembly)
		}
	}
	return names
}

// blockName is a block's bookmark.
func (f *flow) blockName(k sawBlock) string {
	if k.section == nil {
		return f.say("saw.plates")
	}
	return f.sectionName(k.section.Name) + " " + k.section.Material
}

// block lays out a section, or the plates by thickness and material.
func (f *flow) block(k sawBlock) {
	if k.section == nil {
		f.heading(f.say("saw.plates"), "")
		for i := range k.plates {
			f.plate(&k.plates[i])
		}
		return
	}
	s := k.section
	f.heading(f.sectionName(s.Name)+"  "+s.Material, f.stocks(s))
	f.sawFacts(s)
	if len(s.Bars) > 0 {
		f.bars(s)
	}
	if len(s.Rows) > 0 {
		f.pieces(f.say("saw.list"), "", s.Rows)
	}
	if len(s.TooLong) > 0 {
		f.pieces(f.say("saw.long"), f.say("saw.longtext"), s.TooLong)
	}
}
