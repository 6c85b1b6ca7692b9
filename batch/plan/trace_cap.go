package plan

import "seamtally/batch/units"

// capWords and rootWords show the heights that were really used, and where sheet does
// not bear those of the shop, what they follow from.
func (w *working) capWords() string {
	s, thick := w.c.shop, w.t.thinner()
	return heightWords("cap", s.CapHeight, s.CapOn(thick), s.CapShare, thick)
}

func (w *working) rootWords() string {
	s, thick := w.c.shop, w.t.thinner()
	return heightWords("root", s.RootHeight, s.RootUnder(thick), s.RootShare, thick)
}

func heightWords(name string, most, high units.MM, share float64, thick units.MM) string {
	text := name + " " + n2(high) + " mm"
	if high < most {
		text += " = " + number(share, 3) + " x " + n2(thick)
	}
	return text
}
