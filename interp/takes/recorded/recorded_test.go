package recorded_test

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/takes/recorded"
)

// source is a plan with two racks; what stands in %s is the rate and where the
// shot begins.
const source = `plan "Pier"
rate %s
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 200 deg, diameter 80 mm
subject INES at 1.6 m
subject BOAT at 2.9 m
shot 4A
  with camera A, lens "75", stop f/4
%s
  start on INES
  rack to BOAT, on 2 s, over 1 s, because "she looks up"
  rack to INES, on 5 s, over 1.2 s, because "she turns back"
  hold 2 s
`

func shotAt(t *testing.T, rate, begins string) *plan.Shot {
	t.Helper()
	if begins != "" {
		begins = "  begins at " + begins
	}
	res := interp.Interpret("pier.pull", fmt.Appendf(nil, source, rate, begins), interp.Options{})
	if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pulls) != 2 {
		t.Fatalf("%+v", res.Findings)
	}
	return res.Plan.Shots[0]
}

// A move is a turn of the hand to a place past its mark: times in frames, from
// its planned ones, angles at the hand.
type move struct{ setsOut, lands, past, overshoot float64 }

// ringAt returns the ring's angle of a shot whose racks go as moves say. The
// way is minimum jerk to the overshoot, and back from it within three frames.
func ringAt(s *plan.Shot, moves [2]move, t float64) float64 {
	num, den := s.Rate.Exact()
	frame := float64(den) / float64(num)
	ring := float64(s.Pulls[0].FromDeg)
	for i, p := range s.Pulls {
		m := moves[i]
		sign := math.Copysign(1, float64(p.ToDeg-p.FromDeg))
		rest := float64(p.ToDeg) + sign*m.past
		start, land := float64(p.Start)+m.setsOut*frame, float64(p.Land)+m.lands*frame
		turn := land
		if m.overshoot > 0 {
			turn = land - 3*frame
		}
		switch {
		case t <= start:
		case t < turn:
			ring += (rest + sign*m.overshoot - ring) * hand.MinJerk((t-start)/(turn-start))
		case t < land:
			ring = rest + sign*m.overshoot*(1-hand.MinJerk((t-turn)/(land-turn)))
		default:
			ring = rest
		}
	}
	return ring
}

// frames calls f for every frame of a shot with the distance in metres.
func frames(s *plan.Shot, moves [2]move, f func(number int64, metres float64)) {
	num, den := s.Rate.Exact()
	for n := int64(0); n < int64(float64(s.Duration)*float64(num)/float64(den)); n++ {
		t := float64(n) * float64(den) / float64(num)
		f(s.Begins+n, s.Optics.Ring.Distance(ringAt(s, moves, t)))
	}
}

func csv(s *plan.Shot, moves [2]move, head string, write func(metres float64) string) string {
	var b strings.Builder
	b.WriteString(head + "\n")
	frames(s, moves, func(n int64, m float64) { fmt.Fprintf(&b, "%s,%s\n", s.Rate.Format(n), write(m)) })
	return b.String()
}

func track(s *plan.Shot, moves [2]move, lens func(metres float64) string) string {
	var b strings.Builder
	num, den := s.Rate.Exact()
	frames(s, moves, func(n int64, m float64) {
		label := s.Rate.Format(n)
		fmt.Fprintf(&b, `{"timing":{"timecode":{"hours":%d,"minutes":%d,"seconds":%d,"frames":%d,"frameRate":{"num":%d,"denom":%d},"dropFrame":%t}},"lens":{%s}}`+"\n",
			digits(label[0:]), digits(label[3:]), digits(label[6:]), digits(label[9:]), num, den, s.Rate.Drop(), lens(m))
	})
	return b.String()
}

func digits(s string) int { return int(s[0]-'0')*10 + int(s[1]-'0') }

// What was put into a recording is read out of it, in every form: onset and
// landing to a frame or two (a hand that speeds up gently has no sharp onset),
// angles to a tenth of a degree.
func TestScores(t *testing.T) {
	late := [2]move{{setsOut: 2, lands: 5, past: 1.5}, {setsOut: -2, lands: -4, past: -2, overshoot: 4}}
	metres := func(m float64) string { return fmt.Sprintf("%.6f", m) }
	tests := []struct {
		name, rate, begins string
		write              func(*plan.Shot) string
	}{
		{"metres", "24", "01:00:10:12", func(s *plan.Shot) string { return csv(s, late, "Timecode,focus_m", metres) }},
		{"feet", "25", "10:00:00:00", func(s *plan.Shot) string {
			return csv(s, late, "tc,Focus (ft)", func(m float64) string { return fmt.Sprintf("%.6f", m/0.3048) })
		}},
		{"feet and inches", "23.976", "01:00:00:00", func(s *plan.Shot) string {
			return csv(s, late, "timecode,focus distance", func(m float64) string {
				inches := m / 0.0254
				return fmt.Sprintf(`"%d'%.5f"""`, int(inches/12), math.Mod(inches, 12))
			})
		}},
		{"millimetres at drop-frame over a minute", "29.97df", "00:00:57;00", func(s *plan.Shot) string {
			return csv(s, late, "timecode,focus [mm]", func(m float64) string { return fmt.Sprintf("%.4f", m*1000) })
		}},
		{"metres where the tape reads from the lens", "24\ntape from lens", "01:00:10:12", func(s *plan.Shot) string { return csv(s, late, "Timecode,focus_m", metres) }},
		{"a column that says from the sensor", "24", "01:00:00:00", func(s *plan.Shot) string {
			return csv(s, late, "Timecode,focus_from_sensor_m,focus_m,focus_from_lens_m", func(m float64) string { return metres(m) + ",1,1" })
		}},
		{"and behind one that does not", "24", "01:00:00:00", func(s *plan.Shot) string {
			return csv(s, late, "Timecode,focus_m,focus from sensor (mm)", func(m float64) string { return fmt.Sprintf("1,%.4f", m*1000) })
		}},
		{"samples with distances where the tape reads from the lens", "24\ntape from lens", "01:00:00:00", func(s *plan.Shot) string {
			return track(s, late, func(m float64) string { return fmt.Sprintf(`"focusDistance":%.6f`, m) })
		}},
		{"samples with distances", "29.97df", "00:08:57;10", func(s *plan.Shot) string {
			return track(s, late, func(m float64) string { return fmt.Sprintf(`"focusDistance":%.6f`, m) })
		}},
		{"samples behind a byte order mark and blank lines", "24", "01:00:00:00", func(s *plan.Shot) string {
			return "\uFEFF\n \n" + track(s, late, func(m float64) string { return fmt.Sprintf(`"focusDistance":%.6f`, m) })
		}},
		{"samples in a list", "24", "01:00:00:00", func(s *plan.Shot) string {
			lines := track(s, late, func(m float64) string { return fmt.Sprintf(`"focusDistance":%.6f`, m) })
			return "[\n" + strings.ReplaceAll(strings.TrimSpace(lines), "\n", ",\n") + "\n]\n"
		}},
		{"samples of several lines each", "24", "01:00:00:00", func(s *plan.Shot) string {
			lines := track(s, late, func(m float64) string { return fmt.Sprintf(`"focusDistance":%.6f`, m) })
			return strings.ReplaceAll(lines, ",", ",\n  ")
		}},
		{"samples with encoders", "48", "01:00:00:00", func(s *plan.Shot) string {
			return track(s, late, func(m float64) string {
				deg := s.Optics.Ring.Angle(m)
				return fmt.Sprintf(`"encoders":{"focus":%.7f}`, 1-deg/s.Optics.Ring.Throw())
			})
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := shotAt(t, tt.rate, tt.begins)
			c, err := recorded.Read(strings.NewReader(tt.write(s)), "clip", s, recorded.Options{})
			if err != nil || c.Faults.N > 0 || len(c.Gaps) > 0 {
				t.Fatalf("%v, %d faults %v, gaps %v", err, c.Faults.N, c.Faults.List, c.Gaps)
			}
			for i, got := range c.Scores() {
				want := late[i]
				if !got.Scored || got.Why != "" {
					t.Fatalf("%+v", got)
				}
				num, den := s.Rate.Exact()
				slack := 0.06 * float64(num) / float64(den) // seconds that the threshold takes off a gentle start and end
				if d := float64(got.OnsetFrames) - want.setsOut; d < -1 || d > slack {
					t.Errorf("pull %d sets out %d frames late, want %v", got.Pull, got.OnsetFrames, want.setsOut)
				}
				if d := float64(got.LandingFrames) - want.lands; d < -slack || d > 1 {
					t.Errorf("pull %d lands %d frames late, want %v", got.Pull, got.LandingFrames, want.lands)
				}
				if math.Abs(float64(got.Error)-want.past) > 0.15 {
					t.Errorf("pull %d: error %v, want %v", got.Pull, got.Error, want.past)
				}
				if math.Abs(float64(got.Overshoot)-want.overshoot) > 0.6 {
					t.Errorf("pull %d: overshoot %v, want %v", got.Pull, got.Overshoot, want.overshoot)
				}
				asks := s.Pulls[i].Asks
				if inside := asks.Lo <= want.past && want.past <= asks.Hi; got.Hit != inside {
					t.Errorf("pull %d: hit %t, window %v to %v", got.Pull, got.Hit, asks.Lo, asks.Hi)
				}
			}
		})
	}
}

// Time in the window: on the mark from its landing until the next pull.
func TestInWindow(t *testing.T) {
	s := shotAt(t, "24", "01:00:00:00")
	c, err := recorded.Read(strings.NewReader(csv(s, [2]move{}, "tc,focus_m", func(m float64) string { return fmt.Sprint(m) })), "clip", s, recorded.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, got := range c.Scores() {
		end := float64(s.Duration)
		if i == 0 {
			end = float64(s.Pulls[1].Start)
		}
		least, most := end-float64(s.Pulls[i].Land), end-float64(s.Pulls[i].Land)+0.35
		if v := float64(got.InWindow); v < least-0.05 || v > most {
			t.Errorf("pull %d: %v s in the window, want %v to %v", got.Pull, v, least, most)
		}
	}
}

func TestFaults(t *testing.T) {
	s := shotAt(t, "24", "01:00:00:00")
	drop := shotAt(t, "29.97df", "00:00:57;00")
	tests := []struct {
		name, text string
		shot       *plan.Shot
		want       string
	}{
		{"no timecode", "focus_m\n1\n", s, "clip:1:1: the recording has no column timecode"},
		{"no focus", "tc,iris\n1,1\n", s, "clip:1:1: the recording has no column of focus distances, as in focus_m or focus (ft)"},
		{"two of them", "tc,focus_m,focus_ft\n", s, `clip:1:12: a second column of focus distances: say with --column which is meant, "focus_m" or "focus_ft"`},
		{"no unit", "tc,focus\n01:00:00:00,1.6\n", s, `clip:2:13: "1.6" lacks its unit: name it in the header as in focus_mm, or with --unit`},
		{"no distance", "tc,focus_m\n01:00:00:00,0\n", s, `clip:2:13: "0" is no distance`},
		{"a frame too many", "tc,focus_m\n01:00:00:24,1.6\n", s, `clip:2:1: timecode "01:00:00:24": frames go from 00 to 23 at 24, not to 24`},
		{"a dropped label", "tc,focus_m\n00:01:00;00,1.6\n", drop, `clip:2:1: timecode "00:01:00;00": drop-frame skips`},
		{"a value missing", "tc,focus_m\n01:00:00:00\n", s, "clip:2:1: a frame has a timecode and a distance"},
		{"twice", "tc,focus_m\n01:00:00:00,1.6\n01:00:00:00,1.7\n", s, "clip:3:1: timecode 01:00:00:00 is here twice; the first is on line 2"},
		{"back", "tc,focus_m\n01:00:00:05,1.6\n01:00:00:01,1.7\n", s, "clip:3:1: timecode goes back from 01:00:00:05 to 01:00:00:01"},
		{"inside the lens", "tc,focus_m\n01:00:00:00,0.1\n", s, "clip:2:1: the lens forms no image of what is 10 cm away"},
		{"no JSON", `{"lens":{]}`, s, "clip:1:10: this is no JSON"},
		{"another rate", `{"timing":{"timecode":{"hours":1,"frameRate":{"num":25,"denom":1}}},"lens":{"focusDistance":1}}`, s, "clip:1:1: the sample counts 25/1 frames a second, and the plan 24"},
		{"no distance in a sample", `{"timing":{"timecode":{"hours":1}},"lens":{}}`, s, "clip:1:1: the sample has no lens.focusDistance and no lens.encoders.focus"},
		{"text for a number", `{"timing":{"timecode":{"hours":1}},"lens":{"focusDistance":"far"}}`, s, "clip:1:60: lens.focusDistance is a text, and a number is expected"},
		{"no object", `{"timing":{"timecode":{"hours":1}},"lens":4}`, s, "clip:1:43: lens is a number, and an object is expected"},
		{"an hour too many", `{"timing":{"timecode":{"hours":24}},"lens":{"focusDistance":1}}`, s, "clip:1:32: timing.timecode.hours is 24, and goes from 0 to 23"},
		{"empty", "", s, "clip:1:1: the recording is empty"},
		{"no begins", "tc,focus_m\n01:00:00:00,1.6\n", shotAt(t, "24", ""), "shot 4A does not say when it begins"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, err := recorded.Read(strings.NewReader(tt.text), "clip", tt.shot, recorded.Options{})
			got := fmt.Sprint(err)
			if err == nil && len(c.Faults.List) > 0 {
				got = c.Faults.List[0].Error()
			}
			if !strings.Contains(got, tt.want) {
				t.Errorf("%s, want %s", got, tt.want)
			}
		})
	}
}

// Infinity is the far end of the ring; missing frames are told, and cost a pull
// only where they hide it.
func TestGapsAndInfinity(t *testing.T) {
	s := shotAt(t, "24", "01:00:00:00")
	whole := csv(s, [2]move{}, "tc,focus_m", func(m float64) string { return fmt.Sprint(m) })
	without := func(from, to int) string {
		lines := strings.SplitAfter(whole, "\n")
		return strings.Join(append(append([]string{}, lines[:1+from]...), lines[1+to:]...), "")
	}
	tests := []struct {
		name, text, why string
		scored          bool
	}{
		{"two frames in the movement", without(60, 62), "2 frames are missing in the movement, and are taken on a straight line", true},
		{"half of the movement", without(54, 66), "frames are missing from 01:00:02:06 to 01:00:02:17, in the middle of it", false},
		{"begins too late", without(0, 50), "the recording begins at 01:00:02:02, after its start", false},
		{"ends too early", strings.Join(strings.SplitAfter(whole, "\n")[:62], ""), "the focus did not come to rest before 01:00:02:12", false},
		{"infinity throughout", "tc,focus_m\n01:00:00:00,inf\n01:00:01:00,∞\n01:00:04:00,infinity\n", "the focus did not move: 0 deg at the hand of", false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, err := recorded.Read(strings.NewReader(tt.text), "clip", s, recorded.Options{})
			if err != nil || c.Faults.N > 0 {
				t.Fatal(err, c.Faults.List)
			}
			if got := c.Scores()[0]; got.Scored != tt.scored || !strings.HasPrefix(got.Why, tt.why) {
				t.Errorf("%+v, want %q", got, tt.why)
			}
		})
	}
}

// A score becomes a take that says the same.
func TestTake(t *testing.T) {
	s := shotAt(t, "24", "01:00:00:00")
	c, err := recorded.Read(strings.NewReader(csv(s, [2]move{{past: 1}}, "tc,focus_m", func(m float64) string { return fmt.Sprint(m) })), "clip", s, recorded.Options{})
	if err != nil {
		t.Fatal(err)
	}
	sc := c.Scores()[0]
	take := sc.Take("Pier", "INES", "2026-03-01", 0.08)
	if take.Travel != float64(s.Pulls[0].HandDeg) || math.Abs(take.Error-1) > 0.1 || take.Time != float64(sc.Time) || take.Pull != 1 || take.Shot != "4A" {
		t.Errorf("%+v", take)
	}
}

// Whatever a recording holds, it is read to its end, and what is scored has
// numbers.
func FuzzRead(f *testing.F) {
	f.Add([]byte("tc,focus_m\n01:00:00:00,1.6\n01:00:00:01,inf\n"))
	f.Add([]byte("\uFEFFTimecode,Focus\r\n01:00:02:00,\"5'6\"\"\"\r\n"))
	f.Add([]byte("Clip;A001\n\nMaster TC;Focus;Iris\n;m;T\n01:00:00:00;1,6;2,8\n01:00:00:01;1.7;2,8\n"))
	f.Add([]byte("\xFF\xFEt\x00c\x00\t\x00f\x00o\x00c\x00u\x00s\x00\n\x000\x00\t\x001\x00"))
	f.Add([]byte("#,focus\n1,410\n2,1e9\n"))
	f.Add([]byte(`{"timing":{"timecode":{"hours":1}},"lens":{"focusDistance":1}}` + "\n"))
	if data, err := os.ReadFile("../../../lang/testdata/kit.pull"); err == nil {
		f.Add(data)
	}
	res := interp.Interpret("pier.pull", fmt.Appendf(nil, source, "24", "  begins at 01:00:00:00"), interp.Options{})
	s := res.Plan.Shots[0]
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := recorded.Read(io.LimitReader(strings.NewReader(string(data)), 1<<20), "clip", s, recorded.Options{})
		if err != nil {
			c, err = recorded.Read(strings.NewReader(string(data)), "clip", s, recorded.Options{At: "01:00:00:00", Unit: "mm"})
		}
		if err != nil {
			return
		}
		for _, sc := range c.Scores() {
			if sc.Scored && (math.IsNaN(float64(sc.Error)) || !(sc.Time > 0) || sc.Overshoot < 0) {
				t.Fatalf("%+v", sc)
			}
		}
	})
}

// A leg of a made-up hand goes to a place past the first mark, in degrees of the
// ring, between two times.
type leg struct{ from, to, past float64 }

// along returns a recording whose ring starts where the shot does and goes along
// legs; even ones do not set out or land gently.
func along(s *plan.Shot, legs []leg, even bool, write func(metres float64) string) string {
	var b strings.Builder
	b.WriteString("tc,focus_m\n")
	num, den := s.Rate.Exact()
	for n := range int64(float64(s.Duration) * float64(num) / float64(den)) {
		t := float64(n) * float64(den) / float64(num)
		ring := float64(s.Pulls[0].FromDeg)
		for _, l := range legs {
			u := min(max((t-l.from)/(l.to-l.from), 0), 1)
			if !even {
				u = hand.MinJerk(u)
			}
			ring += u * (float64(s.Pulls[0].ToDeg) + l.past - ring)
			if u < 1 {
				break
			}
		}
		fmt.Fprintf(&b, "%s,%s\n", s.Rate.Format(s.Begins+n), write(s.Optics.Ring.Distance(ring)))
	}
	return b.String()
}

// The movement that is nearest to the plan is scored, and none where two are.
// The rack is planned from 2 s to 3 s.
func TestWhichMovement(t *testing.T) {
	s := shotAt(t, "24", "01:00:00:00")
	back := float64(s.Pulls[0].FromDeg - s.Pulls[0].ToDeg)
	fine := func(m float64) string { return fmt.Sprintf("%.6f", m) }
	tests := []struct {
		name        string
		legs        []leg
		even        bool
		write       func(float64) string
		sets, lands float64 // 0: not scored
		past, slack float64
		why         string
	}{
		{"alone", []leg{{2, 3, 0.5}}, false, fine, 2, 3, 0.5, 0.02, ""},
		{"after a faster one in rehearsal", []leg{{0.2, 0.6, 0.2}, {0.9, 1.5, back}, {2.1, 3.1, -1}}, false, fine, 2.1, 3.1, -1, 0.02, ""},
		{"before a faster one", []leg{{1.9, 2.8, 0.4}, {3, 3.2, back}, {3.4, 3.7, 0}}, false, fine, 1.9, 2.8, 0.4, 0.02, ""},
		{"after one that was broken off", []leg{{1.4, 1.9, back / 2}, {2.2, 3, 0}}, false, fine, 2.2, 3, 0, 0.02, ""},
		{"a last step that is no movement", []leg{{2, 3, -1}, {3.3, 3.5, 0}}, false, fine, 2, 3, -1, 0.02, ""},
		{"two of a kind", []leg{{1.7, 2.2, 0}, {2.32, 2.6, back}, {2.75, 3.25, 0}}, false, fine, 0, 0, 0, 0, "two movements fit, one from 01:00:01:"},
		{"away from the mark", []leg{{2, 3, 2 * back}}, false, fine, 0, 0, 0, 0, "the focus did not move: 0"},
		{"to and fro without rest", []leg{{1, 1.5, 0}, {1.5, 2, back}, {2, 2.5, 0}, {2.5, 3, back}, {3, 3.5, 0}, {3.5, 4, back}}, false, fine, 0, 0, 0, 0, "the focus made no movement of its own"},
		{"not smooth", []leg{{2, 2.25, back * 0.55}, {2.25, 3.05, back * 0.45}, {3.05, 3.3, 0}}, true, fine, 2, 3.3, 0, 0.1, "not one smooth movement"},
		{"slow, in steps of 2 cm", []leg{{1.5, 3.5, 0}}, false, func(m float64) string { return fmt.Sprintf("%.2f", math.Round(m*50)/50) }, 1.5, 3.5, 0, 0.1, ""},
		{"slow, in steps of 5 cm", []leg{{1.5, 3.5, 0}}, false, func(m float64) string { return fmt.Sprintf("%.2f", math.Round(m*20)/20) }, 1.5, 3.5, 0, 0.2, ""},
		{"slow, in steps of 10 cm", []leg{{1.1, 3.7, 0}}, false, func(m float64) string { return fmt.Sprintf("%.1f", m) }, 1.1, 3.7, 0, 0.3, ""},
		{"slow and even, in steps of 10 cm", []leg{{1.1, 3.7, 0}}, true, func(m float64) string { return fmt.Sprintf("%.1f", m) }, 1.1, 3.7, 0, 0.3, "not one smooth movement"},
		{"a correction", []leg{{2, 2.8, -2}, {2.85, 3.2, 0}}, false, fine, 2, 3.2, 0, 0.15, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, err := recorded.Read(strings.NewReader(along(s, tt.legs, tt.even, tt.write)), "clip", s, recorded.Options{})
			if err != nil || c.Faults.N > 0 {
				t.Fatal(err, c.Faults.List)
			}
			got := c.Scores()[0]
			if got.Scored != (tt.lands > 0) || !strings.HasPrefix(got.Why, tt.why) || got.Why != "" && tt.why == "" {
				t.Fatalf("%+v, want %q", got, tt.why)
			}
			if !got.Scored {
				return
			}
			if math.Abs(float64(got.Onset)-tt.sets) > tt.slack || math.Abs(float64(got.Landing)-tt.lands) > tt.slack {
				t.Errorf("from %v to %v s, want %v to %v", got.Onset, got.Landing, tt.sets, tt.lands)
			}
			if d := float64(got.Error) - tt.past*float64(s.Gear); math.Abs(d) > 0.05+4*tt.slack {
				t.Errorf("error %v, want %v", got.Error, tt.past)
			}
			if d := float64(got.Time - (got.Landing - got.Onset)); math.Abs(d) > 1e-9 {
				t.Errorf("%v s from %v to %v", got.Time, got.Onset, got.Landing)
			}
		})
	}
}

// A rack that the plan moves evenly is timed by a straight ramp.
func TestEvenPulls(t *testing.T) {
	text := strings.Replace(fmt.Sprintf(source, "24", "  begins at 01:00:00:00"), "over 1 s,", "over 1 s, even,", 1)
	res := interp.Interpret("pier.pull", []byte(text), interp.Options{})
	s := res.Plan.Shots[0]
	if s.Pulls[0].Profile != "even" {
		t.Fatalf("%+v", res.Findings)
	}
	c, err := recorded.Read(strings.NewReader(along(s, []leg{{2.1, 3.4, 0}}, true, func(m float64) string { return fmt.Sprintf("%.6f", m) })), "clip", s, recorded.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := c.Scores()[0]; got.Why != "" || math.Abs(float64(got.Onset)-2.1) > 0.01 || math.Abs(float64(got.Time)-1.3) > 0.01 {
		t.Errorf("%+v", got)
	}
}
