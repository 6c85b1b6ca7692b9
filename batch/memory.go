package batch

import (
	"bytes"
	"fmt"

	"runtime"

	"seamtally/batch/price"
	"seamtally/batch/traveller/setup"
)

// What a run takes of memory at most, measured with lists of 20,000 to 100,000 joints
// of fifteen columns, no two alike: 166 MB for 50,000 and 291 MB for 100,000 joints with
// a workbook, 185 and 318 MB with a results file; a traveller of 2,000 joints with a sheet
// for each 379 MB, of 20,000 such 3.1 GB, and of 20,000 that share 552 sheets 314 MB.
const (
	baseBytes  = 50 << 20
	jointBytes = 3 << 10
	sheetBytes = 160 << 10
	namedBytes = 6 << 10 // a joint in the tables of the traveller
)

// Crowded says, before the work, that a list is too long for the memory there is.
type Crowded struct {
	List       string
	What       string // what takes it: "200000 lines"
	Need, Have uint64 // bytes
	Do         string
}

func (c *Crowded) Error() string {
	return fmt.Sprintf("%s: %s would take about %d MB of memory, and there are %d MB for it; %s", c.List, c.What, c.Need>>20, c.Have>>20, c.Do)
}

const splitIt = "split the list, for instance by assembly, and give the parts one at a time; or work it where there is more memory"

// roomFor refuses a list with more joints than the memory holds; nil where nobody knows
// how much there is.
func (j *Job) roomFor(name, what string, joints int) error {
	need, have := baseBytes+uint64(joints)*jointBytes, j.share()
	if j.Memory == 0 || need <= have {
		return nil
	}
	do := splitIt
	if have < baseBytes+baseBytes/2 {
		do = "even a short list takes most of that: work it where there is more memory, or have the limit raised"
	}
	return &Crowded{List: name, What: fmt.Sprintf("%d %s", joints, what), Need: need, Have: have, Do: do}
}

// roomForText refuses, before it is read, a text with more lines than the memory holds
// joints.
func (j *Job) roomForText(name string, data []byte) error {
	if bytes.HasPrefix(data, []byte("PK")) {
		return nil // a workbook: its rows are counted when it is read
	}
	return j.roomFor(name, "lines", bytes.Count(data, []byte{'\n'}))
}

// roomForSheets refuses to draw a traveller of more sheets than the memory holds.
func (j *Job) roomForSheets(name string, job *price.Job) error {
	have, known := j.share(), baseBytes+uint64(len(job.Plans))*(jointBytes+namedBytes)
	if j.Memory == 0 || known+uint64(len(job.Plans))*sheetBytes <= have { // a sheet for each would fit
		return nil
	}
	sheets := 0
	for _, a := range setup.Group(job) {
		sheets += len(a.Setups())
	}
	need := known + uint64(sheets)*sheetBytes
	if need <= have {
		return nil
	}
	return &Crowded{List: name, What: fmt.Sprintf("a traveller of %d sheets", sheets), Need: need, Have: have,
		Do: "leave it out with --only workbook --only results, or split the list, for instance by assembly"}
}

// share is what one list has of the memory: as many are worked side by side as there
// are cores.
func (j *Job) share() uint64 {
	return j.Memory / uint64(max(1, min(len(j.Lists), runtime.GOMAXPROCS(0))))
}
