// The tree: what a plan file says, statement by statement, before anything is
// resolved or computed. Every node knows where it stands in its file.

package lang

import "github.com/alecthomas/participle/v2/lexer"

// A Node is the place of a piece of the tree: Pos is its first character,
// EndPos the one after its last. Columns count characters from 1.
type Node struct {
	Pos    lexer.Position
	EndPos lexer.Position
}

// Range returns the place of the node in its file.
func (n *Node) Range() Range {
	return Range{File: n.Pos.Filename, Start: at(n.Pos), End: at(n.EndPos)}
}

func (n *Node) node() *Node { return n }

func at(p lexer.Position) Pos { return Pos{Offset: p.Offset, Line: p.Line, Column: p.Column} }

// A File is one plan or kit, as read.
type File struct {
	Path   string
	Source []byte
	// Body holds the file's own statements in the order written, Bad ones
	// included.
	Body []Statement
	// Sections holds what stands under each header, in the order written.
	Sections []*Section
}

// A Section is a header (*Camera, *Lens, *Puller, *Move or *Shot) and the
// statements under it. A header that could not be read is a *Bad; it opens a
// section all the same.
type Section struct {
	Head Statement
	Body []Statement
}

// A Statement is one line of a plan.
type Statement interface {
	Range() Range
	node() *Node
	statement()
}

// A Name is a subject, voice, cue, let, move, camera, lens or puller as
// written, in Unicode normal form C, quotes taken off.
type Name struct {
	Node
	Text   string
	Quoted bool
}

// A Text is a quoted text with its escapes undone.
type Text struct {
	Node
	Value string
}

// ExprKind tells what an Expr is.
type ExprKind uint8

// The kinds of Expr.
const (
	ExprNumber   ExprKind = iota // Value, Unit
	ExprStop                     // f/2.8 or T2.1: Value, Unit UnitF or UnitT; Ref where T2 could be a name
	ExprTimecode                 // 01:00:10:12, raw in Ref
	ExprInf                      // inf
	ExprName                     // Ref; Quoted when it stood in quotes
	ExprMinus                    // - X
	ExprBinary                   // X Op Y
)

// An Expr is a value: a number with its unit, a name, or arithmetic on them.
type Expr struct {
	Node
	Kind   ExprKind
	Value  float64
	Unit   Unit
	Ref    string
	Quoted bool
	Op     byte // + - * /
	X, Y   *Expr
	// Guessed tells that the number lacks its unit, which has been told: Unit is
	// one of the dimension wanted, and what the number comes to is not known.
	Guessed bool
}

// A Unit is what stands behind a number. UnitNone is a bare number.
type Unit uint8

// The units of the language. Feet with inches are one number in UnitFoot.
const (
	UnitNone Unit = iota
	UnitMM
	UnitCM
	UnitM
	UnitFoot
	UnitInch
	UnitDeg
	UnitTurn
	UnitArcmin
	UnitS
	UnitMS
	UnitFrame
	UnitPercent
	UnitWPM
	UnitBitS
	UnitDegS
	UnitMetreS
	UnitFootS
	UnitPX
	UnitF // an f-number
	UnitT // a T-number
)

// AnchorKind tells what an Anchor hangs on.
type AnchorKind uint8

// The kinds of Anchor.
const (
	AnchorWords AnchorKind = iota // "WORDS" [n], or SPEAKER "WORDS" [n] when Name is set
	AnchorName                    // a speaker's line, a cue, a let or a parameter: Name
	AnchorEnd                     // end of Name, of "WORDS" [n], of Name "WORDS" [n], or of a statement by its keyword Of
	AnchorTime                    // Time, a time or a timecode
)

// An Anchor is a moment of a shot: words, a speaker, a cue or a time, moved by
// an optional Offset (a signed time).
type Anchor struct {
	Node
	Kind   AnchorKind
	Name   *Name
	Words  *Text
	Nth    int    // 0 where no number is written
	Of     string // as in end of dolly; else empty
	Time   *Expr
	Offset *Expr
}

// A Place is where something stands: a distance, with an optional way to the
// side (a length, or the angle of a slant tape), or relative to a subject, as
// in NORA - 35 cm; which of the two At means is known once names are resolved.
// Side is nil on the axis; where it is set, Dir is "left" or "right". A side is
// tried only where a value begins and, if it begins with a name, goes on as
// one: so a mistyped clause is told of as a clause.
type Place struct {
	Node
	At   *Expr  `parser:"@@ ( ','? (?= Number | Feet | Timecode | Stop | '(' | '+' | '-' | '−' | Word ( 'left' | 'right' | '*' | '/' | '+' | '-' | '−' ) )" is:"place" say:"DISTANCE | NAME | NAME + LENGTH"`
	Side *Expr  `parser:"@@" is:"side"`
	Dir  string `parser:"@( 'left' | 'right' ) )?"`
}

// A Target is what a move of the focus goes to: one distance, subject or inf,
// or several to be held together.
type Target struct {
	Node
	Of []*Expr `parser:"@@ ( 'and' @@ )*" is:"target" say:"NAME | NAME + LENGTH | DISTANCE | inf"`
}

// A Size is the width of a screen: a length, or the diagonal of a 16:9 one.
type Size struct {
	Node
	Length   *Expr `parser:"@@" is:"length"`
	Diagonal bool  `parser:"@'diagonal'?"`
}

// Profile is the shape of a move in time; ProfileUnset where none is written.
type Profile uint8

// The profiles.
const (
	ProfileUnset Profile = iota
	ProfileSmooth
	ProfileEven
)

// Capture takes the word of a profile.
func (p *Profile) Capture(words []string) error {
	*p = ProfileSmooth
	if words[0] == "even" {
		*p = ProfileEven
	}
	return nil
}

// Bad is a line that could not be read; a diagnostic tells why.
type Bad struct {
	Node
	// Keyword is the word of the statement that it begins, such as "subject", or
	// that its first word was meant for; "" where there is none.
	Keyword string
	// Name is the name that it declares, where it got that far: the name is known,
	// and means nothing.
	Name *Name
	// Partial is the statement without the clauses that could not be read, or with
	// the word that its first was meant for; nil where nothing is left. What it says
	// holds.
	Partial Statement
	// Lost are the words of those clauses, as `stop` of a set-up: nothing is known
	// of them. A word that is near to no clause stands as it is written; "" tells that
	// a text without an end may have swallowed any.
	Lost []string
}

func (*Plan) statement()        {}
func (*Rate) statement()        {}
func (*Units) statement()       {}
func (*Pace) statement()        {}
func (*Use) statement()         {}
func (*Edit) statement()        {}
func (*Script) statement()      {}
func (*Let) statement()         {}
func (*Watched) statement()     {}
func (*Sharp) statement()       {}
func (*Land) statement()        {}
func (*Quickest) statement()    {}
func (*Tape) statement()        {}
func (*With) statement()        {}
func (*Subject) statement()     {}
func (*Voice) statement()       {}
func (*Camera) statement()      {}
func (*Lens) statement()        {}
func (*Puller) statement()      {}
func (*Move) statement()        {}
func (*Shot) statement()        {}
func (*Sensor) statement()      {}
func (*Records) statement()     {}
func (*Support) statement()     {}
func (*ISO) statement()         {}
func (*Shutter) statement()     {}
func (*Monitor) statement()     {}
func (*Focal) statement()       {}
func (*Stops) statement()       {}
func (*Closest) statement()     {}
func (*Ring) statement()        {}
func (*Turns) statement()       {}
func (*Mark) statement()        {}
func (*Breathing) statement()   {}
func (*ThroughZoom) statement() {}
func (*Pupil) statement()       {}
func (*Takes) statement()       {}
func (*Hand) statement()        {}
func (*Limit) statement()       {}
func (*Grip) statement()        {}
func (*Spread) statement()      {}
func (*Bias) statement()        {}
func (*Start) statement()       {}
func (*Begins) statement()      {}
func (*Lasts) statement()       {}
func (*Speech) statement()      {}
func (*Pause) statement()       {}
func (*Action) statement()      {}
func (*Cue) statement()         {}
func (*Rack) statement()        {}
func (*Hold) statement()        {}
func (*Follow) statement()      {}
func (*Moves) statement()       {}
func (*Dolly) statement()       {}
func (*Zoom) statement()        {}
func (*Call) statement()        {}
func (*Bad) statement()         {}
