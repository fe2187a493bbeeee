// line-not-in-edit, line-differs, lines-elsewhere, cue-not-in-edit,
// shot-not-in-edit, moved-in-edit: what a plan has otherwise than the cut that it follows.

package interp

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/lang"
)

func checkEdit(b run) {
	if b.cut == nil {
		return
	}
	b.tellPlace()
	b.tellCues()
	b.tellElsewhere()
	b.tellLines()
}

// tellPlace tells of a shot that lists lack, or have in another place.
func (b run) tellPlace() {
	cut := b.cut
	switch {
	case cut.lists && cut.list == nil:
		b.tell(finding{Diagnostic: lang.Diagnostic{
			Code: "shot-not-in-edit", Severity: lang.Warning, Range: b.head.Range(),
			Message: fmt.Sprintf("no clip of the cut is called %s", b.head.ID),
			Detail:  "A clip is found by its name or its reel, which is the shot's ID and nothing else. The shot stays where the plan has it.",
		}})
	case cut.list != nil:
		b.tellMoved()
	case cut.adrift:
		s, away := b.settings["begins"], cut.away(b.rate, float64(b.shot.Begins))
		b.tell(finding{Diagnostic: lang.Diagnostic{
			Code: "moved-in-edit", Severity: lang.Note, Range: s.Range(),
			Message: fmt.Sprintf("%s has the lines of this shot %s than the plan", cut.subtitles.base(), sooner(away)),
			Detail: fmt.Sprintf("Check the from of the subtitles, here %s. The lines are counted from the first of them, which is where the plan has it.",
				b.rate.Format(cut.subtitles.picture)),
			Figures: []lang.Figure{figure("away_s", away)},
			Related: []lang.Related{{Message: "the subtitles", Range: cut.subtitles.stmt.Range()}},
		}})
	}
}

// tellMoved tells of a shot that the plan has elsewhere than the list.
func (b run) tellMoved() {
	s, ok := b.settings["begins"].(*lang.Begins)
	by := b.cut.begin - b.epoch
	if !ok || by == 0 {
		return
	}
	way := "later"
	if by < 0 {
		way, by = "earlier", -by
	}
	b.tell(finding{Diagnostic: lang.Diagnostic{
		Code: "moved-in-edit", Severity: lang.Note, Range: s.Range(),
		Message: fmt.Sprintf("%s has this shot at %s, %s %s than the plan", b.cut.list.base(), b.shot.BeginsAt, count(int(by), "frame"), way),
		Detail:  "The cut is followed.",
		Figures: []lang.Figure{figure("frames", float64(b.cut.begin-b.epoch))},
		Related: []lang.Related{{Message: "the clip", Range: b.cut.pieces[0].Range}},
	}})
}

// tellCues tells of cues that the list of the shot lacks.
func (b run) tellCues() {
	if b.cut.list == nil {
		return
	}
	for i, it := range b.items {
		s, ok := it.stmt.(*lang.Cue)
		if !ok {
			continue
		}
		if _, ok := b.cueInCut(s.Name.Text); !ok {
			b.tell(finding{item: i + 1, Diagnostic: lang.Diagnostic{
				Code: "cue-not-in-edit", Severity: lang.Warning, Range: s.Range(), Time: b.clock.at[i].start,
				Message: fmt.Sprintf("no marker of this shot in %s is called %s", b.cut.list.base(), s.Name.Text),
				Detail:  "The cue stays where the plan has it.",
			}})
		}
	}
}

// tellElsewhere tells of lines that the subtitles have, but far from the clips
// of the shot: mostly the start of their picture is wrong.
func (b run) tellElsewhere() {
	m := b.cut.elsewhere
	if m == nil {
		return
	}
	away := m.away(b.rate, float64(b.cut.begin))
	first := m.subtitles.picture + b.rate.Frames(m.first.start())
	b.tell(finding{Diagnostic: lang.Diagnostic{
		Code: "lines-elsewhere", Severity: lang.Warning, Range: b.head.Range(),
		Message: fmt.Sprintf("%s has the lines of this shot %s than %s has the shot", m.subtitles.base(), sooner(away), b.cut.list.base()),
		Detail: fmt.Sprintf("The first is at %s, and the shot begins at %s: check the from of the subtitles, here %s. The lines keep the times of the plan.",
			b.rate.Format(first), b.shot.BeginsAt, b.rate.Format(m.subtitles.picture)),
		Figures: []lang.Figure{figure("away_s", away)},
		Related: []lang.Related{{Message: "the subtitles", Range: m.subtitles.stmt.Range()}},
	}})
}

// sooner says how much later or earlier something is, in whole seconds.
func sooner(by float64) string {
	way := "later"
	if by < 0 {
		way = "earlier"
	}
	return fmt.Sprintf("%s s %s", plan.Decimal(math.Abs(by), 0), way)
}

// tellLines tells of lines that the subtitles lack, or have in other words.
func (b run) tellLines() {
	name := ""
	for _, c := range b.film.cuts {
		if !c.IsList && name == "" {
			name = c.base()
		}
	}
	if b.cut.subtitles != nil {
		name = b.cut.subtitles.base()
	}
	if name == "" {
		return
	}
	keys := keysOf(b.clock.said())
	for i, l := range b.clock.inOrder {
		d := lang.Diagnostic{Range: l.stmt.Range(), Time: max(l.start, 0)}
		switch {
		case len(l.tokens) == 0: // without a word it cannot be looked for
			continue
		case l.heard == nil && b.cut.elsewhere != nil && b.cut.elsewhere.lines[keys[i]] != nil: // told with the shot
			continue
		case l.heard == nil:
			d.Code, d.Severity = "line-not-in-edit", lang.Warning
			d.Message = fmt.Sprintf("%s does not have this line", name)
			d.Detail = "Its time stays that of the plan."
		case l.heard.likeness < 1:
			d.Code, d.Severity = "line-differs", lang.Note
			d.Message = fmt.Sprintf("%s has this line in other words", name)
			d.Detail = fmt.Sprintf("It says: “%s”. Its times are taken all the same.", strings.TrimRight(l.heard.text, "."))
			d.Figures = []lang.Figure{figure("likeness", l.heard.likeness)}
		default:
			continue
		}
		b.tell(finding{item: l.item + 1, Diagnostic: d})
	}
}

// inList reports whether a list has the shot, so that what is before its first
// frame is not wrong but trimmed.
func (b run) inList() bool { return b.cut != nil && b.cut.list != nil }

// checkTrimmed tells of racks that are not wholly in the picture, and of follows
// that are not at all: whom the focus is on, it may have been on before.
func checkTrimmed(b run) {
	if !b.inList() {
		return
	}
	pieces := b.cut.inPicture(b.rate)
	for _, p := range b.pulls {
		message, lost := b.trimmed(p, pieces)
		if message == "" {
			continue
		}
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "trimmed", Severity: lang.Warning, Message: message, Time: max(p.start, 0),
			Detail:  fmt.Sprintf("%s of the %s are in the picture.", shareOf(b.rate.Frames(p.land-p.start)-lost, b.rate.Frames(p.land-p.start)), p.Kind),
			Figures: []lang.Figure{figure("lost_frames", float64(lost)), figure("start_s", p.start), figure("land_s", p.land)},
			Related: []lang.Related{{Message: "the clip", Range: b.cut.pieces[0].Range}},
		}})
	}
}

func shareOf(n, of int64) string { return fmt.Sprintf("%d of %d frames", n, of) }

// trimmed says how much of a pull the cut leaves out, and how many frames that
// are; nothing where it is less than half a frame.
func (b run) trimmed(p *pull, pieces []stretch) (message string, lost int64) {
	seen := 0.0
	for _, u := range pieces {
		seen += max(0, min(p.land, u.to)-max(p.start, u.from))
	}
	frames := func(t float64) int64 { return b.rate.Frames(t) }
	lost = frames(p.land-p.start) - frames(seen)
	switch {
	case lost <= 0 && !(p.land == p.start && outside(p.land, pieces)):
		return "", 0
	case frames(seen) == 0:
		return fmt.Sprintf("%s %d is not in the picture%s", p.Kind, p.Number, b.howFar(p, pieces)), lost
	case p.follow:
		return "", 0
	}
	for _, u := range pieces {
		into := frames(u.from - p.start)
		if into == lost && u.to >= p.land-1e-9 {
			return fmt.Sprintf("the cut begins %s into rack %d", count(int(into), "frame"), p.Number), lost
		}
		left := frames(p.land - u.to)
		if left == lost && u.from <= p.start+1e-9 {
			return fmt.Sprintf("the cut ends %s before rack %d lands", count(int(left), "frame"), p.Number), lost
		}
	}
	return fmt.Sprintf("the cut leaves out %s of rack %d", count(int(lost), "frame"), p.Number), lost
}

func outside(t float64, pieces []stretch) bool {
	for _, u := range pieces {
		if t >= u.from-1e-9 && t <= u.to+1e-9 {
			return false
		}
	}
	return true
}

// howFar says how long before or after the nearest piece a rack is.
func (b run) howFar(p *pull, pieces []stretch) string {
	text, nearest := "", math.Inf(1)
	for _, u := range pieces {
		if away := u.from - p.land; away >= 0 && away < nearest {
			nearest, text = away, fmt.Sprintf(": it lands %s before the shot is seen", count(int(b.rate.Frames(away)), "frame"))
		}
		if away := p.start - u.to; away >= 0 && away < nearest {
			nearest, text = away, fmt.Sprintf(": it starts %s after the shot is left", count(int(b.rate.Frames(away)), "frame"))
		}
	}
	return text
}
