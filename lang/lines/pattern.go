// Patterns of other people's text.

package lines

import (
	"regexp"
	"sync"
)

// Pattern returns a regular expression that is compiled when it is first used:
// a program that reads no such text would wait for it at every start.
func Pattern(expression string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expression) })
}
