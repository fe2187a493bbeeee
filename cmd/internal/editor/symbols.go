// What a document is made of, and where something of the workspace is.

package editor

import (
	"context"
	"slices"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// documentSymbols answers with the pieces of a document: its kit, its names, its moves and
// its shots with their lines, cues and pulls.
func documentSymbols(ctx context.Context, s *snapshot, p *lsp.DocumentParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	out := []lsp.DocumentSymbol{}
	if d.plan {
		r, err := s.shared.plans.get(ctx, s, d.path)
		if err != nil {
			return nil, err
		}
		out = outline{s, d, figuresOf(r, d.path)}.symbols()
	}
	if s.client.TextDocument.DocumentSymbol.Hierarchical {
		return out, nil
	}
	return flat(out, d.uri, "", []lsp.SymbolInformation{}), nil
}

// flat returns a tree of symbols as a list.
func flat(tree []lsp.DocumentSymbol, uri, in string, list []lsp.SymbolInformation) []lsp.SymbolInformation {
	for _, x := range tree {
		list = append(list, lsp.SymbolInformation{Name: x.Name, Kind: x.Kind, ContainerName: in, Location: lsp.Location{URI: uri, Range: x.SelectionRange}})
		list = flat(x.Children, uri, x.Name, list)
	}
	return list
}

// figuresOf returns what every pull of a plan file comes to, by its line: when, and with
// which chance.
func figuresOf(r *reading, path string) map[int]string {
	list := map[int]string{}
	for _, shot := range r.result.Plan.Shots {
		for _, p := range shot.Pulls {
			if p.File == path && list[p.Line] == "" { // of a move the first use
				list[p.Line] = pullFigures(p, float64(shot.Wanted))
			}
		}
	}
	return list
}

func pullFigures(p *plan.Pull, wanted float64) string {
	style := units.Style{}
	text := style.Fixed(float64(p.Start), 2) + " to " + style.TimeFixed(float64(p.Land))
	if chance := style.Chance(float64(p.Chance), wanted); chance != "" {
		text += ", " + chance
	}
	return text
}

// An outline makes the symbols of a document.
type outline struct {
	s       *snapshot
	d       *document
	figures map[int]string
}

func (o outline) symbols() []lsp.DocumentSymbol {
	out := []lsp.DocumentSymbol{}
	file := o.d.tree()
	for _, stmt := range file.Body {
		out = o.add(out, stmt)
	}
	for i, sec := range file.Sections {
		x, ok := o.symbol(sec.Head)
		if !ok {
			x = lsp.DocumentSymbol{Name: strings.TrimSpace(file.Line(sec.Head.Range().Start.Line)), Kind: lsp.SymbolObject}
			x.SelectionRange = o.ranged(sec.Head.Range())
		}
		end := len(file.Source)
		if i+1 < len(file.Sections) {
			end = file.Sections[i+1].Head.Range().Start.Offset
		}
		from := sec.Head.Range().Start.Offset
		to := from + len(strings.TrimRight(string(withoutComments(file.Source[from:end])), " \t\r\n"))
		x.Range = o.s.ranged(o.d, from, max(to, sec.Head.Range().End.Offset))
		if _, kit := kitKind(sec.Head); !kit {
			for _, stmt := range sec.Body {
				x.Children = o.add(x.Children, stmt)
			}
		}
		out = append(out, x)
	}
	return out
}

// withoutComments leaves the comments out that stand behind the last statement: they are
// of what comes next.
func withoutComments(text []byte) []byte {
	for {
		text = []byte(strings.TrimRight(string(text), " \t\r\n"))
		last := strings.LastIndexAny(string(text), "\r\n")
		if last < 0 || !strings.HasPrefix(strings.TrimLeft(string(text[last+1:]), " \t"), "#") {
			return text
		}
		text = text[:last]
	}
}

func (o outline) ranged(at lang.Range) lsp.Range {
	return o.s.ranged(o.d, at.Start.Offset, at.End.Offset)
}

// add adds the symbol of a statement, if it is one.
func (o outline) add(list []lsp.DocumentSymbol, stmt lang.Statement) []lsp.DocumentSymbol {
	if x, ok := o.symbol(stmt); ok {
		return append(list, x)
	}
	return list
}

// symbol returns the symbol of a statement; ok is false for one that is none.
func (o outline) symbol(stmt lang.Statement) (x lsp.DocumentSymbol, ok bool) {
	x.Range = o.ranged(stmt.Range())
	x.SelectionRange = x.Range
	if kind, name := names.Declared(stmt); name != nil {
		x.Name, x.Kind, x.Detail = name.Text, symbolKind(kind), kind.String()
		x.SelectionRange = o.ranged(name.Range())
		return x, x.Name != ""
	}
	switch stmt := stmt.(type) {
	case *lang.Shot:
		x.Name, x.Kind = stmt.ID, lsp.SymbolModule
		if stmt.Title != nil {
			x.Detail = stmt.Title.Value
		}
		if at, ok := stmt.IDRange(o.d.data); ok {
			x.SelectionRange = o.ranged(at)
		}
	case *lang.Scene:
		x.Name, x.Kind, x.Detail = "scene", lsp.SymbolNamespace, "scene"
		if stmt.Title != nil && stmt.Title.Value != "" {
			x.Name = stmt.Title.Value
			x.SelectionRange = o.ranged(stmt.Title.Range())
		}
	case *lang.Speech:
		if stmt.Who == nil || stmt.Words == nil {
			return x, false
		}
		x.Name, x.Kind = stmt.Who.Text+": "+stmt.Words.Value, lsp.SymbolString
	case *lang.Rack, *lang.Follow:
		x.Name, x.Kind, x.Detail = o.pull(stmt), lsp.SymbolEvent, o.figures[stmt.Range().Start.Line]
	}
	return x, x.Name != ""
}

// pull returns a rack or a follow up to its first clause, as it is written.
func (o outline) pull(stmt lang.Statement) string {
	at, end := stmt.Range(), lang.Range{}
	switch stmt := stmt.(type) {
	case *lang.Rack:
		if stmt.Target == nil {
			return ""
		}
		end = stmt.Target.Range()
	case *lang.Follow:
		if stmt.Who == nil {
			return ""
		}
		end = stmt.Who.Range()
	}
	return strings.Join(strings.Fields(string(o.d.data[at.Start.Offset:end.End.Offset])), " ")
}

// kitKind returns the keyword of a header of the kit.
func kitKind(head lang.Statement) (string, bool) {
	kind, _ := names.Declared(head)
	return kind.String(), kind >= names.DeclCamera
}

func symbolKind(k names.DeclKind) int {
	switch k {
	case names.DeclSubject, names.DeclVoice, names.DeclMark:
		return lsp.SymbolVariable
	case names.DeclCue:
		return lsp.SymbolEvent
	case names.DeclLet:
		return lsp.SymbolConstant
	case names.DeclMove:
		return lsp.SymbolFunction
	}
	return lsp.SymbolClass
}

// workspaceSymbols answers with the shots and names of all plans that a query may mean.
func workspaceSymbols(ctx context.Context, s *snapshot, p *lsp.WorkspaceSymbolParams) (any, error) {
	var all []lsp.SymbolInformation
	for _, path := range s.allPlans() {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		d, err := s.at(path)
		if err != nil {
			continue // it is gone
		}
		all = append(all, declaredIn(s, d)...)
	}
	return meant(all, p.Query), nil
}

// allPlans returns the paths of the plans of the workspace and of those that are open.
func (s *snapshot) allPlans() []string {
	list, seen := []string{}, map[string]bool{}
	for _, path := range s.shared.workspace.list(s) {
		list, seen[s.shared.disk.realPath(path)] = append(list, path), true
	}
	for _, uri := range sortedKeys(s.open) {
		if d := s.open[uri]; d.plan && !d.lost && !seen[d.real] {
			list = append(list, d.path)
		}
	}
	return list
}

// declaredIn returns the shots and the names of a file, without those of single shots.
func declaredIn(s *snapshot, d *document) []lsp.SymbolInformation {
	o := outline{s: s, d: d}
	var tree []lsp.DocumentSymbol
	file := d.tree()
	for _, stmt := range file.Body {
		tree = o.add(tree, stmt)
	}
	for _, sec := range file.Sections {
		tree = o.add(tree, sec.Head)
	}
	return flat(tree, d.uri, d.title(), nil)
}

// title returns what a plan calls itself, else the name of its file.
func (d *document) title() string {
	for _, stmt := range d.tree().Body {
		if p, ok := stmt.(*lang.Plan); ok && p.Title != nil && p.Title.Value != "" {
			return p.Title.Value
		}
	}
	return d.path[strings.LastIndexAny(d.path, `/\`)+1:]
}

// meant returns the symbols whose names hold a query, whatever its case; if there are none,
// those with the name that is written nearly so.
func meant(all []lsp.SymbolInformation, query string) []lsp.SymbolInformation {
	out := []lsp.SymbolInformation{}
	var called []string
	for _, x := range all {
		if strings.Contains(strings.ToLower(x.Name), strings.ToLower(query)) {
			out = append(out, x)
		}
		called = append(called, x.Name)
	}
	if near, ok := lang.Nearest(query, called); ok && len(out) == 0 {
		out = slices.DeleteFunc(slices.Clone(all), func(x lsp.SymbolInformation) bool { return x.Name != near })
	}
	return out
}
