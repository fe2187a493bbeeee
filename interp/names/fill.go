// Parameters in texts: what a move says in words, with its arguments in place of
// {who} and the like.

package names

import (
	"bytes"
	"fmt"
	"iter"
	"slices"
	"strings"

	"pullscore/lang"
)

// filled returns a statement of a move with what its parameters stand for in its
// texts. It is the statement itself where they name none, else a copy, since the
// next use of the move fills in others.
func (r Reader) filled(s lang.Statement) lang.Statement {
	at := s.Range()
	if src := r.lex.Source(at.File); r.Env == nil || at.End.Offset > len(src) || bytes.IndexByte(src[at.Start.Offset:at.End.Offset], '{') < 0 {
		return s
	}
	made := r.copyOf(s)
	if made == nil {
		return s
	}
	r.lex.copies[made] = s
	return made
}

// copyOf returns a copy of a statement with its texts filled; nil for one that has
// none.
func (r Reader) copyOf(s lang.Statement) lang.Statement {
	switch s := s.(type) {
	case *lang.Speech:
		made := *s
		made.Words, made.On = r.text(s.Words), r.moment(s.On)
		return &made
	case *lang.Action:
		made := *s
		made.What, made.On = r.text(s.What), r.moment(s.On)
		return &made
	case *lang.Rack:
		made := *s
		made.Because, made.On, made.Landing = r.text(s.Because), r.moment(s.On), r.moment(s.Landing)
		return &made
	case *lang.Cue:
		made := *s
		made.On = r.moment(s.On)
		return &made
	case *lang.Follow:
		made := *s
		made.On, made.Until = r.moment(s.On), r.moment(s.Until)
		return &made
	case *lang.Moves:
		made := *s
		made.On = r.moment(s.On)
		return &made
	case *lang.Dolly:
		made := *s
		made.On, made.Landing = r.moment(s.On), r.moment(s.Landing)
		return &made
	case *lang.Zoom:
		made := *s
		made.On, made.Landing = r.moment(s.On), r.moment(s.Landing)
		return &made
	case *lang.Turn:
		made := *s
		made.On, made.Landing, made.Until = r.moment(s.On), r.moment(s.Landing), r.moment(s.Until)
		return &made
	case *lang.Track:
		made := *s
		made.On, made.Landing = r.moment(s.On), r.moment(s.Landing)
		return &made
	case *lang.Boom:
		made := *s
		made.On, made.Landing = r.moment(s.On), r.moment(s.Landing)
		return &made
	case *lang.Call:
		made := *s
		made.Args = make([]*lang.Anchor, len(s.Args))
		for i, a := range s.Args {
			made.Args[i] = r.moment(a)
		}
		return &made
	}
	return nil
}

// moment returns a moment with its words filled.
func (r Reader) moment(a *lang.Anchor) *lang.Anchor {
	if a == nil || a.Words == nil {
		return a
	}
	made := *a
	made.Words = r.text(a.Words)
	return &made
}

// text returns a text with what parameters stand for in place of their names in
// braces. Other braces stay as they are.
func (r Reader) text(t *lang.Text) *lang.Text {
	if t == nil || !strings.Contains(t.Value, "{") {
		return t
	}
	var b strings.Builder
	end := 0
	for from, to := range Braces(t.Value) {
		b.WriteString(t.Value[end : from-1])
		b.WriteString(r.inBraces(t, t.Value[from:to]))
		end = to + 1
	}
	return &lang.Text{Node: t.Node, Value: b.String() + t.Value[end:]}
}

// Braces yields where what stands in braces begins and ends in a text, in bytes. Of
// several braces that open it is the last.
func Braces(text string) iter.Seq2[int, int] {
	return func(yield func(from, to int) bool) {
		for at := 0; ; {
			open := strings.IndexByte(text[at:], '{')
			if open < 0 {
				return
			}
			closes := strings.IndexByte(text[at+open:], '}')
			if closes < 0 {
				return
			}
			to := at + open + closes
			from := at + open + strings.LastIndexByte(text[at+open:to], '{') + 1
			if !yield(from, to) {
				return
			}
			at = to + 1
		}
	}
}

// inBraces returns what stands for a name in braces.
func (r Reader) inBraces(t *lang.Text, name string) string {
	if a, outer, ok := r.Arg(name); ok {
		if said, ok := outer.wordsOf(a, name); ok {
			return said
		}
	} else if params := r.Env.params(); !slices.Contains(params, name) {
		if near, ok := lang.Nearest(name, params); ok {
			d := lang.Diagnostic{
				Code: "unknown-name", Severity: lang.Error, Range: t.Range(),
				Message: fmt.Sprintf("{%s} is no parameter of this move", name), Detail: fmt.Sprintf("Did you mean {%s}?", near),
			}
			if at := t.Range(); strings.Count(t.Value, "{"+name+"}") == 1 {
				text := string(r.lex.Source(at.File)[at.Start.Offset:at.End.Offset])
				made := strings.Replace(text, "{"+name+"}", "{"+near+"}", 1)
				d.Fixes = []lang.Fix{{Title: "Write {" + near + "}", Edits: []lang.Edit{{Range: t.Range(), Text: made}}}}
			}
			r.Report(d)
		}
	}
	return "{" + name + "}"
}

// params lists the parameters of the move.
func (e *Env) params() (list []string) {
	for _, p := range e.move.Params {
		list = append(list, p.Text)
	}
	return list
}

// wordsOf returns an argument as it is said: a text without its quotes, a subject
// or voice by its name, a value as it is written. ok is false where it is none of these,
// which has been told, and in a move that no shot uses.
func (r Reader) wordsOf(a *lang.Anchor, param string) (said string, ok bool) {
	switch {
	case a == nil:
		return "", false
	case a.Words != nil:
		return a.Words.Value, true
	case a.Kind == lang.AnchorTime:
		return lang.Write(a), true
	case a.Kind != lang.AnchorName || a.Offset != nil:
		r.Fail(a.Range(), "wrong-kind", fmt.Sprintf("expected a text, a name or a value for {%s}, found a moment", param), "")
		return "", false
	}
	if arg, outer, ok := r.Arg(a.Name.Text); ok {
		return outer.wordsOf(arg, param)
	}
	if d := r.lex.Find(a.Name.Text); d != nil {
		return d.Name.Text, true
	}
	return a.Name.Text, true // if it has to be declared, that is told where it is
}
