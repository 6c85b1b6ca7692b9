package samples

import (
	"bytes"
	"strings"
	"testing"

	"seamtally/batch/procedure"
	"seamtally/batch/rates"
	"seamtally/templates"
)

// TestStarterShopBookStatesNothing: the workbook as written reads without a word,
// every value stays the tool's own, its example of a procedure binds nothing, and
// without the sign that makes it a remark it is a procedure.
func TestStarterShopBookStatesNothing(t *testing.T) {
	set := allTables(t)
	for _, us := range []bool{false, true} {
		data, err := templates.ShopBook(set, us)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := templates.ShopBook(set, us); err != nil || !bytes.Equal(data, again) {
			t.Errorf("us=%v: the same arguments gave different bytes (%v)", us, err)
		}
		shop, err := rates.Default(set)
		if err != nil {
			t.Fatal(err)
		}
		before := len(shop.NotYours())
		src := readSource(t, "shop.xlsx", data)
		for _, p := range shop.ReadFile(src, "") {
			t.Errorf("us=%v: %s", us, p.Line())
		}
		for _, v := range shop.Values {
			if v.Basis == rates.OwnBasis {
				t.Errorf("us=%v: %s is taken for the shop's own", us, v.Key)
			}
			if !strings.HasPrefix(v.From, "shop file") {
				t.Errorf("us=%v: %s is not in the workbook", us, v.Key)
			}
		}
		if after := len(shop.NotYours()); after != before {
			t.Errorf("us=%v: %d values are listed as not the shop's own, %d before reading", us, after, before)
		}
		reader := procedure.NewReader(set)
		rows, found, problems := reader.Read(src, procedure.Options{})
		if !found || len(rows) > 0 || len(problems) > 0 {
			t.Errorf("us=%v: found %v, %d procedures, %v", us, found, len(rows), problems)
		}
		for s := range src.Sheets {
			for r := range src.Sheets[s].Rows {
				if c := src.Sheets[s].Rows[r].Cells; src.Sheets[s].Name == "Procedures" && c[0].Text == "# EXAMPLE" {
					c[0].Text = "EXAMPLE"
				}
			}
		}
		rows, _, problems = reader.Read(src, procedure.Options{})
		if us && len(problems) == 1 && problems[0].Code == "procedure-arc-energy" {
			problems = nil // what the AWS codes call heat input is without k, and that is said
		}
		if len(rows) != 1 || len(problems) > 0 || rows[0].TLow < 6 || rows[0].THigh < 19 || rows[0].Dia != 1.2 || rows[0].HeatHigh < 1.7 || rows[0].HeatHigh > 1.9 || rows[0].Positions != "PA PB" {
			t.Errorf("us=%v: the example reads as %+v, %v", us, rows, problems)
		}
	}
}
