package main

import (
	"os"
	"strconv"
	"strings"
	"syscall"
)

// addresses is what a limit on addresses (ulimit -v) leaves: what the program has taken
// of them is mostly set aside for nothing, and of the rest a quarter is lost between
// large pieces.
func addresses() uint64 {
	var limit syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_AS, &limit); err != nil || limit.Cur >= unlimited {
		return 0
	}
	text, err := os.ReadFile("/proc/self/statm")
	if err != nil {
		return 0
	}
	sizes := strings.Fields(string(text))
	if len(sizes) < 2 {
		return 0
	}
	all, _ := strconv.ParseUint(sizes[0], 10, 64)
	used, _ := strconv.ParseUint(sizes[1], 10, 64)
	page := uint64(os.Getpagesize())
	if taken := (all - min(used, all)) * page; taken < limit.Cur {
		return (limit.Cur - taken) / 4 * 3
	}
	return 1
}
