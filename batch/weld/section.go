package weld

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"seamtally/batch/units"
)

// ErrRange is wrapped by every error of this package: a value lies outside the
// range in which a formula holds.
var ErrRange = errors.New("outside the range of the formula")

// RangeError names the quantity that is out of range.
type RangeError struct {
	Quantity  string  // "leg"
	Value     float64 // as given
	Low, High float64 // limits, in Unit
	Unit      string
}

// Error says what was given and what is allowed.
func (e *RangeError) Error() string {
	given := strings.TrimSpace(fmt.Sprintf("%s of %.6g %s", e.Quantity, e.Value, e.Unit))
	if e.Low == smallest {
		return strings.TrimSpace(fmt.Sprintf("%s must be more than 0 and at most %.6g %s", given, e.High, e.Unit))
	}
	return strings.TrimSpace(fmt.Sprintf("%s must be from %.6g to %.6g %s", given, e.Low, e.High, e.Unit))
}

// Unwrap lets callers test with errors.Is(err, ErrRange).
func (e *RangeError) Unwrap() error { return ErrRange }

// within returns an error unless low <= v <= high; NaN is outside every range.
func within[T ~float64](quantity string, v T, low, high float64, unit string) error {
	if x := float64(v); x >= low && x <= high {
		return nil
	}
	return &RangeError{quantity, float64(v), low, high, unit}
}

// smallest is what counts as more than nothing: a denormal number is no size, and
// dividing by it gives infinity.
const smallest = 1e-6

// over returns an error unless v is more than nothing and at most high.
func over[T ~float64](quantity string, v T, high float64, unit string) error {
	return within(quantity, v, smallest, high, unit)
}

// first returns the first error that is one.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// Limits of what is taken for a weld at all. They guard against slips of the
// decimal point, not against bold design.
const (
	maxLeg       = 200.0 // mm
	maxThickness = 1000.0
	maxCurrent   = 2000.0 // A
)

// Point is a corner of a drawn section in millimetres: X to the right, Y up.
type Point struct{ X, Y float64 }

// Allowances are what a shop adds to the drawn section. The zero value adds
// nothing, so that the area is the drawn geometry alone.
type Allowances struct {
	Overweld   units.MM // added to each leg of a fillet
	FitGap     units.MM // fit-up gap of fillets and laps: each leg grows by it
	Convexity  float64  // height of the cap of a fillet as a share of its face; below zero: concave
	CapHeight  units.MM // reinforcement of a butt, each welded face
	RootHeight units.MM // reinforcement of an open root
}

func (a Allowances) check() error {
	return first(
		within("overweld", a.Overweld, 0, 50, "mm"),
		within("fit-up gap", a.FitGap, 0, 50, "mm"),
		within("convexity", a.Convexity, -0.3, 0.5, "of the face width"),
		within("cap height", a.CapHeight, 0, 20, "mm"),
		within("root height", a.RootHeight, 0, 20, "mm"),
	)
}

// Section is the cross-section of one seam.
type Section interface {
	// Drawn returns the area of weld metal as drawn.
	Drawn() (units.MM2, error)
	// Made returns the area with the shop's allowances.
	Made(Allowances) (units.MM2, error)
	// Faces returns the widths of the faces that are welded over, as drawn: the
	// front face, then the back face where there is one.
	Faces() []units.MM
	// Outline returns the corners of the drawn section, counter-clockwise. It is
	// empty where the section cannot be drawn.
	Outline() []Point
}

// capOverlap is how far a butt's cap reaches over its mouth, both edges together.
const capOverlap = 2.0 // mm

// bead returns the area of a cap: a parabolic segment of a width and a height.
//
//	A = 2/3 w h        (AREA-2)
//
// Source: geometry; the published reinforcement elements of the Filler Metal Data
// Handbook sec. 8 follow it.
// Basis: derived.
func bead(width, height float64) float64 { return 2.0 / 3 * width * height }

func radians(d units.Degree) float64 { return float64(d) * math.Pi / 180 }
