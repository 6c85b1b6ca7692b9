package joint

import (
	"fmt"
	"strings"

	"seamtally/batch/finding"
)

// namedCells is how many cells a sentence about many of them names.
const namedCells = 3

// cells counts the cells of which one sentence tells, and keeps the first few.
type cells struct {
	n     int
	first []string
}

func (c *cells) add(at finding.Place) {
	c.n++
	if len(c.first) < namedCells {
		c.first = append(c.first, at.Cell())
	}
}

// are begins a sentence about sizes: "2 sizes (C2, C3) are".
func (c *cells) are(which string) string {
	if c.n == 1 {
		return fmt.Sprintf("1 size%s (%s) is", which, c.first[0])
	}
	return fmt.Sprintf("%d sizes%s (%s) are", c.n, which, finding.AndMore(strings.Join(c.first, ", "), c.n-len(c.first)))
}
