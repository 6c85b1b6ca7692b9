package main

import (
	"bytes"
	"encoding/csv"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"seamtally": main})
}

// TestScripts runs testdata/script: each promise to the user is one short file
// with the lists, the commands and what must come out. Set UPDATE_SCRIPTS=1 to
// write new golden texts, then read the difference.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: os.Getenv("UPDATE_SCRIPTS") != "",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"code": code, "jsonlines": jsonLines, "rows": rows, "hexfile": hexFile, "begins": begins, "append": appendTo, "workbook": makeWorkbook,
			"cellof": cellOf, "rate": changeRate, "sameprices": samePrices,
		},
	})
}

// code runs a command and wants one exit code: "code 3 seamtally run x.csv".
func code(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	if neg || err != nil {
		ts.Fatalf("usage: code N command")
	}
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	if exit, ok := err.(interface{ ExitCode() int }); ok {
		got = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// jsonLines wants a file with N JSON documents, one a line.
func jsonLines(ts *testscript.TestScript, neg bool, args []string) {
	lines := strings.Split(strings.TrimSuffix(ts.ReadFile(args[0]), "\n"), "\n")
	if fmt.Sprint(len(lines)) != args[1] {
		ts.Fatalf("%d lines, want %s", len(lines), args[1])
	}
	for i, line := range lines {
		if !json.Valid([]byte(line)) {
			ts.Fatalf("line %d is no JSON: %s", i+1, line)
		}
	}
}

// rows wants a CSV file with N rows under its header.
func rows(ts *testscript.TestScript, neg bool, args []string) {
	records, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(ts.ReadFile(args[0]), "\ufeff"))).ReadAll()
	if err != nil || fmt.Sprint(len(records)-1) != args[1] {
		ts.Fatalf("%d records with the header, want %s rows under it; %v", len(records), args[1], err)
	}
}

// hexFile writes a file from hexadecimal digits, repeated N times.
func hexFile(ts *testscript.TestScript, neg bool, args []string) {
	data, err := hex.DecodeString(args[1])
	ts.Check(err)
	times := 1
	if len(args) > 2 {
		times, err = strconv.Atoi(args[2])
		ts.Check(err)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), bytes.Repeat(data, times), 0o644))
}

// begins wants a file to begin with a text.
func begins(ts *testscript.TestScript, neg bool, args []string) {
	if strings.HasPrefix(ts.ReadFile(args[0]), args[1]) == neg {
		ts.Fatalf("%s begins otherwise", args[0])
	}
}

// appendTo adds the content of a file to another.
func appendTo(ts *testscript.TestScript, neg bool, args []string) {
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(ts.ReadFile(args[0])+ts.ReadFile(args[1])), 0o644))
}
