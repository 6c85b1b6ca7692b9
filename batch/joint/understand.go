package joint

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint/measure"
	"seamtally/batch/list"
	"seamtally/batch/units"
	"seamtally/tables"
)

// Options are what the user and the shop say about reading a list.
type Options struct {
	Sheet       string // name of the sheet; empty: the one that reads most like a joint list
	Inches      bool   // bare numbers are inches
	SizeMeans   string // what a bare size is: leg (also if empty) or throat
	MissingSize string // ask (also if empty), or a rule such as "0.7 t_min"
	Material    string // grade of rows that name none; empty: they are asked for
	// Thickness is what a cut list says of the part that a row names; nil: nothing.
	Thickness func(part, assembly string) (web, flange units.MM)
	Skip      func(*list.Sheet) bool // sheets that hold another list; nil: none
	CutSheets []string               // sheets of the cut list, which are no other lists of joints
}

func (o Options) sizeMeans() string {
	if o.SizeMeans == string(Throat) {
		return o.SizeMeans
	}
	return string(Leg)
}

// bareName is what a number without a unit is taken in.
func (r *reader) bareName() string {
	if r.opt.Inches {
		return "inches"
	}
	return "millimetres"
}

// otherMeans is what a bare size is not taken as.
func (o Options) otherMeans() string {
	if o.sizeMeans() == string(Leg) {
		return string(Throat)
	}
	return string(Leg)
}

// mostRows is how many rows a list may have: a joint takes three to nine kilobytes from
// its row to its price, most where no other is like it, and a shop's machine has some
// gigabytes.
const mostRows = 200_000

// Understand reads a joint list from a file's rows. Every row that is not blank
// becomes a joint, or is told with its fate; all problems are gathered in one
// pass. The error, if any, is a *list.Refusal: no list was found.
func Understand(src *list.Source, opt Options, set *tables.Set) (*List, error) {
	return newSpellings(set).understand(src, opt)
}

func (words *spellings) understand(src *list.Source, opt Options) (*List, error) {
	return words.read(src, opt, (*reader).joint)
}

// read goes through a list of any kind and hands every row that is no title, total
// or the like to each.
func (words *spellings) read(src *list.Source, opt Options, each func(*reader, list.Row)) (*List, error) {
	sheet, spot, err := words.chooseSheet(src, opt)
	if err != nil {
		return nil, err
	}
	r := &reader{spellings: words, each: each, opt: opt, file: src.File, sheet: sheet.Name, bareUsed: map[string]bool{}, marks: map[string]int{}, near: map[string]int{}, details: details{}, remarks: map[string]remark{}, heads: heads{}, absent: map[string]bool{},
		list: &List{File: src.File, Sheet: sheet.Name, SHA256: src.SHA256, RowsRead: len(sheet.Rows)}}
	body := sheet.Rows[spot.last+1:]
	r.cols = words.assign(spot, body)
	r.list.HeaderRows = [2]int{sheet.Rows[spot.first].Number, sheet.Rows[spot.last].Number}
	r.titles(sheet.Rows[:spot.first])
	for _, row := range sheet.Rows[spot.first : spot.last+1] {
		r.other(row, HeaderRow)
	}
	if len(body) > 0 && r.unitsLine(body[0]) {
		r.list.UnitsRow = body[0].Number
		r.other(body[0], UnitsRow)
		body = body[1:]
	}
	if len(body) > mostRows {
		return nil, &list.Refusal{File: src.File, Text: fmt.Sprintf("the list%s has %d rows below its header; one list can have %d at most", inSheet(sheet.Name), len(body), mostRows),
			Hint: "split it into several lists, for instance one for each assembly; all of them can be given to one run"}
	}
	r.style = r.habit(src, body)
	body = fillMerged(body, sheet.Merges)
	r.learnMarks(body)
	r.rows(body, spot)
	r.trailing()
	r.summary(src, sheet)
	if len(r.list.Joints) == 0 && len(r.absent) > 0 {
		return nil, r.noColumn()
	}
	if len(r.list.Joints) == 0 && len(r.list.Problems) == 0 {
		return nil, &list.Refusal{File: src.File, Text: "a header was found" + inSheet(sheet.Name) + fmt.Sprintf(" in row %d, but no %s stands below it", r.list.HeaderRows[0], words.dialect.one),
			Hint: "write one " + words.dialect.one + " a row below the header"}
	}
	return r.list, nil
}

// habit decides how the list writes its numbers, from all its texts.
func (r *reader) habit(src *list.Source, body []list.Row) measure.Style {
	measures := map[int]bool{}
	for i := range r.cols {
		if slices.Contains(r.dialect.measures, r.cols[i].Key) {
			measures[r.cols[i].Col] = true
		}
	}
	style := measure.Habit(func(yield func(string) bool) {
		for _, row := range body {
			for _, c := range row.Cells {
				if c.Kind == list.Text && measures[c.Col] && !yield(c.Text) {
					return
				}
			}
		}
	})
	if src.DecimalComma && style.Mark != ',' {
		return measure.Style{Mark: ','}
	}
	return style
}

// rows reads the rows below the header.
func (r *reader) rows(body []list.Row, spot headerSpot) {
	r.list.Joints = make([]Joint, 0, len(body))
	for i, row := range body {
		if len(r.list.Joints) > 0 && r.secondTable(row) {
			for _, rest := range body[i:] {
				r.other(rest, TrailingRow)
			}
			r.tell(finding.Warning, row.Number, "second-table", "another table begins here; it and what follows is not part of the "+r.dialect.list, "give it a sheet of its own, or name the sheet with --sheet")
			return
		}
		switch fate := r.fate(row, spot); fate {
		case "":
			r.sum.add(r, row)
			r.each(r, row)
		case TotalRow:
			r.sum.close()
			r.other(row, fate)
		case GroupRow:
			r.group = groupName(row)
			fallthrough
		default:
			r.other(row, fate)
		}
	}
}

// trailing renames group rows behind the last joint: they head nothing.
func (r *reader) trailing() {
	last := 0
	for i := range r.list.Joints {
		last = max(last, r.list.Joints[i].Place.Row)
	}
	for i := range r.list.Others {
		if o := &r.list.Others[i]; o.Fate == Rejected {
			last = max(last, o.Row)
		}
	}
	for i := range r.list.Others {
		if o := &r.list.Others[i]; o.Fate == GroupRow && o.Row > last {
			o.Fate = TrailingRow
		}
	}
}

// secondTable tells whether a row is the header of another table.
func (r *reader) secondTable(row list.Row) bool {
	if len(row.Cells) < 3 || r.plainFigure(row, "length") > 0 {
		return false
	}
	known := 0
	for _, c := range row.Cells {
		if c.Kind != list.Text {
			return false
		}
		if r.header(c.Text) != nil {
			known++
		}
	}
	own := 0
	for i := range r.cols {
		if fold(row.At(r.cols[i].Col).Text) == r.heads.of(r.cols[i].Header) && r.cols[i].Header != "" {
			own++
		}
	}
	return known >= 3 && known*2 > len(row.Cells) && own*2 <= len(row.Cells)
}

func groupName(row list.Row) string {
	var parts []string
	for _, c := range row.Cells {
		text := strings.TrimSpace(c.Text)
		if v, err := strconv.ParseFloat(text, 64); err == nil && len(text) > 15 && strings.Contains(text, ".") {
			text = strconv.FormatFloat(v, 'g', 12, 64) // the dust of a sum is no part of a name
		}
		parts = append(parts, text)
	}
	return shorten(strings.TrimRight(strings.Join(parts, " "), ": "), 80)
}

// joint reads one row; errors reject it, and everything found is kept.
func (r *reader) joint(in list.Row) {
	w := &r.row
	*w = row{reader: r, Row: in, problems: w.problems[:0]}
	w.joint.Detail, w.joint.Place = &w.detail, r.place(in.Number, nil)
	w.words()
	w.quantity()
	w.kind()
	w.size()
	w.length()
	w.thicknesses()
	w.preparation()
	w.sides()
	w.stitch()
	w.defaultKind()
	w.stand()
	w.finish()
	sort.SliceStable(w.problems, func(i, j int) bool { return w.problems[i].Place.Col < w.problems[j].Place.Col })
	r.list.Problems = append(r.list.Problems, w.problems...)
	if w.bad {
		r.other(in, Rejected)
		r.list.Others[len(r.list.Others)-1].Mark = w.joint.Mark
		return
	}
	r.twice(&w.joint)
	w.joint.Detail = r.details.of(&w.detail)
	r.list.Joints = append(r.list.Joints, w.joint)
}

// hasty is a mark as a hasty eye sees it: W01 and W1, 1.0 and 1 are taken for one
// another on the floor.
func hasty(folded string) string {
	if !strings.Contains(folded, "0") {
		return folded
	}
	if whole, decimals, ok := strings.Cut(folded, "."); ok && whole != "" && strings.Trim(whole, digits) == "" && decimals != "" && strings.Trim(decimals, "0") == "" {
		folded = whole
	}
	kept := make([]byte, 0, len(folded))
	for i := range len(folded) {
		leads := len(kept) == 0 || !strings.ContainsRune(digits+".,", rune(kept[len(kept)-1]))
		if folded[i] == '0' && leads && i+1 < len(folded) && folded[i+1] >= '0' && folded[i+1] <= '9' {
			continue
		}
		kept = append(kept, folded[i])
	}
	return string(kept)
}

const digits = "0123456789"

// twice warns where a mark stands more than once, also in another spelling.
func (r *reader) twice(j *Joint) {
	key := strings.ReplaceAll(fold(j.Mark), " ", "")
	if first, ok := r.marks[key]; ok {
		p := r.place(j.Place.Row, r.column("mark"))
		r.list.Problems = append(r.list.Problems, finding.Problem{Place: p, Level: finding.Warning, Code: "mark-twice", Read: j.Mark,
			Text: fmt.Sprintf("this mark is used already in row %d; each row is worked by itself", first), Want: "a mark that stands once", Hint: "give each joint its own mark, or use the quantity for identical joints"})
		return
	}
	r.marks[key] = j.Place.Row
	near := hasty(key)
	if first, ok := r.near[near]; ok {
		r.list.Problems = append(r.list.Problems, finding.Problem{Place: r.place(j.Place.Row, r.column("mark")), Level: finding.Note, Code: "mark-alike", Read: j.Mark,
			Text: fmt.Sprintf("this mark is easily taken for that of row %d; both are worked, each by itself", first), Hint: "give them marks that cannot be mistaken on the floor"})
		return
	}
	r.near[near] = j.Place.Row
}

func (r *reader) other(row list.Row, fate RowFate) {
	r.list.Others = append(r.list.Others, OtherRow{Row: row.Number, Fate: fate, Text: shorten(groupName(row), 60)})
}

func (r *reader) note(row int, code, text, hint string) {
	r.tell(finding.Note, row, code, text, hint)
}

func (r *reader) tell(level finding.Level, row int, code, text, hint string) {
	r.list.Problems = append(r.list.Problems, finding.Problem{Place: r.place(row, nil), Level: level, Code: code, Text: text, Hint: hint})
}

// summary tells, once for the list, what was assumed for many rows.
func (r *reader) summary(src *list.Source, sheet *list.Sheet) {
	for i := range r.cols {
		r.list.Columns = append(r.list.Columns, r.cols[i].Column)
	}
	for _, row := range sheet.Rows {
		for _, c := range row.Cells {
			r.list.LastCol = max(r.list.LastCol, c.Col)
		}
		r.list.LastRow = max(r.list.LastRow, row.Number)
	}
	if len(r.bareUsed) > 0 {
		names := make([]string, 0, len(r.bareUsed))
		for name := range r.bareUsed {
			names = append(names, name)
		}
		sort.Strings(names)
		r.note(r.list.HeaderRows[1], "list-units", "numbers without a unit under "+strings.Join(names, ", ")+" are read as "+r.bareName(), "if that is right nothing need be done; if not, write the unit in the header, such as Size (mm) or Size (in), or give --list-units mm or in")
	}
	r.columnDoubts(sheet)
	r.otherLists(src, sheet)
	if r.style.Grouped {
		one, other := "1.234", "1,234"
		if r.style.Mark == '.' {
			one, other = other, one
		}
		r.note(r.list.HeaderRows[1], "thousands", "the list groups thousands: "+one+" is read as 1234, "+other+" as a little more than one", "write numbers without grouping if this is wrong")
	}
	if r.fractions.n > 0 && len(r.bareUsed) > 0 && !r.opt.Inches {
		r.tell(finding.Warning, r.list.HeaderRows[1], "mixed-units", fmt.Sprintf("%s written as inch fractions and read as inches, but numbers without a unit are read as millimetres", r.fractions.are("")),
			"if only these are in inches nothing need be done; if the whole list is, give --list-units in, or write the unit in the headers, such as Size (in)")
	}
	if r.sizesTaken.n > 0 {
		r.note(r.list.HeaderRows[1], "size-means", fmt.Sprintf("%s taken as the %s: neither the cells nor the header say which", r.sizesTaken.are(" without a letter"), r.opt.sizeMeans()),
			"if that is right nothing need be done; if not, write z6 or a4, name the column leg or throat, or give --set size_means="+r.opt.otherMeans())
	}
}
