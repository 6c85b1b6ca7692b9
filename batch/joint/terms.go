package joint

import (
	"strings"

	"seamtally/batch/list"
	"seamtally/tables"
)

// Terms reads single words of the trade as the columns of a list do, for whoever
// reads another sheet of a shop.
type Terms struct{ s *spellings }

// NewTerms prepares the words of the tables for look-up.
func NewTerms(set *tables.Set) *Terms { return &Terms{newSpellings(set)} }

// Positions returns the ISO 6947 positions that a word means: two where it means
// one on a fillet and another on a butt; none where it is not known.
func (t *Terms) Positions(text string) []string {
	fillet, _, ok := t.s.positionOf(text, false)
	if !ok {
		return nil
	}
	if groove, _, _ := t.s.positionOf(text, true); groove != fillet {
		return []string{fillet, groove}
	}
	return []string{fillet}
}

// Known returns the ISO 6947 positions that the tables know, in their order.
func (t *Terms) Known() []string {
	return []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG", "PH", "PJ", "PK"}
}

// IsList tells whether a sheet has the header of a joint list: one that names marks
// and lengths.
func (t *Terms) IsList(sheet *list.Sheet) bool {
	spot, _ := t.s.findHeader(sheet)
	keys := map[string]bool{}
	for _, text := range spot.texts {
		for _, m := range t.s.header(text) {
			keys[m.key] = true
		}
	}
	return keys["mark"] && keys["length"]
}

// Fold brings a text to the form in which spellings are compared: lower case, no
// accents, punctuation as single spaces.
func Fold(text string) string { return strings.TrimSpace(fold(text)) }
