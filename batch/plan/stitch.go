package plan

import (
	"math"

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
