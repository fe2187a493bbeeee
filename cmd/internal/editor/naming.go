// The names around a document: those of the plan that it is, and of all plans that use it.

package editor

import (
	"context"
	"slices"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/lang"
)

// A naming is every mention of a name in some plans. Files have their real paths here, so
// that a kit is one file, whatever its plans call it.
type naming struct {
	s     *snapshot
	graph *graph
	plans []named
	known map[string]bool   // paths of plans
	asked map[string]bool   // real paths of files whose users are among them
	paths map[string]string // how a plan calls a file, by real path
}

// A named is the mentions of one plan.
type named struct {
	path string
	list []interp.Mention
}

// naming returns the names of a document.
func (s *snapshot) naming(ctx context.Context, d *document) (*naming, error) {
	n := &naming{s: s, graph: s.graph(), known: map[string]bool{}, asked: map[string]bool{}, paths: map[string]string{d.real: d.path}}
	if !d.plan {
		return n, nil
	}
	if err := n.add(ctx, d.path); err != nil {
		return nil, err
	}
	return n, n.addUsers(ctx, d.real)
}

// addUsers adds the plans that use a file.
func (n *naming) addUsers(ctx context.Context, real string) error {
	if n.asked[real] {
		return nil
	}
	n.asked[real] = true
	for _, path := range n.graph.users(real) {
		if err := n.add(ctx, path); err != nil {
			return err
		}
	}
	return nil
}

// add adds a plan.
func (n *naming) add(ctx context.Context, path string) error {
	if n.known[path] {
		return nil
	}
	n.known[path] = true
	r, err := n.s.shared.plans.get(ctx, n.s, path)
	if err != nil {
		return err
	}
	p := named{path: path}
	for _, m := range r.result.Names() {
		for _, at := range []*lang.Range{&m.Range, &m.Of} {
			real := n.s.shared.disk.realPath(at.File)
			if n.paths[real] == "" {
				n.paths[real] = at.File
			}
			at.File = real
		}
		p.list = append(p.list, m)
	}
	n.plans = append(n.plans, p)
	return nil
}

// at returns the mentions at a byte of a file: those of the smallest range around it. A
// place right behind a name is still of the name, unless another begins there.
func (n *naming) at(real string, offset int) (list []interp.Mention) {
	long := func(m interp.Mention) int {
		size := 2 * (m.Range.End.Offset - m.Range.Start.Offset)
		if offset == m.Range.End.Offset {
			size++
		}
		return size
	}
	for _, p := range n.plans {
		for _, m := range p.list {
			if m.Range.File != real || offset < m.Range.Start.Offset || offset > m.Range.End.Offset {
				continue
			}
			if len(list) > 0 && long(m) < long(list[0]) {
				list = list[:0]
			}
			if len(list) == 0 || long(m) == long(list[0]) && !slices.Contains(list, m) {
				list = append(list, m)
			}
		}
	}
	return list
}

// family returns all mentions of what some of them mention, in all plans, each place once.
func (n *naming) family(of []interp.Mention) []interp.Mention {
	decls, places := map[lang.Range]bool{}, map[lang.Range]interp.Mention{}
	for _, m := range of {
		decls[m.Of] = true
	}
	for before := -1; before != len(decls); {
		before = len(decls)
		for _, p := range n.plans {
			done := map[lang.Range]bool{}
			for _, m := range p.list {
				_, shared := places[m.Range] // what a kit says may be another's in each plan
				if m.Leads() || done[m.Of] || !shared && !decls[m.Of] {
					continue
				}
				for _, other := range interp.FamilyOf(p.list, m) {
					done[other.Of], decls[other.Of] = true, true
					places[other.Range] = other
				}
			}
		}
	}
	list := make([]interp.Mention, 0, len(places))
	for _, m := range places {
		list = append(list, m)
	}
	sortStable(list, func(a, b interp.Mention) int { return compareRanges(a.Range, b.Range) })
	return list
}

// wholeFamily is family with the plans that use the files in which it is found, until
// there is no other plan that has a mention of it.
func (n *naming) wholeFamily(ctx context.Context, of []interp.Mention) ([]interp.Mention, error) {
	for {
		list, before := n.family(of), len(n.plans)
		for _, m := range list {
			if err := n.addUsers(ctx, m.Range.File); err != nil {
				return nil, err
			}
		}
		if len(n.plans) == before {
			return list, nil
		}
	}
}

// location returns the place of a range.
func (n *naming) location(at lang.Range) (lsp.Location, bool) {
	path := n.paths[at.File]
	d, err := n.s.at(path)
	if err != nil {
		return lsp.Location{}, false
	}
	return lsp.Location{URI: n.s.uri(path), Range: n.s.ranged(d, at.Start.Offset, at.End.Offset)}, true
}

// compareRanges orders ranges by file and place.
func compareRanges(a, b lang.Range) int {
	if a.File != b.File {
		if a.File < b.File {
			return -1
		}
		return 1
	}
	if a.Start.Offset != b.Start.Offset {
		return a.Start.Offset - b.Start.Offset
	}
	return a.End.Offset - b.End.Offset
}
