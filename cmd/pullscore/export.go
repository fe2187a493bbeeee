// pullscore export: plans for other people's programs.

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"

	"pullscore/cmd/internal/export"
	"pullscore/cmd/internal/lists"
	"pullscore/interp/plan"
)

type exportCmd struct {
	As     string `enum:"${forms}" required:"" placeholder:"${forms_bar}" help:"What to write."`
	Shot   string `offer:"shots" placeholder:"ID" help:"Only this shot."`
	Output string `offer:"places" short:"o" default:"." placeholder:"PLACE" help:"A folder, a file for a single one, or - for standard output."`
	InCut  bool   `help:"Only the frames that the cut shows, in its order: csv, opentrackio and usd."`
	Scene  bool   `help:"Each scene in one file, with all its set-ups as cameras over the time of its action: usd."`
	depsFlag
	File string `offer:"plans" arg:"" help:"A plan, or - for standard input."`
}

// Help explains the command.
func (exportCmd) Help() string {
	var list []choice
	for _, f := range export.Forms() {
		list = append(list, choice{f.Name, f.Help})
	}
	return `Writes markers for the cutting room, or the focus of each shot frame by frame.

` + helpOf(list) + `
  pullscore export --as edl -o markers.edl scene-12.pull
  pullscore export --as usd --shot 14B -o - scene-12.pull
  pullscore export --as usd --scene -o set.usda scene-12.pull

Shots that do not all begin at a timecode lie one behind the other in otio and
edl, and a shot without one counts from 00:00:00:00 in csv and opentrackio. A
shot that a list shows in pieces has a clip a piece in otio and edl, and the
timecode of its source in csv and opentrackio; csv says also where the cut shows
each frame. The curves are those of the plan, not of a hand.`
}

// Run exports.
func (c *exportCmd) Run(s *session) error {
	return c.with(s, func() error { return c.plan(s) })
}

// plan exports the plan.
func (c *exportCmd) plan(s *session) error {
	forms := export.Forms()
	form := forms[slices.IndexFunc(forms, func(f export.Form) bool { return f.Name == c.As })]
	if err := c.fits(form); err != nil {
		return err
	}
	out, err := newOutput(c.Output, form.Ending)
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
	write := c.export
	if c.Scene {
		write = c.scenes
	}
	if err := write(s, form, out, p); err != nil {
		return err
	}
	if faulty {
		return errFindings
	}
	return nil
}

// fits reports which of the flags the form cannot have.
func (c *exportCmd) fits(form export.Form) error {
	switch {
	case c.InCut && form.InCut == nil:
		return fmt.Errorf("--in-cut is for forms with a file a shot, and %s holds what the cut shows already", form.Name)
	case c.Scene && form.Scene == nil:
		return fmt.Errorf("--scene is for usd: %s has no cameras, or one in a file", form.Name)
	case c.Scene && c.Shot != "":
		return errors.New("--scene has all set-ups of a scene: leave --shot out")
	case c.Scene && c.InCut:
		return errors.New("--scene is over the time of the action, and --in-cut over that of the cut: keep one")
	}
	return nil
}

// scenes writes each scene of the plan that has a camera with a place.
func (c *exportCmd) scenes(s *session, f export.Form, out output, p *plan.Plan) error {
	type scene struct {
		*plan.Scene
		text []byte
	}
	var list []scene
	for _, one := range p.Scenes {
		var b bytes.Buffer
		switch err := f.Scene(&b, p, one); {
		case err == nil:
			list = append(list, scene{one, b.Bytes()})
		case !errors.Is(err, export.ErrNoSetups):
			return err
		}
	}
	switch {
	case len(list) == 0:
		return fmt.Errorf("there is nothing to export: %w", export.ErrNoSetups)
	case out.folder == "" && len(list) > 1:
		return fmt.Errorf("there are %d scenes, and %s can hold one: name a folder", len(list), out)
	}
	for _, one := range list {
		title := ""
		if len(list) > 1 {
			title = one.Title
		}
		err := out.write(s, c.File, title, "scene", func(w io.Writer) error {
			_, err := w.Write(one.text)
			return err
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// export writes the plan, or each of its shots.
func (c *exportCmd) export(s *session, f export.Form, out output, p *plan.Plan) error {
	if f.Plan != nil {
		tellAway(s, p)
		return out.write(s, c.File, "", "markers", func(w io.Writer) error { return f.Plan(w, p) })
	}
	if out.folder == "" && len(p.Shots) > 1 {
		return fmt.Errorf("there are %d shots, and %s can hold one: name a folder, or a --shot", len(p.Shots), out)
	}
	write := f.Shot
	if c.InCut {
		write = f.InCut
	}
	for _, shot := range p.Shots {
		if err := out.write(s, c.File, shot.ID, "focus", func(w io.Writer) error { return write(w, p, shot) }); err != nil {
			return err
		}
	}
	return nil
}

// tellAway says how many moves have no marker, because the cut does not show them.
func tellAway(s *session, p *plan.Plan) {
	n := 0
	for _, shot := range p.Shots {
		n += export.Away(shot)
	}
	switch {
	case n == 1:
		fmt.Fprintln(s.errs, "1 move is not in the cut and has no marker")
	case n > 1:
		fmt.Fprintf(s.errs, "%d moves are not in the cut and have no marker\n", n)
	}
}
