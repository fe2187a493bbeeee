// The drawings that can be asked for, by name.

package main

import (
	"slices"

	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/render/cards"
	coveragepaper "pullscore/render/coverage"
	"pullscore/render/draw"
	"pullscore/render/floor"
	"pullscore/render/floor/staged"
	"pullscore/render/ring"
	"pullscore/render/score"
	"pullscore/render/sheet"
	stopspaper "pullscore/render/stops"
)

// A drawing makes of a shot a page of the display list or more. The result that
// the shot comes from is there for drawings that take it anew.
type drawing func(*interp.Result, *plan.Shot, sheet.Options) []*draw.Page

// A namedDrawing is a drawing with its name, which is that of the flag and of the files.
type namedDrawing struct {
	name string
	draw drawing
	help string
}

// drawingTable is what draw can draw, in the order of its help.
var drawingTable = []namedDrawing{
	{"score", fromShot(score.Score), "who speaks, where everybody is, what is sharp and where the hand is,\nall against one ruler of time"},
	{"floor", fromShot(ownFloor), "the floor from above, to scale: places, ways, field of view, what is\nsharp at every landing, and all tapes; of shots whose cameras stand in\na scene one floor for all, with their tapes"},
	{"ring", fromShot(ring.Ring), "what is taped on, 1:1: strip and marking discs, with the table of\ntheir marks"},
	{"tolerance", fromShot(cards.Tolerance), "a card for whoever watches the marks: how far everybody may miss\ntheirs, 1:5, and how far the ring turns for it"},
	{"log", fromShot(cards.Log), "a log of takes to fill in and to type in for takes"},
	{"stops", drawStops, "the window of stops: what lands and is seen at which"},
	{"coverage", drawCoverage, "one a plan: what each shot has of each word, sharp or soft"},
}

// ofPlan reports whether a drawing shows a whole plan: it is drawn once for all its shots,
// and its file has the name of no shot.
func ofPlan(name string) bool { return name == "coverage" }

// ownFloor draws the floor of a shot that has one of its own; nothing where its camera stands
// on that of a scene.
func ownFloor(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	if staged.On(shot) {
		return nil
	}
	return floor.Draw(shot, opt)
}

// sceneFloors draws the floors of the scenes of a plan, or of that of one shot.
func sceneFloors(p *plan.Plan, shot string, opt sheet.Options) (pages []*draw.Page) {
	for i := range p.Scenes {
		if list := staged.ShotsOf(p, i); slices.ContainsFunc(list, func(s *plan.Shot) bool { return shot == "" || s.ID == shot }) {
			pages = append(pages, staged.Draw(p, i, opt)...)
		}
	}
	return pages
}

// drawCoverage draws what the shots of the plan have of its words, whichever of them is
// asked for. Of a scene that is staged it says what the cut shows.
func drawCoverage(res *interp.Result, _ *plan.Shot, opt sheet.Options) (pages []*draw.Page) {
	for _, sc := range coverage.Of(res.Plan, len(res.Plan.Scenes) > 0) {
		pages = append(pages, coveragepaper.Coverage(sc, opt)...)
	}
	return pages
}

// olderTable is what draw can also draw: a drawing under the name that it had before, or
// parts of one. It is not part of all.
var olderTable = []namedDrawing{
	{"findings", fromShot(score.Findings), "of the score the sheets that tell its findings"},
	{"overhead", fromShot(floor.Draw), "the floor of one shot, its camera looking right, also in a scene"},
	{"strip", fromShot(ring.Strip), "of the ring sheet the tape alone"},
	{"dial", fromShot(ring.Dial), "of the ring sheet the marking discs alone"},
}

// drawingNamed returns a drawing by its name, nil where there is none.
func drawingNamed(name string) drawing {
	for _, d := range slices.Concat(drawingTable, olderTable) {
		if d.name == name {
			return d.draw
		}
	}
	return nil
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
