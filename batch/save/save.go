// Package save puts finished files into a folder so that a reader finds, at any
// moment, the whole old file or the whole new one, and never a mixture. It knows
// nothing about welds or lists.
//
// Read save.go first (the order of events), then room.go (the hidden folder of a
// run), folder.go (what is refused before any work), journal.go (what a cut run
// leaves behind), stamp.go (how the tool knows its own files again) and disk.go (the
// seam to the file system).
package save

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"hash"
	"io"
	"os"
	"path/filepath"
)

// File is one finished output.
type File struct {
	Name  string // in the folder, without a path
	Data  []byte
	Write func(io.Writer) error // writes the content in place of Data where that would be long; nil: Data it is
	Judge Judge                 // tells whose file stands in its place; nil: nobody's is replaced
}

// chunk is how much is written between two looks at the context.
const chunk = 1 << 20

// Put writes all files or none. Everything is written and synced in a hidden
// folder first; only then are the names changed, and a rename that fails takes the
// earlier ones back. Once the first name is changed an interruption waits until the
// last is.
func (f Folder) Put(ctx context.Context, files []File) error {
	r, err := f.enter()
	if err != nil {
		return err
	}
	defer r.leave()
	digests, err := f.writeParts(ctx, r, files)
	if err == nil {
		err = f.commit(ctx, r, files, digests)
	}
	if !errors.Is(err, errNotUndone) { // Else old and new stand side by side: the next run reads the journal and tells.
		r.clear(f.Disk)
	}
	return err
}

// writeParts writes every file into the room and returns what their contents hash to.
func (f Folder) writeParts(ctx context.Context, r *room, files []File) (digests []string, err error) {
	for i, file := range files {
		digest, err := f.writeFile(ctx, r.part(i), file)
		if err != nil {
			return nil, err
		}
		digests = append(digests, digest)
	}
	return digests, nil
}

// writeFile writes one file whole and synced.
func (f Folder) writeFile(ctx context.Context, path string, file File) (digest string, err error) {
	handle, err := f.Disk.Create(path)
	if err != nil {
		return "", f.failed(file.Name, err)
	}
	w := &filler{ctx: ctx, handle: handle, sum: sha256.New()}
	err = w.fill(file)
	if closed := handle.Close(); w.err == nil {
		w.err = closed
	}
	switch {
	case ctx.Err() != nil:
		return "", ctx.Err()
	case w.err != nil:
		return "", f.failed(file.Name, w.err)
	}
	return hex.EncodeToString(w.sum.Sum(nil)), err // The content could not be made: the disk is not at fault.
}

// filler writes the content of one file.
type filler struct {
	ctx    context.Context
	handle Handle
	sum    hash.Hash
	held   []byte // small pieces wait here for a larger write
	err    error  // of the disk, or of the context
}

// fill returns the error of whoever makes the content; that of the disk is kept.
func (w *filler) fill(file File) error {
	if file.Write == nil {
		_, _ = w.Write(file.Data) // Kept in w.err.
	} else if err := file.Write(w); err != nil {
		return err
	}
	w.flush()
	if w.err == nil {
		w.err = w.handle.Sync()
	}
	return nil
}

// Write gathers small pieces and writes large ones, looking at the context in between.
func (w *filler) Write(data []byte) (int, error) {
	n := len(data)
	for len(data) > 0 && w.err == nil {
		take := min(chunk-len(w.held), len(data))
		w.held = append(w.held, data[:take]...)
		data = data[take:]
		if len(w.held) == chunk {
			w.flush()
		}
	}
	return n, w.err
}

func (w *filler) flush() {
	if w.err == nil {
		w.err = w.ctx.Err()
	}
	if w.err == nil && len(w.held) > 0 {
		_, w.err = w.handle.Write(w.held)
		w.sum.Write(w.held)
		w.held = w.held[:0]
	}
}

// commit changes the names, alone in the folder, with a journal that tells the
// next run what was under way should this one be cut off.
func (f Folder) commit(ctx context.Context, r *room, files []File, digests []string) error {
	letGo, err := f.alone(ctx)
	if err != nil {
		return err
	}
	defer letGo()
	if err := f.Check(targets(files)...); err != nil {
		return err
	}
	if err := f.record(ctx, r, files, digests); err != nil {
		return err
	}
	old, err := f.keepOld(r, files)
	if err != nil {
		return err
	}
	return f.renameAll(r, files, old)
}

// backup is the old file of one target under a second name; empty path: there was none.
type backup struct{ target, path string }

// keepOld gives every file that will be replaced a second name.
func (f Folder) keepOld(r *room, files []File) ([]backup, error) {
	var kept []backup
	for i, file := range files {
		b := backup{target: filepath.Join(f.Dir, file.Name)}
		if _, err := os.Lstat(b.target); err == nil {
			b.path = r.old(i)
			if err := keep(f.Disk, b.target, b.path); err != nil {
				return nil, f.failed(file.Name, err)
			}
		}
		kept = append(kept, b)
	}
	return kept, nil
}

var errNotUndone = errors.New("and what was already put in place could not be taken back")

func (f Folder) renameAll(r *room, files []File, old []backup) error {
	for i, b := range old {
		if err := f.Disk.Rename(r.part(i), b.target); err != nil {
			return f.undo(old[:i], f.failed(files[i].Name, err))
		}
	}
	if err := f.Disk.SyncDir(f.Dir); err != nil {
		return f.undo(old, f.failed("", err))
	}
	return nil
}

// undo puts every old file back under its own name, last first, and returns why, with
// what could not be taken back.
func (f Folder) undo(old []backup, why error) error {
	var errs []error
	for i := len(old) - 1; i >= 0; i-- {
		var err error
		if old[i].path != "" {
			err = f.Disk.Rename(old[i].path, old[i].target)
		} else {
			err = f.Disk.Remove(old[i].target)
		}
		if err != nil {
			errs = append(errs, f.failed(filepath.Base(old[i].target), err))
		}
	}
	if errs == nil {
		return why
	}
	return errors.Join(append([]error{why, errNotUndone}, errs...)...)
}

func targets(files []File) []Target {
	var out []Target
	for _, f := range files {
		out = append(out, Target{Name: f.Name, Judge: f.Judge})
	}
	return out
}
