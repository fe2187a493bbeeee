// pullscore takes: what a log of takes says of a hand.

package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	takespaper "pullscore/render/takes"
)

type takesCmd struct {
	As        string  `enum:"text,json,csv,edl,otio,svg,pdf,png" default:"text" placeholder:"FORM" help:"How to answer: text, json, csv, edl, otio, svg, pdf or png."`
	Predicted bool    `help:"Lay every take beside the chance that the plan gave it before its hand knew of it."`
	Plan      string  `offer:"plans" placeholder:"FILE" help:"The plan whose pulls the takes are of."`
	Puller    string  `placeholder:"NAME" help:"Only the takes of this puller."`
	Grip      float64 `default:"120" placeholder:"DEG" help:"What one grip of the hand turns, in degrees."`
	Recorded  string  `offer:"files" placeholder:"FILE" help:"Score the pulls in a recorded focus curve."`
	Shot      string  `offer:"shots" placeholder:"ID" help:"The shot that was recorded."`
	At        string  `placeholder:"TIMECODE" help:"Where a recording begins that counts frames."`
	Clock     string  `enum:",source,record,shot" default:"" placeholder:"CLOCK" help:"Of which clock the timecode of a recording is: source, record or shot."`
	Captions  string  `offer:"files" placeholder:"FILE" help:"Without a plan: the subtitles to tell the moves of a recording by."`
	Against   string  `offer:"files" placeholder:"LIST" help:"The list of a cut: which take it uses of every rack, and how that landed. Without a plan: the list whose clip was recorded."`
	Clip      string  `placeholder:"NAME" help:"The name of that clip in the list, as plans find one: 27A-3 is also 27A TK 3 and 27A-3.mov."`
	Clips     string  `offer:"files" placeholder:"LIST" help:"Without a plan: a list of clips (ALE), for the rate and for how far the source of that clip goes."`
	Rate      string  `placeholder:"RATE" help:"Frames a second of a recording without a plan, where no file says it."`
	Unit      string  `enum:",mm,cm,m,in,ft" default:"" placeholder:"UNIT" help:"Of recorded focus distances that name none: mm, cm, m, in or ft."`
	Column    string  `placeholder:"NAME" help:"The column of focus distances, where a recording has several."`
	Append    string  `offer:"files" placeholder:"LOG" help:"Add the recorded pulls to this log."`
	Date      string  `placeholder:"DAY" help:"The day of the recording, as in 2026-03-01."`
	Strict    bool    `help:"With --against: exit 1 where a rack in the cut is soft."`

	Logs []string `offer:"files" arg:"" optional:"" name:"log" help:"A log of takes, or - for standard input; with --against any number."`

	faulty bool // the plan has errors
}

// Help explains the command.
func (takesCmd) Help() string { return takesHelp }

const takesHelp = `Fits a hand to a log of takes: its throughput, its spread at leisure and its
bias, each with the range that holds 90 %; counts hits, errors and what has
changed over the sessions; and with a plan says which pull to practise next.

  pullscore takes mira.csv
  pullscore takes --plan scene-12.pull mira.csv
  pullscore takes --as svg mira.csv > mira.svg     error against time and travel
  pullscore takes --predicted --plan scene-12.pull mira.csv

A take far outside all others is a slip: it is named and left out of the spread,
and the share of slips lessens every chance. A take that the end of the ring
held counts as one that would have gone on; one whose ring ends in focus is
scored and not fitted. Tries made on the page never enter a fit: they stand in a
table of their own.

--predicted says by bands of chance how many takes landed of those that the plan
said would: it alone can prove or refute the chances. Each chance is that of the
plan's own time, by the hand that could be known before the day of the take: a
hand with published throughput, half a millimetre assumed at the rim, fitted to
the takes of the days before. Where no row has a date, every 36 rows are a day.
As svg, pdf or png it draws what was said against what landed.

A log is a CSV file whose first row names its columns, in any order:

  travel_deg,error_deg,time_s            at the hand: the travel, where it landed
                                         less the mark (positive past it), and
                                         the seconds from the first motion
  plan,shot,pull,landed,time_s           where the focus came to rest: 1.72 m,
                                         5'6" or 121 deg of the ring

and besides, where they are known: date, plan, shot, pull, puller, hit (yes or
no) or result (sharp, early, late, buzz), rim_mm (the diameter under the hand),
note; take, clip and timecode (of the camera, at the landing) tell which take a cut
uses; distance_m and stop are for people. A row that does
not say where the focus landed counts by its hit or result, and is not fitted.
Without these and without a plan, a hit is a landing within 3 deg of the mark.

Rows that cannot be used go to standard error with line and column, all others
count, and the exit code is then 1, as it is where the plan has errors.

A focus curve that a camera has recorded is scored against the plan: a table of
frames, or OpenTrackIO samples. A table has columns divided by commas, semicolons
or tabs, with a timecode and a focus distance. Its unit stands in the header, in
the row below it or in the cell; --unit names one that stands nowhere. A table
that only counts frames needs --at. Distances are from the sensor, as cameras
report them, also where the plan has "tape from lens". Its timecode is that of the
camera (source), of the cut (record) or of the shot, and --clock says which where
both fit: by source the whole take is scored, by record what the cut shows. A list
of clips that the plan names (clips "day.ale") says how far the source of a take
goes; without one Pullscore allows a minute around what is used. Of several movements
the one nearest to the plan is scored, and none where two are about as near:

  pullscore takes --recorded clip.csv --plan scene-12.pull --shot 14B
  pullscore takes --recorded clip.csv --plan scene-12.pull --shot 14B --append mira.csv

Once the scene is cut, --against says which take the cut uses of every rack, where,
how it landed, and which other takes landed sharp. It lays the plan into that list of
clips (EDL or OTIO) in place of the plan's own; subtitles must be of the same cut. A
row is of the take in the cut by its take or clip, else by its timecode. --strict
makes a soft rack exit 1, and --as edl or otio writes markers where the racks land:

  pullscore takes --against cut.edl --plan scene-12.pull mira.csv
  pullscore takes --against cut.edl --plan scene-12.pull --as csv mira.csv ines.csv
  pullscore takes --against cut.edl --plan scene-12.pull --as edl mira.csv > landed.edl

Without a plan, subtitles tell what was said while the focus moved: when each move
left and landed, on which words, and whether it left inside a sentence. Of the clip
of a list the timecode is that of the camera, else that of the cut. --rate is needed
only where neither the recording nor a list says it (edit decision lists never do).
As edl or otio the moves are markers, red where one left inside a sentence:

  pullscore takes --recorded clip.csv --captions cut.srt --rate 24
  pullscore takes --recorded clip.csv --captions cut.srt --against cut.otio --clip 27A-3
  pullscore takes --recorded clip.csv --captions cut.srt --rate 24 --as edl > moves.edl`

// Run answers.
func (c *takesCmd) Run(s *session) error {
	switch {
	case c.Against != "" && c.Recorded == "" && c.Captions == "" && c.Clip == "" && c.Clips == "" && c.Rate == "":
		return c.usedInCut(s)
	case c.Strict:
		return errors.New("--strict goes with --against and a plan")
	case len(c.Logs) > 1:
		return errors.New("one log at a time, but for --against: join them")
	case c.Captions != "" || c.Against != "" || c.Clip != "" || c.Clips != "" || c.Rate != "":
		return c.unplanned(s)
	case c.As == "csv":
		return errors.New("csv is for --against, or a recording with --captions")
	case c.As == "edl" || c.As == "otio":
		return errors.New("edl and otio are for --against, or a recording with --captions: markers where racks land")
	case c.Predicted && c.Recorded == "":
		return c.predicted(s)
	}
	plans, err := c.plans(s, interp.Options{})
	switch {
	case err != nil:
		return err
	case c.Predicted && c.Recorded != "":
		return errors.New("--predicted reads a log, not a recording: add its pulls to a log with --append first")
	case c.Recorded != "" && c.log() != "":
		return errors.New("--recorded scores a recording: leave out the log, or name it with --append")
	case c.Recorded != "":
		return c.recorded(s, plans)
	case c.ofRecording():
		return errNotRecorded
	case c.log() == "":
		return errors.New("name a log of takes, or a recording with --recorded")
	}
	sample := takes.NewSample(takes.Options{Puller: c.Puller, Grip: c.Grip})
	faults, err := c.read(s, c.log(), plans, sample.Add)
	if err != nil {
		return err
	}
	r := sample.Report()
	r.Faulty, r.Faults = faults.Lost+faults.Unplaced, faults.Places()
	r.Practise = sample.Practise(&r.Fit, plans...)
	if r.Takes > 0 || r.PageLeftOut > 0 || c.As == "json" {
		if err := c.answer(s, sample, r); err != nil {
			return err
		}
	}
	if s.printFaults(r.Faults, faults.N+faults.Unplaced) || c.faulty {
		return errFindings
	}
	if r.Takes == 0 && r.PageLeftOut == 0 {
		return fmt.Errorf("%s: has no takes", name(c.log()))
	}
	return nil
}

var errNotRecorded = errors.New("--append, --at, --clock, --column, --date, --shot and --unit go with --recorded")

// log returns the one log, "" where none is named.
func (c *takesCmd) log() string {
	if len(c.Logs) == 0 {
		return ""
	}
	return c.Logs[0]
}

// ofRecording reports whether a flag was given that is about a recording alone.
func (c *takesCmd) ofRecording() bool {
	return c.Append != "" || c.At != "" || c.Clock != "" || c.Column != "" || c.Date != "" || c.Shot != "" || c.Unit != ""
}

// plans reads the plan that was named.
func (c *takesCmd) plans(s *session, opt interp.Options) ([]*plan.Plan, error) {
	if c.Plan == "" {
		return nil, nil
	}
	if c.Plan == files.Stdin && slices.Contains(c.Logs, files.Stdin) {
		return nil, errors.New("standard input can be the plan or the log, not both")
	}
	res, err := s.interpretWith(c.Plan, opt)
	if err != nil {
		return nil, err
	}
	c.faulty = s.printErrors(res, res.Findings)
	return []*plan.Plan{res.Plan}, nil
}

// read reads the log, which may be of any length.
func (c *takesCmd) read(s *session, path string, plans []*plan.Plan, add func(takes.Take)) (takes.Faults, error) {
	in := s.in
	if path != files.Stdin {
		f, err := os.Open(path)
		if err != nil {
			return takes.Faults{}, files.Plain(err)
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return takes.Faults{}, fmt.Errorf("%s: is a folder", path)
		}
		in = io.Reader(f)
	}
	faults, err := takes.ReadLog(takes.NewReader(in, name(path), plans...), add)
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
	case "text":
		return lists.WriteTakes(s.screen, r)
	}
	return c.draw(s, takespaper.Takes(sample, r, sheet.Options{}))
}

// drawDPI is how fine a png is, in pixels an inch.
const drawDPI = 150

// draw writes a drawing, which is one page, in the form that was asked for.
func (c *takesCmd) draw(s *session, pages []*draw.Page) error {
	return backends[c.As].write(s.out, &plan.Shot{Title: pages[0].Title}, pages, rendering{dpi: drawDPI})
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
