package section

import (
	"regexp"
	"strconv"
	"strings"
)

var reSlashes = regexp.MustCompile(`\d+(?:\.\d+)?(?: ?/ ?\d+(?:\.\d+)?)+`)

// inchParts are the denominators of fractions of an inch.
var inchParts = map[int]bool{2: true, 4: true, 8: true, 16: true, 32: true, 64: true}

// slashed reads sizes that are parted by slashes, as in "RHS 120/60/5", where they can
// be no fraction; any that could be one stays as it stands.
func slashed(t string) string {
	for _, at := range reSlashes.FindAllStringIndex(t, -1) {
		text := t[at[0]:at[1]]
		mixed := at[0] > 1 && strings.ContainsRune("- ", rune(t[at[0]-1])) && t[at[0]-2] >= '0' && t[at[0]-2] <= '9'
		if !mixed && !couldBeFraction(strings.Split(strings.ReplaceAll(text, " ", ""), "/")) {
			t = t[:at[0]] + strings.ReplaceAll(text, "/", "X") + t[at[1]:] // as long as before
		}
	}
	return t
}

// couldBeFraction tells whether figures parted by slashes could be one fraction of an
// inch: two whole ones, the second that of a rule or below ten, and not such that
// anybody would have written a smaller fraction or a whole number.
func couldBeFraction(figures []string) bool {
	if len(figures) != 2 {
		return false
	}
	top, err1 := strconv.Atoi(figures[0])
	bottom, err2 := strconv.Atoi(figures[1])
	switch {
	case err1 != nil || err2 != nil || bottom > 64:
		return false
	case top > bottom && bottom > 0:
		return inchParts[bottom] && top%2 == 1
	}
	return inchParts[bottom] || bottom < 10
}
