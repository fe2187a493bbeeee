// line-not-in-edit, line-differs, lines-elsewhere, cue-not-in-edit,
// shot-not-in-edit, moved-in-edit: what a plan has otherwise than the cut that it follows.

package checks

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/clock"
	"pullscore/interp/cut"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkEdit(b Run) {
	if b.Cut == nil {
		return
	}
	b.tellPlace()
	b.tellCues()
	b.tellElsewhere()
	b.tellLines()
}

// tellPlace tells of a shot that lists lack, or have in another place.
func (b Run) tellPlace() {
	cut := b.Cut
	switch {
	case cut.Lists && cut.List == nil:
		b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "shot-not-in-edit", Severity: lang.Warning, Range: b.Head.Range(),
			Message: fmt.Sprintf("no clip of the cut is called %s", b.Head.ID),
			Detail:  "A clip is found by its name or its reel, which is the shot's ID and nothing else. The shot stays where the plan has it.",
		}})
	case cut.List != nil:
		b.tellMoved()
	case cut.Adrift:
		s, away := b.Settings["begins"], cut.Away(b.Rate, float64(b.Shot.Begins))
		b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "moved-in-edit", Severity: lang.Note, Range: s.Range(),
			Message: fmt.Sprintf("%s has the lines of this shot %s than the plan", cut.Subtitles.Base(), inwords.Sooner(away)),
			Detail: fmt.Sprintf("Check the from of the subtitles, here %s. The lines are counted from the first of them, which is where the plan has it.",
				b.Rate.Format(cut.Subtitles.Picture)),
			Figures: []lang.Figure{shot.Figure("away_s", away)},
			Related: []lang.Related{{Message: "the subtitles", Range: cut.Subtitles.Stmt.Range()}},
		}})
	}
}

// tellMoved tells of a shot that the plan has elsewhere than the list.
func (b Run) tellMoved() {
	s, ok := b.Settings["begins"].(*lang.Begins)
	by := b.Cut.Begin - b.Epoch
	if !ok || by == 0 {
		return
	}
	way := "later"
	if by < 0 {
		way, by = "earlier", -by
	}
	b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "moved-in-edit", Severity: lang.Note, Range: s.Range(),
		Message: fmt.Sprintf("%s has this shot at %s, %s %s than the plan", b.Cut.List.Base(), b.Shot.BeginsAt, inwords.Count(int(by), "frame"), way),
		Detail:  "The cut is followed.",
		Figures: []lang.Figure{shot.Figure("frames", float64(b.Cut.Begin-b.Epoch))},
		Related: []lang.Related{{Message: "the clip", Range: b.Cut.Pieces[0].Range}},
	}})
}

// tellCues tells of cues that the list of the shot lacks.
func (b Run) tellCues() {
	if b.Cut.List == nil {
		return
	}
	for i, it := range b.Items {
		s, ok := it.Stmt.(*lang.Cue)
		if !ok {
			continue
		}
		if _, ok := b.CueInCut(s.Name.Text); !ok {
			b.Tell(shot.Finding{Item: i + 1, Diagnostic: lang.Diagnostic{
				Code: "cue-not-in-edit", Severity: lang.Warning, Range: s.Range(), Time: b.Clock.At[i].StartS,
				Message: fmt.Sprintf("no marker of this shot in %s is called %s", b.Cut.List.Base(), s.Name.Text),
				Detail:  "The cue stays where the plan has it.",
			}})
		}
	}
}

// tellElsewhere tells of lines that the subtitles have, but far from the clips
// of the shot: mostly the start of their picture is wrong.
func (b Run) tellElsewhere() {
	m := b.Cut.Elsewhere
	if m == nil {
		return
	}
	away := m.Away(b.Rate, float64(b.Cut.Begin))
	first := m.Subtitles.Picture + b.Rate.Frames(m.First.Start())
	b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "lines-elsewhere", Severity: lang.Warning, Range: b.Head.Range(),
		Message: fmt.Sprintf("%s has the lines of this shot %s than %s has the shot", m.Subtitles.Base(), inwords.Sooner(away), b.Cut.List.Base()),
		Detail: fmt.Sprintf("The first is at %s, and the shot begins at %s: check the from of the subtitles, here %s. The lines keep the times of the plan.",
			b.Rate.Format(first), b.Shot.BeginsAt, b.Rate.Format(m.Subtitles.Picture)),
		Figures: []lang.Figure{shot.Figure("away_s", away)},
		Related: []lang.Related{{Message: "the subtitles", Range: m.Subtitles.Stmt.Range()}},
	}})
}

// tellLines tells of lines that the subtitles lack, or have in other words.
func (b Run) tellLines() {
	name := ""
	for _, c := range b.Film.Cuts {
		if !c.IsList && name == "" {
			name = c.Base()
		}
	}
	if b.Cut.Subtitles != nil {
		name = b.Cut.Subtitles.Base()
	}
	if name == "" {
		return
	}
	keys := cut.KeysOf(b.Clock.Said())
	for i, l := range b.Clock.InOrder {
		d := lang.Diagnostic{Range: l.Stmt.Range(), Time: max(l.Start, 0)}
		switch {
		case len(l.Tokens) == 0: // without a word it cannot be looked for
			continue
		case l.Heard == nil && b.Cut.Elsewhere != nil && b.Cut.Elsewhere.Lines[keys[i]] != nil: // told with the shot
			continue
		case l.Heard == nil:
			d.Code, d.Severity = "line-not-in-edit", lang.Warning
			d.Message = fmt.Sprintf("%s does not have this line", name)
			d.Detail = "Its time stays that of the plan."
		case l.Heard.Likeness < 1:
			d.Code, d.Severity = "line-differs", lang.Note
			d.Message = fmt.Sprintf("%s has this line in other words", name)
			d.Detail = fmt.Sprintf("It says: “%s”. Its times are taken all the same.", strings.TrimRight(l.Heard.Text, "."))
			d.Figures = []lang.Figure{shot.Figure("likeness", l.Heard.Likeness)}
		default:
			continue
		}
		b.Tell(shot.Finding{Item: l.Item + 1, Diagnostic: d})
	}
}

// inList reports whether a list has the shot, so that what is before its first
// frame is not wrong but trimmed.
func (b Run) inList() bool { return b.Cut != nil && b.Cut.List != nil }

// checkTrimmed tells of racks that are not wholly in the picture, and of follows
// that are not at all: whom the focus is on, it may have been on before.
func checkTrimmed(b Run) {
	if !b.inList() {
		return
	}
	pieces := b.Cut.InPicture(b.Rate)
	for _, p := range b.Pulls {
		message, lost := b.trimmed(p, pieces)
		if message == "" {
			continue
		}
		b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "trimmed", Severity: lang.Warning, Message: message, Time: max(p.StartS, 0),
			Detail:  fmt.Sprintf("%s of the %s are in the picture.", inwords.ShareOf(b.Rate.Frames(p.LandS-p.StartS)-lost, b.Rate.Frames(p.LandS-p.StartS)), p.Kind),
			Figures: []lang.Figure{shot.Figure("lost_frames", float64(lost)), shot.Figure("start_s", p.StartS), shot.Figure("land_s", p.LandS)},
			Related: []lang.Related{{Message: "the clip", Range: b.Cut.Pieces[0].Range}},
		}})
	}
}

// trimmed says how much of a pull the cut leaves out, and how many frames that
// are; nothing where it is less than half a frame.
func (b Run) trimmed(p *clock.Pull, pieces []cut.Stretch) (message string, lost int64) {
	seen := 0.0
	for _, u := range pieces {
		seen += max(0, min(p.LandS, u.To)-max(p.StartS, u.From))
	}
	frames := func(t float64) int64 { return b.Rate.Frames(t) }
	lost = frames(p.LandS-p.StartS) - frames(seen)
	switch {
	case lost <= 0 && !(p.LandS == p.StartS && outside(p.LandS, pieces)):
		return "", 0
	case frames(seen) == 0:
		return fmt.Sprintf("%s %d is not in the picture%s", p.Kind, p.Number, b.howFar(p, pieces)), lost
	case p.Follow:
		return "", 0
	}
	for _, u := range pieces {
		into := frames(u.From - p.StartS)
		if into == lost && u.To >= p.LandS-1e-9 {
			return fmt.Sprintf("the cut begins %s into rack %d", inwords.Count(int(into), "frame"), p.Number), lost
		}
		left := frames(p.LandS - u.To)
		if left == lost && u.From <= p.StartS+1e-9 {
			return fmt.Sprintf("the cut ends %s before rack %d lands", inwords.Count(int(left), "frame"), p.Number), lost
		}
	}
	return fmt.Sprintf("the cut leaves out %s of rack %d", inwords.Count(int(lost), "frame"), p.Number), lost
}

func outside(t float64, pieces []cut.Stretch) bool {
	for _, u := range pieces {
		if t >= u.From-1e-9 && t <= u.To+1e-9 {
			return false
		}
	}
	return true
}

// howFar says how long before or after the nearest piece a rack is.
func (b Run) howFar(p *clock.Pull, pieces []cut.Stretch) string {
	text, nearest := "", math.Inf(1)
	for _, u := range pieces {
		if away := u.From - p.LandS; away >= 0 && away < nearest {
			nearest, text = away, fmt.Sprintf(": it lands %s before the shot is seen", inwords.Count(int(b.Rate.Frames(away)), "frame"))
		}
		if away := p.StartS - u.To; away >= 0 && away < nearest {
			nearest, text = away, fmt.Sprintf(": it starts %s after the shot is left", inwords.Count(int(b.Rate.Frames(away)), "frame"))
		}
	}
	return text
}
