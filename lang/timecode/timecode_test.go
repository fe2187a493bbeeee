package timecode

import (
	"math"
	"math/big"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// rows reads a file of tab-separated rows, without comments.
func rows(t *testing.T, path string) [][]string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var all [][]string
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			all = append(all, strings.Split(line, "\t"))
		}
	}
	return all
}

func rate(t *testing.T, name string) Rate {
	t.Helper()
	r, err := ParseRate(name)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func integer(t *testing.T, s string) int64 {
	t.Helper()
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestLabels(t *testing.T) {
	for _, row := range rows(t, "testdata/labels.tsv") {
		r, label, frames := rate(t, row[0]), row[1], integer(t, row[2])
		if got, err := r.Parse(label); err != nil || got != frames {
			t.Errorf("%s: Parse(%s) = %d, %v, want %d", r, label, got, err, frames)
		}
		if got := r.Format(frames); got != label {
			t.Errorf("%s: Format(%d) = %s, want %s", r, frames, got, label)
		}
		seconds, err := strconv.ParseFloat(row[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Seconds(frames); math.Abs(got-seconds) > 1e-9 {
			t.Errorf("%s: Seconds(%d) = %.12f, want %.12f", r, frames, got, seconds)
		}
	}
}

// Other people's tables, where they lie beside the checkout.
const samples = "../../../shared/samples/timecode/"

func TestSampleLabels(t *testing.T) {
	if _, err := os.Stat(samples + "valid.tsv"); err != nil {
		t.Skip("the tables of labels by others are not here:", err)
	}
	for _, row := range rows(t, samples+"valid.tsv")[1:] {
		r := rate(t, strings.Replace(row[0], "ndf", "", 1))
		label, frames := row[2], integer(t, row[3])
		if got, err := r.Parse(label); err != nil || got != frames {
			t.Errorf("%s: Parse(%s) = %d, %v, want %d", r, label, got, err, frames)
		}
		if got := r.Format(frames); got != label {
			t.Errorf("%s: Format(%d) = %s, want %s", r, frames, got, label)
		}
		exact, ok := new(big.Rat).SetString(row[4])
		if !ok {
			t.Fatalf("seconds %q", row[4])
		}
		if want, _ := exact.Float64(); r.Seconds(frames) != want {
			t.Errorf("%s: Seconds(%d) = %v, want %v", r, frames, r.Seconds(frames), want)
		}
	}
	for _, row := range rows(t, samples+"invalid.tsv")[1:] {
		if got, err := rate(t, row[0]).Parse(row[1]); err == nil {
			t.Errorf("%s: Parse(%s) = %d, want an error: %s", row[0], row[1], got, row[2])
		}
	}
}

// What is refused, and what the message must say.
func TestRefused(t *testing.T) {
	tests := []struct{ rate, label, says string }{
		{"29.97df", "00:01:00;00", "skips the labels ;00 to ;01 at the start of this minute: 00:00:59;29 is followed by 00:01:00;02"},
		{"29.97df", "00:01:00:01", "00:01:00;02"},
		{"29.97df", "23:59:00;00", "23:58:59;29 is followed by 23:59:00;02"},
		{"59.94df", "00:01:00;00", "skips the labels ;00 to ;03"},
		{"59.94df", "00:01:00;03", "00:00:59;59 is followed by 00:01:00;04"},
		{"29.97", "00:01:00;02", "a semicolon marks drop-frame, which does not exist at 29.97: write rate 29.97df, or a colon"},
		{"59.94", "00:01:00;02", "write rate 59.94df"},
		{"24", "01:00:13;23", "does not exist at 24: write a colon"},
		{"23.976", "00:01:02;23", "does not exist at 23.976: write a colon"},
		{"24", "00:00:00:24", "frames go from 00 to 23 at 24, not to 24"},
		{"25", "00:00:00:25", "frames go from 00 to 24"},
		{"24", "00:60:00:00", "minutes go from 00 to 59, not to 60"},
		{"24", "00:00:60:00", "seconds go from 00 to 59, not to 60"},
		{"24", "24:00:00:00", "hours go from 00 to 23, not to 24"},
		{"24", "-01:00:13:13", "never negative"},
		{"24", "1:00:13:13", "two digits each"},
		{"24", "01:00:13", "two digits each"},
		{"24", "01:00:13:13:00", "two digits each"},
		{"24", "01.00.13.13", "two digits each"},
		{"24", "0a:00:13:13", "two digits each"},
		{"24", "", "two digits each"},
	}
	for _, tt := range tests {
		got, err := rate(t, tt.rate).Parse(tt.label)
		switch {
		case err == nil:
			t.Errorf("%s: Parse(%q) = %d, want an error", tt.rate, tt.label, got)
		case !strings.Contains(err.Error(), tt.says):
			t.Errorf("%s: Parse(%q): %v, want %q in it", tt.rate, tt.label, err, tt.says)
		}
	}
}

// Writers of drop-frame put the semicolon in one place, everywhere or nowhere.
func TestSemicolons(t *testing.T) {
	r := rate(t, "29.97df")
	for _, label := range []string{"00:01:00;02", "00;01;00;02", "00:01:00:02"} {
		if got, err := r.Parse(label); err != nil || got != 1800 {
			t.Errorf("Parse(%s) = %d, %v, want 1800", label, got, err)
		}
	}
}

func TestRates(t *testing.T) {
	all := Rates()
	for i, r := range all {
		if got := rate(t, r.String()); got != r {
			t.Errorf("ParseRate(%s) = %s", r, got)
		}
		num, den := r.Exact()
		if i > 0 {
			if n, d := all[i-1].Exact(); n*den > num*d {
				t.Errorf("%s is before %s", all[i-1], r)
			}
		}
		// The name is the rate rounded to three digits behind the point.
		name, err := strconv.ParseFloat(strings.TrimSuffix(r.String(), "df"), 64)
		if err != nil || math.Abs(name-float64(num)/float64(den)) > 5e-4 {
			t.Errorf("%s is %d/%d", r, num, den)
		}
		if r.Drop() != strings.HasSuffix(r.String(), "df") {
			t.Errorf("%s: Drop is %t", r, r.Drop())
		}
	}
	if (Rate{}).String() != "24" {
		t.Errorf("the zero rate is %s", Rate{})
	}
	_, err := ParseRate("23.98df")
	if err == nil {
		t.Fatal("23.98 is a rate")
	}
	for _, r := range all {
		if !strings.Contains(err.Error(), r.String()) {
			t.Errorf("%v: lacks %s", err, r)
		}
	}
}

var anyRate = rapid.SampledFrom(Rates())

func TestParseIsInverseOfFormat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRate.Draw(t, "rate")
		n := rapid.Int64Range(0, r.Day()-1).Draw(t, "frames")
		label := r.Format(n)
		if got, err := r.Parse(label); err != nil || got != n {
			t.Fatalf("%s: frame %d is %s, which is %d, %v", r, n, label, got, err)
		}
		if n > 0 && r.Format(n-1) >= label {
			t.Fatalf("%s: %s comes before %s", r, r.Format(n-1), label)
		}
	})
}

// Over a whole day of drop-frame every label that exists comes once, in order.
func TestWholeDay(t *testing.T) {
	r := rate(t, "29.97df")
	before := ""
	for n := range r.Day() {
		label := r.Format(n)
		if label <= before {
			t.Fatalf("%s follows %s", label, before)
		}
		if got, err := r.Parse(label); err != nil || got != n {
			t.Fatalf("frame %d is %s, which is %d, %v", n, label, got, err)
		}
		before = label
	}
	if r.Day() != 2589408 || before != "23:59:59;29" {
		t.Errorf("a day has %d frames and ends at %s", r.Day(), before)
	}
}

func TestFormatWraps(t *testing.T) {
	for _, r := range Rates() {
		last := r.Format(r.Day() - 1)
		if got := r.Format(-1); got != last {
			t.Errorf("%s: one frame before 0 is %s, want %s", r, got, last)
		}
		if got, want := r.Format(r.Day()+5), r.Format(5); got != want {
			t.Errorf("%s: five frames into the next day is %s, want %s", r, got, want)
		}
		r.Format(math.MinInt64)
		r.Format(math.MaxInt64)
	}
}

func TestFramesIsInverseOfSeconds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRate.Draw(t, "rate")
		n := rapid.Int64Range(-1<<50, 1<<50).Draw(t, "frames")
		if got := r.Frames(r.Seconds(n)); got != n {
			t.Fatalf("%s: frame %d is at %v s, which is frame %d", r, n, r.Seconds(n), got)
		}
		// The nearest: no other frame is closer, against exact fractions.
		s := rapid.Float64Range(-1e5, 1e5).Draw(t, "seconds")
		num, den := r.Exact()
		x := new(big.Rat).Mul(new(big.Rat).SetFloat64(s), big.NewRat(num, den))
		off := new(big.Rat).Sub(x, new(big.Rat).SetInt64(r.Frames(s)))
		if off.Abs(off).Cmp(big.NewRat(500_000_001, 1_000_000_000)) > 0 {
			t.Fatalf("%s: %v s is %s frames from frame %d", r, s, off.FloatString(12), r.Frames(s))
		}
	})
}

func TestFramesOfAnything(t *testing.T) {
	r := rate(t, "23.976")
	tests := []struct {
		seconds float64
		want    int64
	}{
		{math.NaN(), 0}, {math.Inf(1), 1 << 53}, {math.Inf(-1), -1 << 53}, {1e300, 1 << 53},
		{-1e308, -1 << 53}, {0, 0}, {3603.6, 86400}, {-3603.6, -86400},
	}
	for _, tt := range tests {
		if got := r.Frames(tt.seconds); got != tt.want {
			t.Errorf("Frames(%v) = %d, want %d", tt.seconds, got, tt.want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"01:00:10:12", "00:01:00;00", "-0:00:00:00", "99:99:99:99", ""} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, label string) {
		for _, r := range Rates() {
			n, err := r.Parse(label)
			if err != nil {
				continue
			}
			if got := r.Format(n); strings.ReplaceAll(got, ";", ":") != strings.ReplaceAll(label, ";", ":") {
				t.Errorf("%s: %q is frame %d, which is %s", r, label, n, got)
			}
		}
	})
}

// Cameras write 24000/1001 as 23.98 or as 23.976.
func TestRateOfCameras(t *testing.T) {
	if got := rate(t, "23.98"); got != rate(t, "23.976") || got.String() != "23.976" {
		t.Errorf("23.98 is %v", got)
	}
}
