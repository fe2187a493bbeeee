// A whole scene in USD: everybody as they go on its floor, and a camera for every set-up
// that shoots the action from a place there, over the time of the scene.
//
// A set-up has its focus for as long as it covers, and keeps the first and the last of it
// before and behind. Frames are those of the film, also where a camera runs at another
// speed.

package export

import (
	"bufio"
	"errors"
	"io"
	"math"
	"slices"
	"sort"
	"strings"

	"pullscore/interp/plan"
	"pullscore/lang/timecode"
)

// A setup is a shot of a scene with the frames that it covers of it.
type setup struct {
	usd
	near, far float64
}

// ErrNoSetups says that no set-up of a scene has its action and a camera with a place.
var ErrNoSetups = errors.New("no set-up shoots the action of a scene with a camera that has a place")

// USDScene writes a scene with all its set-ups.
func USDScene(w io.Writer, p *plan.Plan, scene *plan.Scene) error {
	list, left := setupsOf(p, scene)
	if len(list) == 0 {
		return ErrNoSetups
	}
	rate, count := list[0].shot.Rate, 0
	for _, s := range list {
		count = max(count, s.first-firstFrame+len(s.frames))
	}
	frames := framesOf(scene, rate, count)
	u := usd{out: bufio.NewWriter(w), shot: list[0].shot, frames: frames, first: firstFrame}
	u.head("Scene", sceneSays(p, scene, list, left), rate, len(frames))
	taken := names{}
	for i := range list {
		s := &list[i]
		s.out = u.out
		if i > 0 {
			u.line(0, "")
		}
		s.camera(taken.add("Camera "+s.shot.ID), s.near, s.far)
		s.focus(taken.add("Focus "+s.shot.ID), s.far)
	}
	u.people(taken, scene)
	u.marks(taken, scene)
	u.line(0, "}")
	return u.out.Flush()
}

// setupsOf returns the set-ups of a scene that shoot its action from a place, and the IDs
// of those that do not.
func setupsOf(p *plan.Plan, scene *plan.Scene) (list []setup, left []string) {
	for _, s := range p.Shots {
		switch {
		case s.Staging == nil || s.Of < 0 || s.Of >= len(p.Scenes) || p.Scenes[s.Of] != scene:
		case !s.Placed || !s.Action || !s.Covers[0].Known():
			left = append(left, s.ID)
		default:
			one := setup{usd: usd{shot: s}}
			one.first, one.frames = covered(s)
			one.near, one.far = one.clips()
			list = append(list, one)
		}
	}
	return list, left
}

// covered returns the frames of a scene that a shot covers, and the time code of the first
// of them.
func covered(s *plan.Shot) (first int, frames []Frame) {
	from, slack := float64(s.Covers[0]), s.Rate.Seconds(1)*1e-6
	at0 := int64(math.Ceil((from - slack) / s.Rate.Seconds(1)))
	for n := at0; ; n++ {
		t := s.Rate.Seconds(n) - from
		if len(frames) > 0 && t >= float64(s.Duration)-slack {
			break
		}
		frames = append(frames, at(s, n-at0, max(0, t)))
	}
	return firstFrame + int(at0), frames
}

// framesOf returns the frames of a scene, which have nothing but their time: as many as
// it takes, and no fewer than given.
func framesOf(scene *plan.Scene, rate timecode.Rate, least int) []Frame {
	const slack = 1e-6
	count := least
	if d := float64(scene.Duration); d > 0 {
		count = max(count, int(math.Ceil(d/rate.Seconds(1)-slack)))
	}
	frames := make([]Frame, count)
	for i := range frames {
		frames[i] = Frame{Number: int64(i), Time: rate.Seconds(int64(i))}
	}
	return frames
}

// sceneSays says what the figures of a scene are.
func sceneSays(p *plan.Plan, scene *plan.Scene, list []setup, left []string) string {
	doc := p.Title
	if scene.Title != "" {
		doc += ", scene “" + scene.Title + "”"
	}
	doc += ". " + floorOf(scene) + focusSays(list[0].shot.Optics.FromLens)
	if slices.ContainsFunc(list, func(one setup) bool { return isMeasured(one.shot) }) {
		doc += tapeSays
	}
	if len(left) > 0 {
		doc += " Not here, as they have no place on the floor or a time of their own: " + strings.Join(left, ", ") + "."
	}
	return doc
}

// people writes everybody as they go on the floor of their scene.
func (u *usd) people(taken names, scene *plan.Scene) {
	for i := range scene.Subjects {
		who := &scene.Subjects[i]
		if len(who.Path) == 0 {
			continue
		}
		u.named(taken.add(who.Name), who.Name)
		u.place(func(f Frame) point { return u.goes(who, f.Time) })
		u.order("\"xformOp:translate\"")
		u.line(0, "")
		u.staged(figure{eyes: eyesOf(who), deep: u.deep(who.Name)}, grey(i))
		u.line(1, "}")
	}
}

// deep returns how deep somebody is, as the first set-up has it.
func (u *usd) deep(name string) float64 {
	if s := u.shot.Subject(name); s != nil {
		return float64(s.Deep)
	}
	return 0
}

// goes returns where somebody is at t. A thing whose height nobody says is level with the
// lens of the first set-up.
func (u *usd) goes(who *plan.Staged, t float64) point {
	path := who.Path
	i := sort.Search(len(path), func(i int) bool { return float64(path[i].T) > t })
	var at plan.FloorPoint
	switch {
	case i == 0:
		at = path[0]
	case i == len(path):
		at = path[i-1]
	default:
		a, b := path[i-1], path[i]
		share := (plan.Number(t) - a.T) / (b.T - a.T)
		at.Right = a.Right + share*(b.Right-a.Right)
		at.Upstage = a.Upstage + share*(b.Upstage-a.Upstage)
		at.High = a.High + share*(b.High-a.High)
	}
	p := point{float64(at.Right), float64(at.Upstage), float64(at.High)}
	if who.Unknown || math.IsNaN(p.z) {
		p.z = u.shot.Stands(0).Z
	}
	return p
}
