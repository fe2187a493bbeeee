// A camera that runs at another speed than the film.

package interp_test

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/timecode"
	"pullscore/optics"
)

// offSpeed is a shot whose camera shoots so many frames a second. Its rack takes OVER.
func offSpeed(rate, shoots, over string) string {
	return fmt.Sprintf(`plan "Off speed"
rate %s
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  iso 800
  shutter 180 deg
  shoots %s
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
subject ANNA at 1.7 m
subject BRAM at 110 cm
shot 1
  with stop f/2.8, meter f/2.8
  begins at 01:00:00:00
  start on BRAM
  pause 2 s
  rack to ANNA, over %s, because "the bucket falls"
  hold 2 s
`, rate, shoots, over)
}

func slowShot(t *testing.T, src string) *plan.Shot {
	t.Helper()
	res := interpret("plan.pull", src)
	if len(res.Plan.Shots) != 1 {
		t.Fatalf("no shot: %v\n%s", res.Findings, src)
	}
	return res.Plan.Shots[0]
}

var speedRow = regexp.MustCompile(`^shoots ([\d.]+), rate ([\d.]+): (.*)$`)

// The rows of an independent model, on whole plans.
func TestSpeedIsTheModels(t *testing.T) {
	shoots, rate := "", ""
	quickest := func(frames string) float64 { // as the cure of `jarring` tells it
		src := strings.Replace(offSpeed("24", frames, "0.01 s"), "rate 24", "rate 24\nquickest 0.4 s", 1)
		for _, d := range interpret("plan.pull", src).Findings {
			if d.Code == "jarring" {
				for _, f := range d.Figures {
					if f.Name == "wanted_s" {
						return slowShot(t, src).Speed().Set(f.Value)
					}
				}
			}
		}
		return math.NaN()
	}
	rows := 0
	eachCase(t, "speed", func(name string, want, within float64) {
		rows++
		if m := speedRow.FindStringSubmatch(name); m != nil && m[3] == "speed" {
			shoots, rate = m[1], m[2]
		}
		got := math.NaN()
		s := func() *plan.Shot { return slowShot(t, offSpeed(rate, shoots, "1 s")) }
		switch {
		case strings.HasSuffix(name, ": speed"):
			got = s().Speed().Factor()
		case name == "same: a rack over 1 s lasts on the screen":
			got = 1
			if p := s().Pulls[0]; p.ScreenLand.Known() {
				got = float64(p.ScreenLand - p.ScreenStart)
			}
		case name == "same: light against the rate, shutter angle kept":
			got = -math.Log2(s().Speed().Factor())
		case name == "shutter 180 deg at 96 fps":
			got = 180 / 360.0 * timecode.Speed{Shoots: 96}.Seconds(1)
			if a := optics.ShutterAngle(96, got); math.Abs(a-180) > 1e-9 {
				t.Errorf("the same time is %v degrees", a)
			}
		case name == "shoots 96, rate 24: 12 fr at the hand":
			p := slowShot(t, offSpeed("24", "96", "12 fr")).Pulls[0]
			got = float64(p.Land - p.Start)
		case name == "shoots 96, rate 24: 12 fr on the screen":
			p := slowShot(t, offSpeed("24", "96", "12 fr")).Pulls[0]
			got = float64(p.ScreenLand - p.ScreenStart)
		case strings.HasPrefix(name, "shoots 96, rate 24: cut asks for 2 s"):
			src := strings.Replace(offSpeed("24", "96", "1 s"), "over 1 s", "on 01:00:02:00, over 1 s", 1)
			got = float64(slowShot(t, src).Pulls[0].Start)
		case strings.HasPrefix(name, "shoots 96, quickest"):
			got = quickest("96")
		case strings.HasPrefix(name, "shoots 12, rate 24, quickest"):
			got = quickest("12")
		case strings.HasPrefix(name, "hand 4.1 bit/s, 120 deg, 0.5 s"):
			got = hand.MotorSpread(120, 0.5, 4.1)
		case name == "same in 2 s":
			got = hand.MotorSpread(120, 2, 4.1)
		}
		if rate == "23.976" { // the model takes it as written, and it is 24000/1001
			within = 2e-6
		}
		if math.Abs(got-want) > within*math.Max(1, math.Abs(want)) {
			t.Errorf("%s: %v, the model has %v", name, got, want)
		}
	})
	if rows != 26 {
		t.Errorf("%d rows, not 26", rows)
	}
}

// eachCase calls do with the rows of a topic.
func eachCase(t *testing.T, topic string, do func(name string, want, within float64)) {
	t.Helper()
	f, err := os.Open("../testdata/lens-cases.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows := bufio.NewScanner(f)
	for rows.Scan() {
		c := strings.Split(rows.Text(), "\t")
		if c[0] != topic {
			continue
		}
		want, err1 := strconv.ParseFloat(c[2], 64)
		within, err2 := strconv.ParseFloat(c[4], 64)
		if err1 != nil || err2 != nil {
			t.Fatalf("a row that nobody can read: %q", c)
		}
		do(c[1], want, within)
	}
}

var shooting = regexp.MustCompile(`, shoots [0-9]+`)

// A camera that shoots at the rate changes no byte.
func TestTheRateItselfChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := shooting.ReplaceAllString(genPlan(t), "")
		_, after, _ := strings.Cut(src, "\nrate ")
		rate, _, _ := strings.Cut(after, "\n")
		with := strings.Replace(src, "\n  with camera A,", "\n  with camera A, shoots "+rate+",", 1)
		a, b := interpret("plan.pull", src), interpret("plan.pull", with)
		for _, of := range []struct{ before, after any }{{a.Plan, b.Plan}, {messages(a.Findings), messages(b.Findings)}} {
			x, err1 := json.Marshal(of.before)
			y, err2 := json.Marshal(of.after)
			if err1 != nil || err2 != nil || string(x) != string(y) {
				t.Fatalf("shoots %s at that rate changes\n%s\nto\n%s\n%s", rate, x, y, with)
			}
		}
	})
}

func messages(list []lang.Diagnostic) []string {
	var texts []string
	for _, d := range list {
		text := d.Code + ": " + d.Message + " " + d.Detail
		for _, c := range d.Cures { // what they write stands elsewhere in another text
			text += fmt.Sprint(" ", c.Text, c.Value, c.Unit, c.Then, len(c.Edits))
		}
		texts = append(texts, text)
	}
	return texts
}

// On set nothing changes: a rack lands as surely at every speed, and its cue is where it
// was. On the screen it takes longer, so it is less often too quick.
func TestTheHandDoesNotSeeTheSpeed(t *testing.T) {
	at := func(shoots string) (*plan.Shot, []string) {
		src := offSpeed("24", shoots, "0.15 s")
		var codes []string
		for _, d := range interpret("plan.pull", src).Findings {
			codes = append(codes, d.Code)
		}
		return slowShot(t, src), codes
	}
	plain, said := at("24")
	slow, slowly := at("96")
	p, q := plain.Pulls[0], slow.Pulls[0]
	if p.Chance != q.Chance || p.Spread != q.Spread || p.Needed != q.Needed || p.Start != q.Start || p.Land != q.Land || plain.Duration != slow.Duration {
		t.Errorf("the hand has %+v, and at 96 frames a second %+v", p, q)
	}
	if !slices.Contains(said, "jarring") || slices.Contains(slowly, "jarring") {
		t.Errorf("findings are %v, and at 96 frames a second %v", said, slowly)
	}
	if !slices.Contains(slowly, "speed-light") || slices.Contains(said, "speed-light") {
		t.Errorf("light: findings are %v, and at 96 frames a second %v", said, slowly)
	}
	if p.StartFrame*4 != q.StartFrame || slow.Timecode(2) != "01:00:08:00" {
		t.Errorf("frame %d, and at 96 frames a second %d, at %s", p.StartFrame, q.StartFrame, slow.Timecode(2))
	}
}

// What the set-up says rules over the camera, and the words of a line come once.
func TestWhoShoots(t *testing.T) {
	src := strings.Replace(offSpeed("24", "96", "1 s"), "with stop", "with shoots 48, stop", 1)
	if k := slowShot(t, src).Speed().Factor(); k != 2 {
		t.Errorf("the set-up's 48 frames are %v", k)
	}
	src = strings.Replace(src, "  pause 2 s\n", "  ANNA: \"One.\"\n  BRAM: \"Two.\"\n", 1)
	told := 0
	for _, d := range interpret("plan.pull", src).Findings {
		if d.Code == "speed-sound" {
			told++
			if d.Message != "the shot runs at 2 times: on the screen this line is not in step with its mouth" {
				t.Error(d.Message)
			}
		}
		if d.Code == "speed-light" && d.Message != "at 48 frames a second each frame gets 1 stop less light than at 24: has the meter been read at that speed?" {
			t.Error(d.Message)
		}
	}
	if told != 1 {
		t.Errorf("speed-sound is told %d times", told)
	}
	for _, wrong := range []string{"0.5", "10001"} {
		if !slices.ContainsFunc(interpret("plan.pull", offSpeed("24", wrong, "1 s")).Findings, func(d lang.Diagnostic) bool { return d.Code == "out-of-range" }) {
			t.Errorf("shoots %s is taken", wrong)
		}
	}
}

// A let of the film in frames counts frames of the shot that uses it.
func TestFramesOfALetAreThoseOfTheShot(t *testing.T) {
	src := strings.Replace(offSpeed("24", "96", "2 * quick"), "rate 24", "rate 24\nlet quick = 12 fr\nlet beat = quick", 1)
	s := slowShot(t, src)
	if got := float64(s.Pulls[0].Land - s.Pulls[0].Start); math.Abs(got-0.25) > 1e-9 || math.Abs(s.Beat-0.125) > 1e-9 {
		t.Errorf("24 frames take %v s, and a beat %v s", got, s.Beat)
	}
}

// What a cut has is screen time: of a shot that goes by four times as slowly everything
// comes four times as soon on set. Lines, cues and the stretch in the picture agree.
func TestACutIsOnTheScreen(t *testing.T) {
	list := "TITLE: CUT\n\n001  AX V C 01:00:00:00 01:00:20:00 01:00:00:00 01:00:20:00\n* FROM CLIP NAME: 1\n* LOC: 01:00:04:00 YELLOW drop\n"
	body := "  cue drop on 7 s\n  ANNA: \"The bucket falls over the edge.\"\n  rack to ANNA, on drop, over 0.5 s\n"
	src := offSpeed("24", "96", "0.5 s")
	src = strings.Replace(src, "rate 24\n", "rate 24\nedit \"cut.edl\"\nedit \"cut.srt\"\n", 1)
	src = src[:strings.Index(src, "  pause 2 s")] + body
	res := interpret("plan.pull", src, "cut.edl", list, "cut.srt", srt(8.0, 12.0, "The bucket falls over the edge."))
	s := res.Plan.Shots[0]
	if !nearly(s.Lines[0].Start, 2) || !nearly(s.Lines[0].End, 3) {
		t.Errorf("the line is from %v to %v s on set: %v", s.Lines[0].Start, s.Lines[0].End, res.Findings)
	}
	if !nearly(s.Pulls[0].Start, 1) || !nearly(s.Pulls[0].ScreenStart, 4) || s.Pulls[0].StartFrame != 96 {
		t.Errorf("the rack starts at %v s on set, %v s on the screen, frame %d", s.Pulls[0].Start, s.Pulls[0].ScreenStart, s.Pulls[0].StartFrame)
	}
	if !nearly(s.Duration, 5) {
		t.Errorf("20 s of the cut are %v s on set", s.Duration)
	}
}

// Subtitles without a place say how lines lie to one another: on the screen too.
func TestSubtitlesAreOnTheScreen(t *testing.T) {
	src := offSpeed("24", "96", "0.5 s")
	src = strings.Replace(src, "rate 24\n", "rate 24\nedit \"cut.srt\"\n", 1)
	src = strings.Replace(src, "  begins at 01:00:00:00\n", "", 1)
	src = src[:strings.Index(src, "  pause 2 s")] + "  pause 1 s\n  ANNA: \"The bucket falls over the edge.\"\n  BRAM: \"And nobody has seen it go.\"\n"
	s := interpret("plan.pull", src, "cut.srt", srt(40.0, 42.0, "The bucket falls over the edge.", 48.0, 52.0, "And nobody has seen it go.")).Plan.Shots[0]
	for i, want := range [][2]float64{{1, 1.5}, {3, 4}} {
		if l := s.Lines[i]; !nearly(l.Start, want[0]) || !nearly(l.End, want[1]) {
			t.Errorf("line %d is from %v to %v s on set, not %v", i+1, l.Start, l.End, want)
		}
	}
	if w := s.Lines[1].Words; !(w[0].Start == 3 && w[len(w)-1].End == 4) {
		t.Errorf("its words: %+v", w)
	}
}

// A shutter that is a time is another angle at another speed; one that is open longer
// than a frame is told where the speed is written.
func TestShutterAtAnotherSpeed(t *testing.T) {
	angle := func(shutter, shoots string) (float64, []string) {
		src := strings.Replace(offSpeed("24", "24", "1 s"), "shutter 180 deg", "shutter "+shutter, 1)
		src = strings.Replace(src, "with stop", "with shoots "+shoots+", stop", 1)
		res := interpret("plan.pull", src)
		if len(res.Plan.Shots) == 0 {
			return math.NaN(), codes(res)
		}
		return res.Plan.Shots[0].Optics.Light.Shutter, codes(res)
	}
	for _, c := range []struct {
		shutter, shoots string
		want            float64
	}{{"180 deg", "96", 180}, {"1/192 s", "96", 180}, {"1/192 s", "48", 90}, {"1/192 s", "24", 45}} {
		if got, _ := angle(c.shutter, c.shoots); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s at %s frames a second is %v degrees, not %v", c.shutter, c.shoots, got, c.want)
		}
	}
	if _, told := angle("1/50 s", "96"); !slices.Contains(told, "out-of-range") {
		t.Errorf("1/50 s at 96 frames a second is told as %v", told)
	}
}
