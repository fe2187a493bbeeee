// Reading a font file, and what a font must be like so that files can carry it.

package fonts

import (
	"encoding/binary"
	"errors"
	"fmt"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"pullscore/render/draw"
)

// A File is a font of TrueType outlines that may be embedded.
type File struct {
	Data []byte // as read
	Font *sfnt.Font
}

// Read returns the font in data. It returns an error if data is no font, if its outlines
// are of another kind than PDF files take, or if its licence bits forbid to embed it.
func Read(data []byte) (*File, error) {
	tables, err := directory(data)
	if err != nil {
		return nil, err
	}
	for _, name := range []string{"glyf", "loca"} {
		if tables[name] == nil {
			return nil, errNoOutlines
		}
	}
	for _, name := range []string{"head", "hhea", "hmtx", "maxp", "cmap", "name", "post"} {
		if len(tables[name]) < leastTable[name] {
			return nil, fmt.Errorf("this font has no table %q", name)
		}
	}
	if err := embeddable(tables["OS/2"]); err != nil {
		return nil, err
	}
	switch {
	case binary.BigEndian.Uint16(tables["name"]) != 0:
		return nil, errors.New("PDF files cannot carry this font: its names are in a newer form")
	case !mapped(tables["cmap"]):
		return nil, errors.New("PDF files cannot carry this font: it has no map of Unicode in format 4")
	}
	f, err := sfnt.Parse(data)
	if err != nil {
		return nil, errNoFont
	}
	return &File{Data: data, Font: f}, nil
}

var (
	errNoFont     = errors.New("this is not a font")
	errNoOutlines = errors.New("this font has no TrueType outlines")
)

// leastTable is how long a table must be to be read at all, in bytes.
var leastTable = map[string]int{"head": 54, "hhea": 36, "hmtx": 4, "maxp": 6, "cmap": 4, "name": 6, "post": 32}

// directory returns the tables of a font by their names (ISO/IEC 14496-22, 4.2).
func directory(data []byte) (map[string][]byte, error) {
	if len(data) < 12 {
		return nil, errNoFont
	}
	switch string(data[:4]) {
	case "OTTO":
		return nil, errNoOutlines
	case "ttcf":
		return nil, errors.New("this is a collection of fonts; take one font out of it")
	case "\x00\x01\x00\x00", "true":
	default:
		return nil, errNoFont
	}
	tables := map[string][]byte{}
	count := int(binary.BigEndian.Uint16(data[4:]))
	for i := range count {
		at := 12 + 16*i
		if at+16 > len(data) {
			return nil, errNoFont
		}
		from, long := uint64(binary.BigEndian.Uint32(data[at+8:])), uint64(binary.BigEndian.Uint32(data[at+12:]))
		if from+long > uint64(len(data)) {
			return nil, errNoFont
		}
		tables[string(data[at:at+4])] = data[from : from+long]
	}
	return tables, nil
}

// The bits of fsType in the table OS/2, from memory: the low four say whether a font may
// be embedded, the others whether in part, and whether its outlines may.
const (
	fsUsage      = 0x000f
	fsRestricted = 0x0002
	fsWhole      = 0x0100
	fsBitmaps    = 0x0200
)

// embeddable returns an error if the table OS/2 forbids what embedding needs.
func embeddable(os2 []byte) error {
	if len(os2) < 10 {
		return nil
	}
	bits := binary.BigEndian.Uint16(os2[8:])
	switch {
	case bits&fsUsage == fsRestricted:
		return errors.New("this font forbids to embed it")
	case bits&fsWhole != 0:
		return errors.New("this font forbids to embed a part of it, and only the letters that are used go into a file")
	case bits&fsBitmaps != 0:
		return errors.New("this font forbids to embed its outlines")
	}
	return nil
}

// mapped reports whether a table cmap has a map of Unicode in format 4.
func mapped(cmap []byte) bool {
	count := int(binary.BigEndian.Uint16(cmap[2:]))
	for i := range count {
		at := 4 + 8*i
		if at+8 > len(cmap) {
			return false
		}
		platform, encoding := binary.BigEndian.Uint16(cmap[at:]), binary.BigEndian.Uint16(cmap[at+2:])
		from := uint64(binary.BigEndian.Uint32(cmap[at+4:]))
		if (platform == 0 || platform == 3 && encoding == 1) && from+2 <= uint64(len(cmap)) && binary.BigEndian.Uint16(cmap[from:]) == 4 {
			return true
		}
	}
	return false
}

// beyond is the first character that PDF files cannot take from a font: the library
// knows those of the basic plane alone.
const beyond = 0x10000

// Advance returns how far the next letter stands from that of r, as a share of the em. ok
// is false if the font lacks the letter, or if it cannot be set one beside the other.
func (f *File) Advance(r rune) (em float64, ok bool) {
	if r >= beyond || NeedsShaping(r) {
		return 0, false
	}
	index, err := f.Font.GlyphIndex(nil, r)
	if err != nil || index == 0 {
		return 0, false
	}
	const units = 1024
	advance, err := f.Font.GlyphAdvance(nil, index, fixed.I(units), font.HintingNone)
	if err != nil || advance <= 0 {
		return 0, false
	}
	return float64(advance) / 64 / units, true
}

// Faces returns the files as fonts to set texts in.
func Faces(files []*File) draw.Faces {
	faces := make(draw.Faces, len(files))
	for i, f := range files {
		faces[i] = f
	}
	return faces
}
