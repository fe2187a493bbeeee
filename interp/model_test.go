// The figures of moments against an independent model: testdata/model-moments.tsv
// at the top holds what a program of its own, in another language, makes of the same
// formulas, and what it simulates. It shares no code with this one. Where it samples a
// mean and this program integrates it, as in the lag of a follow, a row has room for that.

package interp_test

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

// A modelRow is a row of the table: inputs by name, as text and as numbers.
type modelRow struct {
	id, kind string
	text     map[string]string
	in       map[string]float64
	want     float64
	within   float64
}

func modelRows(t *testing.T) (rows []modelRow) {
	t.Helper()
	data, err := os.ReadFile("../testdata/model-moments.tsv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		c := strings.Split(line, "\t")
		r := modelRow{id: c[0], kind: c[1], text: map[string]string{}, in: map[string]float64{}}
		for pair := range strings.SplitSeq(c[2], ";") {
			name, value, _ := strings.Cut(pair, "=")
			r.text[name] = value
			if v, err := strconv.ParseFloat(value, 64); err == nil {
				r.in[name] = v
			}
		}
		if r.want, err = strconv.ParseFloat(c[3], 64); err == nil {
			r.within, err = strconv.ParseFloat(c[5], 64)
		}
		if err != nil {
			t.Fatalf("%s: %v", r.id, err)
		}
		rows = append(rows, r)
	}
	return rows
}

// modelOf says what the program has for a kind of row.
var modelOf = map[string]func(*testing.T, modelRow) float64{
	"diffraction": func(_ *testing.T, r modelRow) float64 { return 1e6 * far(r).Diffraction(math.Inf(1)) },
	"criterion":   func(_ *testing.T, r modelRow) float64 { return 1e6 * far(r).Judged(math.Inf(1)).Criterion },
	"seen": func(_ *testing.T, r modelRow) float64 {
		return viewer.SeenFrom(optics.ArcminAtViewer(far(r).Diffraction(math.Inf(1)), r.in["width_mm"]/1000, 12, 18))
	},
	"near-loss": func(_ *testing.T, r modelRow) float64 {
		return optics.Setting{Focal: r.in["focal_mm"] / 1000, Number: 2, Criterion: 1e-5}.NearLoss(r.in["x_m"])
	},
	"share": func(_ *testing.T, r modelRow) float64 {
		return hand.Within(r.in["lo_mm"], r.in["hi_mm"], r.in["sway_mm"], 0)
	},
	"stays": func(_ *testing.T, r modelRow) float64 {
		return hand.Stays(r.in["lo_mm"]/1000, r.in["hi_mm"]/1000, r.in["sway_mm"]/1000, r.in["time_s"])
	},
	"sway-left": func(_ *testing.T, r modelRow) float64 { return hand.SwayLeft(r.in["sway_mm"] / 1000) },
	"window": func(_ *testing.T, r modelRow) float64 {
		return hand.Within(r.in["lo"], r.in["hi"], r.in["spread"], 0)
	},
	"stop": stopped,
	"lag":  lagging,
	"land": func(_ *testing.T, r modelRow) float64 {
		h := hand.Default()
		h.RimSpread = r.in["rim_mm"] / 1000
		return h.Land(hand.Pull{Travel: r.in["travel"], Time: r.in["time_s"], Lo: r.in["lo"], Hi: r.in["hi"], Rim: r.in["diameter_mm"] / 1000}).Chance
	},
	"follow": followed,
	"rack":   racked,
	"miss":   missed,
}

// far is a lens that is judged at infinity, on a screen 12 m wide from 18 m.
func far(r modelRow) optics.Setting {
	w := r.in["width_mm"] / 1000
	return optics.Setting{Focal: 0.05, Number: r.in["n"], Criterion: max(optics.Criterion(w, 12, 18, viewer.Sharp), w/3840)}
}

// stopped asks for the motor spread of a row by the time that has it.
func stopped(_ *testing.T, r modelRow) float64 {
	h := hand.Default()
	h.RimSpread = r.in["rim"] * math.Pi * 0.08 / 360
	travel := r.in["travel"]
	p := hand.Pull{
		Travel: travel, Time: hand.Difficulty(travel, hand.EffectiveWidth*r.in["motor"]) / h.Throughput, Rim: 0.08,
		Lo: r.in["lo"], Hi: r.in["hi"], SigmaX: r.in["sigma_x"],
		Stopped: r.in["stop"] <= r.in["hi"], ToStop: r.in["stop"],
	}
	return h.Land(p).Chance
}

// lagging follows something of constant acceleration, whose lag is a t^2/2.
func lagging(_ *testing.T, r modelRow) float64 {
	a := r.in["acceleration"]
	list := hand.Default().Follow(hand.Course{
		From: 1, To: 2, Angle: func(t float64) float64 { return a * t * t / 2 },
		PerMetre: func(float64) float64 { return 1 }, Distance: func(float64) float64 { return 1 },
		ToMark: func(float64) float64 { return 0 }, Room: func(float64) (float64, float64) { return -1, 1 },
	})
	return list[10].Lag
}

// kitOf has the lenses of the model: focal length, throw, closest, diameter.
func kitOf(r modelRow) string {
	lens := map[string]string{
		"L18":     "  focal 18 mm\n  closest 30 cm\n  ring 90 deg, diameter 66 mm\n",
		"L35":     "  focal 35 mm\n  closest 35 cm\n  ring 300 deg, diameter 110 mm\n",
		"L50":     "  focal 50 mm\n  closest 50 cm\n  ring 280 deg, diameter 110 mm\n",
		"L75":     "  focal 75 mm\n  closest 75 cm\n  ring 310 deg, diameter 110 mm\n",
		"STILL50": "  focal 50 mm\n  closest 45 cm\n  ring 90 deg, diameter 66 mm\n",
		"STILL85": "  focal 85 mm\n  closest 80 cm\n  ring 90 deg, diameter 76 mm\n",
	}[r.text["lens"]]
	support := r.text["support"]
	if support == "" {
		support = "tripod"
	}
	return fmt.Sprintf("plan \"model\"\nrate 24\nwatched on 12 m screen from 18 m\ntape from lens\n"+
		"camera A\n  sensor %g x 10 mm\n  records 3840 px\n  on %s\nlens \"L\"\n%s  stops f/1.4 to f/22\nwith camera A, lens \"L\", stop f/%g\n",
		r.in["width_mm"], support, lens, r.in["n"])
}

func shotOf(t *testing.T, src string) (*plan.Shot, []lang.Diagnostic) {
	t.Helper()
	res := interp.Interpret("model.pull", []byte(src), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%s: %s\n%s", d.Code, d.Message, src)
		}
	}
	return res.Plan.Shots[0], res.Findings
}

func followed(t *testing.T, r modelRow) float64 {
	in := r.in
	sh, _ := shotOf(t, kitOf(r)+fmt.Sprintf("subject ANN at %g m\nshot 1\n  start on ANN\n  lasts %g s\n"+
		"  follow ANN, on %g s\n  ANN moves to %g m over %g s on %g s, even\n", in["d0"], in["end"], in["t0"], in["d1"], in["t1"]-in["t0"], in["t0"]))
	p := sh.Pulls[0]
	return float64(map[string]plan.Number{
		"share": p.SharpShare, "worst": p.WorstShare, "at": p.WorstAt, "end": p.Chance, "lag": p.LagDeg, "ceiling": p.Ceiling,
	}[r.text["what"]])
}

// racked racks onto somebody who passes the place at that speed, or who stands there.
func racked(t *testing.T, r modelRow) float64 {
	in := r.in
	src := kitOf(r) + fmt.Sprintf("subject BOX at %g m\n", in["x0"])
	switch {
	case math.IsInf(in["x1"], 1):
		src += fmt.Sprintf("shot 1\n  start on BOX\n  rack to inf, at 1 s, over %g s\n  hold 1 s\n", in["time_s"])
	case in["speed"] == 0:
		src += fmt.Sprintf("subject ANN at %g m\nshot 1\n  start on BOX\n  ANN: \"Here.\", from 0 s to 1 s\n  rack to ANN, at 1 s, over %g s\n  hold 1 s\n", in["x1"], in["time_s"])
	default: // comes from in["to_mark"] behind, and goes on as far again and more
		land, v := 1+in["time_s"], in["speed"]
		from, to := in["x1"]+in["to_mark"], in["x1"]-1.2*in["to_mark"]
		src += fmt.Sprintf("subject ANN at %g m\nshot 1\n  start on BOX\n  ANN moves to %.9f m over %.9f s on %.9f s, even\n  rack to ANN, at 1 s, over %g s\n  hold 1 s\n",
			from, to, (from-to)/v, land-in["to_mark"]/v, in["time_s"])
	}
	sh, _ := shotOf(t, src)
	if r.text["what"] == "ceiling" {
		return float64(sh.Pulls[0].Ceiling)
	}
	return float64(sh.Pulls[0].Chance)
}

// missed asks how far somebody may miss a mark at 2 m, 4 cm deep and in the middle of
// the picture, with a 75 mm at f/2.8.
func missed(t *testing.T, r modelRow) float64 {
	r.text["lens"], r.in["width_mm"], r.in["n"] = "L75", 24.89, 2.8
	sh, _ := shotOf(t, kitOf(r)+"subject ANN at 2 m, 0 cm left, deep 4 cm\nshot 1\n  start on ANN\n  hold 1 s\n")
	m := sh.Start.Miss
	if m == nil {
		t.Fatal("the start has no miss")
	}
	return float64(map[string]plan.Number{
		"soft-near": 1000 * m.SoftForward, "soft-far": 1000 * m.SoftBack, "seen-near": 1000 * m.SeenForward, "seen-far": 1000 * m.SeenBack,
		"aside-near": 1000 * m.Left, "aside-far": 1000 * m.Right, "ring-near": m.RingNear, "ring-far": m.RingFar,
	}[r.text["what"]])
}

func TestModelOfMoments(t *testing.T) {
	seen := 0
	for _, r := range modelRows(t) {
		of := modelOf[r.kind]
		if of == nil {
			t.Errorf("%s: nothing computes a %s", r.id, r.kind)
			continue
		}
		seen++
		if got := of(t, r); !(math.Abs(got-r.want) <= r.within+1e-12) {
			t.Errorf("%s: %.5g, the model has %.5g (within %g)", r.id, got, r.want, r.within)
		}
	}
	if seen < 80 {
		t.Errorf("only %d rows", seen)
	}
}

// everyday are shots of every day, with what has to be told of the moments in them
// and what must not. The verdicts are common practice, no source.
var everyday = []struct {
	name, lens, support string
	width, n            float64
	body                string
	want                []string
}{
	{"two-hander", "L50", "tripod", 24.89, 4, "subject ANN at 2.4 m\nsubject BEN at 3 m\nshot 1\n  start on ANN\n  ANN: \"Now?\", from 0 s to 12 s\n  rack to BEN, on end of ANN, over 1.2 s\n  BEN: \"Now.\", from 13.4 s to 14.2 s\n", nil},
	{"single, seated", "L75", "tripod", 24.89, 2.8, "subject ANN at 2 m\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 15 s\n", nil},
	{"on the shoulder", "L35", "shoulder", 24.89, 4, "subject ANN at 2 m\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 20 s\n", nil},
	{"in the hand", "L50", "hand", 24.89, 4, "subject ANN at 1.8 m\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 10 s\n", nil},
	{"a walk that is followed", "L35", "tripod", 24.89, 4, "subject ANN at 4 m\nshot 1\n  start on ANN\n  lasts 4.3 s\n  follow ANN, on 0.5 s\n  ANN moves to 2.5 m over 3 s on 0.5 s, even\n", nil},
	{"a rack", "L50", "tripod", 24.89, 2.8, "subject ANN at 2.2 m\nsubject BEN at 3.4 m\nshot 1\n  start on ANN\n  ANN: \"Now?\", from 0 s to 1 s\n  rack to BEN, at 1 s, over 1.2 s\n  BEN: \"Now.\", from 2.6 s to 4 s\n", nil},
	{"an interview on a small sensor", "L18", "tripod", 13.2, 5.6, "subject ANN at 1.6 m\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 30 s\n", nil},
	{"a wide day exterior", "L18", "tripod", 13.2, 16, "subject ANN at 3 m\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 10 s\n", []string{"diffraction"}},
	{"a fast walk on a longer lens", "L75", "tripod", 24.89, 2.8, "subject ANN at 3.5 m\nshot 1\n  start on ANN\n  lasts 3.8 s\n  follow ANN, on 0.5 s\n  ANN moves to 1.8 m over 2.5 s on 0.5 s, even\n", []string{"hard-to-follow"}},
	{"a close-up in the hand", "STILL85", "hand", 36, 1.4, "subject ANN at 80.5 cm\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 6 s\n", []string{"drifts-soft"}},
	{"a walk into a close-up", "STILL85", "tripod", 36, 1.4, "subject ANN at 3 m\nshot 1\n  start on ANN\n  lasts 3.5 s\n  follow ANN, on 0.5 s\n  ANN moves to 1.2 m over 2.2 s on 0.5 s, even\n", []string{"falls-behind hard-to-follow never-sure"}},
	{"a rack onto a walk", "STILL85", "tripod", 36, 1.4, "subject BOX at 3 m\nsubject ANN at 2 m\nshot 1\n  start on BOX\n  ANN moves to 1 m over 1.25 s on 1.7 s, even\n  rack to ANN, at 1 s, over 1.2 s\n  follow ANN\n  lasts 3 s\n", []string{"never-sure", "hard-to-follow falls-behind"}},
	{"one who sways by 10 cm", "STILL50", "tripod", 36, 2, "subject ANN at 1.5 m, sways 10 cm\nshot 1\n  start on ANN\n  ANN: \"So.\", from 0 s to 8 s\n", []string{"drifts-soft"}},
}

// ofMoments are the findings that this is about.
var ofMoments = map[string]bool{
	"drifts-soft": true, "hard-to-follow": true, "goes-soft": true, "never-sure": true, "hard-to-land": true,
	"falls-behind": true, "diffraction": true, "faster-than-a-hand": true, "no-time-to-move": true,
}

func TestEverydayShots(t *testing.T) {
	for _, c := range everyday {
		r := modelRow{text: map[string]string{"lens": c.lens, "support": c.support}, in: map[string]float64{"width_mm": c.width, "n": c.n}}
		sh, found := shotOf(t, kitOf(r)+c.body)
		var got []string
		for _, d := range found {
			if ofMoments[d.Code] {
				got = append(got, d.Code)
			}
		}
		ok := len(got) == len(c.want)
		for i := range got {
			ok = ok && strings.Contains(" "+c.want[min(i, len(c.want)-1)]+" ", " "+got[i]+" ")
		}
		if !ok {
			t.Errorf("%s: told %v, want %v", c.name, got, c.want)
		}
		for _, r := range sh.Rests {
			t.Logf("%s: rest %v %.1f to %.1f s: %.3f, stays %.3f, zone %v", c.name, r.Subject, r.Start, r.End, r.Share, r.Stays, r.Zone)
		}
		for _, p := range sh.Pulls {
			t.Logf("%s: %s %.3f ceiling %.3f, share %.3f, worst %.3f at %.2f", c.name, p.Kind, p.Chance, p.Ceiling, p.SharpShare, p.WorstShare, p.WorstAt)
		}
	}
}
