// Package scan makes the square code that a scanner reads: a QR code by ISO/IEC 18004
// of bytes with error correction level M, as many as ten versions hold. It knows
// nothing of paper.
package scan

import "math"

// Code is a square of modules; true is dark.
type Code struct {
	Side    int
	modules []bool
	fixed   []bool // patterns that carry no data
}

// Dark tells whether the module in column x of row y is dark.
func (c *Code) Dark(x, y int) bool { return c.modules[y*c.Side+x] }

// blocks says how the bytes of a version are shared out at level M: check bytes of
// each block, and the number of blocks with the data bytes of each; of a second kind
// with one data byte more there may be some too (ISO/IEC 18004 Table 9).
type blocks struct{ check, short, data, long int }

var versions = []blocks{
	{10, 1, 16, 0}, {16, 1, 28, 0}, {26, 1, 44, 0}, {18, 2, 32, 0}, {24, 2, 43, 0},
	{16, 4, 27, 0}, {18, 4, 31, 0}, {22, 2, 38, 2}, {22, 3, 36, 2}, {26, 4, 43, 1},
}

func (b blocks) bytes() int { return b.short*b.data + b.long*(b.data+1) }

// aligned are the rows and columns of the alignment patterns (Table E.1).
var aligned = [][]int{nil, {6, 18}, {6, 22}, {6, 26}, {6, 30}, {6, 34}, {6, 22, 38}, {6, 24, 42}, {6, 26, 46}, {6, 28, 50}}

// Of returns the code of a text; false where the text is too long for it.
func Of(text string) (*Code, bool) {
	for i, b := range versions {
		if head := lengthBits(i+1) + 4; b.bytes()*8 >= head+8*len(text) {
			c := &Code{Side: 21 + 4*i}
			c.modules, c.fixed = make([]bool, c.Side*c.Side), make([]bool, c.Side*c.Side)
			c.patterns(i + 1)
			c.fill(interleave(dataOf(text, i+1, b), b))
			c.mask()
			return c, true
		}
	}
	return nil, false
}

// lengthBits is how many bits state the length of the text.
func lengthBits(version int) int {
	if version < 10 {
		return 8
	}
	return 16
}

// dataOf is the text as data bytes: mode, length, text, end and padding.
func dataOf(text string, version int, b blocks) []byte {
	out := make([]byte, 0, b.bytes())
	hold, held := 0, 0
	put := func(v, bits int) {
		for bits--; bits >= 0; bits-- {
			hold, held = hold<<1|v>>bits&1, held+1
			if held == 8 {
				out = append(out, byte(hold))
				hold, held = 0, 0
			}
		}
	}
	put(4, 4) // bytes
	put(len(text), lengthBits(version))
	for i := range len(text) {
		put(int(text[i]), 8)
	}
	put(0, min(4, 8*b.bytes()-8*len(out)-held))
	for held != 0 {
		put(0, 1)
	}
	for pad := 0xec; len(out) < b.bytes(); pad ^= 0xec ^ 0x11 {
		out = append(out, byte(pad))
	}
	return out
}

// interleave adds the check bytes of each block and deals the blocks' bytes out in turn.
func interleave(data []byte, b blocks) []byte {
	var parts, checks [][]byte
	for k := range b.short + b.long {
		n := b.data
		if k >= b.short {
			n++
		}
		parts = append(parts, data[:n])
		checks = append(checks, checkBytes(data[:n], b.check))
		data = data[n:]
	}
	var out []byte
	for _, group := range [][][]byte{parts, checks} {
		for i := range len(group[len(group)-1]) {
			for _, p := range group {
				if i < len(p) {
					out = append(out, p[i])
				}
			}
		}
	}
	return out
}

// powers and logs are those of 2 in the field of 256 elements modulo 0x11d.
var powers, logs = func() (p [512]byte, l [256]int) {
	v := 1
	for i := range 255 {
		p[i], p[i+255], l[v] = byte(v), byte(v), i
		if v <<= 1; v > 255 {
			v ^= 0x11d
		}
	}
	return p, l
}()

func times(a, b byte) byte {
	if a == 0 || b == 0 {
		return 0
	}
	return powers[logs[a]+logs[b]]
}

// checkBytes are the n Reed-Solomon check bytes of a block.
func checkBytes(data []byte, n int) []byte {
	generator := make([]byte, n) // without its leading 1, highest power first
	generator[n-1] = 1
	for i := range n {
		for k := range n {
			generator[k] = times(generator[k], powers[i])
			if k+1 < n {
				generator[k] ^= generator[k+1]
			}
		}
	}
	rest := make([]byte, n)
	for _, d := range data {
		lead := d ^ rest[0]
		copy(rest, rest[1:])
		rest[n-1] = 0
		for k := range n {
			rest[k] ^= times(generator[k], lead)
		}
	}
	return rest
}

func (c *Code) set(x, y int, dark bool) {
	if x >= 0 && y >= 0 && x < c.Side && y < c.Side {
		c.modules[y*c.Side+x], c.fixed[y*c.Side+x] = dark, true
	}
}

// patterns draws what is the same in every code of a version.
func (c *Code) patterns(version int) {
	for i := range c.Side { // timing
		c.set(6, i, i%2 == 0)
		c.set(i, 6, i%2 == 0)
	}
	far := c.Side - 4
	for _, at := range [][2]int{{3, 3}, {far, 3}, {3, far}} { // finders
		c.rings(at[0], at[1], 4, func(d int) bool { return d != 2 && d != 4 })
	}
	for _, x := range aligned[version-1] {
		for _, y := range aligned[version-1] {
			if !c.fixed[y*c.Side+x] || x == 6 && y != 6 && y != c.Side-7 || y == 6 && x != 6 && x != c.Side-7 {
				c.rings(x, y, 2, func(d int) bool { return d != 1 })
			}
		}
	}
	c.format(0)
	if version >= 7 {
		bits := version<<12 | remainder(version, 0x1f25, 12)
		for i := range 18 {
			c.set(c.Side-11+i%3, i/3, bits>>i&1 == 1)
			c.set(i/3, c.Side-11+i%3, bits>>i&1 == 1)
		}
	}
}

// rings draws squares in one another around a middle.
func (c *Code) rings(x, y, reach int, dark func(distance int) bool) {
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach; dx <= reach; dx++ {
			c.set(x+dx, y+dy, dark(max(dx, -dx, dy, -dy)))
		}
	}
}

// remainder is the check part of a number of bits by a generator of a degree.
func remainder(value, generator, degree int) int {
	rest := value
	for range degree {
		rest = rest<<1 ^ rest>>(degree-1)*generator
	}
	return rest
}

// format draws level M and the mask beside the finders.
func (c *Code) format(mask int) {
	bits := (mask<<10 | remainder(mask, 0x537, 10)) ^ 0x5412 // level M is 00
	bit := func(i int) bool { return bits>>i&1 == 1 }
	for i := range 6 {
		c.set(8, i, bit(i))
		c.set(5-i, 8, bit(9+i))
	}
	c.set(8, 7, bit(6))
	c.set(8, 8, bit(7))
	c.set(7, 8, bit(8))
	for i := range 8 {
		c.set(c.Side-1-i, 8, bit(i))
	}
	for i := 8; i < 15; i++ {
		c.set(8, c.Side-15+i, bit(i))
	}
	c.set(8, c.Side-8, true)
}

// fill lays the bytes out in pairs of columns from the right, up and down in turn.
func (c *Code) fill(data []byte) {
	i, up := 0, true
	for right := c.Side - 1; right > 0; right -= 2 {
		if right == 6 {
			right = 5
		}
		for k := range c.Side {
			y := k
			if up {
				y = c.Side - 1 - k
			}
			for _, x := range []int{right, right - 1} {
				if at := y*c.Side + x; !c.fixed[at] && i < 8*len(data) {
					c.modules[at] = data[i/8]>>(7-i%8)&1 == 1
					i++
				}
			}
		}
		up = !up
	}
}

var masks = []func(x, y int) bool{
	func(x, y int) bool { return (x+y)%2 == 0 },
	func(_, y int) bool { return y%2 == 0 },
	func(x, _ int) bool { return x%3 == 0 },
	func(x, y int) bool { return (x+y)%3 == 0 },
	func(x, y int) bool { return (x/3+y/2)%2 == 0 },
	func(x, y int) bool { return x*y%2+x*y%3 == 0 },
	func(x, y int) bool { return (x*y%2+x*y%3)%2 == 0 },
	func(x, y int) bool { return ((x+y)%2+x*y%3)%2 == 0 },
}

// mask turns over the modules of the mask that leaves the least that a scanner could
// take for something else.
func (c *Code) mask() {
	best, least := 0, math.MaxInt
	for m := range masks {
		c.turn(m)
		c.format(m)
		if p := c.penalty(); p < least {
			best, least = m, p
		}
		c.turn(m)
	}
	c.turn(best)
	c.format(best)
}

func (c *Code) turn(mask int) {
	for y := range c.Side {
		for x := range c.Side {
			if at := y*c.Side + x; !c.fixed[at] && masks[mask](x, y) {
				c.modules[at] = !c.modules[at]
			}
		}
	}
}
