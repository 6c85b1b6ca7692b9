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
	Bytes  []byte `json:"bytes,omitempty"` // the name, where it is no text
	SHA256 string `json:"sha256"`          // of the new content
}

func lineOf(name, digest string) journalLine {
	if strings.ToValidUTF8(name, "") == name {
		return journalLine{Name: name, SHA256: digest}
	}
	return journalLine{Name: shown(name), Bytes: []byte(name), SHA256: digest}
}

func (l journalLine) name() string {
	if l.Bytes != nil {
		return string(l.Bytes)
	}
	return l.Name
}

// patience is how long a run waits for another to finish its renames.
var patience = 20 * time.Second

// alone holds the folder of the outputs: renames of two runs never mix.
func (f Folder) alone(ctx context.Context) (letGo func(), err error) {
	end := time.Now().Add(patience)
	for {
		letGo, err := f.Disk.Hold(f.Dir)
		if err == nil {
			return letGo, nil
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

// record writes the journal: which files are about to get which content.
func (f Folder) record(ctx context.Context, r *room, files []File, digests []string) error {
	var lines []journalLine
	for i, file := range files {
		lines = append(lines, lineOf(file.Name, digests[i]))
	}
	text, _ := json.Marshal(lines) // Texts only: never fails.
	_, err := f.writeFile(ctx, r.journal(), File{Data: text})
	return err
}

// Recover looks for what an earlier run left behind when it was cut off, says in
// sentences what state it left the folder in, and clears it away.
func (f Folder) Recover(ctx context.Context) []string {
	left := f.hidden()
	if len(left) == 0 {
		return nil
	}
	letGo, err := f.alone(ctx)
	if err != nil {
		return nil // Nothing is wrong with the folder that Put would not report better.
	}
	defer letGo()
	var told []string
	for _, path := range left {
		if letGo, ok := abandoned(path); ok {
			for _, journal := range journalsOf(path) {
				told = append(told, f.tell(journal)...)
			}
			clearAway(f.Disk, path)
			letGo()
		}
	}
	return told
}

func (f Folder) tell(journal string) []string {
	text, _ := os.ReadFile(journal)
	var lines []journalLine
	if json.Unmarshal(text, &lines) != nil {
		return nil // None, or cut off while it was written: no name was changed before it was whole.
	}
	var fresh, stale []string
	for _, line := range lines {
		data, err := os.ReadFile(filepath.Join(f.Dir, line.name()))
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
