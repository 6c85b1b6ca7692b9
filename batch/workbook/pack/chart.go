package pack

import (
	"fmt"
	"strconv"
	"strings"
)

// Cache holds the values of a range that a chart shows.
type Cache struct {
	Texts   []string
	Numbers []float64
	Format  string
}

// fillCharts puts the values into the charts of the donor: a program that does
// not work the sheet out draws the chart from them.
func (d *donor) fillCharts(caches map[string]Cache) {
	for _, name := range d.names {
		if !strings.HasPrefix(name, "xl/charts/") || !strings.HasSuffix(name, ".xml") || strings.Contains(name, "_rels") {
			continue
		}
		p, err := d.open(name)
		if err != nil {
			continue
		}
		var edits []edit
		p.root.each(func(n *node) {
			if n.name == "numRef" || n.name == "strRef" {
				edits = append(edits, cacheEdits(p, n, caches)...)
			}
		})
		d.parts[name] = apply(p.data, edits)
	}
}

// each calls f for a node and all below it.
func (n *node) each(f func(*node)) {
	f(n)
	for _, k := range n.kids {
		k.each(f)
	}
}

func cacheEdits(p *part, ref *node, caches map[string]Cache) []edit {
	f := ref.child("f")
	if f == nil {
		return nil
	}
	cache, ok := caches[unescape(string(p.data[f.open:f.shut]))]
	if !ok {
		return nil
	}
	var edits []edit
	for _, old := range ref.kids {
		if old.name == "numCache" || old.name == "strCache" {
			edits = append(edits, edit{at: old.start, cut: old.end - old.start})
		}
	}
	return append(edits, edit{at: f.end, text: cache.xml(ref)})
}

func (c *Cache) xml(ref *node) string {
	var b strings.Builder
	values := c.Texts
	kind := "strCache"
	if c.Numbers != nil {
		kind, values = "numCache", nil
		for _, v := range c.Numbers {
			values = append(values, strconv.FormatFloat(v, 'g', -1, 64))
		}
	}
	q := ref.qname
	fmt.Fprintf(&b, "<%s>", q(kind))
	if kind == "numCache" && c.Format != "" {
		fmt.Fprintf(&b, "<%s>%s</%s>", q("formatCode"), escape(c.Format), q("formatCode"))
	}
	fmt.Fprintf(&b, `<%s val="%d"/>`, q("ptCount"), len(values))
	for i, v := range values {
		fmt.Fprintf(&b, `<%s idx="%d"><%s>%s</%s></%s>`, q("pt"), i, q("v"), escape(Plain(v)), q("v"), q("pt"))
	}
	fmt.Fprintf(&b, "</%s>", q(kind))
	return b.String()
}

var unescaper = strings.NewReplacer("&lt;", "<", "&gt;", ">", "&quot;", `"`, "&apos;", "'", "&#39;", "'", "&#34;", `"`, "&amp;", "&")

func unescape(s string) string { return unescaper.Replace(s) }
