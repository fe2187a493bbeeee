// Names in a shot that cannot be computed: its lines and pulls are looked at
// all the same, so that one run lists every mistake.

package interp

import "pullscore/lang"

func (b *builder) resolveNames() {
	for _, it := range b.items {
		switch s := it.stmt.(type) {
		case *lang.Speech:
			b.who(s.Who, it.env, declSubject, declVoice)
		case *lang.Follow:
			b.who(s.Who, it.env, declSubject)
		case *lang.Moves:
			b.who(s.Who, it.env, declSubject)
		case *lang.Rack:
			if s.Target != nil {
				for _, x := range s.Target.Of {
					b.at(it.env).eval(x)
				}
			}
		}
	}
}
