package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/save"
	"seamtally/tables"
)

func tablesOptions() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "`DIR`write the tables as CSV files into this folder", Category: groupOutput},
		&cli.BoolFlag{Name: "force", Aliases: []string{"f"}, Usage: "replace files that are there", Category: groupOutput},
		&cli.BoolFlag{Name: "json", Usage: "print as JSON", Category: groupOutput},
		&cli.StringFlag{Name: "tables", Usage: "`DIR`tables in this folder replace the built-in ones of the same name", Category: groupShop},
		&cli.BoolFlag{Name: "quiet", Aliases: []string{"q"}, Usage: "print errors only", Category: groupOther},
	}
}

// tables lists the tables, prints one, or writes them out.
func (p program) tables(c *cli.Context) (int, error) {
	files, err := tables.Open(c.String("tables"))
	if err != nil {
		return batch.Unreadable, err
	}
	names := tables.Names()
	if c.NArg() > 0 {
		if names, err = pick(names, c.Args().Slice()); err != nil {
			return batch.WrongUsage, err
		}
	}
	switch {
	case c.String("out") != "":
		return p.writeTables(c, files, names)
	case c.NArg() == 0:
		return p.listTables(c, names)
	default:
		return p.printTables(c, files, names)
	}
}

func pick(known, asked []string) ([]string, error) {
	var names []string
	for _, a := range asked {
		name := strings.TrimSuffix(a, ".csv")
		if !contains(known, name) {
			return nil, batch.Usagef("there is no table %q%s; `seamtally tables` lists them", a, suggest(name, known))
		}
		names = append(names, name)
	}
	return names, nil
}

func (p program) listTables(c *cli.Context, names []string) (int, error) {
	if c.Bool("json") {
		return p.printJSON(map[string]any{"schema": batch.Schema, "tables": names})
	}
	return batch.Worked, say(p.out, strings.Join(names, "\n")+"\n")
}

func (p program) printTables(c *cli.Context, files *tables.Files, names []string) (int, error) {
	for _, name := range names {
		text, _, err := files.Bytes(name)
		if err != nil {
			return batch.Unreadable, err
		}
		if c.Bool("json") {
			if code, err := p.printTableJSON(name, text); err != nil {
				return code, err
			}
			continue
		}
		if err := say(p.out, string(text)); err != nil {
			return batch.Worked, err
		}
	}
	return batch.Worked, nil
}

func (p program) printTableJSON(name string, text []byte) (int, error) {
	records, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(records) == 0 {
		return batch.Unreadable, fmt.Errorf("table %s.csv cannot be read: %v", name, err)
	}
	return p.printJSON(map[string]any{"schema": batch.Schema, "table": name, "columns": records[0], "rows": records[1:]})
}

// printJSON prints one document on one line.
func (p program) printJSON(document any) (int, error) {
	text, err := json.Marshal(document)
	if err != nil {
		return batch.OurBug, err
	}
	_, err = fmt.Fprintf(p.out, "%s\n", text)
	return batch.Worked, err
}

func (p program) writeTables(c *cli.Context, files *tables.Files, names []string) (int, error) {
	var out []save.File
	for _, name := range names {
		text, _, err := files.Bytes(name)
		if err != nil {
			return batch.Unreadable, err
		}
		out = append(out, save.File{Name: name + ".csv", Data: text, Judge: sameAs(text)})
	}
	return p.saveAll(c, out)
}

// sameAs lets a file be replaced that already holds the text.
func sameAs(text []byte) save.Judge {
	return func(old []byte) save.Owner {
		if bytes.Equal(old, text) {
			return save.Own
		}
		return save.Foreign
	}
}

// saveAll puts files into the folder of --out, or the current one, and says so.
func (p program) saveAll(c *cli.Context, files []save.File) (int, error) {
	return p.saveIn(c, orElse(c.String("out"), "."), files)
}

// saveIn saves files into a folder, all or none, and names them.
func (p program) saveIn(c *cli.Context, dir string, files []save.File) (int, error) {
	folder := save.Folder{Dir: dir, Disk: save.Real(), Force: c.Bool("force")}
	for _, said := range folder.Recover(c.Context) {
		p.complain("%s", said)
	}
	made, err := folder.Prepare()
	if err == nil {
		err = folder.Put(c.Context, files)
	}
	if err != nil {
		if made {
			_ = os.Remove(folder.Dir) // Only goes if it is empty, which is what is wanted.
		}
		return batch.CodeOf(err), err
	}
	if c.Bool("quiet") {
		return batch.Worked, nil
	}
	for _, f := range files {
		if err := say(p.out, "wrote "+join(folder.Dir, f.Name)+"\n"); err != nil {
			return batch.Worked, err
		}
	}
	return batch.Worked, nil
}
