package units_test

import (
	"math"
	"testing"

	"pullscore/interp/units"
	"pullscore/optics"
)

var (
	words = units.Style{}
	table = units.Style{Face: units.Table}
	feet  = units.Style{System: units.Imperial}
	tapes = units.Style{System: units.Imperial, Face: units.Table}
)

const in = 0.0254 // the inch in metres, exact

// A row is a number with the four ways of writing it. An empty imperial is that
// of the metric.
type row struct {
	v                float64
	words, table     string
	inWords, inTable string
}

func check(t *testing.T, name string, rows []row, write func(s units.Style, v float64) string) {
	t.Helper()
	for _, r := range rows {
		for _, w := range []struct {
			s    units.Style
			want string
		}{{words, r.words}, {table, r.table}, {feet, r.inWords}, {tapes, r.inTable}} {
			if w.want == "" && w.s.System == units.Imperial {
				continue
			}
			if got := write(w.s, r.v); got != w.want {
				t.Errorf("%s(%v) in %+v = %q, want %q", name, r.v, w.s, got, w.want)
			}
		}
	}
}

func TestTape(t *testing.T) {
	check(t, "Tape", []row{
		{0, "0 cm", "0 cm", "0 in", "0″"},
		{math.Copysign(0, -1), "0 cm", "0 cm", "0 in", "0″"},
		{-0.0001, "0 cm", "0 cm", "0 in", "0″"},
		{0.005, "5 mm", "5 mm", "1/4 in", "¼″"},
		{0.95, "95 cm", "95 cm", `3'1 1/2"`, "3′1½″"},
		{0.1234, "12.3 cm", "12.3 cm", "4 3/4 in", "4¾″"},
		{0.9994, "99.9 cm", "99.9 cm", "", ""},
		{0.9995, "1 m", "1 m", "", ""},
		{0.99999, "1 m", "1 m", "", ""},
		{1.7, "1.7 m", "1.7 m", `5'7"`, "5′7″"},
		{66.25 * in, "1.68 m", "1.68 m", `5'6 1/4"`, "5′6¼″"},
		{60.25 * in, "1.53 m", "1.53 m", `5'0 1/4"`, "5′0¼″"},
		{60 * in, "1.52 m", "1.52 m", "5'", "5′"},
		{11.9 * in, "30.2 cm", "30.2 cm", "1'", "1′"},
		{119.9 * in, "3.05 m", "3.05 m", "10'", "10′"},
		{120.4 * in, "3.06 m", "3.06 m", "10'", "10′"},
		{150.4 * in, "3.82 m", "3.82 m", `12'6"`, "12′6″"},
		{1199.7 * in, "30.5 m", "30.5 m", "100'", "100′"},
		{9.994, "9.99 m", "9.99 m", "", ""},
		{9.996, "10 m", "10 m", "", ""},
		{12.34, "12.3 m", "12.3 m", `40'6"`, "40′6″"},
		{99.96, "100 m", "100 m", "328'", "328′"},
		{123.4, "123 m", "123 m", "405'", "405′"},
		{-1.7, "-1.7 m", "−1.7 m", `-5'7"`, "−5′7″"},
		{math.Inf(1), "infinity", "∞", "infinity", "∞"},
		{math.NaN(), "", "", "", ""},
	}, units.Style.Tape)
}

func TestBoth(t *testing.T) {
	tests := []struct {
		s            units.Style
		m            float64
		first, other string
	}{
		{words, 1.7, "1.7 m", `5'7"`},
		{tapes, 1.7, "5′7″", "1.7 m"},
		{tapes, math.Inf(1), "∞", ""},
		{table, math.NaN(), "", ""},
	}
	for _, test := range tests {
		if first, other := test.s.Both(test.m); first != test.first || other != test.other {
			t.Errorf("Both(%v) in %+v = %q, %q", test.m, test.s, first, other)
		}
	}
}

func TestGap(t *testing.T) {
	check(t, "Gap", []row{
		{0, "0 mm", "0 mm", "0 in", "0 in"},
		{0.0085, "8.5 mm", "8.5 mm", "1/4 in", "1/4 in"},
		{0.00203, "2 mm", "2 mm", "0.08 in", "0.08 in"},
		{-0.00203, "-2 mm", "−2 mm", "-0.08 in", "−0.08 in"},
		{0.00996, "1 cm", "1 cm", "1/2 in", "1/2 in"},
		{0.00994, "9.9 mm", "9.9 mm", "", ""},
		{2.25 * in, "5.7 cm", "5.7 cm", "2 1/4 in", "2 1/4 in"},
		{-2.25 * in, "-5.7 cm", "−5.7 cm", "-2 1/4 in", "−2 1/4 in"},
		{0.022, "2.2 cm", "2.2 cm", "3/4 in", "3/4 in"},
		{0.9999, "1 m", "1 m", `3'3 1/4"`, "3′3¼″"},
		{11.95 * in, "30.4 cm", "30.4 cm", "1'", "1′"},
		{math.Inf(1), "infinity", "∞", "infinity", "∞"},
		{math.Inf(-1), "-infinity", "−∞", "-infinity", "−∞"},
		{math.NaN(), "", "", "", ""},
	}, units.Style.Gap)
}

func TestMiss(t *testing.T) {
	tests := []struct {
		near, far float64
		s         units.Style
		want      string
	}{
		{0.020, 0.022, table, "−2.0/+2.2 cm"},
		{0.020, 0.022, words, "-2.0/+2.2 cm"},
		{0.05, 0.06, words, "-5/+6 cm"},
		{0.0012, 0.0013, table, "−1.2/+1.3 mm"},
		{0.004, 0.0123, table, "−0.4/+1.2 cm"},
		{0.8, 1.25, table, "−0.80/+1.25 m"},
		{0.0009, 0.002, feet, "-0.04/+0.08 in"},
		{2 * in, 2.5 * in, tapes, "−2.0/+2.5 in"},
		{100 * in, 150 * in, feet, "-8.3/+12.5 ft"},
		{0.02, math.Inf(1), table, "−2/+∞ cm"},
		{1.72, math.Inf(1), table, "−1.72/+∞ m"},
		{0.002, math.Inf(1), table, "−2/+∞ mm"},
		{math.Inf(1), math.Inf(1), table, "−∞/+∞ cm"},
		{math.NaN(), 1, table, ""},
	}
	for _, test := range tests {
		if got := test.s.Miss(test.near, test.far); got != test.want {
			t.Errorf("Miss(%v, %v) in %+v = %q, want %q", test.near, test.far, test.s, got, test.want)
		}
	}
}

func TestOffset(t *testing.T) {
	check(t, "Offset", []row{
		{0, "", "", "", ""},
		{math.NaN(), "", "", "", ""},
		{0.1, " + 10 cm", " + 10 cm", " + 4 in", " + 4 in"},
		{-0.35, " - 35 cm", " − 35 cm", ` - 1'1 3/4"`, " − 1′1¾″"},
	}, units.Style.Offset)
}

func TestAngles(t *testing.T) {
	check(t, "Angle", []row{
		{0, "0 deg", "0°", "", ""}, {-0.04, "0 deg", "0°", "", ""},
		{4.72, "4.7 deg", "4.7°", "", ""}, {-4.72, "-4.7 deg", "−4.7°", "", ""},
		{9.94, "9.9 deg", "9.9°", "", ""}, {9.96, "10 deg", "10°", "", ""}, {117.3, "117 deg", "117°", "", ""},
		{math.Inf(1), "infinity", "∞", "", ""}, {math.NaN(), "", "", "", ""},
	}, units.Style.Angle)
	check(t, "AngleFixed", []row{{117.34, "117.3 deg", "117.3°", "", ""}, {117, "117.0 deg", "117.0°", "", ""}, {math.NaN(), "", "", "", ""}},
		func(s units.Style, v float64) string { return s.AngleFixed(v, 1) })
	check(t, "AngleTo", []row{{117.34, "117.3 deg", "117.3°", "", ""}, {117, "117 deg", "117°", "", ""}, {math.NaN(), "", "", "", ""}},
		func(s units.Style, v float64) string { return s.AngleTo(v, 1) })
	check(t, "Speed", []row{
		{398.2, "398 deg/s", "398°/s", "", ""}, {9.96, "10 deg/s", "10°/s", "", ""}, {math.Inf(1), "infinity", "∞", "", ""},
	}, units.Style.Speed)
	check(t, "Blur", []row{{4.62, "4.6 arcmin", "4.6 arcmin", "", ""}, {17.4, "17 arcmin", "17 arcmin", "", ""}, {math.NaN(), "", "", "", ""}}, units.Style.Blur)
}

func TestTimes(t *testing.T) {
	check(t, "Time", []row{
		{1.2, "1.2 s", "1.2 s", "", ""}, {10, "10 s", "10 s", "", ""}, {-0.004, "0 s", "0 s", "", ""},
		{-0.25, "-0.25 s", "−0.25 s", "", ""}, {math.NaN(), "", "", "", ""},
	}, units.Style.Time)
	check(t, "TimeFixed", []row{{1.2, "1.20 s", "1.20 s", "", ""}, {-0.001, "0.00 s", "0.00 s", "", ""}, {math.NaN(), "", "", "", ""}}, units.Style.TimeFixed)
	check(t, "Frames", []row{{12, "12 frames", "12 fr", "", ""}, {1, "1 frame", "1 fr", "", ""}, {-3, "-3 frames", "−3 fr", "", ""}},
		func(s units.Style, v float64) string { return s.Frames(int64(v)) })
}

func TestMillimetres(t *testing.T) {
	check(t, "Millimetres", []row{{0.075, "75 mm", "75 mm", "75 mm", "75 mm"}, {0.02489, "24.9 mm", "24.9 mm", "", ""}, {math.NaN(), "", "", "", ""}}, units.Style.Millimetres)
	check(t, "Disc", []row{{0.0000217, "0.022 mm", "0.022 mm", "0.022 mm", "0.022 mm"}, {0.000025, "0.025 mm", "0.025 mm", "", ""}}, units.Style.Disc)
}

func TestChance(t *testing.T) {
	tests := []struct {
		p, wanted    float64
		words, table string
	}{
		{0.84, 0, "84 %", "84 %"},
		{0.996, 0, "over 99 %", ">99 %"},
		{1, 0.95, "over 99 %", ">99 %"},
		{0.0049, 0, "under 1 %", "<1 %"},
		{0, 0.9, "under 1 %", "<1 %"},
		{0.896, 0.9, "under 90 %", "<90 %"},
		{0.894, 0.9, "89 %", "89 %"},
		{0.9, 0.9, "90 %", "90 %"},
		{0.902, 0.904, "under 90.4 %", "<90.4 %"},
		{0.991, 0.994, "under 99.4 %", "<99.4 %"},
		{math.NaN(), 0.9, "", ""},
	}
	for _, test := range tests {
		if got := words.Chance(test.p, test.wanted); got != test.words {
			t.Errorf("Chance(%v, %v) = %q, want %q", test.p, test.wanted, got, test.words)
		}
		if got := table.Chance(test.p, test.wanted); got != test.table {
			t.Errorf("Chance(%v, %v) in a table = %q, want %q", test.p, test.wanted, got, test.table)
		}
	}
}

func TestChanceRange(t *testing.T) {
	tests := []struct {
		p, lo, hi, wanted float64
		words, table      string
	}{
		{0.84, 0.64, 0.91, 0, "84 % (64 to 91)", "84 % (64–91)"},
		{0.84, 0.83, 0.85, 0, "84 %", "84 %"},
		{0.84, 0.826, 0.855, 0, "84 % (83 to 86)", "84 % (83–86)"},
		{0.96, 0.9, 1, 0, "96 % (90 to over 99)", "96 % (90–>99)"},
		{0.03, 0.001, 0.2, 0, "3 % (under 1 to 20)", "3 % (<1–20)"},
		{0.896, 0.8, 0.93, 0.9, "under 90 % (80 to 93)", "<90 % (80–93)"},
		{0.84, math.NaN(), 0.91, 0, "84 %", "84 %"},
		{math.NaN(), 0.6, 0.9, 0, "", ""},
	}
	for _, test := range tests {
		if got := words.ChanceRange(test.p, test.lo, test.hi, test.wanted); got != test.words {
			t.Errorf("%+v: %q", test, got)
		}
		if got := table.ChanceRange(test.p, test.lo, test.hi, test.wanted); got != test.table {
			t.Errorf("%+v: %q", test, got)
		}
	}
	if got := words.Share(1, 0) + words.Share(0, 0) + words.Share(0.125, 1); got != "100 %0 %12.5 %" {
		t.Errorf("shares: %q", got)
	}
}

func TestStop(t *testing.T) {
	tests := []struct {
		n    float64
		t    bool
		r    units.Round
		want string
	}{
		{2.8, false, units.Near, "f/2.8"},
		{2.9, true, units.Near, "T2.9"},
		{2.9, false, units.Open, "f/2.8"},
		{2.9, false, units.Closed, "f/3.2"},
		{2.9, true, units.Exact, "T2.9"},
		{3.34, false, units.Near, "f/3.3"},
		{3.34, false, units.Open, "f/3.2"},
		{3.34, false, units.Closed, "f/3.5"},
		{3.4, false, units.Near, "f/3.5"},
		{3.4, false, units.Exact, "f/3.4"},
		{5.657, false, units.Closed, "f/5.6"},
		{1.26, false, units.Near, "f/1.2"},
		{12, false, units.Near, "f/12"},
		{0.5, false, units.Open, "f/0.5"},
		{0.5, false, units.Closed, "f/0.5"},
		{200, false, units.Near, "f/200"},
		{math.Inf(1), false, units.Near, ""},
		{math.NaN(), true, units.Near, ""},
	}
	for _, test := range tests {
		if got := words.Stop(test.n, test.t, test.r); got != test.want || table.Stop(test.n, test.t, test.r) != test.want {
			t.Errorf("Stop(%v, %v, %v) = %q, want %q", test.n, test.t, test.r, got, test.want)
		}
	}
	for v, want := range map[float64]string{1: "1 stop", 1.04: "1 stop", -1: "-1 stop", 1.3: "1.3 stops", 0: "0 stops"} {
		if got := words.Stops(v); got != want {
			t.Errorf("Stops(%v) = %q, want %q", v, got, want)
		}
	}
}

// The marks are those of optics, and the number that each stands for is it too.
func TestMarksAreThoseOfOptics(t *testing.T) {
	for _, m := range optics.ThirdStops() {
		want := "f/" + units.Decimal(m.Mark, 1)
		for _, r := range []units.Round{units.Near, units.Open, units.Closed, units.Exact} {
			if got := words.Stop(m.Mark, false, r); got != want {
				t.Errorf("Stop(%v) = %q, want %q", m.Mark, got, want)
			}
		}
		if got := words.Stop(m.Exact, false, units.Near); got != want {
			t.Errorf("Stop(%v) = %q, want %q", m.Exact, got, want)
		}
	}
}

func TestNumbers(t *testing.T) {
	for _, test := range []struct{ got, want string }{
		{units.Decimal(2.50, 2), "2.5"}, {units.Decimal(10, 1), "10"}, {units.Decimal(-0.001, 2), "0"}, {units.Decimal(100, 0), "100"},
		{units.Decimal(-1.5, 1), "-1.5"}, {table.Number(-1.5, 1), "−1.5"}, {words.Number(math.Inf(-1), 1), "-infinity"},
		{words.Fixed(1.5, 2), "1.50"}, {words.Fixed(-0.001, 2), "0.00"}, {table.Fixed(-1, 1), "−1.0"}, {words.Fixed(math.NaN(), 1), ""},
		{words.Signed(0.35, 2), "+0.35"}, {words.Signed(0.001, 2), "0.00"}, {table.Signed(-0.35, 2), "−0.35"}, {words.Signed(math.Inf(1), 2), "+infinity"},
		{units.Count(1, "frame"), "1 frame"}, {units.Count(2, "frame"), "2 frames"}, {units.Count(0, "frame"), "0 frames"},
	} {
		if test.got != test.want {
			t.Errorf("%q, want %q", test.got, test.want)
		}
	}
	for _, test := range []struct{ got, want float64 }{
		{units.Up(1.21, 10), 1.3}, {units.Up(1.2, 10), 1.2}, {units.Up(1.2+1e-9, 10), 1.2}, {units.Up(-0.01, 10), 0},
		{units.Down(1.29, 10), 1.2}, {units.Down(1.3, 10), 1.3}, {units.Down(1.3-1e-9, 10), 1.3},
		{units.Nearest(1.26, 10), 1.3}, {units.Nearest(-0.01, 10), 0},
	} {
		if test.got != test.want || math.Signbit(test.got) {
			t.Errorf("%v, want %v", test.got, test.want)
		}
	}
}
