package lang_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/lang"
)

// Whatever stands behind the word of a camera move is read or explained, and laid out the
// same a second time.
func TestMovesOfAnyTokens(t *testing.T) {
	first := strings.Fields("pan tilt boom track push pull dolly zoom rack")
	words := append(strings.Fields(`to with and left right up down in out OVEN "x" 12 deg 3 m 1.2 s over on at landing until end of
		smooth even because , ( ) : moves camera operator - + / f/4 5'6" 01:00:00:00 start back follow`), first...)
	r := rand.New(rand.NewPCG(1, 7))
	for range 6000 {
		line := []string{first[r.IntN(len(first))]}
		for range 1 + r.IntN(9) {
			line = append(line, words[r.IntN(len(words))])
		}
		src := []byte("shot 1\n  " + strings.Join(line, " ") + "\n")
		func() {
			defer func() {
				if e := recover(); e != nil {
					t.Errorf("%q: %v", src, e)
				}
			}()
			if lang.Parse("plan.pull", src); t.Failed() {
				return
			}
			if once := lang.Format(src); string(lang.Format(once)) != string(once) {
				t.Errorf("%q is laid out as %q, and that as %q", src, once, lang.Format(once))
			}
		}()
	}
}
