// The parts of a plan that can be folded away.

package editor

import (
	"bytes"
	"context"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// folding answers with the sections of a plan, runs of comments, and statements over
// several lines.
func folding(_ context.Context, s *snapshot, p *lsp.DocumentParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	list := []lsp.FoldingRange{}
	if !d.plan {
		return list, nil
	}
	fold := func(from, to lang.Pos, kind string) {
		if to.Line > from.Line {
			list = append(list, lsp.FoldingRange{StartLine: d.lineOf(from), EndLine: d.lineOf(to), Kind: kind})
		}
	}
	tree := d.tree()
	for _, one := range tree.Body {
		fold(one.Range().Start, one.Range().End, "")
	}
	for _, section := range tree.Sections {
		whole := rangeOf(section)
		fold(whole.Start, whole.End, lsp.FoldRegion)
		for _, one := range section.Body {
			fold(one.Range().Start, one.Range().End, "")
		}
	}
	list = append(list, foldedComments(d.index())...)
	sortStable(list, func(a, b lsp.FoldingRange) int { return int(a.StartLine) - int(b.StartLine) })
	return list, nil
}

// lineOf returns the line of a place, from 0.
func (t *text) lineOf(at lang.Pos) uint32 { return t.index().position(at.Offset, utf8s).Line }

// rangeOf returns the place of a section, from its header to its last statement.
func rangeOf(section *lang.Section) lang.Range {
	whole := section.Head.Range()
	if n := len(section.Body); n > 0 {
		whole.End = section.Body[n-1].Range().End
	}
	return whole
}

// foldedComments returns runs of lines that hold nothing but a comment.
func foldedComments(x *lineIndex) (list []lsp.FoldingRange) {
	from := -1
	for n := 0; n <= len(x.starts); n++ {
		if n < len(x.starts) && bytes.HasPrefix(bytes.TrimLeft(x.line(n), " \t"), []byte("#")) {
			if from < 0 {
				from = n
			}
			continue
		}
		if from >= 0 && n-1 > from {
			list = append(list, lsp.FoldingRange{StartLine: uint32(from), EndLine: uint32(n - 1), Kind: lsp.FoldComment})
		}
		from = -1
	}
	return list
}
