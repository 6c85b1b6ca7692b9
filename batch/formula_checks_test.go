package batch_test

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// bodies are the functions of a package and of its tests, by name, as text.
type bodies struct{ code, tests map[string]string }

// readBodies reads the functions of a folder. A method goes by its type and name.
func readBodies(t *testing.T, dir string) bodies {
	t.Helper()
	b := bodies{map[string]string{}, map[string]string{}}
	files, _ := filepath.Glob(filepath.Join(dir, "*.go"))
	for _, path := range files {
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		into := b.code
		if strings.HasSuffix(path, "_test.go") {
			into = b.tests
		}
		for _, decl := range file.Decls {
			if f, ok := decl.(*ast.FuncDecl); ok && f.Body != nil {
				var text bytes.Buffer
				if err := printer.Fprint(&text, set, f.Body); err != nil {
					t.Fatal(err)
				}
				into[nameOf(f)] += text.String()
			}
		}
	}
	whole := map[string]string{}
	for test, text := range b.tests {
		if strings.HasPrefix(test, "Test") {
			whole[test] = withHelpers(text, b.tests)
		}
	}
	b.tests = whole
	return b
}

func nameOf(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return f.Name.Name
	}
	kind := f.Recv.List[0].Type
	if star, ok := kind.(*ast.StarExpr); ok {
		kind = star.X
	}
	if id, ok := kind.(*ast.Ident); ok {
		return id.Name + "." + f.Name.Name
	}
	return f.Name.Name
}

// calls tells whether a text calls a function, or a method of a value: the type of
// an exported method must stand in the text too, as several have its name.
func calls(text, name string) bool {
	kind, method, isMethod := strings.Cut(name, ".")
	if !isMethod {
		return standsAlone(text, name+"(", wordByte)
	}
	anything := func(byte) bool { return false }
	if exported := method[0] >= 'A' && method[0] <= 'Z'; exported { // also as a value, without a call
		return standsAlone(text, "."+method, anything) && strings.Contains(text, kind)
	}
	return standsAlone(text, "."+method+"(", anything)
}

// standsAlone tells whether a text holds a piece that does not go on from, or on
// into, a longer word.
func standsAlone(text, piece string, before func(byte) bool) bool {
	for at := 0; ; {
		i := strings.Index(text[at:], piece)
		if i < 0 {
			return false
		}
		from, to := at+i, at+i+len(piece)
		if (from == 0 || !before(text[from-1])) && (strings.HasSuffix(piece, "(") || to == len(text) || !wordByte(text[to])) {
			return true
		}
		at = to
	}
}

func wordByte(c byte) bool {
	return c == '_' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z'
}

// checksOf counts the tests that reach a function: those of its package that call
// it, or that call a function of its package which does, up to three steps away,
// and those of package plan that call the function itself by its package's name.
func checksOf(dir string, own, plan bodies, name string) int {
	reached, last := map[string]bool{name: true}, []string{name}
	for range 3 {
		var next []string
		for caller, text := range own.code {
			if !reached[caller] && slices.ContainsFunc(last, func(callee string) bool { return calls(text, callee) }) {
				next = append(next, caller)
			}
		}
		for _, caller := range next {
			reached[caller] = true
		}
		last = next
	}
	n := 0
	for _, text := range own.tests {
		for callee := range reached {
			if calls(text, callee) {
				n++
				break
			}
		}
	}
	if dir == "plan" {
		return n
	}
	for _, text := range plan.tests {
		if kind, _, _ := strings.Cut(name, "."); standsAlone(text, dir+"."+kind, wordByte) && calls(text, name) {
			n++
		}
	}
	return n
}

// withHelpers returns the text of a test with the helpers that it calls itself.
func withHelpers(text string, tests map[string]string) string {
	whole := text
	for helper, body := range tests {
		if !strings.HasPrefix(helper, "Test") && !strings.Contains(helper, ".") && calls(text, helper) {
			whole += body
		}
	}
	return whole
}
