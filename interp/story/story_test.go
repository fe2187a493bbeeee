package story_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/story"
)

// plansOf returns the plans of the examples that have shots, and a few of tests.
func plansOf(t *testing.T) (list []*plan.Plan) {
	t.Helper()
	for _, pattern := range []string{"../../examples/*.pull", "../testdata/slips/*.pull", "../../examples/*/*/*.pull"} {
		paths, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range paths {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if p := interp.Interpret(path, src, interp.Options{}).Plan; len(p.Shots) > 0 {
				list = append(list, p)
			}
		}
	}
	if len(list) < 18 {
		t.Fatalf("only %d plans", len(list))
	}
	return list
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a), math.Abs(b)) }

// The stays and racks of a shot fill it from its start to its end, without a gap and
// without an overlap.
func TestStaysAndRacksFillTheShot(t *testing.T) {
	for _, p := range plansOf(t) {
		for _, s := range story.Of(p).Shots {
			var parts [][2]float64
			for _, stay := range s.Stays {
				parts = append(parts, [2]float64{float64(stay.Start), float64(stay.End)})
			}
			for _, r := range s.Racks {
				parts = append(parts, [2]float64{float64(r.Start), float64(r.Land)})
			}
			slices.SortFunc(parts, func(a, b [2]float64) int { return slices.Compare(a[:], b[:]) })
			at := 0.0
			for _, part := range parts {
				if !near(part[0], at) || part[1] < part[0] {
					t.Fatalf("%s %s: a part from %v, after %v", p.File, s.ID, part, at)
				}
				at = part[1]
			}
			if !near(at, float64(s.Duration)) {
				t.Errorf("%s %s: the parts end at %v of %v", p.File, s.ID, at, s.Duration)
			}
		}
	}
}

// The racks are those of the list: as many, at the same times, to the same places.
func TestRacksAreThoseOfTheList(t *testing.T) {
	racks := 0
	for _, p := range plansOf(t) {
		sc := story.Of(p)
		all, nearer, farther := 0, 0, 0
		for i, s := range p.Shots {
			k := 0
			for _, pull := range s.Pulls {
				if pull.Kind != "rack" {
					continue
				}
				r := sc.Shots[i].Racks[k]
				k++
				if r.Number != pull.Number || r.Start != max(0, min(pull.Start, s.Duration)) || r.Land > max(0, pull.Land) {
					t.Errorf("%s %s: %+v, and the list has %d from %v to %v", p.File, s.ID, r, pull.Number, pull.Start, pull.Land)
				}
				if r.Way == story.ToNear && pull.ToM > pull.FromM || r.Way == story.ToFar && pull.ToM < pull.FromM {
					t.Errorf("%s %s: rack %d goes %s", p.File, s.ID, r.Number, r.Way)
				}
				all++
				switch r.Way {
				case story.ToNear:
					nearer++
				case story.ToFar:
					farther++
				}
			}
			if k != len(sc.Shots[i].Racks) {
				t.Errorf("%s %s: %d racks, and the list has %d", p.File, s.ID, len(sc.Shots[i].Racks), k)
			}
		}
		if sc.Racks != all || sc.Near != nearer || sc.Far != farther || sc.Word+sc.Cue+sc.Reason+sc.None != all {
			t.Errorf("%s: %+v", p.File, sc.Figures)
		}
		racks += all
	}
	if racks < 40 {
		t.Errorf("only %d racks", racks)
	}
}

// A line that is only heard is nobody's to be seen on: it counts nowhere.
func TestHeardLines(t *testing.T) {
	for _, p := range plansOf(t) {
		for _, s := range p.Shots {
			for i := range s.Lines {
				l := &s.Lines[i]
				long := min(float64(l.End), float64(s.Duration)) - max(0, float64(l.Start))
				if s.Subject(l.Who) == nil || long <= 0 {
					continue
				}
				before := story.Of(p).Lines
				l.Off = true
				if after := story.Of(p).Lines; !near(float64(before-after), long) {
					t.Errorf("%s %s: %v s of lines, and %v s with %q only heard", p.File, s.ID, before, after, l.Text)
				}
				return // one says it
			}
		}
	}
	t.Error("no plan has a line")
}

// The share of own lines is that of a close look at every moment of them.
func TestOwnLines(t *testing.T) {
	seen := 0
	for _, p := range plansOf(t) {
		sc := story.Of(p)
		all, sharp := 0.0, 0.0
		for _, s := range p.Shots {
			for _, l := range s.Lines {
				u := s.Subject(l.Who)
				from, to := max(0, float64(l.Start)), min(float64(l.End), float64(s.Duration))
				if u == nil || to <= from {
					continue
				}
				const steps = 2000
				for i := range steps {
					at := from + (to-from)*(float64(i)+0.5)/steps
					all += (to - from) / steps
					if s.SharpAt(u, at) {
						chance := float64(s.SharpChance(u, at))
						if math.IsNaN(chance) {
							chance = 1
						}
						sharp += chance * (to - from) / steps
					}
				}
			}
		}
		if all == 0 {
			if sc.Own.Known() {
				t.Errorf("%s: a share of %v of no lines", p.File, sc.Own)
			}
			continue
		}
		seen++
		if !near(float64(sc.Lines), all) || math.Abs(float64(sc.Own)-sharp/all) > 0.01 || sc.Own < 0 || sc.Own > 1 {
			t.Errorf("%s: %v of %v s, want %v of %v s", p.File, sc.Sharp, sc.Lines, sharp, all)
		}
	}
	if seen < 15 {
		t.Errorf("only %d plans have lines", seen)
	}
}

// The figures of a film are those of its scenes together; shares make a whole.
func TestFilm(t *testing.T) {
	var scenes []*story.Scene
	for _, p := range plansOf(t) {
		scenes = append(scenes, story.Of(p))
	}
	f := story.Join(scenes, []story.Left{{Title: "a", File: "b"}})
	racks, stays, held := 0, 0, 0.0
	for _, sc := range scenes {
		racks, stays = racks+sc.Racks, stays+sc.Count
		for _, st := range sc.Stations {
			held += float64(st.Held)
		}
		for i := 1; i < len(sc.Stations); i++ {
			if sc.Stations[i].Distance > sc.Stations[i-1].Distance {
				t.Errorf("%s: %s stands behind %s", sc.File, sc.Stations[i].Name, sc.Stations[i-1].Name)
			}
		}
	}
	binned := 0
	for _, n := range f.Film.Bins {
		binned += n
	}
	if f.Film.Racks != racks || f.Film.Count != stays || binned != stays || len(f.LeftOut) != 1 {
		t.Errorf("%d racks and %d stays, in bins %d; the scenes have %d and %d", f.Film.Racks, f.Film.Count, binned, racks, stays)
	}
	share, sum := 0.0, 0.0
	for _, h := range f.Film.Holders {
		share, sum = share+float64(h.Share), sum+float64(h.Held)
	}
	people := 0.0
	for _, h := range f.Film.People() {
		people += float64(h.Share)
	}
	if !near(share, 1) || !near(people, 1) || !near(sum, held) {
		t.Errorf("shares make %v and %v; %v s of %v s", share, people, sum, held)
	}
}

// What a film has in common is its title; a scene keeps the rest.
func TestTitles(t *testing.T) {
	scene := func(title string) *story.Scene { return &story.Scene{Title: title} }
	for _, c := range []struct{ a, b, title, rest string }{
		{"Ferry, scene 1: the pier", "Ferry, scene 2: the deck", "Ferry", "scene 1: the pier"},
		{"Ferry", "Ferry", "Ferry", "Ferry"},
		{"Ferry: the pier", "Kiosk: the deck", "", "Ferry: the pier"},
		{"", "Kiosk", "", ""},
	} {
		f := story.Join([]*story.Scene{scene(c.a), scene(c.b)}, nil)
		if f.Title != c.title || f.Rest(f.Scenes[0]) != c.rest {
			t.Errorf("%q and %q: %q, %q", c.a, c.b, f.Title, f.Rest(f.Scenes[0]))
		}
	}
	if f := story.Join(nil, nil); f.Title != "" || f.Film.Racks != 0 || f.Scenes == nil || f.LeftOut == nil {
		t.Errorf("no scenes: %+v", f)
	}
}

// A bin holds the stays from its first length up to the next.
func TestBins(t *testing.T) {
	const text = `plan "P"
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
with camera A, lens "75", stop f/4
subject ANN at 1.6 m
subject BOB at 2.6 m
subject CAT at 3.6 m
shot 1
  start on ANN
  rack to BOB, on 2 s, over 1 s
  rack to CAT, on 7 s, over 0.5 s, because "she leaves"
  rack to ANN and BOB, on 8 s, over 0.5 s
  hold 0.5 s
`
	sc := story.Of(interp.Interpret("p.pull", []byte(text), interp.Options{}).Plan)
	want := make([]int, 12) // 2 s, 4 s, 0.5 s, 0.5 s
	want[0], want[3], want[5] = 2, 1, 1
	if !slices.Equal(sc.Bins, want) {
		t.Errorf("bins %v, want %v", sc.Bins, want)
	}
	if last := sc.Shots[0].Stays[3].On; last != "ANN and BOB" {
		t.Errorf("the last stay is on %q", last)
	}
	if !near(float64(sc.Median), 1.25) || !near(float64(sc.RackMid), 0.5) || !near(float64(sc.Duration), 9) {
		t.Errorf("%+v", sc.Figures)
	}
}
