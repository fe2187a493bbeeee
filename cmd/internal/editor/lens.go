// What stands above a shot, and above what a kit declares.

package editor

import (
	"context"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/mention"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// codeLens answers with a line above each shot, how long it is and what is told of it,
// where the client can with one that opens its score, and one above each camera, lens and hand that plans of the workspace use.
func codeLens(ctx context.Context, s *snapshot, p *lsp.DocumentParams) (any, error) {
	list := []lsp.CodeLens{}
	d, err := s.document(p.TextDocument.URI)
	if err != nil || !d.plan {
		return list, err
	}
	read, err := s.plan(ctx, d.uri)
	if err != nil {
		return nil, err
	}
	add := func(section *lang.Section, command lsp.Command) {
		at := section.Head.Range()
		list = append(list, lsp.CodeLens{Range: s.ranged(d, at.Start.Offset, at.End.Offset), Command: &command})
	}
	opens := s.shared.page != nil && runs(s.client, pageCommand)
	var used map[int]int
	for _, section := range d.tree().Sections {
		switch head := section.Head.(type) {
		case *lang.Shot:
			for _, shot := range read.headed(d, head.Range()) {
				add(section, lsp.Command{Title: read.shotLens(d, section, shot)})
				if opens {
					add(section, lsp.Command{Title: "open the score", Command: pageCommand, Arguments: []any{d.uri, shot.ID}})
				}
			}
		case *lang.Camera, *lang.Lens, *lang.Puller:
			if used == nil {
				if used, err = s.usedKit(ctx, d); err != nil {
					return nil, err
				}
			}
			if n := used[head.Range().Start.Offset]; n > 0 {
				add(section, lsp.Command{Title: "in " + units.Count(n, "plan")})
			}
		}
	}
	return list, nil
}

// shotLens says how long a shot is and what is told of it.
func (p *planned) shotLens(d *document, section *lang.Section, shot *plan.Shot) string {
	parts := []string{figures.Time(float64(shot.Duration)), units.Count(len(shot.Pulls), "pull")}
	count := map[lang.Severity]int{}
	within := spanOf(rangeOf(section))
	for _, f := range p.findings[d.real] {
		if at := f.Range.Start.Offset; within.start <= at && at < within.end {
			count[f.Severity]++
		}
	}
	for _, severity := range []lang.Severity{lang.Error, lang.Warning, lang.Note} {
		if n := count[severity]; n > 0 {
			parts = append(parts, units.Count(n, severity.String()))
		}
	}
	return strings.Join(parts, ", ")
}

// usedKit returns in how many plans each header of a kit is used, by where it begins.
func (s *snapshot) usedKit(ctx context.Context, d *document) (map[int]int, error) {
	used := map[int]int{}
	for _, path := range append(s.users(d.uri), d.path) {
		p, err := s.plan(ctx, s.uri(path))
		if err != nil {
			return nil, err
		}
		seen := map[int]bool{}
		for _, m := range p.result().Names() {
			switch m.Kind {
			case mention.Camera, mention.Lens, mention.Puller:
			default:
				continue
			}
			if m.Declares || p.reals[m.Of.File] != d.real {
				continue
			}
			if one := statementAt(d.tree(), m.Of.Start.Offset); one != nil && !seen[one.Range().Start.Offset] {
				seen[one.Range().Start.Offset] = true
				used[one.Range().Start.Offset]++
			}
		}
	}
	return used, nil
}
