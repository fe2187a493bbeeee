package captions

import (
	"fmt"
	"html"
	"math/rand"
	"regexp"
	"strings"
	"testing"
)

// soup makes texts of pieces that tags and times are made of.
func soup(r *rand.Rand, pieces []string) string {
	var s strings.Builder
	for range 1 + r.Intn(9) {
		s.WriteString(pieces[r.Intn(len(pieces))])
	}
	return s.String()
}

// The usual form of a time means what any form does.
func TestUsualTimes(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	taken := 0
	for n := range 20_000 {
		s := fmt.Sprintf("%0*d:%02d:%02d%c%0*d", 1+r.Intn(6), r.Intn(120_000), r.Intn(64), r.Intn(64), ",.;"[r.Intn(3)], 1+r.Intn(3), r.Intn(1000))
		if n%3 == 0 {
			i := r.Intn(len(s))
			s = s[:i] + string(":,.x0 "[r.Intn(6)]) + s[i+r.Intn(2):]
		}
		for _, u := range []rule{subRipRule, webVTTRule} {
			ms, ok := u.usual(s)
			if !ok {
				continue
			}
			taken++
			if want, f := u.any(s); ms != want || f != (fault{}) {
				t.Fatalf("%q: %d, want %d (%+v)", s, ms, want, f)
			}
		}
	}
	if taken < 2000 {
		t.Errorf("only %d times have the usual form", taken)
	}
}

// The tags of SubRip are what this expression says.
func TestTags(t *testing.T) {
	tags := regexp.MustCompile(`(?i)</?(?:[biu]|font(?:\s[^<>]*)?)>|\{\\[^{}]*\}`)
	r := rand.New(rand.NewSource(1))
	pieces := []string{"<", ">", "/", "i", "B", "u", "font", "FonT", " ", "\n", "\u00a0", "{", "}", "\\", "a", "İ", "<i>", "</b>", "<font c>", `{\an8}`}
	changed := 0
	for range 20_000 {
		s := soup(r, pieces)
		want := tags.ReplaceAllString(s, "")
		if got := untagged(s); got != want {
			t.Fatalf("%q: %q, want %q", s, got, want)
		}
		if want != s {
			changed++
		}
	}
	if changed < 2000 {
		t.Errorf("only %d texts have a tag", changed)
	}
}

// The tags of WebVTT are what these expressions say.
func TestVoiceTags(t *testing.T) {
	tag, named := regexp.MustCompile(`<[^>]*>?`), regexp.MustCompile(`^<v(?:\.[^\s>]*)?[ \t\n]+([^>]*)`)
	r := rand.New(rand.NewSource(1))
	pieces := []string{"<", ">", "v", "<v", "<v.", ".", " ", "\n", "\f", "\u00a0", "Ada", "&amp;", "&lt;", "x", "<v Bo>", "</v>", "<i>"}
	voices := 0
	for range 20_000 {
		s := soup(r, pieces)
		last, text, turns := 0, "", []Turn(nil)
		for _, at := range tag.FindAllStringIndex(s, -1) {
			text += html.UnescapeString(s[last:at[0]])
			last = at[1]
			if m := named.FindStringSubmatch(s[at[0]:at[1]]); m != nil {
				if name := strings.Join(strings.Fields(html.UnescapeString(m[1])), " "); name != "" {
					turns = append(turns, Turn{len(text), name})
				}
			}
		}
		text += html.UnescapeString(s[last:])
		got, gotTurns := plainWebVTT(s)
		if got != text || fmt.Sprint(gotTurns) != fmt.Sprint(turns) {
			t.Fatalf("%q: %q %v, want %q %v", s, got, gotTurns, text, turns)
		}
		voices += len(turns)
	}
	if voices < 2000 {
		t.Errorf("only %d voices", voices)
	}
}
