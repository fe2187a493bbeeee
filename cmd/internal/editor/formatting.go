// The layout as the least edits by lines.

package editor

import (
	"bytes"
	"context"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// formatting answers with the edits that lay a plan out.
func formatting(_ context.Context, s *snapshot, p *lsp.FormattingParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	edits := []lsp.TextEdit{}
	if d.plan {
		edits = s.lineEdits(d, lang.Format(d.data))
	}
	return edits, nil
}

// lineEdits returns the least edits by whole lines that turn a document into another text.
func (s *snapshot) lineEdits(d *document, after []byte) []lsp.TextEdit {
	edits := []lsp.TextEdit{}
	for _, c := range lineChanges(splitLines(d.data), splitLines(after)) {
		edits = append(edits, lsp.TextEdit{Range: s.ranged(d, c.start, c.end), NewText: c.text})
	}
	return edits
}

// splitLines returns the lines of a text, each with its end.
func splitLines(text []byte) [][]byte {
	return bytes.SplitAfter(text, []byte("\n"))
}

// A lineChange replaces the bytes from start to end.
type lineChange struct {
	start, end int
	text       string
}

// lineChanges compares two texts line by line. A layout keeps every line that is not empty,
// in its order, so those are compared in pairs. Texts of which that is not true are one
// change, from the first line that differs to the last.
func lineChanges(before, after [][]byte) (list []lineChange) {
	old, laidOut := blocks(before), blocks(after)
	if len(old) != len(laidOut) {
		return wholeChange(before, after)
	}
	at := 0
	add := func(was, is []byte) {
		switch last := len(list) - 1; {
		case bytes.Equal(was, is):
		case last >= 0 && list[last].end == at: // goes on where the last one ends
			list[last].end += len(was)
			list[last].text += string(is)
		default:
			list = append(list, lineChange{at, at + len(was), string(is)})
		}
		at += len(was)
	}
	for i, b := range old {
		same := 0
		for same < min(len(b.empty), len(laidOut[i].empty)) && bytes.Equal(b.empty[same], laidOut[i].empty[same]) {
			at += len(b.empty[same])
			same++
		}
		add(bytes.Join(b.empty[same:], nil), bytes.Join(laidOut[i].empty[same:], nil))
		add(b.line, laidOut[i].line)
	}
	return list
}

// A block is a line that is not empty, and the empty ones before it. The last block of a
// text has no line.
type block struct {
	empty [][]byte
	line  []byte
}

func blocks(lines [][]byte) (list []block) {
	var b block
	for _, line := range lines {
		if len(bytes.TrimSpace(line)) == 0 {
			b.empty = append(b.empty, line)
			continue
		}
		b.line = line
		list, b = append(list, b), block{}
	}
	return append(list, b)
}

// wholeChange returns one change of all lines between those that are the same at the start
// and at the end.
func wholeChange(before, after [][]byte) []lineChange {
	at, end := 0, 0
	for len(before) > 0 && len(after) > 0 && bytes.Equal(before[0], after[0]) {
		at += len(before[0])
		before, after = before[1:], after[1:]
	}
	for len(before) > 0 && len(after) > 0 && bytes.Equal(before[len(before)-1], after[len(after)-1]) {
		before, after = before[:len(before)-1], after[:len(after)-1]
	}
	end = at + len(bytes.Join(before, nil))
	return []lineChange{{at, end, string(bytes.Join(after, nil))}}
}
