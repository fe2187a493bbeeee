package predicted

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// quay is a plan with racks of many chances.
const quay = `plan "Quay"
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 200 deg, diameter 100 mm
puller INES
  %s
subject INES at 1.6 m
subject BOAT at 2.9 m
shot 4A
  with camera A, lens "75", stop f/2.8
  start on INES
  rack to BOAT, on 2 s, over 1.2 s, because "she looks up"
  rack to INES, on 5 s, over 0.5 s, because "she turns back"
  rack to BOAT, on 8 s, over 0.4 s, because "the bell"
  hold 2 s
`

func quayPlan(t *testing.T, says string) *plan.Plan {
	t.Helper()
	p := interp.Interpret("quay.pull", fmt.Appendf(nil, quay, says), interp.Options{WithoutLogs: true}).Plan
	if len(p.Shots) != 1 || len(p.Shots[0].Pulls) != 3 {
		t.Fatalf("%+v", p)
	}
	return p
}

// take is a take of a pull, with the travel that the plan has.
func take(p *plan.Plan, pull int, date string, line int, past float64, hit takes.Hit) takes.Take {
	asks := p.Shots[0].Pulls[pull-1].Asks
	return takes.Take{Date: date, Shot: "4A", Pull: pull, Travel: asks.Travel, Time: asks.Time, Error: past, Rim: asks.Rim, Hit: hit, Line: line, Planned: asks.Time}
}

// The first day is said by a hand of which nothing is known, as the plan says it, and no take
// of a day changes what was said of that day.
func TestADayIsSaidBeforeIt(t *testing.T) {
	p := quayPlan(t, "limit 1000 deg/s")
	list := []takes.Take{
		take(p, 1, "2026-03-02", 2, 9, takes.Missed), // the later day stands first
		take(p, 1, "2026-03-01", 3, 5, takes.Missed),
		take(p, 2, "2026-03-01", 4, 5, takes.Sharp),
	}
	r := Of(list, p)
	said := func(i int) float64 { return float64(r.Takes[i].Chance) }
	if len(r.Takes) != 3 || r.Takes[0].Line != 2 || r.Takes[0].Knew != 2 || r.Takes[1].Knew != 0 || r.Takes[2].Knew != 0 {
		t.Fatalf("%+v", r.Takes)
	}
	pulls := p.Shots[0].Pulls
	if said(1) != float64(pulls[0].Chance) || said(2) != float64(pulls[1].Chance) {
		t.Errorf("said %v and %v, the plan %v and %v", said(1), said(2), pulls[0].Chance, pulls[1].Chance)
	}
	if said(0) >= said(1) {
		t.Errorf("after two takes that went too far it says %v, before them %v", said(0), said(1))
	}
	list[0].Error = -100
	if again := Of(list, p); !reflect.DeepEqual(again.Takes, r.Takes) {
		t.Errorf("a take changes what was said of it:\n%+v\n%+v", r.Takes, again.Takes)
	}
	list = append([]takes.Take{list[2], list[1]}, list[0])
	if again := Of(list, p); !reflect.DeepEqual(again.Takes, r.Takes) {
		t.Errorf("the order of rows counts:\n%+v\n%+v", r.Takes, again.Takes)
	}
}

// What a puller's section says stands against a log.
func TestSectionsWin(t *testing.T) {
	p := quayPlan(t, "hand 6 bit/s")
	list := []takes.Take{take(p, 2, "2026-03-01", 2, 0, takes.Sharp), take(p, 2, "2026-03-02", 3, 0, takes.Sharp)}
	r := Of(list, p)
	published := Of(list, quayPlan(t, "limit 1000 deg/s"))
	for i := range list {
		if r.Takes[i].Chance <= published.Takes[i].Chance+0.05 {
			t.Errorf("take %d: said %v by a hand of 6 bit/s, %v by one of which nothing is known", i, r.Takes[i].Chance, published.Takes[i].Chance)
		}
	}
}

// Tries on the page, takes of other plans and those of which nobody knows
// whether they were sharp are left out, and counted.
func TestLeftOut(t *testing.T) {
	p := quayPlan(t, "limit 1000 deg/s")
	list := make([]takes.Take, 4)
	for i := range list {
		list[i] = take(p, 1, "", i+2, 0, takes.Sharp)
	}
	list[0].Note, list[1].Plan, list[2].Hit = "page, keys", "Pier", takes.Unsaid
	if r := Of(list, p); len(r.Takes) != 1 || r.Page != 1 || r.Foreign != 1 || r.Unsaid != 1 {
		t.Errorf("%+v", r)
	}
	if r := Of(nil, p); r.All.Takes != 0 || r.All.Rate.Known() || len(r.Bands) != 0 {
		t.Errorf("no takes: %+v", r)
	}
}

// Takes that land as often as was said lie in the intervals of their bands, but
// for one in ten; those of a hand half as good do not. No take has a date, so
// that a day is 36 rows.
func TestCalibration(t *testing.T) {
	p := quayPlan(t, "hand 4.2 bit/s\n  spread 0.51 mm\n  bias 0.01 deg") // as said, whatever the log
	rng := rand.New(rand.NewPCG(8, 15))
	bands := func(worse float64) (held, of int) {
		for range 40 {
			var list []takes.Take
			for i := range 120 {
				tk := take(p, 1+i%3, "", i+2, 0, takes.Missed)
				if rng.Float64() < worse*float64(p.Shots[0].Pulls[tk.Pull-1].Chance) {
					tk.Hit = takes.Sharp
				}
				list = append(list, tk)
			}
			for _, b := range Of(list, p).Bands {
				of++
				if b.Holds() {
					held++
				}
			}
		}
		return held, of
	}
	held, of := bands(1)
	if rate := float64(held) / float64(of); of < 100 || rate < 0.8 || rate > 0.99 {
		t.Errorf("%d of %d bands hold what was said", held, of)
	}
	if held, of := bands(0.5); float64(held) > 0.3*float64(of) {
		t.Errorf("a hand half as good: %d of %d bands hold what was said", held, of)
	}
}
