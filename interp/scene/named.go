// Shots that a scene or a shot names, and circles of those that name one another.

package scene

import (
	"slices"

	"pullscore/interp/names"
	"pullscore/lang"
)

// Shots are the shots of a film, as they are written.
type Shots interface {
	ShotOf(id string) *lang.Section    // nil where there is none
	SceneOf(shot *lang.Section) *Scene // under which it stands; nil for none
	ShotIDs() []string
}

// Shot returns the shot of the scene that a statement names. ok is false where there is
// none, which goes to a report.
func (s *Scene) Shot(ref *lang.ShotRef, shots Shots, to *names.Report) (sec *lang.Section, ok bool) {
	sec = shots.ShotOf(ref.ID)
	switch {
	case sec == nil:
		s.Lex.Tells(to).UnknownShot(ref.Range(), ref.ID, shots.ShotIDs())
	case shots.SceneOf(sec) != s:
		s.Lex.Tells(to).Fail(ref.Range(), "unknown-shot", "no shot of this scene is called "+ref.ID, "Shot "+ref.ID+" stands under another scene.")
	default:
		return sec, true
	}
	return nil, false
}

// InCircle reports whether a shot leads back to itself, or into a circle, by the shots that
// a statement of each names, of which next returns the first; nil for none. tell is true of
// one shot of every circle: the first in the file.
func InCircle(shot *lang.Section, shots Shots, next func(*lang.Section) *lang.ShotRef) (circle, tell bool) {
	path := []*lang.Section{shot}
	for {
		ref := next(path[len(path)-1])
		if ref == nil {
			return false, false
		}
		sec := shots.ShotOf(ref.ID)
		switch i := slices.Index(path, sec); {
		case sec == nil:
			return false, false
		case i < 0:
			path = append(path, sec)
		default:
			return true, i == 0 && slices.IndexFunc(path, func(o *lang.Section) bool { return startOf(o) < startOf(shot) }) < 0
		}
	}
}

func startOf(sec *lang.Section) int { return sec.Head.Range().Start.Offset }

// runs returns the shot with which another says that it runs; nil for none.
func runs(sec *lang.Section) *lang.ShotRef {
	if r := first[*lang.RunsWith](sec); r != nil {
		return r.Shot
	}
	return nil
}

// standsAs returns the shot as whose camera another says that its own stands; nil for
// none.
func standsAs(sec *lang.Section) *lang.ShotRef {
	if c := first[*lang.CameraAt](sec); c != nil {
		return c.AsIn
	}
	return nil
}

// first returns the first statement of a kind under a header; its zero value for none.
func first[T lang.Statement](sec *lang.Section) (s T) {
	for _, stmt := range sec.Body {
		if s, ok := stmt.(T); ok {
			return s
		}
	}
	return s
}
