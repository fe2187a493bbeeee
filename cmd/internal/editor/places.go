// Where a name is declared, and where else it stands.

package editor

import (
	"context"
	"slices"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/lang"
)

// named returns the names around a document and those at a position.
func (s *snapshot) named(ctx context.Context, uri string, at lsp.Position) (n *naming, d *document, list []interp.Mention, err error) {
	if d, err = s.document(uri); err != nil {
		return nil, nil, nil, err
	}
	if n, err = s.naming(ctx, d); err != nil {
		return nil, nil, nil, err
	}
	return n, d, n.at(d.real, s.offset(d, at)), nil
}

// definition answers with the places where a name is declared. A word that something
// hangs on leads to its line.
func definition(ctx context.Context, s *snapshot, p *lsp.PositionParams) (any, error) {
	n, _, list, err := s.named(ctx, p.TextDocument.URI, p.Position)
	if err != nil {
		return nil, err
	}
	var places []lang.Range
	for _, m := range list {
		if !slices.Contains(places, m.Of) {
			places = append(places, m.Of)
		}
	}
	return n.locations(places), nil
}

func (n *naming) locations(places []lang.Range) []lsp.Location {
	out := []lsp.Location{}
	for _, at := range places {
		if l, ok := n.location(at); ok {
			out = append(out, l)
		}
	}
	return out
}

// references answers with all places of a name, or of what hangs on a word.
func references(ctx context.Context, s *snapshot, p *lsp.ReferenceParams) (any, error) {
	n, d, list, err := s.named(ctx, p.TextDocument.URI, p.Position)
	if err != nil {
		return nil, err
	}
	if words := n.words(d.real, s.offset(d, p.Position), list); len(words) > 0 {
		return n.locations(places(words, p.Context.IncludeDeclaration)), nil
	}
	if list, err = n.wholeFamily(ctx, list); err != nil {
		return nil, err
	}
	return n.locations(places(list, p.Context.IncludeDeclaration)), nil
}

// places returns where mentions stand, each place once.
func places(list []interp.Mention, declarations bool) (out []lang.Range) {
	for _, m := range list {
		if (declarations || !m.Declares) && !slices.Contains(out, m.Range) {
			out = append(out, m.Range)
		}
	}
	return out
}

// words returns the texts that lead to the words at a place, which may be one of them, and
// those words as what they lead to.
func (n *naming) words(real string, offset int, at []interp.Mention) (list []interp.Mention) {
	within := func(r lang.Range) bool { return r.File == real && r.Start.Offset <= offset && offset <= r.End.Offset }
	here := func(m interp.Mention) bool {
		return len(at) == 0 && within(m.Of) || slices.ContainsFunc(at, func(o interp.Mention) bool { return o.Leads() && o.Of == m.Of })
	}
	of := map[lang.Range]bool{}
	for _, p := range n.plans {
		for _, m := range p.list {
			if !m.Leads() || !here(m) {
				continue
			}
			if !of[m.Of] {
				of[m.Of] = true
				list = append(list, interp.Mention{Name: m.Name, Kind: m.Kind, Range: m.Of, Of: m.Of, Declares: true})
			}
			list = append(list, m)
		}
	}
	return list
}

// highlights answers with the places of a name in its document.
func highlights(ctx context.Context, s *snapshot, p *lsp.PositionParams) (any, error) {
	n, d, list, err := s.named(ctx, p.TextDocument.URI, p.Position)
	if err != nil {
		return nil, err
	}
	found := n.words(d.real, s.offset(d, p.Position), list)
	if len(found) == 0 {
		found = n.family(list)
	}
	out, seen := []lsp.DocumentHighlight{}, map[lang.Range]bool{}
	for _, m := range found {
		if m.Range.File != d.real || seen[m.Range] {
			continue
		}
		seen[m.Range] = true
		h := lsp.DocumentHighlight{Range: s.ranged(d, m.Range.Start.Offset, m.Range.End.Offset), Kind: lsp.HighlightRead}
		if m.Declares {
			h.Kind = lsp.HighlightWrite
		}
		out = append(out, h)
	}
	return out, nil
}
