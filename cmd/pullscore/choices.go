// What flags can be, and what help says of it, from the tables that hold it.

package main

import (
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/export"
)

// words are what the tags of the command hold as ${name}.
func (*drawCmd) words() kong.Vars { return drawingWords() }

// words are what the tags of the command hold as ${name}.
func (*exportCmd) words() kong.Vars { return formWords() }

func drawingWords() kong.Vars {
	var list []string
	for _, d := range slices.Concat(drawingTable, olderTable) {
		list = append(list, d.name)
	}
	return kong.Vars{"drawings": strings.Join(list, ","), "drawings_words": strings.Join(list, ", ")}
}

func formWords() kong.Vars {
	var list []string
	for _, f := range export.Forms() {
		list = append(list, f.Name)
	}
	return kong.Vars{"forms": strings.Join(list, ","), "forms_bar": strings.Join(list, "|")}
}

// A choice is a value of a flag and what help says of it, in lines.
type choice struct{ name, help string }

// helpOf writes values under one another, each with its help beside it.
func helpOf(list []choice) string {
	const before, between = 2, 3
	wide := 0
	for _, c := range list {
		wide = max(wide, len(c.name))
	}
	var b strings.Builder
	for _, c := range list {
		name := c.name
		for line := range strings.SplitSeq(c.help, "\n") {
			b.WriteString(strings.Repeat(" ", before) + name + strings.Repeat(" ", wide-len(name)+between) + line + "\n")
			name = ""
		}
	}
	return b.String()
}
