// The cuts that a plan follows: their files, and where their picture starts.

package interp

import (
	"cmp"
	"fmt"

	"pullscore/interp/cut"
	"pullscore/interp/edit"
	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/interp/units"
	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/lines"
)

// readCuts reads the files that the edit statements name.
func (p *program) readCuts() {
	seen := map[string]*lang.Edit{}
	for _, s := range p.Scope.Edits {
		if !p.namesFile(s.File) {
			continue
		}
		path := p.loader.Beside(s.Range().File, s.File.Value)
		if old := seen[path]; old != nil {
			p.Report(lang.Diagnostic{
				Code: "said-twice", Severity: lang.Error, Range: s.Range(),
				Message: fmt.Sprintf("%q is said twice", s.File.Value),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
			continue
		}
		seen[path] = s
		if c := p.readCut(s, path); c != nil {
			p.Cuts = append(p.Cuts, c)
		}
	}
	p.startPictures()
}

// readCut reads one file; nil where there is nothing to follow in it.
func (p *program) readCut(s *lang.Edit, path string) *cut.File {
	f := p.openForeign(s.File, path)
	if f == nil {
		return nil
	}
	read, diags := edit.Read(f.Text, p.Rate, p.wanted())
	p.passOn(s.File, f, diags)
	if read == nil {
		return nil
	}
	c := &cut.File{Cut: read, Stmt: s}
	if s.From != nil {
		n, ok := p.Want(s.From, names.DimTimecode)
		c.Picture, c.Known = int64(n), ok
	}
	if c.IsList && !c.HasStart && c.Known {
		c.Move(c.Picture)
	}
	return c
}

// wanted is what the plan looks for in a cut: its shots, and the words of all
// lines that they may have.
func (p *program) wanted() edit.Wanted {
	var want edit.Wanted
	var said []speech.Folded
	for _, u := range p.loader.Units {
		for _, sec := range u.File.Sections {
			if head, ok := sec.Head.(*lang.Shot); ok && u == p.root {
				want.Shots = append(want.Shots, head.ID)
			}
			for _, s := range sec.Body {
				if line, ok := s.(*lang.Speech); ok {
					said = append(said, speech.Fold(p.Tokens(line.Words)))
				}
			}
		}
	}
	want.Words = wording.NewVocabulary(said...)
	return want
}

// namesFile reports whether a statement names a file; a text without a letter is
// told.
func (p *program) namesFile(said *lang.Text) bool {
	if said != nil && said.Value == "" {
		p.Fail(said.Range(), "no-such-file", "no file is named here", "Write its name between the quotes, relative to this file.")
	}
	return said != nil && said.Value != ""
}

// openForeign loads a text that a statement names; nil where it cannot, which
// is reported.
func (p *program) openForeign(said *lang.Text, path string) *load.Foreign {
	if p.loader.Units[path] != nil {
		p.Fail(said.Range(), "wrong-kind", fmt.Sprintf("%q is a plan", said.Value), "")
		return nil
	}
	f := p.loader.Foreign(path)
	if f.Err != nil {
		p.Fail(said.Range(), "no-such-file", fmt.Sprintf("cannot read %q", said.Value), names.Reason(path, f.Err))
		return nil
	}
	return f
}

// passedOn is how many faults of another's file are told one by one.
const passedOn = 20

// passOn tells what is wrong in somebody else's file, each at its place there.
func (p *program) passOn(said *lang.Text, f *load.Foreign, diags []lang.Diagnostic) {
	all := append(f.Diags[:len(f.Diags):len(f.Diags)], diags...)
	for _, d := range all[:min(len(all), passedOn)] {
		p.Report(d)
	}
	if len(all) <= passedOn {
		return
	}
	more := len(all)
	if last := all[more-1]; last.Code == lines.MoreFaults { // stands for many
		more += int(last.Figures[0].Value) - 1
	}
	worst, _ := lang.Worst(all[passedOn:])
	p.Report(lang.Diagnostic{
		Code: lines.MoreFaults, Severity: worst, Range: said.Range(),
		Message: fmt.Sprintf("%s in %q", units.Count(more-passedOn, "more fault"), said.Value),
		Detail:  fmt.Sprintf("The first %d are told.", passedOn),
		Figures: []lang.Figure{{Name: "faults", Value: float64(more)}},
	})
}

// startPictures settles where the picture of each cut starts: where its
// statement says, else where the first list does.
func (p *program) startPictures() {
	var list *cut.File
	for _, c := range p.Cuts {
		if c.IsList && c.HasClips {
			list = cmp.Or(list, c)
		}
	}
	if list == nil {
		return
	}
	if !list.Known {
		list.Picture, list.Known = list.Start, true
	}
	for _, c := range p.Cuts {
		if c.Known {
			continue
		}
		c.Picture, c.Known = list.Picture, true
		if !c.IsList {
			p.ByDefault("edit "+c.Base(), "from "+p.Rate.Format(c.Picture), "where "+list.Base()+" starts")
		}
	}
}
