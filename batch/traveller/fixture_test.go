package traveller

import (
	"sync"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/units"
	"seamtally/tables"
	"seamtally/templates"
)

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

var metric = price.Options{Date: "2026-02-03", Codes: "iso", Symbols: "iso", Paper: "a4", Lang: "en"}

// leg and butt are the two ways in which a fixture joint is given.
func leg(mark string, z, t1, t2 units.MM, length units.MM, position string) joint.Joint {
	return joint.Joint{
		Mark: mark, Assembly: "Frame A", Drawing: "DR-100", Rev: "B", Qty: 1, Length: length,
		Detail: &joint.Detail{
			Kind: joint.Fillet, Sides: 1, Size: joint.Size{Means: joint.Leg, A: z, Text: "z"}, T1: t1, T2: t2, Material: "S355", Position: position, Where: joint.Shop,
		},
	}
}

func butt(mark string, kind joint.Kind, t units.MM, length units.MM, position string) joint.Joint {
	j := leg(mark, 0, t, t, length, position)
	j.Kind, j.Size, j.Assembly = kind, joint.Size{}, "Frame B"
	return j
}

// builtIn is the built-in tables, loaded once.
var builtIn = sync.OnceValues(func() (*tables.Set, error) {
	files, err := tables.Open("")
	if err != nil {
		return nil, err
	}
	return tables.Load(files)
})

// jobOf plans and prices joints.
func jobOf(t testing.TB, joints []joint.Joint, opts price.Options) *price.Job {
	t.Helper()
	set, err := builtIn()
	must(t, err)
	shop, err := rates.Default(set)
	must(t, err)
	for i := range joints {
		joints[i].Place = finding.Place{File: "frame.csv", Row: i + 2}
	}
	l := joint.List{File: "frame.csv", SHA256: "3fa9c1d20b7e45aa", Joints: joints}
	plans := plan.Joints(joints, set, &shop, plan.Options{Codes: opts.Codes})
	if opts.US { // as the program has it
		plan.Imperial(plans)
	}
	job := price.Price(l, plans, shop, nil, opts)
	job.Version, job.TablesEdition = "0.1", "0123abcd"
	return &job
}

// everyKind is one joint of each kind, and the cases that change a sheet.
func everyKind() []joint.Joint {
	both := leg("W-003", 5, 6, 10, 1250, "PB")
	both.Sides, both.Qty = 2, 4
	throat := leg("W-004", 7.0710678, 12, 20, 800, "PF")
	throat.Size = joint.Size{Means: joint.Throat, A: 5, Text: "a5"}
	skew := leg("W-005", 6, 8, 12, 300, "PB")
	skew.Angle = 60
	uneven := leg("W-006", 6, 10, 12, 300, "PB")
	uneven.Size.B = 9
	stitched := leg("W-007", 4, 4, 6, 2000, "PB")
	stitched.Stitch = &joint.Stitch{Segment: 50, Gap: 100, Pitch: 150, Text: "14 x 50 (100)"}
	named := leg("W-008", 6, 8, 8, 400, "PD")
	named.WPS, named.Where = "WPS-12", joint.Site
	lap := leg("L-001", 3, 3, 3, 500, "PB")
	lap.Kind = joint.Lap
	corner := leg("C-001", 4, 4, 4, 500, "PB")
	corner.Kind = joint.Corner
	bare := leg("X-001", 6, 0, 0, 700, "PB")
	bare.Material = ""
	inox := leg("N-001", 3, 3, 3, 700, "PB")
	inox.Material = "304L"
	out := []joint.Joint{leg("W-001", 6, 8, 10, 1250, "PB"), leg("W-002", 6, 8, 10, 640, "PB"), both, throat, skew, uneven, stitched, named,
		leg("W-009", 14, 25, 30, 900, "PB"), lap, corner, bare, inox}
	for _, k := range []joint.Kind{joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV, joint.DoubleBevel,
		joint.SingleU, joint.SingleJ, joint.DoubleU, joint.DoubleJ, joint.FlareBevel, joint.FlareV, joint.Plug, joint.Slot, joint.Edge} {
		t := units.MM(12)
		switch k {
		case joint.SquareButt, joint.Plug, joint.Slot, joint.FlareBevel, joint.FlareV, joint.Edge:
			t = 4
		case joint.DoubleV, joint.DoubleBevel, joint.DoubleU, joint.DoubleJ:
			t = 25
		}
		out = append(out, butt("B-"+string(k), k, t, 600, "PA"))
	}
	return out
}

func mustWords(t testing.TB) templates.Words {
	t.Helper()
	w, err := templates.Wording("en")
	must(t, err)
	return w
}
