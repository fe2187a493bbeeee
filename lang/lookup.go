// What the reference says about a word.

package lang

import (
	_ "embed"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

//go:embed REFERENCE.md
var referenceText string

// Between these lines the reference has what is derived from the grammar.
const (
	grammarBegins = "<!-- derived from the grammar by go generate ./lang -->\n"
	grammarEnds   = "<!-- end of what is derived -->\n"
)

// Explain returns the passages of the reference that have a word of the language, or the
// code of a finding, in backquotes. A passage is a paragraph, an item of a list or a row
// of a table. Each is on one line and keeps its backquotes, but no other markup. It
// returns nil for a word that the reference does not explain.
//
// For one of Pieces it returns the passage that defines it, and the rows of the table
// after that passage.
func Explain(word string) []string {
	if slices.Contains(Pieces, word) {
		return explainPiece(word)
	}
	set := regexp.MustCompile("`[^`]*`")
	var list []string
	for _, p := range passages() {
		says := func(set string) bool {
			return slices.Contains(words(set), word) || !isWordByte((word + " ")[0]) && set == "`"+Usage(word)+"`"
		}
		if slices.ContainsFunc(set.FindAllString(p, -1), says) && !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}

// explainPiece returns the paragraph that begins with the name of a piece, and the
// rows of its table.
func explainPiece(word string) []string {
	article := "A "
	_, rest, ok := strings.Cut(referenceText, "\nA **"+strings.ToUpper(word)+"**")
	if !ok {
		article = "An "
		if _, rest, ok = strings.Cut(referenceText, "\nAn **"+strings.ToUpper(word)+"**"); !ok {
			return nil
		}
	}
	text, rest, _ := strings.Cut(rest, "\n\n")
	list := []string{article + strings.ToUpper(word) + strings.ReplaceAll(text, "\n", " ")}
	if !strings.HasPrefix(rest, "| "+word+" |") {
		return list
	}
	table, _, _ := strings.Cut(rest, "\n\n")
	for _, row := range strings.Split(table, "\n")[2:] {
		list = append(list, tableRow(row))
	}
	return list
}

// words returns the words of a text, with hyphens in them.
func words(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r != '-' && !unicode.IsLetter(r) })
}

// passages returns the paragraphs, items and rows of the reference, without its
// samples and headings.
func passages() []string {
	var list []string
	var p []string
	end := func() {
		if len(p) > 0 {
			list = append(list, strings.ReplaceAll(strings.Join(p, " "), "**", ""))
			p = nil
		}
	}
	sample := false
	written, _, _ := strings.Cut(referenceText, grammarBegins)
	_, behind, _ := strings.Cut(referenceText, grammarEnds)
	for line := range strings.Lines(written + behind) {
		line = strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(line, "```"):
			end()
			sample = !sample
		case sample:
		case line == "" || strings.HasPrefix(line, "#"):
			end()
		case strings.HasPrefix(line, "|"):
			end()
			list = append(list, tableRow(line))
		case strings.HasPrefix(line, "- "):
			end()
			p = []string{strings.TrimPrefix(line, "- ")}
		default:
			p = append(p, line)
		}
	}
	end()
	return list
}

// tableRow returns a row of a table as a sentence: what it is about, how bad it is
// in brackets where it says so, what it means.
func tableRow(line string) string {
	const bar = "\x00" // a bar within a cell
	cells := strings.Split(strings.ReplaceAll(strings.Trim(line, "| "), `\|`, bar), "|")
	for i := range cells {
		cells[i] = strings.ReplaceAll(strings.TrimSpace(cells[i]), bar, "|")
	}
	if len(cells) == 3 {
		return cells[0] + " (" + cells[1] + "): " + cells[2]
	}
	return strings.Join(cells, ": ")
}
