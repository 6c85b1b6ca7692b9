// Package weld answers one question: what do physics and geometry say about a
// weld? It turns sizes into areas, areas into metal, currents into wire feed and
// deposition, and settings into heat, gas and energy. It is pure: no files, no
// tables, no clock. Constants that belong to a wire, a metal or a shop are
// arguments; constants that belong to a formula stand beside it with their source.
//
// Read it in the order of the work: section.go (what a cross-section is),
// fillet.go, groove.go and other.go (areas as drawn and as made), metal.go (mass
// and wire), melt.go (wire feed and deposition), arc.go (travel, voltage, heat
// input), cooling.go, carbon.go and preheat.go (ferritic steel), supply.go (gas,
// energy, duty), stitch.go (intermittent welds), shrink.go (distortion).
//
// The package refuses to guess: a value outside the range of a formula is an
// error that wraps [ErrRange] and names the quantity, the value and the limits.
// No function returns NaN or infinity.
package weld
