// Where drawings go, and the names of their files.

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"pullscore/cmd/internal/paths"
)

// An output is a folder, or a file (which may be "-") for a single page.
type output struct {
	folder, file string
	form         string // of the files: svg
	taken        map[string]bool
}

// newOutput reads what -o says.
func newOutput(place, form string) (output, error) {
	o := output{form: form, taken: map[string]bool{}}
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
	stem := safe(planName(f.Path))
	if p.shot != "" {
		stem += "-" + safe(p.shot)
	}
	stem += "-" + drawing
	number := ""
	if p.total > 1 {
		number = fmt.Sprintf("-%d", p.number)
	}
	for n := 1; ; n++ {
		again := ""
		if n > 1 {
			again = fmt.Sprintf("~%d", n)
		}
		base := stem + again + number + "." + o.form
		if key := strings.ToLower(base); !o.taken[key] {
			o.taken[key] = true
			return filepath.Join(o.folder, base)
		}
	}
}

// longest is how many bytes of a plan's or a shot's name go into a file name,
// of which systems allow 255.
const longest = 80

// safe returns a name with everything replaced that a system forbids in the
// name of a file, or that a shell or a reader would stumble over.
func safe(name string) string {
	text := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsMark(r) || unicode.IsDigit(r) || strings.ContainsRune("-+.", r) {
			return r
		}
		return '_'
	}, name)
	for len(text) > longest {
		runes := []rune(text)
		text = string(runes[:len(runes)-1])
	}
	if text = strings.TrimLeft(text, "-."); text == "" { // neither an option nor a hidden file
		return "_"
	}
	return text
}
