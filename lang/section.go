// Which statement belongs where.

package lang

// A section is a set of the places where a statement may stand.
type section uint8

const (
	inFile section = 1 << iota
	inCamera
	inLens
	inPuller
	inMove
	inShot
	inScene
)

// Statements of shots may stand in a move too, and those of the action in a scene besides.
const (
	inShots  = inShot | inMove
	inAction = inShots | inScene
)

// sectionNames are the sections' names in messages, in the order of the bits.
var sectionNames = [...]string{"the file", "a camera", "a lens", "a puller", "a move", "a shot", "a scene"}

// String names the section, or sections, as in "a shot or a move".
func (s section) String() string {
	text := ""
	for i := len(sectionNames) - 1; i >= 0; i-- {
		if s&(1<<i) == 0 {
			continue
		}
		if text != "" {
			text += " or "
		}
		text += sectionNames[i]
	}
	return text
}

// headers tells which section each header opens.
var headers = map[string]section{
	"camera": inCamera, "lens": inLens, "puller": inPuller, "move": inMove, "shot": inShot, "scene": inScene,
}

// place tells where a statement stands that may stand under the given
// sections, in the section open now: the section that it belongs to, and false
// where it belongs to none. A file statement ends a camera, lens or puller,
// but not a move, a shot or a scene.
func (open section) place(under section) (section, bool) {
	switch {
	case under&open != 0:
		return open, true
	case under&inFile != 0 && open&inAction == 0:
		return inFile, true
	}
	return open, false
}
