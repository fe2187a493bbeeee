package main

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	stddraw "image/draw"
	stdpng "image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/tiff"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/png"
	"pullscore/render/sheet"
)

// agreeDPI is the resolution at which pages are compared. Poppler, whose other
// renderer fits lines to pixels, draws through cairo at finer times that, since
// it puts letters on halves of pixels.
const (
	agreeDPI = 200
	finer    = 2
)

// drawnPage is a page of an example with the shot that it belongs to.
type drawnPage struct {
	name    string
	drawing string
	shot    *plan.Shot
	page    *draw.Page
}

// everyPage takes all pages of tables instead of some.
var everyPage = flag.Bool("everypage", false, "TestBackendsAgree compares every page that is a table, not the fullest alone")

// tables are the drawings that are words and rules alone, alike for every shot, and
// fullest is how many pages of each are compared: those with the most on them.
var tables = []string{"tolerance", "log", "stops", "coverage"}

const fullest = 4

// comparedPages returns the pages of the examples that are compared.
func comparedPages(t *testing.T) (pages []drawnPage) {
	t.Helper()
	left := map[string]int{}
	all := examplePages(t)
	slices.SortStableFunc(all, func(a, b drawnPage) int { return len(b.items()) - len(a.items()) })
	for _, p := range all {
		if slices.Contains(tables, p.drawing) && !*everyPage {
			if left[p.drawing]++; left[p.drawing] > fullest {
				continue
			}
		}
		pages = append(pages, p)
	}
	return pages
}

// items returns all that is on the page.
func (p drawnPage) items() []draw.Item { return slices.Collect(p.page.Root.All()) }

// examplePages returns the score of every shot of every example, and every
// other drawing of each example's first shot, and the sheet of a lens.
func examplePages(t *testing.T) []drawnPage {
	t.Helper()
	files, err := filepath.Glob("../../examples/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal("no examples: ", err)
	}
	var pages []drawnPage
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		res := interp.Interpret(file, src, interp.Options{})
		for i, shot := range res.Plan.Shots {
			for _, d := range drawingTable {
				if d.name != "score" && i > 0 {
					continue
				}
				for k, p := range d.draw(res, shot, sheet.Options{}) {
					pages = append(pages, drawnPage{fmt.Sprintf("%s %s %s %d", filepath.Base(file), shot.ID, d.name, k+1), d.name, shot, p})
				}
			}
		}
	}
	for k, p := range lensPages(sheet.A4) {
		pages = append(pages, drawnPage{fmt.Sprintf("lens sheet %d", k+1), "lens", &plan.Shot{ID: "75"}, p})
	}
	return pages
}

// SVG by librsvg, PDF by poppler and our own PNG, of the pages of the
// examples, differ by antialiasing alone; and pdftotext finds every text.
func TestBackendsAgree(t *testing.T) {
	needs(t, "rsvg-convert", "pdftocairo", "pdftotext")
	fonts := fontConfig(t)
	for _, p := range comparedPages(t) {
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			pdfFile := write(t, dir, "pdf", p)
			ours := png.Image(p.page, agreeDPI)
			if fault := differ(ours, byPoppler(t, pdfFile)); fault != "" {
				t.Errorf("PNG and PDF: %s", fault)
			}
			findsTexts(t, pdfFile, p.page)
			if covered, less := withoutUncovered(p.page); less { // an SVG leaves the rest to the system's fonts
				p.page, ours = covered, png.Image(covered, agreeDPI)
			}
			if fault := differ(ours, byLibrsvg(t, write(t, dir, "svg", p), fonts)); fault != "" {
				t.Errorf("PNG and SVG: %s", fault)
			}
		})
	}
}

// withoutUncovered returns the page without the texts that have characters
// which our fonts lack, and whether it had any.
func withoutUncovered(p *draw.Page) (covered *draw.Page, less bool) {
	covered = edited(p, func(it draw.Item) (draw.Item, bool) {
		text, ok := it.(draw.Text)
		ok = ok && !draw.Covers(text.String)
		less = less || ok
		return draw.Text{}, ok
	})
	return covered, less
}

func needs(t *testing.T, programs ...string) {
	t.Helper()
	for _, program := range programs {
		if _, err := exec.LookPath(program); err != nil {
			t.Skipf("%s is not installed", program)
		}
	}
}

// fontConfig returns an environment in which the fonts that pages are measured
// with are the first of the system's, drawn without hints.
func fontConfig(t *testing.T) []string {
	t.Helper()
	dir := t.TempDir()
	conf := `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig>
<dir>` + dir + `</dir><cachedir>` + dir + `</cachedir>
<match target="font"><edit name="hinting" mode="assign"><bool>false</bool></edit>
<edit name="antialias" mode="assign"><bool>true</bool></edit></match></fontconfig>`
	for name, data := range map[string][]byte{"regular.ttf": goregular.TTF, "bold.ttf": gobold.TTF, "fonts.conf": []byte(conf)} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return []string{"FONTCONFIG_FILE=" + filepath.Join(dir, "fonts.conf")}
}

// write writes a page by a back end of the command.
func write(t *testing.T, dir, form string, p drawnPage) string {
	t.Helper()
	var b bytes.Buffer
	if err := backends[form].write(&b, p.shot, []*draw.Page{p.page}, rendering{dpi: agreeDPI}); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, form+"."+form)
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// byPoppler draws a PDF file, as TIFF: to pack and unpack a PNG of that size
// takes several times as long as to draw it.
func byPoppler(t *testing.T, file string) *image.RGBA {
	t.Helper()
	cmd := exec.Command("pdftocairo", "-tiff", "-tiffcompression", "none", "-singlefile", "-r", fmt.Sprint(agreeDPI*finer), file, file)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", cmd.Path, err, out)
	}
	data, err := os.ReadFile(file + ".tif")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(file + ".tif"); err != nil { // 50 MB
		t.Fatal(err)
	}
	img, err := tiff.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return coarser(rgbaOf(img))
}

// byLibrsvg draws an SVG file. It writes PNG alone.
func byLibrsvg(t *testing.T, file string, env []string) *image.RGBA {
	t.Helper()
	dpi := fmt.Sprint(agreeDPI)
	cmd := exec.Command("rsvg-convert", "--dpi-x", dpi, "--dpi-y", dpi, file)
	cmd.Env = append(os.Environ(), env...)
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s: %v", cmd.Path, err)
	}
	img, err := stdpng.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatalf("%s: %v", cmd.Path, err)
	}
	return rgbaOf(img)
}

func rgbaOf(img image.Image) *image.RGBA {
	if rgba, ok := img.(*image.RGBA); ok {
		return rgba
	}
	rgba := image.NewRGBA(img.Bounds())
	stddraw.Draw(rgba, rgba.Bounds(), img, img.Bounds().Min, stddraw.Src)
	return rgba
}

// coarser returns a picture with as many times fewer pixels as it is finer.
func coarser(img *image.RGBA) *image.RGBA {
	out := image.NewRGBA(image.Rect(0, 0, img.Bounds().Dx()/finer, img.Bounds().Dy()/finer))
	for y := range out.Bounds().Dy() {
		row := out.Pix[y*out.Stride:][:out.Stride]
		for i := range row {
			from := img.Pix[finer*y*img.Stride+finer*(i-i%4)+i%4:]
			sum := 0
			for k := range finer {
				for l := range finer {
					sum += int(from[k*img.Stride+4*l])
				}
			}
			row[i] = uint8(sum / (finer * finer))
		}
	}
	return out
}

// findsTexts checks that poppler finds every text of a page, a shortened one
// in full. Blanks are left out: where words end in a PDF is a guess.
func findsTexts(t *testing.T, file string, p *draw.Page) {
	t.Helper()
	out, err := exec.Command("pdftotext", "-raw", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
	found := squeeze(string(out))
	for it := range p.Root.All() {
		text, ok := it.(draw.Text)
		if !ok {
			continue
		}
		want := text.String
		if text.Full != "" {
			want = draw.Clean(text.Full)
		}
		if !strings.Contains(found, squeeze(want)) {
			t.Errorf("pdftotext does not find %q", want)
		}
	}
}

// Two pictures agree if their ink does, within what antialiasing moves: seen
// through a small window, where a line or a letter would be missed or has
// moved, and through a large one, where a pale tint would be missed. Windows
// are millimetres, tolerances shares of the way from black to white. The large one
// lets pass 0.026, little more than the 0.025 that poppler's letters, on halves of
// pixels, are off where a window is full of big or bold type. They are in their places.
var windows = []struct{ w, h, tolerance float64 }{
	{0.45, 0.45, 0.22}, {0.6, 4, 0.07}, {4, 0.6, 0.07}, {3, 3, 0.026},
}

// differ says where two pictures disagree most, or "" if they agree.
func differ(a, b *image.RGBA) string {
	const px = agreeDPI / 25.4
	if d := a.Bounds().Size().Sub(b.Bounds().Size()); max(d.X, -d.X) > 1 || max(d.Y, -d.Y) > 1 {
		return fmt.Sprintf("sizes %v and %v", a.Bounds().Size(), b.Bounds().Size())
	}
	bounds := a.Bounds().Intersect(b.Bounds()).Inset(2) // the last pixels are cut by the paper's edge
	for channel := range 3 {
		sum := sums(a, b, bounds, channel)
		for _, w := range windows {
			if worst, at := sum.worst(int(math.Round(w.w*px)), int(math.Round(w.h*px))); worst > w.tolerance {
				return fmt.Sprintf("%.3f of the range apart within %v by %v mm at %.1f, %.1f mm", worst, w.w, w.h, float64(at.X)/px, float64(at.Y)/px)
			}
		}
	}
	return ""
}

// A summed is a table of the sums of differences above and left of each pixel.
// They may wrap round: the sum over a window, from four of them, does not.
type summed struct {
	w, h int
	sum  []int32
}

func sums(a, b *image.RGBA, bounds image.Rectangle, channel int) summed {
	s := summed{w: bounds.Dx(), h: bounds.Dy()}
	s.sum = make([]int32, (s.w+1)*(s.h+1))
	for y := range s.h {
		i, j := a.PixOffset(bounds.Min.X, y+bounds.Min.Y)+channel, b.PixOffset(bounds.Min.X, y+bounds.Min.Y)+channel
		above, here := s.row(y), s.row(y+1)
		sum := int32(0)
		for x := range s.w {
			sum += int32(a.Pix[i+4*x]) - int32(b.Pix[j+4*x])
			here[x+1] = above[x+1] + sum
		}
	}
	return s
}

// row returns the sums above line y.
func (s summed) row(y int) []int32 { return s.sum[y*(s.w+1):][:s.w+1] }

// worst returns the largest mean difference in a box of w by h pixels, and its
// corner.
func (s summed) worst(w, h int) (worst float64, at image.Point) {
	most := int32(0)
	for y := 0; y+h <= s.h; y++ {
		top, bottom := s.row(y), s.row(y+h)
		for x := range s.w - w + 1 {
			d := bottom[x+w] - bottom[x] - top[x+w] + top[x]
			if d = max(d, -d); d > most {
				most, at = d, image.Pt(x, y)
			}
		}
	}
	return float64(most) / float64(255*w*h), at
}

// disagreements are changes of a page that must be seen.
var disagreements = []struct {
	name   string
	change func(draw.Item) (draw.Item, bool) // the item changed; false: it does not apply
}{
	{"a text 0.3 mm to the right", func(it draw.Item) (draw.Item, bool) {
		text, ok := it.(draw.Text)
		text.At.X += 0.3
		return text, ok
	}},
	{"a text 0.3 mm lower", func(it draw.Item) (draw.Item, bool) {
		text, ok := it.(draw.Text)
		text.At.Y += 0.3
		return text, ok
	}},
	{"a text lost", func(it draw.Item) (draw.Item, bool) {
		_, ok := it.(draw.Text)
		return draw.Text{}, ok
	}},
	{"a text in the other weight", func(it draw.Item) (draw.Item, bool) {
		text, ok := it.(draw.Text)
		text.Font.Bold = !text.Font.Bold
		return text, ok && len(text.String) > 3
	}},
	{"a line's dashes lost", func(it draw.Item) (draw.Item, bool) {
		line, ok := it.(draw.Line)
		ok = ok && line.Stroke.Dash != nil && line.Stroke.Width >= 0.2
		line.Stroke.Dash = nil
		return line, ok
	}},
	{"a line 0.3 mm lower and to the right", func(it draw.Item) (draw.Item, bool) {
		line, ok := it.(draw.Line)
		ok = ok && line.Stroke.Dash == nil && line.Stroke.Width >= 0.2
		line.From.X, line.To.X, line.From.Y, line.To.Y = line.From.X+0.3, line.To.X+0.3, line.From.Y+0.3, line.To.Y+0.3
		return line, ok
	}},
	{"a hatch or a curve lost", func(it draw.Item) (draw.Item, bool) {
		path, ok := it.(draw.Path)
		return draw.Path{}, ok && (path.Stroke.Ink == draw.Blue || path.Stroke.Ink == draw.Black)
	}},
	{"a tint lost", func(it draw.Item) (draw.Item, bool) {
		rect, ok := it.(draw.Rect)
		return draw.Rect{}, ok && rect.Fill == draw.Faint && rect.Box.W > 4 && rect.Box.H > 4
	}},
}

// What the comparison is for must not slip through it: on a page of an example,
// each of these changes is seen.
func TestDisagreementIsSeen(t *testing.T) {
	pages := examplePages(t)
	page := pages[slices.IndexFunc(pages, func(p drawnPage) bool { return strings.HasSuffix(p.name, "31C score 1") })].page
	for _, tc := range disagreements {
		t.Run(tc.name, func(t *testing.T) {
			right := png.Image(page, agreeDPI)
			for i := 0; ; i++ {
				wrong, found := changed(page, i, tc.change)
				if !found && i == 0 {
					t.Fatal("nothing on the page to change")
				}
				if !found || i == 3 {
					return
				}
				fault := differ(right, png.Image(wrong, agreeDPI))
				if fault == "" {
					t.Errorf("number %d is not seen", i)
				}
				t.Log(fault)
			}
		})
	}
}

// changed returns the page with its nth item that a change applies to changed.
func changed(p *draw.Page, n int, change func(draw.Item) (draw.Item, bool)) (page *draw.Page, found bool) {
	page = edited(p, func(it draw.Item) (draw.Item, bool) {
		other, ok := change(it)
		if !ok {
			return it, false
		}
		n--
		found = found || n == -1
		return other, n == -1
	})
	return page, found
}

// edited returns the page with every item that an edit applies to replaced.
func edited(p *draw.Page, edit func(draw.Item) (draw.Item, bool)) *draw.Page {
	var copied func(g draw.Group) draw.Group
	copied = func(g draw.Group) draw.Group {
		g.Items = slices.Clone(g.Items)
		for i, it := range g.Items {
			if sub, ok := it.(*draw.Group); ok {
				c := copied(*sub)
				g.Items[i] = &c
			} else if other, ok := edit(it); ok {
				g.Items[i] = other
			}
		}
		return g
	}
	c := *p
	c.Root = copied(p.Root)
	return &c
}
