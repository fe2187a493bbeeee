// pullscore takes --against: which takes a cut uses, and how they landed.

package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"pullscore/cmd/internal/export"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/takes/used"
)

// mostCompared is how many takes are held at once.
const mostCompared = 200_000

// usedInCut says which take a cut uses of every rack of a plan, and how it landed.
func (c *takesCmd) usedInCut(s *session) error {
	switch {
	case c.Plan == "":
		return errors.New("--against wants the plan of the cut: name it with --plan; without a plan it goes with --recorded and --captions")
	case len(c.Logs) == 0:
		return errors.New("--against wants a log of takes")
	case c.Predicted:
		return errors.New("--predicted and --against are two questions: ask one at a time")
	case c.ofRecording():
		return errNotRecorded
	case c.As != "text" && c.As != "json" && c.As != "csv" && c.As != "edl" && c.As != "otio":
		return errors.New("the takes of a cut are told as text, json, csv, edl or otio")
	}
	if _, err := interp.ReadFile(c.Against); err != nil {
		return files.Plain(err)
	}
	plans, err := c.plans(s, interp.Options{WithoutLogs: true, Against: c.Against})
	if err != nil {
		return err
	}
	logs, faults, err := c.readLogs(s, plans)
	if err != nil {
		return err
	}
	r := used.Of(logs, plans[0], filepath.Base(c.Against))
	faulty := 0
	for i := range faults {
		faulty += faults[i].N + faults[i].Unplaced
		r.Faulty += faults[i].Lost + faults[i].Unplaced
		r.Faults = append(r.Faults, faults[i].Places()...)
	}
	switch c.As {
	case "json":
		err = findings.Encode(s.out, r)
	case "csv":
		err = lists.WriteUsedCSV(s.out, r)
	case "edl":
		err = export.UsedEDL(s.out, plans[0], r)
	case "otio":
		err = export.UsedOTIO(s.out, plans[0], r)
	default:
		err = lists.WriteUsed(s.screen, r)
	}
	if err == nil && (s.printFaults(r.Faults, faulty) || c.faulty || c.Strict && r.Soft > 0) {
		err = errFindings
	}
	return err
}

// readLogs reads all logs that are named.
func (c *takesCmd) readLogs(s *session, plans []*plan.Plan) (logs []used.Log, faults []takes.Faults, err error) {
	held := 0
	for _, path := range c.Logs {
		l := used.Log{Name: name(path)}
		more := false
		f, err := c.read(s, path, plans, func(t takes.Take) {
			switch {
			case c.Puller != "" && t.Puller != "" && t.Puller != c.Puller:
			case held == mostCompared:
				more = true
			default:
				held++
				l.Takes = append(l.Takes, t)
			}
		})
		switch {
		case err != nil:
			return nil, nil, err
		case more:
			return nil, nil, fmt.Errorf("%s: has more than %d takes, and --against compares no more at once: divide it", name(path), mostCompared)
		}
		logs, faults = append(logs, l), append(faults, f)
	}
	return logs, faults, nil
}
