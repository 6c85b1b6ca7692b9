package parts

import (
	"seamtally/batch/finding"
	"seamtally/batch/section"
	"seamtally/batch/units"
)

// Called is how a section is named to people: where they work in inches, what is sold in
// inches by its inches.
func Called(designation string, us bool) string {
	if us {
		return section.InInches(designation)
	}
	return designation
}

// Imperial words what the book says in US units. A nil book has nothing to say.
func (b *Book) Imperial() {
	if b == nil {
		return
	}
	word := func(checks []finding.Check) {
		for i := range checks {
			c := &checks[i]
			c.Text, c.More, c.Rule, c.Do = units.Imperial(c.Text), units.Imperial(c.More), units.Imperial(c.Rule), units.Imperial(c.Do)
		}
	}
	word(b.Checks)
	for i := range b.Results {
		word(b.Results[i].Checks)
		b.Results[i].ShrinkWords = units.Imperial(b.Results[i].ShrinkWords)
	}
}
