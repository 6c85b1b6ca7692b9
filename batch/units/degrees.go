package units

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// degrees is a temperature of an English sentence with the words about it that say which
// way it is rounded.
var degrees = regexp.MustCompile(`(\b(?:preheat|at least|leaves|interpass|interpass limit of|at most|to) )?\b(\d+(?:\.\d+)?) °C( at most)?`)

// heated is a temperature in degrees Celsius as it is written, and in degrees Fahrenheit.
type heated struct{ celsius, fahrenheit string }

// ImperialAs words the figures of a sentence in US units, like Imperial. english is the
// same metric sentence in English: which way a temperature is rounded is read there, for
// the words of other languages are not known here.
func ImperialAs(text, english string) string { return Imperial(warm(text, english)) }

// warm writes the temperatures of a sentence that have a safe side.
func warm(text, english string) string {
	for _, h := range toSafeSide(english) {
		at := celsiusAt(text, h.celsius)
		if at < 0 {
			continue
		}
		text = text[:at] + h.fahrenheit + " °F" + text[at+len(h.celsius)+len(" °C"):]
	}
	return text
}

// celsiusAt is where a temperature stands in a text as a whole number, -1 where it does not.
func celsiusAt(text, celsius string) int {
	for from := 0; ; {
		at := strings.Index(text[from:], celsius+" °C")
		if at < 0 {
			return -1
		}
		at += from
		if at == 0 || !strings.ContainsRune("0123456789.,", rune(text[at-1])) {
			return at
		}
		from = at + 1
	}
}

// toSafeSide returns the temperatures of a sentence that are rounded to one side: what must
// be reached up to ten degrees, what must not be passed down. What one leaves to the
// other is the difference of what is written for the two; where rounding leaves nothing,
// they stand in whole degrees.
func toSafeSide(english string) []heated {
	found := degrees.FindAllStringSubmatch(english, -1)
	least, most := math.Inf(-1), math.Inf(1)
	rounded := func(step float64) (out []heated) {
		for _, m := range found {
			v, _ := strconv.ParseFloat(m[2], 64)
			f := v*1.8 + 32
			switch {
			case m[1] == "leaves ":
				out = append(out, heated{celsius: m[2]})
				continue
			case m[1] == "preheat " || m[1] == "at least ":
				f = math.Ceil(f/step-1e-9) * step
				least = f
			case m[1] != "" && m[1] != "to " || m[3] != "": // "to 500 °C" alone is the end of a range
				f = math.Floor(f/step+1e-9) * step
				most = f
			default:
				continue
			}
			out = append(out, heated{m[2], plain(f, 0)})
		}
		return out
	}
	out := rounded(10)
	left := func(h heated) bool { return h.fahrenheit == "" }
	if !slices.ContainsFunc(out, left) {
		return out
	}
	if most <= least {
		out = rounded(1)
	}
	for i := range out {
		if left(out[i]) {
			out[i].fahrenheit = plain(most-least, 0)
		}
	}
	return out
}

// warmth writes degrees Fahrenheit whole below 100 and by tens above.
func warmth(f float64) string {
	if math.Abs(f) >= 100 {
		f = math.Round(f/10) * 10
	}
	return plain(f, 0)
}
