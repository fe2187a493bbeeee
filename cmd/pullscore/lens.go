// pullscore lens: what is known of the lenses of a kit, and the sheet to map one with.

package main

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/lenses"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/render/draw"
	lenspaper "pullscore/render/lens"
	"pullscore/render/sheet"
)

type lensCmd struct {
	Sheet bool   `help:"Draw the sheet to map a ring with: a tape, a table and a target."`
	Lens  string `placeholder:"NAME" help:"Only this lens."`
	Stop  string `placeholder:"STOP" help:"Name enough distances for this stop, as in f/2.8; for the widest without."`
	As    string `enum:"text,json,svg,pdf,png" default:"text" placeholder:"FORM" help:"How to answer: text or json; with --sheet svg, pdf or png."`
	Paper string `enum:"a4,letter,A4,Letter" default:"a4" placeholder:"SIZE" help:"The sheet, lying: a4 or letter."`
	fontFlag
	DPI    int    `name:"dpi" default:"150" placeholder:"N" help:"Pixels an inch of a png, 36 to 600; 150 without."`
	From   string `offer:"files" placeholder:"FILE" help:"Print a kit from a lens file of another program: OpenTrackIO or ASC FDL; - is standard input."`
	Name   string `placeholder:"NAME" help:"With --from: what to call the lens, or which framing of an FDL."`
	Output string `offer:"places" short:"o" placeholder:"PLACE" help:"Where a sheet goes: a folder, a file, or - for standard output. With --from, the new kit."`
	Kit    string `offer:"plans" arg:"" optional:"" name:"kit" help:"A kit or a plan, or - for standard input."`
}

// Help explains the command.
func (lensCmd) Help() string {
	return `Says what is known of each lens: where its marks lie on the ring, in degrees and
in millimetres of rim, how well each is known, what was taken where the kit says
nothing, and which one more mark would help most. A kit needs no shot.

  pullscore lens kit.pull
  pullscore lens --lens 75 --stop f/2.8 kit.pull
  pullscore lens --sheet --lens 75 kit.pull          kit-75-sheet-1.svg and -2.svg
  pullscore lens --sheet --as pdf --paper letter kit.pull

The sheet maps a lens in some ten minutes: a tape to wrap round the ring, a
table with the distances to measure, and a star to focus on. Its tape and ruler
are right only when printed at 100 %; a bar of 50 mm on each page tells.

A sheet names as many distances as the stop needs: between them the ring may then
be taken from its marks. It takes the longest focal length of a zoom, and the
camera of the kit that shows the smallest blur.

Between marks, ± is a usual bound, nineteen times in twenty on smooth rings. It
is no certainty: a kink between two marks stays unseen.

A lens file of another program becomes a kit to begin from: OpenTrackIO samples,
or an ASC framing decision list (FDL) for the sensor alone. Each statement has
its field as a comment. Nothing is guessed: what the file does not say is a
comment that says how to get it.

  pullscore lens --from take.jsonl -o lens-75.pull
  pullscore lens --from scene.fdl --name wide

What can be told is told also where the kit has errors; these go to standard
error, and the exit code is then 1.`
}

// Run answers.
func (c *lensCmd) Run(s *session) error {
	if c.From != "" {
		return c.lensFrom(s)
	}
	if c.Name != "" {
		return errors.New("--name goes with --from; to show one lens, write --lens")
	}
	if c.Kit == "" {
		return errors.New("name a kit or a plan")
	}
	if err := c.fits(); err != nil {
		return err
	}
	stop, err := stopOf(c.Stop)
	if err != nil {
		return err
	}
	res, err := s.interpret(c.Kit)
	if err != nil {
		return err
	}
	list, err := c.chosen(res, res.Lenses(stop))
	if err == nil {
		err = c.answer(s, list)
	}
	if faulty := s.printErrors(res, ofShot(res.Findings, "")); faulty && err == nil {
		err = errFindings
	}
	return err
}

// fits returns an error where the flags do not go together.
func (c *lensCmd) fits() error {
	drawn := c.As != "text" && c.As != "json"
	switch {
	case drawn && !c.Sheet:
		return fmt.Errorf("--as %s draws a sheet: add --sheet", c.As)
	case c.Sheet && c.As == "json":
		return errors.New("--sheet draws: as svg, pdf or png")
	case len(c.Font) > 0 && !c.Sheet:
		return errors.New("--font is for a sheet: add --sheet")
	case c.Output != "" && !c.Sheet:
		return errors.New("-o says where a sheet goes: add --sheet")
	}
	return checkDPI(c.DPI)
}

var stopWritten = lines.Pattern(`^(f/|F/|T|t)?([0-9]+(?:\.[0-9]+)?)$`)

// stopOf reads a stop of the command line; the zero Stop is none.
func stopOf(text string) (lenses.Stop, error) {
	if text == "" {
		return lenses.Stop{}, nil
	}
	m := stopWritten().FindStringSubmatch(text)
	if m != nil {
		if n, err := strconv.ParseFloat(m[2], 64); err == nil && n >= 0.5 && n <= 512 {
			return lenses.Stop{Number: n, T: strings.EqualFold(m[1], "t")}, nil
		}
	}
	return lenses.Stop{}, fmt.Errorf("--stop %s: a stop is written f/2.8 or T2.9, from 0.5 to 512", text)
}

// chosen keeps the lens that was asked for.
func (c *lensCmd) chosen(res *interp.Result, list []*lenses.Lens) ([]*lenses.Lens, error) {
	if c.Lens == "" {
		if len(list) == 0 && !hasErrors(res.Findings) {
			return nil, fmt.Errorf("%s: has no lens", name(c.Kit))
		}
		return list, nil
	}
	var names []string
	for _, l := range list {
		if l.Name == c.Lens {
			return []*lenses.Lens{l}, nil
		}
		names = append(names, l.Name)
	}
	text := fmt.Sprintf("%s: no lens %q", name(c.Kit), c.Lens)
	if near, ok := lang.Nearest(c.Lens, names); ok {
		text += fmt.Sprintf("; did you mean %s?", near)
	} else if len(names) > 0 {
		text += "; there is " + strings.Join(names, ", ")
	}
	return nil, errors.New(text)
}

func (c *lensCmd) answer(s *session, list []*lenses.Lens) error {
	switch {
	case c.Sheet:
		return c.draw(s, list)
	case c.As == "json":
		return findings.Encode(s.out, struct {
			Lenses []*lenses.Lens `json:"lenses"`
		}{list})
	}
	return lists.WriteRings(s.screen, list)
}

// draw draws the sheet of each lens that has a ring.
func (c *lensCmd) draw(s *session, list []*lenses.Lens) error {
	form, place := c.As, cmp.Or(c.Output, ".")
	if form == "text" {
		form = "svg"
		if ending := strings.TrimPrefix(filepath.Ext(place), "."); slices.Contains([]string{"pdf", "png"}, ending) {
			form = ending
		}
	}
	how, err := c.rendering(form, c.DPI)
	if err != nil {
		return err
	}
	out, err := newOutput(place, form)
	if err != nil {
		return err
	}
	p := pile{session: s, out: out}
	for _, l := range list {
		if l.Ringless != "" {
			if c.Lens != "" {
				return fmt.Errorf("lens %q has no sheet: %s", l.Name, l.Ringless)
			}
			continue
		}
		pages := lenspaper.Sheet(paperOf(l, planName(c.Kit)), sheet.Options{Paper: papers[strings.ToLower(c.Paper)]})
		files, lacking, err := filesOf(form, "sheet", &plan.Shot{ID: l.Name, Title: "map of the ring"}, pages, how)
		if err != nil {
			return err
		}
		p.lacking = append(p.lacking, lacking...)
		if err := p.add(c.Kit, files); err != nil {
			return sheetsOf(err, pages)
		}
	}
	return p.end()
}

// sheetsOf says what to do where a sheet has more pages than a file can take.
func sheetsOf(err error, pages []*draw.Page) error {
	return fmt.Errorf("%w\nA sheet has %d pages: name a folder, or one --lens with --as pdf", err, len(pages))
}

// paperOf returns what the sheet of a lens needs.
func paperOf(l *lenses.Lens, kit string) lenspaper.Lens {
	p := lenspaper.Lens{
		Name: l.Name, Kit: kit, Focal: l.Focal, Stop: l.Stop, Criterion: l.Criterion,
		InfinityFrom: float64(l.Infinity), Imperial: l.Imperial,
	}
	if l.At != "" {
		p.Focal = "at " + l.At
	}
	for _, d := range l.Sheet {
		p.Distances = append(p.Distances, float64(d))
	}
	return p
}
