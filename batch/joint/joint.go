// Package joint turns a row of cells into a Joint: what the drawing says, in
// millimetres. It reports every problem of a row at once and never guesses in
// silence: what it filled in stands in Assumed.
package joint

import (
	"seamtally/batch/finding"
	"seamtally/batch/units"
)

// Kind is the kind of joint, by the trade's word.
type Kind string

// The kinds of joint.
const (
	Fillet      Kind = "fillet"
	Lap         Kind = "lap"
	Corner      Kind = "corner"
	Edge        Kind = "edge"
	SquareButt  Kind = "square butt"
	SingleV     Kind = "single V"
	SingleBevel Kind = "single bevel"
	DoubleV     Kind = "double V"
	DoubleBevel Kind = "double bevel"
	SingleU     Kind = "single U"
	SingleJ     Kind = "single J"
	DoubleU     Kind = "double U"
	DoubleJ     Kind = "double J"
	FlareBevel  Kind = "flare bevel"
	FlareV      Kind = "flare V"
	Plug        Kind = "plug"
	Slot        Kind = "slot"
	NoKind      Kind = ""
)

// SizeKind says what a size means.
type SizeKind string

// What a size can mean. A leg is not a throat: confusing them halves or doubles the metal.
const (
	NoSize      SizeKind = ""
	Leg         SizeKind = "leg"         // z
	Throat      SizeKind = "throat"      // a
	Penetration SizeKind = "penetration" // s, partial penetration
)

// Size is a weld size as stated.
type Size struct {
	Means SizeKind
	A     units.MM // leg, throat or penetration
	B     units.MM // second leg of an unequal fillet (along the part t2); 0 if equal
	Text  string   // as the user wrote it
}

// Stitch is an intermittent weld. Pitch is centre to centre, Gap is the clear
// distance between segments; exactly one of them was stated, the other follows.
type Stitch struct {
	Count     int // stated number of segments; 0: as many as fit
	Segment   units.MM
	Gap       units.MM
	Pitch     units.MM
	ByPitch   bool // the note gave length-pitch (AWS A2.4); else count x length (gap), ISO 2553
	Staggered bool
	Text      string
}

// Where says where the joint is welded.
type Where string

// The two places.
const (
	Shop Where = "shop"
	Site Where = "site"
)

// Assumption is a value that the list did not give.
type Assumption struct {
	Key   string // input column key: "position"
	Value string // as a person reads it: "PB"
	Why   string // "blank: fillets and laps are taken as PB"
	Basis string // common-practice, derived, shop value...
	Kin   string // why, of assumptions that differ in the part or the value alone; "": told apart
}

// Joint is what the list says about one row. Lengths are in millimetres; zero
// means not stated unless the field says otherwise.
type Joint struct {
	*Detail // never nil; shared with the joints of the list that are drawn alike

	Place finding.Place // Row is the row in the sheet or the line of the file

	Mark, Assembly, Drawing, Rev, Note string

	Qty    int      // identical joints, at least 1
	Length units.MM // seam length of one joint, one side

	Part1, Part2 string
	// Lent1, Lent2 are what the cut list says of the parts; nil: nothing.
	Lent1, Lent2 *Lent

	Assumed []Assumption
}

// Detail is how a joint is drawn and asked for, beside its names, its length and how
// many there are. A long list has few of them: its joints hold them in common, so
// that one is never changed in place; who wants another takes the joint Apart first.
type Detail struct {
	Kind     Kind
	Open     Opening // of an outside corner; "" if the list does not say
	AllRound bool
	Mitre    units.Degree // off a square cut, of both tubes; 0: none. The seam then goes all round
	Sides    int          // 1 or 2
	Stitch   *Stitch
	Size     Size

	T1, T2                  units.MM     // thickness of the part whose edge meets; of the other
	Angle                   units.Degree // fillet: between the parts; groove: included. 0: not stated
	Gap                     units.MM
	RootFace                units.MM
	Depth                   units.MM // preparation depth
	Radius                  units.MM
	Backing                 string // "", "bar", "copper", "ceramic", "gouge"
	GapGiven, RootFaceGiven bool   // a stated 0 is a statement

	Material, Material2 string // as written; "" if blank
	Position            string // ISO 6947: PA PB PC PD PE PF PG (PH PJ PK as read)
	Where               Where

	Process, Wire, Gas, Machine string // the user's own choice, as written
	Quality                     string // B, C or D; "" if blank
	WPS, NDT                    string

	PartsInch bool // sizes without a unit in the names of the parts are inches
}

// Apart returns the joint with a detail of its own, free to be changed.
func (j *Joint) Apart() Joint {
	own := *j
	detail := *j.Detail
	own.Detail = &detail
	return own
}

// Lent is what the cut list says of a part that a joint names by its mark.
type Lent struct{ Section, Material string }

// Column tells how one column of the list was understood.
type Column struct {
	Col    int    // 1-based
	Header string // as written
	Key    string // input key; "" for a column that is only passed through
	Unit   string // "mm", "in", "m"...; "" if none was stated
	Why    string // how it was decided: "known header", "values look like positions"...
}

// RowFate is what became of a row that is not a worked joint.
type RowFate string

// The fates. Rows in = worked + rejected + skipped, always.
const (
	TitleRow    RowFate = "title"
	HeaderRow   RowFate = "header"
	UnitsRow    RowFate = "units"
	GroupRow    RowFate = "group"
	TotalRow    RowFate = "total"
	RepeatRow   RowFate = "repeated header"
	TrailingRow RowFate = "after the list"
	Rejected    RowFate = "rejected"
)

// OtherRow is a row that is not a worked joint.
type OtherRow struct {
	Row  int
	Fate RowFate
	Text string // what stood in it, shortened
	Mark string // of a rejected row, as far as it was read
}

// List is a joint list, understood.
type List struct {
	File, Sheet string
	SHA256      string
	Job         string // its name in a title above the list; "" where none is named
	HeaderRows  [2]int // first and last header row; 0,0 if none
	UnitsRow    int    // 0 if none
	LastRow     int    // last row that belongs to the list
	LastCol     int    // last used column of the sheet
	Columns     []Column
	Joints      []Joint
	Others      []OtherRow
	RowsRead    int            // rows that are not blank
	Typed       map[int]string // what was typed beside a row, not in it; nil: nothing
	Problems    []finding.Problem
}
