// Package save puts finished files into a folder so that a reader finds, at any
// moment, the whole old file or the whole new one, and never a mixture. It knows
// nothing about welds or lists.
//
// Read save.go first (the order of events), then folder.go (what is refused
// before any work), journal.go (what a cut run leaves behind), stamp.go (how the
// tool knows its own files again) and disk.go (the seam to the file system).
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

// Put writes all files or none. Everything is written and synced under
// temporary names first; only then are the names changed, and a rename that
// fails takes the earlier ones back. Once the first name is changed an
// interruption waits until the last is.
func (f Folder) Put(ctx context.Context, files []File) error {
	parts, err := f.writeParts(ctx, files)
	defer parts.close()
	if err != nil {
		return errors.Join(err, parts.remove(f.Disk))
	}
	if err := f.commit(ctx, files, parts); err != nil {
		return errors.Join(err, parts.remove(f.Disk))
	}
	return nil
}

// part is a file written under a temporary name.
type part struct {
	path   string
	file   Handle
	digest string // SHA-256 of the content, lower-case hex
}

type parts []part

func (f Folder) writeParts(ctx context.Context, files []File) (parts, error) {
	var written parts
	for _, file := range files {
		handle, err := f.Disk.Create(f.Dir, partSuffix)
		if err != nil {
			return written, f.failed(file.Name, err)
		}
		w := &filler{ctx: ctx, handle: handle, sum: sha256.New()}
		written = append(written, part{path: handle.Name(), file: handle})
		if err := w.fill(file); err != nil {
			switch {
			case ctx.Err() != nil:
				return written, ctx.Err()
			case w.err == nil:
				return written, err // The content could not be made; the disk is not at fault.
			}
			return written, f.failed(file.Name, w.err)
		}
		written[len(written)-1].digest = hex.EncodeToString(w.sum.Sum(nil))
	}
	return written, nil
}

// filler writes the content of one file.
type filler struct {
	ctx    context.Context
	handle Handle
	sum    hash.Hash
	held   []byte // small pieces wait here for a larger write
	err    error  // of the disk, or of the context
}

func (w *filler) fill(file File) error {
	if file.Write != nil {
		if err := file.Write(w); err != nil {
			return err
		}
	} else if _, err := w.Write(file.Data); err != nil {
		return err
	}
	if w.err = w.flush(); w.err == nil {
		w.err = w.ctx.Err()
	}
	if w.err == nil {
		w.err = w.handle.Sync()
	}
	return w.err
}

// Write gathers small pieces and writes large ones, looking at the context in between.
func (w *filler) Write(data []byte) (int, error) {
	n := len(data)
	for len(data) > 0 && w.err == nil {
		take := min(chunk-len(w.held), len(data))
		w.held = append(w.held, data[:take]...)
		data = data[take:]
		if len(w.held) == chunk {
			w.err = w.flush()
		}
	}
	return n, w.err
}

func (w *filler) flush() error {
	if err := w.ctx.Err(); err != nil {
		return err
	}
	if len(w.held) == 0 {
		return nil
	}
	_, err := w.handle.Write(w.held)
	w.sum.Write(w.held)
	w.held = w.held[:0]
	return err
}

// commit changes the names, alone in the folder, with a journal that tells the
// next run what was under way should this one be cut off.
func (f Folder) commit(ctx context.Context, files []File, written parts) error {
	lock, err := f.lock(ctx)
	if err != nil {
		return err
	}
	defer lock.release()
	if err := f.Check(names(files)...); err != nil {
		return err
	}
	if err := lock.record(files, written); err != nil {
		return f.failed(journalName, err)
	}
	backups, err := f.keepOld(files)
	if err == nil {
		err = f.renameAll(files, written, backups)
	}
	if err != nil && errors.Is(err, errNotUndone) {
		lock.keep = true
		return err
	}
	return errors.Join(err, backups.remove(f.Disk))
}

// backup is the old file of one target under a second name; empty path: there was none.
type backup struct{ target, path string }

type backups []backup

// keepOld gives every file that will be replaced a second name.
func (f Folder) keepOld(files []File) (backups, error) {
	var kept backups
	for _, file := range files {
		target := filepath.Join(f.Dir, file.Name)
		b := backup{target: target}
		if _, err := os.Lstat(target); err == nil {
			path, err := f.Disk.Keep(f.Dir, target)
			if err != nil {
				return kept, f.failed(file.Name, err)
			}
			b.path = path
		}
		kept = append(kept, b)
	}
	return kept, nil
}

var errNotUndone = errors.New("and what was already put in place could not be taken back")

func (f Folder) renameAll(files []File, written parts, old backups) error {
	for i, p := range written {
		if err := f.Disk.Rename(p.path, old[i].target); err != nil {
			err = f.failed(files[i].Name, err)
			if undo := f.undo(old[:i]); undo != nil {
				return errors.Join(err, errNotUndone, undo)
			}
			return err
		}
	}
	if err := f.Disk.SyncDir(f.Dir); err != nil {
		if undo := f.undo(old); undo != nil {
			return errors.Join(f.failed("", err), errNotUndone, undo)
		}
		return f.failed("", err)
	}
	return nil
}

// undo puts every old file back under its own name, last first.
func (f Folder) undo(old backups) error {
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
	return errors.Join(errs...)
}

func (p parts) close() {
	for _, part := range p {
		_ = part.file.Close() // Synced before the rename, or given up: nothing is lost.
	}
}

func (p parts) remove(disk Disk) error {
	var errs []error
	for _, part := range p {
		errs = append(errs, gone(disk.Remove(part.path)))
	}
	return errors.Join(errs...)
}

func (b backups) remove(disk Disk) error {
	for _, backup := range b {
		if backup.path != "" {
			// A second name left over is swept by the next run: no reason to fail a saved job.
			_ = disk.Remove(backup.path)
		}
	}
	return nil
}

func names(files []File) []Target {
	var out []Target
	for _, f := range files {
		out = append(out, Target{Name: f.Name, Judge: f.Judge})
	}
	return out
}

func gone(err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}
