package preview

import (
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"os/exec"
	"strings"
	"testing"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
)

// turning is a plan whose camera pans from one person to another, tilts down to a thing,
// goes up and to the left, and turns away from everyone.
func turning(t testing.TB) (*rebuild.State, *plan.Shot) {
	t.Helper()
	const src = `plan "The loft"
rate 24
camera A
  sensor 24 x 18 mm
lens "long"
  focal 35 mm
  stops f/2.8 to f/22
  closest 50 cm
  ring 300 deg, diameter 90 mm
subject MARRIT at 2 m, 30 cm left
subject OSKEL at 2.4 m, 1.9 m right
subject LETTER at 1.5 m, 80 cm right
shot 1
  with stop f/4
  start on MARRIT
  rack to OSKEL, over 1 s, on 0.5 s
  MARRIT: "You kept it.", on 0 s
  OSKEL: "All of it.", on 2 s
  pan right 38 deg over 1 s, on 0.5 s
  tilt down 8 deg over 1 s, on 2 s
  track left 40 cm over 1.5 s, on 3.5 s
  boom up 50 cm over 1.5 s, on 3.5 s
  pan left 148 deg over 0.3 s, on 5.6 s
  lasts 6 s
shot 2
  with stop f/4
  start on MARRIT
  lasts 1 s
`
	p := reading(t, "loft.pull", src, nil)
	if p.Good == nil {
		t.Fatalf("the plan has errors: %v", p.Findings)
	}
	return &rebuild.State{Version: 1, Plans: []*rebuild.Plan{p}}, p.Good.Shots[0]
}

// The stage is told where the camera is, and everybody as it sees them; of a camera that
// stands, nothing of the kind.
func TestStageTellsTheCamera(t *testing.T) {
	state, shot := turning(t)
	s := serve(t, Options{})
	s.Show(state)
	var told struct {
		Samples  int
		Focus    []*float64 `json:"focus_m"`
		Camera   map[string][]*float64
		Subjects []struct {
			Distance []*float64 `json:"lens_distance_m"`
			Side     []*float64 `json:"side_m"`
			Above    []*float64 `json:"above_m"`
		}
	}
	url := fmt.Sprintf("%sapi/stage?plan=%s&shot=", s.URL(), state.Plans[0].Key)
	_, body := ask(t, http.MethodGet, url+"1", nil, "")
	if err := json.Unmarshal([]byte(body), &told); err != nil {
		t.Fatal(err)
	}
	for i := range told.Samples {
		now := shot.Rate.Seconds(int64(i))
		pose := shot.Optics.Pose(now)
		x := *told.Focus[min(i, len(told.Focus)-1)]
		for name, want := range map[string]float64{
			"right_m": pose.X, "upstage_m": pose.Y, "high_m": pose.Z, "pan_deg": pose.Pan, "tilt_deg": pose.Tilt,
			"pupil_ahead_m": 0.035 * x / (x - 0.035), // of a lens that is its own pupil: the length of its image
		} {
			if got := at(told.Camera[name], i); math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
				t.Fatalf("frame %d: %s is %g, want %g", i, name, got, want)
			}
		}
		for k, u := range shot.Subjects {
			view := pose.View(u.Across.At(now), u.Along.At(now), 0)
			h, lens := told.Subjects[k], shot.FromTape(view.Along, now)
			if math.IsNaN(lens) {
				lens = 0 // as the page is told of somebody behind the camera
			}
			if !close6(at(h.Side, i), view.Across) || !close6(at(h.Above, i), view.Above) || !close6(at(h.Distance, i), lens) {
				t.Fatalf("frame %d: %s is told %g to the side and %g above, want %+v", i, u.Name, at(h.Side, i), at(h.Above, i), view)
			}
		}
	}
	_, body = ask(t, http.MethodGet, url+"2", nil, "")
	told.Camera = nil
	if err := json.Unmarshal([]byte(body), &told); err != nil || told.Camera != nil {
		t.Errorf("a camera that stands is told as %v: %v", told.Camera, err)
	}
}

// The page paints a person where the camera sees them after it has turned: their forehead
// has the colour of skin there, and not where it was before.
func TestStageTurns(t *testing.T) {
	if _, err := exec.LookPath("chromium"); err != nil {
		t.Skip("skipped: chromium is not installed")
	}
	state, shot := turning(t)
	s := serve(t, Options{})
	s.Show(state)
	b := staged(t, s, 1440, 900, "1")
	oskel := shot.Subjects[1]
	forehead := func(at float64) (x, y float64) { // parts of the canvas's width from its middle
		view, o := shot.ViewOf(oskel, at), &shot.Optics
		metre := scaleAt(shot, at) / (shot.LensDistanceAt(oskel, at) + pupilBehind(shot, at)) / o.PictureW()
		return view.Across * metre, -(view.Above + 0.045) * metre
	}
	colour := func(x, y float64) [3]float64 {
		return value[[3]float64](b, fmt.Sprintf(`(() => {
			const c = document.querySelector('[data-view="A"] canvas');
			const d = c.getContext("2d").getImageData(c.width / 2 + %g * c.width, c.height / 2 + %g * c.width, 1, 1).data;
			return [d[0], d[1], d[2]];
		})()`, x, y))
	}
	skin := func(c [3]float64) bool { // #e6c6a8
		return math.Abs(c[0]-0xe6) < 12 && math.Abs(c[1]-0xc6) < 12 && math.Abs(c[2]-0xa8) < 12
	}
	for _, at := range []float64{1.75, 3.25, 5.5} {
		b.seek(at)
		b.picture(fmt.Sprintf("%g", at))
		x, y := forehead(at)
		if c := colour(x, y); !skin(c) {
			t.Errorf("at %g s the forehead, at %.3f %.3f, has the colour %v", at, x, y, c)
		}
	}
	x, y := forehead(5.5)
	b.seek(0)
	b.picture("0")
	if c := colour(x, y); skin(c) {
		t.Errorf("at the start there is skin too: %v", c)
	}
	b.seek(1)
	b.picture("1")
	told := func() string {
		return value[string](b, `[...document.querySelectorAll('[data-view="A"] .blur')].find((e) => e.dataset.subject === "OSKEL").innerText`)
	}
	if text := told(); !strings.Contains(text, "arcmin") {
		t.Errorf("of somebody in the picture the page says %q", text)
	}
	b.seek(5.95)
	if text := told(); strings.Contains(text, "arcmin") || !strings.Contains(text, "no image") {
		t.Errorf("of somebody behind the camera the page says %q", text)
	}
}
