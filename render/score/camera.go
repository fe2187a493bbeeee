// The band of the camera, from the lanes of render/score/lanes, and what a camera that
// turns adds to the other bands: where a turn and a rack overlap, and who is out of the
// picture, or behind somebody.

package score

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/lanes"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// cameraBand returns the band, if the camera does anything that it shows.
func cameraBand(w *bands.Window) []bands.Section {
	all := lanes.Of(w.Shot)
	if len(all) == 0 {
		return nil
	}
	n, room := float64(len(all)), bands.LaneHeight+bands.BandGap
	return []bands.Section{{Name: "camera", Least: n*lanes.Least + room, Most: n*lanes.Most + room, OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			sh.Open(g, top, "camera", "Camera")
			each := (height - room) / n
			c := sheet.Clearing{Bounds: draw.Box{X: sh.Left, Y: top + bands.LaneHeight - 1, W: sh.Window.Right - sh.Left, H: height - room + 2}}
			sh.BlockPlumbs(&c)
			var places []lanes.Place
			for i := range all {
				places = append(places, lanes.Place{Leaf: sh, Lane: &all[i], Top: top + bands.LaneHeight + each*float64(i), Height: each})
			}
			for _, p := range places {
				drawLane(g, &c, p)
			}
			peaks := g.Group("peaks")
			for _, p := range places {
				p.WriteMoves(peaks, &c, p.Lane.Moves, "")
			}
		}}}
}

// drawLane draws a lane's name, its scale and its curve.
func drawLane(g *draw.Group, c *sheet.Clearing, p lanes.Place) {
	lg := g.Group("lane")
	lg.Title = p.Lane.Name + " of the camera"
	p.DrawHead(lg)
	if run := p.Run(); len(run) > 1 {
		lg.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.WindowWidth)})
		c.Block(run, sheet.Medium+0.6)
	}
}

// A joint is a stretch of time in which the camera turns and a rack is on its way.
type joint struct {
	from, to float64
	title    string
}

// jointsOf returns where turns and racks overlap.
func jointsOf(s *plan.Shot) (joints []joint) {
	for _, t := range s.Turns {
		for _, p := range s.Pulls {
			from, to := max(float64(t.Start), float64(p.Start)), min(float64(t.End), float64(p.Land))
			if p.Kind != "follow" && to > from {
				joints = append(joints, joint{from, to, fmt.Sprintf("%s and pull %d overlap for %s", t.Kind, p.Number, sheet.Figures.Time(to-from))})
			}
		}
	}
	return joints
}

// drawJoints shades, through the bands of the camera and of the hand, where turns and
// racks overlap.
func drawJoints(sh *bands.Leaf, root *draw.Group) {
	joints := jointsOf(sh.Shot)
	top, bottom, ok := sh.Reach("camera")
	high, low, hand := sh.Reach("hand")
	switch {
	case len(joints) == 0 || sh.Shot.Optics.Rig == nil || !ok && !hand:
		return
	case !ok: // the camera is on another sheet
		top, bottom = high, low
	case hand:
		bottom = low
	}
	g := root.Group("pan-and-pull")
	for _, j := range joints {
		from, to := sh.Window.X(j.from), sh.Window.X(j.to)
		if to <= from {
			continue
		}
		signs.DrawJoint(g, draw.Box{X: from, Y: top + bands.LaneHeight, W: to - from, H: bottom - top - bands.LaneHeight}).Title = j.title
	}
}

// framed returns from when to when a subject is in the picture, in seconds: what the plan
// says of it, if it says anything.
func framed(s *plan.Shot, u *plan.Subject) (list [][2]float64) {
	if u.Seen == nil {
		return s.Framed(u)
	}
	for _, in := range u.InFrame {
		list = append(list, [2]float64{float64(in[0]), float64(in[1])})
	}
	return list
}

// outOf returns from when to when a subject of a camera that turns or leaves its axis is
// out of the picture, in seconds.
func outOf(s *plan.Shot, u *plan.Subject) (list [][2]float64) {
	if s.Optics.Rig == nil {
		return nil
	}
	at, end := 0.0, float64(s.Duration)
	for _, in := range framed(s, u) {
		if in[0] > at {
			list = append(list, [2]float64{at, in[0]})
		}
		at = in[1]
	}
	if end > at {
		list = append(list, [2]float64{at, end})
	}
	return list
}

// behind returns from when to when somebody stands in the way of a subject that is in the
// picture, in seconds.
func behind(s *plan.Shot, u *plan.Subject) (list [][2]float64) {
	if u.Seen == nil || len(u.Blocked) == 0 {
		return nil
	}
	outs := outOf(s, u)
	for _, b := range u.Blocked {
		at, end := float64(b[0]), float64(b[1])
		for _, out := range outs {
			if out[0] > at {
				list = append(list, [2]float64{at, min(out[0], end)})
			}
			if at = max(at, out[1]); at >= end {
				break
			}
		}
		list = append(list, [2]float64{at, end})
	}
	return slices.DeleteFunc(list, func(in [2]float64) bool { return in[1] <= in[0] })
}

// drawBehind marks a subject's bar, which stands on base, where somebody is in the way.
func drawBehind(g *draw.Group, w *bands.Window, u *plan.Subject, base float64) {
	for _, in := range behind(w.Shot, u) {
		from, to := w.X(in[0]), w.X(in[1])
		if to <= from {
			continue
		}
		g.Add(draw.Rect{Box: draw.Box{X: from, Y: base - signs.BarHeight, W: to - from, H: signs.BarHeight}.Grow(0.1), Fill: draw.Paper})
		signs.DrawBlocked(g, from, to, base, signs.Name{})
	}
}

// drawOut hatches a subject's bar where it is out of the picture.
func drawOut(g *draw.Group, w *bands.Window, u *plan.Subject, y, half float64) {
	for _, out := range outOf(w.Shot, u) {
		if from, to := w.X(out[0]), w.X(out[1]); to > from {
			signs.DrawOut(g, draw.Box{X: from, Y: y - half, W: to - from, H: 2 * half})
		}
	}
}
