package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// standing returns a shot of a second whose camera stands at a place of a scene, and sees
// three people and a thing there, who keep their places on the floor as the camera takes
// another.
func standing(t testing.TB, home plan.Pose) (*plan.Plan, *plan.Shot) {
	t.Helper()
	p, s := turned(t)
	scene := &plan.Scene{
		Title: "The quay", Origin: "the foot of the crane", Duration: 4,
		Marks: []plan.FloorMark{{Name: "A-B", Right: 1.25, Upstage: -0.5, High: 0}, {Name: "STEP", Right: -1, Upstage: 3, High: 0.4}},
	}
	p.Scenes = []*plan.Scene{scene}
	s.Staging = &plan.Staging{Scene: scene.Title, Covers: plan.Interval{0, 4}, Action: true, Placed: true, Home: home, Aspect: 4. / 3}
	s.Duration, s.Turns, s.Blocking = 1, nil, nil
	s.Optics.Camera, s.Optics.Rig = plan.Still(0), &plan.Rig{Tilt: home.Tilt}
	for i, at := range [][3]float64{{-1, 2, 1.5}, {0.75, 3, 1.625}} {
		x, y, z := s.FromFloor(at[0], at[1], at[2])
		u := s.Subjects[i]
		u.Across, u.Along, u.Up = plan.Still(x), plan.Still(y), plan.Still(z)
		scene.Subjects = append(scene.Subjects, plan.Staged{
			Name: u.Name, Person: i == 0, Eyes: []float64{1.5, 0}[i], Path: []plan.FloorPoint{{Right: plan.Number(at[0]), Upstage: plan.Number(at[1]), High: plan.Number(at[2])}},
		})
	}
	return p, s
}

// poses are places and ways to look, in whole millionths as exports write them.
func poses(n int) (list []plan.Pose) {
	r := rand.New(rand.NewPCG(3, 5))
	some := func(most float64) float64 { return math.Round((2*r.Float64()-1)*most*1e6) / 1e6 }
	for range n {
		list = append(list, plan.Pose{X: some(20), Y: some(20), Z: some(9), Pan: some(360), Tilt: some(90)})
	}
	return append(list, plan.Pose{}, plan.Pose{Pan: 90}, plan.Pose{Tilt: 90}, plan.Pose{Z: 1.5, Pan: -180, Tilt: -45})
}

// looks returns the axis of the lens on a floor with z up, to the right and up of the
// picture, as the pan and the tilt have them.
func looks(p plan.Pose) (f, r, u [3]float64) {
	sp, cp := math.Sincos(p.Pan * math.Pi / 180)
	st, ct := math.Sincos(p.Tilt * math.Pi / 180)
	return [3]float64{sp * ct, cp * ct, st}, [3]float64{cp, -sp, 0}, [3]float64{-sp * st, -cp * st, ct}
}

// raised turns a point of a floor with z up into one of a scene with Y up.
func raised(p [3]float64) [3]float64 { return [3]float64{p[0], p[2], -p[1]} }

// checkStands compares a camera of USD with a pose on the floor.
func checkStands(t *testing.T, camera matrix, pose plan.Pose, whisker float64) {
	t.Helper()
	f, r, u := looks(pose)
	if got, want := camera.place(), raised([3]float64{pose.X, pose.Y, pose.Z}); !near3(got, want, whisker) {
		t.Errorf("the camera is at %v, want %v", got, want)
	}
	back := raised(f)
	for i := range back {
		back[i] = -back[i]
	}
	for i, want := range [][3]float64{raised(r), raised(u), back} {
		if got := [3]float64(camera[i*4 : i*4+3]); !near3(got, want, whisker) {
			t.Errorf("at %+v axis %d of the camera is %v, want %v", pose, i, got, want)
		}
	}
}

// The camera stands and looks in USD and in OpenTrackIO as it does on the floor: the axis
// of the lens, its right and its up are those of the floor to a billionth.
func TestAxesAreThoseOfTheFloor(t *testing.T) {
	for _, pose := range poses(60) {
		p, s := standing(t, pose)
		s.Duration = 0.04 // a frame
		var usda, track bytes.Buffer
		if err := USD(&usda, p, s); err != nil {
			t.Fatal(err)
		}
		found := placesIn(t, still(usda.String(), firstFrame))
		checkStands(t, found["Camera"], pose, 1e-9)
		if !strings.Contains(usda.String(), `xformOpOrder = ["xformOp:translate", "xformOp:rotateY", "xformOp:rotateX"]`) {
			t.Fatalf("another order:\n%s", usda.String())
		}
		if err := OpenTrackIO(&track, s); err != nil {
			t.Fatal(err)
		}
		var one sample
		if err := json.Unmarshal(track.Bytes(), &one); err != nil || len(one.Transforms) != 1 {
			t.Fatalf("%v in %s", err, track.String())
		}
		at := one.Transforms[0]
		f, r, u := looks(pose)
		turn := turnedBy(0, at.Rotation.Tilt).times(turnedBy(2, at.Rotation.Pan))
		for i, want := range [][3]float64{r, f, u} {
			if got := [3]float64(turn[i*4 : i*4+3]); !near3(got, want, 1e-9) {
				t.Errorf("at %+v axis %d of the form is %v, want %v", pose, i, got, want)
			}
		}
		if got, want := (plan.Pose{X: at.Translation.X, Y: at.Translation.Y, Z: at.Translation.Z, Pan: -at.Rotation.Pan, Tilt: at.Rotation.Tilt}), pose; got != want {
			t.Errorf("the sample has %+v, want %+v", got, want)
		}
	}
}

// Everybody and every mark are where the floor has them, from wherever the camera looks,
// and the camera of the form sees them where the plan's does.
func TestUSDFloor(t *testing.T) {
	for _, pose := range poses(12) {
		p, s := standing(t, pose)
		var b bytes.Buffer
		if err := USD(&b, p, s); err != nil {
			t.Fatal(err)
		}
		for i, f := range Frames(s)[:2] {
			found := placesIn(t, still(b.String(), firstFrame+i))
			checkFloor(t, s, f, found, "Camera", "Focus")
			checkMarks(t, p.Scenes[0], found)
		}
	}
	p, s := standing(t, plan.Pose{X: 1, Z: 1.5, Pan: 30})
	s.Optics.FromLens = true // the tape is from the lens, and so is the place of the camera
	var fromLens bytes.Buffer
	if err := USD(&fromLens, p, s); err != nil {
		t.Fatal(err)
	}
	for i, f := range Frames(s)[:2] {
		checkFloor(t, s, f, placesIn(t, still(fromLens.String(), firstFrame+i)), "Camera", "Focus")
	}
	if !strings.Contains(fromLens.String(), "pinhole at the front principal plane of the lens") {
		t.Error("nobody says where the camera is")
	}
	p, s = standing(t, plan.Pose{Z: 1.5})
	s.Optics.SensorW, s.Optics.SensorH = 0.024, 0.01
	var b bytes.Buffer
	if err := USD(&b, p, s); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	for _, want := range []string{
		"float horizontalAperture = 0.24\n", "float verticalAperture = 0.1\n", "from its zero point, the foot of the crane",
		"nobody is moved", "pinhole at the sensor mark",
		// From the floor to the crown: eyes at 1.5 m, the crown 0.12 m above them.
		"double height = 1.18\n", "double radius = 0.22\n            double3 xformOp:translate = (0, -0.69, 0)",
		"def Sphere \"Body\"",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for _, not := range []string{"No plan says heights", "distance from the lens:"} {
		if strings.Contains(text, not) {
			t.Errorf("%q of a shot whose heights are known", not)
		}
	}
}

// checkFloor compares where a reader has the camera of a shot and everybody with the plan.
func checkFloor(t *testing.T, s *plan.Shot, f Frame, found map[string]matrix, camera, focus string) {
	t.Helper()
	const whisker = 5e-6
	eye, ok := found[camera]
	if !ok {
		t.Fatalf("there is no %s", camera)
	}
	checkStands(t, eye, s.Stands(f.Time), whisker)
	taken := names{strings.ToLower(camera): true, strings.ToLower(focus): true}
	for _, u := range s.Subjects {
		at, ok := found[taken.add(u.Name)]
		if !ok {
			t.Fatalf("nobody is %s", u.Name)
		}
		v, seen := s.ViewOf(u, f.Time), eye.into(at.place())
		if isMeasured(s) { // a tape says another distance than the floor, and the same direction
			for i, scale := 0, -v.Along/seen[2]; i < 3; i++ {
				seen[i] *= scale
			}
		}
		if got, want := seen, [3]float64{v.Across, v.Above, -v.Along}; !near3(got, want, whisker*(1+math.Abs(v.Along))) {
			t.Errorf("at %g s the camera sees %s at %v, want %v", f.Time, u.Name, got, want)
		}
	}
	if at := s.ToTape(f.Lens, f.Time); at < clipFar {
		if got, want := eye.into(found[focus].place()), [3]float64{0, 0, -at}; !near3(got, want, whisker*(1+at)) {
			t.Errorf("at %g s the camera sees the focus at %v, want %v", f.Time, got, want)
		}
	}
}

func checkMarks(t *testing.T, scene *plan.Scene, found map[string]matrix) {
	t.Helper()
	for name, mark := range map[string]plan.FloorMark{"A_B_2": scene.Marks[0], "STEP": scene.Marks[1]} { // a person is A-B
		want := raised([3]float64{float64(mark.Right), float64(mark.Upstage), float64(mark.High)})
		if got, ok := found[name]; !ok || !near3(got.place(), want, 1e-9) {
			t.Errorf("%s is at %v, want %v", mark.Name, got.place(), want)
		}
	}
}

// By hand: from 2 m upstage of the zero point and 1.2 m up a camera that is panned a
// quarter to the right looks along X, and somebody 3 m ahead of it there is 3 m to the
// right and 2 m upstage.
func TestUSDByHand(t *testing.T) {
	p, s := standing(t, plan.Pose{Y: 2, Z: 1.2, Pan: 90})
	u := s.Subjects[1]
	u.Across, u.Along, u.Up = plan.Still(0), plan.Still(3), nil
	var b bytes.Buffer
	if err := USD(&b, p, s); err != nil {
		t.Fatal(err)
	}
	found := placesIn(t, still(b.String(), firstFrame))
	if got := found["A_B"].place(); !near3(got, [3]float64{3, 1.2, -2}, 1e-9) {
		t.Errorf("they are at %v", got)
	}
	camera := found["Camera"]
	if got := [3]float64(camera[8:11]); !near3(got, [3]float64{-1, 0, 0}, 1e-9) {
		t.Errorf("behind the camera is %v", got)
	}
}

// setups returns a scene in which somebody walks, with one set-up that covers all of it,
// one that covers from 1 s to 3 s while it pans and tilts, and one whose camera has no
// place.
func setups(t testing.TB) (*plan.Plan, *plan.Scene) {
	t.Helper()
	p, all := standing(t, plan.Pose{X: -0.5, Y: -2, Z: 1.4, Pan: 12.5, Tilt: -3})
	_, part := standing(t, plan.Pose{X: 2, Y: -1, Z: 1.7, Pan: -40})
	scene := p.Scenes[0]
	walk := plan.Leg{Start: 1.5, End: 2.5, From: scene.Subjects[0].Path[0], To: plan.FloorPoint{T: 2.5, Right: 0.5, Upstage: 1, High: 1.1}}
	walk.From.T = 1.5
	scene.Subjects[0].Path = []plan.FloorPoint{{T: 0, Right: walk.From.Right, Upstage: walk.From.Upstage, High: walk.From.High}, walk.From, walk.To}
	scene.Subjects[0].Legs = []plan.Leg{walk}
	all.ID, part.ID, part.PlanName = "1A", "1B", all.PlanName
	all.Duration, part.Duration, part.Covers = 4, 2, plan.Interval{1, 3}
	for _, s := range []*plan.Shot{all, part} {
		from := float64(s.Covers[0])
		x, y, z := s.FromFloor(float64(walk.To.Right), float64(walk.To.Upstage), float64(walk.To.High))
		u := s.Subjects[0]
		for track, to := range map[*plan.Track]float64{u.Across: x, u.Along: y, u.Up: z} {
			track.Add(plan.Step{Start: walk.Start - from, End: walk.End - from, To: plan.Spot{Offset: to}})
		}
	}
	part.Optics.Rig.Pans = []plan.Sweep{{Start: 0.25, End: 1, To: 25, Smooth: true}}
	part.Optics.Rig.Tilts = []plan.Sweep{{Start: 0.5, End: 1.5, To: -6}}
	part.Optics.Rig.Slide(plan.Slide{Start: 1, End: 2, X: 0.3, Z: -0.4})
	other := *part
	staging := *part.Staging
	other.ID, other.Staging = "1C", &staging
	other.Placed = false
	p.Shots = []*plan.Shot{all, part, &other}
	return p, scene
}

// A stage has a camera a set-up, over the time of the action, and everybody once; each
// camera sees them as its own shot does.
func TestUSDScene(t *testing.T) {
	p, scene := setups(t)
	var b bytes.Buffer
	if err := USDScene(&b, p, scene); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	for _, want := range []string{
		"startTimeCode = 1001\n", "endTimeCode = 1096\n", "The quay", "a time of their own: 1C.", `def Camera "Camera_1A"`, `def Camera "Camera_1B"`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if strings.Contains(text, "1C\"") || strings.Count(text, "def Camera") != 2 || strings.Count(text, `"STEP"`) != 2 {
		t.Errorf("more or fewer than two cameras, or a mark twice:\n%s", text)
	}
	checkStage(t, p, func(code int) map[string]matrix { return placesIn(t, still(text, code)) })
	p.Shots = p.Shots[2:]
	if err := USDScene(&b, p, scene); err == nil {
		t.Error("a stage without a camera")
	}
}

// checkStage compares a stage, read at a time code, with each of its shots at every sixth
// frame.
func checkStage(t *testing.T, p *plan.Plan, read func(code int) map[string]matrix) {
	t.Helper()
	for n := int64(0); n < 96; n += 6 {
		found := read(firstFrame + int(n))
		checkMarks(t, p.Scenes[0], found)
		for _, s := range p.Shots[:2] {
			if at := s.Rate.Seconds(n) - float64(s.Covers[0]); at >= 0 && at < float64(s.Duration) {
				checkFloor(t, s, Frame{Time: at, Lens: s.FocusAt(at)}, found, "Camera_"+s.ID, "Focus_"+s.ID)
			}
		}
	}
}

// The same by the matrices of an independent reader, which is not part of this repository.
func TestUSDFloorForAnotherReader(t *testing.T) {
	folder := usdReader(t)
	p, scene := setups(t)
	var b bytes.Buffer
	if err := USDScene(&b, p, scene); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	args := []string{"testdata/placesusd.mjs", filepath.Join(folder, "node_modules", "tinyusdz")}
	place := map[int]int{}
	write := func(text string) {
		file := filepath.Join(dir, fmt.Sprintf("%d.usda", len(args)))
		if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	for n := 0; n < 96; n += 6 {
		place[firstFrame+n] = len(args) - 2
		write(still(b.String(), firstFrame+n))
	}
	some := poses(20)
	for _, pose := range some {
		p, s := standing(t, pose)
		b.Reset()
		if err := USD(&b, p, s); err != nil {
			t.Fatal(err)
		}
		write(still(b.String(), firstFrame))
	}
	out, err := exec.Command("node", args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]matrix
	if err := json.Unmarshal(out, &list); err != nil || len(list) != len(place)+len(some) {
		t.Fatalf("%d files: %v", len(list), err)
	}
	checkStage(t, p, func(code int) map[string]matrix { return list[place[code]] })
	for i, pose := range some {
		checkStands(t, list[len(place)+i]["Camera"], pose, 1e-9)
	}
}

// Samples of a camera with a place keep the schema of the form.
func TestOpenTrackIOFloor(t *testing.T) {
	p, _ := setups(t)
	schema := trackSchema(t)
	for _, s := range p.Shots[:2] {
		var b bytes.Buffer
		if err := OpenTrackIO(&b, s); err != nil {
			t.Fatal(err)
		}
		for i, line := range bytes.Split(bytes.TrimSpace(b.Bytes()), []byte("\n")) {
			value, err := jsonschema.UnmarshalJSON(bytes.NewReader(line))
			if err != nil {
				t.Fatal(err)
			}
			if err := schema.Validate(value); err != nil {
				t.Fatalf("frame %d: %v\n%s", i, err, line)
			}
		}
	}
}

// The CSV has where the camera stands on the floor of its scene, also where it rests.
func TestCSVFloor(t *testing.T) {
	p, _ := setups(t)
	for _, s := range p.Shots[:2] {
		var b bytes.Buffer
		if err := CSV(&b, s); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&b).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range Frames(s) {
			pose := s.Stands(f.Time)
			for name, want := range map[string]float64{
				"camera_right_m": pose.X, "camera_upstage_m": pose.Y, "camera_high_m": pose.Z, "pan_deg": pose.Pan, "tilt_deg": pose.Tilt,
			} {
				if got := field(t, rows, int64(i), name); math.Abs(got-want) > 1e-6 {
					t.Errorf("%s, frame %d: %s is %g, want %g", s.ID, i, name, got, want)
				}
			}
		}
	}
	_, still := standing(t, plan.Pose{X: 1, Pan: 8})
	still.Optics.Rig = nil // it does nothing
	var b bytes.Buffer
	if err := CSV(&b, still); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || field(t, rows, 3, "camera_right_m") != 1 || field(t, rows, 3, "pan_deg") != 8 {
		t.Errorf("a camera that rests: %v", err)
	}
}

// Clips of a scene say what time of it they cover, and others do not; a camera that goes
// to a place is marked.
func TestMarkersOnTheFloor(t *testing.T) {
	p, _ := setups(t)
	part := p.Shots[1]
	part.Blocking = []plan.Blocking{{Kind: "camera", Start: 1, End: 2, From: 0, To: 0.5}}
	cut := *part
	cut.ID, cut.Pieces = "1D", []plan.Piece{{Number: 1, Clip: "1D", In: 96, Out: 120, From: 0.5, To: 1.5, Speed: 1}}
	p.Shots = append(p.Shots, made(t, "24").Shots[1], &cut)
	var b bytes.Buffer
	if err := OTIO(&b, p); err != nil {
		t.Fatal(err)
	}
	var line struct {
		Tracks struct {
			Children []struct {
				Children []struct {
					Name     string
					Metadata struct {
						Pullscore struct {
							Covers []float64 `json:"covers_s"`
						}
					}
				}
			}
		}
	}
	if err := json.Unmarshal(b.Bytes(), &line); err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, track := range line.Tracks.Children {
		for _, clip := range track.Children {
			got[clip.Name] = fmt.Sprint(clip.Metadata.Pullscore.Covers)
		}
	}
	for id, want := range map[string]string{"1A": "[0 4]", "1B": "[1 3]", "1D": "[1.5 2.5]", "2": "[]"} {
		if got[id] != want {
			t.Errorf("%s covers %s, want %s", id, got[id], want)
		}
	}
	var marks []string
	for _, m := range (placed{Shot: part}).marks() {
		if m.colour == cameraStartColour || m.colour == cameraLandColour {
			marks = append(marks, fmt.Sprintf("%d %s", m.at, m.text))
		}
	}
	if text := strings.Join(marks, "; "); text != "24 camera moves 50 cm, 1 s; 48 camera lands" {
		t.Errorf("the marks are %q", text)
	}
}

// window is a scene with a camera that stands, one that pans, tilts and booms, and one that
// goes with somebody who walks.
const window = `plan "Window"
rate 24
camera A
  sensor 24.89 x 18.66 mm
lens "35"
  focal 35 mm
  stops f/2 to f/22
  closest 35 cm
  ring 300 deg, diameter 110 mm
with stop f/4
scene "The window"
  origin "the corner of the counter"
  mark GATE at 40 cm right, 1.3 m upstage
  subject MARRIT at 0 m right, eyes 1.5 m, deep 4 cm
  subject OSKEL at GATE, eyes 1.6 m, deep 4 cm
  subject TICKET at MARRIT, 10 cm left, 25 cm upstage, 1.1 m high
  MARRIT: "There and back?", lasting 1.8 s
  OSKEL moves to GATE, 1 m left, 20 cm downstage over 2 s, on 3 s, eyes 1.3 m
  OSKEL: "One way.", on 3 s, lasting 0.9 s
  pause 3 s
shot 12A
  covers all
  camera at 80 cm right, 2.2 m downstage, 1.5 m high, aims at MARRIT
  start on MARRIT
shot 12B
  covers all
  camera at 1.5 m right, 1.9 m downstage, 1.2 m high, aims at MARRIT, 3 deg left
  start on MARRIT
  pan and tilt to OSKEL, over 1 s, on 0.5 s
  rack to OSKEL, with pan
  pan with OSKEL until 5.5 s
  boom up 40 cm over 2 s, on 2 s
shot 12C
  covers 2 s to end
  camera at 1 m left, 2 m downstage, 1.6 m high, aims at OSKEL
  start on OSKEL
  camera moves to 20 cm left, 1.2 m downstage, 1.4 m high over 2 s, on 1 s
  pan and tilt with OSKEL
`

// A plan as it is written comes out as it is staged: the first camera with the pan that is
// computed by hand, and everybody where all cameras of the stage see them.
func TestUSDOfAWrittenScene(t *testing.T) {
	res := interp.Interpret("window.pull", []byte(window), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%d: %s", d.Range.Start.Line, d.Message)
		}
	}
	p := res.Plan
	var b bytes.Buffer
	if err := USDScene(&b, p, p.Scenes[0]); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	// MARRIT is 0.8 m to the left and 2.2 m ahead: atan(0.8 / 2.2) is 19.9831065 deg.
	for _, want := range []string{"double3 xformOp:translate = (0.8, 1.5, 2.2)\n        double xformOp:rotateY = 19.983107\n        double xformOp:rotateX = 0\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text[:min(len(text), 3000)])
		}
	}
	frames := 0
	for n := int64(0); n < int64(float64(p.Scenes[0].Duration)*24); n += 5 {
		found := placesIn(t, still(text, firstFrame+int(n)))
		for _, s := range p.Shots {
			at := s.Rate.Seconds(n) - float64(s.Covers[0])
			if at < 0 || at >= float64(s.Duration) {
				continue
			}
			frames++
			eye := found["Camera_"+s.ID]
			checkStands(t, eye, s.Stands(at), 5e-6)
			for _, u := range s.Subjects {
				v := s.ViewOf(u, at)
				got, want := eye.into(found[u.Name].place()), [3]float64{v.Across, v.Above, -v.Along}
				if !near3(got, want, 2e-3) { // the ways of a scene are written to a millimetre
					t.Errorf("%g s: %s sees %s at %v, want %v", at, s.ID, u.Name, got, want)
				}
			}
		}
	}
	if frames < 60 {
		t.Errorf("only %d views", frames)
	}
}

// Every camera of the examples that are staged sees everybody in USD where its shot does,
// at the start, in the middle and at the end.
func TestStagedExamples(t *testing.T) {
	paths, err := filepath.Glob("../../../examples/staged/*.pull")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	cameras, measured := 0, 0
	for _, path := range paths {
		res, err := interp.Read(path, interp.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range res.Plan.Shots {
			if !hasPlace(s) {
				continue
			}
			cameras++
			var b bytes.Buffer
			if err := USD(&b, res.Plan, s); err != nil {
				t.Fatal(err)
			}
			if isMeasured(s) {
				measured++
			}
			if got := strings.Contains(b.String(), "Where a tape was read"); got != isMeasured(s) {
				t.Errorf("%s %s tells of a tape: %v", path, s.ID, got)
			}
			for frames, i := Frames(s), 0; i < 3; i++ {
				n := i * (len(frames) - 1) / 2
				checkFloor(t, s, frames[n], placesIn(t, still(b.String(), firstFrame+n)), "Camera", "Focus")
			}
		}
	}
	if cameras < 8 || measured == 0 {
		t.Errorf("only %d cameras have a place, with a tape in %d", cameras, measured)
	}
}
