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

// shotRef adds the ID of a shot that a statement speaks of.
func (w *finder) shotRef(ref *lang.ShotRef) {
	sec := w.film.ShotOf(ref.ID)
	if sec == nil {
		return
	}
	head := sec.Head.(*lang.Shot)
	if of, ok := head.IDRange(w.film.Source(head.Range().File)); ok {
		w.list = append(w.list, Mention{Name: ref.ID, Kind: Shot, Range: ref.Range(), Of: of})
	}
}
