package batch

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"math/rand"
	"os"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"
	"time"

	"seamtally/batch/price"
)

// TestMutants runs damaged workbooks: of a sample, one part is changed at random
// places and the package put together anew. None may make the tool fail by a fault
// of its own or keep a processor longer than ten seconds. SEAMTALLY_MUTANTS says how many,
// SEAMTALLY_SEED where to begin.
func TestMutants(t *testing.T) {
	n := 60
	if v, err := strconv.Atoi(os.Getenv("SEAMTALLY_MUTANTS")); err == nil {
		n = v
	}
	bases := mutantBases(t)
	dir := t.TempDir()
	codes := map[int]int{}
	first, _ := strconv.Atoi(os.Getenv("SEAMTALLY_SEED"))
	for seed := first; seed < first+n; seed++ {
		r := rand.New(rand.NewSource(int64(seed)))
		list := filepath.Join(dir, "mutant.xlsx")
		if err := os.WriteFile(list, mutate(t, bases[r.Intn(len(bases))], r), 0o600); err != nil {
			t.Fatal(err)
		}
		begin := processorTime(t)
		o, err := Run(context.Background(), Job{Lists: []string{list}, Out: filepath.Join(dir, "out"), Force: true, Only: []Output{Workbook},
			Looks: price.Options{Date: "2026-03-01", Codes: "iso", Paper: "a4", Lang: "en"}})
		for _, l := range o.Lists {
			var bug *Bug
			if errors.As(l.Err, &bug) {
				t.Errorf("seed %d: %v", seed, bug)
			}
		}
		if took := processorTime(t) - begin; took > 10*time.Second {
			t.Errorf("seed %d took %v", seed, took)
		}
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		codes[o.Code]++
	}
	t.Logf("%d mutants, by exit code: %v", n, codes)
}

// processorTime is what this program has used of the processors, which other work
// on the machine does not lengthen.
func processorTime(t *testing.T) time.Duration {
	t.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		t.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// mutantBases are the workbooks that are damaged: the samples and, where they are
// at hand, some strangers'.
func mutantBases(t *testing.T) [][]byte {
	t.Helper()
	paths, _ := filepath.Glob("../samples/*/*.xlsx")
	strangers, _ := filepath.Glob("../../shared/strangers/xlsx/*.xlsx")
	for i, p := range strangers {
		if info, err := os.Stat(p); err == nil && info.Size() < 60_000 && i%7 == 0 {
			paths = append(paths, p)
		}
	}
	var out [][]byte
	for _, p := range paths {
		data, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := zip.NewReader(bytes.NewReader(data), int64(len(data))); err == nil {
			out = append(out, data)
		}
	}
	if len(out) == 0 {
		t.Fatal("no workbook to damage")
	}
	for range len(out) { // half of all are the sample, which is worked and annotated
		out = append(out, out[0])
	}
	return out
}

// mutate changes one part of a package.
func mutate(t *testing.T, base []byte, r *rand.Rand) []byte {
	t.Helper()
	in, err := zip.NewReader(bytes.NewReader(base), int64(len(base)))
	if err != nil || len(in.File) == 0 {
		return base
	}
	victim := r.Intn(len(in.File))
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for i, f := range in.File {
		from, err := f.Open()
		if err != nil {
			continue
		}
		data, err := io.ReadAll(from)
		from.Close()
		if err != nil {
			continue
		}
		if i == victim {
			data = damage(data, r)
		}
		to, err := w.Create(f.Name)
		if err != nil {
			continue
		}
		_, _ = to.Write(data)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// damage changes bytes, cuts, doubles or swaps pieces, or puts numbers nobody
// would write.
func damage(data []byte, r *rand.Rand) []byte {
	out := bytes.Clone(data)
	odd := []string{"1e308", "-1", "99999999999999999999", "NaN", "", "\x00", "<", "&lol;", "A1:XFD1048577", "'", `"`, "999999"}
	for range 1 + r.Intn(6) {
		if len(out) < 4 {
			return out
		}
		at := r.Intn(len(out) - 2)
		to := min(len(out), at+1+r.Intn(40))
		switch r.Intn(6) {
		case 0:
			out[at] = byte(r.Intn(256))
		case 1:
			out = append(out[:at:at], out[to:]...)
		case 2:
			out = append(out[:to:to], out[at:]...)
		case 3:
			out = append(out[:at:at], append([]byte(odd[r.Intn(len(odd))]), out[at:]...)...)
		case 4: // a figure becomes an odd one
			if i := bytes.IndexAny(out[at:], "0123456789"); i >= 0 {
				out = append(out[:at+i:at+i], append([]byte(odd[r.Intn(len(odd))]), out[at+i+1:]...)...)
			}
		default:
			out = out[:at]
		}
	}
	return out
}
