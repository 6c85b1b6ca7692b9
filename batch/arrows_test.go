package batch_test

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// arrows is the shape of the house: what each package may import of the project.
// A package inside another, such as workbook/look, counts as that one.
var arrows = map[string]string{
	"units":     "",
	"finding":   "",
	"save":      "",
	"tables":    "finding units",
	"list":      "finding units",
	"weld":      "units",
	"templates": "tables",
	"joint":     "list tables finding units",
	"section":   "tables finding units",
	"bars":      "units",
	"rates":     "list tables finding units",
	"plan":      "section weld joint rates tables finding units",
	"procedure": "plan joint list tables finding units",
	"parts":     "bars plan weld section joint rates list tables finding units",
	"price":     "parts plan joint rates tables finding units",
	"compare":   "price plan joint units",
	"settle":    "plan joint units",
	"workbook":  "compare price parts plan joint rates list tables templates finding units",
	"traveller": "price parts section weld plan joint rates tables templates finding units",
	"report":    "compare settle price parts plan joint rates list tables templates finding units",
	"batch":     "save workbook traveller report compare settle price procedure parts plan joint rates list tables finding units",
	"cmd":       "batch save compare settle price parts plan joint tables templates finding units",
	"samples":   "",
}

// TestArrows checks every import of the project, tests apart, against the shape.
func TestArrows(t *testing.T) {
	for _, p := range packages(t) {
		from := house(p.ImportPath)
		allowed, known := arrows[from]
		if !known {
			t.Errorf("%s has no place in the house: add it to arrows and to DEVELOPERS.md", p.ImportPath)
			continue
		}
		for _, path := range p.Imports {
			to := house(path)
			if to == "" || to == from || slices.Contains(strings.Fields(allowed), to) {
				continue
			}
			t.Errorf("%s imports %s: data flows list -> joints -> plan -> price -> outputs, and never back", p.ImportPath, path)
		}
	}
}

// TestPhysicsIsPure keeps files, clocks and the environment out of the packages
// that calculate. Price draws its range from a generator with a fixed seed, made
// anew each time and never the library's own: that leaves no state behind.
func TestPhysicsIsPure(t *testing.T) {
	impure := []string{"os", "io/fs", "time", "net", "net/http", "os/exec", "path/filepath", "math/rand", "math/rand/v2", "context"}
	for _, p := range packages(t) {
		switch house(p.ImportPath) {
		case "weld", "units", "finding", "plan", "price", "rates", "joint", "section", "bars", "parts":
		default:
			continue
		}
		for _, path := range p.Imports {
			if house(p.ImportPath) == "price" && path == "math/rand/v2" {
				continue
			}
			if slices.Contains(impure, path) {
				t.Errorf("%s imports %s: what calculates takes everything as arguments", p.ImportPath, path)
			}
		}
	}
}

// TestNothingTalksToTheNetwork looks at our own imports; lists are read, never fetched.
func TestNothingTalksToTheNetwork(t *testing.T) {
	for _, p := range packages(t) {
		for _, path := range p.Imports {
			if path == "net" || strings.HasPrefix(path, "net/") {
				t.Errorf("%s imports %s", p.ImportPath, path)
			}
		}
	}
}

type listed struct {
	ImportPath string
	Imports    []string
}

func packages(t *testing.T) []listed {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "seamtally/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []listed
	for decoder := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := decoder.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
	if len(all) < len(arrows) {
		t.Fatalf("go list names %d packages, the house has at least %d", len(all), len(arrows))
	}
	return all
}

// house returns the room a package belongs to; empty for packages of others.
func house(path string) string {
	rest, ours := strings.CutPrefix(path, "seamtally/")
	if !ours {
		return ""
	}
	if rest == "batch" {
		return rest
	}
	room, _, _ := strings.Cut(strings.TrimPrefix(rest, "batch/"), "/")
	return room
}
