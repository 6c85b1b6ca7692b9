package workbook

import (
	"bytes"
	"os"
	"testing"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// built returns the workbook of the fixture.
func built(t testing.TB, name string, data []byte, opts price.Options) []byte {
	t.Helper()
	src, job := fixtureJob(t, name, data, opts)
	return build(t, src, job, Options{US: opts.US, ValuesOnly: opts.ValuesOnly})
}

func build(t testing.TB, src *list.Source, job *price.Job, opt Options) []byte {
	t.Helper()
	book, err := Prepare(src, job, opt)
	must(t, err)
	for _, p := range book.Problems {
		t.Logf("%s: %s", p.Code, p.Text)
	}
	return bytesOf(t, book)
}

func bytesOf(t testing.TB, book *Book) []byte {
	t.Helper()
	var out bytes.Buffer
	must(t, book.Write(&out))
	return out.Bytes()
}

func TestSameInputSameBytes(t *testing.T) {
	for name, data := range map[string][]byte{"list.xlsx": fixtureXLSX(t), "list.csv": fixtureCSV()} {
		one, two := built(t, name, data, price.Options{}), built(t, name, data, price.Options{})
		if !bytes.Equal(one, two) {
			t.Errorf("%s: two builds differ", name)
		}
		if dir := os.Getenv("SEAMTALLY_LOOK"); dir != "" {
			must(t, os.WriteFile(dir+"/"+name+".worked.xlsx", one, 0o644))
		}
		ours, unchanged := Stamped(one)
		if !ours || !unchanged {
			t.Errorf("%s: stamp says ours %v, unchanged %v", name, ours, unchanged)
		}
	}
}
