package tables

import (
	"regexp"
	"strconv"
	"strings"
)

// mix is a gas mixture in per cent by volume; what is not named is argon.
type mix struct{ co2, o2, he float64 }

var (
	mixPart  = regexp.MustCompile(`(?:(\d+(?:[.,]\d+)?)\s*%?\s*(argon|ar|co2|o2|he|helium|oxygen))|(?:(argon|ar|co2|o2|helium|he|oxygen)\s*(\d+(?:[.,]\d+)?)?)`)
	mixSlash = regexp.MustCompile(`^\s*(\d+(?:[.,]\d+)?)\s*/\s*(\d+(?:[.,]\d+)?)\s*$`)
)

// parseMix reads "82/18" (argon and carbon dioxide), "Ar + 18 % CO2", "98Ar-2O2",
// "Ar 80 CO2 20", "argon", "CO2".
func parseMix(text string) (mix, bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	if m := mixSlash.FindStringSubmatch(text); m != nil {
		a, b := figure(m[1]), figure(m[2])
		if a+b < 99 || a+b > 101 {
			return mix{}, false
		}
		return mix{co2: min(a, b)}, true
	}
	parts := mixPart.FindAllStringSubmatch(text, -1)
	if len(parts) == 0 {
		return mix{}, false
	}
	var out mix
	for _, p := range parts {
		out.add(p[2]+p[3], p[1]+p[4], len(parts) == 1)
	}
	return out, true
}

// add takes up one component; alone and without a figure it is the whole gas.
func (m *mix) add(name, amount string, alone bool) {
	v := figure(amount)
	if amount == "" && alone {
		v = 100
	}
	switch name {
	case "co2":
		m.co2 = v
	case "o2", "oxygen":
		m.o2 = v
	case "he", "helium":
		m.he = v
	}
}

func figure(s string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64)
	return v
}

// designation returns the ISO 14175:2008 designation of the mixture; empty for
// one that the table of the standard does not hold. The limits of the 2008
// edition are recalled, as gases.csv says of its rows.
func (m mix) designation() string {
	switch {
	case m.he > 0 && m.co2 == 0 && m.o2 == 0:
		return pick(m.he >= 99.5, "I2", "I3")
	case m.he > 0:
		return ""
	case m.co2 == 0 && m.o2 == 0:
		return "I1"
	case m.o2 == 0:
		return co2Group(m.co2)
	case m.co2 == 0:
		return o2Group(m.o2)
	}
	return bothGroup(m.co2, m.o2)
}

func pick(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}

func co2Group(co2 float64) string {
	switch {
	case co2 <= 5:
		return "M12"
	case co2 <= 15:
		return "M20"
	case co2 <= 25:
		return "M21"
	case co2 <= 50:
		return "M31"
	case co2 >= 99.5:
		return "C1"
	}
	return ""
}

func o2Group(o2 float64) string {
	switch {
	case o2 <= 3:
		return "M13"
	case o2 <= 10:
		return "M22"
	case o2 <= 15:
		return "M32"
	}
	return ""
}

func bothGroup(co2, o2 float64) string {
	switch {
	case co2 <= 5 && o2 <= 3:
		return "M14"
	case co2 <= 15 && o2 <= 3:
		return "M24"
	case co2 <= 25 && o2 <= 3:
		return "M26"
	case co2 <= 15 && o2 <= 10:
		return "M25"
	case co2 <= 25 && o2 <= 10:
		return "M27"
	}
	return ""
}
