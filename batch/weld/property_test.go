package weld

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"seamtally/batch/units"
)

var none Allowances

func TestAllowancesOfZeroLeaveTheDrawnGeometry(t *testing.T) {
	for _, s := range []Section{
		Fillet{6, 8, 75}, Corner{4, 4, 90}, SquareButt(3, 1), SingleV(12, 2, 2, 60), SingleBevel(12, 3, 1, 45),
		SingleV(20, 2, 2, 60).Doubled(0.5), SingleU(25, 2, 3, 20, 6), Flare{Radius: 10}, Plug{12}, Slot{10, 40}, Edge{3, 3, 2},
	} {
		drawn, err1 := s.Drawn()
		made, err2 := s.Made(none)
		if err1 != nil || err2 != nil || drawn != made {
			t.Errorf("%T: drawn %v, made %v (%v, %v)", s, drawn, made, err1, err2)
		}
	}
}

func TestAClosedSquareButtHasNoAreaAsDrawnAndACapAsMade(t *testing.T) {
	g := SquareButt(2, 0)
	if area, err := g.Drawn(); err != nil || area != 0 {
		t.Errorf("drawn %v, %v; want zero and no error", area, err)
	}
	made, err := g.Made(Allowances{CapHeight: 1.5, RootHeight: 1})
	// 2/3 x 2 x 1.5 + 2/3 x 2 x 1
	if err != nil || math.Abs(float64(made)-10.0/3) > 1e-9 {
		t.Errorf("made %v, %v; want 3.333", made, err)
	}
}

func TestCapsStandWhereAWeldIsOpen(t *testing.T) {
	a := Allowances{CapHeight: 1.5, RootHeight: 1}
	extra := func(g Groove) float64 {
		drawn, _ := g.Drawn()
		made, err := g.Made(a)
		if err != nil {
			t.Fatal(err)
		}
		return float64(made - drawn)
	}
	backed, formed, both := SquareButt(6, 2), SquareButt(6, 2), SquareButt(6, 2)
	backed.OpenRoot = false
	formed.OpenRoot, formed.FormedRoot = false, true
	both.BackWelded = true
	for name, c := range map[string]struct{ got, want float64 }{
		"open root":    {extra(SquareButt(6, 2)), 2.0/3*4*1.5 + 2.0/3*4*1},
		"backing":      {extra(backed), 2.0 / 3 * 4 * 1.5},
		"grooved bar":  {extra(formed), 2.0/3*4*1.5 + 2.0/3*4*1},
		"both sides":   {extra(both), 2 * 2.0 / 3 * 4 * 1.5},
		"partial":      {extra(SquareButt(6, 2).Partial(3)), 2.0 / 3 * 4 * 1.5},
		"double V 60°": {extra(SingleV(22, 2, 2, 60).Doubled(0.5)), 2 * 2.0 / 3 * (2 + 20*math.Tan(math.Pi/6) + 2) * 1.5},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %.4f, want %.4f", name, c.got, c.want)
		}
	}
}

func TestOverweldAndGapLengthenTheLegs(t *testing.T) {
	made, err := Fillet{6, 6, 90}.Made(Allowances{Overweld: 0.5, FitGap: 1, Convexity: 0.05})
	want := 7.5*7.5/2 + 2.0/3*0.05*2*7.5*7.5
	if err != nil || math.Abs(float64(made)-want) > 1e-9 {
		t.Errorf("fillet made %v, %v; want %.4f", made, err, want)
	}
	corner, err := Corner{6, 6, 90}.Made(Allowances{Overweld: 0.5, FitGap: 1})
	if err != nil || math.Abs(float64(corner)-6.5*6.5/2) > 1e-9 {
		t.Errorf("corner made %v, %v; a fit-up gap does not lengthen its legs", corner, err)
	}
}

func TestThroatAndLegAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		throat := units.MM(rapid.Float64Range(1, 30).Draw(t, "throat"))
		angle := units.Degree(rapid.Float64Range(30, 150).Draw(t, "angle"))
		leg, err := LegOfThroat(throat, angle)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Fillet{leg, leg, angle}.Throat()
		if err != nil || math.Abs(float64(back-throat)) > 1e-9*float64(throat) {
			t.Fatalf("throat %v gives leg %v gives throat %v (%v)", throat, leg, back, err)
		}
	})
}

func TestThroatIsNeverMoreThanTheShorterLeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Fillet{units.MM(rapid.Float64Range(1, 40).Draw(t, "a")), units.MM(rapid.Float64Range(1, 40).Draw(t, "b")), units.Degree(rapid.Float64Range(20, 160).Draw(t, "angle"))}
		throat, err := f.Throat()
		if err != nil || throat > min(f.LegA, f.LegB)*(1+1e-12) || throat <= 0 {
			t.Fatalf("%+v has throat %v (%v)", f, throat, err)
		}
	})
}

func TestTwiceTheLengthIsTwiceTheMetal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := units.MM2(rapid.Float64Range(0.001, 1000).Draw(t, "area"))
		length := units.Metre(rapid.Float64Range(0.001, 1000).Draw(t, "length"))
		one, err1 := Mass(area, length, 7850)
		two, err2 := Mass(area, 2*length, 7850)
		if err1 != nil || err2 != nil || two != 2*one {
			t.Fatalf("%v and %v (%v, %v)", one, two, err1, err2)
		}
	})
}

func TestInchesAndMillimetresGiveTheSameMetal(t *testing.T) {
	a, err1 := Fillet{units.FromInch(0.25), units.FromInch(0.25), 90}.Drawn()
	b, err2 := Fillet{6.35, 6.35, 90}.Drawn()
	if err1 != nil || err2 != nil || math.Abs(float64(a-b)) > 1e-12 {
		t.Errorf("%v and %v (%v, %v)", a, b, err1, err2)
	}
	if math.Abs(float64(a)-0.25*0.25/2*645.16) > 1e-9 {
		t.Errorf("%v is not 1/32 of a square inch", a)
	}
}

func TestMoreSizeIsMoreMetal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		leg := units.MM(rapid.Float64Range(1, 40).Draw(t, "leg"))
		more := leg + units.MM(rapid.Float64Range(0.01, 5).Draw(t, "more"))
		angle := units.Degree(rapid.Float64Range(30, 150).Draw(t, "angle"))
		a, _ := Fillet{leg, leg, angle}.Drawn()
		b, _ := Fillet{more, more, angle}.Drawn()
		if b <= a {
			t.Fatalf("leg %v gives %v, leg %v gives %v", leg, a, more, b)
		}
		thick := units.MM(rapid.Float64Range(5, 60).Draw(t, "thickness"))
		v, _ := SingleV(thick, 2, 1, 60).Drawn()
		w, _ := SingleV(thick+1, 2, 1, 60).Drawn()
		if w <= v {
			t.Fatalf("thickness %v gives %v, a millimetre more %v", thick, v, w)
		}
	})
}

func TestFeedAndCurrentAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Melting{rapid.Float64Range(0.05, 2).Draw(t, "a"), rapid.Float64Range(0, 5e-4).Draw(t, "b")}
		current := units.Amp(rapid.Float64Range(10, 300).Draw(t, "current"))
		l := units.MM(rapid.Float64Range(0, 30).Draw(t, "extension"))
		feed, err := m.Feed(current, l)
		if err != nil || feed > 50 {
			t.Skip()
		}
		back, err := m.Current(feed, l)
		if err != nil || math.Abs(float64(back-current)) > 1e-6*float64(current) {
			t.Fatalf("%v A gives %v m/min gives %v A (%v)", current, feed, back, err)
		}
	})
}

func TestTheEquationsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := units.MM2(rapid.Float64Range(2, 100).Draw(t, "area"))
		feed := units.MMin(rapid.Float64Range(2, 20).Draw(t, "feed"))
		rate, err1 := Deposition(feed, 8.88, 0.95)
		travel, err2 := Travel(rate, area, 7850)
		metal, err3 := Mass(area, 1, 7850)
		arc, err4 := ArcTime(metal, rate)
		if err := first(err1, err2, err3, err4); err != nil {
			t.Fatal(err)
		}
		if byTravel := 1000 / float64(travel); math.Abs(byTravel-float64(arc)) > 1e-9*byTravel {
			t.Fatalf("a metre takes %v min by metal and %v by travel", arc, byTravel)
		}
		if travel >= 1 && travel <= 10000 {
			if back, err := PassArea(rate, travel, 7850); err != nil || math.Abs(float64(back-area)) > 1e-9*float64(area) {
				t.Fatalf("area %v comes back as %v (%v)", area, back, err)
			}
		}
	})
}

func TestCoolingHasNoStepAtTheTransition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		t0 := units.Celsius(rapid.Float64Range(-20, 300).Draw(t, "t0"))
		q := units.KJMM(rapid.Float64Range(0.1, 5).Draw(t, "q"))
		f2, f3 := rapid.Float64Range(0.45, 1).Draw(t, "f2"), rapid.Float64Range(0.67, 1).Draw(t, "f3")
		dt, err := TransitionThickness(t0, q, f2, f3)
		if err != nil {
			t.Fatal(err)
		}
		thin, err1 := CoolingThin(t0, q, dt, f2)
		thick, err2 := CoolingThick(t0, q, f3)
		if err1 != nil || err2 != nil || math.Abs(float64(thin-thick)) > 1e-9*float64(thick) {
			t.Fatalf("thin %v, thick %v (%v, %v)", thin, thick, err1, err2)
		}
	})
}

// Whatever goes in, what comes out is finite, and an error wraps ErrRange.
func TestNoInputGivesNaNOrInfinity(t *testing.T) {
	anything := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-10, 1000), rapid.SampledFrom([]float64{0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, 5e-324}))
	rapid.Check(t, func(t *rapid.T) {
		x := func(name string) float64 { return anything.Draw(t, name) }
		a, b, c, d, e := x("a"), x("b"), x("c"), x("d"), x("e")
		judge := func(what string, v float64, err error) {
			if err != nil && !errors.Is(err, ErrRange) {
				t.Fatalf("%s: error %v does not wrap ErrRange", what, err)
			}
			if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
				t.Fatalf("%s gives %v without an error", what, v)
			}
		}
		mm := func(v float64) units.MM { return units.MM(v) }
		all := Allowances{mm(a), mm(b), c, mm(d), mm(e)}
		for _, s := range []Section{
			Fillet{mm(a), mm(b), units.Degree(c)}, Corner{mm(a), mm(b), units.Degree(c)}, SquareButt(mm(a), mm(b)),
			SingleV(mm(a), mm(b), mm(c), units.Degree(d)), SingleJ(mm(a), mm(b), mm(c), units.Degree(d), mm(e)),
			SingleU(mm(a), mm(b), mm(c), units.Degree(d), mm(e)).Doubled(0.5), SingleV(mm(a), mm(b), mm(c), units.Degree(d)).Partial(mm(e)),
			Flare{mm(a), mm(b), mm(c), true}, Plug{mm(a)}, Slot{mm(a), mm(b)}, Edge{mm(a), mm(b), mm(c)},
		} {
			v, err := s.Drawn()
			judge("drawn", float64(v), err)
			v, err = s.Made(all)
			judge("made", float64(v), err)
			v, err = s.Made(Allowances{0.5, 0, 0.05, 1.5, 1})
			judge("made", float64(v), err)
			s.Faces()
			for _, p := range s.Outline() {
				judge("outline", p.X+p.Y, nil)
			}
		}
		throat, err := Fillet{mm(a), mm(b), units.Degree(c)}.Throat()
		judge("throat", float64(throat), err)
		leg, err := LegOfThroat(mm(a), units.Degree(b))
		judge("leg", float64(leg), err)
		mass, err := Mass(units.MM2(a), units.Metre(b), units.KgM3(c))
		judge("mass", float64(mass), err)
		wire, err := WireBought(units.Kg(a), b, c)
		judge("wire", float64(wire), err)
		q, err := LinearMass(mm(a), units.KgM3(b))
		judge("linear mass", float64(q), err)
		length, err := WireLength(units.Kg(a), units.GramM(b))
		judge("wire length", float64(length), err)
		feed, err := Melting{a, b}.Feed(units.Amp(c), mm(d))
		judge("feed", float64(feed), err)
		current, err := Melting{a, b}.Current(units.MMin(c), mm(d))
		judge("current", float64(current), err)
		rate, err := Deposition(units.MMin(a), units.GramM(b), c)
		judge("deposition", float64(rate), err)
		arc, err := ArcTime(units.Kg(a), units.KgH(b))
		judge("arc time", float64(arc), err)
		travel, err := Travel(units.KgH(a), units.MM2(b), units.KgM3(c))
		judge("travel", float64(travel), err)
		area, err := PassArea(units.KgH(a), units.MMMin(b), units.KgM3(c))
		judge("pass area", float64(area), err)
		volt, err := ArcVoltage(units.Amp(a), VoltagePoint{units.Amp(b), units.Volt(c)}, VoltagePoint{units.Amp(d), units.Volt(e)})
		judge("voltage", float64(volt), err)
		volt, err = LoadVoltage(units.Amp(a))
		judge("load voltage", float64(volt), err)
		heat, err := ArcEnergy(units.Volt(a), units.Amp(b), units.MMMin(c))
		judge("arc energy", float64(heat), err)
		heat, err = HeatInput(units.KJMM(a), b)
		judge("heat input", float64(heat), err)
		t85, _, err := Cooling(units.Celsius(a), units.KJMM(b), mm(c), d, e)
		judge("cooling", float64(t85), err)
		temp, err := Preheat(a, mm(b), c, units.KJMM(d), EN1011)
		judge("preheat", float64(temp), err)
		steel := Composition{C: a, Si: b, Mn: c, Cr: d, Mo: e, V: a, Ni: b, Cu: c, B: d}
		for _, f := range []func() (float64, error){steel.CEV, steel.CET, steel.Pcm} {
			v, err := f()
			judge("carbon equivalent", v, err)
		}
		gas, err := GasVolume(units.LMin(a), units.Minute(b), c, units.Second(d), units.Second(e))
		judge("gas", float64(gas), err)
		gas, err = CylinderGas(a, units.Litre(b), c)
		judge("cylinder", float64(gas), err)
		kwh, err := ArcPower(units.Volt(a), units.Amp(b), units.Minute(c), d)
		judge("power", float64(kwh), err)
		kwh, err = IdlePower(a, units.Minute(b))
		judge("idle", float64(kwh), err)
		bears, err := DutyCurrent(units.Amp(a), b, c)
		judge("duty current", float64(bears), err)
		share, err := Duty(units.Amp(a), b, units.Amp(c))
		judge("duty", share, err)
		st, err := Stitch(mm(a), mm(b), mm(c), int(math.Mod(math.Abs(d), 50)))
		judge("stitch", float64(st.Welded)+float64(st.Occupied), err)
		s1, err := ShrinkButt(units.MM2(a), mm(b), mm(c))
		judge("shrink", float64(s1), err)
		s2, err := ShrinkTee(mm(a), mm(b))
		judge("shrink", float64(s2), err)
		s3, err := ShrinkLong(units.MM2(a), units.MM2(b))
		judge("shrink", s3, err)
	})
}
