// A small reader of PDF files for tests: it finds the straight lines that are
// stroked on every page, where ISO 32000-1, 8.3 to 8.5, puts them.

package main

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// pdfLine is a straight line in millimetres from the top left corner of its
// page.
type pdfLine struct{ x1, y1, x2, y2 float64 }

// near reports whether both lines have the same ends within so many
// millimetres, in whatever order.
func (l pdfLine) near(m pdfLine, within float64) bool {
	same := func(a, b pdfLine) bool {
		return max(math.Abs(a.x1-b.x1), math.Abs(a.y1-b.y1), math.Abs(a.x2-b.x2), math.Abs(a.y2-b.y2)) <= within
	}
	return same(l, m) || same(l, pdfLine{m.x2, m.y2, m.x1, m.y1})
}

var mediaBox = regexp.MustCompile(`/MediaBox\s*\[\s*0 0 [0-9.]+ ([0-9.]+)\s*\]`)

// pdfLines returns the lines of every content stream of a file whose pages are
// all of one size. Streams that hold no lines are left out.
func pdfLines(t *testing.T, file []byte) [][]pdfLine {
	t.Helper()
	box := mediaBox.FindSubmatch(file)
	if box == nil {
		t.Fatal("the file does not say how large its pages are")
	}
	height, err := strconv.ParseFloat(string(box[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	var all [][]pdfLine
	for rest := file; ; {
		at := bytes.Index(rest, []byte("stream"))
		if at < 0 {
			return all
		}
		rest = bytes.TrimLeft(rest[at+len("stream"):], "\r\n")
		end := bytes.Index(rest, []byte("endstream"))
		if end < 0 {
			return all
		}
		packed := rest[:end]
		rest = rest[end+len("endstream"):]
		z, err := zlib.NewReader(bytes.NewReader(packed))
		if err != nil {
			continue // not packed, so no content
		}
		content, err := io.ReadAll(z)
		if err != nil {
			continue
		}
		if lines := strokedLines(string(content), height); len(lines) > 0 {
			all = append(all, lines)
		}
	}
}

// A matrix takes the points of a content stream to those of the page.
type matrix [6]float64

func (m matrix) times(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3],
		m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

// strokedLines runs the operators of a content stream that matter here, on a
// page of that height in points.
func strokedLines(content string, height float64) []pdfLine {
	const mm = 25.4 / 72
	ctm := matrix{1, 0, 0, 1, 0, 0}
	var stack []matrix
	var numbers []float64
	var path, lines []pdfLine
	var x, y float64
	place := func(x, y float64) (float64, float64) {
		px, py := x*ctm[0]+y*ctm[2]+ctm[4], x*ctm[1]+y*ctm[3]+ctm[5]
		return px * mm, (height - py) * mm
	}
	last := func(n int) []float64 { return numbers[max(0, len(numbers)-n):] }
	for _, word := range strings.Fields(content) {
		if v, err := strconv.ParseFloat(word, 64); err == nil {
			numbers = append(numbers, v)
			continue
		}
		switch n := last(6); {
		case word == "cm" && len(n) == 6:
			ctm = matrix(n).times(ctm)
		case word == "q":
			stack = append(stack, ctm)
		case word == "Q" && len(stack) > 0:
			ctm, stack = stack[len(stack)-1], stack[:len(stack)-1]
		case word == "m" && len(numbers) >= 2:
			x, y = place(last(2)[0], last(2)[1])
		case word == "l" && len(numbers) >= 2:
			tx, ty := place(last(2)[0], last(2)[1])
			path = append(path, pdfLine{x, y, tx, ty})
			x, y = tx, ty
		case word == "S" || word == "s":
			lines, path = append(lines, path...), nil
		case word == "n" || word == "f" || word == "f*" || word == "B":
			path = nil
		}
		numbers = numbers[:0]
	}
	return lines
}
