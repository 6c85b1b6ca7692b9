package joint

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/tables"
)

func loadTables(t testing.TB) *tables.Set {
	t.Helper()
	files, err := tables.Open("")
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func understand(t testing.TB, set *tables.Set, text string, opt Options) (*List, error) {
	t.Helper()
	return understandText(set, text, opt)
}

func understandText(set *tables.Set, text string, opt Options) (*List, error) {
	src, _, err := list.Read("list.csv", []byte(text))
	if err != nil {
		return nil, err
	}
	return Understand(src, opt, set)
}

// Header layouts as shops write them: each must give one joint W1, 500 mm long,
// leg or throat 5 mm, thickness 6 mm.
func TestHeaderLayouts(t *testing.T) {
	set := loadTables(t)
	row := "W1;500;5;6"
	for i, text := range []string{
		"Mark;Length;Leg;Thickness\n" + row,
		"mark;length;leg;thickness\n" + row,
		"MARK;LENGTH;LEG;THICKNESS\n" + row,
		"Weld No;Length (mm);Leg (mm);t1 (mm)\n" + row,
		"Weld No.;Length [mm];Leg [mm];t1 [mm]\n" + row,
		"Weld number;Length, mm;Leg, mm;t1, mm\n" + row,
		"Joint No;Weld length;Leg size;Plate thickness\n" + row,
		"Weld ID;Seam length;Leg length;Thk\n" + row,
		"Joint ID;Length mm;Leg mm;Thickness mm\n" + row,
		"Mark;L;z;t\n" + row,
		"Mark;L (mm);z (mm);t (mm)\n" + row,
		"Mark;L;a;t\n" + row,
		"Mark;Length;Throat;Thickness\n" + row,
		"Mark;Length;Throat thickness;Thickness\n" + row,
		"Mark;Length;Size;Thickness\n" + row,
		"Mark;Length;Weld size;Thickness\n" + row,
		"Mark;Length;Fillet size;Thickness\n" + row,
		"Mark ;  Length ;Leg  ; Thickness\n" + row,
		"\"Mark\";\"Length\";\"Leg\";\"Thickness\"\n" + row,
		"\ufeffMark;Length;Leg;Thickness\n" + row,
		"\ufeff\"Mark\";Length;Leg;Thickness\n" + row,
		"Project X;;;\nMark;Length;Leg;Thickness\n" + row,
		"Project X;;;\nClient Y;;;\n;;;\nMark;Length;Leg;Thickness\n" + row,
		strings.Repeat("title;;;\n", 28) + "Mark;Length;Leg;Thickness\n" + row,
		"Mark;Length;Leg;Thickness\n;mm;mm;mm\n" + row,
		"Mark;Length;Leg;Thickness\n-;[mm];[mm];[mm]\n" + row,
		"Mark;Length;Leg;Thickness\n;;;\n" + row,
		"Mark;Length;Leg;Thickness\n1;2;3;4\n" + row,
		"Mark;Length;Weld;\n;;Leg;t1\n" + row,
		"Mark;Length;Weld size;Thickness\n;(mm);(mm);(mm)\n" + row,
		"Naht-Nr.;Länge;Schenkellänge;Blechdicke\n" + row,
		"Naht Nr;Länge [mm];a-Maß;t1\n" + row,
		"Nahtnummer;Nahtlänge;Kehlnahtdicke;Dicke\n" + row,
		"Nr spoiny;Długość;Grubość spoiny a;Grubość blachy\n" + row,
		"Numer spoiny;Długość spoiny;a;t1\n" + row,
		"№ шва;Длина;Катет;Толщина\n" + row,
		"Номер шва;Длина шва, мм;Катет, мм;Толщина, мм\n" + row,
		"№ шва;Длина (мм);Катет шва (мм);s\n" + row,
		"№ шва;Довжина;Катет;Товщина\n" + row,
		"Номер шва;Довжина шва;Катет шва;Товщина металу\n" + row,
		"Nº soldadura;Longitud;Cateto;Espesor\n" + row,
		"Soldadura;Longitud (mm);Garganta;Espesor (mm)\n" + row,
		"N° soudure;Longueur;Gorge;Épaisseur\n" + row,
		"Repère;Longueur (mm);Apothème;Epaisseur\n" + row,
		"N° saldatura;Lunghezza;Gola;Spessore\n" + row,
		"Mark,Length,Leg,Thickness\nW1,500,5,6",
		"Mark\tLength\tLeg\tThickness\nW1\t500\t5\t6",
		"Mark|Length|Leg|Thickness\nW1|500|5|6",
		"Mark;Length;Leg;Thickness\r\nW1;500;5;6\r\n",
		"Mark;Length;Leg;Thickness\rW1;500;5;6\r",
		"sep=;\nMark;Length;Leg;Thickness\n" + row,
		"Thickness;Leg;Length;Mark\n6;5;500;W1",
		"Colour;Mark;Price;Length;Leg;Thickness;Extra\nred;W1;1;500;5;6;x",
		"No;Mark;Length;Leg;Thickness\n1;W1;500;5;6",
		"Mark;Length;Leg;Thickness\nW1;500;5;6\nTotal;500;;",
		"Mark;Length;Leg;Thickness\nW1;500;5;6\n;500;;",
		"Mark;Length;Leg;Thickness\nFrame A;;;\nW1;500;5;6",
		"Mark;Length;Leg;Thickness\nW1;500;5;6\nMark;Length;Leg;Thickness\n",
		"Mark;Length;Leg;Thickness\nW1;500;5;6\n;;;\nDrawn: ______;;;\n",
		"Mark;Length;Leg;Thickness\nW1;500;5;6\nSubtotal Frame A;500;;\nGrand total;500;;\n",
		"Mark;Length (m);Leg;Thickness\nW1;0,5;5;6",
		"Mark;Length (cm);Leg (mm);Thickness (mm)\nW1;50;5;6",
		"Mark;Length;Leg;Thickness\nW1;500 mm;5 mm;6 mm",
		"Mark;Length;Leg;Thickness\nW1;0.5 m;z5;6",
		"Mark;Length;Weld size;Thickness\nW1;500;a5;6",
	} {
		l, err := understand(t, set, text, Options{})
		if err != nil {
			t.Errorf("layout %d: %v\n%s", i, err, text)
			continue
		}
		if len(l.Joints) != 1 {
			t.Errorf("layout %d: %d joints, want 1\n%s\n%v\n%v", i, len(l.Joints), text, l.Columns, l.Problems)
			continue
		}
		j := l.Joints[0]
		if j.Mark != "W1" || j.Length != 500 || j.Size.A != 5 || j.T1 != 6 || j.Kind != Fillet {
			t.Errorf("layout %d: %s %v %v %v\n%s", i, j.Mark, j.Length, j.Size, j.T1, text)
		}
		if len(l.Joints)+len(l.Others) != l.RowsRead {
			t.Errorf("layout %d: %d joints + %d others are not %d rows", i, len(l.Joints), len(l.Others), l.RowsRead)
		}
	}
}

func TestNoHeaderIsAClearQuestion(t *testing.T) {
	set := loadTables(t)
	for _, text := range []string{"a;b;c\n1;2;3\n", "just words\nmore words\n", "1;2;3\n4;5;6\n"} {
		_, err := understand(t, set, text, Options{})
		var r *list.Refusal
		if !errors.As(err, &r) || r.Hint == "" {
			t.Errorf("%q: %v", text, err)
		}
	}
	if _, err := understand(t, set, "Mark;Length;Leg;Thickness\n", Options{}); err == nil || !strings.Contains(err.Error(), "no joint") {
		t.Errorf("a header alone: %v", err)
	}
}

func TestEveryMistakeIsToldInOnePass(t *testing.T) {
	set := loadTables(t)
	text := "Mark;Kind;Length;Leg;t1;Qty;Sides;Position\n" +
		"A;fillet;q;q;q;q;q;q\n" +
		"B;fillet;500;5;6;1;1;PB\n" +
		"C;fillet;500;5;6;0;1;PB\n"
	l, err := understand(t, set, text, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(l.Joints) != 1 || l.Joints[0].Mark != "B" {
		t.Errorf("the good row must still be worked: %v", l.Joints)
	}
	cells := map[string]bool{}
	for _, p := range l.Problems {
		if p.Level == finding.Error {
			cells[p.Place.Cell()] = true
			if p.Text == "" || p.Hint == "" || p.Want == "" {
				t.Errorf("%s lacks a text, what was expected or what to do: %+v", p.Place.Cell(), p)
			}
		}
	}
	for _, cell := range []string{"C2", "D2", "E2", "F2", "G2", "H2", "F4"} {
		if !cells[cell] {
			t.Errorf("no problem for cell %s: %v", cell, cells)
		}
	}
}

func TestSizesAreLegThroatOrPenetrationNeverGuessed(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct {
		text  string
		means SizeKind
		a, b  float64
	}{
		{"z6", Leg, 6, 0}, {"Z6", Leg, 6, 0}, {"a4", Throat, 4, 0}, {"a=4", Throat, 4, 0}, {"a 4", Throat, 4, 0}, {"4a", Throat, 4, 0},
		{"6FW", Leg, 6, 0}, {"FW6", Leg, 6, 0}, {"6 CFW", Leg, 6, 0}, {"k6", Leg, 6, 0}, {"К6", Leg, 6, 0}, {"△6", Leg, 6, 0},
		{`1/4"`, Leg, 6.35, 0}, {"1/4", Leg, 6.35, 0}, {".25 in", Leg, 6.35, 0}, {"5/16 FW", Leg, 7.9375, 0}, {"6x8", Leg, 6, 8}, {"z6x8", Leg, 6, 8}, {"6×8", Leg, 6, 8},
		{"s8", Penetration, 8, 0}, {"PJP 8", Penetration, 8, 0}, {"(8)", Penetration, 8, 0}, {"a3,5", Throat, 3.5, 0}, {"6 mm", Leg, 6, 0}, {"z6 mm", Leg, 6, 0},
		{"6/8", NoSize, 0, 0}, {"big", NoSize, 0, 0}, {"z", NoSize, 0, 0}, {"a", NoSize, 0, 0}, {"z-6", NoSize, 0, 0}, {"6..8", NoSize, 0, 0}, {"50%", NoSize, 0, 0}, {"a6x8", NoSize, 0, 0}, {"z60", NoSize, 0, 0}, {"0", NoSize, 0, 0},
	} {
		kind := "fillet"
		if c.means == Penetration {
			kind = "single V"
		}
		text := fmt.Sprintf("Mark;Length;Weld size;t1;Kind\nW1;500;%s;12;%s\nW2;500;\"z6,5\";12;\n", strings.ReplaceAll(c.text, `"`, "″"), kind)
		l, err := understand(t, set, text, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got Size
		for _, j := range l.Joints {
			if j.Mark == "W1" {
				got = j.Size
			}
		}
		if got.Means != c.means || fmt.Sprintf("%.4f %.4f", got.A, got.B) != fmt.Sprintf("%.4f %.4f", c.a, c.b) {
			t.Errorf("%q: %+v, want %s %v %v; %v", c.text, got, c.means, c.a, c.b, l.Problems)
		}
	}
}

func TestStitchNotes(t *testing.T) {
	s := newSpellings(loadTables(t))
	for _, c := range []struct {
		text         string
		count        int
		segment, gap float64
		byPitch      bool
		staggered    bool
	}{
		{"5x50(100)", 5, 50, 100, false, false}, {"5 x 50 (100)", 5, 50, 100, false, false}, {"z6 5x50(100)", 5, 50, 100, false, false}, {"5×50(100)", 5, 50, 100, false, false},
		{"50-150", 0, 50, 100, true, false}, {"z6 50-150", 0, 50, 100, true, false}, {"50/150", 0, 50, 100, true, false}, {"△6-50/150", 0, 50, 100, true, false}, {"50Z150", 0, 50, 100, true, true},
		{"50@150", 0, 50, 100, true, false}, {"50 hit 100 miss", 0, 50, 100, false, false}, {"50-150 staggered", 0, 50, 100, true, true}, {"chain 50-150", 0, 50, 100, true, false},
		{"2 in-6 in", 0, 50.8, 101.6, true, false},
	} {
		got, bad := s.stitchOf(c.text, "", styleOf('.'))
		if bad != nil {
			t.Errorf("%q refused: %s", c.text, bad.Text)
			continue
		}
		if got.Count != c.count || fmt.Sprintf("%.3f", got.Segment) != fmt.Sprintf("%.3f", c.segment) || fmt.Sprintf("%.3f", got.Gap) != fmt.Sprintf("%.3f", c.gap) || got.ByPitch != c.byPitch || got.Staggered != c.staggered {
			t.Errorf("%q: %+v", c.text, got)
		}
	}
	for _, text := range []string{"50-40", "tack here", "5x0(100)", "x", "-"} {
		if got, bad := s.stitchOf(text, "", styleOf('.')); bad == nil && got != nil {
			t.Errorf("%q read as %+v", text, got)
		}
	}
}

// A list longer than a shop's machine can hold is refused with the limit.
func TestTooLongAListIsRefusedWithTheLimit(t *testing.T) {
	var text strings.Builder
	text.WriteString("mark,length,size\n")
	for range mostRows + 1 {
		text.WriteString("W,100,z4\n")
	}
	src, _, err := list.Read("long.csv", []byte(text.String()))
	if err != nil {
		t.Fatal(err)
	}
	set, err := tables.Load(&tables.Files{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Understand(src, Options{}, set); err == nil || !strings.Contains(err.Error(), "200000") {
		t.Errorf("%v", err)
	}
}

// A seam all round the mitred ends of two tubes is told by its length, in words.
func TestMitresInTheLength(t *testing.T) {
	set := loadTables(t)
	for text, want := range map[string]float64{"all round mitre 45": 45, "mitre 45°": 45, "All round, mitred 30 deg": 30, "mitred corner": 45, "Gehrung 22,5°": 22.5,
		"miter all around": 45, "mitre 75": -1, "mitre 0": -1, "a mitre": -1, "all round": 0} {
		l, err := understand(t, set, "Mark;Kind;Leg;Part 1;Part 2;Length;t1\nW1;fillet;5;RHS 100x50x4;RHS 100x50x4;"+text+";4\nW2;fillet;5;;;300;4\n", Options{})
		if err != nil {
			t.Fatal(err)
		}
		if refused := len(l.Joints) == 1; refused != (want < 0) {
			t.Errorf("%q: %d joints, %+v", text, len(l.Joints), l.Problems)
			continue
		}
		if j := l.Joints[0]; want >= 0 && (!j.AllRound || float64(j.Mitre) != want) {
			t.Errorf("%q: all round %v, mitre %v, want %v", text, j.AllRound, j.Mitre, want)
		}
	}
}

// Marks that a hasty eye takes for one another are alike, others are not.
func TestHastyMarks(t *testing.T) {
	for _, pair := range [][2]string{{"w1", "w01"}, {"w1", "w001"}, {"1", "1.0"}, {"1", "01"}, {"b2-03", "b2-3"}, {"10", "10.00"}, {"w10", "w010"}} {
		if hasty(pair[0]) != hasty(pair[1]) {
			t.Errorf("%q and %q are told apart: %q, %q", pair[0], pair[1], hasty(pair[0]), hasty(pair[1]))
		}
	}
	for _, pair := range [][2]string{{"w1", "w10"}, {"1.01", "1.1"}, {"w0", "w"}, {"a0b", "ab"}, {"10", "1"}, {"1.0", "1.01"}, {"w100", "w10"}} {
		if hasty(pair[0]) == hasty(pair[1]) {
			t.Errorf("%q and %q are taken for one", pair[0], pair[1])
		}
	}
}
