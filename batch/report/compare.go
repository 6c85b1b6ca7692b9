package report

import (
	"seamtally/batch/compare"
	"seamtally/batch/price"
)

// comparison is the document of `compare`. The order of its fields is the order printed.
type comparison struct {
	Schema    string    `json:"schema"`
	Version   string    `json:"version"`
	Tables    string    `json:"tables"`
	Old       side      `json:"old"`
	New       side      `json:"new"`
	By        amount    `json:"difference"`
	Currency  string    `json:"currency"`
	Added     []changed `json:"added"`
	Removed   []changed `json:"removed"`
	Changed   []changed `json:"changed"`
	Replanned []changed `json:"replanned"`
	Same      int       `json:"same"`
}

type side struct {
	source
	Joints      int    `json:"joints"`
	Rejected    int    `json:"rejected"`
	All         amount `json:"all"`
	ChangeOvers amount `json:"change_overs"`
}

type amount struct {
	Seam   number `json:"seam_m"`
	Weld   number `json:"weld_kg"`
	Labour number `json:"labour_min"`
	Price  number `json:"price"`
}

type changed struct {
	Mark     string  `json:"mark"`
	Assembly string  `json:"assembly"`
	OldRow   number  `json:"old_row"`
	NewRow   number  `json:"new_row"`
	Fields   []field `json:"fields"`
	Old      *amount `json:"old"` // null: not in that list
	New      *amount `json:"new"`
	By       amount  `json:"difference"`
}

type field struct {
	Key string `json:"key"`
	Old string `json:"old"`
	New string `json:"new"`
}

// CompareJSON returns the difference of two lists on one line. A price that is
// not known is null.
func CompareJSON(d *compare.Difference, version, edition string) ([]byte, error) {
	return line(comparison{
		Schema: Schema, Version: version, Tables: edition, Currency: d.Currency, Same: d.Same,
		Old: sideOf(&d.Old), New: sideOf(&d.New), By: amountOf(d.New.All.Less(d.Old.All)),
		Added: changedOf(d.Added), Removed: changedOf(d.Removed), Changed: changedOf(d.Changed), Replanned: changedOf(d.Replanned),
	})
}

func sideOf(s *compare.Side) side {
	return side{source{s.File, s.Sheet, s.SHA256}, s.Joints, s.Rejected, amountOf(s.All), amountOf(s.ChangeOvers)}
}

func amountOf(a compare.Amount) amount {
	return amount{
		Seam: of(float64(a.Seam), price.MetreDecimals), Weld: of(float64(a.WeldMetal), price.KgDecimals),
		Labour: of(float64(a.Labour), price.MinuteDecimals), Price: when(a.Priced, of(float64(a.Price), price.MoneyDecimals)),
	}
}

func changedOf(list []compare.Line) []changed {
	out := []changed{}
	for i := range list {
		l := &list[i]
		c := changed{Mark: l.Mark, Assembly: l.Assembly, OldRow: when(l.OldRow > 0, count(l.OldRow)), NewRow: when(l.NewRow > 0, count(l.NewRow)),
			Fields: []field{}, By: amountOf(l.By())}
		if l.OldRow > 0 {
			before := amountOf(l.Old)
			c.Old = &before
		}
		if l.NewRow > 0 {
			now := amountOf(l.New)
			c.New = &now
		}
		for _, f := range l.Fields {
			c.Fields = append(c.Fields, field(f))
		}
		out = append(out, c)
	}
	return out
}
