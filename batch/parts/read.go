package parts

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/section"
	"seamtally/tables"
)

// Options are what the user and the shop say about reading a cut list.
type Options struct {
	Sheet    string // name of the sheet; empty: the one that reads most like a cut list
	Inches   bool   // bare numbers are inches
	Material string // grade of rows that name none; empty: not known
}

// Reader reads cut lists: the words of the tables, ready for look-up.
type Reader struct {
	set   *tables.Set
	kin   *joint.Kin
	terms *joint.Terms
	known map[string]parsed    // designations already read
	units [2]map[string]parsed // those of lists in mm and in inches
}

type parsed struct {
	section section.Section
	text    string // with its unit
	doubt   *section.Doubt
	err     error
}

// NewReader prepares the words of the tables. A Reader is for one list at a time.
func NewReader(set *tables.Set) *Reader {
	r := &Reader{set: set, terms: joint.NewTerms(set), known: map[string]parsed{}, units: [2]map[string]parsed{{}, {}}}
	r.kin = joint.NewKin(joint.KinOptions{
		Headers: set.PartHeaders, Name: "part",
		Core:     []string{"part", "section", "length", "qty", "width", "thickness"},
		Figures:  []string{"section", "length", "width", "thickness", "qty"},
		Looks:    []string{"section", "thickness", "material", "width"},
		Measures: []string{"length", "width", "thickness", "section"},
		Needs:    []string{"section", "length"},
		One:      "part", All: "parts", List: "cut list",
		Hint:   "if this is the cut list, name at least the columns part, section, length and quantity in one row above the parts; if not, name the right sheet or file with --parts",
		Enough: "four columns are enough: part, section, length, quantity",
		Fits:   r.fits,
	}, set)
	return r
}

// fits tells whether a text can be a value of a column of its own to cut lists.
func (r *Reader) fits(key, text string) (fits, known bool) {
	switch key {
	case "section":
		return r.designation(text), true
	case "width", "thickness":
		return strings.ContainsAny(text, "0123456789"), true
	}
	return false, false
}

// designation tells whether a text is a section and could hardly be the size of a
// weld: it holds a word, or a figure that no weld has.
func (r *Reader) designation(text string) bool {
	if text == "" {
		return false
	}
	p := r.section(text)
	if p.err != nil {
		return false
	}
	return p.section.H > largestWeld || p.section.B > largestWeld || strings.ContainsFunc(text, isWordLetter)
}

// largestWeld is the size in mm that no weld of a list has.
const largestWeld = 41

// isWordLetter tells whether a letter is one that only a word for a section has: a
// weld size has a, z, s, k and x.
func isWordLetter(r rune) bool {
	return strings.ContainsRune("HRCPLUTIEDFBWNQOMhrcpluiedfbwnqoØ⌀∠", r)
}

// section reads a designation as it stands, each once.
func (r *Reader) section(text string) parsed {
	p, ok := r.known[text]
	if !ok {
		p.section, p.err = section.Parse(text, r.set)
		r.known[text] = p
	}
	return p
}

// sectionIn reads a designation of a list in inches or in millimetres, each once.
func (r *Reader) sectionIn(text string, inches bool) parsed {
	known := r.units[0]
	if inches {
		known = r.units[1]
	}
	p, ok := known[text]
	if !ok {
		read, err := section.ParseIn(text, inches, r.set)
		p = parsed{section: read.Section, text: read.Text, doubt: read.Doubt, err: err}
		known[text] = p
	}
	return p
}

// IsList tells whether a sheet is a cut list: its header names a section, or width
// and thickness, with a length or a quantity, and nothing that only welds have.
func (r *Reader) IsList(sheet *list.Sheet) bool {
	own := map[string]int{}
	for _, c := range r.kin.Columns(sheet) {
		own[c.Key] = c.Col
	}
	delete(own, "")
	_, named := own["part"]
	_, long := own["length"]
	_, many := own["qty"]
	_, wide := own["width"]
	_, thick := own["thickness"]
	_, shaped := own["section"]
	if !shaped && !(wide && thick) || !long || !named && !many {
		return false
	}
	return !r.welds(sheet, own["section"])
}

// welds tells whether a sheet has a column that only a list of welds has. The
// column that gives the sections does not count where any of its values is one,
// whatever its header can mean: "Size" stands over sections and over legs.
func (r *Reader) welds(sheet *list.Sheet, sectionCol int) bool {
	for _, c := range r.terms.Columns(sheet) {
		if c.Col == sectionCol && r.holdsSection(sheet, c.Col) {
			continue
		}
		switch c.Key {
		case "stitch", "part2", "wps", "backing", "root_face", "wire", "t2", "material2":
			return true
		case "size", "kind", "position":
			if r.terms.Fit(sheet, c.Col, c.Key) >= 0.5 {
				return true
			}
		}
	}
	return false
}

// holdsSection tells whether a column has a value that is a section.
func (r *Reader) holdsSection(sheet *list.Sheet, col int) bool {
	for i := range sheet.Rows {
		if r.designation(sheet.Rows[i].At(col).Text) {
			return true
		}
	}
	return false
}

// Find returns the name of the sheet that is the file's cut list; ok is false where
// there is none. Hidden sheets do not count.
func (r *Reader) Find(src *list.Source) (sheet *list.Sheet, ok bool) {
	for i := range src.Sheets {
		if s := &src.Sheets[i]; !s.Hidden && r.IsList(s) {
			return s, true
		}
	}
	return nil, false
}

// Sheets returns the names of all sheets that read like a cut list, in their order.
func (r *Reader) Sheets(src *list.Source) []string {
	var out []string
	for i := range src.Sheets {
		if s := &src.Sheets[i]; !s.Hidden && r.IsList(s) {
			out = append(out, s.Name)
		}
	}
	return out
}

// Understand reads a cut list from a file's rows. Every row that is not blank
// becomes a part, or is told with its fate; all problems are gathered in one pass.
// The error, if any, is a *list.Refusal: no list was found.
func (r *Reader) Understand(src *list.Source, opt Options) (*List, error) {
	if opt.Sheet == "" && len(src.Sheets) > 1 {
		if sheet, ok := r.Find(src); ok {
			opt.Sheet = sheet.Name
		}
	}
	out := &List{Refused: map[string]finding.Place{}}
	f := &fields{Reader: r, opt: opt, list: out, first: map[string]int{}}
	read, err := r.kin.Read(src, joint.Options{Sheet: opt.Sheet, Inches: opt.Inches}, f.part)
	if err != nil {
		return nil, err
	}
	out.File, out.Sheet, out.SHA256 = read.File, read.Sheet, read.SHA256
	out.HeaderRows, out.UnitsRow, out.LastRow, out.LastCol = read.HeaderRows, read.UnitsRow, read.LastRow, read.LastCol
	out.Columns, out.Others, out.RowsRead, out.Problems = read.Columns, read.Others, read.RowsRead, read.Problems
	f.blanks()
	out.Problems = append(out.Problems, f.summary()...)
	return out, nil
}
