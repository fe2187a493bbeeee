// The forms in which drawings are written.

package main

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/fonts"
	"pullscore/render/pdf"
	"pullscore/render/png"
	"pullscore/render/svg"
)

// language is that of the words that drawings are made of (BCP 47).
const language = "en"

// A backend writes pages in one form.
type backend struct {
	paged    bool // one file holds all pages of a shot; else one page
	embedded bool // has the embedded fonts alone
	write    func(w io.Writer, shot *plan.Shot, pages []*draw.Page, how rendering) error
}

// backends are all of them, by the ending of their files.
var backends = map[string]backend{
	"svg": {write: func(w io.Writer, _ *plan.Shot, pages []*draw.Page, _ rendering) error {
		return svg.Write(w, pages[0])
	}},
	"png": {embedded: true, write: func(w io.Writer, _ *plan.Shot, pages []*draw.Page, how rendering) error {
		return png.Write(w, pages[0], how.dpi, how.fonts...)
	}},
	"pdf": {embedded: true, paged: true, write: func(w io.Writer, shot *plan.Shot, pages []*draw.Page, how rendering) error {
		name := strings.TrimSpace(shot.ID + " " + shot.Title)
		f := pdf.New(pdf.Info{Title: name, Desc: pages[0].Desc, Language: language, Fonts: how.fonts})
		f.Mark(name, 0)
		for _, p := range pages {
			f.Add(p)
		}
		return f.Write(w)
	}},
}

// checkDPI returns an error where a png cannot be so fine or so coarse.
func checkDPI(dpi int) error {
	if dpi < png.LeastDPI || dpi > png.MostDPI {
		return fmt.Errorf("--dpi %d: it goes from %d to %d", dpi, png.LeastDPI, png.MostDPI)
	}
	return nil
}

// files returns what the pages of a shot come to; nothing for none.
func (b backend) files(shot *plan.Shot, pages []*draw.Page, how rendering) ([]page, error) {
	if len(pages) == 0 {
		return nil, nil
	}
	groups := [][]*draw.Page{pages}
	if !b.paged {
		groups = nil
		for i := range pages {
			groups = append(groups, pages[i:i+1])
		}
	}
	var files []page
	for i, group := range groups {
		var buf bytes.Buffer
		if err := b.write(&buf, shot, group, how); err != nil {
			return nil, fmt.Errorf("shot %s: %w", shot.ID, err)
		}
		files = append(files, page{shot: shot.ID, number: i + 1, total: len(groups), data: buf.Bytes()})
	}
	return files, nil
}

// shownCharacters is how many characters a note names.
const shownCharacters = 8

// noteLacking says once which characters stand as boxes in the files, and
// how they can be seen; nothing where there are none. No font helps scripts
// whose letters join or run from right to left.
func (s *session) noteLacking(lacking []rune, instead string) {
	if len(lacking) == 0 {
		return
	}
	slices.Sort(lacking)
	lacking = slices.Compact(lacking)
	var list []string
	for _, r := range lacking[:min(len(lacking), shownCharacters)] {
		list = append(list, fmt.Sprintf("%s (U+%04X)", console.Clean(string(r)), r))
	}
	if more := len(lacking) - len(list); more > 0 {
		list = append(list, fmt.Sprintf("%d more", more))
	}
	if slices.ContainsFunc(lacking, func(r rune) bool { return !fonts.NeedsShaping(r) }) {
		instead = "--font FILE takes a font that has it, or " + instead
	}
	s.bar.Clear()
	s.out.Flush()
	fmt.Fprintf(s.errScreen.W, "%s the fonts lack %s; a box with its code stands for each: %s\n",
		s.errScreen.Paint(console.Yellow, "pullscore:"), strings.Join(list, ", "), instead)
}
