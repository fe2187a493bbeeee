// Shots made by hand whose camera turns, and leaves its axis.

package plans

import (
	"math"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
)

// Aside puts a subject so many metres to the right of the axis of the start.
func (m Maker) Aside(name string, metres float64) Maker {
	m.Subject(name).Across = plan.Still(metres)
	return m
}

// rig returns the rig of the shot, a new one if there is none.
func (m Maker) rig() *plan.Rig {
	if m.Optics.Rig == nil {
		m.Optics.Rig = &plan.Rig{}
	}
	return m.Optics.Rig
}

// Pan turns the camera to an angle in degrees to the right of its start; target is
// whom it goes to, or "".
func (m Maker) Pan(target string, to, start, end float64) Maker {
	m.rig().Pans = append(m.rig().Pans, m.sweep("pan", target, m.Optics.Pose(start).Pan, to, start, end))
	return m
}

// PanTo turns the camera until a subject is in the middle of its picture.
func (m Maker) PanTo(name string, start, end float64) Maker {
	u := m.Subject(name)
	pan, _ := m.Optics.Pose(end).Bearing(u.Across.At(end), u.Along.At(end), 0)
	return m.Pan(name, pan, start, end)
}

// PanWith keeps a subject where they are in the picture.
func (m Maker) PanWith(name string, start, end float64) Maker {
	u := m.Subject(name)
	bearing := func(t float64) float64 {
		pan, _ := m.Optics.Pose(t).Bearing(u.Across.At(t), u.Along.At(t), 0)
		return pan
	}
	from := m.Optics.Pose(start).Pan
	s := m.sweep("pan", name, from, from+plan.Wrapped(bearing(end)-bearing(start)), start, end)
	s.With = u
	t := &m.Turns[len(m.Turns)-1]
	t.Profile, t.Peak = "with", 11
	m.rig().Pans = append(m.rig().Pans, s)
	return m
}

// Tilt turns the camera to an angle in degrees above its start.
func (m Maker) Tilt(to, start, end float64) Maker {
	m.rig().Tilts = append(m.rig().Tilts, m.sweep("tilt", "", m.Optics.Pose(start).Tilt, to, start, end))
	return m
}

func (m Maker) sweep(kind, target string, from, to, start, end float64) plan.Sweep {
	m.Turns = append(m.Turns, plan.Turn{Kind: kind, Target: target, Start: plan.Number(start), End: plan.Number(end), From: plan.Number(from), To: plan.Number(to),
		Peak: plan.Number(1.875 * math.Abs(to-from) / (end - start)), Width: plan.None(), Profile: "smooth"})
	return plan.Sweep{Start: start, End: end, From: from, To: to, Smooth: true}
}

// Slide takes the camera so many metres to its right (track), up (boom) or the way it
// looks (dolly).
func (m Maker) Slide(kind string, by, start, end float64) Maker {
	s := plan.Slide{Start: start, End: end, Smooth: true}
	sin, cos := math.Sincos(m.Optics.Pose(start).Pan * math.Pi / 180)
	switch kind {
	case "track":
		s.X, s.Y = by*cos, -by*sin
	case "dolly":
		s.X, s.Y = by*sin, by*cos
	default:
		s.Z = by
	}
	m.rig().Slides = append(m.rig().Slides, s)
	m.Blocking = append(m.Blocking, plan.Blocking{Kind: kind, Start: plan.Number(start), End: plan.Number(end),
		From: 0, To: plan.Number(by), FromMM: plan.None(), ToMM: plan.None(), Profile: "smooth"})
	return m
}

// drawRig draws what a camera does that turns and goes, one thing after another.
func (m Maker) drawRig(t *rapid.T, names []string, duration float64) {
	n := rapid.IntRange(1, 8).Draw(t, "turns")
	each := duration / float64(n)
	for i := range n {
		start := each * float64(i)
		end := start + each*rapid.Float64Range(0.1, 1).Draw(t, "share")
		name := rapid.SampledFrom(names).Draw(t, "whom")
		switch kind := rapid.SampledFrom([]string{"pan", "pan to", "pan with", "tilt", "track", "dolly", "boom", "aside"}).Draw(t, "kind"); kind {
		case "pan":
			m.Pan("", rapid.Float64Range(-400, 400).Draw(t, "angle"), start, end)
		case "pan to":
			m.PanTo(name, start, end)
		case "pan with":
			m.PanWith(name, start, end)
		case "tilt":
			m.Tilt(rapid.Float64Range(-90, 90).Draw(t, "angle"), start, end)
		case "aside":
			m.Aside(name, rapid.Float64Range(-20, 20).Draw(t, "side"))
		default:
			m.Slide(kind, rapid.Float64Range(-6, 6).Draw(t, "metres"), start, end)
		}
	}
}

// PanAndRack has a camera that pans from one to another as the focus goes there.
func PanAndRack() *plan.Shot {
	m := New("18A", "In at the door", 10).Put("PEVIN", 2.6, 0.08).Put("LETTER", 1.4, 0.02).Put("DOOR", 4.2, 0.1).Start("PEVIN").
		Aside("PEVIN", 0.1).Aside("LETTER", 0.62).Aside("DOOR", -0.9).
		Line("PEVIN", "So was the *letter.", 1.5, 3.4).Line("YSOLT", "Then *nobody came in.", 5, 7)
	letter, nobody := m.Lines[0].Words[3].Start, m.Lines[1].Words[1].Start
	return m.PanTo("LETTER", letter-1.2, letter).PanTo("DOOR", nobody-0.2, nobody+1.6).
		Rack("LETTER", `landing on "letter", with pan`, "he has seen it", letter-1.2, letter).
		Rack("DOOR", `on "nobody"`, "", nobody, nobody+1.4).Shot
}

// AllWays has a camera that pans with somebody, tilts, booms, tracks and pushes.
func AllWays() *plan.Shot {
	m := New("18B", "Down to the hands", 14).Put("PEVIN", 3.4, 0.08).Put("HANDS", 1.9, 0.1).Put("LAMP", 2.4, 0.1).Start("PEVIN").
		Aside("PEVIN", -0.5).Aside("HANDS", 0.45).Aside("LAMP", 1.6).
		Line("PEVIN", "I carried *it myself.", 2, 4).Line("PEVIN", "All the way from the *quay.", 9.6, 12)
	m.Walk("PEVIN", 2.6, 0.5, 3.5)
	m.Subject("PEVIN").Across.Add(plan.Step{Start: 0.5, End: 3.5, To: plan.Spot{Offset: 0.3}})
	return m.PanWith("PEVIN", 0.5, 3.5).Slide("track", 0.6, 3.6, 6).Slide("boom", -0.45, 5, 8).Tilt(-6, 5, 8).
		PanTo("HANDS", 7, 9).Slide("dolly", 0.4, 8.5, 11).Tilt(4, 10, 12).
		Follow("PEVIN", 0.5, 3.5).Rack("HANDS", "", "it is in them", 7.2, 8.8).Rack("PEVIN", `on "quay"`, "", 11, 12.2).Shot
}
