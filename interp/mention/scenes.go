// Scenes: the names in them, and the shots that statements speak of.

package mention

import (
	"pullscore/interp/names"
	"pullscore/lang"
)

// inScenes finds the names of every scene, and of the moves that it uses.
func (w *finder) inScenes() {
	for _, sc := range w.film.Scenes {
		for _, it := range sc.Items {
			w.used[it.In.Env.Move()] = true
		}
		for _, s := range sc.Section.Body {
			w.declaredIn(sc.Scope, s)
		}
		w.body(sc.Section.Body, sc.Lex.Outside())
	}
}

// declaredIn adds the name that a statement declares in a scene. Where the scene has the
// name already it is that of the first.
func (w *finder) declaredIn(scope *names.Scope, s lang.Statement) {
	kind, n := names.Declared(s)
	if n == nil {
		return
	}
	d := &names.Decl{Kind: kind, Name: n, Stmt: s}
	if first := scope.Find(d.Space(), n.Text); first != nil {
		d = first
	}
	w.add(n, kinds[d.Kind], Plain, d.Name)
}

// shotRef adds the ID of a shot that a statement speaks of, which is one of its own file.
func (w *finder) shotRef(ref *lang.ShotRef) {
	for _, sec := range w.film.Sections {
		head, ok := sec.Head.(*lang.Shot)
		if !ok || head.ID != ref.ID || head.Pos.Filename != ref.Pos.Filename {
			continue
		}
		if of, ok := head.IDRange(w.film.Source(head.Pos.Filename)); ok {
			w.list = append(w.list, Mention{Name: ref.ID, Kind: Shot, Range: ref.Range(), Of: of})
		}
		return
	}
}
