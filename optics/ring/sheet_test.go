// The distances to measure, against testdata/lens-cases.tsv: figures of a model of its
// own in another language, which shares no code with this one.

package ring

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/optics"
)

// hall is the criterion of a picture 24.89 mm wide, 12 m wide on a screen that is seen
// from 18 m, with 2 arcmin.
var hall = 24.89e-3 * 18 * math.Tan(2.0/60*math.Pi/180) / 12

var (
	metricSheet   = regexp.MustCompile(`^(\d+) mm, (?:closest )?([\d.]+) m, f/([\d.]+)`)
	imperialSheet = regexp.MustCompile(`^(\d+) mm, (\d+) in, f/([\d.]+), imperial`)
	macroSheet    = regexp.MustCompile(`^(\d+) mm macro, closest ([\d.]+) m, f/([\d.]+)`)
)

// sheetOf reads the lens of a row.
func sheetOf(t *testing.T, name string) (s Sheet, ok bool) {
	t.Helper()
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	unit := 1.0
	m := metricSheet.FindStringSubmatch(name)
	if m == nil {
		m = macroSheet.FindStringSubmatch(name)
	}
	if m == nil {
		m, unit = imperialSheet.FindStringSubmatch(name), inch
	}
	if m == nil {
		return s, false
	}
	return Sheet{Focal: number(m[1]) / 1000, Closest: number(m[2]) * unit, Number: number(m[3]), Criterion: hall, Imperial: unit != 1}, true
}

func TestSheetOfTheModel(t *testing.T) {
	data, err := os.ReadFile("../../testdata/lens-cases.tsv")
	if err != nil {
		t.Fatal(err)
	}
	var s Sheet
	rows := 0
	for line := range strings.Lines(string(data)) {
		c := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if c[0] != "sheet" {
			continue
		}
		rows++
		if next, ok := sheetOf(t, c[1]); ok {
			s = next
		} else if !strings.HasPrefix(c[1], "same: ") {
			t.Fatalf("%s: no lens", c[1])
		}
		got := math.NaN()
		switch what := c[1][strings.LastIndex(c[1], ": ")+2:]; {
		case what == "gaps":
			got = float64(s.Gaps())
		case what == "infinity is farther than":
			got = s.InfinityFrom()
		default:
			i, err := strconv.Atoi(strings.TrimPrefix(what, "distance "))
			if list := s.Distances(); err == nil && i <= len(list) {
				got = list[i-1]
			}
		}
		if c[3] == "in" {
			got /= inch
		}
		want, err := strconv.ParseFloat(c[2], 64)
		within, err2 := strconv.ParseFloat(c[4], 64)
		if err != nil || err2 != nil || !agree(got, want, within) {
			t.Errorf("%s: %v, the model has %v", c[1], got, c[2])
		}
	}
	if rows != 55 {
		t.Errorf("%d rows, not 55", rows)
	}
}

func TestSheetDistances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Sheet{
			Focal:     rapid.Float64Range(0.01, 0.4).Draw(t, "focal"),
			Number:    rapid.Float64Range(0.9, 16).Draw(t, "number"),
			Criterion: rapid.Float64Range(3e-6, 1e-4).Draw(t, "criterion"),
			Ratio:     rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "ratio"),
			Imperial:  rapid.Bool().Draw(t, "imperial"),
		}
		s.Closest = s.Focal * rapid.Float64Range(2.2, 20).Draw(t, "closest")
		list := s.Distances()
		if list[0] != s.Closest || !math.IsInf(list[len(list)-1], 1) {
			t.Fatalf("from %v to %v", list[0], list[len(list)-1])
		}
		for i, d := range list[1:] {
			if !(d > list[i]) {
				t.Fatalf("%v after %v", d, list[i])
			}
		}
		if n := s.Gaps(); n < fewGaps || n > manyGaps || len(list) > n+1 {
			t.Fatalf("%d gaps, %d distances", n, len(list))
		}
		blur := optics.Setting{Focal: s.Focal, Number: s.Number, Criterion: s.Criterion}.Blur(s.InfinityFrom(), math.Inf(1))
		if blur > s.Criterion/beyondHyp {
			t.Fatalf("a thing at %v m is blurred by %v of the criterion", s.InfinityFrom(), blur/s.Criterion)
		}
	})
}
