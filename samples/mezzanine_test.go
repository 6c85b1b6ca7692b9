package samples

import "regexp"

// A row of the mezzanine's joint list, as the drawing office would type it.
type row struct {
	mark   string
	qty    int
	kind   string
	length any // millimetres, or a ring for the way round a tube
	sides  int
	stitch string
	size   string
	t1, t2 float64
	prep   prep
	mat    string
	pos    string
	where  string
	wps    string
	ndt    string
	note   string
}

// ring is the way round a tube of an outside diameter, times a factor for the
// saddle curve where one tube meets another.
type ring struct{ dia, factor float64 }

// prep is the edge preparation of a butt.
type prep struct {
	angle, gap, face float64
	backing          string
}

// group is one assembly with its heading row in the list.
type group struct {
	code, title, drawing string
	rows                 []row
}

// isoStitch is a stitch of the mezzanine: number x length (gap).
var isoStitch = regexp.MustCompile(`^(\d+)x(\d+)\((\d+)\)`)

const (
	shop = "shop"
	site = "site"
)

var (
	v60      = prep{60, 3, 1.5, "ceramic"}
	v60Gouge = prep{60, 2, 1.5, "gouge"}
	hv50Bar  = prep{50, 4, 0, "bar"}
	none     = prep{}
)

// mezzanine is the whole list: an invented storage platform of 12 x 6 m on six
// columns, with one stair, a handrail and a plinth for a machine.
var mezzanine = []group{
	{"C1", "Columns C1 to C6, HEB 160, 6 off", "MZ-11", []row{
		{"C1-01", 12, "fillet", 160, 1, "", "a6", 13, 20, none, "S355J2", "PB", shop, "", "VT", "Outside of flange to base plate"},
		{"C1-02", 24, "fillet", 61, 1, "", "z6", 13, 20, none, "S355J2", "PB", shop, "", "VT", "Inside of flange, each side of the web"},
		{"C1-03", 6, "fillet", 104, 2, "", "z5", 8, 20, none, "S355J2", "PB", shop, "", "VT", "Web to base plate"},
		{"C1-04", 12, "fillet", 160, 1, "", "z6", 13, 15, none, "S355J2", "PB", shop, "", "VT", "Flange to cap plate"},
		{"C1-05", 6, "fillet", 104, 2, "", "z5", 8, 15, none, "S355J2", "PB", shop, "", "VT", "Web to cap plate"},
		{"C1-06", 24, "fillet", 55, 2, "", "z5", 10, 13, none, "S355J2", "PB", shop, "", "VT", "Stiffener ends to flanges, corners clipped"},
		{"C1-07", 12, "fillet", 100, 2, "", "z5", 10, 8, none, "S355J2", "PB", shop, "", "VT", "Stiffeners to web"},
		{"C1-08", 8, "fillet", 180, 2, "", "z8", 10, 13, none, "S355J2", "PB", shop, "", "VT+MT", "Fin plate to flange"},
		{"C1-09", 8, "fillet", 170, 2, "", "z6", 10, 8, none, "S355J2", "PF", shop, "", "VT", "Gusset to web; column stands on its base by then"},
		{"C1-10", 6, "fillet", 80, 2, "", "z10", 25, 20, none, "S355J2", "PB", shop, "", "VT+MT", "Shear key under base plate"},
	}},
	{"B1", "Main beams B1 to B3, IPE 300, 3 off", "MZ-12", []row{
		{"B1-01", 12, "fillet", 150, 1, "", "a5", 10.7, 15, none, "S355J2", "PB", shop, "", "VT", "Outside of flange to end plate"},
		{"B1-02", 24, "fillet", 56, 1, "", "z6", 10.7, 15, none, "S355J2", "PB", shop, "", "VT", "Inside of flange, each side of the web"},
		{"B1-03", 6, "fillet", 249, 2, "", "a4", 7.1, 15, none, "S355J2", "PB", shop, "", "VT", "Web to end plate"},
		{"B1-04", 16, "fillet", 140, 2, "", "z6", 8, 7.1, none, "S355J2", "PB", shop, "", "VT", "Fin plates for secondary beams"},
		{"B1-05", 12, "fillet", 230, 2, "", "z5", 8, 7.1, none, "S355J2", "PB", shop, "", "VT", "Stiffeners to web under point loads"},
		{"B1-06", 24, "fillet", 50, 2, "", "z5", 8, 10.7, none, "S355J2", "PB", shop, "", "VT", "Stiffeners to flanges, corners clipped"},
		{"B1-07", 4, "single V", 150, 1, "", "", 10.7, 10.7, v60, "S355J2", "PA", site, "SP-03", "VT+UT", "Splice, flanges, cope hole in the web"},
		{"B1-08", 2, "single V", 249, 1, "", "", 7.1, 7.1, v60, "S355J2", "PF", site, "SP-04", "VT+UT", "Splice, web, before the flanges are closed"},
		{"B1-09", 4, "fillet", 320, 2, "", "z6", 10, 12, none, "S355J2", "PB", shop, "", "VT", "Bracket web to bracket flange"},
		{"B1-10", 4, "single bevel", 150, 1, "", "", 12, 15, hv50Bar, "S355J2", "PA", shop, "SP-05", "VT+UT", "Bracket flange to end plate"},
	}},
	{"T1", "Trimmer girder T1, welded from plate, 1 off", "MZ-13", []row{
		{"T1-01", 2, "fillet", 5400, 2, "", "z5", 8, 12, none, "S355J2", "PB", shop, "", "VT", "Web to flanges, full length"},
		{"T1-02", 2, "single V", 160, 1, "", "", 12, 12, v60Gouge, "S355J2", "PA", shop, "SP-01", "VT+UT", "Flange plate joint, run-off tabs, before assembly"},
		{"T1-03", 1, "single V", 360, 1, "", "", 8, 8, v60Gouge, "S355J2", "PA", shop, "SP-01", "VT+UT", "Web plate joint, before assembly"},
		{"T1-04", 6, "fillet", 320, 2, "4x50(40)", "a3", 8, 8, none, "S355J2", "PB", shop, "", "VT", "Stiffeners to web"},
		{"T1-05", 12, "fillet", 65, 2, "", "z5", 8, 12, none, "S355J2", "PB", shop, "", "VT", "Stiffeners to flanges"},
		{"T1-06", 2, "fillet", 360, 2, "", "z6", 8, 15, none, "S355J2", "PB", shop, "", "VT", "Web to end plates"},
		{"T1-07", 4, "fillet", 160, 1, "", "a5", 12, 15, none, "S355J2", "PB", shop, "", "VT", "Outside of flange to end plates"},
	}},
	{"S1", "Secondary beams IPE 200 and edge members UPN 200", "MZ-14", []row{
		{"S1-01", 16, "fillet", 110, 2, "", "a3", 5.6, 10, none, "S235JR", "PB", shop, "", "VT", "Web to part-depth end plate"},
		{"S1-02", 2, "lap", 5790, 1, "42x50(90)", "a3", 6, 8.5, none, "S235JR", "PB", shop, "", "VT", "Edge angle on top flange"},
		{"S1-03", 4, "single bevel", 200, 1, "", "", 8.5, 8.5, hv50Bar, "S235JR", "PF", shop, "SP-05", "VT", "Opening frame, web of UPN to web of UPN"},
		{"S1-04", 8, "single bevel", 75, 1, "", "", 11.5, 11.5, hv50Bar, "S235JR", "PA", shop, "SP-05", "VT", "Opening frame, flanges"},
	}},
	{"P1", "Floor plate 6 mm, raised pattern", "MZ-15", []row{
		{"P1-01", 12, "lap", 1440, 1, "8x40(160)", "z4", 6, 8.5, none, "S235JR", "PB", site, "", "VT", "Plate edge to beam flange"},
		{"P1-02", 5, "lap", 2850, 1, "15x50(150)", "z5", 6, 6, none, "S235JR", "PA", site, "", "VT", "Plate over plate; grind pattern off under the weld"},
		{"P1-03", 12, "lap", 1240, 1, "6x40(200)", "z4", 8.5, 6, none, "S235JR", "PD", site, "", "VT", "From below, flange edge to plate"},
		{"P1-04", 2, "fillet", 2850, 2, "21x50(90) staggered", "a3", 6, 6, none, "S235JR", "PB", shop, "", "VT", "Upstand 100x6 on plate edge"},
		{"P1-05", 4, "square butt", 600, 1, "", "", 6, 6, prep{0, 4, 0, "bar"}, "S235JR", "PA", site, "", "VT", "Make-up strip on a 30x4 flat"},
		{"P1-06", 4, "corner", 60, 1, "", "z5", 6, 6, none, "S235JR", "PA", shop, "", "VT", "Hatch tray, outside of folded corner"},
	}},
	{"ST1", "Stair ST1, 17 treads, stringers UPN 200", "MZ-21", []row{
		{"ST1-01", 34, "fillet", 240, 1, "3x40(60)", "z4", 5, 8.5, none, "S235JR", "PB", shop, "", "VT", "Tread ends to stringer, from above"},
		{"ST1-02", 34, "fillet", 60, 1, "", "z4", 5, 8.5, none, "S235JR", "PF", shop, "", "VT", "Front fold of tread to stringer"},
		{"ST1-03", 17, "fillet", 790, 1, "9x30(65)", "z3", 5, 5, none, "S235JR", "PB", shop, "", "VT", "Stiffener 50x5 under tread"},
		{"ST1-04", 2, "fillet", 170, 2, "", "z6", 8.5, 12, none, "S235JR", "PB", shop, "", "VT", "Stringer web to foot plate"},
		{"ST1-05", 4, "fillet", 75, 1, "", "z6", 11.5, 12, none, "S235JR", "PB", shop, "", "VT", "Stringer flanges to foot plate"},
		{"ST1-06", 2, "single V", 200, 1, "", "", 8.5, 8.5, v60Gouge, "S235JR", "PA", shop, "SP-01", "VT", "Stringer mitre at landing, web"},
		{"ST1-07", 4, "single V", 75, 1, "", "", 11.5, 11.5, v60Gouge, "S235JR", "PA", shop, "SP-01", "VT", "Stringer mitre at landing, flanges"},
		{"ST1-08", 6, "lap", 1050, 1, "6x50(150)", "z4", 5, 8.5, none, "S235JR", "PB", shop, "", "VT", "Landing plate to frame"},
		{"ST1-09", 4, "single bevel", 100, 1, "", "", 6, 8.5, prep{50, 3, 1, "gouge"}, "S235JR", "PA", shop, "SP-01", "VT", "Landing frame UPN 100, web to stringer web"},
		{"ST1-10", 2, "fillet", 180, 2, "", "z6", 12, 8.5, none, "S235JR", "PF", site, "", "VT", "Head plate to trimmer, after setting out"},
	}},
	{"HR1", "Handrail HR1, posts and rail CHS 48.3x3.2, galvanised after welding", "MZ-31", []row{
		{"HR1-01", 22, "fillet", ring{48.3, 1}, 1, "", "z4", 3.2, 10, none, "S235JRH", "PB", shop, "", "VT", "Post to foot plate, all round"},
		{"HR1-02", 22, "fillet", ring{48.3, 1.12}, 1, "", "a3", 3.2, 3.2, none, "S235JRH", "PB", shop, "", "VT", "Top rail on post, saddle cut"},
		{"HR1-03", 44, "fillet", ring{33.7, 1.05}, 1, "", "z3", 2.6, 3.2, none, "S235JRH", "PB", shop, "", "VT", "Knee rail CHS 33.7x2.6 to post, frame turned"},
		{"HR1-04", 44, "fillet", 50, 1, "", "z3", 5, 3.2, none, "S235JR", "PF", shop, "", "VT", "Toe plate 100x5 to post"},
		{"HR1-05", 6, "square butt", ring{48.3, 1}, 1, "", "", 3.2, 3.2, prep{0, 2, 0, "bar"}, "S235JRH", "PA", shop, "", "VT", "Rail joints on inside sleeve, turned"},
		{"HR1-06", 4, "square butt", 100, 1, "", "", 5, 5, prep{0, 2, 0, ""}, "S235JR", "PA", shop, "", "VT", "Toe plate joints"},
		{"HR1-07", 4, "square butt", ring{48.3, 1}, 1, "", "", 3.2, 3.2, prep{0, 2, 0, "bar"}, "S235JRH galvanised", "PC", site, "", "VT", "Post closing joint, tube upright; strip zinc 25 mm back"},
		{"HR1-08", 8, "lap", 100, 1, "", "z4", 5, 5, none, "S235JR galvanised", "PF", site, "", "VT", "Toe plate splice; strip zinc, touch up after"},
		{"HR1-09", 2, "fillet", 60, 2, "", "z3", 8, 3.2, none, "S235JRH", "PB", shop, "", "VT", "Gate hinge lug to post"},
	}},
	{"BR1", "Bracing BR1, CHS 88.9x4 with gussets", "MZ-16", []row{
		{"BR1-01", 32, "fillet", 140, 1, "", "a3", 4, 10, none, "S355J2H", "PB", shop, "", "VT", "Slotted tube to gusset, four lines an end"},
		{"BR1-02", 8, "fillet", ring{88.9, 1}, 1, "", "a3", 4, 6, none, "S355J2H", "PB", shop, "", "VT", "End cap on tube, airtight"},
		{"BR1-03", 4, "single bevel", 160, 1, "", "", 10, 13, hv50Bar, "S355J2", "PF", site, "SP-04", "VT+UT", "Gusset to column flange"},
		{"BR1-04", 4, "fillet", 150, 2, "", "z6", 10, 10.7, none, "S355J2", "PD", site, "", "VT", "Gusset to underside of beam"},
	}},
	{"EQ1", "Machine plinth EQ1", "MZ-41", []row{
		{"EQ1-01", 1, "double V", 800, 1, "", "", 25, 25, prep{60, 2, 2, ""}, "S355J2", "PA", shop, "SP-02", "VT+UT", "Pad plate joint, turned over"},
		{"EQ1-02", 4, "fillet", 580, 1, "", "z8", 8, 25, none, "S355J2H", "PB", shop, "", "VT+MT", "Stub SHS 150x8 to pad plate, all round"},
		{"EQ1-03", 4, "single bevel", 150, 1, "", "s8", 16, 25, prep{45, 0, 8, ""}, "S355J2", "PA", shop, "SP-05", "VT", "Guide lug, partial penetration"},
		{"EQ1-04", 8, "fillet", 120, 2, "", "z10", 16, 25, none, "S355J2", "PB", shop, "", "VT+MT", "Gussets to pad plate"},
	}},
}
