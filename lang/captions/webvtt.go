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
	if !signed(r.text.Content) {
		r.diags = append(r.diags, lang.Diagnostic{
			Code: "no-signature", Severity: lang.Error,
			Message: "the file does not begin with " + signature,
			Detail:  "A WebVTT file has that word alone on its first line, or a blank and a title behind it.",
			Range:   r.text.Start(),
		})
		return
	}
	if r.text.Encoding != lines.UTF8 {
		r.diags = append(r.diags, lang.Diagnostic{
			Code: "bad-encoding", Severity: lang.Warning,
			Message: "the file is " + string(r.text.Encoding) + ", and WebVTT is UTF-8 alone",
			Range:   r.text.Start(),
		})
	}
	header := true // up to the first blank line or arrow
	var b vttBlock
	for l := range r.text.All() {
		timed := strings.Contains(l.Text, arrow)
		switch {
		case header && !timed:
			header = l.Text != ""
			continue
		case l.Text == "":
			r.end(&b)
			continue
		case timed && (b.timed || len(b.lines) > 1):
			r.end(&b)
		}
		header = false
		b.timed = b.timed || timed
		b.lines = append(b.lines, l)
	}
	r.end(&b)
}

// A vttBlock is lines without a blank one between them.
type vttBlock struct {
	lines []lines.Line
	timed bool // one of the first two has an arrow
}

// end reads a block, and empties it.
func (r *reader) end(b *vttBlock) {
	block, timed := b.lines, b.timed
	*b = vttBlock{}
	switch {
	case len(block) == 0:
		return
	case !timed:
		r.untimed(block)
		return
	}
	id := ""
	if !strings.Contains(block[0].Text, arrow) {
		id, block = block[0].Text, block[1:]
	}
	at, ok := r.timing(block[0], webVTTRule)
	if !ok {
		return
	}
	var payload []string
	for _, l := range block[1:] {
		payload = append(payload, l.Text)
	}
	r.add(block[0], at, id, payload, plainWebVTT)
}

// untimed passes over notes, styles and regions, and tells of anything else
// that no arrow makes a cue.
func (r *reader) untimed(block []lines.Line) {
	first := strings.TrimRight(block[0].Text, " \t")
	if first == "STYLE" || first == "REGION" || first == "NOTE" || strings.HasPrefix(first, "NOTE ") || strings.HasPrefix(first, "NOTE\t") {
		return
	}
	for i, l := range block {
		if i < 2 && r.garbled(l) {
			return
		}
	}
	for _, l := range block {
		r.lost(l)
	}
}

var (
	vttTag   = lines.Pattern(`<[^>]*>?`)
	vttVoice = lines.Pattern(`^<v(?:\.[^\s>]*)?[ \t\n]+([^>]*)`)
)

// plainWebVTT takes tags and entities out.
func plainWebVTT(s string) (text string, voices []string) {
	text = vttTag().ReplaceAllStringFunc(s, func(tag string) string {
		if m := vttVoice().FindStringSubmatch(tag); m != nil {
			name := strings.Join(strings.Fields(html.UnescapeString(m[1])), " ")
			if name != "" && !slices.Contains(voices, name) {
				voices = append(voices, name)
			}
		}
		return ""
	})
	return html.UnescapeString(text), voices
}
