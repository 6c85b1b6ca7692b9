package page

import (
	"regexp"
	"strings"
)

// MinSize is the smallest type that may be printed, in points.
const MinSize = 8

// Align says where a text stands in its space.
type Align uint8

// The alignments.
const (
	Left Align = iota
	Centre
	Right
)

// Write puts one line of text with its baseline at y into the span x..x+w. A
// text that is too wide is first set smaller, down to MinSize, then shortened
// with an ellipsis. It returns the style used.
func (p *Page) Write(box BoxID, x, y, w float64, a Align, s Style, text string) Style {
	s, text = Fit(s, text, w)
	if text == "" {
		return s
	}
	width := s.Width(text)
	switch a {
	case Centre:
		x += (w - width) / 2
	case Right:
		x += w - width
	}
	p.Texts = append(p.Texts, Text{box, x, y, width, s, text})
	return s
}

// Fit returns the text, cleaned, and the style in which it is no wider than w.
func Fit(s Style, text string, w float64) (Style, string) {
	text = Clean(text)
	width := s.Width(text)
	if width <= w {
		return s, text
	}
	if size := s.Size * w / width; size >= MinSize {
		s.Size = float64(int(size*10)) / 10
		return s, text
	}
	if s.Size > MinSize {
		s.Size = MinSize
	}
	return s, Shorten(s, text, w)
}

// Shorten cuts a clean text so that it is no wider than w, ending in an ellipsis.
func Shorten(s Style, text string, w float64) string {
	if s.Width(text) <= w {
		return text
	}
	room := w - s.Width("…")
	if room < 0 {
		return ""
	}
	used := 0.0
	for i, r := range text {
		used += s.Width(string(r))
		if used > room {
			return strings.TrimRight(text[:i], " ") + "…"
		}
	}
	return text
}

// Wrap breaks a text into at most most lines (0: no limit) no wider than w,
// between words where possible, and not between a figure and its unit. What is left over
// is marked by an ellipsis.
func Wrap(s Style, text string, w float64, most int) []string {
	var lines []string
	line := ""
	for _, word := range together(s, strings.Fields(Clean(text)), w) {
		for _, part := range pieces(s, word, w) {
			joined := part
			if line != "" {
				joined = line + " " + part
			}
			if s.Width(joined) <= w {
				line = joined
				continue
			}
			if line != "" {
				lines = append(lines, line)
			}
			line = part
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	if most > 0 && len(lines) > most {
		lines = lines[:most]
		lines[most-1] = Shorten(s, lines[most-1]+" …", w)
	}
	return lines
}

// unit is what stands behind a figure and means nothing without it.
var unit = regexp.MustCompile(`^(?:mm|mm²|mm/min|m|m²|m/min|in|in²|in/min|ft|ft²|ft³/h|°C|°F|kg|lb|g|kJ/mm|kJ/in|l|l/min|A|V|s|min|h|%)[.,;:)]*$`)

// together joins each figure with the unit behind it, where both fit on a line, and
// each fact with the point behind it: a line that begins with the point reads as a list.
func together(s Style, words []string, w float64) []string {
	out := words[:0]
	for i, word := range words {
		last := len(out) - 1
		if i > 0 && (word == "·" || unit.MatchString(word) && endsInFigure(out[last])) && s.Width(out[last]+" "+word) <= w {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

func endsInFigure(word string) bool {
	return word != "" && word[len(word)-1] >= '0' && word[len(word)-1] <= '9'
}

// pieces cuts a word that is wider than the line; other words stay whole.
func pieces(s Style, word string, w float64) []string {
	if s.Width(word) <= w {
		return []string{word}
	}
	var out []string
	start, used := 0, 0.0
	for i, r := range word {
		adv := s.Width(string(r))
		if used+adv > w && i > start {
			out = append(out, word[start:i])
			start, used = i, 0
		}
		used += adv
	}
	return append(out, word[start:])
}

// Lines writes wrapped lines, the first with its baseline at y, and returns the
// y below the last line.
func (p *Page) Lines(box BoxID, x, y, w float64, s Style, lines []string) float64 {
	for _, l := range lines {
		p.Write(box, x, y, w, Left, s, l)
		y += s.Leading()
	}
	return y
}
