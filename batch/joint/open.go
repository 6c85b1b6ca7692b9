package joint

import "strings"

// Opening says how the edges of an outside corner meet.
type Opening string

// The openings of a corner. In a half-open corner one edge lies over half of the
// other's thickness; in a closed one it lies over the whole and leaves no groove.
const (
	FullOpen Opening = "full open"
	HalfOpen Opening = "half open"
	Closed   Opening = "closed"
)

// openOf reads the opening of a corner from the words for its kind.
func openOf(kind Kind, text string) Opening {
	if kind != Corner {
		return ""
	}
	t := " " + fold(strings.ReplaceAll(text, "-", " ")) + " "
	switch {
	case strings.Contains(t, " half ") || strings.Contains(t, " halb"):
		return HalfOpen
	case strings.Contains(t, " closed ") || strings.Contains(t, " flush "):
		return Closed
	case strings.Contains(t, " open "):
		return FullOpen
	}
	return ""
}
