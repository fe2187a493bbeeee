package unplanned

import (
	"strings"
	"testing"

	"pullscore/lang/lines"
)

// Any text is read: sentences have words in the order of time, and no blank is doubled.
func FuzzSentences(f *testing.F) {
	for _, seed := range []string{"- INES: Who?\n- (laughs) Me, J. Dale.", ">> \u2019Twas [a\nbell] 7.30…\n>>- so", "<v Ines>[x</v>\n<v Bo>) y", "A: B: C:\n--\u0301e", "行く。"} {
		f.Add(seed, "and so\n- on")
	}
	f.Fuzz(func(t *testing.T, one, two string) {
		file := "WEBVTT\n\n00:01.000 --> 00:03.000\n" + one + "\n\n00:02.500 --> 00:05.000\n" + two + "\n"
		text, _ := lines.Decode("talk.vtt", []byte(file))
		list, _ := Sentences(text)
		for _, s := range list {
			if len(s.Words) == 0 || s.Text == "" || s.Text != strings.Join(strings.Fields(s.Text), " ") || s.Start != s.Words[0].Start || s.End != s.Words[len(s.Words)-1].End {
				t.Fatalf("%+v", s)
			}
			for _, w := range s.Words {
				if w.Start > w.End || !strings.Contains(s.Text, w.Text) {
					t.Fatalf("%+v in %+v", w, s)
				}
			}
		}
	})
}
