package batch

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/klauspost/compress/flate"

	"seamtally/batch/price"
)

// The least parts of a workbook with one sheet, as a program could write them.
const (
	sheetNS    = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
	hostTypes  = `<?xml version="1.0" encoding="UTF-8"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>`
	hostRels   = `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`
	hostBook   = `<?xml version="1.0"?><workbook ` + sheetNS + ` xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`
	hostBooks  = `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>`
	hostStyles = `<?xml version="1.0"?><styleSheet ` + sheetNS + `><fonts count="1"><font/></fonts><fills count="2"><fill/><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="5"><xf numFmtId="0"/><xf numFmtId="16" applyNumberFormat="1"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="20" applyNumberFormat="1"/><xf numFmtId="9" applyNumberFormat="1"/></cellXfs></styleSheet>`
	doctype    = `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd"><!ENTITY h SYSTEM "http://localhost:1/x">]>`
)

// hostile is a workbook that someone made to do harm, or that a broken program wrote.
type hostile struct {
	name          string
	before, after string            // around the rows of the sheet
	rows          string            // behind the good rows
	parts         map[string]string // instead of, or beside, the ordinary ones
	more          [][2]string       // parts whose names stand there already
	lies          bool              // the directory states a small size for what is large
	claims        uint64            // the size that the directory states for a picture
	code          int
	says          string // in the refusal; for one that is worked, in a finding
}

func hostiles() []hostile {
	styles := func(n int) string {
		return strings.Replace(hostStyles, `<cellXfs count="5">`, `<cellXfs count="`+fmt.Sprint(n)+`">`+strings.Repeat(`<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>`, n), 1)
	}
	many := map[string]string{}
	for i := range 10_001 {
		many[fmt.Sprintf("x/%d.xml", i)] = ""
	}
	wide := utf16.Encode([]rune("\ufeff" + doctype + "<x>&e;</x>"))
	var utf16le bytes.Buffer
	_ = binary.Write(&utf16le, binary.LittleEndian, wide)
	merges := strings.Builder{}
	for i := range 50_000 {
		fmt.Fprintf(&merges, `<mergeCell ref="K%d:L%d"/>`, i+1, i+1)
	}
	return []hostile{
		{name: "document type in the sheet", parts: map[string]string{"xl/worksheets/sheet1.xml": doctype + `<worksheet ` + sheetNS + `><sheetData/></worksheet>`}, code: 3, says: "document type"},
		{name: "document type in the styles", parts: map[string]string{"xl/styles.xml": doctype + hostStyles[21:]}, code: 3, says: "document type"},
		{name: "document type in a part only passed on", parts: map[string]string{"docProps/custom.xml": doctype + "<x>&e;&h;</x>"}, code: 3, says: "document type"},
		{name: "document type in UTF-16", parts: map[string]string{"docProps/custom.xml": utf16le.String()}, code: 3, says: "document type"},
		{name: "document type behind a long comment", parts: map[string]string{"docProps/custom.xml": `<?xml version="1.0"?><!--` + strings.Repeat("a", 300_000) + `-->` + doctype[21:] + "<x/>"}, code: 3, says: "document type"},
		{name: "one cell of 30 MB", rows: `<row r="9"><c r="A9" t="inlineStr"><is><t>` + strings.Repeat("a", 30_000_000) + `</t></is></c></row>`, code: 3, says: "longer than a million characters"},
		{name: "a part of 600 MB", claims: 600_000_000, code: 3, says: "512 megabytes"},
		{name: "20 MB with a size that lies", rows: strings.Repeat(" ", 20_000_000), lies: true, code: 3, says: "cannot be unpacked"},
		{name: "10,001 parts too many", parts: many, code: 3, says: "10000 parts"},
		{name: "50,000 merged ranges", after: `<mergeCells count="50000">` + merges.String() + `</mergeCells>`, code: 3, says: "20000 merged ranges"},
		{name: "a row of the height 1e308", before: `<sheetFormatPr defaultRowHeight="1e308"/>`},
		{name: "400,000 styles", parts: map[string]string{"xl/styles.xml": styles(400_000)}, says: "more than any spreadsheet program puts there"},
		{name: "a row beyond the last", rows: `<row r="231999999999940"><c r="A231999999999940"><v>1</v></c></row>`, code: 3, says: "1048576 rows"},
		{name: "row 1048577", rows: `<row r="1048577"><c r="A1048577"><v>1</v></c></row>`, code: 3, says: "1048576 rows"},
		{name: "column XFE", rows: `<row r="7"><c r="XFE7"><v>1</v></c></row>`, code: 3, says: "16384 columns"},
		{name: "the far corner", rows: `<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>`},
		{name: "a name that leads out", parts: map[string]string{"../evil.xml": "x"}, code: 3, says: "leads out"},
		{name: "a name that leads out, the other slash", parts: map[string]string{`xl\..\..\evil.xml`: "x"}, code: 3, says: "leads out"},
		{name: "absolute names", parts: map[string]string{"/etc/evil": "x", `C:\evil.xml`: "x"}},
		{name: "a part twice", more: [][2]string{{"xl/styles.xml", hostStyles}}, code: 3, says: "stands in it twice"},
		{name: "a part twice but for its case", more: [][2]string{{"XL/styles.xml", hostStyles}}, code: 3, says: "stands in it twice"},
	}
}

// goodRows are five joints under a header, as the rows of a sheet.
func goodRows() string {
	var b strings.Builder
	text := func(v string) string { return `<c t="inlineStr"><is><t>` + v + `</t></is></c>` }
	b.WriteString("<row>")
	for _, h := range []string{"Mark", "Kind", "Leg mm", "t1 mm", "t2 mm", "Length mm", "Qty", "Material", "Position"} {
		b.WriteString(text(h))
	}
	b.WriteString("</row>")
	for i := range 5 {
		b.WriteString("<row>" + text(fmt.Sprintf("W%d", i+1)) + text("fillet") + "<c><v>5</v></c><c><v>8</v></c><c><v>8</v></c><c><v>500</v></c><c><v>1</v></c>" + text("S235") + text("PB") + "</row>")
	}
	return b.String()
}

// bytes puts the workbook together.
func (h hostile) bytes(t *testing.T) []byte {
	t.Helper()
	parts := map[string]string{"[Content_Types].xml": hostTypes, "_rels/.rels": hostRels, "xl/workbook.xml": hostBook, "xl/_rels/workbook.xml.rels": hostBooks, "xl/styles.xml": hostStyles,
		"xl/worksheets/sheet1.xml": `<?xml version="1.0" encoding="UTF-8"?><worksheet ` + sheetNS + `>` + h.before + `<sheetData>` + goodRows() + h.rows + `</sheetData>` + h.after + `</worksheet>`}
	for name, body := range h.parts {
		parts[name] = body
	}
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	zw.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) { return flate.NewWriter(w, flate.BestSpeed) })
	put := func(name, body string) {
		w, err := zw.Create(name)
		if err == nil {
			_, err = w.Write([]byte(body))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for name, body := range parts {
		put(name, body)
	}
	for _, part := range h.more {
		put(part[0], part[1])
	}
	if h.claims > 0 {
		if _, err := zw.CreateRaw(&zip.FileHeader{Name: "xl/media/image1.png", Method: zip.Deflate, UncompressedSize64: h.claims}); err != nil {
			t.Fatal(err)
		}
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	if h.lies {
		return smallSizes(out.Bytes())
	}
	return out.Bytes()
}

// smallSizes makes the directory of a package state a kilobyte for whatever is large.
func smallSizes(data []byte) []byte {
	mark := []byte("PK\x01\x02")
	for at := bytes.Index(data, mark); at >= 0; {
		if size := data[at+24 : at+28]; binary.LittleEndian.Uint32(size) > 1_000_000 {
			binary.LittleEndian.PutUint32(size, 1000)
		}
		next := bytes.Index(data[at+4:], mark)
		if next < 0 {
			break
		}
		at += 4 + next
	}
	return data
}

// TestHostileWorkbooks: each is refused in a sentence, or worked with what is strange
// about it told; within ten seconds, and nothing is written outside the output folder.
func TestHostileWorkbooks(t *testing.T) {
	for _, h := range hostiles() {
		t.Run(h.name, func(t *testing.T) {
			dir := t.TempDir()
			list := filepath.Join(dir, "in", "list.xlsx")
			if err := os.MkdirAll(filepath.Dir(list), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(list, h.bytes(t), 0o600); err != nil {
				t.Fatal(err)
			}
			begin := processorTime(t)
			var r Result
			o, err := Run(context.Background(), Job{Lists: []string{list}, Out: filepath.Join(dir, "out"), Only: []Output{Workbook}, Done: func(of Result) { r = of },
				Looks: price.Options{Date: "2026-03-01", Codes: "iso", Paper: "a4", Lang: "en"}})
			if took := processorTime(t) - begin; took > 10*time.Second {
				t.Errorf("took %v", took)
			}
			if err != nil || o.Code != h.code {
				t.Fatalf("code %d, want %d: %v", o.Code, h.code, err)
			}
			said := ""
			var bug *Bug
			if errors.As(r.Err, &bug) {
				t.Fatal(bug)
			}
			if r.Err != nil {
				said = r.Err.Error()
				plainSentence(t, h.name, said)
			} else {
				for _, p := range r.Job.Problems {
					said += p.Text + "\n"
				}
				if len(r.Job.List.Joints) != 5 {
					t.Errorf("%d joints of 5", len(r.Job.List.Joints))
				}
			}
			if !strings.Contains(said, h.says) {
				t.Errorf("%q is not said: %s", h.says, said)
			}
			found, _ := filepath.Glob(filepath.Join(dir, "*"))
			for _, path := range found {
				if name := filepath.Base(path); name != "in" && name != "out" {
					t.Errorf("%s was written outside the output folder", name)
				}
			}
		})
	}
}
