package traveller

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/setup"
)

// The marks over a sheet, and beside them, where there is room, what the list remarks
// on the joint: by that a welder finds it on the structure. What has no room there stands
// below; a remark that has no room on the sheet at all is counted.
var (
	markStyle   = page.Style{Face: page.Bold, Size: 26}
	remarkStyle = page.Style{Face: page.Regular, Size: 9.5}
)

const (
	remarkIndent = 5  // after the marks
	remarkRoom   = 38 // less is too narrow for words
	remarkLines  = 2  // beside the marks
	remarkMarks  = 6  // that a remark names, the others are counted
)

// remarks are what the list says of the joints of a sheet, each once, with the marks where
// the joints differ in it.
func remarks(s setup.Setup) []string {
	var notes []string
	marks := map[string][]string{}
	for _, p := range s.Plans {
		note := strings.Join(strings.Fields(p.Joint.Note), " ")
		if note != "" && !slices.Contains(notes, note) {
			notes = append(notes, note)
		}
		marks[note] = append(marks[note], p.Joint.Mark)
	}
	if len(notes) == 1 && len(marks) == 1 {
		return notes
	}
	for i, note := range notes {
		notes[i] = markList(marks[note], remarkMarks) + ": " + note
	}
	return notes
}

// remarkBeside returns the one remark of a sheet in lines that fit beside its marks;
// false where there is none, more than one, or no room.
func (f *flow) remarkBeside(s setup.Setup) (lines []string, fits bool) {
	said := remarks(s)
	if len(said) != 1 {
		return nil, false
	}
	room := (f.width-titleGap)*titleMarks/(titleMarks+titleProcedure) - markStyle.Width(page.Clean(markList(s.Marks(), 4))) - remarkIndent
	if room < remarkRoom {
		return nil, false
	}
	lines = page.Wrap(remarkStyle, said[0], room, remarkLines+1)
	return lines, len(lines) <= remarkLines
}

// mostRemarkLines is how many lines of remarks a sheet carries below.
func (q squeeze) mostRemarkLines() int {
	if q >= squeezed {
		return 3
	}
	return 5
}

// remarkBelow returns the remarks that do not stand beside the marks: all of them, or as
// many whole ones as have room, and how many more the list has. Of a single one that is
// longer than the room its beginning stands, and where the rest is.
func (f *flow) remarkBelow(s setup.Setup) []string {
	said := remarks(s)
	if _, beside := f.remarkBeside(s); beside || len(said) == 0 {
		return nil
	}
	style, most := small.At(8.5), f.squeeze.mostRemarkLines()
	for n := len(said); n > 0; n-- {
		text := f.say("remark", strings.Join(said[:n], "; "))
		if n < len(said) {
			text += "; " + f.say("remark.more", strconv.Itoa(len(said)-n), f.listName())
		}
		if lines := page.Wrap(style, text, f.width, most+1); len(lines) <= most && utf8.RuneCountInString(text) <= page.Longest {
			return lines
		}
	}
	more := f.say("remark.cut", f.listName())
	if len(said) > 1 {
		more += "; " + f.say("remark.more", strconv.Itoa(len(said)-1), f.listName())
	}
	begun := page.Wrap(style, f.say("remark", said[0]), f.width, most-1)
	return append(begun, page.Wrap(style, more, f.width, 1)...)
}

// listName is the file that the remarks stand in.
func (b *builder) listName() string {
	file, _ := b.source(nil)
	return dash(file)
}
