package house

// Libraries of single rooms.
const (
	kong     = "github.com/alecthomas/kong"
	godiff   = "github.com/rogpeppe/go-internal/diff"
	fsnotify = "github.com/fsnotify/fsnotify"
	chromedp = "github.com/chromedp/chromedp"
	term     = "golang.org/x/term"
	rapid    = "pgregory.net/rapid"
	qr       = "rsc.io/qr"
)

// paperRooms are the rows of what is made of a plan: papers, and the command.
var paperRooms = []room{
	{"render/draw", nil},
	{"render/draw/genwidths", []string{image}},
	{"render/fonts", []string{"render/draw$", image}},
	{"render/testing/fonttest", nil},
	{"render/svg", []string{"render/draw$", svgo}},
	{"render/pdf", []string{"render/draw$", "render/fonts", fpdf, image}},
	{"render/png", []string{"render/draw$", "render/fonts", rasterx, image}},
	{"render/signs", []string{"render/draw$"}},
	{"render/testing/drawtest", []string{"interp/plan", "render/draw$", "render/signs"}},
	{"render/testing/plans", []string{"optics/ring", "lang/testing/chunk", "interp/plan", "render/draw$", "render/svg", "render/testing/drawtest", rapid}},
	{"render/sheet", []string{"interp/plan", "interp/moments", "interp/units", "render/draw$", "render/signs"}},
	{"render/marks", []string{"interp/plan", "interp/units", "render/draw$", "render/sheet"}},
	{"render/score/times", []string{"interp/plan", "render/sheet"}},
	{"render/score/table", []string{"render/draw$", "render/sheet"}},
	{"render/score/words", []string{"render/draw$", "render/sheet"}},
	{"render/score/gutter", []string{"render/draw$", "render/signs", "render/sheet"}},
	{"render/score/bands", []string{"interp/plan", "interp/units", "render/draw$", "render/signs", "render/sheet", "render/score/gutter", "render/score/times"}},
	{"render/score/hand", []string{"interp/plan", "render/draw$", "render/signs", "render/sheet", "render/score/gutter", "render/score/bands"}},
	{"render/score/lines", []string{"interp/plan", "render/draw$", "render/signs", "render/sheet", "render/score/words", "render/score/bands", "render/score/hand"}},
	{"render/score/overview", []string{"interp/plan", "interp/units", "render/draw$", "render/signs", "render/sheet", "render/score/bands"}},
	{"render/score/lanes", []string{"interp/plan", "render/draw$", "render/sheet", "render/score/gutter", "render/score/bands"}},
	{"render/score", []string{"interp/plan", "interp/units", "interp/moments", "render/draw$", "render/signs", "render/sheet", "render/score/bands", "render/score/hand", "render/score/lines", "render/score/lanes", "render/score/overview", "render/score/table", "render/score/times"}},
	{"render/difference", []string{"interp/plan", "interp/units", "render/draw$", "render/signs", "render/sheet", "render/score/gutter", "render/score/bands", "render/score/hand", "render/score/lines", "render/score/lanes", "render/score/table"}},
	{"render/floor/seek", []string{"render/draw$", "render/sheet", "render/signs"}},
	{"render/floor/layout", []string{"optics$", "interp/plan", "interp/units", "interp/moments", "render/sheet"}},
	{"render/floor/staged", []string{"interp/plan", "interp/moments", "interp/units", "render/floor/seek", "render/draw$", "render/sheet", "render/signs"}},
	{"render/floor", []string{"interp/plan", "interp/units", "render/floor/layout", "render/floor/seek", "render/draw$", "render/sheet", "render/signs"}},
	{"render/ring/beside", nil},
	{"render/ring/page", []string{"interp/plan", "render/draw$", "render/sheet", "render/signs"}},
	{"render/ring", []string{"interp/plan", "interp/units", "interp/moments", "render/draw$", "render/sheet", "render/signs", "render/marks", "render/ring/page", "render/ring/beside"}},
	{"render/cards", []string{"interp/plan", "interp/units", "interp/moments", "render/draw$", "render/sheet", "render/signs"}},
	{"render/lens", []string{"interp/units", "render/draw$", "render/sheet"}},
	{"render/stops", []string{"interp/plan", "interp/units", "interp/moments", "interp/stops", "render/draw$", "render/sheet", "render/signs"}},
	{"render/coverage", []string{"interp/coverage", "interp/moments", "interp/plan", "interp/units", "render/draw$", "render/sheet", "render/signs"}},
	{"render/story", []string{"interp/story", "interp/units", "render/draw$", "render/sheet", "render/signs"}},
	{"render/takes", []string{"interp/takes$", "interp/takes/predicted", "render/draw$", "render/sheet", "render/signs"}},
	{"render/brief", []string{"interp/plan", "interp/units", "interp/moments", "render/draw$", "render/sheet", "render/marks", "render/score", "render/floor$", "render/floor/staged", "render/ring", "render/cards"}},
	{"render/html", []string{"interp/plan", "interp/moments", "render/draw$", "render/sheet", "render/cards", "render/brief", "render/svg"}},
	{"examples/topics", []string{"lang/lines"}},
	{"examples", nil},

	{"cmd/internal/testing/film", nil},
	{"cmd/internal/testing/savestyle", nil},
	{"cmd/internal/console", []string{term, text}},
	{"cmd/internal/files", []string{"lang$"}},
	{"cmd/internal/completion", []string{"cmd/internal/files", kong}},
	{"cmd/internal/findings", []string{"lang$", "lang/rule", "interp/plan", "cmd/internal/console"}},
	{"cmd/internal/lists/scenes", []string{"interp/plan", "interp/units", "interp/moments", "cmd/internal/console"}},
	{"cmd/internal/lists", []string{"cmd/internal/lists/scenes", "lang$", "interp/coverage", "interp/story", "interp/plan", "interp/units", "interp/moments", "interp/lenses", "interp/stops", "interp/takes$", "interp/takes/predicted", "interp/takes/recorded", "interp/takes/used", "interp/unplanned", "cmd/internal/console", "cmd/internal/findings"}},
	{"cmd/internal/diff", []string{"lang$", "lang/lines", "lang/rule", "interp/plan", "interp/units", "interp/coverage", "interp/moments", "cmd/internal/console", "cmd/internal/findings", "cmd/internal/lists"}},
	{"cmd/internal/states", []string{"interp$", "cmd/internal/diff", "cmd/internal/files"}},
	{"cmd/internal/export", []string{"lang/timecode", "lang/edl", "lang/otio", "interp/plan", "interp/takes/used", "interp/unplanned", "interp/moments", "interp/units", text}},
	{"cmd/internal/foreign", []string{"lang$", "lang/lines", "lang/jsontext", "lang/opentrackio", "lang/fdl", "optics", "interp$", "interp/units"}},
	{"cmd/internal/script", []string{"lang$", "lang/lines", "lang/fountain", "interp/speech"}},
	{"cmd/internal/watch", []string{"cmd/internal/files", fsnotify}},
	{"cmd/internal/rebuild", []string{
		"lang$", "interp$", "interp/plan", "render/draw$", "render/sheet", "render/score", "render/svg",
		"cmd/internal/diff", "cmd/internal/files", "cmd/internal/watch",
	}},
	{"cmd/internal/preview/sampled", []string{"interp/plan"}},
	{"cmd/internal/preview", []string{"cmd/internal/preview/sampled", "optics$", "lang$", "interp/plan", "interp/units", "interp/moments", "interp/takes$", "interp/viewer", "render/draw$", "render/sheet", "render/score$", "render/score/times", "render/svg", "cmd/internal/findings", "cmd/internal/rebuild", image}},
	{"cmd/internal/live", []string{"cmd/internal/rebuild", "cmd/internal/preview"}},
	{"cmd/internal/lsp", nil},
	{"cmd/internal/editor", []string{"lang$", "interp$", "interp/coverage", "interp/mention", "interp/moments", "interp/names", "interp/plan", "interp/speech", "interp/stops", "interp/units", "cmd/internal/files", "cmd/internal/lsp"}},
	{"cmd/editors", nil},
	{"cmd/internal/dev/house", nil},
	{"cmd/internal/dev/speed", []string{"cmd/internal/testing/film"}},
	{"cmd/internal/dev/editspeed", []string{"cmd/internal/testing/film", "cmd/internal/lsp"}},
	{"cmd/internal/dev/savespeed", []string{"interp$", "render/sheet", "render/score", "cmd/internal/testing/savestyle", chromedp, fsnotify}},
	{"cmd/pullscore", []string{
		"examples/topics", "interp/coverage", "interp/story", "render/coverage", "render/story",
		"lang$", "lang/rule", "lang/lines", "lang/timecode", "lang/fountain", "lang/screenplay", "interp$", "interp/plan", "interp/moments", "interp/units", "interp/lenses", "interp/stops", "interp/takes$", "interp/takes/predicted", "interp/takes/recorded", "interp/takes/used", "interp/unplanned", "interp/edit",
		"render/draw$", "render/sheet", "render/score$", "render/difference", "render/floor$", "render/floor/staged", "render/ring", "render/cards", "render/lens", "render/stops", "render/takes", "render/brief", "render/html", "render/fonts", "render/svg", "render/pdf", "render/png",
		"cmd/internal/console", "cmd/internal/files", "cmd/internal/completion", "cmd/internal/findings", "cmd/internal/lists", "cmd/internal/diff", "cmd/internal/states",
		"cmd/internal/export", "cmd/internal/script", "cmd/internal/foreign", "cmd/internal/watch", "cmd/internal/rebuild", "cmd/internal/preview", "cmd/internal/live", "cmd/internal/lsp", "cmd/internal/editor", kong, godiff, qr,
	}},
}
