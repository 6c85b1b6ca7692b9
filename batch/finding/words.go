package finding

import (
	"fmt"
	"regexp"
	"strings"
)

// between parts the figures of a check.
const between = "\x1f"

var verb = regexp.MustCompile(`%[-+ #0]*[0-9.]*[a-zA-Z%]`)

// Say fills in the text of the check and keeps the sentence and its figures apart,
// for who words it in another language. A sentence that is nothing but its one
// figure was put together elsewhere: it has no words of its own.
func (c *Check) Say(format string, args ...any) {
	c.Text = fmt.Sprintf(format, args...)
	if format == "%s" {
		return
	}
	c.Key = format
	var figures []string
	for _, v := range verb.FindAllString(format, -1) {
		if v != "%%" && len(figures) < len(args) {
			figures = append(figures, fmt.Sprintf(v, args[len(figures)]))
		}
	}
	c.Args = strings.Join(figures, between)
}

// Figures returns what was filled into the sentence, in its order.
func (c Check) Figures() []string {
	if c.Args == "" {
		return nil
	}
	return strings.Split(c.Args, between)
}
