package joint

import (
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/joint/measure"
	"seamtally/batch/units"
)

var (
	reISO       = regexp.MustCompile(`(?i)(?:^|\s)(\d{1,4}) ?x ?([^()x]+?) ?(\(|/) ?([^()]+?) ?\)?$`)
	reSizedGOST = regexp.MustCompile(`^[\d.,]+ ?- ?([\d.,]+ ?[/zZ] ?[\d.,]+.*)$`) // 6-50/150: leg, then length/pitch
	reSlashes   = regexp.MustCompile(`^\d+(?: ?/ ?\d+){2,}$`)
	reHitMiss   = regexp.MustCompile(`(?i)^([\d.,]+ ?\w*) ?(?:hit|on) ?,? ?([\d.,]+ ?\w*) ?(?:miss|off)$`)
	rePitch     = regexp.MustCompile(`(?i)^(?:.* )?([\d.,]+(?: ?\d+/\d+)?(?: ?mm| ?in| ?")?) ?(-|@|/|z) ?([\d.,]+(?: ?\d+/\d+)?(?: ?mm| ?in| ?")?)$`)
)

// stitchOf reads an intermittent weld: count x length (gap), or length-pitch.
func (s *spellings) stitchOf(text string, bare measure.Unit, style measure.Style) (*Stitch, *measure.Fault) {
	if _, ok := s.word("continuous", text); ok {
		return nil, nil
	}
	st := &Stitch{Text: text}
	t := measure.Plain(text)
	t = strings.TrimLeft(t, "△◺⊿ ")
	t, st.Staggered = s.stagger(t)
	if m := reSizedGOST.FindStringSubmatch(t); m != nil {
		t = m[1]
	}
	read := func(a, b string) (x, y float64, bad *measure.Fault) {
		if x, bad = millimetres(strings.TrimSpace(a), bare, style); bad == nil {
			y, bad = millimetres(strings.TrimSpace(b), bare, style)
		}
		return x, y, bad
	}
	var x, y float64
	var bad *measure.Fault
	if m := reISO.FindStringSubmatch(t); m != nil {
		st.Count, _ = strconv.Atoi(m[1])
		x, y, bad = read(m[2], m[4])
	} else if m := reHitMiss.FindStringSubmatch(t); m != nil {
		x, y, bad = read(m[1], m[2])
	} else if m := rePitch.FindStringSubmatch(t); m != nil {
		st.ByPitch = true
		st.Staggered = st.Staggered || strings.EqualFold(m[2], "z")
		x, y, bad = read(m[1], m[3])
	} else {
		return nil, &measure.Fault{Text: "it is no stitch note that is known", Hint: "write count x length (gap) as 5x50(100), or length-pitch as 50-150"}
	}
	if bad != nil && reSlashes.MatchString(t) {
		return nil, &measure.Fault{Text: "several numbers parted by slashes are no stitch note", Hint: "write one of these, as the drawing has it"}
	}
	if bad != nil {
		return nil, bad
	}
	return st.close(x, y)
}

// close fills in gap or pitch, whichever was not stated.
func (st *Stitch) close(x, y float64) (*Stitch, *measure.Fault) {
	if x <= 0 || y < 0 {
		return nil, &measure.Fault{Text: "a stitch must have a length above zero"}
	}
	st.Segment = units.MM(x)
	if !st.ByPitch {
		st.Gap, st.Pitch = units.MM(y), units.MM(x+y)
		return st, nil
	}
	if y < x {
		return nil, &measure.Fault{Text: "the pitch (centre to centre) is shorter than the stitch itself", Hint: "write length-pitch, the pitch being at least the length; or count x length (gap)"}
	}
	st.Pitch, st.Gap = units.MM(y), units.MM(y-x)
	return st, nil
}

// stagger takes the words for staggered or chain out of a note.
func (s *spellings) stagger(t string) (rest string, staggered bool) {
	fields := strings.Fields(t)
	kept := fields[:0:0]
	for _, f := range fields {
		if v, ok := s.word("stagger", f); ok && !strings.ContainsAny(f, "0123456789") {
			staggered = staggered || v == "staggered"
			continue
		}
		kept = append(kept, f)
	}
	return strings.Join(kept, " "), staggered
}
