package finding

import (
	"fmt"
	"strings"
)

// between parts the figures of a check.
const between = "\x1f"

// Say fills in the text of the check and keeps the sentence and its figures apart,
// for who words it in another language. A sentence that is nothing but its one
// figure was put together elsewhere: it has no words of its own.
func (c *Check) Say(format string, args ...any) {
	if format == "%s" {
		c.Text = fmt.Sprintf(format, args...)
		return
	}
	c.Key = format
	var room [512]byte // most sentences need no more, and so no memory of their own
	text, figures, used := room[:0:384], room[384:384], 0
	for rest := format; rest != ""; {
		before, verb, after := cutVerb(rest)
		text, rest = append(text, before...), after
		switch {
		case verb == "":
		case verb == "%%":
			text = append(text, '%')
		case used == len(args):
			text = fmt.Appendf(text, "%%!%s(MISSING)", verb[1:]) // as the package fmt has it
		default:
			start := len(text)
			if word, ok := args[used].(string); ok && verb == "%s" {
				text = append(text, word...)
			} else {
				text = fmt.Appendf(text, verb, args[used])
			}
			if used++; used > 1 {
				figures = append(figures, between...)
			}
			figures = append(figures, text[start:]...)
		}
	}
	c.Text, c.Args = string(text), string(figures)
}

// cutVerb cuts a format behind its first verb: what stands before it, the verb ("%.1f"),
// and the rest. Without a verb all stands before it.
func cutVerb(format string) (before, verb, after string) {
	at := strings.IndexByte(format, '%')
	if at < 0 {
		return format, "", ""
	}
	end := at + 1
	for end < len(format) && strings.IndexByte("-+ #0123456789.", format[end]) >= 0 {
		end++
	}
	end = min(end+1, len(format))
	return format[:at], format[at:end], format[end:]
}

// Figures returns what was filled into the sentence, in its order.
func (c Check) Figures() []string {
	if c.Args == "" {
		return nil
	}
	return strings.Split(c.Args, between)
}

// Metric is the sentence in the units that it was said in, whatever its text was worded
// in since; the text where the sentence has no words of its own.
func (c Check) Metric() string {
	if c.Key == "" {
		return c.Text
	}
	text, figures := "", c.Figures()
	for rest := c.Key; rest != ""; {
		before, verb, after := cutVerb(rest)
		text, rest = text+before, after
		switch {
		case verb == "%%":
			text += "%"
		case verb != "" && len(figures) > 0:
			text, figures = text+figures[0], figures[1:]
		}
	}
	return text
}
