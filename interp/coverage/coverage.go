package coverage

import "pullscore/interp/plan"

// A Scene is what the shots of a plan have of its lines.
type Scene struct {
	Title    string  `json:"title"`
	File     string  `json:"file"`
	Setups   []Setup `json:"setups"`
	Coverage []Run   `json:"coverage"`
	Missing  []Gap   `json:"missing"`
	Single   []Gap   `json:"held_by_one"`
	Speakers []Own   `json:"speakers"`
	Words    int     `json:"words"`         // of the scene
	Cut      *Cut    `json:"cut,omitempty"` // where somebody asks for it
	Lines    []*Line `json:"-"`

	Shots  []*plan.Shot `json:"-"` // those of Setups, in the same order
	Staged *plan.Scene  `json:"-"` // nil: its lines were joined from those of its shots
	Plan   string       `json:"-"` // the title of the plan

	folk [][]bool // of the subjects of each set-up of a staged scene: they are people
}

// A Setup is a shot that has lines of the scene.
type Setup struct {
	Shot    string      `json:"shot"`
	Title   string      `json:"title,omitempty"`
	Camera  string      `json:"camera"`
	Lens    string      `json:"lens"`
	FocalMM plan.Number `json:"focal_mm"`
	Stop    string      `json:"stop"`
	Words   int         `json:"words"` // of the scene that it has
}

// A Line is a line of the scene.
type Line struct {
	Number int // from 1
	Who    string
	Voice  bool // no set-up has the speaker as a subject
	Off    bool // it is only heard, and nobody has to be seen
	Words  []Word
}

// Asks reports whether somebody has to be seen who says the line.
func (l *Line) Asks() bool { return !l.Voice && !l.Off }

// A Word is one word of a line, with the set-ups that have it.
type Word struct {
	Text  string
	Cells []Cell // in the order of the set-ups

	Start, End plan.Number // in the time of a scene that is staged; else none
}

// The focus on the speaker of a word, at its worst while the word sounds.
const (
	Sharp = "sharp"
	Faint = "faint" // soft, but most people do not see it
	Soft  = "soft"
	Rack  = "rack" // not sharp, and a rack is on its way
	Voice = ""     // the set-up does not have the speaker as a subject
)

// Where the speaker of a word is to the picture, at the worst while the word sounds.
const (
	In      = "in"
	Edge    = "edge"
	Out     = "out"
	Blocked = "blocked" // in the picture, behind somebody
)

// A Cell is a word, or a run of words, in one set-up. Its figures are the worst of it.
type Cell struct {
	Shot   string      `json:"shot"`
	Start  plan.Number `json:"start_s,omitzero"` // in the time of the shot; none of a scene that is staged, where one clock holds
	End    plan.Number `json:"end_s,omitzero"`
	Frame  string      `json:"frame,omitempty"` // empty: nobody says to which side the speaker is
	By     string      `json:"blocked_by,omitempty"`
	Focus  string      `json:"focus,omitempty"`
	Blur   plan.Number `json:"blur_arcmin,omitzero"`
	Held   bool        `json:"held"` // sharp, and to be seen in the picture
	Chance plan.Number `json:"chance,omitzero"`
	Others []string    `json:"others_sharp"`     // all others who are sharp, in the order of the plan
	InCut  string      `json:"in_cut,omitempty"` // what the cut shows of it, as of a line: whole, part or removed; empty: not asked, or in no cut

	Setup int   `json:"-"` // the index of the set-up
	Lands []int `json:"-"` // the numbers of the racks that land while it sounds
}

// Cell returns the cell of a set-up; ok is false where the set-up does not have the word.
func (w *Word) Cell(setup int) (c *Cell, ok bool) {
	for i := range w.Cells {
		if w.Cells[i].Setup == setup {
			return &w.Cells[i], true
		}
	}
	return nil, false
}

// Held reports whether any set-up holds the word.
func (w *Word) Held() bool {
	for i := range w.Cells {
		if w.Cells[i].Held {
			return true
		}
	}
	return false
}

// Has reports whether a set-up has any word of the line.
func (l *Line) Has(setup int) bool {
	for i := range l.Words {
		if _, ok := l.Words[i].Cell(setup); ok {
			return true
		}
	}
	return false
}

// Shown reports whether the cut shows the word in this set-up.
func (c *Cell) Shown() bool { return c.InCut != "" && c.InCut != plan.Removed }

// Of returns what the shots of a plan have of its lines, scene by scene: first the scenes
// that are staged, then what the other shots say, as one scene. A plan without scenes has
// that one alone. A scene of which no shot has the action, as where an insert only stands in
// its places, is left out. With cuts it says too which set-ups the cut shows.
func Of(p *plan.Plan, cuts bool) []*Scene {
	var list []*Scene
	for i := range p.Scenes {
		if sc := Staged(p, i, cuts); len(sc.Setups) > 0 {
			list = append(list, sc)
		}
	}
	var others []*plan.Shot
	for _, s := range p.Shots {
		if speaks(s) && (s.Staging == nil || !s.Action) {
			others = append(others, s)
		}
	}
	if len(list) == 0 || len(others) > 0 {
		list = append(list, ofShots(p, others, cuts))
	}
	return list
}

// newScene returns a scene with its set-ups, before anybody looks at its lines.
func newScene(p *plan.Plan, shots []*plan.Shot) *Scene {
	sc := &Scene{Title: p.Title, Plan: p.Title, File: p.File, Setups: []Setup{}, Shots: shots}
	for _, s := range shots {
		sc.Setups = append(sc.Setups, Setup{
			Shot: s.ID, Title: s.Title, Camera: s.Camera, Lens: s.Lens, FocalMM: s.FocalMM, Stop: s.Stop,
		})
	}
	return sc
}

// sum fills in what follows from the lines of a scene.
func (sc *Scene) sum(cuts bool) {
	for _, l := range sc.Lines {
		sc.Words += len(l.Words)
	}
	sc.Coverage = runs(sc.Lines)
	sc.Missing, sc.Single = gaps(sc)
	sc.Speakers = own(sc.Lines)
	if cuts {
		sc.Cut = cutOf(sc)
	}
}

// ofShots returns shots as set-ups of one scene, whose lines are joined from theirs.
func ofShots(p *plan.Plan, shots []*plan.Shot, cuts bool) *Scene {
	sc := newScene(p, shots)
	lookers := make([]*looker, len(sc.Shots))
	for i, s := range sc.Shots {
		lookers[i] = newLooker(s, i, nil)
	}
	for _, l := range join(sc.Shots) {
		line := &Line{Number: len(sc.Lines) + 1, Who: l.who, Voice: true}
		line.Words = make([]Word, 0, len(l.slots))
		for _, sl := range l.slots {
			w := Word{Text: sl.text, Cells: make([]Cell, 0, len(sl.said)), Start: plan.None(), End: plan.None()}
			for _, at := range sl.said {
				k := lookers[at.shot]
				if c, ok := k.cell(l.who, at.word); ok {
					if cuts {
						c.InCut = inCut(k.shot, at)
					}
					w.Cells = append(w.Cells, c)
					sc.Setups[at.shot].Words++
				}
				line.Voice = line.Voice && k.shot.Subject(l.who) == nil
			}
			line.Words = append(line.Words, w)
		}
		sc.Lines = append(sc.Lines, line)
	}
	sc.sum(cuts)
	return sc
}

// speaks reports whether anybody says a word in a shot.
func speaks(s *plan.Shot) bool {
	for i := range s.Lines {
		if len(s.Lines[i].Words) > 0 {
			return true
		}
	}
	return false
}
