// pullscore check: what is wrong with plans, and what is likely to fail.

package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/lang"
)

type checkCmd struct {
	Strict bool     `help:"Let warnings count as errors."`
	As     string   `enum:"text,json,sarif" default:"text" placeholder:"FORM" help:"How to print findings: text, json or sarif."`
	Paths  []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (checkCmd) Help() string {
	return `Reads every plan to its end and prints all that it finds: errors (it cannot
be done, or makes no sense), warnings (likely to fail on the day), notes
(advice). Each shows the line with the fault underlined and, where one was
found, a cure that was tried and holds. Where there are none, it says what
was not judged: no findings is no promise.

With --as json or sarif each cure also has its edits: which text to put in
place of which. So has each fix, which mends a slip such as a unit that is
missing.

  pullscore check scene-12.pull
  pullscore check --strict .            every plan in this folder
  pullscore check --as json . | jq '.findings[].code'

Exit code: 0 no errors, 1 errors (or warnings, with --strict), 2 a file could
not be read.`
}

// Run checks the plans.
func (c *checkCmd) Run(s *session) error {
	k := checker{session: s, text: c.As == "text", seen: map[said]bool{}}
	err := eachFile(s, c.Paths, "checking", func(f files.File) (*interp.Result, error) {
		return s.interpret(f.Path)
	}, k.file)
	if err != nil {
		return err
	}
	switch c.As {
	case "json":
		err = findings.WriteJSON(s.out, k.diags, k.causes)
	case "sarif":
		err = findings.WriteSARIF(s.out, k.diags)
	default:
		err = k.end()
	}
	if err == nil && (k.count.Errors > 0 || c.Strict && k.count.Warnings > 0) {
		err = errFindings
	}
	return err
}

// A said is a finding to tell once, though many plans use the kit that it is
// in.
type said struct {
	at            lang.Range
	code, message string
}

// A checker gathers the findings of many plans.
type checker struct {
	*session
	text   bool
	seen   map[said]bool
	count  findings.Count
	chance bool // a finding tells a chance of landing
	diags  []lang.Diagnostic
	causes []findings.Cause
	shots  []*plan.Shot
}

// file takes the findings of one plan.
func (k *checker) file(_ files.File, res *interp.Result) error {
	k.count.Files++
	k.shots = append(k.shots, res.Plan.Shots...)
	var fresh []lang.Diagnostic
	for _, d := range res.Findings {
		key := said{d.Range, d.Code, d.Message}
		if k.seen[key] {
			continue
		}
		k.seen[key] = true
		k.count.Add(d)
		k.chance = k.chance || tellsChance(d)
		fresh = append(fresh, d)
	}
	if k.text {
		return k.print(res, fresh)
	}
	k.diags = append(k.diags, fresh...)
	for _, s := range res.Plan.Shots {
		k.causes = append(k.causes, findings.CausesOf(res.Plan.File, s)...)
	}
	return nil
}

// print prints findings for people: errors first, lest they drown, then those
// that have one cause, then the others by their lines. A plan with many opens
// with what most of it depends on.
func (k *checker) print(res *interp.Result, diags []lang.Diagnostic) error {
	groups, rest := findings.Grouped(res.Plan, diags)
	rest = slices.SortedStableFunc(slices.Values(rest), func(a, b lang.Diagnostic) int {
		return cmp.Compare(rank(a), rank(b))
	})
	printer := findings.Printer{Screen: k.screen}
	if len(diags) > 0 {
		k.bar.Clear()
	}
	if len(groups) > 0 && len(diags) >= many {
		fmt.Fprintf(k.out, "%s has %s. Most depends on one thing: %s.\n\n",
			console.Clean(res.Plan.File), findings.Plural(len(diags), "finding"), console.Clean(groups[0].Says()))
	}
	errors := 0
	for errors < len(rest) && rest[errors].Severity == lang.Error {
		errors++
	}
	for _, d := range rest[:errors] {
		if err := printer.Print(d, res.Sources[d.Range.File]); err != nil {
			return err
		}
	}
	for _, g := range groups {
		if err := printer.PrintGroup(g); err != nil {
			return err
		}
	}
	for _, d := range rest[errors:] {
		if err := printer.Print(d, res.Sources[d.Range.File]); err != nil {
			return err
		}
	}
	return nil
}

// many is from how many findings on a plan opens with what most of them depend
// on.
const many = 8

// rank is 0 for errors and 1 for all else.
func rank(d lang.Diagnostic) int {
	if d.Severity == lang.Error {
		return 0
	}
	return 1
}

func tellsChance(d lang.Diagnostic) bool {
	for _, f := range d.Figures {
		if f.Name == "probability" {
			return true
		}
	}
	return false
}

// end prints what stands below all findings.
func (k *checker) end() error {
	if k.count.Files == 0 {
		return nil // what could not be read has been told
	}
	if k.chance {
		lists.WriteNote(k.screen)
		fmt.Fprintln(k.out)
	}
	_, err := fmt.Fprintln(k.out, k.count)
	if silent := moments.NotJudged(k.shots...); silent != "" && k.count.None() {
		lines := console.Lines{Screen: k.screen}
		lines.Wrapped(console.Plain, "", silent)
		return errors.Join(err, lines.Flush())
	}
	return err
}
