package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
)

// runner works the lists of a job; shower shows what became of one.
type (
	runner func(context.Context, batch.Job) (batch.Outcome, error)
	shower func(*cli.Context, io.Writer, batch.Result) error
)

// runLists works the lists and says of each what became of it.
func (p program) runLists(c *cli.Context) (int, error) {
	job, err := p.jobOf(c, c.Args().Slice())
	if err != nil {
		return batch.WrongUsage, err
	}
	return p.work(c, job, batch.Run, p.summary)
}

// work lets a function work the job's lists, with a sign of life on a terminal,
// and shows each result in the order given.
func (p program) work(c *cli.Context, job batch.Job, run runner, show shower) (int, error) {
	if len(job.Lists) == 0 {
		return batch.WrongUsage, batch.Usagef("%s needs a list, for example `seamtally %s frame.xlsx`", c.Command.Name, c.Command.Name)
	}
	var err error
	if job.Lists, err = batch.Expand(job); err != nil {
		return batch.CodeOf(err), err
	}
	bar := startProgress(p.err, len(job.Lists), c.Bool("quiet"))
	job.Stuck = p.stuck
	var broken error
	job.Done = func(r batch.Result) {
		bar.step()
		if broken == nil {
			broken = p.tell(c, r, show)
		}
	}
	outcome, err := run(c.Context, job)
	bar.end()
	if err != nil {
		return batch.CodeOf(err), err
	}
	if outcome.Summary != "" && !c.Bool("quiet") && !c.Bool("json") && broken == nil {
		broken = say(p.out, fmt.Sprintf("all lists: wrote %s\n", filepath.ToSlash(outcome.Summary)))
	}
	return outcome.Code, broken
}

// stuck ends the program in place of a library that never comes back.
func (p program) stuck(list string) {
	p.complain("%q holds something on which the tool does not come to an end; nothing was written for it; save the list alone in a new workbook and give that, and please report this line with the list", list)
	p.exit(batch.OurBug)
}

// tell shows one result: what went wrong on standard error, the rest on standard output.
func (p program) tell(c *cli.Context, r batch.Result, show shower) error {
	for _, said := range r.Said {
		p.complain("%s", said)
	}
	if r.Err != nil {
		if r.Code != batch.Interrupted {
			p.complain("%s", r.Err.Error())
		}
		return nil
	}
	if c.Bool("json") {
		_, err := fmt.Fprintf(p.out, "%s\n", r.Document)
		return err
	}
	return show(c, p.out, r)
}

func join(dir, name string) string { return filepath.ToSlash(filepath.Join(dir, name)) }
