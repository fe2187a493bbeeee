// pullscore stops: the window of stops of every shot.

package main

import (
	"errors"
	"fmt"

	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

type stopsCmd struct {
	As      string   `enum:"text,json,svg" default:"text" placeholder:"FORM" help:"How to answer: text, json or svg."`
	Shot    string   `offer:"shots" placeholder:"ID" help:"Only this shot."`
	Against string   `placeholder:"CAMERA" help:"Compare with the same framing on this camera of the kit."`
	Lenses  bool     `help:"Compare every lens of the kit, from the same place and framed alike."`
	Paths   []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (stopsCmd) Help() string {
	return `Tries every third-stop that the lens has and says at which every rack lands
with the wanted chance and is seen, every follow and every rest is sharp as
often as wanted, the subjects are sharp in all their depth, diffraction leaves
them so, and the light can be had. The ends of that window are found between
the stops.

Three stops are told, each with what it costs: the one that is set, the widest
that meets all but light, and the one nearest to the meter as everything is set.
The best is the set stop where it holds and costs nothing; else the one with the
least of stops of iso raised, 0.15 for each stop of iso lowered, 0.1 for another
filter and 0.05 for each stop away from the set one. Where there is no window it says what opens one, each tried:
more time, another gear or wheel, another distance, focal length or sensor.

  pullscore stops scene-12.pull
  pullscore stops --shot 14B --against B scene-12.pull    on camera B, framed alike
  pullscore stops --shot 14B --lenses scene-12.pull       every lens of the kit
  pullscore stops --shot 14B --as svg scene-12.pull > stops.svg
  pullscore draw --drawing stops scene-12.pull            a file for every shot
  pullscore stops scenes                                  every plan of a folder

As JSON one plan is an object; several, or a folder, are a list under "plans",
each with its file. In a folder, kits (plans without shots) are passed over.

Light counts on nd up to 3.9, and on iso and shutter as far as the camera says:
iso 800 to 1600, shutter 172.8 deg to 180 deg. An iso without to goes two stops
either way, a shutter without it stays. A shot without a window is no error. What can be
computed is printed also where the plan has errors; these go to standard
error, and the exit code is then 1.`
}

// Run answers.
func (c *stopsCmd) Run(s *session) error {
	switch {
	case c.Lenses && c.Against != "":
		return errors.New("--lenses and --against are two comparisons: ask for one at a time")
	case c.Lenses && c.As == "svg":
		return errors.New("--lenses answers as text or json, not as a drawing")
	case c.Lenses:
		return respond(s, c.question(), lensesOf, c.writeLenses)
	case c.Against != "" && c.As == "svg":
		return errors.New("--against answers as text or json, not as a drawing")
	case c.Against != "":
		return respond(s, c.question(), c.pairs, c.writePairs)
	case c.As == "svg":
		return respond(s, c.question(), drawable, drawOne)
	}
	return respond(s, c.question(), stopsOf, c.writeWindows)
}

func (c *stopsCmd) question() question { return question{c.Paths, c.Shot} }

// stopsOf answers for the shots of a plan.
func stopsOf(res *interp.Result, p *plan.Plan) (*stops.Report, error) {
	r := &stops.Report{Plan: p.Title, Shots: []*stops.Answer{}}
	for _, shot := range p.Shots {
		if a, ok := stops.Find(res.Retake(shot), res.Kit(), stops.Options{Levers: true}); ok {
			r.Shots = append(r.Shots, a)
		}
	}
	return r, nil
}

func (c *stopsCmd) writeWindows(s *session, all *answers[*stops.Report]) error {
	type filed struct {
		File string `json:"file"`
		*stops.Report
	}
	with := func(file string, r *stops.Report) filed { return filed{file, r} }
	return writeEach(s, all, c.As, with, func(reports []*stops.Report) error {
		var shown []*stops.Answer
		for _, r := range reports {
			shown = append(shown, r.Shots...)
		}
		return noted(s, lists.WriteStops(s.screen, reports...), shown)
	})
}

// noted says where the chances come from, below a text that was written.
func noted(s *session, err error, list []*stops.Answer) error {
	if err != nil {
		return err
	}
	for _, a := range list {
		if (a.Landing || a.RingUnknown) && len(a.Racks) > 0 {
			fmt.Fprintln(s.out)
			return lists.WriteNote(s.screen)
		}
	}
	return nil
}

// pairs compares the shots of a plan with the same framing on another camera.
func (c *stopsCmd) pairs(res *interp.Result, p *plan.Plan) (*lists.Comparison, error) {
	kit := res.Kit()
	if err := kitHas(kit, c.Against); err != nil {
		return nil, fmt.Errorf("%s: %w", p.File, err)
	}
	r := &lists.Comparison{Plan: p.Title, Against: c.Against, Shots: []stops.Pair{}}
	for _, shot := range p.Shots {
		if pair, ok := stops.Compare(res.Retake(shot), kit, c.Against); ok {
			r.Shots = append(r.Shots, pair)
		}
	}
	return r, nil
}

func (c *stopsCmd) writePairs(s *session, all *answers[*lists.Comparison]) error {
	type filed struct {
		File string `json:"file"`
		*lists.Comparison
	}
	with := func(file string, r *lists.Comparison) filed { return filed{file, r} }
	return writeEach(s, all, c.As, with, func(comparisons []*lists.Comparison) error {
		var shown []*stops.Answer
		for _, r := range comparisons {
			for _, pair := range r.Shots {
				shown = append(shown, pair.Here.Answer)
			}
		}
		return noted(s, lists.WriteStopPairs(s.screen, comparisons...), shown)
	})
}

// lensesOf compares the lenses of the kit for the shots of a plan.
func lensesOf(res *interp.Result, p *plan.Plan) (*stops.LensReport, error) {
	r := &stops.LensReport{Plan: p.Title, Shots: []*stops.Lenses{}}
	for _, shot := range p.Shots {
		if l, ok := stops.Through(res.Retake(shot), res.Kit()); ok {
			r.Shots = append(r.Shots, l)
		}
	}
	return r, nil
}

func (c *stopsCmd) writeLenses(s *session, all *answers[*stops.LensReport]) error {
	type filed struct {
		File string `json:"file"`
		*stops.LensReport
	}
	with := func(file string, r *stops.LensReport) filed { return filed{file, r} }
	return writeEach(s, all, c.As, with, func(reports []*stops.LensReport) error {
		if err := lists.WriteLenses(s.screen, reports...); err != nil {
			return err
		}
		fmt.Fprintln(s.out)
		return lists.WriteNote(s.screen)
	})
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

// drawable keeps what a drawing is made of.
func drawable(res *interp.Result, _ *plan.Plan) (*interp.Result, error) { return res, nil }

// drawOne writes the one page that standard output can take.
func drawOne(s *session, all *answers[*interp.Result]) error {
	var drawn *interp.Result
	var shots []*plan.Shot
	for _, a := range all.list {
		shots = append(shots, a.plan.Shots...)
		if len(a.plan.Shots) > 0 {
			drawn = a.value
		}
	}
	if len(shots) != 1 {
		return errors.New("standard output takes the drawing of one shot: name it with --shot, or use pullscore draw --drawing stops")
	}
	pages := drawStops(drawn, shots[0], sheet.Options{})
	if len(pages) == 0 {
		return fmt.Errorf("shot %s: there is nothing to draw", shots[0].ID)
	}
	return svg.Write(s.out, pages[0])
}
