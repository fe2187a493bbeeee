// What a change did to the numbers, in words.

package rebuild

import (
	"fmt"
	"strings"

	"pullscore/cmd/internal/difference"
	"pullscore/cmd/internal/pulllist"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// says tells what is different in the numbers of two readings of a plan that
// have no errors; nothing while the later one has some.
func says(before, after *Plan) []string {
	if before.Good == nil || after.Good == nil || after.Good != after.Latest {
		return nil
	}
	var list []string
	same := pairs{}
	for _, s := range difference.Shots(before.Good, after.Good) {
		list = append(list, same.shot(s[0], s[1])...)
	}
	return append(list, same.findings(before, after)...)
}

// pairs are the numbers that pulls have now, by shot and number before.
type pairs map[place]int

// A place is a pull of a shot; number 0 is the shot itself.
type place struct {
	shot string
	pull int
}

// shot tells of one shot.
func (p pairs) shot(before, after *plan.Shot) []string {
	switch {
	case before == nil:
		return []string{fmt.Sprintf("%s: new, %s", after.ID, pulls(len(after.Pulls)))}
	case after == nil:
		return []string{before.ID + ": gone"}
	}
	var list []string
	if d := diffs(
		figure{"lens", before.Lens, after.Lens},
		figure{"stop", before.Stop, after.Stop},
		figure{"lasts", pulllist.Seconds(before.Duration), pulllist.Seconds(after.Duration)},
	); d != "" {
		list = append(list, after.ID+": "+d)
	}
	var moved run
	for _, m := range difference.Pulls(before.Pulls, after.Pulls) {
		if m.Before != nil && m.After != nil {
			p[place{before.ID, m.Before.Number}] = m.After.Number
		}
		text, shift := pull(m)
		if shift != "" && moved.add(after.ID, m.After, shift) {
			continue
		}
		list = moved.flush(list)
		if shift != "" {
			moved.add(after.ID, m.After, shift)
		} else if text != "" {
			list = append(list, after.ID+" "+text)
		}
	}
	return moved.flush(list)
}

func pulls(n int) string {
	if n == 1 {
		return "1 pull"
	}
	return fmt.Sprintf("%d pulls", n)
}

// A figure is a number or a word of a shot or a pull as it is printed.
type figure struct{ name, before, after string }

// diffs tells the figures that read differently.
func diffs(list ...figure) string {
	var parts []string
	for _, f := range list {
		if f.before != f.after {
			parts = append(parts, fmt.Sprintf("%s %s -> %s", f.name, orNone(f.before), orNone(f.after)))
		}
	}
	return strings.Join(parts, ", ")
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

// pull tells of one pull. One that only happens earlier or later is told as a
// shift, since many do at once.
func pull(m difference.Match) (text, shift string) {
	b, a := m.Before, m.After
	switch {
	case b == nil:
		return fmt.Sprintf("%s %d to %s: new%s", a.Kind, a.Number, a.Target, landing(a)), ""
	case a == nil:
		return fmt.Sprintf("%s %d to %s: gone", b.Kind, b.Number, b.Target), ""
	}
	over := func(p *plan.Pull) string { return pulllist.Seconds(p.Land - p.Start) }
	parts := diffs(
		figure{"to", b.Target, a.Target},
		figure{"chance", pulllist.Chance(b.Chance), pulllist.Chance(a.Chance)},
		figure{"needs", needed(b), needed(a)},
		figure{"over", over(b), over(a)},
		figure{"hand", pulllist.Degrees(b.HandDeg), pulllist.Degrees(a.HandDeg)},
	)
	landsBefore, landsAfter := pulllist.Seconds(b.Land), pulllist.Seconds(a.Land)
	if landsBefore != landsAfter {
		if parts == "" {
			return "", later(float64(a.Land) - float64(b.Land))
		}
		parts += ", " + lands(a) + " " + landsBefore + " -> " + landsAfter
	}
	if parts == "" {
		return "", ""
	}
	return fmt.Sprintf("%s %d: %s", a.Kind, a.Number, parts), ""
}

// lands is the verb of a pull's end: a follow does not land.
func lands(p *plan.Pull) string {
	if p.Kind == "follow" {
		return "ends"
	}
	return "lands"
}

func landing(p *plan.Pull) string {
	text := ", " + lands(p) + " at " + pulllist.Seconds(p.Land)
	if p.Chance.Known() {
		text += ", chance " + pulllist.Chance(p.Chance)
	}
	return text
}

// needed writes the shortest time that a pull needs; "" for one that has none.
func needed(p *plan.Pull) string {
	switch {
	case !p.Needed.Known():
		return ""
	case p.Needed.IsInf():
		return "more than any time"
	}
	return pulllist.Seconds(p.Needed)
}

func later(by float64) string {
	if by < 0 {
		return pulllist.Seconds(plan.Number(-by)) + " earlier"
	}
	return pulllist.Seconds(plan.Number(by)) + " later"
}

// A run is a row of pulls that all moved by the same time.
type run struct {
	shot, shift string
	first, last *plan.Pull
}

// add takes a pull into the run, if it has the same shift.
func (r *run) add(shot string, p *plan.Pull, shift string) bool {
	switch {
	case r.first == nil:
		*r = run{shot, shift, p, p}
	case r.shift == shift && r.last.Number+1 == p.Number:
		r.last = p
	default:
		return false
	}
	return true
}

// flush tells of the run, and begins another.
func (r *run) flush(list []string) []string {
	if r.first == nil {
		return list
	}
	text := fmt.Sprintf("%s %s %d: %s %s", r.shot, r.first.Kind, r.first.Number, lands(r.first), r.shift)
	if r.last != r.first {
		text = fmt.Sprintf("%s pulls %d to %d: %s", r.shot, r.first.Number, r.last.Number, r.shift)
	}
	*r = run{}
	return append(list, text)
}

// findings tells which findings came and which are gone. One whose figures
// changed is still the same.
func (p pairs) findings(before, after *Plan) []string {
	left := map[sign]int{}
	for _, d := range before.GoodFindings {
		left[p.sign(d)]++
	}
	var came, gone []string
	for _, d := range after.GoodFindings {
		s := signOf(d)
		if left[s] == 0 {
			came = append(came, "new "+tell(d))
			continue
		}
		left[s]--
	}
	for _, d := range before.GoodFindings {
		if s := p.sign(d); left[s] > 0 {
			left[s]--
			gone = append(gone, "gone: "+tell(d))
		}
	}
	return append(gone, came...)
}

// A sign tells findings apart: by the pull that they are about, else by what
// they say.
type sign struct {
	code, message string
	place
}

func signOf(d lang.Diagnostic) sign {
	s := sign{code: d.Code, place: place{d.Shot, d.Pull}}
	if d.Pull == 0 {
		s.message = d.Message
	}
	return s
}

// sign is the sign that a finding of before would have now.
func (p pairs) sign(d lang.Diagnostic) sign {
	s := signOf(d)
	if d.Pull > 0 {
		s.pull = p[s.place]
	}
	return s
}

// tell writes a finding as a phrase.
func tell(d lang.Diagnostic) string {
	where := ""
	switch {
	case d.Pull > 0:
		where = fmt.Sprintf("%s pull %d: ", d.Shot, d.Pull)
	case d.Shot != "":
		where = d.Shot + ": "
	}
	return fmt.Sprintf("%s: %s%s [%s]", d.Severity, where, d.Message, d.Code)
}
