package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/edl"
	"pullscore/lang/lines"
	"pullscore/lang/otio"
	"pullscore/lang/testing/samples"
	"pullscore/lang/timecode"
)

// examples are the plans of the examples folder.
func examples(t *testing.T) (plans []*plan.Plan) {
	t.Helper()
	paths, err := filepath.Glob("../../../examples/*.pull")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, path := range paths {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if p := interp.Interpret(path, src, interp.Options{}).Plan; len(p.Shots) > 0 {
			plans = append(plans, p)
		}
	}
	return plans
}

// made is a plan of two shots with a rack that ends at infinity, a zoom, a
// dolly, a walk and names that need quoting.
func made(t testing.TB, rate string) *plan.Plan {
	t.Helper()
	const kit = `camera A
  sensor 24 x 18 mm
lens "long"
  focal 50 mm to 70 mm
  stops f/2.8 to f/22
  closest 80 cm
  ring 300 deg, diameter 90 mm
`
	src := fmt.Sprintf("plan \"P \\\"q\\\" \\\\ é\"\nrate %s\n", rate) + kit + `
subject "A \"B\" <c>" at 2 m, 30 cm left
subject "A-B" at 4 m
shot 1
  with camera A, lens "long", stop f/4, focal 50 mm
  start on "A-B"
  begins at 01:00:00:00
  cue knock on 0.5 s
  rack to "A \"B\" <c>", over 1 s, on knock
  dolly in 40 cm over 2 s
  zoom to 60 mm over 1 s on 1.6 s
  lasts 4 s
shot 2
  with camera A, lens "long", stop f/4, focal 50 mm
  start on "A-B"
  begins at 01:00:10:00
  "A-B" moves to 3 m over 1 s
  rack to inf, over 2 s, on 1 s
  lasts 3.5 s
`
	res := interp.Interpret("made.pull", []byte(src), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%d: %s", d.Range.Start.Line, d.Message)
		}
	}
	return res.Plan
}

// The curve has a row a frame, and passes through what the pull list says.
func TestCSVAgreesWithThePulls(t *testing.T) {
	for _, p := range append(examples(t), made(t, "24")) {
		for _, s := range p.Shots {
			var b bytes.Buffer
			if err := CSV(&b, s); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&b).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			frames := float64(s.Duration) * exact(s.Rate)
			if n := float64(len(rows) - 1); n < frames-1e-3 || n >= frames+1 {
				t.Errorf("%s %s: %d rows for %g frames", p.Title, s.ID, len(rows)-1, frames)
			}
			for i, pull := range s.Pulls {
				next := math.Inf(1)
				if i+1 < len(s.Pulls) {
					next = float64(s.Pulls[i+1].Start)
				}
				// The first whole frame on which the focus rests there.
				frame := int64(math.Ceil(float64(pull.Land)*exact(s.Rate) - 1e-6))
				if pull.Kind != "rack" || s.Rate.Seconds(frame) > next || int(frame)+1 >= len(rows) || pull.Goal.Soft || moves(s) {
					continue
				}
				column := "focus_m"
				if s.Optics.FromLens { // the list has what the tape reads
					column = "focus_from_lens_m"
				}
				if got := field(t, rows, frame, column); math.Abs(got-float64(pull.ToM)) > 2e-6 && !(math.IsInf(got, 1) && pull.ToM.IsInf()) {
					t.Errorf("%s %s, pull %d: frame %d is at %g m, the list says %g", p.Title, s.ID, pull.Number, frame, got, pull.ToM)
				}
			}
		}
	}
}

func exact(r timecode.Rate) float64 {
	num, den := r.Exact()
	return float64(num) / float64(den)
}

// moves reports whether anything moves in a shot, so that the focus does not
// rest.
func moves(s *plan.Shot) bool { return len(s.Blocking) > 0 }

func field(t *testing.T, rows [][]string, frame int64, name string) float64 {
	t.Helper()
	for i, column := range rows[0] {
		if column == name {
			v, err := strconv.ParseFloat(rows[frame+1][i], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
	}
	t.Fatalf("no column %s", name)
	return 0
}

// trackSchema is the JSON schema of OpenTrackIO.
func trackSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(samples.Read(t, "opentrackio/schema.json")))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := compiler.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// Against the form's own JSON schema, and the curve against the CSV.
func TestOpenTrackIO(t *testing.T) {
	schema := trackSchema(t)
	for _, p := range append(examples(t), made(t, "29.97df"), made(t, "23.976")) {
		for _, s := range p.Shots {
			var b bytes.Buffer
			if err := OpenTrackIO(&b, s); err != nil {
				t.Fatal(err)
			}
			frames := Frames(s)
			seen := map[string]bool{}
			for i, line := range bytes.Split(bytes.TrimSpace(b.Bytes()), []byte("\n")) {
				value, err := jsonschema.UnmarshalJSON(bytes.NewReader(line))
				if err != nil {
					t.Fatal(err)
				}
				if err := schema.Validate(value); err != nil {
					t.Fatalf("%s %s, frame %d: %v\n%s", p.Title, s.ID, i, err, line)
				}
				var one sample
				if err := json.Unmarshal(line, &one); err != nil {
					t.Fatal(err)
				}
				f := frames[i]
				if want := f.Sensor; math.Abs(one.Lens.FocusDistance-want) > 1e-6 && !(math.IsInf(want, 1) && one.Lens.FocusDistance == 0) {
					t.Errorf("%s %s, frame %d: %g m, want %g", p.Title, s.ID, i, one.Lens.FocusDistance, want)
				}
				c := one.Timing.Timecode
				label := fmt.Sprintf("%02d:%02d:%02d:%02d", c.Hours, c.Minutes, c.Seconds, c.Frames)
				if n, err := s.Rate.Parse(label); err != nil || n != f.Label {
					t.Errorf("frame %d has label %s: %v", i, label, err)
				}
				if seen[one.SampleID] {
					t.Errorf("frame %d has the identifier of another", i)
				}
				seen[one.SampleID] = true
			}
			if len(seen) != len(frames) {
				t.Errorf("%d samples of %d frames", len(seen), len(frames))
			}
		}
	}
}

// The schema does refuse what is wrong: a test of the test above.
func TestSchemaRefuses(t *testing.T) {
	schema := trackSchema(t)
	bad, err := jsonschema.UnmarshalJSON(strings.NewReader(`{"lens":{"focusDistance":-1}}`))
	if err != nil {
		t.Fatal(err)
	}
	if schema.Validate(bad) == nil {
		t.Error("a focus behind the camera is valid")
	}
}

// Markers written and read back are equal to the frame, at every rate.
func TestMarkersRoundTrip(t *testing.T) {
	for _, rate := range timecode.Rates() {
		t.Run(rate.String(), func(t *testing.T) {
			p := made(t, rate.String())
			var want []string
			for _, s := range place(p) {
				for _, m := range s.marks() {
					want = append(want, fmt.Sprintf("%d %s %s %s", m.at, s.ID, m.colour, m.text))
				}
			}
			for name, read := range map[string]func(*testing.T, *plan.Plan) []string{"edl": readEDL, "otio": readOTIO} {
				if got := read(t, p); strings.Join(got, "\n") != strings.Join(want, "\n") {
					t.Errorf("%s:\n%s\nwant\n%s", name, strings.Join(got, "\n"), strings.Join(want, "\n"))
				}
			}
			if hour := int64(3600) * rate.Base(); !rate.Drop() && want[0] != fmt.Sprintf("%d 1 YELLOW knock", hour+rate.Frames(0.5)) {
				t.Errorf("the first marker is %s", want[0])
			}
		})
	}
}

func readEDL(t *testing.T, p *plan.Plan) (got []string) {
	var b bytes.Buffer
	if err := EDL(&b, p); err != nil {
		t.Fatal(err)
	}
	text, _ := lines.Decode("f.edl", b.Bytes())
	list, diags := edl.Read(text, rateOf(p))
	for _, d := range diags {
		t.Errorf("%d: %s", d.Range.Start.Line, d.Message)
	}
	for _, e := range list.Events {
		for _, m := range e.Markers {
			got = append(got, fmt.Sprintf("%d %s %s %s", m.At, e.Clip, m.Colour, m.Text))
		}
	}
	return got
}

func readOTIO(t *testing.T, p *plan.Plan) (got []string) {
	var b bytes.Buffer
	if err := OTIO(&b, p); err != nil {
		t.Fatal(err)
	}
	text, _ := lines.Decode("f.otio", b.Bytes())
	list, diags := otio.Read(text)
	for _, d := range diags {
		t.Errorf("%d: %s", d.Range.Start.Line, d.Message)
	}
	for _, track := range list.Tracks {
		for _, item := range track.Items {
			for _, m := range item.Markers {
				at, ok := item.RecordOf(m, list.Start)
				if !ok {
					t.Errorf("marker %q lies outside its clip", m.Name)
				}
				got = append(got, fmt.Sprintf("%d %s %s %s", list.Start+at, item.Name, m.Colour, m.Name))
			}
		}
	}
	return got
}

// usdReader returns the folder of the independent reader of USD, which is not part of this
// repository, and skips the test where it or node is not there.
func usdReader(t *testing.T) string {
	t.Helper()
	folder := os.Getenv("PULLSCORE_TINYUSDZ")
	if folder == "" {
		t.Skip("skipped: PULLSCORE_TINYUSDZ names no folder with the npm package tinyusdz")
	}
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("skipped: there is no node")
	}
	return folder
}

// Against an independent reader, which is not part of this repository.
func TestUSDIsRead(t *testing.T) {
	folder := usdReader(t)
	dir := t.TempDir()
	args := []string{"testdata/readusd.mjs", filepath.Join(folder, "node_modules", "tinyusdz")}
	add := func(src []byte) {
		file := filepath.Join(dir, fmt.Sprintf("%d.usda", len(args)))
		if err := os.WriteFile(file, src, 0o666); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	var shots []*plan.Shot
	var b bytes.Buffer
	for _, p := range append(examples(t), made(t, "29.97")) {
		for _, s := range p.Shots {
			b.Reset()
			if err := USD(&b, nil, s); err != nil {
				t.Fatal(err)
			}
			shots = append(shots, s)
			add(b.Bytes())
		}
	}
	add(b.Bytes()[:b.Len()/2])
	out, err := exec.Command("node", args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	var layers []*string
	if err := json.Unmarshal(out, &layers); err != nil {
		t.Fatal(err)
	}
	for i, s := range shots {
		if layers[i] == nil {
			t.Errorf("shot %s is refused", s.ID)
			continue
		}
		compareSamples(t, s, *layers[i])
	}
	if layers[len(shots)] != nil {
		t.Error("half of a file is read too")
	}
}

var sampled = regexp.MustCompile(`(\d+): ([\d.e+-]+)`)

// compareSamples looks whether the focus that the reader found is the plan's at
// every sample.
func compareSamples(t *testing.T, s *plan.Shot, layer string) {
	t.Helper()
	_, after, ok := strings.Cut(layer, "focusDistance.timeSamples = {")
	if !ok {
		if len(s.Pulls) > 0 {
			t.Errorf("%s: the camera does not rack", s.ID)
		}
		return
	}
	list, _, _ := strings.Cut(after, "}")
	frames := Frames(s)
	for _, m := range sampled.FindAllStringSubmatch(list, -1) {
		code, err := strconv.Atoi(m[1])
		if err != nil {
			t.Fatal(err)
		}
		value, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		want := min(frames[code-firstFrame].Lens, farthest)
		if math.Abs(value-want) > 2e-5*math.Max(1, want) { // the reader prints six digits
			t.Errorf("%s: %g m at %d, want %g", s.ID, value, code, want)
		}
	}
}

// Whom the lens cannot image, because they are too near, is in the file too, and at the
// distance of the plan.
func TestUSDHasWhoIsTooNear(t *testing.T) {
	s := made(t, "24").Shots[0]
	s.Subjects[1].Along = plan.Still(0.06)
	if lens := s.LensDistanceAt(s.Subjects[1], 0); !math.IsNaN(lens) {
		t.Fatalf("the lens images them at %g m", lens)
	}
	var b bytes.Buffer
	if err := USD(&b, nil, s); err != nil {
		t.Fatal(err)
	}
	if got := placesIn(t, still(b.String(), firstFrame))["A_B"].place(); !near3(got, [3]float64{0, 0, -0.06}, 1e-9) {
		t.Errorf("they are at %v", got)
	}
}

// The same plan gives the same bytes.
func TestSameBytes(t *testing.T) {
	write := func() (all []byte) {
		p := made(t, "24")
		var b bytes.Buffer
		for _, f := range []func(io.Writer, *plan.Plan) error{EDL, OTIO} {
			if err := f(&b, p); err != nil {
				t.Fatal(err)
			}
		}
		for _, f := range []func(io.Writer, *plan.Plan, *plan.Shot) error{alone(CSV), alone(OpenTrackIO), USD} {
			if err := f(&b, p, p.Shots[0]); err != nil {
				t.Fatal(err)
			}
		}
		return b.Bytes()
	}
	if !bytes.Equal(write(), write()) {
		t.Error("two runs differ")
	}
}

// A cut that begins within a rack has the start of the rack on its first frame:
// in a list, a marker before its clip would be another clip's.
func TestMarkersLieInTheirClips(t *testing.T) {
	res, err := interp.Read("../../../examples/ferry/cut-2/ferry.pull", interp.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var list bytes.Buffer
	if err := EDL(&list, res.Plan); err != nil {
		t.Fatal(err)
	}
	if want := "01:11:58:00 CYAN 1 rack to PEVIN, 6 fr before the cut"; !strings.Contains(strings.Join(strings.Fields(list.String()), " "), want) {
		t.Errorf("no %q in\n%s", want, &list)
	}
	for _, s := range place(res.Plan) {
		for _, m := range s.marks() {
			if m.at < s.in || m.at > s.out {
				t.Errorf("%q lies at %d, and its clip from %d to %d", m.text, m.at, s.in, s.out)
			}
		}
	}
}

// Every form says what the ring of a shot rests on in the words of the lists, but for the
// rows of the CSV, which have its kind.
func TestFormsSayWhereTheRingIsFrom(t *testing.T) {
	const law = `Ring of "long": by the law of unit focusing: not measured`
	p := made(t, "24")
	var list, line, rows, samples, scene bytes.Buffer
	for _, err := range []error{
		EDL(&list, p), OTIO(&line, p), CSV(&rows, p.Shots[0]), OpenTrackIO(&samples, p.Shots[0]), USD(&scene, nil, p.Shots[0]),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	quoted := strings.ReplaceAll(law, `"`, `\"`)
	for _, c := range []struct {
		form, text, want string
		times            int
	}{
		{"edl", list.String(), "\n* " + law + "\n", len(p.Shots)},
		{"otio", line.String(), `"ring": "` + quoted + `"`, len(p.Shots)},
		{"csv", rows.String(), ",law\n", len(Frames(p.Shots[0]))},
		{"opentrackio", samples.String(), "sensor plane. " + quoted + `."`, len(Frames(p.Shots[0]))},
		{"usd", scene.String(), quoted + `."`, 1},
	} {
		if n := strings.Count(c.text, c.want); n != c.times {
			t.Errorf("%s: %q stands there %d times, want %d", c.form, c.want, n, c.times)
		}
	}
	if head, _, _ := strings.Cut(rows.String(), "\n"); !strings.HasSuffix(head, ",ring_kind") {
		t.Errorf("the last column of the CSV is not the ring: %s", head)
	}
}
