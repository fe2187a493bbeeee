// Expressions: numbers with their units, names, and arithmetic on them.

package lang

import (
	"math"
	"strconv"
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// Bounds of one expression.
const (
	maxDepth = 100  // of brackets and signs
	maxTerms = 1000 // of values in all
)

var _ participle.Parseable = (*Expr)(nil)

// Parse reads a sum of products of values. Tags cannot say it: what binds more
// tightly and which side comes first would each be a level of its own in the
// tree, and neither the bounds of depth nor a unit of two words, such as bit/s
// behind a number alone, has a tag.
func (x *Expr) Parse(lex *lexer.PeekingLexer) error {
	return readExpr(lex, x, (*exprReader).sum)
}

// readExpr reads into x what read reads.
func readExpr(lex *lexer.PeekingLexer, x *Expr, read func(*exprReader) *Expr) error {
	if !beginsExpr(lex.Peek()) {
		return participle.NextMatch
	}
	r := exprReader{lex: lex}
	got := read(&r)
	if r.err != nil {
		return r.err
	}
	*x = *got
	return nil
}

// beginsExpr reports whether an expression can begin with t.
func beginsExpr(t *lexer.Token) bool {
	switch t.Type {
	case tokNumber, tokFeet, tokStop, tokTimecode, tokText:
		return true
	case tokWord:
		return t.Value == "inf" || !isKeyword(t.Value)
	}
	return isSign(t) || t.Value == "(" && !t.EOF()
}

// isSign reports whether t is a plus or a minus.
func isSign(t *lexer.Token) bool {
	return t.Type == tokPunct && (t.Value == "+" || t.Value == "-" || t.Value == "−")
}

type exprReader struct {
	lex   *lexer.PeekingLexer
	depth int
	terms int
	err   *fault
}

func (r *exprReader) fail(f *fault) *Expr {
	if r.err == nil {
		r.err = f
	}
	return &Expr{}
}

func (r *exprReader) sum() *Expr {
	x := r.product()
	for r.err == nil && isSign(r.lex.Peek()) {
		x = r.binary(x, r.product)
	}
	return x
}

func (r *exprReader) product() *Expr {
	x := r.signed()
	for r.err == nil {
		if t := r.lex.Peek(); t.Type != tokPunct || t.Value != "*" && t.Value != "/" {
			break
		}
		x = r.binary(x, r.signed)
	}
	return x
}

// binary reads an operator and its right side behind x.
func (r *exprReader) binary(x *Expr, side func() *Expr) *Expr {
	op := r.lex.Next().Value[0]
	if op == "−"[0] {
		op = '-'
	}
	y := side()
	return &Expr{Node: Node{x.Pos, y.EndPos}, Kind: ExprBinary, Op: op, X: x, Y: y}
}

// signed reads a value behind any number of signs.
func (r *exprReader) signed() *Expr {
	t := r.lex.Peek()
	if !isSign(t) {
		return r.operand()
	}
	if r.depth++; r.depth > maxDepth {
		return r.fail(tooDeep(t))
	}
	defer func() { r.depth-- }()
	r.lex.Next()
	x := r.signed()
	if t.Value == "+" {
		return x
	}
	return &Expr{Node: Node{t.Pos, x.EndPos}, Kind: ExprMinus, X: x}
}

func tooDeep(t *lexer.Token) *fault {
	return faultAt(t, "too-large", "this goes deeper than %d brackets", maxDepth)
}

// operand reads one value or a sum in brackets.
func (r *exprReader) operand() *Expr {
	t := r.lex.Peek()
	if r.terms++; r.terms > maxTerms {
		return r.fail(faultAt(t, "too-large", "this expression has more than %d values", maxTerms))
	}
	switch t.Type {
	case tokNumber:
		return r.number()
	case tokFeet:
		return r.feet()
	case tokStop:
		return r.stop()
	case tokTimecode:
		r.lex.Next()
		return &Expr{Node: Node{t.Pos, endOf(t)}, Kind: ExprTimecode, Ref: t.Value}
	case tokPunct:
		if t.Value == "(" {
			return r.brackets()
		}
	case tokWord, tokText:
		return r.name()
	}
	return r.fail(faultAt(t, "expected-value", "expected %s, found %s", anyValue, describe(t)))
}

func (r *exprReader) brackets() *Expr {
	open := r.lex.Next()
	if r.depth++; r.depth > maxDepth {
		return r.fail(tooDeep(open))
	}
	defer func() { r.depth-- }()
	x := r.sum()
	if r.err != nil {
		return x
	}
	if t := r.lex.Peek(); t.Value != ")" || t.EOF() {
		return r.fail(faultAt(t, "expected-word", "expected `)`, found %s", describe(t)).offers(inserting(t.Pos, ")", "`)`")))
	}
	x.Pos, x.EndPos = open.Pos, endOf(r.lex.Next())
	return x
}

func (r *exprReader) name() *Expr {
	t := r.lex.Peek()
	x := &Expr{Node: Node{t.Pos, endOf(t)}, Kind: ExprName}
	switch {
	case t.Type == tokWord && t.Value == "inf":
		x.Kind = ExprInf
	case isName(t):
		x.Ref, x.Quoted = nameOf(t)
	default:
		return r.fail(noName(t))
	}
	r.lex.Next()
	return x
}

// number reads a number, a fraction behind it (5 1/2), and its unit.
func (r *exprReader) number() *Expr {
	t := r.lex.Next()
	end := t
	value := r.decimal(t, t.Value)
	if next := r.lex.Peek(); next.Type == tokNumber && isInteger(t.Value) && strings.Contains(next.Value, "/") {
		end = r.lex.Next()
		value += r.decimal(end, end.Value)
	}
	x := &Expr{Node: Node{t.Pos, endOf(end)}, Kind: ExprNumber, Value: value}
	r.unit(x)
	if x.Unit == UnitFoot {
		r.inchesBehind(x, isInteger(t.Value) && end == t)
	}
	return x
}

func isInteger(s string) bool { return strings.Trim(s, "0123456789") == "" }

// unit reads the unit behind number x, if one stands there.
func (r *exprReader) unit(x *Expr) {
	t := r.lex.Peek()
	if t.Type != tokWord && t.Value != "%" && t.Value != "°" {
		return
	}
	unit, ok := unitOf(t.Value)
	if !ok {
		if !isKeyword(t.Value) && !isSoft(t.Value) && r.err == nil {
			r.fail(noUnit(t))
		}
		return
	}
	r.lex.Next()
	x.Unit, x.EndPos = unit, endOf(t)
	if _, ok := aSecond(unit); unit == UnitBitS || ok && r.perSecond() {
		r.seconds(x, t)
	}
}

// perSecond reports whether "/ s" comes next.
func (r *exprReader) perSecond() bool {
	if t := r.lex.Peek(); t.Value != "/" || t.EOF() {
		return false
	}
	here := r.lex.MakeCheckpoint()
	r.lex.Next()
	t := r.lex.Peek()
	found := t.Type == tokWord && t.Value == "s"
	r.lex.LoadCheckpoint(here)
	return found
}

// seconds reads the "/s" of bit/s, deg/s and m/s, behind the first part of unit.
func (r *exprReader) seconds(x *Expr, unit *lexer.Token) {
	if !r.perSecond() {
		r.fail(faultAt(unit, "unknown-unit", "`bit` alone is no unit").because("Write bit/s.").writes("bit/s"))
		return
	}
	r.lex.Next()
	x.EndPos = endOf(r.lex.Next())
	if speed, ok := aSecond(x.Unit); ok {
		x.Unit = speed
	}
}

// aSecond returns the unit of a speed: so much of another in a second.
func aSecond(unit Unit) (speed Unit, ok bool) {
	switch unit {
	case UnitDeg:
		return UnitDegS, true
	case UnitM:
		return UnitMetreS, true
	case UnitFoot:
		return UnitFootS, true
	}
	return unit, false
}

// noUnit tells that the word behind a number is no unit.
func noUnit(t *lexer.Token) *fault {
	f := faultAt(t, "unknown-unit", "%s is no unit", describe(t))
	f.unit = t.Value
	return f
}

// stop reads f/2.8 or T2.1. That there is no stop T0 is told later: it may be a
// name.
func (r *exprReader) stop() *Expr {
	t := r.lex.Next()
	x := &Expr{Node: Node{t.Pos, endOf(t)}, Kind: ExprStop, Unit: UnitT}
	if isNamedStop(t) {
		x.Ref = t.Value // it is a name in a place or target
	}
	if strings.EqualFold(t.Value[:1], "f") {
		x.Unit = UnitF
	}
	digits := strings.TrimPrefix(t.Value[1:], "/")
	if x.Value = r.decimal(t, digits); x.Value == 0 && x.Ref == "" && r.err == nil {
		r.fail(faultAt(t, "bad-number", "there is no stop %s", t.Value))
	}
	return x
}

// decimal reads digits with a point, or a fraction. A decimal comma, which the
// scanner has reported, is read as a point, and a ratio as what it comes to.
func (r *exprReader) decimal(t *lexer.Token, digits string) float64 {
	if f, ok := ratioOf(digits); ok {
		return f
	}
	top, bottom, isFraction := strings.Cut(digits, "/")
	value, err := strconv.ParseFloat(strings.Replace(top, ",", ".", 1), 64)
	if isFraction && err == nil {
		var by float64
		by, err = strconv.ParseFloat(bottom, 64)
		value /= by
	}
	const most = 1e9 // more than any length, time or stop of a film
	if err == nil && value <= most {
		return value
	}
	f := faultAt(t, "bad-number", "`%s` is no number that a plan can use", shorten(t.Value))
	if math.IsNaN(value) || isFraction && value > most {
		f.because("Nothing can be divided by 0.")
	} else {
		f.because("Numbers go up to %.0f.", most)
	}
	r.fail(f)
	return 0
}
