// Staging: what a shot has of the scene under which it stands.

package shot

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/clock"
	"pullscore/interp/cut"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/scene"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A staging is what a shot has of a scene.
type staging struct {
	scene  *scene.Scene
	part   scene.Part
	home   scene.Home
	placed bool // its camera has a place on the floor
	lost   bool // nobody knows what it has of the scene, or where its camera stands
	given  []clock.Given
}

// staging reads what the shot has of its scene; nil for one that has nothing of any.
func (b *builder) staging() *staging {
	var first, matches lang.Statement
	camera := false
	for _, s := range b.Section.Body {
		switch s.(type) {
		case *lang.Covers, *lang.PlacesAs, *lang.RunsWith, *lang.CameraAt:
			_, isCamera := s.(*lang.CameraAt)
			camera = camera || isCamera
			first = cmp.Or(first, s)
		case *lang.Matches:
			matches = cmp.Or(matches, s)
		}
	}
	sc := b.Film.SceneOf(b.Section)
	switch any := cmp.Or(first, matches); {
	case any == nil:
		return nil
	case sc == nil:
		b.unstaged = true
		if !b.Film.Scope.Lost.Any("scene") && !b.Film.Lost {
			b.Fail(any.Range(), "no-staging", "no scene stands above this shot", `The action stands above the shot, under a header: scene "TITLE".`)
		}
		return nil
	case first == nil:
		b.Fail(any.Range(), "not-staged", "`matches` needs a shot that has something of a scene", "Write what the shot covers, or camera at and its place.")
		return nil
	}
	out := &staging{scene: sc}
	var ok bool
	out.part, ok = sc.Part(b.Section, b.Film, b.To)
	out.lost = !ok
	if camera && ok {
		out.home, out.placed = sc.Home(b.Section, out.part, b.Film, b.To)
		out.lost = !out.placed
	}
	if back := b.Ch.Back; back != 0 { // along its heading
		floor := plan.Staging{Home: out.home.Pose}
		out.home.X, out.home.Y, out.home.Z = floor.OnFloor(0, -back, 0)
	}
	return out
}

// expand writes out the statements of the shot, behind those of the scene whose action it
// has.
func (b *builder) expand() []names.Item {
	own := b.lex.Expand(b.Section.Body)
	g := b.staged
	if g == nil || !g.part.Action {
		return own
	}
	g.given = g.scene.Given(g.part)
	items := g.scene.ItemsFor(b.lex)
	for i, it := range items {
		if _, walks := it.Stmt.(*lang.Moves); walks && !g.placed { // distances are the shot's own
			g.given[i] = clock.Given{Out: true}
		}
	}
	return append(items, own...)
}

// hearScene takes the times that a cut has for the action of the scene.
func (b *builder) hearScene(found *cut.Shot) {
	g := b.staged
	if found == nil || g == nil || !g.part.Action || len(found.Lines) == 0 {
		return
	}
	given, later := g.scene.Heard(b.lex, g.part, found, b.epochIn(found))
	for k := range given {
		if g.given[k].Out {
			given[k] = g.given[k] // as a walk is in a shot whose camera has no place
		}
	}
	g.given = given
	g.part.From -= later
	if b.Shot.Staging != nil {
		b.Shot.Covers[0] = plan.Number(g.part.From)
	}
}

// ground returns how the scene lies under the stage of the shot; nil for none.
func (b *builder) ground() *stage.Ground {
	g := b.staged
	if g == nil {
		return nil
	}
	out := &stage.Ground{Home: g.home.Pose, Placed: g.placed, Lost: g.lost, Named: b.named()}
	if !g.placed {
		out.Named = nil
	}
	if !g.part.Action {
		out.First = func(name string) (s stage.FloorSite, ok bool) { return g.scene.StandsAt(name, g.part.From) }
	}
	return out
}

// named returns a function that reports whether the shot names somebody.
func (b *builder) named() func(string) bool {
	var text strings.Builder
	for _, it := range b.Items[min(len(b.staged.given), len(b.Items)):] {
		if it.Stmt != nil {
			text.WriteString(names.SourceText(b.lex.Source(it.Stmt.Range().File), it.Stmt.Range()) + "\n")
		}
	}
	for _, s := range b.Section.Body {
		text.WriteString(names.SourceText(b.lex.Source(s.Range().File), s.Range()) + "\n")
	}
	all := text.String()
	return func(name string) bool { return holdsWord(all, name) }
}

// holdsWord reports whether a text holds a name, and not only as a part of a word.
func holdsWord(text, name string) bool {
	for rest := text; ; {
		i := strings.Index(rest, name)
		if i < 0 {
			return false
		}
		before, _ := utf8.DecodeLastRuneInString(rest[:i])
		after, _ := utf8.DecodeRuneInString(rest[i+len(name):])
		if !inWord(before) && !inWord(after) {
			return true
		}
		rest = rest[i+len(name):]
	}
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }

// fillStaging writes what the shot has of its scene into it.
func (b *builder) fillStaging() {
	g := b.staged
	if g == nil {
		return
	}
	sh := b.Shot
	out := &plan.Staging{
		Scene: names.ValueOf(g.scene.Head.Title), Covers: plan.Interval{plan.Number(g.part.From), plan.Number(g.part.To)},
		RunsWith: g.part.RunsWith, Action: g.part.Action, Placed: g.placed, Home: g.home.Pose,
		Aspect: plan.Number(sh.Optics.PictureW() / sh.Optics.SensorH),
	}
	for i, s := range b.Film.Scenes {
		if s == g.scene {
			out.Of = i
		}
	}
	if r, ok := b.Settings["runs"].(*lang.RunsWith); ok {
		out.Runner = r.Pos.Line
	}
	if m, ok := b.Settings["matches"].(*lang.Matches); ok {
		out.Matcher, out.Matches = m.Pos.Line, b.matched(m)
	}
	if c := g.home.Stmt; c != nil {
		out.Placer, out.Because = c.Pos.Line, names.ValueOf(c.Because)
	}
	sh.Staging = out
	if b.Shot.BeginsAt == "" && g.part.RunsWith != "" {
		b.beginsWith(g.part.RunsWith)
	}
}

// matched returns the shot that this one is meant to match; "" where there is none.
func (b *builder) matched(m *lang.Matches) string {
	circle, tell := scene.InCircle(b.Section, b.Film, func(sec *lang.Section) *lang.ShotRef {
		for _, s := range sec.Body {
			if m, ok := s.(*lang.Matches); ok {
				return m.Shot
			}
		}
		return nil
	})
	if tell {
		b.Fail(m.Shot.Range(), "circle", "these shots match one another", "Say it in one of them: it holds for both.")
	}
	if _, ok := b.staged.scene.Shot(m.Shot, b.Film, b.To); !ok || circle {
		return ""
	}
	return m.Shot.ID
}

// beginsWith takes the timecode at which another shot begins that runs with this one.
func (b *builder) beginsWith(id string) {
	other := b.Film.ShotOf(id)
	if other == nil {
		return
	}
	for _, s := range other.Body {
		if s, ok := s.(*lang.Begins); ok {
			in := b.lex.Tells(&names.Report{})
			if n, ok := in.Want(s.At, names.DimTimecode); ok {
				b.Shot.Begins, b.Epoch = int64(n), int64(n)
				b.Shot.BeginsAt = b.Speed.Rate.Format(int64(n))
			}
		}
	}
}

// sayFloor lists the heights that stand in for those that no line says.
func (b *builder) sayFloor() {
	g := b.staged
	if g == nil || !g.placed {
		return
	}
	style := units.Style{System: units.Metric}
	if b.Shot.Imperial {
		style.System = units.Imperial
	}
	if g.home.Assumed {
		b.byDefault("camera", style.Tape(stage.LensHeight)+" high", "no line says how high it stands")
	}
	var eyes, level []string
	for _, u := range b.Stage.Order {
		switch {
		case !u.OnFloor:
		case u.Level:
			level = append(level, u.Name)
		case b.Stage.HasEyes(u) && !u.EyesSaid:
			eyes = append(eyes, u.Name)
		}
	}
	if len(eyes) > 0 {
		b.byDefault("eyes", style.Tape(stage.Eyes), "no line says how high those of "+listed(eyes)+" are")
	}
	if len(level) > 0 {
		b.byDefault("height", "level with the lens as the shot starts", "no line says that of "+listed(level))
	}
}

// listed writes the first of some names, and how many others there are.
func listed(list []string) string {
	if n := len(list) - 1; n > 0 {
		return list[0] + " and " + units.Count(n, "other")
	}
	return list[0]
}
