// Package batch works joint lists from their bytes to saved outputs. Run tells
// the whole story; everything else stands in the package that Run names.
//
// Read run.go first, then work.go (one list), names.go (what the outputs are
// called) and codes.go (exit codes).
package batch

import (
	"context"
	"runtime"
	"sync"
)

// Run works every list of the job, as many at a time as there are cores. One
// list that cannot be worked never stops the rest. An error means that nothing
// was begun: the command line, a table, the shop file or a folder is at fault.
func Run(ctx context.Context, job Job) (Outcome, error) {
	tools, err := job.tools()
	if err != nil {
		return Outcome{}, err
	}
	places, err := job.places()
	if err != nil {
		return Outcome{}, err
	}
	defer job.open(ctx, places)()
	all := newSummary(job, places)
	if all != nil {
		job.Done = all.listen(job.Done)
	}
	outcome := each(ctx, job, len(places), func(j *Job, i int) Result { return j.save(ctx, tools, places[i]) })
	if all != nil && !job.DryRun && ctx.Err() == nil {
		outcome.Summary, err = all.save(ctx)
		outcome.Code = max(outcome.Code, CodeOf(err))
	}
	return outcome, err
}

// Judge works every list as Run does and writes nothing.
func Judge(ctx context.Context, job Job) (Outcome, error) {
	tools, err := job.tools()
	if err != nil {
		return Outcome{}, err
	}
	return each(ctx, job, len(job.Lists), func(j *Job, i int) Result { return j.judge(ctx, tools, j.Lists[i]) }), nil
}

// each does the work for n lists side by side and hands the results on in the
// order given, each as soon as it can be.
func each(ctx context.Context, job Job, n int, work func(*Job, int) Result) Outcome {
	results := make([]chan Result, n)
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	var group sync.WaitGroup
	var turn sync.RWMutex
	for i := range results {
		results[i] = make(chan Result, 1)
	}
	group.Go(func() {
		for i := range results {
			slots <- struct{}{}
			group.Go(func() {
				defer func() { <-slots }()
				results[i] <- job.inTurn(&turn, func(j *Job) Result {
					return guarded(ctx, j.Lists[i], func() Result { return work(j, i) })
				})
			})
		}
	})
	outcome := Outcome{}
	for _, result := range results {
		r := <-result
		if job.Done != nil {
			job.Done(r)
		}
		r.Job, r.Document = nil, nil // Handed on; many lists must not stay in memory.
		outcome.Lists = append(outcome.Lists, r)
		outcome.Code = max(outcome.Code, r.Code)
	}
	group.Wait()
	return outcome
}

// guarded turns a fault of our own into a result, and begins nothing once the
// user has interrupted.
func guarded(ctx context.Context, list string, work func() Result) (r Result) {
	defer func() {
		if fault := recover(); fault != nil {
			r = failed(list, &Bug{List: list, Fault: fault})
		}
	}()
	if err := ctx.Err(); err != nil {
		return failed(list, err)
	}
	return work()
}

func failed(list string, err error) Result {
	return Result{List: list, Err: err, Code: CodeOf(err)}
}
