// What is left of a statement whose clauses cannot all be read.

package lang

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// partial reads the line once more without the clauses that have mistakes, and
// returns the words of those. It returns nothing where a mistake stands before
// the clauses, and no statement where none is left.
func (p *parser) partial(l *line, end int, mistakes []*mistake) (Statement, []string) {
	faulty := make([]bool, end-l.at)
	var lost []string
	for _, m := range mistakes {
		switch {
		case m.clause >= 0:
			p.markClause(l, end, m, faulty)
		case m.word == "": // a mistake before the clauses
			return nil, nil
		}
		if !slices.Contains(lost, m.word) {
			lost = append(lost, m.word)
		}
	}
	var kept []lexer.Token
	for i := l.at; i < end; i++ {
		if !faulty[i-l.at] {
			kept = append(kept, p.tokens[i])
		}
	}
	if len(kept) < 2 {
		return nil, lost
	}
	lex, _ := lexer.Upgrade(&tokenList{kept}) // it returns no errors
	rest := parser{file: p.file, lex: lex, tokens: lex.Range(0, lexer.RawCursor(len(kept)+1))}
	s, m := rest.parse(l.spec, lex.MakeCheckpoint(), 0, len(kept))
	if m != nil {
		return nil, lost
	}
	*s.node() = p.span(l.at, end)
	p.reportAll(finish(s, l.spec, kept))
	return s, lost
}

// markClause marks the tokens of a clause as faulty, from its word up to the next
// that begins one, or to a comma; and the comma before it.
func (p *parser) markClause(l *line, end int, m *mistake, faulty []bool) {
	shape := l.spec.shape()
	if before := m.clause - 1; before >= l.at && p.tokens[before].Value == "," {
		faulty[before-l.at] = true
	}
	for i := m.clause; i < end; i++ {
		t := &p.tokens[i]
		begins := t.Type == tokWord && slices.Contains(shape.heads, t.Value) && !shape.goesOn(m.word, t.Value, i-m.clause) &&
			!shape.midClause(func(i int) *lexer.Token { return &p.tokens[i] }, l.at, i)
		if i > m.clause && (begins || t.Value == ",") {
			return
		}
		faulty[i-l.at] = true
	}
}

// goesOn reports whether a head at the given distance behind the word of a clause
// belongs to that clause, as the `on` of `landing on` does.
func (s *shape) goesOn(word, head string, distance int) bool {
	if distance != 1 || !slices.Contains(s.heads, word) {
		return false
	}
	clause := s.begunBy(word)[0]
	return clause.kind == formSequence && slices.ContainsFunc(clause.parts[1].leaves(), func(leaf *form) bool { return leaf.text == head })
}
