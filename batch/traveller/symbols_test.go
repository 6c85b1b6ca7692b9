package traveller

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
)

// farSides are joints and what stands on the other side of their symbol: by ISO 2553 and
// by AWS A2.4, recalled.
var farSides = []struct {
	name    string
	kind    joint.Kind
	sides   int
	backing string
	iso     string // name of the shape there; "same": the sign again
	aws     string
}{
	{"V one side", joint.SingleV, 1, "", "", ""},
	{"V both sides", joint.SingleV, 2, "", "back run", "back run"},
	{"V gouged", joint.SingleV, 1, "gouge", "back run", "back run"},
	{"V on a bar", joint.SingleV, 1, "bar", "backing M", "backing "},
	{"square on copper", joint.SquareButt, 1, "copper", "backing MR", "backing R"},
	{"V on ceramic", joint.SingleV, 1, "ceramic", "backing MR", "backing R"},
	{"bevel gouged", joint.SingleBevel, 1, "gouge", "back run", "back run"},
	{"bevel on a bar", joint.SingleBevel, 1, "bar", "backing M", "backing "},
	{"U gouged", joint.SingleU, 1, "gouge", "back run", "back run"},
	{"J on ceramic", joint.SingleJ, 1, "ceramic", "backing MR", "backing R"},
	{"square on a bar", joint.SquareButt, 1, "bar", "backing M", "backing "},
	{"square both sides", joint.SquareButt, 2, "", "same", "same"},
	{"double V gouged", joint.DoubleV, 1, "gouge", "same", "same"},
	{"double bevel", joint.DoubleBevel, 1, "", "same", "same"},
	{"fillet both sides", joint.Fillet, 2, "", "same", "same"},
}

// What is done on the other side stands on the other side of the symbol's line: below
// the firm line and the dashed one by ISO, above the line by AWS.
func TestSymbolShowsTheOtherSide(t *testing.T) {
	for _, c := range farSides {
		for standard, want := range map[string]string{"iso": c.iso, "aws": c.aws} {
			j := butt("B-1", c.kind, 12, 500, "PA")
			if c.kind == joint.SquareButt {
				j.T1, j.T2, j.Gap, j.GapGiven = 5, 5, 2, true
			}
			if c.kind == joint.Fillet {
				j = leg("B-1", 6, 8, 10, 500, "PB")
			}
			j.Sides, j.Backing = c.sides, c.backing
			opts := metric
			opts.Symbols = standard
			p := sheetOf(faultless(t, jobOf(t, []joint.Joint{j}, opts)), "B-1")
			dashed, found := symbolOn(t, p)
			if found != want && !(want == "same" && found == "") {
				t.Errorf("%s, %s: %q on the other side, want %q", c.name, standard, found, want)
			}
			if wantDash := standard == "iso" && want != "same"; dashed != wantDash {
				t.Errorf("%s, %s: a dashed line is drawn: %v", c.name, standard, dashed)
			}
			otherSide(t, p, standard, c.name)
		}
	}
}

// symbolOn tells of the symbol of a sheet whether it has the dashed line, and what
// else stands on its other side.
func symbolOn(t *testing.T, p *page.Page) (dashed bool, found string) {
	for _, s := range p.Shapes {
		dashed = dashed || s.Dash == 1.1
		if s.Name == "back run" || strings.HasPrefix(s.Name, "backing ") {
			if found != "" {
				t.Errorf("%q and %q on one symbol", found, s.Name)
			}
			found = s.Name
		}
	}
	return dashed, found
}

// otherSide fails where what stands opposite the sign lies on the wrong side of the line.
func otherSide(t *testing.T, p *page.Page, standard, name string) {
	arrow := 0.0
	for _, s := range p.Shapes {
		if s.Name == "reference line" {
			arrow = s.Points[0].Y
		}
	}
	if arrow == 0 {
		t.Fatalf("%s: no reference line", name)
	}
	for _, s := range p.Shapes {
		if s.Name != "back run" && !strings.HasPrefix(s.Name, "backing ") {
			continue
		}
		for _, q := range s.Points {
			if standard == "iso" && q.Y < arrow+0.5 || standard == "aws" && q.Y > arrow+0.01 {
				t.Errorf("%s, %s: %s lies on the arrow side", name, standard, s.Name)
				break
			}
		}
	}
}

// Stitches that lie between one another have a Z through the line by ISO; by AWS the
// other side's sign stands further along.
func TestSymbolOfStaggeredStitches(t *testing.T) {
	for _, standard := range []string{"iso", "aws"} {
		for _, way := range []bool{false, true} {
			j := leg("W-1", 5, 8, 10, 2000, "PB")
			j.Sides, j.Stitch = 2, &joint.Stitch{Segment: 50, Gap: 100, Pitch: 150, Staggered: way}
			opts := metric
			opts.Symbols = standard
			p := sheetOf(faultless(t, jobOf(t, []joint.Joint{j}, opts)), "W-1")
			z := 0
			for _, s := range p.Shapes {
				if s.Name == "staggered" {
					z++
				}
			}
			if want := map[bool]int{true: 1}[way && standard == "iso"]; z != want {
				t.Errorf("%s, staggered %v: %d Zs", standard, way, z)
			}
			signs := map[float64]bool{} // where the signs begin
			for _, s := range p.Shapes {
				if s.Name == "sign" {
					signs[s.Points[0].X] = true
				}
			}
			if moved := len(signs) == 2; moved != (way && standard == "aws") {
				t.Errorf("%s, staggered %v: the signs stand at %v", standard, way, signs)
			}
		}
	}
}

// TestLookSymbols writes the sheets of the joints above into the folder named by
// SEAMTALLY_LOOK.
func TestLookSymbols(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the symbols")
	}
	for _, standard := range []string{"iso", "aws"} {
		opts := metric
		opts.Symbols = standard
		must(t, os.WriteFile(filepath.Join(dir, "symbols-"+standard+".pdf"), symbolSheets(t, opts), 0o644))
	}
}

func symbolSheets(t *testing.T, opts price.Options) []byte {
	var joints []joint.Joint
	for i, c := range farSides {
		j := butt(fmt.Sprintf("S-%02d", i+1), c.kind, 12, 500, "PA")
		if c.kind == joint.Fillet {
			j = leg(j.Mark, 6, 8, 10, 2000, "PB")
			j.Stitch = &joint.Stitch{Segment: 50, Gap: 100, Pitch: 150, Staggered: true}
		}
		j.Sides, j.Backing = c.sides, c.backing
		joints = append(joints, j)
	}
	pdf, err := Build(jobOf(t, joints, opts), Options{})
	must(t, err)
	return pdf
}

// The joint table of the cover has the sign of every joint beside its words.
func TestJointTableHasTheSigns(t *testing.T) {
	job := jobOf(t, everyKind(), metric)
	rows, signs := 0, map[string]bool{}
	for n, p := range faultless(t, job).Pages {
		for id, b := range p.Boxes {
			if b.Name != "joints row" {
				continue
			}
			rows++
			for _, s := range p.Shapes {
				if s.Name == "sign" && int(s.Box) == id {
					signs[fmt.Sprint(n, " ", id)] = true
				}
			}
		}
	}
	if rows != len(job.Plans) || len(signs) != rows {
		t.Errorf("%d joints, %d rows, %d of them with a sign", len(job.Plans), rows, len(signs))
	}
}
