package traveller

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/traveller/sketch"
)

// sheet is a page of a set-up: its first, or one on which the sign-off goes on.
type sheet struct {
	page  int // from 0
	first bool
	of    setup.Setup
}

// sheetsOf returns the sheets of a traveller in the order in which they lie: a bookmark
// of the second level begins each set-up, and pages with a code and none go on with it.
func sheetsOf(t *testing.T, job *price.Job, doc *page.Document) []sheet {
	t.Helper()
	var setups []setup.Setup
	for _, a := range setup.Group(job) {
		setups = append(setups, a.Setups()...)
	}
	var out []sheet
	next := 0
	for i, p := range doc.Pages {
		coded, begins := false, false
		for _, b := range p.Boxes {
			coded = coded || b.Name == "code"
		}
		for _, m := range p.Marks {
			begins = begins || coded && m.Level == 1
		}
		if begins {
			next++
		}
		if coded {
			out = append(out, sheet{i, begins, setups[next-1]})
		}
	}
	if next != len(setups) {
		t.Fatalf("%s: %d of %d set-ups have a sheet", job.List.File, next, len(setups))
	}
	return out
}

// printed writes the traveller of a job into a folder and returns the file and its model.
func printed(t *testing.T, dir string, job *price.Job) (string, *page.Document) {
	t.Helper()
	doc, err := Model(job, Options{})
	must(t, err)
	pdf, err := Build(job, Options{})
	must(t, err)
	file := filepath.Join(dir, "t.pdf")
	must(t, os.WriteFile(file, pdf, 0o644))
	return file, doc
}

// printedSamples is every sample by name, and every kind of joint. In a second look the
// two largest are left out unless all must be looked at: they are the same sheets again.
func printedSamples(t *testing.T, opts price.Options, second bool) map[string]*price.Job {
	jobs := map[string]*price.Job{"kinds": jobOf(t, everyKind(), opts)}
	for i, path := range samples {
		if i > 1 || !second || os.Getenv("SEAMTALLY_NEED_ALL") != "" {
			jobs[filepath.Base(path)] = sample(t, path, opts)
		}
	}
	return jobs
}

// The code of every sheet of every sample, rendered as a printer would and read by
// another program, names its list, row and mark; it stands in the same place on every
// page, so only that place is rendered.
func TestEveryCodeOfEverySampleIsReadBack(t *testing.T) {
	need(t, "pdftoppm", "zbarimg")
	const dpi = 150
	at := func(mm float64) string { return strconv.Itoa(int(mm / 25.4 * dpi)) }
	total := 0
	for _, paper := range []string{"a4", "letter"} {
		opts := metric
		opts.Paper = paper
		for name, job := range printedSamples(t, opts, paper != "a4") {
			dir := t.TempDir()
			file, doc := printed(t, dir, job)
			sheets := sheetsOf(t, job, doc)
			w, _ := page.Size(paper)
			must(t, exec.Command("pdftoppm", "-r", strconv.Itoa(dpi), "-gray", "-x", at(w-marginRight-codeSize-1), "-y", at(marginEdge-2),
				"-W", at(codeSize+2), "-H", at(codeSize+2), file, filepath.Join(dir, "p")).Run())
			pictures, _ := filepath.Glob(filepath.Join(dir, "p*.pgm"))
			out, _ := exec.Command("zbarimg", append([]string{"-q", "--raw", "-Sdisable", "-Sqrcode.enable"}, pictures...)...).Output()
			read := strings.Split(strings.TrimSpace(string(out)), "\n")
			if len(read) != len(sheets) {
				t.Errorf("%s on %s: %d codes read of %d sheets", name, paper, len(read), len(sheets))
				continue
			}
			for i, s := range sheets {
				j := s.of.Pattern().Joint
				if want := fmt.Sprintf("%.10s/%d/%s", job.List.SHA256, j.Place.Row, j.Mark); read[i] != want {
					t.Errorf("%s on %s, page %d: %q was read, want %q", name, paper, s.page+1, read[i], want)
				}
			}
			total += len(sheets)
		}
	}
	t.Logf("%d codes were read back", total)
}

// Every limit of every sheet of every sample is found with its sign by a program that
// reads the page as a person does, after the mark that it holds for.
func TestEveryLimitIsFoundBesideItsMark(t *testing.T) {
	need(t, "pdftotext")
	total := 0
	for _, us := range []bool{false, true} {
		opts := metric
		opts.US = us
		for name, job := range printedSamples(t, opts, us) {
			file, doc := printed(t, t.TempDir(), job)
			out, err := exec.Command("pdftotext", file, "-").Output()
			must(t, err)
			pages := strings.Split(string(out), "\f")
			for _, s := range sheetsOf(t, job, doc) {
				if !s.first {
					continue
				}
				p := s.of.Pattern()
				text := strings.Join(strings.Fields(pages[s.page]), " ")
				_, after, ok := strings.Cut(text, page.Clean(p.Joint.Mark))
				if !ok {
					t.Errorf("%s, page %d: the mark %s is not found", name, s.page+1, p.Joint.Mark)
				}
				for what, limit := range limitsOn(p, us) {
					if total++; !strings.Contains(after, limit) {
						t.Errorf("%s, page %d, %s: %s %q is not found after the mark", name, s.page+1, p.Joint.Mark, what, limit)
					}
				}
			}
		}
	}
	if total < 400 {
		t.Errorf("only %d limits were looked for", total)
	}
	t.Logf("%d limits were found", total)
}

// limitsOn are the limits that the sheet of a plan must show, written out here anew.
func limitsOn(p *plan.Plan, us bool) map[string]string {
	out := map[string]string{}
	if p.Settings {
		warmLimits(out, p, us)
		heatLimits(out, p, us)
	}
	bound := func(name, number string) {
		most, ok := p.Most(number)
		switch {
		case !ok:
		case us:
			out[name] = "≤ " + trimmed(math.Floor(float64(most)/25.4*100+1e-9)/100, 2) + " in"
		default:
			out[name] = "≤ " + trimmed(math.Floor(float64(most)*10+1e-9)/10, 1) + " mm"
		}
	}
	bound("fit-up gap", plan.FitGap)
	bound("cap", plan.CapHeight)
	bound("root", plan.RootHeight)
	if size := float64(p.Prep.LegA); size > 0 && !us && sketch.Growth(p) == 0 {
		out["size"] = "z ≥ " + trimmed(size, 1)
		if p.Joint.Size.Means == joint.Throat && (p.Prep.LegB == 0 || p.Prep.LegB == p.Prep.LegA) {
			out["size"] = "a ≥ " + trimmed(float64(p.Prep.Throat), 1)
		}
	}
	return out
}

func warmLimits(out map[string]string, p *plan.Plan, us bool) {
	degrees := func(c float64, to func(float64) float64) string { // in °F by tens, to the safe side
		if us {
			return trimmed(10*to(math.Round((c*1.8+32)*1e6)/1e7), 0) + " °F"
		}
		return trimmed(to(c), 0) + " °C"
	}
	out["preheat"] = "No preheat"
	switch {
	case p.Preheat != nil:
		out["preheat"] = "PREHEAT ≥ " + degrees(float64(*p.Preheat), math.Ceil)
	case p.PreheatWords != "" && !strings.HasPrefix(p.PreheatWords, "none"):
		out["preheat"] = "Preheat not worked out"
	}
	if p.Interpass != nil && (len(p.Runs) > 1 || p.Joint.Sides == 2) {
		between := "between runs ≤ "
		if us { // in inches the sheet is American
			between = "between passes ≤ "
		}
		out["between runs"] = between + degrees(float64(*p.Interpass), math.Floor)
	}
}

func heatLimits(out map[string]string, p *plan.Plan, us bool) {
	for i, sign := range []string{"≥ ", "≤ "} {
		v := float64(p.HeatRange[i])
		switch {
		case v <= 0:
		case us:
			out["heat input "+sign] = sign + trimmed(v*25.4, 1) + " kJ/in"
		default:
			out["heat input "+sign] = sign + strconv.FormatFloat(v, 'f', 2, 64) + " kJ/mm"
		}
	}
}

// trimmed writes a number with no more decimals than given, without idle zeros; halves
// of a tenth go up, as a size must.
func trimmed(v float64, decimals int) string {
	if decimals == 1 {
		v = math.Round(v*10+1e-6) / 10
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
