// The band of the camera: how it turns and goes, a lane for each way that it does. A
// lane has a scale of its own, and 0 is where the camera starts. The greatest speed of a
// move is written where it is reached.

package score

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// A cameraLane is one way in which the camera turns or goes.
type cameraLane struct {
	name      string
	note      string                  // which way up is, where it does not say so itself
	more      string                  // the word of a move to a greater value
	less      string                  // and to a smaller one
	angle     bool                    // degrees; else metres
	at        func(t float64) float64 // the value at a time
	moves     []cameraMove
	low, high float64 // what it shows
}

// A cameraMove is a move of the camera in its lane. Seconds; degrees or metres.
type cameraMove struct {
	start, end float64
	who        string  // to whom it goes, or with whom
	by         float64 // how far, in all
	peak       float64 // the greatest speed, a second
	at         float64 // when it is reached
}

// cameraLanes returns the lanes of a shot: none of a camera that only goes along its
// axis, which the row of moves says.
func cameraLanes(s *plan.Shot) []cameraLane {
	if s.Optics.Rig == nil {
		return nil
	}
	o := &s.Optics
	slides := func(part func(plan.Slide) float64) (func(float64) float64, []cameraMove) { return slidesOf(o, part) }
	push, ins := slides(func(c plan.Slide) float64 { return along(o, c) })
	track, sides := slides(func(c plan.Slide) float64 { return across(o, c) })
	boom, ups := slides(func(c plan.Slide) float64 { return c.Z })
	all := []cameraLane{
		{name: "pan", note: "right is up", more: "right", less: "left", angle: true, at: func(t float64) float64 { return o.Pose(t).Pan }, moves: turnsOf(s, "pan")},
		{name: "tilt", more: "up", less: "down", angle: true, at: func(t float64) float64 { return o.Pose(t).Tilt }, moves: turnsOf(s, "tilt")},
		{name: "boom", more: "up", less: "down", at: boom, moves: ups},
		{name: "track", note: "right is up", more: "right", less: "left", at: track, moves: sides},
		{name: "dolly", note: "in is up", more: "in", less: "out", at: func(t float64) float64 { return push(t) + o.Camera.At(t) - o.Camera.At(0) }, moves: append(ins, stepsOf(o)...)},
	}
	all = slices.DeleteFunc(all, func(l cameraLane) bool { return len(l.moves) == 0 })
	for i := range all {
		all[i].fit(s)
	}
	return all
}

// along returns how far a slide takes the camera the way it looks as the slide starts.
func along(o *plan.Optics, c plan.Slide) float64 {
	sin, cos := math.Sincos(o.Pose(c.Start).Pan * math.Pi / 180)
	return c.X*sin + c.Y*cos
}

// across returns how far a slide takes the camera to its right.
func across(o *plan.Optics, c plan.Slide) float64 {
	sin, cos := math.Sincos(o.Pose(c.Start).Pan * math.Pi / 180)
	return c.X*cos - c.Y*sin
}

// slidesOf returns the sum of one part of all slides as a function of time, in metres,
// and the slides that have any of it.
func slidesOf(o *plan.Optics, part func(plan.Slide) float64) (at func(t float64) float64, moves []cameraMove) {
	const least = 1e-4 // a tenth of a millimetre is rounding
	var own []plan.Slide
	var by []float64
	for _, c := range o.Rig.Slides {
		if v := part(c); math.Abs(v) >= least {
			own, by = append(own, c), append(by, v)
			moves = append(moves, newCameraMove(c.Start, c.End, v, c.Smooth))
		}
	}
	return func(t float64) (sum float64) {
		for i, c := range own {
			sum += by[i] * plan.Ease((t-c.Start)/(c.End-c.Start), c.Smooth)
		}
		return sum
	}, moves
}

// stepsOf returns the moves of a camera along the axis of its start.
func stepsOf(o *plan.Optics) (moves []cameraMove) {
	for _, st := range o.Camera.Steps {
		if by := o.Camera.At(st.End) - o.Camera.At(st.Start); by != 0 {
			moves = append(moves, newCameraMove(st.Start, st.End, by, st.Smooth))
		}
	}
	return moves
}

// peakOfSmooth is the greatest speed of a minimum-jerk move over its mean speed.
const peakOfSmooth = 1.875

func newCameraMove(start, end, by float64, smooth bool) cameraMove {
	m := cameraMove{start: start, end: end, by: by, at: (start + end) / 2, peak: math.Abs(by) / (end - start)}
	if smooth {
		m.peak *= peakOfSmooth
	}
	return m
}

// turnsOf returns the turns of a kind.
func turnsOf(s *plan.Shot, kind string) (moves []cameraMove) {
	for _, t := range s.Turns {
		if t.Kind != kind {
			continue
		}
		m := cameraMove{start: float64(t.Start), end: float64(t.End), by: float64(t.To - t.From), peak: float64(t.Peak)}
		m.at = (m.start + m.end) / 2
		switch {
		case t.Profile == "with":
			m.who, m.at = "with "+t.Target, fastest(s, kind, m.start, m.end)
		case t.Target != "":
			m.who = "to " + t.Target
		}
		moves = append(moves, m)
	}
	return moves
}

// fastest returns the time between two at which the camera turns fastest, to about a
// frame.
func fastest(s *plan.Shot, kind string, from, to float64) float64 {
	deg := func(t float64) float64 {
		if kind == "tilt" {
			return s.Optics.Pose(t).Tilt
		}
		return s.Optics.Pose(t).Pan
	}
	n := max(1, min(int((to-from)*24), 2000))
	best, at, each := -1.0, (from+to)/2, (to-from)/float64(n)
	for i := range n {
		t := from + each*float64(i)
		if v := math.Abs(deg(t+each) - deg(t)); v > best {
			best, at = v, t+each/2
		}
	}
	return at
}

// fit sets what the lane shows: every value of the shot, and where the camera starts.
func (l *cameraLane) fit(s *plan.Shot) {
	const samples = 600
	take := func(t float64) {
		if v := l.at(t); sheet.Finite(v) {
			l.low, l.high = min(l.low, v), max(l.high, v)
		}
	}
	for i := range samples + 1 {
		take(bands.Lasting(s) * float64(i) / samples)
	}
	for _, t := range s.Optics.Keys() {
		if t >= 0 && t <= bands.Lasting(s) {
			take(t)
		}
	}
	if l.high == l.low {
		l.high++
	}
}

// value writes a value of the lane with its unit.
func (l *cameraLane) value(s *plan.Shot, v float64) string {
	switch {
	case v == 0:
		return "0"
	case l.angle:
		return sheet.Figures.Angle(v)
	}
	return sheet.Style(s).Gap(v)
}

// words returns what is said of a move, from the fullest to the shortest.
func (l *cameraLane) words(s *plan.Shot, m cameraMove) []string {
	way, peak := l.more, sheet.Figures.Speed(m.peak)
	if m.by < 0 {
		way = l.less
	}
	if !l.angle {
		peak = sheet.Style(s).Walk(m.peak)
	}
	far := l.value(s, math.Abs(m.by)) + " " + way + ", peak " + peak
	if m.who == "" {
		return []string{far, peak}
	}
	return []string{m.who + ", " + far, far, peak}
}

const (
	cameraLeast = 7.4  // height of a lane, millimetres
	cameraMost  = 15.0 // that it can make use of
	cameraAir   = 1.4  // above and below its curve
)

// cameraBand returns the band, if the camera does anything that it shows.
func cameraBand(w *bands.Window) []bands.Section {
	lanes := cameraLanes(w.Shot)
	if len(lanes) == 0 {
		return nil
	}
	n, room := float64(len(lanes)), bands.LaneHeight+bands.BandGap
	return []bands.Section{{Name: "camera", Least: n*cameraLeast + room, Most: n*cameraMost + room, OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			sh.Open(g, top, "camera", "Camera")
			each := (height - room) / n
			c := sheet.Clearing{Bounds: draw.Box{X: sh.Left, Y: top + bands.LaneHeight - 1, W: sh.Right - sh.Left, H: height - room + 2}}
			sh.BlockPlumbs(&c)
			var places []cameraPlace
			for i := range lanes {
				places = append(places, cameraPlace{sh, &lanes[i], top + bands.LaneHeight + each*float64(i), each})
			}
			for _, p := range places {
				p.draw(g, &c)
			}
			peaks := g.Group("peaks")
			for _, p := range places {
				p.writeMoves(peaks, &c)
			}
		}}}
}

// A cameraPlace is a lane on a sheet.
type cameraPlace struct {
	*bands.Leaf
	lane        *cameraLane
	top, height float64
}

// y returns where a value stands.
func (p cameraPlace) y(v float64) float64 {
	share := (p.lane.high - v) / (p.lane.high - p.lane.low)
	return p.top + cameraAir + min(max(share, 0), 1)*(p.height-2*cameraAir)
}

// draw draws the lane's name, its scale and its curve.
func (p cameraPlace) draw(g *draw.Group, c *sheet.Clearing) {
	lg := g.Group(p.lane.name)
	lg.Title = p.lane.name + " of the camera"
	x, middle := p.Left-bands.HeadGap, p.top+p.height/2
	if p.lane.note != "" {
		lg.Add(draw.NewText(x, middle+1.5+sheet.FontSmall.Middle(), p.lane.note, sheet.FontSmall, draw.Grey).Aligned(draw.End))
		middle -= 1.5
	}
	lg.Add(draw.NewText(x, middle+sheet.FontStrong.Middle(), p.lane.name, sheet.FontStrong, draw.Black).Aligned(draw.End))
	lg.Line(p.Left, p.y(0), p.Right, p.y(0), sheet.Solid(draw.Pale, sheet.Hair))
	for _, v := range []float64{p.lane.low, p.lane.high} {
		lg.Add(draw.NewText(p.Right+1.6, p.y(v)+sheet.FontSmall.Middle(), p.lane.value(p.Shot, v), sheet.FontSmall, draw.Grey))
	}
	var run []draw.Point
	for _, t := range p.Window.Curves.T {
		run = append(run, draw.Point{X: p.Window.X(t), Y: p.y(p.lane.at(t))})
	}
	if len(run) > 1 {
		run = sheet.Simplify(run)
		lg.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
		c.Block(run, sheet.Medium+0.6)
	}
}

// writeMoves writes at the peak of each move where it goes, how far and how fast: as much
// of it as there is room for.
func (p cameraPlace) writeMoves(g *draw.Group, c *sheet.Clearing) {
	for _, m := range p.lane.moves {
		if !p.Window.Holds(m.at) {
			continue
		}
		at := draw.Point{X: p.Window.X(m.at), Y: p.y(p.lane.at(m.at))}
		for _, words := range p.lane.words(p.Shot, m) {
			if c.Write(g, draw.NewText(0, 0, words, sheet.FontSmall, draw.Black), at) {
				break
			}
		}
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
		jg := g.Group("overlap")
		jg.Title = j.title
		shade(jg, draw.Box{X: from, Y: top + bands.LaneHeight, W: to - from, H: bottom - top - bands.LaneHeight})
	}
}

// shade draws the ground of a joint.
func shade(g *draw.Group, box draw.Box) {
	const pitch, least = 1.5, 0.5
	g.Add(draw.Path{Runs: draw.Hatch(cornersOf(box), pitch, least), Stroke: sheet.Solid(draw.Pale, sheet.Medium)})
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

// drawOut hatches a subject's bar where it is out of the picture.
func drawOut(g *draw.Group, w *bands.Window, u *plan.Subject, y, half float64) {
	for _, out := range outOf(w.Shot, u) {
		if from, to := w.X(out[0]), w.X(out[1]); to > from {
			outSign(g, draw.Box{X: from, Y: y - half, W: to - from, H: 2 * half})
		}
	}
}

// outSign draws the hatch of who is out of the picture.
func outSign(g *draw.Group, box draw.Box) {
	const pitch, least = 1.1, 0.6
	g.Add(draw.Rect{Box: draw.Box{X: box.X, Y: box.Y - 0.1, W: box.W, H: box.H + 0.2}, Fill: draw.Paper},
		draw.Path{Runs: draw.Hatch(cornersOf(box), pitch, least), Stroke: sheet.Solid(draw.Grey, sheet.Hair)})
}

func cornersOf(b draw.Box) []draw.Point {
	return []draw.Point{{X: b.X, Y: b.Y}, {X: b.Right(), Y: b.Y}, {X: b.Right(), Y: b.Bottom()}, {X: b.X, Y: b.Bottom()}}
}

// cameraKey returns the signs that a moving camera adds to the key.
func cameraKey(s *plan.Shot) (entries []sheet.KeyEntry) {
	if slices.ContainsFunc(s.Subjects, func(u *plan.Subject) bool { return len(outOf(s, u)) > 0 }) {
		entries = append(entries, sheet.Entry("out of picture", 5, func(g *draw.Group, x, y float64) {
			outSign(g, draw.Box{X: x, Y: y - 1.2, W: 5, H: 2.4})
		}))
	}
	if s.Optics.Rig != nil && len(jointsOf(s)) > 0 {
		entries = append(entries, sheet.Entry("turn + rack", 4.5, func(g *draw.Group, x, y float64) {
			shade(g, draw.Box{X: x, Y: y - 1.4, W: 4.5, H: 2.8})
		}))
	}
	return entries
}
