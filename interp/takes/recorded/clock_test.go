package recorded_test

import (
	"fmt"
	"io/fs"
	"math"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/takes/recorded"
)

// cutShot is the shot of the other tests as a list has it.
func cutShot(t *testing.T, events string) *plan.Shot { return loggedShot(t, events, "") }

// loggedShot is the same with the rows of a list of clips: name, tape, start and end.
func loggedShot(t *testing.T, events, rows string) *plan.Shot {
	t.Helper()
	text := "edit \"cut.edl\"\n" + fmt.Sprintf(source, "24", "")
	text = strings.Replace(text, "edit \"cut.edl\"\nplan \"Pier\"\n", "plan \"Pier\"\nedit \"cut.edl\"\n", 1)
	if rows != "" {
		text = strings.Replace(text, "edit ", "clips \"day.ale\"\nedit ", 1)
	}
	opt := interp.Options{ReadFile: func(name string) ([]byte, error) {
		switch name {
		case "cut.edl":
			return []byte("TITLE: CUT\nFCM: NON-DROP FRAME\n" + events), nil
		case "day.ale":
			return []byte("Heading\nFIELD_DELIM\tTABS\nFPS\t24\n\nColumn\nName\tTape\tStart\tEnd\n\nData\n" + rows), nil
		}
		return nil, fs.ErrNotExist
	}}
	res := interp.Interpret("pier.pull", []byte(text), opt)
	if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pieces) == 0 {
		t.Fatalf("%+v", res.Findings)
	}
	return res.Plan.Shots[0]
}

// event is an event of a list: source and record in seconds from 14:20:10:00 and from
// 01:00:00:00.
func event(n int, sourceIn, sourceOut, recordIn, recordOut float64) string {
	code := func(hour int64, s float64) string {
		f := int64(math.Round(s * 24))
		return fmt.Sprintf("%02d:%02d:%02d:%02d", hour, f/24/60%60, f/24%60, f%24)
	}
	const day = 20*60 + 10
	return fmt.Sprintf("%03d A001 V C %s %s %s %s\n* FROM CLIP NAME: 4A\n", n, code(14, day+sourceIn), code(14, day+sourceOut), code(1, recordIn), code(1, recordOut))
}

// table is a recording of the plan's own curve. Each of its frames is that of a time of
// the shot, with a label.
func table(s *plan.Shot, from, to float64, label func(t float64) (string, bool)) string {
	var b strings.Builder
	b.WriteString("tc,focus_m\n")
	for n := int64(math.Round(from * 24)); float64(n) < to*24; n++ {
		t := float64(n) / 24
		if text, ok := label(t); ok {
			fmt.Fprintf(&b, "%s,%.6f\n", text, s.Optics.Ring.Distance(ringAt(s, [2]move{}, t)))
		}
	}
	return b.String()
}

// Both racks are found by the timecode of the camera, also the one that the cut has
// taken out; by that of the cut only the one that it shows.
func TestClocks(t *testing.T) {
	// The second rack, from 5 s to 6.2 s, is taken out.
	s := cutShot(t, event(1, 0, 4, 0, 4)+event(2, 7, 9, 4, 6))
	bySource := func(t float64) (string, bool) {
		return s.Rate.Format(24*(14*3600+20*60+10) + int64(math.Round(t*24))), true
	}
	byRecord := func(t float64) (string, bool) {
		n, ok := s.RecordAt(t)
		return s.Rate.Format(n), ok && t != 4 && t < 8.9 // at 4 s the first piece ends
	}
	tests := []struct {
		name, text, ask, by string
		scored              [2]bool
		code, why           string
	}{
		{"source", table(s, -5, 12, bySource), "", recorded.BySource, [2]bool{true, true}, "14:20:12:", ""},
		{"record", table(s, 0, 9, byRecord), "", recorded.ByRecord, [2]bool{true, false}, "01:00:02:", "it is not in the cut"},
		{"record by name, from an hour of it", table(s, 0, 9, byRecord) + "01:30:00:00,1.6\n", recorded.ByRecord, recorded.ByRecord, [2]bool{true, false}, "01:00:02:", "it is not in the cut"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, err := recorded.Read(strings.NewReader(tt.text), "clip", s, recorded.Options{Clock: tt.ask})
			if err != nil || c.Faults.N > 0 || c.By != tt.by {
				t.Fatalf("%v %v by %v", err, c.Faults.List, c.By)
			}
			for i, sc := range c.Scores() {
				if sc.Scored != tt.scored[i] || i == 1 && !strings.HasPrefix(sc.Why, tt.why) {
					t.Errorf("%+v", sc)
				}
				if i == 0 && (math.Abs(float64(sc.Onset)-2) > 0.05 || math.Abs(float64(sc.Error)) > 0.1 || !strings.HasPrefix(sc.OnsetCode, tt.code)) {
					t.Errorf("%+v", sc)
				}
			}
		})
	}
}

// A recording by record goes through pieces that are slower and that run backwards.
func TestClockThroughSpeeds(t *testing.T) {
	at := func(events string) *recorded.Curve {
		s := cutShot(t, events)
		var b strings.Builder
		b.WriteString("tc,focus_m\n")
		for n := range int64(24 * 16) {
			record := 24*3600 + n
			if shown, ok := s.ShotTime(record); ok {
				fmt.Fprintf(&b, "%s,%.6f\n", s.Rate.Format(record), s.Optics.Ring.Distance(ringAt(s, [2]move{}, shown)))
			}
		}
		c, err := recorded.Read(strings.NewReader(b.String()), "clip", s, recorded.Options{})
		if err != nil || c.By != recorded.ByRecord {
			t.Fatal(err, c)
		}
		return c
	}
	for name, events := range map[string]string{
		"half speed": event(1, 0, 8, 0, 16) + "M2 A001 012.0 14:20:10:00\n",
		"backwards":  event(1, 7, 0, 0, 7) + "M2 A001 -024.0 14:20:17:00\n",
	} {
		for i, sc := range at(events).Scores() {
			if !sc.Scored || math.Abs(float64(sc.Error)) > 0.15 || sc.Missing > 0 {
				t.Errorf("%s: rack %d: %+v", name, i+1, sc)
			}
		}
	}
}

// Where nothing or too much fits, the user is asked.
func TestWhichClock(t *testing.T) {
	cut := cutShot(t, event(1, 0, 9, 0, 9))
	twice := cutShot(t, strings.NewReplacer("14:20:12", "01:00:02", "14:20:21", "01:00:11").Replace(event(1, 2, 11, 0, 9)))
	row := func(code string) string { return "tc,focus_m\n" + code + ",1.6\n" }
	logged := loggedShot(t, event(1, 0, 9, 0, 9), "4A-1\tB007\t14:20:00:00\t14:30:00:00\n4A-2\tA001\t14:18:00:00\t14:20:30:00\n")
	tests := []struct {
		name, text, ask string
		shot            *plan.Shot
		want            string // the clock, or the error
	}{
		{"source", row("14:20:11:00"), "", cut, recorded.BySource},
		{"source, well before what is used", row("14:19:11:00"), "", cut, recorded.BySource},
		{"source, in the clip of a list", row("14:18:11:00"), "", logged, recorded.BySource},
		{"not in the clip of a list", row("14:20:50:00"), "", logged, "the recording is 14:20:50:00 to 14:20:50:00; 4A is source 14:18:00:00 to 14:20:30:00, record"},
		{"record", row("01:00:03:00"), "", cut, recorded.ByRecord},
		{"neither", row("13:00:00:00"), "", cut, "the recording is 13:00:00:00 to 13:00:00:00; 4A is source 14:20:10:00 to 14:20:19:00, record 01:00:00:00 to 01:00:09:00"},
		{"neither, and said", row("13:00:00:00"), recorded.BySource, cut, recorded.BySource},
		{"both", row("01:00:03:00"), "", twice, "both clocks fit: say --clock source or --clock record"},
		{"no list", row("01:00:03:00"), recorded.BySource, shotAt(t, "24", "01:00:00:00"), "shot 4A is in no list, so nothing says what its source is"},
		{"begins at", row("01:00:03:00"), "", shotAt(t, "24", "01:00:00:00"), recorded.ByRecord},
		{"from zero", row("00:00:00:12"), "", shotAt(t, "24", ""), recorded.ByShot},
		{"not from zero", row("00:00:02:00"), "", shotAt(t, "24", ""), "shot 4A does not say when it begins"},
		{"not from zero, and said", row("00:00:02:00"), recorded.ByShot, shotAt(t, "24", ""), recorded.ByShot},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, err := recorded.Read(strings.NewReader(tt.text), "clip", tt.shot, recorded.Options{Clock: tt.ask})
			got := fmt.Sprint(err)
			if err == nil {
				got = c.By
			}
			if !strings.HasPrefix(got, tt.want) {
				t.Errorf("%s, want %s", got, tt.want)
			}
		})
	}
}
