package section

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamtally/tables"
)

// Reading is a designation read in a list of inches or of millimetres.
type Reading struct {
	Section
	Text  string // the same with its unit, as Parse reads it
	Doubt *Doubt // nil: there was only one way to read it
}

// Doubt says why sizes are read in one unit, where the other comes to mind.
type Doubt struct {
	Text, Hint string
	Other      string // the sizes in the other unit, in mm; empty: they are not in doubt
}

// free are the families whose sections are worked out from any sizes; the others stand in
// a table, which says by itself whether a size is one.
var free = []string{"", "box", "tube", "round", "pipe", "rod", "square", "flat", "plate"}

// ParseIn reads a designation whose sizes are in the unit of its list where they name none.
// Sizes that nobody makes in the unit of the list, and that are usual in the other, are
// read in the other, and that is told; an error where neither is to be believed.
func ParseIn(text string, inches bool, set *tables.Set) (Reading, error) {
	w := takeApart(text)
	own, err := Parse(text, set)
	metric := Reading{Section: own, Text: text}
	switch {
	case w.statesUnit():
		if err == nil && w.inches && slices.Contains(free, w.family) && w.halfMarked() && likely(&own, true, set) < platy {
			return Reading{}, &Error{Text: text, Why: fmt.Sprintf("one size is in inches and the others have no unit, and with all in inches it would be %s; write all of them in one unit, such as 10x200 mm", own.sizes())}
		}
		return metric, err
	case !slices.Contains(free, w.family):
		if in, bad := Parse(text+" IN", set); inches && bad == nil {
			return Reading{Section: in, Text: text + " IN"}, nil
		}
		return metric, err
	}
	in, bad := Parse(text+" IN", set)
	imperial := Reading{Section: in, Text: text + " IN"}
	if err != nil && bad != nil {
		return metric, err
	}
	return choose(text, inches, metric, imperial, rankOf(&own, err, false, set), rankOf(&in, bad, true, set))
}

func rankOf(s *Section, err error, inches bool, set *tables.Set) likelihood {
	if err != nil {
		return unread
	}
	return likely(s, inches, set)
}

// Ordinary tells whether a section has sizes in which its shape is made: for a flat or a
// plate those of bars, wide flats and plate.
func Ordinary(s *Section, inches bool, set *tables.Set) bool { return likely(s, inches, set) >= platy }

// choose takes one of two readings.
func choose(text string, inches bool, metric, imperial Reading, asMM, asIn likelihood) (Reading, error) {
	switch {
	case inches && asIn <= unheard && asMM <= unheard:
		return Reading{}, &Error{Text: text, Why: fmt.Sprintf("in inches it would be %s, and no such section is made; correct the sizes, or write mm behind them", imperial.sizes())}
	case inches && asMM > asIn:
		metric.Text = text + " MM"
		metric.Doubt = &Doubt{fmt.Sprintf("in inches, the unit of the list, it would be %s, which is hardly to be had; it is read in millimetres, as %s", imperial.sizes(), metric.Designation), "write the unit behind the sizes, such as 60x60x4 mm or 2x2x1/4 in", imperial.sizes()}
		return metric, nil
	case inches:
		return imperial, nil
	case asMM <= unheard && asIn >= platy:
		imperial.Doubt = &Doubt{fmt.Sprintf("in millimetres, the unit of the list, nothing is made in this size; it is read in inches, as %s", imperial.sizes()), "write the unit behind the sizes, such as 2x1/2 in or 50x12 mm", metric.sizes()}
		return imperial, nil
	case asMM < asIn && asMM <= cuttable || reLeading.MatchString(text) && asIn >= platy:
		metric.Doubt = &Doubt{fmt.Sprintf("it is read in millimetres, the unit of the list, as %s; in inches it would be %s", metric.sizes(), imperial.sizes()), "write the unit behind the sizes, such as 2x1/2 in or 50x12 mm", imperial.sizes()}
	case asMM <= unheard && metric.Shape != Box && metric.Shape != Round:
		metric.Doubt = &Doubt{fmt.Sprintf("nothing of this shape is rolled in %s", metric.sizes()), "check the sizes and their unit; leave them where the part is made to order", ""}
	}
	return metric, nil
}

// statesUnit tells whether the designation itself says in which unit its sizes are.
func (w *written) statesUnit() bool {
	up := strings.ToUpper(w.text)
	return w.inches || reInches.MatchString(up) || reMetric.MatchString(up) || w.name != ""
}

// halfMarked tells whether a size stands without a mark or a fraction of an inch. A unit
// behind the last size may be that of all.
func (w *written) halfMarked() bool {
	marks := len(reOneMark.FindAllString(strings.ToUpper(w.text), -1))
	return marks < len(w.sizes)
}

// sizes says outside and thickness in millimetres.
func (s *Section) sizes() string {
	h, b, t := float64(s.H), float64(s.B), float64(s.Web)
	at := func(v float64) string { return sizeText(math.Round(v*100) / 100) }
	switch {
	case s.Shape == Bar:
		return at(t) + " mm across"
	case s.Family == "plate":
		return at(t) + " mm thick"
	case s.Shape == Flat:
		return at(b) + "x" + at(t) + " mm"
	case s.Shape == Round:
		return at(h) + "x" + at(t) + " mm"
	}
	return at(h) + "x" + at(b) + "x" + at(t) + " mm"
}
