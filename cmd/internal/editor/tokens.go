// What every word of a plan is, for an editor that colours by meaning.

package editor

import (
	"context"
	"slices"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/interp/mention"
	"pullscore/lang"
)

// tokenTypes are the types of tokens in the order of their numbers. All are of the
// protocol.
var tokenTypes = []string{"keyword", "class", "variable", "property", "parameter", "event", "function", "string", "number", "comment", "operator"}

// The numbers of tokenTypes.
const (
	typeKeyword = iota
	typeClass
	typeVariable
	typeProperty
	typeParameter
	typeEvent
	typeFunction
	typeString
	typeNumber
	typeComment
	typeOperator
)

// tokenModifiers are the modifiers in the order of their bits.
var tokenModifiers = []string{"declaration", "readonly"}

// The bits of tokenModifiers. What a kit declares is readonly in a plan.
const (
	bitDeclaration = 1 << iota
	bitReadonly
)

func offerTokens(_ *snapshot, c *lsp.ServerCapabilities) {
	c.SemanticTokensProvider = &lsp.SemanticTokensOptions{
		Legend: lsp.SemanticTokensLegend{TokenTypes: tokenTypes, TokenModifiers: tokenModifiers}, Full: true, Range: true,
	}
}

// semanticTokens answers with the tokens of a document.
func semanticTokens(ctx context.Context, s *snapshot, p *lsp.DocumentParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	return s.tokens(ctx, d, span{0, len(d.data)})
}

// semanticTokensOf answers with the tokens of part of a document.
func semanticTokensOf(ctx context.Context, s *snapshot, p *lsp.RangeParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	return s.tokens(ctx, d, span{s.offset(d, p.Range.Start), s.offset(d, p.Range.End)})
}

// A meaning is what a token is, and its modifiers.
type meaning struct{ kind, bits uint32 }

// tokens returns the tokens of a span as the protocol writes them: of each how many lines
// and characters it is behind the one before, its length, type and modifiers.
func (s *snapshot) tokens(ctx context.Context, d *document, within span) (any, error) {
	out := lsp.SemanticTokens{Data: []uint32{}}
	if !d.plan {
		return out, nil
	}
	p, err := s.plan(ctx, d.uri)
	if err != nil {
		return nil, err
	}
	names := p.meanings(d)
	heads := firstTokens(d.tree())
	var before lsp.Position
	for _, t := range lang.Tokens(d.data) {
		if t.End <= within.start || t.Start >= within.end {
			continue
		}
		m, ok := names[t.Start]
		if !ok {
			m, ok = meaningOf(t, heads[t.Start], d.data)
		}
		if !ok {
			continue
		}
		at := s.ranged(d, t.Start, t.End)
		line, char := at.Start.Line-before.Line, at.Start.Character
		if line == 0 {
			char -= before.Character
		}
		out.Data = append(out.Data, line, char, at.End.Character-at.Start.Character, m.kind, m.bits)
		before = at.Start
	}
	return out, nil
}

// meaningOf returns what a token is that is no name; ok is false for signs that mean nothing
// by themselves.
func meaningOf(t lang.Token, first bool, data []byte) (m meaning, ok bool) {
	switch t.Kind {
	case lang.TokenComment:
		return meaning{kind: typeComment}, true
	case lang.TokenText:
		return meaning{kind: typeString}, true
	case lang.TokenNumber:
		return meaning{kind: typeNumber}, true
	case lang.TokenKeyword:
		if first {
			return meaning{kind: typeKeyword}, true
		}
		return meaning{kind: typeProperty}, true
	case lang.TokenName:
		return meaning{kind: typeVariable}, true
	case lang.TokenSign:
		return meaning{kind: typeOperator}, slices.Contains([]string{"=", "+", "-", "−", "*", "/"}, string(data[t.Start:t.End]))
	}
	return meaning{}, false
}

// firstTokens returns where statements begin.
func firstTokens(file *lang.File) map[int]bool {
	at := map[int]bool{}
	for one := range everything(file) {
		at[one.Range().Start.Offset] = true
	}
	return at
}

// meanings returns what the names of a document are, by where they begin.
func (p *planned) meanings(d *document) map[int]meaning {
	list := map[int]meaning{}
	for _, m := range p.result().Names() {
		if p.reals[m.Range.File] != d.real || m.Form == mention.Braces {
			continue
		}
		if kind, ok := typeOfName(m); ok {
			is := meaning{kind: kind}
			if m.Declares {
				is.bits |= bitDeclaration
			}
			if p.reals[m.Of.File] != d.real {
				is.bits |= bitReadonly
			}
			list[m.Range.Start.Offset] = is
		}
	}
	return list
}

func typeOfName(m interp.Mention) (kind uint32, ok bool) {
	switch m.Kind {
	case mention.Subject, mention.Voice, mention.Let, mention.Group, mention.Mark:
		return typeVariable, true
	case mention.Camera, mention.Lens, mention.Puller, mention.Shot:
		return typeClass, true
	case mention.Cue:
		return typeEvent, true
	case mention.Move:
		return typeFunction, true
	case mention.Parameter:
		return typeParameter, true
	}
	return 0, false
}
