// What watch prints: a line for every change of a plan, and what it did.

package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/cmd/internal/rebuild"
	"pullscore/lang"
)

// A watchLog prints changes.
type watchLog struct {
	*session
	noted   bool   // where chances come from
	trouble string // that was told last
}

// changes prints the changes that came at once; none come once, when all plans
// have been read.
func (l *watchLog) changes(state *rebuild.State, changes []rebuild.Change, trouble error) error {
	for _, c := range changes {
		l.change(c)
	}
	if len(changes) == 0 {
		fmt.Fprintln(l.out, l.screen.Paint(console.Dim, watching(state)))
	}
	l.tellTrouble(trouble)
	return l.out.Flush()
}

// watching says what is watched.
func watching(state *rebuild.State) string {
	if len(state.Plans) == 0 {
		return "Waiting for a plan with shots. Ctrl-C ends it."
	}
	files := map[string]bool{}
	for _, p := range state.Plans {
		for _, f := range p.Files {
			files[f] = true
		}
	}
	return fmt.Sprintf("Watching %s, %s in all. Ctrl-C ends it.",
		findings.Plural(len(state.Plans), "plan"), findings.Plural(len(files), "file"))
}

// change prints one change.
func (l *watchLog) change(c rebuild.Change) {
	name := l.screen.Paint(console.Bold, console.Clean(c.Plan.Name))
	if c.Gone {
		fmt.Fprintf(l.out, "%s: gone%s\n", name, removed(c))
		if c.Unwritten != nil {
			l.tell(c.Unwritten)
		}
		return
	}
	parts := []string{what(c), l.found(c.Plan), drawings(c) + removed(c)}
	fmt.Fprintf(l.out, "%s: %s %s\n", name, strings.Join(parts, "; "),
		l.screen.Paint(console.Dim, "("+milliseconds(c.Took)+")"))
	l.errors(c.Plan)
	for _, text := range c.Says {
		fmt.Fprintln(l.out, "    "+console.Clean(text))
	}
	l.note(c.Says)
	if c.Unwritten != nil {
		l.tell(c.Unwritten)
	}
}

// note says once where chances come from, when the first is told.
func (l *watchLog) note(says []string) {
	tells := func(text string) bool { return strings.Contains(text, " %") }
	if !l.noted && slices.ContainsFunc(says, tells) {
		l.noted = true
		lists.WriteNote(l.screen)
	}
}

// what says which files changed.
func what(c rebuild.Change) string {
	switch {
	case c.First:
		return "read"
	case len(c.Causes) == 0:
		return "can be written again"
	case len(c.Causes) == 1 && c.Causes[0] == c.Plan.Path:
		return "changed"
	}
	names := make([]string, len(c.Causes))
	for i, path := range c.Causes {
		names[i] = console.Clean(filepath.Base(path))
	}
	return strings.Join(names, ", ") + " changed"
}

// found counts the findings, in the colour of the worst.
func (l *watchLog) found(p *rebuild.Plan) string {
	var count findings.Count
	for _, d := range p.Findings {
		count.Add(d)
	}
	worst, ok := lang.Worst(p.Findings)
	if !ok {
		return l.screen.Paint(console.Green, count.Findings())
	}
	return l.screen.Paint(findings.Style(worst), count.Findings())
}

// drawings says what became of the drawings.
func drawings(c rebuild.Change) string {
	switch {
	case c.Plan.Good == nil:
		return "nothing to draw yet"
	case c.Plan.Stale:
		return "the last good drawings stay"
	case len(c.Drawn) > 0:
		return findings.Plural(len(c.Drawn), "drawing") + " written"
	case c.Unwritten != nil:
		return "drawings not written"
	case len(c.Plan.Sheets) == 0:
		return "no shots to draw"
	}
	return "drawings as they were"
}

// removed says how many drawings went with their shots.
func removed(c rebuild.Change) string {
	if len(c.Removed) == 0 {
		return ""
	}
	return ", " + findings.Plural(len(c.Removed), "drawing") + " removed"
}

// errors prints the errors of a plan, each with its line.
func (l *watchLog) errors(p *rebuild.Plan) {
	printer := findings.Printer{Screen: l.screen}
	for _, d := range p.Findings {
		if d.Severity == lang.Error {
			printer.Print(d, p.Sources[d.Range.File])
		}
	}
}

// tellTrouble says that changes are seen late, and why, whenever that is new.
func (l *watchLog) tellTrouble(trouble error) {
	text := ""
	if trouble != nil {
		text = trouble.Error()
	}
	if text != "" && text != l.trouble {
		l.tell(fmt.Errorf("changes show up to half a second late, since the system does not tell of all: %w", trouble))
	}
	l.trouble = text
}

// tell reports a fault that the program goes on after.
func (s *session) tell(err error) {
	s.out.Flush() // what was printed before stands above
	fmt.Fprintf(s.errScreen.W, "%s %s\n", s.errScreen.Paint(console.Red, "pullscore:"), cleanLines(err.Error()))
}

func milliseconds(d time.Duration) string {
	return fmt.Sprintf("%.0f ms", max(1, float64(d)/float64(time.Millisecond)))
}
