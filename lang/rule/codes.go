// The codes, by group and name.

package rule

const (
	_ Code = iota

	// How a plan is written: a line that cannot be read.
	BadCharacter
	BadNumber
	ConflictingClauses
	DuplicateClause
	ExpectedEnd
	ExpectedName
	ExpectedText
	ExpectedValue
	ExpectedWord
	KeywordName
	MissingClause
	MissingComma
	MissingUnit
	StrayComma
	TooLarge
	TooManyMistakes
	UnfinishedText
	UnknownClause
	UnknownUnit
	UnknownWord
	UnresolvedMerge
	WrongSection

	// What a plan says: it can be read and makes no sense.
	BadRate
	BadTimecode
	Circle
	ClosestTooClose
	DuplicateName
	FocalNotOnLens
	HoldTooEarly
	LandsTooEarly
	LoneMark
	MarksOutOfOrder
	MoreFaults
	NestedTooDeep
	NoBeginsAt
	NoCamera
	NoClosest
	NoFocal
	NoLens
	NoLine
	NoScene
	NoSensor
	NoStop
	NoStops
	NoSuchFile
	OutOfRange
	SaidTwice
	TooDeepUse
	TooLong
	TooManyFiles
	TooManyTimes
	UnknownCut
	UnknownName
	WhichLine
	WordNotFound
	WordTwice
	WrongArguments
	WrongKind
	WrongUnit

	// Other people's files: those that an edit or a script names, and of lenses.
	AmbiguousTime
	BadEncoding
	BadEvent
	BadJson
	BadMarker
	BadSpeed
	BadTime
	DropDiffers
	DropFrame
	EndsBeforeItStarts
	EventsOverlap
	ForeignLens
	ForeignScatter
	ForeignUnit
	GarbledArrow
	LengthsDiffer
	MoreTimelines
	NoDuration
	NoLength
	NoSignature
	NoSize
	NoTime
	NoTimeline
	OtherRate
	OtherVersion
	OutOfOrder
	TextOutsideACue
	UnclosedBoneyard
	UnknownLine
	UnknownSchema

	// Findings of a shot that has been computed.
	AfterTheShot
	BeforeTheShot
	BeyondMarks
	Breathes
	BrokenLog
	ByWire
	CannotHoldBoth
	CueNotInEdit
	CutsIntoLine
	Diffraction
	DriftsSoft
	FallsBehind
	Faint
	FasterThanAHand
	FewTakes
	GoesSoft
	HardToFollow
	HardToLand
	InsideClosest
	Jarring
	Light
	LineDiffers
	LineNotInEdit
	LinesElsewhere
	LogSlips
	LosesFocusInZoom
	Macro
	MonitorHides
	MovedInEdit
	MovesOverlap
	NeverSure
	NoEffect
	NoRing
	NoTakes
	NoTimeToMove
	NoTimeToSee
	NoTitle
	NothingSharp
	NotOnSubject
	NotSeen
	OutOfFrame
	RacksOverlap
	ReGrip
	Restless
	RingUnknown
	RunsInto
	ShotNotInEdit
	Slant
	StopClosesInZoom
	StopNotOnLens
	TooDeep
	Trimmed
	Unmotivated

	// A script page beside the plan.
	LineChanged
	LineGone
	LineMoved
	LineNew
	SpeakerChanged
)
