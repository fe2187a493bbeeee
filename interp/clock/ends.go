// Ends: the moment at which a line, a movement, an action or a rack is over.

package clock

import (
	"slices"
	"strings"

	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// end resolves end of NAME and end of KEYWORD. A name stands for somebody's line,
// and where they have none in the shot, for a movement of theirs. The keyword of a
// statement, as in end of dolly, stands for such a statement, and a text in quotes
// may be what an action says. Of several it is the last one above that is meant,
// and where there is none above, the next below.
func (c *Clock) end(q ask, a *lang.Anchor) When {
	if a.Of != "" {
		if k, ok := nearestTo(q.item, c.ends().kinds[a.Of]); ok {
			return c.over(q, k)
		}
		if !c.with.Lex.Here.Any(a.Of) { // else it may be the one that could not be read
			q.in.Fail(a.Range(), "no-line", "the shot has no other "+a.Of, "")
		}
		return failed
	}
	if k, ok := c.actionCalled(q, a.Name.Text); ok {
		c.with.Lex.Film.Record.Say(&lang.Text{Node: a.Name.Node}, c.items[k].Stmt.(*lang.Action).What, 0, -1)
		return c.over(q, k)
	}
	if k, ok := c.moveCalled(q, a.Name.Text); ok {
		return c.over(q, k)
	}
	d, ok := q.in.Who(a.Name, names.DeclSubject, names.DeclVoice)
	if !ok {
		return failed
	}
	who := d.Name.Text
	if k, ok := nearestTo(q.item, c.ends().moves[who]); ok && len(c.Of(who)) == 0 {
		return c.over(q, k)
	}
	return c.speakerLine(q, who, a.Range(), true)
}

// actionCalled finds the action that says what stands in place of a name.
func (c *Clock) actionCalled(q ask, text string) (k int, ok bool) {
	if c.isName(q, text) {
		return 0, false
	}
	return nearestTo(q.item, c.ends().actions[folded(text)])
}

// moveCalled finds the camera move whose word stands in place of a name: those words can
// be names, and a name wins.
func (c *Clock) moveCalled(q ask, text string) (k int, ok bool) {
	switch {
	case c.isName(q, text):
		return 0, false
	case text == "push" || text == "pull":
		text = "dolly"
	case !slices.Contains([]string{"pan", "tilt", "track", "boom"}, text):
		return 0, false
	}
	return nearestTo(q.item, c.ends().kinds[text])
}

// isName tells whether a text is a name that the plan declares.
func (c *Clock) isName(q ask, text string) bool {
	_, _, isParameter := q.in.Arg(text)
	return isParameter || c.with.Lex.Find(text) != nil
}

// over is when an item is over.
func (c *Clock) over(q ask, k int) When {
	w := When{}
	switch c.items[k].Stmt.(type) {
	case *lang.Rack:
		p := c.PullOf[k]
		if w = c.timePull(p, q.ahead); w.State == Found {
			w.T = p.LandS
		}
		return w
	case *lang.Action:
		if !c.pass(k+1, q.ahead) {
			return until(k + 1)
		}
		if c.At[k].Failed {
			return failed
		}
	default:
		if w = c.movement(k, q.ahead); w.State != Found {
			return w
		}
	}
	w.T = c.At[k].EndS
	return w
}

// ending are the items whose end can be named, in the order written.
type ending struct {
	kinds   map[string][]int // by keyword
	moves   map[string][]int // movements by who moves
	actions map[string][]int // by what they say, folded
}

// endings lists what ends can be named of.
func (c *Clock) endings() ending {
	e := ending{kinds: map[string][]int{}, moves: map[string][]int{}, actions: map[string][]int{}}
	for k, it := range c.items {
		word := ""
		switch s := it.Stmt.(type) {
		case *lang.Moves:
			word = "moves"
			if mv := c.movements[k]; mv != nil && mv.Who != nil {
				e.moves[mv.Who.Name] = append(e.moves[mv.Who.Name], k)
			}
		case *lang.Dolly:
			word = "dolly"
		case *lang.Zoom:
			word = "zoom"
		case *lang.Track:
			word = "track"
		case *lang.Boom:
			word = "boom"
		case *lang.CameraMoves:
			word = "camera"
		case *lang.Turn:
			if mv := c.movements[k]; mv != nil && mv.Keeps && mv.until == nil {
				continue // nobody knows its end yet
			}
			if word = "pan"; !s.Pan {
				word = "tilt"
			} else if s.Tilt {
				e.kinds["tilt"] = append(e.kinds["tilt"], k)
			}
		case *lang.Rack:
			word = "rack"
		case *lang.Action:
			word = "action"
			text := folded(names.ValueOf(s.What))
			e.actions[text] = append(e.actions[text], k)
		default:
			continue
		}
		e.kinds[word] = append(e.kinds[word], k)
	}
	return e
}

// folded returns a text as texts are compared.
func folded(text string) string { return strings.Join(speech.Fold(speech.Tokens(text)), " ") }

// nearestTo returns the last of some items above another, else the first below.
func nearestTo(item int, list []int) (k int, ok bool) {
	n, itself := slices.BinarySearch(list, item)
	switch {
	case n > 0:
		return list[n-1], true
	case itself:
		n++
	}
	if n == len(list) {
		return 0, false
	}
	return list[n], true
}
