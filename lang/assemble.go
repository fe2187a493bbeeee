// The assembler: which statement a line is, and where in the tree it goes.

package lang

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// identify tells by a line's first three tokens which statement it is in a
// section; nil for none. third may be any token where the line has but two.
func identify(first, second, third *lexer.Token, in section) *spec {
	switch {
	case first.Type == tokWord && first.Value == "camera" && placesCamera(second, third):
		return cameraSpec(second)
	case second.Type == tokPunct && second.Value == ":":
		return specOf[speechWord]
	case first.Value == "move" && second.Type == tokWord && second.Value == "to":
		return nil // no move is called so
	case first.Type == tokWord && isKeyword(first.Value):
		switch s := specOf[first.Value]; {
		case s == nil || s.word == movesWord:
		case s.under == 0:
			return s
		default:
			return s.within(in)
		}
	case first.Type == tokWord && beginsHere(first.Value, in):
		return specOf[first.Value].within(in)
	case second.Type == tokPunct && second.Value == "(" && isName(first):
		return specOf[callWord]
	case second.Type == tokWord && second.Value == movesWord && isName(first):
		return specOf[movesWord].within(in)
	case first.Type == tokWord && isSoft(first.Value) && !meantElsewhere(first, second):
		if s := specOf[first.Value]; s != nil {
			return s.within(in) // in the wrong place, which is told
		}
	}
	return nil
}

// placesCamera reports whether a line that begins with camera is no header, by the two
// tokens behind it.
func placesCamera(second, third *lexer.Token) bool {
	return second.Type == tokWord && (second.Value == "at" || second.Value == movesWord || second.Value == "as" && third.Value == "in")
}

// cameraSpec returns the statement of a shot that begins with camera and another word.
func cameraSpec(second *lexer.Token) *spec {
	s := specOf["camera"]
	for s.under == 0 || (s.under == inShots) != (second.Value == movesWord) {
		s = s.other
	}
	return s
}

// identify tells which statement begins at a token.
func (p *parser) identify(at int) *spec {
	second := &p.tokens[at+1]
	third := second
	if at+2 < len(p.tokens) {
		third = &p.tokens[at+2]
	}
	return identify(&p.tokens[at], second, third, p.in)
}

// beginsHere reports whether a soft word begins a statement of a section in which
// no line begins with a name.
func beginsHere(word string, in section) bool {
	s := specOf[word]
	return s != nil && in&inAction == 0 && isSoft(word) && s.within(in).under&in != 0
}

// mayStand reports whether a statement may stand in a section.
func (s *spec) mayStand(in section) bool {
	_, ok := in.place(s.under)
	return ok || s.under == 0
}

// unknown tells that no statement begins as a line does.
func (p *parser) unknown(l *line) *fault {
	first, second := &p.tokens[l.at], &p.tokens[l.at+1]
	if s := p.turned(l); s != nil && first.Type == tokPunct {
		return faultAt(first, "unknown-word", "no statement begins with %s", describe(first)).because("Write: %s", s.usage()).offers(swapped(first, second))
	} else if s != nil {
		return faultAt(first, "unknown-word", "no statement begins with %s", describe(first)).
			because("Did you mean `%s %s`? Write: %s", s.word, shorten(first.Value), s.usage()).offers(swapped(first, second))
	}
	if first.Type == tokInvalid {
		return faultAt(first, "unknown-word", "unreadable line")
	}
	lower := strings.ToLower(first.Value)
	if isName(first) && second.Type == tokText && lower != first.Value && specOf[lower] == nil {
		return faultAt(second, "expected-word", "expected `:` after %s, found %s", describe(first), describe(second)).
			because("Write: %s", Usage(speechWord)).offers(inserting(endOf(first), ":", "a colon"))
	}
	near, ok := Nearest(second.Value, []string{movesWord})
	if movesElsewhere[second.Value] {
		near, ok = movesWord, true
	}
	if ok && isName(first) && second.Type == tokWord {
		return faultAt(second, "unknown-word", "unknown word %s", describe(second)).
			because("Did you mean `%s`? Write: %s", near, Usage(near)).writes(near)
	}
	f := faultAt(first, "unknown-word", "no statement begins with %s", describe(first))
	if first.Type != tokWord {
		return f.because("A line begins with the word of a statement or with a name.")
	}
	if !isWordOf(first.Value) {
		f.message = "unknown word " + describe(first)
	}
	if headers[first.Value] != 0 { // by the word behind it, it is no header
		f.message = "no statement begins with `" + first.Value + " " + second.Value + "`"
	}
	if meant, ok := p.meant(first, second); ok {
		return f.because("Did you mean `%s`? Write: %s", meant, Usage(firstWord(meant))).
			offers(writing(f.Node, meant), writing(onTokens(first, second), meant).instead())
	}
	return f.because("Here a line begins with %s or with a name.", strings.Join(p.beginnings(), ", "))
}

// swapped offers two words in the other order.
func swapped(first, second *lexer.Token) offer {
	return writing(onTokens(first, second), second.Value+" "+first.Value)
}

// spacedName tells of a line that begins with a name whose blank wants quotes,
// where what follows belongs behind a name; nil for any other.
func (p *parser) spacedName(l *line) *fault {
	at := l.at + 1
	for at < l.end && p.joinsName(at) {
		at++
	}
	if at == l.at+1 || at == l.end {
		return nil
	}
	if t := &p.tokens[at]; t.Value != ":" && t.Value != "(" && t.Value != movesWord {
		return nil
	}
	name := p.nameAt(l.at, at)
	return faultOn(&name.Node, "expected-name", "a name has no blank").because("In quotes it may: %s.", shorten(WriteText(name.Text))).
		writes(WriteText(name.Text))
}

// beginnings lists the words that a line may begin with where it stands.
func (p *parser) beginnings() (words []string) {
	for _, s := range specs {
		if isWordByte(s.word[0]) && s.word != movesWord && s.under&p.in != 0 && !slices.Contains(words, s.word) {
			words = append(words, s.word)
		}
	}
	return words
}

// meant finds the beginning of the statement that a line's first two tokens
// were meant for, among those that may stand here.
func (p *parser) meant(first, second *lexer.Token) (string, bool) {
	if begin := fromElsewhere(first, second); begin != "" {
		return begin, specOf[firstWord(begin)].mayStand(p.in)
	}
	var here []string
	for _, s := range specs {
		if isWordByte(s.word[0]) && s.word != movesWord && s.mayStand(p.in) {
			here = append(here, s.word)
		}
	}
	if lower := strings.ToLower(first.Value); slices.Contains(here, lower) {
		return lower, true
	}
	return Nearest(first.Value, here)
}

// misread puts a line that is no statement into the tree. Where its first word
// was meant for that of a statement, it is a lost one of that kind, which still
// declares its name; where it was meant as a header, what follows stands under it.
func (p *parser) misread(l *line) {
	first, second := &p.tokens[l.at], &p.tokens[l.at+1]
	b := p.bad(l)
	meant, ok := p.meant(first, second)
	s := p.turned(l)
	switch {
	case s != nil:
		b.Keyword = s.word
		b.Partial = p.readTurned(s, l)
		if s.declares {
			b.Name = p.nameAt(l.at, l.at+1)
		}
	case !ok || first.Type != tokWord || specOf[meant] == nil || fromElsewhere(first, second) != "":
		p.add(l, b)
		return
	default:
		if s = specOf[meant]; s.under != 0 {
			s = s.within(p.in)
		}
		b.Keyword = meant
		b.Partial = p.readAs(s, l)
		if s.declares {
			b.Name = p.declaredAt(l.at+1, l.end)
		}
	}
	to, _ := p.in.place(s.under)
	switch {
	case headers[s.word] != 0 && s.under == 0:
		p.enter(l, b, headers[s.word])
	case to == inFile && p.open != nil: // it may be no statement of the file: the section goes on
		p.file.Body = append(p.file.Body, b)
		l.slot = &p.file.Body[len(p.file.Body)-1]
	default:
		p.add(l, b)
	}
}

// readAs reads a line with the word of a statement in place of its first, and
// returns nil where that makes no sense either.
func (p *parser) readAs(s *spec, l *line) Statement {
	first := &p.tokens[l.at]
	written := first.Value
	first.Value = s.word
	tree, m := p.parse(s, l.start, l.at, l.end)
	first.Value = written
	if m != nil {
		return nil
	}
	*tree.node() = p.span(l.at, l.end)
	p.reportAll(finish(tree, s, p.tokens[l.at:l.end]))
	return tree
}

// turned returns the statement that a line is with its first two words in the
// other order, as in NORA voice; nil for any other. A header that has more than its
// name behind it is none.
func (p *parser) turned(l *line) *spec {
	first, second := &p.tokens[l.at], &p.tokens[l.at+1]
	s := identify(second, first, first, p.in)
	switch {
	case s == nil || !isWordByte(s.word[0]) || s.word == movesWord || second.Value != s.word || !s.mayStand(p.in):
		return nil
	case ways[s.word] != nil: // no name stands behind its word
		return nil
	case s.under == 0 && l.end != l.at+2 && !(l.end == l.at+3 && p.tokens[l.at+2].Type == tokText):
		return nil
	}
	return s
}

// readTurned reads a line with its first two words in the other order, and returns
// nil where that makes no sense either.
func (p *parser) readTurned(s *spec, l *line) Statement {
	first, second := p.tokens[l.at], p.tokens[l.at+1]
	p.tokens[l.at], p.tokens[l.at+1] = second, first
	tree, m := p.parse(s, l.start, l.at, l.end)
	p.tokens[l.at], p.tokens[l.at+1] = first, second
	if m != nil {
		return nil
	}
	*tree.node() = p.span(l.at, l.end)
	return tree
}

// openSection reads a header. One that cannot be read opens its section too,
// so that what follows is not reported for standing there.
func (p *parser) openSection(l *line, to section) {
	p.enter(l, p.parseLine(l), to)
}

func (p *parser) enter(l *line, head Statement, to section) {
	p.in, p.orphans = to, 0
	p.hasShots = p.hasShots || to == inShot
	p.open = &Section{Head: head}
	p.file.Sections = append(p.file.Sections, p.open)
	l.slot = &p.open.Head
}

// misplacedLine tells that a statement cannot stand where it does.
func (p *parser) misplacedLine(l *line) *fault {
	to, ok := p.in.place(l.spec.under)
	first := &p.tokens[l.at]
	if ok && to == inFile && l.spec.word == "with" && p.hasShots {
		return faultAt(first, "wrong-section", "the film's `with` belongs before the first shot")
	}
	if ok {
		return nil
	}
	under := l.spec.under
	if under&inShots != 0 { // the nearest are enough
		under &^= inScene
	}
	f := faultAt(first, "wrong-section", "%s belongs to %s, not to %s", l.name(first), under, p.in)
	for _, s := range specs {
		if headers[s.word]&l.spec.under != 0 && s.under == 0 {
			return f.because("Write it under a line `%s`.", s.usage())
		}
	}
	return f.because("Write it above the first header.")
}

// name is what a message calls the statement.
func (l *line) name(first *lexer.Token) string {
	switch l.spec.word {
	case speechWord:
		return "a spoken line"
	case callWord:
		return "the use of a move"
	case movesWord:
		return "`moves`"
	case "camera":
		return "where a camera stands"
	}
	return describe(first)
}

// add puts a statement under the open header, or into the file.
func (p *parser) add(l *line, s Statement) {
	to := p.in
	if l.spec != nil {
		to, _ = p.in.place(l.spec.under)
	}
	if to == inFile {
		p.in, p.open = inFile, nil
	}
	body := &p.file.Body
	if p.open != nil {
		body = &p.open.Body
	}
	*body = append(*body, s)
	l.slot = &(*body)[len(*body)-1]
}

// strayComma finds the comma at which a joined line falls apart: what follows it
// is a statement of its own. One that could be a clause is so only where the
// fault f stands at the comma or right behind it. It returns 0 where there is
// none.
func (p *parser) strayComma(l *line, f *fault) int {
	for i := l.at + 1; i+1 < l.end; i++ {
		comma, next := &p.tokens[i], &p.tokens[i+1]
		if comma.Value != "," || comma.Pos.Line == next.Pos.Line {
			continue
		}
		near := f.Pos.Offset == comma.Pos.Offset || f.Pos.Offset == next.Pos.Offset || next.Value == "with" && p.within(f, i+2, min(i+3, l.end))
		if near && p.standsAlone(l, i+1) || f.Pos.Offset < comma.Pos.Offset && p.beginsAnother(l.spec, i+1) {
			return i
		}
	}
	return 0
}

// within reports whether a fault stands at one of the tokens from one up to another.
func (p *parser) within(f *fault, from, to int) bool {
	return p.tokens[from].Pos.Offset <= f.Pos.Offset && f.Pos.Offset <= p.tokens[to].Pos.Offset
}

// beginsAnother reports whether a token begins a statement and no clause of s, or
// of any statement where s is nil.
func (p *parser) beginsAnother(s *spec, at int) bool {
	first := &p.tokens[at]
	if p.identify(at) == nil {
		return false
	}
	if s == nil {
		return !slices.Contains(Words(RoleClause), first.Value)
	}
	return !slices.Contains(s.shape().marked, first.Value)
}

// splitStray ends a line that is no statement, or none that may stand here, at the
// first comma behind which another begins, and tells of the comma.
func (p *parser) splitStray(l *line) {
	for i := l.at + 1; i+1 < l.end; i++ {
		if p.tokens[i].Value == "," && p.tokens[i].Pos.Line != p.tokens[i+1].Pos.Line && p.beginsAnother(l.spec, i+1) {
			p.reportStray(i)
			l.end = i
			return
		}
	}
}

// reportStray tells of a comma that joins two statements.
func (p *parser) reportStray(comma int) {
	p.report(faultAt(&p.tokens[comma], "stray-comma", "this comma joins two statements").
		because("The next line is a statement of its own. Delete the comma.").
		offers(withoutComma(&p.tokens[comma])))
}

// withoutComma offers to leave out a comma.
func withoutComma(t *lexer.Token) offer {
	return offer{title: "Delete the comma", at: Node{t.Pos, endOf(t)}}.untried()
}

// standsAlone reports whether the tokens of l from at on begin a statement
// rather than a clause of l.
func (p *parser) standsAlone(l *line, at int) bool {
	first := &p.tokens[at]
	s := p.identify(at)
	if s == nil {
		return false
	}
	if !slices.Contains(l.spec.shape().marked, first.Value) {
		return true
	}
	p.lex.LoadCheckpoint(l.start)
	p.lex.FastForward(lexer.RawCursor(at - 1))
	_, f := p.parse(s, p.lex.MakeCheckpoint(), at, l.end)
	return f == nil
}

// continues reports whether a line begins with a clause of the statement
// above, and says so. Where the two make one statement, that takes the place
// of the one above.
func (p *parser) continues(l *line) bool {
	first := &p.tokens[l.at]
	up := &p.above
	if up.spec == nil || first.Type != tokWord || !slices.Contains(up.spec.shape().marked, first.Value) {
		return false
	}
	between := &p.tokens[up.end]
	lineEnd := *between
	*between = lexer.Token{Type: tokPunct, Value: ",", Pos: lineEnd.Pos}
	s, f := p.parse(up.spec, up.start, up.at, l.end)
	told := faultAt(first, "missing-comma", "%s continues the `%s` above", describe(first), up.spec.word).
		because("End the line above with a comma.")
	if f == nil && up.slot != nil {
		told.offers(inserting(endOf(&p.tokens[up.end-1]), ",", "a comma at the end of the line above").untried())
		p.faults = append(p.faults[:up.faults], finish(s, up.spec, p.tokens[up.at:l.end])...)
		*up.slot = s
		l.at, l.start, l.slot, l.spec = up.at, up.start, up.slot, up.spec
	} else {
		*between = lineEnd
		l.spec = nil
	}
	p.report(told)
	l.faults = len(p.faults)
	return true
}

// goesWith reports whether a line is rather the end of the one above, as is `with pan`
// below a rack: no set-up begins so.
func (p *parser) goesWith(l *line) bool {
	second := &p.tokens[l.at+1]
	up := p.above.spec
	if second.Value == "camera" && p.tokens[l.at+2].Type == tokWord {
		return false // its name
	}
	return l.spec.word == "with" && up != nil && up.shape().fieldNamed("Alongside") != nil &&
		(ways[second.Value] != nil || second.Value == "zoom" || second.Value == "camera")
}

// forgottenComma reports whether a header is rather a clause of the set-up
// right above: in a shot, `with camera A` and then `lens "75"`, where nothing
// of a lens follows.
func (p *parser) forgottenComma(l *line) bool {
	if p.in != inShot || p.above.spec == nil || p.above.spec.word != "with" || p.tokens[l.end].EOF() {
		return false
	}
	next := &p.tokens[l.end+1]
	if next.EOF() {
		return false
	}
	s := specOf[next.Value]
	return s == nil || s.under != 0 && s.under&headers[l.spec.word] == 0
}

// meansWith reports whether a header is rather a set-up of the shot that it
// stands in, and says so: `lens "75"` under `shot 1`, where the shot goes on
// behind it.
func (p *parser) meansWith(l *line) bool {
	if p.in != inShot || !isSetUp(l.spec) || l.end != l.at+2 || !p.shotGoesOn(l.end+1) {
		return false
	}
	name := p.tokens[l.at+1].Value
	if p.tokens[l.at+1].Type == tokNumber {
		name = `"` + name + `"`
	}
	f := faultAt(&p.tokens[l.at], "wrong-section", "what follows this header belongs to the shot").
		because("Did you mean `with %s %s`?", l.spec.word, shorten(name))
	if next := specOf[p.tokens[l.end+1].Value]; next == nil || !isSetUp(next) { // that would have to be joined to it
		f.offers(writing(onTokens(&p.tokens[l.at], &p.tokens[l.at+1]), "with "+l.spec.word+" "+name).untried())
	}
	p.report(f)
	p.add(l, p.bad(l))
	return true
}

// meansMove reports whether a header is rather a move of the camera, as in `camera pans
// left 10 deg`, and says so.
func (p *parser) meansMove(l *line) bool {
	second := &p.tokens[l.at+1]
	meant := strings.TrimSuffix(strings.TrimSuffix(second.Value, "s"), "e") // pans, pushes
	if l.spec.word != "camera" || l.end < l.at+3 || ways[meant] == nil || p.in&inShots == 0 {
		return false
	}
	p.report(faultAt(&p.tokens[l.at], "unknown-word", "no statement begins with `camera %s`", second.Value).
		because("Did you mean `%s`? Write: %s", meant, Usage(meant)).
		offers(writing(onTokens(&p.tokens[l.at], second), meant).untried()))
	b := p.bad(l)
	b.Keyword, b.Name = meant, nil
	p.add(l, b)
	return true
}

// isSetUp reports whether s is a header that is a clause of `with` too.
func isSetUp(s *spec) bool {
	return s.under == 0 && slices.Contains(specOf["with"].shape().heads, s.word)
}

// shotGoesOn reports whether the lines from token at on belong to a shot and
// nowhere else. It looks past some that could stand elsewhere too.
func (p *parser) shotGoesOn(at int) bool {
	const most = 8 // lines
	for range most {
		if p.tokens[at].EOF() {
			return false
		}
		s := p.identify(at)
		switch {
		case s == nil: // a mistake tells nothing
		case s.under&inShot != 0 && s.under&inFile == 0:
			return true
		case s.under&inShot == 0 && !isSetUp(s):
			return false
		}
		for p.tokens[at].Type != tokLine && !p.tokens[at].EOF() {
			at++
		}
		if p.tokens[at].Type == tokLine {
			at++
		}
	}
	return false
}
