// What a message shows when its words and its values do not fit together.

package interp_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"testing"
)

// misprinted matches what package fmt writes in place of a value that it could
// not print (its documentation, "Format errors"), and a number that is none.
// Two signs as "%!" alone prove nothing: a file may hold them, and a finding
// quotes what it is about.
var misprinted = regexp.MustCompile(`%!(\(EXTRA |\(NOVERB\)|\(BAD(WIDTH|PREC|INDEX)\)|.\(([\w.*\[\]{} ]+=|<nil>\)|PANIC=|MISSING\)|BADINDEX\)))|\bNaN\b`)

// misprint returns what is misprinted in a message; "" where nothing is, or
// where one of the sources holds it and the message may quote it.
func misprint(message string, sources map[string][]byte) string {
next:
	for _, found := range misprinted.FindAllString(message, -1) {
		for name, text := range sources {
			if bytes.Contains(text, []byte(found)) || bytes.Contains([]byte(name), []byte(found)) {
				continue next
			}
		}
		return found
	}
	return ""
}

func TestMisprint(t *testing.T) {
	for _, c := range []struct {
		format string
		values []any
	}{
		{"lands %d times", []any{1.5}}, {"lands %d times", nil}, {"lands %d times", []any{nil}}, {"lands", []any{1.5}},
		{"lands %[3]d times", []any{1}}, {"lands %z", []any{"x"}}, {"lands %z", []any{[]string{"x"}}},
		{"lands %[2]*.[1]*f", []any{"x", 12.0, 2.0}}, {"lands %", nil}, {"the ring goes to %v deg", []any{math.NaN()}},
	} {
		if message := fmt.Sprintf(c.format, c.values...); misprint(message, nil) == "" {
			t.Errorf("%q passes", message)
		}
	}
	held := map[string][]byte{"plan.pull": []byte("subject NaN\nedit \"%!d(string=x)\"\n")}
	for _, message := range []string{
		`no file "a%!b.srt"`, "lands at 90 %!", `no subject "NaNA"`, `no subject "NaN"`, `no file "%!d(string=x)"`,
	} {
		if found := misprint(message, held); found != "" {
			t.Errorf("%q: %q is quoted", message, found)
		}
	}
	if misprint("lands %!d(float64=1.5) times", held) == "" {
		t.Error("what no source holds passes beside one that holds another")
	}
}
