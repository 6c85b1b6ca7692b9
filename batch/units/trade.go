package units

import (
	"math"
	"regexp"
	"strconv"
)

// Some figures have a usual name in inches, or are rounded to one side.
var (
	wireSize   = regexp.MustCompile(`\b(ER[\w-]+|E\d+[\w/-]+|G3Si1|G [\d ]+L Si|S (?:Al|Cu) \d+|T \d\w* [A-Z\d ]+)( of)? (0\.6|0\.8|0\.9|1|1\.0|1\.2|1\.4|1\.6|2|2\.0) mm\b`)
	nozzleBore = regexp.MustCompile(`\bnozzle (of )?(\d+(?:\.\d+)?) mm\b`)
)

// wireInches are the names under which wires are sold in inches, by their diameter in
// hundredths of a millimetre. Published in the handbooks that the tables name: .030, .035,
// .045, .052, 1/16 and 5/64; from memory of AWS A5.18: .023 and .040.
var wireInches = map[int]string{60: ".023", 80: ".030", 90: ".035", 100: ".040", 120: ".045", 140: ".052", 160: "1/16", 200: "5/64"}

// aluminium45 is the name of an aluminium wire of 1.2 mm, published likewise.
const aluminium45 = "3/64"

// WireInches is the name in inches of a wire of a class; empty where the diameter is not
// sold so.
func WireInches(dia MM, filler string) string {
	name := wireInches[int(math.Round(float64(dia)*100))]
	if name == ".045" && aluminiumWire.MatchString(filler) {
		return aluminium45
	}
	return name
}

// aluminiumWire tells the classes of ISO 18273 and AWS A5.10.
var aluminiumWire = regexp.MustCompile(`^(?:S Al|ER[1-5]\d{3}\b)`)

// trade writes wires, nozzles and preheats as American shops do: a wire of 1.2 mm is
// .045 in, a nozzle is named by eighths, a preheat is rounded to the safe side.
func trade(text string) string {
	text = wireSize.ReplaceAllStringFunc(text, func(s string) string {
		m := wireSize.FindStringSubmatch(s)
		v, _ := strconv.ParseFloat(m[3], 64)
		return m[1] + m[2] + " " + WireInches(MM(v), m[1]) + " in"
	})
	text = nozzleBore.ReplaceAllStringFunc(text, func(s string) string {
		m := nozzleBore.FindStringSubmatch(s)
		v, _ := strconv.ParseFloat(m[2], 64)
		return "nozzle " + m[1] + inchText(math.Round(v/MMPerInch*8)/8) + " in"
	})
	return warm(text, text)
}
