// A cut of a staged scene: each shot has the times of the cut, and the scene its cuts.

package interp_test

import (
	"math"
	"testing"

	"pullscore/interp"
	"pullscore/interp/load"
)

const stagedCut = `plan "A talk"
rate 24
edit "c.srt"
edit "c.edl"
with camera A, lens "50", stop f/4
camera A
  sensor 24.89 x 18.66 mm
lens "50"
  focal 50 mm
  stops f/2 to f/22
  closest 50 cm
scene "The talk"
  mark GATE at 40 cm right, 1.3 m upstage
  subject ANN at 0 m right
  subject BEN at GATE
  ANN: "Last boat today.", lasting 1.8 s
  pause 1.2 s
  BEN: "One way please.", lasting 0.9 s
  pause 1.5 s
  ANN: "You live on this side.", lasting 1.6 s
  cue late on "this"
shot 1A
  covers all
  camera at 80 cm right, 2.2 m downstage, aims at ANN and BEN
  start on ANN
  rack to BEN, landing on "one", over 0.5 s
shot 1B
  covers "one" to end
  camera at 1.5 m left, 1 m downstage, aims at BEN
  start on BEN
`

const stagedCaptions = `1
00:00:00,500 --> 00:00:02,300
Last boat today.

2
00:00:03,500 --> 00:00:04,500
One way please.

3
00:00:05,000 --> 00:00:06,500
You live on this side.
`

const stagedList = `TITLE: C
FCM: NON-DROP FRAME

001  AX V C 01:00:00:00 01:00:04:12 00:00:00:00 00:00:04:12
* FROM CLIP NAME: 1A
002  AX V C 02:00:03:00 02:00:05:00 00:00:04:12 00:00:06:12
* FROM CLIP NAME: 1B
`

func TestCutOfAScene(t *testing.T) {
	files := map[string]string{"p.pull": stagedCut, "c.srt": stagedCaptions, "c.edl": stagedList}
	opt := load.Options{ReadFile: func(path string) ([]byte, error) { return []byte(files[path]), nil }}
	p := interp.Interpret("p.pull", []byte(stagedCut), opt).Plan
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	a, b := p.Shots[0], p.Shots[1]
	for i, want := range []float64{0.5, 3.5, 5} { // as the subtitles have them
		near("1A, line", float64(a.Lines[i].Start), want)
	}
	if len(b.Lines) != 2 {
		t.Fatalf("1B has %d lines, want the two that it covers", len(b.Lines))
	}
	near("1B, its last line", float64(b.Lines[1].Start), 0.5)
	near("1A begins before the scene by", float64(a.Covers[0]), -0.5)
	near("1A, the rack lands", float64(a.Pulls[0].Land), 3.5)
	near("1A, the cue goes along", float64(a.Cues[0].T), float64(a.Lines[2].Words[3].Start))
	cuts := p.Scenes[0].Cuts
	if len(cuts) != 2 || cuts[0].To != "1A" || cuts[1].To != "1B" || !cuts[1].FromEdit {
		t.Fatalf("the scene has the cuts %v", cuts)
	}
}
