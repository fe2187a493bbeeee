// The script pages that a plan's lines come from.

package interp

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/interp/load"
	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
	"pullscore/lang/screenplay"
)

// hasPage reports whether there is a page to compare the plan with.
func (p *program) hasPage() bool { return p.loader.Opt.Script != nil || len(p.film.Scope.Scripts) > 0 }

// compareScript compares the lines of the plan with the page: that of the
// options, else those that its script statements name.
func (p *program) compareScript() {
	var pages revision.Pages
	compared := 0
	if s := p.loader.Opt.Script; s != nil {
		text, diags := lines.Decode(s.Path, s.Text)
		text.Progress = p.loader.Opt.Progress
		f := &load.Foreign{Text: text, Diags: diags}
		p.loader.Texts[s.Path] = f
		compared = p.addGiven(&pages, f, s.Scene)
	} else {
		for _, s := range p.film.Scope.Scripts {
			if p.addScript(&pages, s) {
				compared++
			}
		}
	}
	if compared == 0 {
		return
	}
	shots := make([]*plan.Shot, len(p.spoken))
	for i, s := range p.spoken {
		shots[i] = s.all
	}
	p.revision = revision.Compare(shots, &pages)
	if path, full := pages.Full(); full {
		p.Fail(p.loader.Texts[path].Start(), "too-large",
			fmt.Sprintf("the script has more than %d speeches, or %d words", revision.MostSpeeches, wording.MostWords), "The rest is not compared.")
	}
	if p.revision == nil {
		p.revision = []revision.Change{}
	}
	for i := range p.revision {
		p.tellRevision(&p.revision[i])
	}
}

// addGiven adds the page of the options: the scene that is asked for, or else
// those that the plan's script statements name, since a page that is revised
// mostly has another name. It returns how often the page is compared.
func (p *program) addGiven(pages *revision.Pages, f *load.Foreign, number string) (compared int) {
	named := slices.DeleteFunc(slices.Clone(p.film.Scope.Scripts), func(s *lang.Script) bool { return s.Scene == nil })
	if number != "" || len(named) == 0 || len(named) < len(p.film.Scope.Scripts) {
		p.addPage(pages, f, number)
		return 1
	}
	for _, s := range named {
		if p.addScene(pages, f, s) {
			compared++
		}
	}
	return compared
}

// addScript reads the page that a statement names.
func (p *program) addScript(pages *revision.Pages, s *lang.Script) bool {
	if !load.NamesFile(s.File, p.Reporter) {
		return false
	}
	f := p.loader.Open(s.File, p.loader.Beside(s.Range().File, s.File.Value), p.Reporter)
	if f == nil {
		return false
	}
	if d, closed := screenplay.Closed(f.Name, f.Content); closed {
		d.Range = s.File.Range()
		p.Report(d)
		return false
	}
	if s.Scene == nil {
		p.addPage(pages, f, "")
		return true
	}
	return p.addScene(pages, f, s)
}

// addScene adds the scene of a page that a statement names; a page without it is
// a mistake.
func (p *program) addScene(pages *revision.Pages, f *load.Foreign, s *lang.Script) bool {
	if p.addPage(pages, f, s.Scene.Value) {
		return true
	}
	p.Fail(s.Scene.Range(), "no-scene", fmt.Sprintf("%q has no scene %s", filepath.Base(f.Name), s.Scene.Value),
		p.numbersOf(f))
	return false
}

// mostNumbers is how many numbers of scenes are told of a page without the one that
// is looked for.
const mostNumbers = 20

// numbersOf says which numbers the scenes of a page have.
func (p *program) numbersOf(f *load.Foreign) string {
	var numbers []string
	for scene, beat := range screenplay.Beats(f.Text, &lines.Faults{}) {
		if beat.Empty() && scene.Number != "" {
			numbers = append(numbers, scene.Number)
		}
		if len(numbers) > mostNumbers {
			break
		}
	}
	switch {
	case len(numbers) == 0:
		return "A scene's number stands between two # at the end of its heading."
	case len(numbers) > mostNumbers:
		return fmt.Sprintf("The first %d are %s.", mostNumbers, strings.Join(numbers[:mostNumbers], ", "))
	}
	return fmt.Sprintf("It has %s.", strings.Join(numbers, ", "))
}

// addPage adds the speeches of a page, of one scene or of all, and tells what is
// wrong with it.
func (p *program) addPage(pages *revision.Pages, f *load.Foreign, number string) (any bool) {
	faults := lines.Faults{}
	beats := screenplay.Beats(f.Text, &faults)
	if p.loader.Keeps(f) {
		kept := load.FromForeign(p.loader, f, load.Pages, "", func() *beatsKept { return keepBeats(f.Text) })
		beats, faults = kept.all, kept.faults
	}
	any = pages.Add(beats, f.Name, number)
	for _, d := range append(f.Diags[:len(f.Diags):len(f.Diags)], faults.List()...) {
		p.Report(d)
	}
	return any
}

// beatsKept are the beats of a page that a cache keeps.
type beatsKept struct {
	scenes []fountain.Scene
	beats  []fountain.Beat
	faults lines.Faults
}

func keepBeats(t *lines.Text) *beatsKept {
	k := &beatsKept{}
	for scene, beat := range screenplay.Beats(t, &k.faults) {
		k.scenes, k.beats = append(k.scenes, scene), append(k.beats, beat)
	}
	return k
}

// all yields the beats with their scenes.
func (k *beatsKept) all(yield func(fountain.Scene, fountain.Beat) bool) {
	for i, scene := range k.scenes {
		if !yield(scene, k.beats[i]) {
			return
		}
	}
}
