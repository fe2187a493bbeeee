// The parser of the command line.

package main

import (
	"reflect"
	"strings"

	"github.com/alecthomas/kong"
)

// flags are the flags of every command.
type flags struct {
	Colour string `aliases:"color" enum:"auto,always,never" default:"auto" placeholder:"WHEN" help:"Colours: auto, always or never."`
}

// newParser returns the parser of a command line; it is told about help that
// has been given instead of ending the program. Where the command stands first
// the parser knows that one only: a model of them all would take longer to
// build than a plan takes to check. What tags hold as ${name} it is given only
// for a command that has such tags, since kong looks through all of it again at
// every flag.
func newParser(cli *commands, s *session, args []string) (*kong.Kong, error) {
	options := []kong.Option{
		kong.Name("pullscore"),
		kong.Writers(s.out, s.errs),
		kong.Exit(func(int) { s.helped = true }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, WrapUpperBound: 80, NoExpandSubcommands: true}),
		kong.ValueFormatter(func(v *kong.Value) string { return v.Help }),
	}
	command := cli.command(args[0])
	if command == nil {
		return kong.New(cli, append(options, kong.Description(about), drawingWords(), formWords())...)
	}
	options = append(options, kong.DynamicCommand(args[0], command.help, "", command.of))
	if with, ok := command.of.(interface{ words() kong.Vars }); ok {
		options = append(options, with.words())
	}
	return kong.New(&cli.flags, options...)
}

// A command is one that the parser may know alone.
type command struct {
	help string
	of   any // a pointer to it
}

// command returns the command of the given name, nil where there is none or
// where it speaks about the others.
func (c *commands) command(name string) *command {
	for field, value := range reflect.ValueOf(c).Elem().Fields() {
		_, isCommand := field.Tag.Lookup("cmd")
		_, ofAll := field.Tag.Lookup("all")
		if isCommand && !ofAll && strings.ToLower(field.Name) == name {
			return &command{field.Tag.Get("help"), value.Addr().Interface()}
		}
	}
	return nil
}
