// The drawings that can be asked for, by name.

package main

import (
	"pullscore/interp/plan"
	"pullscore/render"
	"pullscore/render/draw"
)

// drawingsByName are what draw makes of a shot: a page of the display list or more
// each. Their names are those of the flag, of the help and of the files.
var drawingsByName = map[string]func(*plan.Shot, render.Options) []*draw.Page{
	"score":    render.Score,
	"overhead": render.Overhead,
	"strip":    render.Strip,
	"dial":     render.Dial,
}
