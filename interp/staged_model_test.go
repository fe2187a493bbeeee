// Staged shots against vectors: where everyone is to the lens at every frame, computed a
// second time here with nothing but sums and products.

package interp_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

func (a vec) to(b vec, u float64) (c vec) {
	for i := range a {
		c[i] = a[i] + (b[i]-a[i])*u
	}
	return c
}

const degree = math.Pi / 180

// bearings returns the pan and the tilt from a camera to a point, degrees.
func bearings(cam, p vec) (pan, tilt float64) {
	v := p.minus(cam)
	return math.Atan2(v[0], v[1]) / degree, math.Atan2(v[2], math.Hypot(v[0], v[1])) / degree
}

// seenFrom returns how far along, across and above the axis a point is; delta is what a
// tape reads more.
func seenFrom(cam vec, pan, tilt float64, p vec, delta float64) vec {
	sp, cp := math.Sincos(pan * degree)
	st, ct := math.Sincos(tilt * degree)
	v := p.minus(cam)
	far := math.Sqrt(v.dot(v))
	k := (far + delta) / far
	return vec{k * v.dot(vec{sp * ct, cp * ct, st}), k * v.dot(vec{cp, -sp, 0}), k * v.dot(vec{-sp * st, -cp * st, ct})}
}

// shareOf returns how much of a move is done at t.
func shareOf(t, start, long float64, smooth bool) float64 {
	return rigDone(t, start, start+long, !smooth)
}

func shortest(deg float64) float64 { return deg - 360*math.Ceil((deg-180)/360) }

const stagedKit = `plan "Staged"
rate 24
camera A
  sensor 24.89 x 18.66 mm
  on dolly
lens "50"
  focal 50 mm
  stops f/1.4 to f/16
  closest 30 cm
  ring 220 deg, diameter 90 mm
with camera A, lens "50", stop f/4
`

// A drawnStaging is a staged shot with all that is needed to compute it again.
type drawnStaging struct {
	text               string
	anna0, anna1, bram vec
	cam0, cam1         vec
	delta              float64
	walkSmooth         bool
}

func (d *drawnStaging) anna(t float64) vec {
	return d.anna0.to(d.anna1, shareOf(t, 1.5, 3, d.walkSmooth))
}

func (d *drawnStaging) camera(t float64) (at vec, pan, tilt float64) {
	at = d.cam0.to(d.cam1, shareOf(t, 2, 2.5, true))
	pan, tilt = d.aim()
	turned, _ := bearings(d.cam0.to(d.cam1, shareOf(4.5, 2, 2.5, true)), d.bram)
	pan += shortest(turned-pan) * shareOf(t, 3, 1.5, true)
	if t > 6 {
		was, _ := bearings(d.cam1, d.anna(6))
		is, _ := bearings(d.cam1, d.anna(min(t, 8)))
		pan += shortest(is - was)
	}
	return at, pan, tilt + 4*shareOf(t, 5, 1, true)
}

// aim returns where the lens looks at first: at the middle of the two.
func (d *drawnStaging) aim() (pan, tilt float64) {
	p1, t1 := bearings(d.cam0, d.anna0)
	p2, t2 := bearings(d.cam0, d.bram)
	return p1 + shortest(p2-p1)/2, (t1 + t2) / 2
}

func (d *drawnStaging) see(who string, t float64) vec {
	at, pan, tilt := d.camera(t)
	if who == "BRAM" {
		return seenFrom(at, pan, tilt, d.bram, 0)
	}
	return seenFrom(at, pan, tilt, d.anna(t), d.delta*(1-shareOf(t, 1.5, 3, d.walkSmooth)))
}

// drawStaging draws a shot in which a person walks and sits down, the camera is taken to
// another place, pans with a rack, tilts and pans with somebody.
func drawStaging(r *rand.Rand) *drawnStaging {
	cm := func(lo, hi int) int { return lo + r.IntN(hi-lo+1) }
	d := &drawnStaging{walkSmooth: r.IntN(2) == 0}
	ways := func(right, upstage int) string { return fmt.Sprintf("%d cm right, %d cm upstage", right, upstage) }
	far := func(right, upstage, high int) vec {
		return vec{float64(right) / 100, float64(upstage) / 100, float64(high) / 100}
	}
	ax, ay, ae, bx, by, be := cm(0, 80), cm(100, 250), cm(140, 180), cm(90, 160), cm(300, 450), cm(120, 180)
	wx, wy, we := cm(0, 160), cm(60, 300), cm(90, 130)
	cx, cy, cz, mx, my, mz := cm(0, 150), cm(200, 400), cm(60, 200), cm(0, 150), cm(150, 350), cm(60, 200)
	d.anna0, d.anna1, d.bram = far(ax, ay, ae), far(wx, wy, we), far(bx, by, be)
	d.cam0, d.cam1 = far(cx, -cy, cz), far(mx, -my, mz)
	smooth := ""
	if d.walkSmooth {
		smooth = ", smooth"
	}
	measured := ""
	if r.IntN(2) == 0 {
		v := d.anna0.minus(d.cam0)
		reads := math.Round(math.Sqrt(v.dot(v))*1000+float64(cm(-60, 60))) / 1000
		d.delta = reads - math.Sqrt(v.dot(v))
		measured = fmt.Sprintf("  measured ANNA %g m\n", reads)
	}
	d.text = stagedKit + fmt.Sprintf(`scene "S"
  subject ANNA at %s, eyes %d cm
  subject BRAM at %s, eyes %d cm
  BRAM: "Sit down.", lasting 1 s
  ANNA moves to %s over 3 s, eyes %d cm, on 1.5 s%s
  pause 9 s
shot 1
  covers all
  camera at %d cm right, %d cm downstage, %d cm high, aims at ANNA and BRAM
%s  start on ANNA
  camera moves to %d cm right, %d cm downstage, %d cm high over 2.5 s, on 2 s
  pan to BRAM, on 3 s, over 1.5 s
  rack to BRAM, with pan
  tilt up 4 deg, on 5 s, over 1 s
  pan with ANNA, on 6 s, until 8 s
  rack to ANNA, on 6.5 s, over 1 s
`, ways(ax, ay), ae, ways(bx, by), be, ways(wx, wy), we, smooth, cx, cy, cz, measured, mx, my, mz)
	return d
}

// inPicture returns how far from the middle of the picture a point is, 1 at its border;
// focus is what the lens is focused on, both from the sensor.
func inPicture(v vec, focus float64) float64 {
	const f = 0.05
	lens := func(d float64) float64 { return (d + math.Sqrt(d*d-4*f*d)) / 2 }
	if v[0] <= 4*f {
		return math.Inf(1)
	}
	x, s := lens(focus), lens(v[0])
	half := s / (2 * f * x / (x - f))
	return max(math.Abs(v[1])/(half*0.02489), math.Abs(v[2])/(half*0.01866))
}

// TestStagedShotsAtEveryFrame compares every frame of twelve shots.
func TestStagedShotsAtEveryFrame(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 7))
	measured, leaves := 0, 0
	for range 12 {
		d := drawStaging(r)
		res := interpret("plan.pull", d.text)
		if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pulls) != 2 {
			t.Fatalf("%+v\n%s", res.Findings, d.text)
		}
		if d.delta != 0 {
			measured++
		}
		sh := res.Plan.Shots[0]
		for frame := range 24 * 9 {
			d.compareFrame(t, sh, float64(frame)/24)
		}
		for i, who := range []string{"BRAM", "ANNA"} { // where racks land
			land := float64(sh.Pulls[i].Land)
			if got, want := sh.ToTape(sh.FocusAt(land), land), d.see(who, land)[0]; math.Abs(got-want) > 1e-6 {
				t.Errorf("rack %d lands at %v m, and %s is %v m away\n%s", i+1, got, who, want, d.text)
			}
		}
		told := false
		for _, f := range res.Findings {
			told = told || f.Code == "leaves-frame" && strings.Contains(f.Message, "ANNA leaves") || f.Code == "out-of-frame"
		}
		most := 0.0
		for k := 0; k < 72; k++ { // the focus rests on ANNA, who is at first in the picture
			at := float64(k) / 24
			most = max(most, inPicture(d.see("ANNA", at), d.see("ANNA", 0)[0]))
		}
		if most > 1.05 && !told {
			t.Errorf("ANNA leaves the picture (%.3f), and nobody tells\n%s", most, d.text)
		}
		if told {
			leaves++
		}
	}
	if measured < 3 || leaves < 2 {
		t.Errorf("%d shots have a tape and %d lose somebody: too few", measured, leaves)
	}
}

func (d *drawnStaging) compareFrame(t *testing.T, sh *plan.Shot, at float64) {
	t.Helper()
	for _, u := range sh.Subjects {
		want := d.see(u.Name, at)
		v := sh.ViewOf(u, at)
		if math.Abs(v.Along-want[0])+math.Abs(v.Across-want[1])+math.Abs(v.Above-want[2]) > 1e-9 {
			t.Fatalf("%s at %v s is seen at %v, want %v\n%s", u.Name, at, v, want, d.text)
		}
		if v.Tape() < v.Along {
			t.Fatalf("%s: the tape is %v and the focus distance %v", u.Name, v.Tape(), v.Along)
		}
		focus := sh.ToTape(sh.FocusAt(at), at)
		share := inPicture(want, focus)
		if math.Abs(share-1) < 1e-6 || math.Abs(share-0.93) < 1e-6 {
			continue // the border itself
		}
		is := plan.InFrame
		if share > 0.93 {
			is = plan.EdgeOfFrame
		}
		if share > 1 {
			is = plan.OutOfFrame
		}
		if got := sh.FrameAt(u, at); got != is {
			t.Fatalf("%s at %v s is %v in the picture, want %v (%v of half)\n%s", u.Name, at, got, is, share, d.text)
		}
	}
}
