// The takes drawing: without faults for logs of every kind, and the same log
// the same page.

package takes

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
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
		"nobody":              logOf(40, func(t *takes.Take) { t.Puller, t.Date = "", "" }),
	}
	for name, s := range tests {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			for _, page := range Takes(s, s.Report(), sheet.Options{Paper: paper}) {
				for _, f := range drawtest.Faults(page) {
					t.Errorf("%s: %s", name, f)
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
