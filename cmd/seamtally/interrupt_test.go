//go:build unix

package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"seamtally/batch"
	"seamtally/batch/save"
	"seamtally/batch/workbook"
)

// tool returns the command line tool, played by the test program itself.
func tool(dir string, args ...string) (*exec.Cmd, *bytes.Buffer) {
	var said bytes.Buffer
	cmd := &exec.Cmd{Path: os.Args[0], Args: append([]string{"seamtally"}, args...), Dir: dir, Stderr: &said}
	return cmd, &said
}

// TestInterruptedWhileReading interrupts a run that waits for its list.
func TestInterruptedWhileReading(t *testing.T) {
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		dir := t.TempDir()
		cmd, said := tool(dir, "run", "-")
		stdin, err := cmd.StdinPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		// More than a pipe holds: once it is written, the tool is up and reading.
		if _, err := io.WriteString(stdin, "Mark,Length\n"+strings.Repeat("x", 1<<18)); err != nil {
			t.Fatal(err)
		}
		start := time.Now()
		_ = cmd.Process.Signal(signal)
		_ = cmd.Wait()
		if took := time.Since(start); took > 3*time.Second {
			t.Errorf("%v: ended after %v", signal, took)
		}
		if code := cmd.ProcessState.ExitCode(); code != batch.Interrupted || !strings.Contains(said.String(), "interrupted") {
			t.Errorf("%v: exit code %d, said %q", signal, code, said)
		}
		if names := namesIn(t, dir); len(names) > 0 {
			t.Errorf("%v: left %v", signal, names)
		}
	}
}

// TestStoppedAtAnyMoment interrupts, and then kills, a run over old outputs at
// moments spread over its whole time: each output is whole, old or new, and the
// next run finds nothing in its way.
func TestStoppedAtAnyMoment(t *testing.T) {
	list, err := os.ReadFile("../../samples/wash-table/wash-table.csv")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "m.csv"), list, 0o644); err != nil {
		t.Fatal(err)
	}
	began := time.Now()
	if cmd, said := tool(dir, "run", "m.csv", "--date", "2026-01-01"); cmd.Run() != nil {
		t.Fatalf("first run: %s", said)
	}
	whole := time.Since(began)
	moments := 10 // SEAMTALLY_MOMENTS asks for more
	if n, err := strconv.Atoi(os.Getenv("SEAMTALLY_MOMENTS")); err == nil {
		moments = max(n, 2)
	}
	for _, signal := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGKILL} {
		for i := range moments {
			cmd, said := tool(dir, "run", "m.csv", "--date", "2026-02-02")
			if err := cmd.Start(); err != nil {
				t.Fatal(err)
			}
			time.Sleep(whole * time.Duration(i) / time.Duration(moments-1))
			sent := time.Now()
			_ = cmd.Process.Signal(signal)
			_ = cmd.Wait()
			if took := time.Since(sent); took > 2*time.Second+whole {
				t.Errorf("%v at moment %d: ended after %v", signal, i, took)
			}
			if code := cmd.ProcessState.ExitCode(); signal != syscall.SIGKILL && code != 0 && code != batch.Interrupted && code != -1 {
				t.Errorf("%v at moment %d: exit code %d, %s", signal, i, code, said)
			}
			wholeOutputs(t, dir, list)
			if names := namesIn(t, dir); signal != syscall.SIGKILL && len(names) != 4 {
				t.Errorf("%v at moment %d leaves %v", signal, i, names)
			}
		}
	}
	if cmd, said := tool(dir, "run", "m.csv", "--quiet"); cmd.Run() != nil {
		t.Errorf("the run after: %s", said)
	}
	if names := namesIn(t, dir); len(names) != 4 {
		t.Errorf("the run after leaves %v", names)
	}
}

// wholeOutputs wants every output to carry its own valid stamp, and the list untouched.
func wholeOutputs(t *testing.T, dir string, list []byte) {
	t.Helper()
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Error(err)
		}
		return data
	}
	if _, unchanged := workbook.Stamped(read("m-worked.xlsx")); !unchanged {
		t.Error("the workbook is torn")
	}
	if save.JudgeCSV(read("m-joints.csv")) != save.Own {
		t.Error("the results file is torn")
	}
	if save.JudgePDF(read("m-traveller.pdf")) != save.Own {
		t.Error("the traveller is torn")
	}
	if !bytes.Equal(read("m.csv"), list) {
		t.Error("the list was changed")
	}
}

func namesIn(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// A run that is interrupted before it begins its list says so like any other.
func TestInterruptedBeforeTheListIsSaid(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, said strings.Builder
	p := program{in: strings.NewReader("Mark,Length,Leg\nW,1,1\n"), out: &out, err: &said, now: time.Now}
	if code := p.run(ctx, []string{"seamtally", "run", "-", "--dry-run"}); code != batch.Interrupted || strings.Count(said.String(), "interrupted") != 1 {
		t.Errorf("exit code %d, said %q", code, said.String())
	}
}
