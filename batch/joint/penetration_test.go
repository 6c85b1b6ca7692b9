package joint

import (
	"strings"
	"testing"
)

// Words for the penetration of a groove and for its backing bar stand beside its kind. A
// partial one without its depth is asked about, and so is "2x", which may mean two sides
// or two welds.
func TestKindsWithTheirPenetration(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct {
		kind, size string
		want       Kind // empty: asked
		backing    string
		code       string
	}{
		{"CJP single V", "", SingleV, "", ""},
		{"full pen V", "", SingleV, "", ""},
		{"full penetration double bevel", "", DoubleBevel, "", ""},
		{"PJP bevel", "", "", "", "no-depth"},
		{"PJP bevel", "s8", SingleBevel, "", ""},
		{"partial penetration single V", "s6", SingleV, "", ""},
		{"single V with backing bar", "", SingleV, "bar", ""},
		{"CJP single bevel w/ backing bar", "", SingleBevel, "bar", ""},
		{"2x fillet", "z5", "", "", "unknown-kind"},
		{"CJP fillet", "z5", "", "", "unknown-kind"},
	} {
		l, err := understand(t, set, "mark,kind,size,length,t1,t2\nA,"+c.kind+","+c.size+",700,16,16\nB,fillet,z5,800,16,16\n", Options{})
		if err != nil {
			t.Fatal(err)
		}
		if c.want == "" {
			if len(l.Joints) != 1 || len(told(l, c.code)) != 1 || told(l, c.code)[0].Hint == "" {
				t.Errorf("%s: %+v", c.kind, l.Problems)
			}
			if c.kind == "2x fillet" && !strings.Contains(told(l, c.code)[0].Hint, "both sides or two welds") {
				t.Errorf("%s: %+v", c.kind, l.Problems)
			}
			continue
		}
		if len(l.Joints) != 2 || l.Joints[0].Kind != c.want || l.Joints[0].Backing != c.backing {
			t.Errorf("%s: %+v, %+v", c.kind, l.Joints[0].Detail, l.Problems)
		}
	}
}
