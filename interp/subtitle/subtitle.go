// What is said in a subtitle.

package subtitle

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// A Speaker is who says something: the place of a name in the plan's names, from
// 1, or one of these.
type Speaker int32

// Speakers who are none of the plan's names.
const (
	Unknown  Speaker = 0  // nobody says who
	Stranger Speaker = -1 // somebody whom the plan does not name
)

// A Turn is where somebody else goes on.
type Turn struct {
	At    int // byte of what is said
	By    Speaker
	Label string // the name as the subtitle has it; "" where only a dash or >> stands
}

// A Cleaner takes subtitles of one file apart. It must Learn all of them first.
type Cleaner struct {
	names  []name
	labels map[string]int32 // how many subtitles have a text where a label may be
	upper  int              // letters seen in upper and in lower case
	lower  int
}

// New returns a cleaner for the subtitles of a film in which people have these
// names.
func New(names []string) *Cleaner {
	c := &Cleaner{labels: map[string]int32{}}
	for _, n := range names {
		c.names = append(c.names, newName(n))
	}
	return c
}

// special tells the signs on which a line may be other than plain talk.
var special = func() (t [256]bool) {
	for _, c := range []byte("[](){}:#>\xe2\xef") { // the last two begin longer dashes, notes and wide signs
		t[c] = true
	}
	return t
}()

// plain reports whether all of a subtitle is talk, as it is in most.
func plain(text string) bool {
	for i := range len(text) {
		if special[text[i]] {
			return false
		}
	}
	return strings.IndexByte(text, '-') < 0 || !dashed(text)
}

// dashed reports whether a line begins with a dash.
func dashed(text string) bool {
	for line := range strings.Lines(text) {
		if strings.HasPrefix(strings.TrimLeft(line, " \t"), "-") {
			return true
		}
	}
	return false
}

// Said returns what is said in a subtitle, and where somebody else goes on in it.
// Lines are divided by new lines, which say nothing.
func (c *Cleaner) Said(text string) (said string, turns []Turn) {
	if plain(text) {
		return text, nil
	}
	text = norm.NFC.String(text)
	text, _ = without(text, "{", "}", nil)
	var out strings.Builder
	for line := range strings.Lines(text) {
		line = trim(line)
		rest, another := strings.CutPrefix(line, ">>")
		if another {
			line = strings.TrimLeft(rest, "> \t")
		}
		if rest := strings.TrimLeft(line, dashes); len(rest) < len(line) {
			line, another = trim(rest), true
		}
		by, name := Unknown, ""
		if rest, who, l, ok := c.label(line); ok {
			line, by, name, another = strings.TrimLeft(trim(rest), dashes), who, l, true
		}
		if out.Len() > 0 {
			out.WriteByte('\n')
		}
		if another {
			turns = append(turns, Turn{At: out.Len(), By: by, Label: name})
		}
		out.WriteString(line)
	}
	return withoutSounds(out.String(), turns)
}

// dashes stand where somebody else goes on.
const dashes = "-\u2010\u2013\u2014"

// trim takes blanks and the signs of music off both ends of a line.
func trim(line string) string { return strings.Trim(line, " \t\n\u00a0\u266a\u266b\u266c#") }

// sample is how many letters tell whether a file is in upper case.
const sample = 20_000

// Learn looks at a subtitle for what tells how its file writes the names of
// speakers.
func (c *Cleaner) Learn(text string) {
	if c.upper+c.lower < sample {
		for i := range len(text) {
			switch b := text[i]; {
			case 'a' <= b && b <= 'z':
				c.lower++
			case 'A' <= b && b <= 'Z':
				c.upper++
			}
		}
	}
	if strings.IndexByte(text, ':') < 0 {
		return
	}
	seen := ""
	for line := range strings.Lines(text) {
		if before, _, ok := strings.Cut(line, ":"); ok {
			if l := strings.TrimLeft(trim(unbracketed(before)), dashes+"> "); l != seen && named(l) {
				c.count(l)
				seen = l
			}
		}
	}
}

// mostLabels is how many texts are counted that may be labels: more than a file
// has people.
const mostLabels = 10_000

func (c *Cleaner) count(label string) {
	if n, known := c.labels[label]; known {
		c.labels[label] = n + 1
	} else if len(c.labels) < mostLabels && utf8.RuneCountInString(label) <= longestLabel {
		c.labels[strings.Clone(label)] = 1
	}
}

// shouted reports whether the file is in upper case as a whole, so that upper
// case makes no name.
func (c *Cleaner) shouted() bool { return c.upper > c.lower }
