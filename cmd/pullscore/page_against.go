// page --against: what a page has otherwise than a plan.

package main

import (
	"fmt"
	"io"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/findings"
	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/rule"
)

// compare tells what the page has otherwise than the plan.
func (c *pageCmd) compare(s *session, src []byte) error {
	page := &interp.Script{Path: c.File, Text: src}
	if c.Scene != "" {
		text, _ := lines.Decode(c.File, src) // what is wrong with it is told below
		scene, err := c.scene(text)
		if err != nil {
			return err
		}
		if page.Scene = scene.Number; page.Scene == "" {
			return fmt.Errorf("%s: the scene has no number, so it cannot be compared alone", c.File)
		}
	}
	plan, err := s.readFile(c.Against)
	if err != nil {
		return err
	}
	res := interp.Interpret(c.Against, plan, interp.Options{Script: page, Progress: s.reading()})
	faulty := c.printObstacles(s, res, plan)
	var told []lang.Diagnostic
	for _, d := range res.Findings {
		if ofPage(d) {
			told = append(told, d)
		}
	}
	err = c.write(s, func(w io.Writer) error { return c.tell(s, w, res, told) })
	if err == nil && (faulty || len(res.Revision) > 0) {
		err = errFindings
	}
	return err
}

// ofPage reports whether a finding is about what a page has otherwise than a
// plan.
func ofPage(d lang.Diagnostic) bool {
	code, ok := rule.Named(d.Code)
	return ok && code.Rule().Group == rule.Page
}

// printObstacles prints the errors that keep lines from being compared, and
// reports whether there are any: those of the page, those about it, and what
// cannot be read of the plan. That the plan has others is only said: a plan
// that waits for its kit has its words.
func (c *pageCmd) printObstacles(s *session, res *interp.Result, plan []byte) bool {
	type sign struct {
		at   lang.Range
		code string
	}
	unread := map[sign]bool{}
	_, diags := lang.Parse(c.Against, plan)
	for _, d := range diags {
		unread[sign{d.Range, d.Code}] = true
	}
	var obstacles []lang.Diagnostic
	others := 0
	for _, d := range res.Findings {
		switch {
		case d.Severity != lang.Error:
		case unread[sign{d.Range, d.Code}], d.Range.File == c.File, d.Code == "no-scene":
			obstacles = append(obstacles, d)
		default:
			others++
		}
	}
	faulty := s.printErrors(res, obstacles)
	if others > 0 {
		fmt.Fprintf(s.errs, "%s has %s; see pullscore check\n", console.Clean(c.Against), findings.Plural(others, "error"))
	}
	return faulty
}

// tell writes the changes.
func (c *pageCmd) tell(s *session, w io.Writer, res *interp.Result, told []lang.Diagnostic) error {
	if c.As == "json" {
		return findings.WriteJSON(w, told, nil)
	}
	if res.Revision != nil && len(res.Revision) == 0 {
		_, err := fmt.Fprintf(w, "no line of %s has changed\n", console.Clean(c.Against))
		return err
	}
	screen := s.screen
	screen.W = w
	p := findings.Printer{Screen: screen}
	for _, d := range told {
		if err := p.Print(d, res.Sources[d.Range.File]); err != nil {
			return err
		}
	}
	return nil
}
