package traveller

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
)

// A warning after which nobody welds before something is settled stands where an error
// does, directly under the title, and begins with the same word; others stand below.
func TestWarningsThatStopTheWorkStandHigh(t *testing.T) {
	duplex := leg("W-1", 5, 6, 6, 500, "PB")
	duplex.Material = "2205"
	inside := leg("W-2", 5, 6, 6, 500, "PB")
	inside.Note = "weld inside the tank"
	huge := leg("W-3", 14, 4, 4, 500, "PB")
	small := leg("W-4", 3, 15, 15, 500, "PB")
	for code, c := range map[string]struct {
		j    joint.Joint
		high bool
	}{"weld-care": {duplex, true}, "confined": {inside, true}, "leg-unlikely": {huge, true}, "throat-min": {small, false}} {
		job := jobOf(t, []joint.Joint{c.j}, metric)
		found := finding.Check{}
		for _, k := range job.Plans[0].Checks {
			if k.Code == code {
				found = k
			}
		}
		if found.Level != finding.Warning {
			t.Fatalf("%s is not a warning of the joint: %+v", code, job.Plans[0].Checks)
		}
		doc := faultless(t, job)
		sheet := doc.Pages[len(doc.Pages)-1]
		station, at, word := 0.0, 0.0, ""
		last := ""
		for _, text := range sheet.Texts {
			box := sheet.Boxes[text.Box]
			switch {
			case box.Name == "station" || box.Name == "no settings":
				station = box.Y
			case box.Name == "check" && strings.HasPrefix(strings.ToLower(found.Text), strings.ToLower(strings.TrimSuffix(firstWords(text.S, 3), "."))):
				at, word = box.Y, last
			}
			last = text.S
		}
		want := map[bool]string{true: "STOP", false: "CHECK"}[c.high]
		if at == 0 || (at < station) != c.high || word != want {
			t.Errorf("%s: at %.1f with %q, station at %.1f", code, at, word, station)
		}
	}
}

func firstWords(text string, n int) string {
	words := strings.Fields(text)
	return strings.Join(words[:min(n, len(words))], " ")
}

// Every warning that the work waits for is a rule of the tables.
func TestWarningsThatStopAreRules(t *testing.T) {
	set, err := builtIn()
	must(t, err)
	known := map[string]bool{}
	for _, r := range set.CheckRules {
		known[r.Code] = true
	}
	for _, code := range waits {
		if !known[code] {
			t.Errorf("no rule has the code %s", code)
		}
	}
}
