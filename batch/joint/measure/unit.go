package measure

import "strings"

// Unit is a unit of length or angle as a list may state it; None if it does not.
type Unit string

// The units understood.
const (
	None Unit = ""
	MM   Unit = "mm"
	CM   Unit = "cm"
	M    Unit = "m"
	Inch Unit = "in"
	Foot Unit = "ft"
	Deg  Unit = "deg"
)

// Millimetres returns how many millimetres one unit is, 0 where it is no length.
// Inch and foot are exact by definition.
func (u Unit) Millimetres() float64 {
	switch u {
	case MM:
		return 1
	case CM:
		return 10
	case M:
		return 1000
	case Inch:
		return 25.4
	case Foot:
		return 304.8
	}
	return 0
}

// unitWords are the spellings of the units, lower-case and without dots.
var unitWords = map[string]Unit{
	"mm": MM, "мм": MM, "millimeter": MM, "millimetre": MM, "millimeters": MM, "millimetres": MM, "milímetros": MM, "millimetri": MM, "milimetry": MM,
	"cm": CM, "см": CM, "centimeter": CM, "centimetre": CM, "centimetres": CM, "centimeters": CM,
	"m": M, "м": M, "mtr": M, "mtrs": M, "meter": M, "metre": M, "meters": M, "metres": M, "метр": M, "метра": M, "метров": M, "метри": M, "metros": M, "metri": M, "metry": M, "mètres": M, "mb": M, "lfm": M, "lm": M, "ml": M, "пог м": M, "п м": M, "м п": M, "пм": M, "мп": M,
	"in": Inch, "inch": Inch, "inches": Inch, `"`: Inch, "''": Inch, "zoll": Inch, "дюйм": Inch, "дюйма": Inch, "дюймов": Inch, "дюйми": Inch, "cal": Inch, "cale": Inch, "pouce": Inch, "pouces": Inch, "pulgada": Inch, "pulgadas": Inch, "pulg": Inch, "pollici": Inch, "polegada": Inch, "polegadas": Inch,
	"ft": Foot, "foot": Foot, "feet": Foot, "'": Foot, "lf": Foot, "lin ft": Foot, "фут": Foot, "футов": Foot, "fuß": Foot, "fuss": Foot, "pies": Foot, "piedi": Foot,
	"°": Deg, "deg": Deg, "degree": Deg, "degrees": Deg, "grad": Deg, "град": Deg, "градусов": Deg, "stopni": Deg, "º": Deg,
}

// UnitOf reads a unit's spelling.
func UnitOf(s string) (Unit, bool) {
	s = strings.ToLower(strings.TrimSpace(Plain(s)))
	s = strings.Join(strings.Fields(strings.ReplaceAll(s, ".", " ")), " ")
	u, ok := unitWords[s]
	return u, ok
}
