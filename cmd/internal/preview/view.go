// What the page is told: the plans, their shots and their findings. Drawings
// are fetched apart, since a browser shows one shot of all.

package preview

import (
	"encoding/json"
	"fmt"
	"slices"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/render/draw"
)

// A view is a state as it is told, made once for all browsers.
type view struct {
	state *rebuild.State
	id    string // of the event
	data  []byte // JSON of a told
}

// event returns the view as an event of the stream. JSON has no line breaks.
func (v *view) event() string {
	return fmt.Sprintf("id: %s\ndata: %s\n\n", v.id, v.data)
}

// A told is the JSON of a view.
type told struct {
	Run     string     `json:"run"`   // another: the program was started anew
	Token   string     `json:"token"` // for requests that write
	Files   string     `json:"files"` // another: the page's files are others
	Version uint64     `json:"version"`
	Plans   []toldPlan `json:"plans"`
}

type toldPlan struct {
	Key     string     `json:"key"`
	Name    string     `json:"name"`
	Title   string     `json:"title"`
	Version uint64     `json:"version"`
	Stale   bool       `json:"stale"` // the drawings are older than the text
	Shots   []toldShot `json:"shots"`
	// Findings are those of the text as it is now; Old, of a stale plan, those
	// that its drawings show.
	Findings []toldFinding `json:"findings"`
	Old      []toldFinding `json:"old,omitempty"`
}

type toldShot struct {
	ID       string      `json:"id"`    // for requests
	Label    string      `json:"label"` // for people
	Title    string      `json:"title"`
	Duration plan.Number `json:"duration_s"`
	FPS      float64     `json:"fps"` // frames a second
	Pages    int         `json:"pages"`
	Pulls    []toldPull  `json:"pulls"`
}

type toldPull struct {
	Number int         `json:"number"`
	Start  plan.Number `json:"start_s"`
	Land   plan.Number `json:"land_s"`
}

// A toldFinding is a finding with its place in the text and on the drawing.
type toldFinding struct {
	Code     string      `json:"code"`
	Severity string      `json:"severity"`
	Message  string      `json:"message"`
	Detail   string      `json:"detail,omitempty"`
	Cures    []string    `json:"cures,omitempty"`
	File     string      `json:"file"`
	Line     int         `json:"line"`
	Column   int         `json:"column"`
	Shot     string      `json:"shot,omitempty"`
	Pull     int         `json:"pull,omitempty"`
	Time     plan.Number `json:"t_s"`
	Number   int         `json:"number,omitempty"` // of its flag on the drawing
}

// newView puts a state into words for the page.
func newView(s *Server, state *rebuild.State) *view {
	t := told{Run: s.run, Token: s.token, Files: s.assets.tag, Version: state.Version, Plans: []toldPlan{}}
	for _, p := range state.Plans {
		t.Plans = append(t.Plans, tellPlan(p))
	}
	data, err := json.Marshal(t)
	if err != nil {
		panic(fmt.Sprintf("preview: %v", err)) // a told holds nothing that JSON cannot
	}
	return &view{state: state, id: fmt.Sprintf("%s-%d", s.run, state.Version), data: data}
}

func tellPlan(p *rebuild.Plan) toldPlan {
	drawn := p.Good
	if drawn == nil {
		drawn = p.Latest
	}
	t := toldPlan{Key: p.Key, Name: draw.Clean(p.Name), Title: draw.Clean(p.Latest.Title), Version: p.Version, Stale: p.Stale, Shots: []toldShot{}}
	for _, s := range drawn.Shots {
		t.Shots = append(t.Shots, tellShot(s, len(p.Sheets[s.ID])))
	}
	if p.Stale {
		for _, s := range p.Latest.Shots {
			if !slices.ContainsFunc(drawn.Shots, func(d *plan.Shot) bool { return d.ID == s.ID }) {
				t.Shots = append(t.Shots, tellShot(s, 0))
			}
		}
		t.Findings = tellFindings(p.Findings, nil)
		t.Old = tellFindings(p.GoodFindings, drawn)
		return t
	}
	t.Findings = tellFindings(p.Findings, drawn)
	return t
}

func tellShot(s *plan.Shot, pages int) toldShot {
	t := toldShot{ID: s.ID, Label: draw.Clean(s.ID), Title: draw.Clean(s.Title), Duration: s.Duration, FPS: fps(s), Pages: pages, Pulls: []toldPull{}}
	if !finite(s.Duration) {
		t.Duration = 0
	}
	for _, p := range s.Pulls {
		if finite(p.Start) && finite(p.Land) {
			t.Pulls = append(t.Pulls, toldPull{Number: p.Number, Start: p.Start, Land: p.Land})
		}
	}
	return t
}

// fps returns the frames of a second.
func fps(s *plan.Shot) float64 {
	num, den := s.Rate.Exact()
	return float64(num) / float64(den)
}

func finite(n plan.Number) bool { return n.Known() && !n.IsInf() }

// tellFindings puts findings into words; drawn is what the drawings show of
// them, nil where they show others.
func tellFindings(list []lang.Diagnostic, drawn *plan.Plan) []toldFinding {
	all := make([]toldFinding, len(list))
	for i, d := range list {
		t := toldFinding{
			Code: d.Code, Severity: d.Severity.String(), Message: draw.Clean(d.Message), Detail: draw.Clean(d.Detail),
			File: draw.Clean(d.Range.File), Line: d.Range.Start.Line, Column: d.Range.Start.Column,
			Shot: d.Shot, Pull: d.Pull, Time: plan.Number(max(d.Time, 0)),
		}
		if !finite(t.Time) {
			t.Time = 0
		}
		for _, c := range d.Cures {
			t.Cures = append(t.Cures, draw.Clean(c.Text))
		}
		if drawn != nil {
			t.Number = flagOf(d, drawn)
		}
		all[i] = t
	}
	return all
}

// flagOf returns the number of a finding's flag on the drawing of its shot, or
// 0.
func flagOf(d lang.Diagnostic, drawn *plan.Plan) int {
	for _, s := range drawn.Shots {
		if s.ID != d.Shot {
			continue
		}
		for _, f := range s.Flags {
			if f.Code == d.Code && f.Text == d.Message && f.Pull == d.Pull && f.Time == max(d.Time, 0) {
				return f.Number
			}
		}
	}
	return 0
}
