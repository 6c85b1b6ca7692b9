package main

import (
	"strings"
	"testing"
)

// Every option that takes a value says what stands behind it, with an example that it
// takes: its value is missing where somebody does not know.
func TestEveryOptionSaysWhatItTakes(t *testing.T) {
	asked := 0
	for _, c := range commands() {
		for _, f := range c.Flags {
			name := "--" + f.Names()[0]
			if !takesValue(name) {
				continue
			}
			asked++
			what, example := valueOf(name)
			if len(what) < 5 || example == "" {
				t.Errorf("%s of %s: %q, %q", name, c.Name, what, example)
			}
			_, _, _, err := split([]string{name})
			if err == nil || !strings.Contains(err.Error(), name+" needs "+what+" behind it, as in "+name+" "+example) {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	if asked < 20 {
		t.Errorf("only %d options were asked", asked)
	}
}
