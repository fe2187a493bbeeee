// Paragraphs: what each is, and what it says.

package fdx

import (
	"encoding/xml"
	"strings"
	"unicode/utf8"

	"pullscore/lang/fountain"
)

// A paragraph is being read.
type paragraph struct {
	kind, number string
	line         int
	text         strings.Builder
	revision     int  // the highest of its texts
	dual         bool // it is a second speaker's
}

// paragraph reads a child of the content; what is no paragraph is passed over.
func (r *reader) paragraph(e xml.StartElement) error { return r.within(e, nil) }

// within reads a paragraph; together tells of those who speak at the same time, in
// whose frame it is.
func (r *reader) within(e xml.StartElement, together *int) error {
	switch e.Name.Local {
	case "DualDialogue":
		speakers := 0
		return r.each(func(e xml.StartElement) error { return r.within(e, &speakers) })
	case "Paragraph":
	default:
		return r.tokens.skip()
	}
	p := &paragraph{kind: attribute(e, "Type"), number: attribute(e, "Number"), line: r.tokens.line()}
	if together != nil && p.kind == "Character" {
		*together++
		p.dual = *together > 1
	}
	said := false // what stands in a frame within comes behind the text of the paragraph
	err := r.each(func(e xml.StartElement) error {
		switch e.Name.Local {
		case "Text":
			p.revision = max(p.revision, number(e, "RevisionID"))
			return r.tokens.textTo(&p.text)
		case "DualDialogue":
			if !said {
				said = true
				if err := r.say(p); err != nil {
					return err
				}
			}
			return r.within(e, together)
		}
		return r.tokens.skip()
	})
	if err != nil || said {
		return err
	}
	return r.say(p)
}

// longestNumber is how many signs the number of a scene has at most.
const longestNumber = 12

// say yields the element that a paragraph is, if it says anything.
func (r *reader) say(p *paragraph) error {
	text := strings.Join(strings.Fields(p.text.String()), " ")
	if text == "" {
		return nil
	}
	e := fountain.Element{Kind: kindOf(p.kind), Text: fountain.Literal(text), Line: p.line}
	if p.revision > 0 {
		e.Revision = fountain.Revision{Number: p.revision, Name: r.revisions[p.revision]}
	}
	switch e.Kind {
	case fountain.Heading:
		e.Text = text
		if utf8.RuneCountInString(p.number) <= longestNumber {
			e.Number = p.number
		}
		word := strings.ToUpper(strings.Trim(text, " .()"))
		r.omitted = word == "OMITTED" || word == "OMIT"
	case fountain.Cue:
		name, heard := fountain.Name(strings.TrimSuffix(text, "^"))
		e.Text, e.Off, e.Dual = strings.ToUpper(name), heard, p.dual
		if name == "" {
			return nil
		}
	case fountain.Action:
		if strings.EqualFold(text, "FADE IN:") {
			e.Kind = fountain.Transition
		}
	}
	if r.omitted && e.Kind != fountain.Heading {
		return nil
	}
	if !r.yield(e) {
		return errStopped
	}
	return nil
}

// kindOf returns what a type of paragraph is.
func kindOf(name string) fountain.Kind {
	switch name {
	case "Scene Heading":
		return fountain.Heading
	case "Character":
		return fountain.Cue
	case "Parenthetical":
		return fountain.Parenthetical
	case "Dialogue":
		return fountain.Dialogue
	case "Transition":
		return fountain.Transition
	}
	return fountain.Action
}
