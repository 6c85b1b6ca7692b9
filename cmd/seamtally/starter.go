package main

import (
	"github.com/urfave/cli/v2"

	"seamtally/batch"
	"seamtally/batch/save"
	"seamtally/tables"
	"seamtally/templates"
)

func starterOptions() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "`DIR`put the files into this folder (default: the current one)", Category: groupOutput},
		&cli.BoolFlag{Name: "force", Aliases: []string{"f"}, Usage: "replace files that are there", Category: groupOutput},
		&cli.StringFlag{Name: "units", Usage: "`metric|us`millimetres or inches in the list (default: metric)", Category: groupLooks},
		&cli.StringFlag{Name: "date", Usage: "`YYYY-MM-DD`the date printed (default: today)", Category: groupLooks},
		&cli.StringFlag{Name: "tables", Usage: "`DIR`tables in this folder replace the built-in ones of the same name", Category: groupShop},
		&cli.BoolFlag{Name: "quiet", Aliases: []string{"q"}, Usage: "print errors only", Category: groupOther},
	}
}

// starterNames are the files that `seamtally starter` writes.
const starterList, starterShop = "joints.xlsx", "shop.xlsx"

// starter writes an empty joint list and a shop file. Files that are there are
// somebody's work by now and stay.
func (p program) starter(c *cli.Context) (int, error) {
	if c.NArg() > 0 {
		return batch.WrongUsage, batch.Usagef("starter takes no list; name a folder with -o")
	}
	if err := checkChoices(c); err != nil {
		return batch.WrongUsage, err
	}
	date, err := p.date(c.String("date"))
	if err != nil {
		return batch.WrongUsage, err
	}
	files, err := tables.Open(c.String("tables"))
	if err != nil {
		return batch.Unreadable, err
	}
	set, err := tables.Load(files)
	if err != nil {
		return batch.Unreadable, err
	}
	us := c.String("units") == "us"
	joints, err := templates.JointList(us, date)
	if err != nil {
		return batch.OurBug, &batch.Bug{Fault: err}
	}
	shop, err := templates.ShopBook(set, us)
	if err != nil {
		return batch.OurBug, &batch.Bug{Fault: err}
	}
	return p.saveAll(c, []save.File{
		{Name: starterList, Data: joints, Judge: sameAs(joints)},
		{Name: starterShop, Data: shop, Judge: sameAs(shop)},
	})
}
