// Files of a cut.

package cut

import (
	"path/filepath"

	"pullscore/interp/edit"
	"pullscore/lang"
)

// A File is a file that an edit statement names.
type File struct {
	*edit.Cut
	Stmt *lang.CutFile
	// Picture is the label of the first frame of the picture, as frames; Known
	// tells that something says it.
	Picture int64
	Known   bool
}

// Base is how a message calls the file.
func (c *File) Base() string { return filepath.Base(filepath.FromSlash(c.Stmt.File.Value)) }
