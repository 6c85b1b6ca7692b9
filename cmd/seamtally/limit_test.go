package main

import (
	"io/fs"
	"strings"
	"testing"
)

// TestMemoryLimits reads the limits as systems write them, of a container, a service, an
// older kernel, and none.
func TestMemoryLimits(t *testing.T) {
	for _, c := range []struct {
		name        string
		files       map[string]string
		group, free uint64
	}{
		{"none", nil, 0, 0},
		{"no limit", map[string]string{"/proc/self/cgroup": "0::/\n", "/sys/fs/cgroup/memory.max": "max\n", "/proc/meminfo": "MemTotal: 9 kB\nMemAvailable:    2048 kB\n"}, 0, 2 << 20},
		{"a container", map[string]string{"/proc/self/cgroup": "0::/\n", "/sys/fs/cgroup/memory.max": "268435456\n"}, 256 << 20, 0},
		{"a service in a slice", map[string]string{"/proc/self/cgroup": "0::/a.slice/b.service\n", "/sys/fs/cgroup/a.slice/memory.max": "1000\n", "/sys/fs/cgroup/a.slice/b.service/memory.max": "2000\n"}, 1000, 0},
		{"the older edition", map[string]string{"/proc/self/cgroup": "5:cpu:/x\n4:memory:/x\n", "/sys/fs/cgroup/memory/x/memory.limit_in_bytes": "4096\n", "/sys/fs/cgroup/memory/memory.limit_in_bytes": "9223372036854771712\n"}, 4096, 0},
		{"nonsense", map[string]string{"/proc/self/cgroup": "what\n\n::\n", "/proc/meminfo": "MemAvailable: much\n"}, 0, 0},
	} {
		read := func(name string) ([]byte, error) {
			if text, ok := c.files[name]; ok {
				return []byte(text), nil
			}
			return nil, fs.ErrNotExist
		}
		if group, free := groupLimit(read), available(read); group != c.group || free != c.free {
			t.Errorf("%s: %d and %d, want %d and %d", c.name, group, free, c.group, c.free)
		}
	}
	if got := least(0, 5, 3, 0); got != 3 {
		t.Errorf("the least is %d", got)
	}
}

// TestWhatSetsTheLimit: the least wall counts and is named; a disk to turn to is room;
// GOMEMLIMIT is no wall.
func TestWhatSetsTheLimit(t *testing.T) {
	t.Setenv("GOMEMLIMIT", "60MiB")
	for _, c := range []struct {
		addresses uint64
		files     map[string]string
		bytes     uint64
		by        string
	}{
		{0, nil, 0, ""},
		{1 << 30, map[string]string{"/proc/meminfo": "MemAvailable: 2097152 kB\n"}, 1 << 30, "addresses"},
		{1 << 30, map[string]string{"/proc/meminfo": "MemAvailable: 1024 kB\n"}, 1 << 20, "machine"},
		{0, map[string]string{"/proc/meminfo": "MemAvailable: 1024 kB\nSwapFree: 3072 kB\n"}, 4 << 20, "machine"},
		{1 << 30, map[string]string{"/proc/self/cgroup": "0::/\n", "/sys/fs/cgroup/memory.max": "268435456\n"}, 256 << 20, "container"},
	} {
		read := func(name string) ([]byte, error) {
			if text, ok := c.files[name]; ok {
				return []byte(text), nil
			}
			return nil, fs.ErrNotExist
		}
		if got := wall(c.addresses, read); got.bytes != c.bytes || !strings.Contains(got.by, c.by) || (got.by == "") != (c.by == "") {
			t.Errorf("%d bytes by %q, want %d by %q", got.bytes, got.by, c.bytes, c.by)
		}
	}
}
