// Reading a film: the settings of its files, its kit and its lets.

package film

import (
	"fmt"
	"maps"
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/kit"
	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/scene"
	"pullscore/interp/speech"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A reader makes a film.
type reader struct {
	names.Evaluator
	*Film
	root   *names.Unit
	loader *load.Loader
	before *plan.Plan // to place the rows of logs that name its pulls; nil: not yet built
}

// Read reads what holds for all shots of a plan file. Where again is true a log
// names pulls of the plan: the film is to be read once more with the plan as built
// without that log, before.
func Read(root *names.Unit, l *load.Loader, before *plan.Plan, told *names.Report) (f *Film, again bool) {
	f = &Film{
		Source: l.Source, Sections: l.Sections(), Lost: l.Lost, Lets: map[*names.Decl]*names.LetValue{},
		sceneOf: map[*lang.Section]*scene.Scene{}, Cameras: map[string]kit.Camera{}, Lenses: map[string]kit.Lens{}, Pullers: map[string]kit.Puller{},
	}
	r := &reader{Film: f, root: root, loader: l, before: before}
	r.Evaluator = names.Evaluator{Reporter: names.Reporter{To: told}, Names: r.value}
	gathering := names.Collector{Reporter: r.Reporter, Scopes: map[*names.Unit]*names.Scope{}}
	f.Scope = gathering.Gather(root)
	f.Shots = shotsOf(root.File.Sections)
	f.byID = sectionsByID(f.Shots)
	r.readSettings()
	told.Lost = maps.Clone(f.Scope.Lost)
	if f.Lost {
		told.Lost["use"] = true
	}
	again = r.readKit()
	names.MoveCheck{Reporter: r.Reporter, Scope: f.Scope}.CheckMoves()
	r.findPeople()
	r.splitWords()
	r.readScenes()
	r.readClips()
	clips := r.askedClips()
	r.readCuts(clips)
	r.findShots(clips)
	return f, again
}

// sectionsByID returns the first shot of every ID that can be read.
func sectionsByID(shots []Shot) map[string]*lang.Section {
	by := make(map[string]*lang.Section, len(shots))
	for _, s := range shots {
		if head, ok := s.Section.Head.(*lang.Shot); ok && s.Read && by[head.ID] == nil {
			by[head.ID] = s.Section
		}
	}
	return by
}

// shotsOf returns the sections that are shots.
func shotsOf(sections []*lang.Section) (list []Shot) {
	for _, sec := range sections {
		switch head := sec.Head.(type) {
		case *lang.Shot:
			list = append(list, Shot{Section: sec, Read: true})
		case *lang.Bad:
			if names.Meant(sec) == "shot" {
				list = append(list, Shot{Section: &lang.Section{Head: &lang.Shot{Node: head.Node}, Body: sec.Body}})
			}
		}
	}
	return list
}

// byDefault notes that a value stands in for one that no line gives.
func (r *reader) byDefault(name, value, why string) {
	r.Defaults = append(r.Defaults, plan.Default{Name: name, Value: value, Why: why})
}

// readKit computes lets and reads the kit. again is true where a log has to wait
// for the plan.
func (r *reader) readKit() (again bool) {
	k := &kit.Reader{Evaluator: r.Evaluator, Source: r.Source, Torn: r.Scope.Torn, Crop: r.Crop}
	k.Learn = func(u *kit.Puller, said *lang.Takes, sec *lang.Section) {
		again = r.learn(u, said, sec) || again
	}
	for _, d := range r.Scope.Order {
		r.resolve(d, k)
	}
	r.readHeadless(k)
	return again
}

// resolve computes a let, or a piece of the kit. One whose header could not be
// read is known, and cannot be used; such a puller has a hand fitted to nobody.
func (r *reader) resolve(d *names.Decl, k *kit.Reader) {
	name, unread := d.Name.Text, d.Unread()
	switch {
	case d.Kind == names.DeclLet:
		r.let(d)
	case d.Kind == names.DeclCamera && unread:
		r.Cameras[name] = kit.Camera{Name: name}
	case d.Kind == names.DeclCamera:
		r.Cameras[name] = k.Camera(d.Section)
	case d.Kind == names.DeclLens && unread:
		r.Lenses[name] = kit.Lens{Name: name}
	case d.Kind == names.DeclLens:
		r.Lenses[name] = k.Lens(d.Section)
	case d.Kind == names.DeclPuller && unread:
		r.Pullers[name] = kit.Puller{Name: name, Hand: hand.Default()}
	case d.Kind == names.DeclPuller:
		r.Pullers[name] = k.Puller(d.Section)
	}
}

// readHeadless looks at the pieces of the kit whose header could not be read, for
// the mistakes under it.
func (r *reader) readHeadless(k *kit.Reader) {
	for _, sec := range r.Sections {
		if _, bad := sec.Head.(*lang.Bad); !bad {
			continue
		}
		switch names.Meant(sec) {
		case "camera":
			k.Camera(sec)
		case "lens":
			k.Lens(sec)
		case "puller":
			k.Puller(sec)
		}
	}
}

// readSettings takes the file's settings, its own before those it uses.
func (r *reader) readSettings() {
	set := r.Scope.Settings
	r.Film.Rate = r.readRate(set["rate"])
	r.Evaluator.Speed.Rate = r.Film.Rate

	if s, ok := set["plan"].(*lang.Plan); ok && s.Title != nil {
		r.Title = s.Title.Value
	} else if r.hasShots() {
		r.Report(lang.Diagnostic{
			Code: "no-title", Severity: lang.Note, Range: r.firstShot().Range(),
			Message: "the plan has no title", Detail: `Begin the file with: plan "TITLE".`,
		})
	}
	r.Units, r.OwnUnits = "metric", true
	if s, ok := set["units"].(*lang.Units); ok {
		r.Units, r.OwnUnits = s.System, false
	}
	r.Tape = "sensor"
	if s, ok := set["tape"].(*lang.Tape); ok {
		r.Tape = s.From
	}
	r.Pace = speech.DefaultPace
	if s, ok := set["pace"].(*lang.Pace); ok {
		if v, ok := r.Within(s.Value, names.DimPace, 30, 400, "a pace lies between 30 and 400 wpm"); ok {
			r.Pace = v
		}
	} else if r.hasShots() {
		r.byDefault("pace", "150 wpm", "the plan does not say")
	}
	if s, ok := set["crop"].(*lang.Crop); ok {
		r.Crop, _ = r.Within(s.Value, names.DimFactor, 0.5, 4, "a picture on the screen is 0.5 to 4 times as wide as high")
	}
	r.View = r.filmViewing(set)
}

func (r *reader) hasShots() bool { return r.firstShot() != nil }

// firstShot returns the header of the first shot; nil where there is none that can
// be read.
func (r *reader) firstShot() lang.Statement {
	for _, s := range r.Shots {
		if s.Read {
			return s.Section.Head
		}
	}
	return nil
}

func (r *reader) readRate(stmt lang.Statement) timecode.Rate {
	s, ok := stmt.(*lang.Rate)
	if !ok {
		if r.hasShots() {
			r.byDefault("rate", "24", "the plan does not say")
		}
		return timecode.Rate{}
	}
	rate, err := timecode.ParseRate(s.Value)
	if err != nil {
		r.Fail(s.Range(), "bad-rate", fmt.Sprintf("%s is no frame rate", s.Value), names.Sentence(err.Error()))
	}
	return rate
}

func (r *reader) filmViewing(set map[string]lang.Statement) kit.Viewing {
	v := kit.Viewing{
		Width: kit.DefaultScreen, Viewer: kit.DefaultViewer, Criterion: math.NaN(), Arcmin: viewer.Sharp,
		Wanted: kit.DefaultWanted, Quickest: viewer.Cut,
	}
	v = v.With(set, &r.Evaluator)
	if !r.hasShots() {
		return v
	}
	if !v.Watched && math.IsNaN(v.Criterion) {
		r.byDefault("watched", "on 1.2 m screen from 2.5 m", "the plan does not say what the film is watched on")
	}
	if _, ok := set["land"]; !ok {
		r.byDefault("land", "90 %", "the plan does not say")
	}
	if _, ok := set["quickest"]; !ok {
		r.byDefault("quickest", "0.2 s", "the plan does not say")
	}
	return v
}
