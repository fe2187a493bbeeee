// The walk: a second reading of a statement that participle has refused, over
// the same tokens and by the same tags. participle says whether a line can be
// read; of why it can not it gives the token alone, since what it had expected
// there is its own and leaves it as English only. A walk keeps the farthest
// token that it came to, and everything that could have stood there.
//
// It takes exactly what participle takes. That is more than going by the forms:
// participle gives up an alternative for good once it has come farther than
// one token into it, so a walk does too. Tests hold the two together.

package lang

import (
	"reflect"
	"slices"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// An outcome is what became of a form at a place.
type outcome uint8

const (
	nothing outcome = iota // it does not begin here
	fits
	fails // it begins here and does not go on
)

// A miss is a token and what was wanted in its place.
type miss struct {
	at     int // the number of the token; -1 for none
	wants  []*form
	clause int // the number of the token that began the clause; -1 before them
}

var noMiss = miss{at: -1, clause: -1}

// A walker goes over the tokens of one statement, which end in an EOF.
type walker struct {
	lex   lexer.PeekingLexer
	start lexer.Checkpoint
	miss  miss
	// fault is what a production reported, and within the outermost field that
	// has a quantity around it.
	fault       *fault
	within      *field
	faultClause int

	fields []*field // whose pieces are being read, from the outermost on
	clause int      // where the clause begins that is being read; -1 for none
	begun  []int    // where the clauses begin that were read
	silent int      // what is only looked at leaves no trace
	// ends is the outermost field with a quantity whose piece was read last, up to
	// the token endsAt.
	ends   *field
	endsAt int
	// keep has pieces that fit leave what could go on in them: the list of what
	// may come next needs it, messages do not.
	keep bool
	// onFloor has every place that may be one on a floor be one: what would tell may not
	// be written yet.
	onFloor bool
}

// newWalker returns a walker that begins where lex stands. It moves a copy.
func newWalker(lex *lexer.PeekingLexer) *walker {
	return &walker{lex: *lex, start: lex.MakeCheckpoint(), miss: noMiss, clause: -1}
}

// seek has the walker begin anew at a token.
func (w *walker) seek(at int) {
	w.miss, w.fault, w.clause, w.fields = noMiss, nil, -1, w.fields[:0]
	if w.here() > at {
		w.lex.LoadCheckpoint(w.start)
	}
	if w.here() < at {
		w.lex.FastForward(lexer.RawCursor(at - 1))
	}
}

// here is the number of the next token.
func (w *walker) here() int { return int(w.lex.RawCursor()) }

// token returns a token by its number.
func (w *walker) token(at int) *lexer.Token {
	return &w.lex.Range(lexer.RawCursor(at), lexer.RawCursor(at+1))[0]
}

// walk reads a form. Where it fails the walker stays where participle would.
func (w *walker) walk(f *form) outcome {
	switch f.kind {
	case formLiteral:
		return w.take(f, w.lex.Peek().Value == f.text)
	case formToken:
		return w.take(f, w.lex.Peek().Type == f.token)
	case formSequence:
		return w.sequence(f)
	case formChoice:
		return w.choice(f)
	case formRepeat:
		return w.repeat(f)
	case formAhead:
		return w.ahead(f)
	}
	return w.piece(f)
}

// take moves past the next token where it is the right one.
func (w *walker) take(f *form, right bool) outcome {
	if right {
		w.lex.Next()
		return fits
	}
	w.want(f)
	return nothing
}

// want notes what could stand here.
func (w *walker) want(f *form) {
	if w.silent == 0 {
		w.add(miss{at: w.here(), wants: []*form{f}, clause: w.clause})
	}
}

// add keeps the farther of two misses, and both where they are equal.
func (w *walker) add(m miss) {
	switch {
	case m.at > w.miss.at:
		w.miss = m
	case m.at == w.miss.at && m.at >= 0:
		w.miss.wants = append(w.miss.wants, m.wants...)
		w.miss.clause = max(w.miss.clause, m.clause)
	}
}

func (w *walker) sequence(f *form) outcome {
	for i, part := range f.parts {
		switch o := w.walk(part); {
		case o == nothing && i == 0:
			return nothing
		case o != fits:
			return fails
		}
	}
	return fits
}

// lookahead is how many tokens of an alternative participle reads before it
// holds to it: its own default.
const lookahead = 1

// stays reports whether what failed had gone too far to try anything else. It
// goes back to start where it had not.
func (w *walker) stays(start lexer.Checkpoint) bool {
	if w.here() > int(start.RawCursor())+lookahead {
		return true
	}
	w.lex.LoadCheckpoint(start)
	return false
}

func (w *walker) choice(f *form) outcome {
	start, failed := w.lex.MakeCheckpoint(), false
	for _, part := range f.parts {
		switch w.walk(part) {
		case fits:
			return fits
		case fails:
			if w.stays(start) {
				return fails
			}
			failed = true
		}
	}
	if failed {
		return fails
	}
	return nothing
}

func (w *walker) repeat(f *form) outcome {
	if f.isComma() { // no message asks for one
		w.silent++
		defer func() { w.silent-- }()
	}
	for times := 0; ; times++ {
		start := w.lex.MakeCheckpoint()
		o := w.repeated(f)
		switch {
		case o == fails && w.stays(start):
			return fails
		case o != fits && times == 0 && f.mode == '+':
			return nothing
		case o != fits || f.mode == '?':
			return fits
		case w.here() == int(start.RawCursor()):
			return fails // it could go on for ever
		}
	}
}

// repeated reads what is repeated once. Of a clause it notes where it begins.
func (w *walker) repeated(f *form) outcome {
	if !f.clauses {
		return w.walk(f.parts[0])
	}
	if w.lex.Peek().EOF() {
		for _, head := range f.parts[0].heads() {
			w.want(head)
		}
	}
	before := w.clause
	defer func() { w.clause = before }()
	w.clause = w.here()
	if w.lex.Peek().Value == "," {
		w.clause++
	}
	o := w.walk(f.parts[0])
	if o == fits && w.silent == 0 {
		w.begun = append(w.begun, w.clause)
	}
	return o
}

// heads returns the words of a form that begin clauses.
func (f *form) heads() []*form {
	return slices.DeleteFunc(f.leaves(), func(leaf *form) bool { return !leaf.head })
}

func (w *walker) ahead(f *form) outcome {
	start := w.lex.MakeCheckpoint()
	w.silent++
	found := w.walk(f.parts[0]) == fits
	w.silent--
	w.lex.LoadCheckpoint(start)
	if found == (f.mode == '!') {
		return fails
	}
	return fits
}

// piece reads a piece of the tree. Where it does not get past its first token,
// the piece itself is what was wanted there.
func (w *walker) piece(f *form) outcome {
	start, before := w.here(), w.miss
	w.miss = noMiss
	w.fields = append(w.fields, f.field)
	o := w.inside(f)
	if (o == fits || w.here() > start && w.lex.Peek().EOF()) && w.silent == 0 && (!w.keep || w.here() >= w.endsAt) {
		w.ends, w.endsAt = w.outermost(), w.here()
	}
	w.fields = w.fields[:len(w.fields)-1]
	inner := w.miss
	switch {
	case o == fits && !w.keep && inner.at <= w.here():
		inner = noMiss
	case o != fits && inner.at <= start:
		if !w.keep || inner.at < start {
			inner = miss{at: start, clause: w.clause}
		}
		inner.wants = append(inner.wants, f)
	}
	w.miss = before
	if w.silent == 0 {
		w.add(inner)
	}
	return o
}

// inside reads a piece by its own form, or by its production.
func (w *walker) inside(f *form) outcome {
	if !isProduction(f.piece) {
		return w.walk(shapeOf(f.piece).form)
	}
	if w.onFloor && f.piece == reflect.TypeFor[FloorOnly]() {
		return fits
	}
	start := w.lex.MakeCheckpoint()
	err := reflect.New(f.piece).Interface().(participle.Parseable).Parse(&w.lex)
	if f.piece == anchorType && (err == participle.NextMatch || err == nil && w.keep) {
		end := w.lex.MakeCheckpoint()
		w.lex.LoadCheckpoint(start)
		w.walk(momentShape().form) // for what it wants
		w.lex.LoadCheckpoint(end)
	}
	switch err := err.(type) {
	case nil:
		return fits
	case *fault:
		w.report(err)
		return fails
	}
	return nothing
}

// report keeps the fault of a production that is farthest on.
func (w *walker) report(f *fault) {
	if w.silent == 0 && (w.fault == nil || f.Pos.Offset >= w.fault.Pos.Offset) {
		w.fault, w.within, w.faultClause = f, w.outermost(), w.clause
	}
}

// outermost returns the outermost field with a quantity that is being read, nil
// where none has one.
func (w *walker) outermost() *field {
	for _, f := range w.fields {
		if f.is != "" {
			return f
		}
	}
	return nil
}
