package tables

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestSectionsNameWhatIsRecalled: a row that was read in a table and has a figure beside
// that was not names that figure, and no row names one that it does not have.
func TestSectionsNameWhatIsRecalled(t *testing.T) {
	files, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := Load(files)
	if err != nil {
		t.Fatal(err)
	}
	count := map[string]int{}
	for i := range set.Sections {
		s := &set.Sections[i]
		have := map[string]bool{"root_mm": s.Root > 0, "toe_mm": s.Toe > 0, "surface_m2_m": s.Surface > 0}
		for _, name := range strings.Fields(s.Recalled) {
			if !have[name] {
				t.Errorf("%s: %q is recalled, and the row has none", s.Designation, name)
			}
		}
		says := slices.ContainsFunc(strings.Split(s.Source, ";"), recalled.MatchString)
		switch {
		case s.Basis == "published" && says != (s.Recalled != ""):
			t.Errorf("%s: published from %q, recalled of it %q", s.Designation, s.Source, s.Recalled)
		case s.Basis != "published" && s.Recalled != "":
			t.Errorf("%s: all of it is %s, and %q is named", s.Designation, s.Basis, s.Recalled)
		case s.Basis == "published" && says:
			count["published, part recalled"]++
		default:
			count[s.Basis]++
		}
	}
	// As DEVELOPERS.md has it.
	if count["published"] != 1136 || count["published, part recalled"] != 107 || count["memory"] != 155 {
		t.Errorf("of %d sections: %v", len(set.Sections), count)
	}
}

// TestSectionsOfSomebodysOwnMayLackTheColumnOfTheRecalled: tables written out before
// there was one are read as they were.
func TestSectionsOfSomebodysOwnMayLackTheColumnOfTheRecalled(t *testing.T) {
	dir := t.TempDir()
	text := "family,designation,h_mm,b_mm,web_mm,flange_mm,root_mm,toe_mm,kg_m,surface_m2_m,basis,source\nIPE,IPE 200,200,100,5.6,8.5,12,,22.4,,published,a table of ours (extract)\n"
	if err := os.WriteFile(filepath.Join(dir, "sections.csv"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	files, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := Rows[Section](files, "sections")
	if err != nil || len(rows) != 1 || rows[0].Root != 12 || rows[0].Recalls("root_mm") {
		t.Errorf("%v: %+v", err, rows)
	}
}
