// Package scenes writes the part of the pull list that tells of scenes: who and what stands
// where on the floor, the lines of action, the cuts and the set-ups.
package scenes

import (
	"fmt"
	"math"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// margin stands before all that belongs to a scene.
const margin = "  "

// Write writes the scenes of a plan, in the order of the plan.
func Write(w *console.Lines, p *plan.Plan) {
	in := units.ForTable(p.Units == "imperial")
	for _, sc := range p.Scenes {
		w.Line("")
		write(w, sc, in)
	}
}

// Titled returns the title of a scene.
func Titled(sc *plan.Scene) string {
	if sc.Title == "" {
		return "A scene without a title"
	}
	return "Scene " + sc.Title
}

func write(w *console.Lines, sc *plan.Scene, in units.Style) {
	w.Wrapped(console.Bold, "", Titled(sc))
	about := "lasts " + in.Time(float64(sc.Duration))
	if sc.Origin != "" {
		about += ", the zero point of its floor is " + sc.Origin
	}
	w.Hanging(console.Dim, margin, about)
	if len(sc.Setups) > 0 {
		w.Hanging(console.Dim, margin, units.Count(len(sc.Setups), "set-up")+": "+strings.Join(sc.Setups, ", "))
	}
	part(w, "marks", sc.Marks, func(m plan.FloorMark) []string {
		return []string{m.Name + ": " + moments.FloorPlace(float64(m.Right), float64(m.Upstage), float64(m.High), in)}
	})
	part(w, "on the floor", sc.Subjects, func(u plan.Staged) []string { return places(u, in) })
	part(w, "lines of action", sc.Axes, func(a plan.LineOfAction) []string { return []string{axis(a, in)} })
	part(w, "cuts", sc.Cuts, func(c plan.SceneCut) []string { return []string{cut(c, in)} })
}

// part writes a part of a scene under its name, if there is anything in it: of each of a
// list some lines, the first of which begins farther to the left.
func part[T any](w *console.Lines, name string, list []T, says func(T) []string) {
	if len(list) == 0 {
		return
	}
	w.Line("")
	w.Line(margin + w.Screen.Paint(console.Dim, name))
	for _, of := range list {
		for i, text := range says(of) {
			indent := margin + margin
			if i > 0 {
				indent += margin
			}
			w.Hanging(console.Plain, indent, text)
		}
	}
}

// places says where somebody is at first, and where they go and when.
func places(u plan.Staged, in units.Style) []string {
	if len(u.Path) == 0 {
		return []string{u.Name}
	}
	first := u.Path[0]
	switch {
	case u.Unknown:
		first.High = 0
	case u.Eyes > 0: // what they stand on is told, and their eyes over it
		first.High -= plan.Number(u.Eyes)
	}
	text := u.Name + ": " + moments.FloorPoint(&first, in)
	switch {
	case u.Unknown:
		text += ", level with each lens"
	case u.Eyes > 0:
		text += ", eyes " + in.Tape(u.Eyes)
	}
	if u.At != "" && (u.At[0] < '0' || u.At[0] > '9') { // else it says the same
		text += " · at " + u.At
	}
	list := []string{text}
	for _, leg := range u.Legs {
		list = append(list, step(u, leg, in))
	}
	return list
}

// step says one walk of somebody.
func step(u plan.Staged, leg plan.Leg, in units.Style) string {
	to, eyes := leg.To, ""
	switch high := float64(to.High); {
	case u.Unknown:
		to.High = 0
	case u.Eyes > 0:
		to.High = 0
		if math.Abs(high-float64(leg.From.High)) >= 0.001 {
			eyes = ", eyes then " + in.Tape(high) + " high"
		}
	}
	text := fmt.Sprintf("%s to %s: to %s%s", in.Time(leg.Start), in.Time(leg.End), moments.FloorPoint(&to, in), eyes)
	if leg.Anchor != "" {
		text += " · " + leg.Anchor
	}
	return text
}

// axis says a line of action.
func axis(a plan.LineOfAction, in units.Style) string {
	text := fmt.Sprintf("%s to %s, %s to %s", a.From, a.To, in.Time(float64(a.Start)), in.Time(float64(a.End)))
	if a.Said {
		text += ", as the plan says"
	}
	return text
}

// cut says a cut.
func cut(c plan.SceneCut, in units.Style) string {
	text := "to " + c.To + " at " + in.Time(float64(c.T))
	if c.FromEdit {
		text += ", by the edit"
	}
	if c.Because != "" {
		text += " · " + c.Because
	}
	return text
}

// Shot writes what a shot has of its scene and where its camera stands; nothing for one
// that has nothing of a scene and no place.
func Shot(w *console.Lines, s *plan.Shot, in units.Style) {
	if s.Staging == nil {
		return
	}
	if text := moments.Stages(s, in); text != "" {
		w.Hanging(console.Dim, margin, text)
	}
	if s.Placed {
		w.Hanging(console.Dim, margin, "camera at "+moments.Stands(s, 0, in))
	}
	for _, text := range moments.Sights(s.Views, in) {
		w.Hanging(console.Dim, margin, text)
	}
}

// Seen says how the camera of a shot sees somebody as the shot starts, and from when to when
// they are in the picture.
func Seen(s *plan.Shot, u *plan.Subject, in units.Style) string {
	text := moments.InFrame(s, u, in)
	if s.Staging == nil || !s.Placed || u.Seen == nil {
		return text
	}
	tape := "tape " + in.Tape(float64(u.Tape))
	if u.Measured.Known() {
		tape = "tape " + in.Tape(float64(u.Measured)) + " as measured"
	}
	return fmt.Sprintf("%s, focus %s, off axis %s, %s", tape, in.Tape(float64(u.Distance)), in.AngleTo(float64(u.OffAxis), 1), text)
}

// Goes says a move of a placed camera straight to another place, with where that is; ok is
// false for any other move.
func Goes(s *plan.Shot, b *plan.Blocking, in units.Style) (text string, ok bool) {
	if b.Kind != "camera" || s.Staging == nil || !s.Placed {
		return "", false
	}
	p := s.Stands(float64(b.End))
	return moments.Goes(b, in) + ", to " + moments.FloorPlace(p.X, p.Y, p.Z, in), true
}

// Alone returns a shot as one of a plan that has no scene but that of the shot, and those
// scenes.
func Alone(p *plan.Plan, s *plan.Shot) (*plan.Shot, []*plan.Scene) {
	if s.Staging == nil || s.Of < 0 || s.Of >= len(p.Scenes) {
		return s, nil
	}
	only, staging := *s, *s.Staging
	staging.Of = 0
	only.Staging = &staging
	return &only, []*plan.Scene{p.Scenes[s.Of]}
}
