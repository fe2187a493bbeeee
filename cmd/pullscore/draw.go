// pullscore draw: the drawings of shots, as files.

package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/cmd/internal/files"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/render/brief"
	"pullscore/render/sheet"
)

type drawCmd struct {
	Drawing string `enum:"${drawings},all" default:"score" placeholder:"NAME" help:"Which drawing: ${drawings_words}, or all."`
	As      string `enum:"svg,pdf,png" default:"svg" placeholder:"FORM" help:"The form of the files: svg, pdf or png."`
	Shot    string `offer:"shots" placeholder:"ID" help:"Only this shot."`
	Paper   string `enum:"a4,letter,A4,Letter" default:"a4" placeholder:"SIZE" help:"The sheet, lying: a4 or letter."`
	fontFlag
	depsFlag
	DPI    int      `name:"dpi" default:"150" placeholder:"N" help:"Pixels an inch of a png, 36 to 600; 150 without."`
	Output string   `offer:"places" short:"o" default:"." placeholder:"PLACE" help:"A folder, a file (a pdf for all pages, else for a single one), or - for standard output."`
	Paths  []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (drawCmd) Help() string {
	var list []choice
	for _, d := range slices.Concat(drawingTable, olderTable) {
		list = append(list, choice{d.name, d.help})
	}
	return `Draws every shot, and prints the names of the files that it has written:

` + helpOf(list) + `
  pullscore draw scene-12.pull                     into this folder
  pullscore draw -o papers .                       every plan, into a folder
  pullscore draw --shot 14B -o - scene-12.pull     to standard output
  pullscore draw --as pdf scene-12.pull            a file a shot, to print
  pullscore draw --as pdf -o all.pdf .             all shots of all plans in one
  pullscore draw --drawing ring scene-12.pull      tapes and discs to cut out
  pullscore draw --drawing all -o papers .         everything of every plan

Tapes and discs are right only when printed at 100 %; a bar of 50 mm on every
sheet tells. A file is named PLAN-SHOT-score.svg, with a page number before
.svg where a shot has more than one page. The floor of a scene with all its
cameras is PLAN-floor.svg; with several scenes, or more than four cameras in
one, the sheets are PLAN-floor-1.svg and on. A pdf holds all pages of its shot, and
one that -o names holds all pages of all shots, with an outline. A folder that
is not there yet is made. PDF and PNG files are always light, and carry fonts of
their own for Latin, Greek and Cyrillic; for other letters name a TrueType font
with --font, as often as needed. A letter that no font has is a box with its
code, and so are scripts whose letters join or run from right to left. SVG files
use the fonts of the system that shows them. A sign that not every system allows in a name becomes _, and
a name that is taken gets ~2, ~3 and so on. In a folder of plans, kits (plans
without shots) are passed over.

What can be computed is drawn also where the plan has errors; these go to
standard error, and the exit code is then 1.`
}

// A drawn is what one plan file came to.
type drawn struct {
	res     *interp.Result
	shots   []drawnShot // where all go into one file
	pages   []page      // where each has a file
	lacking []rune      // characters that the file's fonts lack
}

// A drawnShot is a shot with its drawings.
type drawnShot struct {
	shot *plan.Shot
	sets []set
}

// Run draws.
func (c *drawCmd) Run(s *session) error {
	return c.with(s, func() error { return c.all(s) })
}

// all draws every plan.
func (c *drawCmd) all(s *session) error {
	s.rule.from(c.Font...)
	if err := checkDPI(c.DPI); err != nil {
		return err
	}
	how, err := c.rendering(c.As, c.DPI)
	if err != nil {
		return err
	}
	out, err := newOutput(c.Output, c.As)
	if err != nil {
		return err
	}
	g := gallery{pile: pile{session: s, out: out}, shot: c.Shot}
	if backends[c.As].paged && out.file != "" {
		g.sheaf = newSheaf(how)
	}
	if err := eachFile(s, c.Paths, "drawing", func(f files.File) (drawn, error) { return c.draw(s, f.Path, g.sheaf != nil, how) }, g.plan); err != nil {
		return err
	}
	if err := g.complete(); err != nil {
		return err
	}
	if g.faulty {
		return errFindings
	}
	return nil
}

// draw interprets a plan and draws its shots, for files of their own or for one file.
func (c *drawCmd) draw(s *session, path string, one bool, how rendering) (drawn, error) {
	res, err := s.interpret(path)
	if err != nil {
		return drawn{}, err
	}
	d := drawn{res: res}
	first := true
	for _, shot := range res.Plan.Shots {
		if c.Shot != "" && c.Shot != shot.ID {
			continue
		}
		res.TryTogether([]*plan.Shot{shot}) // for the findings of the score
		var sets []set
		for _, what := range c.drawings() {
			for _, s := range c.sets(what, res, shot, first) {
				if one {
					sets = append(sets, s)
				} else if err := d.addFiles(c.As, shot, s, how); err != nil {
					return drawn{}, fmt.Errorf("%s: %w", path, err)
				}
			}
		}
		if one {
			d.shots = append(d.shots, drawnShot{shot, sets})
		}
		first = false
	}
	return d, nil
}

// sets returns a drawing of a shot. At the first shot that is drawn it also returns what
// shows the whole plan, or a scene of it.
func (c *drawCmd) sets(what string, res *interp.Result, shot *plan.Shot, first bool) (sets []set) {
	opt := sheet.Options{Paper: papers[strings.ToLower(c.Paper)]}
	if ofPlan(what) {
		if first {
			sets = append(sets, set{what, drawingNamed(what)(res, shot, opt), true})
		}
		return sets
	}
	if what == "floor" && first {
		sets = append(sets, set{what, sceneFloors(res.Plan, c.Shot, opt), true})
	}
	return append(sets, set{what, drawingNamed(what)(res, shot, opt), false})
}

// addFiles adds the files of a drawing; those of a whole plan have the name of no shot.
func (d *drawn) addFiles(form string, shot *plan.Shot, s set, how rendering) error {
	files, lacking, err := filesOf(form, s.what, shot, s.pages, how)
	for i := range files {
		if s.whole {
			files[i].shot = ""
		}
	}
	d.pages, d.lacking = append(d.pages, files...), append(d.lacking, lacking...)
	return err
}

// drawings returns the names of the drawings that are asked for.
func (c *drawCmd) drawings() []string {
	if c.Drawing == "all" {
		var names []string
		for _, d := range drawingTable {
			names = append(names, d.name)
		}
		return names
	}
	return []string{c.Drawing}
}

// papers are the sheets by the names of the flag.
var papers = map[string]sheet.Paper{"a4": sheet.A4, "letter": sheet.Letter}

// A gallery takes the drawings of plan after plan.
type gallery struct {
	pile
	shot   string   // that was asked for; empty: all
	ids    []string // of the shots seen, for a near miss
	faulty bool     // a plan has errors
}

// plan takes the pages of one plan.
func (g *gallery) plan(f files.File, d drawn) error {
	g.ids = append(g.ids, shotIDs(d.res.Plan)...)
	isKit := len(d.res.Plan.Shots) == 0 && !hasErrors(d.res.Findings)
	if isKit && f.InTree {
		return nil
	}
	g.faulty = g.printErrors(d.res, ofShot(d.res.Findings, g.shot)) || g.faulty
	if isKit {
		return fmt.Errorf("%s: has no shots, so there is nothing to draw", f.Path)
	}
	if g.sheaf != nil {
		g.sheaf.begin(d.res.Plan, sceneName(d.res.Plan, f.Path))
		for _, shot := range d.shots {
			g.sheaf.add(shot.shot, shot.sets)
		}
		return nil
	}
	g.lacking = append(g.lacking, d.lacking...)
	return g.add(f.Path, d.pages)
}

// sceneName is what a plan is called among others: its title and its file.
func sceneName(p *plan.Plan, path string) string {
	if path == files.Stdin {
		return brief.PlanTitle(p)
	}
	return brief.PlanTitle(p) + " (" + filepath.Base(path) + ")"
}

func hasErrors(diags []lang.Diagnostic) bool {
	worst, ok := lang.Worst(diags)
	return ok && worst == lang.Error
}

// complete ends the pile and tells what was asked for and is not there.
func (g *gallery) complete() error {
	if err := g.end(); err != nil {
		return err
	}
	switch {
	case g.pages > 0 || g.failed:
		return nil
	case g.shot != "" && !slices.Contains(g.ids, g.shot):
		return noShot("the plans", g.shot, g.ids)
	case len(g.ids) > 0 && !g.faulty:
		return errors.New("none of the shots has what this drawing shows, so there is nothing to draw")
	case !g.faulty:
		return errors.New("none of the plans has shots, so there is nothing to draw")
	}
	return nil
}
