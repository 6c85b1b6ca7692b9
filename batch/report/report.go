// Package report writes a priced job for machines: the results CSV, whose columns
// are the result keys, and the JSON document, whose joints have fields of the
// same names. Nothing is worked out here.
//
// Read row.go (what stands under each key), then csv.go and document.go.
package report

import (
	"encoding/json"
	"math"
	"strconv"

	"seamtally/batch/price"
)

// number is a figure that may be unknown. Unknown is written as an empty cell
// and as null: never as zero.
type number struct {
	value float64
	known bool
}

// unknown is the number that is not known or does not apply.
var unknown number

// of returns a known number rounded to decimals; one that is not finite is unknown.
func of[T ~float64](x T, decimals int) number {
	if v := float64(x); math.IsNaN(v) || math.IsInf(v, 0) {
		return unknown
	}
	return number{float64(price.Round(x, decimals)), true}
}

// positive is a figure of which zero says that it is not known.
func positive[T ~float64](x T, decimals int) number {
	if x <= 0 {
		return unknown
	}
	return of(x, decimals)
}

// when returns the number if it applies.
func when(applies bool, n number) number {
	if !applies {
		return unknown
	}
	return n
}

// count is a whole number.
func count(n int) number { return number{float64(n), true} }

// MarshalCSV writes the shortest text that reads back as the same number.
func (n number) MarshalCSV() (string, error) {
	if !n.known {
		return "", nil
	}
	return strconv.FormatFloat(n.value, 'f', -1, 64), nil
}

// MarshalJSON writes the same text, or null.
func (n number) MarshalJSON() ([]byte, error) {
	if !n.known {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, n.value, 'f', -1, 64), nil
}

// pair is a range of two numbers.
type pair struct{ low, high number }

// MarshalCSV writes "5.1-7.8".
func (p pair) MarshalCSV() (string, error) {
	low, _ := p.low.MarshalCSV()
	high, _ := p.high.MarshalCSV()
	if low == high {
		return low, nil
	}
	return low + "-" + high, nil
}

// MarshalJSON writes [5.1,7.8], or null.
func (p pair) MarshalJSON() ([]byte, error) {
	if !p.low.known {
		return []byte("null"), nil
	}
	return json.Marshal([]number{p.low, p.high})
}
