package bars

import (
	"math"
	"slices"

	"seamtally/batch/units"
)

// step is how fine lengths are reckoned: whole hundredths of a millimetre.
const step = 100

// whole rounds a length up to steps: a piece never becomes shorter than asked.
func whole(l units.MM) int64 { return int64(math.Ceil(float64(l)*step - 1e-6)) }

// item is a piece with the kerf behind it.
type item struct {
	size  int64
	piece int
}

// size is a bar that can be bought. Its room is the stock less the end loss and
// with one kerf more, since the last piece needs no cut behind it.
type size struct {
	room, price int64
	stock       units.MM
}

// job is the question in whole numbers: items longest first, bars shortest first.
type job struct {
	items   []item
	sizes   []size
	tooLong []int
}

// load is what one bar holds: indices into the items.
type load []int

func newJob(pieces []units.MM, stock Stock) *job {
	j := &job{}
	kerf, loss := whole(max(stock.Kerf, 0)), whole(max(stock.EndLoss, 0))
	for _, l := range stock.Lengths {
		if room := int64(math.Floor(float64(l)*step+1e-6)) - loss + kerf; l > 0 && room > 0 && !math.IsInf(float64(l), 0) {
			j.sizes = append(j.sizes, size{room, whole(l), l})
		}
	}
	slices.SortFunc(j.sizes, func(a, b size) int { return int(a.price - b.price) })
	j.sizes = slices.CompactFunc(j.sizes, func(a, b size) bool { return a.price == b.price })
	for i, l := range pieces {
		if !(l > 0) || len(j.sizes) == 0 || l > j.sizes[len(j.sizes)-1].stock || whole(l)+kerf > j.largest() {
			j.tooLong = append(j.tooLong, i)
			continue
		}
		j.items = append(j.items, item{whole(l) + kerf, i})
	}
	slices.SortStableFunc(j.items, func(a, b item) int {
		switch {
		case a.size > b.size:
			return -1
		case a.size < b.size:
			return 1
		}
		return 0
	})
	return j
}

// largest is the room of the longest bar.
func (j *job) largest() int64 { return j.sizes[len(j.sizes)-1].room }

// sizeFor returns the shortest bar with that much room.
func (j *job) sizeFor(used int64) size {
	for _, s := range j.sizes {
		if used <= s.room {
			return s
		}
	}
	panic("a bar holds more than its length")
}

func (j *job) used(l load) int64 {
	var sum int64
	for _, i := range l {
		sum += j.items[i].size
	}
	return sum
}

// cost is the length bought for loads, each on the shortest bar that holds it.
func (j *job) cost(loads []load) int64 {
	var sum int64
	for _, l := range loads {
		sum += j.sizeFor(j.used(l)).price
	}
	return sum
}

// better tells whether a buys less than b, or the same in fewer bars.
func (j *job) better(a, b []load) bool {
	if b == nil {
		return true
	}
	ca, cb := j.cost(a), j.cost(b)
	return ca < cb || ca == cb && len(a) < len(b)
}

func (j *job) bar(l load, pieces []units.MM) Bar {
	s := j.sizeFor(j.used(l))
	b := Bar{Stock: s.stock, Waste: s.stock}
	slices.Sort(l)
	for _, i := range l {
		b.Pieces = append(b.Pieces, j.items[i].piece)
		b.Waste -= pieces[j.items[i].piece]
	}
	return b
}
