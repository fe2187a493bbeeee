// line-changed, line-moved, line-gone, line-new, speaker-changed: what a script
// page has otherwise than the plan.

package interp

import (
	"fmt"
	"strings"

	"pullscore/interp/checks"
	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/lang"
)

// tellRevision tells of one change of the page, with the pulls that hang on it.
func (p *program) tellRevision(c *revision.Change) {
	d := lang.Diagnostic{Severity: lang.Warning, Shot: c.Shot}
	page := lang.Range{}
	if c.PageLine > 0 {
		at := p.pageLine(c.Page, c.PageLine)
		page = at
		d.Related = []lang.Related{{Message: "on the page", Range: at}}
	}
	switch c.Kind {
	case revision.Changed:
		d.Code, d.Message = "line-changed", "the page has other words for this line"
		d.Detail = fmt.Sprintf("It says: “%s”.", strings.TrimRight(c.PageText, "."))
		if c.Revision != "" {
			d.Detail = fmt.Sprintf("%s revision. %s", c.Revision, d.Detail)
		}
	case revision.Moved:
		d.Code, d.Message = "line-moved", "the page has this line in another place"
	case revision.Gone:
		d.Code, d.Message = "line-gone", "the page no longer has this line"
	case revision.Speaker:
		d.Code, d.Message = "speaker-changed", fmt.Sprintf("the page gives this line to %s", c.PageWho)
	case revision.New:
		d.Code, d.Severity, d.Related, d.Range = "line-new", lang.Note, nil, page
		d.Message = fmt.Sprintf("%s has a speech here that the plan does not have", c.PageWho)
		d.Detail = fmt.Sprintf("It says: “%s”.", strings.TrimRight(c.PageText, "."))
		p.Report(d)
		return
	}
	d.Detail = strings.TrimSpace(d.Detail + " " + hanging(c.Pulls))
	s := p.shotOf(c)
	if s == nil {
		return
	}
	d.Range, d.Time = s.at[c.Line], max(float64(s.all.Lines[c.Line].Start), 0)
	p.Report(d)
	if s.built == nil {
		return
	}
	s.built.Flags = append(s.built.Flags, plan.Flag{
		Number: len(s.built.Flags) + 1, Severity: d.Severity.String(), Code: d.Code, Text: d.Message,
		Time: d.Time, Row: checks.RowOf(d.Code),
	})
	p.flagged[s.built] = append(p.flagged[s.built], len(p.To.Diags)-1)
}

// shotOf finds the shot of a change: the first of that ID that has such a line.
func (p *program) shotOf(c *revision.Change) *spoken {
	for _, s := range p.spoken {
		if lines := s.all.Lines; s.all.ID == c.Shot && c.Line < len(lines) && lines[c.Line].Text == c.Text {
			return s
		}
	}
	return nil
}

// hanging says which pulls hang on a line.
func hanging(pulls []int) string {
	switch len(pulls) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("Pull %d depends on it.", pulls[0])
	}
	list := make([]string, len(pulls))
	for i, n := range pulls {
		list[i] = fmt.Sprint(n)
	}
	last := len(list) - 1
	return fmt.Sprintf("Pulls %s and %s depend on it.", strings.Join(list[:last], ", "), list[last])
}

// pageLine is the place of a line of a page.
func (p *program) pageLine(path string, number int) lang.Range {
	f := p.loader.Texts[path]
	return f.Whole(f.Line(number))
}
