package pack

import "strconv"

// sharing keeps the formulas that repeat down a column, so that each is written
// out once and the cells below refer to it, as spreadsheet programs do when a
// formula is filled down. A sheet of many rows is a quarter shorter for it.
type sharing struct {
	next  int // number of the next formula
	last  int // row up to which a formula may repeat
	known map[sharedKey]int
}

type sharedKey struct {
	by  *sharing
	col string
	f   *Formula
}

func newSharing(next, last int) *sharing {
	return &sharing{next: next, last: last, known: map[sharedKey]int{}}
}

// share writes the attributes of a formula that may repeat below, and tells
// whether it stands above already.
func (p *Pen) share(col string, f *Formula) (above bool) {
	s := p.shared
	key := sharedKey{s, col, f}
	n := f.number
	if above = f.known == key; !above {
		n, above = s.known[key]
		if !above {
			n = s.next
			s.known[key] = n
			s.next++
		}
		f.known, f.number = key, n
	}
	p.out = append(p.out, ` t="shared"`...)
	if !above {
		p.out = append(p.out, ` ref="`...)
		p.out = append(append(p.out, col...), p.row...)
		p.out = append(append(p.out, ':'), col...)
		p.out = append(strconv.AppendInt(p.out, int64(s.last), 10), '"')
	}
	p.out = append(p.out, ` si="`...)
	p.out = append(strconv.AppendInt(p.out, int64(n), 10), '"')
	return above
}
