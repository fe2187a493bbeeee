// pullscore export: plans for other people's programs.

package main

import (
	"errors"
	"fmt"
	"io"

	"pullscore/cmd/internal/export"
	"pullscore/cmd/internal/lists"
	"pullscore/interp/plan"
)

type exportCmd struct {
	As     string `enum:"otio,edl,csv,opentrackio,usd" required:"" placeholder:"otio|edl|csv|opentrackio|usd" help:"What to write."`
	Shot   string `placeholder:"ID" help:"Only this shot."`
	Output string `short:"o" default:"." placeholder:"PLACE" help:"A folder, a file for a single one, or - for standard output."`
	File   string `arg:"" help:"A plan, or - for standard input."`
}

// Help explains the command.
func (exportCmd) Help() string {
	return `Writes markers for the cutting room, or the focus of each shot frame by frame.

  otio          OpenTimelineIO: the shots as clips, with markers where each move
                starts and lands and where the cues fall
  edl           the same as a CMX 3600 list with LOC lines
  csv           a row a frame: focus as the tape reads it, from the sensor and
                from the lens, ring and hand degrees, focal length, stop
  opentrackio   a JSON sample a frame, one a line; focus distances are from the
                sensor; infinity has no number, and is left out
  usd           a camera in USD ascii that racks, and everybody at their place,
                for previsualisation

  pullscore export --as edl -o markers.edl scene-12.pull
  pullscore export --as usd --shot 14B -o - scene-12.pull

Shots that do not all begin at a timecode lie one behind the other in otio and
edl, and a shot without one counts from 00:00:00:00 in csv and opentrackio. The
curves are those of the plan, not of a hand.`
}

// A form is what can be written, of the whole plan or of each shot.
type form struct {
	ending string
	plan   func(io.Writer, *plan.Plan) error
	shot   func(io.Writer, *plan.Shot) error
}

var forms = map[string]form{
	"otio":        {ending: "otio", plan: export.OTIO},
	"edl":         {ending: "edl", plan: export.EDL},
	"csv":         {ending: "csv", shot: export.CSV},
	"opentrackio": {ending: "jsonl", shot: export.OpenTrackIO},
	"usd":         {ending: "usda", shot: export.USD},
}

// Run exports.
func (c *exportCmd) Run(s *session) error {
	form := forms[c.As]
	out, err := newOutput(c.Output, form.ending)
	if err != nil {
		return err
	}
	res, err := s.interpret(c.File)
	if err != nil {
		return err
	}
	p := res.Plan
	faulty := s.printErrors(res, ofShot(res.Findings, c.Shot))
	if c.Shot != "" {
		only, ok := lists.Only(p, c.Shot)
		if !ok {
			return noShot(c.File, c.Shot, shotIDs(p))
		}
		p = only
	}
	if len(p.Shots) == 0 {
		return errors.New("the plan has no shots, so there is nothing to export")
	}
	if err := c.export(s, form, out, p); err != nil {
		return err
	}
	if faulty {
		return errFindings
	}
	return nil
}

// export writes the plan, or each of its shots.
func (c *exportCmd) export(s *session, f form, out output, p *plan.Plan) error {
	if f.plan != nil {
		return out.write(s, c.File, "", "markers", func(w io.Writer) error { return f.plan(w, p) })
	}
	if out.folder == "" && len(p.Shots) > 1 {
		return fmt.Errorf("there are %d shots, and %s can hold one: name a folder, or a --shot", len(p.Shots), out)
	}
	for _, shot := range p.Shots {
		if err := out.write(s, c.File, shot.ID, "focus", func(w io.Writer) error { return f.shot(w, shot) }); err != nil {
			return err
		}
	}
	return nil
}
