package traveller

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"seamtally/batch/joint"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
)

// assumedLines says what the list left open and the sheet takes for granted: all of it, or
// as much as has room, and how much more the workbook tells.
func (f *flow) assumedLines(s setup.Setup) []string {
	var parts []string
	for _, p := range s.Plans {
		for _, a := range slices.Concat(p.Joint.Assumed, p.Assumed) {
			metal := a.Key == "material" || a.Key == "material2"
			if metal && !p.Settings { // only its mass was reckoned so: nobody may weld it as that
				continue
			}
			if plain(a) || a.Key == "gouge" && p.Prep.Gouge.Depth > 0 { // the pass table tells its depth
				continue
			}
			key := strings.ReplaceAll(a.Key, "_", " ")
			if f.words.Has("assumed." + a.Key) {
				key = f.say("assumed." + a.Key)
			}
			value := f.takenValue(a)
			if a.Key == "position" && a.Value == p.Joint.Position {
				value = f.names.Position(p)
			}
			if text := strings.TrimSpace(key + " " + value); !slices.Contains(parts, text) {
				parts = append(parts, text)
			}
		}
	}
	lines := f.remarkBelow(s)
	if len(parts) == 0 {
		return lines
	}
	most := f.squeeze.mostRemarkLines()
	for n := len(parts); ; n-- {
		text := f.show.List(parts[:n]...)
		if n < len(parts) {
			text += "; " + f.say("taken.more", strconv.Itoa(len(parts)-n))
		}
		text = f.say("assumed", text)
		if taken := page.Wrap(small.At(8.5), text, f.width, most+1); n == 1 || len(taken) <= most && utf8.RuneCountInString(text) <= page.Longest {
			return append(lines, taken...)
		}
	}
}

// takenValue is what was taken: a number with the sign before its decimals that the
// language has, but for the name of a material.
func (f *flow) takenValue(a joint.Assumption) string {
	if a.Key == "material" || a.Key == "material2" {
		return f.takenText(a.Value)
	}
	return f.show.Written(f.takenText(a.Value))
}

// takenText says a value that was taken in the language of the sheet, as far as it is
// words: a kind of joint, a metal, or what a size is the size of.
func (f *flow) takenText(value string) string {
	if value == "" {
		return ""
	}
	if f.words.Has("kind." + value) {
		return f.say("kind." + value)
	}
	number, word := "", value
	if at := strings.LastIndexByte(value, ' '); at > 0 && value[0] >= '0' && value[0] <= '9' {
		number, word = value[:at+1], value[at+1:]
	}
	if f.words.Has("taken." + word) {
		return number + f.say("taken."+word)
	}
	return value
}

// plain tells whether an assumption is what anybody would take a blank for: parts
// that stand square, a weld on one side, one copy, two parts equally thick; or what the
// symbol shows, that it goes all round; or how metal is weighed that nobody knows, which
// is for the office: a sheet that has to ask for the material must not name one.
func plain(a joint.Assumption) bool {
	if a.Key == "material" && a.Value == "carbon steel" {
		return true
	}
	if a.Key == "qty" || a.Key == "length" && a.Value == "all round" || (a.Key == "t1" || a.Key == "t2") && strings.HasPrefix(a.Value, "as t") {
		return true
	}
	return a.Key == "angle" && a.Value == "90" || a.Key == "sides" && a.Value == "1"
}

func (f *flow) assumedHeight(s setup.Setup) float64 {
	if lines := f.assumedLines(s); len(lines) > 0 {
		return float64(len(lines))*small.At(8.5).Leading() + 1
	}
	return 0
}

func (f *flow) assumed(s setup.Setup) {
	lines := f.assumedLines(s)
	if len(lines) == 0 {
		return
	}
	r, box := f.take("assumed", f.assumedHeight(s))
	f.p.Lines(box, r.X, r.Y+3.3, r.W, small.At(8.5), lines)
}
