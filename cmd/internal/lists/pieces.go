// The cut in the pull list: the pieces of a shot, and where each move lies in the
// record and in the source.

package lists

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
)

// cutUp reports whether the record of a shot is not simply one run of it with all of
// its moves.
func cutUp(s *plan.Shot) bool {
	return s.Recut() || slices.ContainsFunc(s.Pulls, func(u *plan.Pull) bool { return u.IsRemoved() })
}

// pieces writes what the cut shows of a shot, a line a piece.
func (w *writer) pieces(s *plan.Shot) {
	if !cutUp(s) {
		return
	}
	for i := range s.Pieces {
		p := &s.Pieces[i]
		text := fmt.Sprintf("piece %d  %s to %s  source %s  rec %s to %s  %d fr", p.Number,
			figures.Time(float64(p.From)), figures.Time(float64(p.To)), p.SourceIn, p.RecordIn, p.RecordOut, p.Frames())
		if p.Take != "" {
			text += "  take " + p.Take
		}
		if p.Speed != 1 {
			text += "  speed " + figures.Number(float64(p.Speed), 3)
		}
		if text = console.Clean(text); len(margin)+console.Columns(text) <= w.Screen.Width {
			w.Line(margin + w.Screen.Paint(console.Dim, text))
			continue
		}
		w.Wrapped(console.Dim, margin, strings.Join(strings.Split(text, "  "), ", "))
	}
}

// inRecord says where a pull lies in the record and in the source.
func inRecord(s *plan.Shot, u *plan.Pull) (parts []string) {
	switch c := u.InCut; {
	case !cutUp(s):
		return []string{s.Timecode(float64(u.Start))}
	case c.IsRemoved():
		return []string{"rec removed"}
	case c.StartRecord == "" && c.LandRecord == "":
		parts = []string{"rec " + seenFrom(s, u)}
	case c.StartRecord == "":
		parts = []string{"rec lands " + c.LandRecord}
	default:
		parts = []string{"rec " + strings.Join(append([]string{c.StartRecord}, c.Again...), ", ")}
	}
	return append(parts, "source "+u.StartSource)
}

// seenFrom returns the first timecode of the record that shows a part of a pull of
// which neither the start nor the landing is shown.
func seenFrom(s *plan.Shot, u *plan.Pull) string {
	for i := range s.Pieces {
		if p := &s.Pieces[i]; p.From < u.Land && p.To > u.Start {
			return p.RecordIn
		}
	}
	return ""
}

// cutColumns are the columns that only a list has in which a cut shows a shot.
var cutColumns = []column{
	inCut("in_cut", func(c *plan.InCut) string { return c.State }),
	inCut("start_record", func(c *plan.InCut) string { return c.StartRecord }),
	inCut("land_record", func(c *plan.InCut) string { return c.LandRecord }),
	inCut("start_source", func(c *plan.InCut) string { return c.StartSource }),
	inCut("land_source", func(c *plan.InCut) string { return c.LandSource }),
	{"take", func(_ *plan.Plan, s *plan.Shot, u *plan.Pull) string {
		if p := s.PieceAt(float64(u.Start)); p != nil && !u.IsRemoved() {
			return guarded(p.Take)
		}
		return ""
	}},
}

// inCut makes a column of what the cut shows of a pull; empty where no list has its
// shot.
func inCut(name string, value func(*plan.InCut) string) column {
	return figure(name, func(u *plan.Pull) string {
		if u.InCut == nil {
			return ""
		}
		return value(u.InCut)
	})
}
