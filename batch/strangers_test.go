package batch

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/price"
)

// TestStrangers gives every file of the strangers' collection to the whole tool and
// compares what becomes of it with testdata/strangers.tsv, one line a file: how it
// is read, the exit code and the sentence. A file that does better than expected
// fails like one that does worse. UPDATE_STRANGERS=1 writes the expectations anew.
func TestStrangers(t *testing.T) {
	dir := strangersDir(t)
	files, err := filepath.Glob(filepath.Join(dir, "*", "*.*"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no files in %s: %v", dir, err)
	}
	want := expectations(t)
	got := fates(t, files)
	if os.Getenv("UPDATE_STRANGERS") != "" {
		var b strings.Builder
		b.WriteString("file\tread as\texit\tsaid\n")
		for _, name := range slices.Sorted(maps.Keys(got)) {
			b.WriteString(name + "\t" + got[name] + "\n")
		}
		if err := os.WriteFile(expectFile, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		want = got
	}
	for name, fate := range got {
		if want[name] != fate {
			t.Errorf("%s:\n is   %s\n want %s", name, fate, want[name])
		}
	}
	for name := range want {
		if _, ok := got[name]; !ok {
			t.Errorf("%s is expected and not at hand", name)
		}
	}
	t.Logf("%d files, each as expected", len(got))
}

const expectFile = "testdata/strangers.tsv"

func strangersDir(t *testing.T) string {
	t.Helper()
	dir := filepath.Join("..", "..", "shared", "strangers")
	if _, err := os.Stat(dir); err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatal("the folder with strangers' files is needed and absent")
		}
		t.Skip("the folder with strangers' files is absent")
	}
	return dir
}

func expectations(t *testing.T) map[string]string {
	t.Helper()
	data, err := os.ReadFile(expectFile)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	for i, line := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n") {
		if name, rest, ok := strings.Cut(line, "\t"); ok && i > 0 {
			want[name] = rest
		}
	}
	return want
}

// fates works every file with all outputs and says what became of each. What holds
// for all alike is checked here: no fault of ours, a sentence on one line in plain
// words, the file as it was, no output of a refused list, never twenty seconds for
// one, and never a gigabyte for all of them together.
func fates(t *testing.T, files []string) map[string]string {
	t.Helper()
	before := map[string][]byte{}
	groups := map[string][]string{} // files of one name but for folder or ending would write one output
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		before[path] = data
		groups[filepath.Dir(path)+filepath.Ext(path)] = append(groups[filepath.Dir(path)+filepath.Ext(path)], path)
	}
	resetPeak()
	got := map[string]string{}
	for _, paths := range groups {
		out, last := filepath.Join(t.TempDir(), "out"), time.Now()
		job := Job{Lists: paths, Out: out, Looks: price.Options{Date: "2026-03-01", Codes: "iso", Paper: "a4", Lang: "en"}}
		job.Done = func(r Result) {
			if took := time.Since(last); took > 20*time.Second {
				t.Errorf("%s took %v", r.List, took)
			}
			last = time.Now()
			got[filepath.Base(filepath.Dir(r.List))+"/"+filepath.Base(r.List)] = fate(t, r, before[r.List])
		}
		if _, err := Run(context.Background(), job); err != nil {
			t.Fatal(err)
		}
		if left, _ := filepath.Glob(filepath.Join(out, "*-*.*")); len(left) > 1 { // the summary of several lists
			t.Errorf("refused lists left %v", left)
		}
	}
	if kb := peakKB(); kb > 1<<20 {
		t.Errorf("all of them took %d MB", kb>>10)
	} else {
		t.Logf("%d files took %d MB at most", len(got), kb>>10)
	}
	return got
}

func fate(t *testing.T, r Result, before []byte) string {
	t.Helper()
	name := filepath.Base(r.List)
	if after, err := os.ReadFile(r.List); err != nil || !bytes.Equal(after, before) {
		t.Errorf("%s was changed", name)
	}
	if r.Err == nil {
		return fmt.Sprintf("%s\t%d\t%d outputs", readAs(name, before), r.Code, len(r.Written))
	}
	said := strings.TrimPrefix(r.Err.Error(), r.List+": ")
	plainSentence(t, name, said)
	said, _, _ = strings.Cut(said, "; ")
	return fmt.Sprintf("%s\t%d\t%s", readAs(name, before), r.Code, strings.ReplaceAll(said, "\t", " "))
}

// plainSentence fails if a refusal is more than a line, speaks of libraries or
// gives no advice.
func plainSentence(t *testing.T, name, said string) {
	t.Helper()
	for _, word := range []string{"EOF", "XML syntax", "goroutine", "zip:", "flate", "nil pointer", "fault", "strconv", "runtime", "invalid character", "panic"} {
		if strings.Contains(said, word) {
			t.Errorf("%s: the sentence speaks of %q: %s", name, word, said)
		}
	}
	if strings.ContainsAny(said, "\n\r\x1b") || !strings.Contains(said, "; ") {
		t.Errorf("%s: not one line with advice: %q", name, said)
	}
}

// readAs says how the bytes were read: format, encoding and delimiter, sheets with
// their rows, and the codes of what was told.
func readAs(name string, data []byte) string {
	src, problems, err := list.Read(name, data)
	if err != nil {
		var r *list.Refusal
		if !errors.As(err, &r) {
			return "an error that is no refusal"
		}
		return "not read"
	}
	text := string(src.Format)
	if src.Format == list.CSV {
		text += " " + src.Encoding + " " + strconv.QuoteRune(src.Delimiter)
	}
	var rows []string
	for i, s := range src.Sheets {
		if i == 6 {
			rows = append(rows, fmt.Sprintf("... %d sheets", len(src.Sheets)))
			break
		}
		cells := 0
		for _, r := range s.Rows {
			cells += len(r.Cells)
		}
		rows = append(rows, fmt.Sprintf("%dx%d", len(s.Rows), cells))
	}
	told := map[string]int{}
	for _, p := range problems {
		if p.Level != finding.Note {
			told[p.Code]++
		}
	}
	for _, code := range slices.Sorted(maps.Keys(told)) {
		rows = append(rows, fmt.Sprintf("%s %d", code, told[code]))
	}
	return text + " " + strings.Join(rows, ", ")
}

// resetPeak and peakKB use what Linux counts of this process; elsewhere nothing is
// counted and nothing can be too much.
func resetPeak() { _ = os.WriteFile("/proc/self/clear_refs", []byte("5"), 0) }

func peakKB() int {
	data, _ := os.ReadFile("/proc/self/status")
	_, rest, _ := strings.Cut(string(data), "VmHWM:")
	fields := strings.Fields(rest)
	if len(fields) == 0 {
		return 0
	}
	kb, _ := strconv.Atoi(fields[0])
	return kb
}
