package workbook

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// beside draws our columns beside the user's rows of one sheet.
type beside[R any] struct {
	l         *layout
	cols      []columnBeside[R]
	letters   []string
	at        map[string]int // key -> index in cols
	header    int            // the row of our headers; 0 for none
	labels    int            // the row of the group labels; 0 for none
	heads     []headStyle
	last      []drawn // of each column
	templates map[templateKey]*pack.Formula
}

// drawn is what a column's cell was drawn with last: most cells repeat the one above.
type drawn struct {
	style    styleKey
	id       int
	template string
	formula  *pack.Formula
}

type headStyle struct{ head, label int }

func newBeside[R any](l *layout, cols []columnBeside[R], letters []string, at map[string]int) *beside[R] {
	b := &beside[R]{l: l, cols: cols, letters: letters, at: at, last: make([]drawn, len(cols)), templates: map[templateKey]*pack.Formula{}}
	for i := range cols {
		c := &cols[i]
		b.heads = append(b.heads, headStyle{head: l.style(look.HeadOf(c.group), ""), label: l.style(look.LabelOf(c.group), "")})
		b.prepare(c)
		b.last[i].style.format = "none yet"
	}
	return b
}

// prepare asks for every style that a column can need: none can be added once
// rows are written.
func (b *beside[R]) prepare(c *columnBeside[R]) {
	if c.number != nil {
		for _, role := range []look.Role{c.role, look.Calc, look.Chosen} {
			b.l.style(role, c.formatOf(b.l.us))
		}
		return
	}
	for _, role := range []look.Role{c.role, look.Plain, look.Heed, look.Stop} {
		b.l.style(look.Off(role), "@")
		b.l.style(look.Off(role), "")
	}
}

// rejected says that a row was not worked, and behind the figures that others
// have, why.
func (b *beside[R]) rejected(p *pack.Pen, why string) {
	for _, c := range []struct{ key, text string }{{"status", "not worked"}, {"worst", string(finding.Error)}, {"checks", why}} {
		role := look.Stop
		if c.key == "checks" {
			role = look.Plain
		}
		p.Text(b.letters[b.at[c.key]], b.l.style(look.Off(role), look.TextFormat(c.text)), nil, c.text)
	}
}

func (b *beside[R]) drawHeader(p *pack.Pen) {
	for i := range b.cols {
		p.Text(b.letters[i], b.heads[i].head, nil, b.headText(i))
	}
}

// headText is what stands over a column: the words and the unit, and the name of
// the group where no row above has room for it.
func (b *beside[R]) headText(i int) string {
	c := &b.cols[i]
	text := c.title(b.l.us)
	if b.labels == 0 && (i == 0 || b.cols[i-1].group != c.group) && c.group != "status" {
		text = grouped(c.group, text)
	}
	return text
}

func (c *columnBeside[R]) title(us bool) string {
	if u := c.unit.name(us); u != "" {
		return strings.TrimSpace(c.head + " " + u)
	}
	return c.head
}

// grouped is what stands over the first column of a group that has no label above it.
func grouped(group, title string) string { return groupName(group) + ": " + title }

func groupName(key string) string {
	for _, g := range append(groups, cutGroups...) {
		if g.key == key {
			return g.name
		}
	}
	return key
}

func (b *beside[R]) drawLabels(p *pack.Pen) {
	for i, c := range b.cols {
		if i == 0 || b.cols[i-1].group != c.group {
			p.Text(b.letters[i], b.heads[i].label, nil, groupName(c.group))
		}
	}
}

// drawRow writes our cells of a worked row; worst is the gravest level among its
// checks, kept what is known of the cells of steady columns; nil: nothing.
func (b *beside[R]) drawRow(p *pack.Pen, r *R, worst finding.Level, kept []keptCell) {
	for i := range b.cols {
		switch steady := kept != nil && b.cols[i].steady; {
		case steady && kept[i].known:
			kept[i].draw(p, b.letters[i])
		case steady:
			before := p.Written()
			b.drawCell(p, r, i, worst)
			kept[i].keep(p, before)
		default:
			b.drawCell(p, r, i, worst)
		}
	}
}

func (b *beside[R]) drawCell(p *pack.Pen, r *R, i int, worst finding.Level) {
	if b.cols[i].number == nil {
		b.drawWords(p, r, i, worst)
	} else {
		b.drawNumber(p, r, i)
	}
}

// style returns the number of a style of the i-th column.
func (b *beside[R]) style(i int, role look.Role, format string) int {
	d := &b.last[i]
	if key := (styleKey{role, format}); key != d.style {
		d.style, d.id = key, b.l.style(role, format)
	}
	return d.id
}

// formula returns the formula of a row in the i-th column; nil where it has none.
func (b *beside[R]) formula(r *R, i int) *pack.Formula {
	c := &b.cols[i]
	if !b.l.live || c.formula == nil {
		return nil
	}
	template := c.formula(r)
	if template == "" {
		return nil
	}
	d := &b.last[i]
	if template != d.template {
		d.template, d.formula = template, b.compile(template, c.unit)
	}
	return d.formula
}

// compile turns a template into a formula of the sheet: [key] becomes the cell of
// that column in the same row, in metric units, {key} the name of a rate.
func (b *beside[R]) compile(template string, own unit) *pack.Formula {
	cacheKey := templateKey{own.us, template}
	if f, ok := b.templates[cacheKey]; ok {
		return f
	}
	text := expand(template, func(key string) string {
		i := b.at[key]
		return b.cols[i].unit.metricOf("$"+b.letters[i]+"§", b.l.us)
	}, b.l.rate)
	f := pack.NewFormula(own.wrap(text, b.l.us))
	b.templates[cacheKey] = f
	return f
}

func (b *beside[R]) drawNumber(p *pack.Pen, r *R, i int) {
	c := &b.cols[i]
	v, ok := c.number(r)
	if !ok {
		return
	}
	f := b.formula(r, i)
	role := c.role
	switch {
	case role == look.Edit && f != nil:
		role = look.Calc // it follows the user's own cell
	case role == look.Calc && f == nil && c.formula != nil && b.l.live:
		role = look.Chosen
	}
	p.Number(b.letters[i], b.style(i, role, c.formatOf(b.l.us)), f, c.unit.show(v, b.l.us))
}

func (b *beside[R]) drawWords(p *pack.Pen, r *R, i int, worst finding.Level) {
	c := &b.cols[i]
	text := c.words(r)
	if text == "" {
		return
	}
	role, format := c.role, look.TextFormat(text)
	if c.key == "status" || c.key == "worst" {
		role = roleOf(worst)
	}
	f := b.formula(r, i)
	if f != nil {
		format = ""
	}
	p.Text(b.letters[i], b.style(i, look.Off(role), format), f, text)
}

// columns are the widths and folds of our columns. In each group the first
// column stays in sight; the planner's own start folded away.
func (b *beside[R]) columns() []pack.Column {
	var out []pack.Column
	for _, c := range b.cols {
		pc := pack.Column{Width: c.width}
		if c.fold {
			pc.Level = 1
		}
		pc.Hidden = c.group == "plan" && c.fold
		out = append(out, pc)
	}
	return out
}
