// The statements and how each is written. A tag `parser` is the grammar, from
// which participle builds the parser of the statement; `is` names what a value
// has to be, once for messages, units and usage lines (quantity.go), and with
// `,needed` says that the clause has to be there; `say` is what stands in the
// usage line. `,instead` is a clause that says what the one before it does, so
// that only one of them stands.
//
// A group that begins with (?! EOF ) holds clauses: any order, and each once,
// which is counted behind participle since no tag can say it. The look ahead
// saves a line without clauses the trial of every one of them.
//
// A tag goes on over the fields, and ends with | or ( rather than begin with
// one: participle reads the next field's tag anew at every look beyond the end
// of this one.

package lang

// Statements of a file.
type (
	// Plan is `plan "TITLE"`.
	Plan struct {
		Node
		Title *Text `parser:"'plan' @@" say:"TITLE"`
	}
	// Rate is `rate N`; Value is the number as written, "29.97df" included.
	Rate struct {
		Node
		Value string `parser:"'rate' @Number @'df'?" is:"rate" say:"24"`
	}
	// Units is `units metric` or `units imperial`.
	Units struct {
		Node
		System string `parser:"'units' @( 'metric' | 'imperial' )"`
	}
	// Pace is `pace N wpm`.
	Pace struct {
		Node
		Value *Expr `parser:"'pace' @@" is:"pace" say:"150 wpm"`
	}
	// Use is `use "FILE"`.
	Use struct {
		Node
		File *Text `parser:"'use' @@" say:"FILE"`
	}
	// CutFile is `edit "FILE" [from TIMECODE] [unscripted]`: the cut that times come from.
	// From is the timecode at which the picture starts; it may be nil. Unscripted tells
	// that nobody wrote what is said there.
	CutFile struct {
		Node
		File       *Text `parser:"'edit' @@ ( (?! EOF ) ','? (" say:"FILE"`
		From       *Expr `parser:"'from' @@ |" is:"timecode"`
		Unscripted bool  `parser:"@'unscripted' ) )*"`
	}
	// Script is `script "FILE" [scene "N"]`: the page that the lines come from.
	// Scene is the number of the one scene that is meant; it may be nil.
	Script struct {
		Node
		File  *Text `parser:"'script' @@ ( (?! EOF ) ','?" say:"FILE"`
		Scene *Text `parser:"'scene' @@ )*" say:"NUMBER"`
	}
	// Clips is `clips "FILE"`: a list of clips, which says the takes that there are.
	Clips struct {
		Node
		File *Text `parser:"'clips' @@" say:"FILE"`
	}
	// Let is `let NAME = EXPR`, or `let NAME = A and B`: a group, with its other
	// members in And.
	Let struct {
		Node
		Name  *Name   `parser:"'let' @@"`
		Value *Expr   `parser:"'=' @@" is:"value" say:"VALUE | NAME"`
		And   []*Expr `parser:"( 'and' @@ )*" say:"NAME"`
	}
	// Watched is `watched on W screen from V`.
	Watched struct {
		Node
		Width *Size `parser:"'watched' 'on' @@" is:"size"`
		From  *Expr `parser:"'screen' 'from' @@" is:"distance"`
	}
	// Sharp is `sharp to L`.
	Sharp struct {
		Node
		To *Expr `parser:"'sharp' 'to' @@" is:"sharpness" say:"0.025 mm | 1 arcmin"`
	}
	// Land is `land P %`.
	Land struct {
		Node
		Chance *Expr `parser:"'land' @@" is:"chance" say:"95 %"`
	}
	// Quickest is `quickest T`.
	Quickest struct {
		Node
		Time *Expr `parser:"'quickest' @@" is:"time"`
	}
	// Tape is `tape from sensor` or `tape from lens`.
	Tape struct {
		Node
		From string `parser:"'tape' 'from' @( 'sensor' | 'lens' )"`
	}
	// With is the set-up of a shot or of the film. Absent clauses are nil.
	With struct {
		Node
		Camera *Name `parser:"'with' ( (?! EOF ) ','? ( 'camera' @@ |"`
		Lens   *Name `parser:"'lens' @@ |" say:"\"NAME\""`
		Stop   *Expr `parser:"'stop' @@ |" is:"stop"`
		Focal  *Expr `parser:"'focal' @@ |" is:"focal"`
		Meter  *Expr `parser:"'meter' @@ |" is:"stop"`
		ND     *Expr `parser:"'nd' @@ |" is:"density"`
		Gear   *Expr `parser:"'gear' @@ |" is:"gear"`
		// Travel is how far a wheel with end stops turns: over the whole ring, or over
		// the part from TravelFrom to TravelTo, which may be nil.
		Travel     *Expr `parser:"'travel' @@" is:"angle"`
		TravelFrom *Expr `parser:"( 'from' @@ 'to'" is:"length"`
		TravelTo   *Expr `parser:"@@ )? |" is:"length"`
		Wheel      *Expr `parser:"'wheel' @@ |" is:"length"`
		Diopter    *Expr `parser:"'diopter' @@ |" is:"number"`
		Tube       *Expr `parser:"'tube' @@ |" is:"length"`
		Shoots     *Expr `parser:"'shoots' @@ |" is:"number"`
		Puller     *Name `parser:"'puller' @@ |"`
		Operator   *Name `parser:"'operator' @@ ) )+"`
	}
	// Crop is `crop N`: the width over the height of the picture on the screen.
	Crop struct {
		Node
		Value *Expr `parser:"'crop' @@" is:"number" say:"2.39"`
	}
	// Subject is `subject NAME at PLACE[, eyes L][, deep D][, sways D]`. Floor stands in
	// place of Place where the place is one that only a floor has.
	Subject struct {
		Node
		Name  *Name      `parser:"'subject' @@ 'at' ("`
		Ahead *FloorOnly `parser:"(?= @@ )"`
		Floor *Floor     `parser:"@@ |" is:"floor"`
		Place *Place     `parser:"@@ ) ( (?! EOF ) ','? (" is:"place"`
		Eyes  *Expr      `parser:"'eyes' @@ |" is:"length"`
		Deep  *Expr      `parser:"'deep' @@ |" is:"length"`
		Sways *Expr      `parser:"'sways' @@ ) )*" is:"length"`
	}
	// Voice is `voice NAME`.
	Voice struct {
		Node
		Name *Name `parser:"'voice' @@"`
	}
)

// Headers.
type (
	// Camera is `camera NAME`.
	Camera struct {
		Node
		Name *Name `parser:"'camera' @@"`
	}
	// Lens is `lens "NAME"`.
	Lens struct {
		Node
		Name *Name `parser:"'lens' @@" say:"\"NAME\""`
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
		Params []*Name `parser:"'(' ( @@ ( ',' @@ )* )? ')'" say:"PARAMETER"`
	}
	// Shot is `shot ID ["TITLE"]`.
	Shot struct {
		Node
		ID    string `parser:"'shot' @ID"`
		Title *Text  `parser:"@@?" say:"TITLE"`
	}
	// Scene is `scene ["TITLE"]`.
	Scene struct {
		Node
		Title *Text `parser:"'scene' @@?" say:"TITLE"`
	}
)

// Statements of a camera.
type (
	// Sensor is `sensor W x H mm` or `sensor FORMAT`, each with `crop N`. Width and
	// Height are lengths, and nil where Format is not; Crop may be nil.
	Sensor struct {
		Node
		Width  *Expr       `parser:"'sensor' ( (?! Word (?! 'x' | '×' | '+' | '-' | '−' | '*' | '/' ) | Number 'in' 'type' | Feet 'type' ) @@ ( 'x' | '×' )" is:"width" say:"24.89"`
		Height *Expr       `parser:"@@ |" is:"width" say:"18.66 mm"`
		Format *FormatName `parser:"@@ ) ( (?! EOF ) ','?" is:"format"`
		Crop   *Expr       `parser:"'crop' @@ )*" is:"number" say:"2.39"`
	}
	// Records is `records N px`.
	Records struct {
		Node
		Pixels *Expr `parser:"'records' @@" is:"pixels" say:"3840 px"`
	}
	// Support is `on tripod`, dolly, shoulder or hand.
	Support struct {
		Node
		Kind string `parser:"'on' @( 'tripod' | 'dolly' | 'shoulder' | 'hand' )"`
	}
	// ISO is `iso N`, or `iso N to N`: the first is set, and it may go to the second.
	// To is nil where nothing is said of that.
	ISO struct {
		Node
		Value *Expr `parser:"'iso' @@" is:"number" say:"800"`
		To    *Expr `parser:"( 'to' @@ )?" is:"number" say:"1600"`
	}
	// Shutter is `shutter A deg` or `shutter 1/50 s`, likewise with To.
	Shutter struct {
		Node
		Value *Expr `parser:"'shutter' @@" is:"shutter" say:"172.8 deg | 1/50 s"`
		To    *Expr `parser:"( 'to' @@ )?" is:"shutter" say:"180 deg | 1/48 s"`
	}
	// Monitor is `monitor W from V, N px`.
	Monitor struct {
		Node
		Width  *Size `parser:"'monitor' @@" is:"size"`
		From   *Expr `parser:"'from' @@" is:"distance"`
		Pixels *Expr `parser:"','? @@" is:"pixels" say:"1920 px"`
	}
	// Shoots is `shoots N`: how many frames a second the camera takes.
	Shoots struct {
		Node
		Frames *Expr `parser:"'shoots' @@" is:"number" say:"96"`
	}
)

// Statements of a lens.
type (
	// Focal is `focal F` or `focal F1 to F2`; To is nil for a prime.
	Focal struct {
		Node
		From *Expr `parser:"'focal' @@" is:"focal"`
		To   *Expr `parser:"( 'to' @@ )?" is:"focal"`
	}
	// Stops is `stops S to S [at F]`.
	Stops struct {
		Node
		Widest   *Expr `parser:"'stops' @@ 'to'" is:"stop"`
		Smallest *Expr `parser:"@@" is:"stop"`
		At       *Expr `parser:"( 'at' @@ )?" is:"focal"`
	}
	// Closest is `closest D`.
	Closest struct {
		Node
		Distance *Expr `parser:"'closest' @@" is:"length"`
	}
	// Ring is `ring A deg, diameter D, girth D`, of which every part may be left out
	// but not all; `ring by wire, linear over A, diameter D`; or `ring none`. Kind is
	// "", "wire" or "none".
	Ring struct {
		Node
		Kind     string `parser:"'ring' ( 'by' @'wire' | @'none' |"`
		Angle    *Expr  `parser:"(?! ( 'diameter' | 'girth' ) (?! EOF | ',' | '+' | '-' | '−' | '*' | '/' | 'diameter' | 'girth' ) ) @@ )? ( (?! EOF ) ','? (" is:"angle"`
		Diameter *Expr  `parser:"'diameter' @@ |" is:"length"`
		Girth    *Expr  `parser:"'girth' @@ |" is:"length"`
		Linear   *Expr  `parser:"'linear' 'over' @@ ) )*" is:"angle"`
	}
	// Turns is `turns left` or `turns right`.
	Turns struct {
		Node
		Dir string `parser:"'turns' @( 'left' | 'right' )"`
	}
	// Mark is `mark D at POSITION and POSITION`, or `mark closest at POSITION`, where
	// Distance is nil. And is where the mark lies if it is come to from the far side; it
	// may be nil.
	Mark struct {
		Node
		Distance *Expr     `parser:"'mark' ( (?! 'closest' 'at' ) @@ |" is:"length"`
		Closest  bool      `parser:"@'closest' ) 'at'"`
		At       *Position `parser:"@@" is:"position"`
		And      *Position `parser:"( ','? 'and' @@ )?" is:"position"`
	}
	// Marks is `marks engraved` or `marks measured`, and how well they were read.
	// Within may be nil.
	Marks struct {
		Node
		From   string `parser:"'marks' @( 'engraved' | 'measured' ) ( (?! EOF ) ','?"`
		Within *Expr  `parser:"'within' @@ )*" is:"angle"`
	}
	// Ends is `ends hard` or `ends slip`: what the ring does at its ends.
	Ends struct {
		Node
		How string `parser:"'ends' @( 'hard' | 'slip' )"`
	}
	// Play is `play A, marked to inf`, `to closest` or `both ways`: Marked is "inf",
	// "closest", "both" or "".
	Play struct {
		Node
		Angle  *Expr  `parser:"'play' @@ ( (?! EOF ) ','?" is:"angle"`
		Marked string `parser:"'marked' ( 'to' @'inf' | 'to' @'closest' | @'both' 'ways' ) )*"`
	}
	// Squeeze is `squeeze N`, at the rear of the lens or not, and at a distance or at
	// all, where At is nil.
	Squeeze struct {
		Node
		Ratio *Expr `parser:"'squeeze' @@" is:"number" say:"2"`
		Rear  bool  `parser:"( 'at' @'rear' )?"`
		At    *Expr `parser:"( 'at' @@ )?" is:"length"`
	}
	// Ratio is `ratio 1/2 at D`: the magnification there, or at closest where At is nil.
	Ratio struct {
		Node
		Value *Expr `parser:"'ratio' @@" is:"number" say:"1/2"`
		At    *Expr `parser:"( 'at' @@ )?" is:"length"`
	}
	// Darkens is `darkens S to S at D`: the stop To is what Stop passes there.
	Darkens struct {
		Node
		Stop *Expr `parser:"'darkens' @@ 'to'" is:"stop"`
		To   *Expr `parser:"@@" is:"stop"`
		At   *Expr `parser:"'at' @@" is:"length"`
	}
	// Planes is `planes D apart`.
	Planes struct {
		Node
		Apart *Expr `parser:"'planes' @@ 'apart'" is:"length"`
	}
	// Breathing is `breathing P %` at a distance, or at closest where At is nil.
	Breathing struct {
		Node
		Percent *Expr `parser:"'breathing' @@" is:"share" say:"2 %"`
		At      *Expr `parser:"( 'at' @@ )?" is:"length"`
	}
	// ThroughZoom is `keeps focus through zoom` or `loses focus through zoom`.
	ThroughZoom struct {
		Node
		Keeps bool `parser:"( @'keeps' | 'loses' ) 'focus' 'through' 'zoom'"`
	}
	// Pupil is `pupil R`.
	Pupil struct {
		Node
		Ratio *Expr `parser:"'pupil' @@" is:"number" say:"1.2"`
	}
)

// Statements of a puller.
type (
	// Takes is `takes "FILE"`.
	Takes struct {
		Node
		File *Text `parser:"'takes' @@" say:"FILE"`
	}
	// Hand is `hand N bit/s`.
	Hand struct {
		Node
		Throughput *Expr `parser:"'hand' @@" is:"throughput" say:"5 bit/s"`
	}
	// Limit is `limit N deg/s`.
	Limit struct {
		Node
		Speed *Expr `parser:"'limit' @@" is:"turning" say:"400 deg/s"`
	}
	// Grip is `grip A deg`.
	Grip struct {
		Node
		Angle *Expr `parser:"'grip' @@" is:"angle"`
	}
	// Spread is `spread D`.
	Spread struct {
		Node
		Rim *Expr `parser:"'spread' @@" is:"length"`
	}
	// Bias is `bias A deg`.
	Bias struct {
		Node
		Angle *Expr `parser:"'bias' @@" is:"angle"`
	}
)

// Statements of a scene.
type (
	// Origin is `origin "WORDS"`: where the zero point is on the set.
	Origin struct {
		Node
		Words *Text `parser:"'origin' @@" say:"WORDS"`
	}
	// FloorMark is `mark NAME at FLOOR`.
	FloorMark struct {
		Node
		Name *Name  `parser:"'mark' @@ 'at'"`
		At   *Floor `parser:"@@" is:"floor"`
	}
	// Actor is `subject NAME at FLOOR[, eyes L][, deep D][, sways D]`: who or what can be
	// focused on in a scene. Eyes is how high the eyes are above the place.
	Actor struct {
		Node
		Name  *Name  `parser:"'subject' @@ 'at'"`
		At    *Floor `parser:"@@ ( (?! EOF ) ','? (" is:"floor"`
		Eyes  *Expr  `parser:"'eyes' @@ |" is:"length"`
		Deep  *Expr  `parser:"'deep' @@ |" is:"length"`
		Sways *Expr  `parser:"'sways' @@ ) )*" is:"length"`
	}
	// Line is `line NAME to NAME`: a line of action.
	Line struct {
		Node
		From *Name `parser:"'line' @@ 'to'"`
		To   *Name `parser:"@@"`
	}
	// CutTo is `cut to SHOT, on A[, because "WHY"]`: a cut that is planned.
	CutTo struct {
		Node
		Shot    *ShotRef `parser:"'cut' 'to' @@ ( (?! EOF ) ','? (" say:"SHOT"`
		On      *Anchor  `parser:"( 'on' | 'at' ) @@ |" is:"moment,needed"`
		Because *Text    `parser:"'because' @@ ) )*" say:"WHY"`
	}
)

// Statements of a shot of a scene.
type (
	// Covers is `covers all`, or `covers A to A`: the part of the action that the shot
	// has. In place of a moment it may have the start or the end of the scene: then From
	// or To is nil, and FromEdge or ToEdge is "start" or "end".
	Covers struct {
		Node
		All      bool    `parser:"'covers' ( @'all' (?= EOF ) | ("`
		FromEdge string  `parser:"@( 'start' | 'end' ) (?! 'of' ) |"`
		From     *Anchor `parser:"@@ ) 'to' (" is:"moment"`
		ToEdge   string  `parser:"@( 'start' | 'end' ) (?! 'of' ) |"`
		To       *Anchor `parser:"@@ ) )" is:"moment"`
	}
	// PlacesAs is `places as at A`: everyone stands where the action has them then.
	PlacesAs struct {
		Node
		At *Anchor `parser:"'places' 'as' 'at' @@" is:"moment"`
	}
	// RunsWith is `runs with SHOT`: the shot covers what that one covers, at the same time.
	RunsWith struct {
		Node
		Shot *ShotRef `parser:"'runs' 'with' @@" say:"SHOT"`
	}
	// Matches is `matches SHOT`: the shot is to be cut against that one.
	Matches struct {
		Node
		Shot *ShotRef `parser:"'matches' @@" say:"SHOT"`
	}
	// CameraAt is `camera at FLOOR, aims at AIM`, or `camera as in SHOT[, aims at AIM]`:
	// where the camera is at the start, and where it looks. One of At and AsIn is nil.
	CameraAt struct {
		Node
		At      *Floor   `parser:"'camera' ( 'at' @@ |" is:"floor"`
		AsIn    *ShotRef `parser:"'as' 'in' @@ ) ( (?! EOF ) ','? (" say:"SHOT"`
		Aims    *Aim     `parser:"'aims' 'at' @@ |" is:"aim"`
		Because *Text    `parser:"'because' @@ ) )*" say:"WHY"`
	}
	// CameraMoves is `camera moves to FLOOR over T`: the camera goes straight there. Its
	// other fields are those of Dolly.
	CameraMoves struct {
		Node
		To        *Floor  `parser:"'camera' 'moves' 'to' @@ ( (?! EOF ) ','? (" is:"floor"`
		Over      *Expr   `parser:"'over' @@ |" is:"time,needed"`
		Speed     *Expr   `parser:"(?= 'at' Number ( 'm' | 'ft' ) '/' ) 'at' @@ |" is:"speed,instead"`
		Alongside string  `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" is:",instead" say:"KIND"`
		On        *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing   *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Profile   Profile `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Measured is `measured NAME [at MARK] L[, camera at end]`: what a tape reads from the
	// camera, where it starts or where its last move ends. At may be nil.
	Measured struct {
		Node
		Name        *Name `parser:"'measured' @@"`
		At          *Name `parser:"( 'at' @@ )?"`
		Reads       *Expr `parser:"@@ ( (?! EOF ) ','?" is:"length"`
		CameraAtEnd bool  `parser:"@'camera' 'at' 'end' )*"`
	}
)

// Statements of a shot or a move.
type (
	// Start is `start on TARGET`.
	Start struct {
		Node
		Target *Target `parser:"'start' 'on' @@" is:"target"`
	}
	// Begins is `begins at TIMECODE`.
	Begins struct {
		Node
		At *Expr `parser:"'begins' 'at' @@" is:"timecode"`
	}
	// Lasts is `lasts T`.
	Lasts struct {
		Node
		Time *Expr `parser:"'lasts' @@" is:"time"`
	}
	// Remark is `note "TEXT"`.
	Remark struct {
		Node
		Text *Text `parser:"'note' @@" say:"TEXT"`
	}
	// Clip is `clip "NAME"` with its clauses: clips of the cut that show the shot,
	// whatever they are called. Absent clauses are nil.
	Clip struct {
		Node
		Name *Text `parser:"'clip' @@ ( (?! EOF ) ','? (" say:"NAME"`
		Take *Text `parser:"'take' @@ |"`
		Reel *Text `parser:"'reel' @@ |"`
		// From and To are timecodes of the source: a clip counts if it begins there.
		From *Expr `parser:"'from' @@" is:"timecode"`
		To   *Expr `parser:"'to' @@ ) )*" is:"timecode"`
	}
	// Speech is `NAME: "WORDS"` with its clauses. Whom is to whom it is said, and Off tells
	// that the one who says it is heard and not meant to be seen.
	Speech struct {
		Node
		Who     *Name   `parser:"@@ ':'"`
		Words   *Text   `parser:"@@ ( (?! EOF ) ','? (" say:"WORDS"`
		On      *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Lasting *Expr   `parser:"'lasting' @@ |" is:"time"`
		From    *Expr   `parser:"'from' @@ 'to'" is:"time,instead"`
		To      *Expr   `parser:"@@ |" is:"time"`
		Whom    *Name   `parser:"'to' @@ |"`
		Off     bool    `parser:"@'off' ) )*"`
	}
	// Pause is `pause T`.
	Pause struct {
		Node
		Time *Expr `parser:"'pause' @@" is:"time"`
	}
	// Action is `action "WHAT", lasting T[, on A]`.
	Action struct {
		Node
		What    *Text   `parser:"'action' @@ ( (?! EOF ) ','? (" say:"WHAT"`
		Lasting *Expr   `parser:"'lasting' @@ |" is:"time,needed"`
		On      *Anchor `parser:"( 'on' | 'at' ) @@ ) )*" is:"moment"`
	}
	// Cue is `cue NAME [on A]`.
	Cue struct {
		Node
		Name *Name   `parser:"'cue' @@ ( (?! EOF ) ','?"`
		On   *Anchor `parser:"( 'on' | 'at' ) @@ )*" is:"moment"`
	}
	// Rack is `rack to TARGET` with its clauses.
	Rack struct {
		Node
		Target  *Target `parser:"'rack' 'to' @@ ( (?! EOF ) ','? (" is:"target"`
		On      *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Over    *Expr   `parser:"'over' @@ |" is:"time"`
		Profile Profile `parser:"@( 'smooth' | 'even' ) |"`
		// Alongside is the kind of camera move with which it starts and lands, in place
		// of all times; "" for none.
		Alongside string `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" say:"KIND"`
		Because   *Text  `parser:"'because' @@ ) )*" say:"WHY"`
	}
	// Hold is `hold T`.
	Hold struct {
		Node
		Time *Expr `parser:"'hold' @@" is:"time"`
	}
	// Follow is `follow NAME [on A] [until A]`.
	Follow struct {
		Node
		Who   *Name   `parser:"'follow' @@ ( (?! EOF ) ','? ("`
		On    *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Until *Anchor `parser:"'until' @@ ) )*" is:"moment"`
	}
	// Moves is `NAME moves to PLACE over T [on A] [smooth/even]`, or `NAME moves D
	// nearer/farther ...`, with By in place of To. Speed stands in place of Over. Floor
	// stands in place of To where the place is one that only a floor has, and in a scene
	// for every place. Eyes is the height of the eyes where the move ends.
	Moves struct {
		Node
		Who     *Name      `parser:"@@ 'moves' ( 'to' ("`
		Ahead   *FloorOnly `parser:"(?= @@ )"`
		Floor   *Floor     `parser:"@@ |" is:"floor"`
		To      *Place     `parser:"@@ ) |" is:"place"`
		By      *Expr      `parser:"@@" is:"length"`
		Nearer  bool       `parser:"( @'nearer' | 'farther' ) ) ( (?! EOF ) ','? ("`
		Over    *Expr      `parser:"'over' @@ |" is:"time,needed"`
		Speed   *Expr      `parser:"(?= 'at' Number ( 'm' | 'ft' ) '/' ) 'at' @@ |" is:"speed,instead"`
		Eyes    *Expr      `parser:"'eyes' @@ |" is:"length"`
		On      *Anchor    `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Profile Profile    `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Dolly is `dolly in/out D over T [on A]`, or `push in D` and `pull out D`; In is
	// towards the subjects. Speed stands in place of Over, and Alongside in place of all
	// times: the kind of camera move with which this one starts and lands, "" for none.
	Dolly struct {
		Node
		In        bool    `parser:"( 'dolly' ( @'in' | 'out' ) | 'push' @'in' | 'pull' 'out' )"`
		By        *Expr   `parser:"@@ ( (?! EOF ) ','? (" is:"length"`
		Over      *Expr   `parser:"'over' @@ |" is:"time,needed"`
		Speed     *Expr   `parser:"(?= 'at' Number ( 'm' | 'ft' ) '/' ) 'at' @@ |" is:"speed,instead"`
		Alongside string  `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" is:",instead" say:"KIND"`
		On        *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing   *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Profile   Profile `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Track is `track left/right D over T`: the camera goes level and square to where it
	// looks. Its other fields are those of Dolly.
	Track struct {
		Node
		Way       string  `parser:"'track' @( 'left' | 'right' )"`
		By        *Expr   `parser:"@@ ( (?! EOF ) ','? (" is:"length"`
		Over      *Expr   `parser:"'over' @@ |" is:"time,needed"`
		Speed     *Expr   `parser:"(?= 'at' Number ( 'm' | 'ft' ) '/' ) 'at' @@ |" is:"speed,instead"`
		Alongside string  `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" is:",instead" say:"KIND"`
		On        *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing   *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Profile   Profile `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Boom is `boom up/down D over T`: the height of the camera alone changes. Its other
	// fields are those of Dolly.
	Boom struct {
		Node
		Way       string  `parser:"'boom' @( 'up' | 'down' )"`
		By        *Expr   `parser:"@@ ( (?! EOF ) ','? (" is:"length"`
		Over      *Expr   `parser:"'over' @@ |" is:"time,needed"`
		Speed     *Expr   `parser:"(?= 'at' Number ( 'm' | 'ft' ) '/' ) 'at' @@ |" is:"speed,instead"`
		Alongside string  `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" is:",instead" say:"KIND"`
		On        *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing   *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Profile   Profile `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Turn is a pan, a tilt or both: by so much, as in `pan left/right A over T` and
	// `tilt up/down A over T`, with Way and By; until a subject is in the middle of the
	// picture, `pan to NAME over T`; or so that it stays where it is in the picture, `pan
	// with NAME [on A] [until A]`. `pan and tilt` do the last two at once. Alongside is
	// that of Dolly.
	Turn struct {
		Node
		Pan       bool    `parser:"( @'pan' (?! 'up' | 'down' ) ("`
		Tilt      bool    `parser:"'and' @'tilt' (?! 'left' | 'right' | 'up' | 'down' ) )? | @'tilt' (?! 'left' | 'right' ) ) ("`
		Way       string  `parser:"@( 'left' | 'right' | 'up' | 'down' )"`
		By        *Expr   `parser:"@@ |" is:"angle"`
		To        *Name   `parser:"'to' @@ |"`
		With      *Name   `parser:"'with' @@ ) ( (?! EOF ) ','? ("`
		Over      *Expr   `parser:"'over' @@ |" is:"time,needed"`
		Alongside string  `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" is:",instead" say:"KIND"`
		On        *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing   *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Until     *Anchor `parser:"'until' @@ |" is:"moment"`
		Profile   Profile `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Zoom is `zoom to F over T [on A]`. Alongside is that of Dolly.
	Zoom struct {
		Node
		To        *Expr   `parser:"'zoom' 'to' @@ ( (?! EOF ) ','? (" is:"focal"`
		Over      *Expr   `parser:"'over' @@ |" is:"time,needed"`
		Alongside string  `parser:"'with' @( 'pan' | 'tilt' | 'boom' | 'dolly' | 'track' | 'camera' | 'zoom' ) |" is:",instead" say:"KIND"`
		On        *Anchor `parser:"( 'on' | 'at' ) @@ |" is:"moment"`
		Landing   *Anchor `parser:"'landing' ( 'on' | 'at' ) @@ |" is:"moment"`
		Profile   Profile `parser:"@( 'smooth' | 'even' ) ) )*"`
	}
	// Call is `NAME(ARGS)`, the use of a move. Each argument is read as an
	// Anchor, the widest form: a value is its Time, a name its Name.
	Call struct {
		Node
		Name *Name     `parser:"@@ '('"`
		Args []*Anchor `parser:"( @@ ( ',' @@ )* )? ')'" is:"argument"`
	}
)
