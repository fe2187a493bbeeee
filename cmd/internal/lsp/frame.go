// Messages on a stream of bytes, each behind a header that says its length:
// "Content-Length: 17\r\n\r\n" and 17 bytes. This is the base protocol of LSP.

package lsp

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// A Transport carries whole messages, each one JSON text. Only one goroutine reads
// and only one writes.
type Transport interface {
	// Read returns the next message. Its error is io.EOF at the end, and a
	// *FrameError if what came is no message.
	Read() ([]byte, error)
	// Write sends one message.
	Write(message []byte) error
}

// A FrameError says why a frame cannot be read. Nothing behind it can be read either.
type FrameError struct{ reason string }

func (e *FrameError) Error() string { return "cannot read a message: " + e.reason }

// MaxMessage is the largest message in bytes. The text of the largest plan fits, even
// if every byte of it is escaped.
const MaxMessage = 64 << 20

// Limits of a header, far above those that clients send.
const (
	maxHeaderLine  = 1 << 10
	maxHeaderLines = 32
)

// A Stream is a Transport over bytes, such as standard input and output.
type Stream struct {
	in  *bufio.Reader
	out io.Writer
}

// NewStream returns a Transport that reads frames from in and writes frames to out.
func NewStream(in io.Reader, out io.Writer) *Stream {
	return &Stream{in: bufio.NewReaderSize(in, 64<<10), out: out}
}

// Read returns the next message.
func (s *Stream) Read() ([]byte, error) {
	length, err := s.header()
	if err != nil {
		return nil, err
	}
	// The room grows with what comes, so that a false length takes no memory.
	body, err := io.ReadAll(io.LimitReader(s.in, int64(length)))
	switch {
	case err != nil:
		return nil, err
	case len(body) < length:
		return nil, &FrameError{fmt.Sprintf("it ends after %d of %d bytes", len(body), length)}
	}
	return body, nil
}

// header reads the lines before a message and returns its length in bytes.
func (s *Stream) header() (length int, err error) {
	length = -1
	for n := range maxHeaderLines {
		line, err := s.line()
		switch {
		case errors.Is(err, io.EOF) && n == 0 && line == "":
			return 0, io.EOF
		case errors.Is(err, io.EOF):
			return 0, &FrameError{"it ends within its header"}
		case err != nil:
			return 0, err
		case line == "" && length < 0:
			return 0, &FrameError{"its header has no Content-Length"}
		case line == "":
			return length, nil
		}
		name, value, ok := strings.Cut(line, ":")
		if !ok {
			return 0, &FrameError{fmt.Sprintf("%.40q is no line of a header", line)}
		}
		if !strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			continue // Content-Type, which has one value only
		}
		said, err := strconv.ParseUint(strings.TrimSpace(value), 10, 32)
		if err != nil || said > MaxMessage {
			return 0, &FrameError{fmt.Sprintf("%.40q is no length up to %d", strings.TrimSpace(value), MaxMessage)}
		}
		length = int(said)
	}
	return 0, &FrameError{fmt.Sprintf("its header has more than %d lines", maxHeaderLines)}
}

// line returns the next line of a header without its end.
func (s *Stream) line() (string, error) {
	var line []byte
	for len(line) < maxHeaderLine {
		b, err := s.in.ReadByte()
		if err != nil {
			return string(line), err
		}
		if b == '\n' {
			return strings.TrimSuffix(string(line), "\r"), nil
		}
		line = append(line, b)
	}
	return "", &FrameError{fmt.Sprintf("a line of its header has more than %d bytes", maxHeaderLine)}
}

// Write sends one message in one write.
func (s *Stream) Write(message []byte) error {
	frame := make([]byte, 0, len(message)+32)
	frame = fmt.Appendf(frame, "Content-Length: %d\r\n\r\n", len(message))
	_, err := s.out.Write(append(frame, message...))
	return err
}
