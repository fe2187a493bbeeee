// pullscore draw: the drawings of shots, as files.

package main

import (
	"errors"
	"fmt"
	"slices"

	"pullscore/cmd/internal/paths"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/render"
	"pullscore/render/draw"
	"pullscore/render/png"
)

type drawCmd struct {
	Drawing string   `enum:"score,overhead,strip,dial,stops" default:"score" placeholder:"NAME" help:"Which drawing: score, overhead, strip, dial or stops."`
	As      string   `enum:"svg,pdf,png" default:"svg" placeholder:"FORM" help:"The form of the files: svg, pdf or png."`
	Shot    string   `placeholder:"ID" help:"Only this shot."`
	Paper   string   `enum:"a4,letter" default:"a4" placeholder:"SIZE" help:"The sheet, lying: a4 or letter."`
	DPI     int      `name:"dpi" default:"150" placeholder:"N" help:"Pixels an inch of a png, 36 to 600; 150 without."`
	Output  string   `short:"o" default:"." placeholder:"PLACE" help:"A folder, a file for a single page, or - for standard output."`
	Paths   []string `arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (drawCmd) Help() string {
	return `Draws every shot, and prints the names of the files that it has written:

  score      who speaks, where everybody is, what is sharp and where the hand is,
             all against one ruler of time
  overhead   the floor from above, to scale: places, paths, field of view, and
             what is sharp at every landing
  strip      a tape for the focus ring, 1:1, with the marks of the pulls
  dial       a disc for the hand wheel, 1:1
  stops      the window of stops: what lands and is seen at which

  pullscore draw scene-12.pull                     into this folder
  pullscore draw -o papers .                       every plan of this folder
  pullscore draw --shot 14B -o - scene-12.pull     to standard output
  pullscore draw --as pdf scene-12.pull            a file a shot, to print
  pullscore draw --drawing strip scene-12.pull     tapes for the ring

Strips and dials are right only when printed at 100 %; a bar of 50 mm on every
sheet tells. A file is named PLAN-SHOT-score.svg, with a page number before .svg where a
shot has more than one page; a pdf holds all pages of its shot. PDF and PNG
files are always light, and carry fonts of their own for Latin, Greek and
Cyrillic; for a letter of another script they show a box with its code.
SVG files use the fonts of the system that shows them. A sign that not every system allows in a name
becomes _, and a name that is taken gets ~2, ~3 and so on. In a folder of
plans, kits (plans without shots) are passed over.

What can be computed is drawn also where the plan has errors; these go to
standard error, and the exit code is then 1.`
}

// A drawn is what one plan file came to.
type drawn struct {
	res     *interp.Result
	pages   []page
	lacking []rune // characters that the file's fonts lack
}

// A page is one file to write.
type page struct {
	shot          string
	number, total int
	data          []byte
}

// Run draws.
func (c *drawCmd) Run(s *session) error {
	if c.DPI < png.LeastDPI || c.DPI > png.MostDPI {
		return fmt.Errorf("--dpi %d: it goes from %d to %d", c.DPI, png.LeastDPI, png.MostDPI)
	}
	out, err := newOutput(c.Output, c.As)
	if err != nil {
		return err
	}
	g := gallery{session: s, cmd: c, out: out}
	if err := eachFile(s, c.Paths, "drawing", func(f paths.File) (drawn, error) { return c.draw(s, f.Path) }, g.plan); err != nil {
		return err
	}
	if err := g.complete(); err != nil {
		return err
	}
	s.noteLacking(g.lacking, "an svg shows them in the fonts of your system")
	if g.faulty {
		return errFindings
	}
	return nil
}

// draw interprets a plan and draws its shots.
func (c *drawCmd) draw(s *session, path string) (drawn, error) {
	res, err := s.interpret(path)
	if err != nil {
		return drawn{}, err
	}
	d, back := drawn{res: res}, backends[c.As]
	for _, shot := range res.Plan.Shots {
		if c.Shot != "" && c.Shot != shot.ID {
			continue
		}
		sheets := c.sheets(res, shot)
		files, err := back.files(shot, sheets, c.DPI)
		if err != nil {
			return drawn{}, fmt.Errorf("%s: %w", path, err)
		}
		d.pages = append(d.pages, files...)
		if back.embedded {
			d.lacking = append(d.lacking, draw.Lacking(sheets...)...)
		}
	}
	return d, nil
}

func (c *drawCmd) sheets(res *interp.Result, shot *plan.Shot) []*draw.Page {
	paper := map[string]render.Paper{"a4": render.A4, "letter": render.Letter}[c.Paper]
	return drawingsByName[c.Drawing](res, shot, render.Options{Paper: paper})
}

// A gallery takes the drawings of plan after plan.
type gallery struct {
	*session
	cmd    *drawCmd
	out    output
	ids    []string // of the shots seen, for a near miss
	drawn  int      // pages
	faulty bool     // a plan has errors

	lacking []rune // characters that the files' fonts lack

	// single holds the page that a file or standard output can take; more is
	// set once there is another.
	single *page
	more   bool
}

// plan takes the pages of one plan.
func (g *gallery) plan(f paths.File, d drawn) error {
	g.ids = append(g.ids, shotIDs(d.res.Plan)...)
	isKit := len(d.res.Plan.Shots) == 0 && !hasErrors(d.res.Findings)
	if isKit && f.InTree {
		return nil
	}
	g.faulty = g.printErrors(d.res, ofShot(d.res.Findings, g.cmd.Shot)) || g.faulty
	if isKit {
		return fmt.Errorf("%s: has no shots, so there is nothing to draw", f.Path)
	}
	g.drawn += len(d.pages)
	g.lacking = append(g.lacking, d.lacking...)
	for i := range d.pages {
		if err := g.page(f, &d.pages[i]); err != nil {
			return err
		}
	}
	return nil
}

func hasErrors(diags []lang.Diagnostic) bool {
	worst, ok := lang.Worst(diags)
	return ok && worst == lang.Error
}

// page writes a page into the folder, or keeps it until it is sure to be the
// only one.
func (g *gallery) page(f paths.File, p *page) error {
	if g.out.folder == "" {
		g.more = g.single != nil
		g.single = p
		if g.more {
			return fmt.Errorf("there is more than one page, and %s can hold one: name a folder, or a --shot of one page", g.out)
		}
		return nil
	}
	path := g.out.name(f, *p, g.cmd.Drawing)
	if err := paths.Write(path, p.data); err != nil {
		return err
	}
	g.bar.Clear()
	_, err := fmt.Fprintln(g.session.out, path)
	return err
}

// complete writes the single page and tells what was asked for and is not
// there.
func (g *gallery) complete() error {
	switch {
	case g.single != nil && g.out.file == paths.Stdin:
		_, err := g.session.out.Write(g.single.data)
		return err
	case g.single != nil:
		return paths.Write(g.out.file, g.single.data)
	case g.drawn > 0 || g.failed:
		return nil
	case g.cmd.Shot != "" && !slices.Contains(g.ids, g.cmd.Shot):
		return noShot("the plans", g.cmd.Shot, g.ids)
	case !g.faulty:
		return errors.New("none of the plans has shots, so there is nothing to draw")
	}
	return nil
}
