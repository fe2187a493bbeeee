package completion

import (
	"strings"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/files"
)

// A command is what there is to complete of one.
type command struct {
	name, help string
	flags      []flag
	words      []string // what an argument can be; none: files
	files      bool     // arguments are plans
}

// A flag is an option with what it can be set to.
type flag struct {
	name, short, help string
	takes             bool     // a value
	words             []string // what the value can be; none: anything
	files             bool     // the value is a place
}

// model reads the commands of a parser.
func model(k *kong.Kong) []command {
	var list []command
	for _, node := range k.Model.Children {
		c := command{name: node.Name, help: plain(node.Help)}
		for _, group := range node.AllFlags(true) {
			for _, f := range group {
				c.flags = append(c.flags, flagOf(f))
			}
		}
		for _, arg := range node.Positional {
			c.words = enumOf(arg)
			c.files = arg.Name == "path" || arg.Name == "file"
		}
		list = append(list, c)
	}
	return list
}

func flagOf(f *kong.Flag) flag {
	g := flag{name: "--" + f.Name, help: plain(f.Help), takes: !f.IsBool(), words: enumOf(f.Value), files: f.Name == "output"}
	if f.Short != 0 {
		g.short = "-" + string(f.Short)
	}
	return g
}

func enumOf(v *kong.Value) []string {
	if v.Enum == "" {
		return nil
	}
	return v.EnumSlice()
}

// plain takes out what shells would read as their own.
func plain(help string) string {
	return strings.NewReplacer("'", "", "[", "(", "]", ")", ":", ",").Replace(strings.TrimSuffix(help, "."))
}

// spellings returns every way to write the flag.
func (f flag) spellings() []string {
	if f.short == "" {
		return []string{f.name}
	}
	return []string{f.short, f.name}
}

// pattern is what the names of plans match.
const pattern = "*" + files.Ext
