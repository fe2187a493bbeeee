// WAV: RIFF with PCM in 16 bits, one channel, and the cues as markers with
// labels. Chunks are as in Microsoft and IBM, Multimedia Programming Interface
// and Data Specifications 1.0, 1991 (from memory).

package export

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"io"
)

const (
	pcm           = 1
	bytesASample  = 2
	bitsPerSample = 8 * bytesASample
)

// WriteWAV writes the track.
func (t *Click) WriteWAV(w io.Writer) error {
	var b bytes.Buffer
	b.WriteString("WAVE")
	chunk(&b, "fmt ", pack(uint16(pcm), uint16(1), uint32(SampleRate), uint32(SampleRate*bytesASample), uint16(bytesASample), uint16(bitsPerSample)))
	chunk(&b, "cue ", t.cueChunk())
	chunk(&b, "LIST", t.labels())
	size := len(t.Samples) * bytesASample
	b.WriteString("data")
	b.Write(pack(uint32(size)))

	out := bufio.NewWriterSize(w, 1<<16)
	out.WriteString("RIFF") // errors stay until the end
	out.Write(pack(uint32(b.Len() + size)))
	out.Write(b.Bytes())
	for _, v := range t.Samples {
		out.WriteByte(byte(v))
		out.WriteByte(byte(v >> 8))
	}
	return out.Flush()
}

// pack writes values one after the other, low byte first.
func pack(values ...any) []byte {
	var b []byte
	for _, v := range values {
		var err error
		if b, err = binary.Append(b, binary.LittleEndian, v); err != nil {
			panic(err) // a value without a fixed size: a mistake of this file
		}
	}
	return b
}

// chunk writes a chunk; one of odd length is padded.
func chunk(b *bytes.Buffer, name string, data []byte) {
	b.WriteString(name)
	b.Write(pack(uint32(len(data))))
	b.Write(data)
	if len(data)%2 == 1 {
		b.WriteByte(0)
	}
}

func (t *Click) cueChunk() []byte {
	b := pack(uint32(len(t.Cues)))
	for i, c := range t.Cues {
		at := uint32(c.Position)
		b = append(b, pack(uint32(i+1), at, [4]byte([]byte("data")), uint32(0), uint32(0), at)...)
	}
	return b
}

// labels is the list of names, each by the number of its cue and ended by a
// zero.
func (t *Click) labels() []byte {
	var b bytes.Buffer
	b.WriteString("adtl")
	for i, c := range t.Cues {
		chunk(&b, "labl", append(pack(uint32(i+1)), c.Label+"\x00"...))
	}
	return b.Bytes()
}
