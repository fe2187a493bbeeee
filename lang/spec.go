// The table of statements: the word of each, where it may stand, and the type
// whose tags say how it is written.

package lang

import (
	"reflect"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/alecthomas/participle/v2"
)

// A spec describes a statement.
type spec struct {
	word  string    // the keyword that it begins with, or that marks it
	under section   // where it may stand; 0 for a header
	of    Statement // a nil pointer to its type
	// declares tells that a name follows the keyword, which the statement gives
	// a meaning.
	declares bool
	// The formatter writes a comma before each clause but the first, and before
	// that one too where apart; and before a second number where numbers.
	apart   bool
	numbers bool
	// floors tells that its places are places on the floor, and only such.
	floors bool
	// says is the usage line where the tags allow more than the rules (rules.go).
	says string

	other *spec // the statement of the same word in another section
	once  sync.Once
	built *participle.Parser[Statement]
	read  atomic.Pointer[shape]
}

// Specs of statements that no keyword begins.
const (
	speechWord = ":"     // NAME: "WORDS"
	callWord   = "("     // NAME(ARGS)
	movesWord  = "moves" // NAME moves to PLACE
)

var specs = []*spec{
	// The file.
	{word: "plan", under: inFile, of: (*Plan)(nil)},
	{word: "rate", under: inFile, of: (*Rate)(nil)},
	{word: "units", under: inFile, of: (*Units)(nil)},
	{word: "pace", under: inFile, of: (*Pace)(nil)},
	{word: "use", under: inFile, of: (*Use)(nil)},
	{word: "edit", under: inFile, of: (*CutFile)(nil)},
	{word: "script", under: inFile, of: (*Script)(nil)},
	{word: "clips", under: inFile, of: (*Clips)(nil)},
	{word: "let", declares: true, under: inFile, of: (*Let)(nil)},
	{word: "tape", under: inFile, of: (*Tape)(nil)},
	{word: "watched", under: inFile | inShot, of: (*Watched)(nil)},
	{word: "sharp", under: inFile | inShot, of: (*Sharp)(nil)},
	{word: "land", under: inFile | inShot, of: (*Land)(nil)},
	{word: "quickest", under: inFile | inShot, of: (*Quickest)(nil)},
	{word: "subject", declares: true, under: inScene, apart: true, floors: true, of: (*Actor)(nil)},
	{word: "subject", declares: true, under: inFile | inShot, apart: true, numbers: true, of: (*Subject)(nil),
		says: "subject NAME at PLACE | FLOOR, eyes LENGTH, deep LENGTH, sways LENGTH"},
	{word: "voice", declares: true, under: inFile | inShot | inScene, of: (*Voice)(nil)},
	{word: "crop", under: inFile, of: (*Crop)(nil)},
	{word: "with", under: inFile | inShot, of: (*With)(nil)},

	// A scene, and the shots of it.
	{word: "origin", under: inScene, of: (*Origin)(nil)},
	{word: "mark", declares: true, under: inScene, floors: true, of: (*FloorMark)(nil)},
	{word: "line", under: inScene, of: (*Line)(nil)},
	{word: "cut", under: inScene, apart: true, of: (*CutTo)(nil)},
	{word: "covers", under: inShot, of: (*Covers)(nil), says: "covers all | covers MOMENT | start to MOMENT | end"},
	{word: "places", under: inShot, of: (*PlacesAs)(nil)},
	{word: "runs", under: inShot, of: (*RunsWith)(nil)},
	{word: "matches", under: inShot, of: (*Matches)(nil)},
	{word: "camera", under: inShot, apart: true, floors: true, of: (*CameraAt)(nil)},
	{word: "camera", under: inShots, floors: true, of: (*CameraMoves)(nil)},
	{word: "measured", under: inShot, apart: true, of: (*Measured)(nil)},

	// Headers.
	{word: "camera", declares: true, of: (*Camera)(nil)},
	{word: "lens", declares: true, of: (*Lens)(nil)},
	{word: "puller", declares: true, of: (*Puller)(nil)},
	{word: "move", declares: true, of: (*Move)(nil)},
	{word: "shot", of: (*Shot)(nil)},
	{word: "scene", of: (*Scene)(nil)},

	// A camera.
	{word: "sensor", under: inCamera, apart: true, of: (*Sensor)(nil)},
	{word: "records", under: inCamera, of: (*Records)(nil)},
	{word: "on", under: inCamera, of: (*Support)(nil)},
	{word: "iso", under: inCamera, of: (*ISO)(nil)},
	{word: "shutter", under: inCamera, of: (*Shutter)(nil)},
	{word: "monitor", under: inCamera, numbers: true, of: (*Monitor)(nil)},
	{word: "shoots", under: inCamera, of: (*Shoots)(nil)},

	// A lens.
	{word: "focal", under: inLens, of: (*Focal)(nil)},
	{word: "stops", under: inLens, of: (*Stops)(nil)},
	{word: "closest", under: inLens, of: (*Closest)(nil)},
	{word: "ring", under: inLens, apart: true, of: (*Ring)(nil),
		says: "ring ANGLE, diameter LENGTH, girth LENGTH | ring by wire, linear over ANGLE, diameter LENGTH | ring none"},
	{word: "turns", under: inLens, of: (*Turns)(nil)},
	{word: "mark", under: inLens, of: (*Mark)(nil),
		says: "mark LENGTH | closest | inf at ANGLE | LENGTH | 32 % | 3.2 of 10 | 4:30 o'clock, and POSITION"},
	{word: "marks", under: inLens, apart: true, of: (*Marks)(nil)},
	{word: "ends", under: inLens, of: (*Ends)(nil)},
	{word: "play", under: inLens, apart: true, of: (*Play)(nil)},
	{word: "squeeze", under: inLens, of: (*Squeeze)(nil)},
	{word: "ratio", under: inLens, of: (*Ratio)(nil)},
	{word: "darkens", under: inLens, of: (*Darkens)(nil)},
	{word: "breathing", under: inLens, of: (*Breathing)(nil)},
	{word: "planes", under: inLens, of: (*Planes)(nil)},
	{word: "keeps", under: inLens, of: (*ThroughZoom)(nil)},
	{word: "loses", under: inLens, of: (*ThroughZoom)(nil)},
	{word: "pupil", under: inLens, of: (*Pupil)(nil)},

	// A puller.
	{word: "takes", under: inPuller, of: (*Takes)(nil)},
	{word: "hand", under: inPuller, of: (*Hand)(nil)},
	{word: "limit", under: inPuller, of: (*Limit)(nil)},
	{word: "grip", under: inPuller, of: (*Grip)(nil)},
	{word: "spread", under: inPuller, of: (*Spread)(nil)},
	{word: "bias", under: inPuller, of: (*Bias)(nil)},

	// A shot or a move.
	{word: "start", under: inShot, of: (*Start)(nil)},
	{word: "begins", under: inShot, of: (*Begins)(nil)},
	{word: "lasts", under: inShot, of: (*Lasts)(nil)},
	{word: "note", under: inShot, of: (*Remark)(nil)},
	{word: "clip", under: inShot, apart: true, of: (*Clip)(nil)},
	{word: "pause", under: inAction, of: (*Pause)(nil)},
	{word: "action", under: inAction, apart: true, of: (*Action)(nil)},
	{word: "cue", declares: true, under: inAction, of: (*Cue)(nil)},
	{word: "rack", under: inShots, apart: true, of: (*Rack)(nil)},
	{word: "hold", under: inShots, of: (*Hold)(nil)},
	{word: "follow", under: inShots, of: (*Follow)(nil)},
	{word: "pan", under: inShots, of: (*Turn)(nil), says: "pan left | right ANGLE | [and tilt] to NAME over TIME | with KIND, " +
		"on MOMENT, landing on MOMENT, smooth | even | pan [and tilt] with NAME, on MOMENT, until MOMENT"},
	{word: "tilt", under: inShots, of: (*Turn)(nil), says: "tilt up | down ANGLE | to NAME over TIME | with KIND, " +
		"on MOMENT, landing on MOMENT, smooth | even | tilt with NAME, on MOMENT, until MOMENT"},
	{word: "dolly", under: inShots, of: (*Dolly)(nil)},
	{word: "push", under: inShots, of: (*Dolly)(nil)},
	{word: "pull", under: inShots, of: (*Dolly)(nil)},
	{word: "track", under: inShots, of: (*Track)(nil)},
	{word: "boom", under: inShots, of: (*Boom)(nil)},
	{word: "zoom", under: inShots, of: (*Zoom)(nil)},
	{word: movesWord, under: inScene, floors: true, of: (*Moves)(nil),
		says: "NAME moves to FLOOR over TIME | at SPEED, eyes LENGTH, on MOMENT, smooth | even"},
	{word: movesWord, under: inShots, numbers: true, of: (*Moves)(nil),
		says: "NAME moves to PLACE | FLOOR | LENGTH nearer | farther over TIME | at SPEED, eyes LENGTH, on MOMENT, smooth | even"},
	{word: speechWord, under: inAction, apart: true, of: (*Speech)(nil)},
	{word: callWord, under: inAction, of: (*Call)(nil)},
}

// specOf finds a statement by its word; where a word has several, the others
// hang on the first.
var specOf = func() map[string]*spec {
	m := make(map[string]*spec, len(specs))
	for _, s := range specs {
		s.other = m[s.word]
		m[s.word] = s
	}
	return m
}()

// parser returns participle's parser of the statement. It is built when the
// first such statement comes: all of them take longer than reading a plan.
func (s *spec) parser() *participle.Parser[Statement] {
	s.once.Do(func() {
		s.built = participle.MustBuild[Statement](participle.Lexer(definition{}), participle.Union(s.of))
	})
	return s.built
}

// shape returns what the tags of the statement say.
func (s *spec) shape() *shape {
	if made := s.read.Load(); made != nil {
		return made
	}
	made := shapeOf(reflect.TypeOf(s.of).Elem())
	s.read.Store(made)
	return made
}

// within returns the statement of the same word that may stand in a section: its
// own before one of the file, which would end it; where none may, this one.
func (s *spec) within(in section) *spec {
	for form := s; form != nil; form = form.other {
		if form.under&in != 0 {
			return form
		}
	}
	for form := s; form != nil; form = form.other {
		if form.mayStand(in) && form.under != 0 {
			return form
		}
	}
	return s
}

// softWords are words that mean something at their place in a statement and are
// names anywhere else. A line begins with one only where its section takes that
// statement, and its second token is no `:`, `(` or `moves`. Most belong to cameras,
// lenses, pullers and set-ups: a cue may be a mark or a ring. The list is sorted.
var softWords = []string{
	"aims", "all", "apart", "as", "bias", "boom", "both", "breathing", "clip", "clips", "closest", "covers",
	"crop", "cut", "darkens", "diagonal", "diameter", "diopter", "down", "downstage", "ends", "engraved", "eyes",
	"farther", "focal", "focus", "gear", "girth", "grip", "hand", "hard", "high", "iso", "keeps", "limit", "line",
	"linear", "loses", "mark", "marked", "marks", "matches", "measured", "meter", "monitor", "nd", "nearer",
	"note", "o'clock", "off", "operator", "origin", "pan", "places", "planes", "play", "pull", "pupil", "push",
	"ratio", "rear", "records", "reel", "ring", "runs", "screen", "sensor", "shoots", "shoulder", "shutter",
	"slip", "spread", "squeeze", "stop", "stops", "take", "takes", "through", "tilt", "towards", "track",
	"travel", "tripod", "tube", "turns", "type", "unscripted", "up", "upstage", "ways", "wheel", "within", "x",
}

// otherKeywords are the words with a meaning of their own inside statements. The list
// is sorted, and no map: that would be built at every start of the program.
var otherKeywords = []string{
	"aims", "all", "and", "apart", "arcmin", "as", "at", "because", "bit", "both", "by", "cm", "deep", "deg",
	"df", "diagonal", "diameter", "diopter", "down", "downstage", "end", "engraved", "even", "eyes", "focus",
	"fr", "from", "ft", "gear", "girth", "hard", "high", "imperial", "in", "inf", "landing", "lasting", "left",
	"linear", "m", "marked", "meter", "metric", "mm", "ms", "nd", "none", "o'clock", "of", "off", "operator",
	"out", "over", "px", "rear", "right", "s", "screen", "shoulder", "slip", "smooth", "stop", "sways", "through",
	"to", "towards", "travel", "tripod", "tube", "turn", "type", "unscripted", "until", "up", "upstage", "ways",
	"wheel", "wire", "within", "wpm",
}

// isWordOf reports whether a word means something in the language somewhere.
func isWordOf(word string) bool {
	if specOf[word] != nil {
		return word != speechWord && word != callWord
	}
	_, found := slices.BinarySearch(otherKeywords, word)
	return found
}

// isSoft reports whether a word is a keyword only at its place in a statement.
func isSoft(word string) bool {
	_, found := slices.BinarySearch(softWords, word)
	return found
}

// isKeyword reports whether a word cannot be a name.
func isKeyword(word string) bool { return isWordOf(word) && !isSoft(word) }

// SoftWords returns the words of the language that are keywords only at their place in a
// statement, sorted. Elsewhere they can be names.
func SoftWords() []string { return slices.Clone(softWords) }

// Keywords returns all other words of the language, sorted. None of them can be a name
// without quotes.
func Keywords() []string {
	var list []string
	for _, s := range specs {
		list = append(list, s.word)
	}
	list = slices.DeleteFunc(append(list, otherKeywords...), func(w string) bool { return !isKeyword(w) })
	slices.Sort(list)
	return slices.Compact(list)
}
