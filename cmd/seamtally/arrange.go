package main

import (
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/finding"
)

// commandLine is what the user typed, put in the order that the flag parser
// understands: command, options, "--", lists.
type commandLine struct {
	command       string
	args          []string
	help, version bool
}

// arrange takes options wherever they stand. It refuses what nobody knows, with
// the nearest known word, before anything is done.
func arrange(args []string) (commandLine, error) {
	options, words, rest, err := split(args[1:])
	if err != nil {
		return commandLine{}, err
	}
	line := commandLine{}
	options = line.take(options)
	if len(words) > 0 && words[0] == "help" {
		line.help, words = true, words[1:]
	}
	if len(words) == 0 {
		if len(options) > 0 && !line.help && !line.version {
			return line, batch.Usagef("no command is given: say for example `seamtally run LIST`; `seamtally -h` lists the commands")
		}
		line.help = !line.version
		return line, nil
	}
	line.command = words[0]
	command := find(line.command)
	if command == nil {
		return line, unknownCommand(line.command)
	}
	for _, o := range options {
		if err := known(command, o); err != nil {
			return line, err
		}
	}
	line.args = append([]string{args[0], line.command}, flatten(options)...)
	line.args = append(line.args, "--")
	line.args = append(append(line.args, words[1:]...), rest...)
	return line, nil
}

// option is one option as typed: its name with dashes, and its value if it takes one.
type option struct {
	name, value string
	hasValue    bool
}

// split tells options from words. What follows "--" is always a word.
func split(args []string) (options []option, words, rest []string, err error) {
	for i := 0; i < len(args); i++ {
		arg := args[i]
		if arg == "--" {
			return options, words, args[i+1:], nil
		}
		if !strings.HasPrefix(arg, "-") || arg == "-" {
			words = append(words, arg)
			continue
		}
		name, value, hasValue := strings.Cut(arg, "=")
		if takesValue(name) && !hasValue {
			if i++; i >= len(args) || startsOption(args[i]) {
				return nil, nil, nil, needsValue(name)
			}
			value, hasValue = args[i], true
		}
		if takesValue(name) && value == "" {
			return nil, nil, nil, needsValue(name)
		}
		options = append(options, option{name, value, hasValue})
	}
	return options, words, nil, nil
}

// startsOption reports whether an argument is itself an option that the tool knows.
func startsOption(arg string) bool {
	name, _, _ := strings.Cut(arg, "=")
	for _, c := range commands() {
		if flag(c, name) != nil {
			return true
		}
	}
	return isHelp(name) || arg == "--"
}

func isHelp(name string) bool { return name == "-h" || name == "--help" }

// take removes the options that every command has.
func (l *commandLine) take(options []option) []option {
	var others []option
	for _, o := range options {
		switch {
		case isHelp(o.name):
			l.help = true
		case o.name == "--version":
			l.version = true
		default:
			others = append(others, o)
		}
	}
	return others
}

func known(command *cli.Command, o option) error {
	f := flag(command, o.name)
	if f == nil {
		return unknownOption(command, o.name)
	}
	if _, isBool := f.(*cli.BoolFlag); isBool && o.hasValue {
		return batch.Usagef("%s takes no value; write it alone", o.name)
	}
	return nil
}

func unknownOption(command *cli.Command, name string) error {
	var names []string
	for _, f := range command.Flags {
		for _, n := range f.Names() {
			names = append(names, dashed(n))
		}
	}
	return batch.Usagef("%s has no option %s%s; `seamtally %s -h` lists them", command.Name, name, suggest(name, names), command.Name)
}

func unknownCommand(name string) error {
	var names []string
	for _, c := range commands() {
		names = append(names, c.Name)
	}
	hint := suggest(name, names)
	if strings.ContainsAny(name, `./\`) {
		hint = ": to work a list say `seamtally run " + name + "`"
	}
	return batch.Usagef("there is no command %q%s; `seamtally -h` lists the commands", name, hint)
}

// suggest returns the nearest word, or nothing.
func suggest(word string, known []string) string {
	if near := finding.Nearest(word, known); near != "" {
		return "; write " + near + " if that was meant"
	}
	return ""
}

// flag returns the command's flag of that name; the name carries its dashes.
func flag(command *cli.Command, name string) cli.Flag {
	for _, f := range command.Flags {
		for _, n := range f.Names() {
			if dashed(n) == name {
				return f
			}
		}
	}
	return nil
}

func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

func takesValue(name string) bool {
	for _, c := range commands() {
		if f := flag(c, name); f != nil {
			_, isBool := f.(*cli.BoolFlag)
			return !isBool
		}
	}
	return false
}

func find(name string) *cli.Command {
	for _, c := range commands() {
		if c.Name == name {
			return c
		}
	}
	return nil
}

func flatten(options []option) []string {
	var out []string
	for _, o := range options {
		out = append(out, o.name)
		if o.hasValue {
			out[len(out)-1] += "=" + o.value
		}
	}
	return out
}
