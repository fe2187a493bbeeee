// What a word of a plan comes to, in at most twelve lines.
//
// A statement is told as `list` tells it, with the same figures: a rack by its times,
// places, travel and chance, a line by its times. A name is told by what it stands for, a
// word of the language by its usage line.

package editor

import (
	"context"
	"fmt"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
	"pullscore/interp/mention"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// mostLines is how long a hover is at most.
const mostLines = 12

// hover answers with what stands at a place.
func hover(ctx context.Context, s *snapshot, p *lsp.PositionParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	if !d.plan {
		return nil, nil
	}
	t := &teller{s: s, doc: d, offset: s.offset(d, p.Position)}
	if t.token = tokenAt(lang.Tokens(d.data), t.offset); t.token == nil || t.token.Kind == lang.TokenComment {
		return nil, nil
	}
	t.one = statementAt(d.tree(), t.token.Start)
	if t.plan, err = s.plan(ctx, d.uri); err != nil {
		return nil, err
	}
	t.shots = t.plan.shotsOf(d, t.offset)
	lines := t.lines()
	if len(lines) == 0 {
		return nil, nil
	}
	at := s.ranged(d, t.token.Start, t.token.End)
	return lsp.Hover{Contents: s.markup(lines), Range: &at}, nil
}

// markup writes lines as the client reads them. In Markdown they stand in a block of code,
// so that nothing in them is taken for a sign of Markdown.
func (s *snapshot) markup(lines []string) lsp.MarkupContent {
	if len(lines) > mostLines {
		lines = append(lines[:mostLines-1:mostLines-1], "…")
	}
	text := strings.Join(lines, "\n")
	for _, format := range s.client.TextDocument.Hover.ContentFormat {
		if format == lsp.Markdown {
			fence := "```"
			for strings.Contains(text, fence) {
				fence += "`"
			}
			return lsp.MarkupContent{Kind: lsp.Markdown, Value: fence + "\n" + text + "\n" + fence}
		}
	}
	return lsp.MarkupContent{Kind: lsp.PlainText, Value: text}
}

// tokenAt returns the token at a byte; the one that ends there if none begins.
func tokenAt(tokens []lang.Token, offset int) *lang.Token {
	for i, t := range tokens {
		if t.Start <= offset && (offset < t.End || offset == t.End && (i+1 == len(tokens) || tokens[i+1].Start > offset)) {
			return &tokens[i]
		}
	}
	return nil
}

// A teller says what stands at a place.
type teller struct {
	s      *snapshot
	doc    *document
	offset int
	token  *lang.Token
	one    lang.Statement // nil between statements
	plan   *planned
	shots  []*plan.Shot // that the place is in; those of the whole plan above them
}

// headed returns what the shot comes to whose header stands at a place; none if it could not
// be built.
func (p *planned) headed(d *document, header lang.Range) (list []*plan.Shot) {
	for _, shot := range p.result().Plan.Shots {
		if shot.Line == header.Start.Line && p.reals[shot.File] == d.real {
			list = append(list, shot)
		}
	}
	return list
}

// shotIn returns the shots whose section a byte of a document is in.
func (p *planned) shotIn(d *document, offset int) []*plan.Shot {
	var header lang.Range
	for _, section := range d.tree().Sections {
		if at := section.Head.Range(); at.Start.Offset <= offset {
			header = at
		}
	}
	return p.headed(d, header)
}

// shotsOf returns the shot that a byte of a document is in, as it came out; all shots of
// the plan if it is in none.
func (p *planned) shotsOf(d *document, offset int) []*plan.Shot {
	if in := p.shotIn(d, offset); in != nil {
		return in
	}
	return p.result().Plan.Shots
}

// style returns how lengths of a shot are written.
func (s *snapshot) style(shot *plan.Shot) units.Style {
	switch s.Units {
	case "metric":
		return units.ForTable(false)
	case "imperial":
		return units.ForTable(true)
	}
	return units.ForTable(shot != nil && shot.Imperial)
}

// word returns the token as it is written.
func (t *teller) word() string { return string(t.doc.data[t.token.Start:t.token.End]) }

// lines says what the token is: a name, else what its statement comes to if it begins it,
// else a number or a word of the language.
func (t *teller) lines() []string {
	if m := t.mention(); m != nil {
		return t.name(*m)
	}
	if t.token.Kind == lang.TokenNumber {
		return t.number()
	}
	if t.one != nil && t.token.Start == t.one.Range().Start.Offset {
		if lines := t.statement(); len(lines) > 0 {
			return lines
		}
	}
	if t.token.Kind == lang.TokenKeyword {
		return t.usage()
	}
	return nil
}

// mention returns the name at the place; nil if none is there.
func (t *teller) mention() *interp.Mention {
	for _, m := range t.plan.result().Names() {
		if t.plan.reals[m.Range.File] == t.doc.real && m.Range.Start.Offset <= t.token.Start && t.token.Start < m.Range.End.Offset {
			if _, speaks := t.one.(*lang.Speech); speaks && t.token.Start == t.one.Range().Start.Offset {
				return nil // the line is told
			}
			return &m
		}
	}
	return nil
}

// foldAt is how many characters a line of a hover has, about.
const foldAt = 76

// fold breaks a text into lines at its blanks.
func fold(text string, most int) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > most {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	if line == "" {
		return lines
	}
	return append(lines, line)
}

// statement says what the statement at the place comes to. A rack of a move is one in every
// shot that uses the move.
func (t *teller) statement() []string {
	if _, ok := t.one.(*lang.Scene); ok {
		return t.sceneSays()
	}
	if lines := t.sceneLine(); lines != nil {
		return lines
	}
	var each []string
	for _, shot := range t.shots {
		if pull := pullOf(shot, t.one); pull != nil && len(t.shots) > 1 {
			each = append(each, pullInShort(shot, pull, t.s.style(shot)))
		}
	}
	if each != nil {
		return each
	}
	for _, shot := range t.shots {
		style := t.s.style(shot)
		if pull := pullOf(shot, t.one); pull != nil {
			return pullSays(shot, pull, style)
		}
		if said, ok := t.one.(*lang.Speech); ok {
			if line := lineOfSpeech(shot, said, t.doc); line != nil {
				return []string{
					fmt.Sprintf("%s speaks from %s to %s, %s", line.Who, style.Time(float64(line.Start)), style.Time(float64(line.End)), t.source(line)),
					fmt.Sprintf("“%s”", line.Text),
				}
			}
		}
		if len(t.shots) != 1 {
			continue
		}
		if _, ok := t.one.(*lang.Shot); ok {
			return shotSays(shot)
		}
		if lines := t.staging(shot, style); lines != nil {
			return lines
		}
	}
	return nil
}

// source says where the times of a line come from.
func (t *teller) source(line *plan.Line) string {
	said, _ := t.one.(*lang.Speech)
	switch {
	case line.Estimated:
		return "estimated"
	case said != nil && (said.Lasting != nil || said.From != nil):
		return "as the plan says"
	}
	return "from the cut"
}

// name says what a name stands for.
func (t *teller) name(m interp.Mention) []string {
	switch m.Kind {
	case mention.Word:
		return t.spoken(m)
	case mention.Shot:
		for _, shot := range t.plan.result().Plan.Shots {
			if shot.ID == m.Name && t.plan.reals[shot.File] == t.plan.reals[m.Of.File] {
				return shotSays(shot)
			}
		}
	case mention.Mark:
		if lines := t.onFloor(m); lines != nil {
			return lines
		}
	case mention.Subject:
		if t.sceneAt(t.doc, t.offset) >= 0 {
			if lines := t.onFloor(m); lines != nil {
				return lines
			}
		}
		for _, shot := range t.shots {
			if u := shot.Subject(m.Name); u != nil {
				return t.subject(shot, u)
			}
		}
	case mention.Cue:
		for _, shot := range t.shots {
			for _, c := range shot.Cues {
				if c.Name == m.Name {
					return []string{fmt.Sprintf("cue %s: %s", c.Name, timeSays(shot, float64(c.T)))}
				}
			}
		}
	}
	return t.declared(m)
}
