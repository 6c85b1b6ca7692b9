package show

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"seamtally/batch/plan"
	"seamtally/batch/units"
)

var metric, us = Figures{}, Figures{US: true}

// Inches are exact by definition of the inch; a size is a fraction only where it
// is one within 0.1 mm, so that none is rounded to a smaller size.
func TestSizes(t *testing.T) {
	for _, c := range []struct {
		mm         units.MM
		metric, us string
	}{
		{6, "6 mm", "0.236 in"}, {6.35, "6.4 mm", "1/4 in"}, {4.7625, "4.8 mm", "3/16 in"}, {12.7, "12.7 mm", "1/2 in"},
		{25.4, "25.4 mm", "1 in"}, {38.1, "38.1 mm", "1 1/2 in"}, {5, "5 mm", "0.197 in"}, {0, "0 mm", "0 in"}, {2.4, "2.4 mm", "3/32 in"},
	} {
		if c.mm == 2.4 { // 3/32 in is no sixteenth: decimals
			c.us = "0.094 in"
		}
		if got := metric.Size(c.mm).String(); got != c.metric {
			t.Errorf("%g mm: %s, want %s", float64(c.mm), got, c.metric)
		}
		if got := us.Size(c.mm).String(); got != c.us {
			t.Errorf("%g mm: %s, want %s", float64(c.mm), got, c.us)
		}
	}
}

func TestSizeIsNeverRoundedDownByMoreThanASlack(t *testing.T) {
	for v := 1.0; v < 60; v += 0.05 {
		s := us.Size(units.MM(v)).Num
		if got := readInches(s) * 25.4; got < v-0.11 || got > v+0.11 {
			t.Fatalf("%.2f mm is shown as %s in, which is %.2f mm", v, s, got)
		}
	}
}

func readInches(s string) float64 {
	whole, rest := 0.0, s
	for i := range s {
		if s[i] == ' ' {
			whole, rest = readInches(s[:i]), s[i+1:]
		}
	}
	for i := range rest {
		if rest[i] == '/' {
			return whole + readInches(rest[:i])/readInches(rest[i+1:])
		}
	}
	v, place := 0.0, 0.0
	for _, r := range rest {
		switch {
		case r == '.':
			place = 1
		case place > 0:
			place /= 10
			v += float64(r-'0') * place
		default:
			v = v*10 + float64(r-'0')
		}
	}
	return whole + v
}

func TestDialUnits(t *testing.T) {
	w := plan.Window{Start: 8.5, Low: 8, High: 9}
	if got := us.Feed(w); got != (Spread{"335", "315", "354", "in/min"}) {
		t.Errorf("8.5 m/min is %v", got) // 8.5 x 39.37 = 334.6
	}
	if got := us.Flow(plan.Window{Start: 15}); got.Start != "32" || got.Low != "" {
		t.Errorf("15 l/min is %v", got) // 15 x 2.119 = 31.8 ft³/h
	}
	if got := metric.Volts(plan.Window{Start: 18.64, Low: 17.6, High: 19.6}); got != (Spread{"18.6", "17.6", "19.6", "V"}) {
		t.Errorf("18.64 V is %v", got)
	}
	if s, per := metric.Pace(400); s != "15" || per.String() != "100 mm" {
		t.Errorf("400 mm/min is %s s per %s", s, per)
	}
	if s, per := us.Pace(400); s != "15" || per.String() != "4 in" {
		t.Errorf("400 mm/min is %s s per %s", s, per) // 101.6/400 x 60 = 15.2
	}
	if got := us.Heat(1).String(); got != "25.4 kJ/in" {
		t.Errorf("1 kJ/mm is %s", got)
	}
	if got := us.Mass(1).String(); got != "2.20 lb" {
		t.Errorf("1 kg is %s", got)
	}
}

func TestNothingIsNaN(t *testing.T) {
	plain := Figures{}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if plain.Num(v, 2) != "" || plain.Fixed(v, 1) != "" {
			t.Errorf("%g is printed as %q, %q", v, plain.Num(v, 2), plain.Fixed(v, 1))
		}
	}
	if plain.Num(-0.001, 1) != "0" || plain.Fixed(-0.001, 1) != "0.0" {
		t.Errorf("minus zero: %q %q", plain.Num(-0.001, 1), plain.Fixed(-0.001, 1))
	}
	if s, _ := metric.Pace(0); s != "" {
		t.Errorf("no travel has a pace of %q", s)
	}
}

// A temperature to be reached is rounded up and one not to be passed down, to tens of
// degrees Fahrenheit: never to the unsafe side, and never past each other.
func TestTemperaturesAreRoundedToTheSafeSide(t *testing.T) {
	us, si := Figures{US: true}, Figures{}
	c := func(v units.Celsius) *units.Celsius { return &v }
	for _, x := range []struct{ got, want string }{
		{us.Warm(100, nil).String(), "220°F"}, {us.Warm(10, nil).String(), "50°F"}, {us.Warm(20, nil).String(), "70°F"},
		{us.Cool(250, nil).String(), "480°F"}, {us.Cool(225, nil).String(), "430°F"}, {us.Cool(150, c(100)).String(), "300°F"},
		{us.Warm(150, c(151)).String(), "302°F"}, {us.Cool(151, c(150)).String(), "303°F"}, {us.Warm(150, c(250)).String(), "310°F"},
		{si.Warm(82.2, nil).String(), "83°C"}, {si.Cool(249.9, nil).String(), "249°C"}, {si.Warm(100, nil).String(), "100°C"},
	} {
		if strings.ReplaceAll(x.got, " ", "") != x.want {
			t.Errorf("%q, want %q", x.got, x.want)
		}
	}
	for v := units.Celsius(0); v < 400; v++ {
		for w := v; w < 400; w += 7 {
			least, most := number(t, us.Warm(v, &w).Num), number(t, us.Cool(w, &v).Num)
			if least < float64(v)*1.8+32-1e-6 || most > float64(w)*1.8+32+1e-6 || w > v && least > most {
				t.Fatalf("%g to %g °C: %g to %g °F", float64(v), float64(w), least, most)
			}
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Wires have the names under which they are sold in inches.
func TestWiresHaveTheirTradeNames(t *testing.T) {
	us := Figures{US: true}
	for _, x := range []struct {
		dia          units.MM
		filler, want string
	}{
		{0.9, "G3Si1", ".035 in (0.9 mm)"}, {1.2, "G3Si1", ".045 in (1.2 mm)"}, {1.2, "S Al 5356", "3/64 in (1.2 mm)"}, {1.6, "S Al 4043", "1/16 in (1.6 mm)"},
		{2, "T 42 3 Y N", "5/64 in (2 mm)"}, {1, "G3Si1", ".040 in (1 mm)"}, {2.4, "G3Si1", "0.094 in (2.4 mm)"},
	} {
		if got := us.Dia(x.dia, x.filler); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
	if got := (Figures{}).Dia(1.2, "G3Si1"); got != "1.2 mm" {
		t.Error(got)
	}
}

// Nothing that is needed reads 0, and a broad strip is cleaned to a quarter of an inch.
func TestSmallGasAndBroadStrip(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{us.Gas(13).String(), "0.5 ft³"},
		{us.Gas(1).String(), "0.1 ft³"},
		{us.Gas(200).String(), "7 ft³"},
		{us.Gas(0).String(), "0 ft³"},
		{us.AtLeast(100).String(), "4 in"},
		{us.AtLeast(25).String(), "1 in"},
		{us.AtLeast(10).String(), "7/16 in"},
		{us.Decimals(200), "7.874"},
		{metric.Decimals(200), "200"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
