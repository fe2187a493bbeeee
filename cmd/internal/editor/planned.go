// One plan as it was interpreted, and of which texts. What a plan comes to holds as long
// as all these texts are the same, in whichever snapshot.

package editor

import (
	"context"
	"maps"
	"sync"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/lang"
)

// A reading is a plan interpreted. It never changes.
type reading struct {
	path   string
	result *interp.Result    // nil of one that is slim
	texts  map[string]*text  // what it was made of, by real path
	reals  map[string]string // real paths, by the paths in the result
	others *others           // the decoded texts of other people's files

	// findings holds what is wrong in every file, by its real path.
	findings map[string][]lang.Diagnostic
}

// others indexes texts that findings quote, at first use.
type others struct {
	mu    sync.Mutex
	index map[string]*lineIndex
}

// read interprets a plan.
func (s *snapshot) read(path string) *reading {
	r := &reading{path: path, texts: map[string]*text{}, reals: map[string]string{}, others: &others{index: map[string]*lineIndex{}}}
	note := func(path string) *text {
		real := s.shared.disk.realPath(path)
		r.reals[path] = real
		if r.texts[real] == nil {
			r.texts[real] = s.textOf(real)
		}
		return r.texts[real]
	}
	root := note(path)
	r.result = interp.Interpret(path, root.data, interp.Options{Cache: s.shared.parsed, ReadFile: func(path string) ([]byte, error) {
		t := note(path)
		return t.data, t.err
	}})
	for _, f := range r.result.Files {
		note(f)
	}
	r.findings = map[string][]lang.Diagnostic{}
	for _, d := range r.result.Findings {
		if d.Range.File == "" {
			d.Range.File = path
		}
		real := s.shared.disk.realPath(d.Range.File)
		r.findings[real] = append(r.findings[real], d)
	}
	return r
}

// holds reports whether a reading is what the plan comes to in a snapshot.
func (r *reading) holds(s *snapshot) bool {
	for real, t := range r.texts {
		if s.textOf(real) != t {
			return false
		}
	}
	for path, real := range r.reals {
		if s.shared.disk.realPath(path) != real {
			return false
		}
	}
	return true
}

// slim returns the reading with its findings alone: the rest is large.
func (r *reading) slim() *reading {
	if r.result == nil {
		return r
	}
	for _, diags := range r.findings { // others need what is dropped
		for _, d := range diags {
			r.lines(d.Range.File)
			for _, also := range d.Related {
				r.lines(also.Range.File)
			}
		}
	}
	slim := *r
	slim.result = nil
	return &slim
}

// lines returns the index of a file that a finding speaks of.
func (r *reading) lines(file string) *lineIndex {
	if t := r.texts[r.reals[file]]; t != nil && isPlan(file) || file == r.path && t != nil {
		return t.index()
	}
	r.others.mu.Lock()
	defer r.others.mu.Unlock()
	x := r.others.index[file]
	if x == nil { // decoded, so that offsets are not those of the bytes on disk
		x = newLineIndex(r.result.Sources[file])
		r.others.index[file] = x
	}
	return x
}

// ranged returns a range of any file of the plan as positions.
func (r *reading) ranged(at lang.Range, enc encoding) lsp.Range {
	return r.lines(at.File).ranged(at.Start.Offset, at.End.Offset, enc)
}

// plans keeps the last reading of every plan. Several goroutines use it.
type plans struct {
	mu   sync.Mutex
	last map[string]*flight
}

// A flight is a reading that may still be on its way.
type flight struct {
	done    chan struct{}
	reading *reading // nil if it failed; set before done is closed
}

// get returns the plan as it stands in a snapshot. It waits for one who interprets it
// already.
func (p *plans) get(ctx context.Context, s *snapshot, path string) (*reading, error) {
	for {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		p.mu.Lock()
		f := p.last[path]
		if f == nil {
			f = &flight{done: make(chan struct{})}
			p.last[path] = f
			p.mu.Unlock()
			return p.fly(f, s, path)
		}
		p.mu.Unlock()
		select {
		case <-f.done:
		case <-ctx.Done():
			return nil, ctx.Err()
		}
		if f.reading != nil && f.reading.holds(s) {
			return f.reading, nil
		}
		p.drop(path, f)
	}
}

// fly interprets a plan for all who wait for it.
func (p *plans) fly(f *flight, s *snapshot, path string) (r *reading, err error) {
	defer func() {
		if f.reading == nil {
			p.drop(path, f)
		}
		close(f.done)
	}()
	f.reading = s.read(path)
	return f.reading, nil
}

// keep forgets all plans but some.
func (p *plans) keep(wanted func(path string) bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	maps.DeleteFunc(p.last, func(path string, _ *flight) bool { return !wanted(path) })
}

// drop forgets a reading.
func (p *plans) drop(path string, f *flight) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.last[path] == f {
		delete(p.last, path)
	}
}
