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
	ExprStop                     // f/2.8 or T2.1: Value, Unit UnitF or UnitT
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
	AnchorEnd                     // end of Name
	AnchorTime                    // Time, a time or a timecode
)

// An Anchor is a moment of a shot: words, a speaker, a cue or a time, moved by
// an optional Offset (a signed time).
type Anchor struct {
	Node
	Kind   AnchorKind
	Name   *Name
	Words  *Text
	Nth    int // 0 where no number is written
	Time   *Expr
	Offset *Expr
}

// A Place is where something stands: a distance, with an optional way to the
// side (a length, or the angle of a slant tape), or relative to a subject, as
// in NORA - 35 cm; which of the two At means is known once names are resolved.
type Place struct {
	Node
	At   *Expr
	Side *Expr  // nil: on the axis
	Dir  string // "left" or "right" where Side is set
}

// A Target is what a move of the focus goes to: one distance, subject or inf,
// or several to be held together.
type Target struct {
	Node
	Of []*Expr
}

// A Size is the width of a screen: a length, or the diagonal of a 16:9 one.
type Size struct {
	Node
	Length   *Expr
	Diagonal bool
}

// Profile is the shape of a move in time; ProfileUnset where none is written.
type Profile uint8

// The profiles.
const (
	ProfileUnset Profile = iota
	ProfileSmooth
	ProfileEven
)

// Statements of a file.
type (
	// Plan is `plan "TITLE"`.
	Plan struct {
		Node
		Title *Text
	}
	// Rate is `rate N`; Value is the number as written, "29.97df" included.
	Rate struct {
		Node
		Value string
	}
	// Units is `units metric` or `units imperial`.
	Units struct {
		Node
		System string `parser:"'units' @( 'metric' | 'imperial' )"`
	}
	// Pace is `pace N wpm`.
	Pace struct {
		Node
		Value *Expr `parser:"'pace' @@"`
	}
	// Use is `use "FILE"`.
	Use struct {
		Node
		File *Text
	}
	// Edit is `edit "FILE" [from TIMECODE]`: the cut that times come from.
	Edit struct {
		Node
		File *Text
		From *Expr // the timecode at which the picture starts; may be nil
	}
	// Script is `script "FILE" [scene "N"]`: the page that the lines come from.
	Script struct {
		Node
		File  *Text
		Scene *Text // the number of the one scene that is meant; may be nil
	}
	// Let is `let NAME = EXPR`.
	Let struct {
		Node
		Name  *Name `parser:"'let' @@"`
		Value *Expr `parser:"'=' @@"`
	}
	// Watched is `watched on W screen from V`.
	Watched struct {
		Node
		Width *Size
		From  *Expr
	}
	// Sharp is `sharp to L`.
	Sharp struct {
		Node
		To *Expr `parser:"'sharp' 'to' @@"`
	}
	// Land is `land P %`.
	Land struct {
		Node
		Chance *Expr `parser:"'land' @@"`
	}
	// Quickest is `quickest T`.
	Quickest struct {
		Node
		Time *Expr `parser:"'quickest' @@"`
	}
	// Tape is `tape from sensor` or `tape from lens`.
	Tape struct {
		Node
		From string `parser:"'tape' 'from' @( 'sensor' | 'lens' )"`
	}
	// With is the set-up of a shot or of the film. Absent clauses are nil.
	With struct {
		Node
		Camera, Lens, Puller *Name
		Stop, Meter          *Expr
		Focal                *Expr
		ND, Gear, Wheel      *Expr
	}
	// Subject is `subject NAME at PLACE[, deep D][, sways D]`.
	Subject struct {
		Node
		Name  *Name
		Place *Place
		Deep  *Expr
		Sways *Expr
	}
	// Voice is `voice NAME`.
	Voice struct {
		Node
		Name *Name
	}
)

// Headers.
type (
	// Camera is `camera NAME`.
	Camera struct {
		Node
		Name *Name
	}
	// Lens is `lens "NAME"`.
	Lens struct {
		Node
		Name *Name
	}
	// Puller is `puller NAME`.
	Puller struct {
		Node
		Name *Name `parser:"'puller' @@"`
	}
	// Move is `move NAME(PARAMS)`.
	Move struct {
		Node
		Name   *Name   `parser:"'move' @@"`
		Params []*Name `parser:"'(' ( @@ ( ',' @@ )* )? ')'"`
	}
	// Shot is `shot ID ["TITLE"]`.
	Shot struct {
		Node
		ID    string
		Title *Text
	}
)

// Statements of a camera.
type (
	// Sensor is `sensor W x H mm`; both are lengths.
	Sensor struct {
		Node
		Width  *Expr
		Height *Expr
	}
	// Records is `records N px`.
	Records struct {
		Node
		Pixels *Expr
	}
	// Support is `on tripod`, dolly, shoulder or hand.
	Support struct {
		Node
		Kind string
	}
	// ISO is `iso N`.
	ISO struct {
		Node
		Value *Expr
	}
	// Shutter is `shutter A deg` or `shutter 1/50 s`.
	Shutter struct {
		Node
		Value *Expr
	}
	// Monitor is `monitor W from V, N px`.
	Monitor struct {
		Node
		Width  *Size `parser:"'monitor' @@"`
		From   *Expr `parser:"'from' @@"`
		Pixels *Expr `parser:"','? @@"`
	}
)

// Statements of a lens.
type (
	// Focal is `focal F` or `focal F1 to F2`; To is nil for a prime.
	Focal struct {
		Node
		From *Expr
		To   *Expr
	}
	// Stops is `stops S to S [at F]`.
	Stops struct {
		Node
		Widest   *Expr
		Smallest *Expr
		At       *Expr
	}
	// Closest is `closest D`.
	Closest struct {
		Node
		Distance *Expr
	}
	// Ring is `ring A deg, diameter D`, `ring by wire` or `ring none`; Kind is
	// "", "wire" or "none".
	Ring struct {
		Node
		Kind     string
		Angle    *Expr
		Diameter *Expr
	}
	// Turns is `turns left` or `turns right`.
	Turns struct {
		Node
		Dir string `parser:"'turns' @( 'left' | 'right' )"`
	}
	// Mark is `mark D at A deg`.
	Mark struct {
		Node
		Distance *Expr
		Angle    *Expr
	}
	// Breathing is `breathing P %`.
	Breathing struct {
		Node
		Percent *Expr
	}
	// ThroughZoom is `keeps focus through zoom` or `loses focus through zoom`.
	ThroughZoom struct {
		Node
		Keeps bool `parser:"( @'keeps' | 'loses' ) 'focus' 'through' 'zoom'"`
	}
	// Pupil is `pupil R`.
	Pupil struct {
		Node
		Ratio *Expr `parser:"'pupil' @@"`
	}
)

// Statements of a puller.
type (
	// Takes is `takes "FILE"`.
	Takes struct {
		Node
		File *Text `parser:"'takes' @@"`
	}
	// Hand is `hand N bit/s`.
	Hand struct {
		Node
		Throughput *Expr `parser:"'hand' @@"`
	}
	// Limit is `limit N deg/s`.
	Limit struct {
		Node
		Speed *Expr `parser:"'limit' @@"`
	}
	// Grip is `grip A deg`.
	Grip struct {
		Node
		Angle *Expr `parser:"'grip' @@"`
	}
	// Spread is `spread D`.
	Spread struct {
		Node
		Rim *Expr `parser:"'spread' @@"`
	}
	// Bias is `bias A deg`.
	Bias struct {
		Node
		Angle *Expr `parser:"'bias' @@"`
	}
)

// Statements of a shot or a move.
type (
	// Start is `start on TARGET`.
	Start struct {
		Node
		Target *Target
	}
	// Begins is `begins at TIMECODE`.
	Begins struct {
		Node
		At *Expr `parser:"'begins' 'at' @@"`
	}
	// Lasts is `lasts T`.
	Lasts struct {
		Node
		Time *Expr `parser:"'lasts' @@"`
	}
	// Speech is `NAME: "WORDS"` with its clauses.
	Speech struct {
		Node
		Who      *Name
		Words    *Text
		On       *Anchor
		Lasting  *Expr
		From, To *Expr
	}
	// Pause is `pause T`.
	Pause struct {
		Node
		Time *Expr
	}
	// Action is `action "WHAT", lasting T[, on A]`.
	Action struct {
		Node
		What    *Text
		Lasting *Expr
		On      *Anchor
	}
	// Cue is `cue NAME [on A]`.
	Cue struct {
		Node
		Name *Name
		On   *Anchor
	}
	// Rack is `rack to TARGET` with its clauses.
	Rack struct {
		Node
		Target  *Target
		On      *Anchor
		Landing *Anchor
		Over    *Expr
		Profile Profile
		Because *Text
	}
	// Hold is `hold T`.
	Hold struct {
		Node
		Time *Expr
	}
	// Follow is `follow NAME [until A]`.
	Follow struct {
		Node
		Who   *Name
		Until *Anchor
	}
	// Moves is `NAME moves to PLACE over T [on A] [smooth/even]`.
	Moves struct {
		Node
		Who     *Name
		To      *Place
		Over    *Expr
		On      *Anchor
		Profile Profile
	}
	// Dolly is `dolly in/out D over T [on A]`; In is towards the subjects.
	Dolly struct {
		Node
		In      bool
		By      *Expr
		Over    *Expr
		On      *Anchor
		Profile Profile
	}
	// Zoom is `zoom to F over T [on A]`.
	Zoom struct {
		Node
		To      *Expr
		Over    *Expr
		On      *Anchor
		Profile Profile
	}
	// Call is `NAME(ARGS)`, the use of a move. Each argument is read as an
	// Anchor, the widest form: a value is its Time, a name its Name.
	Call struct {
		Node
		Name *Name
		Args []*Anchor
	}
)

// Bad is a line that could not be read; a diagnostic tells why. Keyword is the
// word of the statement that it begins, such as "subject", where it begins one;
// Name is the name that it declares, where it got that far: the name is known, and
// means nothing.
type Bad struct {
	Node
	Keyword string
	Name    *Name
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
