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
	// Link gives an existing file a second name, where the file system has such.
	Link(path, as string) error
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

func (osDisk) Link(path, as string) error { return os.Link(path, as) }

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

// keep gives an existing file a second name; where the file system has no links it
// copies, and the copy lasts through a power cut as the file does.
func keep(disk Disk, path, as string) error {
	if disk.Link(path, as) == nil {
		return nil
	}
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close() // Opened for reading: nothing is lost.
	handle, err := disk.Create(as)
	if err != nil {
		return err
	}
	if _, err = io.Copy(handle, file); err == nil {
		err = handle.Sync()
	}
	if closed := handle.Close(); err == nil {
		err = closed
	}
	return err
}
