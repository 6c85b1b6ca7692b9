package tables

// AWSName returns the American name of the position iso for a fillet weld or a groove
// weld, "" where the table has none: PB is 2F for a fillet and nothing for a groove.
// A name that also stands with "down" gets "up" when it does not, so that a welder
// never has to guess the direction: PF of a groove is "3G up", PG "3G down".
// Source and basis stand in each row of the table.
func (f *Facts) AWSName(iso string, groove bool) string {
	name := func(p Position) string {
		if groove {
			return p.AWSGroove
		}
		return p.AWSFillet
	}
	at, _ := f.Position(iso)
	found := name(at)
	for _, other := range f.Positions {
		if found != "" && name(other) == found+" down" {
			return found + " up"
		}
	}
	return found
}
