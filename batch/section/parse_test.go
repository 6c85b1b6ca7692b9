package section

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// TestSpellings reads each section in the spellings of real lists; what it must be
// is written out as its standard spells it.
func TestSpellings(t *testing.T) {
	set := load(t)
	for want, spellings := range map[string][]string{
		"SHS 100x100x5":       {"SHS 100x100x5", "SHS100×100×5", "shs 100 x 100 x 5", "SHS 100x5", "100x100x5 SHS", "100*100*5 shs", "SHS 100х100х5", "SHS 100X100X5,0", "SHS 100x100x5mm S355J2H", "box 100x100x5", "SHS 100x100x5 EN 10219-2"},
		"RHS 100x50x4":        {"RHS 100x50x4", "RHS100×50×4", "100x50x4 RHS", "RHS 100*50*4", "RHS 100/50/4", "RHS 100/50x4", "100 / 50 / 4 RHS", "RHS-100x50x4", "tube 100x50x4", "RHS 100x50x4.0 CF", "RHS 50x100x4"},
		"CHS 114.3x5":         {"CHS 114.3x5", "CHS 114,3x5", "Ø114.3x5", "Ø 114,3 x 5 mm", "tube 114.3x5", "114.3x5", "CHS114.3×5.0", "pipe 114.3x5", "D114.3x5"},
		"CHS 60.3x3.2":        {"tube 60.3x3.2", "CHS 60,3*3,2", "CHS 60.3/3.2", "CHS 60,3/3,2", "труба 60,3х3,2"},
		"L 60x60x6":           {"L 60x60x6", "L60x6", "L60x60x6", "60x60x6 L", "angle 60x60x6", "L 60*6", "L 60/6", "L 60/60/6", "∠60x6"},
		"L 100x65x8":          {"L 100x65x8", "L 65x100x8", "L100×65×8"},
		"IPE 200":             {"IPE 200", "IPE200", "ipe-200", "200 IPE", "IPE 200 S355 DIN 1025-5"},
		"IPE A 200":           {"IPE A 200", "IPEA 200", "IPE 200 A", "IPE200A", "ipe-a 200"},
		"IPE AA 200":          {"IPE AA 200", "IPEAA200", "IPE 200 AA"},
		"IPE O 300":           {"IPE O 300", "IPEO 300", "IPE 300 O"},
		"IPE V 400":           {"IPE V 400", "IPEV400"},
		"IPE 750x147":         {"IPE 750x147", "IPE750×147"},
		"HEC 200":             {"HEC 200", "HE 200 C"},
		"UBP 305x305x79":      {"UBP 305x305x79", "305x305x79 UBP", "UKBP 305x305x79"},
		"T 50":                {"T 50", "T50", "T 50x50x6", "T50x6", "tee 50x50x6"},
		"GOST 10П":            {"швеллер 10П", "Швеллер №10П ГОСТ 8240-97", "швеллер 10 П", "швелер 10П"},
		"GOST 16аУ":           {"швеллер 16а", "швеллер 16аУ"},
		"GOST 6.5П":           {"швеллер 6,5П"},
		"GOST I20":            {"двутавр 20", "Двутавр №20 ГОСТ 8239-89"},
		"L 50x50x5":           {"уголок 50х50х5", "∟50x50x5", "∟50x5", "L50x50x5", "уголок 50х50х5 ГОСТ 8509-93", "L 50x50x5 DIN 1028"},
		"SHS 60x60x4":         {"SHS 60x60x4", "60x60x4 box", "труба профильная 60х60х4", "труба 60х60х4"},
		"CHS 48.3x3.2":        {"tube 48.3x3.2", "Ø48,3x3,2", "труба 48,3х3,2"},
		"MC8X20":              {"MC8X20", "MC 8x20"},
		"S8X18.4":             {"S8X18.4", "S 8 x 18.4"},
		"M8X6.5":              {"M8X6.5"},
		"HP12X53":             {"HP12X53", "HP 12 x 53", "HP310x79"},
		"WT6X13":              {"WT6X13", "WT 6 x 13"},
		"WT22X167.5":          {"WT22X167.5"},
		"ST12X60.5":           {"ST12X60.5"},
		"Pipe4STD":            {"Pipe4STD", "PIPE 4 STD", "4\" STD pipe", "4 in. STD pipe", "pipe 4 sch 40", "NPS 4 SCH40"},
		"Pipe1-1/2XS":         {"Pipe1-1/2XS", "pipe 1 1/2 XS", "1-1/2\" sch 80 pipe"},
		"W8X31":               {"W200x46", "W200X46.1", "W 200 x 46"},
		"W36X150":             {"W920x223"},
		"C6X8.2":              {"C150x12", "C150x12.2"},
		"HSS3-1/2X3-1/2X3/16": {"HSS 89x89x4.8", "HSS3-1/2X3-1/2X3/16"},
		"HSS4.500X0.237":      {"HSS4.500X0.237", "HSS 4.500x.237", "HSS 4.500 x .237"},
		"HSS6X6X1/4":          {"HSS 6x6x.250", "HSS 6x6x1/4", "HSS6.000X6.000X0.250"},
		"HEA 200":             {"HEA 200", "HE 200 A", "HE200A", "HE-A 200", "HEA200", "HE A 200"},
		"HEB 200":             {"HEB 200", "HE 200 B", "HE200B"},
		"HEM 200":             {"HEM 200", "HE 200 M"},
		"UPN 100":             {"UPN 100", "U 100", "U100", "UNP 100", "UPN100 S235JR"},
		"UPE 160":             {"UPE 160", "UPE160"},
		"INP 160":             {"INP 160", "IPN 160"},
		"flat 100x10":         {"-10x100", "– 100x10", "полоса 100х10", "Flat 100x10", "FL 100x10", "100*10", "FL100x10", "FL 100/10", "FL 10/100", "flat 10x100", "FLAT 100 x 10", "100x10", "PL 10x100"},
		"plate 10":            {"Bl. 10", "-10", "лист 10", "PL10", "PL 10", "plate 10 mm", "Bl 10"},
		"round 20":            {"D20", "Ø20", "RD 20", "Ø 20 mm", "round 20"},
		"square 20":           {"SQ 20", "square 20", "□20"},
		"HSS4X4X1/4":          {"HSS 102x102x6.4", "HSS101.6x101.6x6.4", "HSS4x4x1/4", "HSS 4x4x1/4", "HSS 4 x 4 x 1/4"},
		"L4X4X1/4":            {"L102x102x6.4", "L 102x102x6.4"},
		"L6X4X3/8":            {"L152x102x9.5", "L102x152x9.5"},
		"L4X4X1/2":            {"L4X4X1/2", "L 4 x 4 x 1/2", "L4x4x1/2 A36"},
		"C8X11.5":             {"C8X11.5", "C 8x11.5"},
		"W12X26":              {"W12X26", "W 12 x 26", "W310x39", "W310X38.7"},
		"HEAA 200":            {"HEAA 200", "HE 200 AA", "HE200AA", "HE-AA 200"},
		"UB 457x191x67":       {"UB 457x191x67", "457 x 191 x 67 UB", "UKB 457x191x67", "UB 457/191/67", "UB457×191×67"},
		"UC 203x203x46":       {"UC 203x203x46", "203x203x46 UC", "UKC 203x203x46"},
		"L3-1/2X3-1/2X1/4":    {"L3-1/2X3-1/2X1/4", "L 3 1/2 x 3 1/2 x 1/4", "L3.5x3.5x0.25 in", "L3-1/2x1/4"},
		"L6X4X1/2":            {"L6X4X1/2", "L4X6X1/2"},
		"L6X6X1":              {"L6X6X1"},
		"UPN 300":             {"UPN 300", "[ 300 UPN"},
		"PFC 300x100x46":      {"PFC 300x100x46", "300x100x46 PFC"},
	} {
		for _, text := range spellings {
			s, err := Parse(text, set)
			if err != nil {
				t.Errorf("%q: %v", text, err)
			} else if s.Designation != want {
				t.Errorf("%q is %q, want %q", text, s.Designation, want)
			}
		}
	}
}

// TestFormed: cold unless the designation says otherwise.
func TestFormed(t *testing.T) {
	set := load(t)
	for text, cold := range map[string]bool{
		"SHS 100x100x5": true, "SHS 100x100x5 HF": false, "SHS 100x100x5 EN 10210": false, "SHS 100x100x5 EN10210-2": false,
		"SHS 100x100x5 CF": true, "CHS 114.3x5 EN 10219": true, "HFRHS 100x50x5": false, "CFRHS 100x50x5": true, "EN 10210 RHS 100x50x5": false,
	} {
		s, err := Parse(text, set)
		if err != nil {
			t.Errorf("%q: %v", text, err)
		} else if s.Cold != cold {
			t.Errorf("%q: cold %v, want %v", text, s.Cold, cold)
		}
	}
}

// TestWhatIsNoSection: an error that names what is near, never a guess.
func TestWhatIsNoSection(t *testing.T) {
	set := load(t)
	for text, near := range map[string]string{
		"IPE 210": "IPE 200", "HEA 210": "HEA 200", "L 61x6": "L 60x60x6", "UPN 110": "UPN 100", "UPE 150": "UPE 160", "HE 130 B": "HEB 120",
		"SHS 100x100": "", "SHS 100x100x60": "", "CHS 60.3x40": "", "60x60x6": "", "IPE": "", "": "", "frame": "", "SHS 0x0x0": "", "RHS 100x50x4x2": "",
		"SHS 100x100x5 and 3": "", "L4X4X1/0": "", "x": "", "SHS 1/0x3x2": "", "L 3/4": "", "FL 25/8": "", "FL 0x10": "", "D0": "",
	} {
		s, err := Parse(text, set)
		var bad *Error
		if !errors.As(err, &bad) {
			t.Errorf("%q is taken as %q", text, s.Designation)
			continue
		}
		if near != "" && !strings.Contains(strings.Join(bad.Near, ","), near) {
			t.Errorf("%q: %v does not name %s", text, err, near)
		}
	}
}

// FuzzParse: whatever is written, the answer is an error or a section of finite
// figures, and its own designation reads as itself.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"SHS 100x100x5", "L4X4X1/2", "HE 200 A", "Ø20", "PL10", "C8X11.5", "RHS 100,5x50x4 HF EN 10210-2:2006 S355", "1-1/2x1/4"} {
		f.Add(s)
	}
	set := load(f)
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Parse(text, set)
		if err != nil {
			return
		}
		for _, v := range []float64{float64(s.H), float64(s.B), float64(s.Web), float64(s.Flange), float64(s.Area), float64(s.Perimeter), s.KgM, float64(s.Root), float64(s.Toe)} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Fatalf("%q: %+v", text, s)
			}
		}
		again, err := Parse(s.Designation, set)
		if err != nil || again.Shape != s.Shape || math.Abs(again.KgM-s.KgM) > rounding(s) && s.Shape != Box {
			t.Fatalf("%q is %q, which reads as %+v, %v", text, s.Designation, again, err)
		}
	})
}

// rounding is the mass in kg/m by which a section and the one its designation names
// may differ: the designation gives each size to a thousandth of a millimetre (1/7 inch
// is 3.629), so each is off by half of that at most.
func rounding(s Section) float64 {
	share := 1e-6
	for _, size := range []float64{float64(s.H), float64(s.B), float64(s.Web), float64(s.Flange)} {
		if size > 0 {
			share += 0.0005 / size
		}
	}
	return share*s.KgM + 1e-6
}

// A word that the tool does not know may say anything: the section is refused, not
// taken without it. Inches said in words count.
func TestUnknownWordsAreRefused(t *testing.T) {
	set := load(t)
	for _, text := range []string{"MC8X20.5", "IPE R 200", "UBP 305x305x80", "FOO 100x10", "WT6X14", "Pipe4XXXS", "швеллер 11П", "T 55", `PL 1/2"x250mm`, "FL 3/8x100 mm"} {
		if s, err := Parse(text, set); err == nil {
			t.Errorf("%q is read as %s", text, s.Designation)
		}
	}
	for text, want := range map[string]string{"CHS 4.5x0.237 in": "CHS 114.3x6.02", "PL 3/8": "plate 9.525", "HSS8X4X3/8": "HSS8X4X3/8", "square hollow section 60x60x4": "SHS 60x60x4", "SHS 60x60x4 S355J2H": "SHS 60x60x4"} {
		if s, err := Parse(text, set); err != nil || s.Designation != want {
			t.Errorf("%q is read as %q (%v), want %q", text, s.Designation, err, want)
		}
	}
}

// TestTheTableReadsAsItself: every designation of the table, as it stands, in small
// letters and without blanks, is found again and is no other row.
func TestTheTableReadsAsItself(t *testing.T) {
	set := load(t)
	seen := map[string]bool{}
	for i := range set.Sections {
		name := set.Sections[i].Designation
		if seen[name] {
			t.Errorf("%s stands in the table twice", name)
		}
		seen[name] = true
		spellings := []string{name, strings.ToLower(name), strings.ReplaceAll(name, " ", "")}
		if set.Sections[i].Family != "PIPE" { // XS is no size
			spellings = append(spellings, strings.ReplaceAll(strings.ToLower(name), "x", " x "))
		}
		for _, text := range spellings {
			if s, err := Parse(text, set); err != nil || s.Designation != name {
				t.Errorf("%q is read as %q (%v), want %s", text, s.Designation, err, name)
			}
		}
	}
}

func BenchmarkParse(b *testing.B) {
	set := load(b)
	for b.Loop() {
		for _, text := range []string{"W4X13", "L 200x200x24", "UB 127x76x13", "SHS 60x60x4", "HE 1000 AA"} {
			if _, err := Parse(text, set); err != nil {
				b.Fatal(err)
			}
		}
	}
}
