// Beats: speeches and action, put together from their lines.

package fountain

import (
	"fmt"
	"iter"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// A Beat is a speech or a line of action, as they follow each other.
type Beat struct {
	Who   string // empty: action
	Off   bool   // the speaker is heard and not seen here
	Parts []Part // the lines below the cue, or the one of action
	Dual  bool   // said at the same time as the speech before
	Line  int    // of the cue

	Revision Revision // the latest of its lines
}

// A Part is a line of a beat, with its emphasis: Dialogue, a Lyric, a
// Parenthetical, or Action.
type Part struct {
	Kind Kind
	Text string
}

// Empty reports whether it is no beat at all.
func (b *Beat) Empty() bool { return b.Line == 0 }

// Text returns what is said and sung, or done, as plain words.
func (b *Beat) Text() string {
	plain := make([]string, 0, len(b.Parts))
	for _, p := range b.Parts {
		if p.Kind == Parenthetical {
			continue
		}
		if s := strings.TrimSpace(Plain(p.Text)); s != "" {
			plain = append(plain, s)
		}
	}
	return strings.Join(plain, " ")
}

// MaxSpeech is how much one speech may hold, in bytes: hours of talk. With more
// the page is something else, and the rest of that speech is left out.
const MaxSpeech = 1 << 20

// Beats yields the beats of a script with their scenes, whose own Beats are
// left empty: a script of any length takes no memory. Each scene comes first
// with an empty beat. What is wrong is added to faults.
func Beats(t *lines.Text, faults *lines.Faults) iter.Seq2[Scene, Beat] {
	return beats(t, &Script{}, faults)
}

func beats(t *lines.Text, s *Script, faults *lines.Faults) iter.Seq2[Scene, Beat] {
	return Assemble(t, elements(t, s, faults), faults)
}

// Assemble puts the elements of a text together, in whatever form it is, as Beats
// does.
func Assemble(t *lines.Text, elements iter.Seq[Element], faults *lines.Faults) iter.Seq2[Scene, Beat] {
	return func(yield func(Scene, Beat) bool) {
		b := builder{yield: yield, text: t, faults: faults}
		for e := range elements {
			if !b.element(e) {
				return
			}
		}
		b.end()
	}
}

// A builder puts the elements of one beat after another together.
type builder struct {
	yield  func(Scene, Beat) bool
	text   *lines.Text
	faults *lines.Faults

	scene Scene
	beat  Beat // a speech that may go on
	size  int  // of its parts, in bytes
}

// element takes the next element; it returns false when no more is wanted.
func (b *builder) element(e Element) bool {
	switch e.Kind {
	case Heading:
		return b.end() && b.begin(Scene{Number: e.Number, Heading: e.Text, Line: e.Line})
	case Cue, Action, Lyric, Dialogue, Parenthetical:
	default:
		return true
	}
	if b.scene.Position == 0 && !b.begin(Scene{Line: 1}) {
		return false
	}
	speaking := b.beat.Who != ""
	switch {
	case e.Kind == Cue:
		ok := b.end()
		b.beat = Beat{Who: e.Text, Off: e.Off, Dual: e.Dual, Line: e.Line, Revision: e.Revision}
		return ok
	case speaking && e.Kind != Action:
		b.add(e)
		return true
	case e.Kind == Parenthetical:
		return true
	}
	// Action, or what is sung by nobody.
	return b.end() && b.yield(b.scene, Beat{Parts: []Part{{Action, e.Text}}, Line: e.Line, Revision: e.Revision})
}

// begin begins a scene.
func (b *builder) begin(s Scene) bool {
	s.Position = b.scene.Position + 1
	b.scene = s
	return b.yield(s, Beat{})
}

// end yields the speech that is over.
func (b *builder) end() bool {
	beat := b.beat
	b.beat, b.size = Beat{}, 0
	return beat.Empty() || b.yield(b.scene, beat)
}

// add adds a line to the speech.
func (b *builder) add(e Element) {
	if b.size > MaxSpeech {
		return
	}
	if b.size += len(e.Text) + 1; b.size > MaxSpeech {
		b.faults.Add(lang.Diagnostic{
			Code: "too-long", Severity: lang.Error, Range: b.cue(),
			Message: fmt.Sprintf("this speech has more than %d kB", MaxSpeech>>10),
			Detail:  "That is hours of talk. The rest of it is left out.",
		})
		return
	}
	b.beat.Parts = append(b.beat.Parts, Part{e.Kind, e.Text})
	if e.Revision.Number > b.beat.Revision.Number {
		b.beat.Revision = e.Revision
	}
}

// cue returns the place of the cue of the speech that is read.
func (b *builder) cue() lang.Range {
	return b.text.Whole(b.text.Line(b.beat.Line))
}
