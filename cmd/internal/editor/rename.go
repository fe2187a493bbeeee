// Another name for something, wherever it stands.

package editor

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/interp/mention"
	"pullscore/lang"
)

// prepareRename answers with the place of a name without its quotes; null for what has no
// name that can change.
func prepareRename(ctx context.Context, s *snapshot, p *lsp.PositionParams) (any, error) {
	_, d, list, err := s.named(ctx, p.TextDocument.URI, p.Position)
	if err != nil || len(list) == 0 || !changes(list[0]) {
		return (*lsp.PrepareRenameResult)(nil), err
	}
	at := list[0].Range
	start, end := at.Start.Offset, at.End.Offset
	if list[0].Form != mention.Braces {
		for _, quote := range []string{`"`, "“"} {
			if strings.HasPrefix(string(d.data[start:end]), quote) {
				start, end = start+len(quote), end-len(quote)
				break
			}
		}
	}
	return lsp.PrepareRenameResult{Range: s.ranged(d, start, end), Placeholder: list[0].Name}, nil
}

// changes reports whether a mention is of a name that can change. Cuts and logs name
// shots, and what is spoken is no name.
func changes(m interp.Mention) bool { return m.Kind != mention.Word && m.Kind != mention.Shot }

// rename answers with the edits that give something another name, in all plans.
func rename(ctx context.Context, s *snapshot, p *lsp.RenameParams) (any, error) {
	n, _, list, err := s.named(ctx, p.TextDocument.URI, p.Position)
	if err != nil {
		return nil, err
	}
	if len(list) == 0 || !changes(list[0]) {
		return nil, lsp.Errorf(lsp.RequestFailed, "there is no name here that can change")
	}
	family, err := n.wholeFamily(ctx, list)
	if err != nil {
		return nil, err
	}
	name, err := newName(p.NewName)
	if err != nil {
		return nil, err
	}
	if err := n.free(name, family); err != nil {
		return nil, err
	}
	edits, err := n.renames(name, family)
	if err != nil {
		return nil, err
	}
	if err := n.tried(ctx, edits); err != nil {
		return nil, err
	}
	return s.workspaceEdit(n.paths, edits), nil
}

// newName returns the name that somebody asks for, which may have quotes.
func newName(asked string) (string, error) {
	name, quoted := strings.TrimSpace(asked), false
	if len(name) > 2 && name[0] == '"' && name[len(name)-1] == '"' {
		name, quoted = name[1:len(name)-1], true
	}
	switch {
	case name == "":
		return "", lsp.Errorf(lsp.InvalidParams, "a name has at least one letter")
	case strings.ContainsFunc(name, unicode.IsControl):
		return "", lsp.Errorf(lsp.InvalidParams, "a name is on one line")
	case !quoted && slices.Contains(lang.Keywords(), name):
		return "", lsp.Errorf(lsp.RequestFailed, "%s is a word of the language", name)
	}
	return name, nil
}

// free returns why a name cannot be that of a family: something else has it, or one that
// differs from it only in case. A cue or a parameter of another shot or move may have it.
func (n *naming) free(name string, family []interp.Mention) error {
	own := map[lang.Range]bool{}
	for _, m := range family {
		own[m.Of] = true
	}
	if m := family[0]; m.Name == "beat" && m.Kind == mention.Let {
		return lsp.Errorf(lsp.RequestFailed, "beat is known by its name: it sets the beat of clicks")
	}
	for _, p := range n.plans {
		for _, m := range p.list {
			if own[m.Of] || !m.Declares || !changes(m) || !mustDiffer(m.Kind, family[0].Kind) || !strings.EqualFold(m.Name, name) {
				continue
			}
			if m.Name == name {
				return lsp.Errorf(lsp.RequestFailed, "%s is already the name of a %s", name, m.Kind)
			}
			return lsp.Errorf(lsp.RequestFailed, "%s and %s differ only in case", m.Name, name)
		}
	}
	return nil
}

// mustDiffer reports whether names of two kinds have to differ wherever they stand.
func mustDiffer(a, b mention.Kind) bool {
	kit := func(k mention.Kind) bool { return k == mention.Camera || k == mention.Lens || k == mention.Puller }
	local := func(k mention.Kind) bool { return k == mention.Cue || k == mention.Mark || k == mention.Parameter }
	if kit(a) || kit(b) {
		return a == b
	}
	return !local(a) || !local(b)
}

// renames returns the edits of every file, by real path, in the order of their places.
func (n *naming) renames(name string, family []interp.Mention) (map[string][]lang.Edit, error) {
	edits := map[string][]lang.Edit{}
	for _, m := range family {
		text, ok := m.Write(name)
		if !ok {
			at := fmt.Sprintf("line %d of %s", m.Range.Start.Line, n.paths[m.Range.File])
			return nil, lsp.Errorf(lsp.RequestFailed, "on %s a name with blanks or other signs cannot stand", at)
		}
		edits[m.Range.File] = append(edits[m.Range.File], lang.Edit{Range: m.Range, Text: text})
	}
	return edits, nil
}

// tried returns what is wrong with edits: the first error that one of the plans has only
// with them.
func (n *naming) tried(ctx context.Context, edits map[string][]lang.Edit) error {
	s := n.s
	for real, list := range edits {
		d, err := s.at(n.paths[real])
		if err != nil {
			return err
		}
		changed, ok := d.with(list)
		if !ok {
			return lsp.Errorf(lsp.RequestFailed, "the places of the name in %s overlap", d.path)
		}
		s = s.with(changed)
	}
	for _, p := range n.plans {
		if err := ctx.Err(); err != nil {
			return err
		}
		before, err := n.s.shared.plans.get(ctx, n.s, p.path)
		if err != nil {
			return err
		}
		known := map[string]int{}
		for _, d := range before.result.Findings {
			known[d.Code]++
		}
		for _, d := range s.read(p.path).result.Findings {
			if known[d.Code]--; d.Severity == lang.Error && known[d.Code] < 0 {
				return lsp.Errorf(lsp.RequestFailed, "with that name %s would have a mistake on line %d: %s", p.path, d.Range.Start.Line, d.Message)
			}
		}
	}
	return nil
}

// workspaceEdit returns edits as the client knows them; paths has the path of each file.
func (s *snapshot) workspaceEdit(paths map[string]string, edits map[string][]lang.Edit) lsp.WorkspaceEdit {
	out := lsp.WorkspaceEdit{}
	for _, real := range sortedKeys(edits) {
		d, err := s.at(paths[real])
		if err != nil {
			continue // it was read a moment ago
		}
		var list []lsp.TextEdit
		for _, e := range edits[real] {
			list = append(list, lsp.TextEdit{Range: s.ranged(d, e.Range.Start.Offset, e.Range.End.Offset), NewText: e.Text})
		}
		if !s.client.Workspace.WorkspaceEdit.DocumentChanges {
			if out.Changes == nil {
				out.Changes = map[string][]lsp.TextEdit{}
			}
			out.Changes[d.uri] = list
			continue
		}
		named := lsp.VersionedTextDocument{URI: d.uri}
		if s.open[d.uri] == d {
			named.Version = &d.version
		}
		out.DocumentChanges = append(out.DocumentChanges, lsp.TextDocumentEdit{TextDocument: named, Edits: list})
	}
	return out
}

// sortedKeys returns the keys of a map in their order.
func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
