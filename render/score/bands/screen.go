// A score for a screen: sheets as high as what is on them, with headings above their rows
// where the screen is narrow.

package bands

import (
	"pullscore/interp/plan"
	"pullscore/render/score/times"
	"pullscore/render/sheet"
)

const (
	narrowHead = 4.6 // height of a heading above its rows
	onOneSheet = 6   // systems
	endless    = 1e5 // room on a sheet
	airLeast   = 24.0
	airMost    = 100.0
)

// NewScreenChart returns the chart of a shot for a screen.
func NewScreenChart(shot *plan.Shot, screen times.Screen) *Chart {
	s := &screen
	d := s.Divide(Lasting(shot), removed(shot))
	sc := &Chart{Shot: shot, Paper: sheet.Paper{W: d.PaperWidth, H: sheet.A4.H}, Left: sheet.Margin + s.Gutter(), PerSecond: d.Axis.PerSecond(), axis: d.Axis, Seconds: Lasting(shot), Systems: onOneSheet, Order: order(shot), screen: s, lap: d.Lap}
	return sc.over(d.Cuts)
}

// Tight reports whether several windows share a sheet of paper, so that none has room to
// spare.
func (sc *Chart) Tight() bool { return sc.screen == nil && sc.Systems > 1 }

// OnScreen reports whether the chart is for a screen.
func (sc *Chart) OnScreen() bool { return sc.screen != nil }

// Narrow reports whether the chart is for a narrow screen.
func (sc *Chart) Narrow() bool { return sc.screen.Narrow() }

// HeadRoom returns what a heading above rows takes, in millimetres: nothing where it stands
// beside the first of them.
func (sc *Chart) HeadRoom() float64 {
	if sc.Narrow() {
		return narrowHead
	}
	return 0
}

// headingRoom returns what the heading of a band takes of the gutter.
func (sc *Chart) headingRoom() float64 {
	if sc.Narrow() {
		return 0
	}
	return 11.5
}

// Words returns where sentences start, in millimetres.
func (sc *Chart) Words() float64 {
	if sc.Narrow() {
		return sheet.Margin
	}
	return sc.Left
}

// spare returns the height that the sections of a sheet may share beyond what they need, in
// millimetres.
func (sh *Sheet) spare() float64 {
	if sh.screen == nil {
		return sh.room() - sh.usedBut(nil)
	}
	return min(max(0.3*sh.screen.Width, airLeast), airMost) * float64(sh.systems())
}
