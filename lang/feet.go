// Feet with inches, in the ways in which people write them: 5'6", 5'-6", 5 ft 6 in.

package lang

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// feet reads 5', 6", 5'6", 5'-6" or 5' 6 1/2", and inches with a unit behind 5'.
func (r *exprReader) feet() *Expr {
	t := r.lex.Next()
	x := &Expr{Node: Node{t.Pos, endOf(t)}, Kind: ExprNumber, Unit: UnitFoot}
	feet, inches, hasFeet := strings.Cut(oneMark.Replace(t.Value), "'")
	if !hasFeet {
		x.Unit, x.Value = UnitInch, r.inchesOf(t, feet)
		return x
	}
	x.Value = r.decimal(t, feet)
	if inches != "" {
		if strings.ContainsAny(t.Value, "-\u2010\u2011–") && !isInteger(feet) {
			r.fail(partOfFoot(t))
		}
		r.addInches(x, t, r.inchesOf(t, inches))
		return x
	}
	if r.inchesBehind(x, isInteger(feet)) {
		return x
	}
	if next := r.lex.Peek(); next.Type == tokNumber && !r.unitBehind() {
		r.fail(faultAt(next, "bad-number", "these inches have no mark").because("Write %s%s\".", t.Value, next.Value).
			offers(inserting(endOf(next), `"`, "the mark of inches")))
	}
	r.notMinus(t)
	return x
}

// inchesOf returns the number of inches of 6 or 6 1/2, with a mark behind it.
func (r *exprReader) inchesOf(t *lexer.Token, written string) (sum float64) {
	for part := range strings.FieldsSeq(strings.TrimSuffix(written, `"`)) {
		sum += r.decimal(t, part)
	}
	return sum
}

// addInches adds to x feet the inches that end with t.
func (r *exprReader) addInches(x *Expr, t *lexer.Token, inches float64) {
	x.Value += inches / 12
	if inches >= 12 {
		r.fail(faultAt(t, "bad-number", "a foot has 12 inches, not %g", inches))
	}
}

// inchesBehind reads the inches behind x feet, if some stand there: 6 in or 6".
// Where left or right follows them they are the side of a place. whole tells that
// the feet are a whole number.
func (r *exprReader) inchesBehind(x *Expr, whole bool) bool {
	t := r.lex.Peek()
	if t.Type != tokNumber && (t.Type != tokFeet || !isInches(t)) {
		return false
	}
	here := r.lex.MakeCheckpoint()
	ahead := valueAhead{next: r.lex.Next}
	more := r.inchNumber()
	if more == nil {
		r.lex.LoadCheckpoint(here)
		return false
	}
	behind := r.lex.MakeCheckpoint()
	r.lex.LoadCheckpoint(here)
	if ahead.isSide() {
		r.lex.LoadCheckpoint(here)
		return false // it is no part of the feet
	}
	r.lex.LoadCheckpoint(behind)
	if !whole {
		r.fail(partOfFoot(t))
	}
	r.addInches(x, t, more.Value)
	x.EndPos = more.EndPos
	return true
}

// inchNumber reads a number of inches, nil where none comes next.
func (r *exprReader) inchNumber() *Expr {
	inner := exprReader{lex: r.lex}
	var x *Expr
	if r.lex.Peek().Type == tokFeet {
		x = inner.feet()
	} else {
		x = inner.number()
	}
	if inner.err != nil || x.Unit != UnitInch {
		return nil
	}
	return x
}

// unitBehind reports whether the number that comes next has a unit.
func (r *exprReader) unitBehind() bool {
	here := r.lex.MakeCheckpoint()
	defer r.lex.LoadCheckpoint(here)
	inner := exprReader{lex: r.lex}
	x := inner.number()
	return inner.err == nil && x.Unit != UnitNone
}

// notMinus reports a minus with blanks between feet and inches that have marks:
// many write the hyphen of 5'-6" so, and what they mean is twice six inches more.
func (r *exprReader) notMinus(feet *lexer.Token) {
	sign := r.lex.Peek()
	if !isSign(sign) || sign.Value == "+" {
		return
	}
	here := r.lex.MakeCheckpoint()
	defer r.lex.LoadCheckpoint(here)
	r.lex.Next()
	if inches := r.lex.Peek(); isInches(inches) {
		r.fail(faultAt(sign, "bad-number", "this may be a hyphen or a minus").
			because("Write %s-%s without blanks for the sum, %s - (%s) for the difference.", feet.Value, inches.Value, feet.Value, inches.Value).
			offers(writing(onTokens(feet, inches), feet.Value+"-"+inches.Value), writing(onTokens(feet, inches), feet.Value+" - ("+inches.Value+")")))
	}
}

// partOfFoot tells of inches behind feet that are not whole.
func partOfFoot(t *lexer.Token) *fault {
	return faultAt(t, "bad-number", "inches follow a whole number of feet").because("Write 5'6\", or 5.5 ft.")
}

// isInches reports whether t is inches with a mark and no feet.
func isInches(t *lexer.Token) bool {
	return t.Type == tokFeet && !strings.Contains(oneMark.Replace(t.Value), "'")
}

// continuesFeet reports whether token i goes on with the feet before it, as the 6
// of `5 ft 6 in` does. It tells the formatter what inchesBehind tells the parser.
func continuesFeet(tokens []lexer.Token, i int) bool {
	if i < 2 || tokens[i-1].Value != "ft" || tokens[i-2].Type != tokNumber {
		return false
	}
	if t := &tokens[i]; t.Type == tokNumber {
		unit := i + 1
		if unit < len(tokens) && tokens[unit].Type == tokNumber && isInteger(t.Value) && strings.Contains(tokens[unit].Value, "/") {
			unit++
		}
		if unit >= len(tokens) || tokens[unit].Value != "in" || tokens[unit].Type != tokWord {
			return false
		}
	} else if !isInches(t) {
		return false
	}
	rest := tokens[i:]
	ahead := valueAhead{next: func() *lexer.Token {
		if len(rest) == 0 {
			return &endOfRow
		}
		t := &rest[0]
		rest = rest[1:]
		return t
	}}
	return !ahead.isSide()
}

// feetBefore reports whether tokens end in a number behind feet, which may be
// inches: their unit is missing.
func feetBefore(tokens []lexer.Token) bool {
	i := len(tokens) - 1
	if i > 0 && strings.Contains(tokens[i].Value, "/") && tokens[i-1].Type == tokNumber && isInteger(tokens[i-1].Value) {
		i--
	}
	if i < 1 || tokens[i].Type != tokNumber {
		return false
	}
	feet := &tokens[i-1]
	return feet.Type == tokFeet && strings.HasSuffix(oneMark.Replace(feet.Value), "'") ||
		i > 1 && feet.Value == UnitFoot.String() && tokens[i-2].Type == tokNumber
}

// unmarkedFeet returns tokens that end in a number behind 5' with 5 ft in its place:
// inches without a mark are an error, and here their unit is still to come.
func unmarkedFeet(tokens []lexer.Token) []lexer.Token {
	if !feetBefore(tokens) {
		return tokens
	}
	for i := len(tokens) - 2; i >= 0 && i >= len(tokens)-3; i-- {
		if feet := tokens[i]; feet.Type == tokFeet {
			number, unit := feet, feet
			number.Type, number.Value = tokNumber, strings.TrimSuffix(oneMark.Replace(feet.Value), "'")
			unit.Type, unit.Value = tokWord, UnitFoot.String()
			return slices.Concat(tokens[:i], []lexer.Token{number, unit}, tokens[i+1:])
		}
	}
	return tokens
}

// A valueAhead looks over the tokens of a value, without reading it.
type valueAhead struct{ next func() *lexer.Token }

// isSide reports whether the value that comes next ends before left or right, as
// the 6 in of `4 ft, 6 in left` does. It is bounded by the value, since a second
// value behind the first ends it.
func (a valueAhead) isSide() bool {
	t := a.next()
	for {
		for isSign(t) || t.Value == "(" && t.Type == tokPunct {
			t = a.next()
		}
		switch {
		case t.Type == tokNumber:
			t = a.behindNumber(t)
		case t.Type == tokFeet, t.Type == tokStop, t.Type == tokTimecode, t.Type == tokText,
			t.Type == tokWord && (t.Value == "inf" || !isKeyword(t.Value)):
			t = a.next()
		default:
			return false
		}
		for t.Value == ")" && t.Type == tokPunct {
			t = a.next()
		}
		switch {
		case t.Type == tokWord:
			return t.Value == "left" || t.Value == "right"
		case !isSign(t) && (t.Type != tokPunct || t.Value != "*" && t.Value != "/"):
			return false
		}
		t = a.next()
	}
}

// behindNumber returns the token behind a number, its fraction and its unit.
func (a valueAhead) behindNumber(number *lexer.Token) *lexer.Token {
	t := a.next()
	if t.Type == tokNumber && isInteger(number.Value) && strings.Contains(t.Value, "/") {
		t = a.next()
	}
	if _, ok := unitOf(t.Value); ok && (t.Type == tokWord || t.Type == tokPunct) {
		t = a.next()
	}
	return t
}
