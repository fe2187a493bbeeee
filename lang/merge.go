// A file in which a merge has left both versions.

package lang

import (
	"bytes"
	"fmt"

	"github.com/alecthomas/participle/v2/lexer"
)

// The marks of a merge that nobody has resolved, as version control writes them
// at the beginning of a line; a label may stand behind them.
const (
	markOurs   = "<<<<<<<"
	markTheirs = "======="
	markEnd    = ">>>>>>>"
)

// A conflict is one place where two versions stand one above the other.
type conflict struct {
	mark Node // the first mark
	last int  // the line of the last
}

// conflicts returns the places of a merge that nobody has resolved. Marks that
// are not whole are none: each is a mistake of its own line.
func conflicts(path string, src []byte) []conflict {
	if !bytes.Contains(src, []byte(markOurs)) {
		return nil // as in nearly every file, and found at little cost
	}
	var list []conflict
	var open Node
	wanted := markOurs
	at := lexer.Position{Filename: path, Line: 1, Column: 1}
	for line := range bytes.Lines(src) {
		switch mark := markOf(line); {
		case mark == markOurs:
			open = Node{at, at}
			open.EndPos.Offset += len(mark)
			open.EndPos.Column += len(mark)
			wanted = markTheirs
		case mark != wanted:
		case mark == markTheirs:
			wanted = markEnd
		default:
			list = append(list, conflict{open, at.Line})
			wanted = markOurs
		}
		at.Offset += len(line)
		at.Line++
	}
	return list
}

// markOf returns the mark that a line begins with; "" for none.
func markOf(line []byte) string {
	for _, mark := range []string{markOurs, markTheirs, markEnd} {
		if rest, ok := bytes.CutPrefix(line, []byte(mark)); ok && (len(rest) == 0 || bytes.IndexByte([]byte(" \t\r\n"), rest[0]) >= 0) {
			return mark
		}
	}
	return ""
}

// unmerged tells of a merge that nobody has resolved. Read as a plan each of its
// marks would be a mistake, and so would all that both versions declare.
func unmerged(path string, src []byte) *fault {
	list := conflicts(path, src)
	if len(list) == 0 {
		return nil
	}
	places := ""
	if len(list) > 1 {
		places = fmt.Sprintf(" in %d places", len(list))
	}
	first := list[0]
	return faultOn(&first.mark, "unresolved-merge", "this file holds an unresolved merge%s", places).
		because("Lines %d to %d hold two versions. Keep what is right, and delete the lines that begin with %s, %s and %s.",
			first.mark.Pos.Line, first.last, markOurs, markTheirs, markEnd)
}
