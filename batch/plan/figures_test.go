package plan

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// figuresDir holds published figures beside the checkout.
const figuresDir = "../../../shared/figures"

// readFigures returns a file of published figures as rows by column name.
func readFigures(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join(figuresDir, name))
	if err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatalf("the published figures are missing: %v", err)
		}
		t.Skipf("the published figures are not beside this checkout: %v", err)
	}
	defer f.Close()
	return rowsOf(t, f)
}

// rowsOf reads a CSV file with a header as rows by column name; its line stands under "".
func rowsOf(t *testing.T, f io.Reader) []map[string]string {
	t.Helper()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for n, record := range all[1:] {
		row := map[string]string{"": strconv.Itoa(n + 2)}
		for i, head := range all[0] {
			row[head] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// span is a printed value or range.
type span struct{ low, high float64 }

var spanText = regexp.MustCompile(`^(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?(?:$|[ (,])`)

// readSpan reads "30-40", "20", "18-19 (printed 19-19)"; false for anything else.
func readSpan(text string) (span, bool) {
	m := spanText.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return span{}, false
	}
	low, _ := strconv.ParseFloat(m[1], 64)
	high := low
	if m[2] != "" {
		high, _ = strconv.ParseFloat(m[2], 64)
	}
	return span{low, high}, true
}

func (s span) middle() float64 { return (s.low + s.high) / 2 }

// practice is one printed set of working conditions.
type practice struct {
	row                      string
	material, wire, gas, pos string
	kind                     joint.Kind
	sides                    int
	thick, leg, gap          float64
	gapGiven                 bool
	face                     float64
	backing                  string
	process                  string // the transfer mode, where the row prints one
	current, volts, travel   *span  // travel in mm/min
}

func optional(text string, scale float64) *span {
	s, ok := readSpan(text)
	if !ok {
		return nil
	}
	return &span{s.low * scale, s.high * scale}
}

// joint builds the joint that a printed row describes. A fillet with a leg and no
// thickness is taken between parts as thick as its leg over 0.75, the full-strength
// rule of thumb.
func (p practice) joint() joint.Joint {
	j := joint.Joint{
		Mark: p.row, Qty: 1, Length: 1000,
		Detail: &joint.Detail{
			Sides: max(p.sides, 1), Kind: p.kind, Material: p.material, Process: p.process, Wire: p.wire, Gas: p.gas, Position: p.pos, Gap: units.MM(p.gap), GapGiven: p.gapGiven,
		},
	}
	j.Backing = p.backing
	if p.face > 0 {
		j.RootFace, j.RootFaceGiven = units.MM(p.face), true
	}
	thick := p.thick
	if thick == 0 {
		thick = p.leg / 0.75
	}
	j.T1, j.T2 = units.MM(thick), units.MM(thick)
	if p.leg > 0 {
		j.Size = joint.Size{Means: joint.Leg, A: units.MM(p.leg)}
	}
	return j
}

// tally counts comparisons that hold and notes the others.
type tally struct {
	held, all int
	misses    []string
}

func (s *tally) compare(row, what string, got float64, want *span, low, high float64) {
	if want == nil {
		return
	}
	s.all++
	if got >= low && got <= high {
		s.held++
		return
	}
	s.misses = append(s.misses, fmt.Sprintf("%s: %s %.4g, printed %g to %g", row, what, got, want.low, want.high))
}

// run plans the row and compares current (band widened by 10 %), voltage (by
// 1.5 V) and travel (0.6 to 1.5 times).
func (s *tally) run(t *testing.T, p practice) {
	set, shop := world(t)
	shop.Machines = append(shop.Machines, "MIG 500 three-phase") // printed rows go up to 450 A and name no machine
	j := p.joint()
	got := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	row := fmt.Sprintf("%s [%s t%g z%g %s %s %s]", p.row, p.kind, j.T1, p.leg, p.wire, p.gas, p.pos)
	if !got.Settings {
		row += " " + got.NoSettings
	}
	if c := p.current; c != nil {
		s.compare(row, "A", got.Current.Start, c, c.low*0.9, c.high*1.1)
	}
	if v := p.volts; v != nil {
		s.compare(row, "V", got.Voltage.Start, v, v.low-1.5, v.high+1.5)
	}
	if v := p.travel; v != nil {
		s.compare(row, "mm/min", got.Travel.Start, v, v.low*0.6, v.high*1.5)
	}
}

func (s *tally) share() float64 { return float64(s.held) / float64(max(s.all, 1)) }

var wireSizes = regexp.MustCompile(`\d\.\d+`)

// wireOf returns the first (or last) of the printed diameters that is a wire of
// the table, as a wish: "ER70S-6 0.9".
func wireOf(class, printed string, last bool) string {
	nominal := map[string]string{"0.76": "0.8", "0.89": "0.9", "1.14": "1.2", "1.1": "1.2"}
	sizes := wireSizes.FindAllString(printed, -1)
	if len(sizes) == 0 {
		return ""
	}
	size := sizes[0]
	if last {
		size = sizes[len(sizes)-1]
	}
	if n, ok := nominal[size]; ok {
		size = n
	}
	return class + " " + size
}
