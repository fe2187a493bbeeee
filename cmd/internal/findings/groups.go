// Findings of one cause, told once.

package findings

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// told is how many findings of one cause are told as a group; fewer read better
// one by one.
const told = 3

// A Group is findings of one cause, in their order.
type Group struct {
	Shot  string
	Cause plan.Cause
	Diags []lang.Diagnostic
}

// Grouped splits the findings of a plan into groups of one cause, the worst and
// largest first, and the rest in its order. Errors are never grouped: each has to
// be mended by itself.
func Grouped(p *plan.Plan, diags []lang.Diagnostic) (groups []Group, rest []lang.Diagnostic) {
	rest = diags
	for _, s := range p.Shots {
		for _, c := range s.Causes {
			if len(c.Flags) < told || c.Severity == lang.Error.String() {
				continue
			}
			g := Group{Shot: s.ID, Cause: c}
			var others []lang.Diagnostic
			for _, d := range rest {
				if d.Shot == s.ID && d.Code == c.Code && d.Severity.String() == c.Severity {
					g.Diags = append(g.Diags, d)
				} else {
					others = append(others, d)
				}
			}
			if len(g.Diags) >= told {
				groups, rest = append(groups, g), others
			}
		}
	}
	slices.SortStableFunc(groups, func(a, b Group) int {
		return cmp.Or(cmp.Compare(b.Diags[0].Severity, a.Diags[0].Severity), cmp.Compare(len(b.Diags), len(a.Diags)))
	})
	return groups, rest
}

// Says tells the group in a sentence without its end: how many findings of what,
// and the change that mends most of them.
func (g Group) Says() string {
	n := len(g.Diags)
	code, _ := rule.Named(g.Cause.Code)
	text := code.Many(n)
	switch {
	case g.Cause.Mends == 0:
		return text
	case g.Cause.Mends >= n:
		return fmt.Sprintf("%s: %s mends them all", text, g.Cause.Cure)
	}
	return fmt.Sprintf("%s: %s mends %d of them", text, g.Cause.Cure, g.Cause.Mends)
}

// PrintGroup writes a group: what they have in common, and each in one line with
// its place.
func (p Printer) PrintGroup(g Group) error {
	var b strings.Builder
	first := g.Diags[0]
	fmt.Fprintf(&b, "%s: %s: shot %s: %s %s\n",
		p.Screen.Paint(console.Bold, console.Clean(first.Range.File)),
		p.Screen.Paint(Style(first.Severity), first.Severity.String()),
		console.Clean(g.Shot), console.Clean(g.Says()), p.Screen.Paint(console.Dim, "["+first.Code+"]"))
	for _, d := range g.Diags {
		text := fmt.Sprintf("%d:%d: %s", d.Range.Start.Line, d.Range.Start.Column, console.Clean(d.Message))
		if c := cures(d); c != "" {
			text += "; cure: " + c
		}
		for i, line := range console.Wrap(text, p.Screen.Width-len(indent)) {
			if i > 0 {
				line = "    " + line
			}
			b.WriteString("    " + line + "\n")
		}
	}
	_, err := fmt.Fprintln(p.Screen.W, b.String())
	return err
}
