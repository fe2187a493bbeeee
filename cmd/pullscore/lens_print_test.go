package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/lens"
	"pullscore/render/sheet"
)

// lensPages returns the sheet of a lens of our own.
func lensPages(paper sheet.Paper) []*draw.Page {
	return lens.Sheet(lens.Lens{
		Name: "75", Focal: "75 mm", Stop: "f/2.8", Criterion: 21.7e-6, InfinityFrom: 370,
		Distances: []float64{0.75, 0.82, 0.92, 1.04, 1.22, 1.48, 1.92, 2.8, 5.5, math.Inf(1)},
	}, sheet.Options{Paper: paper})
}

// The tape, the ruler and the bar are as long as they say, measured in what is printed:
// in SVG, in PDF, and in the SVG that Chromium has printed.
func TestLensSheetIsTrueToScale(t *testing.T) {
	for size, paper := range map[string]sheet.Paper{"a4": sheet.A4, "letter": sheet.Letter} {
		pages := lensPages(paper)
		t.Run(size+"/SVG", func(t *testing.T) {
			var all [][]pdfLine
			for _, p := range pages {
				all = append(all, svgLines(t, svgFile(t, p)))
			}
			measureSheet(t, all)
		})
		t.Run(size+"/PDF", func(t *testing.T) {
			var b bytes.Buffer
			if err := backends["pdf"].write(&b, &plan.Shot{Title: "75"}, pages, rendering{}); err != nil {
				t.Fatal(err)
			}
			measureSheet(t, pdfLines(t, b.Bytes()))
		})
		t.Run(size+"/print", func(t *testing.T) {
			var html strings.Builder
			fmt.Fprintf(&html, "<!doctype html><style>@page{size:%gmm %gmm;margin:0}body{margin:0}svg{display:block;break-after:page}</style>", paper.W, paper.H)
			for _, p := range pages {
				html.Write(svgFile(t, p))
			}
			tab := openBrief(t, []byte(html.String()))
			file, err := chromedp.Run(tab, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
			if err != nil {
				t.Fatal(err)
			}
			keepPicture(t, "lens-printed-"+size+".pdf", file)
			measureSheet(t, pdfLines(t, file))
		})
	}
}

func svgFile(t *testing.T, p *draw.Page) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := backends["svg"].write(&b, nil, []*draw.Page{p}, rendering{}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// svgLines returns the straight lines of an SVG file in millimetres. The unit of its
// coordinates must be one.
func svgLines(t *testing.T, file []byte) (lines []pdfLine) {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(file))
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return lines
		}
		if err != nil {
			t.Fatal(err)
		}
		start, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		at := map[string]string{}
		for _, a := range start.Attr {
			at[a.Name.Local] = a.Value
		}
		switch start.Name.Local {
		case "svg":
			if want := "0 0 " + strings.TrimSuffix(at["width"], "mm") + " " + strings.TrimSuffix(at["height"], "mm"); at["viewBox"] != want {
				t.Fatalf("viewBox %q, want %q: a unit is not a millimetre", at["viewBox"], want)
			}
		case "line":
			var v [4]float64
			for i, name := range []string{"x1", "y1", "x2", "y2"} {
				if v[i], err = strconv.ParseFloat(at[name], 64); err != nil {
					t.Fatal(err)
				}
			}
			lines = append(lines, pdfLine{v[0], v[1], v[2], v[3]})
		}
	}
}

// measureSheet measures the lines of the two pages.
func measureSheet(t *testing.T, pages [][]pdfLine) {
	t.Helper()
	if len(pages) != 2 {
		t.Fatalf("%d pages, not 2", len(pages))
	}
	tape := 0.0
	for _, strip := range rows(pages[0], 1.8, 2.6, 3.4) {
		for i, x := range strip {
			if math.Abs(x-strip[0]-float64(i)) > 0.05 {
				t.Errorf("line %d of a strip lies at %.3f mm", i, x-strip[0])
			}
		}
		tape += strip[len(strip)-1] - strip[0]
	}
	if want := 2 * (440.0 + 15); math.Abs(tape-want) > 0.1 { // both edges, and a flap
		t.Errorf("the tape is %.3f mm long, want %v", tape, want)
	}
	rulers := rows(pages[1], 2.4, 5, 7.5)
	if len(rulers) != 2 {
		t.Errorf("%d strips of the ruler, not 2", len(rulers))
	}
	for _, ruler := range rulers {
		if len(ruler) != 100 {
			t.Fatalf("%d lines on a ruler, not 100", len(ruler))
		}
		for i, x := range ruler {
			if want := ruler[0] + float64(i)*math.Sqrt2; math.Abs(x-want) > 0.05 {
				t.Errorf("line %d of a ruler lies at %.3f mm, want %.3f", i+1, x, want)
			}
		}
		if angle := math.Asin(90/(ruler[99]-ruler[9])) * 180 / math.Pi; math.Abs(angle-45) > 0.02 {
			t.Errorf("the ruler is right at %.3f deg, not at 45", angle)
		}
	}
	for i, lines := range pages {
		if !slices.ContainsFunc(lines, func(l pdfLine) bool {
			return math.Abs(l.y1-l.y2) < 0.001 && math.Abs(math.Abs(l.x2-l.x1)-50) <= 0.005
		}) {
			t.Errorf("page %d has no bar of 50.00 mm", i+1)
		}
	}
}

// rows returns the places of upright lines, for each edge that lines of all the given
// lengths stand on: rising, in millimetres.
func rows(lines []pdfLine, lengths ...float64) (list [][]float64) {
	type edge struct {
		places []float64
		of     map[int]bool // the lengths that stand on it
	}
	edges := map[int]edge{} // by their height in tenths of a millimetre
	for _, l := range lines {
		long := math.Abs(l.y2 - l.y1)
		kind := slices.IndexFunc(lengths, func(v float64) bool { return math.Abs(v-long) < 0.02 })
		if kind < 0 || math.Abs(l.x1-l.x2) > 0.01 {
			continue
		}
		for _, y := range []float64{l.y1, l.y2} {
			key := int(math.Round(10 * y))
			e := edges[key]
			if e.of == nil {
				e.of = map[int]bool{}
			}
			e.places, e.of[kind] = append(e.places, l.x1), true
			edges[key] = e
		}
	}
	for _, key := range slices.Sorted(maps.Keys(edges)) {
		if e := edges[key]; len(e.of) == len(lengths) {
			slices.Sort(e.places)
			list = append(list, e.places)
		}
	}
	return list
}
