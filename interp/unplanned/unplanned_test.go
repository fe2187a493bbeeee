package unplanned

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/edit"
	"pullscore/interp/hand"
	"pullscore/interp/takes/recorded"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A leg of a curve goes to a distance between two frames, as a hand does.
type leg struct {
	from, to int
	metres   float64
}

// curve returns a curve of so many frames that begins at 2 m; noise is that of its
// readings in one over metres, step that of its numbers in metres.
func curve(frames int, legs []leg, noise, step float64) []float64 {
	random := rand.New(rand.NewPCG(1, 2))
	list := make([]float64, frames)
	for i := range list {
		v := 1.0 / 2
		for _, l := range legs {
			u := min(max(float64(i-l.from)/float64(l.to-l.from), 0), 1)
			v += (1/l.metres - v) * hand.MinJerk(u)
		}
		list[i] = 1 / (v + noise*random.NormFloat64())
		if step > 0 {
			list[i] = math.Round(list[i]/step) * step
		}
	}
	return list
}

func TestMoves(t *testing.T) {
	tests := []struct {
		name        string
		frames      int
		legs        []leg
		noise, step float64
		want        []leg // from, to
		rests       bool
	}{
		{"none", 100, nil, 0, 0, nil, true},
		{"none, in noise", 400, nil, 0.004, 0, nil, true},
		{"one", 100, []leg{{30, 54, 3}}, 0, 0, []leg{{30, 54, 0}}, true},
		{"one in noise", 300, []leg{{130, 154, 4}}, 0.002, 0, []leg{{130, 154, 0}}, true},
		{"one in steps", 100, []leg{{30, 54, 3}}, 0, 0.02, []leg{{30, 54, 0}}, true},
		{"to infinity and back", 200, []leg{{30, 54, math.Inf(1)}, {120, 144, 2}}, 0, 0, []leg{{30, 54, 0}, {120, 144, 0}}, true},
		{"at once", 60, []leg{{30, 31, 3}}, 0, 0, []leg{{30, 31, 0}}, true},
		{"two that hardly rest are one", 200, []leg{{30, 50, 3}, {50, 70, 5}}, 0, 0, []leg{{30, 70, 0}}, true},
		{"still moving at the end", 60, []leg{{40, 70, 8}}, 0, 0, []leg{{40, 59, 0}}, false},
		{"from the first frames on", 60, []leg{{0, 20, 4}}, 0, 0, []leg{{0, 20, 0}}, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Moves(curve(tt.frames, tt.legs, tt.noise, tt.step))
			if len(got) != len(tt.want) {
				t.Fatalf("%v, want %v", got, tt.want)
			}
			for i, m := range got {
				// A hand sets out and lands gently: the threshold takes some frames off both.
				if d := m.Start - tt.want[i].from; d < 0 || d > 6 {
					t.Errorf("move %d starts at %d, want %d", i+1, m.Start, tt.want[i].from)
				}
				if d := m.Land - tt.want[i].to; d < -8 || d > 1 {
					t.Errorf("move %d lands at %d, want %d", i+1, m.Land, tt.want[i].to)
				}
				if m.Rests != tt.rests {
					t.Errorf("move %d: %+v", i+1, m)
				}
			}
		})
	}
}

// One wrong frame is no move that lasts, and no rest is lost to it.
func TestMovesBearAWrongFrame(t *testing.T) {
	list := curve(120, []leg{{60, 80, 3}}, 0, 0)
	list[100] = 2
	got := Moves(list)
	if len(got) == 0 || got[0].Start < 60 || got[0].Start > 66 || got[len(got)-1].Land > 102 {
		t.Errorf("%v", got)
	}
}

const wreck = `1
00:00:02,000 --> 00:00:04,000
INES: You rowed out
to the wreck alone.

2
00:00:05,000 --> 00:00:06,000
INES: The tide was

3
00:00:06,000 --> 00:00:07,000
[wind] slack.

4
00:00:09,000 --> 00:00:10,000
And so
`

func TestSentences(t *testing.T) {
	said, diags := Sentences(&lines.Text{Name: "cut.srt", Content: wreck})
	var got string
	for _, s := range said {
		got += fmt.Sprintf("%.1f-%.1f %s: %s|", s.Start, s.End, s.Who, s.Text)
	}
	if want := "2.0-4.0 INES: You rowed out to the wreck alone.|5.0-7.0 INES: The tide was slack.|9.0-10.0 INES: And so|"; got != want || len(diags) > 0 {
		t.Errorf("%s, want %s: %v", got, want, diags)
	}
}

// Each speaker has a sentence of their own, also where two share a subtitle.
func TestSpeakers(t *testing.T) {
	const two = "INES: Who lit it?\n\nPEVIN: My father.\n\n"
	for _, c := range []struct{ name, said, want string }{
		{"names", "INES: Who lit it? PEVIN knew.\nPEVIN: My father.", "INES: Who lit it?|INES: PEVIN knew.|PEVIN: My father."},
		{"names behind dashes", "- INES: Who lit it?\n- PEVIN: My father.", "INES: Who lit it?|PEVIN: My father."},
		{"dashes alone, of two people", two + "- And he came back?\n- He did.", "INES: Who lit it?|PEVIN: My father.|INES? And he came back?|PEVIN? He did."},
		{"signs of another, of two people", two + ">> And he came back?\n>> He did.\n\nBy morning.", "INES: Who lit it?|PEVIN: My father.|INES? And he came back?|PEVIN? He did.|PEVIN? By morning."},
		{"dashes alone, of nobody", "- Who lit it?\n- My father.", "? Who lit it?|? My father."},
		{"dashes alone, of three", two + "ODA: No.\n\n- Who?\n- Me.", "INES: Who lit it?|PEVIN: My father.|ODA: No.|? Who?|? Me."},
		{"a sentence goes on behind a dash", two + "PEVIN: He took the boat\n\n- past the buoy.\n- When?", "INES: Who lit it?|PEVIN: My father.|PEVIN: He took the boat past the buoy.|INES? When?"},
		{"an interruption", two + "PEVIN: He took\n\n- When?", "INES: Who lit it?|PEVIN: My father.|PEVIN: He took|INES? When?"},
		{"voices", "<v Ines>Who lit it?</v>\n<v Pevin>My father.</v>\n\n<v ines>Oh.", "Ines: Who lit it?|Pevin: My father.|Ines: Oh."},
		{"names in small letters", "Ines: Who?\n\nIn 1903: no.\n\nInes: You?\n\nInes: He?", "Ines: Who?|Ines: In 1903: no.|Ines: You?|Ines: He?"},
		{"a title, an initial, small letters", "INES: Dr. J. Dale came, um. so they say… and left.", "INES: Dr. J. Dale came, um. so they say… and left."},
		{"quotes, hyphens and a dash", "INES: He said: “Twenty-five!” – and (laughs) left. \"Why?\" she asked.", "INES: He said: “Twenty-five!” – and left.|INES: \"Why?\" she asked."},
		{"without signs", strings.Repeat("so he went on\n\n", 22), strings.TrimSpace(strings.Repeat("so he went on ", 11)) + "|" + strings.TrimSpace(strings.Repeat("so he went on ", 11))},
	} {
		t.Run(c.name, func(t *testing.T) {
			var file strings.Builder
			file.WriteString("WEBVTT\n\n")
			for i, said := range strings.Split(strings.TrimSpace(c.said), "\n\n") {
				fmt.Fprintf(&file, "00:%02d.000 --> 00:%02d.900\n%s\n\n", i, i, said)
			}
			text, _ := lines.Decode("talk.vtt", []byte(file.String()))
			list, diags := Sentences(text)
			var got []string
			for _, s := range list {
				sign := ": "
				if s.Concluded {
					sign = "? "
				}
				got = append(got, strings.TrimPrefix(s.Who+sign+s.Text, ": "))
			}
			if want := strings.Split(c.want, "|"); !slices.Equal(got, want) || len(diags) > 0 {
				t.Errorf("\n%q, want\n%q: %v", got, want, diags)
			}
		})
	}
}

// Each move is told with what was said as it left, by the time of the cut and by that
// of a list's clip.
func TestAccount(t *testing.T) {
	rate, err := timecode.ParseRate("24")
	if err != nil {
		t.Fatal(err)
	}
	said, _ := Sentences(&lines.Text{Name: "cut.srt", Content: wreck})
	const hour = 3600 * 24
	samples := func(first int64) (list []recorded.Sample) {
		for i, m := range curve(12*24, []leg{{60, 80, 3}, {103, 115, 5}, {192, 204, 2}}, 0, 0) {
			list = append(list, recorded.Sample{Number: first + int64(i), Metres: m})
		}
		return list
	}
	check := func(name string, got []Told, source bool) {
		t.Helper()
		if len(got) != 3 {
			t.Fatalf("%s: %+v", name, got)
		}
		within, words := []bool{true, false, false}, []string{"out", "", ""}
		for i, m := range got {
			if m.Within != within[i] || m.WordStart != words[i] || m.Within && m.Sentence != "You rowed out to the wreck alone." {
				t.Errorf("%s: %+v", name, m)
			}
			if (m.SourceStart != "") != source || m.RecordStart == "" || m.RecordStart[:7] != "01:00:0" {
				t.Errorf("%s: %+v", name, m)
			}
		}
		if math.Abs(float64(got[0].From)-2) > 0.05 || math.Abs(float64(got[0].To)-3) > 0.05 || !(got[0].ToCome > 1) {
			t.Errorf("%s: %+v", name, got[0])
		}
	}
	check("in the cut", Account(samples(hour), &Place{Rate: rate, Start: hour}, said), false)
	// The clip shows its source from 14:00:00:00 on, 1 s later than the recording begins.
	at := &Place{Rate: rate, Start: hour, Listed: true, Clips: []edit.Clip{{RecordIn: hour + 24, RecordOut: hour + 12*24, SourceIn: 14 * hour, Speed: 1}}}
	check("by a list", Account(samples(14*hour-24), at, said), true)
	at.Clips[0].RecordOut = hour + 2*24
	for _, m := range Account(samples(14*hour-24), at, said) {
		if m.RecordStart != "" || m.WordStart != "" || m.Within || m.SourceStart == "" {
			t.Errorf("not in the cut: %+v", m)
		}
	}
}

// Each move that cut into a sentence names the sentence, also of two in one subtitle; one
// in the silence between two names none.
func TestEachCutIsNamed(t *testing.T) {
	rate, err := timecode.ParseRate("25")
	if err != nil {
		t.Fatal(err)
	}
	said, _ := Sentences(&lines.Text{Name: "talk.srt", Content: "1\n00:00:02,000 --> 00:00:06,000\n- INES: Who was out there with you?\n- PEVIN: Nobody that I remember.\n\n" +
		"2\n00:00:09,000 --> 00:00:12,000\nINES: And the light?\n\n3\n00:00:13,000 --> 00:00:15,000\nPEVIN: It went out.\n"})
	var frames []recorded.Sample
	legs := []leg{{55, 65, 3}, {110, 120, 2}, {180, 190, 3}, {240, 250, 2}, {293, 303, 3}}
	for i, m := range curve(420, legs, 0, 0) {
		frames = append(frames, recorded.Sample{Number: int64(i), Metres: m})
	}
	want := []string{"Who was out there with you?", "Nobody that I remember.", "", "And the light?", ""}
	moves := Account(frames, &Place{Rate: rate}, said)
	if len(moves) != len(want) {
		t.Fatalf("%d moves: %+v", len(moves), moves)
	}
	for i, m := range moves {
		named := ""
		if m.Within {
			named = m.Sentence
		}
		if named != want[i] {
			t.Errorf("move %d, from %s: %q, want %q", m.Number, m.RecordStart, named, want[i])
		}
	}
}
