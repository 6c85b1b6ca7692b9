package save

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

// Disk is what this package asks of a file system when it changes something.
// Tests put a failing one in its place; reading goes straight to the system.
type Disk interface {
	// Create makes a new hidden file in dir, mode 0644 less the umask, held so
	// that another run can tell it from one left behind.
	Create(dir, suffix string) (Handle, error)
	// Keep gives an existing file a second, hidden name in dir.
	Keep(dir, path string) (string, error)
	Rename(from, to string) error
	Remove(path string) error
	// SyncDir makes the names in a folder last through a power cut.
	SyncDir(dir string) error
	// Lock opens the journal of a folder for this run alone, or fails with ErrBusy.
	Lock(path string) (Journal, error)
	Mkdir(path string) error
}

// Handle is a file being written.
type Handle interface {
	io.Writer
	Name() string
	Sync() error
	Close() error
}

// Journal is the held journal file of a folder.
type Journal interface {
	Read() ([]byte, error)
	// Write replaces the content and syncs it.
	Write(text []byte) error
	// Release lets go of the journal, and removes it unless keep is set.
	Release(keep bool) error
}

// ErrBusy says that another run holds the journal of the folder.
var ErrBusy = errors.New("another run of seamtally is putting files into this folder")

// Hidden files of this tool: prefix, something unlikely, suffix.
const (
	hiddenPrefix = ".seamtally-"
	partSuffix   = ".part"
	oldSuffix    = ".old"
	journalName  = hiddenPrefix + "journal"
)

// Real returns the file system of the machine.
func Real() Disk { return osDisk{} }

type osDisk struct{}

func (osDisk) Create(dir, suffix string) (Handle, error) {
	for {
		path := filepath.Join(dir, hiddenName(suffix))
		file, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
		if errors.Is(err, os.ErrExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		if held(file, path) {
			return osHandle{file}, nil
		}
		// A run that was sweeping took it for a leftover: make another.
		_ = file.Close()
		_ = os.Remove(path)
	}
}

func hiddenName(suffix string) string {
	var b [8]byte
	_, _ = rand.Read(b[:]) // Never fails; it ends the program where the system has no randomness.
	return hiddenPrefix + hex.EncodeToString(b[:]) + suffix
}

// held takes the lock on a file just opened and makes sure that its name still
// leads to it.
func held(file *os.File, path string) bool {
	if !tryLock(file) {
		return false
	}
	mine, err := file.Stat()
	if err != nil {
		return false
	}
	named, err := os.Lstat(path)
	return err == nil && os.SameFile(mine, named)
}

// Keep links the file under a second name; where the file system has no links
// it copies.
func (d osDisk) Keep(dir, path string) (string, error) {
	kept := filepath.Join(dir, hiddenName(oldSuffix))
	if os.Link(path, kept) == nil {
		return kept, nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return "", err
	}
	file, err := os.OpenFile(kept, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return "", err
	}
	defer file.Close()
	if _, err := file.Write(data); err != nil {
		return "", errors.Join(err, os.Remove(kept))
	}
	return kept, file.Sync()
}

// Rename tries again for a moment where virus scanners and viewers hold files.
func (osDisk) Rename(from, to string) error {
	err := os.Rename(from, to)
	if runtime.GOOS != "windows" {
		return err
	}
	for wait := 10 * time.Millisecond; err != nil && wait < 100*time.Millisecond; wait *= 2 {
		time.Sleep(wait)
		err = os.Rename(from, to)
	}
	return err
}

func (osDisk) Remove(path string) error { return os.Remove(path) }

func (osDisk) Mkdir(path string) error { return os.Mkdir(path, 0o755) }

func (osDisk) SyncDir(dir string) error {
	if runtime.GOOS == "windows" {
		return nil // Folders cannot be synced there.
	}
	folder, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer folder.Close()
	return folder.Sync()
}

type osHandle struct{ *os.File }

// Sync brings the content to the disk. Windows renames no open file, so it is
// closed there as well.
func (h osHandle) Sync() error {
	err := h.File.Sync()
	if runtime.GOOS == "windows" {
		return errors.Join(err, h.File.Close())
	}
	return err
}

func (osDisk) Lock(path string) (Journal, error) {
	file, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o644)
	if err != nil {
		return nil, err
	}
	if !held(file, path) {
		_ = file.Close()
		return nil, ErrBusy
	}
	return osJournal{file}, nil
}

type osJournal struct{ file *os.File }

func (j osJournal) Read() ([]byte, error) {
	if _, err := j.file.Seek(0, io.SeekStart); err != nil {
		return nil, err
	}
	return io.ReadAll(j.file)
}

func (j osJournal) Write(text []byte) error {
	if err := j.file.Truncate(0); err != nil {
		return err
	}
	if _, err := j.file.WriteAt(text, 0); err != nil {
		return err
	}
	return j.file.Sync()
}

func (j osJournal) Release(keep bool) error {
	var err error
	if !keep && runtime.GOOS != "windows" {
		err = os.Remove(j.file.Name()) // While it is still held: nobody else can be using it.
	}
	err = errors.Join(err, j.file.Close())
	if !keep && runtime.GOOS == "windows" {
		err = errors.Join(err, os.Remove(j.file.Name()))
	}
	return err
}
