// The answer for a shot.

package stops

import (
	"slices"
)

// Options say how much is computed.
type Options struct {
	Curve  bool // also the verdicts that a drawing needs
	Levers bool // where there is no window, also what opens one
}

// Find returns what is to be said of the stops of a shot; ok is false where
// the shot cannot be taken anew at any.
func Find(retake Retake, kit Kit, opt Options) (a *Answer, ok bool) {
	s, ok := newSearch(retake, Change{}, nil)
	if !ok {
		return nil, false
	}
	a = s.answer()
	if opt.Curve {
		a.Curve = s.curve()
		a.Spans = map[Kind][]Span{Rests: s.spans(Rests, Follows), Depth: s.spans(Depth), Light: s.spans(Light)}
	}
	if a.Window == nil && opt.Levers {
		a.Levers = s.levers(kit)
	}
	return a, true
}

// answer describes what a search has found.
func (s *search) answer() *Answer {
	sh := s.shot
	a := &Answer{
		ID: sh.ID, Title: sh.Title, Camera: sh.Camera, Lens: sh.Lens, FocalMM: sh.FocalMM, Wanted: sh.Wanted,
		Set: sh.Stop, SetF: sh.FNumber, Racks: []Rack{}, Follows: []Follow{}, Rests: restsOf(sh), Levers: []Lever{}, Tried: s.tried,
		Recommended: s.recommended(), set: sh.Optics.Light,
		Landing: sh.Optics.Ring != nil, RingUnknown: sh.RingUnknown(), Light: Expose(sh.Optics.Light, float64(sh.FNumber)) != nil,
	}
	for _, p := range sh.Pulls {
		if p.Kind == "rack" {
			a.Racks = append(a.Racks, Rack{Pull: p.Number, From: p.From, Target: p.Target, Stays: p.Stays, Over: float64(p.Land - p.Start), Untimed: p.Untimed})
		} else {
			a.Follows = append(a.Follows, Follow{Pull: p.Number, Target: p.Target})
		}
	}
	a.Others = s.windows()
	if len(a.Others) == 0 {
		a.Obstacles = s.obstacles()
	} else {
		i := cheapest(a.Others)
		w := a.Others[i]
		a.Window, a.Others = &w, slices.Delete(a.Others, i, i+1)
	}
	return a
}

// curve returns the verdicts on every sixth of a stop, the third-stops and the
// ends of windows among them.
func (s *search) curve() []Verdict {
	list := []Verdict{s.tried[0]}
	for i := 1; i < len(s.tried); i++ {
		list = append(list, s.at(middle(float64(s.tried[i-1].Number), float64(s.tried[i].Number))), s.tried[i])
	}
	return list
}

// spans returns where all demands of some kinds are met.
func (s *search) spans(kinds ...Kind) []Span {
	var list []Span
	for _, x := range s.stretches(func(d demand) bool { return !slices.Contains(kinds, d.kind) }) {
		list = append(list, Span{x.from, x.to})
	}
	return list
}

// opens returns the window with the best stop that a change opens, if it opens one and
// makes nothing impossible that was not. A marked stop has to lie in it: one
// that nobody can set helps nobody.
func (s *search) opens(c Change) (w Window, ok bool) {
	if !s.promises(c) {
		return Window{}, false
	}
	other, ok := newSearch(s.retake, c, s.excused)
	if !ok || !slices.ContainsFunc(other.tried, func(v Verdict) bool { return v.open }) {
		return Window{}, false
	}
	list := other.windows()
	if len(list) == 0 {
		return Window{}, false
	}
	return list[cheapest(list)], true
}

// promises tells whether a marked stop holds with a change. Most changes open
// nothing, and there are many to try: so it looks at whole stops first, and at
// the thirds between two of them only where no demand fails at both.
func (s *search) promises(c Change) bool {
	c.Bare = true // what it promises is looked at in full
	other := &search{retake: s.retake, change: c, shot: s.shot, demands: s.demands, excused: s.excused}
	first, ok := s.retake(c)
	if !ok {
		return false
	}
	scale := Scale(first.Shot.Spoken())
	for i, mark := range scale {
		scale[i] = first.Shot.Spoken().Number(mark)
	}
	const thirds = 3
	a := other.at(scale[0])
	for i := 0; i < len(scale) && !a.open; i += thirds {
		last := min(i+thirds, len(scale)-1)
		b := other.at(scale[last])
		if b.open {
			return true
		}
		if !other.hopeless(&a, &b, all) {
			for _, n := range scale[min(i+1, last):last] {
				if v := other.at(n); v.open {
					return true
				}
			}
		}
		a = b
	}
	return a.open
}
