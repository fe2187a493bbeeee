// How the statement is written that somebody writes.

package editor

import (
	"context"
	"slices"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/mention"
	"pullscore/lang"
)

// signatureHelp answers with the usage line of the statement at a place, and with the
// clause in it that the place is in; of a call, with the parameters of the move.
func signatureHelp(ctx context.Context, s *snapshot, p *lsp.PositionParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	if !d.plan {
		return nil, nil
	}
	w := s.writer(ctx, d, s.offset(d, p.Position))
	if w.at.Statement == "(" {
		return w.callHelp(), nil
	}
	var list []lsp.SignatureInformation
	active, first := 0, uint32(0)
	for i, usage := range lang.Usages(w.at.Statement) {
		parts, at := partsOf(usage, ", "), uint32(0)
		if n := slices.IndexFunc(parts, func(part [2]uint32) bool { return w.isClause(usage[part[0]:part[1]]) }); n > 0 {
			active, at = i, uint32(n)
		}
		if i == active {
			first = at
		}
		list = append(list, signature(usage, parts))
	}
	if len(list) == 0 {
		return nil, nil
	}
	return lsp.SignatureHelp{Signatures: list, ActiveSignature: uint32(active), ActiveParameter: &first}, nil
}

// isClause reports whether part of a usage line is the clause that the place is in.
func (w *writer) isClause(part string) bool {
	return w.at.Clause != "" && slices.ContainsFunc(strings.Split(part, " | "), func(way string) bool {
		return strings.Fields(way + " _")[0] == w.at.Clause
	})
}

// signature returns a usage line with its parts.
func signature(label string, parts [][2]uint32) lsp.SignatureInformation {
	info := lsp.SignatureInformation{Label: label}
	for _, part := range parts {
		info.Parameters = append(info.Parameters, lsp.ParameterInformation{Label: inUnits(label, part)})
	}
	return info
}

// partsOf returns where the parts of a text lie that a separator parts, in bytes.
func partsOf(text, separator string) (parts [][2]uint32) {
	at := 0
	for _, part := range strings.Split(text, separator) {
		parts = append(parts, [2]uint32{uint32(at), uint32(at + len(part))})
		at += len(part) + len(separator)
	}
	return parts
}

// inUnits turns bytes of a label into UTF-16 code units.
func inUnits(label string, part [2]uint32) [2]uint32 {
	return [2]uint32{uint32(width([]byte(label[:part[0]]), utf16)), uint32(width([]byte(label[:part[1]]), utf16))}
}

// callHelp returns the parameters of the move that is called at the place; nil if the plan
// has no such move.
func (w *writer) callHelp() any {
	line := w.doc.data[w.start:w.offset]
	name, args, ok := strings.Cut(string(line), "(")
	if !ok {
		return nil
	}
	for _, m := range w.names(mention.Move) {
		if m.Name != strings.Trim(strings.TrimSpace(name), `"“”`) {
			continue
		}
		label := m.Name + w.statementOf(m)
		open := strings.Index(label, "(") + 1
		parts := partsOf(strings.TrimSuffix(label[open:], ")"), ", ")
		for i := range parts {
			parts[i][0] += uint32(open)
			parts[i][1] += uint32(open)
		}
		active := uint32(0)
		for _, t := range lang.Tokens([]byte(args)) {
			if t.Kind == lang.TokenSign && args[t.Start:t.End] == "," {
				active++
			}
		}
		return lsp.SignatureHelp{Signatures: []lsp.SignatureInformation{signature(label, parts)}, ActiveParameter: &active}
	}
	return nil
}
