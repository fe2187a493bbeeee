// pullscore list: the pull lists of plans.

package main

import (
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
)

type listCmd struct {
	As    string   `enum:"text,json,csv" default:"text" placeholder:"FORM" help:"How to print the list: text, json or csv."`
	Shot  string   `offer:"shots" placeholder:"ID" help:"Only this shot."`
	Paths []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (listCmd) Help() string {
	return `Prints for every move of the focus when it starts and how long it takes, the
distances and the ring's degrees, the travel and the landing window at the
hand, and the chance that it lands, as in 84 % (64–91): between what that lies
hangs on what nobody has measured of the hand. Below it stands where the thumb
takes hold and where it lands, on a clock face; how far somebody may miss the
mark, until they are soft and until that shows, and how far the ring turns for
10 cm; of a follow, how often it is sharp. Below all are the rests,
with how often and how surely somebody is sharp while the focus stands on them,
and what the plan leaves unsaid and what was taken instead.

  pullscore list scene-12.pull
  pullscore list --shot 14B scene-12.pull
  pullscore list --as csv scene-12.pull > pulls.csv     for a spreadsheet
  pullscore list --as csv scenes > pulls.csv            every plan of a folder

As JSON each finding has the letter of its cause within the shot, and a shot has
its cures tried together: one after the other, with what each leaves. One plan is
an object; several, or a folder, are a list under "plans", each with its file. In a folder, kits (plans without shots) are passed over.
Under "scenes" stands each staged scene with its floor, its lines and cuts, and what
its set-ups have of each word, as coverage has it.

What can be computed is printed also where the plan has errors; these go to
standard error, and the exit code is then 1.`
}

// Run prints the list.
func (c *listCmd) Run(s *session) error {
	return respond(s, question{c.Paths, c.Shot}, func(res *interp.Result, p *plan.Plan) (struct{}, error) {
		if c.As == "json" {
			res.TryTogether(p.Shots)
		}
		return struct{}{}, nil // the plan itself says all
	}, c.write)
}

func (c *listCmd) write(s *session, all *answers[struct{}]) error {
	if c.As == "json" {
		return c.writeJSON(s, all)
	}
	var plans []*plan.Plan
	for _, a := range all.list {
		plans = append(plans, a.plan)
	}
	if c.As == "csv" {
		return lists.WriteCSV(s.out, plans...)
	}
	return lists.WriteText(s.screen, plans...)
}

func (c *listCmd) writeJSON(s *session, all *answers[struct{}]) error {
	type filed struct {
		File string `json:"file"`
		lists.Listing
	}
	list := []filed{}
	for _, a := range all.list {
		if all.single() {
			return lists.WriteJSON(s.out, a.plan, a.diags)
		}
		list = append(list, filed{a.file, lists.NewListing(a.plan, a.diags)})
	}
	return writePlans(s, list)
}

func shotIDs(p *plan.Plan) []string {
	var ids []string
	for _, shot := range p.Shots {
		ids = append(ids, shot.ID)
	}
	return ids
}
