package tables

import (
	"strconv"
	"strings"

	"seamtally/batch/units"
)

// WireWord is a trade's word for a wire and the filler classes that it may mean,
// the likeliest first; "T 46 2 P from 1.0" is meant from that diameter on only.
type WireWord struct {
	Words   string `csv:"words"`   // joined by ";"
	Fillers string `csv:"fillers"` // joined by ";"
	Origin
}

// wordFillers returns the filler classes of a trade's word, squeezed; nil if the
// table does not hold it.
func (f *Facts) wordFillers(key string) []string {
	for _, w := range f.WireWords {
		for word := range strings.SplitSeq(w.Words, ";") {
			if key != "" && squeeze(word) == key {
				return strings.Split(w.Fillers, ";")
			}
		}
	}
	return nil
}

// wiresOfWord returns the wires of the first filler class that a trade's word may
// mean and that is drawn in the diameter; a diameter of zero asks for all.
func (f *Facts) wiresOfWord(key string, dia units.MM) []Wire {
	for _, meant := range f.wordFillers(key) {
		filler, from, _ := strings.Cut(meant, " from ")
		least, _ := strconv.ParseFloat(from, 64) // none stated: 0
		var out []Wire
		for _, w := range f.Wires {
			if w.Filler == filler && float64(w.Dia) >= least && (dia == 0 || sameDia(w.Dia, dia)) {
				out = append(out, w)
			}
		}
		if len(out) > 0 {
			return out
		}
	}
	return nil
}
