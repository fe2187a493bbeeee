// What is drawn of a scene that is staged alone: the flags of runs that nobody holds, and
// how each camera stands.

package coverage

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// The strip below the bars that flags stand in, in millimetres.
const (
	flagStrip = 4.8
	flagAir   = 0.8
)

// A flagOn is a flag at the word on which its run begins.
type flagOn struct {
	x    float64
	flag *plan.Flag
}

// flagsOf returns the flags of the runs that begin in a row and that nobody holds.
func flagsOf(sc *coverage.Scene, row []placed) (list []flagOn) {
	if sc.Staged == nil {
		return nil
	}
	for _, p := range row {
		for i := range sc.Staged.Flags {
			if f := &sc.Staged.Flags[i]; unheld(f) && math.Abs(f.Time-float64(p.word.Start)) < 1e-9 {
				list = append(list, flagOn{p.x1, f})
			}
		}
	}
	return list
}

// unheld reports whether a flag tells of words that no set-up holds.
func unheld(f *plan.Flag) bool { return f.Code == "not-held" || f.Code == "not-covered" }

// drawFlags draws flags side by side, each at its word or behind the one before it.
func drawFlags(g *draw.Group, flags []flagOn, y float64) {
	free := math.Inf(-1)
	for _, f := range flags {
		x := max(f.x, free)
		signs.DrawFlag(g, x, y, f.flag.Severity, f.flag.Cause)
		free = x + signs.FlagWidth(f.flag.Cause) + 1
	}
}

// flagged returns what the flags of runs that nobody holds say, each with its letter.
func flagged(sc *coverage.Scene) (list []string) {
	if sc.Staged == nil {
		return nil
	}
	for i := range sc.Staged.Flags {
		if f := &sc.Staged.Flags[i]; unheld(f) {
			list = append(list, fmt.Sprintf("%s: %s.", f.Cause, f.Text))
		}
	}
	return list
}

// setupIndent is how far behind the ID of a set-up the words about it begin, millimetres.
const setupIndent = 22.0

// stagedSetups writes how the camera of each set-up stands as it starts, and how it sees
// everybody.
func (f *flow) stagedSetups(sc *coverage.Scene) {
	for i, s := range sc.Shots {
		set := &sc.Setups[i]
		var lines []string
		for _, parts := range standing(set, s) {
			lines = append(lines, sheet.FontBody.Wrap(strings.Join(parts, " · "), f.right()-wordsFrom-setupIndent)...)
		}
		f.Reserve(textPitch * float64(min(len(lines), 10)))
		for k, line := range lines {
			g, y := f.Take(textPitch, "set-ups")
			if i == 0 && k == 0 {
				g.Add(draw.NewText(sheet.Margin, y+3, "Set-ups", sheet.FontHeading, draw.Black))
			}
			if k == 0 {
				g.Add(draw.NewText(wordsFrom, y+3, set.Shot, sheet.FontStrong, draw.Black).Shortened(setupIndent - 2))
			}
			g.Add(draw.NewText(wordsFrom+setupIndent, y+3, line, sheet.FontBody, draw.Black))
		}
		f.Y += 1
	}
}

// standing says in parts how a set-up is taken and where its camera stands, where people
// look, and how the camera sees everybody; a part of each a line.
func standing(set *coverage.Setup, s *plan.Shot) [][]string {
	in := units.ForTable(s.Imperial)
	taken := []string{fmt.Sprintf("lens %s, %s, %s to %s", set.Lens, set.Stop, in.Time(float64(s.Covers[0])), in.Time(float64(s.Covers[1])))}
	if !s.Placed {
		return [][]string{append(taken, "the camera has no place on the floor")}
	}
	list := [][]string{append(taken, "camera "+moments.Stands(s, 0, in))}
	if looks := moments.Sights(s.Views, in); len(looks) > 0 {
		list = append(list, looks)
	}
	var people []string
	for _, u := range s.Subjects {
		people = append(people, seen(s, u, in))
	}
	if len(people) > 0 {
		list = append(list, people)
	}
	return list
}

// seen says how the camera sees somebody as the shot starts: the tape, the focus distance,
// and the angle off the axis.
func seen(s *plan.Shot, u *plan.Subject, in units.Style) string {
	v := s.ViewOf(u, 0)
	tape, off := v.Tape(), v.OffAxis()
	read := ""
	if u.Seen != nil {
		tape, off = float64(u.Tape), float64(u.OffAxis)
		if u.Measured.Known() {
			read = "*"
		}
	}
	return fmt.Sprintf("%s tape %s%s, focus %s, off axis %s", u.Name, in.Tape(tape), read, in.Tape(v.Along), in.AngleTo(off, 1))
}
