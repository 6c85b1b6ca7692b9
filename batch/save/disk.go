package save

import (
	"errors"
	"io"
	"os"
)

// Disk is what this package asks of a file system when it changes something.
// Tests put a failing one in its place; reading goes straight to the system.
type Disk interface {
	Mkdir(path string) error
	// Create makes a new file, mode 0644 less the umask.
	Create(path string) (Handle, error)
	// Keep gives an existing file a second name.
	Keep(path, as string) error
	Rename(from, to string) error
	Remove(path string) error
	// SyncDir makes the names in a folder last through a power cut.
	SyncDir(dir string) error
	// Hold takes a folder for this run alone until it is let go, or fails with
	// ErrBusy. The hold ends with the process, however that ends.
	Hold(dir string) (letGo func(), err error)
}

// Handle is a file being written.
type Handle interface {
	io.Writer
	Sync() error
	Close() error
}

// ErrBusy says that another run holds a folder.
var ErrBusy = errors.New("another run of seamtally is putting files into this folder")

// errNoLocks says that the system, or this file system, has no locks that fit.
var errNoLocks = errors.New("no locks here")

// Real returns the file system of the machine.
func Real() Disk { return osDisk{} }

type osDisk struct{}

func (osDisk) Mkdir(path string) error { return os.Mkdir(path, 0o755) }

func (osDisk) Create(path string) (Handle, error) {
	file, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return nil, err
	}
	return file, nil
}

// Keep links the file under the second name; where the file system has no links
// it copies.
func (osDisk) Keep(path, as string) error {
	if os.Link(path, as) == nil {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	return os.WriteFile(as, data, 0o644)
}

func (osDisk) Rename(from, to string) error { return rename(from, to) }

func (osDisk) Remove(path string) error { return os.Remove(path) }

func (osDisk) SyncDir(dir string) error { return syncDir(dir) }

// Hold goes on without a lock where there are none: two runs that put files of
// the same name into one folder at the same moment are not told apart there.
func (osDisk) Hold(dir string) (letGo func(), err error) {
	letGo, err = tryLock(dir)
	if errors.Is(err, errNoLocks) {
		return func() {}, nil
	}
	return letGo, err
}
