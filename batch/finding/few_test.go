package finding

import "testing"

func TestFewNamesSomeAndCountsTheRest(t *testing.T) {
	for _, c := range []struct {
		names []string
		want  string
	}{
		{nil, ""}, {[]string{"a"}, "a"}, {[]string{"a", "b"}, "a, b"}, {[]string{"a", "b", "c"}, "a, b, c"},
		{[]string{"a", "b", "c", "d"}, "a, b and 2 more"}, {[]string{"a", "b", "c", "d", "e"}, "a, b and 3 more"},
	} {
		if got := Few(c.names, 2); got != c.want {
			t.Errorf("%q: %q, want %q", c.names, got, c.want)
		}
	}
}
