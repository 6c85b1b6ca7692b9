package list

import (
	"encoding/csv"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// strangers returns the folder with other projects' files. Tests that need it
// skip where it is absent, and fail instead if everything is called for.
func strangers(t *testing.T) string {
	t.Helper()
	dir := filepath.Join("..", "..", "..", "shared", "strangers")
	if _, err := os.Stat(dir); err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatal("the folder with strangers' files is needed and absent")
		}
		t.Skip("the folder with strangers' files is absent")
	}
	return dir
}

// readTSV returns the rows of a tab-separated file after its header.
func readTSV(t *testing.T, path string) [][]string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(strings.NewReader(string(data)))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = '\t', -1, true
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// plainWords fails if an error text is more than a line or speaks of libraries.
func plainWords(t *testing.T, err error) {
	t.Helper()
	var r *Refusal
	if !errors.As(err, &r) {
		t.Fatalf("the error is a %T, not a refusal: %v", err, err)
	}
	for _, word := range []string{"EOF", "XML syntax", "goroutine", "zip:", "flate", "nil pointer", "fault in this tool", "\n", "strconv"} {
		if strings.Contains(err.Error(), word) {
			t.Errorf("the error speaks of %q: %s", word, err)
		}
	}
}

// answers are the files whose right answer differs from that of their class, and
// why; a change in either direction fails.
var answers = map[string]struct {
	refused bool
	why     string
}{
	"openspout+openspout__tests__resources__xlsx__file_with_sheet_xml_not_matching_content_types.xlsx":               {true, "its only sheet's part is not in the package"},
	"exceljs+exceljs__spec__integration__data__invalid-xml.xlsx":                                                     {true, "the sheet is not well-formed: text before the root element"},
	"ML-SDK__test__DocumentFormat.OpenXml.Tests.Assets__assets__TestDataStorage__O14ISOStrict__Excel__xl8galry.xlsx": {true, "it holds chart sheets only"},
	"openspout+openspout__tests__resources__xlsx__file_corrupted.xlsx":                                               {false, "it is a comma separated text under another name, and read as that"},
	"frictionlessdata+goodtables-py__data__hmt__invalid_excel.xlsx":                                                  {false, "it is a comma separated text under another name, and read as that"},
}

func TestStrangersWorkbooks(t *testing.T) {
	dir := strangers(t)
	for _, row := range readTSV(t, filepath.Join(dir, "EXPECT.tsv")) {
		name, class := row[0], row[1]
		t.Run(name, func(t *testing.T) {
			data, err := os.ReadFile(filepath.Join(dir, "xlsx", name))
			if err != nil {
				t.Skip(err)
			}
			start := time.Now()
			src, _, err := Read(name, data)
			if took := time.Since(start); took > 10*time.Second {
				t.Errorf("reading took %s", took)
			}
			if err != nil {
				plainWords(t, err)
				t.Log(err)
			}
			if own, ok := answers[name]; ok {
				if (err != nil) != own.refused {
					t.Errorf("refused: %v, should be %v: %s", err, own.refused, own.why)
				}
				return
			}
			switch class {
			case "readable", "strict-ooxml":
				if err != nil {
					t.Errorf("%s: refused: %v", class, err)
				} else if len(src.Sheets) == 0 {
					t.Error("no sheet")
				}
			case "damaged-package": // some are whole to a reader of both UTF-16 and UTF-8
			default:
				if err == nil {
					t.Errorf("%s: read without an error", class)
				}
			}
		})
	}
}

func TestStrangersCSV(t *testing.T) {
	dir := strangers(t)
	for _, row := range readTSV(t, filepath.Join(dir, "CSV.tsv")) {
		t.Run(row[0], func(t *testing.T) {
			data, err := os.ReadFile(filepath.Join(dir, "csv", row[0]))
			if err != nil {
				t.Skip(err)
			}
			src, problems, err := Read(row[0], data)
			if err != nil {
				plainWords(t, err)
				t.Log(err)
				return
			}
			t.Logf("%s, delimiter %q (they say %s %s %s), %d rows, %d problems", src.Encoding, src.Delimiter, row[1], row[2], row[3], len(src.Sheets[0].Rows), len(problems))
		})
	}
}

func TestMadeWorkbooks(t *testing.T) {
	dir := strangers(t)
	files, _ := filepath.Glob(filepath.Join(dir, "made", "*.xlsx"))
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			start := time.Now()
			src, _, err := Read(path, data)
			t.Logf("took %s", time.Since(start))
			if time.Since(start) > 5*time.Second {
				t.Error("too slow")
			}
			if err != nil {
				plainWords(t, err)
				t.Log(err)
				return
			}
			for _, s := range src.Sheets {
				t.Logf("sheet %q: %d rows", s.Name, len(s.Rows))
			}
		})
	}
}

// TestSecondReaderCountsTheSameCells compares, sheet by sheet, how many cells of the
// strangers' workbooks are not empty with what another reader counts. Every sheet
// that differs is named in differing with the reason.
func TestSecondReaderCountsTheSameCells(t *testing.T) {
	files, _ := filepath.Glob(filepath.Join(strangers(t), "xlsx", "*"))
	ours, read := map[string]int{}, []string{"testdata/count_cells.py"}
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		src, _, err := Read(path, data)
		if err != nil || src.Format == CSV {
			continue
		}
		read = append(read, path)
		for _, s := range src.Sheets {
			ours[path+"\t"+strings.ReplaceAll(s.Name, "\n", " ")] = filled(s)
		}
	}
	cmd := exec.Command("/usr/bin/python3", read...)
	said, err := cmd.Output()
	if err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") != "" {
			t.Fatal(err)
		}
		t.Skip("python3-openpyxl is not installed")
	}
	same, other := 0, 0
	for line := range strings.Lines(string(said)) {
		line = strings.TrimSuffix(line, "\n")
		at := strings.LastIndexByte(line, '\t')
		name := filepath.Base(line[:strings.IndexByte(line, '\t')])
		n, known := ours[line[:at]]
		theirs, _ := strconv.Atoi(line[at+1:])
		if why := differing[name]; known && n == theirs {
			same++
			if why != "" {
				t.Errorf("%s is the same now, and was not: %s", name, why)
			}
		} else if other++; why == "" {
			t.Errorf("%s: %d cells here (known %v), %d there", name, n, known, theirs)
		}
	}
	t.Logf("%d sheets of %d files: the same in %d, other in %d", same+other, len(read)-1, same, other)
	if same < 100 {
		t.Error("hardly any sheet was compared")
	}
}

// differing names the sheets in which this reader and the other count otherwise, and why.
var differing = map[string]string{
	".Assets__assets__TestDataStorage__v2FxTestFiles__spreadsheet__O12_templates__WeeklyMealPlanner_TP10193251.xltx": "A3 holds one blank, which is nothing here",
}

// filled counts the cells of a sheet that are not empty.
func filled(s Sheet) int {
	n := 0
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			if c.Kind != Blank {
				n++
			}
		}
	}
	return n
}
