// Finishing: what is left to do once participle has read a statement. Rules that
// a tag cannot say are held to; pieces get their ends; values are checked by the
// quantities of their fields.

package lang

import (
	"reflect"
	"sort"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

type slotKind uint8

const (
	slotValue slotKind = iota
	slotAnchor
	slotAnchors
	slotPlace
	slotTarget
	slotSize
	slotPosition
	slotFormat
	slotFloor
	slotAim
)

// A slot is a field whose value has to be finished.
type slot struct {
	kind  slotKind
	field *field
	// pair is the slot of B where the two are written `word A to B`.
	pair *slot
	word string
	// paired tells that this is the B.
	paired bool
}

// slotsOf finds the slots of a type.
func slotsOf(of reflect.Type, s *shape) []slot {
	var list []slot
	for _, f := range s.fields {
		kind := slotValue
		switch of.Field(f.index).Type {
		case reflect.TypeFor[*Expr]():
		case reflect.TypeFor[*Anchor]():
			kind = slotAnchor
		case reflect.TypeFor[[]*Anchor]():
			kind = slotAnchors
		case reflect.TypeFor[*Place]():
			kind = slotPlace
		case reflect.TypeFor[*Target]():
			kind = slotTarget
		case reflect.TypeFor[*Size]():
			kind = slotSize
		case reflect.TypeFor[*Position]():
			kind = slotPosition
		case reflect.TypeFor[*FormatName]():
			kind = slotFormat
		case reflect.TypeFor[*Floor]():
			kind = slotFloor
		case reflect.TypeFor[*Aim]():
			kind = slotAim
		default:
			continue
		}
		list = append(list, slot{kind: kind, field: f})
	}
	findPairs(list, s.form.leaves())
	return list
}

// findPairs finds the values of one quantity that are written `word A to B`.
func findPairs(list []slot, leaves []*form) {
	slotFor := func(f *field) *slot {
		for i := range list {
			if list[i].field == f && list[i].kind == slotValue && f.is != "stop" {
				return &list[i]
			}
		}
		return nil
	}
	for i := 1; i+2 < len(leaves); i++ {
		if leaves[i-1].kind != formLiteral || leaves[i+1].text != "to" {
			continue
		}
		from, to := slotFor(leaves[i].field), slotFor(leaves[i+2].field)
		if from != nil && to != nil && from != to && from.field.is == to.field.is {
			from.pair, from.word, to.paired = to, leaves[i-1].text, true
		}
	}
}

// A finisher finishes one statement.
type finisher struct {
	checker
	tokens []lexer.Token // the statement's
}

// finish completes a statement that could be read, and reports what is wrong in
// its values. A number that lacks its unit gets one of the dimension wanted, so
// that nothing is said of it a second time.
func finish(tree Statement, s *spec, tokens []lexer.Token) []*fault {
	f := finisher{tokens: tokens}
	switch tree := tree.(type) {
	case *Let:
		f.notF(tree.Name)
		if len(tree.And) > 0 {
			asNames(tree.Value)
		}
		for _, x := range tree.And {
			asNames(x)
		}
	case *Move:
		f.notF(tree.Params...)
	case *Sensor:
		if tree.Width != nil && tree.Width.Kind == ExprNumber && tree.Width.Unit == UnitNone {
			tree.Width.Unit = tree.Height.Unit // 24.89 x 18.66 mm
		}
	case *Remark:
		f.short(tree.Text)
	}
	v := reflect.ValueOf(tree).Elem()
	slots := s.shape().slots
	for i := range slots {
		f.slot(&slots[i], v)
	}
	if moves, ok := tree.(*Moves); ok && s.under == inScene && moves.To != nil {
		if moves.Floor = f.onFloor(moves.To); moves.Floor != nil {
			moves.To = nil
		}
	}
	return f.faults
}

// mostInNote is how many letters a note has at most: more would not fit beside a shot.
const mostInNote = 300

// short reports the text of a note that is too long to be printed beside a shot.
func (f *finisher) short(text *Text) {
	if n := utf8.RuneCountInString(text.Value); n > mostInNote {
		f.faults = append(f.faults, faultOn(&text.Node, "too-large", "this note has %d letters", n).
			because("A note has %d at most. Make two notes of it.", mostInNote))
	}
}

func (f *finisher) slot(s *slot, of reflect.Value) {
	switch value := of.Field(s.field.index).Interface().(type) {
	case *Expr:
		switch {
		case value == nil || s.paired:
		case s.pair != nil:
			to, _ := of.Field(s.pair.field.index).Interface().(*Expr)
			f.span(s.field.quantity, s.word, value, to)
		case s.field.is == "stop":
			f.stop(s.field.quantity, value)
		default:
			f.need(s.field.quantity, value)
		}
	case *Anchor:
		if value != nil {
			f.anchor(value)
			f.atTime(value, s.field)
		}
	case *Place:
		if value == nil {
			return
		}
		f.end(&value.Node)
		asNames(value.At)
		f.need(s.field.quantity, value.At)
		f.need(s.field.quantity, value.Side)
	case *Target:
		f.end(&value.Node)
		for _, x := range value.Of {
			asNames(x)
			f.need(s.field.quantity, x)
		}
	case *Size:
		f.end(&value.Node)
		f.need(s.field.quantity, value.Length)
	case *Position:
		if value != nil {
			f.end(&value.Node)
			f.position(value)
		}
	case *FormatName:
		if value != nil {
			f.end(&value.Node)
		}
	case *Floor:
		if value != nil {
			f.floor(s.field.quantity, value)
		}
	case *Aim:
		if value != nil {
			f.aim(s.field.quantity, value)
		}
	}
}

// end sets the end of a piece to that of its last token. participle takes the
// start of the token behind it.
func (f *finisher) end(n *Node) {
	behind := sort.Search(len(f.tokens), func(i int) bool { return f.tokens[i].Pos.Offset >= n.EndPos.Offset })
	n.EndPos = endOf(&f.tokens[behind-1])
}

// asNames turns each T2 of an expression that stands where names stand into one.
func asNames(x *Expr) {
	switch {
	case x == nil:
	case x.Kind == ExprStop && x.Ref != "":
		*x = Expr{Node: x.Node, Kind: ExprName, Ref: x.Ref}
	default:
		asNames(x.X)
		asNames(x.Y)
	}
}

// atTime reports words behind `at`.
func (f *finisher) atTime(a *Anchor, in *field) {
	if a.Words == nil && a.Kind != AnchorEnd {
		return
	}
	i := sort.Search(len(f.tokens), func(i int) bool { return f.tokens[i].Pos.Offset >= a.Pos.Offset })
	if before := &f.tokens[i-1]; before.Value == "at" && f.tokens[0].Value != "places" {
		f.faults = append(f.faults, faultAt(before, "expected-word", "use `at` before a time, and `on` before words").writes("on"))
	}
}

// rules returns the first mistake of a statement that its tags let through: a
// clause twice, one that is missing, two that say the same, a stop T0. end is
// the number of the token behind it.
func (p *parser) rules(tree Statement, s *spec, start lexer.Checkpoint, end int) *mistake {
	at := int(start.RawCursor())
	shape := s.shape()
	if shape.group != nil && shape.mayRepeat(p.tokens[at:end]) {
		w := p.walker(start)
		w.walk(shape.form)
		if m := w.duplicate(s); m != nil {
			return m
		}
	}
	t, timed := timesOf(tree)
	v := reflect.ValueOf(tree).Elem()
	for i := range shape.slots {
		f := shape.slots[i].field
		x, isValue := v.Field(f.index).Interface().(*Expr)
		switch {
		case !isValue || x == nil && timed:
		case f.needed && !timed && shape.otherwise(f) != nil:
			other, _ := v.Field(shape.otherwise(f).index).Interface().(*Expr)
			if m := p.oneOf(s, f, x, other, at, end); m != nil {
				return m
			}
		case x == nil && f.needed:
			return p.missing(s, f, end)
		case x != nil:
			if bad := noStop(x); bad != nil {
				return p.onNode(s, &bad.Node, at, end, "bad-number", "there is no stop %s", bad.Ref)
			}
		}
	}
	if timed {
		return p.timeRules(t, s, start, end)
	}
	if ring, ok := tree.(*Ring); ok {
		return p.ringRules(ring, s, at, end)
	}
	switch tree := tree.(type) {
	case *CameraAt:
		if tree.At != nil && tree.Aims == nil {
			return p.missing(s, shape.fieldNamed("Aims"), end)
		}
	case *CutTo:
		if tree.On == nil {
			return p.missing(s, shape.fieldNamed("On"), end)
		}
	}
	if speech, ok := tree.(*Speech); ok && speech.From != nil && (speech.On != nil || speech.Lasting != nil) {
		return p.saidTwice(at, end)
	}
	return nil
}

// missing tells that the clause of a field has to be there.
func (p *parser) missing(s *spec, f *field, end int) *mistake {
	head := s.shape().headOf(f)
	return &mistake{fault: faultAt(&p.tokens[end], "missing-clause", "`%s` is missing here", head), token: end, clause: -1, word: head}
}

// oneOf tells of a clause that has to be there, or another in its place, where
// none is or both are.
func (p *parser) oneOf(s *spec, f *field, x, other *Expr, at, end int) *mistake {
	switch {
	case x == nil && other == nil:
		return p.missing(s, f, end)
	case x == nil || other == nil:
		return nil
	}
	later := x
	if later.Pos.Offset < other.Pos.Offset {
		later = other
	}
	m := p.onNode(s, &later.Node, at, end, "", "")
	m.token = m.clause
	m.fault = faultAt(&p.tokens[m.token], "conflicting-clauses", "`%s` and a speed both say how long this takes", s.shape().headOf(f)).
		offers(withoutClause(&p.tokens[m.token]))
	return m
}

// onNode makes a mistake of a piece of the tree.
func (p *parser) onNode(s *spec, n *Node, at, end int, code, format string, args ...any) *mistake {
	m := &mistake{fault: faultOn(n, code, format, args...), clause: -1}
	for i := at; i < end && p.tokens[i].Pos.Offset <= n.Pos.Offset; i++ {
		m.token = i
		for _, head := range s.shape().heads {
			if p.tokens[i].Value == head {
				m.clause, m.word = i, head
			}
		}
	}
	return m
}

// noStop returns the T0 of an expression, nil where there is none.
func noStop(x *Expr) *Expr {
	switch {
	case x == nil:
		return nil
	case x.Kind == ExprStop && x.Value == 0:
		return x
	}
	if bad := noStop(x.X); bad != nil {
		return bad
	}
	return noStop(x.Y)
}

// saidTwice tells of `from ... to` beside a clause that says the same, at the
// later of them.
func (p *parser) saidTwice(at, end int) *mistake {
	var first, from int
	for i := at; i < end; i++ {
		switch p.tokens[i].Value {
		case "from":
			from = i
		case "on", "at", "lasting":
			if first == 0 {
				first = i
			}
		}
	}
	later := max(first, from)
	f := faultAt(&p.tokens[later], "conflicting-clauses", "`from ... to` already says when this line is spoken").
		offers(withoutClause(&p.tokens[later]))
	return &mistake{fault: f, token: later, clause: later, word: p.tokens[later].Value}
}

// mayRepeat reports whether two tokens of a statement begin the same clause.
// It takes a word within a clause for the beginning of one too, so where it
// says so a walk has to look.
func (s *shape) mayRepeat(tokens []lexer.Token) bool {
	var seen uint64
	for i := range tokens {
		if tokens[i].Type != tokWord {
			continue
		}
		for n, head := range s.heads {
			if head != tokens[i].Value {
				continue
			}
			bit := uint64(1) << s.clauseOf[n]
			if seen&bit != 0 {
				return true
			}
			seen |= bit
			break
		}
	}
	return false
}
