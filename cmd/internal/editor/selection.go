// What to select around a place: its word, its clause, its statement, its section, all.

package editor

import (
	"context"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// selection answers with the ranges around each place, from the narrowest.
func selection(_ context.Context, s *snapshot, p *lsp.SelectionRangeParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	list := make([]lsp.SelectionRange, 0, len(p.Positions))
	for _, at := range p.Positions {
		list = append(list, *s.around(d, s.offset(d, at)))
	}
	return list, nil
}

// around returns the ranges around a byte of a document.
func (s *snapshot) around(d *document, offset int) *lsp.SelectionRange {
	spans := []span{{0, len(d.data)}}
	within := func(at span) {
		if last := spans[len(spans)-1]; at.start <= offset && offset <= at.end && last.start <= at.start && at.end <= last.end && at != last {
			spans = append(spans, at)
		}
	}
	if d.plan {
		tree := d.tree()
		for _, section := range tree.Sections {
			within(spanOf(rangeOf(section)))
		}
		if one := statementAt(tree, offset); one != nil {
			at := spanOf(one.Range())
			within(at)
			tokens := tokensIn(d.data, at)
			within(clauseAt(d.data, tokens, offset))
			for _, t := range tokens {
				within(t)
			}
		}
	}
	var outer *lsp.SelectionRange
	for _, at := range spans {
		outer = &lsp.SelectionRange{Range: s.ranged(d, at.start, at.end), Parent: outer}
	}
	return outer
}

// A span is the bytes of a document from start to end.
type span struct{ start, end int }

func spanOf(at lang.Range) span { return span{at.Start.Offset, at.End.Offset} }

// statementAt returns the statement at a byte of a file; nil between statements.
func statementAt(tree *lang.File, offset int) lang.Statement {
	for one := range everything(tree) {
		if one.Range().Start.Offset <= offset && offset <= one.Range().End.Offset {
			return one
		}
	}
	return nil
}

// tokensIn returns the tokens of a statement.
func tokensIn(data []byte, at span) (list []span) {
	for _, t := range lang.Tokens(data[at.start:at.end]) {
		if t.Kind != lang.TokenComment {
			list = append(list, span{at.start + t.Start, at.start + t.End})
		}
	}
	return list
}

// clauseAt returns what stands between two commas of a statement.
func clauseAt(data []byte, tokens []span, offset int) (clause span) {
	clause = span{-1, -1}
	for _, t := range tokens {
		if string(data[t.start:t.end]) == "," {
			if t.start >= offset {
				return clause
			}
			clause = span{-1, -1}
			continue
		}
		if clause.start < 0 {
			clause.start = t.start
		}
		clause.end = t.end
	}
	return clause
}
