package tables

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// bySpelling are tables of words rather than figures: a spelling has no source
// beyond its language.
var bySpelling = []string{"headers", "header_rules", "header_words", "part_headers", "words"}

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
			words := ""
			if source >= 0 {
				words = r[source]
			}
			if fault := originFault(r[basis], words, source >= 0); fault != "" {
				t.Errorf("%s row %d: %s", name, i+2, fault)
			}
		}
	}
}

// place is what tells where in a document a figure stands, or which kind of short
// document it is that has no pages.
var place = regexp.MustCompile(`(?i)\d|\b(extract|full text|glossary|chart|table|wiki|list|notes|page|slides|faq|data sheet)\b`)

// recalled is a part of a source that was not read.
var recalled = regexp.MustCompile(`(?i)^.*\b(recalled|second-hand)\b.*$`)

// originFault says what is wrong with a basis and its source; empty if nothing is.
// Common practice has no source, a published figure a title with a place that was
// read, a derived one its derivation, a recalled one what it recalls.
func originFault(basis, source string, asked bool) string {
	words := len(strings.Fields(source))
	switch basis {
	case "common-practice":
		if source != "" {
			return "common practice has no source, but: " + source
		}
	case "published":
		read := slices.ContainsFunc(strings.Split(source, ";"), func(part string) bool { return !recalled.MatchString(part) })
		if asked && (words < 3 && !place.MatchString(source) || !place.MatchString(source) || !read) {
			return "published without a title and a place that was read: " + source
		}
	case "derived", "memory":
		if asked && words < 2 {
			return basis + " does not say from what: " + source
		}
	default:
		return "basis " + strconv.Quote(basis) + " is none of the four"
	}
	return ""
}

func TestAnOriginThatIsDressedUpIsFound(t *testing.T) {
	for _, c := range []struct {
		basis, source string
		good          bool
	}{
		{"common-practice", "", true}, {"common-practice", "AWS D1.1", false},
		{"published", "EN 1011-2 Table C.1", true}, {"published", "a good book", false}, {"published", "EN 1011-2 Table C.1, recalled", false},
		{"published", "EN 1011-2 Table C.1; the unit recalled", true}, {"published", "", false},
		{"derived", "geometry", false}, {"derived", "n = L / p", true}, {"memory", "", false}, {"memory", "EN 1011-2, recalled", true}, {"guess", "EN 1011-2", false},
	} {
		if fault := originFault(c.basis, c.source, true); (fault == "") != c.good {
			t.Errorf("%s %q: %q", c.basis, c.source, fault)
		}
	}
}
