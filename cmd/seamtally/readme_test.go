package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// TestReadmeNamesEverything wants every command and option in the README, and
// every option of the README in the tool.
func TestReadmeNamesEverything(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	readme := string(text)
	known := map[string]bool{"--help": true, "--version": true}
	for _, c := range commands() {
		if !strings.Contains(readme, "`seamtally "+c.Name) {
			t.Errorf("the README does not show the command %s", c.Name)
		}
		for _, f := range c.Flags {
			name := dashed(f.Names()[0])
			known[name] = true
			if !strings.Contains(readme, "`"+name) {
				t.Errorf("the README does not name the option %s", name)
			}
		}
	}
	for _, name := range regexp.MustCompile("`(--[a-z-]+)").FindAllStringSubmatch(readme, -1) {
		if !known[name[1]] {
			t.Errorf("the README names %s, which the tool does not know", name[1])
		}
	}
}
