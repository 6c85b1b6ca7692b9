package traveller

import (
	"slices"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/traveller/page"
	"seamtally/tables"
	"seamtally/templates"
)

// bothSidesAreSignedFor fails where whoever has welded a side cannot sign for it: a seam
// of two sides has a box for each on every line, and its picture says which is which.
func bothSidesAreSignedFor(t *testing.T, job *price.Job, doc *page.Document) {
	words := builderOf(t, job)
	for _, s := range sheetsOf(t, job, doc) {
		p, pg := s.of.Pattern(), doc.Pages[s.page]
		if !s.first {
			continue
		}
		for _, side := range []string{words.say("run.side1"), words.say("run.side2")} {
			drawn := saidIn(pg, "picture", side)
			if twoSided(p) && len(p.Runs) > 0 && !drawn {
				t.Errorf("%s: the picture does not name %s", p.Joint.Mark, side)
			}
			if !twoSided(p) && (drawn || saidIn(pg, "sign-off head", side)) {
				t.Errorf("%s has one side, and its sheet names %s", p.Joint.Mark, side)
			}
			if signed := slices.ContainsFunc(pg.Boxes, func(b page.Box) bool { return b.Name == "sign-off head" }); twoSided(p) && signed && !saidIn(pg, "sign-off head", side) {
				t.Errorf("%s: nobody signs for %s", p.Joint.Mark, side)
			}
		}
	}
}

func builderOf(t *testing.T, job *price.Job) *builder {
	words, err := templates.Wording(job.Opts.Lang)
	must(t, err)
	return newBuilder(job, Options{}, words)
}

// saidIn tells whether a text stands on a page in a box of a name.
func saidIn(p *page.Page, box, text string) bool {
	return slices.ContainsFunc(p.Texts, func(x page.Text) bool { return p.Boxes[x.Box].Name == box && x.S == page.Clean(text) })
}

// A sheet says whose figures it has: within those of the procedure that binds the joint,
// only starting points beside one that is not at hand, or nobody's.
func TestSheetSaysWhoseFiguresItHas(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	own := *set
	own.Procedures = append(slices.Clone(set.Procedures), tables.Procedure{
		Origin: tables.Origin{Basis: "shop", Source: "procedure sheet"}, Number: "P-1", Process: "135", Filler: "G3Si1", Dia: 1.2, Gas: "M21", CurrentLow: 200, CurrentHigh: 280,
	})
	shop, err := rates.Default(set)
	must(t, err)
	words := mustWords(t)
	for wps, key := range map[string]string{"P-1": "wps.within", "P-2": "wps.first", "": "wps.none.text"} {
		j := leg("W-1", 6, 10, 10, 500, "PB")
		j.WPS = wps
		list := joint.List{File: "frame.csv", SHA256: "3fa9c1d20b7e45aa", Joints: []joint.Joint{j}}
		with := set
		if wps == "P-1" {
			with = &own
		}
		job := price.Price(list, plan.Joints(list.Joints, with, &shop, plan.Options{}), shop, nil, metric)
		p := sheetOf(faultless(t, &job), "W-1")
		if got := textIn(p, "title"); !strings.Contains(got, words.Say(key)) {
			t.Errorf("procedure %q: the sheet says %q, want %q", wps, got, words.Say(key))
		}
	}
}

// textIn joins what stands in a box of a page.
func textIn(p *page.Page, box string) string {
	var out []string
	for _, x := range p.Texts {
		if p.Boxes[x.Box].Name == box {
			out = append(out, x.S)
		}
	}
	return strings.Join(out, " ")
}

// How a good test bead looks goes by metal, slag and arc.
func TestGoodTestBead(t *testing.T) {
	alu, inox, cored, thin := leg("A-1", 5, 6, 6, 500, "PB"), leg("N-1", 4, 6, 6, 500, "PB"), leg("C-1", 6, 10, 10, 500, "PB"), leg("T-1", 2, 1.5, 1.5, 500, "PB")
	alu.Material, inox.Material, cored.Wire, thin.Wire = "5083", "304L", "E71T-1", "G3Si1"
	for _, c := range []struct {
		j    joint.Joint
		want string
	}{{alu, "good.bright"}, {inox, "good.arc"}, {cored, "good.slag"}, {thin, "good.arc"}} {
		p := &jobOf(t, []joint.Joint{c.j}, metric).Plans[0]
		if got := goodBead(p); got != c.want {
			t.Errorf("%s: %s (%s, %s), want %s", c.j.Mark, got, p.MetalGroup, p.Transfer, c.want)
		}
	}
}

// A root laid in short arc that is the whole weld sounds as a short arc does; the arc that
// the rest would have has no say.
func TestGoodTestBeadGoesByThePassesThereAre(t *testing.T) {
	p := jobOf(t, []joint.Joint{leg("W-1", 5, 6, 6, 500, "PB")}, metric).Plans[0]
	m := *p.Manner
	p.Manner = &m
	p.Transfer, p.Runs = plan.Spray, []plan.Run{{Number: 1, Transfer: plan.ShortArc}}
	if got := goodBead(&p); got != "good.arc" || mixed(&p) || modesOf(&p)[0] != plan.ShortArc {
		t.Errorf("%s, mixed: %v", got, mixed(&p))
	}
	if p.Runs = append(p.Runs, plan.Run{Number: 2, Transfer: plan.Spray}); !mixed(&p) {
		t.Error("a root in short arc under a spray arc sounds like one")
	}
}

// A cover whose last rows would go on to another page stands a little closer instead.
func TestCoverStaysOnOnePageWhereItCan(t *testing.T) {
	for n := 1; n < 14; n++ {
		var joints []joint.Joint
		for range n {
			joints = append(joints, leg("W-1", 6, 8, 10, 500, "PB"))
		}
		job := jobOf(t, joints, metric)
		doc := faultless(t, job)
		covers, rows := 0, 0
		for _, p := range doc.Pages {
			here := 0
			for _, b := range p.Boxes {
				if b.Name == "joints row" {
					here++
				}
			}
			if here > 0 {
				covers++
				rows = here
			}
		}
		if covers == 2 && rows == 1 {
			t.Errorf("%d joints: a single row stands on the second page of the cover", n)
		}
	}
}

// A flare that is filled less than flush says how far below it the weld ends.
func TestAFlareSaysHowFarItIsFilled(t *testing.T) {
	full := butt("F-1", joint.FlareBevel, 6, 500, "PA")
	full.Radius = 12
	part := full.Apart()
	part.Size = joint.Size{Means: joint.Throat, A: 4, Text: "a4"}
	if got := said(sheetOnly(t, full), "size"); !strings.Contains(got, "filled flush") {
		t.Errorf("flush: %q", got)
	}
	// Five eighths of R 12 are a throat of 7.5 when flush (AISC 360 Table J2.2): one of 4
	// ends 3.5 below.
	if got := said(sheetOnly(t, part), "size"); !strings.Contains(got, "filled to 3.5 mm below flush") {
		t.Errorf("a4: %q", got)
	}
}

// A wire that shields itself runs on the other pole: the sheet says that there is no gas,
// and has the exchange of the leads ticked off before starting, in every language.
func TestSelfShieldedSheetSaysNoGasAndLeadsExchanged(t *testing.T) {
	j := leg("W-1", 5, 6, 6, 500, "PB")
	j.Wire = "T 42 Z W N 1.2"
	plain := leg("W-2", 5, 6, 6, 500, "PB")
	for lang, words := range map[string][2]string{
		"en": {"none", "leads exchanged: DC–"}, "de": {"keine", "Kabel getauscht: DC–"}, "es": {"ninguno", "cables cambiados: DC–"},
		"pl": {"brak", "przewody zamienione: DC–"}, "uk": {"немає", "кабелі переставлено: DC–"},
	} {
		look := metric
		look.Lang = lang
		sheet := faultless(t, jobOf(t, []joint.Joint{j}, look)).Pages
		at := sheet[len(sheet)-1]
		if got := said(at, "dials"); !strings.Contains(got, words[0]) {
			t.Errorf("%s: dials say %q", lang, got)
		}
		if got := said(at, "test bead"); !strings.Contains(got, words[1]) {
			t.Errorf("%s: the list before starting says %q", lang, got)
		}
		sheet = faultless(t, jobOf(t, []joint.Joint{plain}, look)).Pages
		if got := said(sheet[len(sheet)-1], "test bead"); strings.Contains(got, words[1]) {
			t.Errorf("%s: a wire on the positive pole asks for the exchange", lang)
		}
	}
}

// The test bead is laid on scrap as thick as both parts: which, is said.
func TestTestBeadSaysWhichScrap(t *testing.T) {
	uneven, even, bare := leg("W-1", 5, 6, 10, 500, "PB"), leg("W-2", 5, 6, 6, 500, "PB"), butt("B-1", joint.SingleV, 12, 500, "PA")
	for _, c := range []struct {
		j    joint.Joint
		us   bool
		want string
	}{
		{uneven, false, "First: test bead on scrap of 6 and 10 mm "}, {even, false, "First: test bead on scrap of 6 mm "}, {bare, false, "First: test bead on scrap of 12 mm "},
		{uneven, true, "First: test bead on scrap of 0.236 and 0.394 in "},
	} {
		look := metric
		look.US = c.us
		pages := faultless(t, jobOf(t, []joint.Joint{c.j}, look)).Pages
		if got := said(pages[len(pages)-1], "test bead"); !strings.HasPrefix(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
