// Where drawings go, and the names of their files.

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"pullscore/cmd/internal/files"
)

// An output is a folder, or a file (which may be "-") for a single page.
type output struct {
	folder, file string
	form         string       // of the files: svg
	names        *files.Names // given out by this run
}

// newOutput reads what -o says.
func newOutput(place, form string) (output, error) {
	o := output{form: form, names: &files.Names{}}
	info, err := os.Stat(place)
	switch {
	case place == files.Stdin:
		o.file = place
	case err == nil && info.IsDir():
		o.folder = filepath.Clean(place)
	case err == nil || strings.EqualFold(filepath.Ext(place), "."+form):
		o.file = place
	case filepath.Ext(place) == "" && place != "":
		o.folder = filepath.Clean(place) // made with its first file
	default:
		return o, fmt.Errorf("-o %s: a file is named .%s, and there is no such folder", place, form)
	}
	return o, nil
}

func (o output) String() string {
	if o.file == files.Stdin {
		return "standard output"
	}
	return o.file
}

// name returns the path of a page, one that this run has not used.
func (o output) name(plan string, p page) string {
	stem := files.Safe(planName(plan))
	if p.shot != "" {
		stem += "-" + files.Safe(p.shot)
	}
	tail := "." + o.form
	if p.total > 1 {
		tail = fmt.Sprintf("-%d.%s", p.number, o.form)
	}
	return filepath.Join(o.folder, o.names.Give(plan, stem+"-"+p.what, tail))
}

// put writes a file, and makes its folder where there is none.
func (o output) put(path string, data ...[]byte) error {
	if err := files.MakeFolder(filepath.Dir(path)); err != nil {
		return err
	}
	return files.Write(path, data...)
}

// write writes one file of a plan, whose form is the output's; shot is empty
// where it holds the whole plan, and what says what it is.
func (o output) write(s *session, plan, shot, what string, content func(io.Writer) error) error {
	var b bytes.Buffer
	if err := content(&b); err != nil {
		return err
	}
	path := o.file
	switch {
	case path == files.Stdin:
		_, err := s.out.Write(b.Bytes())
		return err
	case path == "":
		path = o.name(plan, page{shot: shot, what: what, total: 1})
	}
	if err := o.put(path, b.Bytes()); err != nil {
		return err
	}
	return s.wrote(path)
}
