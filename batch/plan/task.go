package plan

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/joint"
	"seamtally/batch/units"
	"seamtally/tables"
)

// task is one joint made ready for planning: its geometry, metal, position and
// the user's own wishes, worked out once and then tried in every way.
type task struct {
	j          *joint.Joint
	prep       Prep
	assumed    []joint.Assumption
	shape      shape
	depthShare float64

	mat, mat2  *tables.Material // nil: blank or not understood
	pair       []tables.FillerChoice
	fillerMask uint64
	gasless    bool // the chosen wire shields itself
	noGas      bool // a flare is filled as for such a wire; see filledBy
	metal      string
	density    float64

	pos      int
	posNote  string
	wish     wish
	proc     *tables.Procedure // that binds the joint; nil: none
	bound    []*way            // the ways inside it, once asked for
	kept     *machine          // the machine that the list keeps at the place, where it bears this joint
	site     bool
	thin     float64 // the thinner part, mm
	heatT    float64 // the thickness that sets the current, mm
	family   int
	leg      float64 // drawn leg of a fillet, mm
	sides    [2]side
	openRoot bool
	oneSided bool // welded through from one side, with nothing behind the root and no run from there

	seam          float64 // metres, all copies, sides and stitches
	seams         float64 // separate seams
	segments      int
	startsPerPass float64
	drawn, made   float64 // mm² of one seam

	fitGap        float64 // fit-up gap of a fillet or lap, mm
	stitch        stitched
	stitchMissing string     // the length into which a stitch note puts no segment
	holeDepth     float64    // of a plug or slot, mm
	noRound       string     // why a seam all round has no length
	clashes       []conflict // of the row with its parts
	branch        *Branch    // a round tube cut to sit on another
	twin          int        // row of another joint with the same mark
	form          *form      // that the joint shares with others; nil: its own

	noArea, noAreaCode string // why there is no area, and the code of its rule
	noSettings         string
}

// readTask reads one joint.
func (c *catalog) readTask(j *joint.Joint) *task {
	t := &task{j: j, assumed: c.assumed[:0], site: j.Where == joint.Site, seams: float64(max(j.Qty, 1))}
	if j.Part1 != "" || j.Part2 != "" {
		c.takeSection(t)
		j = t.j
	}
	t.prep = Prep{
		Kind: j.Kind, T1: j.T1, T2: j.T2, Angle: j.Angle, Gap: j.Gap, RootFace: j.RootFace,
		Radius: j.Radius, Backing: j.Backing,
	}
	if t.prep.Kind == joint.NoKind {
		t.prep.Kind = joint.Fillet
	}
	c.readMetal(t)
	c.readArea(t)
	c.readSeam(t)
	t.readPosition()
	t.wish = c.readWish(j)
	c.narrowWish(t)
	c.widenWish(t)
	c.settleWish(t)
	c.bindProcedure(t)
	t.settleThickness(c.rules.sink)
	t.noSettings = c.whyNoSettings(t)
	c.assumed = t.assumed
	t.assumed = slices.Clip(append([]joint.Assumption(nil), t.assumed...))
	return t
}

// thinner returns the smaller of the two thicknesses that are known; 0 if none is.
func (t *task) thinner() units.MM {
	switch a, b := t.prep.T1, t.prep.T2; {
	case a <= 0:
		return max(b, 0)
	case b <= 0:
		return a
	default:
		return min(a, b)
	}
}

// readArea works out the areas of one seam, as drawn and as it will be made.
func (c *catalog) readArea(t *task) {
	s, why := c.shapeOf(t)
	c.takeShape(t, s, why)
}

// takeShape takes the areas of a shape into a task, or the reason why there is none.
func (c *catalog) takeShape(t *task, s shape, why coded) {
	if why.text != "" {
		t.noArea, t.noAreaCode = why.text, why.code
		return
	}
	drawn, err := s.section.Drawn()
	if err == nil {
		t.drawn = float64(drawn)
		var made units.MM2
		made, err = s.section.Made(c.allowances(t))
		t.made = float64(made)
	}
	if err != nil {
		t.noArea, t.noAreaCode, t.drawn, t.made = err.Error(), "size-bad", 0, 0
		return
	}
	t.shape, t.family, t.leg, t.sides = s, s.family, s.leg, [2]side{}
	for k, share := range s.shares {
		if share > 0 {
			t.sides[k] = side{drawn: t.drawn * share, made: t.made * share, depth: s.depths[k]}
		}
	}
	t.oneSided = t.throughFromOneSide()
	t.openRoot = s.family == butt && c.hangsFree(t) || t.hangingCorner()
	if t.prep.Backing == "gouge" && t.sides[1].made > 0 {
		c.addGouge(t)
	}
}

// hangsFree tells whether the root is laid over an open gap: a second side that
// is gouged and welded later is no backing.
func (c *catalog) hangsFree(t *task) bool {
	p := &t.prep
	if p.Backing != "" && p.Backing != "gouge" || float64(p.Gap) < c.rules.openGap {
		return false
	}
	if p.Kind == joint.SquareButt {
		return t.j.Sides != 2 && p.Backing == "" && float64(p.Gap) >= c.rules.openSquare*float64(t.thinner())
	}
	return float64(p.RootFace) < c.rules.closedFace || t.oneSided && float64(p.Gap) >= c.rules.wideGap
}

// throughFromOneSide tells whether a groove goes through the thickness and nobody is
// behind it: no bar, no strip, no gouge and no run from the other side.
func (t *task) throughFromOneSide() bool {
	p := &t.prep
	if p.Kind == joint.Corner {
		return t.hangingCorner()
	}
	if !p.Kind.IsButt() || p.Backing != "" || t.j.Sides == 2 || t.sides[1].made > 0 {
		return false
	}
	return p.Throat >= t.thinner()
}

// hangingCorner tells whether an outside corner takes both edges whole, with nothing
// behind it: they meet in a line, a groove without a root face, and the first run lies
// on it as on an open root. In a half-open corner half an edge stands behind the run, and
// behind that of a corner welded on both sides the weld inside it.
func (t *task) hangingCorner() bool {
	p := &t.prep
	whole := p.T1 > 0 && p.T2 > 0 && p.LegA >= p.T1 && p.LegB >= p.T2
	return p.Kind == joint.Corner && t.j.Open != joint.Closed && t.j.Sides != 2 && p.Backing == "" && whole
}

// readSeam works out the metres welded and the starts of one pass.
func (c *catalog) readSeam(t *task) {
	j := t.j
	length := max(float64(j.Length), 0)
	if t.prep.Kind == joint.Plug || t.prep.Kind == joint.Slot {
		length = t.holeDepth // 0 where it is not known: of a hole only its depth is filled
	}
	if j.Sides == 2 && t.family == fillet && t.holeDepth == 0 {
		t.seams *= 2
	}
	if j.Stitch != nil {
		t.stitch = stitchOf(j)
		if t.stitch.count == 0 {
			t.stitchMissing = mmText(length)
		}
		s := t.stitch
		t.segments = s.count
		t.seam = float64(s.count) * s.segment / 1000 * t.seams
		t.startsPerPass = float64(s.count) * t.seams
		return
	}
	t.seam = length / 1000 * t.seams
	t.startsPerPass = t.seams * max(1, c.shop.SeamStartsPerM*length/1000)
}

// readPosition takes pipe positions as the plate position they come down to.
func (t *task) readPosition() {
	code := t.j.Position
	switch code {
	case "":
		code = "PA"
		if t.family == fillet {
			code = "PB"
		}
		t.assume("position", code, "blank: fillets and laps are taken as PB, butts as PA", "common-practice")
	case "PH", "PK", "H-L045":
		t.posNote, code = code, "PF"
	case "PJ", "J-L045":
		t.posNote, code = code, "PG"
	}
	t.pos = -1
	for k, p := range positions {
		if p == code {
			t.pos = k
		}
	}
}

// settleThickness works out the thinner part and the thickness that sets the current.
func (t *task) settleThickness(sink float64) {
	t.thin = float64(t.thinner())
	t1, t2 := float64(cmpOr(t.prep.T1, t.prep.T2)), float64(cmpOr(t.prep.T2, t.prep.T1))
	if t.thin > 0 {
		t.heatT = sinkThickness(t1, t2, sink)
	}
}

// whyNoSettings says what keeps a joint from getting settings at all; empty if
// nothing does.
func (c *catalog) whyNoSettings(t *task) string {
	switch {
	case t.noArea != "":
		return "no settings: " + t.noArea
	case t.j.Material == "" && t.j.Material2 == "":
		return "no settings: the material is blank"
	case t.mat == nil:
		return fmt.Sprintf("no settings: the material %q is not in the table of materials", t.j.Material)
	case t.j.Material2 != "" && t.mat2 == nil:
		return fmt.Sprintf("no settings: the material %q is not in the table of materials", t.j.Material2)
	case t.notToBeWelded():
		return "no settings: " + t.notWeldable()
	case len(t.pair) == 0:
		return "no settings: the table of fillers has none for this pair of materials"
	case t.thin <= 0:
		return "no settings: the thickness is blank"
	case t.made <= 0:
		return "no settings: a closed square edge without reinforcement has no area to fill, so travel and time have no value"
	case t.pos < 0:
		return fmt.Sprintf("no settings: the position %q is not known", t.j.Position)
	case t.wish.problem != "":
		return "no settings: " + t.wish.problem
	}
	return ""
}

// notToBeWelded tells whether either material is not to be arc welded.
func (t *task) notToBeWelded() bool {
	return t.mat.Weldable == "no" || t.mat2 != nil && t.mat2.Weldable == "no"
}

func (t *task) notWeldable() string {
	m := t.mat
	if m.Weldable != "no" {
		m = t.mat2
	}
	if strings.HasPrefix(m.Note, m.Grade) {
		return m.Note
	}
	return m.Grade + ": " + m.Note
}
