// pullscore new: a kit and a scene to begin with.

package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"pullscore/cmd/internal/files"
)

type newCmd struct {
	Folder string `offer:"places" arg:"" optional:"" default:"." help:"The folder to write into, this one if none is named; it is made where there is none."`
}

// Help explains the command.
func (newCmd) Help() string {
	return `Writes kit.pull, a camera and a lens, and scene-1.pull, a shot with two racks.
Both work at once: change in them what is yours. A file that exists is never
touched.

  pullscore new
  pullscore new galley`
}

//go:embed starter/kit.pull
var starterKit string

//go:embed starter/scene-1.pull
var starterScene string

// A starter is a file to begin with.
type starter struct{ name, text string }

func starters() []starter {
	return []starter{{"kit.pull", starterKit}, {"scene-1.pull", starterScene}}
}

// Run writes the files, both or neither.
func (c *newCmd) Run(s *session) error {
	var paths []string
	for _, f := range starters() {
		path := filepath.Join(c.Folder, f.name)
		if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
			if err != nil {
				return files.Plain(err)
			}
			fmt.Fprintf(s.errScreen.W, "%s is there already\n", path)
			return errFindings
		}
		paths = append(paths, path)
	}
	if err := files.MakeFolder(c.Folder); err != nil {
		return err
	}
	for i, f := range starters() {
		if err := create(paths[i], f.text); err != nil {
			for _, written := range paths[:i] {
				err = errors.Join(err, os.Remove(written))
			}
			return files.Plain(err)
		}
	}
	_, err := fmt.Fprintf(s.out, "%s, %s written. Next: pullscore check %s, then put your lens into %s: pullscore help throw\n",
		paths[0], paths[1], paths[1], paths[0])
	return err
}

// create writes a file that must not exist yet.
func create(path, text string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(path)
	}
	return err
}
