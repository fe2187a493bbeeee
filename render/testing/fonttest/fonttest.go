package fonttest

import (
	"bytes"
	"encoding/binary"
	"slices"
	"strings"
)

// A Font says what a font is made of.
type Font struct {
	Runes  []rune // ascending, within the basic plane
	FsType uint16 // the licence bits of the table OS/2
	Kind   string // the first four bytes; "": those of TrueType
	Drop   string // a table to leave out
}

// The squares of the letters, in units of the em of 1000: from Left to Right over the
// baseline, up to Top. The next letter stands at Advance.
const (
	Left, Right, Top, Advance = 100, 700, 600, 800
	em                        = 1000
)

// be writes numbers of two bytes, the high one first.
func be(values ...int) []byte {
	var b []byte
	for _, v := range values {
		b = binary.BigEndian.AppendUint16(b, uint16(v))
	}
	return b
}

// Bytes returns the file of a font whose every letter is a square (ISO/IEC 14496-22).
func (f Font) Bytes() []byte {
	glyphs := len(f.Runes) + 1 // the first one stands for what the font lacks
	square := slices.Concat(be(1, Left, 0, Right, Top, 3, 0), []byte{1, 1, 1, 1},
		be(Left, 0, Right-Left, 0), be(0, Top, 0, -Top), []byte{0, 0})
	var glyf, loca, hmtx []byte
	for range glyphs {
		loca = append(loca, be(len(glyf)/2)...)
		glyf = append(glyf, square...)
		hmtx = append(hmtx, be(Advance, Left)...)
	}
	loca = append(loca, be(len(glyf)/2)...)
	tables := map[string][]byte{
		"head": slices.Concat(be(1, 0, 1, 0, 0, 0, 0x5f0f, 0x3cf5, 0, em), make([]byte, 16), be(0, 0, em, em, 0, 8, 2, 0, 0)),
		"hhea": slices.Concat(be(1, 0, 800, -200, 0, Advance, Left, 0, Right, 1, 0, 0, 0, 0, 0, 0, 0, glyphs)),
		"maxp": slices.Concat(be(1, 0, glyphs, 4, 1), make([]byte, 22)),
		"hmtx": hmtx, "loca": loca, "glyf": glyf,
		"cmap": f.cmap(),
		"OS/2": slices.Concat(be(3, Advance, 400, 5, int(f.FsType)), make([]byte, 58), be(800, -200, 0, 800, 200), make([]byte, 8), be(400, 600, 0, 32, 0)),
		"name": be(0, 0, 6),
		"post": slices.Concat(be(3, 0), make([]byte, 28)),
	}
	delete(tables, f.Drop)
	return file(f.Kind, tables)
}

// cmap returns the map of the letters in format 4, a segment for each.
func (f Font) cmap() []byte {
	n := len(f.Runes) + 1
	var ends, starts, deltas []int
	for i, r := range f.Runes {
		ends, starts, deltas = append(ends, int(r)), append(starts, int(r)), append(deltas, i+1-int(r))
	}
	ends, starts, deltas = append(ends, 0xffff), append(starts, 0xffff), append(deltas, 1)
	body := slices.Concat(be(2*n, 0, 0, 0), be(ends...), be(0), be(starts...), be(deltas...), make([]byte, 2*n))
	return slices.Concat(be(0, 1, 3, 1, 0, 12), be(4, len(body)+6, 0), body)
}

// file joins tables into a file.
func file(kind string, tables map[string][]byte) []byte {
	if kind == "" {
		kind = "\x00\x01\x00\x00"
	}
	var names []string
	for name := range tables {
		names = append(names, name)
	}
	slices.SortFunc(names, strings.Compare)
	var head, body bytes.Buffer
	head.WriteString(kind)
	head.Write(be(len(names), 0, 0, 0))
	for _, name := range names {
		head.WriteString(name)
		for _, v := range []int{0, 12 + 16*len(names) + body.Len(), len(tables[name])} {
			head.Write(binary.BigEndian.AppendUint32(nil, uint32(v)))
		}
		body.Write(tables[name])
		body.Write(make([]byte, (4-len(tables[name])%4)%4))
	}
	return append(head.Bytes(), body.Bytes()...)
}
