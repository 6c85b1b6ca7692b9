// Command seamtally turns a joint list into a priced workbook, a results file
// and a traveller. This package holds words and exit codes; it does no sums.
//
// Read main.go, then app.go (the commands), options.go (what they take),
// arrange.go (options before or after the lists) and one file per command.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"seamtally/batch"
	"seamtally/batch/save"
)

// version is the tool's own; the tables carry their edition beside it.
const version = "0.1.0"

// grace is how long an interrupted run may take to clear up after itself.
const grace = 1500 * time.Millisecond

func main() {
	spareMemory()
	signal.Ignore(syscall.SIGPIPE) // A reader that has seen enough, such as head, is no fault.
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	p := program{in: os.Stdin, out: os.Stdout, err: os.Stderr, now: time.Now, exit: os.Exit}
	ended := make(chan int, 1)
	go func() { ended <- p.run(ctx, os.Args) }()
	select {
	case code := <-ended:
		os.Exit(code)
	case <-ctx.Done():
		stop() // A second interruption ends the program at once.
	}
	select {
	case code := <-ended:
		os.Exit(code)
	case <-time.After(grace):
		fmt.Fprintln(os.Stderr, interrupted)
		os.Exit(batch.Interrupted)
	}
}

const interrupted = "seamtally: interrupted; every output is whole: as it was, or new"

// program is one start of the tool with all that it takes from its surroundings.
type program struct {
	in       io.Reader
	out, err io.Writer
	now      func() time.Time
	exit     func(int) // ends the program at once
}

// run carries out one command line and returns the exit code. A fault of our
// own ends it with one line, never with a trace.
func (p program) run(ctx context.Context, args []string) (code int) {
	defer func() {
		if fault := recover(); fault != nil {
			p.complain("%s", (&batch.Bug{Fault: fault}).Error())
			code = batch.OurBug
		}
	}()
	line, err := arrange(args)
	if err == nil && line.help {
		return p.help(line.command)
	}
	if err == nil && line.version {
		return p.version(line)
	}
	if err == nil {
		err = p.app(&code).RunContext(ctx, line.args)
	}
	return p.end(code, err)
}

// end words the error, if any, and returns the exit code that goes with it.
func (p program) end(code int, err error) int {
	ended := batch.CodeOf(err) == batch.Interrupted
	switch {
	case err != nil && ended, err == nil && code == batch.Interrupted: // also a list that was never begun
		p.complain("%s", interrupted[len("seamtally: "):])
		return batch.Interrupted
	case err == nil || brokenPipe(err):
		return code
	}
	if out := new(fs.PathError); errors.As(err, &out) && out.Path == os.Stdout.Name() {
		err = save.Unprinted(err)
	}
	code = max(code, batch.CodeOf(err))
	p.complain("%s", err.Error())
	return code
}

// complain writes to standard error, each line under the tool's name.
func (p program) complain(format string, args ...any) {
	for line := range strings.SplitSeq(plain(fmt.Sprintf(format, args...)), "\n") {
		fmt.Fprintln(p.err, "seamtally: "+line)
	}
}
