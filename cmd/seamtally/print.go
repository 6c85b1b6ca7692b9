package main

import (
	"errors"
	"io"
	"strings"
	"syscall"
	"unicode"
)

// plain makes text from a list harmless to a terminal: control characters and
// the marks that turn the direction of writing become visible boxes. Line ends
// and tabs stay.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return r
		case unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029':
			return '\u25a1'
		}
		return r
	}, text)
}

// brokenPipe reports whether the reader of our output has gone, such as `head`
// after its last line: no reason to complain.
func brokenPipe(err error) bool { return errors.Is(err, syscall.EPIPE) }

// say writes text to w as it may be shown.
func say(w io.Writer, text string) error {
	_, err := io.WriteString(w, plain(text))
	return err
}
