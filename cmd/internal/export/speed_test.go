package export

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pullscore/interp"
)

// A shot of a fast camera has a frame for every one that it takes. Frame n is at set
// time n over the frames a second, and has the timecode of the record.
func TestOffSpeedFrames(t *testing.T) {
	const text = `plan "Slow"
rate 24
camera A
  sensor 24 x 18 mm
  shoots 96
lens "long"
  focal 50 mm
  stops f/2.8 to f/22
  closest 80 cm
  ring 300 deg, diameter 90 mm
subject ANNA at 2 m
subject BRAM at 4 m
shot 1
  with stop f/4
  start on BRAM
  begins at 01:00:00:00
  rack to ANNA, over 1 s, on 0.5 s
  lasts 2 s
`
	p := interp.Interpret("slow.pull", []byte(text), interp.Options{}).Plan
	s := p.Shots[0]
	frames := Frames(s)
	if len(frames) != 192 {
		t.Fatalf("%d frames, not 192", len(frames))
	}
	for n, f := range frames {
		if math.Abs(f.Time-float64(n)/96) > 1e-12 || f.Label != s.Begins+int64(n) || math.Abs(f.Lens-s.FocusAt(float64(n)/96)) > 1e-12 {
			t.Fatalf("frame %d: %+v", n, f)
		}
	}
	var b bytes.Buffer
	if err := EDL(&b, p); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"01:00:00:00 01:00:08:00", "LOC: 01:00:02:00 CYAN", "LOC: 01:00:06:00 GREEN"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the list has no %q:\n%s", want, b.String())
		}
	}
	b.Reset()
	if err := OpenTrackIO(&b, s); err != nil {
		t.Fatal(err)
	}
	var first struct {
		Static struct {
			Camera struct {
				Rate struct{ Num, Denom int64 } `json:"captureFrameRate"`
			}
		}
	}
	if err := json.NewDecoder(&b).Decode(&first); err != nil || first.Static.Camera.Rate != struct{ Num, Denom int64 }{96, 1} {
		t.Errorf("the camera takes %+v: %v", first.Static.Camera.Rate, err)
	}
}
