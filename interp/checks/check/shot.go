// A shot as checks see it, and what several of them ask or offer alike.

package check

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/shot"
	"pullscore/interp/stops"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// A Shot is a built shot. A check reads it, and writes nothing to it.
type Shot struct {
	shot.Built
	Units units.Style // how lengths are written in it
}

// Of returns a built shot as the checks see it.
func Of(b *shot.Built) *Shot {
	s := &Shot{Built: *b}
	if b.Plan.Imperial {
		s.Units.System = units.Imperial
	}
	return s
}

// A Check tells of one thing, or of several that are found in one place.
type Check struct {
	Codes []rule.Code // all that it may tell
	Run   func(*Shot) []Finding
}

// A Finding is a diagnostic of a shot, with the changes that may cure it.
type Finding struct {
	lang.Diagnostic
	Item int    // the statement that it is about, from 1; 0: the shot
	Who  string // the subject that it is about, where that is not whom its pull goes to
	// Tries returns what may cure it, the best first; nil where nothing does. They
	// are computed only when they are asked for: a shot has many findings, and is
	// built for many cures of which nobody asks more.
	Tries func() []change.Change
	// Untried are cures that nothing can try, since they change what all figures mean.
	Untried []change.Change
	// Mended are the changes of the whole shot that were tried and that remove it,
	// whichever finding they were tried for.
	Mended []change.Change
	// Held are the changes that have been tried and hold as its cures, by what these say.
	Held map[string]change.Change
	// Needs is the time that its rack needs, seconds; 0: nothing is said of that. It
	// has not been tried yet, and is told only once it has.
	Needs float64
}

// Figure returns a number behind a finding.
func Figure(name string, v float64) lang.Figure { return lang.Figure{Name: name, Value: v} }

// About returns a finding as one about a pull.
func (b *Shot) About(p *shot.Pull, f Finding) Finding {
	f.Item, f.Pull = p.Rack.Item+1, p.Plan.Number
	if f.Range == (lang.Range{}) {
		f.Range = p.Rack.Stmt.Range()
	}
	if call := b.Items[p.Rack.Item].In.Call; call != nil {
		f.Related = append(f.Related, lang.Related{Message: "in the move used here", Range: call.Range()})
	}
	if f.Time == 0 {
		f.Time = p.Rack.StartS
	}
	return f
}

// InOrder returns findings as they are told, with figures that can be written.
func (b *Shot) InOrder(found []Finding) []Finding {
	for i := range found {
		f := &found[i]
		f.Shot = b.Head.ID
		f.Figures = slices.DeleteFunc(f.Figures, func(g lang.Figure) bool { return math.IsInf(g.Value, 0) || math.IsNaN(g.Value) })
	}
	return found
}

// FromText returns what a pull leaves, in words.
func (b *Shot) FromText(p *shot.Pull) string { return b.GoalBefore(p).Text }

// Racked names a rack by where it goes from and to.
func (b *Shot) Racked(p *shot.Pull) string {
	return fmt.Sprintf("%s to %s", b.FromText(p), p.Rack.ToText())
}

// InList reports whether a list has the shot, so that what is before its first
// frame is not wrong but trimmed.
func (b *Shot) InList() bool { return b.Cut != nil && b.Cut.List != nil }

// Unscripted reports whether a line was found in subtitles of a talk that nobody wrote.
func (b *Shot) Unscripted(l *clock.Line) bool {
	return l.Heard != nil && b.Cut != nil && b.Cut.Subtitles != nil && b.Cut.Subtitles.Stmt.Unscripted
}

// A MarkedStop is a stop of the lens: its f-number, and the change that sets it on
// the scale that the shot's own stop is written on.
type MarkedStop struct {
	Number float64
	Change change.Change
}

// StopsOf returns the stops that the lens has: its widest, the marked
// third-stops between, and its smallest.
func (b *Shot) StopsOf() []MarkedStop {
	var list []MarkedStop
	for _, n := range stops.Scale(b.Setup.Spoken) {
		m := MarkedStop{b.Setup.Spoken.Number(n), change.Change{Stop: n}}
		if b.Setup.Spoken.T {
			m.Change = change.Change{TStop: n}
		}
		list = append(list, m)
	}
	return list
}

// OnScreen says that a time is screen time, where that is not the time on set.
func (b *Shot) OnScreen() string {
	if b.Plan.Speed().Off() {
		return " on the screen"
	}
	return ""
}

// StopText writes an f-number on the scale that the shot speaks.
func (b *Shot) StopText(number float64, r units.Round) string {
	return b.Units.Stop(b.Setup.Spoken.Mark(number), b.Setup.Spoken.T, r)
}

// StopTry offers the nearest stop, closing down (or opening up), at which ok
// holds of the shot.
func (b *Shot) StopTry(closing bool, ok func(at *shot.Built) bool) []change.Change {
	scale := b.StopsOf()
	if !closing {
		slices.Reverse(scale)
	}
	for _, s := range scale {
		if closing && s.Number <= b.Setup.Number*1.01 || !closing && s.Number >= b.Setup.Number*0.99 {
			continue
		}
		if ok(b.AtStop(s.Number)) {
			return []change.Change{s.Change}
		}
	}
	return nil
}

// Edited returns the change that makes one edit.
func Edited(e change.Edit) change.Change { return change.Change{Edits: []change.Edit{e}} }

// OverTry offers another length for a rack.
func (b *Shot) OverTry(p *shot.Pull, t float64) []change.Change {
	if m := p.Rack.With; m != nil && !m.Keeps && t > 0 && !math.IsInf(t, 0) { // they stay together
		return []change.Change{Edited(change.Edit{Kind: change.MoveOver, Item: m.Item + 1, What: m.Kind, Seconds: t})}
	}
	if r := p.Rack; r.Follow || r.With != nil || r.On != nil && r.Landing != nil || !(t > 0) || math.IsInf(t, 0) {
		return nil
	}
	return []change.Change{Edited(change.Edit{Kind: change.Over, Item: p.Rack.Item + 1, Seconds: t})}
}

// LaterTry offers a moment later by what is missing, for a rack that hangs on
// one.
func (b *Shot) LaterTry(p *shot.Pull, missing float64) []change.Change {
	on, landing := p.Rack.On, p.Rack.Landing
	if on == nil && landing == nil || on != nil && landing != nil {
		return nil
	}
	if on != nil && on.Offset != nil || landing != nil && landing.Offset != nil {
		return nil
	}
	return []change.Change{Edited(change.Edit{
		Kind: change.Later, Item: p.Rack.Item + 1, Seconds: units.Up(missing, 10), Text: p.Rack.Anchor,
	})}
}
