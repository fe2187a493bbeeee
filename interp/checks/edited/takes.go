// no-such-clip, takes-guessed, several-takes: which clips of the cut show a shot.

package edited

import (
	"fmt"
	"math"
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
		if c.Reversed() {
			continue // told with its timecodes
		}
		found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "no-such-clip", Severity: lang.Warning, Range: c.Stmt.Range(),
			Message: fmt.Sprintf("no list of the cut has a clip %q", c.Name),
			Detail:  nearest("They have", b.Cut.Near),
		}})
	}
	if len(b.Plan.TakesUsed) < 2 {
		return found
	}
	at := b.Cut.Events[0].Range
	if b.Cut.Guessed {
		found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "takes-guessed", Severity: lang.Note, Range: b.Head.Range(),
			Message: fmt.Sprintf("%s is taken for %d takes by its source: %s", b.Head.ID, len(b.Plan.TakesUsed), strings.Join(b.Plan.TakesUsed, " and ")),
			Detail:  fmt.Sprintf("To be sure, name a list of clips, or each take under the shot, as in %s.", named(b, b.Plan.TakesUsed[0])),
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

// named returns the statement that names a take by its source, as take 1.
func named(b *check.Shot, take string) string {
	first, last, clip := int64(math.MaxInt64), int64(math.MinInt64), ""
	for i := range b.Plan.Pieces {
		if p := &b.Plan.Pieces[i]; p.Take == take {
			end := p.Source + int64(math.Round(float64(p.Frames())*float64(p.Speed)))
			first, last, clip = min(first, p.Source, end), max(last, p.Source+1, end), p.Clip
		}
	}
	return fmt.Sprintf("clip %s, take \"1\", from %s to %s", lang.WriteText(clip), b.Plan.Rate.Format(first), b.Plan.Rate.Format(last))
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
