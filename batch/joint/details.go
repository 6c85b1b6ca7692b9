package joint

// details are those of a list, each kept once.
type details map[detailKey]*Detail

// detailKey is a detail by what it holds: stitches alike are at different places.
type detailKey struct {
	Detail
	stitch   Stitch
	stitched bool
}

// mostDetails is how many are kept to be shared: a list of which every joint is drawn
// in its own way gains nothing by them.
const mostDetails = 4096

// of returns a detail that holds the same as d, and that does not change when d does.
func (known details) of(d *Detail) *Detail {
	key := detailKey{Detail: *d}
	if d.Stitch != nil {
		key.stitch, key.stitched, key.Stitch = *d.Stitch, true, nil
	}
	if kept, ok := known[key]; ok {
		return kept
	}
	kept := *d
	if len(known) < mostDetails {
		known[key] = &kept
	}
	return &kept
}
