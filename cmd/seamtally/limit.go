package main

import (
	"os"
	"path"
	"runtime/debug"
	"strconv"
	"strings"
)

// limit is how many bytes the program may take, and what says so; 0: nobody does.
type limit struct {
	bytes uint64
	by    string
}

// memoryLeft returns how much memory the program may take: the least of what its
// surroundings set. One who takes more is ended, or gets none. A limit that is set also
// makes the garbage be collected before it is met. GOMEMLIMIT says when to collect and
// nothing else: it is obeyed in that, and refuses no list.
func memoryLeft() limit {
	left := wall(addresses(), os.ReadFile)
	if collect := least(left.bytes, available(os.ReadFile)); collect > 0 && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(int64(collect / 10 * 9))
	}
	return left
}

// wall is the least limit that cannot be passed, given that on addresses. What a machine
// has may lie on its disk.
func wall(addresses uint64, read files) limit {
	free := available(read)
	if free > 0 {
		free += inMeminfo(read, "SwapFree:")
	}
	low := limit{}
	for _, l := range []limit{
		{addresses, "the limit on addresses, as ulimit -v sets it"},
		{groupLimit(read), "the limit of the container or service that it runs in"},
		{free, "what the machine has free"},
	} {
		if l.bytes > 0 && (low.bytes == 0 || l.bytes < low.bytes) {
			low = l
		}
	}
	return low
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
func available(read files) uint64 { return inMeminfo(read, "MemAvailable:") }

// inMeminfo is a line of what the system says of its memory, in bytes.
func inMeminfo(read files, name string) uint64 {
	text, err := read("/proc/meminfo")
	if err != nil {
		return 0
	}
	for line := range strings.Lines(string(text)) {
		if rest, ok := strings.CutPrefix(line, name); ok {
			kb, err := strconv.ParseUint(strings.TrimSuffix(strings.TrimSpace(rest), " kB"), 10, 64)
			if err == nil {
				return kb << 10
			}
		}
	}
	return 0
}
