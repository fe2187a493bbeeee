// The stops of the lens, each with what it does to the racks.

package editor

import (
	"fmt"
	"slices"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/interp/units"
)

// mostShots is how many shots the stop of a whole film is tried in.
const mostShots = 8

// stops returns the third stops of the lens, each with the lowest chance of the racks that
// it is for.
func (w *writer) stops() []offer {
	type tried struct {
		label  string
		lowest float64
		wanted float64
		racks  bool
	}
	var list []tried
	style := units.ForTable(false)
	result, shots := w.withSomeStop()
	for _, shot := range shots {
		retake, spoken := result.Retake(shot), shot.Spoken()
		for _, mark := range stops.Scale(spoken) {
			t := tried{label: style.Stop(mark, spoken.T, units.Exact), lowest: 1, wanted: float64(shot.Wanted)}
			if take, ok := retake(stops.Change{Stop: spoken.Number(mark), Bare: true}); ok {
				for _, p := range take.Shot.Pulls {
					t.racks = true
					t.lowest = min(t.lowest, float64(p.Chance))
				}
			}
			i := slices.IndexFunc(list, func(other tried) bool { return other.label == t.label })
			if i < 0 {
				list = append(list, t)
				continue
			}
			list[i].racks = list[i].racks || t.racks
			list[i].lowest = min(list[i].lowest, t.lowest)
		}
	}
	offers := make([]offer, 0, len(list))
	for _, t := range list {
		o := offer{label: t.label, kind: lsp.ItemValue}
		if t.racks {
			o.detail = fmt.Sprintf("every rack lands %s or better", style.Chance(t.lowest, t.wanted))
		}
		offers = append(offers, o)
	}
	return offers
}

// withSomeStop interprets the plan with a stop written at the place, since without one no
// shot can be built. It returns the shot that the place is in; above the shots, the first
// ones.
func (w *writer) withSomeStop() (*interp.Result, []*plan.Shot) {
	data := slices.Concat(w.doc.data[:w.at.From], []byte("f/5.6"), w.doc.data[max(w.offset, w.wordEnd()):])
	filled := *w.doc
	filled.text = newText(data, nil)
	r := w.s.with(&filled).read(filled.path)
	line := 0
	if w.section != nil {
		line = w.section.Head.Range().Start.Line
	}
	var shots []*plan.Shot
	for _, shot := range r.result.Plan.Shots {
		if line == 0 && len(shots) < mostShots || shot.Line == line && r.reals[shot.File] == w.doc.real {
			shots = append(shots, shot)
		}
	}
	return r.result, shots
}

// wordEnd returns where the stop ends that may stand at the place already.
func (w *writer) wordEnd() int {
	end := w.offset
	for end < len(w.doc.data) && !slices.Contains([]byte(" \t\r\n,#"), w.doc.data[end]) {
		end++
	}
	return end
}
