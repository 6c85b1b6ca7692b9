package workbook

import (
	"cmp"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/workbook/pack"
)

// joints draws our cells on the sheet of joints, row by row.
type joints struct {
	*beside[row]
	byRow map[int]int    // row of the sheet -> joint
	why   map[int]string // row of the sheet -> why it was not worked
	kept  *kept
	now   row // the row being drawn
}

func newJoints(l *layout, header, labels int) *joints {
	js := &joints{beside: newBeside(l, l.cols, l.letters, l.at), byRow: map[int]int{}, why: map[int]string{}, kept: newKept(len(l.cols)), now: row{l: l}}
	js.header, js.labels = header, labels
	for i, j := range l.job.List.Joints {
		js.byRow[j.Place.Row] = i
	}
	js.why = l.reasons()
	return js
}

// reasons says in plain words what kept each row of the joints from being worked.
func (l *layout) reasons() map[int]string {
	list := &l.job.List
	return l.reasonsOf(list.File, list.Sheet, list.Others)
}

// reasonsOf says the same of the rows of any list.
func (l *layout) reasonsOf(file, sheet string, others []joint.OtherRow) map[int]string {
	said := map[int]string{}
	for _, p := range l.job.Problems {
		if p.Level != finding.Error || p.Place.Row == 0 || !isOf(p.Place, file, sheet) {
			continue
		}
		if before := said[p.Place.Row]; before != "" {
			p.Text = before + "; " + p.Text
		}
		said[p.Place.Row] = p.Text
	}
	out := map[int]string{}
	for _, o := range others {
		if o.Fate == joint.Rejected {
			out[o.Row] = cmp.Or(said[o.Row], "see the sheet of checks")
		}
	}
	return out
}

// isOf tells whether a place is on a sheet of a file, and not in another list.
func isOf(p finding.Place, file, sheet string) bool {
	return (p.File == "" || p.File == file) && (p.Sheet == "" || p.Sheet == sheet || sheet == "")
}

// draw writes our cells of one row.
func (js *joints) draw(p *pack.Pen, n int) {
	switch {
	case n == js.header:
		js.drawHeader(p)
	case n == js.labels:
		js.drawLabels(p)
	default:
		if i, ok := js.byRow[n]; ok && i < len(js.l.job.Plans) {
			js.now.take(i)
			js.drawRow(p, &js.now, js.now.worst(), js.kept.of(js.now.p.Manner))
		} else if why := js.why[n]; why != "" {
			js.rejected(p, why)
		}
	}
}
