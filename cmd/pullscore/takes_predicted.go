// pullscore takes --predicted: every take beside the chance that was computed for
// it before its hand knew of it.

package main

import (
	"errors"
	"fmt"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/takes"
	"pullscore/interp/takes/predicted"
	"pullscore/render/sheet"
	takespaper "pullscore/render/takes"
)

// mostPredicted is how many takes of a log are held at once. A hand of so many
// takes has long been known.
const mostPredicted = 200_000

// predicted lays the takes of a log beside the chances of a plan whose hands
// know of no log.
func (c *takesCmd) predicted(s *session) error {
	switch {
	case c.Plan == "":
		return errors.New("--predicted wants the plan that said the chances: name it with --plan")
	case c.log() == "":
		return errors.New("--predicted wants a log of takes")
	case c.ofRecording():
		return errNotRecorded
	}
	plans, err := c.plans(s, interp.Options{WithoutLogs: true})
	if err != nil {
		return err
	}
	var list []takes.Take
	more := 0
	faults, err := c.read(s, c.log(), plans, func(t takes.Take) {
		switch {
		case c.Puller != "" && t.Puller != "" && t.Puller != c.Puller:
		case len(list) == mostPredicted:
			more++
		default:
			list = append(list, t)
		}
	})
	if err != nil {
		return err
	}
	if more > 0 {
		return fmt.Errorf("%s: has more than %d takes, and --predicted compares no more at once: divide it", name(c.log()), mostPredicted)
	}
	r := predicted.Of(list, plans[0])
	r.Faulty, r.Faults = faults.Lost+faults.Unplaced, faults.Places()
	switch c.As {
	case "json":
		err = findings.Encode(s.out, r)
	case "text":
		err = lists.WritePredicted(s.screen, r)
	default:
		err = c.draw(s, takespaper.Calibration(r, sheet.Options{}))
	}
	if err == nil && (s.printFaults(r.Faults, faults.N+faults.Unplaced) || c.faulty) {
		err = errFindings
	}
	return err
}
