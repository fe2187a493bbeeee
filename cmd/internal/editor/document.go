// An open text and its edits.

package editor

import (
	"errors"
	"fmt"
	"slices"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// A document is one version of a text that a client has open. It never changes.
type document struct {
	*text
	uri     string
	path    string // as it was opened, cleaned
	real    string // without links
	version int32
	plan    bool // a plan or kit, not somebody else's file
	lost    bool // an edit could not be made: nobody knows what the client's text is
}

// tree returns the statements of the document. A file that is no plan has none that make
// sense.
func (d *document) tree() *lang.File { return d.text.parsed(d.path) }

// errLost is why the text of a document is not known.
var errLost = errors.New("the editor and Pullscore no longer agree on its text; close it and open it again")

// edited returns the document after the edits of a change, each on the text after the one
// before. It is lost if an edit is outside the text.
func (d *document) edited(version int32, changes []lsp.ContentChange, enc encoding) *document {
	next := *d
	next.version = version
	if d.lost {
		return &next
	}
	for _, c := range changes {
		data, err := next.text.replaced(c, enc)
		if err != nil {
			next.lost = true
			next.text = newText(nil, errLost)
			return &next
		}
		next.text = newText(data, nil)
	}
	return &next
}

// with returns the document after edits of its file; ok is false if they overlap.
func (d *document) with(edits []lang.Edit) (next *document, ok bool) {
	data, ok := lang.ApplyEdits(d.data, edits)
	if !ok {
		return nil, false
	}
	changed := *d
	changed.text = newText(data, nil)
	return &changed, true
}

// replaced returns the bytes of a text after an edit.
func (t *text) replaced(c lsp.ContentChange, enc encoding) ([]byte, error) {
	if c.Range == nil {
		return []byte(c.Text), nil
	}
	start, ok := t.index().offset(c.Range.Start, enc)
	end, also := t.index().offset(c.Range.End, enc)
	if !ok || !also || start > end {
		return nil, fmt.Errorf("no such place: %+v", *c.Range)
	}
	return slices.Concat(t.data[:start], []byte(c.Text), t.data[end:]), nil
}
