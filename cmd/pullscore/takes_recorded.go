// pullscore takes --recorded: pulls in a recorded focus curve.

package main

import (
	"errors"
	"fmt"
	"os"
	"time"

	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/takes/recorded"
	"pullscore/interp/units"
)

// A recording is what --recorded answers.
type recording struct {
	Plan   string           `json:"plan"`
	Shot   string           `json:"shot"`
	Clock  string           `json:"clock,omitempty"` // of its timecode, where the shot has several
	Frames int              `json:"frames"`
	Lost   int64            `json:"missing_frames"`
	Pulls  []recorded.Score `json:"pulls"`
	Faulty int              `json:"faulty"`
	Faults []takes.Place    `json:"faults,omitempty"`
}

// recorded scores a recording and adds its pulls to a log where one is named.
func (c *takesCmd) recorded(s *session, plans []*plan.Plan) error {
	shot, err := c.shotRecorded(plans)
	if err != nil {
		return err
	}
	in := s.in
	if c.Recorded != files.Stdin {
		f, err := os.Open(c.Recorded)
		if err != nil {
			return files.Plain(err)
		}
		defer f.Close()
		in = f
	}
	curve, err := recorded.Read(in, name(c.Recorded), shot, recorded.Options{At: c.At, Unit: c.Unit, Column: c.Column, Clock: c.Clock})
	if err != nil {
		return files.Plain(err)
	}
	r := recording{Plan: plans[0].Title, Shot: shot.ID, Frames: len(curve.Frames), Pulls: curve.Scores(), Faulty: curve.Faults.N, Faults: curve.Faults.Places()}
	for _, g := range curve.Gaps {
		r.Lost += g.Lost
	}
	if len(shot.Pieces) > 0 {
		r.Clock = curve.By
	}
	if c.As == "json" {
		err = findings.Encode(s.out, r)
	} else {
		err = lists.WriteRecordedTakes(s.screen, shot, lists.Recording{Frames: r.Frames, Missing: r.Lost, Unseen: curve.Unseen, Clock: r.Clock}, r.Pulls)
	}
	if err == nil {
		err = c.keep(s, plans[0], curve, r.Pulls)
	}
	if err == nil && (s.printFaults(r.Faults, curve.Faults.N) || c.faulty) {
		err = errFindings
	}
	return err
}

// shotRecorded returns the shot that the recording is of.
func (c *takesCmd) shotRecorded(plans []*plan.Plan) (*plan.Shot, error) {
	switch {
	case len(plans) == 0:
		return nil, errors.New("--recorded wants the plan of the shot: name it with --plan")
	case c.As != "text" && c.As != "json":
		return nil, errors.New("a recording is scored as text or json, not drawn")
	}
	if c.Date != "" {
		if _, err := time.Parse(time.DateOnly, c.Date); err != nil {
			return nil, fmt.Errorf("--date %s: a day is written as in 2026-03-01", c.Date)
		}
	}
	p := plans[0]
	if c.Shot == "" && len(p.Shots) == 1 {
		return p.Shots[0], nil
	}
	if c.Shot == "" {
		return nil, errors.New("the plan has several shots, or none: name the one recorded with --shot")
	}
	only, ok := lists.Only(p, c.Shot)
	if !ok {
		return nil, noShot(c.Plan, c.Shot, shotIDs(p))
	}
	return only.Shots[0], nil
}

// keep adds the pulls that were scored to the log.
func (c *takesCmd) keep(s *session, p *plan.Plan, curve *recorded.Curve, scores []recorded.Score) error {
	if c.Append == "" {
		return nil
	}
	shot := curve.Shot
	puller := c.Puller
	if puller == "" {
		puller = shot.Puller
	}
	var list []takes.Take
	for i := range scores {
		if sc := &scores[i]; sc.Scored {
			pull := shot.Pulls[sc.Pull-1]
			t := sc.Take(p.Title, puller, c.Date, pull.Asks.Rim)
			t.Landed = takes.LandedAt(shot, pull, t.Error)
			curve.Stamp(&t, sc)
			list = append(list, t)
		}
	}
	if len(list) == 0 {
		return errors.New("no pull was scored, so there is nothing to add to the log")
	}
	if err := takes.AppendFile(c.Append, list...); err != nil {
		return files.Plain(err)
	}
	if c.As == "text" {
		_, err := fmt.Fprintf(s.out, "\nAdded to %s: %s\n", c.Append, units.Count(len(list), "take"))
		return err
	}
	return nil
}
