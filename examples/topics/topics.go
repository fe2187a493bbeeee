// Package topics holds the help that explains a task: one Markdown file a topic,
// read on the web beside the examples and printed by `pullscore help TOPIC`.
//
// topics.go finds them by name and turns their Markdown into lines for a
// terminal.
package topics

import (
	"embed"
	"strings"

	"pullscore/lang/lines"
)

//go:embed *.md
var files embed.FS

// Names returns the names of all topics in alphabetical order.
func Names() []string {
	entries, err := files.ReadDir(".")
	if err != nil {
		panic(err) // the files are part of the program
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".md")
	}
	return names
}

// Markdown returns the text of a topic; ok is false if there is none of that
// name.
func Markdown(name string) (text string, ok bool) {
	b, err := files.ReadFile(name + ".md")
	return string(b), err == nil
}

// A Kind says how a line of a topic is printed.
type Kind uint8

// The kinds of lines. A Text or an Item is one paragraph on one line, to be
// wrapped. A Sample is printed as it is, a Verbatim line also without an indent of its own.
const (
	Blank Kind = iota
	Title
	Text
	Item
	Sample
	Verbatim
)

// A Line is one line of a topic, without the marks of Markdown.
type Line struct {
	Kind Kind
	Text string
}

// Lines turns the Markdown of a topic into lines. It knows what the topics use:
// headings, paragraphs, items, tables, samples, links, bold type and code.
func Lines(markdown string) []Line {
	var list []Line
	sample, open := false, false // open: the next row of text continues the line before
	kind := Sample
	for row := range strings.Lines(markdown) {
		row = strings.TrimRight(row, "\n")
		switch {
		case strings.HasPrefix(row, "```"):
			sample, open = !sample, false
			kind = Sample
			if row == "```text" {
				kind = Verbatim
			}
		case sample:
			list = append(list, Line{kind, row})
		case row == "":
			list, open = append(list, Line{}), false
		case strings.HasPrefix(row, "# "), strings.HasPrefix(row, "## "):
			list = append(list, Line{Title, plain(strings.TrimLeft(row, "# "))})
		case strings.HasPrefix(row, "- "):
			list, open = append(list, Line{Item, plain(row[2:])}), true
		case strings.HasPrefix(row, "|"):
			if text := cells(row); text != "" {
				list = append(list, Line{Item, text})
			}
		case open:
			list[len(list)-1].Text += " " + plain(strings.TrimSpace(row))
		default:
			list, open = append(list, Line{Text, plain(row)}), true
		}
	}
	return list
}

var (
	link = lines.Pattern(`\[([^\]]*)\]\([^)]*\)`)
	rule = lines.Pattern(`^\|[-| ]*\|$`)
)

// plain takes bold type and links out of a text; code keeps its backquotes.
func plain(text string) string {
	return strings.ReplaceAll(link().ReplaceAllString(text, "$1"), "**", "")
}

// cells returns a row of a table as one text, "" for the rule below its head: what
// the first cell names, then the others.
func cells(row string) string {
	if rule().MatchString(row) {
		return ""
	}
	parts := strings.Split(strings.Trim(row, "|"), "|")
	for i := range parts {
		parts[i] = plain(strings.TrimSpace(parts[i]))
	}
	name, rest := parts[0], parts[1:]
	return name + ": " + strings.Join(rest, " · ")
}
