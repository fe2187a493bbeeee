// pullscore coverage: what each set-up has of each word.

package main

import (
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
)

type coverageCmd struct {
	As    string   `enum:"text,json,csv" default:"text" placeholder:"FORM" help:"How to answer: text, json or csv."`
	Paths []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (coverageCmd) Help() string {
	return `Prints for every word of every line whether the speaker is sharp, in each shot
that has the word. Shots of one plan that have the same lines are set-ups of one
scene: Pullscore joins their lines by the words, as it finds a plan's lines on a
script page. A set-up may have only a part of a line.

  sharp, faint, soft   the speaker, at the worst while the words sound
  rack                 not sharp, and a rack is on its way
  edge, out            near the edge of the picture, or out of it; only where the
                       plan says to which side the speaker stands
  voice                the set-up does not have the speaker as a subject

Below the table are the words that no set-up holds (no set-up has the speaker
sharp and in the picture), those that one holds alone, and how many of their own
words each speaker has.

  pullscore coverage scene-12.pull
  pullscore coverage --as csv scenes > coverage.csv     every plan of a folder
  pullscore coverage --as json scene-12.pull

As JSON the answer is a list under "scenes", one for each plan. In a folder, kits
(plans without shots) are passed over. What can be computed is printed also where
the plan has errors; these go to standard error, and the exit code is then 1.`
}

// Run answers.
func (c *coverageCmd) Run(s *session) error {
	return respond(s, question{paths: c.Paths}, coverageOf, c.write)
}

// coverageOf answers for one plan.
func coverageOf(_ *interp.Result, p *plan.Plan) (*coverage.Scene, error) {
	return coverage.Of(p), nil
}

func (c *coverageCmd) write(s *session, all *answers[*coverage.Scene]) error {
	var scenes []*coverage.Scene
	for _, a := range all.list {
		scenes = append(scenes, a.value)
	}
	switch c.As {
	case "json":
		return findings.Encode(s.out, struct {
			Scenes []*coverage.Scene `json:"scenes"`
		}{scenes})
	case "csv":
		return lists.WriteCoverageCSV(s.out, scenes...)
	}
	return lists.WriteCoverage(s.screen, scenes...)
}
