package batch

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"time"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/report"
	"seamtally/batch/save"
	"seamtally/batch/traveller"
	"seamtally/batch/workbook"
)

// save works one list and saves its outputs. Whether they can be saved is found
// out first: nobody waits for results that have nowhere to go.
func (j *Job) save(ctx context.Context, t *tools, p place) Result {
	r := Result{List: p.list, Said: p.said}
	if err := j.check(p); err != nil {
		return r.fail(err)
	}
	src, job, err := j.work(ctx, t, p.list)
	if err != nil {
		return r.fail(err)
	}
	j.spare(&p, job)
	if !slices.Contains(j.wanted(), Workbook) {
		src = sources{} // only the workbook goes back to the cells: a long list has many
	}
	if err := j.checkMore(p, src, job); err != nil {
		return r.fail(err)
	}
	if slices.Contains(j.wanted(), Traveller) {
		if err := j.roomForSheets(p.list, job); err != nil {
			return r.fail(err)
		}
	}
	files, err := j.build(ctx, src, job, p)
	if err != nil {
		return r.fail(err)
	}
	if !j.DryRun {
		if err := p.folder.Put(ctx, files); err != nil {
			return r.fail(err)
		}
		for _, f := range files {
			r.Written = append(r.Written, filepath.Join(p.folder.Dir, f.Name))
		}
	}
	return j.finish(r, t, job)
}

// judge works one list without outputs.
func (j *Job) judge(ctx context.Context, t *tools, name string) Result {
	r := Result{List: name}
	_, job, err := j.work(ctx, t, name)
	if err != nil {
		return r.fail(err)
	}
	return j.finish(r, t, job)
}

// work takes a list from its bytes to a priced job.
func (j *Job) work(ctx context.Context, t *tools, name string) (sources, *price.Job, error) {
	src, problems, err := j.read(name)
	if err != nil {
		return sources{}, nil, err
	}
	shop, shopProblems, err := t.shopOf(src, j)
	if err != nil {
		return sources{}, nil, err
	}
	whole := src
	src, own := workbook.Undress(whole)
	worked, err := j.plan(ctx, t, name, src, shop, said{file: append(problems, own...), shop: shopProblems, whole: whole, floor: true})
	if err != nil {
		return sources{}, nil, err
	}
	return sources{src, worked.other}, worked.job, nil
}

// sources are the cells of the list, and of its cut list where that is a workbook of
// its own.
type sources struct{ list, cut *list.Source }

// read takes a list from its bytes to rows of cells.
func (j *Job) read(name string) (*list.Source, []finding.Problem, error) {
	data, err := j.bytes(name)
	if err != nil {
		return nil, nil, err
	}
	if err := j.roomForText(name, data); err != nil {
		return nil, nil, err
	}
	src, problems, err := list.Read(shownName(name), data)
	return src, problems, fullName(err, name)
}

// said is what reading a list's file, and what reading the shop values, had to say,
// and the file with what was written beside the list: by somebody who changed a figure
// there, and by the floor, whose records may not be asked for.
type said struct {
	file, shop []finding.Problem
	whole      *list.Source
	floor      bool
}

// planned is a priced job, and the workbook of its cut list where that is another file.
type planned struct {
	job   *price.Job
	other *list.Source
}

// plan takes the rows of a list, without anything of ours among them, to a priced job.
func (j *Job) plan(ctx context.Context, t *tools, name string, src *list.Source, shop rates.Shop, before said) (planned, error) {
	read, err := j.understand(src, name, &shop, t.set)
	if err != nil {
		return planned{}, fullName(err, name)
	}
	joints := read.joints
	if err := j.roomForJoints(name, joints.Joints); err != nil {
		return planned{}, err
	}
	typed := workbook.TakeTyped(before.whole, joints)
	if read.cut != nil {
		read.cut.Problems = append(workbook.TakeTypedParts(cmp.Or(read.whole, before.whole), read.cut), read.cut.Problems...)
	}
	if !before.floor {
		before.whole = nil
	}
	floor, wrong := joint.ReadFloor(before.whole, joints.Sheet)
	before.whole, read.whole = nil, nil // nobody holds their cells any longer
	workbook.Thin(src, joints)
	if len(joints.Joints) > manyJoints {
		runtime.GC()
	}
	joints.Problems = append(append(before.file, typed...), joints.Problems...)
	if err := ctx.Err(); err != nil {
		return planned{}, err
	}
	plans := plan.WithHints(joints.Joints, t.set, &shop, plan.Options{Codes: j.Looks.Codes, US: j.Looks.US})
	var book *parts.Book
	if read.cut != nil {
		var compared []finding.Problem
		book, compared = parts.Work(read.cut, plans, t.set, &shop)
		joints.Problems = append(append(joints.Problems, read.cut.Problems...), compared...)
	}
	if j.Looks.Codes == "aws" {
		plan.American(plans, t.set)
	}
	if j.Looks.US {
		plan.Imperial(plans)
		book.Imperial()
	}
	job := price.Price(*joints, plans, shop, before.shop, j.Looks)
	job.Version, job.TablesEdition, job.Parts = j.Version, t.set.Edition, book
	job.Floor = floor
	job.Say(wrong...)
	j.payBack(&job, t.set)
	return planned{&job, read.other}, ctx.Err()
}

// manyJoints is from where it pays to collect the cells that were let go before the
// plans of as many joints are made beside them: of 100,000 they are 50 MB.
const manyJoints = 20000

// build makes the outputs that are wanted.
func (j *Job) build(ctx context.Context, src sources, job *price.Job, p place) ([]save.File, error) {
	var files []save.File
	job.Opts.Job = cmp.Or(job.Opts.Job, job.List.Job, p.first)
	for _, out := range j.outputsOf(src, job) {
		file, err := j.output(out, src, job, p)
		if err != nil {
			return nil, &Bug{List: p.list, Fault: err}
		}
		if file.Data == nil && file.Write == nil {
			continue // told why not
		}
		file.Judge = judges[out]
		if file.Name == "" {
			file.Name = p.names[out]
		}
		files = append(files, file)
		if err := ctx.Err(); err != nil {
			return nil, err
		}
	}
	return files, nil
}

func (j *Job) output(out Output, src sources, job *price.Job, p place) (save.File, error) {
	switch out {
	case Workbook:
		return j.workbook(src.list, job, p)
	case PartsBook:
		return j.partsBook(src.cut, job, p)
	case Parts:
		data, err := report.PartsCSV(job)
		return save.File{Data: save.StampCSV(data)}, err
	case Results:
		data, err := report.CSV(job)
		return save.File{Data: save.StampCSV(data)}, err
	default:
		data, err := traveller.Build(job, traveller.Options{})
		return save.File{Data: save.StampPDF(data)}, err
	}
}

// NotAnnotated is the code of the problem that says why a workbook of the user's came
// back as a fresh one.
const NotAnnotated = workbook.NotAnnotated

// The codes of the problems that say what became of a figure that was typed into a cell
// of ours.
const (
	TypedBeside   = workbook.TypedBeside
	ChangedBeside = workbook.ChangedBeside
)

// patience is how long a library may work on what a user's workbook holds. The longest
// list that is taken needs a quarter of a minute.
const patience = 5 * time.Minute

// watch ends the program, by the job's own word, where nothing comes back in time: a
// call that never returns cannot be taken back. The function returned ends the watch.
func (j *Job) watch(list string, limit time.Duration) (end func()) {
	if j.Stuck == nil {
		return func() {}
	}
	timer := time.AfterFunc(limit, func() { j.Stuck(list) })
	return func() { timer.Stop() }
}

// workbook makes the workbook ready; it is written straight to its place.
func (j *Job) workbook(src *list.Source, job *price.Job, p place) (save.File, error) {
	defer j.watch(p.list, patience)()
	book, err := workbook.Prepare(src, job, workbook.Options{US: j.Looks.US, ValuesOnly: j.Looks.ValuesOnly})
	if err != nil {
		return save.File{}, err
	}
	job.Say(book.Problems...)
	name := p.names[Workbook]
	if !book.Annotated {
		name = fitting(name)
	}
	return save.File{Name: name, Write: writing(book, p.list)}, nil
}

// partsBook makes the workbook of a cut list in another file ready. One that cannot be
// added to without risk is not given back, and that is told.
func (j *Job) partsBook(src *list.Source, job *price.Job, p place) (save.File, error) {
	book, problem, err := workbook.PrepareCut(src, job, workbook.Options{US: j.Looks.US, ValuesOnly: j.Looks.ValuesOnly})
	if err != nil {
		return save.File{}, err
	}
	if problem != nil {
		job.Say(*problem)
		return save.File{}, nil
	}
	job.Say(book.Problems...)
	return save.File{Write: writing(book, p.list)}, nil
}

func writing(book *workbook.Book, name string) func(io.Writer) error {
	return func(w io.Writer) error {
		if err := book.Write(w); err != nil {
			return &Bug{List: name, Fault: err}
		}
		return nil
	}
}

// judges tell an output of this tool from any other file.
var judges = map[Output]save.Judge{Workbook: judgeWorkbook, PartsBook: judgeWorkbook, Results: save.JudgeCSV, Parts: save.JudgeCSV, Traveller: save.JudgePDF}

func judgeWorkbook(data []byte) save.Owner {
	switch ours, unchanged := workbook.Stamped(data); {
	case unchanged:
		return save.Own
	case ours:
		return save.Changed
	default:
		return save.Foreign
	}
}

// ownWorkbook reports whether this tool wrote the workbook, changed since or not. Some
// programs drop the stamp when they save; our columns are still there.
func ownWorkbook(path string) bool {
	data, err := os.ReadFile(path)
	return err == nil && (judgeWorkbook(data) != save.Foreign || workbook.HasOurs(data))
}

// check makes sure that the outputs can be saved.
func (j *Job) check(p place) error {
	if j.DryRun || p.broken != nil {
		return p.broken
	}
	var targets []save.Target
	for _, out := range j.wanted() {
		targets = append(targets, save.Target{Name: p.names[out], Judge: judges[out]})
	}
	return p.folder.Check(targets...)
}

// finish adds what a worked list is told by.
func (j *Job) finish(r Result, t *tools, job *price.Job) Result {
	r.Job, r.Code = job, rowsCode(job, j.Strict)
	if !j.JSON {
		return r
	}
	document, err := report.JSON(job)
	if err != nil {
		return r.fail(&Bug{List: r.List, Fault: err})
	}
	r.Document = bytes.TrimRight(document, "\n")
	return r
}

func (r Result) fail(err error) Result {
	r.Err, r.Code = err, CodeOf(err)
	return r
}

// bytes reads a list as it stands.
func (j *Job) bytes(name string) ([]byte, error) {
	if name == standardInput {
		data, err := io.ReadAll(j.Stdin)
		if err != nil {
			return nil, unreadable("list", "-", err)
		}
		if j.Memory > 0 && len(j.Lists) > 1 {
			j.Stdin = bytes.NewReader(data) // it may be its turn again
		}
		return data, nil
	}
	return readFile("list", name)
}

// shownName is the list's name in the outputs. It holds no folder: where a list
// lies on one machine is no part of a result that others read.
func shownName(name string) string {
	if name == standardInput {
		return "list"
	}
	return filepath.Base(name)
}

// fullName lets a refusal name the list as the user did; one of the cut list names its
// own file already.
func fullName(err error, name string) error {
	var refusal *list.Refusal
	if errors.As(err, &refusal) && (refusal.File == "" || refusal.File == shownName(name)) {
		refusal.File = name
		if name == standardInput {
			refusal.File = "standard input"
			if refusal.Empty {
				refusal.Text, refusal.Hint = "nothing came in", "give the name of a list, for example `seamtally check frame.xlsx`"
			}
		}
	}
	return err
}
