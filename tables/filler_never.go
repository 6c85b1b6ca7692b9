package tables

// FillerNever is a filler that a family of materials, or one grade of it, is never
// welded with,
// whoever asks, and why.
type FillerNever struct {
	Family string `csv:"family"`
	Filler string `csv:"filler"`
	Why    string `csv:"why"`
	Origin
}

// Never returns why a filler is not used on any of the families or grades.
func (f *Facts) Never(filler string, families ...string) (FillerNever, bool) {
	for _, n := range f.FillerNevers {
		for _, family := range families {
			if n.Filler == filler && n.Family == family {
				return n, true
			}
		}
	}
	return FillerNever{}, false
}
