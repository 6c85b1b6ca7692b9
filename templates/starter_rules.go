package templates

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// starterLists are the words to pick from. They stand on a hidden sheet because a
// list written into the rule itself may not be longer than 255 characters.
func starterLists(us bool) []starterList {
	lists := []starterList{
		{"kind", []string{"fillet", "lap", "corner", "square butt", "single V", "single bevel", "double V", "double bevel", "edge", "plug", "slot"}},
		{"sides", []string{"1", "2"}},
		{"backing", []string{"bar", "copper", "ceramic", "gouge"}},
		{"where", []string{"shop", "site"}},
		{"quality", []string{"B", "C", "D"}},
		{"gas", []string{"M21", "M20", "M12", "M13", "C1", "I1", "I3"}},
	}
	if us {
		return append(lists,
			starterList{"material", []string{"A36", "A572-50", "A500", "A514", "galvanized", "304L", "316L", "5083", "6061", "6063", "carbon steel", "stainless", "aluminum"}},
			starterList{"position", []string{"1F", "2F", "3F", "4F", "1G", "2G", "3G", "4G"}})
	}
	return append(lists,
		starterList{"material", []string{"S235", "S275", "S355", "S460", "DC01", "galvanised", "304", "304L", "316L", "5083", "5754", "6060", "6082", "carbon steel", "stainless", "aluminium"}},
		starterList{"position", []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG"}})
}

type starterList struct {
	name  string
	words []string
}

// lists writes each list into a column of the hidden sheet.
func (s *starter) lists(all []starterList) {
	for i, list := range all {
		name, err := excelize.ColumnNumberToName(i + 1)
		s.try(err)
		s.set(choiceSheet, i+1, 1, list.name, s.styles.label)
		for j, word := range list.words {
			s.set(choiceSheet, i+1, j+2, word, 0)
		}
		s.choices[list.name] = fmt.Sprintf("%s!$%s$2:$%s$%d", choiceSheet, name, name, len(list.words)+1)
	}
}

// starterLimits are the ranges within which a typed number is likely meant. They
// are ours and wide, and only warn: a cell may also hold `6 mm` or `1/4"`.
var starterLimits = map[string]struct {
	low, high float64
	say       string
}{
	"qty":       {1, 99999, "a whole number from 1"},
	"angle":     {1, 180, "degrees, from 1 to 180"},
	"gap":       {0, 30, "0 to 30 mm"},
	"root_face": {0, 30, "0 to 30 mm"},
	"t1":        {0.3, 300, "0.3 to 300 mm"},
	"t2":        {0.3, 300, "0.3 to 300 mm"},
	"length":    {1, 100000, "1 to 100000 mm; use 12.5 m or all round where that fits better"},
}

// rules hangs drop-downs, limits and a short prompt on the columns.
func (s *starter) rules() {
	for i, c := range s.columns {
		name, err := excelize.ColumnNumberToName(i + 1)
		s.try(err)
		rule := excelize.NewDataValidation(true)
		rule.Sqref = fmt.Sprintf("%s%d:%s%d", name, firstRow, name, lastRow)
		limit, limited := starterLimits[c.Key]
		limited = limited && (!s.us || c.UnitUS != "in") // inches are mostly typed as fractions, which are text
		switch {
		case s.choices[c.Choices] != "":
			rule.SetSqrefDropList(s.choices[c.Choices])
			s.warn(rule, "Not in the list", "Pick from the list, or keep what you typed if you mean it: other spellings may be understood.")
		case limited && c.Key == "qty":
			s.try(rule.SetRange(int(limit.low), int(limit.high), excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween))
			s.warn(rule, "Please look again", c.Header+": "+limit.say+".")
		case limited:
			s.try(rule.SetRange(limit.low, limit.high, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween))
			s.warn(rule, "Please look again", c.Header+": "+limit.say+". A unit in the cell is fine too.")
		}
		rule.SetInput(c.Header, shorten(c.What, 250))
		s.try(s.file.AddDataValidation(jointSheet, rule))
	}
}

// warn lets the user keep what was typed: the reader understands more than a
// rule in a spreadsheet can say.
func (s *starter) warn(rule *excelize.DataValidation, title, text string) {
	rule.SetError(excelize.DataValidationErrorStyleWarning, title, text)
}

// shorten cuts a text at a word so that it fits the file format's limit.
func shorten(text string, limit int) string {
	if len([]rune(text)) <= limit {
		return text
	}
	cut := []rune(text)[:limit]
	for i := len(cut) - 1; i > 0; i-- {
		if cut[i] == ' ' {
			return string(cut[:i]) + " ..."
		}
	}
	return string(cut)
}
