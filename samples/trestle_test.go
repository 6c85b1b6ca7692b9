package samples

import (
	"os"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
)

// TestTrestleAgrees: the two lists of the trestle read whole and fit each other; what
// they say of each other is the joints' own checks at most.
func TestTrestleAgrees(t *testing.T) {
	set := allTables(t)
	const file = "trestle/trestle-cut-list.csv"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	src, _, err := list.Read(file, data)
	if err != nil {
		t.Fatal(err)
	}
	cut, err := parts.NewReader(set).Understand(src, parts.Options{})
	if err != nil {
		t.Fatal(err)
	}
	joints := sample(t, set, "trestle/trestle.csv")
	shop, err := rates.Default(set)
	if err != nil {
		t.Fatal(err)
	}
	lent := parts.NewIndex(cut).Lend(joints.Joints)
	plans := plan.Joints(lent, set, &shop, plan.Options{})
	book, problems := parts.Work(cut, plans, set, &shop)
	for _, p := range append(cut.Problems, problems...) {
		if p.Level != finding.Note {
			t.Error(p.Line())
		}
	}
	if len(plans) != 6 || len(book.Results) != 7 || book.Totals.Pieces != 24 {
		t.Errorf("%d joints, %d parts, %d pieces", len(plans), len(book.Results), book.Totals.Pieces)
	}
	for i := range plans {
		if !plans[i].Settings {
			t.Errorf("%s: %s", plans[i].Joint.Mark, plans[i].NoSettings)
		}
	}
	for i := range book.Results {
		if book.Results[i].Mass <= 0 || len(book.Results[i].Joints) == 0 {
			t.Errorf("%s: %v kg, joints %v", cut.Parts[i].Mark, book.Results[i].Mass, book.Results[i].Joints)
		}
	}
}
