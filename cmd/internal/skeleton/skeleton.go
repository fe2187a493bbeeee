// Package skeleton turns a script page into the text of a plan to begin from:
// the speakers, a shot a scene, the lines with their words, and racks as
// comments that are woken up by taking "# " away.
package skeleton

import (
	"bytes"
	"cmp"
	"fmt"

	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// placeholder stands for a distance that nobody has taped yet.
const placeholder = "at 2 m  # measure"

// Plan returns the text of a plan for scenes, laid out as by lang.Format.
func Plan(title string, scenes []fountain.Scene) []byte {
	w := &writer{known: map[string]bool{}, ids: map[string]bool{}}
	w.head(title, scenes)
	for i, scene := range scenes {
		w.scene(i+1, scene)
	}
	return lang.Format(w.Bytes())
}

// A writer writes the plan.
type writer struct {
	bytes.Buffer
	names []string        // of the speakers, in the order in which they speak
	known map[string]bool // the same names
	ids   map[string]bool // the shots' IDs so far
}

func (w *writer) line(format string, args ...any) {
	fmt.Fprintf(w, format+"\n", args...)
}

// head writes what stands before the shots. Every speaker is a subject, also
// one who is only heard: that is for the reader of the page to say.
func (w *writer) head(title string, scenes []fountain.Scene) {
	for _, scene := range scenes {
		for _, b := range scene.Beats {
			if b.Who != "" && !w.known[b.Who] {
				w.known[b.Who] = true
				w.names = append(w.names, b.Who)
			}
		}
	}
	if title == "" && len(scenes) > 0 {
		title = scenes[0].Heading
	}
	w.line("plan %s", lang.WriteText(cmp.Or(title, "Untitled")))
	w.line("# use \"kit.pull\"\n# with camera A, lens \"50\", stop f/4\n")
	for _, name := range w.names {
		w.line("subject %s %s", lang.WriteName(name), placeholder)
	}
}

// scene writes a shot.
func (w *writer) scene(position int, scene fountain.Scene) {
	w.line("\nshot %s%s", w.id(position, scene.Number), heading(scene))
	s := shot{writer: w, beats: scene.Beats, anchors: newAnchors(scene.Beats)}
	s.write()
}

// heading returns a scene's heading as the title of a shot, or nothing.
func heading(scene fountain.Scene) string {
	text := fountain.Plain(scene.Heading)
	if text == "" {
		return ""
	}
	return " " + lang.WriteText(text)
}

// plainID is a scene number that can be the ID of a shot as it is.
var plainID = lines.Pattern(`^[A-Za-z0-9][A-Za-z0-9.-]*$`)

// id returns the scene's number where it can name a shot and is not used yet,
// else one made from the scene's position.
func (w *writer) id(position int, number string) string {
	id := number
	if !plainID().MatchString(id) {
		id = fmt.Sprintf("S%d", position)
	}
	for base, n := id, 2; w.ids[id]; n++ {
		id = fmt.Sprintf("%s-%d", base, n)
	}
	w.ids[id] = true
	return id
}

// A shot is being written from the beats of a scene.
type shot struct {
	*writer
	beats   []fountain.Beat
	anchors anchors
	focus   string // who the focus is on, if all racks so far are woken up
	latest  string // the anchor of the last word so far; empty before any
}

func (s *shot) write() {
	for i, b := range s.beats {
		text := b.Text()
		switch {
		case text == "":
		case b.Who == "":
			s.action(text)
		default:
			s.speech(i, b, text)
		}
	}
}

// speech writes a line, and above it the rack to its speaker.
func (s *shot) speech(index int, b fountain.Beat, text string) {
	s.rack(b.Who, s.anchors.first(index))
	if b.Dual {
		s.line("  # Said at the same time as the line above.")
	}
	s.line("  %s: %s", lang.WriteName(b.Who), lang.WriteText(text))
	s.latest = cmp.Or(s.anchors.last(index), s.latest)
}

// action writes what is done, and a rack to the first subject that it names.
// Before anything is said there is no word for it to hang on.
func (s *shot) action(text string) {
	s.line("  # action %s, lasting 2 s", lang.WriteText(text))
	if s.latest == "" {
		return
	}
	if name, ok := s.named(text); ok {
		s.rack(name, s.latest)
	}
}

// rack proposes a rack unless the focus is there already; the first that the
// focus is on needs none.
func (s *shot) rack(to, at string) {
	switch {
	case to == s.focus:
		return
	case s.focus == "":
		s.line("  # start on %s", lang.WriteName(to))
	case at == "":
		return
	default:
		s.line("  # rack to %s, on %s", lang.WriteName(to), at)
	}
	s.focus = to
}

// named returns the subject whose name comes first in a text.
func (s *shot) named(text string) (name string, ok bool) {
	words := speech.Split(text)
	first := len(words)
	for _, n := range s.names {
		if at := speech.Match(words, n); len(at) > 0 && at[0] < first {
			name, first = n, at[0]
		}
	}
	return name, name != ""
}
