// The figures of a scene, and of all plans together.

package story

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
)

// Edges part the lengths of stays in seconds: under the first, from each to the next, and
// from the last on. Each is 1.41 times the one before it.
var Edges = edges()

func edges() []float64 {
	list := make([]float64, 11)
	for i := range list {
		list[i] = math.Pow(2, float64(i)/2)
	}
	return list
}

// A Film is the story of several plans.
type Film struct {
	Title   string      `json:"title"` // what the titles of the plans begin with
	Scenes  []*Scene    `json:"scenes"`
	LeftOut []Left      `json:"left_out"` // with errors
	Length  plan.Number `json:"duration_s"`
	Edges   []float64   `json:"edges_s"` // of the lengths of stays
	Film    Figures     `json:"film"`
}

// A Left is a plan that is left out because it has errors.
type Left struct {
	Title string `json:"title"`
	File  string `json:"file"`
}

// Join returns the story of all scenes, in their order.
func Join(scenes []*Scene, left []Left) *Film {
	f := &Film{Scenes: slices.Clip(append([]*Scene{}, scenes...)), LeftOut: append([]Left{}, left...), Edges: Edges}
	t := newTally()
	for _, sc := range scenes {
		f.Length += sc.Duration
		t.join(sc)
	}
	f.Film = t.figures()
	f.Title = common(scenes)
	return f
}

// A tally counts.
type tally struct {
	counts Figures
	stays  []float64
	racks  []float64
	held   map[string]float64
	speaks map[string]bool

	members map[string][]string // of splits
}

func newTally() *tally {
	return &tally{held: map[string]float64{}, speaks: map[string]bool{}, members: map[string][]string{}}
}

// add counts a shot.
func (t *tally) add(s *plan.Shot, shot *Shot) {
	t.shot(shot)
	for i := range s.Lines {
		t.speaks[s.Lines[i].Who] = true
	}
	for name, members := range splits(s) {
		t.members[name] = append(t.members[name], members...)
	}
	all, sharp := lineTime(s)
	t.counts.Lines += plan.Number(all)
	t.counts.Sharp += plan.Number(sharp)
}

// join counts a scene.
func (t *tally) join(sc *Scene) {
	for i := range sc.Shots {
		t.shot(&sc.Shots[i])
	}
	for _, h := range sc.Holders {
		t.speaks[h.Name] = t.speaks[h.Name] || h.Speaks
	}
	t.counts.Lines += sc.Lines
	t.counts.Sharp += sc.Sharp
}

// shot counts the stays and racks of a shot.
func (t *tally) shot(shot *Shot) {
	for _, s := range shot.Stays {
		t.stays = append(t.stays, s.Length())
		t.held[s.On] += s.Length()
	}
	c := &t.counts
	for _, r := range shot.Racks {
		t.racks = append(t.racks, float64(r.Land-r.Start))
		switch r.Way {
		case ToNear:
			c.Near++
		case ToFar:
			c.Far++
		}
		switch r.On {
		case OnWord:
			c.Word++
		case OnCue:
			c.Cue++
		case Because:
			c.Reason++
		default:
			c.None++
		}
	}
}

// figures returns what was counted.
func (t *tally) figures() Figures {
	f := t.counts
	f.Racks, f.Count = len(t.racks), len(t.stays)
	f.Median, f.Longest = middle(t.stays)
	f.RackMid, f.RackMax = middle(t.racks)
	f.Bins = make([]int, len(Edges)+1)
	for _, s := range t.stays {
		f.Bins[binOf(s)]++
	}
	f.Own = plan.None()
	if f.Lines > 0 {
		f.Own = f.Sharp / f.Lines
	}
	f.Holders = t.holders()
	return f
}

// binOf returns the bin of a stay of so many seconds.
func binOf(length float64) int {
	i, exact := slices.BinarySearch(Edges, length)
	if exact {
		i++
	}
	return i
}

// middle returns the median and the largest of some numbers; None where there are none.
func middle(list []float64) (median, most plan.Number) {
	n := len(list)
	if n == 0 {
		return plan.None(), plan.None()
	}
	sorted := slices.Sorted(slices.Values(list))
	return plan.Number((sorted[(n-1)/2] + sorted[n/2]) / 2), plan.Number(sorted[n-1])
}

// holders returns who holds the focus, who holds it longest first.
func (t *tally) holders() []Holder {
	list, all := []Holder{}, 0.0
	for name, held := range t.held {
		speaks := t.speaks[name] || slices.ContainsFunc(t.members[name], func(who string) bool { return t.speaks[who] })
		list = append(list, Holder{Name: name, Held: plan.Number(held), Speaks: speaks})
	}
	slices.SortFunc(list, func(a, b Holder) int { return cmp.Or(cmp.Compare(b.Held, a.Held), cmp.Compare(a.Name, b.Name)) })
	for _, h := range list {
		all += float64(h.Held)
	}
	for i := range list {
		list[i].Share = list[i].Held / plan.Number(all)
	}
	return list
}

// common returns the part before a comma or a colon that all titles begin with, "" where
// they have none in common.
func common(scenes []*Scene) string {
	if len(scenes) == 0 {
		return ""
	}
	title := before(scenes[0].Title)
	for _, sc := range scenes[1:] {
		if before(sc.Title) != title {
			return ""
		}
	}
	return title
}

// before returns a title up to its first comma or colon.
func before(title string) string {
	if i := strings.IndexAny(title, ",:"); i > 0 {
		return strings.TrimSpace(title[:i])
	}
	return title
}

// Rest returns the title of a scene without what all titles of the film begin with.
func (f *Film) Rest(sc *Scene) string {
	if rest := strings.TrimLeft(strings.TrimPrefix(sc.Title, f.Title), ",: "); f.Title != "" && rest != "" {
		return rest
	}
	return sc.Title
}
