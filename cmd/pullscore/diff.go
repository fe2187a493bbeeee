// pullscore diff: what a change of plans is to the crew.

package main

import (
	"errors"
	"fmt"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/diff"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/states"
)

type diffCmd struct {
	As    string `enum:"text,json,svg,pdf,png" default:"text" placeholder:"FORM" help:"How to tell it: text, json, or as drawings svg, pdf, png."`
	Shot  string `offer:"shots" placeholder:"ID" help:"Only this shot."`
	Paper string `enum:"a4,letter,A4,Letter" default:"a4" placeholder:"SIZE" help:"The sheet of a drawing, lying: a4 or letter."`
	fontFlag
	DPI    int      `name:"dpi" default:"150" placeholder:"N" help:"Pixels an inch of a png, 36 to 600; 150 without."`
	All    bool     `help:"Tell every note, also those of which a shot has many alike."`
	Output string   `offer:"places" short:"o" placeholder:"PLACE" help:"For drawings: a folder, a file (a pdf for all pages, else for a single one), or - for standard output."`
	Git    bool     `help:"Take the arguments that git gives to a diff driver."`
	States []string `offer:"plans" arg:"" name:"state" sep:"none" help:"Two plans or two folders; REVISION:PATH for one that git has."`
}

// Help explains the command.
func (diffCmd) Help() string {
	return `Says what is different for the crew between two states of plans: pulls that
came, are gone or fall at another time, marks that moved on the ring, other
chances, other findings, people at other places, other lines and cues. What is
only written differently makes no diff. What changed in a scene, marks, people,
lines, cuts and who holds which words, is told there once, and of its shots what
they do themselves.

  pullscore diff monday.pull tuesday.pull
  pullscore diff HEAD~3:scenes scenes        a folder, as git had it and as it is
  pullscore diff scene-12.pull               as last committed, and as it is now
  pullscore diff HEAD~3:scene-12.pull        as it was then, and as it is now
  pullscore diff --all monday tuesday        every note, none told together
  pullscore diff --as pdf -o changes.pdf monday tuesday    all changes in one file

A plan that only has another name is told as renamed, which counts as a
difference: its papers are named after it.

Times count as different from half a frame on, angles from 0.05 degrees, places
on a floor from 5 mm, all else where the pull list would print it differently. Frames are those of the
later state. Shots are the same where they have the same ID. The path behind a
revision is from the top of the repository, or begins with ./ for this folder.
Drawings lay the two scores of each changed shot over one another. A pdf that
-o names holds those of all shots, and the changes in words before them.

As git's own diff for plans, with --git, it takes all other files as they are
now; a kit, a cut or a page shows what it does to the plans that use it.

Exit code: 0 no difference, 1 some, 2 a state could not be read. With --git it
is 0 for both, as git wants it.`
}

// Run compares.
func (c *diffCmd) Run(s *session) error {
	if c.Git && c.As == "text" && states.Unmerged(c.States) { // an error would end the answer of git
		_, err := fmt.Fprintln(s.out, console.Clean(c.States[0])+": not merged yet")
		return err
	}
	pairs, err := c.pairs()
	if err != nil {
		return err
	}
	plans, err := comparePairs(s, pairs)
	if err != nil {
		return err
	}
	if plans, err = c.only(plans); err != nil {
		return err
	}
	switch c.As {
	case "text":
		if c.Git { // beside the other files of its answer
			fmt.Fprintln(s.out, s.screen.Paint(console.Bold, "diff of "+console.Clean(c.States[0]))+", all other files as they are now")
		}
		err = diff.WriteText(s.screen, plans, c.All)
	case "json":
		err = diff.WriteJSON(s.out, plans)
	default:
		err = c.draw(s, plans)
	}
	if err == nil && !c.Git && anyDiffers(plans) {
		err = errFindings
	}
	return err
}

// pairs returns the states to compare.
func (c *diffCmd) pairs() ([]states.Pair, error) {
	drawn := c.As != "text" && c.As != "json"
	switch n := len(c.States); {
	case c.Output != "" && !drawn:
		return nil, fmt.Errorf("-o is for drawings: name svg, pdf or png with --as; %s goes to standard output", c.As)
	case len(c.Font) > 0 && !drawn:
		return nil, errors.New("--font is for drawings: name pdf or png with --as")
	case c.Git:
		return states.FromGit(c.States)
	case n == 1:
		return states.Since(c.States[0])
	case n == 2:
		return states.Between(c.States[0], c.States[1])
	}
	return nil, fmt.Errorf("a difference is between 2 states, and here are %d", len(c.States))
}

// comparePairs compares several plans at a time. Plans without shots on either
// side are kits; what they do shows in the plans that use them.
func comparePairs(s *session, pairs []states.Pair) ([]diff.Plan, error) {
	type done struct {
		plan diff.Plan
		err  error
	}
	s.bar = console.NewProgress(s.errScreen, "comparing", len(pairs))
	defer func() { s.bar.Clear() }()
	var plans []diff.Plan
	err := files.InOrder(pairs, func(p states.Pair) done {
		plan, err := p.Compare()
		return done{plan, err}
	}, func(d done) error {
		s.bar.Step()
		if d.err == nil && (len(d.plan.Shots) > 0 || d.plan.Differs() || len(pairs) == 1) {
			plans = append(plans, d.plan)
		}
		return d.err
	})
	return diff.JoinRenamed(plans), err
}

// only leaves the shot that was asked for.
func (c *diffCmd) only(plans []diff.Plan) ([]diff.Plan, error) {
	if c.Shot == "" {
		return plans, nil
	}
	var kept []diff.Plan
	var ids []string
	for _, p := range plans {
		for _, shot := range p.Shots {
			ids = append(ids, shot.ID)
		}
		if one, ok := p.Only(c.Shot); ok {
			kept = append(kept, one)
		}
	}
	if len(kept) == 0 {
		return nil, noShot("the plans", c.Shot, ids)
	}
	return kept, nil
}

func anyDiffers(plans []diff.Plan) bool {
	for _, p := range plans {
		if p.Differs() {
			return true
		}
	}
	return false
}
