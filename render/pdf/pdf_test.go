package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
	"pullscore/render/fonts"
	"pullscore/render/testing/fonttest"
)

func page(texts ...string) *draw.Page {
	p := &draw.Page{Title: "Page", W: 120, H: 60}
	g := p.Root.Group("all")
	g.Title = "A group (of things)"
	g.Line(1, 1, 2.3456, 4, draw.Stroke{Ink: draw.Blue, Width: 0.2, Dash: []float64{1, 0.5}})
	g.Add(
		draw.Rect{Box: draw.Box{X: 1, Y: 2, W: 3, H: 4}, Fill: draw.Faint},
		draw.Disc{Centre: draw.Point{X: 5, Y: 5}, Radius: 2, Fill: draw.Paper, Stroke: draw.Stroke{Ink: draw.Black, Width: 0.1}},
		draw.Path{Runs: [][]draw.Point{{{X: 0, Y: 0}, {X: 1, Y: 1}}, {}}, Closed: true, Fill: draw.Pale},
		draw.Path{},
	)
	for i, text := range texts {
		g.Add(draw.NewText(10, 10+float64(5*i), text, draw.Font{Size: 8, Bold: i%2 == 1}, draw.Black))
	}
	return p
}

// A document is what a test puts into a file.
type document struct {
	Info
	Pages   []*draw.Page
	Outline []entry
}

type entry struct {
	title       string
	level, page int
}

func (d document) write(w io.Writer) error {
	f := New(d.Info)
	for i := range max(len(d.Pages), 1) {
		for _, e := range d.Outline {
			if e.page == i {
				f.Mark(e.title, e.level)
			}
		}
		if i < len(d.Pages) {
			f.Add(d.Pages[i])
		}
	}
	return f.Write(w)
}

func written(t interface{ Fatal(...any) }, d document) []byte {
	var b bytes.Buffer
	if err := d.write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// reads has a program of poppler read the file and returns what it prints.
func reads(t interface {
	Fatal(...any)
	Skipf(string, ...any)
}, dir string, data []byte, program string, args ...string) string {
	if _, err := exec.LookPath(program); err != nil {
		t.Skipf("%s is not installed", program)
	}
	file := filepath.Join(dir, "x.pdf")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	var complaints strings.Builder
	cmd := exec.Command(program, append(args, file, "-")...)
	if program == "pdfinfo" || program == "pdffonts" {
		cmd.Args = cmd.Args[:len(cmd.Args)-1]
	}
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatal(program, ": ", err, complaints.String())
	}
	return string(out)
}

func TestDocumentInfo(t *testing.T) {
	d := document{Info: Info{Title: "Ferry 🛥 (9)", Desc: "A sentence.", Language: "en"}, Pages: []*draw.Page{page("a"), page("b")}}
	info := reads(t, t.TempDir(), written(t, d), "pdfinfo")
	for _, want := range []string{"Ferry 🛥 (9)", "A sentence.", "Pages:           2", "340.16 x 170.08 pts"} {
		if !strings.Contains(info, want) {
			t.Errorf("no %q in\n%s", want, info)
		}
	}
	if !bytes.Contains(written(t, d), []byte("/Lang (en)")) {
		t.Error("no language")
	}
}

// Poppler finds every text, the shortened and those that the fonts lack in
// full.
func TestTextIsFound(t *testing.T) {
	p := page("NADIA 5′7″ ½ fi ffl", "花子 and ЙОЛЬДА", `( \ ) "'`, "a > b < c & d", "🛥")
	p.Root.Add(draw.NewText(60, 40, "A very long name of somebody", draw.Font{Size: 8}, draw.Black).Shortened(20))
	found := reads(t, t.TempDir(), written(t, document{Pages: []*draw.Page{p}}), "pdftotext", "-raw")
	for _, want := range []string{"NADIA 5′7″ ½ fi ffl", "花子 and ЙОЛЬДА", `( \ ) "'`, "a > b < c & d", "🛥", "A very long name of somebody"} {
		if !strings.Contains(found, want) {
			t.Errorf("no %q in\n%s", want, found)
		}
	}
}

// The texts are as wide as they were measured: poppler's boxes of words
// against the table of widths.
func TestTextsAreAsWideAsMeasured(t *testing.T) {
	for _, bold := range []bool{false, true} {
		font := draw.Font{Size: 20, Bold: bold}
		p := &draw.Page{W: 300, H: 50}
		text := draw.NewText(10, 20, "Wwide5′7″½Ümlaut°ЖΩilTAVA", font, draw.Black)
		p.Root.Add(text)
		out := reads(t, t.TempDir(), written(t, document{Pages: []*draw.Page{p}}), "pdftotext", "-bbox")
		var x0, y0, x1, y1 float64
		at := strings.Index(out, "<word")
		if _, err := fmt.Sscanf(out[at:], `<word xMin="%f" yMin="%f" xMax="%f" yMax="%f"`, &x0, &y0, &x1, &y1); err != nil {
			t.Fatal(err, out)
		}
		if got := (x1 - x0) * draw.MM; math.Abs(got/text.Width-1) > 0.001 {
			t.Errorf("%.3f mm, measured as %.3f", got, text.Width)
		}
		if math.Abs(x0*draw.MM-10) > 0.01 {
			t.Errorf("starts at %.3f mm", x0*draw.MM)
		}
	}
}

func TestAnyTextMakesAFile(t *testing.T) {
	var d document
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		written(t, document{Info: Info{Title: text}, Pages: []*draw.Page{page(text)}, Outline: []entry{{title: text}}})
		d.Outline = append(d.Outline, entry{title: text, page: len(d.Pages)})
		d.Pages = append(d.Pages, page(text))
	})
	info := reads(t, t.TempDir(), written(t, d), "pdfinfo") // all in one file, for speed
	if want := fmt.Sprintf("Pages:           %d\n", len(d.Pages)); !strings.Contains(info, want) {
		t.Errorf("no %q in\n%s", want, info)
	}
}

// A page looks the same wherever it stands: nothing of the strokes and inks of
// the page before it is left.
func TestPagesStandAlone(t *testing.T) {
	solid := &draw.Page{Title: "Bar", W: 120, H: 60}
	solid.Root.Line(10, 30, 60, 30, draw.Stroke{Ink: draw.Black, Width: 0.35})
	dashed := &draw.Page{Title: "Dashes", W: 120, H: 60}
	dashed.Root.Line(10, 30, 60, 30, draw.Stroke{Ink: draw.Blue, Width: 0.2, Dash: []float64{1, 0.5}})
	picture := func(number string, pages ...*draw.Page) string {
		data := written(t, document{Pages: pages})
		return reads(t, t.TempDir(), data, "pdftocairo", "-png", "-singlefile", "-r", "150", "-f", number, "-l", number)
	}
	if alone, second := picture("1", solid), picture("2", dashed, solid); alone != second {
		t.Error("the second page of a file looks otherwise than it does alone")
	}
}

func TestSameBytes(t *testing.T) {
	d := document{Info: Info{Title: "x"}, Pages: []*draw.Page{page("Some text, 花子", "ΑΒΓ Жя"), page("more")}, Outline: []entry{{"a", 0, 0}, {"b", 1, 1}}}
	first := written(t, d)
	for range 20 {
		if !bytes.Equal(first, written(t, d)) {
			t.Fatal("another run gives other bytes")
		}
	}
}

func TestOutlineInOrder(t *testing.T) {
	pages := []*draw.Page{page(), page()}
	for _, tc := range []struct {
		name    string
		outline []entry
		fine    bool
	}{
		{"nested", []entry{{"scene", 0, 0}, {"shot", 1, 0}, {"shot", 1, 1}, {"scene", 0, 1}}, true},
		{"begins below the top", []entry{{"shot", 1, 0}}, false},
		{"skips a level", []entry{{"scene", 0, 0}, {"drawing", 2, 0}}, false},
	} {
		if err := (document{Pages: pages, Outline: tc.outline}).write(io.Discard); (err == nil) != tc.fine {
			t.Errorf("%s: %v", tc.name, err)
		}
	}
	if err := (document{}).write(io.Discard); err == nil {
		t.Error("a file without pages was written")
	}
	f := New(Info{})
	f.Add(page())
	f.Mark("after the last page", 0)
	if err := f.Write(io.Discard); err == nil {
		t.Error("a mark without a page was written")
	}
}

type failing struct{}

var errFull = errors.New("no space left")

func (failing) Write([]byte) (int, error) { return 0, errFull }

func TestWriteErrorsAreKept(t *testing.T) {
	if err := (document{Pages: []*draw.Page{page()}}).write(failing{}); !errors.Is(err, errFull) {
		t.Error(err)
	}
}

func TestCoordinatesMustBeNumbers(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1)} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%v was written", v)
				}
			}()
			p := page()
			p.Root.Line(v, 0, 1, 1, draw.Stroke{Ink: draw.Black, Width: 1})
			_ = (document{Pages: []*draw.Page{p}}).write(io.Discard)
		}()
	}
}

// A letter that the embedded fonts lack comes from the first file that has it, and is found
// as itself. The file carries the font.
func TestFontFiles(t *testing.T) {
	file, err := fonts.Read(fonttest.Font{Runes: []rune("Ա花")}.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	p := page("NADIA 花 and Ա", "子")
	d := document{Info: Info{Title: "Fonts", Fonts: []*fonts.File{file}}, Pages: []*draw.Page{p, page("花")}}
	found := reads(t, t.TempDir(), written(t, d), "pdftotext", "-raw")
	for _, want := range []string{"NADIA 花 and Ա", "子"} {
		if !strings.Contains(found, want) {
			t.Errorf("no %q in\n%s", want, found)
		}
	}
	list := reads(t, t.TempDir(), written(t, d), "pdffonts")
	if strings.Count(list, "yes no  yes") != 3 { // embedded, with a map of Unicode
		t.Errorf("fonts:\n%s", list)
	}
	d.Fonts = nil
	if list = reads(t, t.TempDir(), written(t, d), "pdffonts"); strings.Count(list, "yes no  yes") != 2 {
		t.Errorf("fonts:\n%s", list)
	}
}
