package workbook

import (
	"bytes"
	"fmt"
	"regexp"
	"testing"

	"seamtally/batch/list"
	"seamtally/batch/price"
)

// TestRunningAgainDoesNotGrow runs a workbook again and again, each time on what
// the run before wrote: from the second on nothing changes, not one byte.
func TestRunningAgainDoesNotGrow(t *testing.T) {
	for _, path := range []string{"mezzanine/mezzanine.xlsx", "wash-table/wash-table.csv"} {
		t.Run(path, func(t *testing.T) {
			src, job := sampleJob(t, path, price.Options{})
			out := build(t, src, job, Options{})
			before := ""
			var second []byte
			for run := 2; run <= 6; run++ {
				again, _, err := list.Read("again.xlsx", out)
				must(t, err)
				bare, problems := Undress(again)
				if len(problems) > 0 {
					t.Fatalf("run %d: %+v", run, problems)
				}
				bare.SHA256 = src.SHA256 // the list's own hash stands on two sheets
				out = build(t, bare, understoodJob(t, bare, price.Options{}), Options{})
				sizes := styleSizes(t, out)
				t.Logf("run %d: %d bytes, %s", run, len(out), sizes)
				switch {
				case run == 2:
					second, before = out, sizes
				case sizes != before:
					t.Errorf("run %d: styles were %s, are %s", run, before, sizes)
				case !bytes.Equal(out, second):
					t.Errorf("run %d differs from run 2 in %v", run, differing(t, second, out))
				}
			}
		})
	}
}

// styleSizes counts what a stylesheet holds.
func styleSizes(t *testing.T, data []byte) (all string) {
	t.Helper()
	styles := partsOf(t, data)["xl/styles.xml"]
	for _, part := range []string{"cellXfs", "fonts", "fills", "borders", "numFmts", "dxfs"} {
		section := regexp.MustCompile(`(?s)<` + part + `[ >].*?</` + part + `>`).Find(styles)
		child := map[string]string{"cellXfs": "xf", "fonts": "font", "fills": "fill", "borders": "border", "numFmts": "numFmt", "dxfs": "dxf"}[part]
		all += fmt.Sprintf("%s %d ", part, len(regexp.MustCompile(`<`+child+`[ />]`).FindAll(section, -1)))
	}
	return all
}

// differing names the parts that two packages do not share.
func differing(t *testing.T, a, b []byte) (out []string) {
	t.Helper()
	one, other := partsOf(t, a), partsOf(t, b)
	for name, body := range one {
		if !bytes.Equal(body, other[name]) {
			out = append(out, name)
		}
	}
	for name := range other {
		if one[name] == nil {
			out = append(out, "new: "+name)
		}
	}
	return out
}
