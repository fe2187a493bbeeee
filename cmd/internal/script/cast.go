// The cast: who can be focused on, and who is only heard.

package script

import (
	"unicode"
	"unicode/utf8"

	"pullscore/interp/speech"
	"pullscore/lang/fountain"
)

// MostNames is how many names of a page are known by their speakers: more than
// any film has.
const MostNames = 10_000

// A Cast is everybody who speaks on a page, in the order in which they do. The
// zero value is ready.
type Cast struct {
	names []string
	known map[string]bool
}

// Add adds the speakers of a beat.
func (c *Cast) Add(b *fountain.Beat) {
	if b.Who == "" {
		return
	}
	for _, name := range fountain.Speakers(b.Who) {
		c.add(name)
	}
}

func (c *Cast) add(name string) {
	if c.known[name] || len(c.names) == MostNames {
		return
	}
	if c.known == nil {
		c.known = map[string]bool{}
	}
	c.known[name] = true
	c.names = append(c.names, name)
}

// A member is one of the cast in a plan.
type member struct {
	name  string
	folds speech.Folded
	small bool // the name is written with a small letter first
	voice bool // heard and never seen
}

// members returns those of the cast who are in some scenes: they speak there, or
// action names them.
func (c *Cast) members(scenes [][]utterance) []*member {
	speaks, seen := map[string]bool{}, map[string]bool{}
	var action []*utterance
	for _, scene := range scenes {
		for i := range scene {
			u := &scene[i]
			if u.Who == "" {
				action = append(action, u)
				continue
			}
			for _, who := range append([]string{u.Who}, u.with...) {
				speaks[who] = true
				seen[who] = seen[who] || !u.Off
			}
		}
	}
	var list, silent []*member
	for _, name := range c.names {
		m := &member{name: name, folds: speech.Fold(speech.Split(name)), voice: speaks[name] && !seen[name]}
		first, _ := utf8.DecodeRuneInString(name)
		if m.small = unicode.IsLower(first); speaks[name] {
			list = append(list, m)
		} else {
			silent = append(silent, m)
		}
	}
	return append(list, mentioned(silent, action)...)
}

// mentioned returns those of some members whom action names. It goes by their
// first words, since there may be many names and much action.
func mentioned(members []*member, action []*utterance) (list []*member) {
	byWord := map[string][]*member{}
	for _, m := range members {
		if len(m.folds) > 0 {
			byWord[m.folds[0]] = append(byWord[m.folds[0]], m)
		}
	}
	found := map[*member]bool{}
	sought := map[*member]*utterance{} // where in last: a word may stand there often
	for _, u := range action {
		for _, word := range u.folds {
			for _, m := range byWord[word] {
				if found[m] || sought[m] == u {
					continue
				}
				if sought[m] = u; m.in(u) >= 0 {
					found[m] = true
					list = append(list, m)
				}
			}
		}
	}
	return list
}

// in returns at which word of a text the name stands; -1 for nowhere. A word
// with a small letter first is none: a man is not MAN.
func (m *member) in(u *utterance) int {
	for _, at := range u.folds.Find(m.folds) {
		first, _ := utf8.DecodeRuneInString(u.words[at].Text)
		if m.small || !unicode.IsLower(first) {
			return at
		}
	}
	return -1
}
