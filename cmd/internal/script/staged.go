// The staged form: the action of each scene of a page once, on a floor, a shot that covers
// all of it, and a shot for each speaker as a comment.

package script

import (
	"fmt"
	"strings"

	"pullscore/lang"
	"pullscore/lang/fountain"
)

const (
	// inRow is how many people stand in a row until their places are taped, 1 m apart.
	inRow = 100
	// masterAway is how far downstage of the row the master stands, and singleAway a
	// single, metres: placeholders too.
	masterAway, singleAway = 4, 2
)

// toTape follows a place that nobody has taped yet.
const toTape = "  # tape it"

// staged writes a scene and the shots of it.
func (w *writer) staged(scene fountain.Scene, said []utterance, cast *Cast) {
	id := w.id(scene.Position, scene.Number)
	w.line("\nscene%s", heading(scene))
	var row []*member
	w.voices = map[string]bool{}
	for _, m := range cast.members([][]utterance{said}) {
		if w.voices[m.name] = m.voice; m.voice {
			w.line("  voice %s", lang.WriteName(m.name))
			continue
		}
		w.line("  subject %s at %s%s", lang.WriteName(m.name), inRowAt(len(row)), toTape)
		row = append(row, m)
	}
	w.line("")
	s := shot{writer: w}
	for i := range said {
		s.played(&said[i])
	}
	if len(row) == 0 {
		w.line("  # Nobody is in sight here, so no shot is proposed.")
		return
	}
	w.master(id, row)
	for i, m := range row {
		w.single(fmt.Sprintf("%s-S%d", id, i+1), m)
	}
}

// inRowAt returns the place of somebody by the number in the order of the page, from 0.
func inRowAt(i int) string {
	place := fmt.Sprintf("%d m right", i%inRow)
	if behind := i / inRow; behind > 0 {
		place += fmt.Sprintf(", %d m upstage", behind)
	}
	return place
}

// played writes what happens in a scene: what is done as a comment, and what is said.
func (s *shot) played(u *utterance) {
	switch how := aside(u); {
	case u.Who == "" && u.text == "":
	case u.Who == "":
		s.line("  # action %s, lasting %d s", lang.WriteText(u.text), acting)
	case u.text == "" && how != "":
		s.line("  # action %s, lasting %d s", lang.WriteText(u.Who+" "+how), acting)
	case u.text != "":
		s.said(u)
	}
}

// said writes a line. Somebody who is heard and not seen is told by the language, unless
// a voice is never seen at all.
func (s *shot) said(u *utterance) {
	if u.Dual {
		s.line("  # Said at the same time as the line above.")
	}
	line := fmt.Sprintf("  %s: %s", lang.WriteName(u.Who), lang.WriteText(u.text))
	if u.Off && !s.voices[u.Who] {
		line += ", off"
	}
	if note := strings.Join(s.notes(u), "; "); note != "" {
		line += "  # " + note
	}
	s.line("%s", line)
}

// master writes the shot that covers all, before the middle of the row.
func (w *writer) master(id string, row []*member) {
	first, last := lang.WriteName(row[0].name), lang.WriteName(row[min(len(row), inRow)-1].name)
	aim := first
	if len(row) > 1 {
		aim += " and " + last
	}
	w.line("\nshot %s \"Master\"\n  covers all", id)
	w.line("  camera at %g m right, %d m downstage, aims at %s%s", float64(min(len(row), inRow)-1)/2, masterAway, aim, toTape)
	w.line("  start on %s", first)
}

// single writes a shot of one person, as a comment.
func (w *writer) single(id string, m *member) {
	name := lang.WriteName(m.name)
	w.line("\n# shot %s %s\n#   covers all", id, lang.WriteText("Single "+m.name))
	w.line("#   camera at %s, %d m downstage, aims at %s%s\n#   start on %s", name, singleAway, name, toTape, name)
}
