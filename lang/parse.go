// Parse: limits, the run over the lines, and the parser of one line.

package lang

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// Limits of one file. A feature film of 120 shots has about 2 MB, 60 000
// lines and 500 000 tokens.
const (
	maxBytes       = 8 << 20
	maxLines       = 300_000
	maxTokens      = 2_000_000
	maxDiagnostics = 1000
)

// Parse reads a plan or kit from src. It returns everything that it could read, and
// every mistake, sorted by place. A line with a mistake becomes a *Bad in the tree, and
// Parse reads the lines after it as usual. A field of a statement is never nil, unless
// the reference shows it as optional. path is the file name in positions; Parse opens
// no file.
func Parse(path string, src []byte) (*File, []Diagnostic) {
	file := &File{Path: path, Source: src}
	if f := cmp.Or(tooLarge(path, src), wide(path, src), unmerged(path, src)); f != nil {
		return file, []Diagnostic{f.diagnostic()}
	}
	p := &parser{file: file, in: inFile, spoilt: map[int]bool{}}
	p.read()
	return file, p.diagnostics()
}

// tooLarge checks the size of a file before Parse reads it.
func tooLarge(path string, src []byte) *fault {
	start := lexer.Position{Filename: path, Line: 1, Column: 1}
	top := &Node{start, start}
	if len(src) > maxBytes {
		return faultOn(top, "too-large", "this file has %d bytes", len(src)).
			because("A plan has %d at most.", maxBytes)
	}
	if n := bytes.Count(src, []byte{'\n'}); n > maxLines {
		return faultOn(top, "too-large", "this file has %d lines", n).because("A plan has %d at most.", maxLines)
	}
	return nil
}

// wide returns the fault of a text in UTF-16, or nil. Read as UTF-8, each of its letters
// would be a mistake.
func wide(path string, src []byte) *fault {
	if !isWide(src) {
		return nil
	}
	start := lexer.Position{Filename: path, Line: 1, Column: 1}
	return faultOn(&Node{start, start}, "bad-character", "this file is written in UTF-16").because("Save it as UTF-8.")
}

// isWide reports whether a text is in UTF-16, by its byte order mark or by the
// zeros in its first letters.
func isWide(src []byte) bool {
	const little, big = "\xff\xfe", "\xfe\xff"
	head := string(src[:min(len(src), 4)])
	marked := strings.HasPrefix(head, little) || strings.HasPrefix(head, big)
	zeros := len(head) == 4 && (head[0] == 0) != (head[1] == 0) && (head[0] == 0) == (head[2] == 0) && (head[1] == 0) == (head[3] == 0)
	return marked || zeros
}

// A parser reads the lines of one file and assembles them.
type parser struct {
	file   *File
	lex    *lexer.PeekingLexer
	tokens []lexer.Token // those that lex reads
	faults []*fault
	// spoilt holds the offsets at which the scanner has reported a mistake.
	spoilt map[int]bool

	in   section // the section of the next line
	open *Section
	// hasShots is true once a shot has begun. After that, a set-up of the film is a
	// mistake.
	hasShots bool
	above    line // the statement above
	// orphans are the sections, besides the file, to which a reported line since the
	// last header belongs. If a header is lost, only the first such line is reported.
	orphans section
}

// A line is a statement that the parser is reading. Its tokens run from at up to end,
// the index of its Line token.
type line struct {
	spec    *spec
	at, end int
	start   lexer.Checkpoint
	slot    *Statement // where it stands in the tree
	faults  int        // how many faults there were before it
}

// chunkTokens is the least number of tokens that the parser reads in one go.
const chunkTokens = 1024

// read reads the file, chunk after chunk.
func (p *parser) read() {
	source := newGrammarLexer(p.file.Path, string(p.file.Source), chunkTokens)
	for source.nextChunk() && len(p.faults) <= maxDiagnostics {
		p.lex, _ = lexer.Upgrade(source) // the lexer returns no errors
		p.tokens = p.lex.Range(0, lexer.RawCursor(source.count))
		for _, f := range source.faults {
			p.spoilt[f.Pos.Offset] = true
		}
		p.faults = append(p.faults, source.faults...)
		source.faults = nil
		p.above = line{}
		p.lines()
	}
	if source.total >= maxTokens {
		p.faults = append(p.faults, faultAt(&source.ahead, "too-large", "this file has more than %d words", maxTokens))
	}
}

// lines reads the lines of a chunk. Every turn of the loop consumes at least one token.
func (p *parser) lines() {
	for at, end := 0, 0; !p.tokens[at].EOF() && len(p.faults) <= maxDiagnostics; {
		for end = max(end, at); p.tokens[end].Type != tokLine; end++ {
			if p.tokens[end].EOF() {
				return // the file was cut here
			}
		}
		l := line{at: at, end: end, start: p.lex.MakeCheckpoint(), faults: len(p.faults)}
		p.statement(&l)
		p.above = l
		p.lex.LoadCheckpoint(l.start)
		p.lex.FastForward(lexer.RawCursor(l.end))
		at = l.end + 1
	}
}

// statement reads one line and puts it into the tree. If the comma that joins it to the
// next line is a mistake, it shortens the line.
func (p *parser) statement(l *line) {
	if l.spec = p.identify(l.at); l.spec == nil || l.spec.word == "crop" && p.in == inCamera && p.above.spec == specOf["sensor"] {
		if !p.continues(l) {
			p.splitStray(l)
			p.report(cmp.Or(p.spacedName(l), p.unknown(l)))
			p.misread(l)
		}
		return
	}
	if header := headers[l.spec.word]; l.spec.under == 0 && header != 0 {
		if p.forgottenComma(l) && p.continues(l) || p.meansWith(l) || p.meansMove(l) {
			return
		}
		p.openSection(l, header)
		return
	}
	if p.goesWith(l) && p.continues(l) {
		return
	}
	f := p.misplacedLine(l)
	switch {
	case f == nil:
		p.add(l, p.parseLine(l))
	case p.turned(l) != nil:
		p.report(p.unknown(l))
		p.misread(l)
	default:
		if !p.continues(l) {
			p.splitStray(l)
			if belongs := l.spec.under &^ inFile; p.orphans&belongs == 0 {
				p.report(f)
				p.orphans |= belongs
			}
			p.add(l, p.bad(l))
			l.slot = nil // nothing can make this line right
		}
	}
}

// parseLine parses a line, and returns a Bad statement if that fails.
func (p *parser) parseLine(l *line) Statement {
	end := l.end
	if last := &p.tokens[end-1]; last.Value == "," && end-1 > l.at {
		p.report(faultAt(last, "stray-comma", "nothing follows this comma").offers(withoutComma(last)))
		end--
	}
	s, m := p.parse(l.spec, l.start, l.at, end)
	if m != nil {
		if comma := p.strayComma(l, m.fault); comma > 0 {
			p.reportStray(comma)
			l.end, end = comma, comma
			s, m = p.parse(l.spec, l.start, l.at, l.end)
		}
	}
	if m != nil {
		return p.unread(l, end, s, m)
	}
	p.faults = append(p.faults, finish(s, l.spec, p.tokens[l.at:end])...)
	return s
}

// unread reports every mistake of a line and returns the part that could be read. whole
// is the statement if only a rule forbids it, and nil if it could not be read.
func (p *parser) unread(l *line, end int, whole Statement, first *mistake) Statement {
	if !p.wantsQuotes(l, first.fault) {
		first.withUsage(l.spec)
	}
	list := []*mistake{first}
	if !p.spoilt[first.Pos.Offset] { // behind an unfinished text everything is doubtful
		list = append(list, p.others(l, end, first)...)
	}
	for _, m := range list {
		p.report(m.fault)
	}
	b := p.bad(l)
	b.Partial, b.Lost = p.partial(l, end, list)
	if b.Partial != nil && p.hasUnreadable(l, end) {
		b.Lost = append(b.Lost, "")
	}
	if b.Partial == nil && whole != nil { // its values can be looked at all the same
		p.reportAll(finish(whole, l.spec, p.tokens[l.at:end]))
	}
	return b
}

// hasUnreadable reports whether a piece of a line is not a token of the language. It may
// be a text without an end, which has swallowed the rest of the line.
func (p *parser) hasUnreadable(l *line, end int) bool {
	return slices.ContainsFunc(p.tokens[l.at:end], func(t lexer.Token) bool { return t.Type == tokInvalid && p.spoilt[t.Pos.Offset] })
}

// parse parses the tokens from at up to end as one statement. It returns the statement or
// its first mistake; it returns both if only a rule forbids the statement.
func (p *parser) parse(s *spec, start lexer.Checkpoint, at, end int) (Statement, *mistake) {
	saved := p.endAt(end)
	defer func() { p.tokens[end] = saved }()
	p.lex.LoadCheckpoint(start)
	tree, err := s.parser().ParseFromLexer(p.lex)
	if err != nil {
		refused := p.lex.Peek()
		if unexpected := (*participle.UnexpectedTokenError)(nil); errors.As(err, &unexpected) {
			refused = &unexpected.Unexpected
		}
		return nil, p.walker(start).explain(s, refused)
	}
	*(*tree).node() = p.span(at, end)
	return *tree, p.rules(*tree, s, start, end)
}

// others returns the mistakes of a line after the first one.
func (p *parser) others(l *line, end int, first *mistake) []*mistake {
	saved := p.endAt(end)
	defer func() { p.tokens[end] = saved }()
	w := p.walker(l.start)
	w.walk(l.spec.shape().form)
	list := w.rest(l.spec, first, end)
	for _, m := range append(list, first) {
		w.blame(l.spec, m)
	}
	return list
}

// walker returns a walker that begins at a checkpoint.
func (p *parser) walker(start lexer.Checkpoint) *walker {
	lex := *p.lex
	lex.LoadCheckpoint(start)
	return newWalker(&lex)
}

// endAt replaces a token by the end of the file, because the parser of one statement
// reads up to an EOF. It returns the token, which the caller must put back.
func (p *parser) endAt(end int) lexer.Token {
	saved := p.tokens[end]
	p.tokens[end] = lexer.EOFToken(endOf(&p.tokens[end-1]))
	return saved
}

// span returns the place of the tokens from at up to end.
func (p *parser) span(at, end int) Node {
	return Node{p.tokens[at].Pos, endOf(&p.tokens[end-1])}
}

// bad returns the line as one that could not be read.
func (p *parser) bad(l *line) *Bad {
	b := &Bad{Node: p.span(l.at, l.end)}
	if l.spec == nil {
		return b
	}
	if b.Keyword = l.spec.word; l.spec.declares {
		b.Name = p.declaredAt(l.at+1, l.end)
	}
	return b
}

// declaredAt returns the name that a line declares at a token. If several words follow
// in lower case, it takes only the first, because the others may be anything.
func (p *parser) declaredAt(at, end int) *Name {
	n := p.nameAt(at, end)
	if n == nil || n.Quoted || strings.ToLower(n.Text) != n.Text {
		return n
	}
	return p.nameAt(at, at+1)
}

// nameAt returns the name at a token, or nil if there is none. It includes the words of
// a name with blanks that lacks its quotes, and accepts a number that lacks them.
func (p *parser) nameAt(at, end int) *Name {
	if at >= end || !isName(&p.tokens[at]) && p.tokens[at].Type != tokNumber {
		return nil
	}
	n := &Name{Node: p.span(at, at+1)}
	n.Text, n.Quoted = nameOf(&p.tokens[at])
	for at++; at < end && p.joinsName(at); at++ {
		text, _ := nameOf(&p.tokens[at])
		n.Text, n.EndPos = n.Text+" "+text, endOf(&p.tokens[at])
	}
	return n
}

// joinsName reports whether the word at a token and the one before it look like one name
// with a blank. If only the second is in lower case, it is more likely a misspelt
// keyword.
func (p *parser) joinsName(at int) bool {
	before, t := &p.tokens[at-1], &p.tokens[at]
	if before.Type != tokWord || t.Type != tokWord || !isName(before) || !isName(t) {
		return false
	}
	return strings.ToLower(t.Value) != t.Value || strings.ToLower(before.Value) == before.Value
}

// wantsQuotes reports whether a name with a blank causes the fault. If so, it adds the
// right form of the name to the fault.
func (p *parser) wantsQuotes(l *line, f *fault) bool {
	if f.detail != "" || f.code == "missing-comma" {
		return false
	}
	for at := l.at + 1; at < l.end; at++ {
		if p.tokens[at].Pos.Offset != f.Pos.Offset || !p.joinsName(at) {
			continue
		}
		first := at - 1
		for first > l.at && p.joinsName(first) {
			first--
		}
		if l.spec != nil && first == l.at && p.tokens[first].Value == l.spec.word {
			return false // a soft word, which begins the statement and is no part of a name
		}
		name := p.nameAt(first, l.end)
		f.because("Put a name with a blank in quotes: %s.", shorten(WriteText(name.Text))).offers(writing(name.Node, WriteText(name.Text)))
		return true
	}
	return false
}

// report notes a fault, unless the scanner has reported one at the same place.
func (p *parser) report(f *fault) {
	if !p.spoilt[f.Pos.Offset] {
		p.faults = append(p.faults, f)
	}
}

func (p *parser) reportAll(list []*fault) {
	for _, f := range list {
		p.report(f)
	}
}

// withUsage adds the usage line of the statement to a fault in its form.
func (f *fault) withUsage(s *spec) *fault {
	if strings.HasPrefix(f.code, "expected-") || strings.HasSuffix(f.code, "-clause") {
		f.because("Write: %s", s.usage())
	}
	return f
}

// diagnostics returns the faults as a sorted list of at most maxDiagnostics, plus one that
// says there are more.
func (p *parser) diagnostics() []Diagnostic {
	list := make([]Diagnostic, 0, len(p.faults))
	x := fixer{file: p.file}
	if len(p.faults) > 0 {
		x.src = string(p.file.Source)
	}
	for _, f := range p.faults {
		d := f.diagnostic()
		d.Fixes = x.fixes(f)
		list = append(list, d)
	}
	list = Sort(list)
	if len(list) > maxDiagnostics {
		last := list[maxDiagnostics]
		last.Code, last.Message = "too-many-mistakes", fmt.Sprintf("more than %d mistakes", maxDiagnostics)
		last.Detail = "The rest of the file was not looked at."
		list = append(list[:maxDiagnostics], last)
	}
	return list
}
