//go:build unix

package save

import (
	"os"
	"syscall"
)

// tryLock takes the lock on an open file, which ends with the process that
// holds it, however that ends.
func tryLock(file *os.File) bool {
	return syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

// abandoned reports whether no running process holds a hidden file.
func abandoned(path string) bool {
	file, err := os.Open(path)
	if err != nil {
		return false
	}
	defer file.Close()
	return tryLock(file)
}
