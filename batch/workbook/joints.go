package workbook

import (
	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// joints draws our cells on the sheet of joints, row by row.
type joints struct {
	l        *layout
	byRow    map[int]int    // row of the sheet -> joint
	why      map[int]string // row of the sheet -> why it was not worked
	header   int            // the row of our headers
	labels   int            // the row of the group labels; 0 for none
	formulas []headStyle
	last     []drawn // of each column
}

// drawn is what a column's cell was drawn with last: most cells repeat the one above.
type drawn struct {
	style    styleKey
	id       int
	template string
	formula  *pack.Formula
}

type headStyle struct{ head, label int }

func newJoints(l *layout, header, labels int) *joints {
	js := &joints{l: l, byRow: map[int]int{}, why: map[int]string{}, header: header, labels: labels}
	for i, j := range l.job.List.Joints {
		js.byRow[j.Place.Row] = i
	}
	why := l.reasons()
	for _, o := range l.job.List.Others {
		if o.Fate == joint.Rejected {
			js.why[o.Row] = why[o.Row]
		}
	}
	for i := range l.cols {
		c := &l.cols[i]
		js.formulas = append(js.formulas, headStyle{
			head: l.style(look.HeadOf(c.group), ""), label: l.style(look.LabelOf(c.group), "")})
		js.prepare(c)
	}
	js.last = make([]drawn, len(l.cols))
	for i := range js.last {
		js.last[i].style.format = "none yet"
	}
	return js
}

// prepare asks for every style that a column can need: none can be added once
// rows are written.
func (js *joints) prepare(c *column) {
	if c.number != nil {
		for _, role := range []look.Role{c.role, look.Calc, look.Chosen} {
			js.l.style(role, c.formatOf(js.l.us))
		}
		return
	}
	for _, role := range []look.Role{c.role, look.Plain, look.Heed, look.Stop} {
		js.l.style(look.Off(role), "@")
		js.l.style(look.Off(role), "")
	}
}

// reasons says in plain words what kept each row from being worked.
func (l *layout) reasons() map[int]string {
	out, list := map[int]string{}, &l.job.List
	for _, p := range l.job.Problems {
		if p.Level != finding.Error || p.Place.Row == 0 || !l.ofList(p.Place) {
			continue
		}
		if before := out[p.Place.Row]; before != "" {
			p.Text = before + "; " + p.Text
		}
		out[p.Place.Row] = p.Text
	}
	for _, o := range list.Others {
		if o.Fate == joint.Rejected && out[o.Row] == "" {
			out[o.Row] = "see the sheet of checks"
		}
	}
	return out
}

// ofList tells whether a place is in the list of joints, and not in a cut list or
// another file.
func (l *layout) ofList(p finding.Place) bool {
	list := &l.job.List
	return (p.File == "" || p.File == list.File) && (p.Sheet == "" || p.Sheet == list.Sheet || list.Sheet == "")
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
			js.drawRow(p, js.l.row(i))
		} else if why := js.why[n]; why != "" {
			js.drawRejected(p, why)
		}
	}
}

// drawRejected says that a row was not worked, and behind the figures that others
// have, why.
func (js *joints) drawRejected(p *pack.Pen, why string) {
	for _, c := range []struct{ key, text string }{{"status", "not worked"}, {"worst", string(finding.Error)}, {"checks", why}} {
		role := look.Stop
		if c.key == "checks" {
			role = look.Plain
		}
		p.Text(js.l.letters[js.l.at[c.key]], js.l.style(look.Off(role), look.TextFormat(c.text)), nil, c.text)
	}
}

func (js *joints) drawHeader(p *pack.Pen) {
	for i := range js.l.cols {
		p.Text(js.l.letters[i], js.formulas[i].head, nil, js.headText(i))
	}
}

// headText is what stands over a column: the words and the unit, and the name of
// the group where no row above has room for it.
func (js *joints) headText(i int) string {
	c := &js.l.cols[i]
	text := c.title(js.l.us)
	if js.labels == 0 && (i == 0 || js.l.cols[i-1].group != c.group) && c.group != "status" {
		text = groupName(c.group) + ": " + text
	}
	return text
}

func (c *column) title(us bool) string {
	if u := c.unit.name(us); u != "" {
		return c.head + " " + u
	}
	return c.head
}

func groupName(key string) string {
	for _, g := range groups {
		if g.key == key {
			return g.name
		}
	}
	return key
}

func (js *joints) drawLabels(p *pack.Pen) {
	for i, c := range js.l.cols {
		if i == 0 || js.l.cols[i-1].group != c.group {
			p.Text(js.l.letters[i], js.formulas[i].label, nil, groupName(c.group))
		}
	}
}

func (js *joints) drawRow(p *pack.Pen, r *row) {
	for i := range js.l.cols {
		c := &js.l.cols[i]
		if c.number == nil {
			js.drawWords(p, r, i)
		} else {
			js.drawNumber(p, r, i)
		}
	}
}

// style returns the number of a style of the i-th column.
func (js *joints) style(i int, role look.Role, format string) int {
	d := &js.last[i]
	if key := (styleKey{role, format}); key != d.style {
		d.style, d.id = key, js.l.style(role, format)
	}
	return d.id
}

// formula returns the formula of a row in the i-th column; nil where it has none.
func (js *joints) formula(r *row, i int) *pack.Formula {
	c := &js.l.cols[i]
	if !js.l.live || c.formula == nil {
		return nil
	}
	template := c.formula(r)
	if template == "" {
		return nil
	}
	d := &js.last[i]
	if template != d.template {
		d.template, d.formula = template, js.l.compile(template, c.unit)
	}
	return d.formula
}

func (js *joints) drawNumber(p *pack.Pen, r *row, i int) {
	c := &js.l.cols[i]
	v, ok := c.number(r)
	if !ok {
		return
	}
	f := js.formula(r, i)
	role := c.role
	switch {
	case role == look.Edit && f != nil:
		role = look.Calc // it follows the user's own cell
	case role == look.Calc && f == nil && c.formula != nil && js.l.live:
		role = look.Chosen
	}
	p.Number(js.l.letters[i], js.style(i, role, c.formatOf(js.l.us)), f, c.unit.show(v, js.l.us))
}

func (js *joints) drawWords(p *pack.Pen, r *row, i int) {
	c := &js.l.cols[i]
	text := c.words(r)
	if text == "" {
		return
	}
	role, format := c.role, look.TextFormat(text)
	if c.key == "status" || c.key == "worst" {
		role = roleOf(r.worst())
	}
	f := js.formula(r, i)
	if f != nil {
		format = ""
	}
	p.Text(js.l.letters[i], js.style(i, look.Off(role), format), f, text)
}

// columns are the widths and folds of our columns. In each group the first
// column stays in sight; the planner's own start folded away.
func (js *joints) columns() []pack.Column {
	var out []pack.Column
	for _, c := range js.l.cols {
		pc := pack.Column{Width: c.width}
		if c.fold {
			pc.Level = 1
		}
		pc.Hidden = c.group == "plan" && c.fold
		out = append(out, pc)
	}
	return out
}
