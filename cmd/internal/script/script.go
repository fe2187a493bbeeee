package script

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// placeholder stands for a distance that nobody has taped yet.
const placeholder = "at 2 m  # 2 m until it is taped"

// A Page is what a plan says of the script page that it comes from.
type Page struct {
	Title string
	// File is how a script statement names the page; empty for no statement.
	File string
	// Asleep has that statement stand as a comment.
	Asleep bool
	// Talk tells that the page is subtitles: File is then a cut, in which the lines
	// are found, Pauses are the seconds of silence behind each line but the last, and
	// Begins is the timecode at which the shot begins, on the clock of the subtitles.
	Talk   bool
	Pauses []float64
	Begins string
	// Kit sets up the shots of the plan; without one, that is proposed as comments.
	Kit Kit
	// Revised is the name of a revision: the plan has only what that changed, and the
	// rest as comments; empty for all.
	Revised string
	// Staged has the action of each scene written once, on a floor (staged.go).
	Staged bool
}

// A Kit is a file of cameras and lenses, and which of them the shots are taken with. Its
// zero value is none.
type Kit struct{ File, Camera, Lens, Stop string }

// Setup returns the statements that set up the shots of a plan.
func (k Kit) Setup() string {
	return fmt.Sprintf("use %s\nwith camera %s, lens %s, stop %s\n", lang.WriteText(k.File), lang.WriteName(k.Camera), lang.WriteText(k.Lens), k.Stop)
}

// Plan returns the text of a plan for scenes of a page, laid out as by
// lang.Format. The cast is that of the whole page: action may name somebody who
// speaks elsewhere.
func Plan(page Page, scenes []fountain.Scene, cast *Cast) []byte {
	w := &writer{talk: page.Talk, begins: page.Begins, pauses: page.Pauses, ids: map[string]int{}, voices: map[string]bool{}, revised: page.Revised}
	if len(scenes) > 1 && silent(&scenes[0]) {
		scenes = scenes[1:]
	}
	said := make([][]utterance, len(scenes))
	for i, scene := range scenes {
		said[i] = split(scene.Beats)
	}
	w.members = cast.members(said)
	if page.Title == "" && len(scenes) > 0 {
		page.Title = fountain.Plain(scenes[0].Heading)
	}
	w.title(page, scenes)
	if !page.Staged {
		w.cast()
	}
	for i, scene := range scenes {
		if len(scenes) > 1 {
			scene.Position = i + 1
		}
		if page.Staged {
			w.staged(scene, said[i], cast)
		} else {
			w.scene(scene, said[i])
		}
	}
	return lang.Format(w.Bytes())
}

// silent reports whether a scene is only what stands above the first heading,
// and nobody speaks there.
func silent(s *fountain.Scene) bool {
	return s.Heading == "" && !slices.ContainsFunc(s.Beats, func(b fountain.Beat) bool { return b.Who != "" })
}

// A writer writes the plan.
type writer struct {
	bytes.Buffer
	members []*member
	ids     map[string]int  // the shots' IDs so far, with how often each was wanted
	voices  map[string]bool // who is only heard
	talk    bool
	begins  string // when the shot of a talk does
	pauses  []float64
	revised string // the one revision that is wanted; empty for all
}

// passed reports whether a beat is none of the revision that is wanted.
func (w *writer) passed(u *utterance) bool {
	return w.revised != "" && !strings.EqualFold(u.Revision.Name, w.revised)
}

func (w *writer) line(format string, args ...any) {
	fmt.Fprintf(w, format+"\n", args...)
}

// title writes what stands before the cast. A page of which one scene is taken
// is named with that scene.
func (w *writer) title(page Page, scenes []fountain.Scene) {
	w.line("plan %s", lang.WriteText(cmp.Or(page.Title, "Untitled")))
	if page.File != "" {
		script := "script " + lang.WriteText(page.File)
		if page.Talk {
			script = "edit " + lang.WriteText(page.File) + " from 00:00:00:00, unscripted"
		} else if len(scenes) == 1 && scenes[0].Number != "" {
			script += " scene " + lang.WriteText(scenes[0].Number)
		}
		if page.Asleep {
			script = "# " + script
		}
		w.line("%s", script)
	}
	if page.Kit != (Kit{}) {
		w.line("%s", page.Kit.Setup())
		return
	}
	w.line("# use \"kit.pull\"\n# with camera A, lens \"50\", stop f/4\n")
}

// cast declares who can be focused on or heard. Who is only heard is a voice,
// and needs no distance.
func (w *writer) cast() {
	for _, m := range w.members {
		if !m.voice {
			w.line("subject %s %s", lang.WriteName(m.name), placeholder)
		}
	}
	for _, m := range w.members {
		if w.voices[m.name] = m.voice; m.voice {
			w.line("voice %s", lang.WriteName(m.name))
		}
	}
}

// scene writes a shot.
func (w *writer) scene(scene fountain.Scene, said []utterance) {
	w.line("\nshot %s%s", w.id(scene.Position, scene.Number), heading(scene))
	if w.begins != "" {
		w.line("  begins at %s", w.begins)
	}
	s := shot{writer: w, anchors: newAnchors(said)}
	for i := range said {
		s.beat(i, &said[i])
		if i < len(w.pauses) {
			s.pause(w.pauses[i])
		}
	}
	s.leftOut()
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
	for base := id; w.ids[id] > 0; {
		w.ids[base]++
		id = fmt.Sprintf("%s-%d", base, w.ids[base])
	}
	w.ids[id] = 1
	return id
}

// A shot is being written from the beats of a scene.
type shot struct {
	*writer
	anchors *anchors
	focus   string // who the focus is on, if all racks so far are woken up
	last    string // the anchor of the last word so far; empty where there is none
	acted   int    // actions since that word
	choice
}

func (s *shot) beat(i int, u *utterance) {
	switch {
	case u.Who == "":
		if u.text != "" {
			s.action(u, u.text)
		}
	case u.text == "": // only how it would be said: business
		if how := aside(u); how != "" {
			s.action(u, u.Who+" "+how)
		}
	default:
		s.speech(i, u)
	}
}

// aside returns the parentheticals of a speech.
func aside(u *utterance) string {
	var list []string
	for _, p := range u.Parts {
		if p.Kind == fountain.Parenthetical {
			list = append(list, strings.Join(strings.Fields(fountain.Plain(p.Text)), " "))
		}
	}
	return strings.Join(list, " ")
}

// speech writes a line with how it is said, and above it the rack to its
// speaker, who must be in sight for that.
func (s *shot) speech(i int, u *utterance) {
	passed := s.passed(u)
	if !u.Off && !passed {
		s.rack(u.Who, s.anchors.first(i), s.reason(u.Who), s.now)
	}
	if u.Dual {
		s.line("  # Said at the same time as the line above.")
	}
	note := strings.Join(s.notes(u), "; ")
	if note != "" {
		note = "  # " + note
	}
	line := fmt.Sprintf("%s: %s%s", lang.WriteName(u.Who), lang.WriteText(u.text), note)
	if passed { // and no move hangs on its words
		s.line("  # %s", line)
		return
	}
	s.line("  %s", line)
	s.last, s.acted = s.anchors.last(i), 0
	s.heard(u)
}

// notes returns what else the page says of a speech: which revision it is of, who
// says it too, that its speaker is out of sight here only, and how it is said.
func (s *shot) notes(u *utterance) (list []string) {
	if u.Revision.Name != "" {
		list = append(list, u.Revision.Name+" revision")
	}
	if len(u.with) > 0 {
		list = append(list, "together with "+strings.Join(u.with, ", "))
	}
	if u.Off && !s.voices[u.Who] {
		list = append(list, "heard, not seen")
	}
	if how := aside(u); how != "" {
		list = append(list, how)
	}
	return list
}

// acting is how long a proposed action lasts, in seconds: a placeholder too.
const acting = 2

// action writes what is done, and a rack to a subject that it names. It hangs
// on the last word, or before any is said on nothing but the clock.
func (s *shot) action(u *utterance, text string) {
	s.line("  # action %s, lasting %d s", lang.WriteText(text), acting)
	if s.passed(u) {
		return
	}
	at := s.last
	if at != "" && s.acted > 0 {
		at += fmt.Sprintf(" + %d s", s.acted*acting)
	}
	when := tempo{said: s.now.said + float64(s.acted*acting), all: s.now.all}
	s.acted++
	if name := s.named(u); name != "" {
		s.rack(name, at, isNamed, when)
	}
	s.now.act()
}

// named returns the subject whose name comes first in what is done, and that the
// focus is not on already; of a speech without words that is its speaker.
func (s *shot) named(u *utterance) (name string) {
	first := len(u.words)
	for _, m := range s.members {
		switch at := m.in(u); {
		case m.voice || m.name == s.focus:
		case u.Who == m.name && !u.Off:
			return m.name
		case at >= 0 && at < first:
			name, first = m.name, at
		}
	}
	return name
}
