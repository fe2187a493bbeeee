// Decoding a text as it is read.

package lines

import (
	"bufio"
	"errors"
	"io"

	"golang.org/x/text/encoding/unicode"
)

// NewReader returns a text in UTF-8, without a byte order mark, that is read in
// any encoding that Decode tells apart, for files too long to hold. What UTF-16
// does not have becomes U+FFFD; UTF-8 stays as it is. The error is one of reading.
func NewReader(r io.Reader) (io.Reader, error) {
	br := bufio.NewReader(r)
	head, err := br.Peek(3)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	encoding, _, rest := sniff(head)
	br.Discard(len(head) - len(rest))
	switch encoding {
	case UTF16LE:
		return unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM).NewDecoder().Reader(br), nil
	case UTF16BE:
		return unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM).NewDecoder().Reader(br), nil
	}
	return br, nil
}
