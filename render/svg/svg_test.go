package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
)

// page returns a page with one of everything, and a text.
func page(text string) *draw.Page {
	p := &draw.Page{Title: text, Desc: text, W: 100, H: 50}
	g := p.Root.Group("all")
	g.Title = text
	g.Line(-0.001, 1, 2.3456, 4, draw.Stroke{Ink: draw.Blue, Width: 0.2, Dash: []float64{1, 0.5}})
	g.Add(
		draw.Rect{Box: draw.Box{X: 1, Y: 2, W: 3, H: 4}, Fill: draw.Faint},
		draw.Disc{Centre: draw.Point{X: 5, Y: 5}, Radius: 2, Fill: draw.Paper, Stroke: draw.Stroke{Ink: draw.Black, Width: 0.1}},
		draw.Path{Runs: [][]draw.Point{{{X: 0, Y: 0}, {X: 1, Y: -0.001}}, {{X: 3, Y: 3}, {X: 4, Y: 4}}}, Closed: true, Fill: draw.Pale},
		draw.NewText(10, 10, text, draw.Font{Size: 8}, draw.Black),
		draw.NewText(10, 20, text+" and more", draw.Font{Size: 8, Bold: true}, draw.Grey).Aligned(draw.End).Shortened(12),
	)
	p.Root.Group("empty")
	return p
}

func write(t interface{ Fatal(...any) }, p *draw.Page) string {
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// elements reads the document with the standard library and returns the names
// of its elements and the text in those of one name, in order.
func elements(t interface{ Fatal(...any) }, doc, of string) (names, texts []string) {
	dec := xml.NewDecoder(strings.NewReader(doc))
	var open []string
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return names, texts
		}
		if err != nil {
			t.Fatal("not well-formed: ", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			names, open = append(names, tok.Name.Local), append(open, tok.Name.Local)
			if tok.Name.Local == of {
				texts = append(texts, "")
			}
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 && open[len(open)-1] == of {
				texts[len(texts)-1] += string(tok)
			}
		}
	}
}

func TestTextComesThrough(t *testing.T) {
	for _, text := range []string{
		"NADIA", `</text><script>alert("x")</script>`, "&amp; &#60; &", "]]>", `" onload="x' y='`, "<!-- -->", "<![CDATA[x]]>",
		"שרה 192°", "花子", "a\u200fb", "tab\tand\nline", "\x00\x1b[31m", "\u202eevil", "\ufffe", "\xff\xfe",
	} {
		names, texts := elements(t, write(t, page(text)), "text")
		if len(texts) != 2 || texts[0] != draw.Clean(text) {
			t.Errorf("%q came through as %q", text, texts)
		}
		for _, name := range names {
			switch name {
			case "svg", "title", "desc", "style", "g", "line", "rect", "circle", "path", "text":
			default:
				t.Errorf("%q made an element %q", text, name)
			}
		}
	}
}

func TestAnyTextIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		if _, texts := elements(t, write(t, page(text)), "text"); texts[0] != draw.Clean(text) {
			t.Errorf("%q came through as %q", text, texts)
		}
	})
}

func TestDocument(t *testing.T) {
	doc := write(t, page("NADIA goes"))
	names, titles := elements(t, doc, "title")
	if len(names) < 3 || names[0] != "svg" || names[1] != "title" || names[2] != "desc" {
		t.Errorf("the document begins with %v", names[:3])
	}
	if titles[len(titles)-1] != "NADIA goes and more" {
		t.Errorf("the shortened text has no title: %q", titles)
	}
	for _, want := range []string{
		`role="img"`, `width="100mm" height="50mm" viewBox="0 0 100 50"`, `class="all"`,
		`stroke-dasharray="1 0.5"`, `d="M0 0L1 0ZM3 3L4 4Z"`, `x2="2.35"`, "@media screen and (prefers-color-scheme:dark)",
	} {
		if !strings.Contains(doc, want) {
			t.Errorf("no %s in\n%s", want, doc)
		}
	}
	for _, not := range []string{"-0.00", `"-0"`, `class="empty"`, "<!--", "<?xml"} {
		if strings.Contains(doc, not) {
			t.Errorf("%s in\n%s", not, doc)
		}
	}
}

func TestGuessedWidthsAreNotImposed(t *testing.T) {
	for text, want := range map[string]bool{"NADIA 5′7″": true, "花子": false} {
		if got := strings.Contains(write(t, page(text)), "textLength"); got != want {
			t.Errorf("%s: textLength is %v", text, got)
		}
	}
}

// full is a writer with room for so many bytes.
type full struct{ room int }

var errFull = errors.New("no space left")

func (f *full) Write(b []byte) (int, error) {
	if f.room -= len(b); f.room < 0 {
		return 0, errFull
	}
	return len(b), nil
}

func TestWriteErrorsAreKept(t *testing.T) {
	p := page("x")
	for range 2000 {
		p.Root.Line(0, 0, 1, 1, draw.Stroke{Ink: draw.Black, Width: 1})
	}
	size := len(write(t, p))
	for _, room := range []int{0, 100, size / 2, size - 1} {
		if err := Write(&full{room}, p); !errors.Is(err, errFull) {
			t.Errorf("with room for %d of %d bytes: %v", room, size, err)
		}
	}
	if err := Write(&full{size}, p); err != nil {
		t.Error(err)
	}
}

func TestCoordinatesMustBeNumbers(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%v was written", v)
				}
			}()
			p := &draw.Page{W: 10, H: 10}
			p.Root.Line(v, 0, 1, 1, draw.Stroke{Ink: draw.Black, Width: 1})
			_ = Write(io.Discard, p)
		}()
	}
}

func TestBarePageNeedsItsStyles(t *testing.T) {
	var b bytes.Buffer
	if err := WriteBare(&b, page("NADIA")); err != nil {
		t.Fatal(err)
	}
	names, _ := elements(t, b.String(), "style")
	if slices.Contains(names, "style") || strings.Contains(b.String(), "style=") {
		t.Error("a bare page has styles of its own")
	}
	for _, line := range strings.Split(Style(".sheet"), "\n") {
		for _, rule := range strings.SplitAfter(line, "}") {
			if selectors, _, ok := strings.Cut(rule, "{"); ok && !strings.HasPrefix(rule, "@") {
				for selector := range strings.SplitSeq(selectors, ",") {
					if !strings.HasPrefix(selector, ".sheet ") {
						t.Errorf("%q reaches beyond the scope", rule)
					}
				}
			}
		}
	}
}

func TestNumberedGroups(t *testing.T) {
	p := page("x")
	p.Root.Group("finding").Add(draw.Disc{Radius: 1, Fill: draw.Black})
	if strings.Contains(write(t, p), "data-number") {
		t.Error("a group without a number has one")
	}
	p.Root.Items[len(p.Root.Items)-1].(*draw.Group).Number = 12
	if !strings.Contains(write(t, p), `class="finding" data-number="12"`) {
		t.Error("the number is not written")
	}
}

// What is written is the shortest decimal of the rounded number, or that of two decimals,
// whatever its size.
func TestNumbersAreShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.OneOf(
			rapid.Float64Range(-2000, 2000),
			rapid.Map(rapid.IntRange(-1_000_000, 1_000_000), func(n int) float64 { return float64(n) / 100 }),
			rapid.Float64Range(-1e20, 1e20),
		).Draw(t, "v")
		if got, want := string(appendFixed(nil, v)), strconv.FormatFloat(number(v), 'f', 2, 64); got != want {
			t.Fatalf("%v is written %s with two decimals, want %s", v, got, want)
		}
		if got, want := decimals(v), strconv.FormatFloat(number(v), 'f', -1, 64); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	})
}

// A turned text is turned round its point; a level one has no transform.
func TestTurnedTexts(t *testing.T) {
	p := &draw.Page{W: 50, H: 30}
	text := draw.NewText(12.5, 20, "PEVIN", draw.Font{Size: 12}, draw.Black).Aligned(draw.Middle)
	p.Root.Add(text, text.Turned(-37.25))
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "transform="); n != 1 || !strings.Contains(b.String(), `transform="rotate(-37.25 12.5 20)"`) {
		t.Errorf("%d transforms in %s", n, b.String())
	}
}

// A file has the IDs of its groups and the links that lead to them; a document of many
// pages has all links.
func TestLinks(t *testing.T) {
	p := &draw.Page{W: 50, H: 50}
	p.Root.ID = "sheet"
	here, away := p.Root.Group("row"), p.Root.Group("row")
	here.ID, here.Link, away.Link = "row-1", "sheet", "another-sheet"
	for _, g := range []*draw.Group{here, away} {
		g.Add(draw.Disc{Centre: draw.Point{X: 9, Y: 9}, Radius: 1, Fill: draw.Black})
	}
	file := write(t, p)
	elements(t, file, "a")
	var bare bytes.Buffer
	if err := WriteBare(&bare, p); err != nil {
		t.Fatal(err)
	}
	for want, in := range map[string][2]bool{
		` id="sheet" `:                        {true, true},
		`<g class="row" id="row-1" >`:         {true, true},
		`<a href="#sheet">`:                   {true, true},
		` role="graphics-document document">`: {true, true},
		`<a href="#another-sheet">`:           {false, true},
	} {
		for i, text := range []string{file, bare.String()} {
			if strings.Contains(text, want) != in[i] {
				t.Errorf("%q in %d: %v\n%s", want, i, !in[i], text)
			}
		}
	}
}

func TestRoundEnds(t *testing.T) {
	p := &draw.Page{W: 50, H: 50}
	p.Root.Line(1, 1, 20, 1, draw.Unsaid(draw.Black))
	if file := write(t, p); !strings.Contains(file, `stroke-dasharray="0.01 0.9" stroke-linecap="round"`) {
		t.Error(file)
	}
}
