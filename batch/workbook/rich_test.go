package workbook

import (
	"archive/zip"
	"bytes"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// touched are the parts that may differ in an annotated workbook, each with
// insertions only: what lists parts, sheets and styles, the sheet of the list, and
// the properties with our stamp.
var touched = []string{"[Content_Types].xml", "_rels/.rels", "docProps/custom.xml", "xl/_rels/workbook.xml.rels", "xl/styles.xml", "xl/workbook.xml", "xl/worksheets/sheet1.xml"}

// TestRichWorkbookIsKept annotates a workbook with everything in it: no part is
// lost, none but the listed ones differs, every row of the user's stands byte for
// byte, and another program finds every cell, rule and frame as before.
func TestRichWorkbookIsKept(t *testing.T) {
	t.Parallel()
	before := richBook(t)
	src, _, err := list.Read("rich.xlsm", before)
	must(t, err)
	job := understoodJob(t, src, price.Options{})
	if job.Totals.Price <= 0 || len(job.List.Joints) != 12 {
		t.Fatalf("%d joints, price %v: the fixture is not worked", len(job.List.Joints), job.Totals.Price)
	}
	book, err := Prepare(src, job, Options{})
	must(t, err)
	if isFresh(book.Problems) {
		t.Fatalf("not annotated: %+v", book.Problems)
	}
	after := bytesOf(t, book)
	old, now := partsOf(t, before), partsOf(t, after)
	for name, body := range old {
		switch got, ok := now[name]; {
		case !ok && name == "xl/calcChain.xml": // every program builds it anew
		case !ok:
			t.Errorf("part %s is lost", name)
		case !bytes.Equal(body, got) && !slices.Contains(touched, name):
			t.Errorf("part %s differs", name)
		}
	}
	t.Logf("%d parts before, %d after", len(old), len(now))
	sameRows(t, old["xl/worksheets/sheet1.xml"], now["xl/worksheets/sheet1.xml"])
	sameAround(t, old["xl/worksheets/sheet1.xml"], now["xl/worksheets/sheet1.xml"])
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.xlsm"), filepath.Join(dir, "out.xlsm")
	must(t, os.WriteFile(in, before, 0o644))
	must(t, os.WriteFile(out, after, 0o644))
	if dir := os.Getenv("SEAMTALLY_LOOK"); dir != "" {
		must(t, os.WriteFile(filepath.Join(dir, "rich.xlsm"), before, 0o644))
		must(t, os.WriteFile(filepath.Join(dir, "rich-worked.xlsm"), after, 0o644))
	}
	again, _, err := list.Read("rich-worked.xlsm", after)
	must(t, err)
	bare, _ := Undress(again)
	for name, body := range partsOf(t, bare.Data) {
		if was, ok := old[name]; ok && !slices.Contains(touched, name) && !bytes.Equal(body, was) {
			t.Errorf("part %s does not come back", name)
		} else if !ok && name != "docProps/custom.xml" {
			t.Errorf("part %s stays behind", name)
		}
	}
	sameByAnotherProgram(t, in, out)
	newlyInvalid(t, in, out)
}

var rowText = regexp.MustCompile(`(?s)<row\b[^>]*?(?:/>|>.*?</row>)`)

// sameRows wants each row of the first sheet in the second: the same start tag and
// then the same bytes, before anything of ours.
func sameRows(t *testing.T, before, after []byte) {
	t.Helper()
	old, now := rowText.FindAllString(string(before), -1), map[string]string{}
	for _, r := range rowText.FindAllString(string(after), -1) {
		now[attrOf(r, "r")] = r
	}
	for _, r := range old {
		tag, cells, _ := strings.Cut(strings.TrimSuffix(r, "</row>"), ">")
		gotTag, got, _ := strings.Cut(now[attrOf(r, "r")], ">")
		if !strings.HasPrefix(got, cells) || strings.TrimSuffix(gotTag, "/") != strings.TrimSuffix(tag, "/") {
			t.Errorf("row %s was\n%s\nis\n%.*s", attrOf(r, "r"), r, len(r)+40, now[attrOf(r, "r")])
		}
	}
	if len(old) < 10 {
		t.Errorf("only %d rows compared", len(old))
	}
	t.Logf("%d rows are the same bytes", len(old))
}

// sameAround wants every element before and behind the rows, as it was, in the
// same order; what is new may stand between them.
func sameAround(t *testing.T, before, after []byte) {
	t.Helper()
	for _, part := range []*regexp.Regexp{
		regexp.MustCompile(`<sheetPr.*?</sheetPr>`), regexp.MustCompile(`<sheetViews>.*?</sheetViews>`), regexp.MustCompile(`<col [^>]*>`),
		regexp.MustCompile(`<sheetProtection [^>]*>`), regexp.MustCompile(`<mergeCells.*?</mergeCells>`),
		regexp.MustCompile(`<conditionalFormatting .*?</conditionalFormatting>`), regexp.MustCompile(`<dataValidations .*?</dataValidations>`),
		regexp.MustCompile(`<hyperlinks>.*?</hyperlinks>`), regexp.MustCompile(`<page(?:Margins|Setup) [^>]*>`), regexp.MustCompile(`<headerFooter.*?</headerFooter>`),
		regexp.MustCompile(`<rowBreaks.*?</rowBreaks>`), regexp.MustCompile(`<ignoredErrors>.*?</ignoredErrors>`), regexp.MustCompile(`<(?:drawing|legacyDrawing) [^>]*>`),
		regexp.MustCompile(`<tableParts.*?</tableParts>`), regexp.MustCompile(`</tableParts><extLst>.*</extLst>`), regexp.MustCompile(`<controls>.*</controls>`),
	} {
		at := 0
		for _, want := range part.FindAll(before, -1) {
			i := bytes.Index(after[at:], want)
			if i < 0 {
				t.Errorf("gone or changed: %.300s", want)
				continue
			}
			at += i + len(want)
		}
	}
}

// sameByAnotherProgram compares every cell and frame with another library.
func sameByAnotherProgram(t *testing.T, in, out string) {
	t.Helper()
	need(t, "/usr/bin/python3")
	if err := exec.Command("/usr/bin/python3", "-c", "import openpyxl").Run(); err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") != "" {
			t.Fatal("python3-openpyxl is not installed")
		}
		t.Log("python3-openpyxl is not installed")
		return
	}
	said, err := exec.Command("/usr/bin/python3", filepath.Join("testdata", "same_cells.py"), in, out).CombinedOutput()
	if err != nil {
		t.Errorf("%v: %s", err, said)
	}
	t.Logf("%s", said)
}

// newlyInvalid runs the package and the schema checker over input and output; a
// fault of the output that the input has not is ours.
func newlyInvalid(t *testing.T, in, out string) {
	t.Helper()
	need(t, "xsltproc")
	need(t, "xmllint")
	for _, cmd := range [][]string{{"/usr/bin/python3", shared(t, "validate/pkgcheck.py")}, {"bash", shared(t, "validate/validate-xlsx.sh")}} {
		if said, err := exec.Command(cmd[0], cmd[1], out).CombinedOutput(); err != nil && !sayTheSame(cmd, in, out, said) {
			t.Errorf("%s", said)
		}
	}
}

func repacked(t testing.TB, bodies map[string][]byte) []byte {
	t.Helper()
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	for _, name := range slices.Sorted(maps.Keys(bodies)) {
		w, err := zw.Create(name)
		must(t, err)
		_, err = w.Write(bodies[name])
		must(t, err)
	}
	must(t, zw.Close())
	return out.Bytes()
}
