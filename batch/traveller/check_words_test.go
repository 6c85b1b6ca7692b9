package traveller

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/templates"
)

// quiet are the codes of rules whose checks are notes and suggestions only, or that
// speak of a part and of no joint: none of them is printed on a sheet.
var quiet = []string{
	"leg-or-throat", "stitch-outdoor", "stitch-count", "stitch-stagger", "several-passes", "double-saves", "thin-sheet", "short-arc-aws",
	"machine-duty", "machine-long-run", "dissimilar", "alloys-differ", "bead-larger", "length-blank", "hole-fill", "position-pipe", "wps-governs", "backing-purge",
	"braze-uncoated", "site-flow", "site-flow-screens", "quality-level", "procedure-binds", "leg-large", "length-min",
	"part-unused", "part-ambiguous", "part-too-long",
}

// Every sentence of an error or a warning, its remedy and the rule behind a sentence
// put together of parts has words in every language; English is the planner's own.
func TestEveryCheckHasWords(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	sentences, composed := checkSentences(t)
	if len(sentences) < 40 || len(composed) < 10 {
		t.Fatalf("only %d sentences and %d codes were found in the planner", len(sentences), len(composed))
	}
	for _, lang := range templates.Languages() {
		if lang == "en" {
			continue
		}
		w, err := templates.Wording(lang)
		must(t, err)
		for _, s := range sentences {
			if !w.Has("check." + s) {
				t.Errorf("%s has no words for the check %q", lang, s)
			}
		}
		for _, code := range composed {
			if !w.Has("rule." + code) {
				t.Errorf("%s has no words for the rule %s", lang, code)
			}
		}
		for _, r := range set.CheckRules {
			if !slices.Contains(quiet, r.Code) && !strings.HasPrefix(r.Code, "hint-") && r.Do != "" && !w.Has("do."+r.Do) {
				t.Errorf("%s has no words for what to do about %s: %q", lang, r.Code, r.Do)
			}
		}
	}
}

// No wording asks for a figure that its sentence does not bring.
func TestWordsAskForFiguresThatAreThere(t *testing.T) {
	verb, asked := regexp.MustCompile(`%[-+ #0]*[0-9.]*[a-zA-Z]`), regexp.MustCompile(`\{(\d+)\}`)
	sentences, _ := checkSentences(t)
	for _, lang := range templates.Languages() {
		w, err := templates.Wording(lang)
		must(t, err)
		for _, s := range sentences {
			have := len(verb.FindAllString(s, -1))
			for _, m := range asked.FindAllStringSubmatch(w.Say("check."+s), -1) {
				if n, _ := strconv.Atoi(m[1]); n < 1 || n > have {
					t.Errorf("%s: %q asks for figure %d of %d", lang, w.Say("check."+s), n, have)
				}
			}
		}
	}
}

// A warning is printed in the language of the sheet with its figures, in its units.
func TestChecksSpeakTheLanguage(t *testing.T) {
	j := leg("W-1", 2, 8, 10, 500, "PB")
	for _, c := range []struct {
		lang, want string
		us         bool
	}{
		{"de", "a-Maß 1,4 mm (Schenkel 2 mm) liegt unter 3 mm", false}, {"pl", "jest mniejsza niż 3 mm", false},
		{"es", "por debajo de 0.118 in", true}, {"uk", "менша за 3 mm", false}, {"en", "is below 3 mm", false},
	} {
		opts := metric
		opts.Lang, opts.US = c.lang, c.us
		doc := faultless(t, jobOf(t, []joint.Joint{j}, opts))
		if text := checkBoxes(doc.Pages[len(doc.Pages)-1]); !strings.Contains(text, c.want) {
			t.Errorf("%s: %q is not in %q", c.lang, c.want, text)
		}
	}
}

// checkSentences reads from the planner's source the sentences of errors and warnings
// that have words of their own, and the codes of those put together of parts.
func checkSentences(t *testing.T) (sentences, composed []string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "plan", "*.go"))
	must(t, err)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		must(t, err)
		ast.Inspect(parsed, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				s, codes := sentenceOf(call)
				sentences, composed = append(sentences, s...), append(composed, codes...)
			}
			return true
		})
	}
	// Sentences that are chosen before they are said, and codes that only tables and
	// obstacles name.
	sentences = append(sentences, "a thickness of %s is not usual", "a seam of %s is not usual", "%s mm is not in the shop's stock", "the gas %s is not in the shop's stock",
		"%s is asked for; the table of fillers has none for these materials",
		"%s is %s in the row, but %s is %s thick; the row is taken", "%s names no unit and is read as %s; in the other unit it would be %s", "the row says %s, but the cut list has %s of %s; the row is taken",
		"the weld cools from 800 to 500 °C in %s (t8/5), and %s wants %g to %g s", "the weld cools from 800 to 500 °C in %s (t8/5), and %s wants %g to %g s: begun at %s °C in %s that takes %s to %s kJ/mm",
		"preheat %s °C, measured %s from the seam, by category %s", "preheat %s °C, measured %s from the seam, by the certificate",
		"preheat %s °C, measured %s from the seam. By the highest carbon equivalent that the standard allows; a mill certificate usually lowers it")
	composed = append(composed, "too-hot", "mode-low", "plate-thin-for-wire", "leg-small-for-wire", "travel-fast", "travel-slow", "al-short-arc",
		"machine-none", "wire-gas", "wish-position", "wish-not-met", "gas-aluminium", "gas-stainless", "gas-cored", "gas-transfer", "procedure-unmet", "nothing-fits",
		"size-blank", "thickness-blank", "size-bad", "kind-outside")
	return sentences, composed
}

// sentenceOf returns what a call to the checker says, unless it is a note.
func sentenceOf(call *ast.CallExpr) (sentences, codes []string) {
	if name, ok := call.Fun.(*ast.Ident); ok { // what a reason or an obstacle says
		if at := map[string]int{"because": 1, "add": 2}[name.Name]; at > 0 && len(call.Args) > at {
			_, coded := literal(call.Args[at-1])
			if text, ok := literal(call.Args[at]); ok && coded {
				return []string{text}, nil
			}
		}
		return nil, nil
	}
	sel, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return nil, nil
	}
	at := map[string]int{"say": 2, "sayf": 2, "sayFrom": 4}[sel.Sel.Name] // where the sentence stands
	if at == 0 || len(call.Args) <= at {
		return nil, nil
	}
	if level, ok := call.Args[1].(*ast.SelectorExpr); ok && level.Sel.Name == "Note" {
		return nil, nil
	}
	if sel.Sel.Name == "say" && !isLevel(call.Args[1]) { // a line of words is put together by the same verb
		return nil, nil
	}
	text, ok := literal(call.Args[at])
	if ok && text != "%s" {
		return []string{text}, nil
	}
	if code, named := literal(call.Args[0]); ok && named {
		return nil, []string{code}
	}
	return nil, nil
}

// isLevel tells whether an argument is the level of a check.
func isLevel(e ast.Expr) bool {
	if sel, ok := e.(*ast.SelectorExpr); ok {
		of, named := sel.X.(*ast.Ident)
		return named && of.Name == "finding"
	}
	of, named := e.(*ast.Ident)
	return named && of.Name == "level"
}

func literal(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(lit.Value)
	return s, err == nil
}

// checkBoxes joins the words of the checks of a page.
func checkBoxes(p *page.Page) string {
	var out []string
	for _, text := range p.Texts {
		if p.Boxes[text.Box].Name == "check" {
			out = append(out, text.S)
		}
	}
	return strings.Join(out, " ")
}
