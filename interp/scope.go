// Names: what a file and the files that it uses declare, and the rules that
// keep them apart.

package interp

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/lang"
)

type declKind uint8

const (
	declSubject declKind = iota
	declVoice
	declCue
	declLet
	declMove
	declCamera
	declLens
	declPuller
)

// kindNames are the kinds as the keywords that declare them.
var kindNames = [...]string{"subject", "voice", "cue", "let", "move", "camera", "lens", "puller"}

func (k declKind) String() string { return kindNames[k] }

// A decl is one declared name.
type decl struct {
	kind    declKind
	name    *lang.Name
	stmt    lang.Statement
	section *lang.Section // of a move, camera, lens or puller
}

// space tells which names must differ from one another: all that can stand in
// a shot share one set, cameras, lenses and pullers each have their own.
func (d *decl) space() declKind {
	if d.kind < declCamera {
		return declSubject
	}
	return d.kind
}

// A scope holds the declarations of a file with those that it uses.
type scope struct {
	byName   map[scopeKey]*decl
	byFolded map[scopeKey]*decl
	order    []*decl
	settings map[string]lang.Statement // by keyword; "with" included
	edits    []*lang.Edit
	scripts  []*lang.Script
}

type scopeKey struct {
	space declKind
	name  string
}

func newScope() *scope {
	return &scope{
		byName: map[scopeKey]*decl{}, byFolded: map[scopeKey]*decl{},
		settings: map[string]lang.Statement{},
	}
}

func (s *scope) find(space declKind, name string) *decl {
	return s.byName[scopeKey{space, name}]
}

// namesOf lists the declared names of some kinds, in the order of the text.
func (s *scope) namesOf(kinds ...declKind) []string {
	var list []string
	for _, d := range s.order {
		if slices.Contains(kinds, d.kind) {
			list = append(list, d.name.Text)
		}
	}
	return list
}

func (s *scope) put(d *decl) {
	key := scopeKey{d.space(), d.name.Text}
	if old, ok := s.byName[key]; ok {
		for i, o := range s.order {
			if o == old {
				s.order[i] = d
			}
		}
	} else {
		s.order = append(s.order, d)
	}
	s.byName[key] = d
	s.byFolded[scopeKey{d.space(), fold(d.name.Text)}] = d
}

func fold(name string) string { return strings.ToLower(name) }

// A collector gathers the names of a plan's files, each file once.
type collector struct {
	*reporter
	scopes map[*unit]*scope
}

// gather builds the scope of a unit: first what it uses, then its own, which
// wins.
func (c *collector) gather(u *unit) *scope {
	if s, ok := c.scopes[u]; ok {
		return s
	}
	s := newScope()
	c.scopes[u] = s // before its uses: a circle has been reported, and ends here
	own := newScope()
	for _, stmt := range u.file.Body {
		c.declare(own, stmt, nil)
	}
	for _, sec := range u.file.Sections {
		c.declare(own, sec.Head, sec)
	}
	for _, use := range u.uses {
		c.merge(s, c.gather(use.unit), use.stmt, own)
	}
	for _, d := range own.order {
		if old, ok := s.byFolded[scopeKey{d.space(), fold(d.name.Text)}]; ok && old.name.Text != d.name.Text {
			c.clash(old, d)
		}
		s.put(d)
	}
	s.settle(own.settings)
	s.follow(own.edits, own.scripts, true)
	return s
}

// follow takes the cuts and the script pages of a file: in place of those that
// it uses where they are its own, else besides.
func (s *scope) follow(edits []*lang.Edit, scripts []*lang.Script, own bool) {
	if own && len(edits) > 0 {
		s.edits = nil
	}
	if own && len(scripts) > 0 {
		s.scripts = nil
	}
	for _, e := range edits {
		if !slices.Contains(s.edits, e) {
			s.edits = append(s.edits, e)
		}
	}
	for _, r := range scripts {
		if !slices.Contains(s.scripts, r) {
			s.scripts = append(s.scripts, r)
		}
	}
}

// settle lays a file's own settings over those that it uses: a set-up clause by
// clause, and what is watched also over how sharp was said to be.
func (s *scope) settle(own map[string]lang.Statement) {
	if own["watched"] != nil {
		delete(s.settings, "sharp")
	}
	used, _ := s.settings["with"].(*lang.With)
	for k, stmt := range own {
		s.settings[k] = stmt
	}
	if mine, ok := own["with"].(*lang.With); ok && used != nil {
		both := clauses(used, mine)
		s.settings["with"] = &both
	}
}

// merge takes the names of a used file into s. Two used files that declare one
// name differently leave the reader guessing: an error.
func (c *collector) merge(s, from *scope, use *lang.Use, own *scope) {
	for _, d := range from.order {
		old, ok := s.byFolded[scopeKey{d.space(), fold(d.name.Text)}]
		if ok && old != d && own.find(d.space(), d.name.Text) == nil {
			c.report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: use.Range(),
				Message: fmt.Sprintf("%s is declared by two of the files used", d.name.Text),
				Related: []lang.Related{{Message: "here", Range: old.name.Range()}, {Message: "and here", Range: d.name.Range()}},
			})
			continue
		}
		s.put(d)
	}
	s.settle(from.settings)
	s.follow(from.edits, from.scripts, false)
}

// declare takes one statement into a scope: a name, or a setting of the file.
func (c *collector) declare(s *scope, stmt lang.Statement, sec *lang.Section) {
	if key := settingKey(stmt); key != "" {
		c.once(s.settings, key, stmt)
		return
	}
	switch stmt := stmt.(type) {
	case *lang.Edit:
		s.edits = append(s.edits, stmt)
	case *lang.Script:
		s.scripts = append(s.scripts, stmt)
	}
	d := &decl{stmt: stmt, section: sec}
	if d.kind, d.name = declared(stmt); d.name == nil {
		return
	}
	if old, ok := s.byFolded[scopeKey{d.space(), fold(d.name.Text)}]; ok {
		c.clash(old, d)
		return
	}
	s.put(d)
}

// declared returns the name that a statement declares; nil where it declares
// none, or none that could be read.
func declared(stmt lang.Statement) (declKind, *lang.Name) {
	switch s := stmt.(type) {
	case *lang.Subject:
		return declSubject, s.Name
	case *lang.Voice:
		return declVoice, s.Name
	case *lang.Cue:
		return declCue, s.Name
	case *lang.Let:
		return declLet, s.Name
	case *lang.Move:
		return declMove, s.Name
	case *lang.Camera:
		return declCamera, s.Name
	case *lang.Lens:
		return declLens, s.Name
	case *lang.Puller:
		return declPuller, s.Name
	case *lang.Bad:
		return kindOf(s.Keyword), s.Name
	}
	return 0, nil
}

// kindOf is what a keyword declares. A line that begins with it and could not be
// read declares its name all the same, as one that nothing can be said of: the
// mistake is told there, and not at every use.
func kindOf(keyword string) declKind {
	return declKind(max(slices.Index(kindNames[:], keyword), 0))
}

// unread tells whether the statement that declares the name could not be read.
func (d *decl) unread() bool {
	_, bad := d.stmt.(*lang.Bad)
	return bad
}

// settingKey names the statements that a file or a shot says once.
func settingKey(stmt lang.Statement) string {
	switch stmt.(type) {
	case *lang.Plan:
		return "plan"
	case *lang.Rate:
		return "rate"
	case *lang.Units:
		return "units"
	case *lang.Pace:
		return "pace"
	case *lang.Watched:
		return "watched"
	case *lang.Sharp:
		return "sharp"
	case *lang.Land:
		return "land"
	case *lang.Quickest:
		return "quickest"
	case *lang.Tape:
		return "tape"
	case *lang.With:
		return "with"
	case *lang.Start:
		return "start"
	case *lang.Begins:
		return "begins"
	case *lang.Lasts:
		return "lasts"
	}
	return ""
}

// once keeps the first of a setting and reports a second.
func (r *reporter) once(settings map[string]lang.Statement, key string, stmt lang.Statement) {
	if old, ok := settings[key]; ok {
		r.report(lang.Diagnostic{
			Code: "said-twice", Severity: lang.Error, Range: stmt.Range(),
			Message: fmt.Sprintf("%q is said twice", key),
			Related: []lang.Related{{Message: "first here", Range: old.Range()}},
		})
		return
	}
	settings[key] = stmt
}

// clash reports two declarations of one name. Of a line that could not be read
// there is more to be said than that.
func (r *reporter) clash(old, d *decl) {
	if old.unread() || d.unread() {
		return
	}
	diag := lang.Diagnostic{
		Code: "duplicate-name", Severity: lang.Error, Range: d.name.Range(),
		Related: []lang.Related{{Message: "first here", Range: old.name.Range()}},
	}
	if old.name.Text == d.name.Text {
		diag.Message = fmt.Sprintf("%s is already the name of a %s", d.name.Text, old.kind)
		diag.Detail = "Subjects, voices, cues, lets and moves share one set of names."
	} else {
		diag.Message = fmt.Sprintf("%s and %s differ only in case", old.name.Text, d.name.Text)
		diag.Detail = "Call one of them something else."
	}
	r.report(diag)
}

// A reporter collects diagnostics.
type reporter struct {
	diags  []lang.Diagnostic
	caller *lang.Call // the use of a move whose statements are being read
}

func (r *reporter) report(d lang.Diagnostic) {
	if r.caller != nil {
		d.Related = append(d.Related, lang.Related{Message: "in the move used here", Range: r.caller.Range()})
	}
	r.diags = append(r.diags, d)
}

// fail reports an error at a place.
func (r *reporter) fail(at lang.Range, code, message, detail string) {
	r.report(lang.Diagnostic{Code: code, Severity: lang.Error, Range: at, Message: message, Detail: detail})
}

// unknown reports a name that nothing declares, with a near miss.
func (r *reporter) unknown(name *lang.Name, what string, among []string) {
	r.unknownAt(name.Range(), name.Text, what, among)
}

func (r *reporter) unknownAt(at lang.Range, name, what string, among []string) {
	detail := ""
	near, isNear := lang.Nearest(name, among)
	holding := slices.DeleteFunc(slices.Clone(among), func(s string) bool { return !strings.Contains(fold(s), fold(name)) })
	alike := sameNumber(name, among)
	switch {
	case len(holding) > 0 && len(holding) <= 3 && len([]rune(name)) > 1:
		detail = fmt.Sprintf("Did you mean %s?", writeNames(holding, " or "))
	case len(alike) > 0 && len(alike) <= 3:
		detail = fmt.Sprintf("Did you mean %s?", writeNames(alike, " or "))
	case isNear:
		detail = fmt.Sprintf("Did you mean %s?", lang.WriteName(near))
	case len(among) > 0 && len(among) <= 8:
		detail = "There is " + writeNames(among, ", ") + "."
	}
	r.fail(at, "unknown-name", fmt.Sprintf("%s is no %s", name, what), detail)
}

// writeNames lists names as a plan writes them.
func writeNames(names []string, between string) string {
	written := make([]string, len(names))
	for i, n := range names {
		written[i] = lang.WriteName(n)
	}
	return strings.Join(written, between)
}

// sameNumber returns the names with the number that a name has: a lens "85 mm"
// is likelier "old 85" than another that differs by fewer letters.
func sameNumber(name string, among []string) []string {
	number := numberIn(name)
	if number == "" {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(among), func(s string) bool { return numberIn(s) != number })
}

// numberIn returns the first number of a name, "" where it has none.
func numberIn(name string) string {
	parts := strings.FieldsFunc(name, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
	if len(parts) == 0 {
		return ""
	}
	return parts[0]
}
