// The scenes of a film, and which of them its shots stand under.

package film

import (
	"fmt"
	"slices"

	"pullscore/interp/names"
	"pullscore/interp/scene"
	"pullscore/lang"
)

// readScenes computes the scenes of all files, and finds that of every shot: the last
// scene above it in its file, or else the only one of the files that it uses.
func (r *reader) readScenes() {
	by := map[*lang.Section]*scene.Scene{}
	for _, sec := range r.Sections {
		if names.Meant(sec) == "scene" {
			by[sec] = r.Film.Stage(sec)
			r.Film.Scenes = append(r.Film.Scenes, by[sec])
			r.To.Diags = append(r.To.Diags, by[sec].Told...)
		}
	}
	if len(by) == 0 {
		return
	}
	var above, used *scene.Scene
	own := map[*lang.Section]bool{}
	for _, sec := range r.root.File.Sections {
		own[sec] = true
	}
	others := 0
	for sec, s := range by {
		if !own[sec] {
			used, others = s, others+1
		}
	}
	if others == 1 {
		above = used
	}
	r.stageOthers(by, own)
	at, setups := 0, map[*scene.Scene]int{}
	for _, sec := range r.root.File.Sections {
		if s := by[sec]; s != nil {
			above = s
		}
		if at < len(r.Shots) && sec.Head.Range() == r.Shots[at].Section.Head.Range() {
			r.Shots[at].Scene = above
			r.sceneOf[r.Shots[at].Section] = above
			if above != nil && isStaged(sec) {
				if setups[above]++; setups[above] == MostSetups+1 {
					r.Fail(sec.Head.Range(), "out-of-range", fmt.Sprintf("a scene has %d set-ups at most", MostSetups), "Make two scenes of it.")
				}
			}
			at++
		}
	}
}

// stageOthers finds the scenes of shots in files that the plan file uses, for who asks
// what is written there.
func (r *reader) stageOthers(by map[*lang.Section]*scene.Scene, own map[*lang.Section]bool) {
	above := map[string]*scene.Scene{} // by file
	for _, sec := range r.Sections {
		file := sec.Head.Range().File
		if s := by[sec]; s != nil {
			above[file] = s
		} else if above[file] != nil && !own[sec] {
			r.sceneOf[sec] = above[file]
		}
	}
}

// MostSetups is how many shots one scene may have.
const MostSetups = 40

// isStaged reports whether a shot has something of a scene.
func isStaged(sec *lang.Section) bool {
	return names.Has[*lang.Covers](sec) || names.Has[*lang.RunsWith](sec) || names.Has[*lang.PlacesAs](sec) || names.Has[*lang.CameraAt](sec)
}

// Stage computes the scene of a section anew.
func (f *Film) Stage(sec *lang.Section) *scene.Scene {
	return scene.Read(scene.Film{
		Scope: f.Scope, Lets: f.Lets, Source: f.Source, Rate: f.Rate, Pace: f.Pace, People: f.People, Tokens: f.Tokens,
	}, sec)
}

// In returns the film with its scenes read anew, with other names declared.
func (f *Film) In(scope *names.Scope) *Film {
	anew := *f
	anew.Scope = scope
	anew.Scenes, anew.Shots, anew.sceneOf = nil, slices.Clone(f.Shots), map[*lang.Section]*scene.Scene{}
	by := map[*scene.Scene]*scene.Scene{}
	for _, s := range f.Scenes {
		by[s] = anew.Stage(s.Section)
		anew.Scenes = append(anew.Scenes, by[s])
	}
	for i := range anew.Shots {
		anew.Shots[i].Scene = by[anew.Shots[i].Scene]
	}
	for sec, s := range f.sceneOf {
		anew.sceneOf[sec] = by[s]
	}
	return &anew
}

// SceneOf returns the scene under which a shot stands; nil for none.
func (f *Film) SceneOf(sec *lang.Section) *scene.Scene { return f.sceneOf[sec] }

// ShotIDs returns the IDs of the shots of the plan file, in its order.
func (f *Film) ShotIDs() (list []string) {
	for _, s := range f.Shots {
		if head, ok := s.Section.Head.(*lang.Shot); ok && s.Read {
			list = append(list, head.ID)
		}
	}
	return list
}

// ShotOf returns the shot of an ID in the plan file, as it is written; nil where there is
// none.
func (f *Film) ShotOf(id string) *lang.Section { return f.byID[id] }

// ofScene returns the statements of the scene that a shot has the action of, as far as the
// shot has it.
func (f *Film) ofScene(sec *lang.Section, l *names.Lexicon) (list []names.Item) {
	sc := f.SceneOf(sec)
	if sc == nil {
		return nil
	}
	part, ok := sc.Part(sec, f, &names.Report{})
	if !ok || !part.Action {
		return nil
	}
	l.Staged = sc.Scope
	given := sc.Given(part)
	for k, it := range sc.ItemsFor(l) {
		if !given[k].Out {
			list = append(list, it)
		}
	}
	return list
}
