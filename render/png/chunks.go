// What a PNG file says of itself besides its pixels: its resolution, title and
// description (ISO/IEC 15948:2004, 11.3.5.3 pHYs and 11.3.4.5 iTXt).

package png

import (
	"encoding/binary"
	"hash/crc32"
	"math"
	"slices"

	"pullscore/render/draw"
)

// ahead is where the chunks go: behind the signature (8 bytes) and IHDR (13
// bytes of data in a frame of 12).
const ahead = 8 + 12 + 13

const metresPerInch = 0.0254

// describe returns an encoded picture with the page's chunks put in.
func describe(encoded []byte, p *draw.Page, dpi int) []byte {
	perMetre := uint32(math.Round(float64(dpi) / metresPerInch))
	physical := binary.BigEndian.AppendUint32(nil, perMetre)
	physical = binary.BigEndian.AppendUint32(physical, perMetre)
	chunks := chunk("pHYs", append(physical, 1)) // 1: the unit is the metre
	chunks = append(chunks, international("Title", p.Title)...)
	chunks = append(chunks, international("Description", p.Desc)...)
	return slices.Concat(encoded[:ahead], chunks, encoded[ahead:])
}

// international returns a chunk of uncompressed text in UTF-8; none for none.
func international(keyword, text string) []byte {
	if text = draw.Clean(text); text == "" {
		return nil
	}
	// After the keyword: no compression, its method, no language, no translated keyword.
	return chunk("iTXt", append([]byte(keyword+"\x00\x00\x00\x00\x00"), text...))
}

func chunk(name string, data []byte) []byte {
	c := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	c = append(append(c, name...), data...)
	return binary.BigEndian.AppendUint32(c, crc32.ChecksumIEEE(c[4:]))
}
