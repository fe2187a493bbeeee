// Published figures against the landing model, the viewer's eye and the pace
// of speech. testdata/published-motion.tsv at the top says where each is from.

package hand_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"

	"pullscore/interp/hand"
	"pullscore/interp/speech"
	"pullscore/interp/viewer"
)

// A figure is a row of the table.
type figure struct {
	id     string
	in     map[string]float64 // its inputs, those that are numbers
	lo, hi float64            // what was published: one value, or a range
	within float64            // half of the last digit printed
}

// figures reads the table. Rows whose value is no number have lo NaN.
func figures(t *testing.T) []figure {
	t.Helper()
	data, err := os.ReadFile("../../testdata/published-motion.tsv")
	if err != nil {
		t.Fatal(err)
	}
	var all []figure
	lines := strings.Split(strings.TrimSpace(string(data)), "\n")
	for _, line := range lines[1:] {
		c := strings.Split(line, "\t")
		f := figure{id: c[0], in: map[string]float64{}}
		for pair := range strings.SplitSeq(c[2], ";") {
			name, value, _ := strings.Cut(strings.TrimSpace(pair), "=")
			value, _, _ = strings.Cut(value, " ")
			if v, err := strconv.ParseFloat(strings.TrimSuffix(value, "%"), 64); err == nil {
				f.in[name] = v
			}
		}
		lo, hi, isRange := strings.Cut(c[3], "..")
		if !isRange {
			hi = lo
		}
		f.lo, f.hi = number(lo), number(hi)
		f.within = number(c[5]) / 2
		all = append(all, f)
	}
	return all
}

func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// tested says what the program has for a row.
var tested = map[string]func(figure) float64{
	"ISO-4133": func(figure) float64 { return hand.EffectiveWidth },
	"ISO-MISS": func(figure) float64 { return 100 * missed(hand.EffectiveWidth, 1) },

	"MJ-V":  func(figure) float64 { return hand.MinJerkSpeed(0.5) },
	"MJ-TA": func(figure) float64 { return argMax(hand.MinJerkAcceleration) },
	"MJ-J":  func(figure) float64 { return hand.MinJerkAcceleration(1e-6) / 1e-6 },
	"MJ-T05": func(figure) float64 {
		return hand.MinJerkTime(0.05)
	},
	"MJ-NML": func(f figure) float64 {
		return 1 - hand.MinJerkTime(f.in["WA"]/2/f.in["D"]) - hand.MinJerkTime(f.in["WB"]/2/f.in["D"])
	},
	"MJ-A90": func(f figure) float64 { return hand.PeakAcceleration * f.in["D_deg"] / (f.in["T_s"] * f.in["T_s"]) },

	"PM-S0": func(figure) float64 { return hand.RimDegrees(0.0005, 0.080) },
	"PM-P2": landing,
	"PM-P3": landing,
	"PM-P5": landing,
	"PM-PX": landing,
	"SW-2": func(figure) float64 {
		h := hand.Hand{Throughput: 1, RimSpread: 0.006, Grip: 1, Limit: 1}
		rim := 360 / math.Pi * 0.001 // a millimetre of it is a degree
		return h.Land(hand.Pull{Lo: -1, Hi: 1, Rim: rim, SigmaX: 6}).Spread
	},

	"SP-100W": func(f figure) float64 {
		return speech.Duration(strings.Repeat("go little ", int(f.in["words"])/2), f.in["wpm"])
	},
	"SP-CONV": func(figure) float64 { return speech.DefaultPace },

	"BL-d3":    disc,
	"BL-d6":    disc,
	"BL-LKd":   func(figure) float64 { return viewer.Sharp },
	"VA-1":     func(figure) float64 { return viewer.Sharp / 2 },
	"EYE-LAT":  func(figure) float64 { return 1000 * viewer.Latency },
	"EYE-D10":  func(f figure) float64 { return 1000 * viewer.SaccadeTime(f.in["amplitude_deg"]) },
	"EYE-D20":  func(f figure) float64 { return 1000 * viewer.SaccadeTime(f.in["amplitude_deg"]) },
	"EYE-RACK": func(figure) float64 { return viewer.EyeNeeds(10) },

	"F54-FITa": func(figure) float64 { a, _, _ := fit(ownForm, printed); return a },
	"F54-FITb": func(figure) float64 { _, b, _ := fit(ownForm, printed); return b },
	"F54-SHa":  func(figure) float64 { a, _, _ := fit(hand.Difficulty, printed); return a },
	"F54-SHb":  func(figure) float64 { _, b, _ := fit(hand.Difficulty, printed); return b },
	"F54-SHEb": func(figure) float64 { _, b, _ := fit(hand.Difficulty, effective); return b },
	"F54-SHEr": func(figure) float64 { _, _, r := fit(hand.Difficulty, effective); return r },
	"F54-FEb":  func(figure) float64 { _, b, _ := fit(ownForm, effective); return b },
	"F54-mIP": func(figure) float64 {
		sum := 0.0
		for _, r := range fitts {
			sum += ownForm(r.travel, r.width) / r.ms * 1000
		}
		return sum / float64(len(fitts))
	},
}

// perRow does the same for rows that share a beginning.
var perRow = map[string]func(figure) float64{
	"F54-IP": func(f figure) float64 {
		return ownForm(f.in["A_in"], f.in["W_in"]) / f.in["MT_ms"] * 1000
	},
	"F54-WE": func(f figure) float64 { return effectiveWidth(f.in["W_in"], f.in["miss_pct"]/100) },
}

// bounds are rows that a default of ours lies above (-1) or below (+1).
var bounds = map[string]struct {
	ours func() float64
	side int
}{
	"ROM-FUN":  {grip, -1}, // what daily life asks of the forearm
	"ROM-SAR":  {grip, -1},
	"ROM-BOO":  {grip, 1}, // all that it can turn
	"ROM-WAL":  {grip, 1},
	"ROM-MAC":  {grip, 1},
	"ROM-BAR":  {grip, 1},
	"ROM-NASA": {grip, 1},
	"RT-VIS":   {func() float64 { return 1000 * hand.Reaction }, 1}, // to light: slower than to sound
	"SP-ALOUD": {func() float64 { return speech.DefaultPace }, 1},   // reading is faster than talk
	"TP-FING":  {func() float64 { return hand.Default().Throughput }, -1},
	"TP-PINCH": {func() float64 { return hand.Default().Throughput }, 1},
}

func grip() float64 { return hand.Default().Grip }

const (
	otherForm = "a form of the speed and accuracy law that the model does not use"
	takeLogs  = "about logs of takes: tested in package takes"
	unused    = "the program has no such quantity"
	inWords   = "no number"
	anInput   = "an input of a row that is tested"
)

// untested are rows that nothing here computes, by name, or by how they
// begin where a star follows.
var untested = map[string]string{
	"F54-mMT": "the table's own mean, see TestFittsTable", "F54-sMT": "the table's own deviation, see TestFittsTable",
	"MEY-*": otherForm, "SCH-*": otherForm,
	"MJ-KNOB": inWords, "KNOB-OVER": inWords,
	"RT-HICK": unused, "RT-H2": unused, "TIM-*": unused,
	"SP-GAPl": "how far languages differ, not their mean", "SP-PREP": unused, "SP-SPA": unused, "SP-PAGE": unused,
	"SB-*": unused, "PAN-7": unused, "ASL": unused, "PM-PJ": "the model has no spread of the onset",
	"BL-3": anInput, "BL-6": anInput, "BL-LK": anInput, "BL-TR": unused, "BL-J*": unused, "BL-WC*": unused,
	"BL-COC": "the sharpness criterion is computed in optics",
	"SW-AP":  "from memory; a default of interp", "SW-PEN": unused,
	"ER-*": takeLogs, "WI-*": takeLogs, "WN-*": takeLogs, "SD-CIu": "intervals of a spread are those of the fit, not by chi-squared", "LOG36": takeLogs, "FIT-*": takeLogs,
}

func TestPublished(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range figures(t) {
		seen[f.id] = true
		compute := tested[f.id]
		if compute == nil && len(f.id) > 6 {
			compute = perRow[f.id[:6]]
		}
		bound, bounded := bounds[f.id]
		switch {
		case compute != nil:
			slack := f.within
			if math.IsNaN(slack) {
				slack = 0
			}
			if got := compute(f); !(got >= f.lo-slack-1e-12 && got <= f.hi+slack+1e-12) {
				t.Errorf("%s: %v, published %v to %v, give or take %v", f.id, got, f.lo, f.hi, slack)
			}
		case bounded:
			if got := bound.ours(); !(float64(bound.side)*(f.lo-got) > 0) {
				t.Errorf("%s: our %v is on the wrong side of %v", f.id, got, f.lo)
			}
		case why(f.id) == "":
			t.Errorf("%s: neither tested nor listed as untested with a reason", f.id)
		}
	}
	for id := range tested {
		if !seen[id] {
			t.Errorf("%s is not in the table", id)
		}
	}
	for id := range bounds {
		if !seen[id] {
			t.Errorf("%s is not in the table", id)
		}
	}
}

// why returns the reason why a row is not tested, or "".
func why(id string) string {
	for name, reason := range untested {
		family, isFamily := strings.CutSuffix(name, "*")
		if id == name || isFamily && strings.HasPrefix(id, family) {
			return reason
		}
	}
	return ""
}

// landing is the chance of the model's own worked rows. Their spread at leisure
// is given in degrees, so the rim is that on which half a millimetre is as much;
// what a row leaves out is as in the first of them.
func landing(f figure) float64 {
	h := hand.Default()
	if tp, ok := f.in["TP"]; ok {
		h.Throughput = tp
	}
	s0 := 0.7
	if v, ok := f.in["s0"]; ok {
		s0 = v
	}
	return h.Land(hand.Pull{
		Travel: f.in["D"], Time: f.in["T"], Reacts: true,
		Lo: -f.in["W"] / 2, Hi: f.in["W"] / 2,
		Rim: 360 * h.RimSpread / (math.Pi * s0), SigmaX: f.in["sx"],
	}).Chance
}

func disc(f figure) float64 { return viewer.DefocusDisc(f.in["pupil_mm"]/1000, f.in["D"]) }

// missed returns the share of landings of that spread that miss a target of
// that width, by the model: of a pull that has no travel and no spread but that.
func missed(width, spread float64) float64 {
	h := hand.Hand{Throughput: 1, Grip: 1, Limit: 1}
	return 1 - h.Land(hand.Pull{Lo: -width / 2, Hi: width / 2, SigmaX: spread}).Chance
}

// effectiveWidth is the width that landings with that share of misses show: the
// spread at which the model misses as many, times hand.EffectiveWidth.
func effectiveWidth(width, share float64) float64 {
	lo, hi := 0.0, 10*width
	for range 100 {
		if mid := (lo + hi) / 2; missed(width, mid) < share {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hand.EffectiveWidth * hi
}

// ownForm is Fitts's own index log2(2A/W), which is Shannon's for a travel of
// 2A - W.
func ownForm(travel, width float64) float64 { return hand.Difficulty(2*travel-width, width) }

// fitts is the table of Fitts 1954, J Exp Psychol 47(6), stylus of one ounce:
// inches, milliseconds, percent missed. What the figures do not spell out is from
// memory; the mean, the deviation and the fits published for it check that.
var fitts = []struct{ travel, width, ms, missed float64 }{
	{2, 2, 180, 0.00}, {2, 1, 212, 0.44}, {4, 2, 203, 0.08}, {2, 0.5, 281, 1.99},
	{4, 1, 260, 1.09}, {8, 2, 279, 0.87}, {2, 0.25, 392, 3.35}, {4, 0.5, 372, 2.72},
	{8, 1, 357, 2.38}, {16, 2, 388, 0.65}, {4, 0.25, 484, 3.41}, {8, 0.5, 469, 2.05},
	{16, 1, 481, 1.30}, {8, 0.25, 580, 2.78}, {16, 0.5, 595, 2.73}, {16, 0.25, 731, 3.65},
}

// The table that the fits below rest on has the published mean and deviation.
func TestFittsTable(t *testing.T) {
	var times []float64
	for _, r := range fitts {
		times = append(times, r.ms)
	}
	mean, deviation := stat.MeanStdDev(times, nil)
	for _, f := range figures(t) {
		if f.id == "F54-mMT" && math.Abs(mean-f.lo) > f.within || f.id == "F54-sMT" && math.Abs(deviation-f.lo) > f.within {
			t.Errorf("%s: the table has mean %v and deviation %v, published %v", f.id, mean, deviation, f.lo)
		}
	}
}

func printed(width, _ float64) float64 { return width }

// effective is the width by misses; none at all count as the 0.0049 % that would
// round to none (MacKenzie 1992).
func effective(width, percent float64) float64 {
	return effectiveWidth(width, max(percent, 0.0049)/100)
}

// fit regresses movement times, in ms, on a difficulty.
func fit(difficulty, width func(a, b float64) float64) (intercept, slope, r float64) {
	var x, y []float64
	for _, row := range fitts {
		x = append(x, difficulty(row.travel, width(row.width, row.missed)))
		y = append(y, row.ms)
	}
	intercept, slope = stat.LinearRegression(x, y, nil, false)
	return intercept, slope, stat.Correlation(x, y, nil)
}

// argMax returns where a function that rises and then falls in 0 to 0.5 is
// greatest.
func argMax(f func(float64) float64) float64 {
	lo, hi := 0.0, 0.5
	for range 100 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if f(a) < f(b) {
			lo = a
		} else {
			hi = b
		}
	}
	return lo
}
