// What the page is told of shots that have the action of a scene.

package preview

import "pullscore/interp/plan"

// A toldSetup says which part of the action of a scene a shot has. A time of the shot is
// that of the action less From.
type toldSetup struct {
	Scene  int         `json:"scene"` // the same: the same scene
	From   plan.Number `json:"from_s"`
	To     plan.Number `json:"to_s"`
	Beside []string    `json:"beside,omitempty"` // the shots that other cameras take at the same time
}

// tellSetup returns what part of a scene a shot of a plan has, or nil if it has none of the
// action.
func tellSetup(p *plan.Plan, s *plan.Shot) *toldSetup {
	if s.Staging == nil || !s.Action || !finite(s.Covers[0]) || !finite(s.Covers[1]) {
		return nil
	}
	t := &toldSetup{Scene: s.Of, From: s.Covers[0], To: s.Covers[1]}
	for _, o := range p.Shots {
		if o != s && o.Staging != nil && o.Of == s.Of && runsWith(p, o) == runsWith(p, s) {
			t.Beside = append(t.Beside, o.ID)
		}
	}
	return t
}

// runsWith returns the ID of the shot that leads those that run together: the one that a
// shot runs with, and that of that one, or its own.
func runsWith(p *plan.Plan, s *plan.Shot) string {
	for range p.Shots { // a circle has an end too
		next := shotOf(p, s.RunsWith)
		if s.RunsWith == "" || next == nil || next.Staging == nil {
			break
		}
		s = next
	}
	return s.ID
}
