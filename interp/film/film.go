// The film: what holds for all shots of a plan.

package film

import (
	"pullscore/interp/cut"
	"pullscore/interp/edit"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/scene"
	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Film is what all shots of a plan have in common. Read makes it, and nobody
// writes to it after: any number of shots may be built from it at a time.
type Film struct {
	Source   func(file string) []byte
	Scope    *names.Scope
	Sections []*lang.Section // of all files
	Lost     bool            // a used file could not be read: what it declares is missing, which has been told

	Title    string
	Units    string // metric or imperial
	OwnUnits bool   // nobody says units: each lens is told in those that it is written in
	Tape     string // sensor or lens
	Rate     timecode.Rate
	Pace     float64 // words a minute
	Crop     float64 // the shape of the picture of cameras that say none, width over height; 0 where not said
	View     kit.Viewing
	Defaults []plan.Default

	Lets    map[*names.Decl]*names.LetValue
	Cameras map[string]kit.Camera
	Lenses  map[string]kit.Lens
	Pullers map[string]kit.Puller

	People People         // who speaks or moves anywhere
	Scenes []*scene.Scene // of all files
	Shots  []Shot
	Cuts   []*cut.File // what the edit statements name
	Clips  []*edit.Log // what the clips statements name

	byID     map[string]*lang.Section       // the shots of the plan file that are read
	sceneOf  map[*lang.Section]*scene.Scene // of all shots that stand under one
	shotCuts map[*lang.Section]*cut.Shot
	words    map[*lang.Text][]speech.Token
}

// A Shot is a section of the plan file that is a shot. One whose header could not
// be read has no ID.
type Shot struct {
	Section *lang.Section
	Read    bool
	Scene   *scene.Scene // under which it stands; nil: none
}

// CutOf returns what the cuts say of a shot; nil where the film follows none.
func (f *Film) CutOf(sec *lang.Section) *cut.Shot { return f.shotCuts[sec] }

// Subtitles returns a name for the subtitles that the film has, those of its
// first such file; "" for none.
func (f *Film) Subtitles() string {
	for _, c := range f.Cuts {
		if !c.IsList {
			return c.Base()
		}
	}
	return ""
}

// Tokens returns a text of a spoken line as words: split once, since a shot is
// built anew for every cure that is tried. A text that a move fills in is split at each of its uses.
func (f *Film) Tokens(t *lang.Text) []speech.Token {
	tokens, ok := f.words[t]
	if !ok && t != nil {
		return speech.Split(t.Value)
	}
	return tokens
}
