// Floors: places on the floor of a scene, as they lie on the floor of a stage.
//
// A scene says its places from a zero point, to the right and upstage. A stage has the
// floor of its camera as the shot starts (plan/rig.go), so that all that reads distances
// and sides need not know of scenes. The stage of the scene itself has no camera: its
// floor is that of the scene.

package stage

import (
	"fmt"
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// Heights that stand in for those that no line says, in metres.
const (
	Eyes       = 1.6 // of a person over the floor: near the mean of adults, DIN 33402-2, from memory
	LensHeight = 1.5 // of a camera over the floor. Common practice, no source.
)

// Limits of places on a floor, in metres.
const (
	mostWay             = 1000
	lowest, highest     = -10, 100
	leastEyes, mostEyes = 0.2, 3
)

// nowhereToGo is so short that no way leads along it, metres.
const nowhereToGo = 1e-9

// mostMarks is how many marks deep a place may hang on marks.
const mostMarks = 12

// A Ground says how the floor of a scene lies under a stage.
type Ground struct {
	Home   plan.Pose // the camera as the shot starts, on the floor of the scene; zero for the scene itself
	Placed bool      // it has such a place: else nobody knows where people are to the camera
	Scene  bool      // the stage is that of the scene itself
	Lost   bool      // where the camera stands is not known, or what it shoots, which has been told

	// First returns where somebody stands at first on the floor of the scene who moves in
	// it; ok is false for anybody else. It is nil where the shot has the moves themselves.
	First func(name string) (s FloorSite, ok bool)

	// Named reports whether the shot names a subject of the film: others are not there.
	Named func(name string) bool
}

// A FloorSite is where somebody is on the floor of a scene, in metres: to the right,
// upstage and up.
type FloorSite struct{ Right, Upstage, Ground, High float64 }

// A site is where something is on the floor of a stage, in metres.
type site struct {
	x, y   float64
	ground float64 // height of what it stands on
	focus  float64 // height of its focus point
	level  bool    // no line says that height: it is level with the lens
}

// A ground is what a place on the floor comes to.
type ground struct {
	base   *Subject // whom it goes by; nil: a mark, or the zero point
	from   site     // of the base
	dx, dy float64
	says   string // of the height: "up", "high" or ""
	height float64
}

// finder finds where a subject is.
type finder func(u *Subject) (site, bool)

// on returns where a point of the scene's floor is on that of the stage.
func (st *Stage) on(right, upstage, high float64) (x, y, z float64) {
	g := plan.Staging{Home: st.ground.Home}
	return g.FromFloor(right, upstage, high)
}

// turned returns a way on the scene's floor as one on that of the stage.
func (st *Stage) turned(right, upstage float64) (x, y float64) {
	sin, cos := math.Sincos(st.ground.Home.Pan * math.Pi / 180)
	return right*cos - upstage*sin, right*sin + upstage*cos
}

// floor resolves a place on the floor. It looks at all of it, whatever is wrong with a
// part.
func (st *Stage) floor(f *lang.Floor, in names.Reader, find finder) (g ground, ok bool) {
	if f == nil {
		return g, false
	}
	ok = true
	g.from.x, g.from.y, g.from.ground = st.on(0, 0, 0)
	g.from.focus, g.from.level = g.from.ground, true
	if f.Base != nil {
		g.base, g.from, ok = st.base(f.Base, in, find)
	}
	for _, w := range f.Ways {
		ok = st.way(&g, w, in, find) && ok
	}
	return g, ok
}

// base resolves the mark or the subject that a place goes by.
func (st *Stage) base(n *lang.Name, in names.Reader, find finder) (u *Subject, s site, ok bool) {
	d, ok := in.Who(n, names.DeclMark, names.DeclSubject)
	switch {
	case !ok:
		return nil, s, false
	case d.Kind == names.DeclMark:
		s, ok = st.mark(d)
		return nil, s, ok
	}
	u = st.Subjects[d.Name.Text]
	switch {
	case u == nil:
		return nil, s, false
	case u.byTape:
		in.Fail(n.Range(), "circle", fmt.Sprintf("%s stands where the tape from this camera finds it", u.Name), "Give one of them a place on the floor.")
		return nil, s, false
	}
	s, ok = find(u)
	return u, s, ok
}

// way adds one way to a place.
func (st *Stage) way(g *ground, w *lang.Way, in names.Reader, find finder) (ok bool) {
	least, most, says := 0.0, float64(mostWay), "a way on the floor is 0 to 1000 m long"
	if w.Dir == "high" {
		least, most, says = lowest, highest, "a height is -10 to 100 m"
	}
	by, ok := in.Within(w.By, names.DimLength, least, most, says)
	right, upstage := 0.0, 0.0
	switch w.Dir {
	case "left":
		right = -by
	case "right":
		right = by
	case "upstage":
		upstage = by
	case "downstage":
		upstage = -by
	case "towards":
		_, to, okTo := st.base(w.Towards, in, find)
		dx, dy := to.x-g.from.x, to.y-g.from.y
		far := math.Hypot(dx, dy)
		switch {
		case !ok || !okTo:
			return false
		case far < nowhereToGo:
			in.Fail(w.Range(), "out-of-range", fmt.Sprintf("%s is there: no way leads towards it", w.Towards.Text), "")
			return false
		}
		g.dx, g.dy = g.dx+dx/far*by, g.dy+dy/far*by
		return true
	case "up", "high":
		g.says, g.height = w.Dir, by
	case "down":
		g.says, g.height = "up", -by
	}
	dx, dy := st.turned(right, upstage)
	g.dx, g.dy = g.dx+dx, g.dy+dy
	return ok
}

// stands returns how high what stands at a place is over the floor of the stage.
func (st *Stage) stands(g *ground) float64 {
	switch g.says {
	case "up":
		return g.from.focus + g.height
	case "high":
		return g.height - st.ground.Home.Z
	}
	return g.from.ground
}

// lies returns how high the focus point of a thing at a place is; level tells that no
// line says it.
func (st *Stage) lies(g *ground) (z float64, level bool) {
	switch {
	case g.says == "high":
		return g.height - st.ground.Home.Z, false
	case g.says == "up":
		return g.from.focus + g.height, g.from.level && g.base != nil
	case g.from.level:
		return 0, true
	}
	return g.from.focus, false
}

// highEnough reports whether a height, in metres over the floor of the stage, is one that
// a place may have.
func (st *Stage) highEnough(f *lang.Floor, z float64, in names.Reader) bool {
	if z += st.ground.Home.Z; z >= lowest-1e-9 && z <= highest+1e-9 {
		return true
	}
	in.Fail(f.Range(), "out-of-range", "a height is -10 to 100 m, and this comes to "+st.style.Tape(z), "")
	return false
}

// mark returns where a mark is. It hangs on where people are as the action starts.
func (st *Stage) mark(d *names.Decl) (s site, ok bool) {
	if m, ok := st.marks[d]; ok {
		if m.busy {
			st.failMark(d, "circle", fmt.Sprintf("%s stands relative to itself", d.Name.Text), "Give one of them a place of its own.")
		}
		return m.site, m.ok && !m.busy
	}
	stmt, ok := d.Stmt.(*lang.FloorMark)
	if !ok {
		return s, false // it could not be read
	}
	m := &marked{busy: true}
	st.marks[d] = m
	if len(st.asked) >= mostMarks {
		st.failMark(d, "nested-too-deep", fmt.Sprintf("places on the floor hang on places more than %d deep", mostMarks), "Give one of them a place of its own.")
		m.busy = false
		return s, false
	}
	st.asked = append(st.asked, d)
	g, ok := st.floor(stmt.At, st.lex.Outside(), st.first)
	st.asked = st.asked[:len(st.asked)-1]
	m.busy, m.ok = false, ok && m.busy
	z := st.stands(&g)
	m.ok = m.ok && st.highEnough(stmt.At, z, st.lex.Outside())
	m.site = site{x: g.from.x + g.dx, y: g.from.y + g.dy, ground: z, focus: z, level: g.says == "" && g.from.level}
	return m.site, m.ok
}

// A marked is a mark on the floor, once it is asked for.
type marked struct {
	site
	busy, ok bool
}

func (st *Stage) failMark(d *names.Decl, code, message, detail string) {
	st.lex.Outside().Fail(d.Stmt.Range(), code, message, detail)
}

// first returns where a subject is as the action starts.
func (st *Stage) first(u *Subject) (s site, ok bool) {
	if u.busy {
		st.lex.Outside().Fail(u.Decl.Stmt.Range(), "circle", fmt.Sprintf("%s stands relative to itself", u.Name), "Give one of them a place of its own.")
		return s, false
	}
	st.place(u, st.lex.Outside())
	if !u.Ok {
		return s, false
	}
	s = site{x: u.FirstAcross.V, y: u.FirstAlong.V, ground: u.firstGround, focus: u.firstUp.V, level: u.Level}
	if on := u.FirstAlong.On; on != nil {
		by, ok := st.first(on)
		if !ok {
			return s, false
		}
		s.x, s.y = s.x+by.x, s.y+by.y
		if u.firstUp.On != nil {
			s.focus += by.focus
		}
	}
	return s, true
}

// at returns a finder of where subjects are at t.
func (st *Stage) at(t float64) finder {
	return func(u *Subject) (s site, ok bool) {
		if !u.Ok {
			return s, false
		}
		return site{x: u.Across.At(t), y: u.Along.At(t), ground: u.ground.At(t), focus: u.Height(t), level: u.Level}, true
	}
}

// isPerson reports whether a subject has eyes: it speaks or moves, or the plan says so.
func (st *Stage) isPerson(u *Subject, eyes *lang.Expr) bool { return eyes != nil || st.people[u.Name] }

// placeOnFloor resolves where a subject stands on the floor at first.
func (st *Stage) placeOnFloor(u *Subject, f *lang.Floor, eyes *lang.Expr, in names.Reader) {
	if !st.onFloor(f.Range(), u.Name, in) {
		return
	}
	g, ok := st.floor(f, in, st.first)
	high, okEyes := st.eyes(eyes, in)
	if !ok || !okEyes {
		return
	}
	if g.says == "up" && !st.highEnough(f, st.stands(&g), in) {
		return
	}
	u.sideSaid, u.OnFloor = true, true
	u.FirstAlong, u.FirstAcross = spot{V: g.from.y + g.dy}, spot{V: g.from.x + g.dx}
	if g.base != nil {
		if len(st.Ancestors(g.base)) > maxRelative {
			in.Fail(f.Range(), "nested-too-deep", fmt.Sprintf("subjects stand relative to subjects more than %d deep", maxRelative), "Give one of them a place of its own.")
			return
		}
		u.FirstAlong, u.FirstAcross = spot{g.base, g.dy}, spot{g.base, g.dx}
		u.StandsBy(g.base)
		u.Beside = g.base.Name
	}
	if u.Person = st.isPerson(u, eyes); u.Person {
		u.EyesSaid, u.eyes = eyes != nil, high
		u.firstGround = st.stands(&g)
		u.firstUp = spot{V: u.firstGround + high}
	} else {
		z, level := st.lies(&g)
		u.firstGround, u.Level, u.firstUp = g.from.ground, level, spot{V: z}
		if g.base != nil && g.says != "high" && !level {
			u.firstUp = spot{g.base, z - g.from.focus}
		}
	}
	u.Ok = true
}

// onFloor reports whether a place on the floor means anything on this stage, and tells
// why where it does not.
func (st *Stage) onFloor(at lang.Range, who string, in names.Reader) bool {
	switch {
	case st.ground == nil:
		in.Fail(at, "no-staging", "no scene stands above this shot, and this is a place on a floor", `The action stands above the shot, under a header: scene "TITLE".`)
		return false
	case !st.ground.Placed:
		st.noPlace(at, who, in)
		return false
	}
	return true
}

// CameraPlaced reports whether the camera has a place on the floor of a scene, and tells
// where it has not that it does not go to another.
func (st *Stage) CameraPlaced(at lang.Range, in names.Reader) bool {
	switch {
	case st.ground == nil || !st.ground.Placed && !st.ground.Lost:
		in.Fail(at, "not-staged", "`camera moves` needs a camera that has a place", "Below a scene, place it as in camera at 2 m downstage, aims at NAME.")
		return false
	case !st.ground.Placed:
		return false
	}
	return true
}

// IsScene reports whether the stage is that of a scene itself, which has no camera.
func (st *Stage) IsScene() bool { return st.ground != nil && st.ground.Scene }

// unplaced reports whether a subject stands on the floor of a scene, on which the camera
// has no place.
func (st *Stage) unplaced(u *Subject) bool {
	_, staged := u.Decl.Stmt.(*lang.Actor)
	return staged && (st.ground == nil || !st.ground.Placed)
}

// noPlace tells of somebody on the floor in a shot whose camera has no place there.
func (st *Stage) noPlace(at lang.Range, who string, in names.Reader) {
	if st.ground != nil && st.ground.Lost {
		return
	}
	in.Report(lang.Diagnostic{
		Code: "no-camera-place", Severity: lang.Error, Range: at,
		Message: who + " stands on the floor, and this shot says no place for its camera",
		Detail:  "Say where one of the two is. Write camera at 2 m downstage, aims at " + lang.WriteName(who) + ", or subject " + lang.WriteName(who) + " at 2.1 m.",
		Fixes:   in.Lexicon().Taping(who),
	})
}

// eyes reads how high somebody's eyes are over what they stand on, metres.
func (st *Stage) eyes(x *lang.Expr, in names.Reader) (high float64, ok bool) {
	if x == nil {
		return Eyes, true
	}
	return in.Within(x, names.DimLength, leastEyes, mostEyes, "eyes are 0.2 to 3 m above the floor")
}

// FloorOf returns a place of today's form as one on the floor, where it goes by a mark or
// by a subject of the scene; nil for any other.
func (st *Stage) FloorOf(pl *lang.Place, in names.Reader) *lang.Floor {
	if st.ground == nil || pl == nil || pl.At == nil || pl.At.Kind != lang.ExprName {
		return nil
	}
	base := &lang.Name{Node: pl.At.Node, Text: pl.At.Ref, Quoted: pl.At.Quoted}
	d, ok := in.Quietly().Who(base, names.DeclMark, names.DeclSubject)
	if !ok {
		return nil
	}
	if _, staged := d.Stmt.(*lang.Actor); !staged && d.Kind != names.DeclMark {
		return nil
	}
	f := &lang.Floor{Node: pl.Node, Base: base}
	if pl.Side != nil {
		f.Ways = []*lang.Way{{Node: pl.Side.Node, By: pl.Side, Dir: pl.Dir}}
	}
	return f
}
