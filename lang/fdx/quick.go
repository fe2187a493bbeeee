// Reading plain XML quickly.
//
// The decoder of the standard library reads a byte at a time and makes an object of every
// token, which is most of the time that a long page takes. Nearly all of a page is plain,
// though: elements without name spaces, text with the entities of XML. This reader takes
// only what it knows to be right: an element whose names are of ASCII letters, digits and
// ._-, the end of the element that is open, text of signs that XML allows. It hands
// everything else over, faults too, to the decoder, which goes on from there to the end
// of the text. A test compares the two token by token.

package fdx

import (
	"encoding/xml"
	"strconv"
	"strings"
	"unicode/utf8"
)

// quick returns the next token; ok is false where the decoder is to read it.
func (t *tokens) quick() (k token, ok bool) {
	s := t.content
	switch {
	case t.closing:
		t.closing = false
		return token{kind: ending}, true
	case len(t.open) == 0 || t.at+1 >= len(s):
		return k, false
	case s[t.at] != '<':
		return t.quickText()
	case s[t.at+1] == '/':
		return t.quickEnd()
	}
	return t.quickElement()
}

func (t *tokens) quickText() (k token, ok bool) {
	n := strings.IndexByte(t.content[t.at:], '<')
	if n < 0 {
		return k, false
	}
	text, ok := plain(t.content[t.at : t.at+n])
	if ok {
		t.at += n
	}
	return token{kind: said, text: text}, ok
}

func (t *tokens) quickEnd() (k token, ok bool) {
	name := t.open[len(t.open)-1]
	at := t.at + len("</")
	if !strings.HasPrefix(t.content[at:], name) {
		return k, false
	}
	if at = pass(t.content, at+len(name)); at == len(t.content) || t.content[at] != '>' {
		return k, false
	}
	t.at = at + 1
	return token{kind: ending}, true
}

func (t *tokens) quickElement() (k token, ok bool) {
	s := t.content
	name := nameAt(s, t.at+1)
	if name == "" {
		return k, false
	}
	e := xml.StartElement{Name: xml.Name{Local: name}, Attr: t.attributes[:0]}
	for at := t.at + 1 + len(name); ; {
		at = pass(s, at)
		switch {
		case strings.HasPrefix(s[at:], ">"):
			t.at, t.attributes = at+1, e.Attr
			return token{kind: beginning, element: e}, true
		case strings.HasPrefix(s[at:], "/>"):
			t.at, t.attributes, t.closing = at+2, e.Attr, true
			return token{kind: beginning, element: e}, true
		}
		name := nameAt(s, at)
		if name == "" || name == "xmlns" {
			return k, false
		}
		if at = pass(s, at+len(name)); at == len(s) || s[at] != '=' {
			return k, false
		}
		if at = pass(s, at+1); at == len(s) || s[at] != '"' && s[at] != '\'' {
			return k, false
		}
		n := strings.IndexByte(s[at+1:], s[at])
		if n < 0 {
			return k, false
		}
		value, ok := plain(s[at+1 : at+1+n])
		if !ok {
			return k, false
		}
		e.Attr = append(e.Attr, xml.Attr{Name: xml.Name{Local: name}, Value: value})
		at += n + 2
	}
}

// pass returns the place of the first sign from one on that is no blank.
func pass(s string, at int) int {
	for at < len(s) && (s[at] == ' ' || s[at] == '\n' || s[at] == '\t') {
		at++
	}
	return at
}

// nameAt returns the name that stands at a place; empty where none does, or one with other
// signs. What ends the name is ASCII.
func nameAt(s string, at int) string {
	end := at
	for end < len(s) && (isLetter(s[end]) || end > at && isInName(s[end])) {
		end++
	}
	if end == len(s) || s[end] == ':' || s[end] >= utf8.RuneSelf {
		return ""
	}
	return s[at:end]
}

func isLetter(c byte) bool { return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c == '_' }

func isInName(c byte) bool { return '0' <= c && c <= '9' || c == '.' || c == '-' }

// looked are the bytes of a text that need a closer look: signs that XML does not allow,
// and those that may be more than a sign. 0xEF begins U+FFFE and U+FFFF.
var looked = func() (t [256]bool) {
	for c := range byte(' ') {
		t[c] = c != '\t' && c != '\n'
	}
	for _, c := range []byte("&<]\xef") {
		t[c] = true
	}
	return t
}()

// plain returns what a text says whose entities are those of XML; ok is false where the
// decoder is to read it.
func plain(s string) (text string, ok bool) {
	for i := range len(s) {
		if looked[s[i]] {
			return closer(s)
		}
	}
	return s, true
}

func closer(s string) (text string, ok bool) {
	if strings.Contains(s, "]]>") {
		return "", false
	}
	var out strings.Builder
	kept := 0
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case !looked[c] || c == ']':
		case c == '\xef' && i+2 < len(s) && (s[i+1] != '\xbf' || s[i+2] < '\xbe'):
		case c == '&':
			sign, n := entity(s[i:])
			if n == 0 {
				return "", false
			}
			out.WriteString(s[kept:i])
			out.WriteString(sign)
			i += n - 1
			kept = i + 1
		default:
			return "", false
		}
	}
	if kept == 0 {
		return s, true
	}
	out.WriteString(s[kept:])
	return out.String(), true
}

// longestEntity is how many bytes an entity has that is read here.
const longestEntity = 10

// entity returns what the entity says that a text begins with, and how many bytes it has;
// 0 where it is none that is read here.
func entity(s string) (sign string, n int) {
	end := strings.IndexByte(s[:min(len(s), longestEntity)], ';')
	if end < 0 {
		return "", 0
	}
	switch name := s[1:end]; name {
	case "amp":
		return "&", end + 1
	case "lt":
		return "<", end + 1
	case "gt":
		return ">", end + 1
	case "quot":
		return `"`, end + 1
	case "apos":
		return "'", end + 1
	default:
		return numbered(name, end+1)
	}
}

// numbered returns the sign that a number stands for, as #233 and #xE9.
func numbered(name string, n int) (string, int) {
	digits, ok := strings.CutPrefix(name, "#")
	if !ok {
		return "", 0
	}
	base := 10
	if hex, ok := strings.CutPrefix(digits, "x"); ok {
		digits, base = hex, 16
	}
	v, err := strconv.ParseUint(digits, base, 16) // the first plane
	if err != nil || v < ' ' && v != '\t' && v != '\n' || v >= 0xd800 {
		return "", 0
	}
	return string(rune(v)), n
}
