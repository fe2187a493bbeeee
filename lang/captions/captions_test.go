package captions

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
)

// expected is what a correct reader finds in a sample.
type expected struct {
	Cues        int       `json:"cues"`
	Numbered    *int      `json:"cues_with_number"`
	Empty       int       `json:"empty_text"`
	NotAfter    int       `json:"end_not_after_start"`
	Overlaps    int       `json:"overlaps"`
	TextLines   int       `json:"total_text_lines"`
	First, Last [3]string // start, end, text
	Identifiers []string
	Voices      []string
	Result      string
}

func TestSamples(t *testing.T) {
	for _, form := range []string{"srt/", "vtt/"} {
		samples.Each(t, form, func(t *testing.T, name string, src []byte, want expected) {
			text, diags := lines.Decode(name, src)
			cues, more := Read(text)
			diags = append(diags, more...)
			if len(cues) != want.Cues {
				t.Fatalf("%d cues, want %d: %v", len(cues), want.Cues, diags)
			}
			if want.Result == "no WEBVTT signature" && (len(diags) != 1 || diags[0].Code != "no-signature") {
				t.Errorf("nothing is told of the missing signature: %v", diags)
			}
			if len(cues) == 0 {
				if len(diags) == 0 {
					t.Error("there are no cues, and nothing is told of it")
				}
				return
			}
			if got := show(cues[0]); got != want.First {
				t.Errorf("first: %q, want %q", got, want.First)
			}
			if got := show(cues[len(cues)-1]); got != want.Last {
				t.Errorf("last: %q, want %q", got, want.Last)
			}
			if got := count(cues); got != (counts{want.Empty, want.NotAfter, want.Overlaps, want.TextLines}) {
				t.Errorf("%+v, want %+v", got, want)
			}
			var ids []string
			for _, c := range cues {
				if c.ID != "" {
					ids = append(ids, c.ID)
				}
			}
			if want.Numbered != nil && len(ids) != *want.Numbered {
				t.Errorf("%d cues have a number, want %d", len(ids), *want.Numbered)
			}
			// The table has the first three identifiers.
			if n := len(want.Identifiers); form == "vtt/" && fmt.Sprint(ids[:min(3, len(ids))]) != fmt.Sprint(want.Identifiers[:min(3, n)]) {
				t.Errorf("identifiers %q, want %q", ids, want.Identifiers)
			}
			voices := Voices(cues)
			slices.Sort(voices) // as the table has them
			if len(voices)+len(want.Voices) > 0 && !reflect.DeepEqual(voices, want.Voices) {
				t.Errorf("voices %q, want %q", voices, want.Voices)
			}
		})
	}
}

type counts struct{ empty, notAfter, overlaps, textLines int }

func count(cues []Cue) (n counts) {
	for i, c := range cues {
		if c.End <= c.Start {
			n.notAfter++
		}
		if i > 0 && c.Start < cues[i-1].End {
			n.overlaps++
		}
		if c.Text == "" {
			n.empty++
			continue
		}
		n.textLines += 1 + strings.Count(c.Text, "\n")
	}
	return n
}

func show(c Cue) [3]string { return [3]string{clock(c.Start), clock(c.End), c.Text} }

func clock(ms int64) string {
	return fmt.Sprintf("%02d:%02d:%02d.%03d", ms/3_600_000, ms/60_000%60, ms/1000%60, ms%1000)
}

// Damaged files: what is left, and what is told on which place.
func TestDamage(t *testing.T) {
	for _, c := range []struct {
		name, src string
		want      string // cues, then what is told
	}{
		{"two-digit fraction", "1\n00:00:41,04 --> 00:00:43,000\nAye.\n",
			"00:00:41.040-00:00:43.000 Aye. / 2:1 ambiguous-time “00:00:41,04” can be read as 40 ms or as 4 ms"},
		{"one-digit fraction", "1\n00:00:41,000 --> 00:00:43,5\nAye.\n",
			"00:00:41.000-00:00:43.500 Aye. / 2:18 ambiguous-time “00:00:43,5” can be read as 500 ms or as 5 ms"},
		{"end before start", "1\n00:00:05,000 --> 00:00:04,000\nNo.\n\n2\n00:00:06,000 --> 00:00:07,000\nYes.",
			"00:00:06.000-00:00:07.000 Yes. / 2:18 ends-before-it-starts the cue ends before it starts"},
		{"garbled arrow", "1\n00:00:05,000 -> 00:00:06,000\nGone.\n\n2\n00:00:07,000 --> 00:00:08,000\nHere.",
			"00:00:07.000-00:00:08.000 Here. / 2:14 garbled-arrow between the two times an arrow is missing"},
		{"no arrow", "1\n00:00:05,000 00:00:06,000\nGone.", " / 2:13 garbled-arrow between the two times an arrow is missing"},
		{"minutes over 59", "00:60:00,000 --> 01:00:01,000\nx", " / 1:1 bad-time “00:60:00,000” is no time"},
		{"no second time", "00:00:01,000 -->\nx", " / 1:17 bad-time “” is no time"},
		{"stray text", "Once.\n\n1\n00:00:01,000 --> 00:00:02,000\nTwice.\n\nThrice.",
			"00:00:01.000-00:00:02.000 Twice. / 1:1 text-outside-a-cue this line belongs to no cue / 7:1 text-outside-a-cue this line belongs to no cue"},
		{"stray number", "7\n\n8\n00:00:01,000 --> 00:00:02,000\nx",
			"00:00:01.000-00:00:02.000 x / 1:1 text-outside-a-cue this line belongs to no cue"},
		{"no blank line between", "1\n00:00:01,000 --> 00:00:02,000\none\n2\n00:00:03,000 --> 00:00:04,000\ntwo",
			"00:00:01.000-00:00:02.000 one | 00:00:03.000-00:00:04.000 two"},
		{"text of digits", "1\n00:00:01,000 --> 00:00:02,000\n1984\n\n2\n00:00:03,000 --> 00:00:04,000\n10",
			"00:00:01.000-00:00:02.000 1984 | 00:00:03.000-00:00:04.000 10"},
		{"tags and places", "1\n0:00:01.000 --> 0:00:02.000 X1:1 X2:2\n{\\an8}<i>So</i> <font color=\"red\">it is</font> <3",
			"00:00:01.000-00:00:02.000 So it is <3"},
		{"an hour in the minutes", "WEBVTT\n\n60:00.000 --> 61:00.000\nx", " / 3:1 bad-time “60:00.000” is no time"},
		{"comma in WebVTT", "WEBVTT\n\n00:01,000 --> 00:02.000\nx", " / 3:1 bad-time “00:01,000” is no time"},
		{"two digits in WebVTT", "WEBVTT\n\n00:01.04 --> 00:02.000\nx",
			" / 3:1 bad-time “00:01.04” has a fraction that is not three digits"},
		{"end before start in WebVTT", "WEBVTT\n\n00:02.000 --> 00:01.000\nx", " / 3:15 ends-before-it-starts the cue ends before it starts"},
		{"no time at all", "WEBVTT\n\nNOTE all\nof this\n\nA heading\n\n00:01.000 --> 00:02.000 line:0\n<v.loud Ann>Hm.</v> <v Bo>Ah",
			"00:00:01.000-00:00:02.000 Hm. Ah [Ann Bo] / 6:1 text-outside-a-cue this line belongs to no cue"},
		{"garbled arrow in WebVTT", "WEBVTT\n\n00:01.000 —> 00:02.000\nx", " / 3:11 garbled-arrow between the two times an arrow is missing"},
		{"no signature", "00:01.000 --> 00:02.000\nx", " / 1:1 no-signature the file does not begin with WEBVTT"},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := "f.srt"
			if strings.HasPrefix(c.src, "WEBVTT") || c.name == "no signature" {
				file = "f.vtt"
			}
			text, _ := lines.Decode(file, []byte(c.src))
			cues, diags := Read(text)
			var shown []string
			for _, cue := range cues {
				s := clock(cue.Start) + "-" + clock(cue.End) + " " + cue.Text
				if len(cue.Voices) > 0 {
					s += fmt.Sprint(" ", cue.Voices)
				}
				shown = append(shown, s)
			}
			got := strings.Join(shown, " | ")
			for _, d := range diags {
				got += fmt.Sprintf(" / %d:%d %s %s", d.Range.Start.Line, d.Range.Start.Column, d.Code, d.Message)
			}
			if got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// Whatever the file, no timing line is lost without a word.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"1\n00:00:01,000 --> 00:00:02,000\none\n", "WEBVTT\n\n00:01.000 --> 00:02.000\n<v A>x", "\xFF\xFE1\x00", "00:00:01,0 -> 1:00:00",
	} {
		f.Add("f.srt", []byte(seed))
		f.Add("f.vtt", []byte(seed))
	}
	f.Fuzz(func(t *testing.T, name string, src []byte) {
		text, diags := lines.Decode(name, src)
		cues, more := Read(text)
		diags = append(diags, more...)
		timed := 0
		for l := range text.All() {
			if strings.Contains(l.Text, arrow) {
				timed++
			}
		}
		unread := len(diags) > 0 && diags[len(diags)-1].Code == "no-signature"
		if len(cues)+len(diags) < timed && !unread {
			t.Errorf("%d lines have an arrow; %d cues, %d diagnostics", timed, len(cues), len(diags))
		}
		for _, c := range cues {
			if c.Start < 0 || c.End < c.Start {
				t.Errorf("cue from %d to %d", c.Start, c.End)
			}
		}
	})
}
