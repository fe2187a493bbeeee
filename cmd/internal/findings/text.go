// Findings as text: where, what, the line with the fault underlined, why, and
// what would cure it.

package findings

import (
	"fmt"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/lang"
)

// indent stands before what belongs to the finding above.
const indent = "        "

// A Printer writes findings as text.
type Printer struct {
	Screen console.Screen
}

// Print writes a finding; src is the text of its file.
func (p Printer) Print(d lang.Diagnostic, src []byte) error {
	var b strings.Builder
	style := Style(d.Severity)
	fmt.Fprintf(&b, "%s: %s: %s %s\n",
		p.Screen.Paint(console.Bold, position(d.Range)),
		p.Screen.Paint(style, d.Severity.String()),
		console.Clean(d.Message),
		p.Screen.Paint(console.Dim, "["+d.Code+"]"))
	p.quote(&b, d, src, style)
	p.paragraph(&b, console.Plain, "", d.Detail)
	for _, r := range d.Related {
		fmt.Fprintf(&b, "%s%s: %s\n", indent, position(r.Range), console.Clean(r.Message))
	}
	p.paragraph(&b, console.Green, "cure:", cures(d))
	_, err := fmt.Fprintln(p.Screen.W, b.String())
	return err
}

// quote adds the line at fault, the mark under it in the colour of the
// severity; nothing of a file that could not be read.
func (p Printer) quote(b *strings.Builder, d lang.Diagnostic, src []byte, style console.Style) {
	if src == nil {
		return
	}
	line, marks, ok := strings.Cut(strings.TrimSuffix(lang.Quote(d, src), "\n"), "\n")
	if !ok {
		return
	}
	bar := strings.Index(marks, "|") + 1
	fmt.Fprintf(b, "%s%s\n", p.Screen.Paint(console.Dim, line[:bar]), strings.TrimRight(line[bar:], " "))
	fmt.Fprintf(b, "%s%s\n", p.Screen.Paint(console.Dim, marks[:bar]), p.Screen.Paint(style, marks[bar:]))
}

// paragraph adds wrapped text behind a heading; nothing where there is none.
func (p Printer) paragraph(b *strings.Builder, style console.Style, heading, text string) {
	if text == "" {
		return
	}
	if heading != "" {
		heading += " "
	}
	hang := len(heading)
	for i, line := range console.Wrap(console.Clean(text), p.Screen.Width-len(indent)-hang) {
		if i > 0 {
			heading = strings.Repeat(" ", hang)
		}
		fmt.Fprintf(b, "%s%s%s\n", indent, p.Screen.Paint(style, heading), line)
	}
}

// cures joins the cures as choices.
func cures(d lang.Diagnostic) string {
	texts := make([]string, len(d.Cures))
	for i, c := range d.Cures {
		texts[i] = c.Says()
	}
	return strings.Join(texts, ", or ")
}

// position writes where a range begins, as editors read it.
func position(r lang.Range) string {
	return fmt.Sprintf("%s:%d:%d", console.Clean(r.File), r.Start.Line, r.Start.Column)
}

// Style is what a severity is painted in.
func Style(s lang.Severity) console.Style {
	return map[lang.Severity]console.Style{
		lang.Error: console.Red, lang.Warning: console.Yellow, lang.Note: console.Cyan,
	}[s]
}

// A Count tells how many findings of each severity there are, in how many
// files that were read.
type Count struct {
	Errors, Warnings, Notes, Files int
}

// Add counts a finding.
func (c *Count) Add(d lang.Diagnostic) {
	switch d.Severity {
	case lang.Error:
		c.Errors++
	case lang.Warning:
		c.Warnings++
	case lang.Note:
		c.Notes++
	}
}

func (c Count) String() string {
	return c.Findings() + " in " + Plural(c.Files, "plan file")
}

// None tells whether nothing has been counted.
func (c Count) None() bool { return c.Errors+c.Warnings+c.Notes == 0 }

// Findings counts them without the files.
func (c Count) Findings() string {
	var parts []string
	for _, part := range []struct {
		n    int
		what string
	}{{c.Errors, "error"}, {c.Warnings, "warning"}, {c.Notes, "note"}} {
		if part.n > 0 {
			parts = append(parts, Plural(part.n, part.what))
		}
	}
	if len(parts) == 0 {
		parts = []string{"no findings"}
	}
	return strings.Join(parts, ", ")
}

// Plural writes a count of things.
func Plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
