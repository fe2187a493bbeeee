// What flags can be, and what help says of it, from the tables that hold it.

package main

import (
	"strings"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/export"
)

// choices are the words that tags of flags hold as ${name}.
func choices() kong.Vars {
	var forms, drawn []string
	for _, f := range export.Forms() {
		forms = append(forms, f.Name)
	}
	for _, d := range drawingTable {
		drawn = append(drawn, d.name)
	}
	return kong.Vars{
		"forms": strings.Join(forms, ","), "forms_bar": strings.Join(forms, "|"),
		"drawings": strings.Join(drawn, ","), "drawings_words": strings.Join(drawn, ", "),
	}
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
