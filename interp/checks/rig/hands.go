// hands-apart, pan-and-pull: what a turn and a pull at once ask of hands.
//
// Two hands of one person that are aimed at two targets start and land together, also
// where one of them has much less to do (Kelso, Southard and Goodman, "On the nature of
// human interlimb coordination", Science 203, 1979). So a rack fits under a turn of the
// same person if both start and land together. A hand that follows somebody, by the
// camera or by the ring, is not aimed at one target, and is told of as a second job alone.

package rig

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// together is how far two hands may start or land apart and still go as one, seconds.
// Common practice, no source.
const together = 0.2

var Hands = check.Check{Codes: []rule.Code{rule.HandsApart, rule.PanAndPull}, Run: hands}

func hands(b *check.Shot) (found []check.Finding) {
	operator, puller := b.Plan.Operator, b.Plan.Puller
	if operator != "" && operator != puller {
		return nil // two people
	}
	turns := turnsOf(b)
	for _, p := range b.Pulls {
		var longest turn
		most, told := 0.0, false
		for _, t := range turns {
			both := min(t.End, p.Rack.LandS) - max(t.Start, p.Rack.StartS)
			if both <= 1e-9 {
				continue
			}
			if both > most {
				longest, most = t, both
			}
			if operator == "" || told {
				continue
			}
			if why, figures := apart(b, p, t); why != "" {
				told = true
				found = append(found, handsApart(b, p, t, why, figures))
			}
		}
		if most > 0 && !told {
			found = append(found, panAndPull(b, p, longest, most))
		}
	}
	return found
}

// apart says why one person's two hands do not go together in a rack and a turn; "" where
// they do.
func apart(b *check.Shot, p *shot.Pull, t turn) (why string, figures []lang.Figure) {
	if p.Rack.Follow || t.with {
		return "", nil
	}
	starts, lands := p.Rack.StartS-t.Start, p.Rack.LandS-t.End
	figures = []lang.Figure{check.Figure("starts_apart_s", starts), check.Figure("lands_apart_s", lands)}
	off := func(verb string, by float64) string {
		way := "after"
		if by < 0 {
			way = "before"
		}
		return fmt.Sprintf("the rack %s %s %s the %s", verb, b.Units.Time(math.Abs(by)), way, t.kinds)
	}
	switch support := b.Setup.Camera.Support; {
	case math.Abs(lands) > together+1e-9:
		return off("lands", lands), figures
	case math.Abs(starts) > together+1e-9:
		return off("starts", starts), figures
	case support == "hand" || support == "shoulder":
		return "the camera is on the " + support, figures
	}
	for _, at := range p.Plan.Grips {
		if at > t.Start && at < t.End {
			return fmt.Sprintf("the hand takes a new grip at %s, within the %s", b.Units.Time(at), t.kinds), append(figures, check.Figure("regrip_s", at))
		}
	}
	return "", nil
}

func handsApart(b *check.Shot, p *shot.Pull, t turn, why string, figures []lang.Figure) check.Finding {
	return b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
		Code: "hands-apart", Severity: lang.Warning, Time: max(t.Start, p.Rack.StartS),
		Message: fmt.Sprintf("%s %s and pulls at once, and %s", b.Plan.Operator, t.does(), why),
		Detail:  "Two hands of one person start and land together.",
		Figures: figures,
		Related: []lang.Related{{Message: "the " + t.kinds, Range: t.Stmt.Range()}},
	}, Tries: func() []change.Change {
		return []change.Change{check.Edited(change.Edit{Kind: change.WithTurn, Item: p.Rack.Item + 1, Who: t.Kind})}
	}})
}

func panAndPull(b *check.Shot, p *shot.Pull, t turn, both float64) check.Finding {
	kind := "rack"
	if p.Rack.Follow {
		kind = "follow"
	}
	return b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
		Code: "pan-and-pull", Severity: lang.Note, Time: max(t.Start, p.Rack.StartS),
		Message: fmt.Sprintf("the %s and %s %d overlap for %s: two people, or two hands", t.kinds, kind, p.Plan.Number, b.Units.Time(both)),
		Detail:  fmt.Sprintf("The chance does not count the %s.", t.kinds),
		Figures: []lang.Figure{check.Figure("overlap_s", both)},
		Related: []lang.Related{{Message: "the " + t.kinds, Range: t.Stmt.Range()}},
	}})
}
