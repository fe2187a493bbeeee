// Words from elsewhere: what people write who know the trade and not yet the
// language, and what they mean by it.

package lang

import (
	"slices"
	"strconv"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// statementsElsewhere gives the beginning of the statement that is meant by a
// word, or by two where the first alone means something else.
var statementsElsewhere = map[string]string{
	"focus": "rack to", "pull": "rack to", "cut": "rack to", "go": "rack to", "shift": "rack to", "move to": "rack to",
	"wait": "pause", "rest": "pause",
	"stay": "hold", "linger": "hold",
	"track": "follow",
	"pans":  "pan", "whip pan": "pan", "swish pan": "pan", "tilts": "tilt",
	"crane": "boom", "jib": "boom", "pedestal": "boom", "booms": "boom", "truck": "track", "crab": "track", "tracks": "track",
	"stop": "with stop", "aperture": "with stop", "iris": "with stop", "nd": "with nd",
}

// clauseElsewhere returns the beginning of the clause that is meant by a word, ""
// where none is.
func clauseElsewhere(word string) string {
	switch word {
	case "land", "lands", "arriving", "reaching":
		return "landing on"
	case "in", "during", "within", "taking":
		return "over"
	case "when":
		return "on"
	case "after":
		return "on end of"
	case "for":
		return "lasting"
	case "as", "since":
		return "because"
	}
	return ""
}

// movesElsewhere are the words that people write for how someone moves.
var movesElsewhere = map[string]bool{
	"walks": true, "goes": true, "comes": true, "runs": true, "steps": true, "turns": true, "crosses": true, "rises": true, "leans": true,
}

// fromElsewhere returns the beginning of the statement that is meant by a
// line's first two tokens, "" where the table has none.
func fromElsewhere(first, second *lexer.Token) string {
	word := strings.ToLower(first.Value)
	if begin := statementsElsewhere[word+" "+second.Value]; begin != "" {
		return begin
	}
	return statementsElsewhere[word]
}

// meantElsewhere reports whether a line that begins with the word of a camera move is
// rather meant for the focus, as in `pull to NORA` and `track NORA`.
func meantElsewhere(first, second *lexer.Token) bool {
	var ways []string
	switch first.Value {
	case "pull":
		if second.Value == "to" || second.Value == "from" || second.Value == "focus" {
			return true
		}
		ways = []string{"out", "back"}
	case "track":
		ways = []string{"left", "right", "back"}
	default:
		return false
	}
	if !isName(second) || second.Pos == cursor.Pos || moveOfWay(first.Value, second.Value) != "" {
		return false
	}
	_, near := Nearest(second.Value, ways) // which is another word
	return !near && !slices.Contains(ways, second.Value)
}

func firstWord(s string) string {
	word, _, _ := strings.Cut(s, " ")
	return word
}

// fillers are words that people put before a number, and that say nothing.
var fillers = map[string]bool{"for": true, "about": true, "around": true, "roughly": true}

// slipOf returns what is told in place of a statement's mistake at a token where
// people write as they would elsewhere; nil where they do not.
func slipOf(s *spec, w *walker, at int) *fault {
	start := int(w.start.RawCursor())
	t := w.token(at)
	switch {
	case at > start && t.Type == tokNumber && fillers[w.token(at-1).Value]:
		filler := w.token(at - 1)
		return faultAt(filler, "expected-value", "expected a number, found %s", describe(filler)).
			because("Leave out `%s`.", filler.Value).
			offers(deleting(onTokens(filler, filler), filler.Value))
	case s.word == "rack" && at == start+1 && t.Value == "from":
		return startsFrom(w, at, "a rack starts where the focus is")
	case s.word == "with":
		return stopsOfND(w, start, at)
	case at > start && w.token(at-1).Value == "with" && kindElsewhere(t.Value) != "" && s.shape().fieldNamed("Alongside") != nil:
		return faultAt(t, "expected-word", "expected a kind of camera move, found %s", describe(t)).
			because("Did you mean `with %s`?", kindElsewhere(t.Value)).
			writes(kindElsewhere(t.Value))
	case ways[s.word] != nil:
		return moveSlip(s, w, at)
	}
	return nil
}

// startsFrom tells of a rack or a turn that is told where it starts.
func startsFrom(w *walker, at int, message string) *fault {
	f := faultAt(w.token(at), "expected-word", "%s", message)
	var words []string
	for ; !w.token(at).EOF() && w.token(at).Value != "to"; at++ {
		words = append(words, w.token(at).Value)
		f.EndPos = endOf(w.token(at))
	}
	said := strings.Join(words, " ")
	return f.because("Leave out `%s`.", shorten(said)).offers(deleting(f.Node, said))
}

// stopsOfND tells of a density that is given in stops: `nd 2 stops`, or `nd 1
// stop`, where a stop should follow and does not.
func stopsOfND(w *walker, start, at int) *fault {
	if t := w.token(at); at > start && w.token(at-1).Value == "stop" && (t.EOF() || t.Value == ",") {
		at--
	} else if t.Value != "stops" {
		return nil
	}
	if at < start+2 || w.token(at-2).Value != "nd" || w.token(at-1).Type != tokNumber {
		return nil
	}
	f := faultAt(w.token(at), "unknown-unit", "an nd is a density, and 0.3 of it is a stop")
	if stops, err := strconv.ParseFloat(w.token(at-1).Value, 64); err == nil {
		const perStop = 0.3 // log10 2, as filters are marked
		nd := plain(round(stops*perStop, 100))
		f.because("Write: nd %s", nd).offers(writing(onTokens(w.token(at-1), w.token(at)), nd))
	}
	return f
}

// Stops as they are written elsewhere: f4, F/4, t2.1, T/2.1.
var stopElsewhere = onUse(`^([fFtT])/?([0-9]+(?:\.[0-9]+)?)$`)

// stopMeant returns the stop that is meant by what stands in the place of one,
// and false where that is none.
func stopMeant(written string) (text string, stop Expr, ok bool) {
	m := stopElsewhere().FindStringSubmatch(written)
	if m == nil {
		return "", Expr{}, false
	}
	value, err := strconv.ParseFloat(m[2], 64)
	if err != nil || value == 0 {
		return "", Expr{}, false
	}
	unit := UnitT
	if strings.EqualFold(m[1], "f") {
		unit = UnitF
	}
	return unit.String() + m[2], Expr{Kind: ExprStop, Value: value, Unit: unit}, true
}

// asStop spells a name, or a name over a number, as a stop could be written.
func asStop(x *Expr) string {
	switch {
	case x.Kind == ExprName && !x.Quoted:
		return x.Ref
	case x.Kind == ExprBinary && x.Op == '/' && x.X.Kind == ExprName && x.Y.Kind == ExprNumber && x.Y.Unit == UnitNone:
		return asStop(x.X) + "/" + plain(x.Y.Value)
	}
	return ""
}

// plain writes a number with the digits that it needs.
func plain(value float64) string { return strconv.FormatFloat(value, 'f', -1, 64) }
