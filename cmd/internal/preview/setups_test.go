package preview

import (
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"slices"
	"testing"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
)

// scene returns a state of a plan with a scene that two cameras shoot at once.
func scene(t testing.TB) *rebuild.State {
	t.Helper()
	p := plans.Scene()
	return &rebuild.State{Version: 1, Plans: []*rebuild.Plan{{Key: "ks", Name: "office.pull", Path: "office.pull", Version: 1, Latest: p, Good: p, Sheets: sheets(t, p)}}}
}

// The page is told which shots have the action of a scene, which part of it, and which run
// together.
func TestSetupsAreTold(t *testing.T) {
	p := plans.Scene()
	a, b, boat := p.Shots[0], p.Shots[1], p.Shots[2]
	a.Covers = plan.Interval{2, 8}
	first, second := tellSetup(p, a), tellSetup(p, b)
	if first == nil || second == nil || first.Scene != second.Scene || first.From != 2 || first.To != 8 || second.From != 0 {
		t.Fatalf("told %+v and %+v", first, second)
	}
	if !slices.Equal(first.Beside, []string{"18B"}) || !slices.Equal(second.Beside, []string{"18A"}) {
		t.Errorf("beside %v and %v", first.Beside, second.Beside)
	}
	if tellSetup(p, boat) != nil {
		t.Error("a shot of no scene is a set-up")
	}
	b.RunsWith = ""
	if got := tellSetup(p, a).Beside; len(got) != 0 {
		t.Errorf("beside a shot that runs alone: %v", got)
	}
	a.RunsWith, b.RunsWith = "18B", "18A"
	tellSetup(p, a) // in a circle, which the interpreter refuses, it ends
	b.Action = false
	if tellSetup(p, b) != nil {
		t.Error("a shot with a clock of its own has a moment of the action")
	}
}

// The stage is told a placed camera on the floor of its scene, and how high the eyes of its
// people are over what they stand on.
func TestStageTellsThePlacedCamera(t *testing.T) {
	state := scene(t)
	shot := state.Plans[0].Good.Shots[0]
	on := state.Plans[0].Good.Scenes[0].Subjects[0].Path
	for i := range on { // PEVIN stands on a step of 20 cm
		on[i].High += 0.2
	}
	s := serve(t, Options{})
	s.Show(state)
	var told struct {
		Samples  int
		Camera   map[string]json.RawMessage
		Subjects []struct {
			Name  string
			Above []*float64 `json:"above_m"`
			Eyes  []*float64 `json:"eyes_m"`
		}
	}
	_, body := ask(t, http.MethodGet, fmt.Sprintf("%sapi/stage?plan=ks&shot=18A", s.URL()), nil, "")
	if err := json.Unmarshal([]byte(body), &told); err != nil {
		t.Fatal(err)
	}
	if string(told.Camera["floor_m"]) != "0" {
		t.Errorf("the floor is at %s", told.Camera["floor_m"])
	}
	for i := range told.Samples {
		now := shot.Rate.Seconds(int64(i))
		pose := shot.Stands(now)
		for name, want := range map[string]float64{"right_m": pose.X, "upstage_m": pose.Y, "high_m": pose.Z, "pan_deg": pose.Pan, "tilt_deg": pose.Tilt} {
			var all []*float64
			if err := json.Unmarshal(told.Camera[name], &all); err != nil || math.Abs(at(all, i)-want) > 1e-5 {
				t.Fatalf("frame %d: %s is %g, want %g (%v)", i, name, at(all, i), want, err)
			}
		}
		for k, u := range shot.Subjects {
			x, y, z := shot.OnFloor(u, now)
			if got, want := at(told.Subjects[k].Above, i), pose.View(x, y, z).Above; math.Abs(got-want) > 1e-5 {
				t.Fatalf("frame %d: %s is told %g above, want %g", i, u.Name, got, want)
			}
		}
	}
	if pevin, letter := told.Subjects[0], told.Subjects[1]; len(pevin.Eyes) == 0 || math.Abs(*pevin.Eyes[0]-1.5) > 1e-6 || letter.Eyes != nil {
		t.Errorf("eyes %v over a step, and of a letter %v", pevin.Eyes, letter.Eyes)
	}
	_, body = ask(t, http.MethodGet, fmt.Sprintf("%sapi/stage?plan=ks&shot=18C", s.URL()), nil, "")
	told.Camera, told.Subjects = nil, nil
	if err := json.Unmarshal([]byte(body), &told); err != nil || told.Camera != nil || told.Subjects[0].Eyes != nil {
		t.Errorf("a shot of no scene is told %v: %v", told, err)
	}
}

// By keys the page goes to the next set-up at the same moment of the action, and shows the
// shot that runs with it beside it.
func TestSetupKeys(t *testing.T) {
	state := scene(t)
	first := state.Plans[0].Good.Shots[0]
	first.Covers = plan.Interval{-1, 9} // a second of it is before the action: it differs from 18B
	s := serve(t, Options{})
	s.Show(state)
	b := staged(t, s, 1440, 900, "18A")
	b.seek(3)
	b.picture("18A")
	b.press("w")
	b.until(`document.querySelector('[data-view="B"] .set-up')?.textContent === "18B" && document.querySelector('[data-view="A"] .set-up').textContent === "18A"`)
	b.until(`!document.querySelector('[data-view="B"]').hidden && document.querySelector('[data-view="B"] .blur')`)
	sample := `Number(document.querySelector('[data-view="%s"] .blurs').dataset.sample)`
	b.until(fmt.Sprintf(sample+" === 72 && "+sample+" === 48", "A", "B"))
	b.picture("beside")
	b.press("s")
	b.until(`document.querySelector("#stage").dataset.shot === "18B" && document.querySelector(".frame-number").value.startsWith("frame 48 ")`)
	b.until(fmt.Sprintf(`document.querySelector('[data-view="B"] .set-up').textContent === "18A" && `+sample+" === 72", "B"))
	b.picture("18B")
	b.press("w")
	b.until(`document.querySelector('[data-view="B"]').hidden && document.querySelector('[data-view="A"] .set-up').hidden`)
	b.seek(9.5)
	b.press("S")
	b.until(`document.querySelector("#live").textContent.startsWith("No other set-up")`)
	b.choose("18C")
	b.until(`document.querySelector(".mates").hidden`)
}
