// Which words of the language stand beside one another, from the tags. A grammar of an
// editor has no tree: it tells a soft word from a name by the words before it.

package lang

import "slices"

// neighbours holds what editors need to know of soft words.
type neighbours struct {
	soft map[string][]string // by the word of a statement, those inside of it
	// behind holds, for every word that a name can follow, the soft words that can
	// follow it in some statement and mean something there.
	behind map[string][]string
}

func newNeighbours() neighbours {
	n := neighbours{soft: map[string][]string{}, behind: map[string][]string{}}
	next := map[string][]*form{}
	for _, s := range specs {
		link(s.shape().form, nil, func(before, f *form) {
			if before != nil && before.kind == formLiteral && isWordByte(before.text[0]) {
				next[before.text] = append(next[before.text], f)
			}
			if before != nil && f.isSoftWord() {
				n.soft[s.word] = append(n.soft[s.word], f.text)
			}
		})
	}
	for word, list := range n.soft {
		slices.Sort(list)
		n.soft[word] = slices.Compact(list)
	}
	for word, forms := range next {
		if !slices.ContainsFunc(forms, (*form).canBeName) {
			continue
		}
		var list []string
		for _, f := range forms {
			if f.isSoftWord() {
				list = append(list, f.text)
			}
		}
		slices.Sort(list)
		n.behind[word] = slices.Compact(list)
	}
	return n
}

// isSoftWord reports whether a leaf is a soft word of the language.
func (f *form) isSoftWord() bool { return f.kind == formLiteral && isSoft(f.text) }

// canBeName reports whether a name may stand for a leaf.
func (f *form) canBeName() bool { return f.kind == formPiece && f.piece != textType }

// link calls pair with all leaves of a form that can stand side by side, with nil for
// the start. before are the leaves that can stand before the form; link returns those
// that can stand before what follows it.
func link(f *form, before []*form, pair func(before, f *form)) (last []*form) {
	switch {
	case f.kind == formAhead:
		return before
	case f.kind == formSequence:
		for _, part := range f.parts {
			before = link(part, before, pair)
		}
		return before
	case f.kind == formChoice:
		for _, part := range f.parts {
			last = union(last, link(part, before, pair))
		}
		return last
	case f.kind == formRepeat:
		once := link(f.parts[0], before, pair)
		if f.mode != '?' {
			once = union(once, link(f.parts[0], union(before, once), pair))
		}
		if f.mode != '+' {
			return union(before, once)
		}
		return once
	case f.kind == formPiece && f.piece == anchorType:
		return link(momentShape().form, before, pair)
	case f.kind == formPiece && !isProduction(f.piece):
		return link(shapeOf(f.piece).form, before, pair)
	}
	if len(before) == 0 {
		pair(nil, f)
	}
	for _, b := range before {
		pair(b, f)
	}
	return []*form{f}
}

func union(a, b []*form) []*form {
	for _, f := range b {
		if !slices.Contains(a, f) {
			a = append(slices.Clip(a), f)
		}
	}
	return a
}
