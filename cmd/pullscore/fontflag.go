// The flag --font: files of fonts for letters that the embedded ones lack.

package main

import (
	"errors"
	"fmt"
	"os"

	"pullscore/render/fonts"
)

// A fontFlag is the flag of a command that draws.
type fontFlag struct {
	Font []string `offer:"files" name:"font" sep:"none" placeholder:"FILE" help:"A TrueType font for letters that the embedded fonts lack, in pdf and png; may be repeated."`
}

// A rendering is how pages become files: the pixels an inch of a png, and fonts for what
// the embedded ones lack.
type rendering struct {
	dpi   int
	fonts []*fonts.File
}

// rendering returns how a form is written, with the fonts that the flag names.
func (f fontFlag) rendering(form string, dpi int) (rendering, error) {
	list, err := f.read(form)
	return rendering{dpi, list}, err
}

// fontMost is the largest file that is read as a font, in bytes: larger than any font, and
// small enough for memory.
const fontMost = 64 << 20

// read reads the fonts for files of a form. Only those that carry fonts can use them.
func (f fontFlag) read(form string) ([]*fonts.File, error) {
	if len(f.Font) > 0 && !backends[form].embedded {
		return nil, fmt.Errorf("--font: %s files carry no fonts; it goes with pdf and png", form)
	}
	var list []*fonts.File
	for _, path := range f.Font {
		data, err := readFont(path)
		if err != nil {
			return nil, err
		}
		file, err := fonts.Read(data)
		if err != nil {
			return nil, fmt.Errorf("--font %s: %w", path, err)
		}
		list = append(list, file)
	}
	return list, nil
}

func readFont(path string) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, fmt.Errorf("--font %s: %w", path, errors.Unwrap(err))
	case info.IsDir():
		return nil, fmt.Errorf("--font %s: this is a folder", path)
	case info.Size() > fontMost:
		return nil, fmt.Errorf("--font %s: this is too large for a font", path)
	}
	return os.ReadFile(path)
}
