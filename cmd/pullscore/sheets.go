// The pages of drawings on their way into files.

package main

import (
	"fmt"

	"pullscore/cmd/internal/files"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/fonts"
)

// A page is one file to write.
type page struct {
	shot, what    string // the shot, and what is drawn of it: "score"
	number, total int
	data          []byte
}

// A pile takes the pages of one drawing after the other: each goes into a
// folder as it comes, or the only one into a file.
type pile struct {
	*session
	out     output
	pages   int
	single  *page  // what a file or standard output can take
	sheaf   *sheaf // where all pages go into one file; else nil
	lacking []rune // characters that the files' fonts lack
}

// add writes pages of a plan.
func (p *pile) add(plan string, pages []page) error {
	p.pages += len(pages)
	for i := range pages {
		if err := p.page(plan, &pages[i]); err != nil {
			return err
		}
	}
	return nil
}

// page writes a page into the folder, or keeps it until it is sure to be the
// only one.
func (p *pile) page(plan string, sheet *page) error {
	if p.out.folder == "" {
		if p.single != nil {
			return fmt.Errorf("there is more than one page, and %s can hold one: name a folder, a pdf, or a --shot of one page", p.out)
		}
		p.single = sheet
		return nil
	}
	path := p.out.name(plan, *sheet)
	if err := p.out.put(path, sheet.data); err != nil {
		return err
	}
	p.bar.Clear()
	return p.wrote(path)
}

// end writes the single page and tells its name, and says which characters the
// files show as boxes.
func (p *pile) end() error {
	if err := p.bind(); err != nil {
		return err
	}
	if p.single != nil && p.out.file == files.Stdin {
		if _, err := p.session.out.Write(p.single.data); err != nil {
			return err
		}
	} else if p.single != nil {
		if err := p.out.put(p.out.file, p.single.data); err != nil {
			return err
		}
		if err := p.wrote(p.out.file); err != nil {
			return err
		}
	}
	p.noteLacking(p.lacking, "an svg shows them in the fonts of your system")
	return nil
}

// bind makes the sheaf the single file, if there is one with pages.
func (p *pile) bind() error {
	if p.sheaf == nil || p.sheaf.pages == 0 {
		return nil
	}
	data, err := p.sheaf.bytes()
	if err != nil {
		return err
	}
	p.pages, p.single = p.sheaf.pages, &page{data: data}
	p.lacking = append(p.lacking, p.sheaf.lacking...)
	return nil
}

// filesOf returns what a drawing of a shot comes to in a form, and the
// characters that stand as boxes in it. what is in the names of its files.
func filesOf(form, what string, shot *plan.Shot, drawn []*draw.Page, how rendering) (pages []page, lacking []rune, err error) {
	back := backends[form]
	pages, err = back.files(shot, drawn, how)
	for i := range pages {
		pages[i].what = what
	}
	if err == nil && back.embedded {
		lacking = fonts.Faces(how.fonts).Lacking(drawn...)
	}
	return pages, lacking, err
}
