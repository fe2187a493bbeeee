// Published figures and the model's worked log against scores, intervals and
// the fit. testdata/published-motion.tsv says where each is from.

package takes

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// A figure is a row of the table.
type figure struct {
	id, in string
	lo, hi float64
	within float64 // half of the last digit printed, or the tolerance given
}

// figures reads the rows that are about logs.
func figures(t *testing.T) map[string]figure {
	t.Helper()
	data, err := os.ReadFile("../../testdata/published-motion.tsv")
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]figure{}
	for line := range strings.Lines(string(data)) {
		c := strings.Split(line, "\t")
		lo, hi, isRange := strings.Cut(c[3], "..")
		if !isRange {
			hi = lo
		}
		f := figure{id: c[0], in: c[2]}
		f.lo, _ = strconv.ParseFloat(lo, 64)
		f.hi, _ = strconv.ParseFloat(hi, 64)
		f.within, _ = strconv.ParseFloat(strings.Fields(c[5] + " x")[0], 64)
		if strings.HasPrefix(f.id, "LOG") {
			f.in = c[2]
		}
		all[f.id] = f
	}
	return all
}

// log36 is the model's worked log, as takes.
func log36(t *testing.T, all map[string]figure) []Take {
	t.Helper()
	var list []Take
	for row := range strings.FieldsSeq(all["LOG36"].in) {
		var v [3]float64
		for i, text := range regexp.MustCompile(`[:@]`).Split(row, -1) {
			f, err := strconv.ParseFloat(text, 64)
			if err != nil {
				t.Fatalf("%s: %v", row, err)
			}
			v[i] = f
		}
		list = append(list, Take{Travel: v[0], Error: v[1], Time: v[2]})
	}
	if len(list) != int(all["LOG36"].lo) {
		t.Fatalf("%d takes, and the table says %v", len(list), all["LOG36"].lo)
	}
	return list
}

func sampleOf(list []Take) *Sample {
	s := NewSample(Options{})
	for i := range list {
		s.Add(list[i])
	}
	return s
}

func TestPublished(t *testing.T) {
	all := figures(t)
	sample := sampleOf(log36(t, all))
	ml, weighed := sample.Likeliest(), sample.Fit()

	var er Scores
	for text := range strings.SplitSeq(strings.TrimPrefix(all["ER-CE"].in, "e="), ",") {
		e, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		er.Add(&Take{Travel: 60, Error: e, Time: 1})
	}
	hits, of, _ := sample.Scores.Counted()
	lo, hi := Wilson(hits, of, Z95)

	tests := map[string][2]float64{
		"ER-CE":   {er.Constant(), er.Constant()},
		"ER-AE":   {er.Absolute(), er.Absolute()},
		"ER-E":    {math.Hypot(er.Constant(), er.Variable()), math.Hypot(er.Constant(), er.Variable())},
		"FIT-c":   {ml.Bias.Value, ml.Bias.Value},
		"FIT-s0":  {ml.Rim.Value, ml.Rim.Value},
		"FIT-nll": {ml.NegLog, ml.NegLog},
		"FIT-TPm": {weighed.Throughput.Value, weighed.Throughput.Value},
		"FIT-s0m": {weighed.Rim.Value, weighed.Rim.Value},
		"FIT-VE":  {sample.Scores.Variable(), sample.Scores.Variable()},
		"FIT-HIT": {lo, hi},
	}
	for id, f := range all {
		if strings.HasPrefix(id, "WI-") || strings.HasPrefix(id, "WN-") {
			v := wilsonRow(t, f)
			tests[id] = [2]float64{v, v}
		}
	}
	for id, got := range tests {
		f, ok := all[id]
		if !ok || f.within == 0 {
			t.Errorf("%s is not in the table, or has no precision", id)
			continue
		}
		if !(math.Abs(got[0]-f.lo) <= f.within && math.Abs(got[1]-f.hi) <= f.within) {
			t.Errorf("%s: %v, in the table %v to %v, give or take %v", id, got, f.lo, f.hi, f.within)
		}
	}
	if len(tests) < 19 {
		t.Errorf("only %d rows are tested", len(tests))
	}
}

// wilsonRow returns the end of the interval that a row is about.
func wilsonRow(t *testing.T, f figure) float64 {
	t.Helper()
	m := regexp.MustCompile(`^k=(\d+);n=(\d+);(z=1\.96|95%)$`).FindStringSubmatch(f.in)
	if m == nil {
		t.Fatalf("%s: %q cannot be read", f.id, f.in)
	}
	k, _ := strconv.Atoi(m[1])
	n, _ := strconv.Atoi(m[2])
	z := Z95
	if m[3] == "95%" {
		z = 1.959963984540054 // the normal quantile itself
	}
	lo, hi := Wilson(k, n, z)
	if strings.HasSuffix(f.id, "U") {
		return hi
	}
	return lo
}
