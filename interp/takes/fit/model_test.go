// The fit against an independent model of it. testdata/model-fit.tsv at the top
// has what that model finds, testdata/model-logs.tsv the takes.

package fit

import (
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// A figure is a row of the table.
type figure struct {
	id, log, what, formula string
	expected, within       float64
}

// rows returns the fields of a table in testdata, without its head.
func rows(t *testing.T, name string) (list [][]string) {
	t.Helper()
	data, err := os.ReadFile("../../../testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(data)) {
		list = append(list, strings.Split(strings.TrimSuffix(line, "\n"), "\t"))
	}
	return list[1:]
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// modelLogs returns the takes of every log of the model.
func modelLogs(t *testing.T) map[string][]Landing {
	t.Helper()
	logs := map[string][]Landing{}
	for _, row := range rows(t, "model-logs.tsv") {
		for i, take := range strings.Fields(row[1]) {
			take, held := strings.CutSuffix(take, "*")
			travel, rest, _ := strings.Cut(take, ":")
			past, time, _ := strings.Cut(rest, "@")
			logs[row[0]] = append(logs[row[0]], Landing{
				Travel: number(t, travel), Error: number(t, past), Moving: number(t, time), AtEnd: held,
				Name: Slip{Line: i + 2, Error: plan.Number(number(t, past))},
			})
		}
	}
	return logs
}

// chance is that of a pull of 60 deg in 1.04 s into 2.2 deg either way.
func chance(h hand.Hand) float64 {
	return h.Land(hand.Pull{Travel: 60, Time: 1.04, Lo: -2.2, Hi: 2.2}).Chance
}

// found returns what this fit finds for a row.
func found(t *testing.T, f figure, logs map[string][]Landing) float64 {
	t.Helper()
	log := logOf(logs[f.log])
	of := log.Hand
	if strings.HasPrefix(f.formula, "normal") {
		of = log.Likeliest
	}
	switch what, each, many := strings.Cut(f.what, " "); {
	case many:
		return over(t, logs, f.log, each, what == "sd")
	case f.what == "scale":
		return scaleOfNormal()
	case f.what == "tail":
		return tail4(2.1318)
	case f.id == "PUBLISHED":
		h := hand.Default()
		h.RimSpread = 0.716 / hand.RimDegrees(1, ReferenceRim)
		return chance(h)
	case f.what == "worst":
		return worstOfTwo()
	case f.what == "chance":
		fit := of()
		return chance(fit.Hand(hand.Default()))
	default:
		fit := of()
		return parameter(t, &fit, f.what)
	}
}

func parameter(t *testing.T, f *Fit, what string) float64 {
	t.Helper()
	switch what {
	case "bias":
		return f.Bias.Value
	case "throughput":
		return f.Throughput.Value
	case "floor":
		return f.Rim.Value
	case "slips":
		return float64(f.Slipped)
	case "share":
		return f.SlipShare
	}
	t.Fatalf("nothing is called %q", what)
	return 0
}

// over returns the mean of a parameter over the logs of a name, or its standard
// deviation.
func over(t *testing.T, logs map[string][]Landing, name, what string, sd bool) float64 {
	t.Helper()
	sum, squares, n := 0.0, 0.0, 0.0
	for i := 0; ; i++ {
		log, ok := logs[fmt.Sprintf("%s-%02d", name, i)]
		if !ok {
			break
		}
		f := logOf(log).Hand()
		v := parameter(t, &f, what)
		sum, squares, n = sum+v, squares+v*v, n+1
	}
	if sd {
		return math.Sqrt(squares/n - sum*sum/(n*n))
	}
	return sum / n
}

// scaleOfNormal returns the scale of t that normal landings of one degree fit
// best: where the mean of z pull4(z) is 1.
func scaleOfNormal() float64 {
	mean := func(scale float64) (sum float64) {
		const steps = 4000
		for i := range steps {
			x := -8 + 16*(float64(i)+0.5)/steps
			z := x / scale
			sum += 16.0 / steps * math.Exp(-x*x/2) / math.Sqrt(2*math.Pi) * z * pull4(z)
		}
		return sum
	}
	lo, hi := 0.1, 1.0
	for range 60 {
		if mid := (lo + hi) / 2; mean(mid) > 1 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// worstOfTwo returns the least chance after two takes that are nothing unusual:
// each at the mark or two spreads from it.
func worstOfTwo() float64 {
	spread := math.Hypot(hand.MotorSpread(60, 1, 4.1), 0.716)
	worst := 1.0
	for _, a := range []float64{-2, 0, 2} {
		for _, b := range []float64{-2, 0, 2} {
			f := logOf([]Landing{{Travel: 60, Moving: 1, Error: a * spread}, {Travel: 60, Moving: 1, Error: b * spread}}).Hand()
			worst = min(worst, chance(f.Hand(hand.Default())))
		}
	}
	return worst
}

func TestModel(t *testing.T) {
	logs := modelLogs(t)
	list := rows(t, "model-fit.tsv")
	for _, c := range list {
		f := figure{id: c[0], log: c[1], what: c[2], formula: c[6], expected: number(t, c[3]), within: number(t, c[5])}
		if got := found(t, f, logs); !(math.Abs(got-f.expected) <= f.within) {
			t.Errorf("%s: %v, in the table %v, give or take %v", f.id, got, f.expected, f.within)
		}
	}
	if len(list) < 49 {
		t.Errorf("only %d rows are tested", len(list))
	}
}

// The slips are named by their rows, the farthest first; they are every seventh
// take of that log, as it was made.
func TestSlipsAreNamed(t *testing.T) {
	f := logOf(modelLogs(t)["SLIPS60"]).Fit()
	lines := map[int]bool{}
	for i, s := range f.Slips {
		lines[s.Line] = true
		if !(s.Spreads > slipSpreads) || i > 0 && s.Spreads > f.Slips[i-1].Spreads {
			t.Errorf("%+v", f.Slips)
		}
	}
	if got := slices.Sorted(maps.Keys(lines)); !slices.Equal(got, []int{2, 9, 16}) {
		t.Errorf("slips in rows %v", got)
	}
}

// No more than a fifth of the takes are slips, and none of fewer than eight.
func TestSlipsAreFew(t *testing.T) {
	for n, most := range map[int]int{7: 0, 8: 1, 30: 6} {
		var list []Landing
		for i := range n {
			e := 0.3 * float64(i%3-1)
			if i%3 == 0 {
				e = 40 + float64(i)
			}
			list = append(list, Landing{Travel: 60, Moving: 1.2, Error: e, Name: Slip{Line: i}})
		}
		f := logOf(list).Hand()
		if f.Slipped > most || f.Slipped != len(f.Slips) || n == 8 && f.Slipped != 1 {
			t.Errorf("of %d takes %d are slips, named %d", n, f.Slipped, len(f.Slips))
		}
		if want := float64(f.Slipped) / float64(n+20); f.SlipShare != want {
			t.Errorf("of %d takes a share of %v, want %v", n, f.SlipShare, want)
		}
	}
}

// A slip of one day does not make its spread wider, once it is known for a slip.
func TestDaysLeaveSlipsOut(t *testing.T) {
	list := modelLogs(t)["SLIPS60"]
	f := logOf(list).Fit()
	with, without := NewDay(), NewDay()
	for i := range list {
		with.Add(list[i])
		if i != 0 && i != 7 && i != 14 {
			without.Add(list[i])
		}
	}
	a, meanA, _ := with.Deviation(&f)
	b, meanB, _ := without.Deviation(&f)
	if a != b || meanA != meanB {
		t.Errorf("spread %v and mean %v with slips, %v and %v without", a, meanA, b, meanB)
	}
}

// The order of rows changes nothing, and a fit of no takes knows nothing.
func TestOrderDoesNotCount(t *testing.T) {
	for _, name := range []string{"LOG36", "SLIPS60", "STOP60"} {
		list := modelLogs(t)[name]
		there := logOf(list).Fit()
		slices.Reverse(list)
		list = append(list[len(list)/3:], list[:len(list)/3]...)
		back := logOf(list).Fit()
		if fmt.Sprintf("%+v", there) != fmt.Sprintf("%+v", back) {
			t.Errorf("%s:\n%+v\n%+v", name, there, back)
		}
	}
	if f := NewLog().Fit(); f.Hand(hand.Default()) != hand.Default() {
		t.Errorf("no takes: %+v", f)
	}
}
