// The frame of a document is svgo's, and this is the one place that touches it: it
// writes attributes as they come and loses write errors, so both are seen to here. Text
// content it escapes itself. Shapes and texts are written here in svgo's form: a score has
// a hundred thousand numbers, and svgo formats each through fmt.

package svg

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"pullscore/render/draw"
)

type canvas struct {
	svg *svgo.SVG
	out *bufio.Writer // keeps the first error of what it writes to
	row []byte        // room for one element
	// leads reports whether the document has a group of that ID.
	leads func(id string) bool
}

func newCanvas(w io.Writer) *canvas {
	out := bufio.NewWriterSize(w, 32<<10)
	return &canvas{svg: svgo.New(out), out: out}
}

func (c *canvas) flush() error {
	if err := c.out.Flush(); err != nil {
		return fmt.Errorf("writing SVG: %w", err)
	}
	return nil
}

// start opens a document of the size of the page whose user unit is a
// millimetre. svgo's own opening carries a comment and a namespace that nothing
// here uses. A page with links is a document to those who hear it: nobody can
// reach a link inside a picture.
func (c *canvas) start(p *draw.Page) {
	x, w, h, role, id := decimals(p.Trim), decimals(p.W-2*p.Trim), decimals(p.H), "img", ""
	if c.linked(p) {
		role = "graphics-document document"
	}
	if p.Root.ID != "" {
		id = " " + attr("id", p.Root.ID)
	}
	fmt.Fprintf(c.out, `<svg xmlns="http://www.w3.org/2000/svg"%s width="%smm" height="%smm" viewBox="%s 0 %s %s" role="%s">`+"\n", id, w, h, x, w, h, role)
}

// families names the font that the page is measured with, then those of the
// same widths, then one that comes within draw.Slack of them.
const families = "Go,Arial,Helvetica,'Liberation Sans',Arimo,'DejaVu Sans Condensed',sans-serif"

// style writes the styles of a file that holds one page.
func (c *canvas) style() { c.svg.Style("text/css", "\n"+Style("")) }

// Style returns the styles of drawings, for all within the scope, a selector
// such as ".sheet"; "" is the whole document. They give the inks their colours
// twice: on paper, and on a dark screen.
func Style(scope string) string {
	var css strings.Builder
	r := rules{&css, scope}
	r.add("text", "font-family:"+families).end()
	r.add(".bold", "font-weight:bold").end()
	r.add("path,line,rect,circle", "fill:none;stroke-linejoin:round").end()
	r.inks(draw.Ink.Light)
	css.WriteString("@media screen and (prefers-color-scheme:dark){\n")
	r.inks(draw.Ink.Dark)
	css.WriteString("}\n")
	return css.String()
}

// rules gathers rules that hold within a scope.
type rules struct {
	css   *strings.Builder
	scope string
}

// add writes a rule for each of the selectors, which commas divide.
func (r rules) add(selectors, body string) rules {
	if r.scope != "" {
		selectors = r.scope + " " + strings.ReplaceAll(selectors, ",", ","+r.scope+" ")
	}
	fmt.Fprintf(r.css, "%s{%s}", selectors, body)
	return r
}

func (r rules) end() { r.css.WriteByte('\n') }

func (r rules) inks(colour func(draw.Ink) draw.Colour) {
	r.add("svg", "background:"+colour(draw.Paper).String()).end()
	for _, ink := range draw.Inks() {
		name, value := ink.String(), colour(ink).String()
		r.add(".f-"+name, "fill:"+value).add(".s-"+name, "stroke:"+value).end()
	}
}

// begin returns room for an element of that name.
func (c *canvas) begin(name string) []byte { return append(append(c.row[:0], '<'), name...) }

// end writes an element that holds nothing.
func (c *canvas) end(b []byte) {
	c.row = append(b, " />\n"...)
	c.out.Write(c.row)
}

// coordinate appends an attribute with a number of two decimals.
func coordinate(b []byte, name string, v float64) []byte {
	b = append(append(append(b, ' '), name...), `="`...)
	return append(appendFixed(b, v), '"')
}

// paint appends the attributes of a shape's fill and stroke.
func paint(b []byte, fill draw.Ink, s draw.Stroke) []byte {
	b = append(b, ` class="`...)
	if fill != draw.None {
		b = append(append(b, "f-"...), fill.String()...)
	}
	if s.Ink == draw.None {
		return append(b, '"')
	}
	if fill != draw.None {
		b = append(b, ' ')
	}
	b = append(append(b, "s-"...), s.Ink.String()...)
	b = appendNumber(append(b, `" stroke-width="`...), s.Width)
	for i, d := range s.Dash {
		b = append(b, [2]string{`" stroke-dasharray="`, " "}[min(i, 1)]...)
		b = appendNumber(b, d)
	}
	if s.Round {
		b = append(b, `" stroke-linecap="round`...)
	}
	return append(b, '"')
}

// setting appends the attributes of a text, its place aside. The size has four
// decimals, since what it is off by adds up along the line. The width is the
// measured one, which a viewer that can keeps to with whatever font it has;
// only where the width is a guess it is left out.
func setting(b []byte, t draw.Text) []byte {
	b = append(append(b, ` class="f-`...), t.Ink.String()...)
	if t.Font.Bold {
		b = append(b, " bold"...)
	}
	b = strconv.AppendFloat(append(b, `" font-size="`...), math.Round(t.Font.Size*draw.MM*1e4)/1e4, 'f', -1, 64)
	switch t.Align {
	case draw.Middle:
		b = append(b, `" text-anchor="middle`...)
	case draw.End:
		b = append(b, `" text-anchor="end`...)
	}
	if draw.Covers(t.String) {
		b = appendNumber(append(b, `" textLength="`...), t.Width)
	}
	if t.Turn != 0 {
		b = appendNumber(append(b, `" transform="rotate(`...), t.Turn)
		b = appendNumber(append(b, ' '), t.At.X)
		b = appendNumber(append(b, ' '), t.At.Y)
		b = append(b, ')')
	}
	return append(b, '"')
}

// runs appends the path data of runs of points.
func runs(d []byte, runs [][]draw.Point, closed bool) []byte {
	for _, run := range runs {
		for i, p := range run {
			d = append(d, "ML"[min(i, 1)])
			d = appendNumber(d, p.X)
			d = append(d, ' ')
			d = appendNumber(d, p.Y)
		}
		if closed && len(run) > 0 {
			d = append(d, 'Z')
		}
	}
	return d
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// attr returns an attribute with its value escaped.
func attr(name, value string) string { return name + `="` + escaper.Replace(value) + `"` }

// number rounds to the two decimals that are written and clears the sign of
// zero. It panics on what no file can hold: a drawing must not make it.
func number(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		panic(fmt.Sprintf("svg: coordinate %v", v))
	}
	return math.Round(v*100)/100 + 0
}

// wide is from where on a number of hundredths has more digits than a float64 holds.
const wide = 1e13

// appendNumber appends a number as it is written where nothing needs its zeros. Of all
// that are not wide the shortest decimal is the hundredths, and no search for it.
func appendNumber(b []byte, v float64) []byte {
	if v = number(v); math.Abs(v) >= wide {
		return strconv.AppendFloat(b, v, 'f', -1, 64)
	}
	b, n := appendHundredths(b, v)
	switch {
	case n%100 == 0:
		return b[:len(b)-len(".00")]
	case n%10 == 0:
		return b[:len(b)-len("0")]
	}
	return b
}

// appendFixed appends a number with two decimals.
func appendFixed(b []byte, v float64) []byte {
	if v = number(v); math.Abs(v) >= wide {
		return strconv.AppendFloat(b, v, 'f', 2, 64)
	}
	b, _ = appendHundredths(b, v)
	return b
}

// appendHundredths appends a number that is not wide with two decimals, and returns its
// hundredths, without their sign.
func appendHundredths(b []byte, v float64) (text []byte, n int64) {
	n = int64(math.Round(v * 100))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	return append(b, '.', byte('0'+n/10%10), byte('0'+n%10)), n
}

func decimals(v float64) string { return string(appendNumber(nil, v)) }
