package joint

import (
	"strings"
	"testing"

	"seamtally/tables"
)

// A word that the sentence expects is never refused as unknown: the table in use has
// lost it, or a letter of the cell only looks Latin.
func TestAWordThatOughtToBeKnownIsNotCalledUnknown(t *testing.T) {
	text := "Mark;Kind;Length;Size;t1;t2;Material;Position;Where\nW1;fillet;500;z5;8;8;S235;PB;site\n"
	lost := *loadTables(t)
	var kept []tables.Word
	for _, w := range lost.Words {
		if s := strings.ToLower(w.Spelling); s != "fillet" && w.Use != "where" && s != "pb" {
			kept = append(kept, w)
		}
	}
	lost.Words = kept
	for _, c := range []struct {
		name, text string
		set        *tables.Set
		want       []string
	}{
		{"lost", text, &lost, []string{`does not hold this word under "kind"`, `does not hold this word under "where"`, "seamtally tables words"}},
		{"greek", strings.Replace(text, "site", "sιte", 1), loadTables(t), []string{"U+03B9", "type the word again"}},
		{"hidden", strings.Replace(text, "fillet", "fil\u200dlet", 1), loadTables(t), nil},
	} {
		said := ""
		for _, p := range understandAll(t, c.set, c.text).Problems {
			said += p.Line() + "\n"
		}
		for _, want := range c.want {
			if !strings.Contains(said, want) {
				t.Errorf("%s: %q is missing in:\n%s", c.name, want, said)
			}
		}
		if strings.Contains(said, "is not known") || strings.Contains(said, "neither shop nor site") {
			t.Errorf("%s: %s", c.name, said)
		}
	}
}
