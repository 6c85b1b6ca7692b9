package workbook

import (
	"fmt"
	"slices"

	"github.com/xuri/excelize/v2"

	"seamtally/batch/workbook/look"
	"seamtally/batch/workbook/pack"
)

// span is a block of rows on the Totals sheet that a chart shows.
type span struct{ from, to int }

// mostBars is how many bars stay readable in a chart.
const mostBars = 12

// charts puts pictures of cost and hours beside the price. The library leaves the
// values out of a chart, so that programs that do not work a sheet out show an
// empty one: they are handed to the packer.
func (o *output) charts(f *excelize.File, g *look.Grid) map[string]pack.Cache {
	caches := map[string]pack.Cache{}
	below := "I4"
	if o.assemblies.to > o.assemblies.from && o.l.job.Totals.Cost > 0 {
		o.chart(f, g, caches, "I4", "Cost by assembly, "+o.l.job.Shop.Currency, o.assemblies, "K", "1F4E79", money2)
		below = "I18"
	}
	if o.hoursAt.to > o.hoursAt.from && o.l.job.Totals.All.Labour > 0 {
		o.chart(f, g, caches, below, "Where the hours go", o.hoursAt, "B", "7A4A10", "0.0")
	}
	return caches
}

// labelFormat keeps the figures at the bars short, since the longest bar reaches
// the frame, and does not round hours to nothing.
func labelFormat(values []float64) string {
	if len(values) > 0 && slices.Max(values) < 100 {
		return "0.0"
	}
	return "#,##0"
}

func (o *output) chart(f *excelize.File, g *look.Grid, caches map[string]pack.Cache, cell, title string, rows span, col, colour, format string) {
	rows.to = min(rows.to, rows.from+mostBars-1)
	names := fmt.Sprintf("%s!$A$%d:$A$%d", quoteSheet(g.Name), rows.from, rows.to)
	values := fmt.Sprintf("%s!$%s$%d:$%s$%d", quoteSheet(g.Name), col, rows.from, col, rows.to)
	caches[names] = pack.Cache{Texts: g.TextsOf("A", rows.from, rows.to)}
	caches[values] = pack.Cache{Numbers: g.NumbersOf(col, rows.from, rows.to), Format: format}
	gap := uint(40)
	o.note(f.AddChart(g.Name, cell, &excelize.Chart{
		Type: excelize.Bar,
		Series: []excelize.ChartSeries{{Categories: names, Values: values, Name: quoteSheet(g.Name) + "!$" + col + "$" + itoa(rows.from-1),
			Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}}},
		Title:     excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: title, Font: &excelize.Font{Size: 11, Bold: true, Color: "33475B"}}}},
		Legend:    excelize.ChartLegend{Position: "none"},
		Dimension: excelize.ChartDimension{Width: 372, Height: 250},
		PlotArea:  excelize.ChartPlotArea{ShowVal: true, NumFmt: excelize.ChartNumFmt{CustomNumFmt: labelFormat(caches[values].Numbers)}},
		XAxis:     excelize.ChartAxis{ReverseOrder: true, Font: excelize.Font{Size: 9, Color: "1D2B36"}},
		YAxis:     excelize.ChartAxis{None: true},
		GapWidth:  &gap,
	}))
}
