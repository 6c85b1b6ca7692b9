package workbook

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// everywhere are the functions that formulas may call: all spreadsheet programs have had
// them for twenty years.
var everywhere = strings.Fields("ABS AND COS COUNTIF EXACT HYPERLINK IF IFERROR INT MAX MIN OR PI RADIANS ROUND ROUNDUP SIN SQRT SUM SUMIF SUMPRODUCT TAN")

var (
	formulaText = regexp.MustCompile(`<(?:\w+:)?(?:f|formula|formula1|formula2)(?: [^>]*)?>([^<]+)<`)
	quotedText  = regexp.MustCompile(`"[^"]*"|'[^']*'`)
	calledName  = regexp.MustCompile(`[A-Za-z_][A-Za-z0-9_.]*\(`)
)

// madeBook is one workbook of ours, and how it came to be.
type madeBook struct {
	name string
	data []byte
}

// everyBook makes the workbooks of all samples, and of two with a cut list, in all
// units and codes.
func everyBook(t *testing.T) (all []madeBook) {
	t.Helper()
	for _, opts := range []price.Options{{}, {US: true, Paper: "letter"}, {Codes: "aws"}, {US: true, Codes: "aws"}} {
		add := func(name string, src *list.Source, job *price.Job) {
			b := madeBook{name: name, data: build(t, src, job, Options{US: opts.US})}
			if opts.US {
				b.name += ", US"
			}
			b.name += " " + opts.Codes
			all = append(all, b)
		}
		for _, path := range []string{"wash-table/wash-table.csv", "gangway/gangway.csv", "four-columns/four-columns.csv", "mistakes/mistakes.csv", "trestle/trestle.csv"} {
			src, job := sampleJob(t, path, opts)
			add(path, src, job)
		}
		for name, data := range map[string][]byte{"mezzanine": read(t, "../../samples/mezzanine/mezzanine.xlsx"), "two lists": twoLists(t)} {
			src, job := cutJob(t, data, opts)
			add(name, src, job)
		}
	}
	return all
}

// TestEverySheet looks at all sheets of all samples: formulas call only what every
// program knows, charts show what stands in their cells, and what stands on a sheet
// of ours is printed.
func TestEverySheet(t *testing.T) {
	t.Parallel()
	called, points, areas := map[string]int{}, 0, 0
	for _, b := range everyBook(t) {
		f := opened(t, b.data)
		for part, body := range partsOf(t, b.data) {
			if strings.HasPrefix(part, "xl/worksheets/sheet") || strings.HasPrefix(part, "xl/worksheets/seamtally") {
				onlyKnown(t, b.name+" "+part, body, called)
			}
			if strings.HasPrefix(part, "xl/charts/") && !strings.Contains(part, "_rels") {
				points += cachesHold(t, b.name+" "+part, body, f)
			}
		}
		for _, sheet := range f.GetSheetList() {
			if slices.Contains([]string{"Totals", "Buy list", "Checks", "Rates", "Basis", "Parts", "Bars"}, sheet) {
				areas += allPrinted(t, b.name, f, sheet)
			}
		}
	}
	names := slices.Sorted(maps.Keys(called))
	t.Logf("functions called: %s", strings.Join(names, " "))
	t.Logf("%d points of charts, %d printed areas", points, areas)
	if len(names) < 10 || points < 100 || areas < 100 {
		t.Error("too little was looked at")
	}
}

// onlyKnown wants nothing in a sheet's formulas that some program does not know: no
// function but the known, no structured reference, no array, no prefix of newer ones.
func onlyKnown(t *testing.T, where string, body []byte, called map[string]int) {
	t.Helper()
	for _, m := range formulaText.FindAllSubmatch(body, -1) {
		formula := quotedText.ReplaceAllString(strings.NewReplacer("&quot;", `"`, "&#34;", `"`, "&apos;", "'", "&#39;", "'").Replace(string(m[1])), "")
		if strings.ContainsAny(formula, "[]{}@#") || strings.Contains(formula, "_xl") {
			t.Errorf("%s: not known everywhere: =%s", where, m[1])
		}
		for _, name := range calledName.FindAllString(formula, -1) {
			name = strings.TrimSuffix(name, "(")
			if called[name]++; !slices.Contains(everywhere, name) {
				t.Errorf("%s calls %s: =%s", where, name, m[1])
			}
		}
	}
}

var (
	chartRef   = regexp.MustCompile(`(?s)<(?:\w+:)?(cat|val|tx)>\s*<(?:\w+:)?(?:num|str)Ref>(.*?)</(?:\w+:)?(?:num|str)Ref>`)
	chartFrom  = regexp.MustCompile(`<(?:\w+:)?f>([^<]*)<`)
	chartPoint = regexp.MustCompile(`<(?:\w+:)?v>([^<]*)<`)
)

// cachesHold wants names and values in a chart, and the same as in the cells that it
// names. It returns how many points there are.
func cachesHold(t *testing.T, where string, body []byte, f *excelize.File) int {
	t.Helper()
	points, seen := 0, map[string]bool{}
	for _, ref := range chartRef.FindAllSubmatch(body, -1) {
		from := chartFrom.FindSubmatch(ref[2])
		if from == nil {
			t.Fatalf("%s: no reference in %s", where, ref[0])
		}
		want := rangeValues(t, f, string(from[1]))
		got := chartPoint.FindAllSubmatch(ref[2], -1)
		if len(got) != len(want) && (string(ref[1]) != "tx" || len(got) > 0) {
			t.Errorf("%s: %d points cached for the %d cells of %s", where, len(got), len(want), from[1])
			continue
		}
		for i := range got {
			if text := xmlText(string(got[i][1])); !sameFigure(want[i], text) {
				t.Errorf("%s: cached %q for point %d of %s, the cell has %q", where, text, i, from[1], want[i])
			}
			points++
		}
		seen[string(ref[1])] = true
	}
	if !seen["cat"] || !seen["val"] {
		t.Errorf("%s has no names or no values", where)
	}
	return points
}

func xmlText(s string) string {
	return strings.NewReplacer("&lt;", "<", "&gt;", ">", "&apos;", "'", "&#39;", "'", "&quot;", `"`, "&#34;", `"`, "&amp;", "&").Replace(s)
}

// rangeValues are the values in the cells of a reference such as 'Totals'!$A$1:$A$9.
func rangeValues(t *testing.T, f *excelize.File, ref string) (out []string) {
	t.Helper()
	sheet, box := boxOf(t, xmlText(ref))
	for row := box[1]; row <= box[3]; row++ {
		for col := box[0]; col <= box[2]; col++ {
			v, err := f.GetCellValue(sheet, cellOf(t, col, row))
			must(t, err)
			out = append(out, v)
		}
	}
	return out
}

// boxOf takes a reference apart: the sheet, and left, top, right and bottom.
func boxOf(t *testing.T, ref string) (sheet string, box [4]int) {
	t.Helper()
	at := strings.LastIndex(ref, "!")
	if at < 0 {
		t.Fatalf("%q names no sheet", ref)
	}
	from, to, ok := strings.Cut(strings.ReplaceAll(ref[at+1:], "$", ""), ":")
	if !ok {
		to = from
	}
	var err [2]error
	box[0], box[1], err[0] = excelize.CellNameToCoordinates(from)
	box[2], box[3], err[1] = excelize.CellNameToCoordinates(to)
	if err[0] != nil || err[1] != nil {
		t.Fatalf("%q is no range of cells", ref)
	}
	return strings.ReplaceAll(strings.Trim(ref[:at], "'"), "''", "'"), box
}

// allPrinted wants every filled cell of a sheet in one of its printed areas, no area
// that reaches out of the sheet, and a row that begins every page.
func allPrinted(t *testing.T, where string, f *excelize.File, sheet string) int {
	t.Helper()
	local := map[string]string{}
	for _, n := range f.GetDefinedName() {
		if n.Scope == sheet {
			local[n.Name] = n.RefersTo
		}
	}
	var boxes [][4]int
	for ref := range strings.SplitSeq(local["_xlnm.Print_Area"], ",") {
		if ref == "" {
			t.Errorf("%s: %s has no printed area", where, sheet)
			continue
		}
		of, box := boxOf(t, ref)
		if of != sheet {
			t.Errorf("%s: the printed area of %s is on %s", where, sheet, of)
		}
		boxes = append(boxes, box)
	}
	if !strings.Contains(local["_xlnm.Print_Titles"], quoteSheet(sheet)+"!$") {
		t.Errorf("%s: no row of %s begins every page: %q", where, sheet, local["_xlnm.Print_Titles"])
	}
	rows, err := f.GetRows(sheet)
	must(t, err)
	size, err := f.GetSheetDimension(sheet)
	must(t, err)
	_, whole := boxOf(t, sheet+"!"+size)
	for r, row := range rows {
		for c, v := range row {
			in := func(b [4]int) bool { return c+1 >= b[0] && c+1 <= b[2] && r+1 >= b[1] && r+1 <= b[3] }
			if v != "" && !slices.ContainsFunc(boxes, in) {
				t.Errorf("%s: %s!%s is not printed: %.60q", where, sheet, cellOf(t, c+1, r+1), v)
			}
		}
	}
	for _, b := range boxes {
		if b[3] > whole[3] || b[2] > whole[2] {
			t.Errorf("%s: the printed area %v of %s reaches beyond its cells, %s", where, b, sheet, size)
		}
	}
	return len(boxes)
}

// TestPositionsAddUpByTheirShownNames: with American codes the block of positions on
// Totals names what the rows name, and counts every joint once.
func TestPositionsAddUpByTheirShownNames(t *testing.T) {
	src, job := sampleJob(t, "mezzanine/mezzanine.xlsx", price.Options{Codes: "aws"})
	f := opened(t, build(t, src, job, Options{}))
	want := map[string]int{}
	for i := range job.Plans {
		want[job.Names().Position(&job.Plans[i])]++
	}
	rows, err := f.GetRows("Totals")
	must(t, err)
	got, within := map[string]string{}, false
	for _, row := range rows {
		switch {
		case len(row) > 0 && strings.HasPrefix(row[0], "By position"):
			within = true
			if row[0] != "By position (AWS A3.0)" {
				t.Errorf("the block is headed %q", row[0])
			}
		case within && len(row) == 0:
			within = false
		case within && row[0] != "Name":
			got[row[0]] = row[1]
		}
	}
	if len(got) != len(want) || want["2F"] == 0 {
		t.Errorf("the block names %v, the rows %v", got, want)
	}
	for name, n := range want {
		if got[name] != itoa(n) {
			t.Errorf("%s: %s joints on Totals, %d in the list", name, got[name], n)
		}
	}
}
