// Which set-up the cut shows.

package coverage

import "pullscore/interp/plan"

// A Cut says what the cut shows of the words of a scene.
type Cut struct {
	Words   int   `json:"words"` // that it shows with a speaker who is a subject of the set-up
	Held    int   `json:"held"`  // of these, those that the set-up holds that it shows
	NotHeld []Gap `json:"not_held"`
}

// inCut says what the cut shows of a word in a shot; empty where the shot is in no cut.
func inCut(s *plan.Shot, at saying) string {
	if len(s.Pieces) == 0 {
		return ""
	}
	if at.gone {
		return plan.Removed
	}
	state, _ := s.Presence(max(at.word.Start, 0), min(at.word.End, float64(s.Duration)))
	return state
}

// cutOf returns what the cut shows. A word that it shows in several set-ups, one after the
// other, is held if one of them holds it.
func cutOf(sc *Scene) *Cut {
	cut := &Cut{NotHeld: []Gap{}}
	for _, l := range sc.Lines {
		if !l.Asks() {
			continue
		}
		for i := range l.Words {
			if c := l.Words[i].shown(); c != nil {
				cut.Words++
				if c.Held {
					cut.Held++
				}
			}
		}
		cut.NotHeld = append(cut.NotHeld, stretches(l, func(w *Word) (string, bool) {
			if c := w.shown(); c != nil && !c.Held {
				return c.Shot, true
			}
			return "", false
		})...)
	}
	return cut
}

// shown returns the cell that the cut shows of a word, one that holds it first; nil where
// the cut shows the word in none that has its speaker.
func (w *Word) shown() (best *Cell) {
	for i := range w.Cells {
		if c := &w.Cells[i]; c.Shown() && c.Focus != Voice && (best == nil || c.Held && !best.Held) {
			best = c
		}
	}
	return best
}
