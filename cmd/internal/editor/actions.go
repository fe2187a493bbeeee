// What can be done about a part of a document: fixes of mistakes, cures of findings, and
// what the plan leaves open written out.

package editor

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// fixAll is the kind of action that mends everything that is nearly right.
const fixAll = lsp.SourceFixAll + ".pullscore"

// actionKinds are the kinds of actions there are.
var actionKinds = []string{lsp.QuickFix, fixAll, lsp.RefactorRewrite, lsp.RefactorExtract}

func offerActions(_ *snapshot, c *lsp.ServerCapabilities) {
	c.CodeActionProvider = &lsp.CodeActionOptions{CodeActionKinds: actionKinds}
}

// An actor gathers the actions of a part of a document.
type actor struct {
	s      *snapshot
	plan   *planned
	within span
	only   []string
	list   []lsp.CodeAction
}

// codeActions answers with what can be done about a part of a document.
func codeActions(ctx context.Context, s *snapshot, p *lsp.CodeActionParams) (any, error) {
	a := &actor{s: s, only: p.Context.Only, list: []lsp.CodeAction{}}
	d, err := s.document(p.TextDocument.URI)
	if err != nil || !d.plan {
		return a.list, err
	}
	if a.plan, err = s.plan(ctx, d.uri); err != nil {
		return nil, err
	}
	a.within = span{s.offset(d, p.Range.Start), s.offset(d, p.Range.End)}
	if a.wants(lsp.QuickFix) {
		a.fixes()
	}
	if a.wants(fixAll) {
		a.all()
	}
	if a.wants(lsp.RefactorRewrite) {
		a.rewrites()
	}
	if a.wants(lsp.RefactorExtract) {
		a.extract()
	}
	return a.list, nil
}

// wants reports whether the client asks for a kind of action: for all, for that kind, or for
// one that it belongs to. It has to name what is not about a place.
func (a *actor) wants(kind string) bool {
	if len(a.only) == 0 {
		return kind != fixAll
	}
	return slices.ContainsFunc(a.only, func(only string) bool {
		return only == kind || strings.HasPrefix(kind, only+".")
	})
}

// touches reports whether a finding is in the part that is meant.
func (a *actor) touches(d lang.Diagnostic) bool {
	return d.Range.Start.Offset <= a.within.end && a.within.start <= d.Range.End.Offset
}

// fixes adds the fixes and the cures of the findings in the part.
func (a *actor) fixes() {
	for _, d := range a.plan.findings[a.plan.document.real] {
		if !a.touches(d) {
			continue
		}
		said := a.s.diagnostic(a.plan.reading, d)
		for i, f := range d.Fixes {
			a.add(lsp.CodeAction{Title: f.Title, Kind: lsp.QuickFix, Diagnostics: []lsp.Diagnostic{said}, IsPreferred: i == 0}, f.Edits)
		}
		for _, c := range d.Cures {
			if !a.alone(c.Edits) {
				continue
			}
			a.add(lsp.CodeAction{Title: a.cureTitle(d, c), Kind: lsp.QuickFix, Diagnostics: []lsp.Diagnostic{said}}, c.Edits)
		}
	}
}

// alone reports whether no other plan uses the files that edits change: a cure of this plan
// may spoil another.
func (a *actor) alone(edits []lang.Edit) bool {
	own := a.plan.document.real
	for _, e := range edits {
		real := a.plan.reals[e.Range.File]
		if real == own {
			continue
		}
		for _, path := range a.s.users(a.s.uri(e.Range.File)) {
			if a.s.shared.disk.realPath(path) != own {
				return false
			}
		}
	}
	return true
}

// cureTitle names a cure, and the shot where the line of a move stands for several.
func (a *actor) cureTitle(d lang.Diagnostic, c lang.Cure) string {
	title := "Cure: " + c.Says()
	if d.Shot != "" && len(a.plan.shotsOf(a.plan.document, d.Range.Start.Offset)) > 1 {
		title += " in shot " + d.Shot
	}
	return title
}

// all adds the one action that mends everything in the document that was nearly right. It
// guesses no names, and cures nothing: what a plan says stays with its writer.
func (a *actor) all() {
	var edits []lang.Edit
	for _, d := range a.plan.findings[a.plan.document.real] {
		if len(d.Fixes) == 0 || strings.HasPrefix(d.Code, "unknown-") {
			continue
		}
		if first := d.Fixes[0].Edits; !slices.ContainsFunc(first, func(e lang.Edit) bool { return overlaps(edits, e) }) {
			edits = append(edits, first...)
		}
	}
	a.add(lsp.CodeAction{Title: "Mend all that is nearly right", Kind: fixAll}, edits)
}

// overlaps reports whether an edit touches the place of another.
func overlaps(edits []lang.Edit, e lang.Edit) bool {
	return slices.ContainsFunc(edits, func(other lang.Edit) bool {
		return other.Range.File == e.Range.File && other.Range.Start.Offset <= e.Range.End.Offset && e.Range.Start.Offset <= other.Range.End.Offset
	})
}

// rewrites adds what writes out the times that the plan leaves to Pullscore.
func (a *actor) rewrites() {
	d := a.plan.document
	var lines, racks []lang.Edit
	for _, section := range d.tree().Sections {
		whole := spanOf(rangeOf(section))
		if _, ok := section.Head.(*lang.Shot); !ok || whole.end < a.within.start || a.within.end < whole.start {
			continue
		}
		for _, shot := range a.plan.headed(d, section.Head.Range()) {
			for _, one := range section.Body {
				if at := spanOf(one.Range()); at.end < a.within.start || a.within.end < at.start {
					continue
				}
				if said, ok := one.(*lang.Speech); ok {
					if line := lineOfSpeech(shot, said, d); line != nil && line.Estimated {
						lines = amended(lines, d, one, "lasting", float64(line.End-line.Start))
					}
				}
				if pull := pullOf(shot, one); pull != nil && pull.Untimed && pull.Kind == "rack" {
					racks = amended(racks, d, one, "over", float64(pull.Land-pull.Start))
				}
			}
		}
	}
	a.add(lsp.CodeAction{Title: "Write the times that are estimated", Kind: lsp.RefactorRewrite}, lines)
	title := "Write the time that the rack takes"
	if len(racks) > 1 {
		title = "Write the times that the racks take"
	}
	a.add(lsp.CodeAction{Title: title, Kind: lsp.RefactorRewrite}, racks)
}

// amended adds the edit that writes a clause with a time.
func amended(list []lang.Edit, d *document, one lang.Statement, clause string, seconds float64) []lang.Edit {
	if e, ok := lang.Amend(d.tree(), one, clause, clause+" "+figures.Time(seconds)); ok {
		return append(list, e)
	}
	return list
}

// add adds an action that makes edits; none where there is nothing to edit.
func (a *actor) add(action lsp.CodeAction, edits []lang.Edit) {
	if len(edits) == 0 {
		return
	}
	by, paths := map[string][]lang.Edit{}, map[string]string{}
	for _, e := range edits {
		paths[e.Range.File] = e.Range.File
		by[e.Range.File] = append(by[e.Range.File], e)
	}
	for _, list := range by {
		sortStable(list, func(x, y lang.Edit) int { return x.Range.Start.Offset - y.Range.Start.Offset })
	}
	change := a.s.workspaceEdit(paths, by)
	action.Edit = &change
	a.list = append(a.list, action)
}

// extract adds what makes a move of the chosen statements of a shot, and calls it in their
// place. It is offered where the plan then comes to the same.
func (a *actor) extract() {
	d := a.plan.document
	for _, section := range d.tree().Sections {
		if _, ok := section.Head.(*lang.Shot); !ok {
			continue
		}
		var chosen []lang.Statement
		for _, one := range section.Body {
			if at := spanOf(one.Range()); a.within.start < a.within.end && at.start < a.within.end && a.within.start < at.end {
				chosen = append(chosen, one)
			}
		}
		if len(chosen) == 0 {
			continue
		}
		if at := spanOf(chosen[0].Range()); len(chosen) == 1 && (a.within.start > at.start || a.within.end < at.end) {
			return // a word of a line is meant
		}
		edits := a.asMove(section, chosen)
		if a.same(edits) {
			a.add(lsp.CodeAction{Title: "Make a move of it", Kind: lsp.RefactorExtract}, edits)
		}
		return
	}
}

// asMove returns the edits that write statements as a move above their shot.
func (a *actor) asMove(section *lang.Section, chosen []lang.Statement) []lang.Edit {
	d := a.plan.document
	first, last := chosen[0].Range(), chosen[len(chosen)-1].Range()
	name := "passage"
	for n := 2; strings.Contains(string(d.data), name+"("); n++ {
		name = fmt.Sprintf("passage%d", n)
	}
	lineStart := strings.LastIndexByte(string(d.data[:first.Start.Offset]), '\n') + 1
	indent := string(d.data[lineStart:first.Start.Offset])
	end := "\n"
	if strings.Contains(string(d.data), "\r\n") {
		end = "\r\n"
	}
	body := indent + string(d.data[first.Start.Offset:last.End.Offset])
	head := section.Head.Range()
	head.End = head.Start
	body = "move " + name + "()" + end + body + end + end
	call := first
	call.End = last.End
	return []lang.Edit{{Range: head, Text: body}, {Range: call, Text: name + "()"}}
}

// same reports whether the plan comes to the same after edits of its own text: the same
// pulls at the same times, and no other findings.
func (a *actor) same(edits []lang.Edit) bool {
	changed, ok := a.plan.document.with(edits)
	if !ok {
		return false
	}
	after := a.s.with(changed).read(changed.path).result
	before := a.plan.result()
	if len(after.Findings) != len(before.Findings) || len(after.Plan.Shots) != len(before.Plan.Shots) {
		return false
	}
	for i, shot := range before.Plan.Shots {
		other := after.Plan.Shots[i]
		if len(other.Pulls) != len(shot.Pulls) || len(other.Lines) != len(shot.Lines) || other.Duration != shot.Duration {
			return false
		}
		for j, p := range shot.Pulls {
			if q := other.Pulls[j]; q.Start != p.Start || q.Land != p.Land || q.Target != p.Target {
				return false
			}
		}
	}
	return true
}
