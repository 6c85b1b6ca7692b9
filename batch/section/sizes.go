package section

import (
	"slices"
	"strconv"
	"strings"
)

// unitless takes the units off sizes; the longer words first.
var unitless = strings.NewReplacer("MM", "", "INCHES.", "", "INCHES", "", "INCH.", "", "INCH", "", "IN.", "", "IN", "")

// addSizes reads "100X50X4", "4X4X1/4" or "4 IN X 1/4".
func (w *written) addSizes(at string) {
	metric := strings.Contains(at, "MM")
	w.inches = w.inches || strings.Contains(at, "IN")
	at = unitless.Replace(at)
	at = reZero.ReplaceAllString(at, "$1$2")
	w.raw = strings.ReplaceAll(at, " ", "")
	for part := range strings.SplitSeq(at, "X") {
		v, fraction := sizeOf(strings.TrimSpace(part))
		w.inches = w.inches || fraction
		w.sizes = append(w.sizes, v)
	}
	w.mixed = metric && w.inches
	w.inches = w.inches || slices.Contains([]string{"HSS", "W", "C", "MC", "M", "S", "HP"}, w.family)
}

// sizeOf reads "4", "2.5", "3/8", "1-1/2" or "1 1/2".
func sizeOf(text string) (v float64, fraction bool) {
	whole := 0.0
	if head, tail, mixed := strings.Cut(strings.ReplaceAll(text, "-", " "), " "); mixed {
		whole, _ = strconv.ParseFloat(head, 64)
		text = tail
	}
	if top, bottom, ok := strings.Cut(text, "/"); ok {
		a, _ := strconv.ParseFloat(top, 64)
		b, _ := strconv.ParseFloat(bottom, 64)
		if b == 0 {
			return 0, true
		}
		return whole + a/b, true
	}
	v, _ = strconv.ParseFloat(text, 64)
	return whole + v, false
}
