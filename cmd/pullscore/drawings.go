// The drawings that can be asked for, by name.

package main

import (
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/render/draw"
	"pullscore/render/floor"
	"pullscore/render/ring"
	"pullscore/render/score"
	"pullscore/render/sheet"
	stopspaper "pullscore/render/stops"
)

// A drawing makes of a shot a page of the display list or more. The result that
// the shot comes from is there for drawings that take it anew.
type drawing func(*interp.Result, *plan.Shot, sheet.Options) []*draw.Page

// drawingsByName are what draw can draw. Their names are those of the flag, of
// the help and of the files.
var drawingsByName = map[string]drawing{
	"score":    fromShot(score.Score),
	"overhead": fromShot(floor.Overhead),
	"strip":    fromShot(ring.Strip),
	"dial":     fromShot(ring.Dial),
	"stops":    drawStops,
}

// fromShot is a drawing that needs the shot alone.
func fromShot(pages func(*plan.Shot, sheet.Options) []*draw.Page) drawing {
	return func(_ *interp.Result, shot *plan.Shot, opt sheet.Options) []*draw.Page { return pages(shot, opt) }
}

// drawStops draws the window of stops; nothing where there is none to be had.
func drawStops(res *interp.Result, shot *plan.Shot, opt sheet.Options) []*draw.Page {
	if a := windowOf(res, shot); a != nil {
		return stopspaper.Stops(shot, a, opt)
	}
	return nil
}

// windowOf finds the window of stops of a shot as a drawing needs it; nil where
// the shot cannot be taken anew at any.
func windowOf(res *interp.Result, shot *plan.Shot) *stops.Answer {
	a, ok := stops.Find(res.Retake(shot), res.Kit(), stops.Options{Curve: true, Levers: true})
	if !ok {
		return nil
	}
	return a
}
