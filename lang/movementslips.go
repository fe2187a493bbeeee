// What people write of camera moves who know the trade and not yet the language.

package lang

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// ways are the words behind each camera move, those in pairs first.
var ways = map[string][]string{
	"pan": {"left", "right", "to", "with"}, "tilt": {"up", "down", "to", "with"},
	"track": {"left", "right"}, "boom": {"up", "down"}, "dolly": {"in", "out"}, "push": {"in"}, "pull": {"out"},
}

// moveOfWay returns the camera move that goes some way, for those that do not.
func moveOfWay(word, way string) string {
	turns := word == "pan" || word == "tilt"
	switch way {
	case "left", "right":
		if turns {
			return "pan " + way
		}
		return "track " + way
	case "up", "down":
		if turns {
			return "tilt " + way
		}
		return "boom " + way
	case "in":
		return "push in"
	case "out", "back":
		return "pull out"
	}
	return ""
}

// wordOfWay returns the word for a way, or for what a turn goes by, that is written as
// people say it.
func wordOfWay(written string) string {
	switch written {
	case "upwards", "upward":
		return "up"
	case "downwards", "downward":
		return "down"
	case "onto", "on", "towards", "toward", "until", "at":
		return "to"
	case "after", "along", "following", "follow":
		return "with"
	}
	return ""
}

// kindElsewhere returns the kind of camera move that is meant by a word that is none of
// them, "" for none.
func kindElsewhere(word string) string {
	switch word {
	case "push", "pull":
		return "dolly"
	case "truck", "crab":
		return "track"
	case "crane", "jib", "pedestal":
		return "boom"
	}
	return ""
}

// moveSlip returns what is told of a camera move whose first words are not as the
// language has them; nil where the mistake stands behind those.
func moveSlip(s *spec, w *walker, at int) *fault {
	start := int(w.start.RawCursor())
	words := ways[s.word]
	second := w.token(start + 1)
	switch {
	case slices.Contains(words, second.Value):
		return nil
	case second.Value == "and" && at <= start+3:
		return bothSlip(s, w, start)
	case at > start+2:
		return nil
	case second.Value == "from" && s.turns():
		return startsFrom(w, start+1, "a "+s.word+" starts where the camera looks")
	}
	if meant := moveOfWay(s.word, second.Value); meant != "" {
		f := faultAt(second, "expected-word", "expected %s, found %s", choice(words), describe(second)).because("Did you mean `%s`?", meant)
		f.Pos = w.token(start).Pos // both words are to be replaced
		return f.writes(meant)
	}
	f := faultAt(second, "expected-word", "expected %s, found %s", choice(words), describe(second))
	near, ok := Nearest(second.Value, words)
	switch meant := wordOfWay(second.Value); {
	case slices.Contains(words, meant):
		return f.because("Did you mean `%s %s`?", s.word, meant).writes(meant)
	case ok && second.Type == tokWord:
		return f.because("Did you mean `%s`?", near).writes(near)
	case second.Type == tokNumber || second.Type == tokFeet:
		if way, last := wayBehind(words, w, start+1); way != "" {
			f.because("Did you mean `%s %s`?", s.word, shorten(way))
			if last != nil {
				f.offers(writing(onTokens(second, last), way))
			} else {
				f.offers(inserting(second.Pos, way+" ", "`"+way+"`"))
			}
		} else {
			f.offers(missingWords(second, words[:2])...)
		}
	case s.turns() && isName(second):
		f.because("Did you mean `%s to %s`?", s.word, shorten(second.Value)).offers(inserting(second.Pos, "to ", "`to`"))
	}
	return f
}

// wayBehind returns a way of a move and the value that was written before it, with the
// token of the way; the one way where there is no other, and "" for none.
func wayBehind(words []string, w *walker, at int) (way string, last *lexer.Token) {
	var value []lexer.Token
	for ; !w.token(at).EOF() && len(value) < 4; at++ {
		t := w.token(at)
		if slices.Contains(words, t.Value) {
			return t.Value + " " + joined(value), t
		}
		value = append(value, *t)
	}
	if len(words) == 1 {
		return words[0], nil
	}
	return "", nil
}

// joined writes tokens with blanks between them.
func joined(tokens []lexer.Token) string {
	text := ""
	for i := range tokens {
		if i > 0 {
			text += " "
		}
		text += tokens[i].Value
	}
	return text
}

// bothSlip tells of `pan and tilt` that is not as the language has it.
func bothSlip(s *spec, w *walker, start int) *fault {
	third, fourth := w.token(start+2), &lexer.Token{}
	if !third.EOF() {
		fourth = w.token(start + 3)
	}
	switch {
	case s.word == "tilt" && third.Value == "pan":
		f := faultAt(w.token(start), "expected-word", "the two stand in the other order")
		f.EndPos = endOf(third)
		return f.because("Did you mean `pan and tilt`?").writes("pan and tilt")
	case s.word == "pan" && third.Value == "tilt" && moveOfWay("pan", fourth.Value) != "":
		return faultAt(fourth, "expected-word", "expected `to` or `with`, found %s", describe(fourth)).
			because("By an angle, each is a line of its own: the second ends in `with pan`.")
	case s.word == "pan" && third.Value == "tilt" && fourth.EOF():
		return faultAt(w.token(start+3), "expected-word", "expected `to` or `with`, found %s", describe(fourth))
	}
	return nil
}
