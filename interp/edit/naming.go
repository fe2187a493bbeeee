// Names of clips: the shot that a clip is of, and its take.
//
// What is hard. Lists name a clip by its shot and by more: 27A-3, 27B TK 2, 27C.MOV,
// 27D_3_A, 93A-4* PU. Nothing parts the two for certain, since the name of a shot may
// itself end in what looks like a take: 469C-4 is take 4 of 469C, or a shot.
//
// What is done. The shots of the plan are known. A name is of a shot if it is its ID, or
// its ID and a tail: a separator, a take, maybe a camera, maybe a note. Of the shots that
// fit, the one with the longest ID has it; so a name that is an ID is never a take of
// another shot. What no tail explains, as in 27AB-1, is of no shot.

package edit

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"pullscore/lang/lines"
)

// A Tail is what the name of a clip says behind its shot. All is empty where the name is
// the shot's ID.
type Tail struct {
	Take   string // as "3", "1XA" or "PU"
	Camera string // as "B"
}

// Fold returns a name as names of clips are compared: composed, in upper case, without
// signs at its start that are neither letter nor digit, and without the stars and blanks
// at its end.
func Fold(name string) string {
	name = strings.ToUpper(norm.NFC.String(name))
	name = strings.TrimLeftFunc(name, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return strings.TrimRight(name, "* \t")
}

// Bare returns a name folded, and without the ending of a file.
func Bare(name string) string { return bare(Fold(name)) }

var tail = lines.Pattern(`^(?:[ \t]*[-_/.#]?[ \t]*(?:TAKE|TK|T)[ \t_#-]*|[ \t]*[-_/.#][ \t]*|[ \t]+)` +
	`([0-9]{1,3}[A-Z]{0,3}|PU[0-9]*)` +
	`(?:[-_/. \t]([A-Z][0-9]?))?` +
	`(?:[ \t*.].*)?$`)

// bare returns a folded name without the ending of a file: 27C.MOV is 27C.
func bare(folded string) string {
	at := strings.LastIndexByte(folded, '.')
	if at < 0 || !isEnding(folded[at+1:]) {
		return folded
	}
	return strings.TrimRight(folded[:at], "* \t")
}

// isEnding reports whether a text is the ending of a file: a letter, and one to four letters
// or digits.
func isEnding(s string) bool {
	for i := range len(s) {
		if c := s[i]; (c < 'A' || c > 'Z') && (i == 0 || c < '0' || c > '9') {
			return false
		}
	}
	return len(s) >= 2 && len(s) <= 5
}

// TailOf reads what stands in a folded name behind the folded ID of a shot; ok is false
// where the name is of no take of it.
func TailOf(folded, id string) (t Tail, ok bool) {
	rest, ok := strings.CutPrefix(folded, id)
	switch {
	case !ok || id == "":
		return t, false
	case rest == "":
		return t, true
	}
	m := tail().FindStringSubmatch(rest)
	if m == nil {
		return t, false
	}
	return Tail{Take: m[1], Camera: m[2]}, true
}

// Shots finds the shot that a clip is of.
type Shots struct {
	ids     map[string]string // the ID of a shot by its folded one
	longest int               // of the folded ones, in bytes
}

// NewShots returns what finds these shots. Of two whose IDs fold alike the first counts.
func NewShots(ids []string) Shots {
	s := Shots{ids: map[string]string{}}
	for _, id := range ids {
		folded := Fold(id)
		if _, taken := s.ids[folded]; !taken && folded != "" {
			s.ids[folded] = id
			s.longest = max(s.longest, len(folded))
		}
	}
	return s
}

// Of returns the ID of the shot that a name is of, and what else it says; ok is false
// where it is of none.
func (s Shots) Of(name string) (id string, t Tail, ok bool) {
	folded := Fold(name)
	short := bare(folded)
	for _, name := range []string{folded, short} { // a shot may be called like a file
		if id, ok := s.ids[name]; ok {
			return id, t, true
		}
	}
	for n := min(s.longest, len(short)-1); n > 0; n-- {
		if !utf8.RuneStart(short[n]) {
			continue
		}
		id, ok := s.ids[short[:n]]
		if !ok {
			continue
		}
		if t, ok := TailOf(short, short[:n]); ok {
			return id, t, true
		}
	}
	return "", t, false
}
