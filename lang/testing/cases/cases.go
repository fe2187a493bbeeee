// Package cases says of how many cases a property is tried in a usual run of the tests:
// of many where something rare has to come up, of few where each case is dear. Whoever
// names a number on the command line (-rapid.checks=5000) gets that many of every one.
package cases

import (
	"flag"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// Check checks a property with n cases. It sets rapid's flag for as long as it runs, so
// no test beside it may check another property at the same time.
func Check(t *testing.T, n int, property func(*rapid.T)) {
	t.Helper()
	if f := flag.Lookup("rapid.checks"); f.Value.String() == f.DefValue {
		set := func(text string) {
			if err := flag.Set(f.Name, text); err != nil {
				t.Fatal(err)
			}
		}
		set(strconv.Itoa(n))
		defer set(f.DefValue)
	}
	rapid.Check(t, property)
}
