package plan

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// harmless are numbers that no rule of a code is made of: counts and halves,
// powers of ten for units, minutes and seconds, per cents, right angles.
var harmless = map[float64]bool{0: true, 0.5: true, 1: true, 2: true, 3: true, 10: true, 60: true, 90: true, 100: true, 180: true, 1000: true, 1e6: true, 1e9: true}

// tiny is below every rule's figure: a slack for rounding.
const tiny = 1e-3

// A figure of a rule stands in a table, with its basis. A number in the program is
// harmless, or a constant with a name of its own, or stands in a function named
// below with the reason why.
func TestNoFigureOfARuleStandsInTheProgram(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok {
				continue // constants and variables have a name and a comment
			}
			for _, text := range figures(f) {
				key := f.Name.Name
				if seen[key] = true; whyFigure[key] == "" {
					t.Errorf("%s: %s holds the figure %s: put it into a table with its basis, or say here why it is none", name, key, text)
				}
			}
		}
	}
	for name := range whyFigure {
		if !seen[name] {
			t.Errorf("%s has no figure any more: take it off the list", name)
		}
	}
}

// figures returns the numbers of a function that look like a rule's: not harmless,
// not tiny, not the decimals or the width of a printed number.
func figures(f *ast.FuncDecl) (out []string) {
	ast.Inspect(f, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok {
			if id, ok := call.Fun.(*ast.Ident); ok && (id.Name == "number" || id.Name == "round" || id.Name == "make") {
				return false // decimals of a text, room of a slice
			}
		}
		lit, ok := n.(*ast.BasicLit)
		if !ok || lit.Kind != token.INT && lit.Kind != token.FLOAT {
			return true
		}
		v, err := strconv.ParseFloat(lit.Value, 64)
		if err == nil && !harmless[v] && v > tiny {
			out = append(out, lit.Value)
		}
		return true
	})
	return out
}

// whyFigure names the functions that hold a figure, each with the reason.
var whyFigure = map[string]string{
	"feed":          "mm/s to m/min",
	"currentAt":     "mm/s to m/min; the root of a quadratic",
	"newWay":        "bits of a number",
	"sameDia":       "slack between two ways to write a diameter",
	"obstacles":     "slack of a size shown with one decimal",
	"frontShare":    "how drawn metal is shared between the sides: geometry, and 15 % for a back run's cap",
	"oneRun":        "slack of a size shown with one decimal",
	"hole":          "slack of a size named in whole mm",
	"readMetal":     "bits of a float",
	"layGroove":     "slack for rounding",
	"split":         "how metal is shared between root and fills, so that no fill is left thin",
	"bindProcedure": "slack of half a hundredth of a millimetre",
	"within":        "slack of half a hundredth of a millimetre",
	"climb":         "rounds of a search",
	"changes":       "bits of a key",
	"spell":         "bits of a key",
	"atLeast":       "bits of a set",
	"narrowWish":    "bits of a set",
	"widenWish":     "bits of a set",
	"appendNumber":  "bits of a float",
	"short":         "bits of a float",
	"whole":         "bits of a float",
	"findWires":     "bits of a float; parts of a match",
	"inches":        "bits of a float; parts of a match",
	"nominal":       "how far a wire sold by the inch lies from its metric name: .035 in is 0.9 mm",
}
