package setups

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A place is somewhere on the floor of a scene, at a height, in metres.
type place struct{ x, y, z float64 }

// A floor turns, shifts and mirrors places before shots are made of them.
type floor struct {
	turn   float64 // degrees to the right
	x, y   float64
	mirror bool
}

func (f floor) of(p place) place {
	if f.mirror {
		p.x = -p.x
	}
	sin, cos := math.Sincos(f.turn * math.Pi / 180)
	return place{p.x*cos + p.y*sin + f.x, p.y*cos - p.x*sin + f.y, p.z}
}

// A stage makes scenes of two people and things by hand.
type stage struct {
	floor  floor
	people map[string]place
	lines  []plan.Line
	shots  []*plan.Shot
	said   bool
}

// ticketWindow is two people who talk in turns for six seconds.
func ticketWindow(f floor) *stage {
	return &stage{
		floor:  f,
		people: map[string]place{"MARRIT": {0, 0, 1.5}, "OSKEL": {0.4, 1.3, 1.6}},
		lines: []plan.Line{
			{Who: "MARRIT", Start: 0, End: 2}, {Who: "OSKEL", Start: 2, End: 4}, {Who: "MARRIT", Start: 4, End: 6},
		},
	}
}

// shot adds a shot with a lens of so many millimetres, whose camera looks at somebody, and
// whose focus is on them.
func (g *stage) shot(id string, at place, who string, focal float64) *plan.Shot {
	at = g.floor.of(at)
	goal := g.floor.of(g.people[who])
	home := plan.Pose{X: at.x, Y: at.y, Z: at.z}
	home.Pan, home.Tilt = home.Bearing(goal.x, goal.y, goal.z)
	s := &plan.Shot{
		ID: id, File: "plan.pull", Line: 10 * (len(g.shots) + 1), Duration: 6, Stop: "f/4", FNumber: 4, Camera: string(rune('A' + len(g.shots))),
		Start:   plan.Start{To: who},
		Staging: &plan.Staging{Action: true, Placed: true, Home: home, Covers: plan.Interval{0, 6}, Placer: 10*(len(g.shots)+1) + 1},
	}
	s.Optics = plan.Optics{SensorW: 0.02489, SensorH: 0.01866, Focal: plan.Still(focal / 1000), Camera: plan.Still(0), Rig: &plan.Rig{Tilt: home.Tilt}}
	for _, name := range slices.Sorted(maps.Keys(g.people)) {
		p := g.floor.of(g.people[name])
		x, y, z := s.Staging.FromFloor(p.x, p.y, p.z)
		s.Subjects = append(s.Subjects, &plan.Subject{Name: name, Across: plan.Still(x), Along: plan.Still(y), Up: plan.Still(z), SideSaid: true})
	}
	s.Optics.Start.Distance = s.LensDistanceAt(s.Subject(who), 0)
	g.shots = append(g.shots, s)
	return s
}

// told returns what is told of the set-ups, a line each.
func (g *stage) told(t interface{ Errorf(string, ...any) }) (list []string) {
	for _, d := range g.findings() {
		if d.Severity != lang.Warning || d.Scene != "The ticket window" || d.Shot == "" || d.Range.Start.Line == 0 {
			t.Errorf("%+v", d)
		}
		list = append(list, d.Code+": "+d.Message)
	}
	return list
}

func (g *stage) findings() []lang.Diagnostic {
	sc := &plan.Scene{Title: "The ticket window", Duration: 6, Lines: g.lines, Subjects: []plan.Staged{{Name: "MARRIT"}, {Name: "OSKEL"}}}
	for _, l := range g.lines {
		to := "MARRIT"
		if l.Who == to {
			to = "OSKEL"
		}
		sc.Axes = append(sc.Axes, plan.LineOfAction{From: l.Who, To: to, Start: l.Start, End: l.End})
	}
	if g.said {
		sc.Axes = []plan.LineOfAction{{From: "OSKEL", To: "MARRIT", End: 6, Said: true}}
	}
	at := func(file string, line int) lang.Range { return lang.Range{File: file, Start: lang.Pos{Line: line}} }
	return Of(&plan.Plan{Scenes: []*plan.Scene{sc}, Shots: g.shots}, 0, at)
}

// sets are the master and the two singles, which match.
func (g *stage) sets() (a, b, c *plan.Shot) {
	a = g.shot("12A", place{0.8, -2.2, 1.5}, "MARRIT", 35)
	b = g.shot("12B", place{1, 1.3, 1.5}, "MARRIT", 75)
	c = g.shot("12C", place{0.5, -0.35, 1.6}, "OSKEL", 75)
	c.Staging.Matches, c.Staging.Matcher = "12B", 32
	return a, b, c
}

func want(t *testing.T, got []string, wanted ...string) {
	t.Helper()
	if !slices.Equal(got, wanted) {
		t.Errorf("told\n\t%s\nnot\n\t%s", strings.Join(got, "\n\t"), strings.Join(wanted, "\n\t"))
	}
}

func TestSetupsThatMatch(t *testing.T) {
	g := ticketWindow(floor{})
	g.sets()
	want(t, g.told(t))
}

func TestCrossesLine(t *testing.T) {
	const crosses = "crosses-line: 12C stands 95.6 cm left of the line MARRIT to OSKEL, and 12A 1.41 m right of it"
	left := place{-1, 0, 1.6}
	g := ticketWindow(floor{})
	a, b, _ := g.sets()
	g.shots = g.shots[:2]
	c := g.shot("12C", left, "OSKEL", 75)
	want(t, g.told(t), crosses)

	c.Staging.Because = "he turns away"
	want(t, g.told(t))
	c.Staging.Because = ""
	a.Staging.Because = "it is the master" // what is meant to cross says nothing of the others
	want(t, g.told(t), "crosses-line: 12C stands 95.6 cm left of the line MARRIT to OSKEL, and 12B 57.3 cm right of it")
	a.Staging.Because = ""

	// It begins after the first line of both.
	b.Staging.Covers, c.Staging.Covers = plan.Interval{0, 2}, plan.Interval{2, 6}
	g.shots = []*plan.Shot{b, c}
	want(t, g.told(t), "crosses-line: 12C stands 95.6 cm left of the line MARRIT to OSKEL, and 12B 57.3 cm right of it")
	if d := g.findings()[0]; d.Time != 0 || d.Range.Start.Line != c.Staging.Placer || d.Related[0].Range.Start.Line != b.Staging.Placer {
		t.Errorf("%+v", d)
	}
	c.Staging.Action = false // its clock is its own
	want(t, g.told(t))
}

// A camera on the line is on neither side, and one that shows neither of the two counts
// for nothing.
func TestDoesNotCross(t *testing.T) {
	for name, at := range map[string]place{"on the line": {-0.5, -1.1, 1.5}, "just right": {0.2, -0.4, 1.6}} {
		g := ticketWindow(floor{})
		g.shot("12A", place{0.8, -2.2, 1.5}, "MARRIT", 35)
		g.shot("12B", at, "OSKEL", 75)
		if got := g.told(t); len(got) > 0 {
			t.Errorf("%s: %s", name, got)
		}
	}
	g := ticketWindow(floor{})
	g.people["LAMP"] = place{-3, 3, 2}
	g.shot("12A", place{0.8, -2.2, 1.5}, "MARRIT", 35)
	g.shot("12B", place{-1, 0, 1.6}, "LAMP", 75)
	want(t, g.told(t))
}

// A line that the plan says counts whoever speaks, and is told as it is written.
func TestCrossesASaidLine(t *testing.T) {
	g := ticketWindow(floor{})
	g.said = true
	g.shot("12A", place{0.8, -2.2, 1.5}, "MARRIT", 35)
	g.shot("12B", place{-1, 0, 1.6}, "OSKEL", 75)
	want(t, g.told(t), "crosses-line: 12B stands 95.6 cm right of the line OSKEL to MARRIT, and 12A 1.41 m left of it")
}

func TestDoesNotMatch(t *testing.T) {
	for _, c := range []struct {
		name string
		make func(c *plan.Shot, g *stage) *plan.Shot
		want string
	}{
		{"nearer, and past the other side", func(_ *plan.Shot, g *stage) *plan.Shot {
			g.shots = g.shots[:2]
			return g.shot("12C", place{-0.5, 0, 1.6}, "OSKEL", 75)
		}, "eye-line 18 deg right to 20 deg right"},
		{"a longer lens", func(_ *plan.Shot, g *stage) *plan.Shot {
			g.shots = g.shots[:2]
			return g.shot("12C", place{0.5, -0.35, 1.6}, "OSKEL", 85)
		}, "85 mm to 75 mm"},
		{"another stop", func(c *plan.Shot, g *stage) *plan.Shot { c.FNumber, c.Stop = 5.6, "f/5.6"; return c }, "f/5.6 to f/4"},
		{"a third of a stop", func(c *plan.Shot, g *stage) *plan.Shot { c.FNumber, c.Stop = 4.5, "f/4.5"; return c }, ""},
		{"another sensor", func(c *plan.Shot, g *stage) *plan.Shot { c.Optics.SensorW = 0.036; return c }, "75 mm on 36 mm to 75 mm on 24.9 mm"},
		{"past the lens and into it", func(_ *plan.Shot, g *stage) *plan.Shot {
			g.shots = g.shots[:2]
			return g.shot("12C", place{-0.1, -0.325, 1.6}, "OSKEL", 75)
		}, "eye-line into the lens to 20 deg right"},
		{"lower", func(_ *plan.Shot, g *stage) *plan.Shot {
			g.shots = g.shots[:2]
			return g.shot("12C", place{0.5, -0.35, 1.48}, "OSKEL", 75)
		}, "the lens 12 cm under the eyes to level with the eyes"},
	} {
		g := ticketWindow(floor{})
		_, _, single := g.sets()
		single = c.make(single, g)
		single.Staging.Matches, single.Staging.Because = "12B", "it is so"
		got := g.told(t)
		if c.want == "" {
			want(t, got)
			continue
		}
		want(t, got, "does-not-match: 12C differs from 12B: "+c.want)
	}
}

// somewhere returns a place that is not too near to anybody.
func (g *stage) somewhere(r *rand.Rand) place {
	for {
		p := place{r.Float64()*6 - 3, r.Float64()*6 - 3, 1 + r.Float64()}
		near := false
		for _, q := range g.people {
			near = near || math.Hypot(p.x-q.x, p.y-q.y) < 0.9
		}
		if !near {
			return p
		}
	}
}

// The place that is proposed matches: a camera there has no difference left.
func TestTheMirroredPlaceMatches(t *testing.T) {
	for n := range uint64(100) {
		g, r := ticketWindow(floor{}), rand.New(rand.NewPCG(7, n))
		g.shot("12B", g.somewhere(r), "MARRIT", 75)
		c := g.shot("12C", g.somewhere(r), "OSKEL", 75)
		x, y, z, ok := mirror(c, g.shots[0])
		if !ok {
			t.Fatal("no place")
		}
		g.shots = g.shots[:1]
		c = g.shot("12C", place{x, y, z}, "OSKEL", 75)
		c.Staging.Matches, c.Staging.Because = "12B", "it is so"
		if got := g.told(t); len(got) > 0 {
			t.Fatalf("%d: from %.3f %.3f %.3f: %s", n, x, y, z, got)
		}
		if look, back, _ := looks(c, g.shots[0]); math.Abs(plan.Wrapped(look+back)) > 1e-9 {
			t.Fatalf("%d: eye-lines of %g and %g deg", n, look, back)
		}
	}
}

func TestCuresWithTheMirroredPlace(t *testing.T) {
	g := ticketWindow(floor{})
	g.shot("12B", place{1, 1.3, 1.5}, "MARRIT", 75)
	c := g.shot("12C", place{1.5, -0.35, 1.6}, "OSKEL", 75)
	c.Staging.Matches, c.Staging.Matcher, c.Staging.Because = "12B", 22, "it is \"so\""
	d := g.findings()
	const text = "camera at 49.6 cm right, 33.7 cm downstage, 1.6 m high, aims at OSKEL"
	if len(d) != 1 || d[0].Range.Start.Line != 22 || len(d[0].Cures) != 1 || d[0].Cures[0].Text != text {
		t.Fatalf("%+v", d)
	}
	if e := d[0].Cures[0].Edits; len(e) != 1 || e[0].Text != text+`, because "it is \"so\""` || e[0].Range.Start.Line != c.Staging.Placer {
		t.Errorf("%+v", e)
	}
	c.Imperial = true
	if cure := g.findings()[0].Cures[0].Text; cure != `camera at 1'7 1/2" right, 1'1 1/4" downstage, 5'3" high, aims at OSKEL` {
		t.Error(cure)
	}
	// A stop that differs is not cured by going somewhere.
	c.FNumber = 8
	if cures := g.findings()[0].Cures; len(cures) != 0 {
		t.Errorf("%+v", cures)
	}
}

func TestSeesCamera(t *testing.T) {
	g := ticketWindow(floor{})
	g.shot("12A", place{0.8, -2.2, 1.5}, "MARRIT", 35)
	b := g.shot("12B", place{0, 2.5, 1.5}, "OSKEL", 35)
	b.Staging.Because = "she turns round"
	want(t, g.told(t)) // it does not run with the other
	b.Staging.RunsWith = "12A"
	want(t, g.told(t), "sees-camera: 12A sees camera B all the time", "sees-camera: 12B sees camera A all the time")
	b.Camera = "A"
	want(t, g.told(t), "sees-camera: 12A sees the camera of 12B all the time", "sees-camera: 12B sees the camera of 12A all the time")
}

// A camera goes into the picture of another, whose shot begins two seconds later, and out
// of it again.
func TestSeesACameraThatPasses(t *testing.T) {
	g := ticketWindow(floor{})
	a := g.shot("12A", place{0, -3, 1.5}, "MARRIT", 75)
	b := g.shot("12B", place{-4, 2, 1.5}, "OSKEL", 75)
	b.Staging.Because = "it passes"
	a.Staging.Covers, a.Duration = plan.Interval{2, 6}, 4
	a.Staging.RunsWith = "12B"
	right, upstage, _ := b.Staging.OnFloor(1, 0, 0) // the way of the floor's right, in the shot
	b.Optics.Rig.Slide(plan.Slide{Start: 0, End: 6, X: 8 * (right - b.Home.X), Y: -8 * (upstage - b.Home.Y)})
	sees := 5 * 0.02489 / 2 / 0.075 // to each side at 5 m, with the focus far away, nearly
	a.Optics.Start.Distance = math.Inf(1)
	d := g.findings()
	if len(d) == 0 || d[0].Code != "sees-camera" || d[0].Shot != "12A" {
		t.Fatalf("%+v", d)
	}
	// It crosses the axis 3 s after it starts, at 4/3 m a second.
	from, to := 3-sees*0.75-2, 3+sees*0.75-2
	if math.Abs(d[0].Figures[0].Value-from) > 0.02 || math.Abs(d[0].Figures[1].Value-to) > 0.02 {
		t.Errorf("%s, not from %.2f to %.2f", d[0].Message, from, to)
	}
}

func TestTwoPulls(t *testing.T) {
	g := ticketWindow(floor{})
	a := g.shot("12A", place{0.8, -2.2, 1.5}, "MARRIT", 35)
	b := g.shot("12B", place{1, 1.3, 1.5}, "MARRIT", 75)
	b.Staging.Covers = plan.Interval{2, 6}
	pull := func(s *plan.Shot, n int, kind string, from, to float64) {
		s.Pulls = append(s.Pulls, &plan.Pull{
			Number: n, Kind: kind, Start: plan.Number(from), Land: plan.Number(to), Line: s.Line + 4 + n,
			FromLens: s.Optics.Start.Distance, ToLens: s.Optics.Start.Distance,
		})
	}
	pull(a, 1, "rack", 1, 2.4)
	pull(a, 2, "rack", 4, 5)
	pull(b, 1, "rack", 0.4, 1)
	pull(b, 2, "follow", 2.5, 4)
	b.Staging.RunsWith = "12A"
	b.Staging.Placed = false // so that nothing is told of places
	a.Puller, b.Puller = "JO", "INES"
	want(t, g.told(t))
	a.Puller, b.Puller = "", ""
	want(t, g.told(t)) // nobody says that it is one person
	a.Puller, b.Puller = "JO", "JO"
	want(t, g.told(t), "two-pulls: JO pulls rack 2 of 12A and follow 2 of 12B at once")
	d := g.findings()[0]
	if d.Time != 2.5 || d.Pull != 2 || d.Range.Start.Line != 26 || d.Related[0].Range.Start.Line != 16 || d.Figures[0].Value != 0.5 {
		t.Errorf("%+v", d)
	}
	b.Staging.RunsWith = ""
	want(t, g.told(t))
}

// Turning and shifting the whole floor changes nothing that is told, and a mirror swaps
// left and right alone.
func TestTurnedAndMirroredFloors(t *testing.T) {
	codes := map[string]int{}
	for n := range uint64(100) {
		r := rand.New(rand.NewPCG(11, n))
		places := []place{}
		for range 3 {
			places = append(places, ticketWindow(floor{}).somewhere(r))
		}
		all := func(f floor) []string {
			g := ticketWindow(f)
			g.shot("12A", places[0], "MARRIT", 35)
			g.shot("12B", places[1], "MARRIT", 75).Staging.RunsWith = "12A"
			g.shot("12C", places[2], "OSKEL", 75).Staging.Matches = "12B"
			return g.told(t)
		}
		was := all(floor{})
		for _, text := range was {
			code, _, _ := strings.Cut(text, ":")
			codes[code]++
		}
		f := floor{turn: r.Float64()*400 - 200, x: r.Float64()*9 - 4, y: r.Float64()*9 - 4}
		if now := all(f); !slices.Equal(now, was) {
			t.Fatalf("%d, turned: %q, before %q", n, now, was)
		}
		f.mirror = true
		swapped := strings.NewReplacer("left", "right", "right", "left")
		now := all(f)
		for i := range now {
			now[i] = swapped.Replace(now[i])
		}
		if !slices.Equal(now, was) {
			t.Fatalf("%d, mirrored: %q, before %q", n, now, was)
		}
	}
	if codes["crosses-line"] < 10 || codes["does-not-match"] < 10 || codes["sees-camera"] < 10 {
		t.Errorf("little is told: %v", codes)
	}
}
