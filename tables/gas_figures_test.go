package tables

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

// Mixtures in the middle of the standard's ranges are given its designations.
func TestGasGroupsAreThoseOfTheStandard(t *testing.T) {
	facts := loadedFacts(t)
	number := regexp.MustCompile(`\d+(?:\.\d+)?`)
	middle := func(text string) float64 {
		n := number.FindAllString(text, -1)
		if len(n) == 2 {
			return (heatFigure(n[0]) + heatFigure(n[1])) / 2
		}
		return 0
	}
	used, agree := 0, 0
	for _, r := range heatFigures(t, "gas-groups") {
		if r["edition"] != "2008" || r["other"] != "" || strings.Trim(r["symbol"], "NOZ12345") == "" {
			continue // the edition before; hydrogen, nitrogen and oxygen are not welded with here
		}
		m := mix{middle(r["CO2_vol_pct"]), middle(r["O2_vol_pct"]), middle(r["He_vol_pct"])}
		switch {
		case r["symbol"] == "I2":
			m = mix{he: 100}
		case r["symbol"] == "C1":
			m = mix{co2: 100}
		case r["CO2_vol_pct"] == "balance":
			m.co2 = 100 - m.o2
		}
		used++
		if got := facts.designation(m); got == r["symbol"] {
			agree++
		} else {
			t.Errorf("%s: %s is taken for %q", r["symbol"], fmt.Sprint(m), got)
		}
	}
	t.Logf("%d designations compared, %d agree", used, agree)
	if used < 12 {
		t.Errorf("only %d designations were compared", used)
	}
}
