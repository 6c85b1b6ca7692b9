package plan

import (
	"fmt"
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// stitched is an intermittent weld as it fits one seam.
type stitched struct {
	count   int
	segment float64 // mm
	gap     float64 // mm, clear distance between segments
}

// mostStitches bounds the segments of one seam against slips of the decimal point.
const mostStitches = 1e6

// stitchOf returns the segments of one seam: as many as were stated, else as many
// as fit. By count, length and gap n = floor((L + e) / (l + e)); by length and
// pitch n = floor((L - l) / P) + 1, which is the same with e = P - l.
func stitchOf(j *joint.Joint) stitched {
	s := j.Stitch
	if s == nil || s.Segment <= 0 {
		return stitched{}
	}
	out := stitched{count: s.Count, segment: float64(s.Segment), gap: float64(s.Gap)}
	if s.Gap <= 0 && s.Pitch > s.Segment {
		out.gap = float64(s.Pitch - s.Segment)
	}
	if out.count <= 0 && out.segment+out.gap > 0 {
		n := math.Floor((float64(j.Length)+out.gap)/(out.segment+out.gap) + 1e-9)
		out.count = int(min(max(n, 0), mostStitches))
	}
	return out
}

// stitchFit tells where the length holds more segments than the note states, and
// where the second side of a staggered weld runs out of length.
func (k *checker) stitchFit(t *task) {
	s, length := t.stitch, float64(t.j.Length)
	pitch := s.segment + s.gap
	if length <= 0 || pitch <= 0 {
		return
	}
	if fits := math.Floor((length+s.gap)/pitch + 1e-9); t.j.Stitch.Count > 0 && fits > float64(s.count) {
		k.sayf("stitch-count", finding.Note, "the stitch note asks for %s, each %s long, on each side; %.0f would fit into %s, which would be %s of weld a side, and %s are counted",
			stitches(s.count), mmText(s.segment), fits, mmText(length), mmText(fits*s.segment), mmText(float64(s.count)*s.segment))
	}
	if end := float64(s.count-1)*pitch + s.segment + pitch/2; t.j.Stitch.Staggered && t.j.Sides == 2 && end > length+slackLength {
		k.sayf("stitch-stagger", finding.Note, "staggered: on the second side the last of %s would end at %s, but the seam at %s; as many are counted on both sides",
			stitches(s.count), mmText(end), mmText(length))
	}
}

// stitches counts them: "1 stitch", "3 stitches".
func stitches(n int) string {
	if n == 1 {
		return "1 stitch"
	}
	return fmt.Sprintf("%d stitches", n)
}
