package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/opentrackio"
)

// turned is a shot whose camera pans with somebody who walks, pans on by itself past them
// while it tilts, tracks, booms and pushes in, and racks meanwhile.
func turned(t testing.TB) (*plan.Plan, *plan.Shot) {
	t.Helper()
	p := made(t, "24")
	s := p.Shots[0]
	walker := s.Subjects[0]
	walker.Across.Add(plan.Step{Start: 0.2, End: 2, To: plan.Spot{Offset: 1.4}})
	s.Optics.Rig = &plan.Rig{
		Slides: []plan.Slide{
			{Start: 0.5, End: 2, X: -0.6, Y: 0.1, Smooth: true},
			{Start: 1, End: 3, Z: 0.45, Smooth: true},
		},
		Pans: []plan.Sweep{
			{Start: 0, End: 1.5, From: 0, To: 24, With: walker},
			{Start: 2, End: 3.5, From: 24, To: -110, Smooth: true},
		},
		Tilts: []plan.Sweep{{Start: 2, End: 3.5, From: 0, To: -8, Smooth: true}, {Start: 3.6, End: 3.9, From: -8, To: 2}},
	}
	s.Turns = []plan.Turn{
		{Kind: "pan", Target: walker.Name, Start: 0, End: 1.5, From: 0, To: 24, Profile: "with"},
		{Kind: "pan", Target: "A-B", Start: 2, End: 3.5, From: 24, To: -110, Profile: "smooth"},
		{Kind: "tilt", Target: "A-B", Start: 2, End: 3.5, From: 0, To: -8, Profile: "smooth"},
		{Kind: "tilt", Start: 3.6, End: 3.9, From: -8, To: 2, Profile: "even"},
	}
	s.Blocking = append(s.Blocking,
		plan.Blocking{Kind: "track", Start: 0.5, End: 2, From: 0, To: -0.6},
		plan.Blocking{Kind: "boom", Start: 1, End: 3, From: 0, To: 0.45})
	return p, s
}

// written is a shot whose camera does all that a plan can say of it.
func written(t testing.TB) *plan.Shot {
	t.Helper()
	const text = `rate 25
camera A
  sensor 24 x 13.5 mm
lens "long"
  focal 40 mm
  stops f/2.8 to f/22
  closest 60 cm
  ring 300 deg, diameter 90 mm
subject MARRIT at 2 m, 30 cm left
subject OSKEL at 2.4 m, 1.9 m right
shot 1
  with stop f/4
  start on MARRIT
  OSKEL moves to 3 m over 2 s, on 2 s
  pan and tilt to OSKEL, over 1 s, on 0.5 s
  rack to OSKEL, with pan
  boom up 40 cm over 1.5 s, on 1 s
  pan and tilt with OSKEL until 4 s
  track left 50 cm over 1 s, on 4 s
  push in 30 cm over 1 s, on 5 s
  pan left 200 deg over 1.5 s, on 5 s
  tilt down 9 deg over 1 s, on 6 s
  lasts 8 s
`
	res := interp.Interpret("written.pull", []byte(text), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%d: %s", d.Range.Start.Line, d.Message)
		}
	}
	s := res.Plan.Shots[0]
	if end := s.Optics.Pose(8); !s.Optics.Turns() || end.Z != 0.4 || end.Pan > -140 || end.Tilt > -9 {
		t.Fatalf("at the end the camera is %+v", end)
	}
	return s
}

// A matrix takes a point of a prim, as a row, to the scene: sixteen figures, row by row.
type matrix [16]float64

func (m matrix) times(n matrix) (out matrix) {
	for i := range out {
		for k := range 4 {
			out[i] += m[i/4*4+k] * n[k*4+i%4]
		}
	}
	return out
}

// into returns where a prim sees a point of the scene. Its matrix turns and shifts alone.
func (m matrix) into(p [3]float64) (out [3]float64) {
	for i := range out {
		for k := range 3 {
			out[i] += m[i*4+k] * (p[k] - m[12+k])
		}
	}
	return out
}

func (m matrix) place() [3]float64 { return [3]float64(m[12:15]) }

// turnedBy is the matrix of a turn about one axis, right-handed, in degrees.
func turnedBy(axis int, deg float64) matrix {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	m := matrix{0: 1, 5: 1, 10: 1, 15: 1}
	a, b := (axis+1)%3, (axis+2)%3
	m[a*5], m[b*5], m[a*4+b], m[b*4+a] = cos, cos, sin, -sin
	return m
}

// usdPrim finds the prims below the first, each with its text.
var usdPrim = regexp.MustCompile(`(?s)\n    def (?:Camera|Xform|Sphere) "([^"]+)"(.*?)\n    }\n`)

// usdBody finds the body in the text of a prim.
var usdBody = regexp.MustCompile(`(?s)\n        def (?:Capsule|Sphere) "Body".*`)

// usdOps finds what places and turns a prim.
var usdOps = regexp.MustCompile(`(?s)(xformOp:\w+)(?: = ([^\n]*)|\.timeSamples = \{(.*?)\n *\})\n`)

// stillAt returns what an attribute is at a frame: readers stay on a value that is the
// same before and behind, and have the first before it.
func stillAt(samples string, code int) (value string) {
	for line := range strings.Lines(samples) {
		at, text, ok := strings.Cut(strings.TrimSuffix(strings.TrimSpace(line), ","), ": ")
		if n, err := strconv.Atoi(at); ok && err == nil && (n <= code || value == "") {
			value = text
		}
	}
	return value
}

// still returns a file of USD as it is at one frame, without samples.
func still(text string, code int) string {
	return regexp.MustCompile(`(?s)\.timeSamples = \{(.*?)\n *\}`).ReplaceAllStringFunc(text, func(part string) string {
		_, samples, _ := strings.Cut(part, "{")
		return " = " + stillAt(samples, code)
	})
}

// placesIn reads the matrices of the prims of a still file, by the conventions of USD: the
// last of the order is done first.
func placesIn(t *testing.T, text string) map[string]matrix {
	t.Helper()
	found := map[string]matrix{}
	for _, prim := range usdPrim.FindAllStringSubmatch(text, -1) {
		body := usdBody.FindString(prim[2])
		m := matrixIn(t, prim[1], strings.TrimSuffix(prim[2], body))
		found[prim[1]] = m
		if body != "" {
			found[prim[1]+"/Body"] = matrixIn(t, prim[1]+"/Body", body).times(m)
		}
	}
	return found
}

// matrixIn reads the matrix of a prim from its text, without those above it.
func matrixIn(t *testing.T, name, text string) matrix {
	t.Helper()
	ops := map[string][]float64{}
	for _, op := range usdOps.FindAllStringSubmatch(text, -1) {
		var list []float64
		for part := range strings.SplitSeq(strings.Trim(op[2], "()"), ",") {
			v, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
			if err != nil {
				t.Fatalf("%s of %s: %v", op[1], name, err)
			}
			list = append(list, v)
		}
		ops[op[1]] = list
	}
	_, order, _ := strings.Cut(text, "xformOpOrder = [")
	order, _, _ = strings.Cut(order, "]")
	m := matrix{0: 1, 5: 1, 10: 1, 15: 1}
	for op := range strings.SplitSeq(order, ", ") {
		v := ops[strings.Trim(op, `"`)]
		switch op {
		case `"xformOp:translate"`:
			m = matrix{0: 1, 5: 1, 10: 1, 12: v[0], 13: v[1], 14: v[2], 15: 1}.times(m)
		case `"xformOp:rotateY"`:
			m = turnedBy(1, v[0]).times(m)
		case `"xformOp:rotateX"`:
			m = turnedBy(0, v[0]).times(m)
		default:
			t.Fatalf("%s is turned by %s", name, op)
		}
	}
	return m
}

func near3(a, b [3]float64, by float64) bool {
	return math.Abs(a[0]-b[0]) < by && math.Abs(a[1]-b[1]) < by && math.Abs(a[2]-b[2]) < by
}

// checkPlaces compares where a reader has camera and people with the plan at a frame. A
// camera of USD looks along -Z, with X to its right and Y up.
func checkPlaces(t *testing.T, s *plan.Shot, f Frame, found map[string]matrix) {
	t.Helper()
	const whisker = 5e-6 // places and angles are written to a millionth
	pose, camera := s.Optics.Pose(f.Time), found["Camera"]
	if want := [3]float64{pose.X, pose.Z + lensHeight, -pose.Y}; !near3(camera.place(), want, whisker) {
		t.Fatalf("frame %d: the camera is at %v, want %v", f.Number, camera.place(), want)
	}
	sp, cp := math.Sincos(pose.Pan * math.Pi / 180)
	st, ct := math.Sincos(pose.Tilt * math.Pi / 180)
	for i, want := range [][3]float64{{cp, 0, sp}, {-sp * st, ct, cp * st}, {-sp * ct, -st, cp * ct}} { // R, U and -F of the floor
		if got := [3]float64(camera[i*4 : i*4+3]); !near3(got, want, whisker) {
			t.Fatalf("frame %d: axis %d of the camera is %v, want %v", f.Number, i, got, want)
		}
	}
	focus := found["Focus"]
	if got, want := camera.into(focus.place()), [3]float64{0, 0, -f.Lens}; f.Lens < clipFar && !near3(got, want, whisker*(1+f.Lens)) {
		t.Errorf("frame %d: the camera sees the focus at %v, want %v", f.Number, got, want)
	}
	taken := names{"camera": true, "focus": true}
	for _, u := range s.Subjects {
		name := taken.add(u.Name)
		at, ok := found[name]
		if !ok {
			t.Fatalf("nobody is %s", u.Name)
		}
		if body, ok := found[name+"/Body"]; !ok || body[12] != at[12] || body[14] != at[14] || body[13] <= at[13] {
			t.Errorf("frame %d: the body of %s is at %v, and they at %v", f.Number, name, body.place(), at.place())
		}
		at[13] += lensHeight // their eyes
		view, lens := s.ViewOf(u, f.Time), s.LensDistanceAt(u, f.Time)
		if math.IsNaN(lens) {
			lens = view.Along
		}
		if got, want := camera.into(at.place()), [3]float64{view.Across, view.Above, -lens}; !near3(got, want, whisker*(1+math.Abs(lens))) {
			t.Errorf("frame %d: the camera sees %s at %v, want %v", f.Number, u.Name, got, want)
		}
	}
}

// The camera of USD sees everybody where the lens does, at every frame.
func TestUSDTurns(t *testing.T) {
	_, made := turned(t)
	for _, s := range []*plan.Shot{made, written(t)} {
		var b bytes.Buffer
		if err := USD(&b, nil, s); err != nil {
			t.Fatal(err)
		}
		behind := 0
		for i, f := range Frames(s) {
			checkPlaces(t, s, f, placesIn(t, still(b.String(), firstFrame+i)))
			if math.IsNaN(s.LensDistanceAt(s.Subjects[0], f.Time)) {
				behind++
			}
		}
		if behind == 0 || behind == len(Frames(s)) {
			t.Errorf("the camera turns away from nobody, or always: %d frames", behind)
		}
	}
}

// By hand: after a pan of a quarter to the right, somebody three metres to the right is
// straight ahead, and seen at their distance from the lens.
func TestUSDQuarterTurn(t *testing.T) {
	_, s := turned(t)
	u := s.Subjects[1]
	u.Across, u.Along = plan.Still(3), plan.Still(0)
	s.Optics.Camera = plan.Still(0)
	s.Optics.Focal = plan.Still(0.05)
	s.Optics.Rig = &plan.Rig{Pans: []plan.Sweep{{Start: 0, End: 1, To: 90}}}
	var b bytes.Buffer
	if err := USD(&b, nil, s); err != nil {
		t.Fatal(err)
	}
	found := placesIn(t, still(b.String(), firstFrame+24))
	// At 3 m from the sensor, x + f x / (x - f) = 3 has x = (3 + sqrt(9 - 0.6)) / 2.
	lens := (3 + math.Sqrt(9-4*0.05*3)) / 2
	if got := found["A_B"].place(); !near3(got, [3]float64{lens, 0, 0}, 2e-6) {
		t.Errorf("they are at %v, want %g to the right", got, lens)
	}
	camera := found["Camera"]
	if got := [3]float64(camera[8:11]); !near3(got, [3]float64{-1, 0, 0}, 1e-9) { // behind the camera is its Z
		t.Errorf("behind the camera is %v", got)
	}
}

// The same by the matrices of an independent reader, which is not part of this repository.
func TestUSDTurnsForAnotherReader(t *testing.T) {
	folder := usdReader(t)
	s := written(t)
	var b bytes.Buffer
	if err := USD(&b, nil, s); err != nil {
		t.Fatal(err)
	}
	frames, dir := Frames(s), t.TempDir()
	args := []string{"testdata/placesusd.mjs", filepath.Join(folder, "node_modules", "tinyusdz")}
	for i := range frames {
		file := filepath.Join(dir, fmt.Sprintf("%d.usda", i))
		if err := os.WriteFile(file, []byte(still(b.String(), firstFrame+i)), 0o666); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	out, err := exec.Command("node", args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]matrix
	if err := json.Unmarshal(out, &list); err != nil || len(list) != len(frames) {
		t.Fatalf("%d of %d frames: %v", len(list), len(frames), err)
	}
	for i, f := range frames {
		checkPlaces(t, s, f, list[i])
	}
}

// OpenTrackIO has the sensor where the plan has it, and turns about z first, then about
// the camera's own x, right-handed: its y is then the lens's axis.
func TestOpenTrackIOTurns(t *testing.T) {
	s := written(t)
	schema := trackSchema(t)
	var b bytes.Buffer
	if err := OpenTrackIO(&b, s); err != nil {
		t.Fatal(err)
	}
	frames := Frames(s)
	read := opentrackio.NewReader(bytes.NewReader(b.Bytes()), "turned.jsonl")
	for i, f := range frames { // our own reader takes it as before
		one, err := read.Next()
		if err != nil || len(one.Faults) > 0 || math.Abs(one.Lens.FocusDistance.Value-f.Sensor) > 1e-6 {
			t.Fatalf("frame %d is read as %+v: %v", i, one, err)
		}
	}
	for i, line := range bytes.Split(bytes.TrimSpace(b.Bytes()), []byte("\n")) {
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(line))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(value); err != nil {
			t.Fatalf("frame %d: %v\n%s", i, err, line)
		}
		var one sample
		if err := json.Unmarshal(line, &one); err != nil || len(one.Transforms) != 1 {
			t.Fatalf("frame %d: %v in %s", i, err, line)
		}
		at, pose := one.Transforms[0], s.Optics.Pose(frames[i].Time)
		if got, want := [3]float64{at.Translation.X, at.Translation.Y, at.Translation.Z}, [3]float64{pose.X, pose.Y, pose.Z}; !near3(got, want, 1e-6) {
			t.Errorf("frame %d is at %v, want %v", i, got, want)
		}
		turn := turnedBy(0, at.Rotation.Tilt).times(turnedBy(2, at.Rotation.Pan))
		sp, cp := math.Sincos(pose.Pan * math.Pi / 180)
		st, ct := math.Sincos(pose.Tilt * math.Pi / 180)
		if got, want := [3]float64(turn[4:7]), [3]float64{sp * ct, cp * ct, st}; !near3(got, want, 1e-6) || at.Rotation.Roll != 0 {
			t.Errorf("frame %d looks along %v, want %v", i, got, want)
		}
	}
}

// The CSV has the pose behind the columns that every shot has, which stay as they are.
func TestCSVTurns(t *testing.T) {
	p, s := turned(t)
	var b, plain bytes.Buffer
	if err := CSV(&b, s); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range Frames(s) {
		pose := s.Optics.Pose(f.Time)
		for name, want := range map[string]float64{
			"camera_right_m": pose.X, "camera_upstage_m": pose.Y, "camera_high_m": pose.Z, "pan_deg": pose.Pan, "tilt_deg": pose.Tilt,
		} {
			if got := field(t, rows, int64(i), name); math.Abs(got-want) > 1e-6 {
				t.Errorf("frame %d: %s is %g, want %g", i, name, got, want)
			}
		}
	}
	if err := CSV(&plain, p.Shots[1]); err != nil {
		t.Fatal(err)
	}
	head, _, _ := strings.Cut(plain.String(), "\n")
	if want := strings.Split(head, ","); !slices.Equal(rows[0][:len(want)], want) || len(rows[0]) != len(want)+5 {
		t.Errorf("the columns are %v, and of a camera that stands %v", rows[0], want)
	}
}

// Where turns and ways of the camera start and land is marked, in both forms.
func TestMarkersOfTheCamera(t *testing.T) {
	p, s := turned(t)
	want := []string{
		"0 MAGENTA pan with A \"B\" <c>", "12 MAGENTA track 60 cm left, 1.5 s", "24 MAGENTA boom 45 cm up, 2 s",
		"36 BLUE pan with A \"B\" <c> ends", "48 MAGENTA pan and tilt to A-B", "48 BLUE track lands", "72 BLUE boom lands",
		"84 BLUE pan and tilt land on A-B", "86 MAGENTA tilt 10 deg up", "94 BLUE tilt lands",
	}
	var got []string
	for _, m := range (placed{Shot: s}).marks() {
		if m.colour == cameraStartColour || m.colour == cameraLandColour {
			got = append(got, fmt.Sprintf("%d %s %s", m.at, m.colour, m.text))
		}
	}
	got = slices.DeleteFunc(got, func(text string) bool { return strings.Contains(text, "dolly") })
	if !slices.Equal(got, want) {
		t.Errorf("the marks are\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	edl, otio := readEDL(t, p), readOTIO(t, p)
	if !slices.Equal(edl, otio) {
		t.Errorf("the list has %q, the timeline %q", edl, otio)
	}
	for _, text := range []string{"pan and tilt to A-B", "dolly 40 cm in, 2 s"} {
		if !slices.ContainsFunc(edl, func(m string) bool { return strings.HasSuffix(m, text) }) {
			t.Errorf("no %q in %q", text, edl)
		}
	}
}
