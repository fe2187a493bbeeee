// Words from elsewhere: what people write who know the trade and not yet the
// language, and what they mean by it.

package lang

import (
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
	"push":  "dolly in",
	"stop":  "with stop", "aperture": "with stop", "iris": "with stop", "nd": "with nd",
}

// clauseElsewhere returns the beginning of the clause that is meant by a word, ""
// where none is.
func clauseElsewhere(word string) string {
	switch word {
	case "land", "lands", "arriving", "reaching":
		return "landing on"
	case "in", "during", "within", "taking":
		return "over"
	case "when", "after":
		return "on"
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

func firstWord(s string) string {
	word, _, _ := strings.Cut(s, " ")
	return word
}

// fillers are words that people put before a number, and that say nothing.
var fillers = map[string]bool{"for": true, "about": true, "around": true, "roughly": true}

// isFiller reports whether word t before next only leads to a number.
func isFiller(t, next *lexer.Token) bool {
	return t.Type == tokWord && fillers[t.Value] && next.Type == tokNumber
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
