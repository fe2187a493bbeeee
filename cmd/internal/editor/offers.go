// What a plan has of each kind of thing that the grammar expects.

package editor

import (
	"cmp"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/interp/mention"
	"pullscore/lang"
)

// offers returns what can be written at the place, best first.
func (w *writer) offers() []offer {
	if w.at.Quoted {
		return w.inQuotes()
	}
	written := habitsOf(w.doc, w.tree, w.at.From)
	if w.at.Before == "" {
		return w.starts(written)
	}
	list := w.words(written)
	values := w.values()
	if w.valuesFirst() {
		return append(values, list...)
	}
	return append(list, values...)
}

// valuesFirst reports whether a value has to come here: then no clause can.
func (w *writer) valuesFirst() bool {
	return !slices.ContainsFunc(w.at.Choices, func(c lang.Choice) bool { return c.Role == lang.RoleClause || c.Role == lang.RoleUnit })
}

// words returns the words of the language that can come next: units, then what this plan
// writes most often at such a place, then in the order of the usage line.
func (w *writer) words(written habits) []offer {
	type ranked struct {
		lang.Choice
		unit, behind, within, anywhere, usage int
	}
	usage := lang.Usage(w.at.Statement)
	before := kindOfWord(w.at.Before)
	var list []ranked
	for _, c := range w.at.Choices {
		if c.Word == "" || w.takesAsName(c) {
			continue
		}
		r := ranked{Choice: c, usage: strings.Index(usage, ", "+c.Word)}
		if r.usage < 0 {
			r.usage = strings.Index(usage, c.Word)
		}
		r.behind = written.behind[[3]string{w.at.Statement, before, c.Word}]
		r.within = written.within[[2]string{w.at.Statement, c.Word}]
		if c.Role == lang.RoleUnit {
			r.unit, r.anywhere = 1, written.units[c.Word]
		}
		if r.usage < 0 {
			r.usage = len(usage)
		}
		list = append(list, r)
	}
	sortStable(list, func(a, b ranked) int {
		return cmp.Or(b.unit-a.unit, b.behind-a.behind, b.within-a.within, b.anywhere-a.anywhere, a.usage-b.usage)
	})
	offers := make([]offer, 0, len(list))
	for _, r := range list {
		o := offer{label: r.Word, kind: lsp.ItemKeyword, detail: r.Text}
		switch r.Role {
		case lang.RoleUnit:
			o.kind = lsp.ItemUnit
		case lang.RoleClause:
			o.kind = lsp.ItemProperty
		}
		offers = append(offers, o)
	}
	return offers
}

// takesAsName reports whether a word can come only if the statement does not begin with a
// word of the language, but with somebody of that name, as in pan: "Hello." Nobody who
// writes a pan means that, unless the plan has a pan who speaks.
func (w *writer) takesAsName(c lang.Choice) bool {
	switch c.Word {
	case ":", "(", "moves":
	default:
		return false
	}
	first := w.at.Statement
	return first != "" && lang.Usage(first) != c.Text && !slices.ContainsFunc(w.names(mention.Subject, mention.Voice, mention.Move), func(m interp.Mention) bool {
		return m.Name == first
	})
}

// kindOfWord returns how habits know the word before a place.
func kindOfWord(word string) string {
	tokens := lang.Tokens([]byte(word))
	if len(tokens) == 0 {
		return ""
	}
	return shapeOfToken(tokens[0], func(lang.Token) string { return word })
}

// values returns the values of the plan that can come next.
func (w *writer) values() (list []offer) {
	for _, c := range w.at.Choices {
		switch {
		case c.Role != lang.RoleValue:
		case w.at.Statement == "with" || w.at.Clause == "operator":
			list = append(list, w.setup()...)
		case strings.HasPrefix(c.Text, "a moment") && w.at.Statement == "(":
			list = append(append(list, w.subjects("")...), w.moments()...)
		case strings.HasPrefix(c.Text, "a moment"):
			list = append(list, w.moments()...)
		case strings.HasPrefix(c.Text, "the shot's ID"):
			list = append(list, w.shots()...)
		case strings.HasPrefix(c.Text, "a name") && !w.expects("a moment"):
			list = append(list, w.named(c.Text)...)
		case strings.HasPrefix(c.Text, "a place on the floor"):
			list = append(append(list, w.marks()...), w.subjects("")...)
		case strings.HasPrefix(c.Text, "a place"):
			list = append(list, w.subjects("")...)
		}
	}
	if len(list) == 0 && slices.ContainsFunc(w.at.Choices, func(c lang.Choice) bool { return c.Role == lang.RoleValue }) {
		for _, m := range w.names(mention.Let, mention.Parameter) {
			list = append(list, offer{label: lang.WriteName(m.Name), kind: lsp.ItemConstant, detail: w.statementOf(m)})
		}
	}
	return list
}

// setup returns the cameras, lenses, hands and stops that a set-up can name.
func (w *writer) setup() []offer {
	switch w.at.Clause {
	case "camera":
		return w.kit(mention.Camera)
	case "lens":
		return w.kit(mention.Lens)
	case "puller", "operator":
		return w.kit(mention.Puller)
	case "stop", "meter":
		return w.stops()
	}
	return nil
}

// named returns the names that a statement can take.
func (w *writer) named(what string) (list []offer) {
	switch w.at.Statement {
	case "rack", "start", "follow", "pan", "tilt", "let", "dolly", ":", "moves":
		except := w.focusAt()
		if w.at.Statement == "follow" {
			except = "" // it follows whom it is on
		}
		list = w.subjects(except)
		if strings.Contains(what, "inf") {
			list = append(list, offer{label: "inf", kind: lsp.ItemConstant, detail: "infinity"})
		}
	case "camera", "subject", "mark", "measured", "line":
		switch before := w.at.Before; {
		case w.at.Statement == "measured" && before == "at":
			return w.marks()
		case before == "towards":
			return append(w.marks(), w.subjects("")...)
		case w.at.Clause == "aims", w.at.Statement == "measured", w.at.Statement == "line":
			return w.subjects("")
		}
	}
	return list
}

// names returns the declarations of a kind that can be seen from the place.
func (w *writer) names(kinds ...mention.Kind) (list []interp.Mention) {
	if w.plan == nil {
		return nil
	}
	for _, m := range w.plan.result().Names() {
		if m.Declares && slices.Contains(kinds, m.Kind) && w.sees(m) {
			list = append(list, m)
		}
	}
	return list
}

// sees reports whether a declaration counts at the place: not one in another shot, nor a
// parameter of another move.
func (w *writer) sees(m interp.Mention) bool {
	switch m.Kind {
	case mention.Camera, mention.Lens, mention.Puller, mention.Move, mention.Shot:
		return true
	}
	if w.plan.reals[m.Range.File] != w.doc.real {
		return true
	}
	scene := w.scene()
	for _, section := range w.tree.Sections {
		if at := spanOf(rangeOf(section)); at.start <= m.Range.Start.Offset && m.Range.Start.Offset < at.end {
			return section == w.section || section == scene
		}
	}
	return true
}

// scene returns the scene under which the shot stands that the place is in; nil for none.
func (w *writer) scene() (above *lang.Section) {
	if w.section == nil || !w.inShot() {
		return nil
	}
	for _, section := range w.tree.Sections {
		if section == w.section {
			return above
		}
		if _, ok := section.Head.(*lang.Scene); ok {
			above = section
		}
	}
	return nil
}

// marks returns the marks on the floor of the scene, with what their statements say.
func (w *writer) marks() (list []offer) {
	for _, m := range w.names(mention.Mark) {
		list = append(list, offer{label: lang.WriteName(m.Name), kind: lsp.ItemConstant, detail: "mark " + w.statementOf(m)})
	}
	return list
}

// shots returns the other shots of the file, the nearest above the place first.
func (w *writer) shots() (list []offer) {
	var below []offer
	for _, section := range w.tree.Sections {
		head, ok := section.Head.(*lang.Shot)
		if !ok || head.ID == "" || section == w.section {
			continue
		}
		o := offer{label: head.ID, kind: lsp.ItemClass, detail: "shot"}
		if head.Title != nil {
			o.detail = head.Title.Value
		}
		if head.Range().Start.Offset < w.at.From {
			list = append(list, o)
		} else {
			below = append(below, o)
		}
	}
	slices.Reverse(list)
	return append(list, below...)
}

// subjects returns the people and things of the scene, those of this shot first, with what
// their statement says; never the one that the focus is on.
func (w *writer) subjects(except string) (list []offer) {
	for _, m := range w.names(mention.Subject, mention.Group, mention.Parameter) {
		if m.Name != except {
			list = append(list, offer{label: lang.WriteName(m.Name), kind: lsp.ItemVariable, detail: w.statementOf(m)})
		}
	}
	spoken := w.spokenOf()
	sortStable(list, func(a, b offer) int { return slices.Index(spoken, b.label) - slices.Index(spoken, a.label) })
	return list
}

// spokenOf returns the names that statements above the place write, the last one last.
func (w *writer) spokenOf() (list []string) {
	for _, one := range w.above {
		at := one.Range()
		for _, t := range lang.Tokens(w.doc.data[at.Start.Offset:at.End.Offset]) {
			name := string(w.doc.data[at.Start.Offset+t.Start : at.Start.Offset+t.End])
			if t.Kind == lang.TokenName || t.Kind == lang.TokenText {
				if i := slices.Index(list, name); i >= 0 {
					list = slices.Delete(list, i, i+1)
				}
				list = append(list, name)
			}
		}
	}
	return list
}

// focusAt returns whom the focus is on above the place; "" if that is not a name.
func (w *writer) focusAt() string {
	on := ""
	for _, one := range w.above {
		var to *lang.Target
		switch one := one.(type) {
		case *lang.Start:
			to = one.Target
		case *lang.Rack:
			to = one.Target
		case *lang.Follow:
			on = one.Who.Text
			continue
		}
		if to != nil {
			on = ""
			if len(to.Of) == 1 && to.Of[0].Kind == lang.ExprName {
				on = to.Of[0].Ref
			}
		}
	}
	return on
}

// statementOf returns what a statement says of the name that it declares.
func (w *writer) statementOf(m interp.Mention) string {
	d, err := w.s.at(m.Of.File)
	if err != nil {
		return ""
	}
	one := statementAt(d.tree(), m.Of.Start.Offset)
	if one == nil {
		return ""
	}
	at := spanOf(one.Range())
	return strings.Join(strings.Fields(string(d.data[min(m.Of.End.Offset, at.end):at.end])), " ")
}

// kit returns what the kit has of a kind.
func (w *writer) kit(kind mention.Kind) (list []offer) {
	write := lang.WriteName
	if kind == mention.Lens {
		write = func(name string) string { return `"` + name + `"` }
	}
	for _, m := range w.names(kind) {
		list = append(list, offer{label: write(m.Name), kind: lsp.ItemClass, detail: kind.String() + " in " + filepath.Base(m.Of.File)})
	}
	return list
}

// moments returns the cues, ends of lines and words that something can hang on.
func (w *writer) moments() (list []offer) {
	for _, m := range w.names(mention.Cue) {
		list = append(list, offer{label: lang.WriteName(m.Name), kind: lsp.ItemEvent, detail: "cue" + w.statementOf(m)})
	}
	slices.Reverse(list) // the last one above is the likeliest
	for _, name := range w.speakers() {
		list = append(list, offer{label: "end of " + name, kind: lsp.ItemVariable, detail: "when they have spoken"},
			offer{label: name, kind: lsp.ItemVariable, detail: "when they begin to speak"})
	}
	return append(list, w.wordsAsMoments()...)
}

// speakers returns who speaks above the place, the last one first.
func (w *writer) speakers() (list []string) {
	above := w.above
	if scene := w.scene(); scene != nil {
		above = slices.Concat(scene.Body, above)
	}
	for _, one := range slices.Backward(above) {
		if said, ok := one.(*lang.Speech); ok {
			if name := lang.WriteName(said.Who.Text); !slices.Contains(list, name) {
				list = append(list, name)
			}
		}
	}
	return list
}
