package takes_test

import (
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/takes/fit"
)

const pier = `plan "Pier"
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 200 deg, diameter 100 mm
subject INES at 1.6 m
subject BOAT at 2.9 m
shot 4A
  with camera A, lens "75", stop f/4
  start on INES
  rack to BOAT, on 2 s, over 1 s, because "she looks up"
  rack to INES, on 5 s, over 0.5 s, because "she turns back"
  follow INES
  hold 2 s
`

func pierPlan(t *testing.T) *plan.Plan {
	t.Helper()
	p := interp.Interpret("scenes/pier.pull", []byte(pier), interp.Options{}).Plan
	if len(p.Shots) != 1 || len(p.Shots[0].Pulls) != 3 {
		t.Fatalf("%+v", p)
	}
	return p
}

// Landings come out at the hand as the plan's own ring law has them: on the
// mark without error, farther along the way past it, whichever way that goes.
func TestLandings(t *testing.T) {
	p := pierPlan(t)
	s := p.Shots[0]
	away, back := s.Pulls[0], s.Pulls[1]
	log := "plan,shot,pull,landed,time_s\n" +
		"Pier,4A,1,2.9 m,0.9\n" + // on the mark
		"pier,4A,1,3.0 m,0.9\n" + // past it, by the file's name
		",4a,2,1.6 m,0.4\n" + // the other way
		"pier.pull,4A,2,1.5 m,0.4\n" + // past it
		fmt.Sprintf("Pier,4A,1,%.3f deg,0.9\n", float64(away.ToDeg)-2) +
		"Pier,4A,2,\"5'6\"\"\",0.4\n"
	r := takes.NewReader(strings.NewReader(log), "log.csv", p)
	want := []struct{ travel, past float64 }{
		{float64(away.HandDeg), 0}, {float64(away.HandDeg), 1}, {float64(back.HandDeg), 0},
		{float64(back.HandDeg), 1}, {float64(away.HandDeg), -2}, {float64(back.HandDeg), -1},
	}
	for i, w := range want {
		take, err := r.Read()
		if err != nil {
			t.Fatalf("row %d: %v", i, err)
		}
		exact := w.past == 0 || w.past == -2
		if math.Abs(take.Travel-w.travel) > 1e-9 || exact && math.Abs(take.Error-w.past) > 1e-3 || !exact && take.Error*w.past <= 0 {
			t.Errorf("row %d: travel %v, error %v, want %v and a sign as of %v", i, take.Travel, take.Error, w.travel, w.past)
		}
		if take.Rim != 0.1 || take.Hit == takes.Unsaid || take.Planned == 0 {
			t.Errorf("row %d lacks what the plan says: %+v", i, take)
		}
	}
	// 3.0 m by the law of a unit-focusing ring: e = f^2/(s - f), angle = throw (1 - e/e_closest).
	r = takes.NewReader(strings.NewReader("shot,pull,landed,time_s\n4A,1,3 m,1\n"), "log.csv", p)
	take, err := r.Read()
	if err != nil {
		t.Fatal(err)
	}
	if by := ringBy(3) - ringBy(2.9); math.Abs(take.Error-by) > 1e-6 {
		t.Errorf("3 m is %v deg past 2.9 m, by hand %v", take.Error, by)
	}
}

// ringBy is the ring's angle by the formulas of the thin lens, worked here
// again: D = s + s', 1/f = 1/s + 1/s', extension s' - f.
func ringBy(tape float64) float64 {
	const f, closest, throw = 0.075, 0.75, 200
	extension := func(d float64) float64 {
		s := (d + math.Sqrt(d*d-4*f*d)) / 2
		return f * f / (s - f)
	}
	return throw * (1 - extension(tape)/extension(closest))
}

// The end of the ring holds a landing that comes within a quarter of a degree of
// it, where the mark lies before; where the end itself is in focus, a take says
// nothing of the spread. Pull 1 of the plan goes outward, pull 2 back to 76 cm,
// where the ring ends a degree farther.
func TestEndOfTheRing(t *testing.T) {
	text := strings.Replace(pier, "INES at 1.6 m", "INES at 76 cm", 1)
	for stop, want := range map[string][3]takes.Stop{
		"f/1.8": {takes.NoStop, takes.NoStop, takes.HeldByStop},
		"f/22":  {takes.SharpStop, takes.SharpStop, takes.SharpStop},
	} {
		p := interp.Interpret("pier.pull", []byte(strings.Replace(text, "f/4", stop, 1)), interp.Options{}).Plan
		end := float64(p.Shots[0].Pulls[1].ToDeg)
		if end < 1 {
			t.Fatalf("the mark lies %v deg before the end of the ring: the test tests nothing", end)
		}
		s := takes.NewSample(takes.Options{})
		for i, past := range []float64{-0.5, end - 0.3, end - 0.2} {
			log := fmt.Sprintf("shot,pull,travel_deg,error_deg,time_s\n4A,2,60,%.3f,1\n", past)
			got, err := takes.NewReader(strings.NewReader(log), "log.csv", p).Read()
			if err != nil || got.Stop != want[i] {
				t.Errorf("%s, %v deg past the mark: %v (%v), want %v", stop, past, got.Stop, err, want[i])
			}
			s.Add(got)
		}
		if r := s.Report(); stop == "f/22" && (r.OnTheStop != 3 || r.Fitted != 0 || r.Takes != 3) || stop != "f/22" && (r.Censored != 1 || r.Fitted != 3) {
			t.Errorf("%s: %+v", stop, r)
		}
	}
}

// Tries on the page are no takes: they stand in a table of their own.
func TestPageTriesAreLeftOut(t *testing.T) {
	with, without := takes.NewSample(takes.Options{}), takes.NewSample(takes.Options{})
	for i := range 20 {
		take := takes.Take{Shot: "4A", Pull: 1, Travel: 60, Time: 1, Error: 0.3 * float64(i%5-2)}
		with.Add(take)
		without.Add(take)
		take.Error, take.Hit, take.Note = 25, takes.Missed, "page, mouse wheel"
		with.Add(take)
	}
	a, b := with.Report(), without.Report()
	if a.Fit.Throughput != b.Fit.Throughput || a.Takes != 20 || a.PageLeftOut != 20 || a.Page.Tries != 20 || a.Page.Constant != 25 || len(a.Page.Pulls) != 1 || b.Page != nil {
		t.Errorf("with tries %+v %+v, without %+v", a, a.Page, b)
	}
}

func TestMisfits(t *testing.T) {
	p := pierPlan(t)
	tests := []struct {
		row, want string
		kept      bool
	}{
		{"Pier,4A,7,2.9 m,,,1", "log.csv:2:9: shot 4A has no pull 7; it has 3", false},
		{"Pier,4B,1,2.9 m,,,1", `log.csv:2:6: the plan has no shot "4B"`, false},
		{"Quay,4A,1,2.9 m,,,1", `log.csv:2:1: plan "Quay" was not given`, false},
		{"Pier,4A,3,2.9 m,,,1", "log.csv:2:11: pull 3 of shot 4A is a follow, which lands nowhere", false},
		{"Pier,4A,1,2.9,,,1", `log.csv:2:11: landed: "2.9" lacks its unit`, false},
		{"Pier,4A,1,900 deg,,,1", "log.csv:2:11: the ring goes from 0 to 200 deg", false},
		{"Pier,4A,1,5 cm,,,1", "log.csv:2:11: the lens forms no image of what is 5 cm away", false},
		{"Pier,4A,0,2.9 m,,,1", `log.csv:2:9: pull: "0" is not the number of a pull, which count from 1`, false},
		{"Pier,4A,1,2.9 m,,,", "log.csv:2:19: time_s is missing", false},
		{"Pier,4A,1,,60,,1", "", true}, // counts, and is not fitted
		{"Pier,4A,7,,60,1,1", "log.csv:2:9: shot 4A has no pull 7; it has 3", true},
		{"Quay,4A,7,,60,1,1", "", true}, // of another film, and whole
	}
	for _, tt := range tests {
		r := takes.NewReader(strings.NewReader("plan,shot,pull,landed,travel_deg,error_deg,time_s\n"+tt.row+"\n"), "log.csv", p)
		_, err := r.Read()
		var fault *takes.Fault
		if tt.want == "" {
			if err != nil {
				t.Errorf("%s: %v", tt.row, err)
			}
			continue
		}
		if !errors.As(err, &fault) || !strings.HasPrefix(fault.Error(), tt.want) || fault.Kept != tt.kept {
			t.Errorf("%s: %v, want %s", tt.row, err, tt.want)
		}
		if _, err := r.Read(); !errors.Is(err, io.EOF) {
			t.Errorf("%s: then %v", tt.row, err)
		}
	}
}

// What is practised next is the rack that falls short the most; its chance is
// that of the landing model with the fitted hand.
func TestPractise(t *testing.T) {
	p := pierPlan(t)
	s := takes.NewSample(takes.Options{})
	rng := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		travel, time := 20+80*rng.Float64(), 0.4+rng.Float64()
		s.Add(takes.Take{Travel: travel, Time: time, Error: hand.MotorSpread(travel, time, 4) * rng.NormFloat64(), Plan: "Pier", Shot: "4A", Pull: 2})
	}
	f := s.Fit()
	list := s.Practise(&f, p)
	if len(list) != 2 || list[0].Pull != 2 || list[0].Takes != 60 || list[1].Takes != 0 {
		t.Fatalf("%+v", list)
	}
	h := hand.Default()
	h.Throughput, h.Bias, h.RimSpread = f.Throughput.Value, f.Bias.Value, f.Rim.Value*math.Pi*0.08/360
	if want := h.Land(p.Shots[0].Pulls[1].Asks).Chance; math.Abs(float64(list[0].Chance)-want) > 1e-12 {
		t.Errorf("chance %v, by the model %v", list[0].Chance, want)
	}
}

// A change between sessions is told where there is one, and rarely where there
// is none: of 200 logs without, its intervals hold no change in nine of ten.
func TestChange(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	report := func(widen, shift float64) *takes.Change {
		s := takes.NewSample(takes.Options{})
		for i := range 80 {
			travel, time := 20+80*rng.Float64(), 0.4+rng.Float64()
			spread := math.Hypot(hand.MotorSpread(travel, time, 4.1), 0.7)
			take := takes.Take{Date: "2026-03-01", Travel: travel, Time: time, Error: spread * rng.NormFloat64()}
			if i >= 50 {
				take.Date, take.Error = "2026-03-02", take.Error*widen+shift
			}
			s.Add(take)
		}
		return s.Report().Change
	}
	const logs = 200
	same, sameBias := 0.0, 0.0
	for range logs {
		c := report(1, 0)
		if c.SpreadInterval[0] <= 1 && 1 <= c.SpreadInterval[1] {
			same++
		}
		if c.BiasInterval[0] <= 0 && 0 <= c.BiasInterval[1] {
			sameBias++
		}
	}
	for _, held := range []float64{same / logs, sameBias / logs} {
		if math.Abs(held-0.9) > 0.064 { // three standard deviations of a rate of 200
			t.Errorf("an interval holds no change in %v of logs without one", held)
		}
	}
	if c := report(0.4, 0); c.SpreadInterval[1] >= 1 {
		t.Errorf("a hand that has become surer: %+v", c)
	}
	if c := report(1, 3); c.BiasInterval[0] <= 0 {
		t.Errorf("a hand that lands farther: %+v", c)
	}
}

// The rim's spread goes along as a length: the same hand on a rim of half the
// diameter spreads over twice the degrees, and fits alike where the log says so.
func TestRim(t *testing.T) {
	fitOf := func(rim, factor float64) fit.Fit {
		rng := rand.New(rand.NewPCG(3, 9))
		s := takes.NewSample(takes.Options{})
		for range 200 {
			s.Add(takes.Take{Travel: 60, Time: 4, Error: 0.8 * factor * rng.NormFloat64(), Rim: rim})
		}
		return s.Fit()
	}
	whole, half := fitOf(0.08, 1), fitOf(0.04, 2)
	if math.Abs(whole.RimSpread()-half.RimSpread()) > 1e-5 {
		t.Errorf("%v m of rim on 80 mm, %v on 40 mm", whole.RimSpread(), half.RimSpread())
	}
	if want := 0.8 * math.Pi * 0.08 / 360; math.Abs(whole.RimSpread()-want) > 0.1*want {
		t.Errorf("%v m of rim, made with %v", whole.RimSpread(), want)
	}
}
