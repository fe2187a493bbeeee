// What parts of a shot come to, in lines: with the figures of `list`.

package editor

import (
	"fmt"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// figures is the style of what both systems write alike.
var figures = units.ForTable(false)

// pullOf returns the pull that a statement is; nil if it is none of this shot.
func pullOf(shot *plan.Shot, one lang.Statement) *plan.Pull {
	if one == nil {
		return nil
	}
	at := one.Range()
	for _, p := range shot.Pulls {
		if p.Line == at.Start.Line && p.Column == at.Start.Column && p.File == at.File {
			return p
		}
	}
	return nil
}

// pullSays returns what a pull comes to.
func pullSays(s *plan.Shot, p *plan.Pull, in units.Style) []string {
	lines := []string{fmt.Sprintf("%s %s %d: %s", s.ID, p.Kind, p.Number, fromTo(p))}
	when := fmt.Sprintf("%s to %s, frames %d to %d", in.Time(float64(p.Start)), in.Time(float64(p.Land)), p.StartFrame, p.LandFrame)
	if p.Anchor != "" {
		when += ", " + p.Anchor
	}
	lines = append(lines, when, ringSays(p, in))
	if chance := moments.Chance(s, p, figures); chance != "" {
		lines = append(lines, landingSays(s, p, chance))
	}
	for _, more := range []string{moments.Follow(s, p, in), moments.Miss(s, p.Miss, in)} {
		lines = append(lines, fold(more, foldAt)...)
	}
	if p.Hold != nil {
		lines = append(lines, p.HoldSays)
	}
	return append(lines, "The chance is that of the landing model"+estimates(s)+".")
}

// pullInShort returns what a pull comes to in one line.
func pullInShort(s *plan.Shot, p *plan.Pull, in units.Style) string {
	text := fmt.Sprintf("%s %s %d: %s, %s to %s, %s", s.ID, p.Kind, p.Number, fromTo(p), in.Time(float64(p.Start)), in.Time(float64(p.Land)),
		in.Tape(float64(p.FromM))+" to "+in.Tape(float64(p.ToM)))
	if chance := moments.Chance(s, p, figures); chance != "" {
		text += ", lands " + chance
	}
	return text
}

// fromTo says from whom to whom a pull goes.
func fromTo(p *plan.Pull) string {
	switch {
	case p.Kind == "follow" || p.From == "":
		return p.Target
	}
	return p.From + " to " + p.Target
}

// ringSays says how far the focus and the ring go.
func ringSays(p *plan.Pull, in units.Style) string {
	text := in.Tape(float64(p.FromM)) + " to " + in.Tape(float64(p.ToM))
	if !p.HandDeg.IsInf() && p.HandDeg.Known() {
		text += fmt.Sprintf("; hand %s, at most %s", figures.Angle(float64(p.HandDeg)), figures.Speed(float64(p.Peak)))
		switch p.Regrips {
		case 0:
			text += ", no re-grip"
		case 1:
			text += ", 1 re-grip"
		default:
			text += fmt.Sprintf(", %d re-grips", p.Regrips)
		}
	}
	return text
}

// landingSays says how likely a pull lands, and what it would need.
func landingSays(s *plan.Shot, p *plan.Pull, chance string) string {
	text := fmt.Sprintf("window %s", figures.Angle(float64(p.WindowHand[1]-p.WindowHand[0])))
	if p.Spread.Known() {
		text += ", spread " + figures.Angle(float64(p.Spread))
	}
	text += fmt.Sprintf(": lands %s, %s wanted", chance, figures.Wanted(float64(s.Wanted)))
	if p.Needed.Known() && !p.Needed.IsInf() {
		text += ", needs " + figures.Time(float64(p.Needed))
	}
	return text
}

// estimates says that times of lines are estimated, if any is.
func estimates(s *plan.Shot) string {
	for _, line := range s.Lines {
		if line.Estimated {
			return "; lines are estimated"
		}
	}
	return ""
}

// shotSays returns what a shot is taken with and how long it is.
func shotSays(s *plan.Shot) []string {
	lines := []string{
		strings.TrimSpace(s.ID + "  " + s.Title),
		fmt.Sprintf("camera %s, lens %s, %s, on %s", s.Camera, s.Lens, s.BothStops(), s.Support),
		fmt.Sprintf("lasts %s, %s", figures.Time(float64(s.Duration)), units.Count(len(s.Pulls), "pull")),
	}
	return append(lines, fold(moments.Provenance(s), foldAt)...)
}

// subjectSays returns where somebody is and what is sharp with the focus on them.
func subjectSays(s *plan.Shot, u *plan.Subject, in units.Style) string {
	text := u.Name + ": " + in.Tape(float64(u.Distance))
	switch side := float64(u.Side); {
	case side < 0:
		text += ", " + in.Gap(-side) + " left"
	case side > 0:
		text += ", " + in.Gap(side) + " right"
	}
	if u.Near.Known() && u.Far.Known() {
		text += fmt.Sprintf("; sharp %s to %s", in.Tape(float64(u.Near)), in.Tape(float64(u.Far)))
	}
	if len(u.Path) > 1 {
		text += "; at the start of " + s.ID
	}
	return text
}

// subject returns where somebody is, and how a camera that has a place, turns or leaves its
// axis sees them.
func (t *teller) subject(s *plan.Shot, u *plan.Subject) []string {
	in := t.s.style(s)
	lines := []string{subjectSays(s, u, in)}
	if u.Seen != nil {
		lines = append(lines, fold(moments.SeenAt(s, u, 0, in)+" as "+s.ID+" starts", foldAt)...)
		lines = append(lines, fold(moments.InFrame(s, u, in), foldAt)...)
	}
	return lines
}

// lineOfSpeech returns the line of a shot that a statement is: of those with the same
// speaker and words the one that has as many of them above it. nil if the shot has none.
func lineOfSpeech(s *plan.Shot, said *lang.Speech, d *document) *plan.Line {
	nth := 0
	for _, section := range d.tree().Sections {
		if section.Head.Range().Start.Line != s.Line {
			continue
		}
		for _, one := range section.Body {
			other, ok := one.(*lang.Speech)
			if ok && other != said && other.Who.Text == said.Who.Text && other.Words.Value == said.Words.Value && other.Range().Start.Offset < said.Range().Start.Offset {
				nth++
			}
		}
	}
	for i := range s.Lines {
		if line := &s.Lines[i]; line.Who == said.Who.Text && line.Text == said.Words.Value {
			if nth == 0 {
				return line
			}
			nth--
		}
	}
	return nil
}
