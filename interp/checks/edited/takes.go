// no-such-clip, takes-guessed, several-takes: which clips of the cut show a shot.

package edited

import (
	"fmt"
	"strings"

	"pullscore/interp/checks/check"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Takes = check.Check{Codes: []rule.Code{rule.NoSuchClip, rule.TakesGuessed, rule.SeveralTakes}, Run: tellTakes}

// tellTakes tells of clips that the lists lack, and of the takes of a shot.
func tellTakes(b *check.Shot) (found []check.Finding) {
	if b.Cut == nil {
		return nil
	}
	for _, c := range b.Cut.Missing {
		found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "no-such-clip", Severity: lang.Warning, Range: c.Range(),
			Message: fmt.Sprintf("no list of the cut has a clip %q", c.Name.Value),
			Detail:  nearest("They have", b.Cut.Near),
		}})
	}
	if len(b.Plan.TakesUsed) < 2 {
		return found
	}
	at := b.Cut.Events[0].Range
	if b.Cut.Guessed {
		from := b.Plan.TakesUsed[1]
		found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "takes-guessed", Severity: lang.Note, Range: b.Head.Range(),
			Message: fmt.Sprintf("%s is taken for %d takes by its source: %s", b.Head.ID, len(b.Plan.TakesUsed), strings.Join(b.Plan.TakesUsed, " and ")),
			Detail:  fmt.Sprintf("Write clip %q, take \"2\", from %s to a timecode behind it, or name a list of clips.", b.Cut.Events[0].Name, from),
			Related: []lang.Related{{Message: "the clip", Range: at}},
		}})
	}
	var uses []string
	for _, take := range b.Plan.TakesUsed {
		frames := int64(0)
		for i := range b.Plan.Pieces {
			if p := &b.Plan.Pieces[i]; p.Take == take {
				frames += p.Frames()
			}
		}
		uses = append(uses, fmt.Sprintf("%s (%d fr)", take, frames))
	}
	return append(found, check.Finding{Diagnostic: lang.Diagnostic{
		Code: "several-takes", Severity: lang.Note, Range: b.Head.Range(),
		Message: fmt.Sprintf("%s uses %d takes: %s", b.Head.ID, len(uses), strings.Join(uses, " and ")),
		Detail:  "Its time is that of the take with the most frames. Focus and marks must match where one take follows the other.",
		Figures: []lang.Figure{check.Figure("takes", float64(len(uses)))},
		Related: []lang.Related{{Message: "the clip", Range: at}},
	}})
}

// nearest lists names of clips that resemble a shot; "" for none.
func nearest(begin string, names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return begin + " " + names[0] + "."
	default:
		return begin + " " + strings.Join(names[:n-1], ", ") + " and " + names[n-1] + "."
	}
}
