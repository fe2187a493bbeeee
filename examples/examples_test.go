// The examples are what newcomers copy from, so each is interpreted here: what
// it is said to show, it shows, and nothing else.

package examples_test

import (
	"bytes"
	"cmp"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/viewer"
	"pullscore/lang"
)

// A found is where a finding lies and what it is.
type found struct {
	shot string
	pull int // 0: of no pull
	code string
}

// byLaw is why the notes of law-assumed are there.
const byLaw = "the kit has no marks of this lens, as its head says"

// why says of each finding that the examples are to have what makes it, and so why
// none of them may go or come unnoticed. A finding without a reason fails.
var why = map[found]string{
	{"22A", 1, "law-assumed"}:        byLaw,
	{"22B", 1, "law-assumed"}:        byLaw,
	{"22C", 1, "law-assumed"}:        byLaw,
	{"40A", 1, "law-assumed"}:        byLaw,
	{"40B", 1, "law-assumed"}:        byLaw,
	{"40C", 1, "law-assumed"}:        byLaw,
	{"40D", 1, "law-assumed"}:        byLaw,
	{"7A", 1, "law-assumed"}:         byLaw,
	{"3A", 1, "law-assumed"}:         byLaw,
	{"22B", 1, "not-seen"}:           "18 mm at f/8 on a sensor a third as wide leaves under 2 minutes of arc of blur",
	{"22C", 1, "faint"}:              "at f/5.6 the same blur shows, and is under 4.6 minutes of arc",
	{"40A", 1, "never-sure"}:         "the mark of a quick 85 wide open is narrower than a hand sets it at leisure",
	{"40A", 1, "nothing-sharp"}:      "wide open, a slow rack passes a stretch in which neither end is sharp",
	{"40B", 1, "never-sure"}:         "two stops more widen the mark, and not by enough",
	{"7B", 0, "stop-closes-in-zoom"}: "the long end of this zoom has no f/2.8",
	{"55-B", 2, "re-grip"}:           "to infinity the ring turns farther than one grip",
	{"44A", 1, "ring-unknown"}:       "nobody has measured the lens yet",
	{"44A", 1, "rough-mark"}:         "between two marks the ring is known to half a window",
	{"44A", 2, "hard-to-land"}:       "with the ring known, 0.9 s is a little short",
	{"27A", 1, "trimmed"}:            "the second cut begins after the first rack has",
	{"27B", 0, "line-differs"}:       "the second cut says the line in other words",
	{"27A", 0, "line-not-in-edit"}:   "the third cut takes the answer out of the middle of the shot",
	{"27A", 0, "removed"}:            "and with it the rack on a word of the answer",
	{"27B", 0, "several-takes"}:      "the third cut begins in one take and goes on in another",
	{"27B", 1, "across-a-cut"}:       "and the bell rings before the join",
	{"19A", 1, "pan-and-pull"}:       "who pans with him follows him too, with one hand for each",
	{"19A", 2, "pan-and-pull"}:       "and so to the letter; both land together, so nothing worse is told",
	{"23A", 0, "pans-fast"}:          "the tilt is meant to be quick",
	{"", 0, "focus-jumps"}:           "the first draft cuts to a face that somebody hides, and to one who is not there yet",
	{"", 0, "not-covered"}:           "the last line of the first draft comes after all that its shots cover",
	{"", 0, "not-held"}:              "MARRIT is hidden or out of the picture, and OSKEL walks out of it",
	{"", 0, "not-on-screen"}:         "the cuts of the first draft are on the other shot",
	{"14A", 0, "blocked"}:            "YSOLT waits before MARRIT",
	{"14A", 0, "on-tripod"}:          "it booms",
	{"14A", 0, "sees-camera"}:        "B stands in its picture",
	{"14A", 0, "tape-differs"}:       "the tape was read to another mark",
	{"14A", 1, "leaves-frame"}:       "OSKEL walks out",
	{"14B", 1, "leaves-frame"}:       "and here",
	{"14C", 0, "leaves-frame"}:       "and here",
	{"14B", 1, "goes-soft"}:          "on his way nobody follows him",
	{"14C", 0, "goes-soft"}:          "nor here",
	{"14B", 1, "hands-apart"}:        "JO pans and pulls, and the rack lands later",
	{"14B", 1, "two-pulls"}:          "JO pulls both cameras",
	{"14C", 0, "crosses-line"}:       "it stands on the other side of the line",
	{"14C", 0, "does-not-match"}:     "and is no mirror of 14B",
}

// examples says what each file comes to. Every finding here is one that a
// comment in the file explains.
var examples = []struct {
	file  string
	pulls map[string]int // by shot
	finds []found
}{
	{file: "kit.pull"},
	{file: "kettle.pull"}, // to be gone on with, as the README says
	{file: "ticket-window.pull", pulls: map[string]int{"12A": 3, "12B": 2}},
	{file: "lantern.pull", pulls: map[string]int{"31C": 2}},
	{file: "gangway.pull", pulls: map[string]int{"18A": 2}},
	{file: "loft.pull", pulls: map[string]int{"62A": 2}},
	{file: "chart-room.pull", pulls: map[string]int{"47B": 2}},
	{
		file:  "small-sensor.pull",
		pulls: map[string]int{"22A": 1, "22B": 1, "22C": 1, "22D": 1},
		finds: []found{{"22A", 1, "law-assumed"}, {"22B", 1, "law-assumed"}, {"22B", 1, "not-seen"}, {"22C", 1, "faint"}, {"22C", 1, "law-assumed"}},
	},
	{
		file:  "two-85s.pull",
		pulls: map[string]int{"40A": 1, "40B": 1, "40C": 1, "40D": 1},
		finds: []found{
			{"40A", 1, "law-assumed"}, {"40A", 1, "never-sure"}, {"40A", 1, "nothing-sharp"}, {"40B", 1, "law-assumed"}, {"40B", 1, "never-sure"},
			{"40C", 1, "law-assumed"}, {"40D", 1, "law-assumed"},
		},
	},
	{
		file:  "zoom.pull",
		pulls: map[string]int{"7A": 1, "7B": 0},
		finds: []found{{"7A", 1, "law-assumed"}, {"7B", 0, "stop-closes-in-zoom"}},
	},
	{
		file:  "crossing.pull",
		pulls: map[string]int{"55-A": 1, "55-B": 4},
		finds: []found{{"55-B", 2, "re-grip"}},
	},
	{file: "roll-call.pull", pulls: map[string]int{"3A": 2}, finds: []found{{"3A", 1, "law-assumed"}}},
	{file: "own-lens/before/kit.pull"},
	{file: "own-lens/before/chandler.pull", pulls: map[string]int{"44A": 2}, finds: []found{{"44A", 1, "ring-unknown"}}},
	{file: "own-lens/after/kit.pull"},
	{
		file:  "own-lens/after/chandler.pull",
		pulls: map[string]int{"44A": 2},
		finds: []found{{"44A", 1, "rough-mark"}, {"44A", 2, "hard-to-land"}},
	},
	{file: "ferry/cut-1/ferry.pull", pulls: map[string]int{"27A": 2, "27B": 1}},
	{
		file:  "ferry/cut-2/ferry.pull",
		pulls: map[string]int{"27A": 2, "27B": 1},
		finds: []found{{"27A", 1, "trimmed"}, {"27B", 0, "line-differs"}},
	},
	{
		file:  "ferry/cut-3/ferry.pull",
		pulls: map[string]int{"27A": 2, "27B": 1},
		finds: []found{{"27A", 0, "line-not-in-edit"}, {"27A", 0, "removed"}, {"27B", 0, "several-takes"}, {"27B", 1, "across-a-cut"}},
	},
	{file: "staged/two-hander.pull", pulls: map[string]int{"13A": 3, "13B": 0, "13C": 0}},
	{file: "staged/insert.pull", pulls: map[string]int{"13D": 0}},
	{file: "staged/table.pull", pulls: map[string]int{"41A": 0, "41B": 2}},
	{
		file:  "staged/door.pull",
		pulls: map[string]int{"19A": 2},
		finds: []found{{"19A", 1, "pan-and-pull"}, {"19A", 2, "pan-and-pull"}},
	},
	{file: "staged/boom-down.pull", pulls: map[string]int{"23A": 1}, finds: []found{{"23A", 0, "pans-fast"}}},
	{
		file:  "staged/first-draft.pull",
		pulls: map[string]int{"14A": 1, "14B": 1, "14C": 0},
		finds: []found{
			{"", 0, "focus-jumps"}, {"", 0, "focus-jumps"}, {"", 0, "not-covered"}, {"", 0, "not-held"}, {"", 0, "not-held"},
			{"", 0, "not-on-screen"}, {"", 0, "not-on-screen"},
			{"14A", 0, "blocked"}, {"14A", 0, "on-tripod"}, {"14A", 0, "sees-camera"}, {"14A", 0, "tape-differs"}, {"14A", 1, "leaves-frame"},
			{"14B", 1, "goes-soft"}, {"14B", 1, "hands-apart"}, {"14B", 1, "leaves-frame"}, {"14B", 1, "two-pulls"},
			{"14C", 0, "crosses-line"}, {"14C", 0, "does-not-match"}, {"14C", 0, "goes-soft"}, {"14C", 0, "leaves-frame"},
		},
	},
	{file: "staged/push-in.pull", pulls: map[string]int{"32C": 2}},
}

func TestExamples(t *testing.T) {
	for _, e := range examples {
		t.Run(e.file, func(t *testing.T) {
			res := read(t, e.file)
			pulls := map[string]int{}
			for _, s := range res.Plan.Shots {
				pulls[s.ID] = len(s.Pulls)
			}
			if !maps.Equal(pulls, e.pulls) {
				t.Errorf("pulls by shot: %v, want %v", pulls, e.pulls)
			}
			if got := finds(t, res); !slices.Equal(got, e.finds) {
				t.Errorf("findings\n got %v\nwant %v", got, e.finds)
			}
		})
	}
}

// finds are the findings in order of shot, pull and code; an error fails.
func finds(t *testing.T, res *interp.Result) []found {
	t.Helper()
	var list []found
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Errorf("%s:%d: %s: %s", d.Range.File, d.Range.Start.Line, d.Code, d.Message)
		}
		list = append(list, found{d.Shot, d.Pull, d.Code})
	}
	for _, f := range list {
		if why[f] == "" {
			t.Errorf("%v: nothing says why it is to be found", f)
		}
	}
	slices.SortFunc(list, func(a, b found) int {
		return cmp.Or(cmp.Compare(a.shot, b.shot), cmp.Compare(a.pull, b.pull), cmp.Compare(a.code, b.code))
	})
	return list
}

// Every plan of this directory is in the table, and the other way round.
func TestEveryExampleIsListed(t *testing.T) {
	var files []string
	for _, pattern := range []string{"*.pull", "*/*.pull", "*/*/*.pull"} {
		list, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range list {
			files = append(files, filepath.ToSlash(f))
		}
	}
	slices.Sort(files)
	var listed []string
	for _, e := range examples {
		listed = append(listed, e.file)
	}
	slices.Sort(listed)
	if !slices.Equal(files, listed) {
		t.Errorf("the directory has %v, the table %v", files, listed)
	}
}

func TestExamplesAreFormatted(t *testing.T) {
	for _, e := range examples {
		src, err := os.ReadFile(e.file)
		if err != nil {
			t.Fatal(err)
		}
		if got := lang.Format(src); !bytes.Equal(got, src) {
			t.Errorf("%s is not formatted; it would be\n%s", e.file, got)
		}
	}
}

// Where a comment tells of a cure, that cure is offered.
func TestCuresInComments(t *testing.T) {
	for _, c := range []struct{ file, shot, code, cure string }{
		{"small-sensor.pull", "22C", "faint", "stop f/2.8"},
		{"two-85s.pull", "40B", "never-sure", "gear 2"},
		{"zoom.pull", "7B", "stop-closes-in-zoom", "stop f/4"},
		{"own-lens/after/chandler.pull", "44A", "hard-to-land", "over 1 s"},
	} {
		offered := false
		for _, d := range read(t, c.file).Findings {
			if d.Shot == c.shot && d.Code == c.code {
				offered = slices.ContainsFunc(d.Cures, func(k lang.Cure) bool { return k.Text == c.cure })
			}
		}
		if !offered {
			t.Errorf("%s, shot %s: %s is not cured by %s", c.file, c.shot, c.code, c.cure)
		}
	}
}

// ticket-window: racks land on their words, as often as is wanted.
func TestTicketWindow(t *testing.T) {
	s := shot(t, "ticket-window.pull", "12A")
	for i, want := range []struct {
		line int
		word string
	}{{1, "One"}, {2, "live"}, {3, "letter"}} {
		words := s.Lines[want.line].Words
		at := slices.IndexFunc(words, func(w plan.Word) bool { return w.Text == want.word })
		if at < 0 {
			t.Fatalf("line %d has no word %q", want.line, want.word)
		}
		p := s.Pulls[i]
		if math.Abs(float64(p.Land)-words[at].Start) > 1e-9 {
			t.Errorf("pull %d lands at %.3f s, the word sounds at %.3f s", p.Number, p.Land, words[at].Start)
		}
		if p.Chance < 0.9 {
			t.Errorf("pull %d lands with %.2f", p.Number, p.Chance)
		}
	}
}

// lantern: with the gear each leg is one grip.
func TestLantern(t *testing.T) {
	for _, p := range shot(t, "lantern.pull", "31C").Pulls {
		if p.Regrips != 0 || p.HandDeg > 120 {
			t.Errorf("pull %d: %.0f deg at the hand, %d re-grips", p.Number, p.HandDeg, p.Regrips)
		}
	}
}

// gangway: the follow ends at the tape of her mark, which the dolly does not
// shift, and the rack goes to the key that hangs 35 cm before her.
func TestGangway(t *testing.T) {
	s := shot(t, "gangway.pull", "18A")
	follow, rack := s.Pulls[0], s.Pulls[1]
	if follow.Kind != "follow" || rack.Kind != "rack" || rack.To != "KEY" {
		t.Fatalf("pulls are a %s and a %s to %s", follow.Kind, rack.Kind, rack.To)
	}
	if math.Abs(float64(follow.ToM)-1.8) > 1e-6 || math.Abs(float64(rack.ToM)-1.45) > 1e-6 {
		t.Errorf("the follow ends at %.3f m, the rack at %.3f m", follow.ToM, rack.ToM)
	}
}

// loft: the rack starts and lands with the pan, on the word, and goes to where the key is
// from a camera that has boomed up. All figures by hand, from the tapes that the plan says.
func TestLoft(t *testing.T) {
	s := shot(t, "loft.pull", "62A")
	follow, rack := s.Pulls[0], s.Pulls[1]
	words := s.Lines[1].Words
	key := words[slices.IndexFunc(words, func(w plan.Word) bool { return w.Text == "key?" })].Start
	pans := slices.DeleteFunc(slices.Clone(s.Turns), func(t plan.Turn) bool { return t.Kind != "pan" })
	if len(pans) != 2 || len(s.Turns) != 4 {
		t.Fatalf("%d pans of %d turns, not 2 of 4", len(pans), len(s.Turns))
	}
	if to := pans[1]; rack.Start != to.Start || rack.Land != to.End || math.Abs(float64(rack.Land)-key) > 1e-9 || math.Abs(float64(rack.Land-rack.Start)-1.2) > 1e-9 {
		t.Errorf("the rack goes from %.3f s to %.3f s, the pan from %.3f s to %.3f s, and the word is at %.3f s", rack.Start, rack.Land, to.Start, to.End, key)
	}
	deg := func(rad float64) float64 { return rad * 180 / math.Pi }
	const up = 0.3
	aside := math.Atan2(0.2, 4.6) // how far left of the axis she stays
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"the first pan goes to", float64(pans[0].To), deg(aside - math.Atan2(0.8, 2.6))},
		{"the second pan goes to", float64(pans[1].To), deg(math.Atan2(0.45, 1.7))},
		{"the first tilt goes to", float64(s.Turns[1].To), -deg(math.Atan2(up, math.Hypot(2.6, 0.8)))},
		{"the second tilt goes to", float64(s.Turns[3].To), -deg(math.Atan2(up, math.Hypot(1.7, 0.45)))},
		// In the middle from top to bottom, and aside by the same angle as at the start.
		{"the follow ends at", float64(follow.ToM), func() float64 {
			level := math.Hypot(2.6, 0.8)
			tilt := math.Atan2(up, level)
			return level*math.Cos(aside)*math.Cos(tilt) + up*math.Sin(tilt)
		}()},
		{"the rack goes to", float64(rack.ToM), math.Sqrt(1.7*1.7 + 0.45*0.45 + up*up)},
	} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("%s %.7f, by hand %.7f", c.what, c.got, c.want)
		}
	}
}

// chart-room: the push brings her near by all its length, and the lamp behind her too.
func TestChartRoom(t *testing.T) {
	s := shot(t, "chart-room.pull", "47B")
	follow, rack := s.Pulls[0], s.Pulls[1]
	if follow.Kind != "follow" || math.Abs(float64(follow.ToM)-2.2) > 1e-9 || math.Abs(float64(rack.ToM)-3.8) > 1e-9 {
		t.Errorf("the %s ends at %.4f m, the rack at %.4f m", follow.Kind, follow.ToM, rack.ToM)
	}
	if len(s.Turns) > 0 || len(s.Blocking) != 1 || s.Blocking[0].Kind != "dolly" {
		t.Errorf("turns %v, moves %v", s.Turns, s.Blocking)
	}
}

// small-sensor: seen on the large one, gone on the small one, back with a
// longer lens.
func TestSmallSensor(t *testing.T) {
	for _, c := range []struct {
		shot             string
		sensor, focal, n float64 // mm, mm, f-number
		seen             bool
	}{
		{"22A", 36, 50, 8, true},
		{"22B", 13.2, 18, 8, false},
		{"22C", 13.2, 18, 5.6, false},
		{"22D", 13.2, 35, 8, true},
	} {
		got := float64(shot(t, "small-sensor.pull", c.shot).Pulls[0].LeftBlur)
		if (got > viewer.Seen) != c.seen {
			t.Errorf("shot %s: %.2f arcmin", c.shot, got)
		}
		if want := blurByRays(c.sensor, c.focal, c.n, 1700, 3000, 12.0/18); math.Abs(got-want) > 0.01*want {
			t.Errorf("shot %s: %.3f arcmin, by the rays %.3f", c.shot, got, want)
		}
	}
}

// blurByRays is the blur in arc minutes of one who stands at the tape d, with
// the focus on the tape x, on a screen whose width over the viewer's distance
// is wide. It goes by the thin lens and similar triangles, as any textbook of
// geometrical optics has them, and not by the formula of the program. Lengths
// are millimetres.
func blurByRays(sensor, focal, n, d, x, wide float64) float64 {
	image := func(tape float64) float64 { // the smaller root of 1/f = 1/s + 1/(tape-s)
		return (tape - math.Sqrt(tape*tape-4*focal*tape)) / 2
	}
	film, point := image(x), image(d)
	disc := focal / n * math.Abs(point-film) / point
	return math.Atan(disc/sensor*wide) * 180 / math.Pi * 60
}

// two-85s: the same rack in the same time.
func TestTwo85s(t *testing.T) {
	chance := func(id string) float64 { return float64(shot(t, "two-85s.pull", id).Pulls[0].Chance) }
	wide, stopped, geared, old := chance("40A"), chance("40B"), chance("40C"), chance("40D")
	if !(wide < stopped && stopped < 0.9) {
		t.Errorf("quick 85: %.2f wide open, %.2f at f/2.8; it is sure at neither", wide, stopped)
	}
	if math.Abs(stopped-2.0/3) > 0.07 {
		t.Errorf("quick 85 at f/2.8 lands with %.2f, not two times in three", stopped)
	}
	if geared < 0.9 || old < 0.9 {
		t.Errorf("quick 85 with a gear %.2f, old 85 %.2f; both are safe", geared, old)
	}
	a, b := shot(t, "two-85s.pull", "40B").Pulls[0], shot(t, "two-85s.pull", "40D").Pulls[0]
	if ratio := span(b.WindowHand) / span(a.WindowHand); ratio < 2.5 || ratio > 4.5 {
		t.Errorf("the old lens's mark is %.1f times as wide, not about three", ratio)
	}
}

// zoom: the focus racks after the zoom, on marks that held.
func TestZoom(t *testing.T) {
	s := shot(t, "zoom.pull", "7A")
	if s.Blocking[0].Kind != "zoom" || s.Blocking[0].End > s.Pulls[0].Start {
		t.Errorf("the rack starts at %.2f s, the %s ends at %.2f s", s.Pulls[0].Start, s.Blocking[0].Kind, s.Blocking[0].End)
	}
}

// crossing: in drop frame the label after 01:12:59;29 is 01:13:00;02 (SMPTE
// ST 12-1: frame numbers 00 and 01 are dropped as the minute turns, save each
// tenth), so 55-B begins on the frame at which 55-A ends.
func TestCrossing(t *testing.T) {
	a, b := shot(t, "crossing.pull", "55-A"), shot(t, "crossing.pull", "55-B")
	frames := int64(math.Round(float64(a.Duration) * 30000 / 1001))
	if got := b.Begins - a.Begins; got != frames {
		t.Errorf("55-B begins %d frames after 55-A, which lasts %d", got, frames)
	}
	const foot = 0.3048
	if got := float64(a.Pulls[0].ToM); math.Abs(got-3.25*foot) > 1e-6 {
		t.Errorf("the bell stands at %.4f m, not 5'9\" less 2'6\"", got)
	}
	if got := float64(b.Pulls[1].ToM); !math.IsInf(got, 1) {
		t.Errorf("the rack to inf goes to %v m", got)
	}
}

// roll-call: racks land on words that are not in Latin letters.
func TestRollCall(t *testing.T) {
	s := shot(t, "roll-call.pull", "3A")
	if line, p := s.Lines[2], s.Pulls[0]; p.Land != line.Start {
		t.Errorf("the first rack lands at %.3f s, the line starts at %.3f s", p.Land, line.Start)
	}
	if line, p := s.Lines[3], s.Pulls[1]; p.Land <= line.Start || p.Land >= line.End {
		t.Errorf("the second rack lands at %.3f s, outside the line", p.Land)
	}
}

// ferry: one plan under two cuts. The list and the subtitles alone move its
// pulls, each by what the cut has moved its word or its cue.
func TestFerry(t *testing.T) {
	plans := [2][]byte{}
	for i := range plans {
		var err error
		if plans[i], err = os.ReadFile(fmt.Sprintf("ferry/cut-%d/ferry.pull", i+1)); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(plans[0], plans[1]) {
		t.Fatal("the two plans differ")
	}
	const first, second = "ferry/cut-1/ferry.pull", "ferry/cut-2/ferry.pull"
	// By hand: "The tide was slack. I saw a light." has eight syllables, the
	// first of them before "tide". The subtitle runs 2.15 s from 8.25 s and
	// shot 27A begins at 4 s past 00:12:00; in the second cut it runs 1.9 s
	// from 58.72 s and the shot begins at 58 s.
	for _, c := range []struct {
		file, shot string
		pull       int
		land       float64
	}{
		{first, "27A", 0, 4.25 + 2.15/8}, {second, "27A", 0, 0.72 + 1.9/8},
		// The bell: 30 frames into the shot, and the rack is 0.3 s behind and
		// takes 1.2 s. Both cuts use the shot from the same frame on.
		{first, "27B", 0, 30.0/24 + 1.5}, {second, "27B", 0, 30.0/24 + 1.5},
	} {
		p := shot(t, c.file, c.shot).Pulls[c.pull]
		if math.Abs(float64(p.Land)-c.land) > 1e-9 {
			t.Errorf("%s, shot %s: pull %d lands at %.4f s, by hand %.4f s", c.file, c.shot, p.Number, p.Land, c.land)
		}
	}
	if at := shot(t, second, "27B").BeginsAt; at != "01:12:04:19" {
		t.Errorf("shot 27B begins at %s", at)
	}
}

func read(t *testing.T, file string) *interp.Result {
	t.Helper()
	res, err := interp.Read(file, interp.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// shot reads a file and returns one of its shots, which has pulls.
func shot(t *testing.T, file, id string) *plan.Shot {
	t.Helper()
	for _, s := range read(t, file).Plan.Shots {
		if s.ID == id && len(s.Pulls) > 0 {
			return s
		}
	}
	t.Fatalf("%s has no shot %s with pulls", file, id)
	return nil
}

func span(i plan.Interval) float64 { return float64(i[1] - i[0]) }

// own-lens: the same plan beside both kits. Only the second knows angles, and its chances
// lie within what the first can tell.
func TestOwnLens(t *testing.T) {
	texts := map[string][]byte{}
	for _, state := range []string{"before", "after"} {
		src, err := os.ReadFile(filepath.Join("own-lens", state, "chandler.pull"))
		if err != nil {
			t.Fatal(err)
		}
		texts[state] = src
	}
	if !bytes.Equal(texts["before"], texts["after"]) {
		t.Error("the two plans differ")
	}
	before, after := shot(t, "own-lens/before/chandler.pull", "44A"), shot(t, "own-lens/after/chandler.pull", "44A")
	for i, p := range before.Pulls {
		q := after.Pulls[i]
		if p.Chance.Known() || p.ToDeg.Known() || !q.ToDeg.Known() || !q.WindowHand[0].Known() {
			t.Errorf("pull %d: to %v deg with %v before, to %v deg after", i+1, p.ToDeg, p.Chance, q.ToDeg)
		}
		if low, high := p.ChanceBand[0], p.ChanceBand[1]; !(q.Chance >= low && q.Chance <= high) {
			t.Errorf("pull %d lands with %v, and before it was said to lie between %v and %v", i+1, q.Chance, low, high)
		}
	}
	if r := after.Ring; r.Kind != plan.Measured || len(r.Marks) != 9 || r.Play < 1 || r.Play > 2.5 {
		t.Errorf("the ring after: %+v", r)
	}
}
