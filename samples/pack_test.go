package samples

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// book is a workbook under construction. The library writes a formula without
// its result, so the results are kept here and put in when the parts are packed:
// a list that came out of a real office always carries them.
type book struct {
	*excelize.File
	t       *testing.T
	results map[string]map[string]float64 // sheet part -> cell -> result
}

func (b *book) must(err error) {
	b.t.Helper()
	if err != nil {
		b.t.Fatal(err)
	}
}

func (b *book) set(sheet, cell string, value any) {
	b.t.Helper()
	b.must(b.SetCellValue(sheet, cell, value))
}

func (b *book) formula(part int, sheet, cell, text string, result float64) {
	b.t.Helper()
	b.must(b.SetCellFormula(sheet, cell, text))
	name := fmt.Sprintf("xl/worksheets/sheet%d.xml", part)
	if b.results[name] == nil {
		b.results[name] = map[string]float64{}
	}
	b.results[name][cell] = result
}

func (b *book) style(s *excelize.Style) int {
	b.t.Helper()
	id, err := b.NewStyle(s)
	b.must(err)
	return id
}

// bytes packs the workbook the same way every time: parts in order of name,
// content types sorted, formula results filled in, no clock.
func (b *book) bytes() []byte {
	b.t.Helper()
	var raw bytes.Buffer
	b.must(b.Write(&raw))
	parts := unpack(b.t, raw.Bytes())
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, name := range sortedKeys(parts) {
		part := parts[name]
		if name == "[Content_Types].xml" {
			part = sortTypes(part)
		}
		for cell, result := range b.results[name] {
			part = fillResult(b.t, part, cell, result)
		}
		f, err := w.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate})
		b.must(err)
		_, err = f.Write(part)
		b.must(err)
	}
	b.must(w.Close())
	return out.Bytes()
}

func fillResult(t *testing.T, part []byte, cell string, result float64) []byte {
	t.Helper()
	find := regexp.MustCompile(`(<c r="` + cell + `"[^>]*><f>[^<]*</f>)(</c>)`)
	value := strconv.FormatFloat(result, 'g', -1, 64)
	filled := find.ReplaceAll(part, []byte("${1}<v>"+value+"</v>${2}"))
	if bytes.Equal(filled, part) {
		t.Fatalf("formula cell %s was not found in the sheet", cell)
	}
	return filled
}

func sortTypes(part []byte) []byte {
	find := regexp.MustCompile(`<(Default|Override) [^>]*?(/>|></(Default|Override)>)`)
	entries := find.FindAllString(string(part), -1)
	sort.Strings(entries)
	rest := find.ReplaceAllString(string(part), "")
	return []byte(strings.Replace(rest, "</Types>", strings.Join(entries, "")+"</Types>", 1))
}

func unpack(t *testing.T, data []byte) map[string][]byte {
	t.Helper()
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	parts := map[string][]byte{}
	for _, f := range r.File {
		part, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if parts[f.Name], err = io.ReadAll(part); err != nil {
			t.Fatal(err)
		}
		part.Close()
	}
	return parts
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
