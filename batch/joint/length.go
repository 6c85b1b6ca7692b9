package joint

import (
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/joint/measure"
)

var reTimes = regexp.MustCompile(`^(\d{1,4}) ?[x*] ?(.+)$`)

// lengthOf reads a seam length: one length, a sum of lengths, or so many times a
// length: "1250", "2x300", "2x300+150".
func lengthOf(text string, bare measure.Unit, style measure.Style) (float64, *measure.Fault) {
	t := measure.Plain(withoutOwnName("length", text))
	if strings.HasPrefix(t, "=") {
		return 0, &measure.Fault{Text: "it is a formula written as text", Hint: "write the length itself"}
	}
	total := 0.0
	for _, term := range strings.Split(strings.TrimPrefix(t, "+"), "+") {
		term = strings.TrimSpace(term)
		times := 1.0
		if m := reTimes.FindStringSubmatch(term); m != nil {
			n, _ := strconv.Atoi(m[1])
			times, term = float64(n), m[2]
		}
		mm, bad := millimetres(term, bare, style)
		if bad != nil {
			return 0, bad
		}
		total += times * mm
	}
	return total, nil
}
