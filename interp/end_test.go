// The ends of words as moments.

package interp_test

import "testing"

// A word's end is the start of the next, or that of its line.
func TestEndOfWords(t *testing.T) {
	const lines = "NORA: \"One two three.\", lasting 3 s\nOTTO: \"Two four.\", lasting 2 s\n"
	for _, test := range []struct {
		end, start string
	}{
		{`end of "one"`, `NORA "two"`},
		{`end of "one two"`, `"three"`},
		{`end of NORA "two" + 0.5 s`, `"three" + 0.5 s`},
		{`end of "two" 1`, `"three"`},
		{`end of "three"`, `end of NORA`},
		{`end of OTTO "two"`, `"four"`},
		{`end of "NORA"`, `end of NORA`},
	} {
		body := "NORA: \"One two three.\", lasting 3 s\ncue a on " + test.end + "\ncue b on " + test.start + "\n"
		if test.end == `end of OTTO "two"` {
			body = lines + "cue a on " + test.end + "\ncue b on " + test.start + "\n"
		}
		s := theShot(t, body)
		if a, b := s.Cues[0].T, s.Cues[1].T; !near(a, float64(b)) || a == 0 {
			t.Errorf("%s is at %v, %s at %v", test.end, a, test.start, b)
		}
	}
}
