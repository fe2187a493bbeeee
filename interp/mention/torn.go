// Torn lines: names in what is left of a line that could not be read whole.

package mention

import (
	"pullscore/interp/names"
	"pullscore/lang"
)

// torn finds names in the part of a line that could not be read. What such a part means
// nobody knows, so only what is no keyword, has no quotes and is a name of the plan
// counts.
func (w *finder) torn(s lang.Statement, u *names.Unit, in names.Reader) {
	if _, bad := s.(*lang.Bad); u == nil || !bad && u.Torn[s] == nil {
		return
	}
	list, before := lang.NamesIn(u.File.Source, s.Range())
	for i, n := range list {
		if w.at[place{n.Pos.Filename, n.Pos.Offset}] {
			continue
		}
		switch before[i] {
		case "camera":
			w.kit(n, names.DeclCamera)
		case "lens":
			w.kit(n, names.DeclLens)
		case "puller", "operator":
			w.kit(n, names.DeclPuller)
		default:
			w.name(n, Plain, in)
		}
	}
}
