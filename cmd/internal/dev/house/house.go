package house

import (
	"slices"
	"strings"
)

// module is the name of this module.
const module = "pullscore"

// A room is a package, with those below it that have no row of their own, and
// what it may import besides the standard library and itself. A path stands for
// itself and all below it; one that ends in "$" for itself alone.
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

// rooms are the rooms of the house, from leaf to root: a row may import only
// rows above it. A package belongs to the row whose path is the longest that it
// lies in. Data goes one way: text, statements, plan, findings, drawings.
var rooms = slices.Concat(textRooms, paperRooms)

// textRooms are the rows of what a plan is made of, up to the plan itself.
var textRooms = []room{
	{"optics", []string{gonum}},
	{"lang/timecode", nil},
	{"lang/testing/cases", []string{rapid}},
	{"lang/testing/chunk", nil},
	{"lang/testing/cputime", nil},
	{"lang/testing/samples", nil},
	{"lang/rule", nil},
	{"lang", []string{participle, text}},
	{"lang/lines", []string{"lang$", text}},
	{"lang/fountain", []string{"lang$", "lang/lines"}},
	{"lang/fdx", []string{"lang$", "lang/lines", "lang/fountain"}},
	{"lang/screenplay", []string{"lang$", "lang/lines", "lang/fountain", "lang/fdx"}},
	{"lang/captions", []string{"lang$", "lang/lines"}},
	{"lang/edl", []string{"lang$", "lang/lines", "lang/timecode"}},
	{"lang/jsontext", nil},
	{"lang/fdl", []string{"lang$", "lang/lines", "lang/jsontext"}},
	{"lang/opentrackio", []string{"lang$", "lang/jsontext"}},
	{"lang/ale", []string{"lang$", "lang/lines", "lang/timecode"}},
	{"lang/otio", []string{"lang$", "lang/lines", "lang/jsontext", "lang/timecode"}},
	{"interp/testing/edits", []string{"lang/edl", "lang/timecode"}},
	{"interp/units", nil},
	{"interp/hand", nil},
	{"interp/format", nil},
	{"interp/viewer", nil},
	{"interp/units", nil},
	{"interp/speech", []string{text}},
	{"interp/wording", []string{"interp/speech"}},
	{"interp/subtitle", []string{"lang/captions", text}},
	{"interp/plan/figure", nil},
	{"interp/plan/record", []string{"lang/timecode", "interp/plan/figure"}},
	{"interp/plan/motion", []string{"interp/hand"}},
	{"interp/plan/lens", []string{"optics"}},
	{"interp/plan/exposure", []string{"optics$"}},
	{"interp/plan", []string{"lang/timecode", "optics", "interp/hand", "interp/plan/figure", "interp/plan/record", "interp/plan/motion", "interp/plan/lens", "interp/plan/exposure"}},
	{"interp/testing/staged", []string{"lang/timecode", "interp/plan", "interp/viewer"}},
	{"interp/moments", []string{"interp/plan", "interp/hand", "interp/units"}},
	{"interp/story", []string{"interp/plan", "interp/units"}},
	{"interp/holds", []string{"interp/hand", "interp/plan", "interp/moments", "interp/units"}},
	{"interp/staging", []string{"interp/plan"}},
	{"interp/coverage", []string{"interp/plan", "interp/staging", "interp/speech", "interp/viewer", "interp/wording"}},
	{"interp/stops", []string{"optics$", "interp/plan", "interp/units"}},
	{"interp/takes", []string{"lang$", "lang/lines", "lang/timecode", "lang/opentrackio", "interp/plan", "interp/hand", gonum, "interp/units"}},
	{"interp/edit", []string{"lang$", "lang/lines", "lang/captions", "lang/edl", "lang/otio", "lang/ale", "lang/timecode", "interp/speech", "interp/subtitle", "interp/wording", text}},
	{"interp/unplanned", []string{"lang$", "lang/ale", "lang/lines", "lang/captions", "lang/timecode", "interp/plan", "interp/speech", "interp/subtitle", "interp/takes/recorded", "interp/edit"}},
	{"interp/revision", []string{"lang/fountain", "interp/plan", "interp/speech", "interp/wording"}},
	{"interp/names", []string{"lang$", "lang/timecode"}},
	{"interp/load", []string{"lang$", "lang/lines", "interp/names", "interp/units"}},
	{"interp/kit", []string{"lang$", "lang/timecode", "optics", "interp/format", "interp/names", "interp/plan", "interp/hand", "interp/viewer", "interp/units"}},
	{"interp/change", []string{"lang$", "interp/names", "interp/units"}},
	{"interp/stage", []string{"lang$", "optics$", "interp/names", "interp/change", "interp/plan", "interp/hand", "interp/units"}},
	{"interp/cut", []string{"lang$", "lang/timecode", "interp/edit", "interp/plan", "interp/speech", "interp/wording"}},
	{"interp/clock/spoken", []string{"lang$", "interp/names", "interp/cut", "interp/speech", "interp/plan"}},
	{"interp/clock", []string{"lang$", "interp/names", "interp/clock/spoken", "interp/stage", "interp/cut", "interp/kit", "interp/change", "interp/speech", "interp/plan", "interp/units"}},
	{"interp/away", []string{"interp/clock", "interp/cut"}},
	{"interp/scene", []string{"lang$", "lang/timecode", "interp/names", "interp/change", "interp/stage", "interp/cut", "interp/clock$", "interp/away", "interp/plan", "interp/speech", "interp/units"}},
	{"interp/film", []string{
		"lang$", "lang/timecode", "interp/load", "interp/names", "interp/kit", "interp/cut", "interp/edit", "interp/takes$", "interp/takes/fit", "interp/scene",
		"interp/speech", "interp/wording", "interp/hand", "interp/viewer", "interp/plan", "interp/units",
	}},
	{"interp/rewrite", []string{"lang$", "interp/names", "interp/change", "interp/film", "interp/units"}},
	{"interp/setup", []string{
		"lang$", "optics", "interp/names", "interp/kit", "interp/change", "interp/film", "interp/rewrite", "interp/hand", "interp/viewer", "interp/plan", "interp/units",
	}},
	{"interp/shot/built", []string{
		"lang$", "optics", "interp/names", "interp/kit", "interp/stage", "interp/cut", "interp/clock", "interp/away",
		"interp/setup", "interp/hand", "interp/holds", "interp/viewer", "interp/plan", "interp/units",
	}},
	{"interp/shot", []string{
		"lang$", "lang/timecode", "interp/names", "interp/kit", "interp/change", "interp/stage", "interp/cut", "interp/clock", "interp/away", "interp/scene", "interp/film", "interp/rewrite",
		"interp/setup", "interp/shot/built", "interp/plan", "interp/units",
	}},
	{"interp/lenses", []string{"optics", "interp/kit", "interp/plan", "interp/units"}},
	{"interp/checks/covered", []string{"lang$", "lang/rule", "interp/coverage", "interp/plan", "interp/units", "interp/viewer"}},
	{"interp/checks/check", []string{"lang$", "lang/rule", "interp/change", "interp/clock", "interp/shot", "interp/stops", "interp/units"}},
	{"interp/checks/edited", []string{"lang$", "lang/rule", "interp/change", "interp/cut", "interp/plan", "interp/speech", "interp/shot", "interp/checks/check", "interp/units"}},
	{"interp/checks/glass", []string{"lang$", "lang/rule", "optics", "interp/change", "interp/stage", "interp/shot", "interp/checks/check", "interp/units"}},
	{"interp/checks/rig", []string{"lang$", "lang/rule", "optics$", "interp/change", "interp/kit", "interp/names", "interp/plan", "interp/staging", "interp/stage", "interp/shot", "interp/checks/check", "interp/units"}},
	{"interp/checks/setups", []string{"lang$", "optics$", "interp/plan", "interp/staging", "interp/units"}},
	{"interp/checks", []string{
		"lang$", "lang/rule", "optics$", "interp/change", "interp/stage", "interp/clock", "interp/shot",
		"interp/checks/check", "interp/checks/edited", "interp/checks/glass", "interp/checks/rig", "interp/plan", "interp/hand", "interp/viewer", "interp/stops", "interp/moments", "interp/units",
	}},
	{"interp/cures", []string{"lang$", "lang/rule", "interp/units", "interp/change", "interp/checks", "interp/shot", "interp/plan"}},
	{"interp/mention", []string{"lang$", "interp/names", "interp/change", "interp/film", "interp/shot", "interp/speech"}},
	{"interp", []string{
		"lang$", "lang/lines", "lang/fountain", "lang/screenplay", "interp/load", "interp/names", "interp/mention", "interp/change", "interp/clock", "interp/scene", "interp/film", "interp/rewrite", "interp/setup", "interp/shot", "interp/staging",
		"interp/checks", "interp/checks/covered", "interp/checks/setups", "interp/cures", "interp/lenses", "interp/moments", "interp/revision", "interp/stops", "interp/units", "interp/wording", "interp/plan",
	}},
}

// never holds what a room may not reach even by way of others.
var never = map[string]string{"optics": "interp"}

// topLevel is what lies at the top of the repository besides dot files.
var topLevel = []string{
	"lang", "interp", "optics", "render", "cmd", "examples", "testdata",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md",
}

// roomOf returns the number of the room that a package of this module lies in;
// ok is false for one that lies in none.
func roomOf(pkg string) (number int, ok bool) {
	longest := ""
	for i, r := range rooms {
		if within(pkg, module+"/"+r.path) && len(r.path) > len(longest) {
			number, ok, longest = i, true, r.path
		}
	}
	return number, ok
}

// within reports whether a package is another or lies below it.
func within(pkg, other string) bool {
	return pkg == other || strings.HasPrefix(pkg, other+"/")
}

// allows reports whether a package of the room may import another.
func (r room) allows(pkg string) bool {
	if standard(pkg) {
		return true
	}
	if n, ok := roomOf(pkg); ok && rooms[n].path == r.path {
		return true
	}
	return slices.ContainsFunc(r.may, func(may string) bool { return covers(may, pkg) })
}

// covers reports whether an entry of a row stands for a package.
func covers(may, pkg string) bool {
	if own, ok := strings.CutPrefix(pkg, module+"/"); ok {
		pkg = own
	}
	if alone, ok := strings.CutSuffix(may, "$"); ok {
		return pkg == alone
	}
	return within(pkg, may)
}

// standard reports whether a package is of the standard library: the first
// part of its path has no dot, and it is none of ours.
func standard(pkg string) bool {
	first, _, _ := strings.Cut(pkg, "/")
	return first != module && !strings.Contains(first, ".")
}
