package scan

// penalty counts what makes a code hard to scan (ISO/IEC 18004, 7.8.3): long runs of
// one colour, squares of it, what looks like a finder, and too much of one colour.
func (c *Code) penalty() int {
	sum, dark := 0, 0
	for i := range c.Side {
		sum += c.line(i*c.Side, 1) + c.line(i, c.Side)
	}
	for y := range c.Side {
		for x := range c.Side {
			at := y*c.Side + x
			v := c.modules[at]
			if v {
				dark++
			}
			if x > 0 && y > 0 && c.modules[at-1] == v && c.modules[at-c.Side] == v && c.modules[at-c.Side-1] == v {
				sum += 3
			}
		}
	}
	off := 100*dark/len(c.modules) - 50
	return sum + max(off, -off)/5*10
}

// The two ways in which a line can look like a finder, eleven modules each.
const (
	finderThenLight = 0b10111010000
	lightThenFinder = 0b00001011101
)

// line is the penalty of a row or a column from a module on, by steps.
func (c *Code) line(at, step int) int {
	sum, run, seen := 0, 0, 0
	last := false
	for i := range c.Side {
		v := c.modules[at+i*step]
		if i == 0 || v != last {
			run, last = 0, v
		}
		switch run++; {
		case run == 5:
			sum += 3
		case run > 5:
			sum++
		}
		seen = seen << 1 & 0x7ff
		if v {
			seen |= 1
		}
		if i >= 10 && (seen == finderThenLight || seen == lightThenFinder) {
			sum += 40
		}
	}
	return sum
}
