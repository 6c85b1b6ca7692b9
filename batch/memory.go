package batch

import (
	"bytes"
	"errors"
	"fmt"
	"runtime"
	"sync"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/traveller/setup"
)

// What a run takes of memory at most, measured with lists of 100,000 joints of fifteen
// columns, no two alike, with a results file or a workbook: 308 MB where they differ in
// mark, length, quantity and drawing, 341 MB where 240 kinds of joint are among them, 401
// MB where each kind has a quality level as well, and 776 to 880 MB where each joint has a
// remark of its own, or sizes that no other has. A traveller of 2,000 joints with a sheet
// for each takes 379 MB, of 20,000 such 3.1 GB, and of 20,000 that share 552 sheets 314 MB.
const (
	baseBytes  = 50 << 20
	jointBytes = 3 << 10
	kindBytes  = 6 << 10 // what joints that are drawn alike hold together
	sheetBytes = 160 << 10
	namedBytes = 6 << 10 // a joint in the tables of the traveller
)

// Crowded says, before the work, that a list is too long for the memory there is.
type Crowded struct {
	List       string
	What       string // what takes it: "200000 lines"
	Need, Have uint64 // bytes
	Limit      string // what sets how much there is; empty: nobody said
	Do         string
}

func (c *Crowded) Error() string {
	limit := ""
	if c.Limit != "" {
		limit = " (" + c.Limit + ")"
	}
	return fmt.Sprintf("%s: %s would take about %d MB of memory, and there are %d MB for it%s; %s", c.List, c.What, c.Need>>20, c.Have>>20, limit, c.Do)
}

const splitIt = "split the list, for instance by assembly, and give the parts one at a time; or work it where there is more memory"

// roomFor refuses a list with more joints than the memory holds; nil where nobody knows
// how much there is.
func (j *Job) roomFor(name, what string, joints int) error {
	do := splitIt
	if j.Memory < baseBytes+baseBytes/2 {
		do = "even a short list takes most of that: work it where there is more memory, or have the limit raised"
	}
	return j.room(name, fmt.Sprintf("%d %s", joints, what), uint64(joints)*jointBytes, do)
}

// roomForJoints refuses a list once its joints are understood: joints with a remark or
// sizes of their own take the memory that others share.
func (j *Job) roomForJoints(name string, joints []joint.Joint) error {
	if j.Memory == 0 {
		return nil
	}
	if err := j.roomFor(name, "joints", len(joints)); err != nil {
		return err
	}
	kinds := map[*joint.Detail]bool{}
	for i := range joints {
		kinds[joints[i].Detail] = true
	}
	return j.room(name, fmt.Sprintf("%d joints, %d of them unlike each other,", len(joints), len(kinds)),
		uint64(len(joints))*jointBytes+uint64(len(kinds))*kindBytes, splitIt)
}

// room refuses what takes more bytes, beside what every run takes, than a list has.
func (j *Job) room(name, what string, need uint64, do string) error {
	if j.Memory == 0 || need <= j.share() && j.Memory >= baseBytes {
		return nil
	}
	return &Crowded{List: name, What: what, Need: baseBytes + need, Have: j.Memory, Limit: j.Limit, Do: do}
}

// roomForText refuses, before it is read, a text with more lines than the memory holds
// joints.
func (j *Job) roomForText(name string, data []byte) error {
	if j.Memory == 0 || bytes.HasPrefix(data, []byte("PK")) {
		return nil // a workbook: its rows are counted when it is read
	}
	return j.roomFor(name, "lines", filledLines(data))
}

// filledLines counts the lines that hold more than delimiters, quotes and blanks: a sheet
// that was saved as text often goes on for a million lines in which nothing stands.
func filledLines(data []byte) int {
	lines, filled := 0, false
	for _, c := range data {
		switch c {
		case '\n', '\r':
			filled = false
		case ',', ';', '\t', '|', '"', ' ', 0, 0xA0, 0xC2: // also in two bytes a letter, and blanks that do not break
		default:
			if !filled {
				lines++
			}
			filled = true
		}
	}
	return lines
}

// roomForSheets refuses to draw a traveller of more sheets than the memory holds.
func (j *Job) roomForSheets(name string, job *price.Job) error {
	known := uint64(len(job.Plans)) * (jointBytes + namedBytes)
	if j.Memory == 0 || known+uint64(len(job.Plans))*sheetBytes <= j.share() { // a sheet for each would fit
		return nil
	}
	sheets := 0
	for _, a := range setup.Group(job) {
		sheets += len(a.Setups())
	}
	return j.room(name, fmt.Sprintf("a traveller of %d sheets", sheets), known+uint64(sheets)*sheetBytes,
		"leave it out with --only workbook --only results, or split the list, for instance by assembly")
}

// share is what one list has of the memory beside what the program takes once: all of it,
// or where lists are worked side by side its part of it.
func (j *Job) share() uint64 {
	left := j.Memory - min(baseBytes, j.Memory)
	if j.alone {
		return left
	}
	return left / uint64(max(1, min(len(j.Lists), runtime.GOMAXPROCS(0))))
}

// inTurn works a list beside others, and once more by itself where its part of the memory
// was too little: only what no memory holds is refused. Nothing is written before a list
// is found too long.
func (j *Job) inTurn(turn *sync.RWMutex, work func(*Job) Result) Result {
	turn.RLock()
	r := work(j)
	turn.RUnlock()
	var crowded *Crowded
	if !errors.As(r.Err, &crowded) || len(j.Lists) == 1 {
		return r
	}
	turn.Lock()
	defer turn.Unlock()
	alone := *j
	alone.alone = true
	return work(&alone)
}
