// Edits: changes of the text of a file.

package lang

import (
	"cmp"
	"slices"
)

// An Edit replaces the text of a Range by another text. An empty Range inserts, an empty
// Text deletes. The file and the byte offsets of the Range count; lines and columns are
// those of the same places.
type Edit struct {
	Range Range
	Text  string
}

// ApplyEdits returns a text with the edits of one file made. All of them count their places
// in the text as it is; those that insert at one place stay in their order. It returns
// false if edits overlap or lie outside the text.
func ApplyEdits(src []byte, edits []Edit) ([]byte, bool) {
	edits = slices.SortedStableFunc(slices.Values(edits), func(a, b Edit) int {
		return cmp.Or(cmp.Compare(a.Range.Start.Offset, b.Range.Start.Offset), cmp.Compare(a.Range.End.Offset, b.Range.End.Offset))
	})
	var out []byte
	done := 0
	for _, e := range edits {
		from, to := e.Range.Start.Offset, e.Range.End.Offset
		if from < done || to < from || to > len(src) {
			return nil, false
		}
		out = append(append(out, src[done:from]...), e.Text...)
		done = to
	}
	return append(out, src[done:]...), true
}
