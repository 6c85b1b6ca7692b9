package finding

import (
	"slices"
	"testing"
)

func TestSayKeepsSentenceAndFiguresApart(t *testing.T) {
	for _, c := range []struct {
		format    string
		args      []any
		text, key string
		figures   []string
	}{
		{"leg %s takes %d passes, %.1f %%", []any{"6 mm", 3, 2.04}, "leg 6 mm takes 3 passes, 2.0 %", "leg %s takes %d passes, %.1f %%", []string{"6 mm", "3", "2.0"}},
		{"no figures", nil, "no figures", "no figures", nil},
		{"%s", []any{"put together elsewhere"}, "put together elsewhere", "", nil},
	} {
		var got Check
		got.Say(c.format, c.args...)
		if got.Text != c.text || got.Key != c.key || !slices.Equal(got.Figures(), c.figures) {
			t.Errorf("%q: text %q, sentence %q, figures %q", c.format, got.Text, got.Key, got.Figures())
		}
		if got.Text = "in other units"; got.Key != "" && got.Metric() != c.text {
			t.Errorf("%q: put together again it is %q", c.format, got.Metric())
		}
	}
}
