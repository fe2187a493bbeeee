// pullscore lens --from: a kit to begin from, out of another program's file.

package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/foreign"
	"pullscore/lang"
)

// lensFrom writes the kit of another program's file to the place of -o, which must
// be new, or to standard output. What there is to say of the file goes to standard
// error.
func (c *lensCmd) lensFrom(s *session) error {
	if c.Kit != "" || c.Sheet || c.Lens != "" || c.Stop != "" || c.As != "text" {
		return errors.New("--from reads one lens file, and goes with --name and -o alone")
	}
	from, place := c.From, cmp.Or(c.Output, files.Stdin)
	if _, err := os.Lstat(place); place != files.Stdin && err == nil {
		return fmt.Errorf("%s is there already, and is not written over", place)
	} else if place != files.Stdin && !errors.Is(err, fs.ErrNotExist) {
		return files.Plain(err)
	}
	in := s.in
	if from != files.Stdin {
		f, err := os.Open(from)
		if err != nil {
			return files.Plain(err)
		}
		defer f.Close()
		in = f
	}
	kit, err := foreign.Read(in, name(from), c.Name)
	faulty := false
	if err == nil {
		err = s.writeKit(kit, place)
	}
	if kit != nil {
		faulty = s.printFindings(kit.Findings)
	}
	if err == nil && faulty {
		err = errFindings
	}
	return files.Plain(err)
}

// writeKit writes the text of a kit; a file that could not be read has none.
func (s *session) writeKit(kit *foreign.Kit, place string) error {
	if len(kit.Text) == 0 {
		return nil
	}
	if place == files.Stdin {
		_, err := s.out.Write(kit.Text)
		return err
	}
	if err := files.MakeFolder(filepath.Dir(place)); err != nil {
		return err
	}
	if err := files.Write(place, kit.Text); err != nil {
		return err
	}
	_, err := fmt.Fprintln(s.out, place)
	return err
}

// printFindings prints what there is to say of a file that is too long to quote,
// and reports whether there are errors.
func (s *session) printFindings(list []lang.Diagnostic) (faulty bool) {
	s.bar.Clear()
	s.out.Flush()
	p := findings.Printer{Screen: s.errScreen}
	for _, d := range list {
		faulty = faulty || d.Severity == lang.Error
		p.Print(d, nil)
	}
	return faulty
}
