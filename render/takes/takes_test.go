// The takes drawing: without faults for logs of every kind, and the same log
// the same page.

package takes

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/svg"
	"pullscore/render/testing/drawtest"
)

// logOf is a log of n takes, made up.
func logOf(n int, change func(*takes.Take)) *takes.Sample {
	rng := rand.New(rand.NewPCG(7, 8))
	s := takes.NewSample(takes.Options{})
	for i := range n {
		t := takes.Take{
			Date: fmt.Sprintf("2026-03-%02d", 1+i%9), Puller: "INES", Travel: 20 + 90*rng.Float64(), Time: 0.4 + rng.Float64(),
			Error: 2 * rng.NormFloat64(), Hit: takes.Hit(rng.IntN(3)),
		}
		if change != nil {
			change(&t)
		}
		s.Add(t)
	}
	return s
}

// windowed gives takes of one travel a window.
func windowed(from, to, travel float64) func(*takes.Take) {
	return func(t *takes.Take) {
		t.Travel, t.Window = travel, [2]float64{from, to}
		t.Hit = takes.Missed
		if from <= t.Error && t.Error <= to {
			t.Hit = takes.Sharp
		}
	}
}

// Travels that differ by more than a factor of 1.3 are a scale; others are not, and the
// errors are counted instead.
func TestTravelsThatAreAlikeAreNoScale(t *testing.T) {
	for factor, want := range map[float64]string{1: "histogram", 1.29: "histogram", 1.31: "against-travel", 4: "against-travel"} {
		n := 0
		s := logOf(40, func(t *takes.Take) { t.Travel = 60 + 60*(factor-1)*float64(n%2); n++ })
		for _, name := range []string{"histogram", "against-travel"} {
			if drawn := groupOf(Takes(s, s.Report(), sheet.Options{})[0], name) != nil; drawn != (name == want) {
				t.Errorf("factor %v: %s is drawn: %t", factor, name, drawn)
			}
		}
	}
}

func groupOf(p *draw.Page, name string) *draw.Group {
	for it := range p.Root.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == name {
			return g
		}
	}
	return nil
}

// The bins of a histogram are a quarter of the window high and hold every take, those
// within the window all sharp. The window is to scale.
func TestHistogramIsToScale(t *testing.T) {
	s := logOf(200, windowed(-1.5, 1.3, 60))
	tp := newTakesPage(s, s.Report(), sheet.A4)
	h := histogram{takesPage: tp, takesPlot: tp.plots()[1]}
	n := 0
	for _, b := range h.bins() {
		n += b.all()
		if middle := (b.from + b.to) / 2; middle > -1.5 && middle < 1.3 {
			if b.missed > 0 || math.Abs(b.to-b.from-0.7) > 1e-9 {
				t.Errorf("the bin from %v to %v has %d that missed", b.from, b.to, b.missed)
			}
		} else if b.sharp > 0 && b.from > -h.reach && b.to < h.reach {
			t.Errorf("the bin from %v to %v has %d that were sharp", b.from, b.to, b.sharp)
		}
	}
	if n != len(tp.dots) {
		t.Errorf("%d of %d takes are in a bin", n, len(tp.dots))
	}
	w := groupOf(Takes(s, s.Report(), sheet.Options{})[0], signs.Window)
	run := w.Items[0].(draw.Path).Runs[0]
	if got, want := (run[2].Y-run[1].Y)/h.box.H*2*h.reach, 2.8; math.Abs(got-want) > 0.02/h.box.H*2*h.reach {
		t.Errorf("the window is drawn %v degrees high, not %v", got, want)
	}
}

func TestTakesAreDrawnWithoutFaults(t *testing.T) {
	tests := map[string]*takes.Sample{
		"one take":            logOf(1, nil),
		"a few":               logOf(9, nil),
		"many":                logOf(5000, nil),
		"one travel and time": logOf(40, func(t *takes.Take) { t.Travel, t.Time = 60, 0.8 }),
		"no errors":           logOf(40, func(t *takes.Take) { t.Error = 0 }),
		"wild errors":         logOf(60, func(t *takes.Take) { t.Error *= 400 }),
		"no travel":           logOf(20, func(t *takes.Take) { t.Travel = 0 }),
		"slow":                logOf(20, func(t *takes.Take) { t.Time *= 100 }),
		"a long name":         logOf(40, func(t *takes.Take) { t.Puller = strings.Repeat("INES ", 40) }),
		"a window":            logOf(40, windowed(-1.5, 1.2, 60)),
		"a narrow window":     logOf(40, windowed(-0.02, 0.01, 60)),
		"a wide window":       logOf(40, windowed(-90, 80, 60)),
		"an open window":      logOf(40, windowed(math.Inf(-1), 1.2, 60)),
		"no end":              logOf(40, windowed(math.Inf(-1), math.Inf(1), 60)),
		"nobody":              logOf(40, func(t *takes.Take) { t.Puller, t.Date = "", "" }),
	}
	for name, s := range tests {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			for _, page := range Takes(s, s.Report(), sheet.Options{Paper: paper}) {
				for _, check := range []func(*draw.Page) []string{drawtest.Strict, drawtest.Signs, drawtest.Units} {
					for _, f := range check(page) {
						t.Errorf("%s: %s", name, f)
					}
				}
				text := takesSVG(t, page)
				if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
					t.Errorf("%s: holds a number that is none", name)
				}
				if len(text) > 1<<20 {
					t.Errorf("%s: the page has %d kB", name, len(text)>>10)
				}
			}
		}
	}
}

func TestSameTakesSamePage(t *testing.T) {
	a, b := logOf(4000, nil), logOf(4000, nil)
	one, two := takesSVG(t, Takes(a, a.Report(), sheet.Options{})[0]), takesSVG(t, Takes(b, b.Report(), sheet.Options{})[0])
	if one != two {
		t.Error("the same log gives two pages")
	}
}

func takesSVG(t *testing.T, p *draw.Page) string {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
