// pullscore words: what a shell offers while a command line is typed.

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/files"
)

// wordsCmd is not for people, and no help lists it: the scripts of completion
// ask it for what only the program knows.
type wordsCmd struct {
	Kind string   `arg:"" enum:"shots,topics" help:"shots or topics."`
	Line []string `arg:"" optional:"" sep:"none" help:"The words of the command line."`
}

// Run prints the words, one a line.
func (c *wordsCmd) Run(s *session, parser *kong.Kong) error {
	list := explained(parser)
	if c.Kind == "shots" {
		list = c.shots(s)
	}
	slices.Sort(list)
	for _, word := range slices.Compact(list) {
		if _, err := fmt.Fprintln(s.out, word); err != nil {
			return err
		}
	}
	return nil
}

// shots returns the IDs of the shots of the plans that the line names, by
// themselves or by their folder. What cannot be read has none: a line that is
// still typed is no mistake.
func (c *wordsCmd) shots(s *session) []string {
	var named []string
	for i, word := range c.Line {
		info, err := os.Stat(word)
		isPlace := i > 0 && (c.Line[i-1] == "-o" || c.Line[i-1] == "--output")
		if err == nil && !isPlace && (info.IsDir() || filepath.Ext(word) == files.Ext) {
			named = append(named, word)
		}
	}
	var ids []string
	found, _ := files.Expand(named)
	for _, f := range found {
		if res, err := s.interpret(f.Path); err == nil {
			ids = append(ids, shotIDs(res.Plan)...)
		}
	}
	return ids
}
