package save

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const smallCSV = "mark,note\nW1,\"two\nlines, with a comma\"\nW2,\"a \"\"quoted\"\" word\"\n"

const smallPDF = "%PDF-1.3\n1 0 obj\n<<>>\nendobj\nxref\n0 1\n0000000000 65535 f \ntrailer\n<</Size 1>>\nstartxref\n30\n%%EOF\n"

func TestStampedIsOwn(t *testing.T) {
	if got := JudgeCSV(StampCSV([]byte(smallCSV))); got != Own {
		t.Errorf("CSV: %v", got)
	}
	if got := JudgeCSV(StampCSV([]byte("mark,note\n"))); got != Own {
		t.Errorf("CSV without rows: %v", got)
	}
	if got := JudgePDF(StampPDF([]byte(smallPDF))); got != Own {
		t.Errorf("PDF: %v", got)
	}
}

func TestUnstampedIsForeign(t *testing.T) {
	for _, text := range []string{"", "x", smallCSV, "stamp\n1\n", "a;stamp\n"} {
		if got := JudgeCSV([]byte(text)); got != Foreign {
			t.Errorf("CSV %q: %v", text, got)
		}
	}
	for _, text := range []string{"", "x", smallPDF, "%seamtally 0000000000000000"} {
		if got := JudgePDF([]byte(text)); got != Foreign {
			t.Errorf("PDF %q: %v", text, got)
		}
	}
}

// TestAnyChangeIsSeen changes each byte in turn.
func TestAnyChangeIsSeen(t *testing.T) {
	for name, c := range map[string]struct {
		data  []byte
		judge Judge
	}{
		"CSV": {StampCSV([]byte(smallCSV)), JudgeCSV},
		"PDF": {StampPDF([]byte(smallPDF)), JudgePDF},
	} {
		for i := range c.data {
			other := bytes.Clone(c.data)
			other[i] ^= 1
			if c.judge(other) == Own {
				t.Errorf("%s: byte %d changed from %q to %q is not seen", name, i, c.data[i], other[i])
			}
		}
		for cut := range len(c.data) {
			if short := c.data[:cut]; c.judge(short) == Own && bytes.Count(short, []byte("\n")) > 1 {
				t.Errorf("%s: cut at %d is not seen", name, cut)
			}
		}
	}
}

// TestStampCSVKeepsTheTable reads the stamped table back with the standard reader.
func TestStampCSVKeepsTheTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var rows [][]string
		for range rapid.IntRange(1, 6).Draw(t, "rows") {
			rows = append(rows, rapid.SliceOfN(rapid.StringMatching("[a\"\n, é]{0,5}"), 3, 3).Draw(t, "cells"))
		}
		var text bytes.Buffer
		if err := csv.NewWriter(&text).WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		stamped := StampCSV(text.Bytes())
		got, err := csv.NewReader(bytes.NewReader(stamped)).ReadAll()
		if err != nil || len(got) != len(rows) {
			t.Fatalf("read back %d of %d rows: %v", len(got), len(rows), err)
		}
		for i := range rows {
			if strings.Join(got[i][:3], "\x00") != strings.Join(rows[i], "\x00") || len(got[i]) != 4 {
				t.Fatalf("row %d: %q, want %q", i, got[i], rows[i])
			}
		}
		if JudgeCSV(stamped) != Own {
			t.Fatalf("not own: %q", stamped)
		}
	})
}
