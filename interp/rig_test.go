// Cameras that turn, against a computation by brute force.
//
// Scenes are drawn at random as plain data: who goes where, how the camera turns and
// goes, and where the focus goes, all at times that are known. From the data a plan is
// written, which the interpreter reads, and from the same data everything is worked out
// anew for every frame: by turning vectors step by step, by summing ways, by halving the
// thin-lens equation until it holds. Nothing of package plan or stage is used for that.

package interp_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A rigMove is a move of somebody or of the camera.
type rigMove struct {
	kind       string // walk, nearer, dolly, track, boom, pan, tilt
	who        string // who walks, or whom a turn goes to or stays with; "" for none
	keeps      bool
	by, side   float64 // metres or degrees; of a walk the place, side NaN where none is said
	start, end float64
	even       bool
}

// A rigRack is a rack or a follow.
type rigRack struct {
	who        string
	start, end float64
	even       bool
	follow     bool
}

// A rigScene is a scene as data.
type rigScene struct {
	people map[string][2]float64 // right, forth
	moves  []rigMove             // of one kind in the order of time
	racks  []rigRack             // in the order of time
	first  string
	lines  []string

	heads map[int]float64 // by move: where the camera looks as it starts, radians
}

var rigPeople = []string{"ANNA", "BRAM", "CLEO"}

// drawRig draws a scene.
func drawRig(r *rand.Rand) *rigScene {
	sc := &rigScene{people: map[string][2]float64{}, heads: map[int]float64{}}
	cm := func(lo, hi int) float64 { return float64(lo+r.IntN(hi-lo+1)) / 100 }
	anyone := func() string { return rigPeople[r.IntN(len(rigPeople))] }
	for _, who := range rigPeople {
		d, s := cm(150, 700), cm(-250, 250)
		sc.people[who] = [2]float64{s, d}
		sc.lines = append(sc.lines, fmt.Sprintf("subject %s at %s%s", who, rigCM(d), rigSide(s)))
	}
	sc.lines = append(sc.lines, rigKit...)
	sc.first = anyone()
	sc.lines = append(sc.lines, "shot 1", `  with camera A, lens "wire", stop f/4`, "  start on "+sc.first, "  lasts 12 s")
	racked := 0.0
	for _, kind := range []string{"pan", "tilt", "dolly", "track", "boom", "ANNA", "BRAM"} {
		t := float64(r.IntN(15)) / 10
		for range r.IntN(4) {
			m := rigMove{kind: kind, start: t, even: r.IntN(3) == 0, side: math.NaN()}
			m.end = rigTenths(t + float64(3+r.IntN(22))/10)
			t = rigTenths(m.end + float64(r.IntN(8))/10)
			if t > 9 {
				break
			}
			said := sc.draw(r, &m, anyone, cm)
			sc.moves = append(sc.moves, m)
			sc.lines = append(sc.lines, "  "+said+rigTimes(r, m))
			if kind == "pan" && m.who != "" && !m.keeps && m.start >= racked {
				sc.racks = append(sc.racks, rigRack{who: m.who, start: m.start, end: m.end, even: m.even})
				sc.lines = append(sc.lines, "  rack to "+m.who+", with pan")
				racked = m.end
			}
		}
	}
	sc.drawRacks(r, racked, anyone)
	return sc
}

var rigKit = strings.Split(`camera A
  sensor 24 x 18 mm
  on dolly
lens "wire"
  focal 50 mm
  stops f/2 to f/22
  closest 30 cm
  ring by wire`, "\n")

func rigTenths(t float64) float64 { return math.Round(t*10) / 10 }

func rigCM(m float64) string { return fmt.Sprintf("%.0f cm", math.Abs(m)*100) }

func rigSide(s float64) string {
	switch {
	case s < 0:
		return ", " + rigCM(s) + " left"
	case s > 0:
		return ", " + rigCM(s) + " right"
	}
	return ""
}

// draw draws what a move does, and says it as a plan does, but for its times.
func (sc *rigScene) draw(r *rand.Rand, m *rigMove, anyone func() string, cm func(lo, hi int) float64) (said string) {
	way := func(plus, minus string) string {
		if m.by < 0 {
			return minus
		}
		return plus
	}
	switch m.kind {
	case "pan", "tilt":
		if r.IntN(4) > 0 {
			m.who, m.keeps = anyone(), r.IntN(3) == 0
			if m.keeps {
				m.even = false
				return m.kind + " with " + m.who
			}
			return m.kind + " to " + m.who
		}
		most := map[string]int{"pan": 60, "tilt": 15}[m.kind]
		m.by = float64(1+r.IntN(most)) * float64(1-2*r.IntN(2))
		return fmt.Sprintf("%s %s %.0f deg", m.kind, way(map[string]string{"pan": "right", "tilt": "up"}[m.kind], map[string]string{"pan": "left", "tilt": "down"}[m.kind]), math.Abs(m.by))
	case "dolly":
		m.by = cm(5, 60) * float64(1-2*r.IntN(2))
		return way([]string{"dolly in ", "push in "}[r.IntN(2)], []string{"dolly out ", "pull out "}[r.IntN(2)]) + rigCM(m.by)
	case "track":
		m.by = cm(5, 150) * float64(1-2*r.IntN(2))
		return "track " + way("right ", "left ") + rigCM(m.by)
	case "boom":
		m.by = cm(5, 80) * float64(1-2*r.IntN(2))
		return "boom " + way("up ", "down ") + rigCM(m.by)
	}
	m.who, m.kind, m.even = m.kind, "walk", r.IntN(2) == 0
	if r.IntN(3) == 0 {
		m.kind, m.by = "nearer", -cm(5, 40)
		return m.who + " moves " + rigCM(m.by) + " nearer"
	}
	m.by = cm(150, 700)
	if r.IntN(2) == 0 {
		m.side = cm(1, 200) * float64(1-2*r.IntN(2))
		return m.who + " moves to " + rigCM(m.by) + rigSide(m.side)
	}
	return m.who + " moves to " + rigCM(m.by)
}

// rigTimes says when a move happens, in one of the ways in which a plan may.
func rigTimes(r *rand.Rand, m rigMove) string {
	walks := m.kind == "walk" || m.kind == "nearer"
	if m.keeps {
		return fmt.Sprintf(", on %.1f s, until %.1f s", m.start, m.end)
	}
	profile := ""
	switch {
	case walks && !m.even:
		profile = ", smooth"
	case !walks && m.even:
		profile = ", even"
	}
	switch n := r.IntN(3); {
	case walks || n == 0:
		return fmt.Sprintf(", on %.1f s, over %.1f s%s", m.start, m.end-m.start, profile)
	case n == 1:
		return fmt.Sprintf(", landing on %.1f s, over %.1f s%s", m.end, m.end-m.start, profile)
	}
	return fmt.Sprintf(", on %.1f s, landing on %.1f s%s", m.start, m.end, profile)
}

// drawRacks draws racks and a follow behind those that go with a pan.
func (sc *rigScene) drawRacks(r *rand.Rand, t float64, anyone func() string) {
	for range 1 + r.IntN(3) {
		k := rigRack{who: anyone(), start: rigTenths(t + float64(r.IntN(12))/10), even: r.IntN(3) == 0, follow: r.IntN(3) == 0}
		k.end = rigTenths(k.start + float64(3+r.IntN(20))/10)
		if t = k.end; t > 11.5 {
			return
		}
		if k.follow { // of whom the focus is on
			if k.who = sc.first; len(sc.racks) > 0 {
				k.who = sc.racks[len(sc.racks)-1].who
			}
		}
		sc.racks = append(sc.racks, k)
		if k.follow {
			sc.lines = append(sc.lines, fmt.Sprintf("  follow %s, on %.1f s, until %.1f s", k.who, k.start, k.end))
			continue
		}
		profile := ""
		if k.even {
			profile = ", even"
		}
		sc.lines = append(sc.lines, fmt.Sprintf("  rack to %s, on %.1f s, over %.1f s%s", k.who, k.start, k.end-k.start, profile))
	}
}

// done is the share of a move that is done.
func rigDone(t, start, end float64, even bool) float64 {
	u := math.Max(0, math.Min(1, (t-start)/(end-start)))
	if even {
		return u
	}
	return 6*u*u*u*u*u - 15*u*u*u*u + 10*u*u*u
}

type vec [3]float64 // right, forth, up

func (a vec) minus(b vec) vec    { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a vec) dot(b vec) float64  { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a vec) long() float64      { return math.Sqrt(a.dot(a)) }
func rigTurn(a, b vec) float64   { return math.Atan2(a[1]*b[0]-a[0]*b[1], a[0]*b[0]+a[1]*b[1]) } // to the right, level
func rigHeight(a vec) float64    { return math.Asin(math.Max(-1, math.Min(1, a[2]/a.long()))) }
func rigLooks(pan float64) vec   { return vec{math.Sin(pan), math.Cos(pan), 0} }
func rigClose(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) }

// camera is where the camera is.
func (sc *rigScene) camera(t float64) (c vec) {
	for i, m := range sc.moves {
		u := m.by * rigDone(t, m.start, m.end, m.even)
		forth := rigLooks(sc.heads[i])
		switch m.kind {
		case "dolly":
			c = vec{c[0] + u*forth[0], c[1] + u*forth[1], c[2]}
		case "track":
			c = vec{c[0] + u*forth[1], c[1] - u*forth[0], c[2]}
		case "boom":
			c[2] += u
		}
	}
	return c
}

// person is where somebody is.
func (sc *rigScene) person(who string, t float64) vec {
	p := sc.people[who]
	for _, m := range sc.moves {
		if m.who != who || m.kind != "walk" && m.kind != "nearer" || t <= m.start {
			continue
		}
		to := [2]float64{p[0], p[1] + m.by}
		if m.kind == "walk" {
			from := sc.camera(m.end)
			if to[1] = from[1] + m.by; !math.IsNaN(m.side) {
				to[0] = from[0] + m.side
			}
		}
		u := rigDone(t, m.start, m.end, m.even)
		p = [2]float64{p[0] + u*(to[0]-p[0]), p[1] + u*(to[1]-p[1])}
	}
	return vec{p[0], p[1], 0}
}

func (sc *rigScene) towards(who string, t float64) vec {
	return sc.person(who, t).minus(sc.camera(t))
}

// angle is where the turns of a kind have the camera look, radians.
func (sc *rigScene) angle(kind string, t float64) (a float64) {
	for _, m := range sc.moves {
		if m.kind != kind || t <= m.start {
			continue
		}
		stop := math.Min(t, m.end)
		switch {
		case m.keeps && kind == "tilt":
			a += rigHeight(sc.towards(m.who, stop)) - rigHeight(sc.towards(m.who, m.start))
		case m.keeps:
			const steps = 12
			for k := range steps {
				at := func(k int) vec { return sc.towards(m.who, m.start+(stop-m.start)*float64(k)/steps) }
				a += rigTurn(at(k), at(k+1))
			}
		case m.who != "" && kind == "tilt":
			a += (rigHeight(sc.towards(m.who, m.end)) - a) * rigDone(t, m.start, m.end, m.even)
		case m.who != "":
			a += rigTurn(rigLooks(a), sc.towards(m.who, m.end)) * rigDone(t, m.start, m.end, m.even)
		default:
			a += m.by * math.Pi / 180 * rigDone(t, m.start, m.end, m.even)
		}
	}
	return a
}

// settle finds where the camera looks as each of its ways begins.
func (sc *rigScene) settle() {
	for moved := true; moved; {
		moved = false
		for i, m := range sc.moves {
			if m.kind == "dolly" || m.kind == "track" {
				a := sc.angle("pan", m.start)
				moved = moved || math.Abs(a-sc.heads[i]) > 1e-13
				sc.heads[i] = a
			}
		}
	}
}

// sees is where the lens sees somebody: along, to the right, above.
func (sc *rigScene) sees(who string, t float64) vec {
	pan, tilt := sc.angle("pan", t), sc.angle("tilt", t)
	sin, cos := math.Sin(pan), math.Cos(pan)
	v := sc.towards(who, t)
	turned := vec{cos*v[0] - sin*v[1], sin*v[0] + cos*v[1], v[2]} // the floor turned to the left, as the camera has it
	sin, cos = math.Sin(tilt), math.Cos(tilt)
	return vec{cos*turned[1] + sin*turned[2], turned[0], cos*turned[2] - sin*turned[1]}
}

const rigFocal = 0.05

// rigFromLens halves the thin-lens equation: the sensor is as far as the subject is
// from the lens and the image behind it, together.
func rigFromLens(d float64) float64 {
	if d < 4*rigFocal {
		return math.NaN()
	}
	lo, hi := 2*rigFocal, d
	for range 200 {
		if x := (lo + hi) / 2; x+1/(1/rigFocal-1/x) < d {
			lo = x
		} else {
			hi = x
		}
	}
	return (lo + hi) / 2
}

// focus is how far from the lens the focus is.
func (sc *rigScene) focus(t float64) float64 {
	x := rigFromLens(sc.sees(sc.first, 0)[0])
	for _, k := range sc.racks {
		if t < k.start {
			break
		}
		to := rigFromLens(sc.sees(k.who, math.Min(t, k.end))[0])
		if !k.follow {
			u := rigDone(t, k.start, k.end, k.even)
			to = 1 / ((1-u)/x + u/rigFromLens(sc.sees(k.who, k.end)[0]))
		}
		x = to
	}
	return x
}

// shows says where a point is to the picture, and how near to a border it is.
func rigShows(v vec, x float64) (frame plan.Frame, border float64) {
	image := 1 / (1/rigFocal - 1/x)
	d := rigFromLens(v[0])
	across, up := math.Abs(v[1])/d*image/0.012, math.Abs(v[2])/d*image/0.009
	far := math.Max(across, up)
	switch border = math.Min(math.Abs(far-0.93), math.Abs(far-1)); {
	case far <= 0.93:
		return plan.InFrame, border
	case far <= 1:
		return plan.EdgeOfFrame, border
	}
	return plan.OutOfFrame, border
}

const rigScenes = 100

// rigAllowed are the errors that a scene drawn at random may have: the figures stand.
var rigAllowed = []string{"runs-into", "inside-closest", "not-on-subject"}

// Every frame of every scene is as the computation by brute force has it: where the
// camera looks, the distance, the side and the height of everyone, the focus, and who is
// in the picture.
func TestTurningCameraAgainstBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 16))
	frames, inside, turned := 0, 0, 0
	for n := range rigScenes {
		sc := drawRig(r)
		sc.settle()
		text := "plan \"Turns\"\nrate 24\n" + strings.Join(sc.lines, "\n") + "\n"
		res := interpret("turns.pull", text)
		if len(res.Plan.Shots) != 1 {
			t.Fatalf("no shot of\n%s\n%v", text, res.Findings)
		}
		for _, d := range res.Findings {
			if d.Severity == lang.Error && !slices.Contains(rigAllowed, string(d.Code)) {
				t.Fatalf("%s: %s\n%s", d.Code, d.Message, text)
			}
		}
		sh := res.Plan.Shots[0]
		if sh.Optics.Turns() {
			turned++
		}
		for i := range 12 * 24 {
			at := float64(i) / 24
			if problem := sc.compare(sh, at, &inside); problem != "" {
				t.Fatalf("scene %d at %.3f s: %s\n%s", n, at, problem, text)
			}
			frames++
		}
	}
	if frames != rigScenes*288 || inside < frames || turned < rigScenes*2/3 {
		t.Errorf("%d frames, %d times somebody in the picture, %d scenes that turn: too few", frames, inside, turned)
	}
}

// compare returns what differs at a time; "" for nothing.
func (sc *rigScene) compare(sh *plan.Shot, at float64, inside *int) string {
	p := sh.Optics.Pose(at)
	c := sc.camera(at)
	if got := (vec{p.X, p.Y, p.Z}); !rigClose(got.minus(c).long(), 0) {
		return fmt.Sprintf("the camera is at %v, by brute force at %v", got, c)
	}
	if pan, tilt := sc.angle("pan", at)*180/math.Pi, sc.angle("tilt", at)*180/math.Pi; !rigClose(p.Pan, pan) || !rigClose(p.Tilt, tilt) {
		return fmt.Sprintf("it looks %v, %v, by brute force %v, %v", p.Pan, p.Tilt, pan, tilt)
	}
	x, want := sh.FocusAt(at), sc.focus(at)
	if known := !math.IsNaN(want); known != !math.IsNaN(x) || known && !rigClose(x, want) {
		return fmt.Sprintf("the focus is at %v, by brute force at %v", x, want)
	}
	for _, who := range rigPeople {
		u, v := sh.Subject(who), sc.sees(who, at)
		if got := (vec{sh.DistanceAt(u, at), sh.SideAt(u, at), sh.AboveAt(u, at)}); !rigClose(got.minus(v).long(), 0) {
			return fmt.Sprintf("%s is seen at %v, by brute force at %v", who, got, v)
		}
		if math.IsNaN(want) || v[0] <= 4*rigFocal {
			continue
		}
		frame, border := rigShows(v, want)
		if got := sh.FrameAt(u, at); got != frame && border > 1e-9 {
			return fmt.Sprintf("%s is %v, by brute force %v", who, got, frame)
		}
		if frame != plan.OutOfFrame {
			*inside++
		}
	}
	return ""
}
