// Package house holds the order of the house: which package may import which,
// and what may lie at the top level. Its tests read the source and fail on
// whatever the table does not have.
package house

import "strings"

// module is the name of this module.
const module = "pullscore"

// A room is a package, with those below it, and what it may import besides the
// standard library and itself. A path stands for itself and all below it; one
// that ends in "$" for itself alone.
type room struct {
	path string
	may  []string
}

const (
	gonum      = "gonum.org/v1/gonum"
	text       = "golang.org/x/text"
	image      = "golang.org/x/image"
	participle = "github.com/alecthomas/participle/v2"
	svgo       = "github.com/ajstarks/svgo"
	fpdf       = "codeberg.org/go-pdf/fpdf"
	rasterx    = "github.com/srwiley/rasterx"
)

// rooms are the rooms of the house; a package belongs to the first that it
// lies in. Data goes one way: text, statements, plan, findings, drawings.
var rooms = []room{
	{"optics", []string{gonum}},
	{"lang/timecode", nil},
	{"lang/chunk", []string{"lang$"}},
	{"lang/lines", []string{"lang$"}},
	{"lang/fountain", []string{"lang$", "lang/lines", text}},
	{"lang/captions", []string{"lang$", "lang/lines", "lang/timecode", text}},
	{"lang/edl", []string{"lang$", "lang/lines", "lang/timecode", text}},
	{"lang/otio", []string{"lang$", "lang/lines", "lang/timecode"}},
	{"lang", []string{participle, text}},
	{"interp/hand", []string{"optics", gonum}},
	{"interp/viewer", []string{"optics", gonum}},
	{"interp/speech", []string{text}},
	{"interp/plan", []string{"lang/timecode", "optics", "interp/hand"}},
	{"interp/stops", []string{"lang/timecode", "optics", "interp/plan", "interp/hand", "interp/viewer", gonum}},
	{"interp/takes", []string{"lang/timecode", "optics", "interp/plan", "interp/hand", gonum}},
	{"interp", []string{"lang", "optics", gonum, text}},
	{"render", []string{"optics", "interp/plan", "interp/stops", "interp/takes", svgo, fpdf, rasterx, image}},
	{"examples", []string{"lang", "interp", "optics", "render"}},
	{"cmd", []string{"lang", "interp", "optics", "render", "github.com", "golang.org/x"}},
}

// never holds what a room may not reach even by way of others.
var never = map[string]string{"render": "lang", "optics": "interp"}

// topLevel is what lies at the top of the repository besides dot files.
var topLevel = []string{
	"lang", "interp", "optics", "render", "cmd", "examples", "testdata",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md",
}

// roomOf returns the room that a package of this module lies in; ok is false
// for one that lies in none.
func roomOf(pkg string) (r room, ok bool) {
	for _, r := range rooms {
		if within(pkg, module+"/"+r.path) {
			return r, true
		}
	}
	return room{}, false
}

// within reports whether a package is another or lies below it.
func within(pkg, other string) bool {
	return pkg == other || strings.HasPrefix(pkg, other+"/")
}

// allows reports whether a package of the room may import another.
func (r room) allows(pkg string) bool {
	if standard(pkg) || within(pkg, module+"/"+r.path) {
		return true
	}
	for _, may := range r.may {
		if own := module + "/"; strings.HasPrefix(pkg, own) {
			pkg := strings.TrimPrefix(pkg, own)
			if alone, ok := strings.CutSuffix(may, "$"); ok && pkg == alone || !ok && within(pkg, may) {
				return true
			}
			continue
		}
		if within(pkg, may) {
			return true
		}
	}
	return false
}

// standard reports whether a package is of the standard library: the first
// part of its path has no dot, and it is none of ours.
func standard(pkg string) bool {
	first, _, _ := strings.Cut(pkg, "/")
	return first != module && !strings.Contains(first, ".")
}
