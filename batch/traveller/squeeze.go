package traveller

import (
	"seamtally/batch/traveller/setup"
)

// squeeze is how much a sheet gives up so that it stays one sheet: a snug one stands
// closer, a tight one leaves out what can be done without, a squeezed one also sets its
// rows closer, a pressed one the large figures as well, a flat one the dials of several
// passes, and a last one is as low in everything as can be read and written in, where
// else a few lines alone would stand on another sheet.
type squeeze int

const (
	roomy squeeze = iota
	snug
	tight
	squeezed
	pressed
	flat
	last
)

func (q squeeze) close() bool { return q >= snug }

// picture is the least height of the picture row: as it reads at arm's length, and
// a little below it rather than on to another page.
func (q squeeze) picture() float64 { return [...]float64{57, 48, 48, 43, 42, 40, 39}[q] }

// title is the height of the marks and the procedure.
func (q squeeze) title() float64 { return [...]float64{23.5, 23.5, 23.5, 22.8, 22.8, 22.8, 22.8}[q] }

// passRow is the height of a row of the table of passes.
func (q squeeze) passRow() float64 { return [...]float64{5.4, 5.4, 5.4, 4.5, 4.4, 4.4, 4.4}[q] }

// signRow is the height of a line to be signed.
func (q squeeze) signRow() float64 { return [...]float64{8.5, 8.5, 8.5, 7.6, 7, 7, 6.3}[q] }

// halfRow is the height of lines to be signed that stand two abreast.
func (q squeeze) halfRow() float64 { return [...]float64{7.6, 7.6, 7.6, 7, 7, 7, 6.3}[q] }

// squeezeFor returns the least squeeze with which a set-up has room on one sheet, and
// the rows of sign-off that it then holds: all of them. One that needs more sheets
// anyway is only as close as it must be to hold the first two of its rows, and shares them
// out between the two.
func (f *flow) squeezeFor(s setup.Setup) (squeeze, int) {
	try := *f
	lines := len(signLines(s.Plans))
	try.signed = lines
	for _, try.squeeze = range []squeeze{roomy, snug, tight, squeezed, pressed, flat, last} {
		if try.leadHeight(s)+try.squeeze.picture()+try.restHeight(s) <= try.room() {
			return try.squeeze, try.signed
		}
	}
	try.signed = 2
	first := max(2, min(fewSigned, (lines+1)/4))
	for _, try.squeeze = range []squeeze{tight, squeezed, pressed, flat, last} {
		if try.leadHeight(s)+try.squeeze.picture()+try.restHeight(s)+moreHeight <= try.room() {
			return try.squeeze, first
		}
	}
	return tight, first
}

// leadHeight is the height of what stands above the picture.
func (f *flow) leadHeight(s setup.Setup) float64 {
	p := s.Pattern()
	h := f.squeeze.title() + f.checksHeight(s, true)
	if !p.Settings {
		return h + f.noSettingsHeight(p)
	}
	n := min(len(settings(p)), mostDials)
	return h + stationHeight + 6 + f.dialRowHeight(n)*float64(n) + 3 + f.preheatHeight(p) + f.testBeadHeight(p)
}
