package traveller

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/wrap"
)

// stroke is an open line of a PDF page, in millimetres from the lower left corner.
type stroke []page.Point

// strokes reads the lines that a PDF draws, page by page, from the drawing
// operators themselves.
func strokes(t *testing.T, pdf []byte) map[int][]stroke {
	t.Helper()
	need(t, "qpdf")
	dir := t.TempDir()
	packed, plain := filepath.Join(dir, "a.pdf"), filepath.Join(dir, "b.pdf")
	must(t, os.WriteFile(packed, pdf, 0o644))
	if out, err := exec.Command("qpdf", "--qdf", "--object-streams=disable", packed, plain).CombinedOutput(); err != nil {
		t.Fatalf("qpdf: %v\n%s", err, out)
	}
	data, err := os.ReadFile(plain)
	must(t, err)
	out := map[int][]stroke{}
	number, inside := 0, false
	var now stroke
	lines := bufio.NewScanner(bytes.NewReader(data))
	lines.Buffer(nil, 1<<26)
	for lines.Scan() {
		line := lines.Text()
		if _, err := fmt.Sscanf(line, "%%%% Contents for page %d", &number); err == nil {
			continue
		}
		switch line {
		case "stream":
			inside = number > 0
		case "endstream":
			inside, number = false, 0
		}
		if !inside {
			continue
		}
		f := strings.Fields(line)
		for i, op := range f {
			switch {
			case op == "m" && i >= 2:
				now = stroke{pointOf(t, f[i-2], f[i-1])}
			case op == "l" && i >= 2:
				now = append(now, pointOf(t, f[i-2], f[i-1]))
			case op == "S":
				out[number] = append(out[number], now)
				now = nil
			}
		}
	}
	must(t, lines.Err())
	return out
}

func pointOf(t *testing.T, x, y string) page.Point {
	a, err1 := strconv.ParseFloat(x, 64)
	b, err2 := strconv.ParseFloat(y, 64)
	if err1 != nil || err2 != nil {
		t.Fatalf("no point: %s %s", x, y)
	}
	return page.Point{X: a * 25.4 / 72, Y: b * 25.4 / 72}
}

// textOf is the text of one page, as another program reads it.
func textOf(t *testing.T, pdf []byte, number int) string {
	t.Helper()
	need(t, "pdftotext")
	file := filepath.Join(t.TempDir(), "a.pdf")
	must(t, os.WriteFile(file, pdf, 0o644))
	n := strconv.Itoa(number)
	out, err := exec.Command("pdftotext", "-raw", "-f", n, "-l", n, file, "-").Output()
	must(t, err)
	return string(out)
}

// corner finds where the base line and the heel's edge of the paper meet: a level
// and an upright line that begin at one point.
func corner(all []stroke) (page.Point, bool) {
	for _, a := range all {
		for _, b := range all {
			if len(a) == 2 && len(b) == 2 && near(a[0], b[0]) && math.Abs(a[0].Y-a[1].Y) < 0.01 && a[1].X > a[0].X+10 &&
				math.Abs(b[0].X-b[1].X) < 0.01 && b[1].Y > b[0].Y+10 {
				return a[0], true
			}
		}
	}
	return page.Point{}, false
}

func near(a, b page.Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 0.01 }

// diamonds returns the centres of the marks at which sheets are joined.
func diamonds(all []stroke) (out []page.Point) {
	for _, s := range all {
		if len(s) == 5 && near(s[0], s[4]) && math.Abs(s[1].Y-s[3].Y-6) < 0.02 && math.Abs(s[2].X-s[0].X-6) < 0.02 {
			out = append(out, page.Point{X: s[1].X, Y: s[0].Y})
		}
	}
	return out
}

// ahead returns the two diamonds that lie furthest in a direction, in a fixed order.
func ahead(all []page.Point, dx, dy float64) (out []page.Point) {
	far := math.Inf(-1)
	for _, d := range all {
		far = max(far, d.X*dx+d.Y*dy)
	}
	for _, d := range all {
		if d.X*dx+d.Y*dy > far-0.02 {
			out = append(out, d)
		}
	}
	if len(out) == 2 && out[0].X+out[0].Y > out[1].X+out[1].Y {
		out[0], out[1] = out[1], out[0]
	}
	return out
}

// meet returns the shift that lays the second sheet on the first so that its
// diamonds meet those of the first.
func meet(t *testing.T, a, b []page.Point) page.Point {
	t.Helper()
	if len(a) != 2 || len(b) != 2 {
		t.Fatalf("%d and %d diamonds at a seam, want 2 each", len(a), len(b))
	}
	d := page.Point{X: a[0].X - b[0].X, Y: a[0].Y - b[0].Y}
	if e := (page.Point{X: a[1].X - b[1].X, Y: a[1].Y - b[1].Y}); !near(d, e) {
		t.Fatalf("the diamonds of a seam do not meet: %v and %v", d, e)
	}
	return d
}

// along finds, on a generatrix of the branch, where the branch leaves the chord:
// by halving, from the distance of points in space, without the formula of the cut.
func along(r, big, theta, around float64) float64 {
	axis := [3]float64{0, math.Sin(theta), math.Cos(theta)}
	across := [3]float64{1, 0, 0}
	upward := [3]float64{0, -math.Cos(theta), math.Sin(theta)} // from the axis to the heel
	outside := func(s float64) bool {
		var q [3]float64
		for k := range q {
			q[k] = s*axis[k] + r*math.Cos(around)*upward[k] + r*math.Sin(around)*across[k]
		}
		if big == 0 {
			return q[1] > 0
		}
		return q[1] > 0 && math.Hypot(q[0], q[1]) > big
	}
	low, high := -10*(r+big), 10*(r+big)
	for range 80 {
		if mid := (low + high) / 2; outside(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// Every point of the line in the PDF, sheets joined at their diamonds as one does by
// hand, lies where the two tubes meet in space; and the check lines are 100 mm.
func TestTemplatesMeasuredInThePDF(t *testing.T) {
	letter := metric
	letter.US, letter.Paper = true, "letter"
	worst, lines := 0.0, 0
	for _, j := range branches() {
		for _, opts := range []struct {
			name string
			us   bool
		}{{"a4", false}, {"letter", true}} {
			o := metric
			if opts.us {
				o = letter
			}
			job := jobOf(t, []joint.Joint{j}, o)
			all := wrap.Of(job)
			if len(all) != 1 {
				t.Fatalf("%s: %d templates", j.Mark, len(all))
			}
			doc, err := Model(job, Options{})
			must(t, err)
			pdf, err := Build(job, Options{})
			must(t, err)
			name := j.Mark + " " + opts.name
			if off, ok := measure(t, name, doc, pdf, &all[0]); ok {
				worst, lines = max(worst, off), lines+1
				if off > 0.2 {
					t.Errorf("%s: the line is %.3f mm off", name, off)
				}
			}
		}
	}
	t.Logf("%d lines measured, the worst is %.4f mm off", lines, worst)
	if lines < 14 {
		t.Errorf("only %d lines were measured", lines)
	}
}

// sheetPages returns the numbers of the pages that carry a part of a template.
func sheetPages(doc *page.Document) (out []int) {
	for i, p := range doc.Pages {
		for _, b := range p.Boxes {
			if b.Name == "template" {
				out = append(out, i+1)
			}
		}
	}
	return out
}

func measure(t *testing.T, name string, doc *page.Document, pdf []byte, tpl *wrap.Template) (worst float64, ok bool) {
	t.Helper()
	numbers := sheetPages(doc)
	if len(numbers) == 0 {
		return 0, false // too large for paper
	}
	drawn := strokes(t, pdf)
	cols := 1
	for c := 1; c < len(numbers); c++ { // the second row begins where a sheet has no neighbour on its left
		if len(ahead(diamonds(drawn[numbers[c]]), -1, 0)) != 2 || !besideLeft(drawn[numbers[c]]) {
			break
		}
		cols++
	}
	shifts := make([]page.Point, len(numbers))
	for i := range numbers {
		here := diamonds(drawn[numbers[i]])
		switch {
		case i%cols > 0:
			d := meet(t, ahead(diamonds(drawn[numbers[i-1]]), 1, 0), ahead(here, -1, 0))
			shifts[i] = page.Point{X: shifts[i-1].X + d.X, Y: shifts[i-1].Y + d.Y}
		case i > 0:
			d := meet(t, ahead(diamonds(drawn[numbers[i-cols]]), 0, -1), ahead(here, 0, 1))
			shifts[i] = page.Point{X: shifts[i-cols].X + d.X, Y: shifts[i-cols].Y + d.Y}
		}
	}
	var start page.Point
	for i, n := range numbers {
		if c, found := corner(drawn[n]); found {
			start, ok = page.Point{X: c.X + shifts[i].X, Y: c.Y + shifts[i].Y}, true
		}
	}
	if !ok {
		t.Fatalf("%s: no corner of base line and heel", name)
	}
	base := baseOf(t, textOf(t, pdf, numbers[len(numbers)-1]), name)
	r, big, theta := float64(tpl.Dia)/2, float64(tpl.Chord)/2, float64(tpl.Angle)*math.Pi/180
	least := math.Inf(1)
	for i := range 20001 {
		least = min(least, along(r, big, theta, 2*math.Pi*float64(i)/20000))
	}
	first, last, points := math.Inf(1), 0.0, 0
	for i, n := range numbers {
		checkLines(t, name, drawn[n])
		for _, s := range drawn[n] {
			if len(s) < 8 {
				continue
			}
			for k, q := range s {
				x, y := q.X+shifts[i].X-start.X, q.Y+shifts[i].Y-start.Y
				if x < -1 || x > 2*math.Pi*r+1 || y < 0 || y > base+1 {
					continue // of the figure beside the steps
				}
				want := base - (along(r, big, theta, x/r) - least)
				worst = max(worst, math.Abs(y-want))
				first, last, points = min(first, x), max(last, x), points+1
				if k > 0 && math.Hypot(q.X-s[k-1].X, q.Y-s[k-1].Y) > 3 {
					t.Errorf("%s: the line has a step of more than 3 mm", name)
				}
			}
		}
	}
	if math.Abs(first) > 0.01 || math.Abs(last-2*math.Pi*r) > 0.01 || points < 180 {
		t.Errorf("%s: %d points from %.3f to %.3f, the way round is %.3f", name, points, first, last, 2*math.Pi*r)
	}
	return worst, true
}

// besideLeft tells whether a sheet's leftmost diamonds stand one above the other.
func besideLeft(all []stroke) bool {
	d := ahead(diamonds(all), -1, 0)
	return len(d) == 2 && math.Abs(d[0].X-d[1].X) < 0.02 && d[0].X < 100
}

var baseWords = regexp.MustCompile(`base line: ([0-9./ ]+) (mm|in) from`)

// baseOf reads from the sheet itself how far the base line is from the tube's end.
func baseOf(t *testing.T, text, name string) float64 {
	t.Helper()
	m := baseWords.FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("%s: the sheet does not say where its base line lies:\n%s", name, text)
	}
	sum := 0.0
	for _, part := range strings.Fields(m[1]) {
		above, under, fraction := strings.Cut(part, "/")
		v, err := strconv.ParseFloat(above, 64)
		must(t, err)
		if fraction {
			u, err := strconv.ParseFloat(under, 64)
			must(t, err)
			v /= u
		}
		sum += v
	}
	if m[2] == "in" {
		sum *= 25.4
	}
	return sum
}

// checkLines finds a line of 100 mm along and one across.
func checkLines(t *testing.T, name string, all []stroke) {
	t.Helper()
	level, upright := false, false
	for _, s := range all {
		if len(s) == 2 {
			level = level || math.Abs(math.Abs(s[1].X-s[0].X)-100) < 0.01 && math.Abs(s[1].Y-s[0].Y) < 0.01
			upright = upright || math.Abs(math.Abs(s[1].Y-s[0].Y)-100) < 0.01 && math.Abs(s[1].X-s[0].X) < 0.01
		}
	}
	if !level || !upright {
		t.Errorf("%s: check lines along %v, across %v", name, level, upright)
	}
}
