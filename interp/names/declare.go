// What a shot or a scene declares itself.

package names

import "pullscore/lang"

// Declare takes what a statement of a shot or a scene declares. A subject may stand
// elsewhere there than in what is around it: in the scene, or in the rest of the film.
func (l *Lexicon) Declare(stmt lang.Statement) {
	d := &Decl{Stmt: stmt}
	if d.Kind, d.Name = Declared(stmt); d.Name == nil {
		return
	}
	key := ScopeKey{Space: DeclSubject, Name: Fold(d.Name.Text)}
	if old, ok := l.Local.ByFolded[key]; ok {
		l.Clash(old, d)
		return
	}
	for _, around := range l.Scopes() {
		if old, ok := around.ByFolded[key]; ok && around != l.Local && !replaces(d, old) {
			l.Clash(old, d)
			return
		}
	}
	l.Local.Put(d)
}

// replaces reports whether a subject stands in place of the one of that name around it.
func replaces(d, old *Decl) bool {
	return old.Name.Text == d.Name.Text && old.Kind == DeclSubject && d.Kind == DeclSubject
}

// Tells returns the reader of what stands in no move, which tells what is wrong to a
// report.
func (l *Lexicon) Tells(to *Report) Reader { return l.reader(nil, nil, to) }

// ExpandQuietly writes out a body that another lexicon has told the mistakes of.
func (l *Lexicon) ExpandQuietly(body []lang.Statement) []Item {
	x := expansion{l: l}
	x.add(body, l.Tells(&Report{}), 0)
	return x.items
}

// Taping returns the fix that declares somebody in the shot itself, below its header. Where
// they stand is left to be written.
func (l *Lexicon) Taping(who string) []lang.Fix {
	path := l.Head.Pos.Filename
	if path == "" { // of no shot in the text
		return nil
	}
	e := lang.InsertBelow(&lang.File{Path: path, Source: l.Source(path)}, l.Head, "  subject "+lang.WriteName(who)+" at ")
	return []lang.Fix{{Title: "Declare " + lang.WriteName(who) + " as a subject of this shot", Edits: []lang.Edit{e}}}
}
