package main

import (
	"slices"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/price"
	"seamtally/templates"
)

// Groups of options, as the help shows them.
const (
	groupOutput = "Outputs"
	groupInput  = "Reading the list"
	groupShop   = "The shop's own figures"
	groupLooks  = "Looks"
	groupOther  = "Other"
)

// choices are the options that take one of a few words.
var choices = map[string][]string{
	"list-units": {"mm", "in"},
	"units":      {"metric", "us"},
	"codes":      {"iso", "aws"},
	"symbols":    {"iso", "aws"},
	"paper":      {"a4", "letter"},
	"lang":       templates.Languages(),
	"only":       {string(batch.Workbook), string(batch.Results), string(batch.Traveller)},
}

// workingOptions are taken by run, check and explain alike, so that one command
// can be put in place of another; what a command has no use for has no effect.
func workingOptions() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "`DIR`put the outputs into this folder (default: that of the list)", Category: groupOutput},
		&cli.StringSliceFlag{Name: "only", Usage: "`OUTPUT`write only this: workbook, results or traveller (repeatable)", Category: groupOutput},
		&cli.BoolFlag{Name: "force", Aliases: []string{"f"}, Usage: "replace files that seamtally did not write or that were changed since", Category: groupOutput},
		&cli.BoolFlag{Name: "dry-run", Aliases: []string{"n"}, Usage: "work everything out, write nothing", Category: groupOutput},
		&cli.BoolFlag{Name: "json", Usage: "print the result document on standard output", Category: groupOutput},
		&cli.BoolFlag{Name: "values-only", Usage: "no live formulas in the workbook", Category: groupOutput},
		&cli.StringFlag{Name: "sheet", Usage: "`NAME`read the sheet of this name", Category: groupInput},
		&cli.StringFlag{Name: "parts", Usage: "`NAME|FILE`the cut list: a sheet of the list or a file (default: a sheet that reads like one)", Category: groupInput},
		&cli.StringFlag{Name: "list-units", Usage: "`mm|in`what numbers without a unit are (default: mm)", Category: groupInput},
		&cli.StringFlag{Name: "shop", Usage: "`FILE`the shop's rates, prices and stock", Category: groupShop},
		&cli.StringSliceFlag{Name: "set", Usage: "`KEY=VALUE`one shop value (repeatable, beats the shop file)", Category: groupShop},
		&cli.StringFlag{Name: "tables", Usage: "`DIR`tables in this folder replace the built-in ones of the same name", Category: groupShop},
		&cli.StringFlag{Name: "units", Usage: "`metric|us`what people see (default: metric)", Category: groupLooks},
		&cli.StringFlag{Name: "codes", Usage: "`iso|aws`how positions and fillers are named (default: iso)", Category: groupLooks},
		&cli.StringFlag{Name: "symbols", Usage: "`iso|aws`how weld symbols are drawn (default: iso)", Category: groupLooks},
		&cli.StringFlag{Name: "paper", Usage: "`a4|letter`of the traveller and the printed workbook (default: a4)", Category: groupLooks},
		&cli.StringFlag{Name: "lang", Usage: "`CODE`language of the traveller (default: en)", Category: groupLooks},
		&cli.StringFlag{Name: "job", Usage: "`NAME`of the job on the sheets and the totals (default: that of the list's file)", Category: groupLooks},
		&cli.StringFlag{Name: "date", Usage: "`YYYY-MM-DD`the date printed (default: today)", Category: groupLooks},
		&cli.BoolFlag{Name: "strict", Usage: "warnings change the exit code too", Category: groupOther},
		&cli.BoolFlag{Name: "quiet", Aliases: []string{"q"}, Usage: "print errors only", Category: groupOther},
	}
}

// checkOptions are those of the working commands and the findings as CSV.
func checkOptions() []cli.Flag {
	list := workingOptions()
	csv := &cli.BoolFlag{Name: "csv", Usage: "print everything found as CSV on standard output, one line each", Category: groupOutput}
	return slices.Insert(list, 5, cli.Flag(csv)) // behind --json
}

// jobOf turns the options of a working command into a job.
func (p program) jobOf(c *cli.Context, lists []string) (batch.Job, error) {
	if err := checkChoices(c); err != nil {
		return batch.Job{}, err
	}
	date, err := p.date(c.String("date"))
	if err != nil {
		return batch.Job{}, err
	}
	memory := memoryLeft()
	job := batch.Job{
		Lists: lists, Stdin: p.in, Version: version,
		Out: c.String("out"), Force: c.Bool("force"), DryRun: c.Bool("dry-run"), JSON: c.Bool("json"), Strict: c.Bool("strict"),
		Sheet: c.String("sheet"), Parts: c.String("parts"), Inches: c.String("list-units") == "in",
		Shop: c.String("shop"), Set: c.StringSlice("set"), Tables: c.String("tables"),
		Memory: memory.bytes, Limit: memory.by,
		Looks: price.Options{
			Job: c.String("job"), Date: date, US: c.String("units") == "us", Codes: orElse(c.String("codes"), "iso"), Symbols: orElse(c.String("symbols"), "iso"),
			Paper: orElse(c.String("paper"), "a4"), Lang: orElse(c.String("lang"), "en"), ValuesOnly: c.Bool("values-only"),
		},
	}
	for _, only := range c.StringSlice("only") {
		job.Only = append(job.Only, batch.Output(only))
	}
	return job, nil
}

func checkChoices(c *cli.Context) error {
	for _, f := range c.Command.Flags {
		name := f.Names()[0]
		words, limited := choices[name]
		if !limited || !c.IsSet(name) {
			continue
		}
		given := []string{c.String(name)}
		if _, many := f.(*cli.StringSliceFlag); many {
			given = c.StringSlice(name)
		}
		for _, g := range given {
			if !contains(words, g) {
				return batch.Usagef("--%s cannot be %q%s; write one of: %s", name, g, suggest(g, words), strings.Join(words, ", "))
			}
		}
	}
	return nil
}

const dateForm = "2006-01-02"

// date returns the date to print: the user's, or today's.
func (p program) date(given string) (string, error) {
	if given == "" {
		return p.now().Format(dateForm), nil
	}
	if _, err := time.Parse(dateForm, given); err != nil {
		return "", batch.Usagef("--date cannot be %q: write a day of the calendar as year-month-day, such as 2026-03-01", given)
	}
	return given, nil
}

func orElse(value, other string) string {
	if value == "" {
		return other
	}
	return value
}

func contains(words []string, w string) bool {
	for _, word := range words {
		if word == w {
			return true
		}
	}
	return false
}
