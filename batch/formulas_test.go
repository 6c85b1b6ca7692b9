package batch_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"
)

// formula is one numbered formula of a doc comment.
type formula struct {
	id, text, where, basis, source string
}

// numbered finds "A = z²/2   (AREA-1)" in an indented line of a doc comment.
var numbered = regexp.MustCompile(`^\t(.*\S)\s+\(([A-Z]+\d*-\d+[a-z]?)\)$`)

const (
	formulasFrom = "<!-- formulas: written by `UPDATE_DOCS=1 go test ./batch -run Formulas` -->\n"
	formulasTo   = "<!-- end of formulas -->\n"
)

// TestFormulas keeps the table of formulas in DEVELOPERS.md in step with the doc
// comments: each formula has one number, a basis, and a source unless it is
// derived from what is plain.
func TestFormulas(t *testing.T) {
	all := formulas(t)
	seen := map[string]string{}
	var table strings.Builder
	table.WriteString("| id | formula | where | basis | source | tests |\n|---|---|---|---|---|---|\n")
	packages, plan := map[string]bodies{}, readBodies(t, "plan")
	for _, f := range all {
		if seen[f.id] != "" {
			if seen[f.id] != f.text {
				t.Errorf("%s is %q and %q", f.id, seen[f.id], f.text)
			}
			continue
		}
		seen[f.id] = f.text
		f.text = strings.Join(strings.Fields(f.text), " ")
		if f.basis == "" {
			t.Errorf("%s (%s) names no basis", f.id, f.where)
		}
		dir, name, _ := strings.Cut(strings.Trim(f.where, "`"), ".")
		if _, read := packages[dir]; !read {
			packages[dir] = readBodies(t, dir)
		}
		checks := checksOf(dir, packages[dir], plan, name)
		if checks == 0 {
			t.Errorf("%s (%s) is reached by no test", f.id, f.where)
		}
		fmt.Fprintf(&table, "| %s | `%s` | %s | %s | %s | %d |\n", f.id, strings.ReplaceAll(f.text, "|", "\\|"), f.where, f.basis, strings.ReplaceAll(f.source, "|", "\\|"), checks)
	}
	if len(all) < 40 {
		t.Errorf("only %d formulas were found", len(all))
	}
	path := "../DEVELOPERS.md"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(text), formulasFrom)
	_, after, closed := strings.Cut(rest, formulasTo)
	if !ok || !closed {
		t.Fatal("DEVELOPERS.md has no place for the formulas")
	}
	want := before + formulasFrom + table.String() + formulasTo + after
	if os.Getenv("UPDATE_DOCS") != "" {
		if err := os.WriteFile(path, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want != string(text) {
		t.Error("the formulas in DEVELOPERS.md are not those of the code: run UPDATE_DOCS=1 go test ./batch -run Formulas and read the difference")
	}
}

func formulas(t *testing.T) []formula {
	t.Helper()
	var all []formula
	for _, dir := range []string{"weld", "rates", "price", "settle", "section", "bars", "parts", "plan"} {
		files, _ := filepath.Glob(filepath.Join(dir, "*.go"))
		for _, path := range files {
			if strings.HasSuffix(path, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			for _, decl := range file.Decls {
				if f, ok := decl.(*ast.FuncDecl); ok && f.Doc != nil {
					all = append(all, formulasOf(dir, f)...)
				}
			}
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return order(all[i].id) < order(all[j].id) })
	return all
}

func formulasOf(dir string, f *ast.FuncDecl) []formula {
	doc := f.Doc.Text()
	name := f.Name.Name
	if f.Recv != nil {
		kind := f.Recv.List[0].Type
		if star, ok := kind.(*ast.StarExpr); ok {
			kind = star.X
		}
		name = fmt.Sprint(kind) + "." + name
	}
	var out []formula
	for line := range strings.SplitSeq(doc, "\n") {
		if m := numbered.FindStringSubmatch(line); m != nil {
			out = append(out, formula{id: m[2], text: m[1], where: "`" + dir + "." + name + "`", basis: said(doc, "Basis"), source: said(doc, "Source")})
		}
	}
	return out
}

// said returns what a doc comment says behind "Source:", to the end of the
// sentence block.
func said(doc, word string) string {
	_, rest, found := strings.Cut(doc, word+":")
	if !found {
		return ""
	}
	var lines []string
	for line := range strings.SplitSeq(rest, "\n") {
		line = strings.TrimSpace(line)
		if len(lines) > 0 && (line == "" || heading.MatchString(line)) {
			break
		}
		lines = append(lines, line)
	}
	text := strings.Join(lines, " ")
	for _, next := range []string{"Basis", "Accuracy", "Errors", "Assumes"} {
		text, _, _ = strings.Cut(text, ". "+next+":")
	}
	return strings.TrimSuffix(strings.TrimSpace(text), ".")
}

var heading = regexp.MustCompile(`^[A-Z][a-z]+:`)

// order sorts AREA-2 before AREA-10.
func order(id string) string {
	name, number, _ := strings.Cut(id, "-")
	n, _ := strconv.Atoi(strings.TrimRight(number, "abcdefghij"))
	return fmt.Sprintf("%s-%03d%s", name, n, number)
}
