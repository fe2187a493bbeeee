// The stage: where everyone and everything stands, and how they, the camera
// and the zoom move.

package stage

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"

	"pullscore/interp/change"
	"pullscore/interp/hand"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics"
)

// MaxDistance is beyond any focus mark; farther is infinity.
const MaxDistance = 1e6 // m

// maxRelative is how many others a subject's place may hang on.
const maxRelative = 12

// A Stage holds the subjects of a shot and the moves resolved so far.
type Stage struct {
	ch     change.Change
	optics *plan.Optics
	style  units.Style // of lengths in words
	people map[string]bool
	ground *Ground // nil: there is no scene
	lex    *names.Lexicon
	marks  map[*names.Decl]*marked
	asked  []*names.Decl // the marks that are being placed

	readings []*Reading

	Subjects map[string]*Subject
	Order    []*Subject
	Moves    []*Move // as they were taken; the tracks hold them all
	laid     []laid  // the same in the order of time
}

// A laid move lies on the tracks; all before it and itself are over at latest.
type laid struct {
	move   *Move
	latest float64
}

// A Subject is a plan.Subject with what only the interpreter needs.
type Subject struct {
	*plan.Subject
	Decl        *names.Decl
	FirstAlong  spot // where it stands at first
	FirstAcross spot
	firstUp     spot
	firstGround float64     // height of what it stands on at first
	byTape      bool        // it stands by its distance from a camera that is not there
	Level       bool        // no line says its height: it is level with the lens
	OnFloor     bool        // it has a place on the floor of a scene
	EyesSaid    bool        // its line says how high its eyes are
	eyes        float64     // at first, metres over what it stands on; 0 of a thing
	ground      *plan.Track // height of what it stands on
	sideSaid    bool        // its line says to which side it stands
	besides     []*Subject  // that it ever stands relative to
	busy        bool        // being placed
	placed      bool        // or tried to be
	Ok          bool
}

// SideKnown tells whether the plan says to which side a subject stands.
func (u *Subject) SideKnown() bool {
	return u.sideSaid || u.Across.Moves() || u.Across.At(0) != 0
}

// A spot is a place by its distance, or relative to another subject.
type spot struct {
	On *Subject
	V  float64
}

// Back moves a spot that is measured from the camera farther from it, in metres.
func (s *spot) Back(by float64) {
	if s.On == nil {
		s.V += by
	}
}

// A Move is a piece of blocking with its times.
type Move struct {
	Item       int
	number     int // among the moves taken
	Stmt       lang.Statement
	Kind       string // moves, dolly, zoom, track, boom, camera, pan or tilt
	Who        *Subject
	Along      spot // of a person
	Across     spot
	KeepsSide  bool
	By         float64      // dolly: forth positive; track and boom: to the right and up; pan and tilt likewise, degrees; zoom: the focal length; FromSelf: away from the camera
	FromSelf   bool         // a person goes by so much from where they then stand
	Speed      float64      // metres a second, where it says no time; else 0
	Aim        *Subject     // of a pan or a tilt: whom it goes to, or stays with; nil: it turns by By
	Keeps      bool         // it stays with them, until the next turn of its kind
	Floor      *lang.Floor  // where it goes on the floor of a scene; nil: by the fields above
	In         names.Reader // of that place
	Eyes       float64      // how high a person's eyes are as they arrive; NaN: as before
	Start, End float64      // End is infinite where it stays with somebody and nothing says how long
	Smooth     bool

	From, To float64 // of a turn, once it is laid: degrees

	head   float64    // where the camera looked as it was laid, degrees to the right
	onAxis bool       // it lies on the track of the camera's axis
	to     site       // where a move to a place on the floor leads, as it was laid
	shift  [3]float64 // how far that takes the camera
	parts  int        // sweeps that it lies on the rig as
}

// New places the subjects of the shot: its own, then the file's.
// focal is the focal length before any zoom, metres; people are those who sway where
// nothing else is said of them; ground is how a scene lies under it, nil for none.
func New(l *names.Lexicon, ch change.Change, optics *plan.Optics, focal float64, people map[string]bool, ground *Ground) *Stage {
	st := &Stage{
		ch: ch, people: people, optics: optics, style: styleOf(l.Film.Settings), Subjects: map[string]*Subject{},
		ground: ground, lex: l, marks: map[*names.Decl]*marked{},
	}
	here := l.Outside()
	for _, s := range l.Scopes() {
		for _, d := range s.Order {
			if ground != nil && ground.Named != nil && s == l.Film && !ground.Named(d.Name.Text) {
				continue
			}
			if d.Kind == names.DeclSubject && l.Find(d.Name.Text) == d {
				u := &Subject{Decl: d, Subject: &plan.Subject{Name: d.Name.Text}}
				st.Subjects[u.Name] = u
				st.Order = append(st.Order, u)
			}
		}
	}
	for _, u := range st.Order {
		st.place(u, here)
	}
	st.Order = slices.DeleteFunc(st.Order, func(u *Subject) bool { return !u.Ok })
	for _, u := range st.Order {
		u.Along, u.Across = &plan.Track{}, &plan.Track{}
	}
	*optics.Camera, *optics.Focal, optics.Rig = *plan.Still(0), *plan.Still(focal), nil
	st.raise()
	for _, u := range st.Order {
		u.Along.From, u.Across.From = onTrack(u.FirstAlong, along), onTrack(u.FirstAcross, across)
	}
	return st
}

// place resolves where a subject stands at the start; a circle of subjects
// that stand relative to one another is an error.
func (st *Stage) place(u *Subject, here names.Reader) {
	if u.busy || u.placed {
		return
	}
	u.placed = true
	u.busy = true
	switch s := u.Decl.Stmt.(type) { // another could not be read, and stands nowhere
	case *lang.Subject:
		st.read(u, s.Deep, s.Sways, here)
		if floor := cmp.Or(s.Floor, st.FloorOf(s.Place, here)); floor != nil {
			st.placeOnFloor(u, floor, s.Eyes, here)
		} else if st.ground != nil && st.ground.Scene {
			u.byTape = true // from a camera, which the floor does not have
		} else {
			st.placeByTape(u, s.Place, here)
		}
	case *lang.Actor:
		st.read(u, s.Deep, s.Sways, here)
		if st.ground != nil && st.ground.Placed { // else it is told where it is asked for
			st.placeOnFloor(u, s.At, s.Eyes, here)
			st.frozen(u)
		}
	}
	if side, ok := st.ch.SideOf(u.Name); ok {
		u.FirstAcross.V = side
	}
	u.busy = false
}

// read reads how deep a subject is, and how much it sways.
func (st *Stage) read(u *Subject, deep, sways *lang.Expr, here names.Reader) {
	u.Deep, u.Sways = 0, plan.None()
	if deep != nil {
		if v, ok := here.Within(deep, names.DimLength, 0, 1000, "a subject is 0 to 1000 m deep"); ok {
			u.Deep = plan.Number(v)
		}
	}
	if sways != nil {
		if v, ok := here.Within(sways, names.DimLength, 0, 10, "a subject sways 0 to 10 m"); ok {
			u.Sways = plan.Number(v)
		}
	}
	if sways == nil && st.people[u.Name] {
		u.Sways, u.SwayAssumed = hand.Person, true
	}
}

// placeByTape resolves where a subject stands by its distance from the camera.
func (st *Stage) placeByTape(u *Subject, pl *lang.Place, here names.Reader) {
	u.FirstAlong, u.FirstAcross, u.Ok = st.Spots(pl, here, u)
	u.StandsBy(u.FirstAlong.On)
	u.Beside = ""
	if on := u.FirstAlong.On; on != nil {
		u.Beside = on.Name
	}
	u.FirstAlong.Back(st.ch.Back)
	st.alongTilted(u)
}

// Spots resolves a place. For a subject's first place, self is that subject,
// and its slant is noted. It looks at both parts of the place, whatever is wrong
// with one.
func (st *Stage) Spots(pl *lang.Place, in names.Reader, self *Subject) (along, across spot, ok bool) {
	if pl == nil {
		return along, across, false
	}
	along, across, ok = st.distance(pl, in, self)
	if pl.Side == nil {
		return along, across, ok
	}
	if self != nil {
		self.sideSaid = true
	}
	side, okSide := in.Eval(pl.Side)
	if !okSide {
		return along, across, false
	}
	return toTheSide(pl, in, side, along, across, ok, self)
}

// distance resolves how far a place is, or whom it is relative to.
func (st *Stage) distance(pl *lang.Place, in names.Reader, self *Subject) (along, across spot, ok bool) {
	fail := func(at lang.Range, code, message, detail string) (spot, spot, bool) {
		in.Fail(at, code, message, detail)
		return spot{}, spot{}, false
	}
	q, ok := in.Eval(pl.At)
	switch {
	case !ok:
		return along, across, false
	case q.Dim != names.DimLength:
		return fail(pl.At.Range(), "wrong-unit", fmt.Sprintf("expected a distance, found %s", q.What()), "As in 1.7 m, or NAME - 35 cm.")
	case q.On == nil && math.IsInf(q.V, 1):
		return fail(pl.At.Range(), "out-of-range", "nobody stands at infinity", "A rack goes there by itself: rack to inf.")
	case q.On == nil && (q.V < 0.005 || q.V > MaxDistance):
		return fail(pl.At.Range(), "out-of-range", "a subject stands 5 mm to 1000 km away", "")
	case q.On == nil:
		return spot{V: q.V}, spot{}, true
	}
	on := st.Subjects[q.On.Text]
	if on == nil {
		return along, across, false // its line cannot be read where it stands
	}
	if self != nil {
		st.place(on, in)
	}
	switch {
	case on.busy || self != nil && on == self:
		return fail(pl.Range(), "circle", fmt.Sprintf("%s stands relative to itself", q.On.Text), "Give one of them a distance.")
	case !on.Ok:
		return along, across, false
	case len(st.Ancestors(on)) > maxRelative:
		return fail(pl.Range(), "nested-too-deep", fmt.Sprintf("subjects stand relative to subjects more than %d deep", maxRelative), "Give one of them a distance.")
	}
	return spot{on, q.V}, spot{on, 0}, true
}

// toTheSide adds what a place says of the side: a length across, or the angle
// of a slant tape. known tells that its distance is.
func toTheSide(pl *lang.Place, in names.Reader, side names.Quantity, along, across spot, known bool, self *Subject) (spot, spot, bool) {
	sign := 1.0
	if pl.Dir == "left" {
		sign = -1
	}
	switch {
	case side.On == nil && side.Dim == names.DimLength && math.Abs(side.V) <= MaxDistance:
		across.V += sign * side.V
	case side.On == nil && side.Dim == names.DimAngle && side.V >= 0 && side.V < 89 && along.On == nil:
		tape := along.V
		along.V = optics.PlaneDistance(tape, side.V)
		across.V = sign * tape * math.Sin(side.V*math.Pi/180)
		if self != nil && known {
			self.Slant, self.SlantDeg = plan.Number(tape), side.V
		}
	default:
		in.Fail(pl.Side.Range(), "wrong-unit", "the way to the side is a length, or the angle of the tape under 89 deg",
			"As in 20 cm left, or 15 deg left.")
		return along, across, false
	}
	return along, across, known
}

// Take lays moves of people, the camera and the zoom on the tracks. Only what
// the first of them can change is laid anew.
func (st *Stage) Take(moves []*Move) {
	if len(moves) == 0 {
		return
	}
	for _, m := range moves {
		m.number = len(st.Moves)
		st.Moves = append(st.Moves, m)
	}
	first := slices.MinFunc(moves, inTime).Start
	keep := sort.Search(len(st.laid), func(i int) bool { return st.laid[i].move.Start > first || st.laid[i].latest > first })
	list := make([]*Move, 0, len(st.laid)-keep+len(moves))
	for i := len(st.laid) - 1; i >= keep; i-- {
		st.lift(st.laid[i].move)
		list = append(list, st.laid[i].move)
	}
	st.laid = st.laid[:keep]
	slices.Reverse(list)
	list = append(list, moves...)
	slices.SortStableFunc(list, inTime)
	st.lay(list)
}

func inTime(a, b *Move) int { return cmp.Compare(a.Start, b.Start) }

// lift takes the latest move of all off the tracks.
func (st *Stage) lift(m *Move) {
	off := func(tr *plan.Track) { tr.Steps = tr.Steps[:len(tr.Steps)-1] }
	switch m.Kind {
	case "dolly", "track", "boom", "camera":
		st.liftSlide(m)
	case "pan", "tilt":
		list := st.sweeps(m.Kind)
		*list = (*list)[:len(*list)-m.parts]
	case "zoom":
		off(st.optics.Focal)
	default:
		off(m.Who.Along)
		if !m.KeepsSide {
			off(m.Who.Across)
		}
		if m.Floor != nil {
			off(m.Who.Up)
			off(m.Who.ground)
		}
	}
}

// lay puts moves, in the order of time, behind those that lie on the tracks.
func (st *Stage) lay(moves []*Move) {
	latest := math.Inf(-1)
	if n := len(st.laid); n > 0 {
		latest = st.laid[n-1].latest
	}
	for _, m := range moves {
		latest = max(latest, m.End)
		st.laid = append(st.laid, laid{m, latest})
	}
	st.layAt(moves, st.heads(moves))
	if st.optics.Turns() || slices.ContainsFunc(moves, func(m *Move) bool { return m.Floor != nil }) {
		st.settle(moves)
	}
	st.correct()
}

// layAt lays moves where the camera looks so many degrees to the right as each
// starts: the camera's own first, since people's places are measured from where it
// then stands, and then its turns, which may go to people.
func (st *Stage) layAt(moves []*Move, heads []float64) {
	o := st.optics
	at := 0.0
	if n := len(o.Camera.Steps); n > 0 {
		at = o.Camera.Steps[n-1].To.Offset
	}
	for i, m := range moves {
		m.head = heads[i]
		switch {
		case m.Kind == "dolly" && heads[i] == 0:
			at += m.By
			o.Camera.Add(plan.Step{Start: m.Start, End: m.End, To: plan.Spot{Offset: at}, Smooth: m.Smooth})
			m.onAxis = true
		case m.Kind == "dolly" || m.Kind == "track" || m.Kind == "boom":
			st.slide(m)
		case m.Kind == "camera":
			st.slideTo(m)
		case m.Kind == "zoom":
			o.Focal.Add(plan.Step{Start: m.Start, End: m.End, To: plan.Spot{Offset: m.By}, Smooth: m.Smooth})
		}
	}
	for _, m := range moves {
		if m.Kind != "moves" {
			continue
		}
		if m.Floor != nil {
			st.walk(m)
			continue
		}
		m.Who.Along.Add(plan.Step{Start: m.Start, End: m.End, To: st.leadsTo(m), Smooth: m.Smooth})
		if !m.KeepsSide {
			m.Who.Across.Add(plan.Step{Start: m.Start, End: m.End, To: st.leadsAcross(m), Smooth: m.Smooth})
		}
	}
	st.turn(moves, "pan")
	st.turn(moves, "tilt")
}

// leadsAcross is where to the side a move of a person leads.
func (st *Stage) leadsAcross(m *Move) plan.Spot {
	if m.FromSelf {
		return plan.Spot{Offset: m.Who.Across.At(m.Start) + m.Across.V}
	}
	across := onTrack(m.Across, across)
	if across.Parent == nil && st.optics.Rig != nil {
		across.Offset += st.optics.Place(m.End).X
	}
	return across
}

// leadsTo is where along the lens's axis a move of a person leads, once all before
// it lie on the tracks.
func (st *Stage) leadsTo(m *Move) plan.Spot {
	if m.FromSelf {
		return plan.Spot{Offset: m.Who.Along.At(m.Start) + m.By}
	}
	along := onTrack(m.Along, along)
	if along.Parent == nil {
		along.Offset += st.optics.Place(m.End).Y
	}
	return along
}

// Takes returns how long a move takes at its speed from a time on, in seconds: 0
// where it leads nowhere. Whoever or whatever the way ends at may move meanwhile,
// and a way that takes longer may be another, so it is measured until its time
// stays.
func (st *Stage) Takes(m *Move, start float64) (long float64) {
	switch {
	case m.Floor != nil:
		return st.takesOnFloor(m, start)
	case m.FromSelf && !m.KeepsSide:
		return math.Hypot(m.By, m.Across.V) / m.Speed
	case m.Who == nil || m.FromSelf:
		return math.Abs(m.By) / m.Speed
	}
	across := m.Who.Across.At(start)
	for range 100 {
		try := Move{Who: m.Who, Along: m.Along, Start: start, End: start + long}
		dx := at(st.leadsTo(&try), try.End) - m.Who.Along.At(start)
		dy := 0.0
		if !m.KeepsSide {
			dy = at(st.leadsAcross(&Move{Across: m.Across, End: try.End}), try.End) - across
		}
		before := long
		if long = math.Hypot(dx, dy) / m.Speed; math.Abs(long-before) < 1e-9 {
			break
		}
	}
	return long
}

// at is where a spot is at a time.
func at(s plan.Spot, t float64) float64 {
	if s.Parent == nil {
		return s.Offset
	}
	return s.Parent.At(t) + s.Offset
}

// InTime returns all moves in the order of time.
func (st *Stage) InTime() []*Move {
	list := make([]*Move, len(st.laid))
	for i, l := range st.laid {
		list[i] = l.move
	}
	return list
}

// MovesIn returns the moves that are under way at some time between two, in the
// order in which they were taken.
func (st *Stage) MovesIn(from, to float64) []*Move {
	var list []*Move
	for i := sort.Search(len(st.laid), func(i int) bool { return st.laid[i].latest >= from }); i < len(st.laid) && st.laid[i].move.Start <= to; i++ {
		if st.laid[i].move.End >= from {
			list = append(list, st.laid[i].move)
		}
	}
	slices.SortFunc(list, func(a, b *Move) int { return cmp.Compare(a.number, b.number) })
	return list
}

// An axis is one of the three that a subject has a track of.
type axis uint8

const (
	along axis = iota
	across
	up
)

func onTrack(s spot, of axis) plan.Spot {
	if s.On == nil {
		return plan.Spot{Offset: s.V}
	}
	return plan.Spot{Parent: [...]*plan.Track{along: s.On.Along, across: s.On.Across, up: s.On.Up}[of], Offset: s.V}
}

// HangsOn tells whether a subject's place is, or ever becomes, relative to
// another: a move to such a place would close a circle.
func (st *Stage) HangsOn(u, on *Subject) bool {
	_, found := st.Ancestors(u)[on]
	return found
}

// StandsBy notes that a subject stands, at first or after a move, relative to
// another; nil is nobody.
func (u *Subject) StandsBy(on *Subject) {
	if on != nil && !slices.Contains(u.besides, on) {
		u.besides = append(u.besides, on)
	}
}

// Ancestors returns a subject with all that it ever stands relative to, each
// with the number of steps to it.
func (st *Stage) Ancestors(u *Subject) map[*Subject]int {
	depth := map[*Subject]int{u: 0}
	for queue := []*Subject{u}; len(queue) > 0; queue = queue[1:] {
		v := queue[0]
		for _, on := range v.besides {
			if _, seen := depth[on]; !seen {
				depth[on] = depth[v] + 1
				queue = append(queue, on)
			}
		}
	}
	return depth
}
