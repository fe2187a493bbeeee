// pullscore help: commands, the language, its statements.

package main

import (
	"fmt"
	"slices"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/console"
	"pullscore/examples/topics"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// about stands on top of the help.
const about = `Focus plans in plain text: who speaks, who stands where, when the focus moves
to whom. Pullscore works out every distance, ring angle and time, says what
is likely to fail on the day and what would cure it, and draws the score.

  pullscore help words              the words of the language, by task
  pullscore check scene-12.pull     what is wrong with a plan
  pullscore list scene-12.pull      the numbers of every pull
  pullscore draw scene-12.pull      the score of every shot`

type helpCmd struct {
	Topic string `offer:"topics" arg:"" optional:"" help:"language, a topic such as papers, a word of the language such as rack, the code of a finding, or a command."`
}

// Help explains the command.
func (helpCmd) Help() string {
	return `  pullscore help language     the language in a minute
  pullscore help words        the twelve words to begin with, and all others by task
  pullscore help papers       a topic: papers, live, rehearse, window, log, cut, screenplay, git and more
  pullscore help staging      one action from several set-ups: scenes, marks, cameras with a place
  pullscore help throw        your own lens: throw, marks, gear, and the formats of sensors
  pullscore help rack         a word of the language: how it is written, what it means
  pullscore help moment       what a MOMENT is; also place, target and value
  pullscore help grammar      the whole grammar, in EBNF
  pullscore help goes-soft    a finding, by the code that stands behind it in brackets
  pullscore help draw         a command and its flags`
}

// Run explains the topic.
func (c *helpCmd) Run(s *session, parser *kong.Kong) error {
	usages, passages := lang.Usages(c.Topic), lang.Explain(c.Topic)
	topic, isTopic := topics.Markdown(c.Topic)
	code, isCode := rule.Named(c.Topic)
	switch {
	case c.Topic == "":
		return given(parser.Parse([]string{"--help"}))
	case c.Topic == "language":
		_, err := s.out.WriteString(primer())
		return err
	case c.Topic == "words":
		_, err := s.out.WriteString(wordList())
		return err
	case c.Topic == "grammar":
		_, err := s.out.WriteString(lang.Grammar())
		return err
	case isCommand(parser, c.Topic):
		return given(parser.Parse([]string{c.Topic, "--help"}))
	case isTopic:
		if err := printTopic(s, topic); err != nil || len(usages) == 0 {
			return err
		}
		fmt.Fprintln(s.out) // the topic is a word of the language too
		return explain(s, usages, passages)
	case isCode:
		return explainFinding(s, code.Rule())
	case len(usages)+len(passages) > 0:
		return explain(s, usages, passages)
	}
	return c.unknown(parser)
}

// explain prints how something is written, and what the reference says of it.
func explain(s *session, usages, passages []string) error {
	w := console.Lines{Screen: s.screen}
	for _, usage := range usages {
		w.Line(usage)
	}
	for i, passage := range passages {
		if i > 0 || len(usages) > 0 {
			w.Line("")
		}
		w.Wrapped(console.Plain, "", passage)
	}
	return w.Flush()
}

// explainFinding prints what a finding means, and what to do about it.
func explainFinding(s *session, r rule.Rule) error {
	w := console.Lines{Screen: s.screen}
	severity := r.Severity.String()
	for _, also := range r.Also {
		severity += " or " + also.String()
	}
	w.Wrapped(console.Bold, "", fmt.Sprintf("%s (%s): %s", r.Name, severity, r.Means))
	w.Line("")
	w.Wrapped(console.Plain, "", r.Help)
	return w.Flush()
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

// explained returns all that there is help on.
func explained(parser *kong.Kong) []string {
	list := slices.Concat(lang.Keywords(), lang.SoftWords(), []string{"language", "words", "grammar"}, lang.Pieces, topics.Names())
	for code := range rule.All() {
		list = append(list, code.String())
	}
	for _, node := range parser.Model.Children {
		if !node.Hidden {
			list = append(list, node.Name)
		}
	}
	return list
}

func (c *helpCmd) unknown(parser *kong.Kong) error {
	if near, ok := lang.Nearest(c.Topic, explained(parser)); ok {
		return fmt.Errorf("no help on %q; did you mean %s?", c.Topic, near)
	}
	return fmt.Errorf("no help on %q; there is help on the language, on topics, on words of the language, on the codes of findings, and on the commands", c.Topic)
}
