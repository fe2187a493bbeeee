// Places on the floor of a scene: what tells them from places along the lens, and what is
// left to do once they are read.

package lang

import (
	"slices"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// floorWays are the words of the ways of a place on the floor.
var floorWays = []string{"left", "right", "upstage", "downstage", "towards", "up", "down", "high"}

func isFloorWay(word string) bool { return slices.Contains(floorWays, word) }

// A FloorOnly is no piece of the tree. It is looked for ahead of a place: it is there where
// the place is one that only a floor has, and takes no token. Such a place begins with a
// length and its way, as `1.6 m right`, has a way other than left and right, or more
// than one. Any other is read as a distance or as a name, which both kinds of places may be.
type FloorOnly struct{}

var _ participle.Parseable = (*FloorOnly)(nil)

// Parse reads nothing, and fails where no place comes that only a floor has.
func (*FloorOnly) Parse(lex *lexer.PeekingLexer) error {
	start := lex.MakeCheckpoint()
	defer lex.LoadCheckpoint(start)
	seen := []lexer.Token{{Type: tokPunct}} // so that no word is taken for that of a statement
	ways := 0
	for {
		t := lex.Next()
		if t.EOF() || t.Type == tokWord && isKeyword(t.Value) && !isFloorWay(t.Value) && !isUnitWord(t.Value) && t.Value != "inf" {
			return participle.NextMatch
		}
		if t.Type == tokWord && isFloorWay(t.Value) && endsOperand(seen) {
			ways++
			if ways > 1 || t.Value != "left" && t.Value != "right" || isOneLength(append(seen[1:], *t)) {
				return nil
			}
		}
		seen = append(seen, *t)
	}
}

func isUnitWord(word string) bool {
	_, ok := unitOf(word)
	return ok
}

// isOneLength reports whether tokens are a length and left or right, and nothing else: no
// distance with its side.
func isOneLength(tokens []lexer.Token) bool {
	lex, _ := lexer.Upgrade(&tokenList{slices.Clone(tokens)}) // it returns no errors
	x := &Expr{}
	return x.Parse(lex) == nil && int(lex.RawCursor()) == len(tokens)-1
}

// floor completes a place on the floor.
func (f *finisher) floor(q quantity, place *Floor) {
	f.end(&place.Node)
	for _, way := range place.Ways {
		f.end(&way.Node)
		asNames(way.By)
		f.need(q, way.By)
		f.addInches(way)
		if way.Towards != nil {
			way.Dir = "towards"
		}
	}
	f.oneWayEach(place)
}

// addInches adds to feet the inches behind them, which are read alone before left and
// right.
func (f *finisher) addInches(way *Way) {
	inches := way.Inches
	if inches == nil {
		return
	}
	way.Inches = nil
	switch by := way.By; {
	case by.Kind != ExprNumber || by.Unit != UnitFoot || inches.Kind != ExprNumber || inches.Unit != UnitInch:
		f.faults = append(f.faults, faultOn(&inches.Node, "expected-word", "expected a way, such as left or upstage, before another length"))
	case inches.Value >= 12:
		f.faults = append(f.faults, faultOn(&inches.Node, "bad-number", "a foot has 12 inches, not %g", inches.Value))
	default:
		by.Value += inches.Value / 12
		by.EndPos = inches.EndPos
	}
}

// oneWayEach reports a way that a place has twice, and two that both say its height.
func (f *finisher) oneWayEach(place *Floor) {
	axes := map[string]string{}
	for _, way := range place.Ways {
		axis := axisOf(way.Dir)
		before := axes[axis]
		axes[axis] = way.Dir
		switch {
		case before == "" || way.Dir == "towards":
		case before == way.Dir:
			f.faults = append(f.faults, faultOn(&way.Node, "duplicate-clause", "`%s` is here a second time", way.Dir).offers(withoutWay(way)))
		case axis != "height":
			f.faults = append(f.faults, faultOn(&way.Node, "conflicting-clauses", "`%s` and `%s` say where on the same line", before, way.Dir).
				because("Keep one.").offers(withoutWay(way)))
		default:
			f.faults = append(f.faults, faultOn(&way.Node, "conflicting-clauses", "`%s` and `%s` both say the height", before, way.Dir).
				because("Keep one.").offers(withoutWay(way)))
		}
	}
}

func withoutWay(way *Way) offer { return offer{kind: offerNoTail, at: way.Node} }

// axisOf returns along what a way leads.
func axisOf(dir string) string {
	switch dir {
	case "left", "right":
		return "across"
	case "upstage", "downstage":
		return "along"
	case "up", "down", "high":
		return "height"
	}
	return dir
}

// aim completes where a lens looks.
func (f *finisher) aim(q quantity, aim *Aim) {
	f.end(&aim.Node)
	for _, past := range aim.Past {
		f.end(&past.Node)
		asNames(past.By)
		f.need(q, past.By)
		by, dir := &aim.Turn, &aim.Dir
		if past.Dir == "up" || past.Dir == "down" {
			by, dir = &aim.Lift, &aim.LiftDir
		}
		if *by != nil {
			f.faults = append(f.faults, faultOn(&past.Node, "duplicate-clause", "an angle to that side is here already").
				offers(offer{kind: offerNoTail, at: past.Node}))
			continue
		}
		*by, *dir = past.By, past.Dir
	}
	aim.Past = nil
}

// onFloor makes a place on the floor of one that was read as along the lens, for a
// statement of a scene; nil where it can be none, which is told.
func (f *finisher) onFloor(p *Place) *Floor {
	place := &Floor{Node: p.Node}
	feet := p.Side != nil && p.At.Kind == ExprNumber && p.At.Unit == UnitFoot && p.Side.Kind == ExprNumber && p.Side.Unit == UnitInch &&
		!f.commaBefore(p.Side)
	switch {
	case feet:
		way := &Way{Node: p.Node, By: p.At, Inches: p.Side, Dir: p.Dir}
		f.addInches(way)
		place.Ways = []*Way{way}
	case p.At.Kind != ExprName:
		f.faults = append(f.faults, noWay(faultOn(&p.Node, "wrong-unit", noWayText)))
		return nil
	default:
		place.Base = &Name{Node: p.At.Node, Text: p.At.Ref, Quoted: p.At.Quoted}
		if p.Side != nil {
			place.Ways = []*Way{{Node: Node{p.Side.Pos, p.EndPos}, By: p.Side, Dir: p.Dir}}
		}
	}
	return place
}

// noWayText tells of a length on a floor that leads nowhere.
const noWayText = "a place on the floor needs a way: left, right, upstage or downstage"

func noWay(f *fault) *fault {
	return f.because("In a scene nothing is read from a camera: `1.2 m right, 3 m upstage` is a place.")
}

// commaBefore reports whether a comma stands before a value.
func (f *finisher) commaBefore(x *Expr) bool {
	i := slices.IndexFunc(f.tokens, func(t lexer.Token) bool { return t.Pos.Offset == x.Pos.Offset })
	return i > 0 && f.tokens[i-1].Value == ","
}

// Parse reads the ID of a shot. participle calls it.
func (r *ShotRef) Parse(lex *lexer.PeekingLexer) error {
	t := lex.Peek()
	if t.Type != tokID {
		return participle.NextMatch
	}
	r.Node, r.ID = Node{t.Pos, endOf(t)}, t.Value
	lex.Next()
	return nil
}
