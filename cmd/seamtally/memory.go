package main

import (
	"os"
	"runtime"
	"runtime/debug"
)

// spareMemory lets a short run end without ever collecting its garbage, and a long
// one collect it early: lists of many thousand joints then fit beside the programs
// that a shop has open, and take no longer. GOGC in the environment is obeyed
// instead.
func spareMemory() {
	if os.Getenv("GOGC") != "" {
		return
	}
	debug.SetGCPercent(firstPercent)
	first := new([16]byte)
	runtime.SetFinalizer(first, func(*[16]byte) { debug.SetGCPercent(laterPercent) })
}

// How much a heap may grow by before it is collected, in per cent: of 4 MB up to
// the first time, of what is in use from then on.
const (
	firstPercent = 500
	laterPercent = 40
)
