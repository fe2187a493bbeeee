// A difference as text for people.

package diff

import (
	"fmt"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/lists"
	"pullscore/interp/units"
)

// margin stands before a shot's phrases.
const margin = "  "

type writer struct {
	console.Lines
	all bool // notes that are alike are told one by one
}

// WriteText writes what changed in plans, shot by shot; a plan that is the same
// is left out. With all it tells every note, else those that are alike together.
func WriteText(screen console.Screen, plans []Plan, all bool) error {
	w := &writer{console.Lines{Screen: screen}, all}
	chance := false
	for _, p := range plans {
		if !p.Differs() && p.Faulty == [2]bool{} {
			continue
		}
		w.plan(p)
		for _, s := range p.Shots {
			chance = chance || s.tellsChance()
		}
	}
	w.Line(w.Screen.Paint(console.Bold, Summary(plans)))
	if chance {
		w.Line("")
		if err := w.Flush(); err != nil {
			return err
		}
		return lists.WriteNote(screen)
	}
	return w.Flush()
}

// plan writes what changed in a plan.
func (w *writer) plan(p Plan) {
	w.Wrapped(console.Bold, "", titleOf(p))
	w.Wrapped(console.Dim, "", p.between())
	for _, text := range p.FaultPhrases() {
		w.Wrapped(console.Yellow, "", text)
	}
	w.phrase(says(p.Details))
	for _, text := range findingPhrases(p.Findings, w.all) {
		w.phrase(text)
	}
	w.Line("")
	for i := range p.Scenes {
		if s := &p.Scenes[i]; s.Change != Same {
			w.scene(s)
		}
	}
	for _, s := range p.Shots {
		if s.Change != Same {
			w.shot(s)
		}
	}
}

// FaultPhrases says which of the states have errors.
func (p Plan) FaultPhrases() []string {
	var list []string
	for i, name := range []string{p.Before, p.After} {
		if p.Faulty[i] {
			list = append(list, name+" has errors: what depends on them is wrong or missing here.")
		}
	}
	return list
}

func titleOf(p Plan) string {
	if p.Title == "" {
		return "A plan without a title"
	}
	return p.Title
}

// between says what is compared with what.
func (p Plan) between() string {
	switch p.Change {
	case New:
		return p.After + ": new"
	case Gone:
		return p.Before + ": gone"
	}
	if p.renamed {
		return "renamed " + p.Before + " to " + p.After
	}
	return p.Before + " -> " + p.After
}

// shot writes what changed in a shot.
func (w *writer) shot(s Shot) {
	shown := s.After
	if shown == nil {
		shown = s.Before
	}
	w.Line(strings.TrimSpace(w.Screen.Paint(console.Bold, console.Clean(s.ID)) + margin + console.Clean(console.Fit(shown.Title, w.Screen.Width-len(margin)-console.Columns(s.ID)))))
	for _, text := range s.Phrases(w.all) {
		w.phrase(text)
	}
	w.Line("")
}

// scene writes what changed in a scene.
func (w *writer) scene(s *Scene) {
	w.Line(w.Screen.Paint(console.Bold, console.Clean(console.Fit(s.name(), w.Screen.Width))))
	for _, text := range s.Phrases(w.all) {
		w.phrase(text)
	}
	w.Line("")
}

// phrase writes a phrase of a plan or a shot; nothing for an empty one.
func (w *writer) phrase(text string) { w.Hanging(console.Plain, margin, text) }

// Summary counts what changed.
func Summary(plans []Plan) string {
	count := map[Change]int{}
	differ, renamed, scenes := 0, 0, 0
	for _, p := range plans {
		if p.Differs() {
			differ++
		}
		if p.Change == Renamed {
			renamed++
		}
		for _, s := range p.Shots {
			count[s.Change]++
		}
		for i := range p.Scenes {
			if p.Scenes[i].Change != Same {
				scenes++
			}
		}
	}
	if len(plans) == 0 {
		return "no plan with shots is touched"
	}
	if len(plans) == 1 && len(plans[0].Shots) == 0 && !plans[0].Differs() {
		return "neither has shots; to see what a kit does to the plans that use it, compare their folder"
	}
	if differ == 0 {
		return "no difference for the crew in " + units.Count(len(plans), "plan")
	}
	if differ == renamed {
		return units.Count(renamed, "plan") + " renamed, and no other difference for the crew"
	}
	var parts []string
	for _, c := range []Change{Changed, New, Gone, Same} {
		if n := count[c]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, c))
		}
	}
	also := ""
	if renamed > 0 {
		also = "; " + units.Count(renamed, "plan") + " renamed"
	}
	if scenes > 0 {
		also += "; " + units.Count(scenes, "scene") + " changed"
	}
	if len(parts) == 0 {
		return units.Count(differ-renamed, "plan") + " changed" + also
	}
	total := count[Changed] + count[New] + count[Gone] + count[Same]
	noun := "shots"
	if total == 1 {
		noun = "shot"
	}
	return fmt.Sprintf("%s: %s", noun, strings.Join(parts, ", ")) + also
}
