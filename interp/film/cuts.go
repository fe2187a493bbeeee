// The cuts that a plan follows: their files, where their picture starts, and what
// they say of every shot.

package film

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"pullscore/interp/cut"
	"pullscore/interp/edit"
	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
	"pullscore/lang"
)

// readCuts reads the files that the edit statements name.
func (r *reader) readCuts(clips asking) {
	want := sync.OnceValue(func() edit.Wanted { return r.wanted(clips) }) // a plan without a cut wants nothing
	seen := map[string]*lang.CutFile{}
	for _, s := range r.Scope.Edits {
		if !load.NamesFile(s.File, r.Reporter) {
			continue
		}
		path := r.loader.Beside(s.Range().File, s.File.Value)
		if old := seen[path]; old != nil {
			r.Report(lang.Diagnostic{
				Code: "said-twice", Severity: lang.Error, Range: s.Range(),
				Message: fmt.Sprintf("%q is said twice", s.File.Value),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
			continue
		}
		seen[path] = s
		if c := r.readCut(s, path, want); c != nil {
			r.Cuts = append(r.Cuts, c)
		}
	}
	r.readAgainst(want)
	r.startPictures()
}

// readAgainst reads the list that is asked for in place of the plan's own. No statement
// names it, so what is wrong with its name stands in no line of the plan.
func (r *reader) readAgainst(want func() edit.Wanted) {
	path := r.loader.Opt.Against
	if path == "" {
		return
	}
	r.Cuts = slices.DeleteFunc(r.Cuts, func(c *cut.File) bool { return c.IsList && c.HasClips })
	if c := r.readCut(&lang.CutFile{File: &lang.Text{Value: path}}, path, want); c != nil {
		r.Cuts = append([]*cut.File{c}, r.Cuts...)
	}
}

// readCut reads one file; nil where there is nothing to follow in it.
func (r *reader) readCut(s *lang.CutFile, path string, want func() edit.Wanted) *cut.File {
	f := r.loader.Open(s.File, path, r.Reporter)
	if f == nil {
		return nil
	}
	read := r.parseCut(f, want())
	f.PassOn(s.File, read.diags, r.Reporter)
	if read.cut == nil {
		return nil
	}
	c := &cut.File{Cut: read.cut, Stmt: s}
	if s.From != nil {
		n, ok := r.Want(s.From, names.DimTimecode)
		c.Picture, c.Known = int64(n), ok
	}
	if c.FromZero && c.Known {
		c.Move(c.Picture)
	}
	return c
}

// A readCut is a cut with what is wrong in its file.
type readCut struct {
	cut   *edit.Cut
	diags []lang.Diagnostic
}

// parseCut reads the text of a cut. Where a cache keeps it, any line can be looked for in
// it, since the next letter that somebody types makes another word.
func (r *reader) parseCut(f *load.Foreign, want edit.Wanted) readCut {
	if r.loader.Keeps(f) {
		want.Words = nil
	}
	kept := load.FromForeign(r.loader, f, load.Cuts, want.Matters(f.Text, r.Film.Rate), func() readCut {
		c, diags := edit.Read(f.Text, r.Film.Rate, want)
		return readCut{c, diags}
	})
	return readCut{kept.cut.Copy(), kept.diags}
}

// splitWords splits the spoken lines of all files into words.
func (r *reader) splitWords() {
	r.words = map[*lang.Text][]speech.Token{}
	for _, sec := range r.Sections {
		for _, s := range sec.Body {
			if line, ok := s.(*lang.Speech); ok && line.Words != nil {
				r.words[line.Words] = speech.Split(line.Words.Value)
			}
		}
	}
}

// wanted is what the plan looks for in a cut: its shots, and the words of all
// lines that they may have.
func (r *reader) wanted(clips asking) edit.Wanted {
	var want edit.Wanted
	for _, s := range r.Shots {
		if !s.Read {
			continue
		}
		id := s.Section.Head.(*lang.Shot).ID
		if names.Has[*lang.Clip](s.Section) {
			for _, c := range clips[s.Section] {
				want.Asked = append(want.Asked, c.Ask)
			}
			continue
		}
		want.Shots = append(want.Shots, id)
	}
	var said []speech.Folded
	for _, sec := range r.Sections {
		for _, s := range sec.Body {
			if line, ok := s.(*lang.Speech); ok {
				said = append(said, speech.FoldText(names.ValueOf(line.Words)).Folded)
			}
		}
	}
	for _, s := range r.Shots {
		for _, line := range r.linesIn(s.Section) {
			if _, written := r.words[line.Words]; !written { // a move has filled it in
				said = append(said, speech.FoldText(names.ValueOf(line.Words)).Folded)
			}
		}
	}
	want.Words = wording.NewVocabulary(said...)
	want.Names = r.speakers()
	return want
}

// speakers returns the names that a label in subtitles may have: of all who are in
// the film, and of all voices.
func (r *reader) speakers() (list []string) {
	for _, sec := range r.Sections {
		for _, s := range sec.Body {
			var name *lang.Name
			if line, ok := s.(*lang.Speech); ok {
				name = line.Who
			} else if kind, declared := names.Declared(s); kind == names.DeclSubject || kind == names.DeclVoice {
				name = declared
			}
			if name != nil && !slices.Contains(list, name.Text) {
				list = append(list, name.Text)
			}
		}
	}
	return list
}

// linesIn returns the spoken lines of the moves that a section uses.
func (r *reader) linesIn(sec *lang.Section) (list []*lang.Speech) {
	head, ok := sec.Head.(*lang.Shot)
	if !ok || !names.Has[*lang.Call](sec) {
		return nil
	}
	l := names.NewLexicon(head, r.Scope, r.Lets, r.Source, r.Film.Rate)
	for _, it := range l.Expand(sec.Body) {
		if line, ok := it.Stmt.(*lang.Speech); ok && line.Words != nil && it.In.Env != nil {
			list = append(list, line)
		}
	}
	return list
}

// findShots finds every shot in the cuts.
func (r *reader) findShots(clips asking) {
	r.shotCuts = map[*lang.Section]*cut.Shot{}
	heard := map[*cut.File][]labelled{}
	for _, s := range r.Shots {
		if len(r.Cuts) > 0 && s.Read {
			asked := r.asked(s.Section, clips[s.Section])
			found := cut.FindShot(asked)
			r.shotCuts[s.Section] = found
			heard[found.Subtitles] = append(heard[found.Subtitles], labelsOf(found, asked.Lines)...)
		}
	}
	r.compareSpeakers(heard)
}

// asked returns what a shot asks of the cuts: it is found by its ID, by its lines, moves written out, and by where the
// plan has it begin. What is wrong with those is told once the shot is built.
func (r *reader) asked(sec *lang.Section, clips []cut.Named) *cut.Asked {
	head := sec.Head.(*lang.Shot)
	l := names.NewLexicon(head, r.Scope, r.Lets, r.Source, r.Film.Rate)
	film, _ := r.Scope.Settings["with"].(*lang.With)
	l.Speed = r.Film.Speed(names.Clauses(film, withOf(sec)), l)
	asked := &cut.Asked{ID: head.ID, Speed: l.Speed, Cuts: r.Cuts, Clips: clips, Logs: r.Clips}
	for _, it := range append(r.ofScene(sec, l), l.Expand(sec.Body)...) {
		switch s := it.Stmt.(type) {
		case *lang.Speech:
			tokens := r.Tokens(s.Words)
			asked.Lines = append(asked.Lines, cut.Said{Stmt: s, Who: whose(it.In, s.Who), Tokens: tokens})
			asked.Long += speech.DurationOf(tokens, speech.DefaultPace)
		case *lang.Begins:
			if n, ok := l.Want(s.At, names.DimTimecode); ok && !asked.Begun {
				asked.Begun, asked.Begins = true, int64(n)
			}
		}
	}
	return asked
}

// An asking is what the clip statements of each shot name.
type asking map[*lang.Section][]cut.Named

// askedClips returns it of all shots that are read.
func (r *reader) askedClips() asking {
	all := asking{}
	for _, s := range r.Shots {
		if s.Read {
			all[s.Section] = r.clipsOf(s.Section)
		}
	}
	return all
}

// clipsOf returns what the clip statements of a shot name. What is wrong with their
// timecodes is told once the shot is built.
func (r *reader) clipsOf(sec *lang.Section) (list []cut.Named) {
	head := sec.Head.(*lang.Shot)
	for _, s := range sec.Body {
		c, ok := s.(*lang.Clip)
		if !ok || c.Name == nil {
			continue
		}
		ask := edit.Ask{Shot: head.ID, Name: c.Name.Value, Reel: names.ValueOf(c.Reel), Take: names.ValueOf(c.Take)}
		if c.From != nil && c.To != nil {
			l := names.NewLexicon(head, r.Scope, r.Lets, r.Source, r.Film.Rate)
			from, ok := l.Want(c.From, names.DimTimecode)
			to, okToo := l.Want(c.To, names.DimTimecode)
			ask.From, ask.To, ask.Within = int64(from), int64(to), ok && okToo
		}
		list = append(list, cut.Named{Stmt: c, Ask: ask})
	}
	return list
}

// startPictures settles where the picture of each cut starts: where its
// statement says, else where the first list does.
func (r *reader) startPictures() {
	var list *cut.File
	for _, c := range r.Cuts {
		if c.IsList && c.HasClips {
			list = cmp.Or(list, c)
		}
	}
	if list == nil {
		return
	}
	if !list.Known {
		list.Picture, list.Known = list.Start, true
	}
	for _, c := range r.Cuts {
		if c.Known {
			continue
		}
		c.Picture, c.Known = list.Picture, true
		if !c.IsList {
			r.byDefault("edit "+c.Base(), "from "+r.Film.Rate.Format(c.Picture), "where "+list.Base()+" starts")
		}
	}
}
