// pullscore help: commands, the language, its statements.

package main

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"

	"pullscore/lang"
)

// about stands on top of the help.
const about = `Focus plans in plain text: who speaks, who stands where, when the focus goes
from whom to whom. Pullscore works out every distance, ring angle and moment,
says what will fail on the day and what would cure it, and draws the score.

  pullscore help language           the language in a minute
  pullscore check scene-12.pull     what is wrong with a plan
  pullscore list scene-12.pull      the numbers of every pull
  pullscore draw scene-12.pull      the score of every shot`

type helpCmd struct {
	Topic string `arg:"" optional:"" help:"language, a word of the language such as rack, or a command."`
}

// Help explains the command.
func (helpCmd) Help() string {
	return `  pullscore help language     the language in a minute
  pullscore help rack         how a statement is written
  pullscore help draw         a command and its flags`
}

// Run explains the topic.
func (c *helpCmd) Run(s *session, parser *kong.Kong) error {
	switch usages := usagesOf(c.Topic); {
	case c.Topic == "":
		return given(parser.Parse([]string{"--help"}))
	case c.Topic == "language":
		_, err := s.out.WriteString(primer())
		return err
	case isCommand(parser, c.Topic):
		return given(parser.Parse([]string{c.Topic, "--help"}))
	case len(usages) > 0:
		_, err := fmt.Fprintln(s.out, strings.Join(usages, "\n"))
		return err
	}
	return c.unknown(parser)
}

// given drops what parsing says when it was only to print help.
func given(*kong.Context, error) error { return nil }

func isCommand(parser *kong.Kong, name string) bool {
	for _, node := range parser.Model.Children {
		if node.Name == name {
			return true
		}
	}
	return false
}

// usagesOf returns how the statements are written that a word marks: its own,
// or those that it is a clause of.
func usagesOf(word string) []string {
	if own := lang.Usage(word); own != "" {
		return []string{own}
	}
	var list []string
	for _, k := range lang.Keywords() {
		usage := lang.Usage(k)
		for _, w := range strings.FieldsFunc(usage, func(r rune) bool { return r == ' ' || r == ',' || r == '[' }) {
			if w == word && word == strings.ToLower(word) {
				list = append(list, usage)
				break
			}
		}
	}
	return list
}

func (c *helpCmd) unknown(parser *kong.Kong) error {
	words := append(lang.Keywords(), "language")
	for _, node := range parser.Model.Children {
		words = append(words, node.Name)
	}
	if near, ok := lang.Nearest(c.Topic, words); ok {
		return fmt.Errorf("no help on %q; did you mean %s?", c.Topic, near)
	}
	return fmt.Errorf("no help on %q; there is help on the language, on its words, and on the commands", c.Topic)
}
