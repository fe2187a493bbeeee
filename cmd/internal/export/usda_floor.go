// USD on the floor of a scene, where its camera has a place there.
//
// Nothing is assumed of places then: the zero point of the scene is that of the form, and
// (x, y, z) of its floor is (x, z, -y). The camera is a pinhole at its sensor mark, and
// everybody is where the plan has them. A lens sees a little less than such a pinhole, by
// as much as its front principal plane is ahead of the mark; focusDistance is from the
// mark, so that whom the focus is on are sharp for the pinhole too.

package export

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
)

// Sizes in metres that no plan says. Common practice, no source.
const (
	crown = 0.12 // of a head above its eyes
	eyes  = 1.6  // of somebody whose eyes no line says
)

// hasPlace reports whether the camera of a shot has a place on the floor of a scene.
func hasPlace(s *plan.Shot) bool { return s.Staging != nil && s.Placed }

// sceneOf returns the scene on whose floor the camera of a shot has a place; nil for none.
func sceneOf(p *plan.Plan, s *plan.Shot) *plan.Scene {
	if !hasPlace(s) || s.Of < 0 || s.Of >= len(p.Scenes) {
		return nil
	}
	return p.Scenes[s.Of]
}

// onItsFloor says what the figures of a shot are whose camera has a place.
func onItsFloor(scene *plan.Scene, s *plan.Shot) string {
	doc := floorOf(scene) + focusSays(s.Optics.FromLens)
	if isMeasured(s) {
		doc += tapeSays
	}
	return doc + provenance(s)
}

// floorOf says where the floor of a scene lies.
func floorOf(scene *plan.Scene) string {
	zero := "the zero point of its floor"
	if scene != nil && scene.Origin != "" {
		zero = "its zero point, " + scene.Origin
	}
	return "Places are those of the scene, from " + zero + ": X to the right, Y up, -Z upstage."
}

// focusSays says of what a focus distance is told, and what a pinhole shows.
func focusSays(fromLens bool) string {
	from := "sensor mark"
	if fromLens {
		from = "front principal plane of the lens"
	}
	return fmt.Sprintf(" The camera is a pinhole at the %s, and nobody is moved to their distance from the lens. focusDistance is from there along the axis, planned and not measured; %s m stands for infinity. Bodies below the eyes are assumed.", from, decimal(farthest))
}

// tapeSays is what a reader has to know where a tape of the set says another distance.
const tapeSays = " Where a tape was read the focus goes by it, and everybody stands where the floor has them."

// isMeasured reports whether a shot has a tape that was read.
func isMeasured(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Subjects, func(u *plan.Subject) bool { return u.Seen != nil && u.Measured.Known() })
}

func provenance(s *plan.Shot) string {
	if text := moments.Provenance(s); text != "" {
		return " " + text + "."
	}
	return ""
}

// stagedIn returns who is called so on the floor of a scene; nil for nobody.
func stagedIn(scene *plan.Scene, name string) *plan.Staged {
	if scene == nil {
		return nil
	}
	for i := range scene.Subjects {
		if scene.Subjects[i].Name == name {
			return &scene.Subjects[i]
		}
	}
	return nil
}

// A figure is the body of somebody on the floor of a scene, in metres. Of a person it is
// known how high their eyes are at first; 0 for a thing.
type figure struct{ eyes, deep float64 }

// bodyOf returns the body of a subject; staged is nil where the shot alone has it.
func (u *usd) bodyOf(subject *plan.Subject, staged *plan.Staged) figure {
	f := figure{deep: float64(subject.Deep)}
	switch {
	case staged != nil:
		f.eyes = eyesOf(staged)
	case !u.isSmall(subject):
		f.eyes = eyes
	}
	return f
}

// eyesOf returns how high somebody's eyes are over what they stand on; 0 for a thing.
func eyesOf(staged *plan.Staged) float64 {
	if !staged.Person && !(staged.Eyes > 0) {
		return 0
	}
	return cmp.Or(staged.Eyes, eyes)
}

// staged writes the body of somebody whose prim is at their eyes, or at the middle of a
// thing.
func (u *usd) staged(f figure, grey float64) {
	if !(f.eyes > 0) {
		u.solid("Sphere", max(dot, f.deep/2), 0, 0, grey)
		return
	}
	half := (f.eyes + crown) / 2
	u.solid("Capsule", min(half, max(stout, f.deep/2)), half, crown-half, grey)
}

// marks writes the marks on the floor of a scene.
func (u *usd) marks(taken names, scene *plan.Scene) {
	if scene == nil {
		return
	}
	for _, m := range scene.Marks {
		u.named(taken.add(m.Name), m.Name)
		u.line(2, "double3 xformOp:translate = %s", triple(point{float64(m.Right), float64(m.Upstage), high(m.High)}))
		u.order("\"xformOp:translate\"")
		u.line(1, "}")
	}
}

// high returns a height, 0 where none is known.
func high(n plan.Number) float64 {
	if v := float64(n); !math.IsNaN(v) {
		return v
	}
	return 0
}
