package batch

import (
	"context"
	"errors"
	"fmt"

	"seamtally/batch/save"
)

// Exit codes, as the README lists them. With several lists the highest counts.
const (
	Worked      = 0
	SomeRows    = 1 // worked, but some rows could not be
	WrongUsage  = 2
	Unreadable  = 3 // a list or a table could not be read
	Unwritable  = 4 // an output could not be written
	OurBug      = 70
	Interrupted = 130
)

// Usage is a command line that cannot be followed.
type Usage struct{ Text string }

func (u *Usage) Error() string { return u.Text }

// Usagef returns a Usage error.
func Usagef(format string, args ...any) error { return &Usage{fmt.Sprintf(format, args...)} }

// Bug is a fault of the tool itself, met while it worked a list.
type Bug struct {
	List  string // empty: not in a list
	Fault any
}

func (b *Bug) Error() string {
	where := ""
	if b.List != "" {
		where = " while working " + fmt.Sprintf("%q", b.List)
	}
	return fmt.Sprintf("a fault of the tool itself stopped it%s (%v): nothing was written for it; please report this line with the list", where, b.Fault)
}

// CodeOf returns the exit code of an error.
func CodeOf(err error) int {
	var (
		usage *Usage
		bug   *Bug
		saved *save.Error
	)
	switch {
	case err == nil:
		return Worked
	case errors.Is(err, context.Canceled):
		return Interrupted
	case errors.As(err, &bug):
		return OurBug
	case errors.As(err, &usage):
		return WrongUsage
	case errors.As(err, &saved):
		return Unwritable
	default:
		return Unreadable
	}
}
