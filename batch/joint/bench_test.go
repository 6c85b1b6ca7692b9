package joint

import (
	"fmt"
	"strings"
	"testing"

	"seamtally/batch/list"
)

// BenchmarkUnderstand reads a list of 10,000 rows and 15 columns.
func BenchmarkUnderstand(b *testing.B) {
	set := loadTables(b)
	var text strings.Builder
	text.WriteString("Mark;Assembly;Drawing;Rev;Qty;Kind;Length;Sides;Size;t1;t2;Material;Position;Where;Note\n")
	for i := range 10000 {
		fmt.Fprintf(&text, "W%d;F%d;D1;A;2;fillet;1250;1;z6;8;10;S355;PB;shop;n%d\n", i, i/50, i)
	}
	src, _, err := list.Read("x.csv", []byte(text.String()))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Understand(src, Options{}, set); err != nil {
			b.Fatal(err)
		}
	}
}
