// The table of statements: where each belongs, how it is written, which
// clauses it has and what parses it.

package lang

import (
	"reflect"
	"slices"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// A spec describes a statement.
type spec struct {
	word  string  // the keyword that it begins with, or that marks it
	under section // where it may stand; 0 for a header
	usage string
	wants quantity // what it takes
	// clauses are the words that clauses begin with. The formatter writes a
	// comma before each but the first, and before that one too where apart.
	clauses []string
	apart   bool
	numbers bool // a second number has a comma before it
	// declares tells that a name follows the keyword, which the statement gives
	// a meaning.
	declares bool
	parse    parseFunc
}

// A parseFunc reads one statement that ends where lex does.
type parseFunc func(lex *lexer.PeekingLexer) (Statement, error)

// Specs of statements that no keyword begins.
const (
	speechWord = ":"     // NAME: "WORDS"
	callWord   = "("     // NAME(ARGS)
	movesWord  = "moves" // NAME moves to PLACE
)

// one is the frame in which participle parses a statement of type S.
type one[S any] struct {
	Statement *S `parser:"@@"`
}

// grammars holds participle's parsers by the type of their statement. Building
// one takes longer than reading a plan, so it is done when the first such
// statement comes.
var grammars sync.Map

// grammar returns the participle parser of a statement.
func grammar[S any]() *participle.Parser[one[S]] {
	key := reflect.TypeFor[S]()
	if built, ok := grammars.Load(key); ok {
		return built.(*participle.Parser[one[S]])
	}
	built, _ := grammars.LoadOrStore(key, participle.MustBuild[one[S]](participle.Lexer(definition{})))
	return built.(*participle.Parser[one[S]])
}

// A statementOf is a pointer to a type of statement.
type statementOf[S any] interface {
	*S
	Statement
}

// byTags reads a statement by the grammar in its struct tags.
func byTags[S any, P statementOf[S]](lex *lexer.PeekingLexer) (Statement, error) {
	tree, err := grammar[S]().ParseFromLexer(lex)
	if err != nil {
		return nil, err
	}
	return P(tree.Statement), nil
}

// byHand reads a statement that has a production written by hand. Tokens may be
// left behind it.
func byHand[S any, P interface {
	statementOf[S]
	participle.Parseable
}](lex *lexer.PeekingLexer) (Statement, error) {
	s := P(new(S))
	return s, participle.Parseable(s).Parse(lex)
}

const inScene = inShot | inMove

var specs = []*spec{
	// The file.
	{word: "plan", under: inFile, usage: `plan "TITLE"`, parse: byHand[Plan]},
	{word: "rate", under: inFile, usage: "rate 24", wants: aRate, parse: byHand[Rate]},
	{word: "units", under: inFile, usage: "units metric | imperial", parse: byTags[Units]},
	{word: "pace", under: inFile, usage: "pace 150 wpm", wants: aPace, parse: byTags[Pace]},
	{word: "use", under: inFile, usage: `use "FILE"`, parse: byHand[Use]},
	{word: "edit", under: inFile, usage: `edit "FILE" from TIMECODE`, wants: aTimecode, clauses: []string{"from"}, parse: byHand[Edit]},
	{word: "script", under: inFile, usage: `script "FILE" scene "NUMBER"`, clauses: []string{"scene"}, parse: byHand[Script]},
	{word: "let", declares: true, under: inFile, usage: "let NAME = VALUE", parse: byTags[Let]},
	{word: "tape", under: inFile, usage: "tape from sensor | lens", parse: byTags[Tape]},
	{word: "watched", under: inFile | inShot, usage: "watched on WIDTH screen from DISTANCE", wants: aDistance, parse: byHand[Watched]},
	{word: "sharp", under: inFile | inShot, usage: "sharp to 0.025 mm | 1 arcmin", wants: aSharpness, parse: byTags[Sharp]},
	{word: "land", under: inFile | inShot, usage: "land 95 %", wants: aChance, parse: byTags[Land]},
	{word: "quickest", under: inFile | inShot, usage: "quickest TIME", wants: aTime, parse: byTags[Quickest]},
	{word: "subject", declares: true, under: inFile | inShot, usage: "subject NAME at PLACE, deep LENGTH, sways LENGTH",
		clauses: []string{"deep", "sways"}, apart: true, numbers: true, parse: byHand[Subject]},
	{word: "voice", declares: true, under: inFile | inShot, usage: "voice NAME", parse: byHand[Voice]},
	{word: "with", under: inFile | inShot,
		usage:   `with camera NAME, lens "NAME", stop STOP, focal LENGTH, meter STOP, nd N, gear N, wheel LENGTH, puller NAME`,
		clauses: []string{"camera", "lens", "stop", "focal", "meter", "nd", "gear", "wheel", "puller"}, parse: byHand[With]},

	// Headers.
	{word: "camera", declares: true, usage: "camera NAME", parse: byHand[Camera]},
	{word: "lens", declares: true, usage: `lens "NAME"`, parse: byHand[Lens]},
	{word: "puller", declares: true, usage: "puller NAME", parse: byTags[Puller]},
	{word: "move", declares: true, usage: "move NAME(PARAMETER, ...)", parse: byTags[Move]},
	{word: "shot", usage: `shot ID "TITLE"`, parse: byHand[Shot]},

	// A camera.
	{word: "sensor", under: inCamera, usage: "sensor 24.89 x 18.66 mm", wants: aWidth, parse: byHand[Sensor]},
	{word: "records", under: inCamera, usage: "records 3840 px", wants: pixels, parse: byHand[Records]},
	{word: "on", under: inCamera, usage: "on tripod | dolly | shoulder | hand", parse: byHand[Support]},
	{word: "iso", under: inCamera, usage: "iso 800", wants: aNumber, parse: byHand[ISO]},
	{word: "shutter", under: inCamera, usage: "shutter 180 deg | 1/50 s", wants: aShutter, parse: byHand[Shutter]},
	{word: "monitor", under: inCamera, usage: "monitor WIDTH from DISTANCE, 1920 px", wants: aMonitor, numbers: true, parse: byTags[Monitor]},

	// A lens.
	{word: "focal", under: inLens, usage: "focal LENGTH [to LENGTH]", wants: aFocal, parse: byHand[Focal]},
	{word: "stops", under: inLens, usage: "stops STOP to STOP [at LENGTH]", wants: stopsAt, parse: byHand[Stops]},
	{word: "closest", under: inLens, usage: "closest LENGTH", wants: aLength, parse: byHand[Closest]},
	{word: "ring", under: inLens, usage: "ring ANGLE, diameter LENGTH | ring by wire | ring none",
		clauses: []string{"diameter"}, apart: true, parse: byHand[Ring]},
	{word: "turns", under: inLens, usage: "turns left | right", parse: byTags[Turns]},
	{word: "mark", under: inLens, usage: "mark LENGTH at ANGLE", parse: byHand[Mark]},
	{word: "breathing", under: inLens, usage: "breathing 2 %", wants: aShare, parse: byHand[Breathing]},
	{word: "keeps", under: inLens, usage: "keeps focus through zoom", parse: byTags[ThroughZoom]},
	{word: "loses", under: inLens, usage: "loses focus through zoom", parse: byTags[ThroughZoom]},
	{word: "pupil", under: inLens, usage: "pupil 1.2", wants: aNumber, parse: byTags[Pupil]},

	// A puller.
	{word: "takes", under: inPuller, usage: `takes "FILE"`, parse: byTags[Takes]},
	{word: "hand", under: inPuller, usage: "hand 5 bit/s", wants: bits, parse: byTags[Hand]},
	{word: "limit", under: inPuller, usage: "limit 400 deg/s", wants: aSpeed, parse: byTags[Limit]},
	{word: "grip", under: inPuller, usage: "grip ANGLE", wants: anAngle, parse: byTags[Grip]},
	{word: "spread", under: inPuller, usage: "spread LENGTH", wants: aLength, parse: byTags[Spread]},
	{word: "bias", under: inPuller, usage: "bias ANGLE", wants: anAngle, parse: byTags[Bias]},

	// A shot or a move.
	{word: "start", under: inShot, usage: "start on TARGET", parse: byHand[Start]},
	{word: "begins", under: inShot, usage: "begins at TIMECODE", wants: aTimecode, parse: byTags[Begins]},
	{word: "lasts", under: inShot, usage: "lasts TIME", wants: aTime, parse: byTags[Lasts]},
	{word: "pause", under: inScene, usage: "pause TIME", wants: aTime, parse: byHand[Pause]},
	{word: "action", under: inScene, usage: `action "WHAT", lasting TIME, on MOMENT`,
		clauses: []string{"lasting", "on", "at"}, apart: true, parse: byHand[Action]},
	{word: "cue", declares: true, under: inScene, usage: "cue NAME [on MOMENT]", clauses: []string{"on", "at"}, parse: byHand[Cue]},
	{word: "rack", under: inScene, usage: `rack to TARGET, on MOMENT, landing on MOMENT, over TIME, smooth | even, because "WHY"`,
		clauses: []string{"on", "at", "landing", "over", "smooth", "even", "because"}, apart: true, parse: byHand[Rack]},
	{word: "hold", under: inScene, usage: "hold TIME", wants: aTime, parse: byHand[Hold]},
	{word: "follow", under: inScene, usage: "follow NAME [until MOMENT]", clauses: []string{"until"}, parse: byHand[Follow]},
	{word: "dolly", under: inScene, usage: "dolly in | out LENGTH over TIME, on MOMENT, smooth | even",
		clauses: []string{"over", "on", "at", "smooth", "even"}, parse: byHand[Dolly]},
	{word: "zoom", under: inScene, usage: "zoom to LENGTH over TIME, on MOMENT, smooth | even",
		clauses: []string{"over", "on", "at", "smooth", "even"}, parse: byHand[Zoom]},
	{word: movesWord, under: inScene, usage: "NAME moves to PLACE over TIME, on MOMENT, smooth | even",
		clauses: []string{"over", "on", "at", "smooth", "even"}, numbers: true, parse: byHand[Moves]},
	{word: speechWord, under: inScene, usage: `NAME: "WORDS", on MOMENT, lasting TIME | from TIME to TIME`,
		clauses: []string{"on", "at", "lasting", "from"}, apart: true, parse: byHand[Speech]},
	{word: callWord, under: inScene, usage: "NAME(ARGUMENT, ...)", parse: byHand[Call]},
}

// specOf finds a statement by its word. It holds the other keywords too, with
// nil.
var specOf = func() map[string]*spec {
	m := make(map[string]*spec, len(specs)+len(otherKeywords))
	for _, w := range otherKeywords {
		m[w] = nil
	}
	for _, s := range specs {
		m[s.word] = s
	}
	return m
}()

// Usage returns the one line that shows how a statement is written, or "" for
// a word that marks none. The speech line goes by ":", the use of a move by "(".
func Usage(keyword string) string {
	if s := specOf[keyword]; s != nil {
		return s.usage
	}
	return ""
}

// otherKeywords are the words with a meaning of their own inside statements.
var otherKeywords = []string{
	"and", "arcmin", "at", "because", "bit", "by", "cm", "deep", "deg", "df", "diagonal", "diameter",
	"end", "even", "focus", "fr", "from", "ft", "gear", "imperial", "in", "inf", "landing", "lasting",
	"left", "m", "meter", "metric", "mm", "ms", "nd", "none", "of", "out", "over", "px", "right", "s",
	"scene", "screen", "shoulder", "smooth", "stop", "sways", "through", "to", "tripod", "turn", "until",
	"wheel", "wire", "wpm",
}

// isKeyword reports whether a word cannot be a name.
func isKeyword(word string) bool {
	_, found := specOf[word]
	return found && word != speechWord && word != callWord
}

// Keywords returns the words of the language, sorted. None of them can be a
// name without quotes.
func Keywords() []string {
	list := make([]string, 0, len(specOf))
	for w := range specOf {
		if isKeyword(w) {
			list = append(list, w)
		}
	}
	slices.Sort(list)
	return list
}
