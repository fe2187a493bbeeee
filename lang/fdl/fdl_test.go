package fdl

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
)

// written is a list in the layout of version 2.0, with the sizes of the example
// Scenario-9 that the authors of the form publish (ascmitc/fdl): a sensor of 25.92
// by 21.6 mm recorded in 5184 by 4320 px through a squeeze of 1.3, of which 4728
// by 3456 px are framed. The words around the sizes are our own.
const written = `{
  "uuid": "0f0c1d0a-0000-4000-8000-000000000001",
  "version": {"major": 2, "minor": 0},
  "fdl_creator": "a test",
  "default_framing_intent": "WIDE",
  "framing_intents": [
    {"label": "wide", "id": "WIDE", "aspect_ratio": {"width": 16, "height": 9}, "protection": 0.088}
  ],
  "contexts": [
    {
      "label": "camera A",
      "context_creator": "a test",
      "canvases": [
        {
          "label": "open gate",
          "id": "C1",
          "source_canvas_id": "C1",
          "dimensions": {"width": 5184, "height": 4320},
          "photosite_dimensions": {"width": 5184, "height": 4320},
          "physical_dimensions": {"width": 25.92, "height": 21.6},
          "anamorphic_squeeze": 1.3,
          "framing_decisions": [
            {
              "label": "wide",
              "id": "C1-WIDE",
              "framing_intent_id": "WIDE",
              "dimensions": {"width": 4728, "height": 3456},
              "anchor_point": {"x": 228, "y": 432},
              "protection_dimensions": {"width": 5184, "height": 3790},
              "protection_anchor_point": {"x": 0, "y": 265}
            }
          ]
        }
      ]
    }
  ],
  "canvas_templates": []
}
`

func read(t testing.TB, src string) (*List, []lang.Diagnostic) {
	t.Helper()
	text, diags := lines.Decode("f", []byte(src))
	list, more := Read(text)
	return list, append(diags, more...)
}

// The published figures of Scenario-9: 23.64 by 17.28 mm, and a shape of 1.778.
func checkScenario(t *testing.T, src string) {
	t.Helper()
	list, diags := read(t, src)
	if len(diags) > 0 || len(list.Framings) != 1 {
		t.Fatalf("%+v %+v", list, diags)
	}
	f := list.Framings[0]
	w, h, ok := f.Sensor()
	if !ok || math.Abs(w-23.64) > 1e-9 || math.Abs(h-17.28) > 1e-9 || f.Squeeze != 1.3 || math.Abs(f.Shape()-1.77847222) > 1e-6 {
		t.Errorf("%v x %v mm (%v), squeeze %v, shape %v", w, h, ok, f.Squeeze, f.Shape())
	}
}

func TestScenario(t *testing.T) {
	checkScenario(t, written)
	list, _ := read(t, written)
	f := list.Framings[0]
	if f.Context != "camera A" || f.Canvas != "open gate" || f.CanvasID != "C1" || f.Label != "wide" || f.ID != "C1-WIDE" || f.Intent != list.Default {
		t.Errorf("%+v", f)
	}
	if at := (&lines.Text{Content: written}).Place(f.At).Start; at.Line != 23 || at.Column != 13 {
		t.Errorf("%+v", at)
	}
}

// The example itself, where it is at hand.
func TestPublishedScenario(t *testing.T) {
	checkScenario(t, string(samples.Read(t, "fdl/Scenario-9__OriginalFDL_UsedToMakePlate.fdl")))
}

// A list without a size on the sensor gives none.
func TestNoPhysicalSize(t *testing.T) {
	list, diags := read(t, strings.Replace(written, `"physical_dimensions": {"width": 25.92, "height": 21.6},`, `"physical_dimensions": null,`, 1))
	if len(diags) > 0 || len(list.Framings) != 1 {
		t.Fatalf("%+v %+v", list, diags)
	}
	if w, h, ok := list.Framings[0].Sensor(); ok {
		t.Errorf("%v x %v", w, h)
	}
}

// The fields of a canvas may stand behind its framings, and a canvas without
// framings is one.
func TestOrder(t *testing.T) {
	list, diags := read(t, `{"contexts":[{"canvases":[
	 {"framing_decisions":[{"label":"a","dimensions":{"height":1,"width":2}},{"label":"b","dimensions":{"height":2,"width":4}}],
	  "physical_dimensions":{"width":36,"height":24},"dimensions":{"width":4,"height":2}},
	 {"label":"whole","dimensions":{"width":4,"height":2},"physical_dimensions":{"width":8,"height":4}}],
	 "label":"A"}],"version":{"minor":1,"major":1}}`)
	if len(diags) > 0 || len(list.Framings) != 3 {
		t.Fatalf("%+v %+v", list, diags)
	}
	for i, want := range []float64{18, 36, 8} {
		if w, _, ok := list.Framings[i].Sensor(); w != want || !ok || list.Framings[i].Context != "A" {
			t.Errorf("%d: %v, want %v", i, w, want)
		}
	}
}

// change writes the list with one piece of it changed.
func change(from, to string) string {
	if !strings.Contains(written, from) {
		panic(from)
	}
	return strings.Replace(written, from, to, 1)
}

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		src, want string
		framings  int
	}{
		{change(`"major": 2`, `"major": 3`), "f:3:14: note other-version: this list has version 3.0", 1},
		{change(`"version": {"major": 2, "minor": 0},`, ""), "f:1:1: note other-version: this file does not say which version", 1},
		{change(`"minor": 0`, `"minor": 0.5`), "f:3:35: error foreign-unit: version.minor is no number of a version", 1},
		{change(`25.92`, `-25.92`), "f:20:44: error foreign-unit: canvas.physical_dimensions.width is 0 or below", 1},
		{change(`25.92`, `NaN`), "f:20:44: error foreign-unit: canvas.physical_dimensions.width is no finite number", 1},
		{change(`25.92`, `"25.92 mm"`), "f:20:44: error foreign-unit: canvas.physical_dimensions.width is a text, and a number is expected", 1},
		{change(`{"width": 25.92, "height": 21.6}`, `[25.92, 21.6]`), "f:20:34: error foreign-unit: canvas.physical_dimensions is a list, and an object is expected", 1},
		{change(`"anamorphic_squeeze": 1.3`, `"anamorphic_squeeze": 0`), "f:21:33: error foreign-unit: canvas.anamorphic_squeeze is 0 or below", 1},
		{change(`{"width": 5184, "height": 4320}`, `{"width": 5184}`), `f:14:9: error no-size: canvas "open gate" has no dimensions`, 0},
		{change(`"dimensions": {"width": 4728, "height": 3456},`, ""), `f:23:13: error no-size: framing "wide" has no dimensions`, 0},
		{change(`4728`, `6000`), `f:27:29: error no-size: framing "wide" is larger than its canvas`, 0},
		{change(`"contexts": [`, `"contexts": 5, "x": [`), "f:9:15: error foreign-unit: contexts is a number, and a list is expected", 0},
		{change(`"canvases": [`, `"canvases": [7,`), "f:13:20: error foreign-unit: a member of canvases is a number, and an object is expected", 1},
		{`[]`, `f:1:1: error bad-json: this is no JSON: '{' is expected`, 0},
		{``, `f:1:1: error bad-json: the file ends in the middle`, 0},
		{written + "}", "f:39:1: error bad-json: there is more text after the end", 1},
		{`{"version":{"major":2,"minor":0},"x":` + strings.Repeat("[", 20_000), "f:1:10038: error too-deep", 0},
	} {
		list, diags := read(t, c.src)
		if len(diags) != 1 || len(list.Framings) != c.framings {
			t.Errorf("%s: %d framings, %+v", c.want, len(list.Framings), diags)
			continue
		}
		d := diags[0]
		if got := fmt.Sprintf("f:%d:%d: %v %s: %s", d.Range.Start.Line, d.Range.Start.Column, d.Severity, d.Code, d.Message); !strings.HasPrefix(got, c.want) {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// A list beyond any film is refused at its place.
func TestTooLarge(t *testing.T) {
	const one = `{"dimensions":{"width":1,"height":1}}`
	list, diags := read(t, `{"version":{"major":2,"minor":0},"contexts":[{"canvases":[`+strings.Repeat(one+",", maxFramings)+one+"]}]}")
	if len(diags) != 1 || diags[0].Code != "too-large" || len(list.Framings) != maxFramings {
		t.Errorf("%d framings, %+v", len(list.Framings), diags)
	}
}

// The framed part of the sensor is never larger than the sensor, and has the
// shape of the framing.
func TestSensor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		px := rapid.Float64Range(1, 20000)
		mm := rapid.Float64Range(1, 70)
		cw, ch, pw := px.Draw(t, "canvas w"), px.Draw(t, "canvas h"), mm.Draw(t, "mm")
		part := rapid.Float64Range(0.01, 1)
		size := func(w, h float64) map[string]any { return map[string]any{"width": w, "height": h} }
		fw, fh := cw*part.Draw(t, "part w"), ch*part.Draw(t, "part h")
		src, err := json.Marshal(map[string]any{"version": map[string]int{"major": 2, "minor": 0}, "contexts": []any{map[string]any{"canvases": []any{map[string]any{
			"dimensions": size(cw, ch), "physical_dimensions": size(pw, pw*ch/cw), "framing_decisions": []any{map[string]any{"dimensions": size(fw, fh)}},
		}}}}})
		if err != nil {
			t.Fatal(err)
		}
		text, _ := lines.Decode("f", src)
		list, diags := Read(text)
		if len(diags) > 0 {
			t.Fatalf("%s: %+v", src, diags)
		}
		w, h, ok := list.Framings[0].Sensor()
		if !ok || w > pw*(1+1e-9) || math.Abs(w/h-fw/fh) > 1e-9*fw/fh || math.Abs(list.Framings[0].Shape()-w/h) > 1e-9*w/h {
			t.Fatalf("%s: %v x %v", src, w, h)
		}
	})
}

// Whatever a file holds, every framing has a size within its canvas.
func FuzzRead(f *testing.F) {
	f.Add(written)
	f.Add(`{"contexts":[{"canvases":[{"dimensions":{"width":1,"height":1e9}}]}]}`)
	f.Fuzz(func(t *testing.T, src string) {
		list, _ := read(t, src)
		for _, k := range list.Framings {
			if !k.Framed.Given() || !(k.Framed.Width <= k.Recorded.Width*(1+tiny)) || !(k.Squeeze > 0) {
				t.Errorf("%q: %+v", src, k)
			}
			if w, h, ok := k.Sensor(); ok && !(w > 0 && h > 0 && w < math.Inf(1)) {
				t.Errorf("%q: %v x %v", src, w, h)
			}
		}
	})
}
