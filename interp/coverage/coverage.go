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

	Shots []*plan.Shot `json:"-"` // those of Setups, in the same order
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
	Words  []Word
}

// A Word is one word of a line, with the set-ups that have it.
type Word struct {
	Text  string
	Cells []Cell // in the order of the set-ups
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
	Start  plan.Number `json:"start_s"` // in the time of the shot
	End    plan.Number `json:"end_s"`
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

// Of returns what the shots of a plan have of its lines.
func Of(p *plan.Plan) *Scene { return of(p, false) }

// OfCut returns the same, and which set-ups the cut shows.
func OfCut(p *plan.Plan) *Scene {
	sc := of(p, true)
	sc.Cut = cutOf(sc)
	return sc
}

func of(p *plan.Plan, cuts bool) *Scene {
	sc := &Scene{Title: p.Title, File: p.File, Setups: []Setup{}}
	for _, s := range p.Shots {
		if speaks(s) {
			sc.Shots = append(sc.Shots, s)
			sc.Setups = append(sc.Setups, Setup{
				Shot: s.ID, Title: s.Title, Camera: s.Camera, Lens: s.Lens, FocalMM: s.FocalMM, Stop: s.Stop,
			})
		}
	}
	lookers := make([]*looker, len(sc.Shots))
	for i, s := range sc.Shots {
		lookers[i] = newLooker(s, i)
	}
	for _, l := range join(sc.Shots) {
		line := &Line{Number: len(sc.Lines) + 1, Who: l.who, Voice: true}
		line.Words = make([]Word, 0, len(l.slots))
		for _, sl := range l.slots {
			w := Word{Text: sl.text, Cells: make([]Cell, 0, len(sl.said))}
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
		sc.Words += len(line.Words)
		sc.Lines = append(sc.Lines, line)
	}
	sc.Coverage = runs(sc.Lines)
	sc.Missing, sc.Single = gaps(sc)
	sc.Speakers = own(sc.Lines)
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
