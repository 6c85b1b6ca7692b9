package traveller

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"seamtally/batch/bars"
	"seamtally/batch/joint"
	"seamtally/batch/parts"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/units"
	"seamtally/templates"
)

func TestCuttingPagesAreFaultless(t *testing.T) {
	for name, opts := range looks() {
		for _, lang := range templates.Languages() {
			opts.Lang = lang
			t.Run(name+" "+lang, func(t *testing.T) {
				whole(t, faultless(t, cutJob(t, nil, everyCut(t), opts)))
				whole(t, faultless(t, bothLists(t, cutText, "", opts)))
			})
		}
	}
}

// whole fails for every text that had to be shortened.
func whole(t *testing.T, doc *page.Document) {
	t.Helper()
	told := map[string]bool{}
	for i, p := range doc.Pages {
		for _, text := range p.Texts {
			if strings.HasSuffix(text.S, "…") && !told[text.S] {
				told[text.S] = true
				t.Errorf("page %d: %q is cut", i+1, text.S)
			}
		}
	}
}

func TestCuttingModelIsAsItWas(t *testing.T) {
	doc := faultless(t, cutJob(t, nil, everyCut(t), metric))
	golden := filepath.Join("testdata", "cutting.txt")
	if *update {
		must(t, os.WriteFile(golden, []byte(doc.Dump()), 0o644))
	}
	want, err := os.ReadFile(golden)
	must(t, err)
	if got := doc.Dump(); got != string(want) {
		t.Errorf("the cutting pages differ from %s: first at %s\n(go test -run Model -update writes it anew)", golden, firstDifference(got, string(want)))
	}
}

// TestLookAtCutting writes cutting pages into the folder named by SEAMTALLY_LOOK.
func TestLookAtCutting(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the cutting pages")
	}
	us := metric
	us.US, us.Paper = true, "letter"
	all := map[string]price.Options{"cut-us": us}
	for _, lang := range templates.Languages() {
		opts := metric
		opts.Lang = lang
		all["cut-"+lang] = opts
	}
	for name, opts := range all {
		for with, joints := range map[string][]joint.Joint{"": nil, "-one": {leg("W-1", 6, 8, 10, 500, "PB")}, "-joints": append(everyKind(), branches()...)} {
			pdf, err := Build(cutJob(t, joints, everyCut(t), opts), Options{})
			must(t, err)
			must(t, os.WriteFile(filepath.Join(dir, name+with+".pdf"), pdf, 0o644))
		}
	}
}

// drawnBar is a bar as it stands on paper.
type drawnBar struct {
	x, w   float64   // of the frame
	pieces []float64 // left and right ends, by turns
	scale  float64
}

// drawnBars reads the bars of a page back: frames of bars and the pieces in them, at the
// scale stated above them, or at the one they go on with from the page before. It returns
// the last scale as well.
func drawnBars(p *page.Page, scale float64) ([]drawnBar, float64) {
	var out []drawnBar
	for id, box := range p.Boxes {
		if box.Name == "saw note" {
			scale = scaleIn(p, page.BoxID(id), scale)
		}
		if !strings.HasPrefix(box.Name, "bar ") {
			continue
		}
		d := drawnBar{scale: scale}
		for _, s := range p.Shapes {
			if s.Box != page.BoxID(id) {
				continue
			}
			low, high := math.Inf(1), math.Inf(-1)
			for _, q := range s.Points {
				low, high = min(low, q.X), max(high, q.X)
			}
			switch s.Name {
			case "piece":
				d.pieces = append(d.pieces, low, high)
			case "stock":
				d.x, d.w = low, high-low
			}
		}
		out = append(out, d)
	}
	return out, scale
}

var reScale = regexp.MustCompile(`1 : (\d+)`)

// scaleIn finds the scale that a box states, else the one before.
func scaleIn(p *page.Page, box page.BoxID, before float64) float64 {
	for _, text := range p.Texts {
		if m := reScale.FindStringSubmatch(text.S); m != nil && text.Box == box {
			v, _ := strconv.ParseFloat(m[1], 64)
			return v
		}
	}
	return before
}

// TestBarsAreToScale reads every bar back from the pages and compares it, at the
// scale stated there, with the plan: bar, each piece, each kerf, and the rest.
func TestBarsAreToScale(t *testing.T) {
	stocks := []bars.Stock{sixMetres, {Lengths: []units.MM{12000, 6000, 7500}, Kerf: 2.5, EndLoss: 0}, {Lengths: []units.MM{6096}, Kerf: 0, EndLoss: 50}}
	for _, opts := range looks() {
		for _, stock := range stocks {
			list := everyCut(t).List.Parts
			book := bookOf(append(list, manyPieces(t, 60)...), stock)
			doc := faultless(t, cutJob(t, nil, book, opts))
			drawn, count := 0, 0
			scale := 0.0
			for _, p := range doc.Pages {
				var all []drawnBar
				all, scale = drawnBars(p, scale)
				for _, d := range all {
					drawn++
					count += len(d.pieces) / 2
					if err := d.matches(book, stock); err != "" {
						t.Fatal(err)
					}
				}
			}
			if drawn == 0 || count == 0 {
				t.Fatal("no bar was found on the pages")
			}
		}
	}
}

// matches looks for a bar of the plan that is drawn so, within 0.2 mm on paper.
func (d drawnBar) matches(book *parts.Book, stock bars.Stock) string {
	const near = 0.2
	for _, b := range book.Bars {
		if len(b.Pieces)*2 != len(d.pieces) || math.Abs(float64(b.Stock)/d.scale-d.w) > near {
			continue
		}
		x, ok := d.x, true
		for i, p := range b.Pieces {
			ok = ok && math.Abs(d.pieces[2*i]-x) < near && math.Abs(d.pieces[2*i+1]-x-float64(p.Length)/d.scale) < near
			x += float64(p.Length+stock.Kerf) / d.scale
		}
		if ok {
			return ""
		}
	}
	return "a drawn bar is none of the plan's at 1 : " + strconv.Itoa(int(d.scale))
}

// TestEveryPieceIsOnOnePage counts the pieces drawn, with the number of like bars
// beside them, and the rows of the tables, against the cut list.
func TestEveryPieceIsOnOnePage(t *testing.T) {
	book := bookOf(append(everyCut(t).List.Parts, manyPieces(t, 300)...), sixMetres)
	doc := faultless(t, cutJob(t, nil, book, metric))
	rows := map[string]int{}
	for _, p := range doc.Pages {
		for id, box := range p.Boxes {
			if box.Name != "pieces row" && box.Name != "plates row" {
				continue
			}
			for _, text := range p.Texts {
				if text.Box == page.BoxID(id) {
					rows[text.S]++
					break
				}
			}
		}
	}
	for i := range book.List.Parts {
		mark := book.List.Parts[i].Mark
		if rows[mark] != 1 {
			t.Errorf("%s stands in %d rows of the tables", mark, rows[mark])
		}
	}
	want := 0
	for _, b := range book.Bars {
		want += len(b.Pieces)
	}
	if got := drawnPieces(t, doc); got != want {
		t.Errorf("%d pieces are drawn, the plan has %d", got, want)
	}
}

// drawnPieces counts the pieces on the pages, each as often as its bar is cut.
func drawnPieces(t *testing.T, doc *page.Document) int {
	sum := 0
	for _, p := range doc.Pages {
		for id, box := range p.Boxes {
			if !strings.HasPrefix(box.Name, "bar ") {
				continue
			}
			times, pieces := 0, 0
			for _, text := range p.Texts {
				if n, ok := strings.CutSuffix(text.S, " ×"); ok && text.Box == page.BoxID(id) {
					v, err := strconv.Atoi(n)
					must(t, err)
					times = v
				}
			}
			for _, s := range p.Shapes {
				if s.Box == page.BoxID(id) && s.Name == "piece" {
					pieces++
				}
			}
			sum += times * pieces
		}
	}
	return sum
}

func TestHostileCutListsAreSafe(t *testing.T) {
	for _, text := range hostile {
		book := everyCut(t)
		for i := range book.List.Parts {
			p := &book.List.Parts[i]
			p.Mark, p.Assembly, p.Note, p.Material = text, text, text, text
		}
		for i := range book.Groups {
			book.Groups[i].Section, book.Groups[i].Material = text, text
		}
		for i := range book.Plates {
			book.Plates[i].Material = text
		}
		book.List.File, book.List.SHA256 = text, text
		job := cutJob(t, nil, book, metric)
		faultless(t, job)
		if _, err := Build(job, Options{}); err != nil {
			t.Errorf("%.20q: %v", text, err)
		}
	}
}

// Numbers that no cut list has must not break a page, nor print as NaN.
func TestHostileCutNumbersAreSafe(t *testing.T) {
	for _, v := range []float64{0, -1, 1e-9, 1e9, math.NaN(), math.Inf(1)} {
		book := everyCut(t)
		for i := range book.Groups {
			g := &book.Groups[i]
			g.Kerf, g.EndLoss, g.BoughtKg = units.MM(v), units.MM(v), units.Kg(v)
		}
		for i := range book.Results {
			book.Results[i].Mass, book.Results[i].Shrink = units.Kg(v), &[2]units.MM{units.MM(v), units.MM(v)}
		}
		for i := range book.Plates {
			book.Plates[i].Area, book.Plates[i].Mass = v, units.Kg(v)
		}
		doc := faultless(t, cutJob(t, nil, book, metric))
		for _, bad := range []string{"NaN", "Inf"} {
			if count(doc, bad) > 0 {
				t.Errorf("%g is printed as %s", v, bad)
			}
		}
	}
}

// With joints the cutting pages stand behind the cover of a single assembly, and
// before all of several; the index and the list of what to buy name their pages.
func TestWhereCuttingPagesStand(t *testing.T) {
	one := faultless(t, cutJob(t, []joint.Joint{leg("W-1", 6, 8, 10, 500, "PB"), leg("W-2", 6, 8, 10, 500, "PF")}, everyCut(t), metric))
	if got := marksOf(one); got[0] != "0 Frame A" || got[1] != "1 Cutting pages" || got[2] != "2 SHS 100x100x5 S355" || !strings.HasPrefix(got[len(got)-1], "1 Set-up 2") {
		t.Errorf("bookmarks of one assembly: %q", got)
	}
	several := faultless(t, cutJob(t, everyKind(), everyCut(t), metric))
	if got := marksOf(several); got[0] != "0 Index" || got[1] != "0 Cutting pages" || got[2] != "1 SHS 100x100x5 S355" {
		t.Errorf("bookmarks of several assemblies: %q", got)
	}
	for _, doc := range []*page.Document{one, several} {
		for i, p := range doc.Pages {
			for _, m := range p.Marks {
				if name, ok := strings.CutSuffix(m.Title, " S355"); ok && !listedOn(doc, name, i+1) {
					t.Errorf("no list names page %d for %s", i+1, name)
				}
			}
		}
	}
	if alone := marksOf(faultless(t, cutJob(t, nil, everyCut(t), metric))); alone[0] != "0 Cutting pages" {
		t.Errorf("bookmarks of a cut list alone: %q", alone)
	}
	single := bookOf([]parts.Part{part(t, "A", "IPE 200", 0, 1000, 3)}, sixMetres)
	if got := marksOf(faultless(t, cutJob(t, nil, single, metric))); len(got) != 2 || got[1] != "1 IPE 200 S355" {
		t.Errorf("bookmarks of one section: %q", got)
	}
}

func marksOf(doc *page.Document) (out []string) {
	for _, p := range doc.Pages {
		for _, m := range p.Marks {
			out = append(out, strconv.Itoa(m.Level)+" "+m.Title)
		}
	}
	return out
}

// listedOn tells whether a row of the list of what to buy names a page.
func listedOn(doc *page.Document, name string, number int) bool {
	for _, p := range doc.Pages {
		for id, box := range p.Boxes {
			if box.Name != "buy row" {
				continue
			}
			first, at := "", false
			for _, text := range p.Texts {
				if text.Box != page.BoxID(id) {
					continue
				}
				if first == "" {
					first = text.S
				}
				at = at || text.S == strconv.Itoa(number) && text.Face == page.Bold
			}
			if first == name && at {
				return true
			}
		}
	}
	return false
}

// A cutting page names the list it was made from.
func TestCuttingPagesNameTheirList(t *testing.T) {
	doc := faultless(t, cutJob(t, []joint.Joint{leg("W-1", 6, 8, 10, 500, "PB")}, everyCut(t), metric))
	saw, weld := 0, 0
	for _, p := range doc.Pages {
		for _, text := range p.Texts {
			if p.Boxes[text.Box].Name == "footer" && strings.Contains(text.S, "cut.csv") && strings.Contains(text.S, "77aa01c2") {
				saw++
			}
			if p.Boxes[text.Box].Name == "footer" && strings.Contains(text.S, "frame.csv") && strings.Contains(text.S, "3fa9c1d2") {
				weld++
			}
		}
	}
	if saw < 4 || weld < 2 || saw+weld != len(doc.Pages) {
		t.Errorf("%d pages name the cut list, %d the joints, of %d", saw, weld, len(doc.Pages))
	}
}

// 5,000 pieces, all different, are on paper in seconds.
func TestManyPiecesAreQuick(t *testing.T) {
	book := bookOf(manyPieces(t, 5000), bars.Stock{Lengths: []units.MM{12000}, Kerf: 3, EndLoss: 20})
	job := cutJob(t, nil, book, metric)
	start := time.Now()
	pdf, err := Build(job, Options{})
	must(t, err)
	took := time.Since(start)
	t.Logf("%d pieces, %d bars: %d bytes in %v", 5000, len(book.Bars), len(pdf), took)
	if took > 20*time.Second {
		t.Errorf("5,000 pieces take %v", took)
	}
	again, err := Build(job, Options{})
	must(t, err)
	if string(again) != string(pdf) {
		t.Error("the same cut list gives other bytes the second time")
	}
}

// What is cut from small stocks shares a sheet: a new one begins only where the next
// section has no room on the last, and every section begins where its row says.
func TestSectionsShareSheets(t *testing.T) {
	job := cutJob(t, nil, everyCut(t), metric)
	b := builderOf(t, job)
	for i, sheet := range b.saw.sheets {
		high := -float64(blockGap)
		for _, k := range sheet {
			h, whole := b.blockHeight(k)
			high += h + blockGap
			if !whole && len(sheet) > 1 {
				t.Errorf("sheet %d: a section of several pages shares its own", i+1)
			}
		}
		if room := b.foot - b.top; high > room && len(sheet) > 1 {
			t.Errorf("sheet %d: %.0f mm on %.0f", i+1, high, room)
		}
		if i+1 < len(b.saw.sheets) {
			next, whole := b.blockHeight(b.saw.sheets[i+1][0])
			if whole && high+blockGap+next <= b.foot-b.top && high <= b.foot-b.top {
				t.Errorf("sheet %d has room for the first section of the next", i+1)
			}
		}
	}
	if len(b.saw.sheets) >= len(b.saw.blocks) {
		t.Errorf("%d sections on %d sheets", len(b.saw.blocks), len(b.saw.sheets))
	}
}
