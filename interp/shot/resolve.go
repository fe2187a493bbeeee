// Names in a shot that cannot be computed: its lines and pulls are looked at
// all the same, so that one run lists every mistake.

package shot

import (
	"pullscore/interp/names"
	"pullscore/lang"
)

func (b *builder) resolveNames() {
	for _, it := range b.Items {
		switch s := it.Stmt.(type) {
		case *lang.Speech:
			b.Who(s.Who, it.Env, names.DeclSubject, names.DeclVoice)
		case *lang.Follow:
			b.Who(s.Who, it.Env, names.DeclSubject)
		case *lang.Moves:
			b.Who(s.Who, it.Env, names.DeclSubject)
		case *lang.Rack:
			if s.Target != nil {
				for _, x := range s.Target.Of {
					b.At(it.Env).Eval(x)
				}
			}
		}
	}
}
