// The drawings of pullscore diff.

package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"pullscore/cmd/internal/diff"
	"pullscore/interp/plan"
	"pullscore/render/difference"
	"pullscore/render/sheet"
)

// draw draws the shots that changed, and prints the names of the files.
func (c *diffCmd) draw(s *session, plans []diff.Plan) error {
	if err := checkDPI(c.DPI); err != nil {
		return err
	}
	how, err := c.rendering(c.As, c.DPI)
	if err != nil {
		return err
	}
	out, err := newOutput(cmp.Or(c.Output, "."), c.As)
	if err != nil {
		return err
	}
	if backends[c.As].paged && out.file != "" {
		return c.bind(s, plans, out, how)
	}
	g := pile{session: s, out: out}
	for _, p := range plans {
		for _, shot := range p.Shots {
			if shot.Change == diff.Same {
				continue
			}
			if err := c.drawShot(&g, p, shot, how); err != nil {
				return err
			}
		}
	}
	if g.pages == 0 {
		return errNothingToDraw
	}
	return g.end()
}

func (c *diffCmd) drawShot(g *pile, p diff.Plan, shot diff.Shot, how rendering) error {
	is, path := shotOf(p, shot)
	drawn := difference.Draw(overlaid(p, shot), c.options())
	files, lacking, err := filesOf(c.As, "diff", is, drawn, how)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	g.lacking = append(g.lacking, lacking...)
	return g.add(path, files)
}

func (c *diffCmd) options() sheet.Options {
	return sheet.Options{Paper: papers[strings.ToLower(c.Paper)]}
}

// shotOf returns the shot that a change is called after, and the path of its plan.
func shotOf(p diff.Plan, shot diff.Shot) (is *plan.Shot, path string) {
	if shot.After == nil {
		return shot.Before, p.Before
	}
	return shot.After, p.After
}

// overlaid is what the drawing of a shot is given.
func overlaid(p diff.Plan, shot diff.Shot) difference.Difference {
	d := difference.Difference{Names: [2]string{p.Before, p.After}, Before: shot.Before, After: shot.After}
	for _, u := range shot.Pulls {
		d.Pulls = append(d.Pulls, difference.PullChange{Before: u.Before, After: u.After, Text: u.Says()})
	}
	d.Notes = p.FaultPhrases()
	if shot.Before != nil && shot.After != nil { // else the drawing says which it lacks
		d.Notes = slices.Concat(d.Notes, p.SceneNotes(shot.ID), shot.Notes())
	}
	return d
}

// errNothingToDraw ends a command that draws what changed, where nothing did.
var errNothingToDraw = errors.New("no shot is different, so there is nothing to draw")
