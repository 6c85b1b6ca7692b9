package joint

import (
	"regexp"
	"strings"

	"seamtally/batch/joint/measure"
	"seamtally/batch/units"
)

var (
	reSizeStitch = regexp.MustCompile(`^(.*?\d["']?(?: ?mm| ?in\.?)?) +(\d.*[x×@(/zZ-].*)$`)
	reEastern    = regexp.MustCompile(`^([△◺⊿]? ?[\d.,]+) ?- ?(\d+ ?[/zZ] ?\d+)$`) // △6-50/100: leg, length, pitch
	reDepthSize  = regexp.MustCompile(`^([^()]+?) ?\(([^()]+)\)$`)                 // 12(8): depth of preparation, penetration
)

// writtenSize reads the text of a size cell. Besides a size alone it may hold what
// drawings write in one line with it: a stitch note, a word for both sides, or the
// depth of a preparation before the penetration in brackets.
func (w *row) writtenSize(text string, c *column, unit measure.Unit) (Size, bool, *measure.Fault) {
	size, told, bad := sizeOf(text, c.means, unit, w.style)
	if bad == nil {
		w.countFraction(text, c)
		return size, told, nil
	}
	plain := measure.Plain(text)
	if front, sides := w.cutSides(text); sides != 0 {
		if size, told, again := w.writtenSize(front, c, unit); again == nil {
			w.takeSides(sides, c, text)
			size.Text = text
			return size, told, nil
		}
	}
	for _, re := range []*regexp.Regexp{reEastern, reSizeStitch} {
		m := re.FindStringSubmatch(plain)
		if m == nil || w.mapped(w.Row, "stitch") != "" {
			continue
		}
		size, told, again := sizeOf(m[1], c.means, unit, w.style)
		if _, no := w.stitchOf(m[2], measure.MM, w.style); again != nil || no != nil {
			continue
		}
		w.countFraction(m[1], c)
		w.sizeStitch, size.Text = m[2], text
		w.sizeInch = unit == measure.Inch || strings.ContainsAny(m[1], `/"`)
		if re == reEastern && !told {
			size.Means, told = Leg, true
		}
		return size, told, nil
	}
	if m := reDepthSize.FindStringSubmatch(plain); m != nil && w.mapped(w.Row, "depth") == "" {
		depth, bad1 := millimetres(m[1], unit, w.style)
		throat, bad2 := millimetres(m[2], unit, w.style)
		if bad1 == nil && bad2 == nil && depth > 0 && throat > 0 {
			w.joint.Depth = units.MM(depth)
			return Size{Means: Penetration, A: units.MM(throat), Text: text}, true, nil
		}
	}
	return size, told, bad
}

// countFraction notes an inch fraction that had no inch mark.
func (w *row) countFraction(text string, c *column) {
	if strings.Contains(measure.Plain(text), "/") && !strings.ContainsAny(text, `"″”`) && !strings.Contains(text, "in") {
		w.fractions.add(w.place(w.Number, c))
	}
}

// cutSides takes words that say one side or both off the end of a text.
func (s *spellings) cutSides(text string) (front string, sides int) {
	fields := strings.Fields(text)
	for n := min(3, len(fields)-1); n >= 1; n-- {
		tail := strings.Join(fields[len(fields)-n:], " ")
		if len([]rune(tail)) < 2 || strings.ContainsAny(tail[:1], "0123456789") {
			continue
		}
		if v, ok := s.word("sides", tail); ok {
			return strings.Join(fields[:len(fields)-n], " "), int(v[0] - '0')
		}
	}
	return text, 0
}

// whereOf reads shop or site. A letter alone is read by a header of two words with
// a stroke between, such as Shop/Field; shop stands first unless the words say not.
func (s *spellings) whereOf(text, header string) (string, bool) {
	first, second, stroke := strings.Cut(header, "/")
	letter := []rune(fold(text))
	if stroke && len(letter) == 1 {
		a, b := []rune(fold(first)), []rune(fold(second))
		if len(a) > 0 && len(b) > 0 && a[0] != b[0] {
			values := [2]string{string(Shop), string(Site)}
			if v, ok := s.word("where", first); ok && v == string(Site) && len(a) > 1 {
				values = [2]string{string(Site), string(Shop)}
			}
			switch letter[0] {
			case a[0]:
				return values[0], true
			case b[0]:
				return values[1], true
			}
		}
	}
	return s.word("where", text)
}
