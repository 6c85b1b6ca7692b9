package plan

import (
	"strings"

	"seamtally/batch/finding"
	"seamtally/tables"
)

// feeding judges whether the wire runs through the gun, and its spool into the
// feeder.
func (k *checker) feeding(o *outcome) {
	if o.machine == nil {
		return
	}
	n, row := o.way, o.machine.row
	if r := k.c.softFeed(n); r != nil {
		level := finding.Note
		if len(o.machine.guns) == 1 {
			level = finding.Warning
		}
		k.say(r, level, "%s of %s kinks in a plain gun; the guns that %s takes: %s", n.wire.Filler, mmText(n.dia), row.Name, strings.Join(o.machine.guns, ", "))
	}
	if most := o.machine.spool; most > 0 && n.spool > most {
		k.sayf("spool-large", finding.Warning, "the shop's spool of %s %s weighs %s kg, %s takes %s kg", n.wire.Filler, mmText(n.dia), number(n.spool, 1), row.Name, strings.Join(strings.Fields(row.SpoolList), " or "))
	}
}

// softFeed returns the rule by which a wire is too soft for a plain gun; nil where
// it is not.
func (c *catalog) softFeed(n *way) *tables.CheckRule {
	if n.wire.Metal != "aluminium" {
		return nil
	}
	code := "gun-hard"
	if n.wire.Soft() {
		code = "gun-soft"
	}
	if r := c.book.first(code); r != nil && n.dia < r.Value-slackSize {
		return r
	}
	return nil
}
