// The findings of many plans, gathered by the file that they are in. A kit's findings come
// from all plans that use it, and each is told once.

package editor

import (
	"cmp"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// A said is what makes two findings of different plans one.
type said struct {
	start, end    int
	code, message string
}

// A found is a finding at its place in the text of a snapshot.
type found struct {
	lang.Diagnostic
	by         *reading
	start, end int // bytes
}

// gathered returns what plans find in a file, by its real path.
func (s *snapshot) gathered(real string, readings []*reading) (list []found) {
	now := s.textOf(real)
	seen := map[said]bool{}
	for _, r := range readings {
		diags := r.findings[real]
		if len(diags) == 0 {
			continue
		}
		moved := func(start, end int) (int, int, bool) { return start, end, true }
		if then := r.texts[real]; then != now && then != nil {
			moved = shift(then.data, now.data)
		}
		for _, d := range diags {
			start, end, ok := moved(d.Range.Start.Offset, d.Range.End.Offset)
			key := said{start, end, d.Code, d.Message}
			if !ok || seen[key] {
				continue
			}
			seen[key] = true
			list = append(list, found{d, r, start, end})
		}
	}
	sortStable(list, func(a, b found) int {
		return cmp.Or(cmp.Compare(a.start, b.start), -cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Code, b.Code), cmp.Compare(a.Message, b.Message))
	})
	return list
}

// shift returns where a part of an old text is in a new one. ok is false for a part that
// has changed. So a kit keeps what its plans found in it until they are read again.
func shift(then, now []byte) func(start, end int) (int, int, bool) {
	most := min(len(then), len(now))
	front := 0
	for front < most && then[front] == now[front] {
		front++
	}
	back := 0
	for back < most-front && then[len(then)-1-back] == now[len(now)-1-back] {
		back++
	}
	return func(start, end int) (int, int, bool) {
		switch {
		case end <= front:
			return start, end, true
		case start >= len(then)-back:
			by := len(now) - len(then)
			return start + by, end + by, true
		}
		return 0, 0, false
	}
}

// diagnostics returns what plans find in a file, as the protocol has it.
func (s *snapshot) diagnostics(real string, readings []*reading) []lsp.Diagnostic {
	list := []lsp.Diagnostic{}
	now := s.textOf(real)
	for _, f := range s.gathered(real, readings) {
		d := s.diagnostic(f.by, f.Diagnostic)
		if f.by.texts[real] != now { // moved
			d.Range = now.index().ranged(f.start, f.end, s.encoding)
		}
		list = append(list, d)
	}
	return list
}
