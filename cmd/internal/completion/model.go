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
	words      []string // what an argument can be; none: anything
	offer      offer    // what is offered for an argument
}

// A flag is an option with what it can be set to.
type flag struct {
	name, short, help string
	takes             bool     // a value
	words             []string // what the value can be; none: anything
	offer             offer    // what is offered for the value
}

// An offer is what a shell offers for a value, by the tag "offer" of its field.
type offer string

// The offers; nothing is offered without one. The program itself is asked for
// shots, which are those of the plans on the line, and for topics of help.
const (
	plans  offer = "plans"
	paths  offer = "files"
	places offer = "places" // folders
	shots  offer = "shots"
	topics offer = "topics"
)

// model reads the commands of a parser.
func model(k *kong.Kong) []command {
	var list []command
	for _, node := range k.Model.Children {
		if node.Hidden {
			continue
		}
		c := command{name: node.Name, help: plain(node.Help)}
		for _, group := range node.AllFlags(true) {
			for _, f := range group {
				c.flags = append(c.flags, flagOf(f))
			}
		}
		for _, arg := range node.Positional {
			c.words = enumOf(arg)
			c.offer = offer(arg.Tag.Get("offer"))
		}
		list = append(list, c)
	}
	return list
}

func flagOf(f *kong.Flag) flag {
	g := flag{name: "--" + f.Name, help: plain(f.Help), takes: !f.IsBool(), words: enumOf(f.Value), offer: offer(f.Tag.Get("offer"))}
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
