// The forms that a plan can be exported as, in one table: the flag of the
// command and its help are made from it.

package export

import (
	"io"

	"pullscore/interp/plan"
)

// A Form is a way to export a plan: one file of all its shots, or one of each.
type Form struct {
	Name   string // as the flag has it
	Ending string // of the names of its files, without the dot
	Help   string // what it holds, in lines of at most 64 letters

	Plan func(io.Writer, *plan.Plan) error             // nil: a file a shot
	Shot func(io.Writer, *plan.Plan, *plan.Shot) error // nil: a file a plan

	InCut func(io.Writer, *plan.Plan, *plan.Shot) error  // Shot, with only what the cut shows, in the order of the record
	Scene func(io.Writer, *plan.Plan, *plan.Scene) error // a scene with all its set-ups
}

// Forms returns all forms, in the order of the help.
func Forms() []Form {
	return []Form{
		{Name: "otio", Ending: "otio", Plan: OTIO,
			Help: "OpenTimelineIO: the shots as clips, with markers where each move\nstarts and lands and where the cues fall; where a camera turns,\nbooms or tracks, also its moves"},
		{Name: "edl", Ending: "edl", Plan: EDL,
			Help: "the same as a CMX 3600 list with LOC lines"},
		{Name: "csv", Ending: "csv", Shot: alone(CSV), InCut: alone(csvInCut),
			Help: "a row a frame: focus from the sensor (focus_m, whatever `tape`\nsays) and from the lens, ring and hand degrees, focal, stop;\nwhere a camera turns, booms, tracks or has a place on a floor,\nalso its place and angles"},
		{Name: "opentrackio", Ending: "jsonl", Shot: alone(OpenTrackIO), InCut: alone(samplesInCut),
			Help: "a JSON sample a frame, one a line; focus distances are from the\nsensor; infinity has no number, and is left out; transforms\nsay where a camera is and looks that turns, booms, tracks or\nhas a place on a floor"},
		{Name: "usd", Ending: "usda", Shot: USD, InCut: usdInCut, Scene: USDScene,
			Help: "a camera in USD ascii that racks, turns and moves, everybody as\na plain body, and a small sphere at the focus, for\nprevisualisation; heights are assumed; the camera is a pinhole:\npeople are moved along its axis to their distance from the lens;\nwhere the camera has a place on the floor of a scene, all are\nwhere they are there, with its marks, and nobody is moved"},
	}
}

// alone makes a writer of shots of one that asks no plan.
func alone(write func(io.Writer, *plan.Shot) error) func(io.Writer, *plan.Plan, *plan.Shot) error {
	return func(w io.Writer, _ *plan.Plan, s *plan.Shot) error { return write(w, s) }
}
