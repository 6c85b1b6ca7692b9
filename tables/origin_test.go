package tables

import (
	"bytes"
	"encoding/csv"
	"slices"
	"testing"
)

// bySpelling are tables of words rather than figures: a spelling has no source
// beyond its language.
var bySpelling = []string{"headers", "words"}

func TestEveryRowHasABasisAndASourceUnlessCommonPractice(t *testing.T) {
	files, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range Names() {
		text, _, err := files.Bytes(name)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		basis, source := slices.Index(rows[0], "basis"), slices.Index(rows[0], "source")
		if basis < 0 || source < 0 && !slices.Contains(bySpelling, name) {
			t.Errorf("%s has no column basis or source", name)
			continue
		}
		for i, r := range rows[1:] {
			if !slices.Contains([]string{"published", "common-practice", "derived", "memory"}, r[basis]) {
				t.Errorf("%s row %d: basis %q is none of the four", name, i+2, r[basis])
			}
			if source >= 0 && r[source] == "" && r[basis] != "common-practice" {
				t.Errorf("%s row %d: %s without a source", name, i+2, r[basis])
			}
		}
	}
}
