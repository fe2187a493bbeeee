package diff

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A State is a plan at one time.
type State struct {
	Name     string // what to call it: a path, or a revision and a path
	Plan     *plan.Plan
	Findings []lang.Diagnostic
	Text     []byte // of the plan's file; nil: not known
}

// A Change tells how something stands beside what it was.
type Change string

// The changes.
const (
	Same    Change = "same"
	Changed Change = "changed"
	New     Change = "new"
	Gone    Change = "gone"
	Renamed Change = "renamed" // a plan that has another name and is the same
)

// A Plan is what changed in a plan.
type Plan struct {
	Change   Change    `json:"change"`
	Title    string    `json:"plan"` // after the change, if it is not gone
	Before   string    `json:"before,omitempty"`
	After    string    `json:"after,omitempty"`
	Details  []Detail  `json:"details"`
	Scenes   []Scene   `json:"scenes,omitempty"`
	Shots    []Shot    `json:"shots"`
	Findings []Finding `json:"findings"` // that are about no shot and no scene

	// Faulty tells which states have errors, so that not all of them could be
	// compared.
	Faulty [2]bool `json:"-"`

	was, is State
	renamed bool // it is known to have another name now
}

// A Shot is what changed in a shot.
type Shot struct {
	Change   Change    `json:"change"`
	ID       string    `json:"id"`
	Details  []Detail  `json:"details"`
	Subjects []Piece   `json:"subjects"`
	Pulls    []Pull    `json:"pulls"`
	Events   []Piece   `json:"events"` // notes, lines, cues, actions and moves of people, camera and zoom
	Findings []Finding `json:"findings"`
	Groups   []Group   `json:"groups"` // of findings that are told together

	// Unsure is set where the state that lacks the shot has errors, which may be
	// all that keeps it from being there.
	Unsure bool `json:"unsure,omitempty"`

	Before *plan.Shot `json:"-"` // nil where it is new
	After  *plan.Shot `json:"-"` // nil where it is gone
}

// A Pull is what changed in a pull. Those that are the same stand among the
// others.
type Pull struct {
	Change       Change   `json:"change"`
	Kind         string   `json:"kind"`
	Target       string   `json:"target"`
	Number       int      `json:"number,omitempty"`
	NumberBefore int      `json:"number_before,omitempty"`
	Details      []Detail `json:"details"`

	Before *plan.Pull `json:"-"` // nil where it is new
	After  *plan.Pull `json:"-"` // nil where it is gone
}

// A Piece is what changed in a subject or an event of a shot or a scene. Those that are
// the same are left out.
type Piece struct {
	Change  Change   `json:"change"`
	Kind    string   `json:"kind"` // subject, note, line, cue, action, moves, dolly or zoom; of a scene also mark, cut, line of action, held
	Name    string   `json:"name"`
	Details []Detail `json:"details"`
}

// A Detail is one thing that is different.
type Detail struct {
	Name   string  `json:"name"`             // as in the pull list
	Before Reading `json:"before,omitzero"`  // what it was; left out: nothing
	After  Reading `json:"after,omitzero"`   // what it is
	Frames int64   `json:"frames,omitempty"` // of a time: how many frames later; earlier below 0
	Says   string  `json:"says"`             // the same for people

	// Of what has moved on the floor of a scene: how far, and of a camera how far the axis
	// of its lens is turned.
	Metres  float64 `json:"metres,omitempty"`
	Degrees float64 `json:"degrees,omitempty"`

	moved bool // the whole is earlier or later
	minor bool // told to people where it is all there is to tell
}

// A Finding is one that came or is gone. One whose figures alone are others is
// still the same.
type Finding struct {
	Change Change          `json:"change"`
	Is     lang.Diagnostic `json:"finding"`
}

// Compare tells what changed between two states of a plan; the Plan of one of
// them is nil where there was none.
func Compare(before, after State) Plan {
	p := Plan{Change: Same, Before: before.Name, After: after.Name, Details: []Detail{}, Shots: []Shot{}}
	p.was, p.is = before, after
	p.Faulty = [2]bool{faulty(before.Findings), faulty(after.Findings)}
	numbers := pairs{}
	switch {
	case before.Plan == nil:
		p.Change, p.Title = New, after.Plan.Title
		before.Plan = &plan.Plan{}
	case after.Plan == nil:
		p.Change, p.Title = Gone, before.Plan.Title
		after.Plan = &plan.Plan{}
	default:
		p.Title = after.Plan.Title
		p.Details = planDetails(before.Plan, after.Plan)
	}
	var once told
	p.Scenes, once = compareScenes(before.Plan, after.Plan)
	for _, m := range matchShots(before.Plan.Shots, after.Plan.Shots) {
		s := compareShots(m[0], m[1], once.of(m[0], m[1]))
		s.Unsure = s.Change == New && p.Faulty[0] || s.Change == Gone && p.Faulty[1]
		numbers.add(s)
		p.Shots = append(p.Shots, s)
	}
	p.place(numbers.findings(before.Findings, after.Findings))
	p.settle()
	p.hold(before.Plan, after.Plan)
	p.settle()
	return p
}

func faulty(diags []lang.Diagnostic) bool {
	worst, ok := lang.Worst(diags)
	return ok && worst == lang.Error
}

// Differs reports whether anything changed.
func (p Plan) Differs() bool { return p.Change != Same }

// Only returns what changed in the shot of that ID alone, and in its scene; ok is false
// where there is none.
func (p Plan) Only(id string) (only Plan, ok bool) {
	i := slices.IndexFunc(p.Shots, func(s Shot) bool { return s.ID == id })
	if i < 0 {
		return Plan{}, false
	}
	p.Shots, p.Details, p.Findings = p.Shots[i:i+1], []Detail{}, []Finding{}
	p.Scenes = slices.DeleteFunc(slices.Clone(p.Scenes), func(s Scene) bool { return !slices.Contains(s.setups, id) })
	if p.Change == Changed {
		p.Change = p.Shots[0].Change
		if p.Change == Same && slices.ContainsFunc(p.Scenes, func(s Scene) bool { return s.Change != Same }) {
			p.Change = Changed
		}
	}
	return p, true
}

// matchShots matches shots by their IDs, in their order after the change, those
// that are gone last.
func matchShots(before, after []*plan.Shot) [][2]*plan.Shot {
	was, is := map[string]*plan.Shot{}, map[string]bool{}
	for _, s := range before {
		was[s.ID] = s
	}
	var list [][2]*plan.Shot
	for _, s := range after {
		list = append(list, [2]*plan.Shot{was[s.ID], s})
		is[s.ID] = true
	}
	for _, s := range before {
		if !is[s.ID] {
			list = append(list, [2]*plan.Shot{s, nil})
		}
	}
	return list
}

// place gives findings to the shots and scenes that they are about.
func (p *Plan) place(list []Finding) {
	p.Findings = []Finding{}
	for i := range p.Shots {
		p.Shots[i].Findings = []Finding{}
	}
	for _, f := range list {
		to := &p.Findings
		for i := range p.Scenes {
			if f.Is.Shot == "" && f.Is.Scene != "" && p.Scenes[i].titled(f.Is.Scene, f.Change) {
				to = &p.Scenes[i].Findings
				break
			}
		}
		for i := range p.Shots {
			if p.Shots[i].ID == f.Is.Shot {
				to = &p.Shots[i].Findings
				break
			}
		}
		*to = append(*to, f)
	}
	for i := range p.Shots {
		p.Shots[i].Groups = groupsOf(p.Shots[i].Findings)
	}
	for i := range p.Scenes {
		p.Scenes[i].Groups = groupsOf(p.Scenes[i].Findings)
	}
}

// settle tells of the shots and of the plan whether they changed.
func (p *Plan) settle() {
	for i := range p.Shots {
		s := &p.Shots[i]
		if s.Change == Same && s.holdsChange() {
			s.Change = Changed
		}
		if p.Change == Same && s.Change != Same {
			p.Change = Changed
		}
	}
	for i := range p.Scenes {
		s := &p.Scenes[i]
		if s.Change == Same && s.holdsChange() {
			s.Change = Changed
		}
		if p.Change == Same && s.Change != Same {
			p.Change = Changed
		}
	}
	if p.Change == Same && len(p.Details)+len(p.Findings) > 0 {
		p.Change = Changed
	}
}

func (s *Shot) holdsChange() bool {
	for _, p := range s.Pulls {
		if p.Change != Same {
			return true
		}
	}
	return len(s.Details)+len(s.Subjects)+len(s.Events)+len(s.Findings) > 0
}
