// Names: what a file and the files that it uses declare, and the rules that
// keep them apart.

package names

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pullscore/lang"
)

// A DeclKind is a kind of thing that has a name.
type DeclKind uint8

const (
	DeclSubject DeclKind = iota
	DeclVoice
	DeclCue
	DeclLet
	DeclMove
	DeclMark
	DeclCamera
	DeclLens
	DeclPuller
)

// kindNames are the kinds as the keywords that declare them.
var kindNames = [...]string{"subject", "voice", "cue", "let", "move", "mark", "camera", "lens", "puller"}

// String returns the keyword that declares such a thing.
func (k DeclKind) String() string { return kindNames[k] }

// A Decl is one declared name.
type Decl struct {
	Kind    DeclKind
	Name    *lang.Name
	Stmt    lang.Statement
	Section *lang.Section // of a move, camera, lens or puller
}

// Space tells which names must differ from one another: all that can stand in
// a shot share one set, cameras, lenses and pullers each have their own.
func (d *Decl) Space() DeclKind {
	if d.Kind < DeclCamera {
		return DeclSubject
	}
	return d.Kind
}

// A Scope holds the declarations of a file with those that it uses.
type Scope struct {
	byName   map[ScopeKey]*Decl
	ByFolded map[ScopeKey]*Decl
	Order    []*Decl
	Settings map[string]lang.Statement // by keyword; "with" included
	Edits    []*lang.CutFile
	Scripts  []*lang.Script
	Clips    []*lang.Clips
	Torn     Torn   // of the same
	Lost     Losses // of the file's own lines and headers, and of those that it uses

	Record *Record // of what texts stand for; nil where nobody asks
}

// A ScopeKey is a name among those that it must differ from.
type ScopeKey struct {
	Space DeclKind
	Name  string
}

func newScope() *Scope {
	return &Scope{
		byName: map[ScopeKey]*Decl{}, ByFolded: map[ScopeKey]*Decl{},
		Settings: map[string]lang.Statement{}, Torn: Torn{}, Lost: Losses{},
	}
}

// Find returns what a name stands for; nil where nothing declares it.
func (s *Scope) Find(space DeclKind, name string) *Decl {
	return s.byName[ScopeKey{space, name}]
}

// NamesOf lists the declared names of some kinds, in the order of the text.
func (s *Scope) NamesOf(kinds ...DeclKind) []string {
	var list []string
	for _, d := range s.Order {
		if slices.Contains(kinds, d.Kind) {
			list = append(list, d.Name.Text)
		}
	}
	return list
}

// Put takes a declaration in, in place of one of the same name.
func (s *Scope) Put(d *Decl) {
	key := ScopeKey{d.Space(), d.Name.Text}
	if old, ok := s.byName[key]; ok {
		for i, o := range s.Order {
			if o == old {
				s.Order[i] = d
			}
		}
	} else {
		s.Order = append(s.Order, d)
	}
	s.byName[key] = d
	s.ByFolded[ScopeKey{d.Space(), Fold(d.Name.Text)}] = d
}

// Fold returns a name as it is compared where case does not count.
func Fold(name string) string { return strings.ToLower(name) }

// A Collector gathers the names of a plan's files, each file once.
type Collector struct {
	Reporter
	Scopes map[*Unit]*Scope
}

// Gather builds the scope of a unit: first what it uses, then its own, which
// wins.
func (c *Collector) Gather(u *Unit) *Scope {
	if s, ok := c.Scopes[u]; ok {
		return s
	}
	s := newScope()
	c.Scopes[u] = s // before its uses: a circle has been reported, and ends here
	own := newScope()
	own.Torn = u.Torn
	for _, stmt := range u.File.Body {
		c.declare(own, stmt, nil)
	}
	for _, sec := range u.File.Sections {
		c.declare(own, sec.Head, sec)
	}
	for _, use := range u.Uses {
		c.merge(s, c.Gather(use.Unit), use.Stmt, own)
	}
	for _, d := range own.Order {
		if old, ok := s.ByFolded[ScopeKey{d.Space(), Fold(d.Name.Text)}]; ok && old.Name.Text != d.Name.Text {
			c.Clash(old, d)
		}
		s.Put(d)
	}
	maps.Copy(s.Torn, own.Torn)
	s.settle(own.Settings)
	s.follow(own, true)
	maps.Copy(s.Lost, own.Lost)
	return s
}

// follow takes the cuts, the script pages and the lists of clips of a file: in place
// of those of the files that it uses where they are its own, else besides.
func (s *Scope) follow(from *Scope, own bool) {
	follow(&s.Edits, from.Edits, own)
	follow(&s.Scripts, from.Scripts, own)
	follow(&s.Clips, from.Clips, own)
}

func follow[T comparable](all *[]T, more []T, own bool) {
	if own && len(more) > 0 {
		*all = nil
	}
	for _, stmt := range more {
		if !slices.Contains(*all, stmt) {
			*all = append(*all, stmt)
		}
	}
}

// settle lays a file's own settings over those that it uses: a set-up clause by
// clause, and what is watched also over how sharp was said to be.
func (s *Scope) settle(own map[string]lang.Statement) {
	if own["watched"] != nil {
		delete(s.Settings, "sharp")
	}
	used, _ := s.Settings["with"].(*lang.With)
	for k, stmt := range own {
		s.Settings[k] = stmt
	}
	if mine, ok := own["with"].(*lang.With); ok && used != nil {
		both := Clauses(used, mine)
		if lost := slices.Concat(s.Torn[used], s.Torn[mine]); len(lost) > 0 {
			s.Torn[&both] = lost
		}
		s.Settings["with"] = &both
	}
}

// merge takes the names of a used file into s. Two used files that declare one
// name differently leave the reader guessing: an error.
func (c *Collector) merge(s, from *Scope, use *lang.Use, own *Scope) {
	for _, d := range from.Order {
		old, ok := s.ByFolded[ScopeKey{d.Space(), Fold(d.Name.Text)}]
		if ok && old != d && own.Find(d.Space(), d.Name.Text) == nil {
			c.Report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: use.Range(),
				Message: fmt.Sprintf("%s is declared by two of the files used", d.Name.Text),
				Related: []lang.Related{{Message: "here", Range: old.Name.Range()}, {Message: "and here", Range: d.Name.Range()}},
			})
			continue
		}
		s.Put(d)
	}
	maps.Copy(s.Torn, from.Torn)
	s.settle(from.Settings)
	s.follow(from, false)
	maps.Copy(s.Lost, from.Lost)
}

// declare takes one statement into a scope: a name, or a setting of the file.
func (c *Collector) declare(s *Scope, stmt lang.Statement, sec *lang.Section) {
	if key := SettingKey(stmt); key != "" {
		c.Once(s.Settings, key, stmt, false)
		return
	}
	switch stmt := stmt.(type) {
	case *lang.CutFile:
		s.Edits = append(s.Edits, stmt)
	case *lang.Script:
		s.Scripts = append(s.Scripts, stmt)
	case *lang.Clips:
		s.Clips = append(s.Clips, stmt)
	}
	s.Lost.note(stmt)
	d := &Decl{Stmt: stmt, Section: sec}
	if d.Kind, d.Name = Declared(stmt); d.Name == nil {
		return
	}
	if old, ok := s.ByFolded[ScopeKey{d.Space(), Fold(d.Name.Text)}]; ok {
		c.Clash(old, d)
		return
	}
	s.Put(d)
}

// Declared returns the name that a statement declares; nil where it declares
// none, or none that could be read.
func Declared(stmt lang.Statement) (DeclKind, *lang.Name) {
	switch s := stmt.(type) {
	case *lang.Subject:
		return DeclSubject, s.Name
	case *lang.Actor:
		return DeclSubject, s.Name
	case *lang.FloorMark:
		return DeclMark, s.Name
	case *lang.Voice:
		return DeclVoice, s.Name
	case *lang.Cue:
		return DeclCue, s.Name
	case *lang.Let:
		return DeclLet, s.Name
	case *lang.Move:
		return DeclMove, s.Name
	case *lang.Camera:
		return DeclCamera, s.Name
	case *lang.Lens:
		return DeclLens, s.Name
	case *lang.Puller:
		return DeclPuller, s.Name
	case *lang.Bad:
		return kindOf(s.Keyword), s.Name
	}
	return 0, nil
}

// kindOf is what a keyword declares. A line that begins with it and could not be
// read declares its name all the same, as one that nothing can be said of: the
// mistake is told there, and not at every use.
func kindOf(keyword string) DeclKind {
	return DeclKind(max(slices.Index(kindNames[:], keyword), 0))
}

// Unread tells whether the statement that declares the name could not be read.
func (d *Decl) Unread() bool {
	_, bad := d.Stmt.(*lang.Bad)
	return bad
}

// SettingKey names the statements that a file or a shot says once.
func SettingKey(stmt lang.Statement) string {
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
	case *lang.Crop:
		return "crop"
	case *lang.Origin:
		return "origin"
	case *lang.Covers:
		return "covers"
	case *lang.PlacesAs:
		return "places"
	case *lang.RunsWith:
		return "runs"
	case *lang.Matches:
		return "matches"
	case *lang.CameraAt:
		return "camera"
	}
	return ""
}

// Once keeps the first of a setting and reports a second, unless that is quiet. ok
// is false for a second.
func (r Reporter) Once(settings map[string]lang.Statement, key string, stmt lang.Statement, quiet bool) (ok bool) {
	old, twice := settings[key]
	switch {
	case !twice:
		settings[key] = stmt
	case !quiet:
		r.Report(lang.Diagnostic{
			Code: "said-twice", Severity: lang.Error, Range: stmt.Range(),
			Message: fmt.Sprintf("%q is said twice", key),
			Related: []lang.Related{{Message: "first here", Range: old.Range()}},
		})
	}
	return !twice
}

// Clash reports two declarations of one name. Of a line that could not be read
// there is more to be said than that.
func (r Reporter) Clash(old, d *Decl) {
	if old.Unread() || d.Unread() {
		return
	}
	diag := lang.Diagnostic{
		Code: "duplicate-name", Severity: lang.Error, Range: d.Name.Range(),
		Related: []lang.Related{{Message: "first here", Range: old.Name.Range()}},
	}
	if old.Name.Text == d.Name.Text {
		diag.Message = fmt.Sprintf("%s is already the name of a %s", d.Name.Text, old.Kind)
		diag.Detail = "Subjects, voices, cues, lets and moves share one set of names."
	} else {
		diag.Message = fmt.Sprintf("%s and %s differ only in case", old.Name.Text, d.Name.Text)
		diag.Detail = "Call one of them something else."
	}
	r.Report(diag)
}

// A Report is what has been told, given down by whoever reads it in the end.
type Report struct {
	Diags []lang.Diagnostic
	Lost  Losses // what could not be read, and is not missed
}

// A Reporter tells what is wrong at one place of the text.
type Reporter struct {
	To   *Report
	Call *lang.Call // the statement of a shot that uses the move which that stands in; nil for none
}

// Report tells a diagnostic, with the use of the move that it stands in.
func (r Reporter) Report(d lang.Diagnostic) {
	if r.Call != nil {
		d.Related = append(d.Related, lang.Related{Message: "in the move used here", Range: r.Call.Range()})
	}
	r.To.Diags = append(r.To.Diags, d)
}

// Fail reports an error at a place.
func (r Reporter) Fail(at lang.Range, code, message, detail string) {
	r.Report(lang.Diagnostic{Code: code, Severity: lang.Error, Range: at, Message: message, Detail: detail})
}

// Unknown reports a name that nothing declares, with a near miss.
func (r Reporter) Unknown(name *lang.Name, kind DeclKind, among []string) {
	r.UnknownAt(name.Range(), name.Text, kind.String(), kind, among)
}

// UnknownAt reports a name at a place that nothing declares.
func (r Reporter) UnknownAt(at lang.Range, name, what string, kind DeclKind, among []string) {
	r.unknown(at, name, what, kind, didYouMean(name, among))
}

// UnknownShot reports the ID of a shot at a place that no shot has, with a near miss.
func (r Reporter) UnknownShot(at lang.Range, id string, among []string) {
	meant := didYouMean(id, among)
	d := lang.Diagnostic{
		Code: "unknown-shot", Severity: lang.Error, Range: at, Message: "no shot is called " + id,
		Detail: strings.ReplaceAll(meant.detail, `"`, ""), // IDs stand without
	}
	for _, n := range meant.names {
		d.Fixes = append(d.Fixes, lang.Fix{Title: "Write `" + n + "`", Edits: []lang.Edit{{Range: at, Text: n}}})
	}
	r.Report(d)
}

// unknown reports a name that nothing declares. A line that could not be read may
// declare it: then it is told only where it is nearly one that is known.
func (r Reporter) unknown(at lang.Range, name, what string, kind DeclKind, meant guess, more ...lang.Fix) {
	if !meant.near && r.To.Lost.declares(kind) {
		return
	}
	d := lang.Diagnostic{Code: "unknown-name", Severity: lang.Error, Range: at, Message: fmt.Sprintf("%s is no %s", name, what), Detail: meant.detail}
	for _, n := range meant.names {
		written := lang.WriteName(n)
		d.Fixes = append(d.Fixes, lang.Fix{Title: "Write `" + written + "`", Edits: []lang.Edit{{Range: at, Text: written}}})
	}
	d.Fixes = append(d.Fixes, more...)
	r.Report(d)
}

// A guess says which names may have been meant.
type guess struct {
	detail string
	near   bool // by what is nearly written; else the detail lists all
	names  []string
}

// didYouMean says which of some names may have been meant by another; all of
// them where they are few.
func didYouMean(name string, among []string) guess {
	if detail, other, ok := looksLike(name, among); ok {
		return guess{detail, true, []string{other}}
	}
	near, isNear := lang.Nearest(name, among)
	holding := slices.DeleteFunc(slices.Clone(among), func(s string) bool { return !strings.Contains(Fold(s), Fold(name)) })
	alike := sameNumber(name, among)
	switch {
	case len(holding) > 0 && len(holding) <= 3 && len([]rune(name)) > 1:
		return guess{fmt.Sprintf("Did you mean %s?", writeNames(holding, " or ")), true, holding}
	case len(alike) > 0 && len(alike) <= 3:
		return guess{fmt.Sprintf("Did you mean %s?", writeNames(alike, " or ")), true, alike}
	case isNear:
		return guess{fmt.Sprintf("Did you mean %s?", lang.WriteName(near)), true, []string{near}}
	case len(among) > 0 && len(among) <= 8:
		return guess{detail: "There is " + writeNames(among, ", ") + "."}
	}
	return guess{}
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
