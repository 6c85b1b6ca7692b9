package save

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"time"
)

// room is what one Put has in a run's hidden folder: the new files until they are
// renamed, the second names of the old ones, the journal.
type room struct {
	path  string // of the hidden folder
	slot  string // begins the names of this Put's files in it
	leave func() // lets go of the folder; the last to leave removes it if it is empty
}

// hiddenPrefix begins the name of everything that this tool hides in a folder.
const hiddenPrefix = ".seamtally-"

const journalName = "journal"

// Names in a room.
func (r *room) part(i int) string { return r.file("new-" + strconv.Itoa(i+1)) }
func (r *room) old(i int) string  { return r.file("old-" + strconv.Itoa(i+1)) }
func (r *room) journal() string   { return r.file(journalName) }

func (r *room) file(name string) string { return filepath.Join(r.path, r.slot+name) }

// Shared is one hidden folder for all lists of a run whose outputs go into the same
// folder, at whatever moment each of them is put in place. It is held while anybody is
// in it, so that another run can tell it from one left behind.
type Shared struct {
	mu      sync.Mutex
	path    string
	letGo   func()
	inside  int
	entered int
}

// enter gives a Put its place in the hidden folder, which the first makes.
func (f Folder) enter() (*room, error) {
	s := f.Shared
	if s == nil {
		s = &Shared{}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.inside == 0 {
		path, letGo, err := f.makeHidden()
		if err != nil {
			return nil, err
		}
		s.path, s.letGo = path, letGo
	}
	s.inside++
	s.entered++
	return &room{path: s.path, slot: strconv.Itoa(s.entered) + "-", leave: func() { s.leave(f.Disk) }}, nil
}

func (s *Shared) leave(disk Disk) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.inside--; s.inside == 0 {
		_ = disk.Remove(s.path) // Not empty where something has to be told: the next run does both.
		s.letGo()
	}
}

// clear removes what this Put has in the hidden folder. What cannot be removed is
// swept by the next run: no reason to fail a saved job.
func (r *room) clear(disk Disk) {
	entries, _ := os.ReadDir(r.path) // A folder that is gone holds nothing.
	for _, entry := range entries {
		if strings.HasPrefix(entry.Name(), r.slot) {
			_ = disk.Remove(filepath.Join(r.path, entry.Name()))
		}
	}
}

// takenAway is how often a new room may be taken for a leftover by a run that sweeps.
const takenAway = 10

// makeHidden makes a hidden folder and holds it.
func (f Folder) makeHidden() (path string, letGo func(), err error) {
	for try := 1; ; try++ {
		path = filepath.Join(f.Dir, hiddenName())
		if err := f.Disk.Mkdir(path); err != nil {
			return "", nil, f.failed("", err)
		}
		letGo, err = f.Disk.Hold(path)
		if err == nil {
			return path, letGo, nil
		}
		_ = f.Disk.Remove(path)
		if swept := errors.Is(err, ErrBusy) || errors.Is(err, fs.ErrNotExist); !swept || try == takenAway {
			return "", nil, f.failed("", err)
		}
	}
}

func hiddenName() string {
	var b [8]byte
	_, _ = rand.Read(b[:]) // Never fails; it ends the program where the system has no randomness.
	return hiddenPrefix + hex.EncodeToString(b[:])
}

// clearAway removes what was left behind: a file, or a folder with the files in it.
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

// journalsOf returns the journals of something that was left behind.
func journalsOf(path string) []string {
	if filepath.Base(path) == hiddenPrefix+journalName {
		return []string{path}
	}
	entries, _ := os.ReadDir(path) // Of a file there are none.
	var journals []string
	for _, entry := range entries {
		if strings.HasSuffix(entry.Name(), journalName) {
			journals = append(journals, filepath.Join(path, entry.Name()))
		}
	}
	return journals
}
