package export

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// room is a shot with all kinds of bodies: people, who speak or move or are only
// said to stand there, one that is stout, and small things.
const room = `plan "Room"
rate 24
camera A
  sensor 24 x 18 mm
lens "macro"
  focal 25 mm
  stops f/2.8 to f/22
  closest 12 cm
  ring 300 deg, diameter 90 mm
subject Зоя at 2 m
subject NÉE at 3 m
subject nee at 4 m
subject CAMERA at 2 m, deep 1 m
subject BARGE at 40 m, deep 4 m
subject LETTER at Зоя - 35 cm
subject RING at 14 cm, deep 1 cm
subject TED at Зоя + 1 m
shot 1
  with camera A, lens "macro", stop f/4
  start on Зоя
  TED: "I never said so."
  rack to RING, over 1 s, on 2 s
  rack to inf, over 1 s, on 4 s
  lasts 6 s
`

func roomShot(t *testing.T) *plan.Shot {
	t.Helper()
	res := interp.Interpret("room.pull", []byte(room), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%d: %s", d.Range.Start.Line, d.Message)
		}
	}
	if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Subjects) != 8 {
		t.Fatalf("%+v", res.Findings)
	}
	return res.Plan.Shots[0]
}

// bodies are what the room has, as they are to be written.
var bodies = map[string]string{
	"u0417u043eu044f": "Capsule 0.22 1.26 0.85",
	"NEE":             "Capsule 0.22 1.26 0.85",
	"nee_2":           "Capsule 0.22 1.26 0.85",
	"CAMERA_2":        "Capsule 0.5 0.7 0.85",
	"BARGE":           "Capsule 2 0 2",
	"LETTER":          "Sphere 0.03 - 1.5",
	"RING":            "Sphere 0.03 - 1.5",
	"TED":             "Capsule 0.22 1.26 0.85",
}

// attribute returns what an attribute of the text of a prim is; - where it has none.
func attribute(text, name string) string {
	_, after, ok := strings.Cut(text, name+" = ")
	if !ok {
		return "-"
	}
	value, _, _ := strings.Cut(after, "\n")
	return strings.TrimSpace(value)
}

// Everybody has a body of their size, and the camera shows all of them.
func TestUSDBodies(t *testing.T) {
	s := roomShot(t)
	var b bytes.Buffer
	if err := USD(&b, nil, s); err != nil {
		t.Fatal(err)
	}
	greys := map[string]bool{}
	found := 0
	for _, prim := range usdPrim.FindAllStringSubmatch(b.String(), -1) {
		body := usdBody.FindString(prim[2])
		if body == "" {
			continue
		}
		found++
		kind, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(body), "def "), " ")
		up := strings.Split(strings.Trim(attribute(body, "xformOp:translate"), "()"), ", ")
		got := fmt.Sprintf("%s %s %s %s", kind, attribute(body, "double radius"), attribute(body, "double height"), up[1])
		if got != bodies[prim[1]] {
			t.Errorf("%s is %s, want %s", prim[1], got, bodies[prim[1]])
		}
		greys[attribute(body, "displayColor")] = true
	}
	if found != len(bodies) || len(greys) != len(bodies) {
		t.Errorf("%d bodies of %d, in %d greys", found, len(bodies), len(greys))
	}
	for name, want := range map[string]string{"Зоя": `displayName = "Зоя"`, "heights": "No plan says heights: the camera and things are assumed 1.5 m above the floor, and people 1.7 m tall."} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no word of %s", name)
		}
	}
}

// The camera shows from half the nearest distance to twice the farthest, and the
// sphere at the focus is hidden where nothing is shown.
func TestUSDClips(t *testing.T) {
	s := roomShot(t)
	var b bytes.Buffer
	if err := USD(&b, nil, s); err != nil {
		t.Fatal(err)
	}
	nearest := math.Inf(1)
	for _, f := range Frames(s) {
		nearest = min(nearest, f.Lens, s.LensDistanceAt(s.Subject("RING"), f.Time))
	}
	var near, far float64
	if _, err := fmt.Sscanf(attribute(b.String(), "clippingRange"), "(%g, %g)", &near, &far); err != nil || math.Abs(near-nearest/2) > 1e-6 || near > 0.07 || near < 0.02 || far < 1000 {
		t.Errorf("shows %g m to %g m with somebody at %g m", near, far, nearest)
	}
	for i, f := range Frames(s) {
		text := still(b.String(), firstFrame+i)
		_, focus, _ := strings.Cut(text, `def Sphere "Focus"`)
		if got, want := attribute(focus, "visibility") == `"invisible"`, f.Lens > far; got != want {
			t.Errorf("frame %d: hidden is %v, with the focus at %g m", i, got, f.Lens)
		}
	}
	s.Subject("BARGE").Along = plan.Still(3000)
	b.Reset()
	if err := USD(&b, nil, s); err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscanf(attribute(b.String(), "clippingRange"), "(%g, %g)", &near, &far); err != nil || far < 5900 || far > 6100 {
		t.Errorf("shows up to %g m with somebody at 3000 m", far)
	}
}

func TestUSDNames(t *testing.T) {
	taken := names{"camera": true, "focus": true}
	for _, c := range []struct{ name, want string }{
		{"NADIA", "NADIA"}, {"nadia", "nadia_2"}, {"Nadia", "Nadia_3"},
		{"JEAN-LUC", "JEAN_LUC"}, {"MRS. O'DALE", "MRS__O_DALE"}, {"jean luc", "jean_luc_2"},
		{"Зоя", "u0417u043eu044f"}, {"Зоё", "u0417u043eu0451"}, {"й", "u0439"},
		{"Élan", "Elan"}, {"E\u0301lan", "Elan_2"}, {"x\u0302", "x"}, {"Łukasz", "u0141ukasz"}, {"𝄞", "u1d11e"},
		{"27", "_27"}, {"Focus", "Focus_2"}, {"a_b", "a_b"}, {"", "_"}, {"A+B", "Au002bB"},
	} {
		if got := taken.add(c.name); got != c.want {
			t.Errorf("%q is %s, want %s", c.name, got, c.want)
		}
	}
}

// An independent reader, which is not part of this repository, finds the bodies, the
// names and the clipping that were written.
func TestUSDBodiesAreRead(t *testing.T) {
	folder := usdReader(t)
	var b bytes.Buffer
	if err := USD(&b, nil, roomShot(t)); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "room.usda")
	if err := os.WriteFile(file, b.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("node", "testdata/readusd.mjs", filepath.Join(folder, "node_modules", "tinyusdz"), file).Output()
	if err != nil {
		t.Fatal(err)
	}
	var layers []*string
	if err := json.Unmarshal(out, &layers); err != nil || len(layers) != 1 || layers[0] == nil {
		t.Fatalf("%v: %s", err, out)
	}
	for name, body := range bodies {
		_, text, ok := strings.Cut(*layers[0], fmt.Sprintf("def Xform %q", name))
		if !ok {
			t.Errorf("nobody is %s", name)
			continue
		}
		kind, rest, _ := strings.Cut(body, " ")
		_, text, ok = strings.Cut(text, fmt.Sprintf("def %s \"Body\"", kind))
		radius, err := strconv.ParseFloat(attribute(text, "double radius"), 64)
		want, _ := strconv.ParseFloat(strings.Fields(rest)[0], 64)
		if !ok || err != nil || math.Abs(radius-want) > 1e-9 {
			t.Errorf("%s: no %s of %g m: %v", name, kind, want, err)
		}
	}
	if got, want := attribute(*layers[0], "clippingRange"), attribute(b.String(), "clippingRange"); got[:5] != want[:5] {
		t.Errorf("clipping %s, want %s", got, want)
	}
	if !strings.Contains(*layers[0], `displayName = "Зоя"`) || !strings.Contains(*layers[0], "visibility.timeSamples") {
		t.Errorf("names or visibility are lost:\n%s", *layers[0])
	}
}
