// Records: what the texts of a plan turned out to be, for whoever asks which name stands
// where. Most names tell that by where they stand. A text in quotes may be a name or
// words, which only the clock knows, once it has looked for them.

package names

import "pullscore/lang"

// A Record notes what texts and moments came to while shots were built. A nil Record
// notes nothing, and costs nothing.
type Record struct {
	Names    map[lang.Range]bool  // texts that are names
	Cues     map[lang.Range]*Decl // names that are cues of a move which the shot uses
	Words    []Words
	Lexicons []*Lexicon // of what was built, in its order
}

// Words are a text that stands for words of another.
type Words struct {
	Text *lang.Text
	Of   *lang.Text // a spoken line, or what an action says
	// From and To are the first and the last of the words there, from 0; To is -1
	// where all of the text is meant.
	From, To int
}

// NewRecord returns a record with nothing in it.
func NewRecord() *Record {
	return &Record{Names: map[lang.Range]bool{}, Cues: map[lang.Range]*Decl{}}
}

// Name notes that a text is a name.
func (r *Record) Name(at lang.Range) {
	if r != nil {
		r.Names[at] = true
	}
}

// Cue notes that a name is that of a cue in a move, and returns the cue.
func (r *Record) Cue(at lang.Range, d *Decl) *Decl {
	if r != nil && d != nil {
		r.Cues[at] = d
	}
	return d
}

// Say notes which words of a text another stands for.
func (r *Record) Say(text, of *lang.Text, from, to int) {
	if r != nil && of != nil {
		r.Words = append(r.Words, Words{text, of, from, to})
	}
}

// built notes the lexicon of something that is built.
func (r *Record) built(l *Lexicon) {
	if r != nil {
		r.Lexicons = append(r.Lexicons, l)
	}
}

// Ask asks for every moment that the statements of a shot name, also for those that
// nothing has asked for, because the cut knows better or another mistake came first.
func (r *Record) Ask(items []Item, when func(item int, a *lang.Anchor)) {
	if r == nil {
		return
	}
	for i, it := range items {
		for part := range lang.Parts(it.Stmt) {
			if a, ok := part.(*lang.Anchor); ok {
				when(i, a)
			}
		}
	}
}
