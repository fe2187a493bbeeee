// The lenses of the kit beside each other: a shot through every one of them, from the
// same place, and with the camera moved so that the frame stays.

package stops

import (
	"math"
	"strings"

	"pullscore/interp/plan"
)

// A LensReport is the lenses of the kit for all shots of a plan.
type LensReport struct {
	Plan  string    `json:"plan"`
	Shots []*Lenses `json:"shots"`
}

// Lenses is one shot through all lenses of the kit. Figures that hang on the stop are
// those of the best stop of the window, or where there is none of the set stop.
type Lenses struct {
	ID     string      `json:"id"`
	Title  string      `json:"title,omitempty"`
	Camera string      `json:"camera"`
	Lens   string      `json:"lens"` // the shot's own
	Set    string      `json:"set"`
	Wanted plan.Number `json:"wanted"`
	Views  []View      `json:"lenses"`

	Imperial bool `json:"-"`
}

// A View is a shot through one lens from one place.
type View struct {
	Lens    string      `json:"lens"`
	FocalMM plan.Number `json:"focal_mm"`
	Own     bool        `json:"own,omitempty"`   // the shot as it is
	Moved   bool        `json:"moved,omitempty"` // the camera, so that the frame stays
	Back    plan.Number `json:"back_m,omitzero"` // how much farther it then stands

	// Taken is false where the shot cannot be taken so, and all else then is left out.
	Taken  bool        `json:"taken"`
	Window *Window     `json:"window,omitempty"`
	Holds  string      `json:"-"`              // the window in marked stops
	Stop   string      `json:"stop,omitempty"` // that the figures below are of
	Number plan.Number `json:"f_number,omitzero"`
	Faults []string    `json:"errors,omitempty"` // what is impossible at it

	RingShare plan.Number `json:"ring_share,omitzero"` // of the ring's turn, between its ends in the shot
	RingDeg   plan.Number `json:"ring_deg,omitzero"`
	Frame     plan.Number `json:"frame_m,omitzero"` // how wide the picture is where the shot is framed for

	// Of the rack that shows least, of the one that lands least surely, and of the one
	// that needs the most time; Endless tells that no time does for some.
	LeftBlur    plan.Number `json:"left_blur_arcmin,omitzero"`
	SeenFrom    plan.Number `json:"seen_from_arcmin,omitzero"`
	Probability plan.Number `json:"probability,omitzero"`
	Needed      plan.Number `json:"needed_s,omitzero"`
	Endless     bool        `json:"no_time_lands,omitempty"`
	Share       plan.Number `json:"sharp_share,omitzero"` // of the worst rest or half second of a follow
}

// Through compares the lenses of the kit for a shot; ok is false where it cannot be
// taken as it is.
func Through(retake Retake, kit Kit) (l *Lenses, ok bool) {
	own, ok := newSearch(retake, Change{}, nil)
	if !ok {
		return nil, false
	}
	sh := own.shot
	l = &Lenses{ID: sh.ID, Title: sh.Title, Camera: sh.Camera, Lens: sh.Lens, Set: sh.Stop, Wanted: sh.Wanted, Imperial: sh.Imperial, Views: []View{own.view(View{Own: true})}}
	f := float64(sh.FocalMM) / 1000
	d, framed := own.reference()
	for _, other := range kit.Lenses {
		if other.Name == sh.Lens {
			continue
		}
		focal := min(max(f, other.Shortest), other.Longest)
		v := View{Lens: other.Name, FocalMM: plan.Number(focal * 1000), Back: plan.None()}
		l.Views = append(l.Views, own.through(other, focal, 0, v))
		if back := d * (focal/f - 1); framed && math.Abs(focal/f-1) > 0.01 {
			v.Moved, v.Back = true, plan.Number(back)
			l.Views = append(l.Views, own.through(other, focal, back, v))
		}
	}
	return l, true
}

// through fills in a view through another lens. A stop that it lacks is taken for the
// nearest that it has.
func (s *search) through(l Lens, focal, back float64, v View) View {
	c := Change{Lens: l.Name, Back: back}
	if l.Longest > l.Shortest {
		c.Focal = focal
	}
	spoken, mark := l.spoken(s.shot.Spoken().T), s.shot.Spoken().Mark(float64(s.shot.FNumber))
	if mark < spoken.Widest || mark > spoken.Smallest {
		c.Stop = spoken.Number(min(max(mark, spoken.Widest), spoken.Smallest))
	}
	other, ok := newSearch(s.retake, c, s.excused)
	if !ok {
		return v.blank()
	}
	return other.view(v)
}

// blank returns a view that cannot be taken.
func (v View) blank() View {
	none := plan.None()
	v.Number, v.RingShare, v.RingDeg, v.Frame, v.LeftBlur, v.SeenFrom = none, none, none, none, none, none
	v.Probability, v.Needed, v.Share = none, none, none
	return v
}

// view fills in what a search finds.
func (s *search) view(v View) View {
	v = v.blank()
	v.Taken, v.Lens, v.FocalMM = true, s.shot.Lens, s.shot.FocalMM
	at := s.set
	if list := s.windows(); len(list) > 0 {
		w := list[cheapest(list)]
		v.Window, at = &w, *w.AtBest
		marked := &Answer{Tried: s.tried, set: s.shot.Optics.Light}
		v.Holds = strings.TrimPrefix(marked.span(w.From, w.To), "from ")
		if at.Unsure {
			v.Holds += ", ring not known"
		}
	}
	v.Stop, v.Number, v.Faults = at.Stop, at.Number, at.Faults
	if len(v.Faults) > 0 {
		return v
	}
	lands, shows := at.Worst()
	if lands != nil {
		v.Probability = lands.Probability
	}
	if shows != nil {
		v.LeftBlur, v.SeenFrom = shows.LeftBlur, shows.SeenFrom
	}
	if share, ok := at.WorstShare(); ok {
		v.Share = share
	}
	v.RingDeg, v.RingShare = ringUsed(s.shot)
	if d, f := s.shot.Optics.Start.Distance, float64(s.shot.FocalMM)/1000; d > f && finite(d) {
		v.Frame = plan.Number(s.shot.Optics.PictureW() * (d - f) / f)
	}
	v.Needed, v.Endless = s.needed(float64(at.Number))
	return v
}

// ringUsed returns how far the ring turns between the nearest and the farthest that
// the focus goes to, and what share of its whole turn that is.
func ringUsed(sh *plan.Shot) (deg, share plan.Number) {
	ring := sh.Optics.Ring
	if ring == nil {
		return plan.None(), plan.None()
	}
	least, most := math.Inf(1), math.Inf(-1)
	add := func(v float64) {
		if finite(v) {
			least, most = min(least, v), max(most, v)
		}
	}
	at := sh.RingDeg(sh.Optics.Start.Distance, 0)
	add(at)
	for _, p := range sh.Pulls {
		add(float64(p.FromDeg))
		add(float64(p.ToDeg))
	}
	if most < least {
		return plan.None(), plan.None()
	}
	return plan.Number(most - least), plan.Number((most - least) / ring.Throw())
}

// needed returns the longest time that a rack needs at a stop; endless tells that no
// time does for some.
func (s *search) needed(number float64) (longest plan.Number, endless bool) {
	c := s.change
	c.Stop, c.Needs, c.Bare = number, true, true
	longest = plan.None()
	t, ok := s.retake(c)
	if !ok || t.Shot.Optics.Ring == nil {
		return longest, false
	}
	for _, p := range t.Shot.Pulls {
		switch {
		case p.Kind != "rack":
		case !p.Needed.Known():
			endless = true
		case !longest.Known() || p.Needed > longest:
			longest = p.Needed
		}
	}
	return longest, endless
}
