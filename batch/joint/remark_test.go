package joint

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
)

// What a remark asks for beside the row's own columns is told, once for each row, and
// never taken.
func TestRemarksThatChangeMetalAreTold(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct{ note, code string }{
		{"unterbrochen 40x100(200)", "remark-stitch"}, {"stitch welds, see detail", "remark-stitch"}, {"spoina przerywana", "remark-stitch"}, {"прерывистый шов", "remark-stitch"},
		{"3 x 50 (100) far side", "remark-stitch"}, {"cordón intermitente", "remark-stitch"},
		{"weld both sides of web", "remark-sides"}, {"Beidseitig schweißen", "remark-sides"}, {"obustronnie", "remark-sides"}, {"з двох боків", "remark-sides"}, {"deux côtés", "remark-sides"},
		{"NDT: not required", ""}, {"PWHT (not required)", ""}, {"Painting: by others", ""}, {"Bolts M16 (by others)", ""}, {"Omit paint within 50 mm", ""}, {"Delete sharp edges", ""}, {"void free", ""},
		{"Site bolts, not required to be tightened", ""}, {"Fit up checked. Deleted.", "remark-removed"}, {"Rev B. Weld by others.", "remark-others"}, {"Rev B: deleted", "remark-removed"}, {"stiffener (deleted)", "remark-removed"},
		{"DELETED", "remark-removed"}, {"Deleted rev C", "remark-removed"}, {"weld deleted, see ECN 4", "remark-removed"}, {"VOID", "remark-removed"}, {"cancelled", "remark-removed"}, {"entfällt", "remark-removed"},
		{"Naht gestrichen", "remark-removed"}, {"soudure supprimée", "remark-removed"}, {"cordón eliminado", "remark-removed"}, {"annullato", "remark-removed"}, {"cancelada", "remark-removed"}, {"spoina usunięta", "remark-removed"},
		{"шов удалён", "remark-removed"}, {"скасовано", "remark-removed"},
		{"not deleted", ""}, {"bolt holes deleted", ""}, {"no voids", ""}, {"fill void behind plate", ""}, {"nicht gestrichen", ""}, {"не удалён", ""}, {"avoid distortion", ""},
		{"by others", "remark-others"}, {"site weld by others", "remark-others"}, {"painted by others", ""}, {"bauseits", "remark-others"}, {"przez innych", "remark-others"}, {"por otros", "remark-others"}, {"da altri", "remark-others"},
		{"par d'autres", "remark-others"}, {"por outros", "remark-others"}, {"силами заказчика", "remark-others"}, {"іншими", "remark-others"},
		{"opposite hand as well", "remark-hand"}, {"also opp. hand", "remark-hand"}, {"as drawn & opp hand", "remark-hand"}, {"auch spiegelbildlich", "remark-hand"}, {"także lustrzane", "remark-hand"}, {"y simétrico", "remark-hand"},
		{"anche speculare", "remark-hand"}, {"aussi symétrique", "remark-hand"}, {"também espelhado", "remark-hand"}, {"также зеркально", "remark-hand"}, {"також дзеркально", "remark-hand"},
		{"opposite hand", ""}, {"not also opp hand", ""}, {"on the other hand side", ""},
		{"preheat 100", "remark-preheat"}, {"Preheat to 100°C min", "remark-preheat"}, {"Vorwärmen auf 120 °C", "remark-preheat"}, {"podgrzać do 100", "remark-preheat"}, {"precalentar a 100", "remark-preheat"},
		{"preriscaldare a 100 °C", "remark-preheat"}, {"préchauffage 100", "remark-preheat"}, {"pré-aquecer a 100", "remark-preheat"}, {"подогрев до 100", "remark-preheat"}, {"підігрів 100", "remark-preheat"},
		{"no preheat", ""}, {"preheat as WPS", ""}, {"preheat 75 mm each side", ""}, {"without preheat below 100", ""},
		{"base plate to flange", ""}, {"M12 x 40 (2) bolts", ""}, {"grind flush", ""}, {"", ""}, {"see detail 3/12", ""},
	} {
		l, err := understand(t, set, "mark,kind,size,length,t1,t2,note\nA,fillet,z5,700,6,6,\""+c.note+"\"\nB,fillet,z5,800,6,6,\n", Options{})
		if err != nil || len(l.Joints) != 2 || l.Joints[0].Stitch != nil || l.Joints[0].Sides != 1 {
			t.Fatalf("%q: %v %+v", c.note, err, l)
		}
		var got []string
		for _, p := range l.Problems {
			if strings.HasPrefix(p.Code, "remark-") {
				got = append(got, p.Code+" "+p.Place.Cell())
			}
		}
		want := ""
		if c.code != "" {
			want = c.code + " G2"
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q: told %q, want %q", c.note, got, want)
		}
	}
	l, err := understand(t, set, "mark,kind,size,length,t1,t2,sides,stitch,note\nA,fillet,z5,900,6,6,1,5x50(100),intermittent on both sides\n", Options{})
	if err != nil || len(told(l, "remark-stitch"))+len(told(l, "remark-sides")) != 0 {
		t.Errorf("a row that says it itself is doubted: %v %+v", err, l.Problems)
	}
}

// A seam that is many times as long as all others is doubted at its cell; a list of
// seams that grow is not.
func TestTheOneSeamThatStandsOut(t *testing.T) {
	set := loadTables(t)
	rows := func(lengths ...string) string {
		text := "mark,size,length (mm),t1\n"
		for i, v := range lengths {
			text += string(rune('A'+i)) + ",z5," + v + ",6\n"
		}
		return text
	}
	for _, c := range []struct {
		lengths []string
		cell    string
	}{
		{[]string{"400", "500", "50000", "700", "7000", "300", "200", "900"}, "C4"},
		{[]string{"400", "500", "6000", "700", "900", "300", "200", "900"}, ""},
		{[]string{"400", "500", "9100", "700", "900", "300", "200", "1000"}, "C4"},
		{[]string{"400", "500", "12000", "700", "7000", "300", "200", "900"}, ""},
		{[]string{"40", "50", "700", "70", "60", "30", "20", "90"}, ""},
		{[]string{"400", "50000"}, ""},
	} {
		l, err := understand(t, set, rows(c.lengths...), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := told(l, "length-stands-out")
		if c.cell == "" && len(got) != 0 || c.cell != "" && (len(got) != 1 || got[0].Place.Cell() != c.cell || got[0].Level != finding.Warning) {
			t.Errorf("%v: told %+v, want %q", c.lengths, got, c.cell)
		}
	}
}
