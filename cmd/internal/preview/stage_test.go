package preview

import (
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"os"
	"path/filepath"
	"testing"

	"pullscore/cmd/internal/preview/sampled"
	"pullscore/interp/plan"
	"pullscore/optics"
)

// stageOf asks for a shot of an example, at a stop; "" is the plan's.
func stageOf(t testing.TB, file, shot, stop string) (*plan.Shot, *heard) {
	t.Helper()
	s := serve(t, Options{})
	state := exampleState(t, 1, file)
	s.Show(state)
	url := fmt.Sprintf("%sapi/stage?plan=%s&shot=%s", s.URL(), state.Plans[0].Key, shot)
	if stop != "" {
		url += "&stop=" + stop
	}
	res, body := ask(t, http.MethodGet, url, nil, "")
	if res.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", res.StatusCode, body)
	}
	h := new(heard)
	if err := json.Unmarshal([]byte(body), h); err != nil {
		t.Fatal(err)
	}
	return shotOf(state.Plans[0].Good, shot), h
}

// heard is what a test reads of an answer; a nil figure is infinite.
type heard struct {
	Stop     string     `json:"stop"`
	Samples  int        `json:"samples"`
	Every    int        `json:"every"`
	Width    float64    `json:"arcmin_per_width"`
	Focus    []*float64 `json:"focus_m"`
	Scale    []*float64 `json:"scale_m"`
	Subjects []struct {
		Name     string     `json:"name"`
		Person   bool       `json:"person"`
		Distance []*float64 `json:"lens_distance_m"`
		Blur     []*float64 `json:"blur_arcmin"`
	} `json:"subjects"`
	Stops []struct{ Mark float64 } `json:"stops"`
}

func at(series []*float64, i int) float64 {
	if len(series) == 1 {
		i = 0
	}
	if series[i] == nil {
		return math.Inf(1)
	}
	return *series[i]
}

func close6(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-6*math.Max(math.Abs(a), math.Abs(b)) || math.Max(math.Abs(a), math.Abs(b)) < 1e-9
}

func TestStageTellsTheCurves(t *testing.T) {
	for _, c := range []struct{ file, shot string }{
		{"ticket-window.pull", "12A"}, {"gangway.pull", "18A"}, {"loft.pull", "62A"}, {"zoom.pull", "7A"}, {"zoom.pull", "7B"}, {"crossing.pull", "55-B"},
	} {
		t.Run(c.shot, func(t *testing.T) {
			shot, h := stageOf(t, c.file, c.shot, "")
			if want := int(shot.Rate.Frames(float64(shot.Duration))) + 1; h.Samples != want || h.Every != 1 {
				t.Fatalf("%d samples, one in %d, want %d", h.Samples, h.Every, want)
			}
			for i := 0; i < h.Samples; i += 7 {
				now := shot.Rate.Seconds(int64(i))
				if !close6(at(h.Focus, i), shot.FocusAt(now)) {
					t.Fatalf("frame %d: the focus is at %g, want %g", i, at(h.Focus, i), shot.FocusAt(now))
				}
				for k, u := range shot.Subjects {
					if got, want := at(h.Subjects[k].Blur, i), shot.BlurAt(u, now); !close6(got, want) {
						t.Fatalf("frame %d: %s blurs by %g, want %g", i, u.Name, got, want)
					}
				}
			}
		})
	}
}

// The disc of a far point grows as the opening does: it is in proportion to
// one over the f-number, whatever else stays.
func TestStageAtAnotherStop(t *testing.T) {
	shot, planned := stageOf(t, "ticket-window.pull", "12A", "")
	_, wide := stageOf(t, "ticket-window.pull", "12A", "2")
	if wide.Stop != "f/2" {
		t.Errorf("the stop is %s", wide.Stop)
	}
	for k := range planned.Subjects {
		for i := 0; i < planned.Samples; i += 11 {
			if a, b := at(planned.Subjects[k].Blur, i)*float64(shot.FNumber)/2, at(wide.Subjects[k].Blur, i); math.Abs(a-b) > 1e-5*math.Max(a, 1e-3) {
				t.Fatalf("frame %d: the blur at f/2 is %g, want %g", i, b, a)
			}
		}
	}
	for _, s := range planned.Stops {
		if s.Mark < 1.7 || s.Mark > 22 {
			t.Errorf("the lens has no stop %g", s.Mark)
		}
	}
}

func TestStageRefuses(t *testing.T) {
	s := serve(t, Options{})
	state := exampleState(t, 1, "ticket-window.pull")
	s.Show(state)
	key := state.Plans[0].Key
	for query, want := range map[string]int{
		"plan=none&shot=12A":                 http.StatusNotFound,
		"plan=" + key + "&shot=99":           http.StatusNotFound,
		"plan=" + key:                        http.StatusNotFound,
		"plan=" + key + "&shot=12A&stop=1":   http.StatusBadRequest,
		"plan=" + key + "&shot=12A&stop=x":   http.StatusBadRequest,
		"plan=" + key + "&shot=12A&stop=NaN": http.StatusBadRequest,
		"plan=" + key + "&shot=12A&stop=-4":  http.StatusBadRequest,
	} {
		if res, body := ask(t, http.MethodGet, s.URL()+"api/stage?"+query, nil, ""); res.StatusCode != want {
			t.Errorf("%s: %d %.80s", query, res.StatusCode, body)
		}
	}
}

// Where the lens moves as a whole, the plane in focus is imaged at f/(x-f) of
// its size, and what is told of the size agrees.
func TestScaleIsMagnificationInFocus(t *testing.T) {
	shot := &plan.Shot{}
	shot.Optics = plan.Optics{Focal: plan.Still(0.05), Pupil: 1.25, Number: 2.8, Breathes: math.NaN(), FromLens: true}
	for _, x := range []float64{0.3, 1, 4, 1000} {
		shot.Optics.Start = plan.Target{Distance: x}
		got := scaleAt(shot, 0) / (x + pupilBehind(shot, 0))
		if want := optics.Magnification(0.05, x); math.Abs(got/want-1) > 1e-12 {
			t.Errorf("at %g m: %g, want %g", x, got, want)
		}
	}
	shot.Optics.Start.Distance = math.Inf(1)
	if got := scaleAt(shot, 0); got != 0.05 {
		t.Errorf("at infinity: %g", got)
	}
}

func TestLongShotsAreToldShort(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	p := reading(t, path, src, nil)
	long := *p.Good.Shots[0]
	long.Duration = 4 * 3600
	told := tellStage(&long, nil, nil)
	if told.Every < 2 || told.Samples*told.Every < long.Rate.Frames(float64(long.Duration)) {
		t.Errorf("%d samples of every %d frames", told.Samples, told.Every)
	}
	data, err := json.Marshal(told)
	if err != nil || len(data) > 4<<20 {
		t.Errorf("%d bytes, %v", len(data), err)
	}
}

func TestSeriesWritesWhatIsNone(t *testing.T) {
	got, err := json.Marshal(sampled.Series{1.23456789, math.Inf(1), math.NaN(), 0})
	if err != nil || string(got) != "[1.234568,null,0,0]" {
		t.Errorf("%s, %v", got, err)
	}
}

// A vector is a case for the page's own formulas. Infinite figures are null.
type vector struct {
	Focal  float64  `json:"focal"`
	Number float64  `json:"number"`
	Behind float64  `json:"behind"`
	D      *float64 `json:"d"`
	X      *float64 `json:"x"`
	Blur   *float64 `json:"blur"`
	Sensor *float64 `json:"from_sensor"` // the tape that FromSensor takes to x
}

// The page's formulas are tested by node against these, which come from the
// program's; PULLSCORE_UPDATE=1 writes them anew.
func TestVectorsForThePage(t *testing.T) {
	number := func(v float64) *float64 {
		if math.IsInf(v, 0) {
			return nil
		}
		return &v
	}
	var list []vector
	for _, f := range []float64{0.018, 0.05, 0.085} {
		for _, pupil := range []float64{0.8, 1, 1.5} {
			set := optics.Setting{Focal: f, Number: 2.8, Criterion: 2e-5, Pupil: pupil}
			behind := f * (1/pupil - 1)
			for _, d := range []float64{f / 2, 0.4, 1, 3, math.Inf(1)} {
				for _, x := range []float64{f, 0.4, 1.2, 8, math.Inf(1)} {
					list = append(list, vector{f, 2.8, behind, number(d), number(x), number(set.Blur(d, x)), number(optics.ToSensor(x, f))})
				}
			}
		}
	}
	file := filepath.Join("webtest", "vectors.json")
	if os.Getenv("PULLSCORE_UPDATE") != "" {
		data, err := json.Marshal(list)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, append(data, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var old []vector
	if err := json.Unmarshal(data, &old); err != nil || len(old) != len(list) {
		t.Fatalf("%d vectors of %d, %v", len(old), len(list), err)
	}
	for i := range list {
		if !same6(old[i].Blur, list[i].Blur) || !same6(old[i].Sensor, list[i].Sensor) {
			t.Fatalf("vector %d is not what the program computes", i)
		}
	}
}

// same6 compares figures that may be infinite.
func same6(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return close6(*a, *b)
}
