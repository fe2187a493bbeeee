// Which form a file has.

package foreign

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"pullscore/lang/jsontext"
	"pullscore/lang/lines"
)

// headSize is how much of a file is looked at to tell its form.
const headSize = 64 << 10

// Read returns the kit of a file. The name is that of the lens, for OpenTrackIO,
// or of the framing, for a framing decision list. The error is a *Choice, one of
// the file system, or says that the file has another form. A kit beside an error
// has findings alone; it may be nil.
func Read(r io.Reader, file, name string) (*Kit, error) {
	br := bufio.NewReaderSize(r, headSize)
	head, err := br.Peek(headSize)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	switch begin := bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\uFEFF")), " \t\r\n"); {
	case len(begin) == 0:
		return nil, fmt.Errorf("%s: is empty", file)
	case isFraming(string(begin), file):
		src, err := io.ReadAll(io.LimitReader(br, lines.MaxSize+1))
		if err != nil {
			return nil, err
		}
		text, findings := lines.Decode(file, src)
		if len(findings) > 0 {
			return &Kit{Findings: findings}, nil
		}
		return FDL(text, name)
	case begin[0] != '{' && begin[0] != '[':
		return nil, fmt.Errorf("%s: is neither OpenTrackIO nor an ASC framing decision list, which are JSON", file)
	}
	return OpenTrackIO(br, file, name)
}

// isFraming reports whether a file is a framing decision list: by its ending, or
// by the names of its fields as far as its head goes.
func isFraming(head, file string) (yes bool) {
	if strings.EqualFold(filepath.Ext(file), ".fdl") {
		return true
	}
	s := jsontext.Scanner{Text: head}
	_ = s.Object(func(key string) error { // the head mostly ends in the middle
		switch key {
		case "fdl_creator", "framing_intents", "default_framing_intent", "contexts", "canvas_templates":
			yes = true
		}
		return s.Skip()
	})
	return yes
}
