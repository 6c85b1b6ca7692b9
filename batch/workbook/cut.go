package workbook

import (
	"errors"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// cut draws our cells beside the rows of the cut list.
type cut struct {
	*beside[cutRow]
	sheet   string
	first   int            // our first column there
	joints  bool           // the joints stand annotated in the same workbook
	byRow   map[int]int    // row of the sheet -> part
	jointAt map[int]int    // row of the sheet of joints -> joint
	why     map[int]string // row of the sheet -> why it was not worked
}

// newCut sets our columns beside a cut list, from the first one on.
func newCut(l *layout, sheet string, first int, joints bool) *cut {
	cols := cutColumns(len(l.marks) > 0)
	letters, at := make([]string, len(cols)), map[string]int{}
	for i := range cols {
		cols[i].width = look.HeadWidth(cols[i].title(l.us), cols[i].width)
		letters[i], at[cols[i].key] = pack.ColumnName(first+i), i
	}
	c := &cut{beside: newBeside(l, cols, letters, at), sheet: sheet, first: first, joints: joints,
		byRow: map[int]int{}, jointAt: map[int]int{}}
	list := &l.job.Parts.List
	for i := range list.Parts {
		c.byRow[list.Parts[i].Place.Row] = i
	}
	for i := range l.job.List.Joints {
		c.jointAt[l.job.List.Joints[i].Place.Row] = i
	}
	c.why = l.reasonsOf(list.File, list.Sheet, list.Others)
	return c
}

// draw writes our cells of one row.
func (c *cut) draw(p *pack.Pen, n int) {
	switch {
	case n == c.header:
		c.drawHeader(p)
	case n == c.labels:
		c.drawLabels(p)
	default:
		if i, ok := c.byRow[n]; ok {
			r := c.row(i)
			c.drawRow(p, r, r.worst(), nil)
		} else if why := c.why[n]; why != "" {
			c.rejected(p, why)
		}
	}
}

// span returns the first and the last row of the parts.
func (c *cut) span() (from, to int) {
	list := &c.l.job.Parts.List
	from = list.HeaderRows[1] + 1
	return from, max(list.LastRow, from)
}

// onCut makes the annotation of the cut list where it stands in the user's own
// workbook; nil where there is none. A sheet that cannot be added to without risk is
// left as it is, and that is told.
func (o *output) onCut(u *pack.User, alone bool) (*pack.Annotation, *finding.Problem, error) {
	l := o.l
	if l.cut == nil {
		return nil, nil, nil
	}
	leaf, err := u.Leaf(l.cut.Name)
	var strange *pack.Strange
	if errors.As(err, &strange) && !alone {
		return nil, notBeside(l.job, strange), nil
	}
	if err != nil {
		return nil, nil, err
	}
	list := &l.job.Parts.List
	shape := leaf.Shape()
	first := max(shape.LastCol, list.LastCol) + 2
	if first+len(cutColumns(true)) > pack.MaxCol {
		strange = &pack.Strange{Why: "no columns are left to the right of the parts"}
		if alone {
			return nil, nil, strange
		}
		return nil, notBeside(l.job, strange), nil
	}
	o.cut = newCut(l, l.cut.Name, first, !alone)
	h := cutHeading(list)
	o.cut.header, o.cut.labels = h.rows(shape)
	from, last := o.cut.span()
	return &pack.Annotation{Leaf: leaf, Mark: cutMark, First: first, Columns: o.cut.columns(), Last: last, Draw: o.cut.draw,
		Extra: o.cut.labels, Header: o.cut.header, FreezeRows: h.freezeRows(), FreezeCols: h.freezeCols(),
		Rules:     fitsRule(l, o.cut.letters[o.cut.at["fits"]], from, last),
		PrintArea: o.cut.printAreas(h.top(l.cut, o.cut.header, o.cut.labels), last, h.freezeCols() > 0), PrintTitle: printTitles(l.cut.Name, o.cut.header, h.freezeCols())}, nil, nil
}

// notBeside tells that the cut list is left without our columns.
func notBeside(job *price.Job, why *pack.Strange) *finding.Problem {
	list := &job.Parts.List
	return &finding.Problem{Place: finding.Place{File: list.File, Sheet: list.Sheet}, Level: finding.Warning, Code: "cut-list-not-annotated",
		Text: "the sheet of the cut list could not be annotated without risk to what stands in it: " + why.Why,
		Hint: "what follows for its parts stands on our own sheet of parts; save the workbook anew as XLSX to have the sheet annotated"}
}

// printAreas puts the list with its status on a page, how it was read with mass and
// paint on another, and then each group, from a row top on. Where the user's own names stand beside them (named) ours are left
// away. Checks are printed on the
// sheet of parts.
func (c *cut) printAreas(top, last int, named bool) string {
	read := "part"
	if named {
		read = "assembly"
	}
	areas := printArea(c.sheet, "A", 1, c.letters[c.at["fits"]], last)
	for _, ends := range [][2]string{{read, "perimeter_mm"}, {"seam_m", "joints"}, {"bevel_m", "shrink_high_mm"}} {
		if _, there := c.at[ends[0]]; !there || ends[0] != read && !c.welded() {
			continue
		}
		areas += "," + printArea(c.sheet, c.letters[c.at[ends[0]]], top, c.letters[c.at[ends[1]]], last)
	}
	return areas
}

// welded tells whether any joint names a part: without one the columns of what joints
// put on the parts are empty, and are not printed.
func (c *cut) welded() bool {
	for i := range c.l.job.Parts.Results {
		if c.l.job.Parts.Results[i].Seam > 0 {
			return true
		}
	}
	return false
}

// heading is where the header of one of the user's lists stands.
type heading struct {
	header  [2]int // first and last row
	units   int
	columns []joint.Column
	name    string // key of the column that names a row
}

// rows are the rows of our headers and of the labels over them. The labels need a
// row of their own above the user's header.
func (h *heading) rows(shape pack.Shape) (header, labels int) {
	first, last := h.header[0], h.header[1]
	if last == 0 {
		return 0, 0
	}
	above := last - 1
	if above < 1 || (above < first && !shape.HasRow(above) && !(shape.Ordered && shape.Numbered)) {
		return last, 0
	}
	return last, above
}

// mostFrozen is how many rows may stay in sight without leaving too few to scroll.
const mostFrozen = 12

func (h *heading) freezeRows() int {
	last := max(h.header[1], h.units)
	if last > mostFrozen {
		return 0
	}
	return last
}

// freezeCols keeps the column of the names in sight where it stands at the left.
func (h *heading) freezeCols() int {
	for _, c := range h.columns {
		if c.Key == h.name && c.Col <= 3 {
			return c.Col
		}
	}
	return 0
}

func headingOf(job *price.Job) *heading {
	return &heading{job.List.HeaderRows, job.List.UnitsRow, job.List.Columns, "mark"}
}

func cutHeading(l *parts.List) *heading {
	return &heading{l.HeaderRows, l.UnitsRow, l.Columns, "part"}
}

// isAlone tells whether a list is a cut list and nothing else.
func isAlone(job *price.Job) bool {
	return job.Parts != nil && len(job.List.Joints) == 0 && len(job.List.Columns) == 0
}

// cutSheetOf finds the sheet of the cut list where it stands in the list's own
// workbook: its cells can then be linked.
func cutSheetOf(src *list.Source, job *price.Job) *list.Sheet {
	if job.Parts == nil || src.Format == list.CSV || job.Parts.List.SHA256 != src.SHA256 {
		return nil
	}
	for i := range src.Sheets {
		if src.Sheets[i].Name == job.Parts.List.Sheet {
			return &src.Sheets[i]
		}
	}
	return nil
}

// linked is a cell of our own sheets that shows a figure of our columns beside the
// cut list; empty where there are none.
func (o *output) linked(key string, row int) string {
	if o.cut == nil {
		return ""
	}
	return o.cut.cell(key, row)
}

// PrepareCut makes the workbook of a cut list ready that is another file than the
// joints: what follows for its parts beside their rows. The problem says why it is
// not, where it cannot be annotated without risk.
func PrepareCut(src *list.Source, job *price.Job, opt Options) (b *Book, problem *finding.Problem, err error) {
	defer guard(&err)
	for i := range job.List.Joints {
		opt.marks = append(opt.marks, job.List.Joints[i].Mark)
	}
	b, err = annotate(src, cutJobOf(src, job), opt)
	var strange *pack.Strange
	if errors.As(err, &strange) {
		return nil, notBeside(job, strange), nil
	}
	return b, nil, err
}

// cutJobOf is the job without its joints: what concerns the file of the cut list.
func cutJobOf(src *list.Source, job *price.Job) *price.Job {
	cut := &job.Parts.List
	alone := *job
	alone.List = joint.List{File: cut.File, Sheet: cut.Sheet, SHA256: cut.SHA256}
	alone.Plans, alone.Problems, alone.Floor = nil, nil, nil
	t := &alone.Totals
	t.Errors, t.Warnings, t.Notes = 0, 0, 0
	var own []finding.Problem
	for _, p := range job.Problems {
		if p.Place.File == src.File {
			own = append(own, p)
		}
	}
	alone.Say(own...)
	return &alone
}
