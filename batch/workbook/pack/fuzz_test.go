package pack

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"sync"
	"testing"

	"github.com/xuri/excelize/v2"
)

// around is a small workbook around a sheet's XML.
func around(t testing.TB, sheet string) []byte {
	t.Helper()
	var out bytes.Buffer
	empty := emptyBook()
	zr, err := zip.NewReader(bytes.NewReader(empty), int64(len(empty)))
	if err != nil {
		t.Fatal(err)
	}
	zw := zip.NewWriter(&out)
	for _, part := range zr.File {
		w, err := zw.Create(part.Name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := part.Open()
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(part.Name, "sheet1.xml") {
			body = []byte(sheet)
		}
		if _, err := w.Write(body); err != nil {
			t.Fatal(err)
		}
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// emptyBook is a workbook with one empty sheet; ourBook is a donor. Each is made once.
var (
	emptyBook = sync.OnceValue(func() []byte { return bookNamed("Sheet1") })
	ourBook   = sync.OnceValue(func() []byte { return bookNamed("Ours") })
)

func bookNamed(sheet string) []byte {
	f := excelize.NewFile()
	defer f.Close()
	var out bytes.Buffer
	if err := errors.Join(f.SetSheetName("Sheet1", sheet), f.Write(&out)); err != nil {
		panic(err)
	}
	return out.Bytes()
}

const ns = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`

// shapes are sheets as real programs write them, tidy and not.
var shapes = []string{
	`<worksheet ` + ns + `><dimension ref="A1"/><sheetData><row r="1" spans="1:2"><c r="A1"><v>1</v></c><c r="B1" t="inlineStr"><is><t>x</t></is></c></row><row r="2"/></sheetData></worksheet>`,
	`<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row><x:c><x:v>1</x:v></x:c></x:row><x:row></x:row></x:sheetData></x:worksheet>`,
	`<worksheet ` + ns + `><sheetPr/><sheetViews><sheetView workbookViewId="0"/></sheetViews><sheetFormatPr defaultRowHeight="15"/><cols><col min="1" max="16384" width="9"/></cols><sheetData><row r='2'><c r='A2'/></row><row r="1"><c r="A1"><v>2</v></c></row></sheetData><mergeCells count="1"><mergeCell ref="A1:C1"/></mergeCells><pageMargins left="1" right="1" top="1" bottom="1" header="0" footer="0"/></worksheet>`,
	"<?xml version=\"1.0\"?>\n<!-- c --><worksheet\n" + ns + `><sheetData><row r="1"><c r="A1" t="str"><f>"&gt;"</f><v><![CDATA[</row>]]></v></c><!-- </row> --></row>` + "\n</sheetData></worksheet>",
}

// annotated puts one cell of ours into every row.
func annotated(t testing.TB, sheet string) ([]byte, error) {
	t.Helper()
	u, err := OpenUser(around(t, sheet))
	if err != nil {
		return nil, err
	}
	leaf, err := u.Leaf("Sheet1")
	if err != nil {
		return nil, err
	}
	first := leaf.Shape().LastCol + 2
	a := Annotation{Leaf: leaf, First: first, Columns: []Column{{Width: 9, Level: 1}}, Header: 1, FreezeRows: 1,
		Draw: func(p *Pen, row int) { p.Text(ColumnName(first), 0, nil, "ours") }}
	sheets := []Sheet{{Name: "Ours", Size: "A1", Draw: func(*Pen) {}}}
	write, err := Annotate(u, []*Annotation{&a}, ourBook(), sheets, nil)
	if err != nil {
		return nil, err
	}
	return write.Bytes()
}

func sheetOf(t testing.TB, data []byte) []byte {
	t.Helper()
	u, err := OpenUser(data)
	if err != nil {
		t.Fatal(err)
	}
	leaf, err := u.Leaf("Sheet1")
	if err != nil {
		t.Fatal(err)
	}
	body, err := readSome(leaf.file, maxSmall)
	if err != nil {
		t.Fatal(err)
	}
	return body
}

func TestShapesOfSheets(t *testing.T) {
	for i, shape := range shapes {
		out, err := annotated(t, shape)
		if err != nil {
			t.Errorf("shape %d: %v", i, err)
			continue
		}
		body := sheetOf(t, out)
		if err := check(body); err != nil {
			t.Errorf("shape %d: %v\n%s", i, err, body)
		}
		if n := bytes.Count(body, []byte("ours")); n != strings.Count(shape, "<row")+strings.Count(shape, "<x:row")-strings.Count(shape, "<!-- <row") {
			t.Errorf("shape %d: %d cells of ours in\n%s", i, n, body)
		}
		if !bytes.Contains(body, []byte(`summaryRight="0"`)) || !bytes.Contains(body, []byte(`fitToPage="1"`)) {
			t.Errorf("shape %d: no fold or no page set-up in\n%s", i, body)
		}
	}
}

func check(body []byte) error {
	dec := xml.NewDecoder(bytes.NewReader(body))
	for {
		if _, err := dec.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// FuzzSheet annotates any sheet XML: it is refused as strange, or what comes out
// is as well formed as what went in.
func FuzzSheet(f *testing.F) {
	for _, shape := range shapes {
		f.Add(shape)
	}
	f.Fuzz(func(t *testing.T, sheet string) {
		out, err := annotated(t, sheet)
		var odd *Strange
		if err != nil {
			if !errors.As(err, &odd) {
				t.Fatalf("not said to be strange: %v", err)
			}
			return
		}
		if check([]byte(sheet)) == nil {
			if err := check(sheetOf(t, out)); err != nil {
				t.Fatalf("broken: %v", err)
			}
		}
	})
}
