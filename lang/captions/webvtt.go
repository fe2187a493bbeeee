// WebVTT, by the parsing rules of the W3C's text.

package captions

import (
	"html"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

const signature = "WEBVTT"

// signed reports whether a text begins as WebVTT must.
func signed(content string) bool {
	rest, ok := strings.CutPrefix(content, signature)
	return ok && (rest == "" || strings.ContainsRune(" \t\n", rune(rest[0])))
}

// webVTT reads the text as WebVTT.
func (r *reader) webVTT() {
	if !r.later && !r.heads() {
		return
	}
	header := !r.later // up to the first blank line or arrow
	var b vttBlock
	for l := range r.lines {
		timed := strings.Contains(l.Text, arrow)
		switch {
		case header && !timed:
			header = l.Text != ""
			continue
		case l.Text == "":
			r.end(&b)
		default:
			if timed && (b.timed || b.lines > 1) {
				r.end(&b)
			}
			r.take(&b, l, timed)
		}
		if header = false; r.stopped {
			return
		}
	}
	r.end(&b)
}

// heads tells what is wrong with the file as a whole; false: it is not WebVTT.
func (r *reader) heads() bool {
	if !signed(r.text.Content) {
		r.faults.Add(lang.Diagnostic{
			Code: "no-signature", Severity: lang.Error,
			Message: "the file does not begin with " + signature,
			Detail:  "A WebVTT file has that word alone on its first line, or a blank and a title behind it.",
			Range:   r.text.Start(),
		})
		return false
	}
	if r.text.Encoding != lines.UTF8 {
		r.faults.Add(lang.Diagnostic{
			Code: "bad-encoding", Severity: lang.Warning,
			Message: "the file is " + string(r.text.Encoding) + ", and WebVTT is UTF-8 alone",
			Range:   r.text.Start(),
		})
	}
	return true
}

// A vttBlock is lines without a blank one between them.
type vttBlock struct {
	lines  int
	first  [2]lines.Line
	timed  bool // one of the first two has an arrow: it is a cue
	passed bool // it is none, and nothing needs to be told of it
	payload
}

// take takes the next line of a block.
func (r *reader) take(b *vttBlock, l lines.Line, timed bool) {
	if b.lines < len(b.first) {
		b.first[b.lines] = l
	}
	b.lines++
	switch {
	case b.timed:
		b.add(l)
	case timed:
		b.timed = true
	case b.lines == len(b.first)+1: // too late for an arrow
		r.untimed(b)
		fallthrough
	case b.lines > len(b.first):
		if !b.passed {
			r.lost(l)
		}
	}
}

// end reads a block, and empties it.
func (r *reader) end(b *vttBlock) {
	switch {
	case b.timed:
		c := cue{line: b.first[0], payload: b.payload}
		if !strings.Contains(c.line.Text, arrow) {
			c.id, c.line = b.first[0].Text, b.first[1]
		}
		ok := false
		if c.at, ok = r.timing(c.line, webVTTRule); ok {
			r.add(c, plainWebVTT)
		}
	case b.lines <= len(b.first):
		r.untimed(b)
	}
	*b = vttBlock{}
}

// untimed passes over notes, styles and regions, and tells of the first lines of
// anything else that no arrow makes a cue.
func (r *reader) untimed(b *vttBlock) {
	list := b.first[:min(b.lines, len(b.first))]
	if b.passed = len(list) == 0 || aside(list[0].Text) || slices.ContainsFunc(list, r.garbled); b.passed {
		return
	}
	for _, l := range list {
		r.lost(l)
	}
}

// aside reports whether a line begins a note, a style or a region.
func aside(line string) bool {
	word, _, _ := strings.Cut(strings.ReplaceAll(line, "\t", " "), " ")
	rest := strings.TrimRight(line, " \t")
	return word == "NOTE" || rest == "STYLE" || rest == "REGION"
}

// plainWebVTT takes tags and entities out, and says where voices begin. A tag goes from
// its bracket to the next that closes one, or to the end of the cue.
func plainWebVTT(s string) (text string, turns []Turn) {
	if strings.IndexByte(s, '<') < 0 {
		return html.UnescapeString(s), nil
	}
	var out strings.Builder
	for tagged := true; tagged; {
		var piece, inside string
		piece, s, tagged = strings.Cut(s, "<")
		out.WriteString(html.UnescapeString(piece))
		inside, s, _ = strings.Cut(s, ">")
		if name := voice(inside); name != "" {
			turns = append(turns, Turn{At: out.Len(), Voice: name})
		}
	}
	return out.String(), turns
}

// voice returns the name in a voice tag, given without its brackets; empty where it is
// another tag. Classes may stand behind the v.
func voice(tag string) string {
	rest, ok := strings.CutPrefix(tag, "v")
	if !ok {
		return ""
	}
	if strings.HasPrefix(rest, ".") {
		rest = rest[max(0, strings.IndexAny(rest, " \t\n\f\r")):]
	}
	if rest == "" || strings.IndexByte(" \t\n", rest[0]) < 0 {
		return ""
	}
	return strings.Join(strings.Fields(html.UnescapeString(rest)), " ")
}
