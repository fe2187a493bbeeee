// Where drawings go, and the names of their files.

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"pullscore/cmd/internal/paths"
)

// An output is a folder, or a file (which may be "-") for a single page.
type output struct {
	folder, file string
	form         string       // of the files: svg
	names        *paths.Names // given out by this run
}

// newOutput reads what -o says.
func newOutput(place, form string) (output, error) {
	o := output{form: form, names: &paths.Names{}}
	info, err := os.Stat(place)
	switch {
	case place == paths.Stdin:
		o.file = place
	case err == nil && info.IsDir():
		o.folder = filepath.Clean(place)
	case err == nil || strings.EqualFold(filepath.Ext(place), "."+form):
		o.file = place
	default:
		return o, fmt.Errorf("-o %s: there is no such folder, and a file is named .%s", place, form)
	}
	return o, nil
}

func (o output) String() string {
	if o.file == paths.Stdin {
		return "standard output"
	}
	return o.file
}

// name returns the path of a page, one that this run has not used.
func (o output) name(f paths.File, p page, drawing string) string {
	stem := paths.Safe(planName(f.Path))
	if p.shot != "" {
		stem += "-" + paths.Safe(p.shot)
	}
	tail := "." + o.form
	if p.total > 1 {
		tail = fmt.Sprintf("-%d.%s", p.number, o.form)
	}
	return filepath.Join(o.folder, o.names.Give(f.Path, stem+"-"+drawing, tail))
}
