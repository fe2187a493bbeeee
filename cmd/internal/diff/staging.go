// What is different in how a shot is staged. What follows from its scene is told there.

package diff

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// was and is return the scene of a shot that is staged before and after; nil for none.
func (c comparison) was() *plan.Scene {
	if c.scene == nil {
		return nil
	}
	return c.scene.before
}

func (c comparison) is() *plan.Scene {
	if c.scene == nil {
		return nil
	}
	return c.scene.after
}

// tells reports whether something is told of the scene.
func (c comparison) tells(kind, name string) bool {
	return c.scene != nil && c.scene.labels[label{kind, name}]
}

// hasPlace reports whether the camera of a shot has a place on the floor of its scene.
func hasPlace(s *plan.Shot) bool { return s.Staging != nil && s.Placed }

// hasAction reports whether a shot has the action of its scene.
func hasAction(s *plan.Shot) bool { return s.Staging != nil && s.Action }

// placed reports whether the camera has a place before and after, on the same floor, so
// that places there are compared and not distances.
func (c comparison) placed() bool { return c.scene != nil && hasPlace(c.before) && hasPlace(c.after) }

// staging compares of which scene a shot is, what it covers, and where its camera is.
func (c comparison) staging(l *list) {
	b, a := c.before, c.after
	if b.Staging == nil && a.Staging == nil {
		return
	}
	was, is := stagingOf(b), stagingOf(a)
	if c.scene == nil {
		l.word("scene", "scene", sceneName(b), sceneName(a))
	}
	l.word("runs_with", "runs with", was.RunsWith, is.RunsWith)
	l.word("matches", "matches", was.Matches, is.Matches)
	c.covers(l)
	if b.Staging != nil && a.Staging != nil {
		l.figure("aspect", "picture", was.Aspect, is.Aspect, shape)
	}
	in := units.ForTable(a.Imperial)
	switch {
	case c.placed():
		l.cameraMoved(b.Home, a.Home, in)
	case hasPlace(b) && hasPlace(a): // on two floors
		l.word("camera-moved", "camera", stands(b.Home, in), stands(a.Home, in))
	case hasPlace(a):
		l.word("camera-moved", "", "", stands(a.Home, in))
		l.details[len(l.details)-1].Says = "the camera has a place on the floor now: " + stands(a.Home, in)
	case hasPlace(b):
		l.word("camera-moved", "", stands(b.Home, in), "")
		l.details[len(l.details)-1].Says = "the camera has no place on the floor any more"
	}
}

func stagingOf(s *plan.Shot) plan.Staging {
	if s.Staging == nil {
		return plan.Staging{Covers: plan.NoInterval(), Aspect: plan.None()}
	}
	return *s.Staging
}

// sceneName is what the scene of a shot is called; "" for none.
func sceneName(s *plan.Shot) string {
	switch {
	case s.Staging == nil:
		return ""
	case s.Scene == "":
		return "without a title"
	}
	return "“" + s.Scene + "”"
}

func shape(n plan.Number) string {
	if !n.Known() {
		return ""
	}
	return units.Decimal(float64(n), 2) + ":1"
}

// covers compares what part of the action a shot covers.
func (c comparison) covers(l *list) {
	b, a := c.before, c.after
	was, is := covered(b), covered(a)
	if !hasAction(b) || !hasAction(a) {
		l.word("covers-changed", "covers", was, is)
		return
	}
	if c.follows(0) && c.follows(1) {
		return
	}
	if l.differ(b.Covers[0], a.Covers[0]) || l.differ(b.Covers[1], a.Covers[1]) {
		l.word("covers-changed", "covers", was, is)
	}
}

// covered says what part of the action a shot covers; "" for none.
func covered(s *plan.Shot) string {
	if !hasAction(s) {
		return ""
	}
	return figures.Time(float64(s.Covers[0])) + " to " + figures.Time(float64(s.Covers[1]))
}

// follows reports whether an end of what a shot covers, 0 the start and 1 the end, is at
// the same moment of the action as before, so that another time follows from the scene.
func (c comparison) follows(end int) bool {
	if c.scene == nil || c.scene.before == nil || c.scene.after == nil {
		return false
	}
	was, is := momentsAt(c.scene.before, c.before.Covers[end]), momentsAt(c.scene.after, c.after.Covers[end])
	return slices.ContainsFunc(was, func(m moment) bool { return slices.Contains(is, m) })
}

// A moment is one of the action: the start or the end of something.
type moment struct {
	label
	nth int // of those that are called so, and of the words in it
	end bool
}

// momentsAt returns the moments of a scene at a time.
func momentsAt(s *plan.Scene, t plan.Number) (list []moment) {
	const whisker = 1e-6 // seconds
	count := map[label]int{}
	add := func(kind, name string, start, end float64) {
		what := label{kind, name}
		if math.Abs(start-float64(t)) < whisker {
			list = append(list, moment{what, count[what], false})
		}
		if math.Abs(end-float64(t)) < whisker {
			list = append(list, moment{what, count[what], true})
		}
		count[what]++
	}
	add("scene", "", 0, float64(s.Duration))
	for _, n := range s.Lines {
		add("line", n.Who+" "+n.Text, float64(n.Start), float64(n.End))
		for _, w := range n.Words {
			add("word", n.Who+" "+w.Text, w.Start, w.End)
		}
	}
	for _, q := range s.Cues {
		add("cue", q.Name, float64(q.T), float64(q.T))
	}
	for _, u := range s.Subjects {
		for _, g := range u.Legs {
			add("moves", u.Name, g.Start, g.End)
		}
	}
	return list
}

// lastsAsCovered reports whether a shot is longer or shorter by what it covers more or
// less, which is told.
func (c comparison) lastsAsCovered() bool {
	b, a := c.before, c.after
	if c.scene == nil || !hasAction(b) || !hasAction(a) {
		return false
	}
	by := float64((a.Duration - b.Duration) - ((a.Covers[1] - a.Covers[0]) - (b.Covers[1] - b.Covers[0])))
	return math.Abs(by)*c.rate < leastFrames
}

// recovered reports whether a shot covers another part of the action.
func (c comparison) recovered() bool {
	return c.before.Staging != nil && c.after.Staging != nil && c.before.Covers != c.after.Covers
}

// onFloor compares where somebody is at first, in a shot that gives them another place
// than the scene does.
func (c comparison) onFloor(l *list, b, a *plan.Subject) {
	if c.scene.moves[a.Name] || c.recovered() || c.tells("subject", a.Name) {
		return
	}
	at := func(s *plan.Shot, u *plan.Subject) spot {
		x, y, z := s.OnFloor(u, 0)
		return spot{x, y, z}
	}
	from, to := at(c.before, b), at(c.after, a)
	if b.Up == nil || a.Up == nil { // level with the lens, which the camera tells
		from.high = to.high
	}
	l.moved(from, to, units.ForTable(c.after.Imperial))
}

// eventsOf lists the events of a shot. Where the camera has a place before and after, a
// walk leads to a place on the floor, and not to a distance.
func (c comparison) eventsOf(s *plan.Shot, scene *plan.Scene) []event {
	list := events(s)
	if !c.placed() {
		return list
	}
	none := plan.None()
	for i := range list {
		e := &list[i]
		if e.kind != "moves" {
			continue
		}
		e.from, e.to = none, none
		if u := s.Subject(e.name); u != nil {
			x, y, z := s.OnFloor(u, float64(e.end))
			e.place = spot{x, y, z}.level(scene, units.ForTable(c.after.Imperial))
		}
	}
	return list
}

// untold leaves out what is told of the scene, and what the shot has more or less of it
// because it covers another part.
func (c comparison) untold(list []Piece) []Piece {
	if c.scene == nil {
		return list
	}
	return slices.DeleteFunc(list, func(p Piece) bool {
		if p.Kind == "subject" {
			return p.Change != Changed && c.tells(p.Kind, p.Name)
		}
		if !hasAction(c.before) || !hasAction(c.after) {
			return false
		}
		return c.tells(p.Kind, p.Name) || c.recovered() && c.happens(p)
	})
}

// happens reports whether an event of a shot is one of its scene.
func (c comparison) happens(p Piece) bool {
	for _, s := range []*plan.Scene{c.scene.before, c.scene.after} {
		if s == nil {
			continue
		}
		for _, e := range (staged{}).happens(s) {
			if e.label == (label{p.Kind, p.Name}) {
				return true
			}
		}
	}
	return false
}
