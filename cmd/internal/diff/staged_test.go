package diff

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// office is what two set-ups of a scene say, before they are staged: each has the same
// lines, and the focus rests on one of two people, who stand side by side.
const office = `plan "Office"
rate 24
` + kit + `subject PEVIN at 3 m, 20 cm left
subject INES at 5 m, 20 cm right
shot 1A
  with camera A, lens "75", stop f/4
  start on PEVIN
  PEVIN: "You are late.", from 1 s to 2 s
  INES: "So was the letter.", from 3 s to 4.5 s
  lasts 6 s
shot 1B
  with camera A, lens "75", stop f/4
  start on INES
  PEVIN: "You are late.", from 1 s to 2 s
  INES: "So was the letter.", from 3 s to 4.5 s
  lasts 6 s
`

// stagedOffice stages both set-ups of the office as the camera of each has the people.
func stagedOffice(t *testing.T) State {
	t.Helper()
	s := state(t, office)
	s.Plan.Scenes = []*plan.Scene{{
		Title: "The office", Origin: "the corner of the desk", Duration: 6, Setups: []string{"1A", "1B"},
		Marks: []plan.FloorMark{{Name: "DOOR", Right: 0.2, Upstage: 3}, {Name: "CHAIR", Right: -0.2, Upstage: 1}},
		Subjects: []plan.Staged{
			{Name: "PEVIN", Person: true, Eyes: 1.5, At: "CHAIR", Path: []plan.FloorPoint{{Right: -0.2, Upstage: 1, High: 1.5}}},
			{Name: "INES", Person: true, Eyes: 1.5, At: "DOOR", Path: []plan.FloorPoint{{Right: 0.2, Upstage: 3, High: 1.5}}},
		},
		Lines: slices.Clone(s.Plan.Shots[0].Lines),
		Cues:  []plan.Cue{{Name: "bell", T: 5}},
		Cuts:  []plan.SceneCut{{To: "1B", T: 3}},
		File:  "office.pull",
	}}
	for _, shot := range s.Plan.Shots {
		shot.Staging = &plan.Staging{
			Scene: "The office", Covers: plan.Interval{0, 6}, Aspect: 1.33, Action: true, Placed: true,
			Home: plan.Pose{Y: -2, Z: 1.5},
		}
		shot.Optics.Rig = &plan.Rig{}
		for _, u := range shot.Subjects {
			u.Up = plan.Still(0)
		}
		shot.FillSeen()
	}
	return s
}

// shiftAll shifts somebody on the floor of the scene, and of each of its set-ups.
func shiftAll(p *plan.Plan, who string, right, upstage float64) {
	for i := range p.Scenes[0].Subjects {
		if u := &p.Scenes[0].Subjects[i]; u.Name == who {
			u.Path[0].Right += plan.Number(right)
			u.Path[0].Upstage += plan.Number(upstage)
		}
	}
	for _, s := range p.Shots {
		u := s.Subject(who)
		u.Across, u.Along = plan.Still(u.Across.At(0)+right), plan.Still(u.Along.At(0)+upstage)
		u.Distance, u.Side = u.Distance+plan.Number(upstage), u.Side+plan.Number(right)
	}
}

// rehome takes the camera of a shot elsewhere, and leaves everybody where they are.
func rehome(s *plan.Shot, home plan.Pose) {
	was := *s.Staging
	s.Home = home
	s.Optics.Rig.Tilt = home.Tilt
	for _, u := range s.Subjects {
		x, y, z := s.FromFloor(was.OnFloor(u.Across.At(0), u.Along.At(0), u.Up.At(0)))
		u.Across, u.Along, u.Up = plan.Still(x), plan.Still(y), plan.Still(z)
		u.Distance, u.Side = plan.Number(s.ViewOf(u, 0).Along), plan.Number(s.ViewOf(u, 0).Across)
	}
	s.FillSeen()
}

// What changes in a scene is told there, once, and of the shots what they do themselves.
func TestScenesAreCompared(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*plan.Plan)
		want []string // all that is told
	}{
		{"nothing", func(*plan.Plan) {}, nil},
		{"a mark, with who stands there", func(p *plan.Plan) {
			p.Scenes[0].Marks[0].Right += 0.2
			p.Scenes[0].Marks[0].Upstage -= 1
			shiftAll(p, "INES", 0.2, -1)
		}, []string{"scene “The office”: mark DOOR: moved 20 cm right, 1 m downstage"}},
		{"a person, by other ways", func(p *plan.Plan) {
			shiftAll(p, "INES", 0.2, 0)
			p.Scenes[0].Subjects[1].At = "DOOR, 20 cm right"
		}, []string{"scene “The office”: INES: moved 20 cm right"}},
		{"eyes", func(p *plan.Plan) {
			p.Scenes[0].Subjects[1].Eyes, p.Scenes[0].Subjects[1].Path[0].High = 1.3, 1.3
		}, []string{"scene “The office”: INES: eyes 1.5 m -> 1.3 m"}},
		{"a line that is later, and all that hangs on it", func(p *plan.Plan) {
			later := func(l *plan.Line) { l.Start, l.End = l.Start+0.5, l.End+0.5 }
			p.Scenes[0].Lines = slices.Clone(p.Scenes[0].Lines)
			later(&p.Scenes[0].Lines[1])
			for _, s := range p.Shots {
				later(&s.Lines[1])
			}
		}, []string{"scene “The office”: INES “So was the letter.”: 12 frames (0.5 s) later"}},
		{"a longer scene", func(p *plan.Plan) {
			p.Scenes[0].Duration = 7
			for _, s := range p.Shots {
				s.Duration, s.Covers[1] = 7, 7
			}
		}, []string{"scene “The office”: lasts 6 s -> 7 s"}},
		{"a cut", func(p *plan.Plan) { p.Scenes[0].Cuts[0].T = 2.5 },
			[]string{"scene “The office”: cut to 1B: 12 frames (0.5 s) earlier"}},
		{"two cuts", func(p *plan.Plan) { p.Scenes[0].Cuts = []plan.SceneCut{{To: "1A", T: 1}} },
			[]string{"scene “The office”: cut to 1A: new", "scene “The office”: cut to 1B: gone"}},
		{"a line of action", func(p *plan.Plan) {
			p.Scenes[0].Axes = []plan.LineOfAction{{From: "INES", To: "PEVIN", Said: true}, {From: "PEVIN", To: "INES"}}
		}, []string{"scene “The office”: line of action INES to PEVIN: new"}},
		{"a camera", func(p *plan.Plan) {
			rehome(p.Shots[1], plan.Pose{X: 0.3, Y: -2.4, Z: 1.5, Pan: -4, Tilt: 3})
		}, []string{"1B: camera moved 30 cm right, 40 cm downstage and turned 4° left, 3° up"}},
		{"what a shot covers", func(p *plan.Plan) {
			p.Shots[1].Covers, p.Shots[1].Duration = plan.Interval{2, 6}, 4
			p.Shots[1].Lines = p.Shots[1].Lines[1:]
			p.Shots[1].Lines[0].Start, p.Shots[1].Lines[0].End = 1, 2.5
		}, []string{"1B: covers 0 s to 6 s -> 2 s to 6 s"}},
		{"a tape", func(p *plan.Plan) { p.Shots[0].Subjects[0].Measured = 3.1 }, []string{"1A PEVIN: tape reads none -> 3.1 m"}},
		{"whom a shot runs with", func(p *plan.Plan) { p.Shots[1].RunsWith, p.Shots[1].Matches = "1A", "1A" },
			[]string{"1B: runs with none -> 1A, matches none -> 1A"}},
		{"somebody in one set-up alone", func(p *plan.Plan) {
			u := p.Shots[1].Subjects[1]
			u.Across, u.Side = plan.Still(0.5), 0.5
		}, []string{"1B INES: moved 30 cm right"}},
		{"the zero point", func(p *plan.Plan) { p.Scenes[0].Origin = "the door" },
			[]string{"scene “The office”: zero point the corner of the desk -> the door"}},
	} {
		before, after := stagedOffice(t), stagedOffice(t)
		c.edit(after.Plan)
		var list []string
		for _, text := range Compare(before, after).Lines() {
			if !strings.Contains(text, "in the picture") && !strings.Contains(text, "held by") {
				list = append(list, text)
			}
		}
		if !slices.Equal(list, c.want) {
			t.Errorf("%s: told is\n%s\nwant\n%s", c.name, strings.Join(list, "\n"), strings.Join(c.want, "\n"))
		}
		if back := Compare(after, before); back.Differs() != (len(c.want) > 0) {
			t.Errorf("%s: backwards it differs: %v", c.name, back.Differs())
		}
	}
}

// Who holds the words of a line is told where it changes.
func TestHeldWordsAreCompared(t *testing.T) {
	before, after := stagedOffice(t), stagedOffice(t)
	if d := Compare(before, before); len(d.Scenes) != 1 || d.Differs() {
		t.Fatalf("the same: %+v", d)
	}
	shot := after.Plan.Shots[1] // the single of INES looks past her
	rehome(shot, plan.Pose{Y: -2, Z: 1.5, Pan: 60})
	d := Compare(before, after)
	want := []string{"INES on “So was the letter.”: held by 1B, now by none"}
	if list := d.Scenes[0].Phrases(false); !slices.Equal(list, want) {
		t.Errorf("held: %q", list)
	}
	if back := Compare(after, before).Scenes[0].Held[0].phrase(); back != "INES on “So was the letter.”: held by none, now by 1B" {
		t.Errorf("backwards: %s", back)
	}
	detail := d.Scenes[0].Held[0].Details[0]
	if detail.Name != "held-changed" || detail.Before != word("1B") || detail.After != word("none") {
		t.Errorf("the detail is %+v", detail)
	}
	// A set-up that is gone and held no word alone changes nothing.
	gone := stagedOffice(t)
	gone.Plan.Shots = append(gone.Plan.Shots, stagedOffice(t).Plan.Shots[1])
	gone.Plan.Shots[2].ID = "1C"
	gone.Plan.Scenes[0].Setups = append(gone.Plan.Scenes[0].Setups, "1C")
	if list := Compare(gone, before).Scenes[0].Held; len(list) > 0 {
		t.Errorf("a set-up that is gone: %+v", list)
	}
}

// A plan that is staged later, or no longer, is told as such: what stands on the floor
// is not taken for a distance.
func TestStagedLater(t *testing.T) {
	plain, staged := state(t, office), stagedOffice(t)
	there, back := Compare(plain, staged), Compare(staged, plain)
	for _, c := range []struct {
		d    Plan
		want []string
	}{
		{there, []string{
			"scene “The office”: new, 2 set-ups, 2 lines", "scene none -> “The office”", "covers none -> 0 s to 6 s",
			"the camera has a place on the floor now: 2 m downstage, 1.5 m high, pan 0°, tilt 0°",
		}},
		{back, []string{
			"scene “The office”: gone", "scene “The office” -> none", "covers 0 s to 6 s -> none", "the camera has no place on the floor any more",
		}},
	} {
		text := strings.Join(c.d.Lines(), "\n")
		for _, want := range c.want {
			if !strings.Contains(text, want) {
				t.Errorf("no %q in\n%s", want, text)
			}
		}
		if strings.Contains(text, "PEVIN:") || strings.Contains(text, "in the picture") {
			t.Errorf("people have moved:\n%s", text)
		}
	}
}

// Findings about a scene stand there, and text and JSON have what is told.
func TestScenesAreWritten(t *testing.T) {
	before, after := stagedOffice(t), stagedOffice(t)
	after.Findings = append(after.Findings, lang.Diagnostic{Code: "not-held", Severity: lang.Warning, Message: "no set-up holds INES", Scene: "The office"})
	after.Plan.Shots[0].Home.X = 0.25
	after.Plan.Shots[0].Home.Pan = 3
	after.Plan.Scenes[0].Marks[1].Right = 0.05
	d := Compare(before, after)
	if len(d.Findings) != 0 || len(d.Scenes[0].Findings) != 1 {
		t.Errorf("the finding stands elsewhere: %+v", d)
	}
	var b bytes.Buffer
	if err := WriteText(console.Screen{W: &b, Width: 100}, []Plan{d}, false); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"\nscene “The office”\n  mark CHAIR: moved 25 cm right\n", "new warning: no set-up holds INES [not-held]", "shots: 1 changed, 1 same; 1 scene changed"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	b.Reset()
	if err := WriteJSON(&b, []Plan{d}); err != nil {
		t.Fatal(err)
	}
	type detail struct {
		Name, Before, After string
		Metres, Degrees     float64
	}
	var read struct {
		Plans []struct {
			Scenes []struct {
				Scene string
				Marks []struct {
					Name    string
					Details []detail
				}
			}
			Shots []struct {
				ID      string
				Details []detail
			}
		}
	}
	if err := json.Unmarshal(b.Bytes(), &read); err != nil {
		t.Fatal(err)
	}
	mark, camera := read.Plans[0].Scenes[0].Marks[0].Details[0], read.Plans[0].Shots[0].Details[0]
	if mark.Name != "mark-moved" || mark.Metres != 0.25 || mark.Before != "20 cm left, 1 m upstage" {
		t.Errorf("the mark is %+v", mark)
	}
	if camera.Name != "camera-moved" || camera.Metres != 0.25 || camera.Degrees != 3 {
		t.Errorf("the camera is %+v", camera)
	}
	if notes := d.SceneNotes("1B"); !slices.Contains(notes, "scene “The office”: mark CHAIR: moved 25 cm right") {
		t.Errorf("the drawing of 1B notes %q", notes)
	}
	only, ok := d.Only("1A")
	if !ok || len(only.Scenes) != 1 || !only.Differs() {
		t.Errorf("only 1A: %+v", only)
	}
	if plain := Compare(state(t, office), state(t, office)); plain.Scenes != nil {
		t.Error("a plan without a scene has scenes")
	}
}

// By hand: a camera that looks 60 degrees up and turns half round looks 60 degrees aside.
func TestAnglesBetweenPoses(t *testing.T) {
	for _, c := range []struct {
		a, b plan.Pose
		want float64
	}{
		{plan.Pose{}, plan.Pose{Pan: 90}, 90},
		{plan.Pose{Tilt: 60}, plan.Pose{Pan: 180, Tilt: 60}, 60},
		{plan.Pose{Tilt: 90}, plan.Pose{Pan: 123, Tilt: 90}, 0},
		{plan.Pose{Pan: 10}, plan.Pose{Pan: 370}, 0},
		{plan.Pose{Tilt: -10}, plan.Pose{Tilt: 15}, 25},
	} {
		if got := angle(c.a, c.b); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v to %+v is %g, want %g", c.a, c.b, got, c.want)
		}
	}
}
