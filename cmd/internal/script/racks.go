// Which racks are worth proposing.
//
// What is hard. On a page the speaker changes with almost every speech, and a rack
// to each of them is no plan: nobody can do it, and the audience wants to see who
// listens. Which of them a scene needs is a matter of taste, and a page does not say.
//
// What is done. A rack is proposed only for a reason that the page gives: somebody
// speaks for the first time in the shot, answers a question or a call, or what is done
// names them. It is left out if the one before it could not come to rest first. Both
// are told: the reason with the rack, and at the end of the shot how many were left
// out, and why. How long speeches last is estimated, once with and once without what is
// done between them, since a plan may have either; a rack must fit both.
//
// What was rejected. To propose all of them, which overlap as soon as they are woken
// up. To take every second one: its choice has no reason, and so helps nobody.

package script

import (
	"fmt"
	"strings"

	"pullscore/interp/speech"
	"pullscore/lang"
)

const (
	// pace is how fast people speak in a plan that does not say it, words a minute.
	pace = 150
	// apart is how far from one another two racks begin at least, seconds: one of a
	// second, and as much and a half for the eye to rest. Our own choice.
	apart = 2.5
)

// Reasons for a rack.
const (
	speaksFirst = "speaks for the first time"
	answers     = "answers"
	isNamed     = "what is done names them"
)

// A tempo is how long a shot lasts so far, in seconds: without what is done in it, and
// with it.
type tempo struct{ said, all float64 }

// speak adds a speech.
func (t *tempo) speak(u *utterance) {
	took := speech.DurationOf(u.words, pace)
	t.said += took
	t.all += took
}

// act adds what is done.
func (t *tempo) act() { t.all += acting }

// A choice chooses the racks of a shot.
type choice struct {
	now    tempo
	latest *tempo          // of the last rack that is proposed; nil before any
	spoken map[string]bool // who has spoken in sight
	called string          // who asked or called in the last speech; "" for nobody

	again, close int // racks that are left out: of who speaks again, and too soon
}

// reason returns why a rack to a speaker is worth proposing; "" if it is not.
func (c *choice) reason(who string) string {
	switch {
	case !c.spoken[who]:
		return speaksFirst
	case c.called != "" && c.called != who:
		return answers
	}
	return ""
}

// takes reports whether a rack can be done so far into the shot, and notes it then.
func (c *choice) takes(at tempo) bool {
	if c.latest != nil && min(at.said-c.latest.said, at.all-c.latest.all) < apart {
		return false
	}
	c.latest = &at
	return true
}

// heard notes a speech.
func (c *choice) heard(u *utterance) {
	if c.spoken == nil {
		c.spoken = map[string]bool{}
	}
	c.spoken[u.Who] = c.spoken[u.Who] || !u.Off
	c.called = ""
	if strings.HasSuffix(strings.TrimRight(u.text, `"'”’ `), "?") || strings.HasSuffix(u.text, "!") {
		c.called = u.Who
	}
	c.now.speak(u)
}

// rack proposes a rack unless the focus is there already, or nothing speaks for it; the
// first that the focus is on needs none.
func (s *shot) rack(to, at, reason string, when tempo) {
	switch {
	case to == s.focus:
		return
	case s.focus == "":
		s.line("  # start on %s", lang.WriteName(to))
		s.focus = to
		return
	case reason == "":
		s.again++
		return
	case !s.takes(when):
		s.close++
		return
	}
	rack := "rack to " + lang.WriteName(to)
	if at != "" {
		rack += ", on " + at
	}
	if s.talk { // with because, check would accept it anywhere
		s.line("  # %s  # %s", rack, reason)
	} else {
		s.line("  # %s, because %s", rack, lang.WriteText(reason))
	}
	s.focus = to
}

// breath is how long nobody must speak for a place to rack in, seconds: our own choice.
const breath = 0.3

// pause passes a silence, and says where a rack may go in a talk that nobody has written: between sentences.
func (s *shot) pause(seconds float64) {
	s.now.said += max(0, seconds)
	s.now.all += max(0, seconds)
	if seconds >= breath-1e-9 {
		s.line("  # %.1f s of silence: a rack may go here.", seconds)
	}
}

// leftOut says at the end of a shot which racks are not proposed.
func (s *shot) leftOut() {
	var list []string
	if s.again > 0 {
		list = append(list, fmt.Sprintf("%d to who speaks again", s.again))
	}
	if s.close > 0 {
		list = append(list, fmt.Sprintf("%d too soon after another", s.close))
	}
	if len(list) > 0 {
		s.line("  # Racks left out: %s.", strings.Join(list, ", "))
	}
}
