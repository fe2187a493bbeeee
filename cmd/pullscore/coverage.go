// pullscore coverage: what each set-up has of each word.

package main

import (
	"cmp"
	"path/filepath"
	"strings"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	coveragepaper "pullscore/render/coverage"
	"pullscore/render/sheet"
)

type coverageCmd struct {
	As    string `enum:"text,json,csv,svg,pdf,png,html" default:"text" placeholder:"FORM" help:"How to answer: text, json, csv, svg, pdf, png or html."`
	Paper string `enum:"a4,letter,A4,Letter" default:"a4" placeholder:"SIZE" help:"The sheet, lying: a4 or letter."`
	Cuts  bool   `help:"Say which set-up the cut shows."`
	fontFlag
	Paths []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (coverageCmd) Help() string {
	return `Prints for every word of every line whether the speaker is sharp, in each shot
that has the word. Shots of one plan that have the same lines are set-ups of one
scene: Pullscore joins their lines by the words, as it finds a plan's lines on a
script page. A set-up may have only a part of a line.

A scene that is staged (scene "TITLE") has its lines itself: each is told once, with
a column for every shot that covers any of the scene, and when its words begin.

  sharp, faint, soft   the speaker, at the worst while the words sound
  rack                 not sharp, and a rack is on its way
  edge, out            near the edge of the picture, or out of it; only where the
                       plan says to which side the speaker stands
  blocked              behind somebody who speaks or moves
  voice                the set-up does not have the speaker as a subject

Below the table are the words that no set-up holds (no set-up has the speaker
sharp, in the picture and not behind somebody), those that one holds alone, and how many of their own
words each speaker has.

  pullscore coverage scene-12.pull
  pullscore coverage --as csv scenes > coverage.csv     every plan of a folder
  pullscore coverage --as svg scene-12.pull > coverage.svg
  pullscore coverage --as pdf scenes > coverage.pdf     to print

With --cuts, a star stands at what the cut shows; the plan names the cut with edit,
and a scene has its own with cut to.
Below are then the words that the cut shows with a speaker who is not held.

Drawn, every line stands in its words, with a bar below them for each set-up:
black where the speaker is sharp, as high as the chance; a frame with the names of
those who are sharp in place of the speaker; the number of a rack at the word on
which it lands. With --cuts, a heavy bar stands at the left of what the cut shows.

As JSON the answer is a list under "scenes", one for each plan or staged scene; list
--as json has the same of the staged ones. In a folder, kits
(plans without shots) are passed over. What can be computed is printed also where
the plan has errors; these go to standard error, and the exit code is then 1.`
}

// Run answers.
func (c *coverageCmd) Run(s *session) error {
	if _, err := c.rendering(c.As, drawDPI); err != nil {
		return err
	}
	return respond(s, question{paths: c.Paths}, c.of, c.write)
}

// of answers for one plan.
func (c *coverageCmd) of(_ *interp.Result, p *plan.Plan) ([]*coverage.Scene, error) {
	return coverage.Of(p, c.Cuts), nil
}

func (c *coverageCmd) write(s *session, all *answers[[]*coverage.Scene]) error {
	var scenes []*coverage.Scene
	for _, a := range all.list {
		scenes = append(scenes, a.value...)
	}
	switch c.As {
	case "json":
		return findings.Encode(s.out, struct {
			Scenes []*coverage.Scene `json:"scenes"`
		}{scenes})
	case "csv":
		return lists.WriteCoverageCSV(s.out, scenes...)
	case "text":
		return lists.WriteCoverage(s.screen, scenes...)
	}
	return c.draw(s, scenes)
}

// draw draws the scenes in which somebody speaks.
func (c *coverageCmd) draw(s *session, scenes []*coverage.Scene) error {
	how, err := c.rendering(c.As, drawDPI)
	if err != nil {
		return err
	}
	paper := papers[strings.ToLower(c.Paper)]
	var chapters []chapter
	for _, sc := range scenes {
		if pages := coveragepaper.Coverage(sc, sheet.Options{Paper: paper}); len(pages) > 0 {
			chapters = append(chapters, chapter{cmp.Or(sc.Title, filepath.Base(sc.File)), pages})
		}
	}
	return s.printPages(printing{c.As, "Coverage", paper, how}, chapters)
}
