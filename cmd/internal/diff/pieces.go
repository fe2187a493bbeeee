// What is different in the subjects and the events of a shot.

package diff

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
)

// subjects compares where everyone is when the shot starts. The marks on the
// ring that go with it are told of the pulls.
func (c comparison) subjects() []Piece {
	return c.untold(pieces(c.before.Subjects, c.after.Subjects,
		func(s *plan.Subject) label { return label{"subject", s.Name} },
		func(b, a *plan.Subject) []Detail {
			l := newList(c.rate)
			if c.placed() {
				c.onFloor(l, b, a)
			} else {
				l.figure("distance_m", "", b.Distance, a.Distance, c.tape)
				l.figure("side_m", "", b.Side, a.Side, c.aside)
			}
			if !c.tells("subject", a.Name) {
				l.figure("deep_m", "deep", b.Deep, a.Deep, c.tape)
				l.figure("sways_m", "sways", b.Sways, a.Sways, c.tape)
			}
			c.seen(l, b, a)
			return l.details
		}))
}

// events compares what happens in the shot besides pulls.
func (c comparison) events() []Piece {
	was, is := c.eventsOf(c.before, c.was()), c.eventsOf(c.after, c.is())
	return c.untold(pieces(was, is,
		func(e event) label { return e.label },
		func(b, a event) []Detail {
			l := newList(c.rate)
			l.times(b.start, b.end, a.start, a.end)
			l.figure("from_m", "from", b.from, a.from, c.tape)
			l.figure("to_m", "to", b.to, a.to, c.tape)
			l.figure("from_mm", "from", b.fromMM, a.fromMM, millimetres)
			l.figure("to_mm", "to", b.toMM, a.toMM, millimetres)
			l.word("place", "to", b.place, a.place)
			l.word("target", "goes to", b.target, a.target)
			l.figure("turned_deg", "turns", b.turned, a.turned, func(n plan.Number) string { return heading(a.kind, n) })
			l.word("profile", "profile", b.profile, a.profile)
			return l.details
		}))
}

// times compares when something is. What only is earlier or later says so in one detail.
func (l *list) times(wasStart, wasEnd, start, end plan.Number) {
	if !l.differ(wasEnd-wasStart, end-start) {
		l.shift("start_s", "", wasStart, start)
		return
	}
	l.shift("start_s", "begins", wasStart, start)
	l.length("lasts_s", "lasts", wasEnd-wasStart, end-start)
}

// An event is anything that happens in a shot besides pulls; what does not
// apply to it is NaN.
type event struct {
	label
	start, end             plan.Number
	from, to, fromMM, toMM plan.Number
	turned                 plan.Number // of a pan or a tilt
	profile, target        string
	place                  string // where a walk leads on the floor of a scene
}

// events lists the events of a shot, kind by kind.
func events(s *plan.Shot) []event {
	none := plan.Number(math.NaN())
	var list []event
	add := func(kind, name string, start, end plan.Number) {
		list = append(list, event{
			label: label{kind, name}, start: start, end: end,
			from: none, to: none, fromMM: none, toMM: none, turned: none,
		})
	}
	for _, n := range s.Notes {
		add("note", "“"+n+"”", none, none)
	}
	for _, l := range s.Lines {
		add("line", fmt.Sprintf("%s “%s”", l.Who, l.Text), l.Start, l.End)
	}
	for _, c := range s.Cues {
		add("cue", c.Name, c.T, c.T)
	}
	for _, a := range s.Actions {
		add("action", a.Text, a.Start, a.End)
	}
	for _, b := range s.Blocking {
		if b.Kind == "pan" || b.Kind == "tilt" {
			continue // a turn
		}
		add(b.Kind, b.Who, b.Start, b.End)
		e := &list[len(list)-1]
		e.from, e.to, e.fromMM, e.toMM, e.profile = b.From, b.To, b.FromMM, b.ToMM, b.Profile
	}
	for _, t := range s.Turns {
		add(t.Kind, "", t.Start, t.End)
		e := &list[len(list)-1]
		e.turned, e.profile, e.target = t.To-t.From, t.Profile, t.Target
	}
	return list
}

// A label is what pieces are matched by.
type label struct{ kind, name string }

// pieces matches things that have the same label, the first with the first and
// so on, and returns those that changed, came or are gone: in the order after
// the change, what is gone last.
func pieces[T any](before, after []T, labelOf func(T) label, compare func(b, a T) []Detail) []Piece {
	was := map[label][]T{}
	for _, b := range before {
		was[labelOf(b)] = append(was[labelOf(b)], b)
	}
	list := []Piece{}
	add := func(l label, change Change, details []Detail) {
		list = append(list, Piece{change, l.kind, l.name, details})
	}
	now := map[label]int{}
	for _, a := range after {
		l := labelOf(a)
		if now[l]++; now[l] > len(was[l]) {
			add(l, New, []Detail{})
		} else if details := compare(was[l][now[l]-1], a); len(details) > 0 {
			add(l, Changed, details)
		}
	}
	for _, b := range before {
		l := labelOf(b)
		if now[l]--; now[l] < 0 {
			add(l, Gone, []Detail{})
		}
	}
	return list
}
