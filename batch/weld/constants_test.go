package weld

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// harmless are numbers that geometry and units are made of: counts, halves,
// thirds, right angles, powers of ten, minutes and seconds.
var harmless = map[float64]bool{0: true, 0.5: true, 1: true, 2: true, 3: true, 4: true, 6: true, 8: true, 10: true, 60: true, 64: true, 90: true, 100: true, 180: true, 360: true, 1000: true, 1e4: true, 1e5: true, 1e6: true, 1e9: true}

// grounded are the words by which a comment says where a figure comes from.
var grounded = regexp.MustCompile(`(?i)basis|source|published|recalled|derived|EN \d|ISO \d|AWS|SEW|IEC`)

// A formula's figure has its source and basis in the comment of the function or
// the constant that holds it.
func TestEveryFigureOfAFormulaIsGrounded(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			what, comment := describe(d)
			ast.Inspect(d, func(n ast.Node) bool {
				lit, ok := n.(*ast.BasicLit)
				if !ok || lit.Kind != token.INT && lit.Kind != token.FLOAT {
					return true
				}
				if v, err := strconv.ParseFloat(lit.Value, 64); err != nil || harmless[v] || v < 1e-3 {
					return true
				}
				if found++; !grounded.MatchString(comment) && whyFigure[what] == "" {
					t.Errorf("%s: %s holds the figure %s and its comment does not say where from", name, what, lit.Value)
				}
				return true
			})
		}
	}
	if found < 20 {
		t.Errorf("only %d figures were looked at", found)
	}
}

// describe returns the name of a declaration and all that is said of it.
func describe(d ast.Decl) (what, comment string) {
	switch d := d.(type) {
	case *ast.FuncDecl:
		return d.Name.Name, d.Doc.Text()
	case *ast.GenDecl:
		comment = d.Doc.Text()
		for _, s := range d.Specs {
			if v, ok := s.(*ast.ValueSpec); ok {
				what = v.Names[0].Name
				comment += v.Doc.Text() + v.Comment.Text()
			}
		}
	}
	return what, comment
}

// whyFigure names what holds a figure that is no formula's, each with the reason.
var whyFigure = map[string]string{
	"check":        "range of inputs that a formula takes, stated at the formula",
	"checkCooling": "range of inputs that a formula takes, stated at the formula",
	"checkFactor":  "range of inputs that a formula takes, stated at the formula",
	"checkPlate":   "range of inputs that a formula takes, stated at the formula",
	"checkDensity": "range of inputs that a formula takes, stated at the formula",
	"checkLinear":  "range of inputs that a formula takes, stated at the formula",
	"checkDuty":    "range of inputs that a formula takes, stated at the formula",
	"maxCurrent":   "range of inputs that a formula takes, stated at the formula",
	"perMinute":    "mm/s to m/min",
	"SEW088":       "the sets of the preheat formula, sources at Preheat",
	"PreheatWet":   "the range of the preheat formula, sources at Preheat",
	"saddleSteps":  "steps of a numeric integral",
	"leastLean":    "range of inputs of the saddle's numeric integral",
}
