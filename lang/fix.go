// Fixes: what is offered to mend a mistake.
//
// Whoever tells of a mistake offers what may have been meant, freely: a fault knows its
// token and not its line. Each offer is tried before it is told. The line is parsed with it,
// under a header of its section, and the offer stands if the mistake is gone and nothing
// new is told of the line.

package lang

import (
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// For one file so many offers are tried, in lines of so many bytes.
const (
	mostTried   = 500
	longestLine = 4096
)

type offerKind uint8

const (
	offerText   offerKind = iota // text in place of what is there
	offerNone                    // nothing in its place, and no blank before it
	offerQuotes                  // what is there up to the next comma, in quotes
	offerName                    // what is there up to the next blank, in quotes
	offerNoTail                  // nothing in place of the rest up to the next comma, and of the comma before it
)

// An offer is a fix that has not been tried.
type offer struct {
	kind  offerKind
	title string
	at    Node
	text  string
	other bool // it is tried only if those before it do not hold
	sure  bool // it concerns more than its line, and is not tried
}

// offers adds an offer to a fault, which may be nil.
func (f *fault) offers(list ...offer) *fault {
	if f != nil {
		f.offered = append(f.offered, list...)
	}
	return f
}

// writes offers a text in place of what is at fault.
func (f *fault) writes(text string) *fault {
	if f == nil {
		return nil
	}
	return f.offers(writing(f.Node, text))
}

// writing offers a text in place of a piece of the tree.
func writing(at Node, text string) offer {
	return offer{title: "Write `" + shorten(text) + "`", at: at, text: text}
}

// inserting offers a text at a place; word is what the title says of it.
func inserting(at lexer.Position, text, word string) offer {
	return offer{title: "Insert " + word, at: Node{at, at}, text: text}
}

// deleting offers to leave out a piece of the tree that says a word.
func deleting(at Node, word string) offer {
	return offer{kind: offerNone, title: "Delete `" + shorten(word) + "`", at: at}
}

// instead marks an offer as one for the case that those before it do not hold.
func (o offer) instead() offer {
	o.other = true
	return o
}

// untried marks an offer that is right whatever the line says.
func (o offer) untried() offer {
	o.sure = true
	return o
}

// onTokens returns the place from one token to another.
func onTokens(from, to *lexer.Token) Node { return Node{from.Pos, endOf(to)} }

// lineBehind measures the text of a line at the start of src up to a comma or a comment
// that stands in no quotes.
func lineBehind(src string) int {
	quoted := false
	for i := 0; i < len(src); i++ {
		switch c := src[i]; {
		case c == '\n' || c == '\r':
			return len(trimBlanks(src[:i]))
		case c == '"':
			quoted = !quoted
		case !quoted && (c == ',' || c == '#' && i > 0 && isBlank(rune(src[i-1]))):
			return len(trimBlanks(src[:i]))
		}
	}
	return len(trimBlanks(src))
}

// edit returns the edit that an offer makes in a source; ok is false for none.
func (o offer) edit(src string) (e Edit, ok bool) {
	e = Edit{Range: o.at.Range(), Text: o.text}
	from, to := e.Range.Start.Offset, e.Range.End.Offset
	if to-from > longestLine {
		return e, false
	}
	switch o.kind {
	case offerText:
		e.Text = unrepeated(e.Text, src[to:])
		return e, true
	case offerNone:
		from = len(strings.TrimRight(src[:from], " \t"))
		if from == 0 || src[from-1] == '\n' || src[from-1] == '\r' { // the first word of its line
			from = e.Range.Start.Offset
			to += blanks(src[to:])
		}
	case offerNoTail:
		to = from + lineBehind(upTo(src[from:], longestLine))
		from = len(strings.TrimRight(src[:from], " \t"))
		from = len(strings.TrimRight(strings.TrimSuffix(src[:from], ","), " \t"))
	case offerQuotes:
		to = from + lineBehind(upTo(src[from:], longestLine))
	case offerName:
		to = from + strings.IndexAny(upTo(src[from:], longestLine)+"\n", " \t,:(\r\n")
	}
	if o.kind == offerQuotes || o.kind == offerName {
		if e.Text = WriteText(src[from:to]); from == to || strings.ContainsAny(src[from:to], `"\`) {
			return e, false
		}
	}
	start := e.Range.Start
	if back := src[from:max(from, start.Offset)]; back != "" { // blanks and a comma of the same line
		start.Offset, start.Column = from, start.Column-utf8.RuneCountInString(back)
	}
	e.Range.Start, e.Range.End = start, after(start, src[from:to])
	return e, true
}

// upTo returns the first bytes of a text.
func upTo(text string, most int) string { return text[:min(len(text), most)] }

// unrepeated returns a text without the words at its end that stand behind it already, as
// the `to` of `rack to` before `to DOOR`.
func unrepeated(text, behind string) string {
	behind = strings.TrimLeft(behind, " \t")
	words := strings.Fields(text)
	if strings.Join(words, " ") != text {
		return text
	}
	for n := 1; n < len(words); n++ {
		rest := strings.Join(words[n:], " ")
		if tail, ok := strings.CutPrefix(behind, rest); ok && (tail == "" || !isWordByte(tail[0])) {
			return strings.Join(words[:n], " ")
		}
	}
	return text
}

// A fixer tries what is offered for the mistakes of a file.
type fixer struct {
	file  *File
	src   string
	tried int
}

// fixes returns those offers of a fault that hold.
func (x *fixer) fixes(f *fault) (list []Fix) {
	if len(f.offered) == 0 {
		return nil
	}
	stmt, in := x.file.at(f.Pos.Offset)
	for _, o := range f.offered {
		e, ok := o.edit(x.src)
		if !ok || o.other && len(list) > 0 || slices.ContainsFunc(list, func(other Fix) bool { return other.Edits[0] == e }) {
			continue
		}
		if o.kind == offerNoTail {
			o.title = "Delete `" + shorten(strings.Trim(x.src[e.Range.Start.Offset:e.Range.End.Offset], ", \t")) + "`"
		}
		if o.sure || stmt != nil && x.holds(f, e, stmt, in) {
			list = append(list, Fix{Title: o.title, Edits: []Edit{e}})
		}
	}
	return list
}

// holds reports whether an edit takes a fault from its line, and brings no other.
func (x *fixer) holds(f *fault, e Edit, stmt Statement, in section) bool {
	if x.tried++; x.tried > mostTried {
		return false
	}
	at := stmt.Range()
	from, to := at.Start.Offset, max(at.End.Offset, e.Range.End.Offset)
	if e.Range.Start.Offset < from || to-from > longestLine {
		return false
	}
	text := x.src[from:to]
	made, ok := ApplyEdits([]byte(text), []Edit{{Text: e.Text, Range: Range{
		Start: Pos{Offset: e.Range.Start.Offset - from}, End: Pos{Offset: e.Range.End.Offset - from},
	}}})
	if !ok {
		return false
	}
	before, now := toldIn(in, text), toldIn(in, string(made))
	key := f.code + ": " + f.message
	if now[key] >= before[key] {
		return false
	}
	for key, n := range now {
		if n > before[key] {
			return false
		}
	}
	return true
}

// toldIn counts what is told of a line under a header of a section.
func toldIn(in section, line string) map[string]int {
	src := in.header() + line + "\n"
	p := &parser{file: &File{Source: []byte(src)}, in: inFile, spoilt: map[int]bool{}}
	p.read()
	told := map[string]int{}
	for _, f := range p.faults {
		told[f.code+": "+f.message]++
	}
	return told
}

// header returns a header of a section, "" for the file.
func (in section) header() string {
	switch in {
	case inCamera:
		return "camera A\n"
	case inLens:
		return "lens A\n"
	case inPuller:
		return "puller A\n"
	case inMove:
		return "move m()\n"
	case inShot:
		return "shot 1\n"
	case inScene:
		return "scene\n"
	}
	return ""
}

// at returns the statement that stands at an offset, or ends there, and the section that
// it stands in; nil for none.
func (f *File) at(offset int) (Statement, section) {
	if s := lastAt(f.Body, offset); s != nil && offset <= s.Range().End.Offset {
		return s, inFile
	}
	n := sort.Search(len(f.Sections), func(i int) bool { return f.Sections[i].Head.Range().Start.Offset > offset })
	if n == 0 {
		return nil, inFile
	}
	sec := f.Sections[n-1]
	if offset <= sec.Head.Range().End.Offset {
		return sec.Head, inFile
	}
	if s := lastAt(sec.Body, offset); s != nil && offset <= s.Range().End.Offset {
		return s, sec.kind()
	}
	return nil, inFile
}

// lastAt returns the last of a list of statements that begins at an offset or before it;
// nil for none.
func lastAt(list []Statement, offset int) Statement {
	n := sort.Search(len(list), func(i int) bool { return list[i].Range().Start.Offset > offset })
	if n == 0 {
		return nil
	}
	return list[n-1]
}

// kind returns what a section is.
func (s *Section) kind() section {
	switch h := s.Head.(type) {
	case *Camera:
		return inCamera
	case *Lens:
		return inLens
	case *Puller:
		return inPuller
	case *Move:
		return inMove
	case *Shot:
		return inShot
	case *Scene:
		return inScene
	case *Bad:
		return headers[h.Keyword]
	}
	return inFile
}
