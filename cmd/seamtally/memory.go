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
	afterEach(new([16]byte))
}

// How much a heap may grow by before it is collected: up to the first time, in per
// cent of 4 MB; from then on by the larger of a share of what is in use and of a
// size that a small list hardly fills.
const (
	firstPercent = 500
	laterPercent = 30
	laterBytes   = 20 << 20
)

// afterEach sets, each time that the heap was collected, how far it may grow now.
// The piece of memory is of no other use than to be found unused.
func afterEach(piece *[16]byte) {
	runtime.SetFinalizer(piece, func(piece *[16]byte) {
		var heap runtime.MemStats
		runtime.ReadMemStats(&heap)
		live := heap.NextGC * 100 / uint64(100+percent)
		percent = max(laterPercent, int(100*laterBytes/max(live, 1)))
		debug.SetGCPercent(percent)
		afterEach(piece)
	})
}

// percent is what was set last.
var percent = firstPercent
