package names

import (
	"errors"
	"io/fs"

	"pullscore/lang"
)

// A Unit is one file and the files that it uses.
type Unit struct {
	File *lang.File
	Uses []Used
}

type Used struct {
	Stmt *lang.Use
	Unit *Unit
}

// Reason is what the system says of an error, without the path and the call
// that differ from machine to machine.
func Reason(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "There is no such file; the name is relative to this one."
	case errors.Is(err, fs.ErrPermission):
		return "Permission denied."
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return Sentence(path.Err.Error())
	}
	return Sentence(err.Error())
}
