// pullscore stops: the window of stops of every shot.

package main

import (
	"errors"
	"fmt"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

type stopsCmd struct {
	As      string `enum:"text,json,svg" default:"text" placeholder:"FORM" help:"How to answer: text, json or svg."`
	Shot    string `placeholder:"ID" help:"Only this shot."`
	Against string `placeholder:"CAMERA" help:"Compare with the same framing on this camera of the kit."`
	File    string `arg:"" help:"A plan, or - for standard input."`
}

// Help explains the command.
func (stopsCmd) Help() string {
	return `Tries every third-stop that the lens has and says at which every rack lands
with the wanted chance and is seen, the subjects are sharp in all their depth,
and the light can be had with nd, iso and shutter. The ends of that window are
found between the stops, and the best stop is the one in its middle. Where
there is no window it says what opens one, each tried: more time, another gear
or wheel, another distance, focal length or sensor.

  pullscore stops scene-12.pull
  pullscore stops --shot 14B --against B scene-12.pull    on camera B, framed alike
  pullscore stops --shot 14B --as svg scene-12.pull > stops.svg
  pullscore draw --drawing stops scene-12.pull            a file for every shot

Light counts on nd up to 3.9, two stops of iso either way, and the shutter, as
far as the camera says them. A shot without a window is no error. What can be
computed is printed also where the plan has errors; these go to standard
error, and the exit code is then 1.`
}

// Run answers.
func (c *stopsCmd) Run(s *session) error {
	res, err := s.interpret(c.File)
	if err != nil {
		return err
	}
	shots, diags := res.Plan.Shots, ofShot(res.Findings, c.Shot)
	if c.Shot != "" {
		only, ok := lists.Only(res.Plan, c.Shot)
		if !ok {
			s.printErrors(res, diags)
			return noShot(c.File, c.Shot, shotIDs(res.Plan))
		}
		shots = only.Shots
	}
	if err := c.answer(s, res, shots); err != nil {
		return err
	}
	if s.printErrors(res, diags) {
		return errFindings
	}
	return nil
}

func (c *stopsCmd) answer(s *session, res *interp.Result, shots []*plan.Shot) error {
	switch {
	case c.Against != "":
		return c.pairs(s, res, shots)
	case c.As == "svg":
		return c.drawing(s, res, shots)
	}
	r := stopsOf(res, shots)
	if c.As == "json" {
		return findings.Encode(s.out, r)
	}
	if err := lists.WriteStops(s.screen, r); err != nil {
		return err
	}
	return c.note(s, r.Shots)
}

// note says where the chances come from.
func (c *stopsCmd) note(s *session, list []*stops.Answer) error {
	for _, a := range list {
		if a.Landing && len(a.Racks) > 0 {
			fmt.Fprintln(s.out)
			return lists.WriteNote(s.screen)
		}
	}
	return nil
}

// stopsOf answers for shots.
func stopsOf(res *interp.Result, shots []*plan.Shot) *stops.Report {
	r := &stops.Report{Plan: res.Plan.Title, Shots: []*stops.Answer{}}
	for _, shot := range shots {
		if a, ok := stops.Find(res.Retake(shot), res.Kit(), stops.Options{Levers: true}); ok {
			r.Shots = append(r.Shots, a)
		}
	}
	return r
}

// pairs compares shots with the same framing on another camera.
func (c *stopsCmd) pairs(s *session, res *interp.Result, shots []*plan.Shot) error {
	if c.As == "svg" {
		return errors.New("--against is told as text or json, not drawn")
	}
	kit := res.Kit()
	if err := kitHas(kit, c.Against); err != nil {
		return err
	}
	type comparison struct {
		Plan    string       `json:"plan"`
		Against string       `json:"against"`
		Shots   []stops.Pair `json:"shots"`
	}
	r := comparison{Plan: res.Plan.Title, Against: c.Against, Shots: []stops.Pair{}}
	var list []*stops.Answer
	for _, shot := range shots {
		if p, ok := stops.Compare(res.Retake(shot), kit, c.Against); ok {
			r.Shots = append(r.Shots, p)
			list = append(list, p.Here.Answer)
		}
	}
	if c.As == "json" {
		return findings.Encode(s.out, r)
	}
	if err := lists.WriteStopPairs(s.screen, r.Plan, c.Against, r.Shots); err != nil {
		return err
	}
	return c.note(s, list)
}

// kitHas is the error that the kit has no such camera.
func kitHas(kit stops.Kit, camera string) error {
	var names []string
	for _, c := range kit.Cameras {
		if c.Name == camera {
			return nil
		}
		names = append(names, c.Name)
	}
	text := fmt.Sprintf("the kit has no camera %q", camera)
	if near, ok := lang.Nearest(camera, names); ok {
		text += fmt.Sprintf("; did you mean %s?", near)
	}
	return errors.New(text)
}

// drawing writes the one page that standard output can take.
func (c *stopsCmd) drawing(s *session, res *interp.Result, shots []*plan.Shot) error {
	if len(shots) != 1 {
		return errors.New("standard output takes the drawing of one shot: name it with --shot, or use pullscore draw --drawing stops")
	}
	pages := drawStops(res, shots[0], sheet.Options{})
	if len(pages) == 0 {
		return fmt.Errorf("shot %s: there is nothing to draw", shots[0].ID)
	}
	return svg.Write(s.out, pages[0])
}
