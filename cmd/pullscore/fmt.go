// pullscore fmt: plans in the canonical layout.

package main

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/rogpeppe/go-internal/diff"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/lang"
)

type fmtCmd struct {
	List  bool     `short:"l" help:"Print the names of files that are not laid out so; the exit code is then 1."`
	Write bool     `short:"w" help:"Write the layout into the files."`
	Diff  bool     `short:"d" help:"Print what would change; the exit code is then 1."`
	Paths []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (fmtCmd) Help() string {
	return `Sets indents, blanks and the commas between clauses, and changes nothing that
counts: no word, no number, no comment. It works on files with mistakes too.
Without a flag it prints the result.

  pullscore fmt -w .                lay out every plan of this folder
  pullscore fmt -l .                name those that are not laid out
  pullscore fmt - < scene-12.pull   as an editor does`
}

// A layout is a file before and after.
type layout struct {
	before, after []byte
}

// Run lays plans out.
func (c *fmtCmd) Run(s *session) error {
	differs := false
	err := eachFile(s, c.Paths, "reading", func(f files.File) (layout, error) {
		if c.Write && f.Path == files.Stdin {
			return layout{}, errors.New("-w: standard input cannot be written to")
		}
		src, err := s.readFile(f.Path)
		return layout{src, lang.Format(src)}, err
	}, func(f files.File, l layout) error {
		changed := !bytes.Equal(l.before, l.after)
		differs = differs || changed
		return c.file(s, f.Path, l, changed)
	})
	if err == nil && differs && (c.List || c.Diff) {
		err = errFindings
	}
	return err
}

// file does with one file what the flags say. A file that cannot be written is
// reported, and the rest goes on.
func (c *fmtCmd) file(s *session, path string, l layout, changed bool) (err error) {
	s.bar.Clear()
	if c.List && changed {
		_, err = fmt.Fprintln(s.out, path)
	}
	if (c.Diff || c.Write) && bytes.Contains(l.before, []byte("\r\n")) {
		s.out.Flush()
		fmt.Fprintf(s.errScreen.W, "%s its lines end in CR LF; laid out they end in LF\n", console.Clean(path)+":")
	}
	if c.Diff && changed {
		_, err = s.out.WriteString(painted(s.screen, diff.Diff(path, l.before, path+" (laid out)", l.after)))
	}
	if c.Write && changed {
		if failed := files.Write(path, l.after); failed != nil {
			s.fail(failed)
		}
	}
	if !c.List && !c.Diff && !c.Write {
		_, err = s.out.Write(l.after)
	}
	return err
}

// painted colours a difference by its signs.
func painted(screen console.Screen, text []byte) string {
	if !screen.Colour {
		return string(text)
	}
	var b strings.Builder
	for line := range strings.Lines(string(text)) {
		style := map[byte]console.Style{'+': console.Green, '-': console.Red, '@': console.Cyan}[line[0]]
		b.WriteString(screen.Paint(style, strings.TrimSuffix(line, "\n")) + "\n")
	}
	return b.String()
}
