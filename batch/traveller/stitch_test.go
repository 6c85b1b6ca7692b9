package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
)

// The stitch in the heading is in the units of the sheet, as the symbol has it, whatever
// the list wrote: a note in inches is no figure for a metric sheet, nor millimetres for
// one in inches, and words of the list are no words of the sheet's language.
func TestStitchOfHeading(t *testing.T) {
	inch := metric
	inch.US, inch.Symbols = true, "aws"
	for _, c := range []struct {
		stitch    joint.Stitch
		sides     int
		opts      price.Options
		want, not string
	}{
		{joint.Stitch{Segment: 50.8, Gap: 127, Pitch: 177.8, ByPitch: true, Text: "2-7"}, 1, metric, "stitch 4×50.8 (127) mm", "2-7"},
		{joint.Stitch{Count: 4, Segment: 50.8, Gap: 127, Pitch: 177.8, Text: "4x50.8(127)"}, 1, inch, "stitch 2-7 in", "50.8"},
		{joint.Stitch{Count: 3, Segment: 50, Gap: 100, Pitch: 150, Staggered: true, Text: "3x50(100) versetzt"}, 2, metric, "stitch 3×50 (100) mm staggered", "versetzt"},
		{joint.Stitch{Count: 3, Segment: 50, Gap: 100, Pitch: 150, Staggered: true, Text: "3x50(100) versetzt"}, 1, metric, "stitch 3×50 (100) mm", "staggered"},
	} {
		j := leg("W-1", 5, 6, 6, 640, "PB")
		j.Sides, j.Stitch = c.sides, &c.stitch
		job := jobOf(t, []joint.Joint{j}, c.opts)
		got := said(sheetOf(faultless(t, job), "W-1"), "title")
		if !strings.Contains(got, c.want) || strings.Contains(got, c.not) {
			t.Errorf("%q: the heading says %q, want %q", c.stitch.Text, got, c.want)
		}
	}
}

// Two seams of one note but not of one length have not the same number of stitches, so
// neither the symbol nor the heading of a sheet is true of both.
func TestStitchesAreCountedForEachSheet(t *testing.T) {
	short, long := leg("W-1", 5, 6, 6, 500, "PB"), leg("W-2", 5, 6, 6, 950, "PB")
	note := joint.Stitch{Segment: 50, Gap: 100, Pitch: 150, ByPitch: true, Text: "50-150"}
	short.Stitch, long.Stitch = &note, &note
	doc := faultless(t, jobOf(t, []joint.Joint{short, long}, metric))
	for mark, want := range map[string]string{"W-1": "4×50 (100) mm", "W-2": "7×50 (100) mm"} {
		if got := said(sheetOf(doc, mark), "title"); !strings.Contains(got, want) {
			t.Errorf("the sheet of %s does not say %s", mark, want)
		}
	}
}
