// Names that lead from one part of a document to another.

package draw

import (
	"fmt"
	"strings"
)

// ID returns a name for a group, made of words such as a shot, a paper and a number. It
// holds only ASCII letters, digits, hyphens and underlines, so that every format can write it.
// Different words give different names: any other character becomes its code point
// between underlines, and so does a hyphen inside a word.
func ID(words ...string) string {
	var b strings.Builder
	for i, word := range words {
		if i > 0 {
			b.WriteByte('-')
		}
		for _, r := range Clean(word) {
			switch {
			case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9':
				b.WriteRune(r)
			default:
				fmt.Fprintf(&b, "_%x_", r)
			}
		}
	}
	return b.String()
}

// groups yields a page's root and every group in it.
func (p *Page) groups(yield func(*Group) bool) {
	if !yield(&p.Root) {
		return
	}
	for it := range p.Root.All() {
		if g, ok := it.(*Group); ok && !yield(g) {
			return
		}
	}
}

// IDs returns the IDs of the groups on the pages, each with the index of its page. The ID
// of a page itself is that of its root.
func IDs(pages ...*Page) map[string]int {
	ids := map[string]int{}
	for i, p := range pages {
		for g := range p.groups {
			if g.ID != "" {
				ids[g.ID] = i
			}
		}
	}
	return ids
}

// Under puts a prefix before every ID on the pages, and before the links that lead to one
// of them, so that the pages of several documents can be put into one.
func Under(prefix string, pages ...*Page) {
	ids := IDs(pages...)
	for _, p := range pages {
		for g := range p.groups {
			if g.ID != "" {
				g.ID = prefix + g.ID
			}
			if _, ok := ids[g.Link]; ok {
				g.Link = prefix + g.Link
			}
		}
	}
}

// Unlink removes the links on the pages that lead to none of the IDs on them.
func Unlink(pages ...*Page) {
	ids := IDs(pages...)
	for _, p := range pages {
		for g := range p.groups {
			if _, ok := ids[g.Link]; !ok {
				g.Link = ""
			}
		}
	}
}
