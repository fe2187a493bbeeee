// The cuts that a plan follows: their files, and where their picture starts.

package interp

import (
	"cmp"
	"fmt"
	"path/filepath"

	"pullscore/interp/edit"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/lines"
)

// A cutFile is a file that an edit statement names.
type cutFile struct {
	*edit.Cut
	stmt *lang.Edit
	// picture is the label of the first frame of the picture, as frames; known
	// tells that something says it.
	picture int64
	known   bool
}

// base is how a message calls the file.
func (c *cutFile) base() string { return filepath.Base(filepath.FromSlash(c.stmt.File.Value)) }

// readCuts reads the files that the edit statements name.
func (p *program) readCuts() {
	seen := map[string]*lang.Edit{}
	for _, s := range p.scope.edits {
		if s.File == nil || s.File.Value == "" {
			continue
		}
		path := p.loader.beside(s.Range().File, s.File.Value)
		if old := seen[path]; old != nil {
			p.report(lang.Diagnostic{
				Code: "said-twice", Severity: lang.Error, Range: s.Range(),
				Message: fmt.Sprintf("%q is said twice", s.File.Value),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
			continue
		}
		seen[path] = s
		if c := p.readCut(s, path); c != nil {
			p.cuts = append(p.cuts, c)
		}
	}
	p.startPictures()
}

// readCut reads one file; nil where there is nothing to follow in it.
func (p *program) readCut(s *lang.Edit, path string) *cutFile {
	f := p.openForeign(s.File, path)
	if f == nil {
		return nil
	}
	cut, diags := edit.Read(f.Text, p.rate, p.wanted())
	p.passOn(s.File, f, diags)
	if cut == nil {
		return nil
	}
	c := &cutFile{Cut: cut, stmt: s}
	if s.From != nil {
		n, ok := p.want(s.From, dimTimecode)
		c.picture, c.known = int64(n), ok
	}
	if c.IsList && !c.HasStart && c.known {
		c.Move(c.picture)
	}
	return c
}

// wanted is what the plan looks for in a cut: its shots, and the words of all
// lines that they may have.
func (p *program) wanted() edit.Wanted {
	var want edit.Wanted
	var said []speech.Folded
	for _, u := range p.loader.units {
		for _, sec := range u.file.Sections {
			if head, ok := sec.Head.(*lang.Shot); ok && u == p.root {
				want.Shots = append(want.Shots, head.ID)
			}
			for _, s := range sec.Body {
				if line, ok := s.(*lang.Speech); ok {
					said = append(said, speech.Fold(p.tokens(line.Words)))
				}
			}
		}
	}
	want.Words = wording.NewVocabulary(said...)
	return want
}

// openForeign loads a text that a statement names; nil where it cannot, which
// is reported.
func (p *program) openForeign(said *lang.Text, path string) *foreign {
	if p.loader.units[path] != nil {
		p.fail(said.Range(), "wrong-kind", fmt.Sprintf("%q is a plan", said.Value), "")
		return nil
	}
	f := p.loader.foreign(path)
	if f.err != nil {
		p.fail(said.Range(), "no-such-file", fmt.Sprintf("cannot read %q", said.Value), reason(f.err))
		return nil
	}
	return f
}

// passedOn is how many faults of another's file are told one by one.
const passedOn = 20

// passOn tells what is wrong in somebody else's file, each at its place there.
func (p *program) passOn(said *lang.Text, f *foreign, diags []lang.Diagnostic) {
	all := append(f.diags[:len(f.diags):len(f.diags)], diags...)
	for _, d := range all[:min(len(all), passedOn)] {
		p.report(d)
	}
	if len(all) <= passedOn {
		return
	}
	more := len(all)
	if last := all[more-1]; last.Code == lines.MoreFaults { // stands for many
		more += int(last.Figures[0].Value) - 1
	}
	worst, _ := lang.Worst(all[passedOn:])
	p.report(lang.Diagnostic{
		Code: lines.MoreFaults, Severity: worst, Range: said.Range(),
		Message: fmt.Sprintf("%s in %q", count(more-passedOn, "more fault"), said.Value),
		Detail:  fmt.Sprintf("The first %d are told.", passedOn),
		Figures: []lang.Figure{figure("faults", float64(more))},
	})
}

// startPictures settles where the picture of each cut starts: where its
// statement says, else where the first list does.
func (p *program) startPictures() {
	var list *cutFile
	for _, c := range p.cuts {
		if c.IsList && c.HasClips {
			list = cmp.Or(list, c)
		}
	}
	if list == nil {
		return
	}
	if !list.known {
		list.picture, list.known = list.Start, true
	}
	for _, c := range p.cuts {
		if c.known {
			continue
		}
		c.picture, c.known = list.picture, true
		if !c.IsList {
			p.byDefault("edit "+c.base(), "from "+p.rate.Format(c.picture), "where "+list.base()+" starts")
		}
	}
}
