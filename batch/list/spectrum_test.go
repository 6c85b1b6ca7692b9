package list

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// TestSpectrum reads the eleven files of a published set of CSV corner cases. What
// each holds stands here record by record, header first.
func TestSpectrum(t *testing.T) {
	dir := strangers(t)
	for name, want := range map[string][][]string{
		"comma_in_quotes":     {{"first", "last", "address", "city", "zip"}, {"John", "Doe", "120 any st.", "Anytown, WW", "08123"}},
		"empty":               {{"a", "b", "c"}, {"1", "", ""}, {"2", "3", "4"}},
		"empty_crlf":          {{"a", "b", "c"}, {"1", "", ""}, {"2", "3", "4"}},
		"escaped_quotes":      {{"a", "b"}, {"1", `ha "ha" ha`}, {"3", "4"}},
		"json":                {{"key", "val"}, {"1", `{"type": "Point", "coordinates": [102.0, 0.5]}`}},
		"newlines":            {{"a", "b", "c"}, {"1", "2", "3"}, {"Once upon \na time", "5", "6"}, {"7", "8", "9"}},
		"newlines_crlf":       {{"a", "b", "c"}, {"1", "2", "3"}, {"Once upon \r\na time", "5", "6"}, {"7", "8", "9"}},
		"quotes_and_newlines": {{"a", "b"}, {"1", "ha \n\"ha\" \nha"}, {"3", "4"}},
		"simple":              {{"a", "b", "c"}, {"1", "2", "3"}},
		"simple_crlf":         {{"a", "b", "c"}, {"1", "2", "3"}},
		"utf8":                {{"a", "b", "c"}, {"1", "2", "3"}, {"4", "5", "ʤ"}},
	} {
		data, err := os.ReadFile(filepath.Join(dir, "csv", "maxogden+csv-spectrum__csvs__"+name+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(name, "_crlf") && !bytes.Contains(data, []byte("\r")) {
			data = bytes.ReplaceAll(data, []byte("\n"), []byte("\r\n")) // the copy at hand has lost what the file is about
		}
		src, problems, err := Read(name, data)
		if err != nil || len(problems) > 0 {
			t.Errorf("%s: %v %v", name, err, problems)
			continue
		}
		var got [][]string
		for _, row := range src.Sheets[0].Rows {
			texts := make([]string, len(want[0]))
			for i := range texts {
				texts[i] = row.At(i + 1).Text
			}
			got = append(got, texts)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}
