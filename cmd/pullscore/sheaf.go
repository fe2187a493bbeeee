// One PDF file with the drawings of many shots.

package main

import (
	"bytes"
	"cmp"
	"fmt"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/brief"
	"pullscore/render/draw"
	"pullscore/render/fonts"
	"pullscore/render/pdf"
	"pullscore/render/sheet"
)

// A set is the pages of one drawing of a shot.
type set struct {
	what  string // the name of the drawing
	pages []*draw.Page
	whole bool // it shows the whole plan, or a scene of it
}

// A sheaf is a PDF file in the making. Its outline has the scenes, in each scene the
// shots, and in each shot the drawings.
type sheaf struct {
	file    *pdf.File
	fonts   []*fonts.File
	pages   int
	plans   []*plan.Plan
	shots   []*plan.Shot
	scene   string // that begins with the next page
	desc    string // of the first page
	lacking []rune // characters that the file's fonts lack
}

func newSheaf(how rendering) *sheaf {
	return &sheaf{file: pdf.New(pdf.Info{Language: language, Fonts: how.fonts}), fonts: how.fonts}
}

// begin begins a scene; what it is called has to tell it from all others.
func (f *sheaf) begin(p *plan.Plan, title string) { f.plans, f.scene = append(f.plans, p), title }

// add adds the drawings of a shot, and returns the number of its first page and the ID of
// that page; 0 if nothing is drawn.
func (f *sheaf) add(shot *plan.Shot, sets []set) (first int, id string) {
	f.shots = append(f.shots, shot)
	prefix := fmt.Sprintf("s%d-", len(f.shots))
	var all []*draw.Page
	for _, s := range sets {
		all = append(all, s.pages...)
	}
	if len(all) == 0 {
		return 0, ""
	}
	draw.Under(prefix, all...)
	if all[0].Root.ID == "" {
		all[0].Root.ID = prefix
	}
	f.outline(shot)
	f.desc = cmp.Or(f.desc, all[0].Desc)
	for _, s := range sets {
		for i, p := range s.pages {
			if i == 0 {
				f.file.Mark(s.what, 2)
			}
			f.file.Add(p)
		}
	}
	f.lacking = append(f.lacking, fonts.Faces(f.fonts).Lacking(all...)...)
	first, f.pages = f.pages+1, f.pages+len(all)
	return first, all[0].Root.ID
}

// outline puts a shot into the outline, below its scene.
func (f *sheaf) outline(shot *plan.Shot) {
	if f.scene != "" {
		f.file.Mark(f.scene, 0)
		f.scene = ""
	}
	f.file.Mark(sheet.ShotName(shot), 1)
}

// bytes returns the file.
func (f *sheaf) bytes() ([]byte, error) {
	title, desc := brief.Title(f.plans), "Drawings of "+units.Count(len(f.shots), "shot")+"."
	if len(f.shots) == 1 {
		title, desc = sheet.ShotName(f.shots[0]), f.desc
	}
	f.file.Name(pdf.Info{Title: title, Desc: desc, Language: language})
	var b bytes.Buffer
	err := f.file.Write(&b)
	return b.Bytes(), err
}
