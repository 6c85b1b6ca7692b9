package save

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// Folder is where the outputs of one list go.
type Folder struct {
	Dir    string
	Disk   Disk
	Force  bool     // replace files that are not this tool's, or were changed since
	Inputs []string // files that are read and so never replaced
	Shared *Shared  // the hidden folder of all lists of a run; nil: each Put has its own
}

// Target is the name of an output to come.
type Target struct {
	Name  string
	Judge Judge
}

// Error says which output could not be written and what to do about it.
type Error struct {
	Path string
	Why  string // half a sentence
	Do   string // what to do
	Err  error
}

func (e *Error) Error() string {
	text := fmt.Sprintf("%s cannot be written: %s", shown(e.Path), e.Why)
	if e.Do != "" {
		text += "; " + e.Do
	}
	return text
}

func (e *Error) Unwrap() error { return e.Err }

// Prepare makes the folder if only its last part is missing, and reports
// whether it did. It finds out, before any work is done, whether files can be
// made in it.
func (f Folder) Prepare() (made bool, err error) {
	info, err := os.Stat(f.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		err := f.Disk.Mkdir(f.Dir)
		if err != nil && !errors.Is(err, fs.ErrExist) { // Another run may just have made it.
			return false, f.failed("", err)
		}
		made = err == nil
	} else if err != nil {
		return false, f.failed("", err)
	} else if !info.IsDir() {
		return false, &Error{Path: f.Dir, Why: "it is a file, not a folder", Do: "name a folder after -o"}
	}
	return made, f.probe()
}

// probe makes a file in the folder and removes it.
func (f Folder) probe() error {
	r, err := f.enter()
	if err != nil {
		return err
	}
	defer r.leave()
	_, err = f.writeFile(context.Background(), r.part(0), File{})
	r.clear(f.Disk)
	return err
}

// Check reports whether every target may be written: its name is possible, it
// is no input, and what stands there now is this tool's own and unchanged.
func (f Folder) Check(targets ...Target) error {
	var errs []error
	for _, t := range targets {
		if err := f.check(t); err != nil {
			errs = append(errs, err)
		}
	}
	return errors.Join(errs...)
}

func (f Folder) check(t Target) error {
	path := filepath.Join(f.Dir, t.Name)
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return f.failed(t.Name, err)
	}
	if input := f.isInput(path); input != "" {
		return &Error{Path: path, Why: fmt.Sprintf("it is the same file as the input %s, and inputs are never changed", shown(input)), Do: "choose another folder with -o"}
	}
	if info.Mode()&fs.ModeSymlink != 0 {
		return f.unlessForced(path, "it is a link to another file", "remove the link, choose another folder with -o, or add --force to put a file in place of the link")
	}
	if info.IsDir() {
		return &Error{Path: path, Why: "a folder has that name", Do: "move or rename that folder, or choose another one for the outputs with -o"}
	}
	if !info.Mode().IsRegular() {
		return &Error{Path: path, Why: "something that is not a plain file stands there", Do: "move or rename it, or choose another folder with -o"}
	}
	if f.Force {
		return nil
	}
	return f.checkOwner(path, t.Judge)
}

func (f Folder) checkOwner(path string, judge Judge) error {
	old, err := os.ReadFile(path)
	if err != nil {
		return f.failed(filepath.Base(path), err)
	}
	owner := Foreign
	if judge != nil {
		owner = judge(old)
	}
	const do = "move or rename it, choose another folder with -o, or add --force to replace it"
	switch owner {
	case Own:
		return nil
	case Changed:
		return f.unlessForced(path, "the file there was changed after seamtally wrote it", do)
	default:
		return f.unlessForced(path, "a file stands there that seamtally does not know as its own", do)
	}
}

func (f Folder) unlessForced(path, why, do string) error {
	if f.Force {
		return nil
	}
	return &Error{Path: path, Why: why, Do: do}
}

// isInput returns the input that is the same file as path under whatever name:
// another spelling, a hard link, a symbolic link.
func (f Folder) isInput(path string) string {
	info, err := os.Stat(path)
	if err != nil {
		return ""
	}
	for _, input := range f.Inputs {
		if other, err := os.Stat(input); err == nil && os.SameFile(info, other) {
			return input
		}
	}
	return ""
}

// failed words an error of the system for a person.
func (f Folder) failed(name string, err error) error {
	why, do := reason(err)
	path := f.Dir
	if name != "" {
		path = filepath.Join(f.Dir, name)
	}
	return &Error{Path: path, Why: why, Do: do, Err: err}
}

// worded is an error of the system in words for a person.
type worded struct {
	is      error
	why, do string
}

var reasons = append(systemReasons, []worded{
	{fs.ErrNotExist, "the folder does not exist", "make it first, or choose another with -o"},
	{fs.ErrPermission, "there is no permission to write there, or another program holds the file open", "close the file where it is open, or choose another folder with -o"},
	{syscall.EROFS, "the folder can only be read", "choose another folder with -o"},
	{syscall.ENOTDIR, "a part of the folder's path is a file", "name a folder after -o"},
	{syscall.ENAMETOOLONG, "the name is too long for the file system", "give the list a shorter name, or choose another folder with -o"},
	{syscall.ENOSPC, "the disk is full", "free some space, or choose another folder with -o"},
	{syscall.EDQUOT, "the disk quota is used up", "free some space, or choose another folder with -o"},
	{syscall.EFBIG, "the computer lets no file grow so large there", "choose another folder with -o, or have the limit raised"},
	{syscall.EIO, "the disk reports a fault", "choose another folder with -o and have the disk checked"},
	{syscall.ELOOP, "the links in its path lead in a circle", "choose another folder with -o"},
	{ErrBusy, "another run of seamtally is putting files into the folder", "try again when it has ended"},
}...)

// Unprinted is the error of standard output that takes no more.
func Unprinted(err error) *Error {
	why, _ := reason(err)
	return &Error{Path: "standard output", Why: why, Do: "print into a file where there is room, or to the screen", Err: err}
}

func reason(err error) (why, do string) {
	for _, r := range reasons {
		if errors.Is(err, r.is) {
			return r.why, r.do
		}
	}
	return "the system refused (" + strings.ReplaceAll(err.Error(), "\n", ", ") + ")", "choose another folder with -o"
}

func shown(path string) string { return fmt.Sprintf("%q", filepath.ToSlash(path)) }
