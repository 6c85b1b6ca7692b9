package traveller

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/price"
	"seamtally/templates"
)

// decimal is a number with a point before its decimals.
var decimal = regexp.MustCompile(`\d\.\d`)

// Where shops write a comma before decimals, every number of ours has one; what people
// typed and the names of wires, materials, machines and files stay.
func TestDecimalsAreWrittenAsTheCountryDoes(t *testing.T) {
	mixed := mixedV()
	thin := leg("W2.5", 2.5, 1.5, 3, 500, "PB")
	thin.Note = "near 0.5 mm shim"
	unsure := leg("N", 3, 3, 3, 700, "PB")
	unsure.Material = "1.4301"
	for _, lang := range templates.Languages() {
		opts := metric
		opts.Lang = lang
		jobs := []*price.Job{jobOf(t, append(everyKind(), mixed, thin, unsure), opts)}
		for _, path := range samples {
			jobs = append(jobs, sample(t, path, opts))
		}
		numbers := 0
		for _, job := range jobs {
			for i, p := range faultless(t, job).Pages {
				for _, text := range p.Texts {
					if p.Boxes[text.Box].Name == "footer" || typed(job, text.S) {
						continue
					}
					has := decimal.MatchString(text.S)
					if has {
						numbers++
					}
					if has && slices.Contains([]string{"de", "es", "pl", "uk"}, lang) {
						t.Errorf("%s, %s, page %d, %s: %q", lang, job.List.File, i+1, p.Boxes[text.Box].Name, text.S)
					}
				}
			}
		}
		if lang == "en" && numbers < 500 {
			t.Errorf("only %d decimals were seen in English", numbers)
		}
	}
}

// typed tells whether a printed text has its point from the list: from a mark, a remark, a
// drawing's number or a material.
func typed(job *price.Job, text string) bool {
	return slices.ContainsFunc(job.List.Joints, func(j joint.Joint) bool {
		for _, own := range []string{j.Mark, j.Note, j.Drawing, j.Material, j.Assembly} {
			if decimal.MatchString(own) && strings.Contains(text, own) {
				return true
			}
		}
		return false
	})
}

// The remark that somebody typed is printed as typed, and so is the mark.
func TestWhatWasTypedKeepsItsPoint(t *testing.T) {
	j := leg("W2.5", 5, 8, 10, 500, "PB")
	j.Note, j.Material = "near 0.5 mm shim", "1.0577"
	opts := metric
	opts.Lang = "de"
	all := ""
	doc := faultless(t, jobOf(t, []joint.Joint{j}, opts))
	for _, text := range doc.Pages[len(doc.Pages)-1].Texts {
		all += text.S + "\n"
	}
	for _, want := range []string{"W2.5\n", "near 0.5 mm shim", "1.0577", "3,5 mm"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
}
