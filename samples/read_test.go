package samples

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// understand reads a list as the tool does, with nothing said on the command line.
func understand(t *testing.T, set *tables.Set, name string, data []byte) *joint.List {
	t.Helper()
	src, _, err := list.Read(name, data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	l, err := joint.Understand(src, joint.Options{}, set)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return l
}

func sample(t *testing.T, set *tables.Set, name string) *joint.List {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return understand(t, set, name, data)
}

func planned(t *testing.T, set *tables.Set, l *joint.List) []plan.Plan {
	t.Helper()
	shop, err := rates.Default(set)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Joints(l.Joints, set, &shop, plan.Options{})
}

// TestSamplesReadWhole: every row of the good samples is a joint or told apart,
// every column is known but the list's own sum, and nothing is complained about.
func TestSamplesReadWhole(t *testing.T) {
	set := allTables(t)
	for _, s := range []struct {
		file                    string
		joints, others, unknown int
	}{
		{mezzanineFile, 64, 32, 1}, // 5 title, header, units, 9 groups, 9 subtotals, total, 6 after the list
		{"wash-table/wash-table.csv", 20, 3, 0},
		{"gangway/gangway.csv", 25, 3, 0},
		{"four-columns/four-columns.csv", 6, 2, 0},
	} {
		l := sample(t, set, s.file)
		if len(l.Joints) != s.joints || len(l.Others) != s.others || l.RowsRead != s.joints+s.others {
			t.Errorf("%s: %d joints and %d other rows of %d read; the file has %d and %d", s.file, len(l.Joints), len(l.Others), l.RowsRead, s.joints, s.others)
		}
		unknown := 0
		for _, c := range l.Columns {
			if c.Key == "" {
				unknown++
			}
		}
		if unknown != s.unknown {
			t.Errorf("%s: %d columns are not known, want %d", s.file, unknown, s.unknown)
		}
		for _, p := range l.Problems {
			if p.Level != finding.Note {
				t.Errorf("%s: %s", s.file, p.Line())
			}
		}
	}
}

// TestEveryGoodSampleJointGetsSettings: the invented jobs are of a kind that a
// small shop welds, so no joint with a material and a thickness may stay without.
func TestEveryGoodSampleJointGetsSettings(t *testing.T) {
	set := allTables(t)
	for _, file := range []string{mezzanineFile, "wash-table/wash-table.csv", "gangway/gangway.csv"} {
		for _, p := range planned(t, set, sample(t, set, file)) {
			if !p.Settings {
				t.Errorf("%s: %s: %s", file, p.Joint.Mark, p.NoSettings)
			}
		}
	}
}

// TestMetresOfTheMezzanine adds up the rows of this package without the reader:
// qty x sides x (number of stitches x stitch, or the whole line).
func TestMetresOfTheMezzanine(t *testing.T) {
	set := allTables(t)
	got := map[string]float64{}
	for _, p := range planned(t, set, sample(t, set, mezzanineFile)) {
		got[p.Joint.Mark] = float64(p.Seam)
	}
	for _, g := range mezzanine {
		for _, r := range g.rows {
			line := r.mm()
			if m := isoStitch.FindStringSubmatch(r.stitch); m != nil {
				n, _ := strconv.Atoi(m[1])
				each, _ := strconv.Atoi(m[2])
				line = float64(n * each)
			}
			want := float64(r.qty*r.sides) * line / 1000
			if math.Abs(got[r.mark]-want) > 1e-9 {
				t.Errorf("%s: %g m, the row gives %g m", r.mark, got[r.mark], want)
			}
		}
	}
}

// TestHandSums holds seams, drawn areas and their sums against figures worked on
// paper; the working stands beside each figure in the hand.csv files.
func TestHandSums(t *testing.T) {
	set := allTables(t)
	for _, s := range []struct {
		list, hand string
		perMetre   float64 // hand figures of the seam in this share of a metre
	}{{"wash-table/wash-table.csv", "wash-table/hand.csv", 1}, {"gangway/gangway.csv", "gangway/hand.csv", 0.0254}} {
		seam, area := map[string]float64{}, map[string]float64{}
		for _, p := range planned(t, set, sample(t, set, s.list)) {
			seam[p.Joint.Mark], area[p.Joint.Mark] = float64(p.Seam), float64(p.AreaDrawn)
			seam["total"] += float64(p.Seam)
		}
		hand := handRows(t, s.hand)
		if len(hand)-1 != len(seam) {
			t.Errorf("%s has %d rows, the list %d joints and a total", s.hand, len(hand)-1, len(seam)-1)
		}
		for _, row := range hand[1:] {
			mark := row[0]
			want, _ := strconv.ParseFloat(row[1], 64)
			if math.Abs(seam[mark]-want*s.perMetre) > 0.0005*s.perMetre { // as printed on paper
				t.Errorf("%s: %s: seam %g m, by hand %g m", s.list, mark, seam[mark], want*s.perMetre)
			}
			if s.perMetre != 1 || row[2] == "" {
				continue
			}
			want, _ = strconv.ParseFloat(row[2], 64)
			if math.Abs(area[mark]-want) > 0.005 {
				t.Errorf("%s: %s: drawn area %g mm², by hand %g mm²", s.list, mark, area[mark], want)
			}
		}
	}
}

func handRows(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}
