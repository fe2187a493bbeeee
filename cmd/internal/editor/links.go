// The files that a plan names, as links.

package editor

import (
	"context"
	"iter"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// links answers with a link for each file that a plan names and that is there.
func links(_ context.Context, s *snapshot, p *lsp.DocumentParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	list := []lsp.DocumentLink{}
	if !d.plan {
		return list, nil
	}
	for _, named := range filesNamed(d.tree()) {
		path := beside(d.path, named.Value)
		if t := s.textOf(s.shared.disk.realPath(path)); t.err != nil {
			continue
		}
		at := named.Range()
		list = append(list, lsp.DocumentLink{Range: s.ranged(d, at.Start.Offset, at.End.Offset), Target: s.uri(path)})
	}
	return list, nil
}

// filesNamed returns the names of files in a plan, as it writes them.
func filesNamed(file *lang.File) (list []*lang.Text) {
	add := func(said *lang.Text) {
		if said != nil && said.Value != "" {
			list = append(list, said)
		}
	}
	for _, one := range statements(file) {
		switch one := one.(type) {
		case *lang.Use:
			add(one.File)
		case *lang.CutFile:
			add(one.File)
		case *lang.Script:
			add(one.File)
		case *lang.Clips:
			add(one.File)
		case *lang.Takes:
			add(one.File)
		}
	}
	return list
}

// statements returns the statements of a file in their order, without headers.
func statements(file *lang.File) []lang.Statement {
	list := append([]lang.Statement{}, file.Body...)
	for _, section := range file.Sections {
		list = append(list, section.Body...)
	}
	return list
}

// everything yields the statements of a file in their order, headers included.
func everything(file *lang.File) iter.Seq[lang.Statement] {
	return func(yield func(lang.Statement) bool) {
		for _, one := range file.Body {
			if !yield(one) {
				return
			}
		}
		for _, section := range file.Sections {
			if !yield(section.Head) {
				return
			}
			for _, one := range section.Body {
				if !yield(one) {
					return
				}
			}
		}
	}
}
