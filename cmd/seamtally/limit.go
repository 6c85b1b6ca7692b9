package main

import (
	"math"
	"os"
	"path"
	"runtime/debug"
	"strconv"
	"strings"
)

// memoryLeft returns how many bytes the program may take: the least of what its
// surroundings set. 0 where nothing says so. A limit that is set also makes the garbage
// be collected before it is met.
func memoryLeft() uint64 {
	left := least(goLimit(), addresses(), groupLimit(os.ReadFile), available(os.ReadFile))
	if left > 0 && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(int64(left / 10 * 9))
	}
	return left
}

// least returns the smallest of the limits that are known.
func least(limits ...uint64) uint64 {
	low := uint64(0)
	for _, l := range limits {
		if l > 0 && (low == 0 || l < low) {
			low = l
		}
	}
	return low
}

// goLimit is what GOMEMLIMIT says.
func goLimit() uint64 {
	if limit := debug.SetMemoryLimit(-1); limit > 0 && limit < math.MaxInt64 {
		return uint64(limit)
	}
	return 0
}

// files reads a file of the system; os.ReadFile but in tests.
type files func(string) ([]byte, error)

// groupLimit is the least limit of the control groups that the program runs in, as
// containers and services have them: its own and all above it, in either edition.
func groupLimit(read files) uint64 {
	text, err := read("/proc/self/cgroup")
	if err != nil {
		return 0
	}
	low := uint64(0)
	for line := range strings.Lines(string(text)) {
		parts := strings.SplitN(strings.TrimSpace(line), ":", 3)
		if len(parts) != 3 {
			continue
		}
		root, name := "/sys/fs/cgroup", "memory.max"
		switch {
		case parts[1] == "memory":
			root, name = "/sys/fs/cgroup/memory", "memory.limit_in_bytes"
		case parts[1] != "":
			continue
		}
		for group := path.Clean("/" + parts[2]); ; group = path.Dir(group) {
			low = least(low, whole(read, root+path.Join(group, name)))
			if group == "/" {
				break
			}
		}
	}
	return low
}

// unlimited is more than any machine has: older groups write such a number for none.
const unlimited = 1 << 60

func whole(read files, name string) uint64 {
	text, err := read(name)
	if err != nil {
		return 0
	}
	n, err := strconv.ParseUint(strings.TrimSpace(string(text)), 10, 64) // "max" is none
	if err != nil || n >= unlimited {
		return 0
	}
	return n
}

// available is what the machine has to give without turning to its disk.
func available(read files) uint64 {
	text, err := read("/proc/meminfo")
	if err != nil {
		return 0
	}
	for line := range strings.Lines(string(text)) {
		if rest, ok := strings.CutPrefix(line, "MemAvailable:"); ok {
			kb, err := strconv.ParseUint(strings.TrimSuffix(strings.TrimSpace(rest), " kB"), 10, 64)
			if err == nil {
				return kb << 10
			}
		}
	}
	return 0
}
