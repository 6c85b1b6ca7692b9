package traveller

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/show"
	"seamtally/batch/traveller/sketch"
	"seamtally/batch/units"
)

var update = flag.Bool("update", false, "write the golden files anew")

// looks are the ways in which a traveller can be asked for.
func looks() map[string]price.Options {
	us := metric
	us.US = true
	letter := metric
	letter.Paper = "letter"
	usLetter := us
	usLetter.Paper = "letter"
	return map[string]price.Options{"metric a4": metric, "metric letter": letter, "us a4": us, "us letter": usLetter}
}

// faultless lays a job out and fails for every fault of every page.
func faultless(t testing.TB, job *price.Job) *page.Document {
	t.Helper()
	doc, err := Model(job, Options{})
	must(t, err)
	for i, p := range doc.Pages {
		for _, fault := range p.Faults() {
			t.Errorf("page %d: %s", i+1, fault)
		}
	}
	return doc
}

func TestEveryKindInEveryLookIsFaultless(t *testing.T) {
	for name, opts := range looks() {
		t.Run(name, func(t *testing.T) { faultless(t, jobOf(t, everyKind(), opts)) })
	}
}

func TestModelIsAsItWas(t *testing.T) {
	joints := everyKind()
	both, v := joints[2], joints[14]
	both.Assembly, v.Assembly = "Frame A", "Frame A"
	doc := faultless(t, jobOf(t, []joint.Joint{joints[0], joints[1], both, v, joints[11]}, metric))
	golden := filepath.Join("testdata", "model.txt")
	if *update {
		must(t, os.WriteFile(golden, []byte(doc.Dump()), 0o644))
	}
	want, err := os.ReadFile(golden)
	must(t, err)
	if got := doc.Dump(); got != string(want) {
		t.Errorf("the page model differs from %s: first at %s\n(go test -run Model -update writes it anew)", golden, firstDifference(got, string(want)))
	}
}

func firstDifference(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return fmt.Sprintf("line %d\n got  %s\n want %s", i+1, x[i], y[i])
		}
	}
	return "the end: one is longer"
}

func TestSameJobSameBytes(t *testing.T) {
	first, err := Build(jobOf(t, everyKind(), metric), Options{})
	must(t, err)
	again, err := Build(jobOf(t, everyKind(), metric), Options{})
	must(t, err)
	if !bytes.Equal(first, again) {
		t.Error("the same job gave other bytes")
	}
}

// What is drawn has, on paper and at the scale stated, the area of the plan within
// 1 %, and each pass its share: a fillet as the drawing asks for it, any other joint
// with its cap.
func TestPassesOnPaperHaveTheirArea(t *testing.T) {
	job := jobOf(t, everyKind(), metric)
	pen := picture.Pen{Words: mustWords(t), Show: show.Figures{}}
	for i := range job.Plans {
		p := &job.Plans[i]
		if p.Area == 0 {
			continue
		}
		pg := (&page.Document{}).Add(210, 297)
		pen.CrossSection(pg, page.Rect{X: 20, Y: 20, W: 122, H: 80}, p)
		scale := statedScale(t, pg)
		sum, each := 0.0, map[string]float64{}
		for _, shape := range pg.Shapes {
			if strings.HasPrefix(shape.Name, "pass ") {
				a := area(shape.Points) / scale / scale
				sum += a
				each[shape.Name] += a
			}
		}
		want := float64(p.Area)
		switch p.Prep.Kind {
		case joint.Fillet, joint.Lap, joint.Corner:
			want = float64(p.AreaDrawn)
		}
		if p.Joint.Sides == 2 {
			want *= 2
		}
		if math.Abs(sum-want) > 0.01*want {
			t.Errorf("%s: %d passes drawn at %g cover %.2f mm², want %.2f", p.Joint.Mark, len(each), scale, sum, want)
		}
		for _, r := range p.Runs {
			share := float64(r.Area) / float64(p.Area)
			if got := each[fmt.Sprint("pass ", r.Number)]; math.Abs(got-want*share) > 0.01*want*share {
				t.Errorf("%s: pass %d covers %.2f mm², want %.2f", p.Joint.Mark, r.Number, got, want*share)
			}
		}
	}
}

// A fillet is drawn at the scale stated: its legs on paper are those of the
// dimension lines, and longer where a wide gap makes them grow.
func TestLegsOnPaperAreThoseAskedFor(t *testing.T) {
	open := leg("W-gap", 6, 8, 10, 500, "PB")
	open.Gap, open.GapGiven = 3, true
	for _, c := range []struct {
		j    joint.Joint
		want float64
	}{{leg("W-1", 3, 4, 4, 500, "PB"), 3}, {leg("W-2", 6, 8, 10, 500, "PB"), 6}, {leg("W-3", 14, 25, 30, 500, "PB"), 14}, {open, 9}} {
		p := &jobOf(t, []joint.Joint{c.j}, metric).Plans[0]
		pg := (&page.Document{}).Add(210, 297)
		picture.Pen{Words: mustWords(t)}.CrossSection(pg, page.Rect{X: 20, Y: 20, W: 122, H: 80}, p)
		low, high := math.Inf(1), math.Inf(-1)
		for _, shape := range pg.Shapes {
			if strings.HasPrefix(shape.Name, "pass ") {
				for _, q := range shape.Points {
					low, high = min(low, q.Y), max(high, q.Y)
				}
			}
		}
		if got := (high - low) / statedScale(t, pg); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s: the leg is %.2f mm on paper, want %g", c.j.Mark, got, c.want)
		}
		if text := fmt.Sprintf("z %g", c.want); !has(pg, text) {
			t.Errorf("%s: no dimension %q", c.j.Mark, text)
		}
	}
}

// statedScale reads the scale from a picture's caption.
func statedScale(t *testing.T, p *page.Page) float64 {
	t.Helper()
	for _, text := range p.Texts {
		if _, after, ok := strings.Cut(text.S, "scale "); ok {
			var paper, part float64
			if _, err := fmt.Sscanf(after, "%f : %f", &paper, &part); err != nil {
				t.Fatalf("caption %q: %v", text.S, err)
			}
			return paper / part
		}
	}
	t.Fatal("the picture states no scale")
	return 0
}

// Every pass has its number in the picture, also where the sheet is tight.
func TestEveryPassIsNumbered(t *testing.T) {
	for name, opts := range looks() {
		job := jobOf(t, everyKind(), opts)
		doc := faultless(t, job)
		for i := range job.Plans {
			p := &job.Plans[i]
			pg := sheetOf(doc, p.Joint.Mark)
			if pg == nil {
				t.Fatalf("%s: %s has no sheet", name, p.Joint.Mark)
			}
			for _, r := range p.Runs {
				found := false
				for _, text := range pg.Texts {
					isNumber := text.Face == page.Bold && text.Size != 9.5 // dimensions are set in 9.5 pt
					found = found || isNumber && pg.Boxes[text.Box].Name == "picture" && text.S == fmt.Sprint(r.Number)
				}
				if !found {
					t.Errorf("%s: pass %d of %s has no number in the picture", name, r.Number, p.Joint.Mark)
				}
			}
		}
	}
}

// sheetOf returns the sheet that has a mark in its title.
func sheetOf(d *page.Document, mark string) *page.Page {
	for _, p := range d.Pages {
		for _, t := range p.Texts {
			if p.Boxes[t.Box].Name == "title" && slices.Contains(strings.Split(t.S, ", "), mark) {
				return p
			}
		}
	}
	return nil
}

func area(ps []page.Point) float64 {
	g := make(sketch.Polygon, len(ps))
	for i, p := range ps {
		g[i] = sketch.Point{X: p.X, Y: p.Y}
	}
	return g.Area()
}

// A job of n joints that fill a sheet's sign-off, one less and one more; and none.
func TestPageBreaks(t *testing.T) {
	pages := func(n int) *page.Document {
		var joints []joint.Joint
		for i := range n {
			joints = append(joints, leg(fmt.Sprintf("W-%03d", i+1), 6, 8, 10, 500, "PB"))
		}
		return faultless(t, jobOf(t, joints, metric))
	}
	if got := len(pages(0).Pages); got != 1 {
		t.Errorf("no joints: %d pages, want 1", got)
	}
	last := 0
	for n := 1; n <= 60; n++ {
		doc := pages(n)
		if len(doc.Pages) < last {
			t.Errorf("%d joints need %d pages, one less needed %d", n, len(doc.Pages), last)
		}
		last = len(doc.Pages)
		for i, p := range doc.Pages {
			foot := fmt.Sprintf("page %d of %d", i+1, len(doc.Pages))
			if !has(p, foot) {
				t.Fatalf("%d joints: page %d lacks %q", n, i+1, foot)
			}
			for _, want := range []string{"frame", "Frame A", "DR-100", "B"} {
				if !has(p, want) && (want == "frame" || !boxed(p, "knobs title")) { // what hangs at the machine is of no assembly
					t.Fatalf("%d joints: the header of page %d lacks %q", n, i+1, want)
				}
			}
			orphans(t, p)
		}
		for i := range n {
			if mark := fmt.Sprintf("W-%03d", i+1); count(doc, mark) < 2 {
				t.Fatalf("%d joints: %s is not in the joint table and on a sheet", n, mark)
			}
		}
	}
}

// orphans fails where a table's heading has no row below it on its page.
func orphans(t *testing.T, p *page.Page) {
	t.Helper()
	for i, b := range p.Boxes {
		if name, ok := strings.CutSuffix(b.Name, " head"); ok && (i+1 == len(p.Boxes) || p.Boxes[i+1].Name != name+" row") {
			t.Errorf("the heading of table %s stands alone", name)
		}
	}
}

func has(p *page.Page, text string) bool {
	for _, t := range p.Texts {
		if t.S == text {
			return true
		}
	}
	return false
}

func count(d *page.Document, text string) int {
	n := 0
	for _, p := range d.Pages {
		for _, t := range p.Texts {
			if strings.Contains(t.S, text) {
				n++
			}
		}
	}
	return n
}

// hostile is what people and programs put into cells.
var hostile = []string{
	"", " ", "🔥🔥🔥", "שלום עולם", "مرحبا", "\x00\x01\x02", "a\nb\tc\r", "\xff\xfe\xfd", "\u202eevil\u202c", "e\u0301\u0301\u0301",
	strings.Repeat("W", 10000), strings.Repeat("long word ", 1000), "Łódź ≤ 3 ° ² ø", "Лестница №3", "=1+1", "%s%d%!", "()\\", "<b>&amp;", "\u0000", "𝔘𝔫𝔦",
}

func TestHostileTextsAreSafe(t *testing.T) {
	for _, text := range hostile {
		j := leg("x", 6, 8, 10, 500, "PB")
		j.Mark, j.Assembly, j.Drawing, j.Rev, j.WPS, j.NDT, j.Note, j.Quality, j.Position = text, text, text, text, text, text, text, text, text
		j.Size.Text = text
		j.Stitch = &joint.Stitch{Segment: 50, Gap: 50, Pitch: 100, Text: text}
		job := jobOf(t, []joint.Joint{j, leg("W-2", 4, 5, 5, 100, "PF")}, metric)
		job.List.File, job.List.SHA256, job.Version, job.TablesEdition = text, text, text, text
		p := &job.Plans[0]
		p.Joint = &j
		p.Torch, p.Trigger, p.Inductance, p.Polarity, p.Technique, p.Machine, p.Filler, p.Gas, p.GasMix = text, text, text, text, text, text, text, text, text
		p.Checks = []finding.Check{{Level: finding.Warning, Text: text, Do: text}, {Level: finding.Error, Text: text}}
		faultless(t, job)
		if _, err := Build(job, Options{Job: text}); err != nil {
			t.Errorf("%.20q: %v", text, err)
		}
		p.Settings, p.NoSettings = false, text
		faultless(t, job)
	}
}

// Numbers that no joint has must not break a sheet, nor print as NaN.
func TestHostileNumbersAreSafe(t *testing.T) {
	for _, v := range []float64{0, -1, 1e-9, 1e9, math.NaN(), math.Inf(1)} {
		job := jobOf(t, []joint.Joint{leg("W-1", 6, 8, 10, 500, "PB"), butt("B-1", joint.SingleV, 10, 500, "PA")}, metric)
		for i := range job.Plans {
			p := &job.Plans[i]
			w := plan.Window{Start: v, Low: v, High: v}
			p.WireFeed, p.Voltage, p.Current, p.Travel, p.GasFlow, p.Stickout = w, w, w, w, w, w
			p.Area, p.Arc, p.Seam, p.WireKg, p.GasL = units.MM2(v), units.Minute(v), units.Metre(v), units.Kg(v), units.Litre(v)
			p.Prep.T1, p.Prep.LegA, p.Prep.Gap, p.Prep.Angle = units.MM(v), units.MM(v), units.MM(v), units.Degree(v)
			for k := range p.Runs {
				p.Runs[k].Area, p.Runs[k].Travel, p.Runs[k].WireFeed = units.MM2(v), units.MMMin(v), units.MMin(v)
			}
		}
		doc := faultless(t, job)
		for _, bad := range []string{"NaN", "Inf"} {
			if count(doc, bad) > 0 {
				t.Errorf("%g is printed as %s", v, bad)
			}
		}
	}
}

// Every copy has its own line to sign.
func TestEveryCopyIsSigned(t *testing.T) {
	j := leg("W-1", 6, 8, 10, 500, "PB")
	j.Qty = 37
	doc := faultless(t, jobOf(t, []joint.Joint{j}, metric))
	for i := 1; i <= 37; i++ {
		if count(doc, fmt.Sprintf("%d/37", i)) == 0 {
			t.Errorf("copy %d of 37 has no line", i)
		}
	}
	j.Qty = 5000
	if n := len(faultless(t, jobOf(t, []joint.Joint{j}, metric)).Pages); n > 8 {
		t.Errorf("5,000 copies make %d pages", n)
	}
}

// Joints welded alike share a sheet; what differs on the sheet parts them.
func TestSetupsAreShared(t *testing.T) {
	a, b, c, d := leg("W-1", 6, 8, 10, 500, "PB"), leg("W-2", 6, 8, 10, 900, "PB"), leg("W-3", 6, 8, 10, 900, "PF"), leg("W-4", 6, 8, 10, 900, "PB")
	d.WPS = "WPS-7"
	doc := faultless(t, jobOf(t, []joint.Joint{a, b, c, d}, metric))
	marks := []string{}
	for _, p := range doc.Pages {
		for _, m := range p.Marks {
			if m.Level == 1 {
				marks = append(marks, m.Title)
			}
		}
	}
	if got := strings.Join(marks, "|"); got != "Set-up 1: W-1, W-2|Set-up 2: W-3|Set-up 3: W-4" && got != "Set-up 1: W-1, W-2|Set-up 2: W-4|Set-up 3: W-3" {
		t.Errorf("set-ups: %s", got)
	}
}

// need skips a test whose tool is missing, or fails where all must be there.
func need(t *testing.T, tools ...string) {
	t.Helper()
	for _, tool := range tools {
		if _, err := exec.LookPath(tool); err != nil {
			if os.Getenv("SEAMTALLY_NEED_ALL") != "" {
				t.Fatalf("%s is missing", tool)
			}
			t.Skipf("%s is missing: this check of the PDF was not made", tool)
		}
	}
}

func TestPDFHoldsBeforeOtherPrograms(t *testing.T) {
	need(t, "qpdf", "pdffonts", "pdftotext")
	job := jobOf(t, everyKind(), metric)
	pdf, err := Build(job, Options{})
	must(t, err)
	file := filepath.Join(t.TempDir(), "t.pdf")
	must(t, os.WriteFile(file, pdf, 0o644))
	if out, err := exec.Command("qpdf", "--check", file).CombinedOutput(); err != nil || bytes.Contains(bytes.ToLower(out), []byte("warning")) {
		t.Errorf("qpdf: %v\n%s", err, out)
	}
	out, err := exec.Command("pdffonts", file).Output()
	must(t, err)
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n")[2:] {
		if f := strings.Fields(line); f[len(f)-5] != "yes" {
			t.Errorf("a font is not embedded: %s", line)
		}
	}
	text, err := exec.Command("pdftotext", "-raw", file, "-").Output()
	must(t, err)
	for i := range job.Plans {
		if mark := job.Plans[i].Joint.Mark; !bytes.Contains(text, []byte(mark)) {
			t.Errorf("mark %s is not found in the text", mark)
		}
	}
}
