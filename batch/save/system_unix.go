//go:build unix

package save

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// flock is the system's; a test puts that of a file system without locks in its place.
var flock = syscall.Flock

// tryLock takes the lock on a file or folder, which ends with the process that
// holds it, however that ends.
func tryLock(path string) (letGo func(), err error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	letGo = func() { _ = file.Close() } // Opened for reading: nothing is lost.
	err = flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	switch {
	case errors.Is(err, syscall.EWOULDBLOCK):
		err = ErrBusy
	case err != nil:
		err = errNoLocks
	case !leadsTo(path, file):
		err = fs.ErrNotExist // Its last holder has just removed it.
	}
	if err != nil {
		letGo()
	}
	return letGo, err
}

func leadsTo(path string, file *os.File) bool {
	opened, err1 := file.Stat()
	named, err2 := os.Lstat(path)
	return err1 == nil && err2 == nil && os.SameFile(opened, named)
}

func rename(from, to string) error { return os.Rename(from, to) }

func syncDir(dir string) error {
	folder, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer folder.Close()
	return folder.Sync()
}

// systemReasons are the errors of this system alone.
var systemReasons []worded
