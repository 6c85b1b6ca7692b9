package finding

import "testing"

func TestNearest(t *testing.T) {
	known := []string{"labour_rate", "overhead_pct", "margin_pct", "idle_w"}
	tests := map[string]string{
		"labor_rate":    "labour_rate",
		"labuor_rate":   "labour_rate",
		"Margin_pct":    "margin_pct",
		"margin":        "", // four letters missing of six are no slip of the hand
		"over_head_pct": "overhead_pct",
		"xyz":           "",
		"":              "",
	}
	for word, want := range tests {
		if got := Nearest(word, known); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}

func TestDistanceSwap(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want int
	}{{"ab", "ba", 1}, {"", "abc", 3}, {"abc", "abc", 0}, {"leg", "log", 1}, {"żebro", "zebro", 1}} {
		if got := distance(tt.a, tt.b); got != tt.want {
			t.Errorf("distance(%q, %q) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}
