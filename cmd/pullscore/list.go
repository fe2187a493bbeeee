// pullscore list: the pull list of a plan.

package main

import (
	"pullscore/cmd/internal/lists"
	"pullscore/interp/plan"
)

type listCmd struct {
	As   string `enum:"text,json,csv" default:"text" placeholder:"FORM" help:"How to print the list: text, json or csv."`
	Shot string `placeholder:"ID" help:"Only this shot."`
	File string `arg:"" help:"A plan, or - for standard input."`
}

// Help explains the command.
func (listCmd) Help() string {
	return `Prints for every move of the focus when it starts and how long it takes, the
distances and the ring's degrees, the travel and the landing window at the
hand, and the chance that it lands; below, what the plan leaves unsaid and
what was taken instead.

  pullscore list scene-12.pull
  pullscore list --shot 14B scene-12.pull
  pullscore list --as csv scene-12.pull > pulls.csv     for a spreadsheet

What can be computed is printed also where the plan has errors; these go to
standard error, and the exit code is then 1.`
}

// Run prints the list.
func (c *listCmd) Run(s *session) error {
	res, err := s.interpret(c.File)
	if err != nil {
		return err
	}
	p, diags := res.Plan, ofShot(res.Findings, c.Shot)
	if c.Shot != "" {
		only, ok := lists.Only(p, c.Shot)
		if !ok {
			s.printErrors(res, diags)
			return noShot(c.File, c.Shot, shotIDs(p))
		}
		p = only
	}
	switch c.As {
	case "json":
		err = lists.WriteJSON(s.out, p, diags)
	case "csv":
		err = lists.WriteCSV(s.out, p)
	default:
		err = lists.WriteText(s.screen, p)
	}
	if err == nil && s.printErrors(res, diags) {
		err = errFindings
	}
	return err
}

func shotIDs(p *plan.Plan) []string {
	var ids []string
	for _, shot := range p.Shots {
		ids = append(ids, shot.ID)
	}
	return ids
}
