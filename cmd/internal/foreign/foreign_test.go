package foreign

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/testing/samples"
	"pullscore/optics/ring"
)

// track returns the kit of samples.
func kitOf(t testing.TB, text, name string) *Kit {
	t.Helper()
	k, err := Read(strings.NewReader(text), "clip.json", name)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// says writes findings one a line.
func says(list []lang.Diagnostic) string {
	var b strings.Builder
	for _, d := range list {
		fmt.Fprintf(&b, "%d:%d: %v %s: %s\n", d.Range.Start.Line, d.Range.Start.Column, d.Severity, d.Code, d.Message)
	}
	return b.String()
}

// A kit is text of the language, laid out as fmt does.
func checkText(t interface{ Fatalf(string, ...any) }, text []byte) {
	if _, diags := lang.Parse("kit.pull", text); len(diags) > 0 {
		t.Fatalf("%s\n%s", text, says(diags))
	}
	if got := lang.Format(text); string(got) != string(text) {
		t.Fatalf("%s\nis laid out as\n%s", text, got)
	}
}

const full = `{"protocol":{"name":"OpenTrackIO","version":[1,0,1]},"static":{"camera":{
 "activeSensorPhysicalDimensions":{"width":24.89,"height":18.66},"activeSensorResolution":{"width":4096,"height":3072},
 "anamorphicSqueeze":{"num":2,"denom":1},"isoSpeed":800,"shutterAngle":172.8,"captureFrameRate":{"num":96,"denom":1},"label":"B"},
 "lens":{"make":"Halm","model":"Kontur 75","nominalFocalLength":75}},
 "timing":{"timecode":{"hours":1,"minutes":0,"seconds":0,"frames":0,"frameRate":{"num":24,"denom":1}}},
 "lens":{"fStop":1.8,"tStop":2,"encoders":{"focus":0.31},"rawEncoders":{"focus":41200},"focusDistance":1.5,"entrancePupilOffset":0.09}}
{"lens":{"fStop":16,"tStop":17.8,"encoders":{"focus":1},"focusDistance":0.75}}
{"lens":{"encoders":{"focus":0.1},"focusDistance":5.25}}
`

// Every field becomes its statement, and each says which field it is from.
func TestFields(t *testing.T) {
	k := kitOf(t, full, "")
	checkText(t, k.Text)
	for _, want := range []string{
		"camera B  # static.camera\n",
		"  sensor 24.89 x 18.66 mm  # activeSensorPhysicalDimensions\n",
		"  records 4096 px  # activeSensorResolution.width\n",
		"  shoots 96  # captureFrameRate; timing.timecode.frameRate is 24\n",
		"  iso 800  # isoSpeed\n",
		"  shutter 172.8 deg  # shutterAngle\n",
		"lens \"Halm Kontur 75\"  # static.lens\n",
		"  focal 75 mm  # nominalFocalLength\n",
		"  stops f/1.8 to f/16  # lens.fStop, the least and the most seen: the iris may go farther\n",
		"  stops T2 to T17.8  # lens.tStop, the least and the most seen: the iris may go farther\n",
		"  squeeze 2  # static.camera.anamorphicSqueeze\n",
		"  pupil 1.169  # lens.entrancePupilOffset\n",
		"  closest 75 cm  # lens.encoders.focus is 1 there, which the form calls the closest focus\n",
		"  # ring ___ deg, girth ___ mm  # how far it turns, and the way round it: pullscore help throw\n",
		"  mark 1.5 m at 0.3100 of 1  # 1 reading\n  mark 5.25 m at 0.1000 of 1  # 1 reading\n  mark inf at 0.0000 of 1  # the form has 0 at infinity\n",
	} {
		if !strings.Contains(string(k.Text), want) {
			t.Errorf("%q is not in\n%s", want, k.Text)
		}
	}
	if got := says(k.Findings); got != "1:1: note foreign-lens: this file says nothing of ring: measure it\n" {
		t.Error(got)
	}
	if named := kitOf(t, full, "my 75"); !strings.Contains(string(named.Text), `lens "my 75"  #`) {
		t.Errorf("%s", named.Text)
	}
}

// filled is a kit as somebody fills it in: what is not in the file is written into
// the comments that say so. A lens of the plan can be used.
func filled(text []byte, closest string) []byte {
	s := string(text)
	for _, p := range [][2]string{
		{"# sensor ___ x ___ mm", "sensor 24 x 18 mm"}, {"# focal ___ mm", "focal 50 mm"}, {"# stops f/___ to f/___", "stops f/2 to f/16"},
		{"# closest ___ cm", "closest " + closest}, {"# ring ___ deg, girth ___ mm", "ring 280 deg, girth 346 mm"},
	} {
		s = strings.ReplaceAll(s, p[0], p[1])
	}
	return []byte(s)
}

// interpreted interprets a kit and returns its errors.
func interpreted(text []byte) string {
	var errors []lang.Diagnostic
	for _, d := range interp.Interpret("kit.pull", text, interp.Options{}).Findings {
		if d.Severity == lang.Error {
			errors = append(errors, d)
		}
	}
	return says(errors)
}

// With the blanks filled in a kit has no errors, and before that only those about
// the blanks.
func TestFilledKitsHaveNoErrors(t *testing.T) {
	blanks := regexp.MustCompile(`error (no-closest|no-focal|no-stops|no-sensor|no-throw|lone-mark):`)
	for _, text := range []string{full, `{"lens":{"focusDistance":2,"encoders":{"focus":0.5}}}`, `{"lens":{"focusDistance":2,"rawEncoders":{"focus":0}}}`, `{"static":{"camera":{"isoSpeed":800}}}`} {
		k := kitOf(t, text, "")
		checkText(t, k.Text)
		for _, l := range strings.Split(strings.TrimSpace(interpreted(k.Text)), "\n") {
			if l != "" && !blanks.MatchString(l) {
				t.Errorf("%s\n%s", k.Text, l)
			}
		}
		if errors := interpreted(filled(k.Text, "40 cm")); errors != "" {
			t.Errorf("%s\n%s", filled(k.Text, "40 cm"), errors)
		}
	}
}

// The samples of the form's authors become kits without errors.
func TestPublishedSamples(t *testing.T) {
	for _, name := range []string{"complete_dynamic_example.json", "recommended_static_example.json", "complete_static_example.json"} {
		t.Run(name, func(t *testing.T) {
			k := kitOf(t, string(samples.Read(t, "opentrackio/"+name)), "")
			checkText(t, k.Text)
			if !strings.Contains(string(k.Text), "  mark 10 m at 0.1000 of 1  # 1 reading\n") {
				t.Errorf("%s", k.Text)
			}
			if errors := interpreted(filled(k.Text, "40 cm")); errors != "" {
				t.Errorf("%s\n%s", k.Text, errors)
			}
		})
	}
}

func TestFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{`{"protocol":{"version":[1,0,1]},"lens":{` + "\n" + `"focusDistance":-2,"encoders":{"focus":0.5}}}`, "2:17: error foreign-unit: lens.focusDistance is 0 or below, line 2"},
		{`{"lens":{"focusDistance":2}}`, "1:1: note other-version: these samples do not say which version"},
		{`{"protocol":{"version":[0,9,3]},"lens":{"fStop":2}}`, "1:1: note other-version: these samples have version 0.9.3"},
		{`{"lens":{"focusDistance":2,"encoders":{"focus":0.31}}}{"lens":{"focusDistance":2.41,"encoders":{"focus":0.31}}}{"lens":{"focusDistance":2.52,"encoders":{"focus":0.3101}}}`,
			"1:1: warning foreign-scatter: at encoder 0.31 the file has distances from 2 to 2.52 m: the middle one is taken"},
		{`{"lens":{"focusDistance":1,"encoders":{"focus":0.9}}}{"lens":{"focusDistance":9,"encoders":{"focus":0.7}}}{"lens":{"focusDistance":2,"encoders":{"focus":0.5}}}{"lens":{"focusDistance":3,"encoders":{"focus":0.3}}}`,
			"1:1: warning foreign-scatter: 1 position of the ring do not go"},
		{`{"static":{"lens":{"model":"a"}},"lens":{"fStop":2}}` + "\n" + `{"static":{"lens":{"model":"b"}},"lens":{"fStop":8}}`, "2:1: warning foreign-scatter: from line 2 on the samples are of another lens, b"},
		{`{"lens":{]}`, "1:10: error bad-json: this is no JSON"},
	} {
		if got := says(kitOf(t, c.text, "").Findings); !strings.Contains(got, c.want) {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
	for text, want := range map[string]string{"": "is empty", "\n ": "is empty", "<lensdatabase/>": "is neither OpenTrackIO nor", "[]": "has no samples",
		"{}": "says nothing of a lens or a camera", `{"protocol":{"name":"OpenTrackIO","version":[1,0,1]},"timing":{"sampleRate":{"num":24,"denom":1}}}`: "says nothing of a lens"} {
		if _, err := Read(strings.NewReader(text), "f", ""); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Samples of a second lens do not change the first.
func TestAnotherLens(t *testing.T) {
	k := kitOf(t, `{"static":{"lens":{"model":"a"}},"lens":{"fStop":2}} {"static":{"lens":{"model":"b"}},"lens":{"fStop":8}} {"lens":{"fStop":9}} {"static":{"lens":{"model":"a"}},"lens":{"fStop":4}}`, "")
	if !strings.Contains(string(k.Text), "stops f/2 to f/4 ") {
		t.Errorf("%s", k.Text)
	}
}

// The raw encoder stands in where the other is not in the file, and what a count
// of it means is said.
func TestRawEncoder(t *testing.T) {
	for of, high := range map[string]int{"65535": 60000, "90000": 90000} {
		k := kitOf(t, fmt.Sprintf(`{"lens":{"focusDistance":1,"rawEncoders":{"focus":%d}}} {"lens":{"focusDistance":4,"rawEncoders":{"focus":1200}}}`, high), "")
		checkText(t, k.Text)
		want := fmt.Sprintf("  mark 1 m at %d of %s  # 1 reading\n  mark 4 m at 1200 of %s  # 1 reading\n", high, of, of)
		if !strings.Contains(string(k.Text), want) || !strings.Contains(string(k.Text), "mark closest at ___ of "+of) {
			t.Errorf("%s\nwant %s", k.Text, want)
		}
	}
}

// A value that the language refuses becomes a comment that says so.
func TestRefusedValues(t *testing.T) {
	k := kitOf(t, `{"static":{"camera":{"activeSensorPhysicalDimensions":{"width":24890,"height":18660},"isoSpeed":800},"lens":{"nominalFocalLength":75000}}}`, "")
	checkText(t, k.Text)
	for _, stop := range []string{"1e300", "1e-300"} {
		k := kitOf(t, `{"lens":{"fStop":`+stop+`}}`, "")
		checkText(t, k.Text)
		if !strings.Contains(string(k.Text), "\n  # stops f/") || len(k.Text) > 2000 {
			t.Errorf("%s", k.Text)
		}
	}
	for _, want := range []string{"  # sensor 24890 x 18660 mm  # activeSensorPhysicalDimensions: ", "  # focal 75000 mm  # nominalFocalLength: ", "  iso 800  #"} {
		if !strings.Contains(string(k.Text), want) {
			t.Errorf("%q is not in\n%s", want, k.Text)
		}
	}
}

// Names of a file cannot break out of their line.
func TestNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nasty := rapid.StringOf(rapid.OneOf(rapid.Rune(), rapid.SampledFrom([]rune("\n\r\"\\#\u2028\u202e\x00 ")))).Draw(t, "name")
		src, err := json.Marshal(map[string]any{"static": map[string]any{"camera": map[string]any{"label": nasty}, "lens": map[string]any{"model": nasty, "nominalFocalLength": 50}}})
		if err != nil {
			t.Fatal(err)
		}
		k, err := OpenTrackIO(strings.NewReader(string(src)), nasty, "")
		if err != nil {
			t.Fatal(err)
		}
		checkText(t, k.Text)
		plain, _ := OpenTrackIO(strings.NewReader(`{"static":{"lens":{"nominalFocalLength":50}}}`), "f", "")
		if got, want := strings.Count(string(k.Text), "\n"), strings.Count(string(plain.Text), "\n"); got != want {
			t.Fatalf("%d lines, want %d\n%s", got, want, k.Text)
		}
	})
}

// lawful is a recording of a ring with a law: degrees of 0 to 1 from infinity over
// 1/distance.
func lawful(n int, closest float64, noise float64, seed uint64, law func(part float64) float64) string {
	random := rand.New(rand.NewPCG(seed, 1))
	var b strings.Builder
	for i := range n {
		u := float64(i+1) / float64(n) / closest
		e := law(u * closest)
		d := 1 / (u * (1 + noise*(random.Float64()-0.5)))
		fmt.Fprintf(&b, `{"lens":{"encoders":{"focus":%.6f},"focusDistance":%.5f}}`+"\n", e, d)
	}
	return b.String()
}

// A recording of hundreds of positions becomes 16 marks. Without noise the law
// through them misses none of the others by more than a hundredth of the ring, on
// a ring with a kink and on one with waves too; the figures are printed.
func TestThin(t *testing.T) {
	for name, law := range map[string]func(float64) float64{
		"straight": func(p float64) float64 { return p },
		"bent":     func(p float64) float64 { return math.Pow(p, 0.6) },
		"kinked":   func(p float64) float64 { return max(0.5*p, 1.5*p-0.5) },
		"wavy":     func(p float64) float64 { return p + 0.02*math.Sin(4*math.Pi*p) },
	} {
		recording := lawful(400, 0.6, 0, 1, law)
		k := kitOf(t, recording, "")
		checkText(t, k.Text)
		if marks := strings.Count(string(k.Text), "\n  mark ") - 1; marks != mostMarks { // without infinity
			t.Errorf("%s: %d marks\n%s", name, marks, k.Text)
		}
		all, err := gather(strings.NewReader(recording), "f")
		if err != nil {
			t.Fatal(err)
		}
		kept := all.places()
		var marks []ring.Mark
		for _, m := range append([]place{{at: 1, distance: kept.closest}}, append(kept.marks, place{distance: math.Inf(1)})...) {
			marks = append(marks, ring.Mark{Distance: m.distance, Angle: 360 * (1 - m.at)})
		}
		through, err := (&thinner{all: marks}).law(marks)
		if err != nil {
			t.Fatal(err)
		}
		worst := 0.0
		for _, p := range all.pairs {
			worst = max(worst, math.Abs(through(p.distance)/360-(1-p.at)))
		}
		t.Logf("%s: %.2f %% of the ring at most", name, 100*worst)
		if worst > 0.01 {
			t.Errorf("%s: the law misses a place by %.2f %% of the ring", name, 100*worst)
		}
	}
}

// A place that was joined is one of its readings: on a law without noise it lies on
// the law, however many were joined.
func TestMiddleIsAReading(t *testing.T) {
	all, err := gather(strings.NewReader(lawful(3000, 0.6, 0, 1, func(p float64) float64 { return p })), "f")
	if err != nil {
		t.Fatal(err)
	}
	list := join(all.pairs, joined)
	if len(list) > 500 {
		t.Errorf("%d places", len(list))
	}
	for _, p := range list {
		if off := math.Abs(p.at - 0.6/p.distance); off > 1e-5 {
			t.Errorf("%v m at %v: %v off the law", p.distance, p.at, off)
		}
	}
}

// Leaving out keeps the ends, keeps the order, and gives the number asked for.
func TestThinKeepsTheEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 60).Draw(t, "n")
		count := rapid.IntRange(2, 20).Draw(t, "count")
		var marks []place
		at, u := 1.0, 1.0
		for range n {
			marks = append(marks, place{at: at, distance: 1 / u, n: 1})
			at -= rapid.Float64Range(1e-4, 0.016).Draw(t, "step")
			u *= rapid.Float64Range(0.8, 0.99).Draw(t, "nearer")
		}
		kept := thin(marks, count, 1, false)
		if len(kept) != min(n, count) || kept[0] != marks[0] || kept[len(kept)-1] != marks[n-1] {
			t.Fatalf("%+v of %+v", kept, marks)
		}
		for i := 1; i < len(kept); i++ {
			if kept[i].at >= kept[i-1].at {
				t.Fatalf("%+v", kept)
			}
		}
	})
}

// The largest set of places that go one way, against all sets.
func TestOrdered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 9).Draw(t, "n")
		rising := rapid.Bool().Draw(t, "rising")
		var list []place
		for i := range n {
			list = append(list, place{at: float64(i), distance: float64(rapid.IntRange(1, 6).Draw(t, "distance"))})
		}
		goes := func(kept []place) bool {
			for i := 1; i < len(kept); i++ {
				if up := kept[i].distance > kept[i-1].distance; kept[i].distance == kept[i-1].distance || up != rising {
					return false
				}
			}
			return true
		}
		most := 0
		for set := range 1 << n {
			var kept []place
			for i := range n {
				if set>>i&1 == 1 {
					kept = append(kept, list[i])
				}
			}
			if goes(kept) {
				most = max(most, len(kept))
			}
		}
		if kept := ordered(list, rising); len(kept) != most || !goes(kept) {
			t.Fatalf("%+v of %+v, want %d", kept, list, most)
		}
	})
}

// A noisy recording becomes marks that the language accepts.
func TestNoise(t *testing.T) {
	for seed := range uint64(8) {
		k := kitOf(t, lawful(500, 0.7, 0.3*float64(seed)/8, seed, func(p float64) float64 { return math.Pow(p, 0.8) }), "")
		checkText(t, k.Text)
		if errors := interpreted(filled(k.Text, "20 cm")); errors != "" {
			t.Errorf("%d: %s\n%s", seed, errors, k.Text)
		}
	}
}

const framings = `{"version":{"major":2,"minor":0},"contexts":[
 {"label":"A camera","canvases":[{"label":"open gate","id":"C1","dimensions":{"width":5184,"height":4320},"physical_dimensions":{"width":25.92,"height":21.6},"anamorphic_squeeze":1.3,
  "framing_decisions":[{"label":"wide","id":"C1-W","framing_intent_id":"W","dimensions":{"width":4728,"height":3456}},{"label":"tall","id":"C1-T","dimensions":{"width":3000,"height":4320}}]}]},
 {"label":"B camera","canvases":[{"label":"16:9","dimensions":{"width":3840,"height":2160},"framing_decisions":[{"label":"wide","dimensions":{"width":3840,"height":1608}}]}]}]}`

func TestFraming(t *testing.T) {
	for _, name := range []string{"C1-W", "c1-w", "A camera / open gate / wide", "W"} {
		k := kitOf(t, framings, name)
		checkText(t, k.Text)
		for _, want := range []string{
			"camera \"A camera\"  # context.label\n",
			"  sensor 23.64 x 17.28 mm  # canvas.physical_dimensions 25.92 x 21.6 mm x framing_decision.dimensions 4728 x 3456 px / canvas.dimensions 5184 x 4320 px\n",
			"  records 4728 px  # the width of framing_decision.dimensions 4728 x 3456 px\n",
			"so write under it: squeeze 1.3\n", "has the shape 1.778 on the screen",
		} {
			if !strings.Contains(string(k.Text), want) {
				t.Errorf("%s: %q is not in\n%s", name, want, k.Text)
			}
		}
		if got := says(k.Findings); got != "1:1: note foreign-lens: this file says nothing of lens, ring: measure them\n" {
			t.Error(got)
		}
		if errors := interpreted(k.Text); errors != "" {
			t.Error(errors)
		}
	}
	k := kitOf(t, framings, "B camera")
	checkText(t, k.Text)
	if !strings.Contains(string(k.Text), "  # sensor ___ x ___ mm  # the list has no canvas.physical_dimensions; of the width of the canvas 100 % are framed, of the height 74.44 %\n") ||
		!strings.Contains(says(k.Findings), "nothing of sensor, lens, ring") {
		t.Errorf("%s%s", k.Text, says(k.Findings))
	}
}

// Where the name does not decide, all framings are listed.
func TestChoice(t *testing.T) {
	for name, want := range map[string]string{"": "has 3 framings", "wide": `"wide" names none or several of 3`, "narrow": `"narrow" names none or several of 3`} {
		_, err := Read(strings.NewReader(framings), "f", name)
		choice, ok := err.(*Choice)
		if !ok || len(choice.Framings) != 3 || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "\n  B camera / 16:9 / wide") {
			t.Errorf("%q: %v", name, err)
		}
	}
}

// Whatever a file holds, what comes of it is text of the language.
func FuzzRead(f *testing.F) {
	f.Add(full, "")
	f.Add(framings, "tall")
	f.Add(`{"static":{"camera":{"anamorphicSqueeze":{"num":1,"denom":4294967295}}},"lens":{"fStop":1e-300,"focusDistance":1e300,"encoders":{"focus":1e-9}}}`, "\"#")
	f.Fuzz(func(t *testing.T, text, name string) {
		k, err := Read(strings.NewReader(text), "f", name)
		if err == nil && len(k.Text) > 0 {
			checkText(t, k.Text)
		}
	})
}

// The schema of the samples is JSON with the same words, and no sample.
func TestSchemaIsNoSample(t *testing.T) {
	schema := string(samples.Read(t, "opentrackio/schema.json"))
	if k, err := Read(strings.NewReader(schema), "schema.json", ""); k != nil || err == nil || err.Error() != "schema.json: says nothing of a lens or a camera" {
		t.Errorf("%v, %v", k, err)
	}
}

// The head of a kit names the file that it is from, without its folders.
func TestHeadNamesTheFile(t *testing.T) {
	for name, text := range map[string]string{"take.jsonl": `{"lens":{"fStop":2}}`, "scene.fdl": framings} {
		k, err := Read(strings.NewReader(text), "some/folder/"+name, map[string]string{"scene.fdl": "W"}[name])
		if err != nil || !strings.HasPrefix(string(k.Text), "# From "+name+": ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
