package batch

import (
	"archive/zip"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/price"
	"seamtally/batch/save"
)

// Output is one of the files written for a list.
type Output string

// The outputs.
const (
	Workbook  Output = "workbook"
	Results   Output = "results"
	Traveller Output = "traveller"
	Parts     Output = "parts"          // with the results, where there is a cut list
	PartsBook Output = "parts workbook" // with the workbook, where the cut list is another one
)

// outputs are all of them, in the order they are written.
var outputs = []Output{Workbook, Results, Traveller}

// place is where the outputs of one list go.
type place struct {
	list   string
	folder save.Folder
	names  map[Output]string
	said   []string // what an earlier run left in the folder
	first  string   // name of the list that a workbook of ours was made from; "" for any other list
	broken error    // why nothing can be written into the folder
}

// standardInput is the list that is not a file.
const standardInput = "-"

// places names the outputs of every list and refuses, before anything is
// written, two lists that would write the same file.
func (j *Job) places() ([]place, error) {
	var all []place
	taken := map[string]string{}
	for _, list := range j.Lists {
		p := j.place(list)
		for _, out := range j.wanted() {
			key := pathKey(filepath.Join(p.folder.Dir, p.names[out]))
			if other, clash := taken[key]; clash {
				if other == list {
					return nil, Usagef("%q is given twice: give it once", list)
				}
				if sameFile(other, list) {
					return nil, Usagef("%q and %q are the same file: give it once", other, list)
				}
				return nil, Usagef("%q and %q would both write %q: work them one at a time into folders of their own with -o, or rename one", other, list, filepath.ToSlash(filepath.Join(p.folder.Dir, p.names[out])))
			}
			taken[key] = list
		}
		all = append(all, p)
	}
	return all, nil
}

func (j *Job) wanted() []Output {
	if len(j.Only) == 0 {
		return outputs
	}
	var out []Output
	for _, o := range outputs {
		for _, only := range j.Only {
			if o == only {
				out = append(out, o)
				break
			}
		}
	}
	return out
}

// outputsOf returns what is written for a list: with the workbook and the results
// those of its cut list, and without joints no results of joints.
func (j *Job) outputsOf(src sources, job *price.Job) []Output {
	var out []Output
	for _, o := range j.wanted() {
		if o != Results || len(job.List.Joints) > 0 || job.Parts == nil {
			out = append(out, o)
		}
		if o == Workbook && src.cut != nil {
			out = append(out, PartsBook)
		}
		if o == Results && job.Parts != nil {
			out = append(out, Parts)
		}
	}
	return out
}

// checkMore makes sure that what a list turned out to have besides joints can be
// saved as well.
func (j *Job) checkMore(p place, src sources, job *price.Job) error {
	if j.DryRun {
		return nil
	}
	var targets []save.Target
	for _, out := range j.outputsOf(src, job) {
		if out == Parts || out == PartsBook {
			targets = append(targets, save.Target{Name: p.names[out], Judge: judges[out]})
		}
	}
	if len(targets) == 0 {
		return nil
	}
	return p.folder.Check(targets...)
}

// partsName names the results of the cut list, or its workbook: another name than
// that of the cut list itself.
func (j *Job) partsName(dir, stem, ext string) string {
	name := stem + "-parts" + ext
	for _, input := range j.inputs() {
		if pathKey(input) == pathKey(filepath.Join(dir, name)) {
			return stem + "-parts-worked" + ext
		}
	}
	return name
}

func (j *Job) place(list string) place {
	dir, stem, ext := ".", "list", plainExt
	if list != standardInput {
		dir = filepath.Dir(list)
		stem = strings.TrimSuffix(filepath.Base(list), filepath.Ext(list))
		ext = workbookExt(list)
	}
	if j.Out != "" {
		dir = j.Out
	}
	p := place{list: list, folder: save.Folder{Dir: dir, Disk: j.disk(), Force: j.Force, Inputs: j.inputs()}}
	name := stem + "-worked" + ext
	if m := workedName.FindStringSubmatch(stem); m != nil && ownWorkbook(list) {
		stem = m[1]
		p.first = stem
		name = j.rework(&p, stem, filepath.Base(list), ext)
	}
	p.names = map[Output]string{Workbook: name, Results: stem + "-joints.csv", Parts: j.partsName(dir, stem, ".csv"), Traveller: stem + "-traveller.pdf"}
	if file := j.partsFile(); file != "" {
		p.names[PartsBook] = j.partsName(dir, stem, workbookExt(file))
	}
	return p
}

var workedName = regexp.MustCompile(`^(.+)-worked(?:-\d+)?$`)

// rework names the result of a workbook that this tool wrote: the next free
// name, or with --force the workbook's own.
func (j *Job) rework(p *place, stem, own, ext string) string {
	if j.Force {
		p.folder.Inputs = without(p.folder.Inputs, p.list)
		return own
	}
	return nextFree(p.folder.Dir, stem, ext)
}

func nextFree(dir, stem, ext string) string {
	for n := 2; ; n++ {
		name := fmt.Sprintf("%s-worked-%d%s", stem, n, ext)
		if free(filepath.Join(dir, name)) {
			return name
		}
	}
}

// spare keeps a workbook of ours from being replaced, --force or not, where somebody
// typed into it what could not be taken: it would be nowhere else.
func (j *Job) spare(p *place, job *price.Job) {
	lost := func(f finding.Problem) bool { return f.Code == ChangedBeside && f.Place.File == job.List.File }
	if !j.Force || p.first == "" || !slices.Contains(j.wanted(), Workbook) || !slices.ContainsFunc(job.Problems, lost) {
		return
	}
	p.names[Workbook] = nextFree(p.folder.Dir, p.first, filepath.Ext(p.names[Workbook]))
	job.Say(finding.Problem{Place: finding.Place{File: job.List.File}, Level: finding.Note, Code: "kept-for-what-was-typed",
		Text: "the workbook is not replaced, as what was typed into it could not be taken; the result is " + p.names[Workbook]})
}

// workbookExt keeps a workbook with macros one: a spreadsheet program refuses it
// under the other ending.
func workbookExt(path string) string {
	pack, err := zip.OpenReader(path)
	if err != nil {
		return plainExt
	}
	defer pack.Close()
	return packExt(&pack.Reader)
}

const plainExt, macroExt = ".xlsx", ".xlsm"

// packExt returns the ending that fits what a workbook says of itself.
func packExt(pack *zip.Reader) string {
	types, err := pack.Open("[Content_Types].xml")
	if err != nil {
		return plainExt
	}
	defer types.Close()
	text, _ := io.ReadAll(io.LimitReader(types, 1<<20)) // What cannot be read is reported when the list is.
	if strings.Contains(string(text), "sheet.macroEnabled.main") {
		return macroExt
	}
	return plainExt
}

// fitting returns the name with the ending of a workbook without macros: one
// that could not be annotated gives such a one.
func fitting(name string) string { return strings.TrimSuffix(name, filepath.Ext(name)) + plainExt }

// sameFile tells whether two paths lead to one file.
func sameFile(one, other string) bool {
	a, err := os.Stat(one)
	if err != nil {
		return false
	}
	b, err := os.Stat(other)
	return err == nil && os.SameFile(a, b)
}

// pathKey makes two spellings of one path equal. Letter case is ignored: half
// of the file systems in use ignore it too.
func pathKey(path string) string {
	dir := filepath.Dir(path)
	if abs, err := filepath.Abs(dir); err == nil {
		dir = abs
	}
	if real, err := filepath.EvalSymlinks(dir); err == nil {
		dir = real
	}
	return strings.ToLower(filepath.Join(dir, filepath.Base(path)))
}

func without(list []string, item string) []string {
	var out []string
	for _, l := range list {
		if l != item {
			out = append(out, l)
		}
	}
	return out
}
