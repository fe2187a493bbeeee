// Finding: every mention in the files of a film.

package mention

import (
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/film"
	"pullscore/interp/names"
	"pullscore/interp/shot"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// In returns every mention of a name in the files of a film, in their order. It builds
// every scene and every shot anew to see what became of its texts.
func In(f *film.Film, units map[string]*names.Unit) []Mention {
	r := names.NewRecord()
	scope := *f.Scope
	scope.Record = r
	w := &finder{film: f.In(&scope), units: units, record: r, at: map[place]bool{}, walked: map[walked]bool{}, moves: map[*lang.Move]bool{}, used: map[*lang.Move]bool{}}
	w.inFiles()
	w.inScenes()
	w.inShots()
	w.inUnused()
	w.words()
	return sorted(w.list)
}

// A finder gathers the mentions of one film.
type finder struct {
	film   *film.Film
	units  map[string]*names.Unit
	record *names.Record
	list   []Mention
	at     map[place]bool // where there are mentions
	walked map[walked]bool
	moves  map[*lang.Move]bool // of those, the moves
	used   map[*lang.Move]bool // by shots
}

// A place is a place of a file, in bytes.
type place struct {
	file   string
	offset int
}

// A walked is a move with the names that it was looked at with.
type walked struct {
	move *lang.Move
	in   *names.Lexicon
}

// add adds a mention of what a name node declares.
func (w *finder) add(n *lang.Name, k Kind, form Form, of *lang.Name) {
	at := n.Range()
	w.at[place{at.File, at.Start.Offset}] = true
	w.list = append(w.list, Mention{Name: of.Text, Kind: k, Form: form, Range: at, Declares: n.Node == of.Node, Of: of.Range()})
}

// kinds are the kinds of declarations here.
var kinds = [...]Kind{
	names.DeclSubject: Subject, names.DeclVoice: Voice, names.DeclCue: Cue, names.DeclLet: Let, names.DeclMove: Move, names.DeclMark: Mark,
	names.DeclCamera: Camera, names.DeclLens: Lens, names.DeclPuller: Puller,
}

func (w *finder) kindOf(d *names.Decl) Kind {
	if v := w.film.Lets[d]; v != nil && v.Group != nil {
		return Group
	}
	return kinds[d.Kind]
}

// inFiles finds the names outside of shots and moves. All files mean by a name what the
// plan means, whichever of them declares it.
func (w *finder) inFiles() {
	outside := names.NewLexicon(&lang.Shot{}, w.film.Scope, w.film.Lets, w.film.Source, w.film.Rate).Outside()
	for _, u := range w.units {
		for _, s := range u.File.Body {
			w.declared(s)
			w.statement(s, outside)
			w.torn(s, u, outside)
		}
		for _, sec := range u.File.Sections {
			w.declared(sec.Head)
			w.shotID(sec.Head, u)
			w.torn(sec.Head, u, outside)
			if names.Meant(sec) == "scene" {
				continue
			}
			for _, s := range sec.Body {
				w.declared(s)
				if !acts(sec) {
					w.statement(s, outside)
					w.torn(s, u, outside)
				}
			}
		}
	}
}

// acts reports whether a section has statements of a shot, whose names are those of the
// shot.
func acts(sec *lang.Section) bool {
	switch names.Meant(sec) {
	case "shot", "move", "":
		return true
	}
	return false
}

// declared adds the names that a statement declares.
func (w *finder) declared(s lang.Statement) {
	if kind, n := names.Declared(s); n != nil {
		w.add(n, w.kindOf(w.holder(kind, n, s)), Plain, n)
	}
	if m, ok := s.(*lang.Move); ok {
		for _, p := range m.Params {
			w.add(p, Parameter, Plain, p)
		}
	}
}

// holder returns the declaration that a scope has of a statement.
func (w *finder) holder(kind names.DeclKind, n *lang.Name, s lang.Statement) *names.Decl {
	d := &names.Decl{Kind: kind, Name: n, Stmt: s}
	if held := w.film.Scope.Find(d.Space(), n.Text); held != nil && held.Name == n {
		return held
	}
	return d
}

// shotID adds the ID of a shot.
func (w *finder) shotID(s lang.Statement, u *names.Unit) {
	head, ok := s.(*lang.Shot)
	if !ok || head.ID == "" {
		return
	}
	if at, ok := head.IDRange(u.File.Source); ok {
		w.list = append(w.list, Mention{Name: head.ID, Kind: Shot, Range: at, Declares: true, Of: at})
	}
}

// inShots finds the names of every shot, and of the moves that it uses.
func (w *finder) inShots() {
	own := map[*lang.Section]bool{}
	for _, s := range w.film.Shots {
		own[s.Section] = true
		w.inShot(s.Section)
	}
	for _, sec := range w.film.Sections {
		if _, ok := sec.Head.(*lang.Shot); ok && !own[sec] {
			w.inShot(sec)
		}
	}
}

func (w *finder) inShot(sec *lang.Section) {
	first := len(w.record.Lexicons)
	built, _ := shot.Build(w.film, sec, change.Change{}, shot.Options{})
	for _, it := range built.Items {
		w.used[it.In.Env.Move()] = true
	}
	l := w.record.Lexicons[first]
	w.body(sec.Body, l.Outside())
	for _, u := range w.units {
		for _, s := range u.File.Body {
			if _, ok := s.(*lang.Subject); ok && (len(l.Local.Order) > 0 || l.Staged != nil) { // it may stand beside somebody of the shot or its scene
				w.statement(s, l.Outside())
			}
		}
	}
}

// inUnused finds the names of moves that no shot uses. They may be those of any shot.
func (w *finder) inUnused() {
	shot.Unused(w.film, w.used)
	l := w.record.Lexicons[len(w.record.Lexicons)-1]
	for _, sec := range w.film.Sections {
		move, ok := sec.Head.(*lang.Move)
		switch meant := names.Meant(sec); {
		case ok && !w.moves[move]:
			w.body(sec.Body, l.OfMove(move))
		case !ok && (meant == "move" || meant == ""):
			w.body(sec.Body, l.Outside())
		}
	}
}

// body finds the names of statements that stand in a shot or in a move, and of the moves
// that they use.
func (w *finder) body(body []lang.Statement, in names.Reader) {
	for _, s := range body {
		w.statement(s, in)
		w.torn(s, w.units[s.Range().File], in)
		call, ok := s.(*lang.Call)
		if !ok {
			continue
		}
		if _, d := in.Declared(call.Name.Text); d != nil && d.Section != nil {
			if move, ok := d.Stmt.(*lang.Move); ok && !w.walked[walked{move, in.Lexicon()}] {
				w.walked[walked{move, in.Lexicon()}], w.moves[move] = true, true
				w.body(d.Section.Body, in.Lexicon().OfMove(move))
			}
		}
	}
}

// statement finds the names of a statement, as what stands at one place reads them.
func (w *finder) statement(s lang.Statement, in names.Reader) {
	var setUp []*lang.Name
	if with, ok := s.(*lang.With); ok {
		setUp = []*lang.Name{with.Camera, with.Lens, with.Puller, with.Operator}
		for i, kind := range []names.DeclKind{names.DeclCamera, names.DeclLens, names.DeclPuller, names.DeclPuller} {
			w.kit(setUp[i], kind)
		}
	}
	_, declares := names.Declared(s)
	if declares == nil {
		if bad, ok := s.(*lang.Bad); ok {
			declares = bad.Name
		}
	}
	move, _ := s.(*lang.Move)
	forms := map[*lang.Name]Form{}
	_, call := s.(*lang.Call)
	for part := range lang.Parts(s) {
		switch x := part.(type) {
		case *lang.Anchor:
			if x.Kind == lang.AnchorName && (!call || x.Offset != nil) {
				forms[x.Name] = Moment
			}
		case *lang.Name:
			if x != declares && !slices.Contains(setUp, x) && (move == nil || !slices.Contains(move.Params, x)) {
				w.name(x, forms[x], in)
			}
		case *lang.Expr:
			if x.Kind == lang.ExprName {
				w.name(&lang.Name{Node: x.Node, Text: x.Ref, Quoted: x.Quoted}, Plain, in)
			}
		case *lang.Text:
			w.text(x, in)
		case *lang.ShotRef:
			w.shotRef(x)
		}
	}
}

// kit adds a name of the kit.
func (w *finder) kit(n *lang.Name, kind names.DeclKind) {
	if n == nil {
		return
	}
	if d := w.film.Scope.Find(kind, n.Text); d != nil {
		w.add(n, kinds[kind], Plain, d.Name)
	}
}

// name adds a name for what it means at its place.
func (w *finder) name(n *lang.Name, form Form, in names.Reader) {
	param, d := in.Declared(n.Text)
	if param != nil {
		w.add(n, Parameter, form, param)
		return
	}
	if d == nil {
		if d = w.record.Cues[n.Range()]; d == nil {
			return
		}
		w.add(n, Cue, form, d.Name)
		return
	}
	if d.Kind < names.DeclLet { // in quotes it is taken for a name where no line has the words
		form = Plain
	}
	w.add(n, w.kindOf(d), form, d.Name)
}

// text adds what is a name in a text: all of it, or parameters in braces.
func (w *finder) text(t *lang.Text, in names.Reader) {
	if w.record.Names[t.Range()] {
		w.name(&lang.Name{Node: t.Node, Text: t.Value, Quoted: true}, Plain, in)
	}
	source := w.film.Source(t.Range().File)
	for from, to := range names.Braces(t.Value) {
		if param, _ := in.Declared(t.Value[from:to]); param != nil {
			w.list = append(w.list, Mention{Name: param.Text, Kind: Parameter, Form: Braces, Range: t.Part(source, from, to), Of: param.Range()})
		}
	}
}

// words adds the texts that stand for words of others.
func (w *finder) words() {
	for _, said := range w.record.Words {
		of := said.Of.Range()
		if said.To >= 0 {
			tokens := speech.Split(said.Of.Value)
			if last := min(said.To, len(tokens)-1); said.From <= last {
				of = said.Of.Part(w.film.Source(of.File), tokens[said.From].Start, tokens[last].End)
			}
		}
		w.list = append(w.list, Mention{Name: said.Text.Value, Kind: Word, Form: Text, Range: said.Text.Range(), Of: of})
	}
}
