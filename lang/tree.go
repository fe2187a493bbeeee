// The tree: the statements of a plan file, before any name is resolved or any value is
// computed. Every node knows its place in the file.

package lang

import "github.com/alecthomas/participle/v2/lexer"

// A Node is the place of a piece of the tree. Pos is its first character, EndPos the
// character after its last. Columns count characters from 1.
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

// A File is one plan or kit, as Parse read it.
type File struct {
	Path   string
	Source []byte
	// Body holds the file's own statements in the order written, Bad ones
	// included.
	Body []Statement
	// Sections holds the headers with their statements, in the order written.
	Sections []*Section
}

// A Section is a header (*Camera, *Lens, *Puller, *Move, *Shot or *Scene) and the statements
// under it. A header that could not be read is a *Bad; it still opens a section.
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

// A Name is the name of a subject, voice, cue, let, move, camera, lens or puller as
// written, in Unicode normal form C and without quotes.
type Name struct {
	Node
	Text   string
	Quoted bool
}

// A Text is a quoted text, without its quotes and escapes.
type Text struct {
	Node
	Value string
}

// ExprKind says what kind of value an Expr is.
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
	// Guessed means that the number has no unit, and that a diagnostic says so. Unit
	// is then a unit of the right dimension, and the true value is not known.
	Guessed bool
}

// A Unit is the unit of a number. UnitNone means a bare number.
type Unit uint8

// The units of the language. Feet with inches are a single number in UnitFoot.
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

// AnchorKind says what an Anchor counts from.
type AnchorKind uint8

// The kinds of Anchor.
const (
	AnchorWords AnchorKind = iota // "WORDS" [n], or SPEAKER "WORDS" [n] when Name is set
	AnchorName                    // a speaker's line, a cue, a let or a parameter: Name
	AnchorEnd                     // end of Name, of "WORDS" [n], of Name "WORDS" [n], or of a statement by its keyword Of
	AnchorTime                    // Time, a time or a timecode
)

// An Anchor is a moment of a shot: words, a speaker, a cue or a time, plus an optional
// Offset (a signed time).
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

// A Place is the position of a subject. It is a distance with an optional side (a
// length, or the angle of a slant tape), or relative to a subject, as in NORA - 35 cm.
// At can mean either; resolving its names shows which. Side is nil on the axis;
// otherwise Dir is "left" or "right". The parser tries a side only where a value
// begins. If the value begins with a name, it must continue as a value. So the
// diagnostic for a mistyped clause speaks of a clause.
type Place struct {
	Node
	At   *Expr  `parser:"@@ ( ','? (?= Number | Feet | Timecode | Stop | '(' | '+' | '-' | '−' | Word ( 'left' | 'right' | '*' | '/' | '+' | '-' | '−' ) )" is:"place" say:"DISTANCE | NAME | NAME + LENGTH"`
	Side *Expr  `parser:"@@" is:"side"`
	Dir  string `parser:"@( 'left' | 'right' ) )?"`
}

// A Target is what a rack goes to: one distance, subject or inf, or several to hold
// together.
type Target struct {
	Node
	Of []*Expr `parser:"@@ ( 'and' @@ )*" is:"target" say:"NAME | NAME + LENGTH | DISTANCE | inf"`
}

// A Floor is a place on the floor of a scene: the way to it from Base, a mark or a subject,
// or from the zero point where that is nil.
type Floor struct {
	Node
	Base *Name  `parser:"( (?! ( Word | Text | Stop ) ( 'left' | 'right' | 'upstage' | 'downstage' | 'up' | 'down' | 'high' | 'towards' | '*' | '/' | '+' | '-' | '−' ) ) @@ |"`
	Ways []*Way `parser:"@@ ) ( ','? (?! 'eyes' | 'aims' ) (?= Number | Feet | '(' | '+' | '-' | '−' | ( Word | Text | Stop ) ( 'left' | 'right' | 'upstage' | 'downstage' | 'up' | 'down' | 'high' | 'towards' | '*' | '/' | '+' | '-' | '−' ) ) @@ )*"`
}

// A Way is one of the ways to a place on the floor. Dir is "left", "right", "upstage",
// "downstage", "up", "down", "high" or "towards", and only with the last is Towards not
// nil.
type Way struct {
	Node
	By *Expr `parser:"@@" is:"length"`
	// Inches are those of `4 ft 6 in left`. They are added to By, and nil behind Parse.
	Inches  *Expr  `parser:"( (?= Number | Feet ) @@ )?" is:"length"`
	Dir     string `parser:"( @( 'left' | 'right' | 'upstage' | 'downstage' | 'up' | 'down' | 'high' ) | @'towards'"`
	Towards *Name  `parser:"@@ )"`
}

// An Aim is where the lens looks: at the middle of what is in Of, or past it by angles. Turn
// is the angle to the Dir "left" or "right", and Lift that to the LiftDir "up" or "down";
// each is nil where it is not written.
type Aim struct {
	Node
	Of      []*Name `parser:"@@ ( 'and' @@ )*"`
	Past    []*Past `parser:"( ','? (?= Number | '(' | '+' | '-' | '−' | ( Word | Text | Stop ) ( 'left' | 'right' | 'up' | 'down' | '*' | '/' | '+' | '-' | '−' ) ) @@ )*"`
	Turn    *Expr
	Dir     string
	Lift    *Expr
	LiftDir string
}

// A Past is an angle by which the lens looks past what it aims at, as it was written. Aim
// has it in fields of its own.
type Past struct {
	Node
	By  *Expr  `parser:"@@" is:"angle"`
	Dir string `parser:"@( 'left' | 'right' | 'up' | 'down' )"`
}

// A ShotRef is the ID of a shot where another statement speaks of it.
type ShotRef struct {
	Node
	ID string
}

// A Size is the width of a screen: a length, or the diagonal of a 16:9 one.
type Size struct {
	Node
	Length   *Expr `parser:"@@" is:"length"`
	Diagonal bool  `parser:"@'diagonal'?"`
}

// A Position is where a mark lies: a clock position, where Clock is not 0; part of the
// throw as Value of Of; or an angle, a length along the rim or a percentage of the throw
// as Value alone.
type Position struct {
	Node
	Clock Hours `parser:"@Clock |"`
	Value *Expr `parser:"@@" is:"position"`
	Of    *Expr `parser:"( 'of' @@ )?" is:"number"`
}

// Hours are a clock position in hours: 4.5 is half past four. 0 is none.
type Hours float64

// Capture sets the hours from a clock position as written; participle calls it.
func (h *Hours) Capture(words []string) error {
	*h = clockHours(words[0])
	return nil
}

// A FormatName is a sensor by its name, such as super35 3-perf, or 2/3 in type 16:9 with
// the inches in Type and the sides in Shape. Perfs and Shape may be empty.
type FormatName struct {
	Node
	Type  string `parser:"( @Number 'in' | @Feet ) 'type'"`
	Shape string `parser:"@Number? |" is:"sides"`
	Name  *Name  `parser:"@@"`
	Perfs string `parser:"@Perf?" is:"perfs"`
}

// Profile is the shape of a move in time. ProfileUnset means that none is written.
type Profile uint8

// The profiles.
const (
	ProfileUnset Profile = iota
	ProfileSmooth
	ProfileEven
)

// Capture sets the profile from its word; participle calls it.
func (p *Profile) Capture(words []string) error {
	*p = ProfileSmooth
	if words[0] == "even" {
		*p = ProfileEven
	}
	return nil
}

// Bad is a line that could not be read; a diagnostic says why.
type Bad struct {
	Node
	// Keyword is the keyword of the statement, such as "subject": the first word, or
	// the keyword that a misspelt first word resembles. It is "" if there is none.
	Keyword string
	// Name is the name that the line declares, or nil if that could not be read. The
	// name counts as declared, but has no meaning.
	Name *Name
	// Partial is the statement without the clauses that could not be read, or with a
	// misspelt first word corrected. Its clauses are valid. It is nil if nothing is
	// left.
	Partial Statement
	// Lost holds the words of the clauses that could not be read, such as `stop` of a
	// set-up. Their values are unknown. A word that resembles no clause appears as
	// written. "" means that a text without an end may have swallowed any clause.
	Lost []string
}

func (*Plan) statement()        {}
func (*Rate) statement()        {}
func (*Units) statement()       {}
func (*Pace) statement()        {}
func (*Use) statement()         {}
func (*CutFile) statement()     {}
func (*Script) statement()      {}
func (*Clip) statement()        {}
func (*Clips) statement()       {}
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
func (*Shoots) statement()      {}
func (*Monitor) statement()     {}
func (*Focal) statement()       {}
func (*Stops) statement()       {}
func (*Closest) statement()     {}
func (*Ring) statement()        {}
func (*Turns) statement()       {}
func (*Mark) statement()        {}
func (*Marks) statement()       {}
func (*Ends) statement()        {}
func (*Play) statement()        {}
func (*Squeeze) statement()     {}
func (*Ratio) statement()       {}
func (*Darkens) statement()     {}
func (*Planes) statement()      {}
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
func (*Remark) statement()      {}
func (*Speech) statement()      {}
func (*Pause) statement()       {}
func (*Action) statement()      {}
func (*Cue) statement()         {}
func (*Rack) statement()        {}
func (*Hold) statement()        {}
func (*Follow) statement()      {}
func (*Moves) statement()       {}
func (*Dolly) statement()       {}
func (*Track) statement()       {}
func (*Boom) statement()        {}
func (*Turn) statement()        {}
func (*Zoom) statement()        {}
func (*Call) statement()        {}
func (*Crop) statement()        {}
func (*Scene) statement()       {}
func (*Origin) statement()      {}
func (*FloorMark) statement()   {}
func (*Actor) statement()       {}
func (*Line) statement()        {}
func (*CutTo) statement()       {}
func (*Covers) statement()      {}
func (*PlacesAs) statement()    {}
func (*RunsWith) statement()    {}
func (*Matches) statement()     {}
func (*CameraAt) statement()    {}
func (*CameraMoves) statement() {}
func (*Measured) statement()    {}
func (*Bad) statement()         {}
