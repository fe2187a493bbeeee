// The script pages that a plan's lines come from.

package interp

import (
	"fmt"

	"pullscore/interp/revision"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// compareScript compares the lines of the plan with the page: that of the
// options, else those that its script statements name.
func (p *program) compareScript() {
	var speeches []revision.Speech
	pages := 0
	if s := p.loader.opt.Script; s != nil {
		text, diags := lines.Decode(s.Path, s.Text)
		text.Progress = p.loader.opt.Progress
		page := p.readScript(text, diags)
		p.loader.texts[s.Path] = &foreign{Text: text}
		speeches, pages = revision.Speeches(page, s.Path, s.Scene), 1
	} else {
		for _, s := range p.scope.scripts {
			if more, ok := p.scriptOf(s); ok {
				speeches = append(speeches, more...)
				pages++
			}
		}
	}
	if pages == 0 {
		return
	}
	p.revision = revision.Compare(p.plan, speeches)
	if p.revision == nil {
		p.revision = []revision.Change{}
	}
	for i := range p.revision {
		p.tellRevision(&p.revision[i])
	}
}

// scriptOf reads the page that a statement names.
func (p *program) scriptOf(s *lang.Script) ([]revision.Speech, bool) {
	if s.File == nil || s.File.Value == "" {
		return nil, false
	}
	f := p.openForeign(s.File, p.loader.beside(s.Range().File, s.File.Value))
	if f == nil {
		return nil, false
	}
	page := p.readScript(f.Text, f.diags)
	number := ""
	if s.Scene != nil {
		number = s.Scene.Value
		if !revision.HasScene(page, number) {
			p.fail(s.Scene.Range(), "no-scene", fmt.Sprintf("%q has no scene %s", s.File.Value, number),
				"A scene's number stands between two # at the end of its heading.")
			return nil, false
		}
	}
	return revision.Speeches(page, f.Name, number), true
}

func (p *program) readScript(text *lines.Text, faults []lang.Diagnostic) *fountain.Script {
	page, diags := fountain.Read(text)
	for _, d := range append(faults[:len(faults):len(faults)], diags...) {
		p.report(d)
	}
	return page
}
