// What a line can begin with.

package editor

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/mention"
	"pullscore/lang"
)

// usual lists the statements in the order in which plans are written. Those of a section
// come one after the other; what may be written twice in a row stands once.
var usual = []string{
	"plan", "rate", "units", "use", "with", "subject", "shot", "edit", "script", "let", "voice", "clips", "pace", "watched", "land",
	"sharp", "quickest", "tape", "camera", "lens", "puller", "move", "scene",
	"sensor", "records", "on", "iso", "shutter", "monitor", "shoots",
	"focal", "stops", "closest", "ring", "turns", "marks", "mark", "breathing", "keeps", "loses", "squeeze", "ratio", "darkens",
	"pupil", "planes", "play", "ends",
	"takes", "hand", "limit", "grip", "spread", "bias",
	"origin", "line", "covers", "places", "runs", "matches", "measured",
	"begins", "start", "rack", ":", "hold", "pause", "cue", "follow", "action", "pan", "tilt", "dolly", "push", "pull", "zoom", "track",
	"boom", "cut", "clip", "note", "lasts", "moves", "(",
}

// repeats reports whether a statement often follows itself.
func repeats(word string) bool {
	switch word {
	case "use", "subject", "voice", "let", "stops", "mark", ":", "clip", "note", "script", "edit":
		return true
	}
	return false
}

// starts returns what a line can begin with at the place: what this plan mostly writes
// behind a statement like the one above, then what is usually written next.
func (w *writer) starts(written habits) []offer {
	type ranked struct {
		offer
		out, next, usual int
	}
	before := w.before()
	var list []ranked
	add := func(o offer, statement string, nth int) {
		r := ranked{offer: o, next: written.next[[2]string{before, statement}], usual: w.distance(before, statement) + nth*3}
		if w.outside(statement) != w.flush() || w.said(statement) {
			r.out = 1
		}
		if nth > 0 {
			r.next = r.next * 2 / 3 // another speaker is as likely as another statement
		}
		list = append(list, r)
	}
	for _, c := range w.at.Choices {
		switch {
		case c.Role == lang.RoleStatement:
			o := offer{label: c.Word, kind: lsp.ItemKeyword, detail: c.Text}
			if c.Word == "rack" || c.Word == "start" {
				o.label += map[string]string{"rack": " to", "start": " on"}[c.Word]
			}
			if w.outside(c.Word) {
				o.kind = lsp.ItemClass
			}
			add(o, c.Word, 0)
		case c.Role == lang.RoleValue: // the name of somebody who speaks, or of a move
			for i, name := range w.mightSpeak() {
				add(offer{label: name + ":", insert: name + `: "`, behind: `"`, kind: lsp.ItemVariable, detail: "says"}, ":", i)
			}
			for _, m := range w.names(mention.Move) {
				add(offer{label: m.Name + "(", behind: ")", kind: lsp.ItemFunction, detail: w.statementOf(m)}, "(", 0)
			}
		}
	}
	sortStable(list, func(a, b ranked) int { return cmp.Or(a.out-b.out, b.next-a.next, a.usual-b.usual) })
	offers := make([]offer, len(list))
	for i, r := range list {
		offers[i] = r.offer
	}
	return offers
}

// distance says how far a statement is behind another in the usual order.
func (w *writer) distance(before, statement string) int {
	from, to := slices.Index(usual, before), slices.Index(usual, statement)
	if w.section != nil && w.flush() { // a section has ended: another header, like its own
		from = slices.Index(usual, w.headWord()) - 1
		if to <= slices.Index(usual, "tape") && statement != "shot" {
			to += len(usual)
		}
	} else if w.section != nil && w.inShot() {
		if !w.inAction() {
			return w.opening(statement)
		}
		if to <= slices.Index(usual, "start") {
			to += len(usual)
		}
		return to
	}
	switch {
	case from == to && repeats(statement):
		return 0
	case to > from:
		return to - from
	}
	return len(usual) + to - from
}

// opening says where a statement stands before the action of a shot.
func (w *writer) opening(statement string) int {
	order := []string{"with", "start", "begins", "subject", "rack", ":", "hold", "pause"}
	if i := slices.Index(order, statement); i >= 0 {
		return i
	}
	return len(order) + slices.Index(usual, statement)
}

// headWord returns the word that the header of the section begins with.
func (w *writer) headWord() string {
	at := spanOf(w.section.Head.Range())
	return firstWord(w.doc.data[at.start:at.end])
}

// firstWord returns the first word of a statement.
func firstWord(statement []byte) string {
	word, _, _ := strings.Cut(strings.TrimLeft(string(statement), " \t"), " ")
	return word
}

// inShot reports whether the section is a shot or a move.
func (w *writer) inShot() bool {
	switch w.section.Head.(type) {
	case *lang.Shot, *lang.Move:
		return true
	}
	return false
}

// inAction reports whether the action of a shot or move has begun above the place.
func (w *writer) inAction() bool {
	return slices.ContainsFunc(w.above, func(one lang.Statement) bool {
		switch one.(type) {
		case *lang.Start, *lang.Move, *lang.Speech, *lang.Rack:
			return true
		}
		return false
	})
}

// outside reports whether a statement is written at the margin: a header, or one of the
// file.
func (w *writer) outside(statement string) bool {
	at, shots := slices.Index(usual, statement), slices.Index(usual, "sensor")
	if w.scene() != nil && !w.flush() && statement == "camera" {
		return false
	}
	if w.section != nil && w.inShot() && !w.flush() && (statement == "with" || statement == "subject" || statement == "voice") {
		return false
	}
	return at >= 0 && at < shots
}

// flush reports whether the line begins at the margin although sections are indented.
func (w *writer) flush() bool {
	if w.section == nil {
		return true
	}
	if w.at.From != bytes.LastIndexByte(w.doc.data[:w.at.From], '\n')+1 {
		return false
	}
	indented := len(w.section.Body) > 0 && w.section.Body[0].Range().Start.Column > 1
	return indented || len(w.above) > 1
}

// said reports whether a statement that stands once stands above the place already.
func (w *writer) said(statement string) bool {
	switch statement {
	case "plan", "rate", "units", "pace", "with", "start", "begins", "sensor", "records", "iso", "shutter", "focal", "closest",
		"ring", "turns", "marks", "breathing", "tape", "land", "quickest", "watched", "takes", "hand", "limit", "lasts", "origin", "covers", "places", "runs", "matches":
	default:
		return false
	}
	above := w.above
	if w.flush() {
		above = statements(w.tree)
	}
	return slices.ContainsFunc(above, func(one lang.Statement) bool {
		at := spanOf(one.Range())
		return at.start < w.at.From && firstWord(w.doc.data[at.start:at.end]) == statement
	})
}

// mightSpeak returns who may speak next: who has spoken in the shot, the last one last, then
// everybody else.
func (w *writer) mightSpeak() (list []string) {
	spoken := w.speakers()
	if len(spoken) > 1 {
		spoken = append(spoken[1:], spoken[0])
	}
	all := w.names(mention.Voice, mention.Subject)
	list = spoken
	for _, m := range all {
		if name := lang.WriteName(m.Name); !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}
