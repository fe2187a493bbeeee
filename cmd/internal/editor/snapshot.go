// All texts at one moment, and what they come to. This is what features read:
//
//	doc, err := s.document(uri)         a text, open or on disk
//	plan, err := s.plan(ctx, uri)       the plan interpreted: texts, tree, result
//	for _, user := range s.users(uri)   the plans that use a file
//	doc.at(position), doc.ranged(...)   byte offsets and positions

package editor

import (
	"context"
	"maps"
	"path/filepath"
	"slices"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/lang"
)

// A snapshot is all open texts at one moment. It never changes. Texts on disk are as they
// are when they are first read.
type snapshot struct {
	*settings
	shared *shared
	open   map[string]*document // by URI
	reals  map[string]*document // the same, by real path
	edited string               // the URI that was opened or changed last
}

// shared is what all snapshots of a session share. Several goroutines use it.
type shared struct {
	disk      *disk
	plans     *plans
	workspace *workspace
	graphs    graphs
	parsed    *interp.Cache // what the files beside plans were parsed to; nil: they are parsed each time

	// page shows a shot of a plan on the live page, and browse has the client open an
	// address; nil: there is no page.
	page   func(path, shot string) (address string, err error)
	browse func(s *snapshot, address string)
}

// with returns the snapshot after a document was opened or changed.
func (s *snapshot) with(d *document) *snapshot {
	next := *s
	next.open, next.reals = maps.Clone(s.open), maps.Clone(s.reals)
	if old := s.open[d.uri]; old != nil {
		delete(next.reals, old.real)
	}
	next.open[d.uri], next.reals[d.real] = d, d
	next.edited = d.uri
	return &next
}

// without returns the snapshot after a document was closed.
func (s *snapshot) without(uri string) *snapshot {
	next := *s
	next.open, next.reals = maps.Clone(s.open), maps.Clone(s.reals)
	if old := s.open[uri]; old != nil {
		delete(next.open, uri)
		delete(next.reals, old.real)
	}
	return &next
}

// newDocument returns a document that a client opens.
func (s *snapshot) newDocument(p lsp.TextDocumentItem) *document {
	d := &document{uri: p.URI, version: p.Version, text: newText([]byte(p.Text), nil)}
	path, ok := pathOf(p.URI)
	if !ok { // a text without a file lies where it would be saved
		path = filepath.Join(append(slices.Clone(s.roots), ".")[0], filepath.Base(filepath.FromSlash(p.URI)))
	}
	d.path, d.real = path, path
	if ok {
		d.real = s.shared.disk.realPath(path)
	}
	d.plan = isPlan(path) || p.LanguageID == "pull" || p.LanguageID == "pullscore"
	return d
}

// document returns the text of a URI: the client's where it is open, else that on disk.
func (s *snapshot) document(uri string) (*document, error) {
	if d := s.open[uri]; d != nil {
		if d.lost {
			return nil, lsp.Errorf(lsp.RequestFailed, "%v", errLost)
		}
		return d, nil
	}
	path, ok := pathOf(uri)
	if !ok {
		return nil, lsp.Errorf(lsp.InvalidParams, "%.200q is not open and names no file", uri)
	}
	return s.at(path)
}

// at returns the text of a path: the client's where it is open, else that on disk.
func (s *snapshot) at(path string) (*document, error) {
	real := s.shared.disk.realPath(path)
	if d := s.reals[real]; d != nil {
		return s.document(d.uri)
	}
	t := s.shared.disk.read(real)
	if t.err != nil {
		return nil, lsp.Errorf(lsp.RequestFailed, "%v", t.err)
	}
	return &document{text: t, uri: uriOf(path), path: path, real: real, plan: isPlan(path)}, nil
}

// textOf returns the text of a file, by its real path.
func (s *snapshot) textOf(real string) *text {
	if d := s.reals[real]; d != nil {
		return d.text
	}
	return s.shared.disk.read(real)
}

// readFile returns the text of a file by any path, as the readers of plans ask for it.
func (s *snapshot) readFile(path string) ([]byte, error) {
	t := s.textOf(s.shared.disk.realPath(path))
	return t.data, t.err
}

// uri returns the URI of a file: the one that the client opened, if it has.
func (s *snapshot) uri(path string) string {
	if d := s.reals[s.shared.disk.realPath(path)]; d != nil {
		return d.uri
	}
	return uriOf(path)
}

// plan returns a plan as it stands in this snapshot, interpreted.
func (s *snapshot) plan(ctx context.Context, uri string) (*planned, error) {
	d, err := s.document(uri)
	if err != nil {
		return nil, err
	}
	p, err := s.shared.plans.get(ctx, s, d.path)
	if err != nil {
		return nil, err
	}
	return &planned{document: d, reading: p, s: s}, nil
}

// A planned is one plan, interpreted, with its text.
type planned struct {
	*document
	*reading
	s *snapshot
}

// result returns what the plan comes to.
func (p *planned) result() *interp.Result { return p.reading.result }

// location returns the place of a range in any file of the plan.
func (p *planned) location(at lang.Range) lsp.Location {
	return lsp.Location{URI: p.s.uri(at.File), Range: p.reading.ranged(at, p.s.encoding)}
}

// users returns the paths of all plans that use a file, by any way, in their order. The
// file itself is none of them.
func (s *snapshot) users(uri string) []string {
	d, err := s.document(uri)
	if err != nil {
		return nil
	}
	return s.graph().users(d.real)
}

// offset returns the byte at a position, or the nearest before it.
func (s *snapshot) offset(d *document, at lsp.Position) int {
	offset, _ := d.index().offset(at, s.encoding)
	return offset
}

// ranged returns the places of two bytes of a document.
func (s *snapshot) ranged(d *document, start, end int) lsp.Range {
	return d.index().ranged(start, end, s.encoding)
}
