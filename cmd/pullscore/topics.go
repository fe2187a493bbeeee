// Help on a task: the topics that lie beside the examples as Markdown.

package main

import (
	"pullscore/cmd/internal/console"
	"pullscore/examples/topics"
)

// printTopic prints the Markdown of a topic for a screen.
func printTopic(s *session, markdown string) error {
	w := console.Lines{Screen: s.screen}
	for _, line := range topics.Lines(markdown) {
		switch line.Kind {
		case topics.Blank:
			w.Line("")
		case topics.Title:
			w.Wrapped(console.Bold, "", line.Text)
		case topics.Text:
			w.Wrapped(console.Plain, "", line.Text)
		case topics.Item:
			w.Hanging(console.Plain, "  ", line.Text)
		case topics.Sample:
			w.Line("    " + line.Text)
		case topics.Verbatim:
			w.Line(line.Text)
		}
	}
	return w.Flush()
}
