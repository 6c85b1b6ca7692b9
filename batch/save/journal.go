package save

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// journalLine is what the journal says about one file whose name is being changed.
type journalLine struct {
	Name   string `json:"name"`
	SHA256 string `json:"sha256"` // of the new content
}

// lock is this run's hold on a folder.
type lock struct {
	journal Journal
	keep    bool // leave the journal: the folder is in a state the next run must tell
}

// patience is how long a run waits for another to finish its renames.
const patience = 20 * time.Second

func (f Folder) lock(ctx context.Context) (*lock, error) {
	path := filepath.Join(f.Dir, journalName)
	end := time.Now().Add(patience)
	for {
		journal, err := f.Disk.Lock(path)
		if err == nil {
			return &lock{journal: journal}, nil
		}
		if !errors.Is(err, ErrBusy) || time.Now().After(end) {
			return nil, f.failed("", err)
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(5 * time.Millisecond):
		}
	}
}

func (l *lock) record(files []File, written parts) error {
	var lines []journalLine
	for i, f := range files {
		lines = append(lines, journalLine{Name: f.Name, SHA256: written[i].digest})
	}
	text, err := json.Marshal(lines)
	if err != nil {
		return err
	}
	return l.journal.Write(text)
}

func (l *lock) release() { _ = l.journal.Release(l.keep) } // A journal left over is empty of consequence: the next run reads it.

// Recover looks for what an earlier run left behind when it was cut off, says in
// sentences what state it left the folder in, and clears its hidden files away.
func (f Folder) Recover(ctx context.Context) []string {
	left := f.hidden()
	if len(left) == 0 {
		return nil
	}
	lock, err := f.lock(ctx)
	if err != nil {
		return nil // Nothing is wrong with the folder that Put would not report better.
	}
	defer lock.release()
	told := f.tell(lock)
	for _, path := range left {
		if leftover(path) && abandoned(path) {
			_ = f.Disk.Remove(path) // Tried again by the run after this one.
		}
	}
	return told
}

// hidden returns the paths of this tool's hidden files in the folder.
func (f Folder) hidden() []string {
	entries, _ := os.ReadDir(f.Dir) // A folder that cannot be listed shows its fault when it is written to.
	var paths []string
	for _, entry := range entries {
		if strings.HasPrefix(entry.Name(), hiddenPrefix) {
			paths = append(paths, filepath.Join(f.Dir, entry.Name()))
		}
	}
	return paths
}

func leftover(path string) bool {
	return strings.HasSuffix(path, partSuffix) || strings.HasSuffix(path, oldSuffix)
}

func (f Folder) tell(l *lock) []string {
	text, err := l.journal.Read()
	if err != nil || len(text) == 0 {
		return nil
	}
	var lines []journalLine
	if json.Unmarshal(text, &lines) != nil {
		return []string{fmt.Sprintf("an earlier run was cut off while it put its files into %s: check the dates of the outputs there, or run it again", shown(f.Dir))}
	}
	var fresh, stale []string
	for _, line := range lines {
		data, err := os.ReadFile(filepath.Join(f.Dir, line.Name))
		if err == nil && digest(data) == line.SHA256 {
			fresh = append(fresh, line.Name)
		} else {
			stale = append(stale, line.Name)
		}
	}
	if len(fresh) == 0 || len(stale) == 0 {
		return nil // All old or all new: nobody can be misled.
	}
	return []string{fmt.Sprintf("an earlier run was cut off while it put its files into %s: %s came from that run, %s did not and may be older; run that list again so that they belong together",
		shown(f.Dir), strings.Join(fresh, ", "), strings.Join(stale, ", "))}
}

func digest(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}
