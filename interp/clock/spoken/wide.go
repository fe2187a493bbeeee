// Words in all lines, as those of a shot whose lines are a scene's are looked for.

package spoken

import (
	"fmt"
	"slices"

	"pullscore/interp/speech"
	"pullscore/lang"
)

// findWide returns where words are said, in whatever line. The number counts through all
// lines.
func (t *Talk) findWide(q Ask, a *lang.Anchor) (hit Spotted, ok bool) {
	p, way := phrase(a), speech.ByWords
	hits := t.said().all(p, way)
	if len(hits) == 0 {
		way = speech.ByTerms
		hits = t.said().all(p, way)
	}
	var lines []*Line
	for _, h := range hits {
		if !slices.Contains(lines, h.Line) {
			lines = append(lines, h.Line)
		}
	}
	switch {
	case len(hits) == 0 && t.besideBad(q.Item): // one mistake is told once
	case len(hits) == 0:
		q.In.Fail(a.Range(), "word-not-found", t.notFound(q, a), t.nearWord(q, a))
	case a.Nth > len(hits):
		q.In.Report(lang.Diagnostic{
			Code: "word-not-found", Severity: lang.Error, Range: a.Range(),
			Message: fmt.Sprintf("%q is not there %s", a.Words.Value, times(a.Nth)),
			Detail:  fmt.Sprintf("The number counts through all lines, and they have it %s.", times(len(hits))),
			Related: []lang.Related{{Message: "this line", Range: lines[0].Stmt.Range()}},
		})
	case a.Nth > 0:
		return hits[a.Nth-1], true
	case len(lines) > 1:
		t.inSeveral(q, a, lines, way)
	case len(hits) > 1:
		t.severalTimes(q, a, len(hits))
	default:
		return hits[0], true
	}
	return hit, false
}
