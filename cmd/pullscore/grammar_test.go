// The grammar of all papers, on every paper of every example.

package main

import (
	"bytes"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/svg"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// A paper is a drawing of a shot of an example, with its pages.
type paper struct {
	name  string
	file  string // the example
	paper string // a4 or letter
	what  string // the drawing
	shot  *plan.Shot
	pages []*draw.Page
}

// drawnPapers returns every drawing of every shot of every example, on both sheets.
var drawnPapers = sync.OnceValues(func() ([]paper, error) {
	files, err := filepath.Glob("../../examples/*.pull")
	if err != nil {
		return nil, err
	}
	var list []paper
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		res := interp.Interpret(file, src, interp.Options{})
		for i, shot := range res.Plan.Shots {
			for _, d := range drawingTable {
				if ofPlan(d.name) && i > 0 {
					continue
				}
				for _, size := range []string{"a4", "letter"} {
					name := fmt.Sprintf("%s %s %s %s", filepath.Base(file), shot.ID, d.name, size)
					list = append(list, paper{name, file, size, d.name, shot, d.draw(res, shot, sheet.Options{Paper: papers[size]})})
				}
			}
		}
	}
	return list, nil
})

// eachPaper returns what drawnPapers does.
func eachPaper(t *testing.T) []paper {
	t.Helper()
	list, err := drawnPapers()
	if err != nil || len(list) == 0 {
		t.Fatal("no papers: ", err)
	}
	return list
}

// In any viewer no text lies on another, on a limit or beyond the page; the legend is made
// of the signs of the page; dashes, weights and units have one meaning; subjects stand in
// one order.
func TestPapersKeepTheGrammar(t *testing.T) {
	for _, p := range eachPaper(t) {
		plans.CheckPaper(t, p.name, sheet.Names(p.shot), p.pages)
	}
}

// The links of every paper lead to places on it, and those of all papers of a plan too; no
// two places have one name.
func TestLinksOfPapers(t *testing.T) {
	byFile := map[string][]*draw.Page{}
	links := 0
	for _, p := range eachPaper(t) {
		if p.paper != "a4" {
			continue
		}
		for _, fault := range drawtest.Links(p.pages) {
			t.Errorf("%s: %s", p.name, fault)
		}
		for _, page := range p.pages {
			for it := range page.Root.All() {
				if g, ok := it.(*draw.Group); ok && g.Link != "" {
					links++
				}
			}
		}
		byFile[p.file] = append(byFile[p.file], p.pages...)
	}
	for file, pages := range byFile {
		for _, fault := range drawtest.Links(pages) {
			t.Errorf("%s: %s", file, fault)
		}
	}
	if links < 20 {
		t.Errorf("only %d links", links)
	}
}

// dejavu is where most systems keep these fonts.
const dejavu = "/usr/share/fonts/truetype/dejavu"

// condensed returns how wide a text is in the only fonts of many systems.
func condensed(t *testing.T) func(draw.Text) draw.Text {
	t.Helper()
	var fonts [2]*sfnt.Font
	for i, name := range []string{"DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf"} {
		data, err := os.ReadFile(filepath.Join(dejavu, name))
		if err != nil {
			t.Skip("DejaVu Sans Condensed is not installed: ", err)
		}
		if fonts[i], err = sfnt.Parse(data); err != nil {
			t.Fatal(err)
		}
	}
	var buf sfnt.Buffer
	const em = 2048
	return func(text draw.Text) draw.Text {
		f := fonts[0]
		if text.Font.Bold {
			f = fonts[1]
		}
		sum := 0.0
		for _, r := range text.String {
			index, err := f.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			advance, err := f.GlyphAdvance(&buf, index, fixed.I(em), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			sum += float64(advance) / 64 / em
		}
		text.Width = sum * text.Font.Size * draw.MM
		return text
	}
}

// With these fonts alone no text lies on another or leaves the page.
func TestPapersInOtherFonts(t *testing.T) {
	set := condensed(t)
	for _, p := range eachPaper(t) {
		for i, page := range p.pages {
			for _, fault := range drawtest.FaultsAs(page, set) {
				t.Errorf("%s, page %d: %s", p.name, i+1, fault)
			}
		}
	}
}

// Librsvg with these fonts alone inks nothing outside of what texts take in them, so what
// is found above is what such a viewer shows.
func TestOtherFontsInLibrsvg(t *testing.T) {
	needs(t, "rsvg-convert")
	set := condensed(t)
	dir := t.TempDir()
	conf := `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>` + dejavu + `</dir><cachedir>` + dir + `</cachedir></fontconfig>`
	if err := os.WriteFile(filepath.Join(dir, "fonts.conf"), []byte(conf), 0o644); err != nil {
		t.Fatal(err)
	}
	drawn := map[string]bool{}
	for _, p := range eachPaper(t) {
		if p.paper != "a4" || drawn[p.what] || len(p.pages) == 0 {
			continue
		}
		drawn[p.what] = true
		page, boxes := lettersOf(p.pages[0], set)
		file := filepath.Join(dir, "x.svg")
		var b bytes.Buffer
		if err := svg.Write(&b, page); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		img := byLibrsvg(t, file, []string{"FONTCONFIG_FILE=" + filepath.Join(dir, "fonts.conf")})
		checkInk(t, p.name, img, boxes)
	}
}

// lettersOf returns a page that holds the texts of another alone, in black, and the boxes
// that they take as set sets them.
func lettersOf(p *draw.Page, set func(draw.Text) draw.Text) (*draw.Page, []draw.Box) {
	page := &draw.Page{W: p.W, H: p.H}
	var boxes []draw.Box
	for it := range p.Root.All() {
		if text, ok := it.(draw.Text); ok && draw.Covers(text.String) {
			text.Ink = draw.Black
			page.Root.Add(text)
			boxes = append(boxes, set(text).Box().Grow(inkAir))
		}
	}
	return page, boxes
}

// inkAir is how far a letter may stand out of its box, in millimetres: rounding, hints and
// strokes that lean over the edge.
const inkAir = 0.4

// checkInk fails for ink outside the boxes, and for boxes without ink.
func checkInk(t *testing.T, name string, img image.Image, boxes []draw.Box) {
	t.Helper()
	const scale = agreeDPI / 25.4
	bounds := img.Bounds()
	inked := make([]bool, len(boxes))
	outside := 0
	for y := bounds.Min.Y; y < bounds.Max.Y-1; y++ { // the page covers the last pixels in part
		for x := bounds.Min.X; x < bounds.Max.X-1; x++ {
			if r, _, _, _ := img.At(x, y).RGBA(); r > 0x8000 {
				continue
			}
			at, held := draw.Box{X: (float64(x) + 0.5) / scale, Y: (float64(y) + 0.5) / scale}, false
			for i, b := range boxes {
				if b.Holds(at) {
					held, inked[i] = true, true
				}
			}
			if !held {
				outside++
			}
		}
	}
	if outside > 0 {
		t.Errorf("%s: %d pixels are inked outside of the texts", name, outside)
	}
	for i, b := range boxes {
		if !inked[i] && b.W > 2*inkAir+0.5 {
			t.Errorf("%s: no ink in %.1f", name, b)
		}
	}
}

// Windows, zones, curves, time and the bar of 50 mm are what the plan says, on every paper.
func TestPapersAreTrueToScale(t *testing.T) {
	for _, p := range eachPaper(t) {
		for _, fault := range append(drawtest.Scale(p.pages, p.shot), drawtest.Curve(p.pages, p.shot)...) {
			t.Errorf("%s: %s", p.name, fault)
		}
	}
}
