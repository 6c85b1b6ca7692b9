package batch

import (
	"io"
	"os"

	"seamtally/batch/finding"
	"seamtally/batch/price"
	"seamtally/batch/save"
)

// Job is what the user asked for.
type Job struct {
	Lists []string  // as named by the user; "-" is Stdin, read as CSV
	Stdin io.Reader // only read where "-" stands among the lists

	Sheet  string // of the list; empty: found
	Parts  string // sheet or file of the cut list; empty: a sheet that reads like one, if any
	Inches bool   // bare numbers are inches

	Shop   string   // shop file; empty: none
	Set    []string // KEY=VALUE
	Tables string   // folder of tables that replace built-in ones; empty: none

	Out    string // folder of the outputs; empty: that of the list
	Only   []Output
	Force  bool
	DryRun bool
	JSON   bool // keep the result document
	Strict bool // warnings count like rows that could not be worked
	Trace  bool // keep steps and options of every joint

	Memory  uint64 // bytes that the run may take; 0: nobody knows
	Limit   string // what sets Memory, in words
	alone   bool   // no other list is worked now
	Looks   price.Options
	Version string
	Disk    save.Disk    // nil: the machine's own
	Stuck   func(string) // called where a library has not come back from a list: the program has to end; nil: wait for ever
	Done    func(Result) // called for every list in the order given, as soon as it and all before it are done; may be nil
}

// Result is what became of one list.
type Result struct {
	List     string
	Job      *price.Job // nil if it was not worked, or after Done was called
	Written  []string   // paths of the outputs
	Document []byte     // the result document, where asked for
	Said     []string   // about the folder: sentences
	Err      error      // why the list was not worked, or its outputs not written
	Code     int        // exit code
}

// Outcome is what became of the whole job.
type Outcome struct {
	Lists   []Result // in the order given, without their jobs
	Code    int      // the highest
	Summary string   // path of the workbook of all lists; empty where none was written
}

func (j *Job) disk() save.Disk {
	if j.Disk == nil {
		return save.Real()
	}
	return j.Disk
}

// inputs are the files that the job reads and therefore never replaces.
func (j *Job) inputs() []string {
	var all []string
	for _, path := range append([]string{j.Shop, j.partsFile()}, j.Lists...) {
		if path != "" && path != standardInput {
			all = append(all, path)
		}
	}
	return all
}

// partsFile is the file of the cut list; empty where --parts names a sheet or nothing.
func (j *Job) partsFile() string {
	if info, err := os.Stat(j.Parts); j.Parts == "" || err != nil || info.IsDir() {
		return ""
	}
	return j.Parts
}

func free(path string) bool {
	_, err := os.Lstat(path)
	return os.IsNotExist(err)
}

// rowsCode returns the exit code of a list that was worked: some of its rows may
// not have been.
func rowsCode(job *price.Job, strict bool) int {
	errors, warnings := count(job)
	if errors > 0 || strict && warnings > 0 {
		return SomeRows
	}
	return Worked
}

// count counts findings about rows and checks about plans, by level.
func count(job *price.Job) (errors, warnings int) {
	add := func(level finding.Level) {
		switch level {
		case finding.Error:
			errors++
		case finding.Warning:
			warnings++
		}
	}
	for _, p := range job.Problems {
		add(p.Level)
	}
	for i := range job.Plans {
		for _, c := range job.Plans[i].Checks {
			add(c.Level)
		}
	}
	return errors, warnings
}
