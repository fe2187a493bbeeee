package edl

import (
	"math/rand"
	"regexp"
	"testing"
)

// The words of an event line have the forms that these expressions say.
func TestForms(t *testing.T) {
	forms := []struct {
		expression *regexp.Regexp
		has        func(string) bool
		taken      int
	}{
		{regexp.MustCompile(`^(?:C|D|K|W\d{1,3})$`), transition, 0},
		{regexp.MustCompile(`^[BO]$`), keyPart, 0},
		{regexp.MustCompile(`^\d{1,4}$`), frameCount, 0},
		{regexp.MustCompile(`^(?:NONE|B|[AV\d/]+)$`), channels, 0},
	}
	r := rand.New(rand.NewSource(1))
	signs := []string{"C", "D", "K", "W", "B", "O", "A", "V", "/", "0", "5", "12", "NONE", "é", "x", "²", "a"}
	for range 20_000 {
		s := ""
		for range 1 + r.Intn(4) {
			s += signs[r.Intn(len(signs))]
		}
		for i := range forms {
			f := &forms[i]
			if want := f.expression.MatchString(s); f.has(s) != want {
				t.Fatalf("%q: %v is %v", s, f.expression, want)
			} else if want {
				f.taken++
			}
		}
	}
	for _, f := range forms {
		if f.taken < 100 {
			t.Errorf("%v has matched %d times", f.expression, f.taken)
		}
	}
}
