package png

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"image/color"
	stdpng "image/png"
	"math"
	"testing"

	"pullscore/render/draw"
	"pullscore/render/fonts"
	"pullscore/render/testing/fonttest"
)

const testDPI = 254 // ten pixels a millimetre

// ink returns how much of the page is inked, in square millimetres of black.
func ink(p *draw.Page) float64 {
	img, sum := Image(p, testDPI), 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		sum += 1 - float64(img.Pix[i])/255
	}
	return sum / 100 / (1 - float64(draw.Black.Light().R)/255)
}

// A shape covers as much as geometry says.
func TestAreas(t *testing.T) {
	black := draw.Stroke{Ink: draw.Black, Width: 0.5}
	dashed := black
	dashed.Dash = []float64{1, 2}
	square := []draw.Point{{X: 5, Y: 5}, {X: 15, Y: 5}, {X: 15, Y: 15}, {X: 5, Y: 15}}
	hole := []draw.Point{{X: 8, Y: 8}, {X: 8, Y: 12}, {X: 12, Y: 12}, {X: 12, Y: 8}}
	for _, tc := range []struct {
		name string
		item draw.Item
		want float64
	}{
		{"rect", draw.Rect{Box: draw.Box{X: 3.033, Y: 4.01, W: 10, H: 2.5}, Fill: draw.Black}, 25},
		{"outline", draw.Rect{Box: draw.Box{X: 3, Y: 4, W: 10, H: 5}, Stroke: black}, 15},
		{"disc", draw.Disc{Centre: draw.Point{X: 10, Y: 10}, Radius: 6, Fill: draw.Black}, 36 * math.Pi},
		{"circle", draw.Disc{Centre: draw.Point{X: 10, Y: 10}, Radius: 6, Stroke: black}, 6 * math.Pi},
		{"line", draw.Line{From: draw.Point{X: 2, Y: 2}, To: draw.Point{X: 14, Y: 18}, Stroke: black}, 10},
		{"hairline", draw.Line{From: draw.Point{X: 2, Y: 2}, To: draw.Point{X: 18, Y: 2}, Stroke: draw.Stroke{Ink: draw.Black, Width: 0.05}}, 0.8},
		{"dashes", draw.Line{From: draw.Point{X: 2, Y: 3}, To: draw.Point{X: 17, Y: 3}, Stroke: dashed}, 2.5},
		{"hole", draw.Path{Runs: [][]draw.Point{square, hole}, Closed: true, Fill: draw.Black}, 84},
		{"partly off the page", draw.Rect{Box: draw.Box{X: -5, Y: 15, W: 10, H: 10}, Fill: draw.Black}, 25},
		{"off the page", draw.Rect{Box: draw.Box{X: 50, Y: 50, W: 10, H: 10}, Fill: draw.Black}, 0},
		{"nothing", draw.Path{Runs: [][]draw.Point{{}}, Closed: true, Fill: draw.Black, Stroke: black}, 0},
		{"a point", draw.Line{From: draw.Point{X: 2, Y: 3}, To: draw.Point{X: 2, Y: 3}, Stroke: black}, 0},
	} {
		p := &draw.Page{W: 20, H: 20}
		p.Root.Add(tc.item)
		if got := ink(p); math.Abs(got-tc.want) > 0.012*tc.want+0.01 {
			t.Errorf("%s: %.3f mm², want %.3f", tc.name, got, tc.want)
		}
	}
}

// A curve of many short chords is as solid as a straight line.
func TestManyChordsLeaveNoHoles(t *testing.T) {
	p := &draw.Page{W: 40, H: 40}
	var run []draw.Point
	for i := range 2000 {
		a := float64(i) / 1999 * 3
		run = append(run, draw.Point{X: 20 + 15*math.Cos(a), Y: 20 + 15*math.Sin(a)})
	}
	p.Root.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Stroke{Ink: draw.Black, Width: 1}})
	if got, want := ink(p), 45.0; math.Abs(got/want-1) > 0.03 { // the stroker counts in 64ths of a pixel
		t.Errorf("%.2f mm², want %.2f", got, want)
	}
	img := Image(p, testDPI)
	black := draw.Black.Light().R
	for i := range run {
		x, y := int(run[i].X*10), int(run[i].Y*10)
		if got := img.RGBAAt(x, y).R; i > 5 && i < 1994 && got != black {
			t.Fatalf("the middle of the line is %d at %d, %d", got, x, y)
		}
	}
}

// A text takes the room that was measured for it.
func TestTextIsWhereItWasMeasured(t *testing.T) {
	p := &draw.Page{W: 60, H: 20}
	text := draw.NewText(55, 12, "HIDDENIH", draw.Font{Size: 20, Bold: true}, draw.Black).Aligned(draw.End)
	p.Root.Add(text)
	img := Image(p, testDPI)
	least, most, top, low := 1e9, 0.0, 1e9, 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		if img.Pix[i] < 128 {
			x, y := float64(i%img.Stride/4)/10, float64(i/img.Stride)/10
			least, most, top, low = min(least, x), max(most, x), min(top, y), max(low, y)
		}
	}
	em := 20 * draw.MM
	box := text.Box()
	if least < box.X || least > box.X+0.12*em || most > box.Right() || most < box.Right()-0.12*em {
		t.Errorf("from %.2f to %.2f, measured as %v", least, most, box)
	}
	if math.Abs(low-12) > 0.15 || top < box.Y || top > 12-0.6*em {
		t.Errorf("from %.2f down to %.2f on the baseline 12", top, low)
	}
}

func TestFileSaysItsSize(t *testing.T) {
	p := &draw.Page{Title: "Ferry 花", Desc: "A sentence.", W: 50.8, H: 25.4}
	var b bytes.Buffer
	if err := Write(&b, p, 300); err != nil {
		t.Fatal(err)
	}
	img, err := stdpng.Decode(bytes.NewReader(b.Bytes())) // checks the sums of all chunks
	if err != nil {
		t.Fatal(err)
	}
	if size := img.Bounds().Size(); size.X != 600 || size.Y != 300 {
		t.Errorf("%v pixels", size)
	}
	at := bytes.Index(b.Bytes(), []byte("pHYs"))
	// 300 an inch is 11811 a metre, rounded.
	if got := binary.BigEndian.Uint32(b.Bytes()[at+4:]); got != 11811 || b.Bytes()[at+12] != 1 {
		t.Errorf("%d pixels a metre", got)
	}
	for _, want := range []string{"Title\x00\x00\x00\x00\x00Ferry 花", "A sentence."} {
		if !bytes.Contains(b.Bytes(), []byte(want)) {
			t.Errorf("no %q", want)
		}
	}
	if c := img.At(300, 150); c != (color.RGBA{255, 255, 255, 255}) {
		t.Errorf("an empty page is %v", c)
	}
}

type failing struct{}

var errFull = errors.New("no space left")

func (failing) Write([]byte) (int, error) { return 0, errFull }

func TestWriteErrorsAreKept(t *testing.T) {
	if err := Write(failing{}, &draw.Page{W: 10, H: 10}, DefaultDPI); !errors.Is(err, errFull) {
		t.Error(err)
	}
}

func TestBounds(t *testing.T) {
	for name, draws := range map[string]func(){
		"resolution": func() { Image(&draw.Page{W: 10, H: 10}, MostDPI+1) },
		"coordinate": func() {
			p := &draw.Page{W: 10, H: 10}
			p.Root.Line(math.NaN(), 0, 1, 1, draw.Stroke{Ink: draw.Black, Width: 1})
			Image(p, DefaultDPI)
		},
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s out of bounds was drawn", name)
				}
			}()
			draws()
		}()
	}
}

// A text that is turned by a right angle has the ink of the level one, turned: what lies
// right of its point now lies below it.
func TestTurnedTextIsTurned(t *testing.T) {
	text := draw.NewText(15, 15, "LT", draw.Font{Size: 20, Bold: true}, draw.Black)
	page := func(turn float64) *draw.Page {
		p := &draw.Page{W: 30, H: 30}
		p.Root.Add(text.Turned(turn))
		return p
	}
	level, turned := Image(page(0), testDPI), Image(page(90), testDPI)
	const size = 300 // pixels, and the text's point in the middle
	off, inked := 0.0, 0.0
	for y := range size {
		for x := range size {
			a, b := 255-float64(level.RGBAAt(x, y).R), 255-float64(turned.RGBAAt(size-1-y, x).R)
			off, inked = off+math.Abs(a-b), inked+a
		}
	}
	if inked == 0 || off > 0.01*inked {
		t.Errorf("%.0f of %.0f of the ink lie elsewhere", off, inked)
	}
}

// The dots of a silence are there at every resolution, and apart.
func TestDots(t *testing.T) {
	p := &draw.Page{W: 20, H: 4}
	p.Root.Line(1, 2, 19, 2, draw.Unsaid(draw.Black))
	for _, dpi := range []int{LeastDPI, DefaultDPI, MostDPI} {
		img, dark := Image(p, dpi), 0.0
		for y := range img.Rect.Dy() {
			for x := range img.Rect.Dx() {
				dark += 1 - float64(img.RGBAAt(x, y).R)/255
			}
		}
		scale := float64(dpi) / 25.4
		// 18 mm of dots 0.91 apart, each a disc 0.3 wide in an ink of 0x11.
		want := math.Ceil(18/0.91) * math.Pi * 0.15 * 0.15 * scale * scale * (1 - 0x11/255.0)
		if math.Abs(dark/want-1) > 0.12 {
			t.Errorf("%d dpi: %.1f pixels are dark, want %.1f", dpi, dark, want)
		}
	}
}

// A letter that the embedded fonts lack is drawn from the first file that has it.
func TestFontFiles(t *testing.T) {
	file, err := fonts.Read(fonttest.Font{Runes: []rune{'花'}}.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	p := &draw.Page{W: 30, H: 20}
	f := draw.Font{Size: 10 / draw.MM} // an em of 10 mm
	p.Root.Add(draw.NewText(25, 15, "花", f, draw.Black).Aligned(draw.End))
	img := Image(p, 254, file)
	dark := image.Rectangle{}
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if img.RGBAAt(x, y).R < 0x80 {
				dark = dark.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	const em = 100 // pixels
	left := 250 - em*fonttest.Advance/1000
	want := image.Rect(left+em*fonttest.Left/1000, 150-em*fonttest.Top/1000, left+em*fonttest.Right/1000, 150)
	if dark != want {
		t.Errorf("the letter lies in %v, want %v", dark, want)
	}
}
