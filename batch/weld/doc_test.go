package weld

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"strings"
	"testing"
)

// A formula is an exported function or method that can fail: it takes physical
// values and gives one.
func formulas(t *testing.T) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Name.IsExported() && canFail(f) {
				out[receiver(f)+f.Name.Name] = f.Doc.Text()
			}
		}
	}
	return out
}

func canFail(f *ast.FuncDecl) bool {
	if f.Type.Results == nil {
		return false
	}
	last := f.Type.Results.List[len(f.Type.Results.List)-1]
	id, ok := last.Type.(*ast.Ident)
	return ok && id.Name == "error" && f.Name.Name != "Unwrap"
}

func receiver(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	if id, ok := f.Recv.List[0].Type.(*ast.Ident); ok {
		return id.Name + "."
	}
	return ""
}

var formulaID = regexp.MustCompile(`\(([A-Z]+-\d+)\)`)

func TestEveryFormulaSaysWhatItNeeds(t *testing.T) {
	for name, doc := range formulas(t) {
		for _, section := range []string{"Symbols:", "Valid:", "Assumes:", "Source:", "Basis:", "Accuracy:", "Errors:"} {
			if !strings.Contains(doc, "\n"+section) {
				t.Errorf("%s has no section %s", name, section)
			}
		}
		if !formulaID.MatchString(doc) && !strings.Contains(doc, "STITCH-1") {
			t.Errorf("%s names no formula", name)
		}
		short := name[strings.LastIndex(name, ".")+1:]
		if !strings.HasPrefix(doc, short+" returns ") {
			t.Errorf("%s does not begin with what it returns", name)
		}
		basis := regexp.MustCompile(`(?m)^Basis: (published|derived|memory|common-practice)`)
		if !basis.MatchString(doc) {
			t.Errorf("%s has no basis of the four", name)
		}
	}
}

// Every formula id stands in the table of worked examples or is held elsewhere.
func TestEveryFormulaIsCompared(t *testing.T) {
	// The tests that hold the others, by name: one that is gone holds nothing.
	elsewhere := map[string]string{
		"AREA-2": "TestCapsAreParabolicSegments", "AREA-6": "TestFilletWeightsOfTheHandbooks", "AREA-8": "TestCapsAreParabolicSegments",
		"AREA-10": "TestCapsAreParabolicSegments", "AREA-12": "TestCapsAreParabolicSegments",
		"STITCH-1": "TestStitchesOfTheFigures", "METAL-3": "TestWorkedExamples",
	}
	tests := testNames(t)
	for id, name := range elsewhere {
		if !tests[name] {
			t.Errorf("%s is said to be held by %s, which is no test here", id, name)
		}
	}
	compared := map[string]bool{}
	counts := map[string]int{}
	for _, c := range worked() {
		compared[c.formula] = true
		counts[c.basis]++
	}
	for name, doc := range formulas(t) {
		for _, m := range formulaID.FindAllStringSubmatch(doc, -1) {
			if !compared[m[1]] && elsewhere[m[1]] == "" {
				t.Errorf("%s: %s is compared with nothing", name, m[1])
			}
		}
	}
	t.Logf("%d formulas; comparisons by basis: %v", len(formulas(t)), counts)
}

// testNames returns the names of the tests of this package.
func testNames(t *testing.T) map[string]bool {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]bool{}
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok {
				out[f.Name.Name] = true
			}
		}
	}
	return out
}
