// What must hold of every number, not only of those in the tables.

package units_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics"
)

// plain turns what a table has into what can be typed, for the tests alone.
var plain = strings.NewReplacer("−", "-", "°", " deg", "″", `"`, "′", "'", "¼", " 1/4", "½", " 1/2", "¾", " 3/4")

var inchesAlone = regexp.MustCompile(`^(-?)([0-9 /]+)"$`)

// read gives a written value to the parser of the language and returns it in
// metres, degrees, seconds or what its unit stands for.
func read(t rapid.TB, text string) float64 {
	t.Helper()
	text = inchesAlone.ReplaceAllString(plain.Replace(text), "$1$2 in")
	file, told := lang.Parse("plan.pull", []byte("let x = "+text+"\n"))
	if len(told) > 0 {
		t.Fatalf("%q cannot be read: %s", text, told[0].Message)
	}
	value, ok := valueOf(file.Body[0].(*lang.Let).Value)
	if !ok {
		t.Fatalf("%q is read, and not as a number", text)
	}
	return value
}

func valueOf(x *lang.Expr) (float64, bool) {
	switch x.Kind {
	case lang.ExprNumber, lang.ExprStop:
		return x.Value * x.Unit.SI(), true
	case lang.ExprMinus:
		v, ok := valueOf(x.X)
		return -v, ok
	}
	return 0, false
}

// A number is one way of writing numbers, with the step to which a value of
// that amount is written, from the table in the package's design.
type number struct {
	name  string
	write func(units.Style, float64) string
	step  func(s units.Style, v float64) float64
	most  float64
	face  []units.Face
}

// banded returns the step of the first band that an amount lies in; a value
// within half a step of a band's end may have that of either.
func banded(ends, steps []float64) func(float64) float64 {
	return func(v float64) float64 {
		for i, end := range ends {
			if math.Abs(v) < end {
				return steps[i]
			}
		}
		return steps[len(ends)]
	}
}

const ft = 12 * in

var (
	tapeMetric   = banded([]float64{1, 10, 100}, []float64{0.001, 0.01, 0.1, 1})
	tapeImperial = banded([]float64{10 * ft, 100 * ft}, []float64{in / 4, in, ft})
	gapMetric    = banded([]float64{0.01, 1, 10, 100}, []float64{0.0001, 0.001, 0.01, 0.1, 1})
	gapImperial  = banded([]float64{in / 4, 10 * ft, 100 * ft}, []float64{in / 100, in / 4, in, ft})
	tenths       = banded([]float64{10}, []float64{0.1, 1})
)

func inSystem(metric, imperial func(float64) float64) func(units.Style, float64) float64 {
	return func(s units.Style, v float64) float64 {
		if s.System == units.Imperial {
			return imperial(v)
		}
		return metric(v)
	}
}

func always(step func(float64) float64) func(units.Style, float64) float64 {
	return inSystem(step, step)
}

func constant(step float64) func(units.Style, float64) float64 {
	return always(func(float64) float64 { return step })
}

var both = []units.Face{units.Words, units.Table}

var numbers = []number{
	{"Tape", units.Style.Tape, inSystem(tapeMetric, tapeImperial), 2000, both},
	{"Gap", units.Style.Gap, inSystem(gapMetric, gapImperial), 2000, both},
	{"Angle", units.Style.Angle, always(tenths), 720, both},
	{"AngleFixed", func(s units.Style, v float64) string { return s.AngleFixed(v, 1) }, constant(0.1), 720, both},
	{"AngleTo", func(s units.Style, v float64) string { return s.AngleTo(v, 1) }, constant(0.1), 720, both},
	{"Speed", units.Style.Speed, always(tenths), 2000, []units.Face{units.Words}},
	{"Time", units.Style.Time, constant(0.01), 90000, both},
	{"TimeFixed", units.Style.TimeFixed, constant(0.01), 90000, both},
	{"Blur", units.Style.Blur, always(tenths), 600, both},
	{"Millimetres", units.Style.Millimetres, constant(0.0001), 2, both},
	{"Disc", units.Style.Disc, constant(0.000001), 0.001, both},
	{"Share", func(s units.Style, v float64) string { return s.Share(v, 0) }, constant(0.01), 1, both},
}

// size is how much of the parsed unit one of the number's own is.
func (n number) size() float64 {
	if n.name == "Blur" {
		return 1.0 / 60
	}
	return 1
}

func anyStyle(t *rapid.T, n number) units.Style {
	return units.Style{
		System: rapid.SampledFrom([]units.System{units.Metric, units.Imperial}).Draw(t, "system"),
		Face:   rapid.SampledFrom(n.face).Draw(t, "face"),
	}
}

// anyValue draws a value of any amount up to most, and often one next to where
// the form changes.
func anyValue(t *rapid.T, n number, name string) float64 {
	edges := []float64{0.25 * in, 0.01, in, ft, 1, 10 * ft, 10, 100, 100 * ft, 0.1, 12 * in * 3, 60}
	v := 0.0
	switch rapid.IntRange(0, 2).Draw(t, name+" is") {
	case 0:
		v = math.Exp(rapid.Float64Range(math.Log(1e-6), math.Log(n.most)).Draw(t, name))
	case 1:
		v = rapid.Float64Range(0, n.most).Draw(t, name)
	case 2:
		v = rapid.SampledFrom(edges).Draw(t, name+" near") * (1 + rapid.Float64Range(-0.01, 0.01).Draw(t, name+" by"))
	}
	v = min(v, n.most)
	if n.name != "Share" && rapid.Bool().Draw(t, name+" below zero") {
		return -v
	}
	return v
}

// What is written, the language reads to a value within half a step.
func TestWhatIsWrittenIsRead(t *testing.T) {
	for _, n := range numbers {
		t.Run(n.name, rapid.MakeCheck(func(t *rapid.T) {
			s, v := anyStyle(t, n), anyValue(t, n, "value")
			text := n.write(s, v)
			got := read(t, text) / n.size()
			// At a band's end the rounded value decides: either step may hold.
			step := max(n.step(s, v), n.step(s, got))
			if d := math.Abs(got - v); d > step/2*(1+1e-6) {
				t.Fatalf("%s(%v) = %q, read as %v: off by %v, and half a step is %v", n.name, v, text, got, d, step/2)
			}
		}))
	}
}

// Longer never reads shorter.
func TestLongerNeverReadsShorter(t *testing.T) {
	for _, n := range numbers {
		t.Run(n.name, rapid.MakeCheck(func(t *rapid.T) {
			s, a, b := anyStyle(t, n), anyValue(t, n, "a"), anyValue(t, n, "b")
			if rapid.Bool().Draw(t, "close together") {
				b = a + (b-a)*1e-4
			}
			a, b = min(a, b), max(a, b)
			short, long := n.write(s, a), n.write(s, b)
			if read(t, short) > read(t, long)+1e-12 {
				t.Fatalf("%s: %v reads %q, and %v reads %q", n.name, a, short, b, long)
			}
		}))
	}
}

// ugly is what no number may look like: a negative zero, a hundred centimetres,
// ten millimetres, twelve inches, zeros behind the point.
var ugly = regexp.MustCompile(`[-−]0( |[°%′″'"]|$)|(^|[^0-9.])100 cm|(^|[^0-9.])10 mm|(^|[^0-9.])12("|″| in)|\.[0-9]*0( |[°%]|$)|\.( |$)`)

func TestNothingUgly(t *testing.T) {
	for _, text := range []string{"-0 s", "−0°", "100 cm", "10.0 s", `5'12"`, "12″", "12 in", "1.50 m", "-100 cm"} {
		if !ugly.MatchString(text) {
			t.Fatalf("the test does not know that %q is ugly", text)
		}
	}
	for _, n := range numbers {
		if n.name == "TimeFixed" || n.name == "AngleFixed" || n.name == "Millimetres" { // columns keep their zeros; a lens of 10 mm
			continue
		}
		t.Run(n.name, rapid.MakeCheck(func(t *rapid.T) {
			s, v := anyStyle(t, n), anyValue(t, n, "value")
			if text := n.write(s, v); ugly.MatchString(text) {
				t.Fatalf("%s(%v) in %+v = %q", n.name, v, s, text)
			}
		}))
	}
}

// A chance never reads as more than it is by a point, nor as enough when it is
// not, and a higher one never reads lower.
func TestChances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := rapid.Float64Range(0, 1).Draw(t, "p"), rapid.Float64Range(0, 1).Draw(t, "q")
		wanted := rapid.SampledFrom([]float64{0, 0.5, 0.9, 0.904, 0.95, 0.99}).Draw(t, "wanted")
		if rapid.Bool().Draw(t, "near what is wanted") {
			p = min(max(wanted+(p-0.5)/50, 0), 1)
		}
		text := words.Chance(p, wanted)
		number, open := strings.CutPrefix(text, "under ")
		shown := read(t, strings.TrimPrefix(number, "over "))
		switch {
		case open && p >= shown:
			t.Fatalf("%v reads %q", p, text)
		case !open && p < wanted && shown >= wanted:
			t.Fatalf("%v reads %q, as if it were the %v that is wanted", p, text, wanted)
		case math.Abs(shown-p) > 0.0051 && text == number && !strings.HasPrefix(text, "over "):
			t.Fatalf("%v reads %q", p, text)
		case p <= q && rank(t, words.Chance(p, 0)) > rank(t, words.Chance(q, 0)):
			t.Fatalf("%v reads %q, and %v reads %q", p, words.Chance(p, 0), q, words.Chance(q, 0))
		}
		want := strings.NewReplacer("over ", ">", "under ", "<").Replace(text)
		if got := table.Chance(p, wanted); got != want {
			t.Fatalf("a table has %q for %q", got, text)
		}
	})
}

// rank orders chances as they read.
func rank(t rapid.TB, text string) float64 {
	switch {
	case strings.HasPrefix(text, "over "):
		return 1
	case strings.HasPrefix(text, "under "):
		return 0
	}
	return read(t, text)
}

// rounding is how far from itself a stop between two marks may be written.
func rounding(n float64) float64 {
	if n < 9.95 {
		return 0.0501
	}
	return 0.501
}

// A stop reads as the mark within 3 % of it, else as itself or as the third-stop
// on the side that is asked for; a smaller opening never reads as a larger one.
func TestStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := math.Exp(rapid.Float64Range(math.Log(0.7), math.Log(128)).Draw(t, "stop"))
		m := n * (1 + rapid.Float64Range(0, 0.2).Draw(t, "more"))
		r := rapid.SampledFrom([]units.Round{units.Near, units.Open, units.Closed, units.Exact}).Draw(t, "round")
		text := words.Stop(n, rapid.Bool().Draw(t, "T"), r)
		got := read(t, text)
		if other := read(t, words.Stop(min(m, 128), false, r)); other < got {
			t.Fatalf("%v reads %v, and %v reads %v", n, got, m, other)
		}
		exact := optics.ExactStop(got)
		off := exact / n
		named := n >= min(got, exact)*0.995 && n <= max(got, exact)*1.005 // 1.23 is 1.2, which stands for 1.26
		switch {
		case r == units.Near && math.Abs(n/got-1) > 0.0301 && !named && math.Abs(got-n) > rounding(n):
			t.Fatalf("%v reads %q", n, text)
		case r == units.Exact && math.Abs(got-n) > 0.00501:
			t.Fatalf("%v reads %q exactly", n, text)
		case r == units.Open && (got/n > 1.032 && off > 1.032 || off < 0.88):
			t.Fatalf("%v reads %q, opened", n, text)
		case r == units.Closed && (got/n < 0.968 && off < 0.968 || off > 1.13):
			t.Fatalf("%v reads %q, closed", n, text)
		}
	})
}

// Both sides of a miss have one unit, and are off by half a step of it at most.
func TestMisses(t *testing.T) {
	sides := regexp.MustCompile(`^-([0-9.]+)/\+([0-9.]+) (mm|cm|m|in|ft)$`)
	size := map[string]float64{"mm": 0.001, "cm": 0.01, "m": 1, "in": in, "ft": ft}
	rapid.Check(t, func(t *rapid.T) {
		near := math.Exp(rapid.Float64Range(math.Log(1e-4), math.Log(50)).Draw(t, "near"))
		far := math.Exp(rapid.Float64Range(math.Log(1e-4), math.Log(50)).Draw(t, "far"))
		s := units.Style{System: rapid.SampledFrom([]units.System{units.Metric, units.Imperial}).Draw(t, "system")}
		text := s.Miss(near, far)
		m := sides.FindStringSubmatch(text)
		if m == nil {
			t.Fatalf("Miss(%v, %v) = %q", near, far, text)
		}
		for i, want := range []float64{near, far} {
			v, err := strconv.ParseFloat(m[i+1], 64)
			_, frac, _ := strings.Cut(m[i+1], ".")
			half := math.Pow10(-len(frac)) / 2 * size[m[3]]
			if err != nil || math.Abs(v*size[m[3]]-want) > half*(1+1e-6) {
				t.Fatalf("Miss(%v, %v) = %q: side %d is off", near, far, text, i)
			}
		}
	})
}

func ExampleStyle() {
	w, t := units.Style{}, units.Style{System: units.Imperial, Face: units.Table}
	fmt.Println(w.Tape(1.683), w.Gap(0.022), w.Angle(4.72), w.Chance(0.896, 0.9))
	fmt.Println(t.Tape(1.683), t.Gap(0.022), t.Angle(4.72), t.Chance(0.896, 0.9))
	// Output:
	// 1.68 m 2.2 cm 4.7 deg under 90 %
	// 5′6¼″ 3/4 in 4.7° <90 %
}
