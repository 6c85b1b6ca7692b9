package parts

import (
	"math"

	"seamtally/batch/finding"
	"seamtally/batch/units"
)

// Book is a cut list worked out: what each part needs, and what to buy for all.
type Book struct {
	List       List
	Results    []Result   // one for each of List.Parts, same order
	Bars       []Bar      // in the order of Groups
	Groups     []Group    // the bars by section and material, in the order of the list
	Plates     []Plate    // by thickness and material, in the order of the list
	Assemblies []Assembly // in the order of the lists
	Totals     Totals
	Checks     []finding.Check // of the two lists together
}

// Result is what follows for one row of the cut list. Zero means not known.
type Result struct {
	KgM       float64     // of a bar, or of the strip of plate
	Mass      units.Kg    // all pieces
	Perimeter units.MM    // of the section
	Paint     float64     // m², all pieces
	Seam      units.Metre // welded on these pieces
	WeldMetal units.Kg    // likewise; a seam between two parts counts on both
	// Shrink is what the welds shorten one piece by, lowest and highest estimate:
	// the allowance to add to its length. Nil without any.
	Shrink      *[2]units.MM
	ShrinkWords string      // how it was found
	Shrinks     []Shrink    // the same by joint
	Bevel       units.Metre // edges to be bevelled, all pieces
	Edges       []Edge
	Ends        []End
	Strip       string // coating to take off before welding; ""
	Pieces      int    // of the part, all its rows together; 0 where no joint names it
	Earliest    string // the first assembly, in the order of the joints, that needs it
	Joints      []int  // indices into the joints that name the part
	Bars        []int  // indices into Book.Bars that hold its pieces
	Checks      []finding.Check
}

// Edge is an edge of a part that a groove asks to be bevelled.
type Edge struct {
	Joint    string // mark
	Row      int    // of the joint
	Groove   string // kind of joint
	Angle    units.Degree
	RootFace units.MM
	Depth    units.MM // 0: through the thickness but for the root face
	Both     bool     // from both faces
	Metres   units.Metre
}

// End is an end of a piece that is not cut square.
type End struct {
	Joint string // mark
	Row   int    // of the joint
	Copes bool   // cut to the curve in which a round branch meets a round chord
	On    units.MM
	Angle units.Degree // between the axes of the two parts
	Wall  units.MM     // of the branch
	Count int          // ends, all pieces
	// Template is the number of the paper that marks the cut, as plan.Templates has it;
	// 0: none.
	Template int
}

// Bar is one bar as bought and the pieces cut from it.
type Bar struct {
	Group  int // index into Book.Groups
	Stock  units.MM
	Pieces []Piece // longest first
	Waste  units.MM
}

// Piece is one piece of a bar.
type Piece struct {
	Part   int // index into List.Parts
	Length units.MM
}

// Group is the bars of one section and material.
type Group struct {
	Section, Material string
	KgM               float64
	Stocks            []units.MM // lengths that the shop buys
	Kerf, EndLoss     units.MM
	Bars              int
	LowerBound        int // proven: no plan needs fewer bars
	Bought, Waste     units.MM
	LeastBought       units.MM // proven: no plan buys less length
	BoughtKg          units.Kg
	PricePerKg        units.Money
	Cost              units.Money
	TooLong           []int // indices into List.Parts of pieces that no bar holds
	// Hollow and round tell how pieces may be drawn.
	Shape string // section.Shape
	H, B  units.MM
}

// Plate is the plates of one thickness and material.
type Plate struct {
	Thickness  units.MM
	Material   string
	Parts      []int   // indices into List.Parts
	Area       float64 // m² of all pieces
	Mass       units.Kg
	BoughtKg   units.Kg // with the shop's waste
	PricePerKg units.Money
	Cost       units.Money
}

// Bought is the area that weighs what is bought, in m², and the share of it that no piece
// takes; ok is false where the masses tell neither.
func (p *Plate) Bought() (area, waste float64, ok bool) {
	if !(p.Mass > 0) || !(p.BoughtKg >= p.Mass) || math.IsInf(float64(p.BoughtKg), 0) {
		return p.Area, 0, false
	}
	return p.Area * float64(p.BoughtKg/p.Mass), 1 - float64(p.Mass/p.BoughtKg), true
}

// Assembly is the parts and welds of one assembly.
type Assembly struct {
	Name      string
	Pieces    int
	Mass      units.Kg
	WeldMetal units.Kg // of its joints
	PerTonne  float64  // kg of weld metal per tonne of parts; 0: not known
}

// Totals are of all parts.
type Totals struct {
	Rows, Pieces     int
	Mass             units.Kg
	Paint            float64 // m²
	WeldMetal        units.Kg
	WeldPerTonne     float64 // kg per tonne; 0: not known
	Bars, LowerBound int
	BoughtKg         units.Kg    // bars and plates
	Cost             units.Money // of the material, apart from the welding price
	Unpriced         []string    // materials without a price, not in Cost
}
