// pullscore story: who holds the focus in a film.

package main

import (
	"cmp"
	"strings"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/story"
	"pullscore/render/sheet"
	storypaper "pullscore/render/story"
)

type storyCmd struct {
	As    string `enum:"text,json,svg,pdf,png,html" default:"text" placeholder:"FORM" help:"How to answer: text, json, svg, pdf, png or html."`
	Paper string `enum:"a4,letter,A4,Letter" default:"a4" placeholder:"SIZE" help:"The sheet, lying: a4 or letter."`
	fontFlag
	Paths []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (storyCmd) Help() string {
	return `Prints for every scene (a plan file) how long the focus stays on whom, how many
racks go nearer and farther, and how much of the lines has its speaker sharp; then
the same for all scenes together, with what the racks hang on: a word, a cue, a
reason in words, or nothing.

  pullscore story scenes                  every plan of a folder, in its order
  pullscore story --as json scenes        with every stay and every rack
  pullscore story --as pdf scenes > story.pdf

A stay is from a landing to the next start; while the focus follows somebody it
stays on them. Times are those of the shots, and shots count one after the other,
as the plan has them: of an action that several set-ups cover, each counts. Of the
lines, the time in which the speaker is sharp counts by the chance that they are;
lines that are only heard count nowhere.

Plans with errors are left out and named; the errors go to standard error, and the
exit code is then 1. In a folder, kits (plans without shots) are passed over.`
}

// A told is the story of a plan; nil where it is left out.
type told struct{ scene *story.Scene }

// Run answers.
func (c *storyCmd) Run(s *session) error {
	if _, err := c.rendering(c.As, drawDPI); err != nil {
		return err
	}
	return respond(s, question{paths: c.Paths}, storyOf, c.write)
}

// storyOf answers for one plan.
func storyOf(res *interp.Result, p *plan.Plan) (told, error) {
	if hasErrors(res.Findings) {
		return told{}, nil
	}
	return told{story.Of(p)}, nil
}

// filmOf joins the stories of all plans.
func filmOf(all *answers[told]) *story.Film {
	var scenes []*story.Scene
	var left []story.Left
	for _, a := range all.list {
		if a.value.scene == nil {
			left = append(left, story.Left{Title: a.plan.Title, File: a.file})
			continue
		}
		if len(a.plan.Shots) > 0 {
			scenes = append(scenes, a.value.scene)
		}
	}
	return story.Join(scenes, left)
}

func (c *storyCmd) write(s *session, all *answers[told]) error {
	film := filmOf(all)
	switch c.As {
	case "json":
		return findings.Encode(s.out, film)
	case "text":
		return lists.WriteStory(s.screen, film)
	}
	how, err := c.rendering(c.As, drawDPI)
	if err != nil {
		return err
	}
	paper := papers[strings.ToLower(c.Paper)]
	title := cmp.Or(film.Title, "Focus") + ": story"
	var chapters []chapter
	if pages := storypaper.Story(film, sheet.Options{Paper: paper}); len(pages) > 0 {
		chapters = append(chapters, chapter{title, pages})
	}
	return s.printPages(printing{c.As, title, paper, how}, chapters)
}
