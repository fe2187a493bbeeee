// Cues: named moments.

package clock

import (
	"slices"

	"pullscore/interp/names"
	"pullscore/lang"
)

// cue times a named moment.
func (c *Clock) cue(k int, s *lang.Cue, ahead bool) When {
	m := &c.At[k]
	return c.settle(m, func() When {
		w := When{}
		if t, ok := c.CueInCut(s.Name.Text); ok {
			w = at(t)
		} else {
			w = c.when(k, s.On, ahead)
			if c.torn(s) {
				w = failed
			}
		}
		if w.State == Found {
			m.StartS, m.EndS = w.T, w.T
			c.notBefore(k, w.T)
		}
		return w
	})
}

// cues are where the cues of a shot stand, those of moves as often as they are
// used.
type cues struct {
	items  map[*lang.Cue][]int
	use    map[cueUse]int   // the first in an environment
	called map[string][]int // by name, those that could not be read too
}

// A cueUse is a cue in one use of a move.
type cueUse struct {
	cue *lang.Cue
	env *names.Env
}

func cuesOf(items []names.Item) cues {
	list := cues{items: map[*lang.Cue][]int{}, use: map[cueUse]int{}, called: map[string][]int{}}
	for i, it := range items {
		kind, name := names.Declared(it.Stmt)
		if name == nil || kind != names.DeclCue {
			continue
		}
		list.called[name.Text] = append(list.called[name.Text], i)
		cue, ok := it.Stmt.(*lang.Cue)
		if !ok {
			continue
		}
		list.items[cue] = append(list.items[cue], i)
		key := cueUse{cue, it.In.Env}
		if _, ok := list.use[key]; !ok {
			list.use[key] = i
		}
	}
	return list
}

// cueInMove finds a cue that stands in a named move which the shot uses.
func (c *Clock) cueInMove(name string) *names.Decl {
	for _, i := range c.cues.called[name] {
		if it := c.items[i]; it.In.Env != nil {
			kind, n := names.Declared(it.Stmt)
			return &names.Decl{Kind: kind, Name: n, Stmt: it.Stmt}
		}
	}
	return nil
}

// cueTime is the time of a cue that an anchor names.
func (c *Clock) cueTime(q ask, d *names.Decl, where lang.Range) When {
	cue, ok := d.Stmt.(*lang.Cue)
	if !ok {
		return failed // it could not be read
	}
	if i := c.cues.find(q, cue); i >= 0 {
		return c.cue(i, cue, q.ahead)
	}
	q.in.Fail(where, "unknown-name", d.Name.Text+" is no cue of this shot", "")
	return failed
}

// find finds the item that is a cue, -1 where the shot has none. A move that is
// used several times has its cue several times: meant is that of the same use,
// else the last one above.
func (l cues) find(q ask, cue *lang.Cue) int {
	if i, ok := l.use[cueUse{cue, q.in.Env}]; ok {
		return i
	}
	list := l.items[cue]
	if len(list) == 0 {
		return -1
	}
	n, _ := slices.BinarySearch(list, q.item)
	return list[max(n-1, 0)]
}
