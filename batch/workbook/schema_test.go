package workbook

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// schemaOf names the schema of a part by ISO/IEC 29500 transitional; empty where
// the schemas beside the repository have none for it.
func schemaOf(part string) string {
	for _, s := range []struct{ pattern, schema string }{
		{`^xl/(workbook|styles|sharedStrings|calcChain)\.xml$`, "sml.xsd"}, {`^xl/(worksheets|tables)/[^/]*\.xml$`, "sml.xsd"}, {`^xl/comments[^/]*\.xml$`, "sml.xsd"},
		{`^xl/charts/chart[^/]*\.xml$`, "dml-chart.xsd"}, {`^xl/drawings/drawing[^/]*\.xml$`, "dml-spreadsheetDrawing.xsd"}, {`^xl/theme/[^/]*\.xml$`, "dml-main.xsd"},
		{`^docProps/app\.xml$`, "shared-documentPropertiesExtended.xsd"}, {`\.rels$`, "opc-xsd/opc-relationships.xsd"}, {`^\[Content_Types\]\.xml$`, "opc-xsd/opc-contentTypes.xsd"},
	} {
		if regexp.MustCompile(s.pattern).MatchString(part) {
			return s.schema
		}
	}
	return ""
}

// schemaCheck holds parts of many packages, to be validated in one go: compiling
// a schema takes longer than all else.
type schemaCheck struct {
	t     *testing.T
	dir   string
	files map[string][]string // schema -> files
	count int
}

func newSchemaCheck(t *testing.T) *schemaCheck {
	t.Helper()
	need(t, "xsltproc")
	need(t, "xmllint")
	return &schemaCheck{t: t, dir: t.TempDir(), files: map[string][]string{}}
}

// add takes a part up and returns the name that it goes by; empty where it has no schema.
func (s *schemaCheck) add(part string, body []byte) string {
	s.t.Helper()
	schema := schemaOf(part)
	if schema == "" {
		return ""
	}
	s.count++
	name := filepath.Join(s.dir, fmt.Sprintf("%d-%s", s.count, path.Base(part)))
	must(s.t, os.WriteFile(name, body, 0o644))
	s.files[schema] = append(s.files[schema], name)
	return name
}

// faults validates everything and returns what each part is at fault with.
func (s *schemaCheck) faults() map[string][]string {
	s.t.Helper()
	strip, schemas := shared(s.t, "validate/mce.xsl"), shared(s.t, "validate/transitional")
	out := map[string][]string{}
	for _, schema := range slices.Sorted(maps.Keys(s.files)) {
		files := s.files[schema]
		plain := s.t.TempDir()
		// Extensions that a reader may skip are taken out, as the standard asks. A part
		// without them is used as it is.
		for _, f := range files {
			if body := read(s.t, f); !bytes.Contains(body, []byte("markup-compatibility")) && !bytes.Contains(body, []byte("//schemas.microsoft.com/")) {
				must(s.t, os.Symlink(f, filepath.Join(plain, filepath.Base(f))))
				continue
			}
			if said, err := exec.Command("xsltproc", "--nonet", "--novalid", "-o", filepath.Join(plain, filepath.Base(f)), strip, f).CombinedOutput(); err != nil {
				s.t.Errorf("%v: %s", err, said)
			}
		}
		args := []string{"--nonet", "--noout", "--schema", filepath.Join(schemas, schema)}
		for _, f := range files {
			args = append(args, filepath.Join(plain, filepath.Base(f)))
		}
		said, _ := exec.Command("xmllint", args...).CombinedOutput()
		judged := 0
		for line := range strings.Lines(string(said)) {
			line = strings.TrimSpace(line)
			if strings.HasSuffix(line, " validates") || strings.HasSuffix(line, " fails to validate") {
				judged++
			}
			name, fault, ok := strings.Cut(line, ".xml:")
			if !ok {
				name, fault, ok = strings.Cut(line, ".rels:")
			}
			if ok {
				file := filepath.Join(s.dir, filepath.Base(name)) + map[bool]string{true: ".xml", false: ".rels"}[strings.Contains(line, ".xml:")]
				out[file] = append(out[file], regexp.MustCompile(`^\d+: |\{[^}]*\}`).ReplaceAllString(strings.TrimSpace(fault), ""))
			}
		}
		if judged != len(files) {
			s.t.Errorf("%s: %d of %d parts were judged", schema, judged, len(files))
		}
	}
	return out
}

// newlyInvalidParts validates every part of the outputs that is new or differs
// from the input, and tells the faults that the input's own part has not.
func newlyInvalidParts(t *testing.T, outputs map[string]string) {
	t.Helper()
	check := newSchemaCheck(t)
	type pair struct{ output, part, now, before string }
	var pairs []pair
	for _, output := range slices.Sorted(maps.Keys(outputs)) {
		before := map[string][]byte{}
		if outputs[output] != "" {
			before = partsOf(t, read(t, outputs[output]))
		}
		after := partsOf(t, read(t, output))
		for _, part := range slices.Sorted(maps.Keys(after)) {
			if bytes.Equal(after[part], before[part]) {
				continue
			}
			if now := check.add(part, after[part]); now != "" {
				old := ""
				if body, ok := before[part]; ok {
					old = check.add(part, body)
				}
				pairs = append(pairs, pair{output, part, now, old})
			}
		}
	}
	faults, told := check.faults(), 0
	for _, p := range pairs {
		for _, fault := range faults[p.now] {
			if p.before != "" && slices.Contains(faults[p.before], fault) {
				continue
			}
			if told++; told <= 40 {
				t.Errorf("%s: %s: %.300s", filepath.Base(p.output), p.part, fault)
			}
		}
	}
	t.Logf("%d new or changed parts of %d workbooks validated, %d faults of ours", len(pairs), len(outputs), told)
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	must(t, err)
	return data
}
