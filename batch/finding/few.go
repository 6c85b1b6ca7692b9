package finding

import (
	"fmt"
	"strings"
)

// Few names the first of many, at most so many, and counts the rest. One that would be
// left over is named as well: to count it would take as much room.
func Few(names []string, most int) string {
	if len(names) <= most+1 {
		return strings.Join(names, ", ")
	}
	return AndMore(strings.Join(names[:most], ", "), len(names)-most)
}

// AndMore says behind what is named how many are not.
func AndMore(named string, left int) string {
	if left == 0 {
		return named
	}
	return fmt.Sprintf("%s and %d more", named, left)
}
