// tape-differs, on-tripod: what a staged shot says that the floor or the camera does not.

package rig

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/checks/check"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// How far a tape that was read may be off the floor: so many metres, or so much of it.
// Common practice, no source.
const (
	tapeOff   = 0.05
	tapeShare = 0.03
)

var TapeDiffers = check.Check{Codes: []rule.Code{rule.TapeDiffers}, Run: misread}

func misread(b *check.Shot) (found []check.Finding) {
	if !placed(b) {
		return nil
	}
	for _, r := range b.Plan.Staging.Readings {
		if !(math.Abs(r.Tape-r.Floor) > max(tapeOff, tapeShare*r.Floor)+1e-9) {
			continue
		}
		whom := r.Who
		if r.At != "" {
			whom += " at " + r.At
		}
		item, at := readAt(b, r)
		found = append(found, check.Finding{Item: item, Who: r.Who, Diagnostic: lang.Diagnostic{
			Code: "tape-differs", Severity: lang.Warning, Range: at,
			Message: fmt.Sprintf("the tape to %s reads %s, and the floor gives %s: a mark or the camera is not where the plan says",
				whom, b.Units.Tape(r.Tape), b.Units.Tape(r.Floor)),
			Detail:  "Tape again, or correct the place. The focus goes by the tape, the picture by the floor.",
			Figures: []lang.Figure{check.Figure("tape_m", r.Tape), check.Figure("floor_m", r.Floor)},
		}})
	}
	return found
}

// readAt returns the statement of a reading, from 1, and where it is; the header of the
// shot where it is none of its statements.
func readAt(b *check.Shot, r plan.Reading) (item int, at lang.Range) {
	i := slices.IndexFunc(b.Items, func(it names.Item) bool {
		return it.Stmt != nil && it.Stmt.Range().Start.Line == r.Line && it.In.Call == nil
	})
	if i < 0 {
		return 0, b.Head.Range()
	}
	return i + 1, b.Items[i].Stmt.Range()
}

var OnTripod = check.Check{Codes: []rule.Code{rule.OnTripod}, Run: onTripod}

// carried says what a camera does by a move for which something has to carry it.
var carried = map[string]string{"boom": "booms", "track": "tracks", "dolly": "dollies", "camera": "moves"}

func onTripod(b *check.Shot) []check.Finding {
	camera := b.Setup.Camera
	assumed := slices.ContainsFunc(camera.Defaults, func(d kit.Missing) bool { return d.Value == "on tripod" })
	if !placed(b) || camera.Support != "tripod" || assumed {
		return nil
	}
	var does []string
	var first *stage.Move
	for _, m := range b.Stage.Moves {
		if what := carried[m.Kind]; m.Who == nil && what != "" && !slices.Contains(does, what) {
			if does = append(does, what); first == nil {
				first = m
			}
		}
	}
	if first == nil {
		return nil
	}
	return []check.Finding{{Item: first.Item + 1, Diagnostic: lang.Diagnostic{
		Code: "on-tripod", Severity: lang.Warning, Range: first.Stmt.Range(), Time: first.Start,
		Message: fmt.Sprintf("camera %s stands on a tripod, and this shot %s", camera.Name, strings.Join(does, " and ")),
		Detail:  "Say in its section what carries it.",
	}}}
}
