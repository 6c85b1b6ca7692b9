//go:build !unix

package save

import (
	"os"
	"syscall"
	"time"
)

// tryLock does nothing here: the system has no lock that fits.
func tryLock(string) (letGo func(), err error) { return nil, errNoLocks }

// rename tries again for a moment: virus scanners and viewers hold files.
func rename(from, to string) error {
	err := os.Rename(from, to)
	for wait := 10 * time.Millisecond; err != nil && wait < 100*time.Millisecond; wait *= 2 {
		time.Sleep(wait)
		err = os.Rename(from, to)
	}
	return err
}

// syncDir does nothing: folders cannot be synced here.
func syncDir(string) error { return nil }

// systemReasons are the errors of this system alone: what Windows answers where a
// spreadsheet program has the file open.
var systemReasons = []worded{
	{syscall.Errno(32), "another program holds it open", "close it there and run again"},
}
