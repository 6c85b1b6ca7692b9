package units

import (
	"math"
	"regexp"
	"strconv"
)

// Some figures have a usual name in inches, or are rounded to one side.
var (
	wireSize   = regexp.MustCompile(`\b(ER[\w-]+|E\d+[\w/-]+|G3Si1|G [\d ]+L Si|S (?:Al|Cu) \d+|T \d\w* [A-Z\d ]+)( of)? (0\.6|0\.8|0\.9|1|1\.0|1\.2|1\.4|1\.6) mm\b`)
	nozzleBore = regexp.MustCompile(`\bnozzle (of )?(\d+(?:\.\d+)?) mm\b`)
	warmTo     = regexp.MustCompile(`\b(preheat|at least) (\d+(?:\.\d+)?) °C`)
)

// wireInches are the names under which wires of a metric diameter are sold in inches.
var wireInches = map[string]string{
	"0.6": ".023", "0.8": ".030", "0.9": ".035", "1": ".040", "1.0": ".040", "1.2": ".045", "1.4": ".052", "1.6": "1/16",
}

// trade writes wires, nozzles and preheats as American shops do: a wire of 1.2 mm is
// .045 in, a nozzle is named by eighths, a preheat is rounded up to ten degrees.
func trade(text string) string {
	text = wireSize.ReplaceAllStringFunc(text, func(s string) string {
		m := wireSize.FindStringSubmatch(s)
		return m[1] + m[2] + " " + wireInches[m[3]] + " in"
	})
	text = nozzleBore.ReplaceAllStringFunc(text, func(s string) string {
		m := nozzleBore.FindStringSubmatch(s)
		v, _ := strconv.ParseFloat(m[2], 64)
		return "nozzle " + m[1] + inchText(math.Round(v/MMPerInch*8)/8) + " in"
	})
	return warmTo.ReplaceAllStringFunc(text, func(s string) string {
		m := warmTo.FindStringSubmatch(s)
		v, _ := strconv.ParseFloat(m[2], 64)
		return m[1] + " " + strconv.FormatFloat(math.Ceil((v*1.8+32)/10-1e-9)*10, 'f', 0, 64) + " °F"
	})
}

// warmth writes degrees Fahrenheit whole below 100 and by tens above.
func warmth(f float64) string {
	if math.Abs(f) >= 100 {
		f = math.Round(f/10) * 10
	}
	return plain(f, 0)
}
