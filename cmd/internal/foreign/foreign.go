// A kit as it is written, line by line.

package foreign

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/units"
	"pullscore/lang"
)

// A Kit is what a file comes to.
type Kit struct {
	Text     []byte            // statements, laid out as fmt does
	Findings []lang.Diagnostic // in the order of the file
}

// A line is a line of a kit: a statement with the field that it is from, or a
// comment alone.
type line struct {
	statement string
	comment   string
	depth     int
}

// A page is a kit while it is written.
type page struct{ lines []line }

// head begins a section.
func (p *page) head(statement, comment string) {
	p.lines = append(p.lines, line{}, line{statement: statement, comment: comment})
}

// say writes a statement of a section.
func (p *page) say(statement, comment string) {
	p.lines = append(p.lines, line{statement, comment, 1})
}

// note writes a comment. In a section it is indented.
func (p *page) note(depth int, format string, args ...any) {
	p.lines = append(p.lines, line{"", fmt.Sprintf(format, args...), depth})
}

// lacks writes a statement that waits for a value, and how to get it.
func (p *page) lacks(statement, how string) {
	p.lines = append(p.lines, line{"", statement + "  # " + how, 1})
}

// raw returns the page as text of a plan: its lines are those of the text.
func (p *page) raw() []byte {
	var b strings.Builder
	for _, l := range p.lines {
		b.WriteString(strings.Repeat("  ", l.depth))
		b.WriteString(l.statement)
		if l.comment != "" {
			if l.statement != "" {
				b.WriteString("  ")
			}
			b.WriteString("# " + l.comment)
		}
		b.WriteString("\n")
	}
	return []byte(b.String())
}

// longest is how many characters of a name from a file are kept.
const longest = 60

// clean returns a text of a file as one that can stand in a comment or a name: on
// one line, without signs that cannot be seen, and not long.
func clean(text string) string {
	text = strings.Map(func(r rune) rune {
		if r == utf8.RuneError || !unicode.IsPrint(r) {
			return ' '
		}
		return r
	}, text)
	text = strings.Join(strings.Fields(text), " ")
	if utf8.RuneCountInString(text) > longest {
		text = string([]rune(text)[:longest-1]) + "…"
	}
	return text
}

// named returns a name of a section, quoted where the language needs it.
func named(text, otherwise string) string {
	if text = clean(text); text == "" {
		text = otherwise
	}
	return lang.WriteName(text)
}

// mostDecimals is how many decimals a number has at most. One that needs more is
// none that a lens can have, and the language refuses the 0 that is left of it.
const mostDecimals = 9

// significant writes a number with at most so many digits that count.
func significant(v float64, digits int) string {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return units.Decimal(v, 0)
	}
	return units.Decimal(v, min(max(0, digits-1-int(math.Floor(math.Log10(math.Abs(v))))), mostDecimals))
}
