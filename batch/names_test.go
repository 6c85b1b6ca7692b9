package batch

import (
	"archive/zip"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestNames(t *testing.T) {
	job, dir := jobIn(t, map[string]string{"frame.csv": goodList, "frame.v2.csv": goodList})
	macros := filepath.Join(dir, "macros.xlsm")
	zipped(t, macros, `<Types><Override ContentType="application/vnd.ms-excel.sheet.macroEnabled.main+xml"/></Types>`)
	renamed := filepath.Join(dir, "renamed.xlsx")
	zipped(t, renamed, `<Types><Override ContentType="application/vnd.ms-excel.sheet.macroEnabled.main+xml"/></Types>`)
	tests := []struct{ list, out, want string }{
		{filepath.Join(dir, "frame.csv"), "", dir + "/frame-worked.xlsx"},
		{filepath.Join(dir, "frame.csv"), dir + "/x", dir + "/x/frame-worked.xlsx"},
		{filepath.Join(dir, "frame.v2.csv"), "", dir + "/frame.v2-worked.xlsx"},
		{macros, "", dir + "/macros-worked.xlsm"},
		{renamed, "", dir + "/renamed-worked.xlsm"},
		{"-", "", "list-worked.xlsx"},
		{"-", dir, dir + "/list-worked.xlsx"},
	}
	for _, tt := range tests {
		job.Lists, job.Out = []string{tt.list}, tt.out
		places, err := job.places()
		if err != nil {
			t.Fatal(err)
		}
		if got := filepath.ToSlash(filepath.Join(places[0].folder.Dir, places[0].names[Workbook])); got != filepath.ToSlash(tt.want) {
			t.Errorf("%s with -o %q: %s, want %s", tt.list, tt.out, got, tt.want)
		}
	}
}

func zipped(t *testing.T, path, types string) {
	t.Helper()
	file, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	w := zip.NewWriter(file)
	part, err := w.Create("[Content_Types].xml")
	if err == nil {
		_, err = part.Write([]byte(types))
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
}

func TestClashes(t *testing.T) {
	job, dir := jobIn(t, nil)
	link := filepath.Join(dir, "link")
	real := filepath.Join(dir, "real")
	if err := os.Mkdir(real, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		a, b, out string
		only      []Output
		clash     bool
	}{
		{"frame.csv", "frame.xlsx", "", nil, true},
		{"frame.csv", "FRAME.xlsx", "", nil, true},
		{"a/frame.csv", "b/frame.csv", "", nil, false},
		{"a/frame.csv", "b/frame.csv", "out", nil, true},
		{"frame.csv", "./frame.csv", "", nil, true},
		{real + "/frame.csv", link + "/frame.csv", "", nil, true},
		{"frame.csv", "stair.csv", "", nil, false},
		{"frame.csv", "frame.xlsx", "", []Output{Traveller}, true},
		{"-", "list.csv", "", nil, true},
	}
	for _, tt := range tests {
		job.Lists, job.Out, job.Only = []string{tt.a, tt.b}, tt.out, tt.only
		_, err := job.places()
		if clash := err != nil; clash != tt.clash || clash && (CodeOf(err) != WrongUsage || !strings.Contains(err.Error(), "both write")) {
			t.Errorf("%s and %s into %q: %v", tt.a, tt.b, tt.out, err)
		}
	}
}
