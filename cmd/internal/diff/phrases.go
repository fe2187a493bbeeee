// A difference in phrases, for the terminal and for drawings.

package diff

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// Lines says what changed in a plan that is there before and after, a phrase a
// line with the shot that it is about.
func (p Plan) Lines() []string {
	return p.lines(func(s *Scene) []string { return s.prefixed(false) })
}

// Saved is Lines as somebody reads them who has saved a plan: what came to be held, or not
// to be held, stands together at the end, a line a scene.
func (p Plan) Saved() []string {
	list := p.lines(func(s *Scene) []string {
		rest := *s
		rest.Held = nil
		return rest.prefixed(false)
	})
	for i := range p.Scenes {
		if text := p.Scenes[i].heldLine(); text != "" {
			list = append(list, text)
		}
	}
	return list
}

// lines is Lines; of says what is told of a scene before the shots.
func (p Plan) lines(of func(*Scene) []string) []string {
	const all = false
	var list []string
	add := func(prefix string, phrases ...string) {
		for _, text := range phrases {
			if text != "" {
				list = append(list, prefix+text)
			}
		}
	}
	add("", says(p.Details))
	for i := range p.Scenes {
		add("", of(&p.Scenes[i])...)
	}
	for _, s := range p.Shots {
		add(s.ID+": ", s.Note())
		if s.Before != nil && s.After != nil {
			add(s.ID+" ", s.PullPhrases()...)
			add(s.ID+" ", s.SubjectPhrases()...)
			add(s.ID+" ", s.EventPhrases()...)
		}
	}
	add("", findingPhrases(p.Findings, all)...)
	for _, s := range p.Shots {
		add(s.ID+" ", findingPhrases(s.Findings, all)...)
	}
	return list
}

// Phrases says what changed in a plan besides its shots, and what is compared with what.
// With all it tells every note, else those that are alike together.
func (p Plan) Phrases(all bool) []string {
	list := append([]string{p.between()}, p.FaultPhrases()...)
	if text := says(p.Details); text != "" {
		list = append(list, text)
	}
	for i := range p.Scenes {
		list = append(list, p.Scenes[i].prefixed(all)...)
	}
	return append(list, findingPhrases(p.Findings, all)...)
}

// Phrases says all that changed in a shot. With all it tells every note, else those that
// are alike together.
func (s Shot) Phrases(all bool) []string {
	var list []string
	if note := s.Note(); note != "" {
		list = append(list, note)
	}
	return slices.Concat(list, s.PullPhrases(), s.SubjectPhrases(), s.EventPhrases(), findingPhrases(s.Findings, all))
}

// Note says what changed in the shot itself; "" for nothing.
func (s Shot) Note() string {
	switch {
	case s.Change == New && s.Unsure:
		return "new, or an error kept it from being computed; " + units.Count(len(s.Pulls), "pull")
	case s.Change == New:
		return "new, " + units.Count(len(s.Pulls), "pull")
	case s.Change == Gone && s.Unsure:
		return "gone, or an error keeps it from being computed"
	case s.Change == Gone:
		return "gone"
	}
	return says(s.Details)
}

// Says says what changed in a pull of its shot; "" for nothing.
func (p Pull) Says() string {
	switch p.Change {
	case New:
		text := "new, " + lands(p.After) + " at " + figures.Time(float64(p.After.Land))
		if p.After.Chance.Known() {
			text += ", chance " + figures.Chance(float64(p.After.Chance), 0)
		}
		return text
	case Gone:
		return "gone"
	}
	return says(p.Details)
}

// PullPhrases says what changed in the pulls of a shot that is there before and
// after. Many at once that only are earlier or later, by the same time, are
// told together.
func (s Shot) PullPhrases() []string {
	if s.Change == New || s.Change == Gone {
		return nil
	}
	var list []string
	for first := 0; first < len(s.Pulls); {
		end := first + 1
		for end < len(s.Pulls) && s.Pulls[first].movesWith(s.Pulls[end]) {
			end++
		}
		if text := phrase(s.Pulls[first:end]); text != "" {
			list = append(list, text)
		}
		first = end
	}
	return list
}

// movesWith reports whether two pulls changed by nothing but the same time, or both are
// gone from the cut, or back in it: then nothing else of them is told.
func (p Pull) movesWith(other Pull) bool {
	if gone := p.leaves(); gone != "" || other.leaves() != "" {
		return gone == other.leaves()
	}
	by, ok := p.shift()
	alike, okToo := other.shift()
	return ok && okToo && by == alike
}

// shift returns by how many frames a pull is later, where nothing else changed.
func (p Pull) shift() (frames int64, ok bool) {
	for i, d := range p.Details {
		if i > 0 && !d.minor {
			return 0, false
		}
	}
	if len(p.Details) == 0 || !p.Details[0].moved {
		return 0, false
	}
	return p.Details[0].Frames, true
}

// phrase says what changed in one pull, or in some that move together.
func phrase(run []Pull) string {
	p, last := run[0], run[len(run)-1]
	switch {
	case p.Change == Same:
		return ""
	case len(run) > 1 && p.leaves() != "":
		return fmt.Sprintf("pulls %d to %d are %s", p.Number, last.Number, p.leaves())
	case p.leaves() != "":
		return p.Name() + " is " + p.leaves()
	case len(run) > 1:
		return fmt.Sprintf("pulls %d to %d: %s", p.Number, last.Number, p.Says())
	case p.Change == Changed && p.Before.Target != p.After.Target: // its detail has the names
		return fmt.Sprintf("%s %d: %s", p.Kind, p.Number, p.Says())
	}
	return p.Name() + ": " + p.Says()
}

// Notes says what changed in a shot besides its pulls, with notes that are alike together.
func (s Shot) Notes() []string {
	const all = false
	var list []string
	if note := s.Note(); note != "" {
		list = append(list, note)
	}
	return slices.Concat(list, s.SubjectPhrases(), s.EventPhrases(), findingPhrases(s.Findings, all))
}

// SubjectPhrases says what changed in where everyone is.
func (s Shot) SubjectPhrases() []string {
	var list []string
	for _, p := range s.Subjects {
		list = append(list, p.phrase())
	}
	return list
}

func (p Piece) phrase() string {
	text := p.Name
	switch p.Kind {
	case "line", "subject", "moves", "held":
	case "camera":
		text = "the move of the camera"
	case "dolly", "zoom", "track", "boom", "pan", "tilt":
		text = "the " + p.Kind
	default:
		text = p.Kind + " " + p.Name
	}
	if p.Kind == "moves" {
		text += " moves"
	}
	if p.Change == Changed {
		return text + ": " + says(p.Details)
	}
	return text + ": " + string(p.Change)
}

// kinds are the kinds of events, in the order of their phrases, and what to
// call many.
var kinds = []struct{ kind, many string }{
	{"note", "notes"}, {"line", "lines"}, {"cue", "cues"}, {"action", "actions"}, {"moves", "moves"}, {"dolly", "moves of the dolly"}, {"zoom", "zooms"},
	{"track", "moves of the track"}, {"boom", "moves of the boom"}, {"camera", "moves of the camera"}, {"pan", "pans"}, {"tilt", "tilts"},
	{"cut", "cuts"}, {"line of action", "lines of action"},
}

// EventPhrases says what changed in the notes, the lines, the cues, the actions and the
// moves. Of a kind where many only are earlier or later, it tells by how much
// in all.
func (s Shot) EventPhrases() []string {
	return eventPhrases(s.Events, func() float64 { return frameRate(s.After) })
}

func eventPhrases(events []Piece, rate func() float64) []string {
	var list []string
	for _, k := range kinds {
		var moved []Piece
		for _, p := range events {
			switch {
			case p.Kind != k.kind:
			case p.onlyMoved():
				moved = append(moved, p)
			default:
				list = append(list, p.phrase())
			}
		}
		switch len(moved) {
		case 0:
		case 1:
			list = append(list, moved[0].phrase())
		default:
			list = append(list, fmt.Sprintf("%d %s: %s", len(moved), k.many, shifts(moved, rate())))
		}
	}
	return list
}

// onlyMoved reports whether nothing but the times of an event changed.
func (p Piece) onlyMoved() bool {
	return p.Change == Changed && !slices.ContainsFunc(p.Details, func(d Detail) bool { return d.Frames == 0 })
}

// begins returns by how many frames an event begins later.
func (p Piece) begins() int64 {
	if d := p.Details[0]; d.Name == "start_s" || d.Name == "cut-moved" {
		return d.Frames
	}
	return 0
}

// shifts says between what the shifts of events lie.
func shifts(moved []Piece, rate float64) string {
	least, most := int64(math.MaxInt64), int64(math.MinInt64)
	for _, p := range moved {
		least, most = min(least, p.begins()), max(most, p.begins())
	}
	from, to := later(float64(least), rate), later(float64(most), rate)
	switch {
	case least == 0 && most == 0:
		return "other lengths"
	case least == most:
		return from
	case least >= 0:
		return fmt.Sprintf("%d to %s", least, to)
	case most <= 0:
		return fmt.Sprintf("%d to %s", -most, from)
	}
	return "from " + from + " to " + to
}

// phrase writes a finding: "new warning: pull 1: MARRIT to OSKEL lands …
// [hard-to-land], jetty.pull:23".
func (f Finding) phrase() string {
	at := f.Is.Range
	return fmt.Sprintf("%s %s: %s [%s], %s:%d", f.Change, f.Is.Severity, about(f.Is)+f.Is.Message, f.Is.Code, filepath.Base(at.File), at.Start.Line)
}

// about says which pull of its shot a finding is about.
func about(d lang.Diagnostic) string {
	if d.Pull == 0 {
		return ""
	}
	return fmt.Sprintf("pull %d: ", d.Pull)
}

// tellsChance reports whether a chance of landing stands in the phrases.
func (s Shot) tellsChance() bool {
	known := func(p *plan.Pull) bool { return p != nil && p.Chance.Known() }
	of := func(d Detail) bool {
		return d.Name == "probability" || d.Name == "worst_share" || d.Name == "rest_sharp_share"
	}
	return slices.ContainsFunc(s.Details, of) || slices.ContainsFunc(s.Pulls, func(p Pull) bool {
		return p.Change == New && known(p.After) || slices.ContainsFunc(p.Details, of)
	})
}
