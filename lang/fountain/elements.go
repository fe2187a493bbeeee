// What each line is, by the lines around it.

package fountain

import (
	"iter"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/lang/lines"
)

// elements yields the elements and fills in what is not one of them.
func elements(t *lines.Text, s *Script, faults *lines.Faults) iter.Seq[Element] {
	return func(yield func(Element) bool) {
		r := reader{yield: yield, blankBefore: true}
		body := noteless(titleless(boneyardless(t, s, faults), s), s)
		var now line
		started := false
		for next := range body { // one line behind, to see what follows
			if started && !r.line(now, blank(next.text)) {
				return
			}
			now, started = next, true
		}
		if started {
			r.line(now, true)
		}
	}
}

func blank(s string) bool { return strings.TrimSpace(s) == "" }

// usual are the keys of which one must begin a title page: other first lines
// with a colon, such as FADE IN:, are no keys.
var usual = []string{
	"title", "credit", "author", "authors", "source", "draft date", "date", "contact", "copyright", "notes",
	"revision", "subtitle", "episode", "format",
}

// titleless takes the title page off, which can only stand at the very start
// and ends with the first blank line.
func titleless(in iter.Seq[line], s *Script) iter.Seq[line] {
	return func(yield func(line) bool) {
		first, open := true, false
		for l := range in {
			if first || open {
				open = s.titleLine(l.text, first)
			}
			if first = false; !open && !yield(l) {
				return
			}
		}
	}
}

// longestField is how much an entry of the title page may hold, in bytes. The
// rest is left out.
const longestField = 16 << 10

// titleLine takes a line into the title page; ok is false where it is none of
// it.
func (s *Script) titleLine(text string, first bool) (ok bool) {
	indented := strings.HasPrefix(text, "\t") || strings.HasPrefix(text, "   ")
	key, value, ok := strings.Cut(text, ":")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	switch {
	case first && !(ok && slices.ContainsFunc(usual, func(k string) bool { return strings.EqualFold(k, key) })), blank(text):
		return false
	case indented && len(s.Title) > 0:
		if f := &s.Title[len(s.Title)-1]; len(f.Value)+len(text) < longestField {
			f.Value = strings.TrimSpace(f.Value + "\n" + strings.TrimSpace(text))
		}
		return true
	case ok && !indented && key != "":
		s.Title = append(s.Title, Field{key, value})
		return true
	}
	return false
}

// A reader knows what the line before was.
type reader struct {
	yield       func(Element) bool
	blankBefore bool
	speaking    bool // inside a speech
}

// line tells of one line, given whether the next is blank; it returns false
// when no more is wanted.
func (r *reader) line(l line, blankAfter bool) bool {
	trimmed := strings.TrimSpace(l.text)
	if r.speaking {
		// A blank line of two blanks stays in the speech.
		if trimmed != "" || len(l.text) >= 2 {
			return trimmed == "" || r.yield(spoken(trimmed, l.number))
		}
		r.speaking = false
	}
	if trimmed == "" {
		r.blankBefore = true
		return true
	}
	e := r.classify(l.text, trimmed, blankAfter)
	e.Line = l.number
	r.blankBefore, r.speaking = false, e.Kind == Cue
	return r.yield(e)
}

// spoken is a line of a speech.
func spoken(s string, number int) Element {
	switch {
	case s[0] == '(' && s[len(s)-1] == ')':
		return Element{Kind: Parenthetical, Text: s, Line: number}
	case s[0] == '~':
		return Element{Kind: Lyric, Text: strings.TrimSpace(s[1:]), Line: number}
	}
	return Element{Kind: Dialogue, Text: s, Line: number}
}

var (
	headingStart = lines.Pattern(`(?i)^(?:INT\./EXT|INT/EXT|INT|EXT|EST|I/E)[. ]`)
	sceneNumber  = lines.Pattern(`\s*#([\p{L}\p{N}.-]+)#\s*$`)
)

// classify tells what a line outside a speech is; s is the text without the
// blanks around it.
func (r *reader) classify(text, s string, blankAfter bool) Element {
	switch {
	case len(s) >= 3 && strings.Trim(s, "=") == "":
		return Element{Kind: PageBreak}
	case s[0] == '!':
		return Element{Kind: Action, Text: untab(s[1:])}
	case s[0] == '.' && forcedHeading(s[1:]):
		return heading(s[1:])
	case s[0] == '@' && !blankAfter && cue(s[1:]).Text != "":
		return cue(s[1:])
	case s[0] == '~':
		return Element{Kind: Lyric, Text: strings.TrimSpace(s[1:])}
	case s[0] == '>' && s[len(s)-1] == '<' && len(s) > 1:
		return Element{Kind: Centred, Text: strings.TrimSpace(s[1 : len(s)-1])}
	case s[0] == '>':
		return Element{Kind: Transition, Text: strings.TrimSpace(s[1:])}
	case s[0] == '#':
		return Element{Kind: Section, Text: strings.TrimSpace(strings.TrimLeft(s, "#"))}
	case s[0] == '=':
		return Element{Kind: Synopsis, Text: strings.TrimSpace(s[1:])}
	case r.blankBefore && strings.IndexByte("IiEe", s[0]) >= 0 && headingStart().MatchString(s):
		return heading(s)
	case r.blankBefore && blankAfter && transition(text):
		return Element{Kind: Transition, Text: s}
	case r.blankBefore && !blankAfter && isCue(s):
		return cue(s)
	}
	return Element{Kind: Action, Text: untab(strings.TrimRight(text, " \t"))}
}

func untab(s string) string { return strings.ReplaceAll(s, "\t", "    ") }

// forcedHeading reports whether a dot before the text makes it a heading:
// "..." does not.
func forcedHeading(after string) bool {
	first, _ := utf8.DecodeRuneInString(after)
	return unicode.IsLetter(first) || unicode.IsDigit(first)
}

func heading(s string) Element {
	e := Element{Kind: Heading, Text: s}
	if m := sceneNumber().FindStringSubmatchIndex(s); m != nil {
		e.Text, e.Number = s[:m[0]], s[m[2]:m[3]]
	}
	e.Text = strings.TrimSpace(e.Text)
	return e
}

// transition reports whether a line is one by its form. A blank behind the
// colon makes it action.
func transition(text string) bool {
	return strings.HasSuffix(text, "TO:") && upper(text)
}

var extension = lines.Pattern(`\([^()]*\)?`)

// isCue reports whether a line can be a name: in capitals, but for what stands
// in parentheses. Scripts without capitals need the @ of a forced cue.
func isCue(s string) bool {
	if s[0] == '(' || strings.HasSuffix(s, "TO:") {
		return false
	}
	if strings.IndexByte(s, '(') >= 0 {
		s = extension().ReplaceAllString(s, "")
	}
	return upper(s)
}

// upper reports whether a text has capitals and no small letters.
func upper(s string) bool {
	return strings.ContainsFunc(s, unicode.IsUpper) && !strings.ContainsFunc(s, unicode.IsLower)
}

// cue reads a name, and apart from it what stands in parentheses behind it.
func cue(s string) Element {
	e := Element{Kind: Cue}
	if rest, ok := strings.CutSuffix(s, "^"); ok {
		s, e.Dual = rest, true
	}
	name, more, _ := strings.Cut(s, "(")
	e.Text, e.Off = strings.Join(strings.Fields(name), " "), off(more)
	return e
}

// Name returns a name apart from what stands in parentheses behind it, and whether
// that says that the speaker is heard and not seen.
func Name(s string) (name string, heard bool) {
	e := cue(s)
	return e.Text, e.Off
}

// off reports whether what stands behind a name says that the speaker is heard
// and not seen: voice over, off screen, off camera.
func off(extension string) bool {
	words := strings.FieldsFunc(extension, func(r rune) bool { return strings.ContainsRune("()/, \t", r) })
	return slices.ContainsFunc(words, func(word string) bool {
		switch strings.ToUpper(strings.ReplaceAll(word, ".", "")) {
		case "VO", "OS", "OC":
			return true
		}
		return false
	})
}
