package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/tables"
)

const shortHelp = `seamtally works out a joint list for wire welding: settings, metal, time, heat
and cost of every joint, written back into your own workbook, with a results CSV
and a traveller for the shop floor.

Examples:
  seamtally run frame.xlsx            work a list; outputs land beside it
  seamtally run frame.csv -o out --shop shop.csv
  seamtally check frame.xlsx          say what is wrong with it, write nothing
  seamtally explain frame.xlsx W12    show how one joint was worked out
  seamtally starter                   write an empty list and a shop file

Commands:
`

const exitHelp = `
Exit codes: 0 worked; 1 worked, but some rows could not be; 2 wrong usage;
3 a list or table could not be read; 4 an output could not be written;
70 a fault of the tool; 130 interrupted. With several lists the highest counts.

Settings are starting points for a test bead. The governing code, the qualified
welding procedure and licensed practice come first.
`

// help prints the help of a command, or of the whole tool if the name is empty.
func (p program) help(name string) int {
	if name == "" {
		fmt.Fprint(p.out, shortHelp)
		for _, c := range commands() {
			fmt.Fprintf(p.out, "  %-10s%s\n", c.Name, c.Usage)
		}
		fmt.Fprint(p.out, "\n`seamtally COMMAND -h` shows what a command takes, `seamtally --version` the\nversion.\n", exitHelp)
		return batch.Worked
	}
	command := find(name)
	if command == nil {
		return p.end(0, unknownCommand(name))
	}
	commandHelp(p.out, command)
	return batch.Worked
}

func commandHelp(w io.Writer, c *cli.Command) {
	fmt.Fprintf(w, "%s\n\nUsage: seamtally %s\n\nExamples:\n%s", c.Description, c.UsageText, examples[c.Name])
	group := ""
	for _, f := range c.Flags {
		if g := f.(cli.CategorizableFlag).GetCategory(); g != group {
			group = g
			fmt.Fprintf(w, "\n%s:\n", group)
		}
		fmt.Fprintln(w, flagLine(f))
	}
	fmt.Fprint(w, "\nOptions may stand before or after the lists; `--` ends them.\n")
}

// flagLine returns "  -o, --out DIR   text", wrapped under the text.
func flagLine(f cli.Flag) string {
	doc := f.(cli.DocGenerationFlag)
	usage, value := placeholder(doc.GetUsage())
	names := "    "
	if n := f.Names(); len(n) > 1 {
		names = dashed(n[1]) + ", "
	}
	head := "  " + names + dashed(f.Names()[0])
	if value != "" {
		head += " " + value
	}
	const left = 28
	lines := wrap(usage, 80-left)
	out := fmt.Sprintf("%-*s%s", left, head, lines[0])
	if len(head) >= left {
		out = head + "\n" + strings.Repeat(" ", left) + lines[0]
	}
	for _, line := range lines[1:] {
		out += "\n" + strings.Repeat(" ", left) + line
	}
	return out
}

// placeholder takes the value's name, which stands in back quotes, from the
// front of a usage text.
func placeholder(usage string) (text, value string) {
	if rest, found := strings.CutPrefix(usage, "`"); found {
		value, text, _ = strings.Cut(rest, "`")
		return text, value
	}
	return usage, ""
}

func wrap(text string, width int) []string {
	lines := []string{""}
	for _, word := range strings.Fields(text) {
		last := &lines[len(lines)-1]
		switch {
		case *last == "":
			*last = word
		case len(*last)+1+len(word) <= width:
			*last += " " + word
		default:
			lines = append(lines, word)
		}
	}
	return lines
}

// version prints the tool's version and the edition of its tables.
func (p program) version(commandLine) int {
	files, err := tables.Open("")
	if err != nil {
		return p.end(0, err)
	}
	set, err := tables.Load(files)
	if err != nil {
		return p.end(0, err)
	}
	fmt.Fprintf(p.out, "seamtally %s, tables %s\n", version, set.Edition)
	return batch.Worked
}
