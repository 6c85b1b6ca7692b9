package save

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"time"
)

// room is a run's hidden folder in the folder of the outputs: the new files until
// they are renamed, the second names of the old ones, the journal. It is held while
// the run lives, so that another can tell it from one left behind.
type room struct {
	path  string
	letGo func()
}

// hiddenPrefix begins the name of everything that this tool hides in a folder.
const hiddenPrefix = ".seamtally-"

const journalName = "journal"

// Names in a room.
func (r *room) part(i int) string { return filepath.Join(r.path, "new-"+strconv.Itoa(i+1)) }
func (r *room) old(i int) string  { return filepath.Join(r.path, "old-"+strconv.Itoa(i+1)) }
func (r *room) journal() string   { return filepath.Join(r.path, journalName) }

// takenAway is how often a new room may be taken for a leftover by a run that sweeps.
const takenAway = 10

// enter makes a room in the folder.
func (f Folder) enter() (*room, error) {
	for try := 1; ; try++ {
		r := &room{path: filepath.Join(f.Dir, hiddenName())}
		err := f.Disk.Mkdir(r.path)
		if err != nil {
			return nil, f.failed("", err)
		}
		r.letGo, err = f.Disk.Hold(r.path)
		if err == nil {
			return r, nil
		}
		_ = f.Disk.Remove(r.path)
		if swept := errors.Is(err, ErrBusy) || errors.Is(err, fs.ErrNotExist); !swept || try == takenAway {
			return nil, f.failed("", err)
		}
	}
}

func hiddenName() string {
	var b [8]byte
	_, _ = rand.Read(b[:]) // Never fails; it ends the program where the system has no randomness.
	return hiddenPrefix + hex.EncodeToString(b[:])
}

// clearAway removes a file, or a folder with the files in it. What cannot be removed
// is swept by the next run: no reason to fail a saved job.
func clearAway(disk Disk, path string) {
	entries, _ := os.ReadDir(path) // Of a file there are none.
	for _, entry := range entries {
		_ = disk.Remove(filepath.Join(path, entry.Name()))
	}
	_ = disk.Remove(path)
}

// Rooms, and what the first versions hid: their files stood in the folder one by one.
var (
	roomName = regexp.MustCompile(`^\.seamtally-[0-9a-f]{16}$`)
	loneName = regexp.MustCompile(`^\.seamtally-([0-9a-f]+\.(part|old)|journal)$`)
)

// hidden returns the paths of what this tool hid in the folder.
func (f Folder) hidden() []string {
	entries, _ := os.ReadDir(f.Dir) // A folder that cannot be listed shows its fault when it is written to.
	var paths []string
	for _, entry := range entries {
		if entry.IsDir() && roomName.MatchString(entry.Name()) || entry.Type().IsRegular() && loneName.MatchString(entry.Name()) {
			paths = append(paths, filepath.Join(f.Dir, entry.Name()))
		}
	}
	return paths
}

// outlived is the age at which something hidden was left behind, where there are no
// locks to tell: no run takes an hour to put its files in place.
const outlived = time.Hour

// abandoned takes something hidden that no running process holds.
func abandoned(path string) (letGo func(), ok bool) {
	letGo, err := tryLock(path)
	if errors.Is(err, errNoLocks) {
		info, err := os.Lstat(path)
		return func() {}, err == nil && time.Since(info.ModTime()) > outlived
	}
	return letGo, err == nil
}

// journalOf returns where something hidden has its journal, if it has one.
func journalOf(path string) string {
	if slices.Contains([]string{".part", ".old"}, filepath.Ext(path)) {
		return ""
	}
	if filepath.Base(path) == hiddenPrefix+journalName {
		return path
	}
	return filepath.Join(path, journalName)
}
