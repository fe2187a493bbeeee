// Parts of a long file, read side by side.
//
// A file is divided only where its reader knows nothing more of what stands before: at a
// blank line. In SubRip a number may stand between blank lines, before its cue, so the
// lines before that blank line must be a cue, which takes all numbers up to it. What the
// parts yield and tell is then, one after the other, what the whole does.

package captions

import (
	"strings"
	"sync"

	"pullscore/lang/lines"
)

// long is how many bytes a file has that is divided, partSize how many a part has at
// least, and told after how many progress is told.
const (
	long     = 4 << 20
	partSize = 128 << 10
	told     = 1 << 20
)

// A part is lines of a file from one on.
type part struct {
	first lines.Line // its number and offset
	to    int        // the byte behind its last line
}

// partsOf divides a file into parts of a size or more. One without places to divide it is
// one part.
func partsOf(t *lines.Text, vtt bool, size int) (list []part) {
	now := part{first: lines.Line{Number: 1}}
	for {
		at := breakAfter(t.Content, now.first.Offset+size, now.first.Offset, vtt)
		if at < 0 {
			now.to = len(t.Content)
			return append(list, now)
		}
		now.to = at
		list = append(list, now)
		now.first.Number += strings.Count(t.Content[now.first.Offset:at], "\n")
		now.first.Offset = at
	}
}

// breakAfter returns where the first blank line at which a text can be divided begins,
// from a byte on; -1 where there is none. Lines before from stand in another part.
func breakAfter(text string, at, from int, vtt bool) int {
	for range mostBreaks {
		if at >= len(text) {
			break
		}
		n := strings.Index(text[at:], "\n\n")
		if n < 0 {
			break
		}
		if at += n + 1; vtt || endsCue(text[from:at]) {
			return at
		}
	}
	return -1
}

// mostBreaks is how many blank lines are tried for a part, and mostBefore how many lines
// before each are looked at for the times of a cue. A file without cues is read whole.
const (
	mostBreaks = 1000
	mostBefore = 32
)

// endsCue reports whether the lines at the end of a text, up to a blank one, are of a cue.
func endsCue(text string) bool {
	for range mostBefore {
		text = strings.TrimSuffix(text, "\n")
		start := strings.LastIndexByte(text, '\n') + 1
		switch line := text[start:]; {
		case strings.Contains(line, arrow):
			return true
		case strings.TrimSpace(line) == "":
			return false
		}
		text = text[:start]
	}
	return false
}

// A reading is what a part yields and tells.
type reading struct {
	cues   []Cue
	faults lines.Faults
}

// sideBySide reads the parts of a file. WebVTT must have its signature.
func sideBySide(t *lines.Text, parts []part, vtt bool, faults *lines.Faults, yield func(Cue) bool) {
	spare := sync.Pool{New: func() any { return &reading{} }} // their memory is used again
	none := func() struct{} { return struct{}{} }
	read := func(_ struct{}, i int) *reading {
		p, is := parts[i], spare.Get().(*reading)
		is.cues, is.faults = is.cues[:0], lines.Faults{}
		take := func(c Cue) bool {
			is.cues = append(is.cues, c)
			return true
		}
		r := reader{text: t, lines: t.Part(p.first, p.to), later: i > 0, faults: &is.faults, yield: take}
		r.read(vtt)
		return is
	}
	done, last := 0, 0
	for is := range lines.InOrder(len(parts), none, read) {
		for _, c := range is.cues {
			if !yield(c) {
				faults.AddAll(&is.faults)
				return
			}
		}
		faults.AddAll(&is.faults)
		spare.Put(is)
		if at := parts[done].to; t.Progress != nil && at-last >= told {
			last = at
			t.Progress(at, len(t.Content))
		}
		done++
	}
}
