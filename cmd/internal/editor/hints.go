// What stands behind a statement and is no part of it: the times and chances that it comes
// to, where the plan does not say them itself.

package editor

import (
	"context"
	"fmt"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// inlayHints answers with the hints of a part of a document.
func inlayHints(ctx context.Context, s *snapshot, p *lsp.RangeParams) (any, error) {
	list := []lsp.InlayHint{}
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	if !d.plan || s.Hints == "none" {
		return list, nil
	}
	read, err := s.plan(ctx, d.uri)
	if err != nil {
		return nil, err
	}
	from, to := s.offset(d, p.Range.Start), s.offset(d, p.Range.End)
	for _, section := range d.tree().Sections {
		if _, ok := section.Head.(*lang.Shot); !ok || spanOf(rangeOf(section)).end < from || section.Head.Range().Start.Offset > to {
			continue
		}
		shots := read.headed(d, section.Head.Range())
		if len(shots) != 1 {
			continue // it could not be built
		}
		for _, one := range section.Body {
			if end := one.Range().End.Offset; from <= end && end <= to {
				list = append(list, s.hint(d, shots[0], one)...)
			}
		}
	}
	return list, nil
}

// hint returns the hint behind a statement, if it has one.
func (s *snapshot) hint(d *document, shot *plan.Shot, one lang.Statement) []lsp.InlayHint {
	h := lsp.InlayHint{PaddingLeft: true}
	end := one.Range().End.Offset
	h.Position = d.index().position(end, s.encoding)
	pull := pullOf(shot, one)
	said, speaks := one.(*lang.Speech)
	switch {
	case pull != nil:
		h.Label, h.Tooltip = pullHint(shot, pull)
		if pull.Untimed && pull.Kind == "rack" {
			over := figures.Time(float64(pull.Land - pull.Start))
			h.Label += ", over " + over
			h.TextEdits = []lsp.TextEdit{{Range: lsp.Range{Start: h.Position, End: h.Position}, NewText: ", over " + over}}
		}
	case s.Hints != "all":
		return nil
	case speaks && said.Lasting == nil && said.From == nil:
		line := lineOfSpeech(shot, said, d)
		if line == nil {
			return nil
		}
		from := "from the cut"
		if line.Estimated {
			from = "est."
		}
		h.Label = fmt.Sprintf("%s to %s %s", bare(float64(line.Start)), figures.Time(float64(line.End)), from)
	default:
		if h.Label = whenHint(shot, one); h.Label == "" {
			return nil
		}
	}
	return []lsp.InlayHint{h}
}

// pullHint returns the hint of a pull and what explains it.
func pullHint(s *plan.Shot, p *plan.Pull) (string, *lsp.MarkupContent) {
	label := bare(float64(p.Start)) + " to " + figures.Time(float64(p.Land))
	if chance := moments.Chance(s, p, figures); chance != "" {
		label += ", " + chance
	}
	text := "The chance is that of the landing model, which nobody has measured on a set" + estimates(s) + "."
	return label, &lsp.MarkupContent{Kind: lsp.PlainText, Value: text}
}

// bare returns a time without its unit.
func bare(t float64) string { return figures.Number(t, 2) }

// whenHint says when a cue or an action is that has no time of its own in the plan, and
// where a camera looks that has a place; "" for other statements.
func whenHint(s *plan.Shot, one lang.Statement) string {
	switch one := one.(type) {
	case *lang.CameraAt:
		if s.Staging != nil && s.Placed {
			looks := s.Stands(0)
			return "pan " + moments.Heading("pan", plan.Wrapped(looks.Pan), figures) + ", tilt " + moments.Heading("tilt", looks.Tilt, figures)
		}
	case *lang.Turn:
		if s.Staging != nil && s.Placed {
			return turnHint(s, one)
		}
	case *lang.Cue:
		for _, c := range s.Cues {
			if c.Name == one.Name.Text {
				return figures.Time(float64(c.T))
			}
		}
	case *lang.Action:
		for _, a := range s.Actions {
			if a.Text == one.What.Value {
				return bare(float64(a.Start)) + " to " + figures.Time(float64(a.End))
			}
		}
	}
	return ""
}

// turnHint says where the camera looks behind a turn that the shot has once.
func turnHint(s *plan.Shot, one *lang.Turn) string {
	kind, target := "tilt", ""
	if one.Pan {
		kind = "pan"
	}
	for _, n := range []*lang.Name{one.To, one.With} {
		if n != nil {
			target = n.Text
		}
	}
	var found *plan.Turn
	for i := range s.Turns {
		t := &s.Turns[i]
		if t.Kind != kind || t.Target != target {
			continue
		}
		if found != nil {
			return ""
		}
		found = t
	}
	if found == nil {
		return ""
	}
	looks := s.Stands(float64(found.End))
	text := bare(float64(found.Start)) + " to " + figures.Time(float64(found.End)) + ", then pan " + moments.Heading("pan", plan.Wrapped(looks.Pan), figures)
	if one.Tilt {
		text += ", tilt " + moments.Heading("tilt", looks.Tilt, figures)
	}
	return text
}
