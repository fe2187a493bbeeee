// Package jsontext reads JSON in one pass, without copying what the caller does
// not want, and puts each mistake at its byte. As some libraries write them, Inf,
// Infinity and NaN are numbers too; Number says that they have no value.
package jsontext

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A Scanner reads a text from the byte At on. The zero value with a Text is ready.
type Scanner struct {
	Text string
	At   int

	// Progress, where it is set, is told about every megabyte how much is read, in
	// bytes.
	Progress func(done, total int)
	told     int
}

// A Fault is a mistake in the text. All errors of a Scanner are of this type.
type Fault struct {
	At      int    // the byte
	Code    string // bad-json or too-deep
	Message string
}

// Error returns the message.
func (f *Fault) Error() string { return f.Message }

// bad returns an error about what stands at a byte.
func (s *Scanner) bad(at int, expected string) error {
	if at >= len(s.Text) {
		return &Fault{len(s.Text), "bad-json", "the file ends in the middle"}
	}
	r := []rune(s.Text[at:min(len(s.Text), at+4)])[0]
	return &Fault{at, "bad-json", fmt.Sprintf("this is no JSON: %s is expected, and not %q", expected, r)}
}

// between is after how many bytes progress is told again.
const between = 1 << 20

// Next passes over blanks and returns the byte that follows, or 0 at the end.
func (s *Scanner) Next() byte {
	for s.At < len(s.Text) {
		switch c := s.Text[s.At]; c {
		case ' ', '\t', '\r', '\n':
			s.At++
		default:
			return c
		}
	}
	return 0
}

// take takes one sign.
func (s *Scanner) take(sign byte) error {
	if s.Next() != sign {
		return s.bad(s.At, strconv.QuoteRune(rune(sign)))
	}
	s.At++
	if s.Progress != nil && s.At-s.told >= between {
		s.told = s.At
		s.Progress(s.At, len(s.Text))
	}
	return nil
}

// more takes what stands between two members of a list, or its end; first tells
// that none was read yet.
func (s *Scanner) more(end byte, first bool) (bool, error) {
	switch c := s.Next(); {
	case c == end:
		return false, s.take(end)
	case first:
		return true, nil
	default:
		return true, s.take(',')
	}
}

// Object reads an object. It calls field at the value of each key, which field reads.
func (s *Scanner) Object(field func(key string) error) error {
	if err := s.take('{'); err != nil {
		return err
	}
	for first := true; ; first = false {
		if more, err := s.more('}', first); err != nil || !more {
			return err
		}
		key, err := s.key()
		if err != nil {
			return err
		}
		if err := field(key); err != nil {
			return err
		}
	}
}

// key reads the name of a field, with its colon.
func (s *Scanner) key() (string, error) {
	key, err := s.Str()
	if err != nil {
		return "", err
	}
	return key, s.take(':')
}

// Array reads a list. It calls member at each value, which member reads.
func (s *Scanner) Array(member func() error) error {
	if err := s.take('['); err != nil {
		return err
	}
	for first := true; ; first = false {
		if more, err := s.more(']', first); err != nil || !more {
			return err
		}
		if err := member(); err != nil {
			return err
		}
	}
}

// Str reads a text in quotes and returns it without its escapes.
func (s *Scanner) Str() (string, error) {
	raw, escaped, err := s.raw()
	switch {
	case err != nil:
		return "", err
	case !escaped:
		return raw[1 : len(raw)-1], nil
	}
	var text string
	err = json.Unmarshal([]byte(raw), &text)
	return text, err // none, of a text that was looked through
}

// raw reads a text with its quotes; escaped tells that it has escapes.
func (s *Scanner) raw() (text string, escaped bool, err error) {
	if s.Next() != '"' {
		return "", false, s.bad(s.At, "a text in quotes")
	}
	from := s.At
	for at := from + 1; at < len(s.Text); at++ {
		switch c := s.Text[at]; {
		case c == '"':
			s.At = at + 1
			return s.Text[from:s.At], escaped, nil
		case c < ' ':
			return "", false, s.bad(at, "an escape")
		case c == '\\':
			escaped = true
			n := escapeLength(s.Text[at:])
			if n == 0 {
				return "", false, s.bad(at+1, "an escape")
			}
			at += n - 1
		}
	}
	return "", false, s.bad(len(s.Text), "")
}

// escapeLength returns how long the escape is that a text begins with; 0 for
// none.
func escapeLength(s string) int {
	const long = len(`\u0000`)
	switch {
	case len(s) < 2:
		return 0
	case strings.IndexByte(`"\/bfnrt`, s[1]) >= 0:
		return 2
	case s[1] != 'u' || len(s) < long:
		return 0
	}
	if _, err := strconv.ParseUint(s[2:long], 16, 16); err != nil {
		return 0
	}
	return long
}

// Number reads a number. ok is false for one that a float64 cannot hold.
func (s *Scanner) Number() (value float64, ok bool, err error) {
	s.Next()
	rest := s.Text[s.At:]
	for _, word := range []string{"-Infinity", "-Inf", "Infinity", "Inf", "NaN"} {
		if strings.HasPrefix(rest, word) {
			s.At += len(word)
			return math.NaN(), false, nil
		}
	}
	n := numberLength(rest)
	if n == 0 {
		return 0, false, s.bad(s.At, "a value")
	}
	value, err = strconv.ParseFloat(rest[:n], 64)
	s.At += n
	return value, err == nil, nil
}

// numberLength returns how long the number is that a text begins with: digits,
// of which a first 0 stands alone, a fraction and an exponent; 0 for none.
func numberLength(s string) int {
	at := 0
	digits := func() bool {
		from := at
		for at < len(s) && s[at] >= '0' && s[at] <= '9' {
			at++
		}
		return at > from
	}
	is := func(signs string) bool {
		if at < len(s) && strings.IndexByte(signs, s[at]) >= 0 {
			at++
			return true
		}
		return false
	}
	is("-")
	if !is("0") && !digits() {
		return 0
	}
	if is(".") && !digits() {
		return 0
	}
	if is("eE") {
		is("+-")
		if !digits() {
			return 0
		}
	}
	return at
}

// Word reads true, false or null.
func (s *Scanner) Word() (string, error) {
	s.Next()
	for _, word := range []string{"true", "false", "null"} {
		if strings.HasPrefix(s.Text[s.At:], word) {
			s.At += len(word)
			return word, nil
		}
	}
	return "", s.bad(s.At, "a value")
}

// deepest is how deep a value that Skip passes over may be nested.
const deepest = 10_000

// Skip passes over a value, however it is nested.
func (s *Scanner) Skip() error {
	var open []byte // the ends of the lists around
	for {
		nested, err := s.enter(&open)
		if err != nil {
			return err
		}
		for !nested { // a value is over
			if len(open) == 0 {
				return nil
			}
			end := open[len(open)-1]
			more, err := s.more(end, false)
			if err != nil {
				return err
			}
			if !more {
				open = open[:len(open)-1]
				continue
			}
			if nested = true; end == '}' {
				if _, err := s.key(); err != nil {
					return err
				}
			}
		}
	}
}

// enter passes over a value that holds no other, or goes up to the first value
// in one that does.
func (s *Scanner) enter(open *[]byte) (nested bool, err error) {
	switch c := s.Next(); c {
	case '{', '[':
		end := c + 2 // both are two signs behind in ASCII
		if len(*open) == deepest {
			return false, &Fault{s.At, "too-deep", fmt.Sprintf("the file is nested more than %d deep", deepest)}
		}
		s.At++
		if s.Next() == end {
			return false, s.take(end)
		}
		*open = append(*open, end)
		if end == '}' {
			_, err = s.key()
		}
		return true, err
	case '"':
		_, _, err = s.raw()
	case 't', 'f', 'n':
		_, err = s.Word()
	default:
		_, _, err = s.Number()
	}
	return false, err
}

// Kind names the kind of value that begins with a sign, as in "a text".
func Kind(c byte) string {
	switch c {
	case '"':
		return "a text"
	case '{':
		return "an object"
	case '[':
		return "a list"
	case 't', 'f':
		return "true or false"
	case 'n':
		return "null"
	}
	return "a number"
}

// Figure reads a value that should be a finite number. Of any other it passes
// over the value and returns 0, and wrong says what is there: "is a text, and a
// number is expected".
func (s *Scanner) Figure() (value float64, wrong string, err error) {
	switch c := s.Next(); c {
	case '"', '{', '[', 't', 'f', 'n':
		return 0, "is " + Kind(c) + ", and a number is expected", s.Skip()
	}
	value, ok, err := s.Number()
	if !ok && err == nil {
		return 0, "is no finite number", nil
	}
	return value, "", err
}
