// focus-jumps: who is sharp before a cut is soft after it, or nobody is sharp after it.

package covered

import (
	"fmt"
	"math"
	"strconv"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// How long nobody is sharp after a cut until that is told, and how closely that is looked
// at, in seconds.
const (
	startles = 0.3
	looks    = 0.05
)

// mostMoved is how far a cut is moved at most as a cure, seconds.
const mostMoved = 1.0

// jumps tells of the cuts at which the focus jumps.
func (f *finder) jumps() {
	for i := range f.cuts {
		c := &f.cuts[i]
		if c.Because != "" {
			continue
		}
		message, blur := f.jump(i, float64(c.T))
		if message == "" {
			continue
		}
		d := f.tell(rule.FocusJumps, lang.Warning, float64(c.T), message, "",
			lang.Figure{Name: "time_s", Value: float64(c.T)}, lang.Figure{Name: "blur_arcmin", Value: blur})
		f.moved(d, i)
	}
}

// jump says how the focus jumps if a cut is at a time of the scene; "" where it does not.
// blur is in arc minutes, NaN where that is not the reason.
func (f *finder) jump(i int, t float64) (message string, blur float64) {
	c := &f.cuts[i]
	if c.setup < 0 {
		return "", math.NaN()
	}
	if i > 0 && f.cuts[i-1].setup >= 0 && f.cuts[i-1].setup != c.setup {
		if who, blur := f.softer(f.cuts[i-1].setup, c.setup, t); who != "" {
			return fmt.Sprintf("at the cut from %s to %s, %s goes from sharp to %s soft", f.cuts[i-1].To, c.To, who, f.units.Blur(blur)), blur
		}
	}
	if until := min(t+startles, c.until); f.nobodySharp(c.setup, t, until) {
		return fmt.Sprintf("nobody in the picture is sharp for the first %s of %s", f.units.Time(until-t), c.To), math.NaN()
	}
	return "", math.NaN()
}

// softer returns whom the focus rests on in one set-up and the audience sees as soft in
// another, at the same time of the scene, with the blur in arc minutes.
func (f *finder) softer(before, after int, t float64) (who string, blur float64) {
	old, next := f.Shots[before], f.Shots[after]
	from, ok := inShot(old, t)
	to, both := inShot(next, t)
	if !ok || !both {
		return "", 0
	}
	for _, name := range restsOn(old, from) {
		u, w := old.Subject(name), next.Subject(name)
		if u == nil || w == nil || !old.SharpAt(u, from) || f.FrameIn(before, u, from) == coverage.Out {
			continue
		}
		if frame := f.FrameIn(after, w, to); frame != coverage.In && frame != coverage.Edge {
			continue
		}
		if blur := next.BlurAt(w, to); blur > viewer.Seen {
			return name, blur
		}
	}
	return "", 0
}

// restsOn returns whom the focus rests on in a shot, or follows; nobody while a rack is on
// its way.
func restsOn(s *plan.Shot, t float64) []string {
	goal := &s.Optics.Start
	for _, p := range s.Pulls {
		if float64(p.Start) > t+noTime {
			break
		}
		if p.Kind == "rack" && float64(p.Land) > t+noTime {
			return nil
		}
		goal = &p.Goal
	}
	switch {
	case goal.Soft:
		return nil
	case len(goal.Names) > 0:
		return goal.Names
	case goal.Name != "":
		return []string{goal.Name}
	}
	return nil
}

// nobodySharp reports whether a set-up has somebody in its picture, and nobody there is
// sharp at any time between two of the scene.
func (f *finder) nobodySharp(setup int, from, to float64) bool {
	s := f.Shots[setup]
	start, ok := inShot(s, from)
	end, both := inShot(s, to)
	if !ok || !both && end <= start {
		return false
	}
	anybody := false
	steps := max(1, int(math.Ceil((end-start)/looks-noTime)))
	for i := range steps + 1 {
		t := start + (end-start)*float64(i)/float64(steps)
		for _, u := range s.Subjects {
			if frame := f.FrameIn(setup, u, t); frame == coverage.Out || frame == coverage.Blocked {
				continue
			}
			if s.SharpAt(u, t) {
				return false
			}
			anybody = true
		}
	}
	return anybody
}

// moved offers to move a cut by whole frames, to the nearest time at which the focus does
// not jump.
func (f *finder) moved(d *lang.Diagnostic, i int) {
	c := &f.cuts[i]
	if c.FromEdit {
		return
	}
	frames, seconds := f.Shots[max(c.setup, 0)].Rate.Exact()
	if frames <= 0 {
		return
	}
	frame := float64(seconds) / float64(frames)
	for n := 1; float64(n)*frame <= mostMoved+noTime; n++ {
		for _, t := range []float64{float64(c.T) + float64(n)*frame, float64(c.T) - float64(n)*frame} {
			if f.calm(i, t) {
				d.Cures = append(d.Cures, f.cutAt(c, t))
				return
			}
		}
	}
}

// calm reports whether a cut may be at a time of the scene: between those beside it, with
// both set-ups running, and without a jump.
func (f *finder) calm(i int, t float64) bool {
	c := &f.cuts[i]
	if c.setup < 0 || t < 0 || t >= c.until-noTime {
		return false
	}
	if _, ok := inShot(f.Shots[c.setup], t); !ok {
		return false
	}
	if i > 0 {
		if before := &f.cuts[i-1]; t <= float64(before.T)+noTime {
			return false
		} else if before.setup >= 0 {
			if _, ok := inShot(f.Shots[before.setup], t); !ok {
				return false
			}
		}
	}
	message, _ := f.jump(i, t)
	return message == ""
}

// cutAt returns the cure that has a cut at a time of the scene.
func (f *finder) cutAt(c *cut, t float64) lang.Cure {
	t = units.Nearest(t, 1000)
	on := "on " + strconv.FormatFloat(t, 'f', -1, 64) + " s"
	return lang.Cure{Text: fmt.Sprintf("cut to %s, %s", c.To, on), Value: t, Unit: "s", Edits: f.rewrite(c.At, on)}
}
