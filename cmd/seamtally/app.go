package main

import (
	"github.com/urfave/cli/v2"

	"seamtally/batch"
)

// commands returns every command with what it takes and says of itself.
func commands() []*cli.Command {
	return []*cli.Command{
		{Name: "run", Usage: "work lists: workbook, results CSV and traveller of each", UsageText: "run LIST... [options]", Flags: workingOptions(),
			Description: "Works each LIST (XLSX, XLSM, CSV, TSV; - reads CSV from standard input). For\nframe.xlsx it writes frame-worked.xlsx, frame-joints.csv and\nframe-traveller.pdf. The list itself is never changed."},
		{Name: "check", Usage: "read and judge lists, write nothing", UsageText: "check LIST... [options]", Flags: checkOptions(),
			Description: "Reads each LIST and says how every column was understood and what is wrong, with\nthe place of each finding. Writes nothing. Takes the options of run; those about\noutputs have no effect here."},
		{Name: "explain", Usage: "one joint step by step", UsageText: "explain LIST MARK [options]", Flags: workingOptions(),
			Description: "Shows how one joint was worked out: formula, numbers put in, result, unit,\nsource and basis of each step, and the ways of welding it that were considered.\nTakes the options of run; those about outputs have no effect here."},
		{Name: "compare", Usage: "two revisions of a list: what changed, and what that costs", UsageText: "compare OLD NEW [options]", Flags: workingOptions(),
			Description: "Works both lists with the shop values of NEW and shows the joints added, removed\nand changed, with the difference in metres, kilograms, hours and money. For\nframe-b.xlsx as NEW it writes frame-b-compared.xlsx."},
		{Name: "settle", Usage: "planned against what the floor wrote back", UsageText: "settle LIST [options]", Flags: settleOptions(),
			Description: "Compares a worked workbook with what was written into its columns headed Floor:\narc time, welder's time, wire, wire feed. Shows each joint planned and actual, and\nwhat the records say of the shop's operating factor, oversize and wire lost."},
		{Name: "starter", Usage: "write an empty joint list and a shop file to begin with", UsageText: "starter [options]", Flags: starterOptions(),
			Description: "Writes a joint-list workbook with headers, drop-downs and example rows, and a\nshop file with every value and where its default comes from."},
		{Name: "tables", Usage: "print the data tables, or write them for editing", UsageText: "tables [NAME] [options]", Flags: tablesOptions(),
			Description: "Without a NAME lists the tables; with one prints it as CSV, with the basis and\nthe source of each row. --out writes them as files: edit those and give their\nfolder to `seamtally run --tables DIR`."},
	}
}

var examples = map[string]string{
	"run": `  seamtally run frame.xlsx
  seamtally run frame.xlsx stair.csv -o out --shop shop.csv
  seamtally run --list-units in --units us --codes aws gangway.csv
  cat frame.csv | seamtally run - --only results
`,
	"check": `  seamtally check frame.xlsx
  seamtally check frame.xlsx --json
  seamtally check frame.xlsx --csv > findings.csv
`,
	"explain": `  seamtally explain frame.xlsx W12
  seamtally explain frame.xlsx -- -3        a mark that begins with a dash
`,
	"compare": `  seamtally compare frame-a.xlsx frame-b.xlsx
  seamtally compare frame-a.xlsx frame-b.xlsx --dry-run --json
`,
	"settle": `  seamtally settle frame-worked.xlsx
  seamtally settle frame-worked.xlsx --new-shop shop-2.csv
`,
	"starter": `  seamtally starter -o newjob
`,
	"tables": `  seamtally tables
  seamtally tables fillers
  seamtally tables --out mytables
`,
}

// app returns the command line parser. The actions leave their exit code in code.
func (p program) app(code *int) *cli.App {
	actions := map[string]func(*cli.Context) (int, error){
		"run": p.runLists, "check": p.checkLists, "explain": p.explain, "compare": p.compareLists, "settle": p.settle, "starter": p.starter, "tables": p.tables,
	}
	list := commands()
	for _, c := range list {
		act := actions[c.Name]
		c.HideHelp = true
		c.OnUsageError = usageError
		c.Action = func(ctx *cli.Context) (err error) {
			*code, err = act(ctx)
			return err
		}
	}
	return &cli.App{
		Name: "seamtally", Commands: list, HideHelp: true, HideVersion: true,
		Writer: p.out, ErrWriter: p.err,
		DisableSliceFlagSeparator: true,
		OnUsageError:              usageError,
		ExitErrHandler:            func(*cli.Context, error) {}, // The code is given by run.
	}
}

// usageError keeps the parser's own wording and its help text off the screen.
func usageError(_ *cli.Context, err error, _ bool) error { return batch.Usagef("%s", err.Error()) }
