// Names of files that are written, from names in plans.

package files

import (
	"fmt"
	"maps"
	"strings"
	"unicode"
)

// Names gives out names of files in one folder, none twice. Capitals make no
// difference, since not every system tells them apart. The zero value is ready.
type Names struct {
	owners map[string]string // by the name in small letters
}

// Give returns the name that begins with stem and ends with tail, with ~2, ~3
// and so on between them where that is taken. It belongs to the owner.
func (n *Names) Give(owner, stem, tail string) string {
	if n.owners == nil {
		n.owners = map[string]string{}
	}
	for i := 1; ; i++ {
		again := ""
		if i > 1 {
			again = fmt.Sprintf("~%d", i)
		}
		name := stem + again + tail
		key := strings.ToLower(name)
		if _, taken := n.owners[key]; !taken {
			n.owners[key] = owner
			return name
		}
	}
}

// Drop makes the names of an owner free again.
func (n *Names) Drop(owner string) {
	maps.DeleteFunc(n.owners, func(_, who string) bool { return who == owner })
}

// longest is how many bytes of a plan's or a shot's name go into a file name,
// of which systems allow 255.
const longest = 80

// Safe returns a name with everything replaced that a system forbids in the
// name of a file, or that a shell or a reader would stumble over.
func Safe(name string) string {
	text := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsMark(r) || unicode.IsDigit(r) || strings.ContainsRune("-+.", r) {
			return r
		}
		return '_'
	}, name)
	for len(text) > longest {
		runes := []rune(text)
		text = string(runes[:len(runes)-1])
	}
	if text = strings.TrimLeft(text, "-."); text == "" { // neither an option nor a hidden file
		return "_"
	}
	return text
}
