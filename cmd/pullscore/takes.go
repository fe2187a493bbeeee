// pullscore takes: what a log of takes says of a hand.

package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/render/sheet"
	"pullscore/render/svg"
	takespaper "pullscore/render/takes"
)

type takesCmd struct {
	As       string  `enum:"text,json,svg" default:"text" placeholder:"FORM" help:"How to answer: text, json or svg."`
	Plan     string  `offer:"plans" placeholder:"FILE" help:"The plan whose pulls the takes are of."`
	Puller   string  `placeholder:"NAME" help:"Only the takes of this puller."`
	Grip     float64 `default:"120" placeholder:"DEG" help:"What one grip of the hand turns, in degrees."`
	Recorded string  `offer:"files" placeholder:"FILE" help:"Score the pulls in a recorded focus curve."`
	Shot     string  `offer:"shots" placeholder:"ID" help:"The shot that was recorded."`
	Append   string  `offer:"files" placeholder:"LOG" help:"Add the recorded pulls to this log."`
	Date     string  `placeholder:"DAY" help:"The day of the recording, as in 2026-03-01."`
	Log      string  `offer:"files" arg:"" optional:"" help:"A log of takes, or - for standard input."`

	faulty bool // the plan has errors
}

// Help explains the command.
func (takesCmd) Help() string {
	return `Fits a hand to a log of takes: its throughput, its spread at leisure and its
bias, each with the range that holds 90 %; counts hits, errors and what has
changed over the sessions; and with a plan says which pull to practise next.

  pullscore takes mira.csv
  pullscore takes --plan scene-12.pull mira.csv
  pullscore takes --as svg mira.csv > mira.svg     error against time and travel

A log is a CSV file whose first row names its columns, in any order:

  travel_deg,error_deg,time_s            at the hand: the travel, where it landed
                                         less the mark (positive past it), and
                                         the seconds from the first motion
  plan,shot,pull,landed,time_s           where the focus came to rest: 1.72 m,
                                         5'6" or 121 deg of the ring

and besides, where they are known: date, plan, shot, pull, puller, hit (yes or
no), rim_mm (the diameter under the hand), note. Without a hit column and
without a plan, a hit is a landing within 3 deg of the mark.

Rows that cannot be used go to standard error with line and column, all others
count, and the exit code is then 1, as it is where the plan has errors.

A focus curve that a camera has recorded, a CSV file with a timecode and a
focus distance in the unit that its header names, or OpenTrackIO as JSON lines,
is scored against the plan. Its distances are from the sensor, as cameras report
them, also where the plan has "tape from lens". Of several movements the one
nearest to the plan is scored, and none where two are about as near:

  pullscore takes --recorded clip.csv --plan scene-12.pull --shot 14B
  pullscore takes --recorded clip.csv --plan scene-12.pull --shot 14B --append mira.csv`
}

// Run answers.
func (c *takesCmd) Run(s *session) error {
	plans, err := c.plans(s)
	switch {
	case err != nil:
		return err
	case c.Recorded != "" && c.Log != "":
		return errors.New("--recorded scores a recording: leave out the log, or name it with --append")
	case c.Recorded != "":
		return c.recorded(s, plans)
	case c.Append != "" || c.Date != "" || c.Shot != "":
		return errors.New("--append, --date and --shot go with --recorded")
	case c.Log == "":
		return errors.New("name a log of takes, or a recording with --recorded")
	}
	sample := takes.NewSample(takes.Options{Puller: c.Puller, Grip: c.Grip})
	faults, err := c.read(s, sample, plans)
	if err != nil {
		return err
	}
	r := sample.Report()
	r.Faulty, r.Faults = faults.Lost+faults.Unplaced, faults.Places()
	r.Practise = sample.Practise(&r.Fit, plans...)
	if r.Takes > 0 || c.As == "json" {
		if err := c.answer(s, sample, r); err != nil {
			return err
		}
	}
	if s.printFaults(r.Faults, faults.N+faults.Unplaced) || c.faulty {
		return errFindings
	}
	if r.Takes == 0 {
		return fmt.Errorf("%s: has no takes", name(c.Log))
	}
	return nil
}

// plans reads the plan that was named.
func (c *takesCmd) plans(s *session) ([]*plan.Plan, error) {
	if c.Plan == "" {
		return nil, nil
	}
	if c.Plan == files.Stdin && c.Log == files.Stdin {
		return nil, errors.New("standard input can be the plan or the log, not both")
	}
	res, err := s.interpret(c.Plan)
	if err != nil {
		return nil, err
	}
	c.faulty = s.printErrors(res, res.Findings)
	return []*plan.Plan{res.Plan}, nil
}

// read reads the log, which may be of any length.
func (c *takesCmd) read(s *session, sample *takes.Sample, plans []*plan.Plan) (takes.Faults, error) {
	in := s.in
	if c.Log != files.Stdin {
		f, err := os.Open(c.Log)
		if err != nil {
			return takes.Faults{}, files.Plain(err)
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return takes.Faults{}, fmt.Errorf("%s: is a folder", c.Log)
		}
		in = io.Reader(f)
	}
	faults, err := sample.ReadLog(takes.NewReader(in, name(c.Log), plans...))
	return faults, files.Plain(err)
}

// name is what a file is called in messages.
func name(path string) string {
	if path == files.Stdin {
		return "standard input"
	}
	return path
}

func (c *takesCmd) answer(s *session, sample *takes.Sample, r *takes.Report) error {
	switch c.As {
	case "json":
		return findings.Encode(s.out, r)
	case "svg":
		return svg.Write(s.out, takespaper.Takes(sample, r, sheet.Options{})[0])
	}
	return lists.WriteTakes(s.screen, r)
}

// printFaults prints the faults of a log to standard error, and reports whether
// there are any.
func (s *session) printFaults(list []takes.Place, n int) bool {
	s.out.Flush() // what was printed before stands above
	for _, f := range list {
		fmt.Fprintf(s.errScreen.W, "%s:%d:%d: %s\n", console.Clean(f.File), f.Line, f.Column,
			s.errScreen.Paint(console.Red, "error: ")+console.Clean(f.Message))
	}
	if more := n - len(list); more > 0 {
		fmt.Fprintf(s.errScreen.W, "and %d more rows\n", more)
	}
	return n > 0
}
